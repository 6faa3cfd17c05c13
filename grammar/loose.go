package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// thicknessAlone: of "a beech board, 18mm, 140 wide" the measure without a word is
// the one that strips still lack.
func (r *reader) thicknessAlone(i int) bool {
	if r.topic != Flatten && r.topic != Side && !(r.topic == "" && (r.mentions(kindNoun, "bar") || r.habit.Follows)) || r.stripsHave("thick") || r.items[i].amount.link != linkNone || r.size(i) > 0.055 || r.phrase.Command != nil {
		return false
	}
	width := r.measureOf(unit.StripWidth)
	if width < 0 || !r.standsAlone(i) {
		return false
	}
	from, _ := r.sentence(i)
	w, _ := r.bound[width].fact.Value.(unit.Number)
	return (r.bound[width].from >= from || r.isStop(i-1)) && r.size(i)*1000 < float64(w) && r.bind(i, unit.StripThickness)
}

// standsAlone: between commas, behind "it's", or a sentence of its own where a board
// is to go flat.
func (r *reader) standsAlone(i int) bool {
	end := i+1 >= len(r.items) || r.items[i+1].brk == ',' || r.items[i+1].brk == '.'
	switch {
	case i == 0:
		return false
	case r.items[i-1].brk == ',':
		return end
	case r.word(i-1, "its", "is"):
		return end || r.word(i+1, "and") && r.topic == Flatten
	}
	return r.items[i-1].brk == '.' && end && r.topic == Flatten
}

// lengthAlone: of "90 wide, 18 thick, 2.1 m" the last is the strips' length.
func (r *reader) lengthAlone(i int) bool {
	am := r.items[i].amount
	if am.unit == nil || am.unit.Symbol != "m" && am.unit.Symbol != "ft" || am.link != linkNone || r.size(i) < 0.6 || r.has(unit.StripLength) || r.has(unit.PanelLength) || r.topic == Move || r.topic == Pump || r.topic == Schedule || r.phrase.Command != nil {
		return false
	}
	return i > 0 && r.items[i-1].brk == ',' && r.isBreak(i+1) && r.has(unit.StripWidth) && r.has(unit.StripThickness) && r.bind(i, unit.StripLength)
}

// thickToThick: what strips vary from and to is how thick they are, "vary 19.2 to
// 19.8", not by how much.
func (r *reader) thickToThick(i int) bool {
	j := i + 1
	if i >= len(r.items) || r.items[i].amount == nil || j >= len(r.items) || !r.free(j) || !r.length(j) || r.items[j].amount.link != linkTo {
		return false
	}
	low, high := min(r.size(i), r.size(j)), max(r.size(i), r.size(j))
	return low > 0.003 && low > 0.7*high
}

// planedOff: "5 to plane off", "1/4 to joint off" of what strips fill is trim.
func (r *reader) planedOff(i int) bool {
	if !r.word(i+1, "to", "over", "extra", "spare") {
		return false
	}
	if (r.has(unit.StockPiles) || r.habit.Follows) && r.word(i+1, "over", "extra", "spare") && r.is(i+2, kindRole, "trim") && small(r.size(i)) {
		return true // "1/2 over for the planer"
	}
	if r.has(unit.StockPiles) && r.word(i+1, "to") && r.word(i+2, "lose", "waste", "spare") && r.isBreak(i+3) && small(r.size(i)) {
		r.items[i+2].used, r.items[i+2].meaning = true, meaning{}
		return true // "and 8 to lose"
	}
	if !r.has(unit.StockPiles) && r.topic != Strips || !r.word(i+1, "to") || !r.word(i+3, "off", "away") {
		return false
	}
	if !r.word(i+2, "plane", "joint", "saw", "rip", "cut", "sand", "mill", "shoot", "true", "square", "trim", "come", "take") {
		return false
	}
	r.items[i+2].used = true
	return true
}

// trimmedTwice: "5 each side to trim", "5 to come off each side" comes to 10.
func (r *reader) trimmedTwice(i int) bool {
	side := i + 1
	if r.is(side, kindRole, "trim") && r.is(side+1, kindFact, "faces=2") && in(r.items[side+1].word, "each side", "both sides", "either side", "per side") {
		side++
	}
	if !r.is(side, kindFact, "faces=2") || side == i+1 && !r.is(r.next(side), kindRole, "trim") && !r.is(r.prev(i), kindRole, "trim") || r.has(unit.Trim) {
		return false
	}
	v, u, ok := r.valueOf(r.items[i].amount, unit.Trim)
	if !ok || impossible(unit.Trim, v) != "" {
		return false
	}
	r.items[i].used, r.items[i+1].used, r.items[side].used, r.items[side].meaning = true, true, true, meaning{}
	r.bound = append(r.bound, binding{Fact{Field: unit.Trim, Value: unit.Number(2 * v), Unit: u, Text: r.items[i].text, Note: "on each side"}, i, false})
	return true
}

// countOfSize: "12 of 50 x 25", "5 of 60 wide" beside strips, "12 of 1 1/2 cherry" beside a bar.
func (r *reader) countOfSize(i int) bool {
	k := i + 2
	if !r.word(i+1, "of") || !r.items[i].amount.bare() || !r.mentions(kindNoun, "strip", "bar") || r.has(unit.StripCount) || r.has(unit.StockPiles) || r.stockContext() || k >= len(r.items) || r.items[k].amount == nil || !r.length(k) || !small(r.size(k)) {
		return false
	}
	wood := r.is(k+1, kindWood) && (!r.is(r.next(k+1), kindNoun) || r.is(r.next(k+1), kindNoun, "strip")) // no "4 of 3/4 maple sleds"
	return r.is(k+1, kindAttr, "wide") || wood || k+1 < len(r.items) && r.items[k+1].amount != nil && r.items[k+1].amount.link == linkTimes && small(r.size(k+1))
}

// notSeconds: among strips to choose from, "the 1.875s" are as wide, not as long.
func (r *reader) notSeconds() {
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.form == formDecimal && am.unitRaw == "s" && !strings.Contains(r.items[i].text, " ") && r.stockContext() {
			am.unit, am.unitRaw, am.plural = nil, "", true
		}
	}
}

// sumsTo: "strips total 24 3/32 in a 24 in opening" tells how much too full it is.
func (r *reader) sumsTo() {
	if !r.mentions(kindNoun, "opening", "fence") || !r.mentions(kindNoun, "strip") || r.has(unit.Overfill) || r.has(unit.StockPiles) {
		return
	}
	sum, room := -1, -1
	for i := range r.items {
		if !r.free(i) || !r.length(i) {
			continue
		}
		j := i - 1
		for r.word(j, "to", "up", "out", "at", "is", "a", "of", "all") || j >= 0 && (r.items[j].brk == ':' || r.items[j].brk == '=') {
			j--
		}
		switch {
		case r.word(j, "total", "totals", "totaling", "totalling", "add", "adds", "sum", "sums", "come", "comes"):
			sum = i
		case r.is(r.next(i), kindNoun, "opening") || r.is(j, kindNoun, "opening") && r.size(i) > 0.13:
			room = i
		}
	}
	if sum < 0 || room < 0 {
		return
	}
	if r.size(sum) < r.size(room)/2 {
		if n, ok := r.wholeAt(sum); ok && n > 1 && r.items[sum].amount.bare() && !r.has(unit.StripCount) {
			r.bind(sum, unit.StripCount) // "strips total 8"
		}
		return
	}
	over := r.size(sum) - r.size(room)
	if over <= 0 || over > 0.02 {
		r.items[sum].amount.dead = true
		return
	}
	_, u, ok := r.valueOf(r.items[sum].amount, unit.Overfill)
	if ok && r.bind(room, unit.PanelWidth) {
		r.items[sum].used = true
		r.bound = append(r.bound, binding{Fact{Field: unit.Overfill, Value: unit.Number(round(over * 1000)), Unit: u, Text: r.items[sum].text, Note: "more than the opening"}, sum, false})
	}
}

// squareStrip: "1 1/2 square" says both how wide and how thick strips are.
func (r *reader) squareStrip(i, n int) bool {
	if !r.word(n, "square") || !r.mentions(kindNoun, "strip") || !small(r.size(i)) || r.has(unit.StripWidth) || r.has(unit.StripThickness) {
		return false
	}
	r.items[n].used = true
	return r.bind(i, unit.StripWidth) && r.bind(i, unit.StripThickness)
}

// woodIs: "the wood is half an inch".
func (r *reader) woodIs(i int) bool {
	return r.word(i-1, "is", "its") && r.word(i-2, "wood", "timber", "lumber") && r.size(i) < 0.055 && !r.has(unit.StripThickness) && (r.next(i) < 0 || r.word(i+1, "and")) && r.bind(i, unit.StripThickness)
}

// anotherChoice adds the third of "bar 30 or 35 or 40" to what is offered.
func (r *reader) anotherChoice(i int) bool {
	if r.items[i].amount.link != linkOr || i == 0 || r.items[i-1].amount == nil {
		return false
	}
	for k := range r.phrase.Choices {
		c := &r.phrase.Choices[k]
		if c.Values[len(c.Values)-1].Text != r.items[i-1].text {
			continue
		}
		if v, u, ok := r.valueOf(r.items[i].amount, c.Field); ok && impossible(c.Field, v) == "" {
			r.items[i].used = true
			c.Values = append(c.Values, Fact{Field: c.Field, Value: unit.Number(v), Unit: u, Text: r.items[i].text})
			return true
		}
	}
	return false
}

// gapOrOpening: no joint gapes 80 mm; of a stack that is the press's opening.
func (r *reader) gapOrOpening(i int, f unit.Field) unit.Field {
	switch {
	case f != unit.Gap || r.size(i) <= 0.03:
		return f
	case r.has(unit.StackLayers) && !r.has(unit.Opening):
		return unit.Opening
	}
	return ""
}

// brokenInches: "2 1/4 x 3/4" is of inches in a metric shop too.
func (r *reader) brokenInches(i, end int) {
	broken := false
	for k := i; k < end; k++ {
		am := r.items[k].amount
		if !r.habit.Metric || !am.bare() || am.value == nil || am.float() > 8 {
			return
		}
		broken = broken || am.form == formMixed || am.form == formFraction
	}
	for k := i; k < end && broken; k++ {
		u := unit.Inch
		r.items[k].amount.unit = &u
	}
}

// inchesOfTop: "36 in hard maple top" is as wide.
func (r *reader) inchesOfTop(i int) bool {
	am := r.items[i].amount
	if !r.word(i+1, "in") || !am.bare() || r.habit.Metric || am.float() < 6 || r.has(unit.PanelWidth) || r.has(unit.StockPiles) || !r.is(i+2, kindWood) || !r.is(r.next(i+2), kindNoun, "panel") || isPlural(r.items[r.next(i+2)].word) {
		return false
	}
	r.items[i+1].used = true
	return r.bind(i, unit.PanelWidth)
}

// widthAlone: of "five slats, 2 1/4, quarter inch thick" the measure without a word
// is how wide they are.
func (r *reader) widthAlone(i int) bool {
	if i < 2 || r.items[i-1].brk != ',' || !r.is(i-2, kindNoun, "strip") || i+1 < len(r.items) && r.items[i+1].brk != ',' || r.items[i].amount.link != linkNone || !small(r.size(i)) || r.phrase.Command != nil {
		return false
	}
	if r.has(unit.StripWidth) || r.has(unit.StripWidths) || r.stockContext() {
		return false
	}
	thick := r.measureOf(unit.StripThickness)
	if thick < 0 || !r.has(unit.StripCount) {
		return false
	}
	t, _ := r.bound[thick].fact.Value.(unit.Number)
	return r.size(i)*1000 > float64(t) && r.bind(i, unit.StripWidth)
}

// maybeGauge: of `bag press 24"` nobody knows whether it is the gauge's or the bag's
// width.
func (r *reader) maybeGauge(i int) bool {
	am := r.items[i].amount
	return am.float() >= 15 && am.float() <= 30 && (am.unit == nil && !r.habit.Metric || am.unit != nil && am.unit.Symbol == "in") && am.link == linkNone && !r.has(unit.Vacuum) && !r.pressureSaid() && r.next(i) < 0 && r.topic != Stack && r.topic != Profile && !r.word(i-1, "is")
}

// fencedIn: "22 between the fences" is what the strips of a panel fill.
func (r *reader) fencedIn(i int) bool {
	if !r.betweenFences(i) || r.size(i) < leastFenced {
		return false
	}
	f := unit.PanelWidth
	if r.has(unit.StockPiles) {
		f = unit.TargetWidth
	}
	return !r.has(f) && !r.has(unit.TargetWidth) && r.bind(i, f)
}

// leastFenced, in metres: fences stand no nearer; our estimate.
const leastFenced = 0.1

// bagLies: "a bag that lies 1350 flat".
func (r *reader) bagLies(i int) bool {
	if !r.means(kindNoun, "bag") {
		return false
	}
	from, to := r.clause(i)
	if r.within(from, to, kindNoun, "bag") < 0 || r.has(unit.BagWidth) || r.size(i) < 0.25 || r.is(r.next(i), kindNoun) && r.items[r.next(i)].id != "bag" {
		return false
	}
	return (r.word(i+1, "flat") || r.is(i+1, kindAsk, "flatten") || r.word(i-1, "lies", "lays")) && r.bind(i, unit.BagWidth)
}

// seconds say what comes behind "by" once the first measure has its direction:
// "68 wide by 30", "38 high by 18".
var seconds = map[unit.Field]unit.Field{
	unit.StripWidth: unit.StripThickness, unit.BarHeight: unit.BarWidth, unit.PanelWidth: unit.PanelLength, unit.StripThickness: unit.StripWidth,
	unit.BarWidth: unit.BarHeight, unit.BedWidth: unit.BedLength, unit.SledWidth: unit.SledLength, unit.BagWidth: unit.BagLength, unit.PanelLength: unit.PanelWidth,
}

func (r *reader) byBefore(i int) bool {
	if !r.word(i-1, "by", "x") && !(i > 0 && r.items[i-1].brk == 'x') {
		return false
	}
	if r.attrBehind(i) == "tall" && r.stackHeight(i) {
		return false
	}
	for k := i - 2; k >= 0 && k >= i-6; k-- {
		for _, b := range r.bound {
			if b.from == k && seconds[b.fact.Field] != "" && !r.has(seconds[b.fact.Field]) {
				return r.bind(i, seconds[b.fact.Field])
			}
		}
	}
	return false
}

// aloneAfterNoun: "soft mat, 10 mm" is the mat's.
func (r *reader) aloneAfterNoun(i int) bool {
	from, to := r.clause(i)
	if from < 2 || r.items[from-1].brk != ',' {
		return false
	}
	for k := from; k < to; k++ {
		if k != i && !r.idle(k) {
			return false
		}
	}
	f, t := r.clause(from - 2)
	noun := -1
	if r.word(t-3, "the", "a") && r.items[t-2].amount == nil && r.is(t-1, kindNoun, "bar", "mat", "caul") {
		f = t - 3 // "7 strips and the taller bar, 1 1/2"
	}
	for k := f; k < t; k++ {
		if r.items[k].amount != nil && !(r.one(k) && r.is(k+1, kindNoun)) {
			return false
		}
		if f := bareFields[r.items[k].id]; r.is(k, kindNoun) && f != "" && f != unit.PanelWidth {
			noun = k
		}
	}
	if noun < 0 {
		return false
	}
	field := bareFields[r.items[noun].id]
	return field != "" && field != unit.PanelWidth && !r.has(field) && r.bind(i, field)
}

// countAtWidth: "5 @ 2 1/4" with nothing else in stock is a count of strips of
// one width.
func (r *reader) countAtWidth(i int) bool {
	am := r.items[i].amount
	if am.link != linkAt || !r.free(i-1) || r.has(unit.StripCount) || r.has(unit.StripWidth) || r.size(i) > 0.4 || r.topic == Stack {
		return false
	}
	if _, ok := r.items[i-1].amount.whole(); !ok || r.items[i-1].amount.link != linkNone {
		return false
	}
	r.bind(i-1, unit.StripCount)
	return r.bind(i, unit.StripWidth)
}

// defaultNoun is the part that a topic measures.
func (r *reader) defaultNoun(attr string) string {
	switch r.topic {
	case Move, Schedule:
		if attr == "thick" && r.topic == Move {
			return "strip"
		}
		return "panel"
	case Strips:
		if attr == "thick" {
			return "strip"
		}
		return "panel"
	case Pump:
		return "frame"
	case Face:
		return "panel"
	case Glue:
		if attr == "wide" && r.has(unit.StripWidth) || attr == "wide" && !r.mentions(kindNoun, "strip") {
			return "panel"
		}
	}
	if attr == "tall" {
		if r.mentions(kindFact, "cup_up=hump", "cup_up=hollow") && !r.mentions(kindNoun, "bar") {
			return "cup"
		}
		if r.mentions(kindNoun, "bar") || r.mentions(kindNoun, "strip") || r.countKind(kindNoun) == 0 {
			return "bar"
		}
		return ""
	}
	if attr == "deep" {
		return "frame"
	}
	return "strip"
}

// onlyGot: "we only got 6, 3 wide, 3/4 thick", "i only got 8, theyre 1 5/8 wide".
func (r *reader) onlyGot(i int) bool {
	k := i + 2
	if r.word(k, "theyre", "they", "each", "all") {
		k++
	}
	return r.word(i-1, "got", "have", "only") && r.items[i].amount.bare() && r.isBreak(i+1) && r.free(k) && r.length(k) && r.is(k+1, kindAttr, "wide") && small(r.size(k)) && !r.has(unit.StripCount) && !r.stockContext()
}

package grammar

import (
	"math/big"

	"presshand/engine/unit"
)

// What a count that names nothing is of.

// widthOfThem: "5 of them at 2 1/4".
func (r *reader) widthOfThem(j int, f unit.Field) {
	for r.word(j, "of them", "them", "em", "those") {
		j++
	}
	if k := j + 1; f == unit.StripCount && r.word(j, "at") && r.free(k) && r.length(k) && small(r.size(k)) && r.isBreak(k+1) && !r.has(unit.StripWidth) {
		r.bind(k, unit.StripWidth)
	}
}

// soManyOfWidth: beside a bar "6 of 2 1/2" and "6 of 60 mm" are strips.
func (r *reader) soManyOfWidth() {
	if !r.says("of") || !r.mentions(kindNoun, "bar") || r.has(unit.StockPiles) || r.has(unit.StripCount) || r.has(unit.StripWidth) {
		return
	}
	for i := 0; i+2 < len(r.items); i++ {
		k := i + 2
		if !r.word(i+1, "of") || !r.free(i) || !r.free(k) || !r.isBreak(i-1) || i > 0 && r.items[i-1].brk == ':' || !r.isBreak(k+1) || !r.length(k) || !r.items[i].amount.bare() {
			continue
		}
		am := r.items[k].amount
		if n, ok := r.items[i].amount.whole(); !ok || n < 2 || am.link != linkNone || am.bare() && am.form == formInt && !r.habit.Metric || !small(r.size(k)) && !am.bare() {
			continue
		}
		if r.bind(i, unit.StripCount) {
			r.bind(k, unit.StripWidth)
		}
		return
	}
}

// countedThings: "5 of them", "5 off" count what was spoken of last.
func (r *reader) countedThings(i, j int) unit.Field {
	if r.habit.Follows && r.within(0, len(r.items), kindNoun, "strip", "panel") < 0 && r.opens("there", "theres", "got", "have") >= 0 && r.mentions(kindNoun, "press", "frame", "bag") {
		return unit.PressCount // "wrong about the bag, there are two of them free"
	}
	if r.soManyOfTarget(i, j) {
		return unit.PanelCount
	}
	for k := i - 1; k >= 0; k-- {
		if r.is(k, kindNoun, "panel") {
			return unit.PanelCount
		}
		if r.is(k, kindNoun, "strip") {
			return unit.StripCount
		}
		if r.is(k, kindNoun, "press", "frame") && isPlural(r.items[k].word) {
			return unit.PressCount
		}
		if r.is(k, kindNoun, "core") && !r.wideBehind(j) {
			return unit.PanelCount
		}
	}
	for _, b := range r.bound {
		if b.fact.Field == unit.PanelWidth || b.fact.Field == unit.CoreThickness {
			return unit.PanelCount
		}
	}
	if r.mentions(kindNoun, "bar") || r.has(unit.StripWidth) || r.has(unit.StripThickness) || r.items[j].word == "off" || r.items[j].word == "of them" {
		return unit.StripCount
	}
	return ""
}

// partOfThem: "I only measured 3 of them", "two of em split" are some of those
// counted before.
func (r *reader) partOfThem(i, j int, f unit.Field) bool {
	if r.items[j].word != "of them" {
		return false
	}
	if f == unit.PanelCount && r.soManyOfTarget(i, j) {
		return false
	}
	if r.has(f) || r.word(i-1, "but", "except", "though", "although") || r.word(j+2, "came", "came out", "come out", "turned", "ran", "ended") {
		return true // "but two of them came out 9/32"
	}
	for k := i - 1; k > 0; k-- {
		if am := r.items[k].amount; am != nil && am.link == linkAt {
			return true
		}
	}
	return false
}

// wideBehind: "strips on mdf, 7 of them 3 wide" counts strips.
func (r *reader) wideBehind(j int) bool {
	k := j + 1
	for r.word(k, "them", "em", "those", "at") {
		k++
	}
	return k < len(r.items) && r.free(k) && r.length(k) && r.is(r.next(k), kindAttr, "wide") && small(r.size(k))
}

// countedMeasure: "seven 45 mm staves", "ten 1 3/4 wide by 1 inch thick oak
// strips" count strips with a measure of their own.
func (r *reader) countedMeasure(i, j int) int {
	if j != i+1 || r.items[i].amount.form != formWords && r.items[j].amount.form == formInt && r.items[j].amount.unit == nil || !r.length(j) {
		return -1
	}
	for k := j + 1; k < len(r.items) && k < j+12; k++ {
		switch {
		case r.is(k, kindNoun, "strip", "core", "face", "bar") && isPlural(r.items[k].word):
			return k
		case r.is(k, kindNoun, "panel") && isPlural(r.items[k].word) && r.size(j) < thickestLayer:
			return k // "18 half-inch panels"
		case r.is(k, kindNoun, "core") && r.is(k+1, kindNoun, "core"): // "ply cores"
		case r.items[k].amount != nil && r.length(k), r.is(k, kindAttr), r.is(k, kindWood), r.idle(k), r.word(k, "by", "and"), r.items[k].brk == 'x', r.is(k, kindFact):
		default:
			return -1
		}
	}
	return -1
}

// countedSize: "6 poplar 1x4s" counts strips, "one 4x8 press" presses.
func (r *reader) countedSize(i, j int) int {
	k := j + 1
	if k >= len(r.items) || r.items[k].amount == nil || r.items[k].amount.link != linkTimes {
		return -1
	}
	if r.items[k].amount.plural {
		return k
	}
	if n := r.next(k); r.is(n, kindNoun, "press", "frame", "bag", "panel") {
		return n
	}
	return -1
}

// wideBoards: the boards of "12 boards 18 by 24, 1 1/4 rips" are too wide to be
// strips, of which others speak: they are panels.
func (r *reader) wideBoards() {
	if r.mentions(kindNoun, "bar", "wedge", "fence") || r.mentions(kindVacuum) || r.pressureSaid() {
		return // a joint's, in another unit than the shop's
	}
	for i := range r.items {
		j := i + 1
		if !r.free(i) || !r.is(j, kindNoun, "strip") || !isPlural(r.items[j].word) {
			continue
		}
		n, whole := r.items[i].amount.whole()
		k := r.next(j)
		if !whole || n < 1 || k < 0 || !r.free(k) || !r.timesAt(k+1) || r.timesAt(k+2) || !r.length(k) || !r.length(k+1) {
			continue
		}
		if r.size(k) > widestStrip && r.size(k+1) > widestStrip && (r.size(k+1) < 1 || r.within(k+2, len(r.items), kindNoun, "strip") >= 0) {
			r.items[j].meaning, r.items[j].word = meaning{kind: kindNoun, id: "panel"}, "panels"
			r.hear(j)
		}
	}
}

// leftToPress: of a day's work "there are 8 left, 24x36" counts panels.
func (r *reader) leftToPress() {
	if r.has(unit.PanelCount) || !r.dayPlan() || r.mentions(kindNoun, "strip") {
		return
	}
	for i := range r.items {
		if _, whole := r.wholeAt(i); whole && r.free(i) && r.items[i].amount.bare() && r.word(i+1, "left", "remaining", "more", "still") && (r.isBreak(i+2) || r.word(i+2, "to")) && r.word(i-1, "are", "theres", "have", "got", "still", "is", "with") {
			r.bind(i, unit.PanelCount)
			return
		}
	}
}

// stripsAre binds the count of "strips are five, wide 1 1/2".
func (r *reader) stripsAre(i int) bool {
	if r.items[i].amount.form != formWords || !r.word(i-1, "are") {
		return false
	}
	n, _ := r.wholeAt(i)
	return n > 1 && r.is(i-2, kindNoun, "strip") && isPlural(r.items[i-2].word) && r.isBreak(i+1) && !r.has(unit.StripCount) && r.bind(i, unit.StripCount)
}

// piecesOfPanel: "15 pcs of panel 800x2000" counts panels; those "of panel grade maple" are
// strips.
func (r *reader) piecesOfPanel() {
	if !r.says("of") || !r.means(kindNoun, "panel") {
		return
	}
	for i := 1; i+2 < len(r.items); i++ {
		counted := r.items[i-1].amount != nil && r.items[i-1].amount.bare() && r.word(i, "pcs", "pieces", "pc", "off", "nos")
		switch {
		case !counted || !r.is(i, kindNoun, "strip") || !r.word(i+1, "of") || !r.is(i+2, kindNoun, "panel"):
		case r.isBreak(i + 3), r.items[i+3].amount != nil:
			r.items[i+2].word = "panels"
			r.hear(i + 2)
			r.remove(i, i+2)
		default:
			r.remove(i+1, i+3)
		}
	}
}

// loadsOf reads "3 loads of 4 panels" and "3 jobs of 4 panels" as twelve of them.
func (r *reader) loadsOf() {
	if !r.says("of") {
		return
	}
	for i := 0; i+4 < len(r.items); i++ {
		if r.items[i].amount == nil || !r.word(i+2, "of") || !in(r.items[i+1].word, "loads", "batches", "sets", "stacks", "jobs") || r.items[i+3].amount == nil {
			continue
		}
		n, okN := r.items[i].amount.whole()
		m, okM := r.items[i+3].amount.whole()
		if okN && okM && n > 1 && n < 100 && m > 0 && m < 1000 && (r.is(r.next(i+3), kindNoun, "panel") || i+5 < len(r.items) && r.items[i+4].amount != nil && r.timesAt(i+5) && r.length(i+4) && r.size(i+4) > widestStrip) {
			it := r.items[i+3]
			it.amount.value = big.NewRat(int64(n*m), 1)
			it.start, it.text = r.items[i].start, r.text[r.items[i].start:it.end]
			r.items[i+3] = it
			r.hear(i + 3)
			r.remove(i, i+3)
		}
	}
}

// soManyOfTarget: "need 600 wide, 2 of them" counts what is to be made, and none of the
// strips that it is made of.
func (r *reader) soManyOfTarget(i, j int) bool {
	end := j + 1
	for r.word(end, "them", "em", "those", "please", "total", "altogether", "in all") {
		end++
	}
	if r.items[j].word != "of them" || !r.isBreak(end) || !r.isBreak(i-1) {
		return false
	}
	k := i - 2
	for k >= 0 && (r.is(k, kindAttr, "wide") || r.word(k, "each")) {
		k--
	}
	if k < 0 || r.items[k].amount == nil || !r.length(k) {
		return false
	}
	for k--; k >= 0 && (r.word(k, "to", "a", "it", "be") || r.is(k, kindVerb)); k-- {
	}
	return r.is(k, kindRole, "target")
}

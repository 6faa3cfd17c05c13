package grammar

import "presshand/engine/unit"

// A Change is a number by which a message changes one that the thread has: "2
// more strips", "bump the bar half an inch", "rip them in half".
type Change struct {
	By     Amendment
	Less   bool
	Times  bool         // By is a factor
	Fields []unit.Field // what it can be of, the likeliest first; empty: what was said last
}

// comparatives stand behind a number, by the direction that they measure.
var comparatives = map[string]struct {
	less bool
	attr string
}{
	"more": {false, ""}, "extra": {false, ""}, "additional": {false, ""}, "less": {true, ""}, "fewer": {true, ""},
	"higher": {false, "tall"}, "taller": {false, "tall"}, "lower": {true, "tall"}, "shorter": {true, "tall"},
	"thicker": {false, "thick"}, "thinner": {true, "thick"}, "wider": {false, "wide"}, "broader": {false, "wide"}, "narrower": {true, "wide"}, "longer": {false, "long"},
	"deeper": {false, "deep"}, "shallower": {true, "deep"}, "warmer": {false, "warm"}, "hotter": {false, "warm"}, "colder": {true, "warm"}, "cooler": {true, "warm"},
}

// adders stand before a number, and say whether it is taken away.
var adders = map[string]bool{
	"add": false, "adding": false, "another": false, "extra": false, "plus": false, "additional": false,
	"remove": true, "lose": true, "without": true, "cull": true, "toss": true, "chuck": true, "drop": true, "skip": true, "less": true, "minus": true, "ditch": true, "scrap": true, "scratch": true, "take out": true, "take away": true, "leave out": true, "leave off": true,
}

// movers are verbs that change what stands beside them, and whether they lower it.
var movers = map[string]bool{
	"raise": false, "raised": false, "raising": false, "bump": false, "bump up": false, "bumped": false, "increase": false, "increased": false, "lift": false, "boost": false, "rise": false, "warms": false, "heats": false, "cools": true, "rises": false, "grow": false,
	"lower": true, "lowered": true, "reduce": true, "reduced": true, "decrease": true, "drop": true, "drops": true, "dropped": true, "fall": true, "falls": true, "shorten": true, "cut": true,
}

// planes are verbs that take off thickness.
var planes = wordSet(`plane planed sand sanded`)

// countFields are the counts of parts.
var countFields = map[string][]unit.Field{
	"strip": {unit.StripCount}, "joint": {unit.StripCount}, "panel": {unit.PanelCount}, "bar": {unit.BarCount}, "press": {unit.PressCount}, "frame": {unit.PressCount}, "bag": {unit.PressCount},
}

// sizeFields are what a direction can be of where no part is named.
var sizeFields = map[string][]unit.Field{
	"thick": {unit.StripThickness, unit.PanelThickness, unit.CoreThickness},
	"wide":  {unit.StripWidth, unit.TargetWidth, unit.PanelWidth, unit.BedWidth},
	"long":  {unit.StripLength, unit.PanelLength, unit.BedLength},
	"tall":  {unit.BarHeight, unit.Opening},
	"deep":  {unit.Opening, unit.Cup},
	"warm":  {unit.ShopTemp, unit.ServiceTemp},
}

// changes reads what a later message changes by how much.
func (r *reader) changes() {
	r.halves()
	r.bumpsUp()
	if c := r.phrase.Command; !r.habit.Follows || c != nil && c.Verb != Correct && c.Verb != Post {
		return
	}
	r.gains()
	r.moves()
	r.clockShift()
	r.multiples()
	r.oneMore()
	r.addsNth()
	r.nthTurnsUp()
	r.keptWarm()
	r.onesMore()
	r.keptAt()
	r.forThePart()
	r.oneOfPart()
	r.calledOff()
	r.someOfThem()
	r.widthCorrected()
	r.inPlaceOfBare()
	r.notButBare()
	r.goneWidths()
	r.rowAgain()
	r.widthThenCount()
	r.onEachSide()
	r.things()
	if r.said(unit.Lasting) && r.amountsIn(0, len(r.items)) > 1 {
		return // so much in so long is a rate
	}
	for i := range r.items {
		if !r.canChange(i) {
			continue
		}
		if c, words, ok := r.changeAt(i); ok {
			c.By = r.amendment(i)
			r.items[i].used = true
			for _, k := range words {
				r.items[k].used, r.items[k].meaning = true, meaning{}
			}
			r.phrase.Changes = append(r.phrase.Changes, c)
		}
	}
}

func (r *reader) canChange(i int) bool {
	if !r.free(i) {
		return false
	}
	am := r.items[i].amount
	linked := i+1 < len(r.items) && r.items[i+1].amount != nil
	if r.anotherOne(i) {
		return false
	}
	return am.value != nil && am.form != formPair && !am.plural && am.link == linkNone && !linked && !r.word(i-1, "to", "or")
}

// anotherOne: "post another one, same but 3/8 thick" is of another load, not of one strip
// more.
func (r *reader) anotherOne(i int) bool {
	if !r.one(i) || !r.word(i-1, "another") || r.is(r.next(i), kindNoun) || r.amountsIn(0, len(r.items)) < 2 && r.phrase.Command == nil || r.next(i) >= 0 && !r.word(r.next(i), "but", "with", "and", "at", "like", "same") {
		return false
	}
	r.items[i].used = true
	return true
}

// changeAt is the change by the number at item i, and the words that say it.
func (r *reader) changeAt(i int) (c Change, words []int, ok bool) {
	attr := ""
	switch k, less := r.mover(i); {
	case r.lessCounted(i):
		r.items[i].amount.minus, c.Less = false, true
	case r.compared(i) >= 0:
		by := comparatives[r.items[r.compared(i)].word]
		words, c.Less, attr = []int{r.compared(i)}, by.less, by.attr
		if k >= 0 {
			words = append(words, k)
		}
	case k >= 0:
		words, c.Less = []int{k}, less
	case r.offThe(i):
		words, c.Less = []int{i + 1}, true
	default:
		if k, c.Less = r.adder(i); k < 0 {
			return c, nil, false
		}
		words = []int{k}
		if planes[r.items[k].word] {
			attr = "thick"
		}
	}
	c.Fields, ok = r.changed(i, attr)
	return c, words, ok
}

// compared is the "more", "thicker" or the like behind item i, but not "more
// than"; -1 where none is.
func (r *reader) compared(i int) int {
	at := i + 1
	if r.countedAt(i) && r.next(i) == at && r.word(at+1, "more", "less", "fewer", "extra") && (r.isBreak(at+2) || r.word(at+2, "and")) {
		at++ // "2 strips more"
	}
	if at >= len(r.items) || r.items[at].amount != nil || r.word(at+1, "than", "or") {
		return -1
	}
	word, ok := comparatives[r.items[at].word]
	_, whole := r.items[i].amount.whole()
	if n := r.next(at); !ok || word.attr != "" && whole && r.items[i].amount.bare() && r.is(n, kindNoun) && isPlural(r.items[n].word) {
		return -1 // "6 wider strips"
	}
	return at
}

// adder is the word of adding or taking away before item i; -1 where none is.
func (r *reader) adder(i int) (at int, less bool) {
	j := i - 1
	for j >= 0 && r.word(j, "in", "on", "about", "just", "of") {
		j--
	}
	if j < 0 {
		return -1, false
	}
	less, ok := adders[r.items[j].word]
	if !ok && r.word(j, "take", "takes", "taking", "pull", "knock", "shave", "plane", "planed", "sand", "sanded") && r.takenOff(i) {
		less, ok = true, true
	}
	if !ok && r.word(j, "put", "bring", "throw") && (r.word(i+1, "back") || r.is(r.next(i), kindNoun) && r.word(r.next(i)+1, "back")) {
		ok = true // "and put 2 back"
	}
	if !ok && r.word(j, "off", "out") && r.word(j-1, "take", "taking", "pull", "knock", "shave") {
		less, ok = true, true
	}
	if lowers, moves := r.pressureMove(i, j); moves {
		return j, lowers
	}
	if _, whole := r.items[i].amount.whole(); !ok || !r.countedAt(i) && !r.addedTo(i) && !planes[r.items[j].word] && !(whole && r.items[i].amount.bare() && (r.next(i) < 0 || r.word(i+1, "of") && r.word(i+2, "them", "em", "those", "these"))) {
		return -1, false
	}
	return j, less
}

// takenOff: "take 2 strips out", "take 1/4 off the bar".
func (r *reader) takenOff(i int) bool {
	_, to := r.clause(i)
	for j := i + 1; j < to; j++ {
		if r.items[j].word == "off" || r.items[j].word == "out" || r.items[j].word == "away" {
			return true
		}
	}
	return false
}

// countedAt reports whether item i counts the part behind it.
func (r *reader) countedAt(i int) bool {
	n := r.next(i)
	_, whole := r.items[i].amount.whole()
	return whole && r.items[i].amount.bare() && r.is(n, kindNoun) && countFields[r.items[n].id] != nil
}

// addedTo: "another half inch on the bar", "add 1/4 to the bar".
func (r *reader) addedTo(i int) bool {
	return r.word(i+1, "on", "to", "onto", "off", "from") && (r.is(r.next(i+1), kindNoun) || r.is(r.next(i+1), kindAttr)) || r.is(r.next(i), kindVacuum, "vacuum")
}

// mover is the verb left of item i that raises or lowers what stands between, or
// before it; -1 where none does.
func (r *reader) mover(i int) (at int, less bool) {
	if r.word(i-1, "like", "say", "at", "is", "its") {
		return -1, false
	}
	beside, turned, down := false, -1, false
	for j := i - 1; j >= 0 && j >= i-6 && !r.isBreak(j); j-- {
		w := r.items[j].word
		lowers, isMover := movers[w]
		switch {
		case r.word(j, "up") && r.word(j-1, "sticks", "stick", "stands", "stand"):
			return -1, false // "the bar sticks up 1 1/2" is how high it is
		case r.word(j, "up", "down"):
			turned, down, beside = j, w == "down", true
		case r.word(j, "by", "it", "them"):
			beside = true
		case isMover && (beside || r.partAt(j-1)):
			return j, lowers && turned < 0 || down
		case turned >= 0 && r.word(j, "go", "goes", "going", "bring", "turn", "move", "take", "crank"):
			return j, down
		case r.partAt(j) && turned >= 0:
			return turned, down // "bar up by 10"
		case r.partAt(j):
			beside = true
		case !r.idle(j) || w == "to" || r.items[j].amount != nil:
			return -1, false
		}
	}
	return -1, false
}

// partAt reports whether item j is something that can be raised or lowered.
func (r *reader) partAt(j int) bool {
	if r.is(j, kindNoun) {
		it := &r.items[j]
		return it.id == "strip" || it.id == "pump" || bareFields[it.id] != "" && !movers[it.word]
	}
	return r.is(j, kindVacuum, "vacuum", "gauge") || r.is(j, kindAir)
}

// changed are the fields that the number at item i can change.
func (r *reader) changed(i int, attr string) ([]unit.Field, bool) {
	am := r.items[i].amount
	from, to := r.clause(i)
	if r.countedBehind(i) {
		n := r.counted(i)
		if n < 0 {
			n = r.next(i + 1)
		}
		return countFields[r.items[n].id], countFields[r.items[n].id] != nil
	}
	switch {
	case am.is(unit.Lasting):
		return []unit.Field{unit.PressTime}, r.compared(i) >= 0
	case am.is(unit.Pressing) && (r.solving != "" || r.namesFigure(i)):
		am.dead = true // so much more than a figure was
		return nil, false
	case am.is(unit.Pressing):
		if r.within(from, to, kindAir, "barometer") >= 0 {
			return []unit.Field{unit.Ambient}, true
		}
		return []unit.Field{unit.Vacuum}, true
	case am.is(unit.Pumping):
		return []unit.Field{unit.PumpSpeed}, true
	case am.is(unit.Content):
		return []unit.Field{unit.PressVolume}, r.compared(i) >= 0 // "60 gal more"
	case am.is(unit.Warmth):
		return sizeFields["warm"], true
	case am.is(unit.Proportion):
		return r.changedAir(from, to)
	case !r.length(i):
		return nil, false
	case r.within(from, to, kindVacuum, "vacuum", "gauge") >= 0:
		if am.is(unit.Distance) && am.unit.Symbol == "in" {
			u := unit.InHg
			am.unit = &u
		}
		return []unit.Field{unit.Vacuum}, am.bare() || am.is(unit.Pressing)
	}
	return r.changedSize(i, from, to, attr)
}

// countedBehind reports whether a part of which there are several is counted by
// item i: "2 more strips".
func (r *reader) countedBehind(i int) bool {
	if _, whole := r.items[i].amount.whole(); !whole || !r.items[i].amount.bare() {
		return false
	}
	n := r.next(i)
	if r.word(i+1, "more", "less", "fewer", "extra", "additional", "of") {
		n = r.next(i + 1)
	}
	if r.is(n, kindNoun, "bar") && r.opensWithin(i+1, n, "off", "to", "onto", "on", "from") && !isPlural(r.items[n].word) {
		return false // "take 5 off the bar"
	}
	return r.is(n, kindNoun) && countFields[r.items[n].id] != nil && (n <= i+4)
}

// changedAir are the shares of water that a per cent can change.
func (r *reader) changedAir(from, to int) ([]unit.Field, bool) {
	if r.within(from, to, kindAir, "mc") >= 0 {
		return []unit.Field{unit.WoodMoisture}, true
	}
	if r.within(from, to, kindAir, "rh") >= 0 {
		return []unit.Field{unit.ServiceHumidity, unit.ShopHumidity}, true
	}
	return nil, false
}

// changedSize are the fields of a length: by the part in the clause and the
// direction.
func (r *reader) changedSize(i, from, to int, attr string) ([]unit.Field, bool) {
	from, to = r.betweenAnds(i, from, to)
	if k := r.within(from, to, kindAttr); k >= 0 && attr == "" {
		attr = r.items[k].id
	}
	for k := from; k < to; k++ {
		if !r.is(k, kindNoun) || movers[r.items[k].word] {
			continue
		}
		f := attrFields[r.items[k].id][attr]
		if f == "" && (attr == "" || attr == "tall") {
			f = bareFields[r.items[k].id]
		}
		if f == unit.StripThickness && attr == "tall" {
			continue
		}
		return []unit.Field{f}, f != ""
	}
	if attr != "" {
		return sizeFields[attr], sizeFields[attr] != nil
	}
	if _, whole := r.items[i].amount.whole(); whole && r.items[i].amount.bare() {
		n := r.next(i)
		if n == i+1 {
			n = r.next(n)
		}
		if r.word(i+1, "of") && r.word(i+2, "them", "em", "those", "these") && !r.isBreak(i+2) {
			return []unit.Field{unit.StripCount, unit.PanelCount, unit.BarCount, unit.PressCount}, true // "lose one of them again"
		}
		return []unit.Field{unit.StripCount, unit.PanelCount}, n < 0 || r.word(n, "and")
	}
	return nil, r.items[i].amount.is(unit.Distance)
}

// betweenAnds narrows the bounds around item i to the "and" on either side.
func (r *reader) betweenAnds(i, from, to int) (int, int) {
	for k := i - 1; k >= from; k-- {
		if r.word(k, "and") {
			from = k
			break
		}
	}
	for k := i + 1; k < to; k++ {
		if r.word(k, "and") {
			to = k
		}
	}
	return from, to
}

// things gives up the count of a part that nobody counts: "three sleds", "two
// pumps" are no measures.
func (r *reader) things() {
	if r.amountsIn(0, len(r.items)) != 1 {
		return
	}
	for i := range r.items {
		n := i + 1
		if !r.free(i) || !r.is(n, kindNoun, "sled", "mat", "caul", "pump", "wedge", "core", "reservoir", "fence", "film") {
			continue
		}
		if _, whole := r.items[i].amount.whole(); whole && r.items[i].amount.bare() && (isPlural(r.items[n].word) || r.items[i].amount.form == formWords) {
			r.items[i].amount.dead = true
		}
	}
}

package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// What words around a number of a thread say that it is, or is not.

// wordsAhead takes words for what they are before any number is read.
func (r *reader) wordsAhead() {
	r.glossed()
	r.assumedThen()
	r.madeOf()
	r.humpedBy()
	r.twoQuestions()
}

// twoQuestions: "two q's:" are questions, and nothing quartersawn.
func (r *reader) twoQuestions() {
	if !r.says("qs") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if r.is(i, kindFact) && r.word(i, "qs") && r.isBreak(i+1) && (r.items[i-1].amount != nil || r.word(i-1, "of", "few", "quick", "these", "some", "my", "more", "other")) {
			r.items[i].meaning, r.items[i].used = meaning{kind: kindFill}, true
		}
	}
}

// inSection: "48 by 22 in section" tells no inches.
func (r *reader) inSection(i int) bool {
	return r.word(i+1, "section", "cross", "profile") || r.habit.Metric && r.timesAt(i) && r.is(i+1, kindAttr) && nounForm(r.items[i+1].word)
}

// anotherRow: "there's another 4 at 75" is of strips, and copies no load.
func (r *reader) anotherRow(at int) bool {
	k := at + 1
	return r.habit.Follows && r.is(at, kindVerb, string(Copy)) && r.word(at, "another") && r.free(k) && k+1 < len(r.items) && r.items[k+1].amount != nil && r.items[k+1].amount.link == linkAt
}

// assumedThen keeps "ok assume 20% in there then" from being the room's for good.
func (r *reader) assumedThen() {
	if !r.habit.Follows {
		return
	}
	for i := range r.items {
		if r.is(i, kindAsk, "profile") && (r.is(i-1, kindNoun) || r.word(i-1, "i") && r.is(i-2, kindNoun)) && r.opensWithin(max(i-6, 0), i, "with") && strings.HasSuffix(r.items[i].word, "always use") {
			r.items[i].meaning, r.items[i].used = meaning{}, true // "no i mean with the 3/4 caul i always use"
		}
		if r.is(i, kindAsk, "profile") && r.word(i, "assume") && r.amountsIn(0, len(r.items)) == 1 && (r.wordIn("then", "there", "instead", "here", "once") || r.word(i-1, "ok", "okay", "lets", "just")) {
			r.items[i].meaning, r.items[i].used = meaning{}, true
		}
	}
}

// humpedBy reads "humped up an eighth", "dished about 3 mm": how far it is out is a cup.
func (r *reader) humpedBy() {
	if !r.means(kindFact, "cup_up=hump", "cup_up=hollow") {
		return
	}
	for i := 0; i < len(r.items); i++ {
		if !r.is(i, kindFact, "cup_up=hump", "cup_up=hollow") {
			continue
		}
		k := i + 1
		for r.word(k, "by", "about", "maybe", "roughly", "around", "like", "a", "some", "good") {
			k++
		}
		if k >= len(r.items) || r.items[k].amount == nil || !r.length(k) || r.size(k) > mostCup || r.mentions(kindNoun, "cup", "bow", "bar") {
			continue
		}
		if n := r.next(k); r.is(n, kindAttr) || r.is(n, kindNoun) || r.is(n, kindWood) || r.items[k].amount.link != linkNone {
			continue
		}
		end := r.items[k].end
		r.items = slices.Insert(r.items, k+1, item{meaning: meaning{kind: kindNoun, id: "cup"}, word: "cup", start: end, end: end})
		r.hear(k + 1)
	}
}

// mostCup, in metres: a board that is to be pressed flat is not out by more.
const mostCup = 0.03

// offEachEdge reads "5 off each edge for cleaning" as trim on both sides.
func (r *reader) offEachEdge(i int) bool {
	k := i + 1
	for r.is(k, kindUnit) {
		k++
	}
	if !r.word(k, "off", "from", "on") || !r.is(k+1, kindRole, "in a row") && !r.word(k+1, "each", "both", "either", "every") && !r.is(k+1, kindFact, "faces=2") {
		return false
	}
	if r.has(unit.StockPiles) && !r.has(unit.Trim) && r.word(k, "off") && r.is(k+1, kindRole, "in a row") && r.isBreak(k+2) && small(r.size(i)) && r.offPanels(i) {
		return r.bind(i, unit.Trim) // "two panels 24 wide, half inch off each"
	}
	if !r.is(k+1, kindFact, "faces=2") && !r.word(k+2, "edge", "edges", "side", "sides") || r.has(unit.Trim) {
		return false
	}
	last := k + 2
	if r.is(k+1, kindFact, "faces=2") {
		last = k + 1
	}
	if !(r.has(unit.StockPiles) && small(r.size(i))) && !r.opensWithin(last, len(r.items), "cleaning", "clean", "cleanup", "jointing", "squaring", "trimming", "saw", "jointer") && r.within(last, len(r.items), kindRole, "trim") < 0 {
		return false
	}
	v, u, ok := r.valueOf(r.items[i].amount, unit.Trim)
	if !ok || impossible(unit.Trim, v) != "" {
		return false
	}
	r.items[i].used = true
	for j := k; j <= last; j++ {
		r.items[j].used, r.items[j].meaning = true, meaning{}
	}
	r.bound = append(r.bound, binding{Fact{Field: unit.Trim, Value: unit.Number(2 * v), Unit: u, Text: r.items[i].text, Note: "on each side"}, i, false})
	return true
}

// offPanels: what comes off each comes off panels where they are named, but "after jointing
// lose 1/8 off each" is of strips.
func (r *reader) offPanels(i int) bool {
	from, to := r.clause(i)
	jointed := r.opensWithin(from, to, "jointing", "joint", "jointed", "joints", "jointer", "edging", "planing", "planed", "planer", "straightening", "straightened", "straighten", "edges")
	return !jointed && r.within(0, i, kindNoun, "panel") >= 0
}

// needsIn: "they only need 40 minutes in" tells how long a load is pressed.
func (r *reader) needsIn(i int) bool {
	in := r.is(i+1, kindUnit, "in") || r.is(i+1, kindVerb, "in") || r.word(i+1, "in")
	return in && (i+2 >= len(r.items) || r.isBreak(i+2) || r.word(i+2, "there")) && !r.labelled(i) && r.opensWithin(max(i-4, 0), i, "need", "needs", "want", "wants", "get", "gets", "give", "gives", "giving")
}

// worse are the fields of which "one's worse, more like 3/16" tells another value.
func (r *reader) worse(j int) []unit.Field {
	if !r.length(j) || r.size(j) > mostCup {
		return nil
	}
	for k := j - 1; k >= 0 && k > j-10 && r.items[k].amount == nil; k-- {
		if r.word(k, "worse", "worst", "worse than", "flatter", "flatter than") {
			return []unit.Field{unit.Cup, unit.Gap, unit.Bow}
		}
	}
	return nil
}

// madeOf takes the stuff of "18 ply sled", "an mdf caul" for that of the part, and no core.
func (r *reader) madeOf() {
	if !r.means(kindNoun, "core") && !r.means(kindFact, "core=mdf", "core=plywood") {
		return
	}
	for i := range r.items {
		if r.is(i, kindNoun, "core") && r.is(i+1, kindNoun, "sled", "caul", "fence") && !isPlural(r.items[i].word) && i > 0 && (r.items[i-1].amount != nil || r.word(i-1, "a", "an", "the")) {
			r.items[i].meaning, r.items[i].used = meaning{}, true
		}
		if r.is(i, kindNoun, "core") && r.word(i+1, "blocks", "block", "blocking", "spacers", "packers", "bricks") {
			r.items[i].meaning = meaning{} // "fill half the frame with mdf blocks"
		}
		if r.is(i, kindFact) && (r.items[i].id == "core=mdf" || r.items[i].id == "core=plywood") && r.word(i+1, "blocks", "block", "blocking", "spacers", "packers", "bricks") {
			r.items[i].meaning = meaning{}
		}
	}
}

// toldLast reports whether "listed from the bottom" at item i stands behind all layers.
func (r *reader) toldLast(i int) bool {
	return i > 0 && r.amountsIn(i, len(r.items)) == 0 && r.amountsIn(0, i) > 2
}

// hinted are the fields that the words around the number at item j make it of.
func (r *reader) hinted(j int) []unit.Field {
	if worse := r.worse(j); worse != nil {
		return worse
	}
	v, bare := r.items[j].amount.float(), r.items[j].amount.bare()
	switch {
	case bare && r.word(j-1, "at") && r.word(j-2, "one", "ones") && r.mentions(kindAir, "service") && v >= 10 && v <= 60:
		return []unit.Field{unit.ServiceHumidity} // "that's the beach house. The city one's at 30"
	case bare && r.onPumpsPlate(j):
		return []unit.Field{unit.PumpSpeed} // "the plate on the pump reads 3.8"
	case bare && r.word(j-1, "say", "about", "only", "maybe", "like", "at") && r.isBreak(j+1) && r.pumpAlone():
		return []unit.Field{unit.PumpSpeed} // "pump's tired, say 4"
	}
	return nil
}

// pumpAlone reports whether the pump is the one thing that a message names.
func (r *reader) pumpAlone() bool {
	if r.amountsIn(0, len(r.items)) != 1 || r.mentions(kindVacuum) {
		return false
	}
	for i := range r.items {
		if r.is(i, kindNoun) && !r.is(i, kindNoun, "pump") {
			return false
		}
	}
	return r.mentions(kindNoun, "pump")
}

// woodAt: "wood's at 9", "veneer's walnut at 10" tell how wet the wood is, where the air that
// it goes to is told.
func (r *reader) woodAt(i int) bool {
	v := r.items[i].amount.float()
	if v > 20 || !r.word(i-1, "at", "is", "about", "around") || !r.mentions(kindAir, "service", "rh") || !r.percentSaid() || r.next(i) >= 0 {
		return false
	}
	k := i - 1
	for r.word(k, "at", "is", "was", "about", "around", "now", "still") {
		k--
	}
	return r.is(k, kindWood) && k == i-2 || r.is(k, kindWoodSort) && r.word(k, "wood", "timber", "lumber") || r.word(k, "wood", "timber", "lumber")
}

// firmOne: "swap the mat for a firm 6 one", "a 1/4 firm one instead" measure the mat.
func (r *reader) firmOne() bool {
	for i := range r.items {
		if !r.free(i) || !r.length(i) || !small(r.size(i)) || r.items[i].amount.form == formWords || r.has(unit.MatThickness) {
			continue
		}
		near := firmness[r.wordAt(i-1)] != "" || firmness[r.wordAt(i+1)] != ""
		k := i + 1
		if firmness[r.wordAt(k)] != "" {
			k++
		}
		if !near || !r.one(k) && !r.word(k, "one") || !r.onlyMats() {
			continue
		}
		r.items[k].used = true
		return r.bind(i, unit.MatThickness)
	}
	return false
}

// onlyMats reports whether no part but a mat is named.
func (r *reader) onlyMats() bool {
	for i := range r.items {
		if r.is(i, kindNoun) && !r.is(i, kindNoun, "mat") {
			return false
		}
	}
	return true
}

// otherOnes keeps the size of "plus 3 shorter ones, 620 x 1200" from being that of those told
// before.
func (r *reader) otherOnes() {
	if !r.habit.Follows {
		return
	}
	for i := range r.items {
		n, whole := r.wholeAt(i)
		c, ok := comparatives[r.wordAt(i+1)]
		if !whole || n < 1 || !ok || c.attr == "" || !r.word(i+2, "ones") {
			continue
		}
		more := r.word(i-1, "plus", "another", "and", "also", "extra")
		for k := i + 3; k < len(r.items); k++ {
			if am := r.items[k].amount; am != nil && more && (am.link == linkTimes || r.timesAt(k+1)) {
				am.dead, r.items[i].amount.dead = true, true
			}
		}
		if !more && r.amountsIn(i+1, len(r.items)) == 1 {
			r.narrowerOnes(i, c.attr)
		}
		return
	}
}

// narrowerOnes reads "six narrower ones instead, 3 1/4": how many strips there are now, and
// the measure that the comparative names.
func (r *reader) narrowerOnes(i int, attr string) {
	f := attrFields["strip"][attr]
	for k := i + 3; k < len(r.items); k++ {
		if r.free(k) && r.length(k) && small(r.size(k)) && f != "" && !r.is(r.next(k), kindNoun) && !r.is(r.next(k), kindAttr) {
			r.items[i+1].used, r.items[i+1].meaning = true, meaning{}
			r.bind(i, unit.StripCount)
			r.bind(k, f)
			return
		}
	}
}

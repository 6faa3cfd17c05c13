package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// What words around a number of a thread say that it is, or is not.

// keptThere: the number of "he keeps it at 68 in there" names no load.
func (r *reader) keptThere(at int) bool {
	return r.habit.Follows && r.free(at) && r.word(at-1, "at", "to") && r.word(at-2, "it", "that", "them", "place", "house", "heat", "thermostat")
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
		if r.is(i, kindAsk, "profile") && r.word(i, "assume") && r.amountsIn(0, len(r.items)) == 1 && (r.wordIn("then", "there") || r.word(i-1, "ok", "okay", "lets", "just")) {
			r.items[i].meaning, r.items[i].used = meaning{}, true
		}
	}
}

// humpedBy reads "humped up an eighth", "dished about 3 mm": how far it is out is a cup.
func (r *reader) humpedBy() {
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
	if !r.is(k+1, kindFact, "faces=2") && !r.word(k+2, "edge", "edges", "side", "sides") || r.has(unit.Trim) {
		return false
	}
	last := k + 2
	if r.is(k+1, kindFact, "faces=2") {
		last = k + 1
	}
	if !r.opensWithin(last, len(r.items), "cleaning", "clean", "cleanup", "jointing", "squaring", "trimming", "saw", "jointer") && r.within(last, len(r.items), kindRole, "trim") < 0 {
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

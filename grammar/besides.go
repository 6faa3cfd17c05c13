package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// inWhile: the "in" of "from 0.85 to 0.78 in 20 minutes" is no inch.
func (r *reader) inWhile() {
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.unitRaw != "in" || i+1 >= len(r.items) || r.items[i+1].amount == nil || !r.items[i+1].amount.is(unit.Lasting) || r.items[i+1].amount.link != linkNone {
			continue
		}
		k := i - 1
		for r.word(k, "down to", "to", "down", "now", "at", "on", "and", "then", "was", "is", "its", "fell to", "dropped to", "falls to", "drops to") || r.is(k, kindVacuum) {
			k--
		}
		drop := k >= 0 && r.items[k].amount != nil && r.items[k].amount.bare() && (k < i-1 || am.link == linkTo)
		if !drop && !r.habit.Metric {
			continue
		}
		am.unit, am.unitRaw = nil, ""
		it := &r.items[i]
		it.text = strings.TrimSpace(strings.TrimSuffix(it.text, "in"))
		it.end = it.start + len(it.text)
	}
}

// partings are verbs that make several pieces of one.
var partings = wordSet(`rip ripped ripping cut cutting split splitting saw sawn sawing resaw resawn resawing slice sliced slicing slit slitting divide divided dividing part chop crosscut break`)

// mostPieces is how many pieces of a board one speaks of without naming them.
const mostPieces = 12

// killPieces: "rip it into 2", "cut in 3" counts pieces that nobody measured.
func (r *reader) killPieces() {
	if !r.says("in", "into") {
		return
	}
	for i := range r.items {
		n, ok := r.spokenOrWhole(i)
		am := r.items[i].amount
		if !ok || n < 2 || n > mostPieces || !am.bare() || am.plural || am.link != linkNone || !r.word(i-1, "in", "into") {
			continue
		}
		if k := r.next(i); k >= 0 && (r.is(k, kindNoun) || r.is(k, kindAttr) || r.is(k, kindUnit) || r.items[k].amount != nil) {
			continue // "into 3 strips", "into 2 wide"
		}
		from, _ := r.clause(i)
		for k := i - 2; k >= from && k >= i-6 && r.items[k].amount == nil; k-- {
			if partings[r.items[k].word] {
				am.dead = true
				break
			}
		}
	}
}

// oneOfPresses are words that tell one press from the others.
var oneOfPresses = wordSet(`first second third fourth other new small big large spare old last`)

// killOneStart: in "press 2 starts at 10", and in "make it 3 presses from 10" of a
// thread, the day may start earlier for the others.
func (r *reader) killOneStart() {
	if !r.means(kindRole, "start") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindRole, "start") {
			continue
		}
		at := i + 1
		for r.word(at, "at", "up", "from", "only", "up at", "not before", "around", "about") {
			at++
		}
		k := i - 1
		for r.word(k, "only", "cant", "can", "will", "wont", "doesnt", "does") || r.is(k, kindNot) {
			k--
		}
		if r.free(at) && r.ofOnePress(k) {
			r.items[at].amount.dead = true
		}
	}
}

// ofOnePress reports whether what ends at item k is one press of several.
func (r *reader) ofOnePress(k int) bool {
	if r.free(k) && r.items[k].amount.bare() && r.is(k-1, kindNoun, "press") && !isPlural(r.items[k-1].word) {
		return r.items[k].amount.form == formInt || r.items[k].amount.form == formWords // "press 2"
	}
	if r.word(k, "one") && r.mentions(kindNoun, "press") {
		k--
		return oneOfPresses[r.items[max(k, 0)].word] // "the second one starts at 10"
	}
	if !r.is(k, kindNoun, "press") || k == 0 {
		return false
	}
	if isPlural(r.items[k].word) {
		return r.habit.Follows && r.free(k-1) && r.is(k-2, kindFix)
	}
	return oneOfPresses[r.items[k-1].word]
}

// takesHigh reports whether the number at item i is how high a stack a press takes, as in
// "frame takes 4 in" and "the frame has 6 inches"; without a unit beside panels it is how many
// of them.
func (r *reader) takesHigh(i int) bool {
	if r.pressOf(i) {
		return true
	}
	has := r.word(i-1, "has") && !r.items[i].amount.bare()
	if !has && !r.word(i-1, "takes", "swallows") || !r.is(i-2, kindNoun, "frame", "press", "opening") || !r.isBreak(i+1) || r.has(unit.Opening) {
		return false
	}
	const lowest = 0.025
	if has && r.size(i) < lowest {
		return false
	}
	bare := r.items[i].amount.bare()
	return r.size(i) < 0.5 && !(bare && (r.size(i) < lowest || !r.habit.Metric && (r.mentions(kindNoun, "panel") || r.tooHigh(i))))
}

// bareLimit reports whether the bare number at item i is where a pump stops: "the pump
// stops at 0.88".
func (r *reader) bareLimit(i int) bool {
	from, _ := r.clause(i)
	pump := strings.Contains(r.items[max(r.prev(i), 0)].word, "pump") || r.within(from, i, kindNoun, "pump") >= 0
	if !pump || !r.is(r.prev(i), kindRole, "limit") || r.has(unit.PumpLimit) || r.needleStops(i) {
		return false
	}
	const least = 30000 // Pa; less could be what is left
	u := r.bareVacuumUnit(r.items[i].amount)
	return u.Dimension == unit.Pressing && u.SI(r.items[i].amount.float()) > least
}

// inBefore reports whether "in" stands right before item i, be it taken for the unit
// of the number before.
func (r *reader) inBefore(i int) bool {
	return i > 0 && (r.word(i-1, "in") || strings.EqualFold(strings.TrimSpace(r.text[r.items[i-1].end:r.items[i].start]), "in"))
}

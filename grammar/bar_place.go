package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// footOn: "its foot is down on the platen", which is the bed there.
func (r *reader) footOn(i int) bool {
	for j := i + 1; j < len(r.items) && j <= i+5; j++ {
		if r.word(j, "on") && r.word(j+1, "the") {
			return r.is(j+2, kindNoun, "bed") || r.word(j+2, "platen")
		}
	}
	return false
}

// barEdges: "a bar down each long edge" is one on both sides.
func (r *reader) barEdges(i int) bool {
	if !r.word(i+1, "down", "along", "on", "at", "against") || isPlural(r.items[i].word) && r.free(i-1) {
		return false
	}
	j := i + 2
	if !r.word(j, "each", "either", "both") && !r.is(j, kindRole, "in a row") {
		return r.is(j, kindFact, "faces=2")
	}
	for j++; r.word(j, "long", "of", "the") || r.is(j, kindAttr, "long"); j++ {
	}
	return r.word(j, "edge", "side", "edges", "sides")
}

// barStands: "with the side bar", "with our usual bar" have a bar, however high; "would it
// help with a bar" does not.
func (r *reader) barStands() bool {
	if r.solving == unit.BarHeight || r.has(unit.BarHeight) || r.has(unit.BarDenied) || r.has(unit.StackLayers) || r.chosen(unit.BarHeight) {
		return false
	}
	for i := range r.items {
		if !r.is(i, kindNoun, "bar") || r.is(i+1, kindNoun) {
			continue
		}
		if r.levelWithCaul(i) {
			return true
		}
		j := i - 1
		for r.word(j, "the", "a", "our", "my", "same", "usual", "normal", "regular", "standard", "steel", "side", "that", "this", "our usual", "my usual") || r.is(j, kindWood) || r.is(j, kindWoodSort) {
			j--
		}
		from, to := r.sentence(i)
		if j < i-1 && r.word(j, "with", "using", "against") && !r.opensWithin(from, to, "better", "help", "helps", "would", "need", "needed", "should", "if", "instead", "worth", "than", "difference") {
			return true
		}
	}
	return false
}

// levelWithCaul: "the bar is level with the top of the caul", "bar even with a caul of 3/4" tell
// that the bar at item i is there, and not how high it is.
func (r *reader) levelWithCaul(i int) bool {
	_, to := r.clause(i)
	at := i + 1
	for at < to && !r.word(at, "level", "flush", "even", "as", "same") {
		if r.items[at].amount != nil || !r.idle(at) && !r.word(at, "is", "sits", "stands", "comes", "comes up", "now", "the", "up", "just", "right", "runs") {
			return false
		}
		at++
	}
	caul := r.within(at, to, kindNoun, "caul")
	return at < to && caul > 0 && (r.amountsIn(at, to) == 0 || r.amountsIn(at, to) == 1 && (r.items[caul-1].amount != nil || r.amountsIn(caul, min(caul+4, to)) == 1))
}

// barPlace reads where the bar stands: "bar sits on the bed next to the sled".
func (r *reader) barPlace() {
	if !r.means(kindNoun, "bar") && !r.means(kindAsk) {
		return
	}
	on, foot := r.says("on"), r.says("foot")
	for i := range r.items {
		if foot && r.word(i, "foot") && r.mentions(kindNoun, "bar") && r.footOn(i) {
			r.say(i, unit.BarFoot, unit.Word("bed"))
			continue
		}
		if k := r.items[i].kind; k != kindNoun && k != kindAsk || !r.is(i, kindNoun, "bar") && !r.asksForBar(i) {
			continue
		}
		if r.word(i-1, "second", "other", "extra") && r.takenAway(i) {
			r.say(i, unit.BarCount, unit.Number(1))
			continue
		}
		if r.secondBar(i) || (r.barEdges(i) || r.word(i-1, "both") && isPlural(r.items[i].word)) && !r.has(unit.BarCount) {
			r.say(i, unit.BarCount, unit.Number(2))
			continue
		}
		for j := i + 1; on && j < len(r.items) && j <= i+14 && !r.isStop(j); j++ {
			if r.word(j, "foot") {
				continue
			}
			if !r.word(j, "on") || j > i+8 && !r.word(j-1, "stands", "standing", "sits", "rests") {
				if r.items[j].amount != nil && r.items[j].amount.unit != nil && r.is(r.next(j), kindNoun) {
					break
				}
				continue
			}
			k := j + 1
			for k < len(r.items) && (r.word(k, "the", "our", "same", "a") || r.items[k].amount != nil) {
				k++
			}
			switch {
			case r.is(k, kindNoun, "bed"), r.word(k, "platen") && r.wordIn("foot", "stands", "stood", "sits"):
				r.sayOnce(k, unit.BarFoot, "bed")
			case r.is(k, kindNoun, "sled"):
				r.sayOnce(k, unit.BarFoot, "sled")
			}
		}
	}
}

// asksForBar: in "what bar standing on the bed" the bar is within the question.
func (r *reader) asksForBar(i int) bool {
	return r.is(i, kindAsk) && (strings.HasSuffix(r.items[i].word, " bar") || strings.HasSuffix(r.items[i].word, " batten"))
}

// takenAway: "take the second bar away", "drop the other bar".
func (r *reader) takenAway(i int) bool {
	from, to := r.clause(i)
	return r.within(from, i, kindNot) >= 0 || r.opensWithin(from, i, "take", "lose", "drop", "remove", "took") && (r.opensWithin(i, to, "away", "off", "out") || r.opensWithin(from, i, "lose", "drop", "remove"))
}

// secondBar: "put another bar on the other side too".
func (r *reader) secondBar(i int) bool {
	if !r.word(i-1, "another", "second", "a", "same", "one") || r.has(unit.BarCount) {
		return false
	}
	from, to := r.sentence(i)
	if !r.word(i-1, "another", "second") && !(r.word(i-1, "a", "same", "one") && r.opensWithin(from, to, "too", "also", "both", "well", "same")) {
		return false
	}
	for j := from; j < to; j++ {
		if r.word(j, "opposite", "far") || r.word(j, "other") && r.word(j+1, "side", "edge") {
			return true
		}
	}
	return false
}

// pushReaches: "how far does the push from a bar reach in" asks of no hand.
func (r *reader) pushReaches(i int) bool {
	from, _ := r.sentence(i)
	far := false
	for k := from; k < i; k++ {
		if r.word(k, "i", "we", "you", "my", "your") || r.is(k, kindPerson) {
			return false
		}
		far = far || r.items[k].amount == nil && strings.Contains(r.items[k].word, "far")
	}
	return far && (r.within(from, i, kindNoun, "bar") >= 0 || r.opensWithin(from, i, "push", "pressure", "force", "squeeze"))
}

// onOtherSide: "no bar on the far side, just the near side" has one all the same.
func (r *reader) onOtherSide(k int) bool {
	if !r.word(k, "on", "at", "along", "down") {
		return false
	}
	for k++; r.word(k, "the", "my", "that"); k++ {
	}
	side := r.word(k, "far side") || r.word(k, "far", "other", "opposite", "left", "right", "back", "near", "front") && r.word(k+1, "side", "edge", "end")
	return side && r.mentions(kindNoun, "bar") && r.heightTold(k) >= 0
}

// heightTold is a number behind item k that tells how tall something is; -1 where none does.
func (r *reader) heightTold(k int) int {
	for i := k; i < len(r.items); i++ {
		if r.items[i].amount != nil && r.length(i) && r.is(r.next(i), kindAttr, "tall") {
			return i
		}
	}
	return -1
}

package grammar

import "presshand/engine/unit"

// In metres: what "on the strips" tells as a thickness, more being a width, and what "on the
// bar" can tell.
const (
	leastPart     = 0.002
	thickestStrip = 0.035
	tallestBar    = 0.1
)

// partsBehind reads a check, or a later message of a thread, that names a part behind its
// measure: "got 1 1/4 on the bar", "1 1/2 for the bar", "the mic says 3/8 on the strips".
func (r *reader) partsBehind(checks bool) {
	if checks {
		r.partsInARow()
	} else if !r.habit.Follows {
		return
	}
	for i := range r.items {
		if !r.free(i) || !r.length(i) || r.items[i].amount.link != linkNone {
			continue
		}
		old, k := r.ratherThan(i), r.partTurnedOut(i)
		if k < 0 && r.toldAlone(i) {
			k = r.partNamed(max(i, old) + 1)
		}
		if k < 0 {
			continue
		}
		f := unit.BarHeight
		if r.items[k].id == "strip" {
			f = unit.StripThickness
		}
		if r.has(f) || r.size(i) < leastPart || f == unit.BarHeight && r.size(i) > tallestBar || f == unit.StripThickness && r.size(i) > thickestStrip || !r.bind(i, f) {
			continue
		}
		r.items[k].used = true
		if old > 0 {
			r.items[old].amount.dead = true
		}
	}
}

// toldAlone: what stands before the number at item i gives it no other part, and adds it to
// nothing: not "the mat is 1/4 on the strips", "add 1/2 on the bar".
func (r *reader) toldAlone(i int) bool {
	for k := range i {
		if r.is(k, kindNoun) && !r.is(k, kindNoun, "bar", "strip") || r.is(k, kindAir) || r.is(k, kindFact) || r.word(k, "meter") {
			return false
		}
	}
	return i == 0 || r.isBreak(i-1) || r.is(i-1, kindSay) || r.word(i-1, "its", "is", "got", "get", "say", "says", "have", "had", "has", "to", "and", "use", "about", "would", "at", "measured", "find", "found", "reads", "shows", "now", "only", "just")
}

// ratherThan is the number that the one at item i takes the place of, of "its 1 3/4 not 1 on
// the bar"; -1 where there is none.
func (r *reader) ratherThan(i int) int {
	if j := i + 2; r.is(i+1, kindNot) && in(r.items[i+1].word, "not", "instead of", "rather than") && j < len(r.items) && r.items[j].amount != nil {
		return j
	}
	return -1
}

// partNamed is the bar or the strips that "on the …" at item k names; -1 where it names none.
func (r *reader) partNamed(k int) int {
	for r.word(k, "be", "better", "work", "do", "good", "enough", "ok") {
		k++
	}
	if !r.word(k, "on", "for") {
		return -1
	}
	for k++; r.word(k, "the", "that", "your", "our", "this", "each", "side"); k++ {
	}
	if !r.is(k, kindNoun, "bar", "strip") || k+1 < len(r.items) && !r.isBreak(k+1) && (r.is(r.next(k), kindAttr) || r.items[k+1].amount != nil) {
		return -1
	}
	return k
}

// partTurnedOut is the part of "the bar turned out 1 1/8" with the number at item i; else -1.
func (r *reader) partTurnedOut(i int) int {
	if k := i - 2; r.word(i-1, "turned out", "came out", "turned out at", "came out at") && r.is(k, kindNoun, "bar", "strip") && !r.is(r.next(i), kindAttr) {
		return k
	}
	return -1
}

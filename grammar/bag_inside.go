package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// leastBag, in millimetres: no bag is narrower.
const leastBag = 150

// bagInside: "bag is 1 inch inside" tells how high it opens, "bag's 3 inches" nothing sure, and
// is left unread.
func (r *reader) bagInside(i, p int) bool {
	if p < 0 || !r.is(p, kindNoun, "bag") && !(r.is(p, kindAsk) && strings.Contains(r.items[p].word, "our bag")) || i+1 < len(r.items) && r.items[i+1].amount != nil {
		return false
	}
	v, _, ok := r.valueOf(r.items[i].amount, unit.BagWidth)
	if !ok || v <= 0 || v >= leastBag || r.items[i].amount.minus {
		return false
	}
	inside := r.word(i+1, "inside", "clear", "internal", "internally", "high", "tall", "deep", "headroom") || r.is(i+1, kindAttr, "tall", "deep")
	if !inside && (r.is(r.next(i), kindAttr) || r.is(r.next(i), kindNoun) || r.items[i].amount.bare()) {
		return false
	}
	if !inside || r.has(unit.Opening) {
		r.items[i].amount.dead = true
		return true
	}
	r.items[i+1].meaning, r.items[i+1].used = meaning{}, true
	return r.bind(i, unit.Opening)
}

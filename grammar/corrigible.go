package grammar

import (
	"math"
	"strings"
)

// betweenNumbers reports whether item k may stand between a number and the word that
// corrects it.
func (r *reader) betweenNumbers(k int) bool {
	return r.isBreak(k) || r.idle(k) || r.word(k, "no", "nope", "nah") || r.is(k, kindAttr) || r.is(k, kindNoun) || r.is(k, kindVacuum) || r.is(k, kindAir) || r.is(k, kindFix) || r.is(k, kindWood)
}

// betweenFigures reports whether a stumble stands between two numbers: "1 1/2 wide er 2 1/4".
func (r *reader) betweenFigures(i int) bool {
	before := i - 1
	if r.is(before, kindAttr) {
		before--
	}
	return before >= 0 && r.items[before].amount != nil && i+1 < len(r.items) && r.items[i+1].amount != nil
}

// corrigible reports whether the number at item now can be another for that at item k.
func (r *reader) corrigible(k, now int) bool {
	if a, b := r.items[k].amount, r.items[now].amount; r.free(k) && (a.form == formPair || b.form == formPair) {
		return r.anHour(k) && r.anHour(now)
	}
	if !r.free(k) || r.items[k].amount.value == nil || r.items[k].amount.plural || r.items[k].amount.link != linkNone && r.items[k].amount.link != linkAt || k+1 < len(r.items) && r.items[k+1].amount != nil && r.items[k+1].amount.link != linkNone || !alike(r.items[k].amount, r.items[now].amount) {
		return false
	}
	if _, whole := r.items[now].amount.whole(); !whole && r.items[k].amount.bare() && r.is(r.counted(k), kindNoun, "strip", "panel", "press") && isPlural(r.items[r.counted(k)].word) && r.items[k].amount.form == formInt {
		return false // "5 strips, sorry 2 1/4"
	}
	return true
}

// anHour reports whether the number at item i can be a time of day.
func (r *reader) anHour(i int) bool {
	am := r.items[i].amount
	const hours = 24
	n, whole := am.whole()
	return am.form == formPair || whole && n > 0 && n <= hours
}

// sizeOff is how far two numbers differ, as a logarithm, where the later one has no unit.
func (r *reader) sizeOff(k, now int) float64 {
	a, b := r.items[k].amount, r.items[now].amount
	if a.form == formPair || b.form == formPair || a.unit != nil && b.unit != nil || a.float() <= 0 || b.float() <= 0 {
		return 0
	}
	if a.unit == nil && b.unit != nil {
		return 0
	}
	return math.Abs(math.Log(b.float() / a.float()))
}

// plainNumber reports whether item i is a number that belongs to no size or range.
func (r *reader) plainNumber(i int) bool {
	return r.free(i) && r.items[i].amount.link == linkNone && (r.items[i].amount.value != nil || r.items[i].amount.form == formPair) && (i+1 >= len(r.items) || r.items[i+1].amount == nil || r.items[i+1].amount.link == linkNone)
}

// pileAgain puts right one of the piles that were told before, named by its count or as
// the last of them, from item now on: "12 at 2 3/8 … no, the 12 are 2 1/2", "those last
// ones are actually 1 3/4". It returns the item behind, 0 where there is none.
func (r *reader) pileAgain(now int) int {
	to := now
	for r.word(to, "the", "those", "these", "they", "last", "ones") {
		to++
	}
	last := r.opensWithin(now, to, "those", "these", "they", "last")
	n, counted := 0, false
	if n, counted = r.wholeAt(to); counted && r.plainNumber(to) {
		to++
	} else if !last {
		return 0
	}
	if r.is(to, kindNoun, "strip") {
		to++
	}
	verb := to
	for r.word(to, "are", "theyre", "were", "is", "was", "be", "should", "should be", "been", "really", "actually", "are actually", "are really", "is actually", "only", "all") {
		to++
	}
	end := to + 1
	if r.word(end, "actually", "really", "instead") {
		end++
	}
	if to == verb || !r.plainNumber(to) || !r.length(to) || !r.isBreak(end) && !r.is(end, kindAttr, "wide") {
		return 0
	}
	count, width := r.pileToldBefore(n, now)
	if count < 0 {
		return 0
	}
	at := width
	if _, whole := r.wholeAt(to); counted && whole && r.sizeOff(count, to) < r.sizeOff(width, to) {
		at = count // "the 8 should be 9"
	}
	if r.sizeOff(at, to) > farOff {
		return 0
	}
	r.standsFor(at, to)
	return end
}

// pileToldBefore is where the only pile of n strips is told before item end, the last pile
// where n is 0; -1 where there is none.
func (r *reader) pileToldBefore(n, end int) (count, width int) {
	count = -1
	for k := 0; k < end; k++ {
		if m, ok := r.wholeAt(k); !ok || n > 0 && m != n || !r.free(k) {
			continue
		}
		w := k + 1
		for r.word(w, "at", "of", "pcs", "@") || r.is(w, kindNoun, "strip") {
			w++
		}
		if w >= end || !r.free(w) || !r.length(w) || w == k+1 && r.items[w].amount.link != linkAt && r.items[k].amount.form != formWords {
			continue
		}
		if n > 0 && count >= 0 {
			return -1, -1
		}
		count, width = k, w
	}
	return count, width
}

// choiceOf says of what item i is one choice; "" of nothing.
func (r *reader) choiceOf(i int) string {
	switch {
	case i < 0 || i >= len(r.items) || r.items[i].amount != nil:
		return ""
	case r.is(i, kindWood):
		return "wood"
	case r.is(i, kindGlue):
		return "glue"
	case r.is(i, kindFact):
		field, _, _ := strings.Cut(r.items[i].id, "=")
		return field
	case r.is(i, kindNoun, "core"):
		return "core"
	case r.is(i, kindNoun, "bag", "frame"):
		return "press"
	case firmness[r.items[i].word] != "" && r.mentions(kindNoun, "mat"):
		return "firmness"
	}
	return ""
}

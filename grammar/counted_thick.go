package grammar

import (
	"math/big"
	"slices"
	"strconv"
)

// countAndFraction parts "8 1/2 inch thick strips" and "a stack of 4 7/8 panels": none is so thick.
func (r *reader) countAndFraction() {
	for i := 0; i < len(r.items); i++ {
		am := r.items[i].amount
		if am == nil || am.form != formMixed || am.value == nil || am.link != linkNone || am.float() < 2 || !r.length(i) {
			continue
		}
		thick := i
		if r.is(i+1, kindAttr, "thick") {
			thick++
		}
		if r.countedThick(i, thick, r.nextPastWood(thick)) {
			r.partCount(i)
		}
	}
}

// nextPastWood is next, past the wood that a thing is of: "11 ash strips".
func (r *reader) nextPastWood(i int) int {
	n := r.next(i)
	if r.is(n, kindWood) {
		return r.next(n)
	}
	return n
}

// countedThick reports whether the mixed number at item i counts what is named at item n and
// says how thick each is, for nothing else can be meant: how wide they are is said apart, or
// they lie in a stack. Only strips and panels of 3 and more are never so thick.
func (r *reader) countedThick(i, thick, n int) bool {
	tooThick := r.items[i].amount.float() >= 3
	switch {
	case r.is(n, kindNoun, "strip"):
		return tooThick && (thick > i || isPlural(r.items[n].word) && r.stripsWide(i) && !r.mentions(kindAttr, "thick"))
	case r.is(n, kindNoun, "panel") && isPlural(r.items[n].word):
		return tooThick && thick > i || thick == i && (r.piledUp() || r.sizeAfter(n))
	case r.is(n, kindNoun, "sled") && isPlural(r.items[n].word) && !r.habit.Metric:
		return r.items[i].amount.float() > thickestSled && !r.is(i-1, kindNoun)
	}
	return false
}

// thickestSled is more inches than a sled is thick; our estimate.
const thickestSled = 2

// stripsWide reports whether how wide strips are is said of another number than that at item i.
func (r *reader) stripsWide(i int) bool {
	for k := range r.items {
		if k == i || r.items[k].amount == nil || !r.length(k) || r.size(k) >= widestStrip || !r.is(k+1, kindAttr, "wide") && !r.is(k-1, kindAttr, "wide") || r.word(k+2, "after", "now", "once", "when", "finished") {
			continue // "3 1/4 inch strips, 2 3/4 wide after planing"
		}
		if what := r.sizedThing(k); what < 0 || r.is(what, kindNoun, "strip") {
			return true
		}
	}
	return false
}

// sizedThing returns the noun that the width at item k is of: the one right behind, else the
// last before it in the clause; -1 where there is none.
func (r *reader) sizedThing(k int) int {
	if n := r.next(k); r.is(n, kindNoun) {
		return n
	} else if r.is(n, kindAttr) && r.is(r.next(n), kindNoun) {
		return r.next(n)
	}
	from, _ := r.clause(k)
	for n := k - 1; n >= from; n-- {
		if r.is(n, kindNoun) {
			return n
		}
	}
	return -1
}

// sizeAfter: "10 3/4 inch panels, 30x36", but not "10 3/4 inch panels, 1x2 bar".
func (r *reader) sizeAfter(n int) bool {
	k := n + 1
	for r.isBreak(k) && k < len(r.items) || r.word(k, "each", "all", "at") {
		k++
	}
	if k+1 >= len(r.items) || r.items[k].amount == nil || r.items[k].amount.link != linkNone || r.items[k+1].amount == nil || r.items[k+1].amount.link != linkTimes {
		return false
	}
	of := r.next(k + 1)
	return !r.is(of, kindNoun) || r.is(of, kindNoun, "panel")
}

// partCount makes a count and a measure of the mixed number at item i.
func (r *reader) partCount(i int) {
	it := r.items[i]
	whole := digits(it.text)
	if whole == 0 || whole+1 >= len(it.text) {
		return
	}
	n, _ := strconv.Atoi(it.text[:whole])
	count, part := it, it
	count.end, count.text = it.start+whole, it.text[:whole]
	count.amount = &amount{value: big.NewRat(int64(n), 1), form: formInt}
	part.start, part.text = it.start+whole+1, it.text[whole+1:]
	a := *it.amount
	a.value, a.form = new(big.Rat).Sub(a.value, count.amount.value), formFraction
	part.amount = &a
	r.items = slices.Insert(r.items, i, count)
	r.hear(i)
	r.items[i+1] = part
	r.hear(i + 1)
}

// countsSized: in "under vacuum - 5 1/2 inch panels 24x48" the 5 counts the panels, and is no
// vacuum that anybody presses at.
func (r *reader) countsSized(i int) bool {
	const least = 15 // inHg
	j := i + 1
	if !r.live(j) || r.items[j].start != r.items[i].end+1 || !r.length(j) || r.items[j].amount.link != linkNone || r.size(j) >= thickestStock {
		return false
	}
	_, whole := r.items[i].amount.whole()
	return whole && r.items[i].amount.float() < least && r.is(r.next(j), kindNoun, "panel", "strip")
}

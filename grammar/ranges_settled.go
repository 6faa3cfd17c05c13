package grammar

import (
	"math/big"
	"slices"
	"strings"

	"presshand/engine/unit"
)

// rangeSettled: "bounces between 23 and 24, say 23.5", "1 7/8 to 2 1/8, call it 2" settle
// for a number within a range, which stands in its place.
func (r *reader) rangeSettled(i int) {
	high := i + 1
	if !r.live(i) || !r.live(high) || r.items[high].amount.link != linkTo || r.items[i].amount.value == nil || r.items[high].amount.value == nil {
		return
	}
	k := high + 1
	for r.is(k, kindAttr) || r.is(k, kindUnit) {
		k++
	}
	for ; k < len(r.items) && (r.isBreak(k) && r.items[k].brk != '.' || r.word(k, "so", "but", "and", "well", "lets", "ill", "id", "we", "we'll", "just", "then", "depending")); k++ {
	}
	now := r.settlesFor(k)
	if now < 0 || !r.free(now) || r.items[now].amount.link != linkNone || r.items[now].amount.value == nil || r.timesAt(now+1) {
		return
	}
	a, b, c := r.items[i].amount.value, r.items[high].amount.value, r.items[now].amount.value
	if !amid(c, a, b) || !alike(r.items[i].amount, r.items[now].amount) {
		return
	}
	if n := r.next(now); r.is(n, kindNoun) && !r.startsAnew(n) {
		return
	}
	if r.items[i].amount.unit == nil {
		r.items[i].amount.unit, r.items[i].amount.unitRaw = r.items[high].amount.unit, r.items[high].amount.unitRaw
	}
	r.unuse(r.items[high].text)
	r.items[high] = item{start: r.items[high].start, end: r.items[high].end, used: true, meaning: meaning{kind: kindFill}}
	r.hear(high)
	r.standsFor(i, now)
	if from, _ := r.clause(max(i-2, 0)); i > 1 && r.items[i-1].brk == ',' && r.amountsIn(from, i) == 0 && r.within(from, i, kindAttr) >= 0 {
		r.items[i-1].brk = ':' // "widths are all over the place, 1 7/8 to 2 1/8, call it 2"
		r.items = slices.Delete(r.items, r.within(from, i, kindAttr)+1, i-1)
	}
}

// settlesFor is the number behind "say", "call it", "average" at item k; -1 where none is.
func (r *reader) settlesFor(k int) int {
	from := k
	for r.word(k, "say", "call", "calling", "figure", "reckon", "averages", "average", "averaging", "avg", "mostly", "use", "take", "it", "its", "that", "them", "on", "with", "about", "around", "at", "an", "of", "go", "going", "call it", "call it about", "most", "are") || r.is(k, kindFix) || r.is(k, kindSay) {
		k++
	}
	if k == from || k >= len(r.items) || r.items[k].amount == nil || r.word(k+1, "of") {
		return -1
	}
	return k
}

// amid reports whether c lies between a and b, whichever of them is larger.
func amid(c, a, b *big.Rat) bool {
	if a.Cmp(b) > 0 {
		a, b = b, a
	}
	return c.Cmp(a) >= 0 && c.Cmp(b) <= 0
}

// nearlySaid: "a hair under 2, 1 31/32", "shy of 3/8, say .36" say a number roughly and then
// for good.
func (r *reader) nearlySaid(i int) {
	if am := r.items[i].amount; am == nil || r.items[i].used || am.value == nil || am.link != linkNone || !r.is(i-1, kindRole, "length") && !r.word(i-1, "under", "over", "shy", "about", "nearly", "almost", "of", "than", "below", "above", "around") {
		return
	}
	if !r.word(i-2, "hair", "bit", "touch", "shade", "whisker", "tad", "just", "shy", "little", "less", "more", "smidge", "hairs") && !r.word(i-1, "shy") {
		return
	}
	k := i + 1
	if k >= len(r.items) || !r.isBreak(k) {
		return
	}
	for ; r.isBreak(k) && k < len(r.items) && r.items[k].brk != '.'; k++ {
	}
	if now := r.settlesFor(k); now >= 0 {
		k = now
	}
	if !r.free(k) || r.items[k].amount.link != linkNone || r.items[k].amount.value == nil || !alike(r.items[i].amount, r.items[k].amount) || r.timesAt(k+1) {
		return
	}
	a, b := r.items[i].amount.float(), r.items[k].amount.float()
	const near = 0.08
	if n := r.next(k); r.is(n, kindNoun) && !r.startsAnew(n) || b < (1-near)*a || b > (1+near)*a {
		return
	}
	r.standsFor(i, k)
	for j := i - 1; j >= 0 && (roughly[r.items[j].word] || r.is(j, kindRole, "length")) && r.items[j].amount == nil; j-- {
		r.items[j].meaning, r.items[j].word, r.items[j].used = meaning{kind: kindFill}, "", true
		r.hear(j)
	}
}

// roughly are the words before a number that is said roughly: "a hair under 2".
var roughly = wordSet(`a just hair hairs bit touch shade whisker tad shy little less more smidge under over of than below above about nearly almost around`)

// rangeBefore is the lower end of "24 to 26 inHg" and "between 24 and 26"; -1 where
// there is none. What is pumped goes from one to the other.
func (r *reader) rangeBefore(i int) int {
	k := i - 1
	if r.items[i].amount.link != linkTo {
		if !r.word(k, "and") || !r.word(i-3, "between") {
			return -1
		}
		k = i - 2
	}
	if !r.free(k) || !r.items[k].amount.bare() || r.pumping() || r.said(unit.Lasting) || r.mentions(kindNoun, "leak") || r.word(k-1, "from") || r.is(k-1, kindRole, "start") {
		return -1
	}
	low, high := r.items[k].amount.float(), r.items[i].amount.float()
	if between := r.text[r.items[k].end:r.items[i].start]; low >= high && low < 6*high && !strings.Contains(strings.ToLower(between), "to") && !r.is(k-1, kindNoun) {
		return k // "26-24 inHg": a gauge that falls would be told with a "to"
	}
	if low < 0.6*high || low >= high {
		return -1
	}
	return k
}

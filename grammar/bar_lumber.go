package grammar

import "presshand/engine/unit"

// lumberBar reads "bar is a 2x4 on edge": the larger side stands up, or lies where it is
// said to lie flat, and boards named by a nominal size measure what they dress to.
func (r *reader) lumberBar(i, end int) bool {
	at := r.layingAt(end)
	edge := at < len(r.items) && in(r.items[at].word, "on edge", "on the edge", "edge", "upright")
	flat := at < len(r.items) && in(r.items[at].word, "flat", "flat side", "the flat")
	if end-i != 2 || !edge && !flat || r.has(unit.BarHeight) || r.has(unit.BarWidth) || r.productNoun(i, end, false) != "bar" {
		return false
	}
	small, large := i, i+1
	if r.size(i) > r.size(i+1) {
		small, large = large, small
	}
	tall, wide := large, small
	if flat {
		tall, wide = small, large
	}
	if edge {
		r.items[at].used, r.items[at].meaning = true, meaning{}
	}
	if !r.bind(tall, unit.BarHeight) {
		return false
	}
	r.dressed(tall, small, large)
	r.bind(wide, unit.BarWidth)
	r.dressed(wide, small, large)
	return true
}

// layingAt is the item behind a size that may say how its board lies: "bar on its edge".
func (r *reader) layingAt(end int) int {
	if r.is(end, kindNoun, "bar") {
		end++
	}
	for r.word(end, "on", "the", "its", "standing", "stood", "set", "laid", "lying", "put") {
		end++
	}
	return end
}

// dressed makes the measure bound last at item i that of a dressed board, where items
// small and large are "a 2x4".
func (r *reader) dressed(i, small, large int) {
	a, okA := r.items[small].amount.whole()
	b, okB := r.items[large].amount.whole()
	t, w := nominalThickness[a], nominalWidth[b]
	f := r.justBound(i)
	if f == nil || !okA || !okB || t == 0 || w == 0 || r.habit.Metric || !r.items[small].amount.bare() || !r.items[large].amount.bare() || !r.word(small-1, "a", "an", "one") && !r.is(large+1, kindNoun, "bar") {
		return
	}
	f.Value, f.Unit, f.Note, f.Text = unit.Number(round(t*25.4)), unit.Inch, "nominal size, dressed", r.textOf(small, large)
	if i == large {
		f.Value = unit.Number(round(w * 25.4))
	}
}

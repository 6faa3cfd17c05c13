package grammar

import "presshand/engine/unit"

// barOf: "bar's a bit of old 2 inch stock" tells how high the bar is.
func (r *reader) barOf(i int) bool {
	from, _ := r.clause(i)
	bar := r.within(from, i, kindNoun, "bar")
	return bar >= 0 && r.amountsIn(bar, i) == 0 && (r.word(bar+1, "is", "a", "will") || r.items[bar].word == "bars") && r.within(bar+1, i, kindNoun) < 0 && !r.has(unit.BarHeight)
}

package grammar

import "presshand/engine/unit"

// bitOf are the words between a bar and the stock that it is a bit of.
var bitOf = wordSet(`is a an just some bit piece length scrap offcut of from old spare`)

// barOf: "bar's a bit of old 2 inch stock" tells how high the bar is, where no other number
// does; "bar is flush with the 3/4 stock" tells nothing of it.
func (r *reader) barOf(i int) bool {
	bar := i - 1
	for bar >= 0 && r.items[bar].amount == nil && bitOf[r.items[bar].word] {
		bar--
	}
	own := r.word(bar+1, "is", "a", "an", "just") || r.items[max(bar, 0)].word == "bars" && !r.word(bar+1, "from", "of")
	return bar < i-1 && r.is(bar, kindNoun, "bar") && own && !r.has(unit.BarHeight) && !r.mentions(kindAttr, "tall")
}

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

// stockForBar: "use 1 inch stock for the bar".
func (r *reader) stockForBar(i int) bool {
	j := i + 2
	if !r.word(i+1, "stock", "stuff", "piece") || !r.word(j, "for", "as") || r.has(unit.BarHeight) {
		return false
	}
	for j++; r.word(j, "the", "a", "my", "our", "that"); j++ {
	}
	return r.is(j, kindNoun, "bar")
}

// coverOf: "5/8 of the bar is covered", "film only covers 5/8 of the bar", "film only reaches
// 5/8 up the bar".
func (r *reader) coverOf(i int) bool {
	j := i + 2
	if !r.word(i+1, "of", "up") || r.has(unit.Cover) || r.size(i) > thickest {
		return false
	}
	for r.word(j, "the", "my", "our", "that", "side") {
		j++
	}
	if !r.is(j, kindNoun, "bar") || r.uncovered(i) || r.word(i+1, "of") && r.items[i].amount.bare() && r.isFraction(i) && r.barBesideOne(i) {
		return false
	}
	for k := i - 1; k >= 0 && k >= i-5 && !r.isBreak(k); k-- {
		if r.word(k, "covers", "covering", "cover") || r.word(k, "reaches", "gets", "comes", "goes") && r.word(i+1, "up") && r.is(r.prev(k), kindNoun, "film") {
			r.items[k].used = true
			return true
		}
	}
	for j++; r.word(j, "is", "gets", "stays", "only", "that", "being", "just"); j++ {
	}
	if !r.is(j, kindRole, "cover") || r.word(j-1, "not") {
		return false
	}
	r.items[j].used = true
	return true
}

// uncovered: "film doesnt cover 1/4 of the bar", "covers all but 1/8 of the bar".
func (r *reader) uncovered(i int) bool {
	if r.word(i-1, "all but") || r.word(i-1, "but") && r.word(i-2, "all") {
		return true
	}
	for k := i - 1; k >= 0 && k >= i-5 && !r.isBreak(k); k-- {
		if r.is(k, kindRole, "cover") || r.word(k, "covers", "covering", "cover") {
			return r.is(k-1, kindNot) || r.word(k-1, "doesnt", "dont", "wont", "cant", "isnt", "never")
		}
	}
	return false
}

// barBesideOne reports whether a bar of another height than one is told apart from item i:
// 3/4 of it is another measure than 3/4 in.
func (r *reader) barBesideOne(i int) bool {
	other := func(at int) bool {
		return at != i && at >= 0 && at < len(r.items) && r.items[at].amount != nil && !r.items[at].amount.equals(one) && r.length(at) && !r.is(at+1, kindNoun, "strip")
	}
	for k := range r.items {
		if r.is(k, kindNoun, "bar") && (other(k-1) || other(k+1) || r.word(k+1, "is") && other(k+2)) {
			return true
		}
	}
	return false
}

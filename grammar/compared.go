package grammar

// comparing reads the "and" of "compare a 1 in bar and 1 1/2" as a "versus": the two on its
// sides are to choose from.
func (r *reader) comparing() {
	for i := range r.items {
		if !r.word(i, "compare", "comparing") {
			continue
		}
		link, links := -1, 0
		k := i + 1
		for ; k < len(r.items) && !r.isBreak(k); k++ {
			if r.word(k, "and", "with", "to", "against") {
				link, links = k, links+1
			}
		}
		if links != 1 || !r.oneToChoose(i+1, link) || !r.oneToChoose(link+1, k) {
			continue
		}
		r.items[i].used = true
		r.items[link].word, r.items[link].meaning = "versus", meaning{kind: kindRole, id: "compare"}
	}
}

// oneToChoose reports whether one number, or one glue or wood, stands in [from, to).
func (r *reader) oneToChoose(from, to int) bool {
	n := 0
	for k := from; k < to; k++ {
		if r.items[k].amount != nil || r.is(k, kindGlue) || r.is(k, kindWood) {
			n++
		}
	}
	return n == 1
}

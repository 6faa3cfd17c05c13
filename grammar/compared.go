package grammar

import "slices"

// comparing reads the "and" of "compare a 1 in bar and 1 1/2" as a "versus": the two on its
// sides are to choose from.
func (r *reader) comparing() {
	r.insteadOf()
	if !r.says("than", "compare", "comparing") {
		return
	}
	for i := range r.items {
		if r.moreThanWood(i) {
			r.items[i].word, r.items[i].meaning = "versus", meaning{kind: kindRole, id: "compare"}
			r.hear(i)
			return
		}
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
		r.hear(link)
	}
}

// moreThanWood: "does teak move less than hard maple" has two woods to choose from.
func (r *reader) moreThanWood(i int) bool {
	if !r.word(i, "than") || !r.is(i+1, kindWood) {
		return false
	}
	from, _ := r.clause(i)
	return r.oneToChoose(from, i) && r.within(from, i, kindWood) >= 0 && r.opensWithin(from, i, "does", "do", "will", "would", "is", "wont", "isnt", "doesnt")
}

// insteadOf: "if the wood's at 10 instead of 7, does it make any odds" compares the two.
func (r *reader) insteadOf() {
	if !r.says("instead of", "rather than") {
		return
	}
	for i := 1; i+1 < len(r.items); i++ {
		was := i - 1
		if r.is(was, kindNoun, "bar", "mat", "caul") && was > 0 {
			was--
		}
		if !r.word(i, "instead of", "rather than") || !r.plainCountable(was) || !r.plainCountable(i+1) {
			continue
		}
		from, to := r.sentence(i)
		if to < len(r.items) && r.isStop(to) && !r.asksOdds(from, to) && !r.asksOdds(to, min(to+10, len(r.items))) || to >= len(r.items) && !r.asksOdds(from, to) {
			continue
		}
		r.items[i+1].amount.link = linkOr
		r.items = slices.Delete(r.items, i, i+1)
	}
}

// plainCountable reports whether item i is a number that belongs to no size.
func (r *reader) plainCountable(i int) bool {
	am := r.items[i].amount
	return am != nil && am.value != nil && am.link == linkNone && am.form != formPair
}

// asksOdds: "does it make any difference", "what does it matter", "is it better".
func (r *reader) asksOdds(from, to int) bool {
	for i := from; i < to; i++ {
		if r.word(i, "odds", "difference", "matter", "matters", "differ", "better", "worse", "gain", "help", "helps") {
			return true
		}
	}
	return false
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

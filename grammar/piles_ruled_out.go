package grammar

// pileKept reports whether what is said right behind the pile found at k keeps its strips
// from being used: "also 3x 45 but they're for something else", "5 at 4, leave those alone".
// Where a reason not to is told, or a wish, they stay.
func (r *reader) pileKept(found []pile, k int) bool {
	from, to := max(found[k].count, found[k].width)+1, len(r.items)
	if k+1 < len(found) {
		to = min(found[k+1].count, found[k+1].width)
	}
	for i := from; i < to && r.items[i].amount == nil; i++ {
		if r.is(i, kindRole, "target", "trim") && r.word(i, "need", "want", "trim") {
			return false
		}
		if (r.keptFrom(i) || r.promised(i)) && !r.reluctant(i) && !r.wonders(i) {
			r.useReserved(from, i+1)
			return true
		}
	}
	return false
}

// wonders reports whether the clause of item i asks: "are those spoken for?".
func (r *reader) wonders(i int) bool {
	from, to := r.clause(i)
	return r.word(from, "are", "is", "should", "shall", "do") || to < len(r.items) && r.items[to].brk == '?'
}

// those reports whether item i stands for strips that were named just before.
func (r *reader) those(i int) bool {
	return r.word(i, "those", "them", "these", "em", "any of those", "any of them")
}

// keptFrom: "dont use those", "leave them alone", "don't touch em".
func (r *reader) keptFrom(i int) bool {
	switch {
	case r.is(i, kindNot, "no") && r.word(i, "dont use", "not using", "skip", "ignore", "leave out", "forget") && r.those(i+1),
		r.is(i, kindNot, "not") && r.word(i+1, "use", "touch", "take", "count", "include") && r.those(i+2):
		return r.clauseEnds(i+1) || r.clauseEnds(i+2)
	case r.word(i, "do not touch", "dont touch", "hands off") && r.those(i+1):
		return r.clauseEnds(i + 1)
	case r.word(i, "leave", "leaving") && r.those(i+1):
		return r.word(i+2, "alone", "be", "out") && r.clauseEnds(i+2)
	}
	return false
}

// clauseEnds reports whether item i, "those" or the "alone" behind it, ends its clause or
// goes on with a reason.
func (r *reader) clauseEnds(i int) bool {
	return r.those(i) && (r.isBreak(i+1) || r.word(i+1, "though", "please", "because", "as", "since")) || r.word(i, "alone", "be", "out") && (r.isBreak(i+1) || r.word(i+1, "though", "please"))
}

// promised: "they're for something else", "those are spoken for", "which are promised".
func (r *reader) promised(i int) bool {
	told := func(k int) bool {
		if r.word(k, "are", "is") {
			k--
		}
		return r.word(k, "theyre", "they", "those", "these", "that", "which") || k > 0 && r.items[k].amount != nil && r.items[k].amount.plural
	}
	switch {
	case r.word(i, "for") && r.word(i+1, "something", "another", "someone", "somebody", "a") && (r.word(i+2, "else", "different", "other") || r.word(i+1, "another")):
		return told(i - 1)
	case r.word(i, "spoken", "promised", "reserved", "earmarked", "allocated") || r.word(i, "off") && r.word(i+1, "limits"):
		return told(i - 1)
	}
	return false
}

// useReserved uses up the words of [from, to) that rule strips out.
func (r *reader) useReserved(from, to int) {
	for i := from; i < to; i++ {
		if r.items[i].amount == nil {
			r.items[i].used = true
		}
	}
}

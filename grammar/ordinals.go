package grammar

// killOrdinals marks numbers that tell one of several apart and measure nothing:
// "joint 3 is open", "crack in strip 3".
func (r *reader) killOrdinals() {
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || !am.bare() || am.form != formInt || am.link != linkNone || r.is(i+1, kindAttr, "long", "thick", "deep") && isPlural(r.wordAt(i-1)) {
			continue // "7 joints 36 long"
		}
		at := i - 1
		for at > 0 && (r.items[at].brk == '#' || r.word(at, "no", "number")) {
			at--
		}
		if r.word(at, "joint", "joints", "seam", "glueline") || r.word(at, "strip", "lamella", "layer", "ply") && r.tellsFault(i) {
			am.dead, am.ordinal, r.items[i].used = true, true, true
		} else if r.oneStrip(at, i) {
			am.dead = true
		}
	}
}

// tellsFault reports whether the clause around item i tells something wrong.
func (r *reader) tellsFault(i int) bool {
	from, to := r.clause(i)
	for k := from; k < to; k++ {
		if r.word(k, faultWords...) || r.word(k, "open", "hairline", "starved", "sprung", "proud") && r.word(k-1, "is", "was", "s", "came", "looks") {
			return true
		}
	}
	return false
}

// oneStrip: "strip 4 has a knot", "swapped strip 4 out" tell which strip, not how big.
func (r *reader) oneStrip(at, i int) bool {
	if n, ok := r.items[i].amount.whole(); !ok || n < 1 || n > mostInPanel || !r.is(at, kindNoun, "strip") || isPlural(r.items[at].word) {
		return false
	}
	return r.word(i+1, "is", "has", "was", "had", "looks", "looked", "feels", "got", "came", "cracked", "split", "sits", "keeps", "out", "wont", "doesnt", "isnt") ||
		r.word(at-1, "swapped", "replaced", "flipped", "turned", "swap", "replace", "flip", "changed", "on", "in", "of") && r.next(i) < 0 && at > 0 && r.habit.Follows
}

// mostInPanel is more strips than are told apart by number; our estimate.
const mostInPanel = 30

// sortBefore reports whether "a" or "the" and a word that is no measure stand before item i:
// "a straight one", "the warped one".
func (r *reader) sortBefore(i int) bool {
	return i > 1 && r.word(i-2, "a", "an", "the", "another", "this", "that") && r.items[i-1].amount == nil && !r.is(i-1, kindNoun) && !r.is(i-1, kindAttr) && !r.isBreak(i-1) && !r.word(i-1, "to", "at", "with", "than", "like", "just", "only")
}

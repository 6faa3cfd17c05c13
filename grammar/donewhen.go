package grammar

// finishing are words for panels that come out of the press for the last time.
var finishing = wordSet(`done finished ready out through complete`)

// whenDone: "when will 9 panels be done" asks for the end of the day, of which item i
// is the last word.
func (r *reader) whenDone(i int) bool {
	from, _ := r.clause(i)
	for k := from; k < i; k++ {
		if r.word(k, "when", "whens") || r.word(k, "what") && r.word(k+1, "time") {
			return r.manyPanels(k, i)
		}
	}
	return false
}

// manyPanels reports whether more panels than one are counted among items [from, to).
func (r *reader) manyPanels(from, to int) bool {
	for k := from; k < to; k++ {
		if n, ok := r.spokenOrWhole(k); ok && n > 1 && r.items[k].amount.bare() && r.is(r.counted(k), kindNoun, "panel") {
			return true
		}
	}
	return false
}

// doneWhen: "when are 9 doors done?" has no cue but its plain words.
func (r *reader) doneWhen() bool {
	if !r.says("when", "whens", "what") {
		return false
	}
	for i := range r.items {
		if r.items[i].amount == nil && finishing[r.items[i].word] && r.whenDone(i) {
			return true
		}
	}
	return false
}

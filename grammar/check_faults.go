package grammar

// lackable are things that a load is pressed with, which a check tells to lack: "no clamp".
var lackable = wordSet(`clamp clamps film plastic caul cauls wedge wedges glue pump seal seals breather cover lid gauge hose tape weights bag`)

// misplaced reports whether the clause [from, to) of a check tells that something is not
// where it should be: "mat still on the bench", "not here yet", "glue all over the bed", "no
// clamp".
func (r *reader) misplaced(from, to int) bool {
	denied := false
	for i := from; i < to; i++ {
		denied = denied || r.is(i, kindNot, "not")
		article := r.word(i+2, "the", "a", "my", "our", "its")
		switch {
		case r.items[i].amount != nil:
		case r.word(i, "yet") && denied,
			r.word(i, "still") && (r.word(i+1, "on", "in", "at", "under", "over", "by") || r.is(i+1, kindUnit, "in")) && article && !r.pressWithin(i+2),
			r.word(i, "all over"), r.word(i, "all") && r.word(i+1, "over") && article,
			r.word(i, "no", "without") && i+1 < to && lackable[r.wordAt(i+1)] && (r.isBreak(i+2) || r.word(i+2, "yet", "here", "there", "on", "left")):
			return true
		}
	}
	return false
}

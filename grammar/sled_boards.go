package grammar

import "slices"

// boardsOf takes the board that a sled or a caul is made of for no core of the panel, and
// melamine on it for no glue: "sled under the strips is 1/2 ply", "bottom sled (3/4 melamine)".
func (r *reader) boardsOf() {
	for i := 2; i < len(r.items); i++ {
		melamine := r.items[i].kind == kindGlue && r.items[i].word == "melamine"
		if !melamine && (!r.is(i, kindNoun, "core") || r.word(i, "core", "cores", "substrate")) || r.is(i+1, kindNoun) || r.is(i+1, kindGlue) || r.word(i+1, "glue") {
			continue
		}
		at := i - 1
		if r.items[at].amount == nil {
			continue
		}
		if r.items[at-1].brk == '(' && i+1 < len(r.items) && r.items[i+1].brk == ')' {
			at--
		}
		if r.boardIn(at - 1) {
			r.items[i].meaning, r.items[i].used = meaning{kind: kindFill}, true
		}
	}
	r.plainBoards()
}

// boardIn reports whether what is told from item i back begins with a sled or a caul: "the
// caul on the strips", "top caul which is".
func (r *reader) boardIn(i int) bool {
	strips := 0
	for ; i >= 0; i-- {
		switch {
		case r.is(i, kindNoun, "sled", "caul"):
			if r.word(i-1, "the", "my", "our", "a") && r.word(i-2, "on", "over", "under", "onto") {
				return false // "on the sled is half inch ply"
			}
			if strips > 0 {
				r.items[strips].meaning, r.items[strips].used = meaning{kind: kindFill}, true
			}
			return true
		case r.is(i, kindNoun, "strip") && r.word(i-1, "the", "my", "our") && r.word(i-2, "under", "on", "over", "below", "beneath", "above"):
			strips, i = i, i-2
		case r.word(i, "is", "are", "was", "which", "thats", "that", "of", "a", "an", "being", "made", "from", "out", "only", "just", "under", "on", "over", "below", "beneath", "top", "bottom", "them", "it"):
		default:
			return false
		}
	}
	return false
}

// plainBoards takes the brackets off the board of a sled: "sled (3/4 melamine), film".
func (r *reader) plainBoards() {
	for i := 1; i+3 < len(r.items); i++ {
		if r.items[i].brk == '(' && r.items[i+3].brk == ')' && r.is(i-1, kindNoun, "sled", "caul") && r.items[i+1].amount != nil && r.is(i+2, kindFill) {
			r.items = slices.Delete(r.items, i+3, i+4)
			r.items = slices.Delete(r.items, i, i+1)
		}
	}
}

package grammar

// killFew leaves the width of "and a few four inch strips" unused among piles that were
// counted: how many there are was not told.
func (r *reader) killFew() {
	for i := range r.items {
		k := i - 1
		if r.word(k, "of") {
			k--
		}
		if r.free(i) && r.length(i) && r.word(k, "few", "several", "some", "handful", "bunch") && small(r.size(i)) {
			r.items[i].amount.dead = true
		}
	}
}

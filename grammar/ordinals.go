package grammar

// killOrdinals marks numbers that tell one of several apart and measure nothing:
// "joint 3 is open", "crack in strip 3".
func (r *reader) killOrdinals() {
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || !am.bare() || am.form != formInt || am.link != linkNone {
			continue
		}
		at := i - 1
		for at > 0 && (r.items[at].brk == '#' || r.word(at, "no", "number")) {
			at--
		}
		if r.word(at, "joint", "joints", "seam", "glueline") || r.word(at, "strip", "lamella", "layer", "ply") && r.tellsFault(i) {
			am.dead, am.ordinal, r.items[i].used = true, true, true
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

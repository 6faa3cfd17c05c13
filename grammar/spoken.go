package grammar

// spokenTimes joins clock times that are spoken in two numbers: "start at seven
// thirty", "out at two forty pm".
func (r *reader) spokenTimes() {
	for i := 0; i+1 < len(r.items); i++ {
		hour, okH := r.spokenNumber(i)
		minute, okM := r.spokenNumber(i + 1)
		if !okH || !okM || hour < 1 || hour > 12 || minute < 5 || minute > 59 || r.namesThing(i+1) {
			continue
		}
		if r.daySuffix(i+1) == "" && r.clockRole(i) == "" {
			continue
		}
		it, next := &r.items[i], &r.items[i+1]
		it.amount.form, it.amount.pair = formPair, [2]int{hour, minute}
		it.end, it.text = next.end, r.text[it.start:next.end]
		r.items = append(r.items[:i+1], r.items[i+2:]...)
	}
}

// spokenNumber returns the whole number in words at item i.
func (r *reader) spokenNumber(i int) (int, bool) {
	if !r.free(i) || r.items[i].amount.form != formWords || !r.items[i].amount.bare() || r.items[i].amount.link != linkNone {
		return 0, false
	}
	return plainWhole(r.items[i].amount)
}

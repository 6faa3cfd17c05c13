package grammar

// spreadBehind: "6 mm, well 5.8 to 6.3" tells how thick they really are, from the thinnest to
// the thickest, and not that the first number was wrong.
func (r *reader) spreadBehind(well int) bool {
	a, b, was := well+1, well+2, well-2
	if b >= len(r.items) || was < 0 || r.items[b].amount == nil || r.items[was].amount == nil || r.items[b].amount.link != linkTo {
		return false
	}
	low, high, v := r.items[a].amount.float(), r.items[b].amount.float(), r.items[was].amount
	if low >= high || v.float() < low || v.float() > high || high > closeBy*low {
		return false
	}
	if u := v.unit; u != nil && r.items[a].amount.bare() && r.items[b].amount.bare() {
		r.items[a].amount.unit, r.items[b].amount.unit = u, u
	}
	v.dead = true
	return true
}

// spreadBeside reports whether the number at item i is called a spread: "1/16 spread", "spread 1/16".
func (r *reader) spreadBeside(i int) bool {
	if !r.says("spread") {
		return false
	}
	for _, k := range []int{i + 1, i - 1} {
		if r.word(k, "spread") && (k > i || !r.is(k-1, kindGlue)) {
			r.items[k].used = true
			return true
		}
	}
	p := i - 3
	return r.word(i-1, "is") && r.word(i-2, "spread") && (r.isBreak(p) || r.word(p, "the") || r.is(p, kindNoun, "strip") || r.is(p, kindAttr, "thick"))
}

// offElse: "the gauge is off by up to 2" and "the length is off by up to 1/2" tell nothing of
// how unlike the strips are.
func (r *reader) offElse(p int) bool {
	of := r.prev(p)
	return r.word(p, "off by up to") && !r.is(of, kindNoun, "strip") && !r.is(of, kindAttr, "thick")
}

package grammar

// conditions parts a number from the condition behind it: in "the bar is 1 1/2 if we use the
// thick strips" it is none of how thick these are.
func (r *reader) conditions() {
	for i := 1; i < len(r.items) && r.says("if", "unless", "provided"); i++ {
		if r.word(i, "if", "unless", "provided") && r.items[i-1].amount != nil && r.word(i+1, "we", "i", "you", "they", "it", "its", "theyre", "were", "the", "theres", "someone") {
			r.items[i].brk = ','
		}
	}
	for k := 1; k < len(r.items) && r.says("otherwise"); k++ {
		if r.word(k, "otherwise") {
			r.eitherWay(k)
		}
	}
}

// eitherWay leaves open what depends on a condition: of "the bar is 1 1/2 if we use the thick
// strips, leave it at 1 otherwise" neither number is chosen.
func (r *reader) eitherWay(otherwise int) {
	from, to := r.sentence(otherwise)
	cond := otherwise - 1
	for cond >= from && !r.word(cond, "if", "unless", "provided") {
		cond--
	}
	if cond < from {
		return
	}
	then := cond - 1
	if then < from || r.items[then].amount == nil {
		then = -1
		for k := cond + 1; k < otherwise && then < 0; k++ {
			if r.items[k].amount != nil {
				then = k // "if they're thick the bar is 1 1/2, otherwise 1"
			}
		}
	}
	other := -1
	for k := otherwise + 1; k < to && other < 0; k++ {
		if r.items[k].amount != nil {
			other = k
		}
	}
	for k := otherwise - 1; k > max(cond, then) && other < 0 && !r.isBreak(k); k-- {
		if r.items[k].amount != nil {
			other = k
		}
	}
	if then < 0 || other < 0 {
		return
	}
	part := then - 1
	for r.word(part, "is", "at", "a", "the", "be", "was", "of", "s", "would") {
		part--
	}
	if r.is(part, kindNoun, "bar", "mat", "caul", "sled") && r.free(then) && r.free(other) && r.length(then) && r.length(other) && alike(r.items[then].amount, r.items[other].amount) {
		f := bareFields[r.items[part].id]
		r.bind(then, f)
		r.bind(other, f) // which of the two is asked
	}
}

// endsAClause keeps "a job 24 x 48" from being job 24.
func (r *reader) endsAClause(i int) bool {
	return hasDigit(r.items[i].text) && (i+1 == len(r.items) || r.isBreak(i+1) && r.items[i+1].brk != 'x')
}

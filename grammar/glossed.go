package grammar

// glossed takes the brackets from a word in another tongue, or another of the trade's,
// behind that of the trade: of "the wedge (wig) takes 8 to 14 mm" and "thickness (dikte)
// 12" they part nothing.
func (r *reader) glossed() {
	for k := 1; k+2 < len(r.items); k++ {
		if r.items[k].brk != '(' || r.items[k+2].brk != ')' || !r.is(k-1, kindNoun) && !r.is(k-1, kindAttr) && !r.is(k-1, kindRole) {
			continue
		}
		before, it := &r.items[k-1], &r.items[k+1]
		same := it.amount == nil && it.kind == before.kind && it.id == before.id
		if !same && (!r.unknown(k+1) || firmness[it.word] != "") {
			continue
		}
		if !same {
			r.unuse(it.text)
		}
		it.meaning, it.used = meaning{kind: kindFill}, true
		r.items[k].brk, r.items[k+2].brk = '"', '"'
	}
}

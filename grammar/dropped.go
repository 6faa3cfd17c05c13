package grammar

// leaving are words by which a part is left out of what was said before.
var leaving = wordSet(`forget without drop lose ditch skip remove scrap ignore sans w/o`)

// leavingOut are those of several words.
var leavingOut = []string{"leave out", "leave off", "take out", "take away", "never mind", "nevermind", "scratch the", "minus the", "forget about", "leave off the", "w o", "not using"}

// killDropped gives up the measure of a part that is left out: "without the 1 in bar",
// "forget the half inch trim".
func (r *reader) killDropped() {
	if !r.says("the", "that", "this", "my", "our", "side", "scratch the", "minus the", "leave off the") {
		return
	}
	for k := range r.items {
		i := r.leavesOut(k)
		if i < 0 {
			continue
		}
		part := k + 1
		for r.is(part, kindAttr) || r.is(part, kindWood) || r.items[min(part, len(r.items)-1)].kind == kindWoodSort && part < len(r.items) {
			part++
		}
		_, named := partNames[r.idOf(part)]
		if !r.is(part, kindRole, "trim") && !(r.is(part, kindNoun) && named) || r.word(part+1, "to", "by", "down", "for") {
			continue
		}
		r.items[k].amount.dead = true
		if f := bareFields[r.idOf(part)]; f != "" && r.usedInstead(part) >= 0 {
			r.items[i].meaning, r.items[i].used, r.items[part].used = meaning{}, true, true
			r.bind(r.usedInstead(part), f)
		}
	}
}

// usedInstead is the measure of "forget the 3/4 bar, use 1 in", which goes on with
// another for the part at item i; -1 where there is none.
func (r *reader) usedInstead(i int) int {
	k := i + 1
	for k < len(r.items) && (r.items[k].brk == ',' || r.items[k].brk == '.' || r.items[k].brk == ';' || r.word(k, "and", "just", "we", "ill", "well", "i", "go", "with", "a", "an")) {
		k++
	}
	if k == i+1 || !r.word(k, "use", "try", "make", "take", "put", "using") && !(r.word(k-1, "with") && r.word(k-2, "go")) {
		return -1
	}
	for r.word(k, "use", "try", "make", "take", "put", "using", "it", "a", "an", "the", "in") {
		k++
	}
	if !r.free(k) || !r.length(k) || !r.isBreak(k+1) && !r.word(k+1, "one", "instead") {
		return -1
	}
	return k
}

// leavesOut is the word that leaves a part out before item k, if that is the part's one
// measure; -1 where there is none.
func (r *reader) leavesOut(k int) int {
	if !r.free(k) || k+1 < len(r.items) && r.items[k+1].amount != nil {
		return -1
	}
	i := k - 1
	for r.word(i, "the", "that", "this", "my", "our", "side") {
		i--
	}
	if i < 0 || r.items[i].amount != nil || i == k-1 && !in(r.items[i].word, "scratch the", "minus the", "leave off the") || !leaving[r.items[i].word] && !in(r.items[i].word, leavingOut...) {
		return -1
	}
	if !r.length(k) && r.items[k].amount.form != formPair {
		return -1
	}
	if n, whole := r.items[k].amount.whole(); whole && n > 1 && r.items[k].amount.bare() && isPlural(r.items[min(k+1, len(r.items)-1)].word) {
		return -1 // "drop the 2 bars"
	}
	return i
}

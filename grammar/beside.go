package grammar

import "presshand/engine/unit"

// besideNoun is the noun or wood that a bare measure goes with: the one right
// behind it, unless that has a number of its own, or the one before it.
func (r *reader) besideNoun(i int) (k int, right bool) {
	n, p := r.nextNear(i), r.prev(i)
	if r.word(i+1, "one", "ones") && r.word(i+2, "that", "thats", "which", "whichs", "with") {
		return -1, false // "the 1/2 in one that's only cupped 1/8"
	}
	if r.is(n, kindAttr) && !r.items[n].used || r.items[i].amount.plural {
		return -1, false
	}
	if r.is(n, kindFact) {
		n = r.next(n)
	}
	if n == i+1 && r.is(n+1, kindNoun) && r.items[n].kind == kindNone && r.items[n].amount == nil && r.items[n].brk == 0 && !r.word(n, "and", "with", "but") && r.is(r.next(n), kindNoun) {
		n = r.next(n) // "1/4 firm mat", "1 in steel bar"
	}
	if n >= 0 && r.items[n].kind == kindNone && r.is(n+1, kindNoun, "mat") && firmness[r.items[n].word] != "" {
		n++ // "half an inch of soft foam"
	}
	wood := -1
	for r.is(n, kindWood) || r.is(n, kindGlue) {
		if wood < 0 && r.is(n, kindWood) {
			wood = n
		}
		n = r.next(n)
	}
	if r.is(n, kindAttr) && !r.items[n].used {
		n = -1
	}
	if r.is(n, kindNoun, "cup", "bow") && n == i+1 && n+1 < len(r.items) && r.free(n+1) && r.length(n+1) && !(r.size(i) < r.size(n+1) && (r.is(r.next(n+1), kindWood) || r.is(n+2, kindAttr))) {
		n = -1 // "8 wide 3/4 cup 1/8": the cup has its own
	}
	left := r.leftNoun(i, p)
	if left >= 0 && i > 0 && (r.items[i-1].brk == '=' || r.items[i-1].brk == ':') {
		return left, false
	}
	if left == i-1 && left >= 0 && r.is(left, kindNoun, "bar", "mat", "caul", "gap", "cup", "bow", "tent", "opening") && r.is(n, kindNoun) && !r.has(bareFields[r.items[left].id]) && !r.amountJustBefore(left) {
		return left, false
	}
	if left == i-1 && r.is(left, kindNoun, "cup", "bow") && !r.has(bareFields[r.items[left].id]) && !r.is(n, kindNoun) {
		return left, false // "cup 1/8 oak"
	}
	if r.is(n, kindNoun) && (wood < 0 || r.items[n].id == "strip" || r.items[n].id == "core" || r.items[n].id == "bar" || r.items[n].id == "face" || r.items[n].id == "panel" && r.size(i) > 0.1) {
		if left < 0 || !r.numberBehind(n) {
			return n, true
		}
	}
	if wood >= 0 {
		return wood, true
	}
	if left >= 0 {
		return left, false
	}
	if r.is(p, kindWood) && !r.is(n, kindNoun) {
		return p, false
	}
	return -1, false
}

// nextNear is next, but not past a word that parts.
func (r *reader) nextNear(i int) int {
	n := r.next(i)
	for j := i + 1; j < n; j++ {
		if parters[r.items[j].word] {
			return -1
		}
	}
	return n
}

// leftNoun is the noun before a measure with nothing but "is", "of" and the like
// between.
func (r *reader) leftNoun(i, p int) int {
	if k := r.partAsTold(i); k >= 0 && !r.takenNoun(k, i) {
		return k
	}
	if r.is(p, kindFix) && in(r.items[p].word, "actually", "is actually", "are actually") && r.is(r.prev(p), kindNoun) {
		p = r.prev(p) // "the bar's actually two inches"
	}
	for p >= 0 && (r.word(p, "by") || r.word(p, "measures", "comes", "stands") || r.turnedOut(p) && r.items[i].amount.value != nil && !r.items[i].amount.value.IsInt() || r.is(p, kindVerb, "check") && r.items[p].word == "measures") {
		p = r.prev(p)
	}
	for r.is(p, kindFact) {
		p = r.prev(p)
	}
	if r.is(p, kindNoun) && !r.takenNoun(p, i) {
		return p
	}
	if i-1 >= 0 && r.items[i-1].brk == ':' && i-2 >= 0 && r.is(i-2, kindNoun) {
		return i - 2
	}
	return -1
}

// takenNoun reports whether the noun already goes with a measure before it.
func (r *reader) takenNoun(p, i int) bool {
	q := p - 1
	for q >= 0 && r.idle(q) && r.items[q].amount == nil {
		q--
	}
	if q < 0 || r.items[q].amount == nil || !r.items[q].used {
		return false
	}
	id := r.items[p].id
	for _, b := range r.bound {
		if b.from == q && (b.fact.Field == bareFields[id] || attrFields[id][""] == b.fact.Field) {
			return true
		}
	}
	return false
}

// numberBehind reports whether noun n is followed by a measure of its own.
func (r *reader) numberBehind(n int) bool {
	k := r.next(n)
	return r.free(k) && r.length(k) && !r.is(r.next(k), kindNoun) && !r.is(r.next(k), kindAttr)
}

// startsAnew: "three eighths thick the bar is 1 1/2 tall", said in one breath.
func (r *reader) startsAnew(k int) bool {
	if k+1 < len(r.items) && r.is(k, kindNoun, "bar") && r.items[k+1].amount != nil && r.is(r.next(k+1), kindAttr, "tall") {
		return true // "1/4 thick bar 1 1/2 high"
	}
	return r.word(k+1, "is", "are", "stands") && k+2 < len(r.items) && r.items[k+2].amount != nil
}

// otherSaid reports whether a clause of its own stands between item k and the
// break at item end.
func (r *reader) otherSaid(k, end int) bool {
	for j := k; j < end; j++ {
		if r.isBreak(j) && r.amountsIn(j, end) > 0 {
			return true
		}
	}
	return false
}

// boundAt is the field that was read at item k, "" for none.
func (r *reader) boundAt(k int) unit.Field {
	if r.items[k].amount == nil {
		return ""
	}
	for n := range r.bound {
		if r.bound[n].from == k {
			return r.bound[n].fact.Field
		}
	}
	return ""
}

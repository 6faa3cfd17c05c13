package grammar

import "presshand/engine/unit"

// leastRip, in metres: what is less beside a width is a thickness, "6 strips, 3/4 and 2 wide".
const leastRip = 0.025

// whichOfTwo keeps both widths of "4 strips, 5 and 7 wide", so that it is asked about.
func (r *reader) whichOfTwo(list []int) {
	if r.stripsBefore(list) > 2 && !r.has(unit.StripWidth) && r.bothWide(list) {
		r.bind(list[0], unit.StripWidth)
	}
}

// twoOfThem: of "two boards, 5 and 7 wide" each has a width of its own.
func (r *reader) twoOfThem(list []int) bool {
	return r.stripsBefore(list) == 2 && r.bothWide(list)
}

// bothWide reports whether neither of two measures can be how thick the strips are.
func (r *reader) bothWide(list []int) bool {
	a, b := r.size(list[0]), r.size(list[1])
	return min(a, b) >= leastRip && a < 3*b && b < 3*a
}

// stripsBefore is how many strips stand right before a list of two widths; 0 where none.
func (r *reader) stripsBefore(list []int) int {
	if len(list) != 2 || !r.is(r.next(list[1]), kindAttr, "wide") {
		return 0
	}
	k := list[0] - 1
	for k > 0 && (r.items[k].brk == ',' || r.items[k].brk == ':' || r.items[k].brk == '-' || r.items[k].brk == '(') {
		k--
	}
	if !r.is(k, kindNoun, "strip") {
		return 0
	}
	for k--; r.is(k, kindWood); k-- {
	}
	if k < 0 || r.items[k].amount == nil {
		return 0
	}
	n, _ := r.items[k].amount.whole()
	return n
}

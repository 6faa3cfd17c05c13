package grammar

import (
	"math/big"
	"slices"
	"strings"
)

// halfAndHalf gives each half of "20 strips, half 2 inch half 2 1/2, need 40" its count,
// where the message chooses strips and presses none.
func (r *reader) halfAndHalf() {
	if !strings.Contains(r.text, "alf") && !strings.Contains(r.text, "ALF") || r.mentions(kindNoun, "bar", "panel") || r.mentions(kindVacuum) || r.pressureSaid() || r.mentions(kindAttr, "thick") {
		return
	}
	if !r.mentions(kindRole, "target") && !r.mentions(kindAsk, "strips") && !r.wordIn("get", "enough") {
		return
	}
	total, at := -1, []int(nil)
	for i := range r.items {
		n, whole := r.wholeAt(i)
		switch {
		case r.spokenHalf(i) || r.word(i, "half"):
			if total < 0 || r.halfWidth(i) < 0 {
				return
			}
			at = append(at, i)
		case total < 0 && whole && n > 3 && n%2 == 0 && r.items[i].amount.bare() && r.is(r.next(i), kindNoun, "strip"):
			total = i
		}
	}
	if len(at) != 2 {
		return
	}
	n, _ := r.wholeAt(total)
	for k := len(at) - 1; k >= 0; k-- {
		i := at[k]
		r.items = slices.Delete(r.items, i+1, r.halfWidth(i))
		r.items[i].amount = &amount{value: big.NewRat(int64(n/2), 1), form: formWords}
		r.items[i].word, r.items[i].meaning = "", meaning{}
	}
	r.items[total].used = true
	r.rewidth = append(r.rewidth, r.items[total].text)
}

// halfWidth is the width of the half at item i: "half 2 inch", "half of them are 3 wide";
// -1 where none stands there.
func (r *reader) halfWidth(i int) int {
	j := i + 1
	for r.word(j, "of", "the", "them", "em", "those", "these", "are", "is", "at", "being") || r.is(j, kindNoun, "strip") {
		j++
	}
	if !r.free(j) || !r.length(j) || !small(r.size(j)) || r.timesAt(j+1) || r.is(r.next(j), kindAttr, "long", "thick") {
		return -1
	}
	return j
}

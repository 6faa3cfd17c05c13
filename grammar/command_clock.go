package grammar

import (
	"fmt"
	"strings"
)

// Times of a going in or coming out that are written or said short: "0815", "half past".

// clockDigits is the time that item i is: "0815", "at 1545", "at 7.15".
func (r *reader) clockDigits(i int) (h, m int, ok bool) {
	if !r.free(i) || r.items[i].amount.unit != nil || r.items[i].amount.minus {
		return 0, 0, false
	}
	am := r.items[i].amount
	at := am.link == linkAt || r.word(i-1, "at", "around", "about", "since")
	if am.link != linkNone && am.link != linkAt {
		return 0, 0, false
	}
	text := r.items[i].text
	hours, minutes, decimal := strings.Cut(text[strings.LastIndexByte(text, ' ')+1:], ".")
	switch {
	case am.form == formDecimal && decimal && at && len(minutes) == 2 && len(hours) <= 2:
		h, m = int(am.float()), int(am.float()*100+0.5)%100
	case am.form == formInt && len(hours) == 4 && (at || r.is(i-1, kindVerb, string(In), string(Out)) || r.items[i-1].amount != nil && r.items[i-1].amount.unitRaw == "in" || r.word(i-1, "in")):
		n := int(am.float())
		h, m = n/100, n%100
	default:
		return 0, 0, false
	}
	return h, m, h < 24 && m < 60
}

// digitsAt takes such a time.
func (r *reader) digitsAt(c *Command, i int) bool {
	if i >= len(r.items) || i == 0 || r.items[i].amount == nil {
		return false
	}
	h, m, ok := r.clockDigits(i)
	if !ok {
		return false
	}
	am := r.items[i].amount
	am.form, am.pair, am.value = formPair, [2]int{h, m}, nil
	r.at(c, i)
	return true
}

// pastAlone is how many minutes past the hour that was last are told at item i, and the last
// item of them: "half past", "quarter to".
func (r *reader) pastAlone(i int) (minutes, last int, ok bool) {
	switch {
	case r.word(i, "half") && r.word(i+1, "past"):
		minutes = 30
	case r.word(i, "half past"):
		return 30, i, r.isBreak(i + 1)
	case r.word(i, "quarter") && r.word(i+1, "past", "after"):
		minutes = 15
	case r.word(i, "quarter") && r.word(i+1, "to", "before"):
		minutes = 45
	case i > 0 && i+1 < len(r.items) && r.free(i) && r.items[i].amount.bare() && r.word(i+1, "past"):
		n, whole := plainWhole(r.items[i].amount)
		if !whole || n < 1 || n > 59 {
			return 0, i, false
		}
		minutes = n
	default:
		return 0, i, false
	}
	return minutes, i + 1, r.isBreak(i + 2)
}

// tookHalfPast takes "half past" for the time of a going in or coming out.
func (r *reader) tookHalfPast(c *Command, i int) bool {
	minutes, last, ok := r.pastAlone(i)
	if !ok || c.Time != "" || c.Ago != 0 {
		return false
	}
	c.Time, c.Clock = fmt.Sprintf(":%02d", minutes), r.textOf(i, last)
	for k := i; k <= last; k++ {
		r.items[k].used = true
	}
	if r.word(i-1, "at", "around", "about", "since") {
		r.items[i-1].used = true
	}
	return true
}

// shortTimeEnds reports whether such a time, or noon, stands at item i and ends the message.
func (r *reader) shortTimeEnds(i int) bool {
	if i >= len(r.items) {
		return false
	}
	if _, last, ok := r.pastAlone(i); ok {
		return r.nothingAfter(last)
	}
	if r.items[i].amount == nil {
		return r.word(i, "noon", "midday") && r.word(i-1, "at", "around", "about") && r.nothingAfter(i)
	}
	_, _, ok := r.clockDigits(i)
	return ok && r.nothingAfter(i)
}

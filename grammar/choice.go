package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// mostInches is the highest bar that a metric shop tells in inches; common practice, no source.
const mostInches = 12

// choice offers two amounts for one field.
func (r *reader) choice(a, b int, f unit.Field) {
	x, y := r.items[a].amount, r.items[b].amount
	if x.unit == nil && y.unit != nil {
		u := *y.unit
		if f == unit.BarHeight && r.habit.Metric && u.Symbol == unit.Inch.Symbol && x.float() > mostInches {
			u = unit.MM // "bar 25 or 1 in?"
		}
		x.unit = &u
	}
	va, ua, okA := r.valueOf(x, f)
	vb, ub, okB := r.valueOf(y, f)
	if !okA || !okB || impossible(f, va) != "" || impossible(f, vb) != "" {
		return
	}
	r.items[a].used, r.items[b].used = true, true
	r.phrase.Choices = append(r.phrase.Choices, Choice{f, []Fact{
		{Field: f, Value: unit.Number(va), Unit: ua, Text: r.items[a].text},
		{Field: f, Value: unit.Number(vb), Unit: ub, Text: r.items[b].text},
	}})
	r.earlierChoices(a)
}

// earlierChoices puts the amounts that stand right before the one at item i, parted by
// "or" or commas alone, first into the choice made last: "1 or 1 1/2 or 2 bar".
func (r *reader) earlierChoices(i int) {
	c := &r.phrase.Choices[len(r.phrase.Choices)-1]
	for k := r.offeredAt(i); k >= 0; k = r.offeredAt(k) {
		if r.items[k].amount.unit == nil {
			u := c.Values[0].Unit
			r.items[k].amount.unit = &u
		}
		v, u, ok := r.valueOf(r.items[k].amount, c.Field)
		if !ok || impossible(c.Field, v) != "" {
			return
		}
		r.items[k].used = true
		c.Values = slices.Insert(c.Values, 0, Fact{Field: c.Field, Value: unit.Number(v), Unit: u, Text: r.items[k].text})
	}
}

// offeredAt is the amount that was offered right before the one at item i; -1 where none was.
func (r *reader) offeredAt(i int) int {
	k := i - 1
	if r.items[i].amount.link != linkOr {
		if k < 1 || r.items[k].brk != ',' {
			return -1
		}
		k--
	}
	if !r.free(k) || r.items[k].amount.value == nil || !r.items[k].amount.bare() && !alike(r.items[k].amount, r.items[i].amount) || k > 0 && !r.isBreak(k-1) && r.items[k].amount.link == linkNone && !offering[r.items[k-1].word] {
		return -1
	}
	if a, b := r.items[k].amount.float(), r.items[i].amount.float(); a > furthestChoice*b || b > furthestChoice*a {
		return -1
	}
	return k
}

// furthestChoice is how many times as much one of several values is as the next; our estimate.
const furthestChoice = 3

// offering are words before the first of several values.
var offering = wordSet(`a an the with is use have got either between whether`)

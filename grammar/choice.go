package grammar

import (
	"slices"
	"strings"

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

// setAgainst: "how does 25 compare with 20 inHg", "difference between a 3/4 and a 1 1/4
// bar", "is 25 inHg better than 20".
func (r *reader) setAgainst() {
	if !r.says("compare", "compares", "compared", "stack", "measure", "and") {
		return
	}
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.value == nil || r.items[i].amount.form == formPair {
			continue
		}
		j := i + 1
		if r.is(j, kindUnit) {
			j++
		}
		switch {
		case r.word(j, "compare", "compares", "compared", "stack", "measure") && r.word(j+1, "with", "to", "up", "against"):
			for j += 2; r.word(j, "to", "with", "against", "a", "an", "the"); j++ {
			}
		case r.word(j, "and") && (r.differenceAt(i-1) || r.word(i-1, "a", "the") && r.differenceAt(i-2)):
			for j++; r.word(j, "a", "an", "the"); j++ {
			}
		default:
			continue
		}
		if r.free(j) && alike(r.items[i].amount, r.items[j].amount) {
			r.comparePair(i, j)
		}
	}
}

// differenceAt reports whether "difference between" ends at item k.
func (r *reader) differenceAt(k int) bool {
	return r.word(k, "between") && r.wordIn("difference", "differ") || r.is(k, kindAsk) && strings.HasSuffix(r.items[k].word, "between")
}

// comparePair offers the amounts at items i and j for what the words beside the second
// make of it.
func (r *reader) comparePair(i, j int) {
	switch n := r.next(j); {
	case r.items[j].amount.is(unit.Pressing):
		r.choice(i, j, unit.Vacuum)
	case r.is(n, kindNoun, "bar") && r.length(i) && r.length(j):
		r.choice(i, j, unit.BarHeight)
		r.items[n].used = true
	}
}

package grammar

import "presshand/engine/unit"

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
}

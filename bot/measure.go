package bot

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"presshand/bot/book"
	"presshand/engine/unit"
	"presshand/grammar"
)

// A Measure is something that a second person can measure of a load.
type Measure struct {
	Field unit.Field
	Name  string // "bar height"
	Unit  string // what a bare figure is taken in: "in inches"
}

// Measures returns what can be measured of a plan, without the planned
// figures: the second check is independent.
func Measures(p book.Plan, metric bool) []Measure {
	var out []Measure
	add := func(want func(unit.Field) bool) {
		for _, m := range measurable {
			known := slices.ContainsFunc(out, func(x Measure) bool { return x.Name == m.name })
			if want(m.field) && !known {
				out = append(out, Measure{m.field, m.name, unitAsked(m.field, metric)})
			}
		}
	}
	add(p.Said.Has)
	if len(out) < 2 {
		add(func(f unit.Field) bool {
			return f == unit.BarHeight || f == unit.StripThickness || f == unit.Vacuum
		})
	}
	return out
}

// unitAsked says how to measure, without a figure: an example might be the one
// planned, and a hint at it is as good as an answer.
func unitAsked(f unit.Field, metric bool) string {
	asked := [2]string{"in inches", "in mm"}
	switch f {
	case unit.StripCount:
		return "how many"
	case unit.WoodMoisture:
		return "in %"
	case unit.Vacuum, unit.VacuumPercent, unit.VacuumAbsolute:
		asked = [2]string{"in inHg", "in bar"}
	case unit.ShopTemp:
		asked = [2]string{"in °F", "in °C"}
	}
	if metric {
		return asked[1]
	}
	return asked[0]
}

// measureText is what a measure is typed with: no sign that would end it and
// begin another.
var measureText = regexp.MustCompile(`^[\p{L}\p{N} ./\\'"’”″′°%⁄-]{1,30}$`)

// SayMeasured words what was measured of a load, as it is said to the bot. What
// cannot be read is returned in wrong, with what to do; fields left empty
// are left out. At least two must be filled in.
func SayMeasured(load int, ms []Measure, typed map[unit.Field]string, metric bool) (text string, wrong map[unit.Field]string) {
	wrong = map[unit.Field]string{}
	said := []string{fmt.Sprintf("%d checked", load)}
	for _, m := range ms {
		value := strings.TrimSpace(typed[m.Field])
		if value == "" {
			continue
		}
		words := m.says(value)
		if !readsAs(m, load, words, value, metric) {
			wrong[m.Field] = fmt.Sprintf("I cannot read that as the %s. Type the figure that you found, %s.", m.Name, m.Unit)
		}
		said = append(said, words)
	}
	if len(said) < 3 && len(ms) > 0 {
		for _, m := range ms {
			if typed[m.Field] == "" && wrong[m.Field] == "" {
				wrong[m.Field] = "Measure at least two things, and tell me what you found."
				break
			}
		}
	}
	return strings.Join(said, ", "), wrong
}

// says words a measure as one would on the bench.
func (m Measure) says(value string) string {
	switch m.Field {
	case unit.StripCount:
		return value + " strips"
	case unit.StripWidth:
		return "strips " + value + " wide"
	case unit.StripThickness:
		return "strips " + value + " thick"
	}
	return m.Name + " " + value
}

// readsAs reports whether words state one measure and nothing else.
func readsAs(m Measure, load int, words, value string, metric bool) bool {
	if !measureText.MatchString(value) {
		return false
	}
	p := grammar.Parse(fmt.Sprintf("%d checked, %s", load, words), grammar.Habit{Metric: metric})
	c := p.Command
	return c != nil && c.Verb == grammar.Check && slices.Equal(c.Loads, []int{load}) && len(c.Measured) == 1 &&
		(c.Measured[0].Field == m.Field || isGauge(c.Measured[0].Field) && isGauge(m.Field)) && len(p.Unused)+len(c.Doubts) == 0
}

func isGauge(f unit.Field) bool {
	return f == unit.Vacuum || f == unit.VacuumPercent || f == unit.VacuumAbsolute
}

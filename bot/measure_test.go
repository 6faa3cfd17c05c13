package bot

import (
	"strings"
	"testing"

	"presshand/bot/book"
	"presshand/engine/unit"
	"presshand/grammar"
)

// Every measure is read by a bare figure in the unit that is asked for, and
// with a unit.
func TestSayMeasured_figuresAreRead(t *testing.T) {
	typed := map[unit.Field][2][]string{
		unit.StripCount: {{"5"}, {"5"}}, unit.Vacuum: {{"25", "25 inHg"}, {"0.85", "0.85 bar"}}, unit.ShopTemp: {{"65", "65 F"}, {"18", "18 C"}},
		unit.VacuumPercent: {{"25", "25 inHg"}, {"0.85", "0.85 bar"}}, unit.VacuumAbsolute: {{"25", "25 inHg"}, {"0.85", "0.85 bar"}},
		unit.WoodMoisture: {{"8", "8%"}, {"8", "8 %"}}, unit.StripWidth: {{"2 1/4", "2 1/4 in"}, {"57", "57 mm"}},
	}
	for system, metric := range []bool{false, true} {
		for _, m := range measurable {
			figures := typed[m.field][system]
			if figures == nil {
				figures = [][]string{{"3/4", "3/4 in"}, {"19", "19 mm"}}[system]
			}
			for _, figure := range figures {
				all := []Measure{{m.field, m.name, unitAsked(m.field, metric)}, {unit.BarHeight, "bar height", ""}, {unit.StripWidth, "strip width", ""}}
				said := map[unit.Field]string{unit.BarHeight: "1 in", unit.StripWidth: "2 in", m.field: figure}
				text, wrong := SayMeasured(14, all, said, metric)
				if len(wrong) > 0 {
					t.Errorf("metric %v: %q is not read: %v", metric, text, wrong)
				}
				if p := grammar.Parse(text, grammar.Habit{Metric: metric}); p.Command == nil || len(p.Command.Measured) < 2 {
					t.Errorf("metric %v: %q states %v, want two measures at least", metric, text, p.Command)
				}
			}
		}
	}
}

func TestSayMeasured_refuses(t *testing.T) {
	ms := Measures(book.Plan{Said: unit.Facts{unit.BarHeight: unit.Number(25.4), unit.StripThickness: unit.Number(6.35)}}, false)
	if len(ms) != 2 {
		t.Fatalf("%d measures, want 2: %v", len(ms), ms)
	}
	for _, bad := range []string{"fine", "1 in, 15 dropped", "1 in; drop 14", "1 in\n15 out", "<@U1>", "1/0", "looks good", strings.Repeat("1", 31)} {
		if _, wrong := SayMeasured(14, ms, map[unit.Field]string{unit.BarHeight: bad, unit.StripThickness: "1/4"}, false); wrong[unit.BarHeight] == "" {
			t.Errorf("%q was taken as a bar height", bad)
		}
	}
	if _, wrong := SayMeasured(14, ms, map[unit.Field]string{unit.BarHeight: "1 in"}, false); len(wrong) != 1 {
		t.Errorf("one measure was enough, want two: %v", wrong)
	}
	if _, wrong := SayMeasured(14, ms, nil, false); len(wrong) != 1 {
		t.Errorf("no measure was enough, want two: %v", wrong)
	}
}

// Neither what names a measure nor what asks for it nor what is said of a slip
// has a figure that would agree with the plan, whatever is planned.
func TestMeasures_showNoFigure(t *testing.T) {
	plans := []unit.Facts{{}}
	for _, m := range measurable { // the figures that examples like to use
		for _, v := range []float64{25.4, 6.35, 57.15, 19, 19.05, 6, 57, 84.66, 85, 5, 18.3, 8, 101.6, 100, 31.75, 71.1} {
			plans = append(plans, unit.Facts{m.field: unit.Number(v)})
		}
	}
	for _, said := range plans {
		p := book.Plan{Said: said}
		for _, metric := range []bool{false, true} {
			ms := Measures(p, metric)
			slip := map[unit.Field]string{}
			for _, m := range ms {
				slip[m.Field] = "fine"
			}
			_, wrong := SayMeasured(14, ms, slip, metric)
			for _, m := range ms {
				for _, shown := range []string{m.Name, m.Unit, wrong[m.Field]} {
					if shown == "" || agreeing(p, m, shown, metric) {
						t.Errorf("plan %v shows %q for the %s", said, shown, m.Name)
					}
				}
			}
		}
	}
	if got := Measures(book.Plan{}, true); len(got) != 3 {
		t.Errorf("a plan that says nothing has %d measures, want strips, bar and gauge", len(got))
	}
}

// agreeing reports whether a text, typed in a form, would agree with the plan,
// or holds any figure.
func agreeing(p book.Plan, m Measure, text string, metric bool) bool {
	read := grammar.Parse("14 checked, "+m.says(text), grammar.Habit{Metric: metric})
	facts := unit.Facts{}
	if read.Command != nil {
		for _, s := range read.Command.Measured {
			facts[s.Field] = s.Value
		}
	}
	for _, c := range book.Compare(p, facts) {
		if c.Known() && c.Agrees {
			return true
		}
	}
	return strings.ContainsAny(text, "0123456789")
}

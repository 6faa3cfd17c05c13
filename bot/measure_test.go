package bot

import (
	"strings"
	"testing"

	"presshand/bot/book"
	"presshand/engine/unit"
	"presshand/grammar"
)

// Every measure, said by its own example, must be read as that measure.
func TestSayMeasured_examplesAreRead(t *testing.T) {
	for _, metric := range []bool{false, true} {
		for _, m := range measurable {
			all := []Measure{{m.field, m.name, exampleOf(m.field, metric)}, {unit.BarHeight, "bar height", "1 in"}, {unit.StripWidth, "strip width", "2 in"}}
			typed := map[unit.Field]string{unit.BarHeight: "1 in", unit.StripWidth: "2 in"}
			typed[m.field] = exampleOf(m.field, metric)
			text, wrong := SayMeasured(14, all, typed, metric)
			if len(wrong) > 0 {
				t.Errorf("metric %v: %q is not read: %v", metric, text, wrong)
			}
			if p := grammar.Parse(text, grammar.Habit{Metric: metric}); p.Command == nil || len(p.Command.Measured) < 2 {
				t.Errorf("metric %v: %q states %v, want two measures at least", metric, text, p.Command)
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

func TestMeasures_showNoFigure(t *testing.T) {
	p := book.Plan{Said: unit.Facts{unit.BarHeight: unit.Number(31.75), unit.Vacuum: unit.Number(71.1)}}
	for _, m := range Measures(p, false) {
		if strings.Contains(m.Example+m.Name, "1 1/4") || strings.Contains(m.Example, "21") {
			t.Errorf("measure %v tells the planned figure", m)
		}
	}
	if got := Measures(book.Plan{}, true); len(got) != 3 {
		t.Errorf("a plan that says nothing has %d measures, want strips, bar and gauge", len(got))
	}
}

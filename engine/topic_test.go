package engine_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// mustAnswer answers a question that has an answer.
func mustAnswer(t testing.TB, about engine.Topic, said unit.Facts) engine.Answer {
	t.Helper()
	a, err := engine.Compute(engine.Question{About: about, Said: said, Why: true})
	if err != nil {
		t.Fatalf("%s %v: %v", about, said, err)
	}
	return a
}

// wantTriple fails unless a figure has the three values, NaN for an end left out.
func wantTriple(t *testing.T, a engine.Answer, f unit.Field, low, mid, high, within float64) {
	t.Helper()
	got, ok := a.Values[f].(unit.Triple)
	if !ok {
		t.Errorf("%s is %v, want a figure", f, a.Values[f])
		return
	}
	for _, end := range []struct {
		name string
		got  *float64
		want float64
	}{{"low", got.Low, low}, {"mid", got.Mid, mid}, {"high", got.High, high}} {
		switch {
		case math.IsNaN(end.want):
			if end.got != nil {
				t.Errorf("%s %s is %g, want none", f, end.name, *end.got)
			}
		case end.got == nil:
			t.Errorf("%s %s is left out, want %g", f, end.name, end.want)
		case !(math.Abs(*end.got-end.want) <= within):
			t.Errorf("%s %s is %g, want %g", f, end.name, *end.got, end.want)
		}
	}
}

// wantCheck fails unless a check came out so; a verdict of "" wants no such check.
func wantCheck(t *testing.T, a engine.Answer, name string, v engine.Verdict, r engine.Reason) {
	t.Helper()
	for _, c := range a.Checks {
		if c.Name != name {
			continue
		}
		if c.Verdict != v || c.Reason != r {
			t.Errorf("check %q is %s, %s; want %s, %s", name, c.Verdict, c.Reason, v, r)
		}
		return
	}
	if v != "" {
		t.Errorf("no check %q in %v, want %s", name, a.Checks, v)
	}
}

func hasAdvice(a engine.Answer, r engine.Reason) bool {
	for _, f := range a.Advice {
		if f.Reason == r {
			return true
		}
	}
	return false
}

func hasCaution(a engine.Answer, c engine.Caution) bool {
	for _, got := range a.Cautions {
		if got == c {
			return true
		}
	}
	return false
}

// Whatever number stands in whatever field, what comes out is an error or
// numbers: JSON has no other.
func TestCompute_neverNotANumber(t *testing.T) {
	base := unit.Facts{
		unit.PanelWidth: unit.Number(600), unit.PanelLength: unit.Number(1200), unit.StripCount: unit.Number(8),
		unit.StripThickness: unit.Number(20), unit.PanelCount: unit.Number(2), unit.Faces: unit.Number(1),
		unit.CoreKind: unit.Word("mdf"), unit.CoreThickness: unit.Number(18), unit.ShopTemp: unit.Number(18),
		unit.ShopHumidity: unit.Number(50), unit.ServiceHumidity: unit.Number(40), unit.ServiceTemp: unit.Number(21),
		unit.WoodMoisture: unit.Number(9), unit.WoodMoistureLow: unit.Number(8), unit.WoodMoistureHigh: unit.Number(10),
		unit.Gap: unit.Number(0.1), unit.LabelOpen: unit.Number(5), unit.LabelClosed: unit.Number(10),
		unit.LabelPress: unit.Number(45), unit.LabelSpread: unit.Number(180), unit.LabelMinTemp: unit.Number(8),
		unit.PressTime: unit.Number(90), unit.LayupPanel: unit.Number(200), unit.LayupLoad: unit.Number(500),
		unit.PumpSpeed: unit.Number(2), unit.PumpLimit: unit.Number(3), unit.PressVolume: unit.Number(200),
		unit.Leak: unit.Number(1), unit.Vacuum: unit.Number(84), unit.Opening: unit.Number(100),
		unit.BedWidth: unit.Number(1220), unit.BedLength: unit.Number(2440), unit.BagWidth: unit.Number(1300),
		unit.BagLength: unit.Number(2500), unit.Ambient: unit.Number(100), unit.Altitude: unit.Number(100),
	}
	for _, about := range []engine.Topic{engine.Glue, engine.Pump, engine.Move} {
		for f, was := range base {
			if _, ok := was.(unit.Number); !ok {
				continue
			}
			for _, v := range []float64{0, -1, 1e-300, -1e300, 1e300, math.MaxFloat64, math.SmallestNonzeroFloat64, 0.5, 3e9, math.NaN(), math.Inf(1)} {
				said := base.Clone()
				said[f] = unit.Number(v)
				a, err := engine.Compute(engine.Question{About: about, Said: said, Why: true})
				text, jsonErr := json.Marshal(a)
				if jsonErr != nil || strings.Contains(string(text), "NaN") || strings.Contains(string(text), "Inf") {
					t.Errorf("%s with %s of %g: %v, %s", about, f, v, jsonErr, text)
				}
				if (math.IsNaN(v) || math.IsInf(v, 0)) && err == nil {
					t.Errorf("%s takes %s of %g, want an error", about, f, v)
				}
			}
		}
	}
}

// Each figure has its working, and each working says how far its source goes.
func TestCompute_workingOfEachFigure(t *testing.T) {
	for about, c := range map[engine.Topic]struct {
		said    unit.Facts
		figures []unit.Field
	}{
		engine.Glue: {unit.Facts{unit.PanelWidth: unit.Number(600), unit.PanelLength: unit.Number(1200), unit.StripWidth: unit.Number(60), unit.StripThickness: unit.Number(20), unit.ShopHumidity: unit.Number(50)},
			[]unit.Field{unit.GlueMass, unit.JointArea, unit.LayupPanel, unit.ClosedTime, unit.PressTime, unit.MinTemp, unit.Emc}},
		engine.Pump: {unit.Facts{unit.PumpSpeed: unit.Number(2), unit.Opening: unit.Number(75), unit.Vacuum: unit.Number(80), unit.Leak: unit.Number(1)},
			[]unit.Field{unit.Pump, unit.UltimateVacuum, unit.Hold}},
		engine.Move: {unit.Facts{unit.PanelWidth: unit.Number(600), unit.WoodMoisture: unit.Number(8), unit.ServiceHumidity: unit.Number(40), unit.CoreKind: unit.Word("mdf"), unit.CoreThickness: unit.Number(18), unit.StripThickness: unit.Number(4)},
			[]unit.Field{unit.Emc, unit.WidthChange, unit.Cup}},
	} {
		a := mustAnswer(t, about, c.said)
		for f := range a.Values {
			if !slices.Contains(c.figures, f) {
				c.figures = append(c.figures, f)
			}
		}
		for _, f := range c.figures {
			found := false
			for _, s := range a.Working {
				if s.Name == string(f) {
					found = s.Formula != "" && s.Numbers != "" && s.Result != "" && s.Source != "" && s.Standing != ""
				}
			}
			if _, given := a.Values[f]; !given || !found {
				t.Errorf("%s: %s given %v, its working whole %v; want both", about, f, given, found)
			}
		}
	}
}

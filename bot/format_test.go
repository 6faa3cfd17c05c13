package bot

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"unicode"

	"presshand/engine"
	"presshand/engine/unit"
)

// What is to be at least so much goes up to the next 1/32 in (0.79375 mm) or half
// millimetre, and stays where it is on one: 46.04 mm is 1 13/16 in, 46.05 is over.
func TestStyle_roundedUp(t *testing.T) {
	for _, c := range []struct {
		n            float64
		inch, metric string
	}{
		{46.0375, "1 13/16 in", "46.5 mm"}, {46.05, "1 27/32 in", "46.5 mm"}, {46.5, "1 27/32 in", "46.5 mm"}, {46.51, "1 27/32 in", "47 mm"},
	} {
		for metric, want := range map[bool]string{false: c.inch, true: c.metric} {
			got := style{metric: metric}.fill("{bar_height_mm.up}", unit.Facts{unit.BarHeight: unit.Number(c.n)})
			if got != want {
				t.Errorf("%g mm and up is %q, want %q", c.n, got, want)
			}
		}
	}
}

// A step of 1/8 in adds 6.35 kPa: 2 kPa a millimetre, 6 kPa in the metric step of
// 3 mm.
func TestSentence_metricStep(t *testing.T) {
	f := engine.Finding{Reason: engine.ReasonEachBarStep, Figures: unit.Facts{unit.BarHeight: unit.Number(3.175), unit.SideFarJoint: unit.Number(6.35)}}
	got := style{metric: true}.sentence(f, worked{})
	if want := "Each further 3 mm of covered bar adds 6 kPa at the far joint."; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
}

// By hand: 57.15 mm is 2.25 in; 1/32 in is 0.79375 mm; 25 inHg is 84.66 kPa and
// 12.28 psi (NIST SP 811); 70 °F is 21.1 °C.
func TestStyle_both(t *testing.T) {
	inch, metric := style{}, style{metric: true}
	for _, c := range []struct {
		f            unit.Field
		n            float64
		inch, metric string
	}{
		{unit.BarCovered, 57.15, "2 1/4 in (57 mm)", "57 mm (2 1/4 in)"},
		{unit.Rise, 0.5, "0.02 in (0.5 mm)", "0.5 mm (0.02 in)"},
		{unit.Rise, 0.79375, "1/32 in (0.79 mm)", "0.79 mm (1/32 in)"},
		{unit.FacePressure, 84.66, "12.3 psi (85 kPa)", "85 kPa (12.3 psi)"},
		{unit.Vacuum, 84.66, "25 inHg (85 kPa)", "85 kPa (25 inHg)"},
		{unit.MinTemp, 10, "50 °F (10 °C)", "10 °C (50 °F)"},
		{unit.FaceForce, 252000, "28.3 tons (252 kN)", "252 kN (28.3 tons)"},
		{unit.GlueMass, 358, "12.6 oz (358 g)", "358 g (12.6 oz)"},
		{unit.GlueMass, 2268, "5 lb (2.27 kg)", "2.27 kg (5 lb)"},
		{unit.FaceTonsPerSquareFoot, 0.884, "0.88 ton/ft²", "0.88 ton/ft²"},
		{unit.WidthChange, -5.5, "−7/32 in (−5.5 mm)", "−5.5 mm (−7/32 in)"},
		{unit.StripsLeft, 12, "12", "12"},
	} {
		if got := inch.both(c.f, c.n); got != c.inch {
			t.Errorf("%s %g in an inch shop is %q, want %q", c.f, c.n, got, c.inch)
		}
		if got := metric.both(c.f, c.n); got != c.metric {
			t.Errorf("%s %g in a metric shop is %q, want %q", c.f, c.n, got, c.metric)
		}
	}
}

func TestDuration_asSaid(t *testing.T) {
	for seconds, want := range map[float64]string{
		0: "0 s", 45: "45 s", 205: "3 min 25 s", 840: "14 min", 5400: "1 h 30 min", 10080: "2 h 48 min", 86400: "24 h", 259200: "3 days",
	} {
		if got := duration(seconds); got != want {
			t.Errorf("%g s is %q, want %q", seconds, got, want)
		}
	}
}

func TestStyle_span(t *testing.T) {
	triple := func(low, mid, high float64) unit.Triple { return unit.TripleOf(unit.Around(low, mid, high)) }
	for _, c := range []struct {
		f    unit.Field
		t    unit.Triple
		want string
	}{
		{unit.FacePressure, triple(82.12, 84.66, 87.2), "12.3 psi (85 kPa), could be 11.9 to 12.6 psi"},
		{unit.FacePressure, triple(84.66, 84.66, 84.66), "12.3 psi (85 kPa)"},
		{unit.BarCovered, triple(6.35, 6.35, 25.4), "1/4 in (6.5 mm), could be 1/4 to 1 in"},
		{unit.PressTime, triple(28, 84, 168), "84 min, could be 28 min to 2 h 48 min"},
		{unit.Pump, triple(150, 205, 330), "3 min 25 s, could be 2 min 30 s to 5 min 30 s"},
		{unit.Pump, triple(74, 102, math.Inf(1)), "1 min 40 s, at least 74 s"},
		{unit.Pump, triple(74, math.Inf(1), math.Inf(1)), "at least 74 s"},
		{unit.Pump, unit.Triple{}, "out of reach"},
	} {
		if got := (style{}).triple(c.f, c.t); got != c.want {
			t.Errorf("%s is %q, want %q", c.f, got, c.want)
		}
	}
}

func TestSignificant_neverAnExponent(t *testing.T) {
	for _, v := range []float64{1e-12, 3.7e-5, 0.02, 1, 99999, 5e8, 1e20, math.NaN(), math.Inf(-1)} {
		if got := significant(v, 3); strings.ContainsAny(got, "eEN") || strings.Contains(got, "Inf") {
			t.Errorf("%g is shown as %q, want plain digits", v, got)
		}
	}
}

// What a chat service could take for a mention, a link or a format.
func TestQuoted_harmless(t *testing.T) {
	for _, typed := range []string{
		"<!channel>", "<@U123|ana>", "@here", "http://example.com", "example.com/x", "*bold* _it_ ~st~ `code`",
		"[text](http://x.y)", "<b>html</b>", "&lt;b&gt;", ":smile:", "#room:server", "a\nb\r\tc\x00d", "\u202egnp", strings.Repeat("long ", 100),
	} {
		got := quoted(typed)
		if strings.ContainsAny(got, "<>@#*_~`[]&\\|\n\r\t\x00\u202e") || strings.Contains(got, "://") || strings.Contains(got, ":s") || strings.Contains(got, "example.com") {
			t.Errorf("%q is shown as %q, want it harmless", typed, got)
		}
		if n := len([]rune(got)); n > maxQuoted+3 {
			t.Errorf("%.20q… is shown in %d characters, want at most %d", typed, n, maxQuoted+3)
		}
		for _, c := range got {
			if unicode.IsControl(c) {
				t.Errorf("%q is shown with the control character %U", typed, c)
			}
		}
	}
	if got := quoted("2.5 mm at 7:15"); got != "“2.5 mm at 7:15”" {
		t.Errorf("a measure and a time are shown as %s, want them as they are", got)
	}
}

func TestWithoutMarkup_mentionsAndLinks(t *testing.T) {
	for typed, want := range map[string]string{
		"<@U123> 5 strips":            "  5 strips",
		"see <http://x.y|the plan> 4": "see  the plan  4",
		"strips < 3 wide":             "strips < 3 wide",
		"a <b> c":                     "a <b> c",
		"<!channel> in":               "  in",
		"<":                           "<",
		"<>":                          "<>",
		"no markup":                   "no markup",
	} {
		if got := withoutMarkup(typed); got != want && strings.TrimSpace(got) != strings.TrimSpace(want) {
			t.Errorf("%q becomes %q, want %q", typed, got, want)
		}
	}
}

func TestReply_jsonIsAlwaysValid(t *testing.T) {
	nan := math.NaN()
	r := Reply{
		About: "side", Read: unit.Facts{unit.Vacuum: unit.Number(nan), unit.StripWidth: unit.Number(2.25 * 25.4)},
		Values: unit.Facts{
			unit.Pump:       unit.Triple{Low: &nan, Mid: nil},
			unit.Picks:      unit.Sets{{1, 2}, {}},
			unit.StockPiles: unit.Piles{{Width: 54, Count: 12}},
			unit.Goal:       unit.Facts{unit.SideFarJoint: unit.Number(70)},
			unit.Species:    nil,
		},
		Unused: []string{"\"quoted\"\n", "\xff", "<b>"},
		Loads:  []int{1, 2}, States: []string{"out", "out"},
	}
	text := r.AppendJSON(nil)
	var back map[string]any
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	if got := back["read"].(map[string]any); len(got) != 1 || got["strip_width_mm"] != 57.15 {
		t.Errorf("read is %v, want the width of 57.15 alone", got)
	}
	if strings.Contains(string(text), "NaN") || strings.Contains(string(text), "\n") {
		t.Errorf("%s has NaN or a line break in it", text)
	}
}

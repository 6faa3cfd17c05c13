package engine_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// stepOf returns the working of a figure.
func stepOf(t *testing.T, a engine.Answer, f unit.Field) engine.Step {
	t.Helper()
	for _, s := range a.Working {
		if s.Name == string(f) {
			return s
		}
	}
	t.Fatalf("no working of %s", f)
	return engine.Step{}
}

var written = regexp.MustCompile(`[0-9.]+(e-?[0-9]+)?`)

// The numbers shown give the result shown, where its terms nearly cancel too: of
// 6.35 mm of film on the edge the corner and the friction leave 0.01 mm.
func TestSide_workingGivesTheResult(t *testing.T) {
	a := mustAnswer(t, engine.Side, unit.Facts{
		unit.StripCount: unit.Number(2), unit.StripWidth: unit.Number(13.64), unit.StripThickness: unit.Number(6.35), unit.BarDenied: unit.Word("none"),
		unit.Vacuum: unit.Number(84.659725), unit.SurfaceKind: unit.Word("film"),
	})
	s := stepOf(t, a, unit.SideFarJoint)
	var v []float64
	for _, w := range written.FindAllString(s.Numbers, -1) {
		n, _ := strconv.ParseFloat(w, 64)
		v = append(v, n)
	}
	if len(v) != 9 {
		t.Fatalf("%q shows %v, want nine numbers", s.Numbers, v)
	}
	got := v[0] * ((v[1] - v[2]) - v[3]*(v[4]+v[5]) - v[6]*v[7]) / v[8]
	want, _ := strconv.ParseFloat(written.FindString(s.Result), 64)
	if !(want > 0) || math.Abs(got-want) > 0.002*want {
		t.Errorf("%q gives %g, and the result is %s", s.Numbers, got, s.Result)
	}
}

// The working says what the low end under a caul and the high end of an unknown
// cover are made of, and that a bar on nothing that rubs reaches everywhere.
func TestSide_workingOfTheEnds(t *testing.T) {
	caul := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.CaulThickness: unit.Number(60)}))
	for f, want := range map[unit.Field]string{
		unit.SideFarJoint: "low with 2 μ x under a caul", unit.BarReach: "low with 2 μ under a caul",
	} {
		if s := stepOf(t, caul, f); !strings.Contains(s.Formula, want) {
			t.Errorf("%s is worked as %q, want %q in it", f, s.Formula, want)
		}
	}
	open := mustAnswer(t, engine.Side, unit.Facts{
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(6), unit.BarHeight: unit.Number(25), unit.Vacuum: unit.Number(80),
		unit.FrictionStated: unit.Number(0), unit.Tent: unit.Number(0),
	})
	if s := stepOf(t, open, unit.BarCovered); !strings.Contains(s.Formula, "high with c = H") {
		t.Errorf("the cover is worked as %q, want its high end told", s.Formula)
	}
	if open.Values[unit.BarReach] != unit.Word("everywhere") || !strings.Contains(stepOf(t, open, unit.BarReach).Result, "everywhere") {
		t.Errorf("reaches %v, want everywhere", open.Values[unit.BarReach])
	}
	if hasAdvice(open, engine.ReasonFrictionBound) {
		t.Error("friction of 0 is said to be used up")
	}
}

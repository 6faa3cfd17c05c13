package picture

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"presshand/engine/unit"
)

// By hand: three labels of 10 that all want to sit at 50 end at 40, 50, 60;
// with nothing before 45 they begin there.
func TestSpread_pooled(t *testing.T) {
	for _, c := range []struct {
		low  float64
		want []float64
	}{{0, []float64{40, 50, 60}}, {45, []float64{50, 60, 70}}} {
		got := spread([]float64{50, 50, 50}, []float64{10, 10, 10}, c.low)
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-9 {
				t.Errorf("spread from %g gives %v, want %v", c.low, got, c.want)
				break
			}
		}
	}
}

func TestSpread_neverTouches(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		n := 1 + r.IntN(20)
		wish, size := make([]float64, n), make([]float64, n)
		at := 0.0
		for i := range n {
			at += 20 * r.Float64()
			wish[i], size[i] = at, 1+20*r.Float64()
		}
		got, end := spread(wish, size, 5), 5.0
		for i, c := range got {
			if c-size[i]/2 < end-1e-9 {
				t.Fatalf("item %d of %v, sizes %v, begins before %g: %v", i, wish, size, end, got)
			}
			end = c + size[i]/2
		}
	}
}

// By hand: dashes of 3 with gaps of 2 along 4 right and 6 down: on 0–3, off
// 3–5, on 5–8, off 8–10.
func TestDashes_roundACorner(t *testing.T) {
	got := dashes([]point{{0, 0}, {4, 0}, {4, 6}}, []float64{3, 2})
	want := [][]point{{{0, 0}, {3, 0}}, {{4, 1}, {4, 4}}}
	if len(got) != len(want) {
		t.Fatalf("dashes are %v, want %v", got, want)
	}
	for i := range want {
		for j := range want[i] {
			if got[i][j] != want[i][j] {
				t.Errorf("dash %d is %v, want %v", i, got[i], want[i])
			}
		}
	}
}

func TestSpan_ends(t *testing.T) {
	inf := unit.Pressure(math.Inf(1))
	for _, c := range []struct {
		r    unit.Range[unit.Pressure]
		want string
	}{
		{kpa(80, 85, 90), "85 kPa (80–90 kPa)"},
		{kpa(85, 85, 85.2), "85 kPa"},
		{unit.Range[unit.Pressure]{Low: 80000, Mid: 85000, High: inf}, "85 kPa (from 80 kPa)"},
	} {
		if got := span(c.r, Units{}.pressure); got != c.want {
			t.Errorf("%v is written %q, want %q", c.r, got, c.want)
		}
	}
}

func TestDraw_refuses(t *testing.T) {
	bad := unit.Length(math.NaN())
	strips := []Layer{{Strips, in(1)}}
	line := []PressureAt{{0, kpa(1, 2, 3)}, {1, kpa(0, 1, 2)}}
	for want, of := range map[string]description{
		"no layer":     CrossSection{},
		"sled":         CrossSection{Layers: []Layer{{Sled, bad}}},
		"strip":        CrossSection{Layers: strips, Widths: []unit.Length{-1}},
		"bar measures": CrossSection{Layers: strips, Bar: &Bar{Height: 1e9}},
		"pressure":     CrossSection{Layers: strips, Face: kpa(0, math.NaN(), 0)},
		"proud":        CrossSection{Layers: strips, Proud: []Proud{{By: unit.Exactly(bad)}}},
		"covered":      CrossSection{Layers: strips, Bar: &Bar{Covered: unit.Exactly(bad)}},
		"1 points":     PressureChart{Curve: line[:1]},
		"runs back":    PressureChart{Curve: []PressureAt{line[1], line[0]}},
		"side":         PressureChart{Curve: []PressureAt{line[0], {1, kpa(0, math.NaN(), 0)}}},
		"no panel":     StripLayout{},
		"no strip":     StripLayout{Panels: []StripPanel{{}}},
		"no load":      BedPlan{Width: 1, Length: 2},
		"more than 0":  BedPlan{Beds: []Bed{{}}},
		"on the bed":   BedPlan{Width: 1, Length: 2, Beds: []Bed{{Panels: []Placed{{"A", 1.5, 0, 1, 1}}}}},
		"0 loads":      DayClock{Presses: []string{"press"}},
		"press 1":      DayClock{Presses: []string{"press"}, Loads: []ClockLoad{{Press: 1}}},
		"rising":       DayClock{Presses: []string{"press"}, Loads: []ClockLoad{{Usual: ClockTimes{In: 60, Out: 30}}}},
	} {
		if d, err := of.Draw(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("drawing %v with error %v, want an error that says %q", d != nil, err, want)
		}
	}
}

// Everything with a figure in the drawing has it in the alt text too.
func TestAlt_hasTheFigures(t *testing.T) {
	for name, wants := range map[string][]string{
		"section-bar":   {"sled 3/4 in, strips 1/4 in, film", "5 strips of 2 1/4 in", "bar 1 in high", "1/4 in (1/4–1 in) pushes", "3/4 in of the bar does nothing", "12.3 psi", "joint 4: 7.5 psi"},
		"section-stack": {"1/16 in proud", "proud of the fence, too little", "opening 4 in", "Mat of level 2: 3/8 in"},
		"section-wedge": {"wedge", "165 kPa (100–240 kPa)"},
		"chart-long":    {"Joint 1: 283 kPa", "needs 70 kPa", "reaches 889 mm"},
		"strips-two":    {"Top A: 80 mm, 60 mm, 100 mm", "gap of 14 mm"},
		"bed":           {"Load 1, 4 panels: 2 A, 2 B: A 48 × 22 in, 0 in along and 0 in across", "1 in (25 mm) kept between", "C: 3 × 8 in, 1 panel in all"},
		"clock":         {"Load 6, 3 panels: lay up 14:20, into press 2 15:02, unload 16:32, out 16:42, at the latest 18:02", "Deadline 16:20 missed: load 6 by 22 min"},
	} {
		d, err := samples()[name].Draw()
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range wants {
			if !strings.Contains(d.Alt, w) {
				t.Errorf("%s: alt %q lacks %q", name, d.Alt, w)
			}
		}
	}
}

// Strips of 47 3/8 in and a wedge of 5/8 in fill 48 in, and a bar of 3 in that
// is covered to 3 in has no idle part, whatever the last digit of a sum says.
func TestLengths_lastDigitIsNothing(t *testing.T) {
	dust := unit.Length(3e-16)
	for _, off := range []unit.Length{-dust, dust} {
		strips := StripLayout{Units: exactInches, Panels: []StripPanel{{Widths: []unit.Length{in(40), in(7.375)}, Wedge: in(0.625) + off, Target: in(48)}}}
		bar := sections()["section-bar"].(CrossSection)
		bar.Units, bar.Bar = exactInches, &Bar{Height: in(3), Width: in(0.75), Covered: unit.Around(in(2), in(3)+off, in(3))}
		for _, of := range []description{strips, bar} {
			d, err := of.Draw()
			if err != nil {
				t.Fatal(err)
			}
			said := d.Alt
			for _, l := range d.labels {
				said += "\n" + l.text
			}
			for _, no := range []string{"e-", " in over", " in short", "does nothing"} {
				if strings.Contains(said, no) {
					t.Errorf("%T says %q of a length that is nothing:\n%s", of, no, said)
				}
			}
		}
	}
}

var exactInches = Units{Length: func(l unit.Length) string { return fmt.Sprintf("%v in", l.Inches()) }}

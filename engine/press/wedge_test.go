package press_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// By hand: slope 1:6 and μ = 0.30 on both faces give
// tan(α+φ) = (1/6 + 0.30)/(1 − 0.30/6) = 0.49123, so N = 500/0.79123 = 631.9 N.
func ExampleWedgeForce_oneInSix() {
	N, err := press.WedgeForce(500, unit.Slope(1, 6), unit.Friction(0.30))
	fmt.Printf("%.1f N %v\n", N, err)
	// Output: 631.9 N <nil>
}

// 1 in 6 is 9.46°, twice the friction angle of 0.3 is 33.4°; of 0.05, 5.7°.
func ExampleWedgeHolds_oneInSix() {
	dry, _ := press.WedgeHolds(unit.Slope(1, 6), unit.Friction(0.3))
	waxed, err := press.WedgeHolds(unit.Slope(1, 6), unit.Friction(0.05))
	fmt.Println(dry, waxed, err)
	// Output: true false <nil>
}

// By hand: 1320 N on 22 mm × 1.5 m = 0.033 m² is 40 kPa.
func ExampleDrivenPreload_eightStrips() {
	p, err := press.DrivenPreload(1320, 0.022, 1.5)
	fmt.Printf("%.0f kPa %v\n", p.Kilopascals(), err)
	// Output: 40 kPa <nil>
}

// By hand: 1 GPa · 4 · 0.05 mm / 250 mm = 0.8 MPa.
func ExampleSqueezeOutRelief_fiveStrips() {
	p, err := press.SqueezeOutRelief(unit.Gigapascals(1), 5, unit.Millimetres(0.05), 0.250)
	fmt.Printf("%.0f kPa %v\n", p.Kilopascals(), err)
	// Output: 800 kPa <nil>
}

// By hand: δ/W = 1/500; 1/E = 1e-9, t/(W K) = 0.02/(0.5·20e6) = 2e-9 per Pa;
// 0.8 · 0.002/3e-9 = 533.3 kPa.
func ExampleOverfillPreload_softFence() {
	p, err := press.OverfillPreload(0.8, 0.001, 0.500, 0.020, unit.Gigapascals(1), 20e6)
	fmt.Printf("%.1f kPa %v\n", p.Kilopascals(), err)
	// Output: 533.3 kPa <nil>
}

// The statics answers of the reference file: D/N for three tapers with the same
// friction on both faces.
func TestWedgeForce_published(t *testing.T) {
	slopes := map[string][2]float64{
		"taper 1:8, mu=0.2 both faces: P/W = 1/3 + 1/5": {8, 0.2},
		"taper 1:8, mu=0.4 both faces: P/W":             {8, 0.4},
		"taper 1:12, mu=0.3 both faces: P/W":            {12, 0.3},
	}
	checked := 0
	for _, row := range reference(t, "wedge_checks.csv") {
		c, ok := slopes[row[1]]
		if !ok {
			continue
		}
		checked++
		want := leading(t, row[2])
		N, err := press.WedgeForce(1, unit.Slope(1, c[0]), unit.Friction(c[1]))
		if err != nil || math.Abs(1/float64(N)-want) > 1e-4 {
			t.Errorf("%s: D/N %.5f (%v), want %.5f", row[1], 1/float64(N), err, want)
		}
	}
	if checked != len(slopes) {
		t.Fatalf("%d rows checked, want %d", checked, len(slopes))
	}
}

// Limit: without friction a wedge is an inclined plane, N = D · run/rise.
func TestWedgeForce_inclinedPlane(t *testing.T) {
	for _, n := range []float64{1, 4, 12, 50} {
		N, err := press.WedgeForce(100, unit.Slope(1, n), 0)
		if err != nil || math.Abs(float64(N)-100*n) > 1e-9*100*n {
			t.Errorf("1:%g: %g N (%v), want %g", n, N, err, 100*n)
		}
	}
}

// Independent of the formula: the face reactions rebuilt from N must balance D,
// and friction on each face is μ times what presses it.
func TestWedgeForce_balance(t *testing.T) {
	for i := 1.0; i < 60; i++ {
		α, μ := i/100, i/150
		N, err := press.WedgeForce(500, unit.Angle(α), unit.Friction(μ))
		if err != nil {
			t.Fatal(err)
		}
		// Square to the straight face the two faces press alike: with R on the
		// taper, N = R cos α − μ R sin α; along it D = μ N + R sin α + μ R cos α.
		R := float64(N) / (math.Cos(α) - μ*math.Sin(α))
		if D := μ*float64(N) + R*math.Sin(α) + μ*R*math.Cos(α); math.Abs(D-500) > 1e-9*500 {
			t.Errorf("α=%g μ=%g: faces balance %g N, want 500", α, μ, D)
		}
	}
}

// A stuck 24° wedge needs a friction of tan 12° at least (KoMaL problem P.4651);
// a single taper of 24° is the same body.
func TestWedgeHolds_published(t *testing.T) {
	taper := unit.Degrees(24)
	for μ, want := range map[float64]bool{0.2125: false, 0.2127: true} {
		got, err := press.WedgeHolds(taper, unit.Friction(μ))
		if err != nil || got != want {
			t.Errorf("μ %g: holds %v (%v), want %v", μ, got, err, want)
		}
	}
}

// A stiff fence leaves the whole overfill to the strips, a soft one hardly any.
func TestOverfillPreload_limits(t *testing.T) {
	E := unit.Gigapascals(1)
	rigid, err := press.OverfillPreload(1, 0.001, 0.5, 0.02, E, 1e20)
	if want := 1e9 * 0.001 / 0.5; err != nil || math.Abs(float64(rigid)-want) > 1e-6*want {
		t.Errorf("rigid fence %g Pa (%v), want %g", rigid, err, want)
	}
	soft, err := press.OverfillPreload(1, 0.001, 0.5, 0.02, E, 1e3)
	if want := 1e3 * 0.001 / 0.02; err != nil || math.Abs(float64(soft)-want) > 1e-3*want {
		t.Errorf("soft fence %g Pa (%v), want %g", soft, err, want)
	}
}

func TestWedge_refusesWhatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, err := range []error{
		second(press.WedgeForce(unit.Force(nan), 0.1, 0.1)), second(press.WedgeForce(1, 0, 0.1)), second(press.WedgeForce(1, 1, 1)),
		second(press.WedgeForce(1, unit.Angle(nan), 0.1)), second(press.WedgeHolds(0.1, unit.Angle(nan))),
		second(press.DrivenPreload(-1, 1, 1)), second(press.DrivenPreload(1, 0, 1)), second(press.DrivenPreload(1, 1, unit.Length(nan))),
		second(press.SqueezeOutRelief(1, 0, 0, 1)), second(press.SqueezeOutRelief(1, 2, -1, 1)), second(press.SqueezeOutRelief(1, 2, 0, 0)),
		second(press.OverfillPreload(1.1, 0, 1, 1, 1, 1)), second(press.OverfillPreload(1, -1, 1, 1, 1, 1)),
		second(press.OverfillPreload(1, 1, 0, 1, 1, 1)), second(press.OverfillPreload(1, 1, 1, 1, 1, 0)),
	} {
		var r *unit.RangeError
		if !errors.As(err, &r) {
			t.Errorf("error is %v, want a range error", err)
		}
	}
}

// Three published problems of a wedge driven into a log or a saw cut, their answers
// worked out apart from this code. Such a wedge tapers to both sides, so half of it,
// of half the angle, carries half the force, and its middle plane does not rub: of
// what [WedgeForce] takes by D/N, the friction of the base is left out.
func TestWedgeForce_publishedProblems(t *testing.T) {
	for _, c := range []struct {
		row             string
		angle, μ, drive float64
		answers         func(across, along, μ float64) []float64
	}{
		{"reaction while driving R = 300/sin(5+phi)", 10, 0.35, 600, func(across, along, _ float64) []float64 { return []float64{math.Hypot(across, along)} }},
		{"horizontal part left after P is removed", 10, 0.35, 600, func(across, _, _ float64) []float64 { return []float64{across} }},
		{"R while driving; horizontal part", 15, 0.25, 30, func(across, along, _ float64) []float64 { return []float64{math.Hypot(across, along), across} }},
		{"N while driving; ratio needed after", 12, 0.4, 3.2, func(across, along, μ float64) []float64 {
			return []float64{math.Hypot(across, along) / math.Sqrt(1+μ*μ), math.Tan(6 * math.Pi / 180)}
		}},
	} {
		found := false
		for _, row := range reference(t, "wedge_checks.csv") {
			if row[1] != c.row {
				continue
			}
			found = true
			N, err := press.WedgeForce(1, unit.Degrees(c.angle/2), unit.Friction(c.μ))
			if err != nil {
				t.Fatal(err)
			}
			along := c.drive / 2
			for i, got := range c.answers(along/(1/float64(N)-c.μ), along, c.μ) {
				want := leading(t, strings.TrimSpace(strings.Split(row[2], ";")[i]))
				if math.Abs(got-want) > 5e-4*want {
					t.Errorf("%s: %.5g, want %g", c.row, got, want)
				}
			}
		}
		if !found {
			t.Errorf("no row %q", c.row)
		}
	}
	for μ, holds := range map[float64]bool{0.4: true, 0.1052: true, 0.1050: false} { // the wedge of 12° wants 0.1051
		if got, err := press.WedgeHolds(unit.Degrees(12), unit.Friction(μ)); err != nil || got != holds {
			t.Errorf("friction %g: stays %v (%v), want %v", μ, got, err, holds)
		}
	}
}

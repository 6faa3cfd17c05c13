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

// By hand: 6.4 · 1e9 · 0.01³ · 0.003 / 0.12⁴ = 19.2/2.0736e-4 = 92593 Pa.
func ExampleHumpPressure_cuppedBoard() {
	p, err := press.HumpPressure(unit.Gigapascals(1), 0.010, 0.003, 0.120)
	fmt.Printf("%.1f kPa %v\n", p.Kilopascals(), err)
	// Output: 92.6 kPa <nil>
}

// By hand, E t³ c/s⁴ = 14467.6 Pa: 10.667 of it is 154.3 kPa; 2.667 · 3/0.15 =
// 53.33 of it is 771.6 kPa, which is the larger.
func ExampleHollowPressure_cuppedBoard() {
	p, err := press.HollowPressure(unit.Gigapascals(1), 0.010, 0.003, 0.120, unit.Millimetres(0.15))
	fmt.Printf("%.1f kPa %v\n", p.Kilopascals(), err)
	// Output: 771.6 kPa <nil>
}

// Roark's plates tend to a strip as they get longer: y = α q b⁴/(E t³) with α
// 0.1421 at infinite length, where Poisson's ratio of 0.3 stiffens the plate by
// 1/(1 − ν²) against a strip that is free to curl.
func TestHumpPressure_roarkLongPlate(t *testing.T) {
	found := false
	for _, row := range reference(t, "beam_plate_bilayer_checks.csv") {
		if row[0] != "plate" || row[1] != "a/b=inf" {
			continue
		}
		found = true
		α := leading(t, strings.TrimPrefix(row[3], "alpha "))
		p, err := press.HumpPressure(1, 1, 1, 1)
		if want := (1 - 0.3*0.3) / α; err != nil || math.Abs(float64(p)-want) > 0.002*want {
			t.Errorf("strip %.4f (%v), Roark's long plate %.4f", float64(p), err, want)
		}
	}
	if !found {
		t.Fatal("the long plate is not in the file")
	}
}

// Different method: a strip of curvature 8 c/s² is pressed onto a flat bed by
// relaxing its deflection point by point; at the pressure given its edges stand
// g above the bed.
func TestHollowPressure_contact(t *testing.T) {
	const E, th, c, s, g = 1e9, 0.010, 0.003, 0.120, 0.0005
	p, err := press.HollowPressure(E, th, c, s, g)
	if err != nil {
		t.Fatal(err)
	}
	if got := edgeLift(float64(p), E*th*th*th/12, 8*c/(s*s), s/2); math.Abs(got-g) > 0.03*g {
		t.Errorf("at %g Pa the edge stands %g m up, want %g", float64(p), got, g)
	}
}

// edgeLift presses a half strip of curvature κ onto a bed and returns the height
// of its free edge. The bed carries where the strip lies flat; the place where
// it lifts is the one at which the moment there just flattens it.
func edgeLift(p, EI, κ, half float64) float64 {
	const n = 4000
	h := half / n
	for lift := 0; lift <= n; lift++ { // strip lies flat on the first lift points
		a := half - float64(lift)*h
		if p*a*a/2 > EI*κ {
			continue // the moment flattens more than the strip is curved
		}
		y, slope := 0.0, 0.0
		for i := range n {
			x := (float64(i) + 0.5) * a / n
			slope += (κ - p*(a-x)*(a-x)/2/EI) * a / n
			y += slope * a / n
		}
		return y
	}
	return 0
}

func TestFlatten_refusesWhatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, err := range []error{
		second(press.HumpPressure(0, 1, 1, 1)), second(press.HumpPressure(1, unit.Length(nan), 1, 1)), second(press.HumpPressure(1, 1, -1, 1)),
		second(press.HollowPressure(1, 1, 1, 1, 0)), second(press.HollowPressure(1, 1, 1, 0, 1)),
	} {
		var r *unit.RangeError
		if !errors.As(err, &r) {
			t.Errorf("error is %v, want a range error", err)
		}
	}
}

package press_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// By hand: √(3 · 600 · 1.6 / 8) = √360 = 18.97 mm.
func ExampleRise_sprungPanel() {
	y, err := press.Rise(0.600, 0.0016)
	fmt.Printf("%.2f mm %v\n", y.Millimetres(), err)
	// Output: 18.97 mm <nil>
}

// By hand: 8.2112 · 1e9 · 0.006 · 0.019³ / 0.6⁴ = 337932.5/0.1296 = 2607 Pa.
func ExampleSnapPressure_sprungPanel() {
	p, err := press.SnapPressure(unit.Gigapascals(1), 0.006, 0.019, 0.600)
	fmt.Printf("%.0f Pa %v\n", p, err)
	// Output: 2607 Pa <nil>
}

// By hand: π² · 1e9 · 0.01² / (12 · 0.5²) = 986960/3 = 328987 Pa.
func ExampleBucklePressure_looseStrips() {
	p, err := press.BucklePressure(unit.Gigapascals(1), 0.010, 0.500)
	fmt.Printf("%.1f kPa %v\n", p.Kilopascals(), err)
	// Output: 329.0 kPa <nil>
}

// By hand: 6.4 · 12e9 · 0.05³ · 0.001 / 1.2⁴ = 9600/2.0736 = 4629.6 Pa.
func ExampleClosingPressure_crookedStrip() {
	p, err := press.ClosingPressure(unit.Gigapascals(12), 0.050, 0.001, 1.2)
	fmt.Printf("%.2f kPa %v\n", p.Kilopascals(), err)
	// Output: 4.63 kPa <nil>
}

// Different method: the arc's length is summed from chords.
func TestRise_arcLength(t *testing.T) {
	const W = 0.6
	for _, δ := range []float64{0.0005, 0.002, 0.005} {
		f, err := press.Rise(W, unit.Length(δ))
		if err != nil {
			t.Fatal(err)
		}
		length, n := 0.0, 2000
		for i := range n {
			y := func(k int) float64 { x := float64(k)/float64(n)*2 - 1; return float64(f) * (1 - x*x) }
			length += math.Hypot(W/float64(n), y(i+1)-y(i))
		}
		if got := length - W; math.Abs(got-δ) > 0.015*δ {
			t.Errorf("overfill %g m: an arc of rise %g is %g longer", δ, float64(f), got)
		}
	}
}

// Different method: the arch is laid down step by step, its thrust from the
// chords' length by Hooke's law, the pressure from the thrust's balance
// p W²/8 = N y; the most on the way is the snap pressure.
func TestSnapPressure_laidDown(t *testing.T) {
	const E, th, W, rise = 1e9, 0.006, 0.6, 0.019
	length := func(f float64) float64 {
		sum, n := 0.0, 1500
		for i := range n {
			y := func(k int) float64 { x := float64(k)/float64(n)*2 - 1; return f * (1 - x*x) }
			sum += math.Hypot(W/float64(n), y(i+1)-y(i))
		}
		return sum
	}
	full, most := length(rise), 0.0
	for y := rise; y > 0; y -= rise / 400 {
		N := E * th * (full - length(y)) / full
		most = math.Max(most, 8*N*y/(W*W))
	}
	got, err := press.SnapPressure(E, th, rise, W)
	if err != nil || math.Abs(float64(got)-most) > 0.01*most {
		t.Errorf("snap %.1f Pa (%v), laid down %.1f", float64(got), err, most)
	}
}

// Different method: the least load at which a straight strip of springs has a
// bent form, by inverse iteration on y″ = −(P/EI) y with hinged ends.
func TestBucklePressure_eigenvalue(t *testing.T) {
	const E, th, W, n = 1.2e9, 0.008, 0.4, 200
	h := W / n
	y := make([]float64, n+1)
	for i := 1; i < n; i++ {
		y[i] = float64(i * (n - i))
	}
	λ := 0.0
	for range 30 {
		// solve −z″ = y by summing twice; both ends stay at 0
		z, slope := make([]float64, n+1), 0.0
		for i := 1; i <= n; i++ {
			z[i] = z[i-1] + slope*h
			slope -= y[i] * h
		}
		drift := z[n] / float64(n)
		most := 0.0
		for i := range z {
			z[i] -= drift * float64(i)
			most = math.Max(most, math.Abs(z[i]))
		}
		top := 0.0
		for i := range y {
			top = math.Max(top, math.Abs(y[i]))
		}
		λ = top / most
		for i := range y {
			y[i] = z[i] / most
		}
	}
	want := λ * E * th * th / 12 // P/t with I = t³/12 for each metre
	got, err := press.BucklePressure(E, th, W)
	if err != nil || math.Abs(float64(got)-want) > 0.02*want {
		t.Errorf("buckle %.0f Pa (%v), eigenvalue %.0f", float64(got), err, want)
	}
}

// The reference file's simply supported beam: 100 × 20 mm, 600 mm, 1 N/mm,
// 12 GPa bends by 2.1094 mm. A strip 20 mm wide and 100 mm thick, whose edge is
// pressed by 1 N/mm / 100 mm = 10 kPa, is that beam.
func TestClosingPressure_beam(t *testing.T) {
	found := false
	for _, row := range reference(t, "beam_plate_bilayer_checks.csv") {
		if row[0] != "beam" || row[1] != "worked" || row[4] != "mm bending" {
			continue
		}
		found = true
		g := unit.Millimetres(leading(t, row[3]))
		p, err := press.ClosingPressure(unit.Gigapascals(12), 0.020, g, 0.600)
		if err != nil || math.Abs(p.Kilopascals()-10) > 0.001 {
			t.Errorf("closing %.4f kPa (%v), want 10", p.Kilopascals(), err)
		}
	}
	if !found {
		t.Fatal("the beam is not in the file")
	}
}

func TestSprung_refusesWhatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, err := range []error{
		second(press.Rise(0, 0)), second(press.Rise(1, 0.2)), second(press.Rise(1, unit.Length(nan))),
		second(press.SnapPressure(0, 1, 1, 1)), second(press.SnapPressure(1, 0, 1, 1)), second(press.SnapPressure(1, 1, -1, 1)),
		second(press.BucklePressure(unit.Stiffness(nan), 1, 1)), second(press.BucklePressure(1, 1, 0)),
		second(press.ClosingPressure(1, 1, -1, 1)), second(press.ClosingPressure(1, 0, 1, 1)), second(press.ClosingPressure(0, 1, 1, 1)),
	} {
		var r *unit.RangeError
		if !errors.As(err, &r) {
			t.Errorf("error is %v, want a range error", err)
		}
	}
}

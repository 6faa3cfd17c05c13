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

// By hand: 3 · 40 · 0.5/0.5 = 120 kPa.
func ExampleMatStress_halfSquashed() {
	σ, err := press.MatStress(40e3, 0.5)
	fmt.Printf("%.0f kPa %v\n", σ.Kilopascals(), err)
	// Output: 120 kPa <nil>
}

// By hand, even strips: 3 · 40 ε/(1 − ε) = 80 gives ε = 0.4, of 10 mm 4 mm.
func ExampleMatSquash_evenStrips() {
	s, err := press.MatSquash(80e3, press.Mat{Thickness: 0.010, Firmness: 40e3, Thin: 0.5})
	fmt.Printf("%.2f mm %v\n", s.Millimetres(), err)
	// Output: 4.00 mm <nil>
}

// By hand: m 10, d 1 mm, σ25 40 kPa; squashed 5 mm over the tall strips, 4 over
// the thin ones, half each: (120 + 80)/2 = 100 kPa, and the thin ones have 80.
func ExampleMatLow_halfThin() {
	p, err := press.MatLow(100e3, press.Mat{Thickness: 0.010, Firmness: 40e3, Spread: 0.001, Thin: 0.5})
	fmt.Printf("%.1f kPa %v\n", p.Kilopascals(), err)
	// Output: 80.0 kPa <nil>
}

// The published data sheet of a closed-cell foam, four points, within 7 %.
func TestMatStress_dataSheet(t *testing.T) {
	checked := 0
	for _, row := range reference(t, "compressible_layers.csv") {
		if !strings.HasPrefix(row[0], "crosslinked LDPE") || !strings.HasPrefix(row[1], "stress at") {
			continue
		}
		checked++
		ε := leading(t, strings.TrimSuffix(strings.Fields(row[1])[2], "%")) / 100
		want := leading(t, row[2])
		σ, err := press.MatStress(40e3, ε)
		if err != nil || math.Abs(σ.Kilopascals()-want) > 0.07*want {
			t.Errorf("at %g squash %.1f kPa (%v), the data sheet has %g", ε, σ.Kilopascals(), err, want)
		}
	}
	if checked != 4 {
		t.Fatalf("%d points checked, want 4", checked)
	}
}

// Law: what the two kinds of strips carry together is the pressure from above.
func TestMatSquash_balance(t *testing.T) {
	for _, p := range []float64{5e3, 40e3, 85e3, 300e3} {
		for _, d := range []float64{0, 0.0002, 0.001, 0.004, 0.02} {
			for _, φ := range []float64{0, 0.2, 0.5, 0.9} {
				mat := press.Mat{Thickness: 0.006, Firmness: 48e3, Spread: unit.Length(d), Thin: φ}
				s, err := press.MatSquash(unit.Pressure(p), mat)
				low, err2 := press.MatLow(unit.Pressure(p), mat)
				high, err3 := press.MatStress(mat.Firmness, float64(s/mat.Thickness))
				if err != nil || err2 != nil || err3 != nil {
					t.Fatal(err, err2, err3)
				}
				if got := (1-φ)*float64(high) + φ*float64(low); math.Abs(got-p) > 1e-9*p {
					t.Errorf("p %g d %g φ %g: strips carry %g", p, d, φ, got)
				}
			}
		}
	}
}

func TestMat_refusesWhatCannotBe(t *testing.T) {
	nan := math.NaN()
	good := press.Mat{Thickness: 1, Firmness: 1}
	for _, mat := range []press.Mat{
		{Firmness: 1}, {Thickness: 1}, {Thickness: 1, Firmness: 1, Spread: -1}, {Thickness: 1, Firmness: 1, Thin: 1},
		{Thickness: unit.Length(nan), Firmness: 1}, {Thickness: 1, Firmness: 1, Thin: nan},
	} {
		var r *unit.RangeError
		if err := second(press.MatSquash(1, mat)); !errors.As(err, &r) {
			t.Errorf("%+v: squash error is %v, want a range error", mat, err)
		}
		if err := second(press.MatLow(1, mat)); !errors.As(err, &r) {
			t.Errorf("%+v: low error is %v, want a range error", mat, err)
		}
	}
	for _, err := range []error{second(press.MatSquash(-1, good)), second(press.MatStress(0, 0.1)), second(press.MatStress(1, 1)), second(press.MatStress(1, nan))} {
		var r *unit.RangeError
		if !errors.As(err, &r) {
			t.Errorf("error is %v, want a range error", err)
		}
	}
}

// By hand: D = 0.2, half thin: (1.2/0.8 + 0.8/1.2)/2 = 1.08333, and 78 kPa over
// three times that.
func ExampleMostHandedOn_halfThin() {
	firm := press.MostHandedOn(unit.Kilopascals(78), press.Mat{Thickness: 0.010, Spread: 0.002, Thin: 0.5})
	fmt.Printf("%.1f kPa\n", firm.Kilopascals())
	// Output: 24.0 kPa
}

// No firmness of a fine row of them hands on more than the one that hands on most.
func TestMostHandedOn_denseSearch(t *testing.T) {
	for _, d := range []float64{0.0005, 0.002, 0.005, 0.009} {
		for _, φ := range []float64{0.1, 0.33, 0.5, 0.8} {
			mat := press.Mat{Thickness: 0.01, Spread: unit.Length(d), Thin: φ}
			mat.Firmness = press.MostHandedOn(85e3, mat)
			most, err := press.MatLow(85e3, mat)
			if err != nil {
				t.Fatal(err)
			}
			best, at := unit.Pressure(0), 0.0
			for x := -4.0; x <= 4; x += 0.002 {
				mat.Firmness = unit.Pressure(85e3 * math.Pow(10, x))
				if low, err := press.MatLow(85e3, mat); err == nil && low > best {
					best, at = low, float64(mat.Firmness)
				}
			}
			if best > most*(1+1e-12) || !(math.Abs(float64(most/best)-1) < 1e-5) {
				t.Errorf("d %g φ %g: %g Pa at most, the search has %g at %g", d, φ, float64(most), float64(best), at)
			}
		}
	}
}

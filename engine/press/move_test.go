package press_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
	"presshand/engine/wood"
)

// There and back again is no change; twice as wide moves twice as far.
func TestWidthChange_laws(t *testing.T) {
	there, _ := press.WidthChange(0.5, 0.003, 7, 11)
	back, _ := press.WidthChange(0.5, 0.003, 11, 7)
	wide, _ := press.WidthChange(1, 0.003, 7, 11)
	if there+back != 0 || wide != 2*there || there <= 0 {
		t.Errorf("%g m there, %g back, %g of the double width", float64(there), float64(back), float64(wide))
	}
}

func TestMove_refuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	calls := map[string]func(float64) (float64, error){
		"width": func(x float64) (float64, error) {
			v, err := press.WidthChange(unit.Length(x), 0.003, 8, 9)
			return float64(v), err
		},
		"movement": func(x float64) (float64, error) {
			v, err := press.WidthChange(1, wood.Movement(x), 8, 9)
			return float64(v), err
		},
		"moisture before": func(x float64) (float64, error) { return press.FreeStrain(0.003, unit.Percent(x), 9) },
		"moisture after":  func(x float64) (float64, error) { return press.FreeStrain(0.003, 8, unit.Percent(x)) },
		"width of the cup": func(x float64) (float64, error) {
			v, err := press.Sagitta(0.01, unit.Length(x))
			return float64(v), err
		},
	}
	for name, call := range calls {
		for _, x := range []float64{nan, inf, -inf, -0.1, 101} {
			got, err := call(x)
			var outside *unit.RangeError
			if !errors.As(err, &outside) || got != 0 {
				t.Errorf("%s of %g gives %g, %v; want a RangeError", name, x, got, err)
			}
		}
	}
	for _, κ := range []float64{nan, inf} {
		if c, err := press.Sagitta(unit.Curvature(κ), 1); err == nil || c != 0 {
			t.Errorf("curvature %g gives %g, want an error", κ, float64(c))
		}
	}
}

// The circle's own sagitta, R − √(R² − W²/4): a parabola is within a thousandth
// while the cup is below a fiftieth of the width.
func TestSagitta_circle(t *testing.T) {
	for _, W := range []float64{0.1, 0.4, 1} {
		for _, R := range []float64{7, 20, 300} {
			want := R - math.Sqrt(R*R-W*W/4)
			got, err := press.Sagitta(unit.Curvature(1/R), unit.Length(W))
			if err != nil || !(math.Abs(float64(got)-want) <= 2e-3*want) {
				t.Errorf("R = %g m, W = %g m: %g m (%v), circle has %g", R, W, float64(got), err, want)
			}
		}
	}
}

// Flat sawn hard maple 30 in wide from 7 to 6.9 %: 762 · 0.00353 · (−0.1) = −0.27 mm.
func ExampleWidthChange_tableTop() {
	d, err := press.WidthChange(unit.Inches(30), 0.00353, 7, 6.9)
	fmt.Printf("%.2f mm %v\n", d.Millimetres(), err)
	// Output: -0.27 mm <nil>
}

// 0.00274 · (4 − 8) = −0.01096.
func ExampleFreeStrain_drying() {
	e, err := press.FreeStrain(0.00274, 8, 4)
	fmt.Printf("%.5f %v\n", e, err)
	// Output: -0.01096 <nil>
}

// κ = 0.1 /m over 0.4 m: 0.1 · 0.16/8 = 0.002 m.
func ExampleSagitta_cup() {
	c, err := press.Sagitta(0.1, 0.4)
	fmt.Printf("%.1f mm %v\n", c.Millimetres(), err)
	// Output: 2.0 mm <nil>
}

func BenchmarkWidthChange(b *testing.B) {
	for b.Loop() {
		if _, err := press.WidthChange(0.9, 0.00274, 8, 7.7); err != nil {
			b.Fatal(err)
		}
	}
}

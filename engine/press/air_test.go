package press_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// By hand: 1 − 0.0065·1500/288.15 = 0.966163, to the power 5.255876 is 0.834503,
// times 101325 Pa.
func ExampleStandardAmbient_at1500m() {
	p, err := press.StandardAmbient(1500)
	fmt.Printf("%.0f Pa %v\n", p, err)
	// Output: 84556 Pa <nil>
}

// The table of the US Standard Atmosphere and published tables of height and
// pressure, source by source in the file.
func TestStandardAmbient_published(t *testing.T) {
	checked := 0
	for _, row := range reference(t, "standard_atmosphere.csv") {
		var h, want, within float64
		switch {
		case row[0] == "value, geopotential m" && row[3] == "Pa":
			h, want, within = leading(t, row[1]), leading(t, row[2]), 0.06
		case row[0] == "published inverse check": // height of a round pressure, to the metre
			h, want, within = leading(t, row[1][len("height "):]), 100*leading(t, row[2]), 6
		case row[0] == "published check":
			h, want, within = 0.3048*leading(t, row[1]), 6894.757*leading(t, row[2]), 20
		default:
			continue
		}
		checked++
		got, err := press.StandardAmbient(unit.Length(h))
		if err != nil || !(math.Abs(float64(got)-want) <= within) {
			t.Errorf("at %g m: %.1f Pa (%v), want %.1f", h, got, err, want)
		}
	}
	if checked < 15 {
		t.Fatalf("%d rows checked, want 15 or more", checked)
	}
}

// Law: the air's own weight balances the fall of pressure, dp/dh = −ρ g with
// ρ = p M / (R T).
func TestStandardAmbient_hydrostatic(t *testing.T) {
	for h := -500.0; h <= 9000; h += 250 {
		below, _ := press.StandardAmbient(unit.Length(h - 1))
		above, _ := press.StandardAmbient(unit.Length(h + 1))
		p, _ := press.StandardAmbient(unit.Length(h))
		ρ := float64(p) * 0.0289644 / (8.31432 * (288.15 - 0.0065*h))
		if got, want := float64(above-below)/2, -ρ*9.80665; math.Abs(got-want) > 1e-5*math.Abs(want) {
			t.Errorf("at %g m: dp/dh %.5f Pa/m, want %.5f", h, got, want)
		}
	}
}

// By hand: 25 inHg = 84659.7 Pa on 4 × 8 ft = 2.97290 m² is 251.68 kN.
func ExampleFaceForce_onASheet() {
	F, err := press.FaceForce(unit.InchesOfMercury(25), unit.Area(unit.Feet(4)*unit.Feet(8)))
	fmt.Printf("%.1f kN %v\n", F/1000, err)
	// Output: 251.7 kN <nil>
}

// By hand: 17.625·20/263.04 = 1.34010, e to that is 3.81943, times 610.94 Pa.
func ExampleVapourPressure_at20c() {
	p, err := press.VapourPressure(20)
	fmt.Printf("%.0f Pa %v\n", p, err)
	// Output: 2333 Pa <nil>
}

// Steam tables: 611.7 Pa at 0.01 °C, 1228 at 10, 2339 at 20, 4247 at 30, 7384 at
// 40 °C. The Magnus form is within 0.4 %.
func TestVapourPressure_steamTable(t *testing.T) {
	for T, want := range map[float64]float64{0.01: 611.7, 10: 1228, 20: 2339, 30: 4247, 40: 7384} {
		got, err := press.VapourPressure(unit.Temperature(T))
		if err != nil || math.Abs(float64(got)-want) > 0.004*want {
			t.Errorf("at %g °C: %.1f Pa (%v), want %g", T, got, err, want)
		}
	}
}

func TestAir_refusesWhatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, err := range []error{
		second(press.StandardAmbient(unit.Length(nan))), second(press.StandardAmbient(12000)),
		second(press.FaceForce(-1, 1)), second(press.FaceForce(1, unit.Area(nan))),
		second(press.VapourPressure(unit.Temperature(nan))), second(press.VapourPressure(80)),
	} {
		var r *unit.RangeError
		if !errors.As(err, &r) {
			t.Errorf("error is %v, want a range error", err)
		}
	}
}

func second[T any](_ T, err error) error { return err }

package press_test

import (
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

const mbar = unit.Pressure(100)

// The evacuation times that an engineering reference page prints, rows "V=1 m3,
// S=0.1 m3/s, 1000->500 mbar" of the reference table; a printed 23 is 22.5 to 23.5.
func TestPumpDown_published(t *testing.T) {
	f, err := os.Open("../../testdata/reference/vacuum_formula_checks.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, line := range lines {
		var V, S, p0, p1 float64
		if n, _ := fmt.Sscanf(line[1], "V=%g m3, S=%g m3/s, %g->%g mbar", &V, &S, &p0, &p1); n != 4 {
			continue
		}
		checked++
		want, err := strconv.ParseFloat(line[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		within := 0.5
		if strings.Contains(line[2], ".") {
			within = 0.05
		}
		got, err := press.PumpDown(unit.Volume(V), unit.Flow(S), unit.Pressure(p0)*mbar, unit.Pressure(p1)*mbar, 0)
		if err != nil || !(math.Abs(got.Seconds()-want) <= within) {
			t.Errorf("%s: %.3f s (%v), printed %s", line[1], got.Seconds(), err, line[2])
		}
	}
	if checked != 3 {
		t.Errorf("%d rows checked, want 3", checked)
	}
}

// A vacuum-technique guide sizes a pump for 1000 m³ from 1000 to 200 mbar in 10
// min at 160 m³/min, 160.94 without rounding.
func TestPumpDown_sizedPump(t *testing.T) {
	got, err := press.PumpDown(1000, 160.94/60, 1000*mbar, 200*mbar, 0)
	if err != nil || !(math.Abs(got.Minutes()-10) <= 0.001) {
		t.Errorf("takes %g min (%v), want 10", got.Minutes(), err)
	}
}

// ln(29.92/(29.92 − g)) for g of 20, 25 and 28 inHg: 1.104, 1.805 and 2.746
// times V/S, worked out apart from this code.
func TestPumpDown_timeConstants(t *testing.T) {
	air := unit.InchesOfMercury(29.92)
	for g, want := range map[float64]float64{20: 1.104, 25: 1.805, 28: 2.746} {
		got, err := press.PumpDown(1, 1, air, air-unit.InchesOfMercury(g), 0)
		if err != nil || !(math.Abs(got.Seconds()-want) <= 0.0006) {
			t.Errorf("to %g inHg takes %.4f V/S (%v), want %.3f", g, got.Seconds(), err, want)
		}
	}
}

// V dp/dt = V r − S (p − p_ult), stepped through in time (Heun's method), ends at
// the pressure that the closed form was asked for.
func TestPumpDown_balanceStepped(t *testing.T) {
	const (
		V, S   = 0.25, 0.002
		r      = 40.0 // Pa/s
		limit  = 3000.0
		p0, p1 = 101325.0, 18000.0
	)
	floor, err := press.PumpFloor(limit, V, r, S)
	if err != nil {
		t.Fatal(err)
	}
	took, err := press.PumpDown(V, S, p0, p1, floor)
	if err != nil {
		t.Fatal(err)
	}
	const steps = 20000
	dt, p := took.Seconds()/steps, p0
	rate := func(p float64) float64 { return r - S/V*(p-limit) }
	for range steps {
		guess := p + dt*rate(p)
		p += dt / 2 * (rate(p) + rate(guess))
	}
	if !(math.Abs(p-p1) <= 0.01) {
		t.Errorf("after %g s the press is at %g Pa, want %g", took.Seconds(), p, p1)
	}
}

// Without a leak and with a perfect pump any pressure above nothing is reached.
func TestPumpDown_noLeakReachesAny(t *testing.T) {
	last := unit.Time(-1)
	for p1 := unit.Pressure(101325); p1 > 1e-9; p1 /= 3 {
		got, err := press.PumpDown(1, 0.01, 101325, p1, 0)
		if err != nil || !(got > last) || math.IsInf(float64(got), 0) {
			t.Fatalf("to %g Pa takes %g s (%v), want a finite time above %g", float64(p1), got.Seconds(), err, last.Seconds())
		}
		last = got
	}
}

// With a leak the floor itself is never reached.
func TestPumpDown_neverBelowFloor(t *testing.T) {
	floor, err := press.PumpFloor(1000, 0.2, unit.KilopascalsPerMinute(3), 0.001)
	if err != nil {
		t.Fatal(err)
	}
	for _, p1 := range []unit.Pressure{floor, floor - 1, 0, -5} {
		var outside *unit.RangeError
		if got, err := press.PumpDown(0.2, 0.001, 101325, p1, floor); !errors.As(err, &outside) {
			t.Errorf("to %g Pa over a floor of %g: %g s, %v; want a RangeError", float64(p1), float64(floor), got.Seconds(), err)
		}
	}
	if got, err := press.PumpDown(0.2, 0.001, 101325, floor+1e-6, floor); err != nil || !(got > 0) {
		t.Errorf("just above the floor: %g s, %v; want a time", got.Seconds(), err)
	}
}

func TestPump_refuses(t *testing.T) {
	nan := math.NaN()
	calls := map[string]func(float64) (float64, error){
		"floor: limit": func(x float64) (float64, error) {
			v, err := press.PumpFloor(unit.Pressure(x), 1, 1, 1)
			return float64(v), err
		},
		"floor: volume": func(x float64) (float64, error) {
			v, err := press.PumpFloor(1, unit.Volume(x), 1, 1)
			return float64(v), err
		},
		"floor: leak": func(x float64) (float64, error) {
			v, err := press.PumpFloor(1, 1, unit.LeakRate(x), 1)
			return float64(v), err
		},
		"floor: speed": func(x float64) (float64, error) {
			v, err := press.PumpFloor(1, 1, 1, unit.Flow(x))
			return float64(v), err
		},
		"down: volume": func(x float64) (float64, error) {
			v, err := press.PumpDown(unit.Volume(x), 1, 9, 5, 1)
			return float64(v), err
		},
		"down: speed": func(x float64) (float64, error) {
			v, err := press.PumpDown(1, unit.Flow(x), 9, 5, 1)
			return float64(v), err
		},
		"down: floor": func(x float64) (float64, error) {
			v, err := press.PumpDown(1, 1, 9, 5, unit.Pressure(x))
			return float64(v), err
		},
		"down: end": func(x float64) (float64, error) {
			v, err := press.PumpDown(1, 1, 9, unit.Pressure(x), 1)
			return float64(v), err
		},
		"hold: vacuum": func(x float64) (float64, error) {
			v, err := press.HoldTime(unit.Pressure(x), 1, 1)
			return float64(v), err
		},
		"hold: contact": func(x float64) (float64, error) {
			v, err := press.HoldTime(9, unit.Pressure(x), 1)
			return float64(v), err
		},
		"hold: leak": func(x float64) (float64, error) {
			v, err := press.HoldTime(9, 1, unit.LeakRate(x))
			return float64(v), err
		},
	}
	for name, call := range calls {
		for _, x := range []float64{nan, math.Inf(1), math.Inf(-1), -1} {
			got, err := call(x)
			var outside *unit.RangeError
			if !errors.As(err, &outside) || got != 0 {
				t.Errorf("%s of %g gives %g, %v; want a RangeError", name, x, got, err)
			}
		}
	}
}

// A press below contact pressure has no time left; twice the leak, half the time.
func TestHoldTime_laws(t *testing.T) {
	if got, err := press.HoldTime(60e3, 70e3, 5); got != 0 || err != nil {
		t.Errorf("below contact: %g s, %v; want none", got.Seconds(), err)
	}
	one, _ := press.HoldTime(85e3, 70e3, 5)
	two, _ := press.HoldTime(85e3, 70e3, 10)
	if one != 3000 || two != 1500 { // 15 kPa over 5 and over 10 Pa/s
		t.Errorf("hold %g and %g s, want 3000 and 1500", one.Seconds(), two.Seconds())
	}
}

// 1 m³ at 0.1 m³/s to a tenth: 10 s · ln 10 = 23.03 s.
func ExamplePumpDown_tenth() {
	t, err := press.PumpDown(1, 0.1, 100e3, 10e3, 0)
	fmt.Printf("%.2f s %v\n", t.Seconds(), err)
	// Output: 23.03 s <nil>
}

// 50 l that rise by 10 mbar in 60 s leak 8.333 mbar l/s; against 1 l/s that adds
// 8.333 mbar to the 1 kPa that the pump itself leaves.
func ExamplePumpFloor_leak() {
	p, err := press.PumpFloor(1000, unit.Litres(50), unit.LeakRate(10*mbar)/60, unit.LitresPerSecond(1))
	fmt.Printf("%.4f kPa %v\n", p.Kilopascals(), err)
	// Output: 1.8333 kPa <nil>
}

// From 84 kPa down to 70 at 1 kPa a minute: 14 min.
func ExampleHoldTime_powerCut() {
	t, err := press.HoldTime(unit.Kilopascals(84), unit.Kilopascals(70), unit.KilopascalsPerMinute(1))
	fmt.Printf("%.0f min %v\n", t.Minutes(), err)
	// Output: 14 min <nil>
}

func BenchmarkPumpDown(b *testing.B) {
	for b.Loop() {
		if _, err := press.PumpDown(0.2, 0.002, 101e3, 16e3, 4e3); err != nil {
			b.Fatal(err)
		}
	}
}

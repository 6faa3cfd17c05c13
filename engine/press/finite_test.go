package press_test

import (
	"errors"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// Inputs that are numbers, but so far apart that the result is none, are refused,
// and so is a friction that cannot be.
func TestFormulas_resultIsANumber(t *testing.T) {
	const huge, tiny = 1e300, 1e-300
	nan, inf := math.NaN(), math.Inf(1)
	bar := func(μ, drag float64) press.Push {
		return press.Push{Covered: 0.05, Width: 0.019, Friction: μ, Drag: drag}
	}
	for name, err := range map[string]error{
		"ideal":          second(press.IdealSidePressure(huge, huge, 1)),
		"tipping":        second(press.TippingLimit(huge, 1, 1)),
		"tipping width":  second(press.BarWidthAgainstTipping(huge, huge, huge)),
		"reach":          second(press.BarReach(press.Push{Covered: huge, Friction: tiny, Drag: 1})),
		"joint":          second(press.JointPressure(huge, bar(0.2, 1), 0, tiny)),
		"joint drag nan": second(press.JointPressure(1, bar(0.2, nan), 0.1, 0.01)),
		"joint drag inf": second(press.JointPressure(1, bar(0.2, inf), 0.1, 0.01)),
		"joint drag -1":  second(press.JointPressure(1, bar(0.2, -1), 0.1, 0.01)),
		"reach drag -1":  second(press.BarReach(bar(0.2, -1))),
		"joint friction": second(press.JointPressure(1, bar(nan, 1), 0.1, 0.01)),
		"wedge":          second(press.WedgeForce(huge, tiny, 0)),
		"driven":         second(press.DrivenPreload(huge, tiny, 1)),
		"relief":         second(press.SqueezeOutRelief(huge, huge, 1, 1)),
		"overfill":       second(press.OverfillPreload(1, huge, tiny, 1, huge, huge)),
		"hump":           second(press.HumpPressure(1e9, 1, 1, 1e-100)),
		"hollow":         second(press.HollowPressure(1e9, 1, 1, 1e-100, 1)),
		"snap":           second(press.SnapPressure(1e9, 1, huge, 1)),
		"buckle":         second(press.BucklePressure(1e9, huge, 1)),
		"closing":        second(press.ClosingPressure(1e9, huge, 1, 1)),
		"force":          second(press.FaceForce(huge, huge)),
		"level":          second(press.LevelPressure(huge, huge, tiny)),
		"mat stress":     second(press.MatStress(1e308, 0.9)),
		"mat stress -1":  second(press.MatStress(1e308, math.Inf(-1))),
		"mat squash":     second(press.MatSquash(100e3, press.Mat{Thickness: 0.001, Firmness: 1e308})),
		"sagitta":        second(press.Sagitta(math.MaxFloat64, 30)),
	} {
		var r *unit.RangeError
		if !errors.As(err, &r) {
			t.Errorf("%s: error is %v, want a range error", name, err)
		}
	}
}

// What lies right inside the limits is taken, right outside refused.
func TestFormulas_limits(t *testing.T) {
	for h, ok := range map[unit.Length]bool{11000: true, 11001: false, -1000: true, -1001: false} {
		if _, err := press.StandardAmbient(h); (err == nil) != ok {
			t.Errorf("%g m: %v, want taken %v", float64(h), err, ok)
		}
	}
	// a pump of a millilitre a second still is one: 1 kPa and 1 m³ · 1 mPa/s / 1e-6 m³/s = 1 kPa
	if p, err := press.PumpFloor(1000, 1, 0.001, 1e-6); err != nil || math.Abs(float64(p)-2000) > 1e-6 {
		t.Errorf("floor %g Pa (%v), want 2000", float64(p), err)
	}
}

// By hand, E 1 GPa, t 10 mm, s 100 mm: E t³/s⁴ is 1e9 · 1e-6/1e-4 = 1e7 Pa for each
// m of cup. A hollow of 0.1 mm asks 32/3 of it, for its edges come within 0.15 mm
// by themselves; one of 2 mm asks 8/3 · 2/0.15.
func TestHollowPressure_byHand(t *testing.T) {
	for c, want := range map[float64]float64{0.0001: 1e7 * 0.0001 * 32 / 3, 0.002: 1e7 * 0.002 * 8 / 3 * 2 / 0.15} {
		p, err := press.HollowPressure(1e9, 0.010, unit.Length(c), 0.100, 0.00015)
		if err != nil || math.Abs(float64(p)-want) > 1e-9*want {
			t.Errorf("hollow of %g m: %g Pa (%v), want %g", c, float64(p), err, want)
		}
	}
}

// Laws that the figures obey over wide ranges: more of the first input never gives
// less, or never more.
func TestFormulas_monotone(t *testing.T) {
	for _, law := range []struct {
		name    string
		rises   bool
		low, hi float64
		f       func(x float64) (unit.Pressure, error)
	}{
		{"flatten by thickness", true, 0.001, 0.05, func(x float64) (unit.Pressure, error) { return press.HumpPressure(1e9, unit.Length(x), 0.002, 0.1) }},
		{"flatten by span", false, 0.02, 2, func(x float64) (unit.Pressure, error) {
			return press.HollowPressure(1e9, 0.01, 0.002, unit.Length(x), 0.00015)
		}},
		{"flatten by cup", true, 0, 0.05, func(x float64) (unit.Pressure, error) {
			return press.HollowPressure(1e9, 0.01, unit.Length(x), 0.1, 0.00015)
		}},
		{"closing by gap", true, 0, 0.01, func(x float64) (unit.Pressure, error) { return press.ClosingPressure(1e10, 0.05, unit.Length(x), 1) }},
		{"closing by length", false, 0.1, 5, func(x float64) (unit.Pressure, error) {
			return press.ClosingPressure(1e10, 0.05, 0.001, unit.Length(x))
		}},
		{"snap by rise", true, 0, 0.05, func(x float64) (unit.Pressure, error) { return press.SnapPressure(1e9, 0.01, unit.Length(x), 0.5) }},
		{"buckle by width", false, 0.05, 3, func(x float64) (unit.Pressure, error) { return press.BucklePressure(1e9, 0.01, unit.Length(x)) }},
		{"overfill", true, 0, 0.02, func(x float64) (unit.Pressure, error) {
			return press.OverfillPreload(0.8, unit.Length(x), 0.5, 0.01, 1e9, 15e6)
		}},
		{"overfill by thickness", false, 0.001, 0.1, func(x float64) (unit.Pressure, error) {
			return press.OverfillPreload(0.8, 0.001, 0.5, unit.Length(x), 1e9, 15e6)
		}},
		{"mat by vacuum", true, 0, 200e3, func(x float64) (unit.Pressure, error) {
			return press.MatLow(unit.Pressure(x), press.Mat{Thickness: 0.006, Firmness: 48e3, Spread: 0.001, Thin: 0.4})
		}},
		{"mat by spread", false, 0, 0.01, func(x float64) (unit.Pressure, error) {
			return press.MatLow(85e3, press.Mat{Thickness: 0.006, Firmness: 48e3, Spread: unit.Length(x), Thin: 0.4})
		}},
		{"mat by share", true, 0, 0.99, func(x float64) (unit.Pressure, error) {
			return press.MatLow(85e3, press.Mat{Thickness: 0.006, Firmness: 48e3, Spread: 0.001, Thin: x})
		}},
		{"wedge by run", true, 2, 100, func(x float64) (unit.Pressure, error) {
			N, err := press.WedgeForce(1000, unit.Slope(1, x), unit.Friction(0.4))
			return unit.Pressure(N), err
		}},
		{"wedge by friction", false, 0.05, 1, func(x float64) (unit.Pressure, error) {
			N, err := press.WedgeForce(1000, unit.Slope(1, 8), unit.Friction(x))
			return unit.Pressure(N), err
		}},
	} {
		last := unit.Pressure(math.NaN())
		for i := range 301 {
			p, err := law.f(law.low + (law.hi-law.low)*float64(i)/300)
			if err != nil {
				t.Fatalf("%s: %v", law.name, err)
			}
			if slack := 1e-12 * last; law.rises && p < last-slack || !law.rises && p > last+slack {
				t.Errorf("%s: %g after %g at step %d", law.name, float64(p), float64(last), i)
			}
			last = p
		}
	}
}

// Two plies of one strain: the greater the difference of strains the greater the
// bend, and twice the thickness throughout bends half as much.
func TestBilayerCurvature_monotone(t *testing.T) {
	last := 0.0
	for i := 1; i <= 100; i++ {
		κ, err := press.BilayerCurvature(press.Ply{Thickness: 0.003, Stiffness: 1e9}, press.Ply{Thickness: 0.012, Stiffness: 8e9}, float64(i)*1e-4)
		double, err2 := press.BilayerCurvature(press.Ply{Thickness: 0.006, Stiffness: 1e9}, press.Ply{Thickness: 0.024, Stiffness: 8e9}, float64(i)*1e-4)
		if err != nil || err2 != nil || float64(κ) <= last || math.Abs(float64(κ/double)-2) > 1e-12 {
			t.Fatalf("strain %d: %g and %g /m (%v, %v)", i, float64(κ), float64(double), err, err2)
		}
		last = float64(κ)
	}
}

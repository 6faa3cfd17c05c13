package press_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// By hand: 80 kPa on a 25.4 mm bar against 6.35 mm strips is four times 80.
func ExampleIdealSidePressure_fourTimes() {
	p, err := press.IdealSidePressure(unit.Kilopascals(80), unit.Inches(1), unit.Inches(0.25))
	fmt.Printf("%.0f kPa %v\n", p.Kilopascals(), err)
	// Output: 320 kPa <nil>
}

// A 1 in bar beside a 3/4 in core with 1/4 in strips is covered to its top; on
// the sled beside bare 1/4 in strips only that quarter counts.
func ExampleCoveredHeight_coreAndBare() {
	t := unit.Inches(0.25)
	onCore, _ := press.CoveredHeight(unit.Inches(1), unit.Inches(1), t, unit.Inches(0.75))
	bare, _ := press.CoveredHeight(unit.Inches(1), t, t, 0)
	low, _ := press.CoveredHeight(unit.Inches(0.75), unit.Inches(1), t, unit.Inches(0.75))
	fmt.Printf("%.2f in, %.2f in, under the strips %.2f in\n", onCore.Inches(), bare.Inches(), low.Inches())
	// Output: 1.00 in, 0.25 in, under the strips 0.25 in
}

// By hand: H = 40, b = 20, z = 5 mm: (1600 + 400)/(2·35) = 28.571 mm.
func ExampleTippingLimit_tallBar() {
	h, err := press.TippingLimit(0.040, 0.020, 0.005)
	fmt.Printf("%.2f mm %v\n", h.Millimetres(), err)
	// Output: 28.57 mm <nil>
}

// By hand: 80 kPa, h 25, b 20, r 3, t 5, x 50 mm, μ 0.2:
// (25 − 3) − 0.2·23 − 0.2·50 = 7.4 mm; 80·7.4/5 = 118.4 kPa.
func ExampleJointPressure_secondJoint() {
	bar := press.Push{Covered: 0.025, Width: 0.020, Corner: 0.003, Friction: 0.2, Drag: 1}
	p, err := press.JointPressure(unit.Kilopascals(80), bar, 0.050, 0.005)
	fmt.Printf("%.1f kPa %v\n", p.Kilopascals(), err)
	// Output: 118.4 kPa <nil>
}

// By hand: (25 − 3 − 0.2·23)/0.2 = 87 mm; half of it under a caul that rubs too.
func ExampleBarReach_withAndWithoutCaul() {
	bar := press.Push{Covered: 0.025, Width: 0.020, Corner: 0.003, Friction: 0.2, Drag: 1}
	x, _ := press.BarReach(bar)
	bar.Drag = 2
	under, err := press.BarReach(bar)
	fmt.Printf("%.1f mm, %.1f mm %v\n", x.Millimetres(), under.Millimetres(), err)
	// Output: 87.0 mm, 43.5 mm <nil>
}

// By hand: 2·30·35 − 1600 = 500, its root 22.36 mm.
func ExampleBarWidthAgainstTipping_tallBar() {
	b, err := press.BarWidthAgainstTipping(0.040, 0.030, 0.005)
	fmt.Printf("%.2f mm %v\n", b.Millimetres(), err)
	// Output: 22.36 mm <nil>
}

// Different method: the film's push is summed strip by strip about the inner
// edge that the bar would turn on, the top one or the foot; what the joint
// answers there must balance it.
func TestTippingLimit_moments(t *testing.T) {
	for _, c := range [][3]float64{{0.04, 0.02, 0.005}, {0.025, 0.019, 0.022}, {0.06, 0.03, 0.01}} {
		H, b, z := c[0], c[1], c[2]
		h, err := press.TippingLimit(unit.Length(H), unit.Length(b), unit.Length(z))
		if err != nil {
			t.Fatal(err)
		}
		edge := H // height of the edge it turns on
		if z > H-z {
			edge = 0
		}
		const n = 4000
		moment := 0.0
		for i := range n {
			y, x := (float64(i)+0.5)*H/n, (float64(i)+0.5)*b/n
			moment += math.Abs(y-edge)*H/n + x*b/n
		}
		if got := float64(h) * math.Abs(z-edge); math.Abs(got-moment) > 1e-6*moment {
			t.Errorf("H %g b %g z %g: the joint answers %g, the film turns with %g", H, b, z, got, moment)
		}
		wide, err := press.BarWidthAgainstTipping(unit.Length(H), h, unit.Length(z))
		if err != nil || math.Abs(float64(wide)-b) > 1e-9 {
			t.Errorf("width against tipping %g (%v), want %g back", float64(wide), err, b)
		}
	}
}

// Without friction and with the film down in the corner, the joint gets what a
// shop quotes for the covered height.
func TestJointPressure_withoutFrictionIsIdeal(t *testing.T) {
	for _, h := range []unit.Length{0.006, 0.02, 0.05} {
		got, err := press.JointPressure(80e3, press.Push{Covered: h, Width: 0.02, Drag: 1}, 0.3, 0.006)
		want, err2 := press.IdealSidePressure(80e3, h, 0.006)
		if err != nil || err2 != nil || math.Abs(float64(got-want)) > 1e-9 {
			t.Errorf("h %g: %g (%v, %v), want %g", float64(h), got, err, err2, want)
		}
	}
}

// Law: more bar and more vacuum give more, friction, distance, a bridged corner
// and a wider bar less; beyond the reach there is nothing.
func TestJointPressure_monotone(t *testing.T) {
	base := press.Push{Covered: 0.05, Width: 0.02, Corner: 0.003, Friction: 0.2, Drag: 1}
	at := func(p unit.Pressure, b press.Push, x unit.Length) float64 {
		v, err := press.JointPressure(p, b, x, 0.01)
		if err != nil {
			t.Fatal(err)
		}
		return float64(v)
	}
	now := at(80e3, base, 0.1)
	more, rough, wide, tent, caul := base, base, base, base, base
	more.Covered += 0.001
	rough.Friction += 0.01
	wide.Width += 0.001
	tent.Corner += 0.001
	caul.Drag = 2
	for name, less := range map[string]bool{
		"taller bar":    at(80e3, more, 0.1) > now,
		"more vacuum":   at(81e3, base, 0.1) > now,
		"more friction": at(80e3, rough, 0.1) < now,
		"wider bar":     at(80e3, wide, 0.1) < now,
		"more tent":     at(80e3, tent, 0.1) < now,
		"rubbing caul":  at(80e3, caul, 0.1) < now,
		"farther":       at(80e3, base, 0.11) < now,
	} {
		if !less {
			t.Errorf("%s moves the pressure the wrong way", name)
		}
	}
	reach, err := press.BarReach(base)
	if err != nil || at(80e3, base, reach*1.0001) != 0 || at(80e3, base, reach*0.9999) <= 0 {
		t.Errorf("reach %g (%v) is not where the push ends", reach, err)
	}
}

func TestSide_refusesWhatCannotBe(t *testing.T) {
	nan := math.NaN()
	inf := unit.Length(math.Inf(1))
	for _, err := range []error{
		second(press.IdealSidePressure(-1, 1, 1)), second(press.IdealSidePressure(1, 1, 0)), second(press.IdealSidePressure(1, inf, 1)),
		second(press.CoveredHeight(1, unit.Length(nan), 1, 0)), second(press.CoveredHeight(1, 1, 0, 0)),
		second(press.TippingLimit(0, 1, 1)), second(press.TippingLimit(1, -1, 1)),
		second(press.JointPressure(1, press.Push{Friction: nan}, 1, 1)), second(press.JointPressure(1, press.Push{}, -1, 1)),
		second(press.BarReach(press.Push{Covered: 1, Drag: 1})), second(press.BarWidthAgainstTipping(-1, 1, 1)),
	} {
		var r *unit.RangeError
		if !errors.As(err, &r) {
			t.Errorf("error is %v, want a range error", err)
		}
	}
}

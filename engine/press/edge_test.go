package press_test

import (
	"fmt"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// A bar of 1 in beside a 3/4 in core with 1/2 in strips counts for its inch; the film
// presses that and the 1/4 in of their edge above it: 1 1/4 in.
func ExampleCoveredHeight_partWayUp() {
	h, err := press.CoveredHeight(unit.Inches(1), unit.Inches(1.25), unit.Inches(0.5), unit.Inches(0.75))
	fmt.Printf("%.2f in %v\n", h.Inches(), err)
	// Output: 1.00 in <nil>
}

func ExamplePressedHeight_partWayUp() {
	f, err := press.PressedHeight(unit.Inches(1), unit.Inches(1.25), unit.Inches(0.5), unit.Inches(0.75))
	fmt.Printf("%.2f in %v\n", f.Inches(), err)
	// Output: 1.25 in <nil>
}

// By hand: 20 mm of bar with friction 0.2 would lose 4 mm. Where it counts for 1 mm more
// than the strips' 18, and 36 are pressed, it loses that 1: 1/0.2 = 5 mm of its width.
// Where but 21 are pressed friction holds it, 4 being more than 3, and it costs the 0.4
// mm of edge that it hides: 0.4/0.2 = 2 mm.
func ExampleHoldingWidth_bareEdge() {
	b, err := press.HoldingWidth(0.020, 0.019, 0.036, 0.018, 0.001, 0.2)
	fast, err2 := press.HoldingWidth(0.020, 0.018, 0.021, 0.018, 0.0004, 0.2)
	fmt.Printf("%.1f mm, %.1f mm %v %v\n", b.Millimetres(), fast.Millimetres(), err, err2)
	// Output: 5.0 mm, 2.0 mm <nil> <nil>
}

// A bar 0.01 mm over strips' underside at 38.1 mm counts for 38.1 · 0.01/3 mm more than
// the film on their own 6.35, one 3 mm over it for its whole height.
func TestCoveredHeight_hardlyOverlaps(t *testing.T) {
	for H, want := range map[float64]float64{38.1: 6.35, 38.11: 6.477, 39.6: 25.4, 41.1: 41.1, 44.45: 44.45} {
		h, err := press.CoveredHeight(unit.Millimetres(H), unit.Millimetres(44.45), unit.Millimetres(6.35), unit.Millimetres(38.1))
		if err != nil || math.Abs(h.Millimetres()-want) > 1e-9 {
			t.Errorf("%g mm of bar: %g mm (%v), want %g", H, h.Millimetres(), err, want)
		}
	}
}

// Over its whole path, up the bar, along its top and up the strips' edge that stands
// above it, the film pushes by p (h − r), whatever corner it bridges between them.
func TestPressedHeight_edgeAboveTheBar(t *testing.T) {
	const p, b, r = 80e3, 0.019, 0.003
	for _, c := range []struct{ H, u, thick float64 }{{0.0254, 0.01905, 0.0127}, {0.020, 0.018, 0.020}, {0.006, 0, 0.010}} {
		top := c.u + c.thick
		h, err := press.PressedHeight(unit.Length(c.H), unit.Length(top), unit.Length(c.thick), unit.Length(c.u))
		if err != nil {
			t.Fatal(err)
		}
		if counts, err := press.CoveredHeight(unit.Length(c.H), unit.Length(top), unit.Length(c.thick), unit.Length(c.u)); err != nil || counts > h {
			t.Errorf("%+v: %g counts (%v), want no more than the %g that the film presses", c, float64(counts), err, float64(h))
		}
		for _, q := range []float64{0, 0.002} {
			path := arc(nil, -r, r, r, 270, 360)
			path = append(path, point{0, c.H})
			path = arc(path, b-q, c.H+q, q, 270, 360)
			path = append(path, point{b, top})
			if sideways, _ := push(p, r, 0, path); math.Abs(sideways-p*(float64(h)-r)) > 1e-6*p*top {
				t.Errorf("%+v, corner %g: film pushes %g N/m, want %g", c, q, sideways, p*(float64(h)-r))
			}
		}
	}
}

// Law: a bar never counts for less than the film on the bare edge, a taller one never
// for less than a lower, and none for much more than one a hair lower: where it
// hardly overlaps for u/a times as much, else for no more than it is taller.
func TestCoveredHeight_risesWithoutJumps(t *testing.T) {
	const step = 0.01
	for _, c := range []struct{ thick, u, cover float64 }{{12, 12, 24}, {12, 12, 40}, {12, 12, 6}, {6.35, 38.1, 50}, {18, 6, 24}, {2, 20, 60}} {
		last := c.thick
		for mm := 0.0; mm < 60; mm += step {
			h, err := press.CoveredHeight(unit.Millimetres(mm), unit.Millimetres(c.cover), unit.Millimetres(c.thick), unit.Millimetres(c.u))
			now := h.Millimetres()
			steepest := math.Max(1, c.u/math.Min(c.thick, 3)) * step
			if err != nil || now < last-1e-9 || now > last+steepest+1e-9 {
				t.Fatalf("%+v: %g mm of bar count for %g after %g (%v)", c, mm, now, last, err)
			}
			last = now
		}
	}
}

package press_test

import (
	"fmt"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// A bar of 1 in beside a 3/4 in core with 1/2 in strips: it pushes with its inch, and
// the film on the 1/4 in of their edge above it: 1 1/4 in.
func ExampleCoveredHeight_partWayUp() {
	h, err := press.CoveredHeight(unit.Inches(1), unit.Inches(1.25), unit.Inches(0.5), unit.Inches(0.75))
	fmt.Printf("%.2f in %v\n", h.Inches(), err)
	// Output: 1.25 in <nil>
}

// Over its whole path, up the bar, along its top and up the strips' edge that stands
// above it, the film pushes by p (h − r), whatever corner it bridges between them.
func TestCoveredHeight_edgeAboveTheBar(t *testing.T) {
	const p, b, r = 80e3, 0.019, 0.003
	for _, c := range []struct{ H, u, thick float64 }{{0.0254, 0.01905, 0.0127}, {0.020, 0.018, 0.020}, {0.006, 0, 0.010}} {
		top := c.u + c.thick
		h, err := press.CoveredHeight(unit.Length(c.H), unit.Length(top), unit.Length(c.thick), unit.Length(c.u))
		if err != nil {
			t.Fatal(err)
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

// Law: a bar that touches the strips never earns less than the film on their bare
// edge, and a taller one never less than a lower, up to what stands behind it.
func TestCoveredHeight_neverFalls(t *testing.T) {
	for _, cover := range []unit.Length{0.006, 0.024, 0.040} {
		last := unit.Length(0)
		for mm := 0.0; mm < 60; mm += 0.25 {
			h, err := press.CoveredHeight(unit.Millimetres(mm), cover, 0.012, 0.012)
			if err != nil || h < 0.012 || cover >= 0.024 && h < last {
				t.Fatalf("cover %g: %g mm of bar earn %g after %g (%v)", float64(cover), mm, float64(h), float64(last), err)
			}
			last = h
		}
	}
}

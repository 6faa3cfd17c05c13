package press_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// By hand: 18 + 6 + (5 − 2) − 25 = 2 mm.
func ExampleProud_matOverStrips() {
	proud, err := press.Proud(0.018, 0.006, 0.005, 0.002, 0.025)
	fmt.Printf("%.1f mm %v\n", proud.Millimetres(), err)
	// Output: 2.0 mm <nil>
}

// By hand: 80 kPa · 0.84/0.60 = 112 kPa.
func ExampleLevelPressure_wideSled() {
	p, err := press.LevelPressure(80e3, 0.84, 0.60)
	fmt.Printf("%.0f kPa %v\n", p.Kilopascals(), err)
	// Output: 112 kPa <nil>
}

// By hand: 600 + 80 + 50 and 1250 + 80 + 200 mm.
func ExampleBagNeed_oneStack() {
	w, l, err := press.BagNeed(0.600, 1.250, 0.080)
	fmt.Printf("%.0f × %.0f mm %v\n", w.Millimetres(), l.Millimetres(), err)
	// Output: 730 × 1530 mm <nil>
}

// Law: a bag laid flat is half a girth wide, and the girth of a stack is twice
// its width and its height.
func TestBagNeed_girth(t *testing.T) {
	for _, h := range []unit.Length{0, 0.05, 0.3} {
		w, _, err := press.BagNeed(0.5, 1, h)
		if girth := 2 * (0.5 + h); err != nil || 2*w < girth {
			t.Errorf("height %g: bag of girth %g (%v) does not go round %g", float64(h), float64(2*w), err, float64(girth))
		}
	}
}

func TestStack_refusesWhatCannotBe(t *testing.T) {
	nan := unit.Length(math.NaN())
	_, _, bag := press.BagNeed(1, nan, 1)
	for _, err := range []error{
		second(press.Proud(-1, 1, 1, 0, 1)), second(press.Proud(0, 1, 1, 2, 1)), second(press.Proud(0, nan, 1, 0, 1)),
		second(press.LevelPressure(-1, 1, 1)), second(press.LevelPressure(1, 1, 0)), second(press.LevelPressure(1, unit.Area(nan), 1)), bag,
	} {
		var r *unit.RangeError
		if !errors.As(err, &r) {
			t.Errorf("error is %v, want a range error", err)
		}
	}
}

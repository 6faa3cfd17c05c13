package unit_test

import (
	"errors"
	"math"
	"testing"

	"presshand/engine/unit"
)

func TestField_lineLoad(t *testing.T) {
	if got := unit.FenceLoad.Unit(); got != unit.NewtonPerMetre {
		t.Errorf("fence load is in %q, want N/m", got.Symbol)
	}
	// 1 lbf/ft is 4.4482216/0.3048 = 14.5939 N/m (NIST SP 811 B.8)
	if got := unit.PoundForcePerFoot.SI(1); math.Abs(got-14.59390) > 1e-5 {
		t.Errorf("1 lbf/ft is %g N/m, want 14.5939", got)
	}
}

func TestAtLeast_boundAndNoNumber(t *testing.T) {
	for v, ok := range map[float64]bool{0: true, 1: true, -1e-9: false, math.Inf(1): false, math.Inf(-1): false} {
		if err := unit.AtLeast("bar", v, 0, " mm"); (err == nil) != ok {
			t.Errorf("%g: %v", v, err)
		}
	}
	var r *unit.RangeError
	if err := unit.AtLeast("bar", math.NaN(), 0, " mm"); !errors.As(err, &r) {
		t.Errorf("no number: %v, want a range error", err)
	}
	if err := unit.MoreThan("bar", 0, 0, " mm"); !errors.As(err, &r) || r.Error() != "bar is 0 mm, want more than 0 mm" {
		t.Errorf("error %v, want what was got and what is wanted", err)
	}
	if err := unit.MoreThan("bar", math.NaN(), 0, ""); err == nil {
		t.Error("no number is taken")
	}
}

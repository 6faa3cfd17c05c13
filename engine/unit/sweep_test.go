package unit_test

import (
	"math"
	"testing"

	"presshand/engine/unit"
)

// By hand: x in 1–3, y in 2–5: x y runs from 2 to 15, x/y from 0.2 to 1.5.
func TestSweep_corners(t *testing.T) {
	x, y := unit.Around(1.0, 2, 3), unit.Around(2.0, 4, 5)
	if got := unit.Sweep(func(c unit.Corner) float64 { return c[0] * c[1] }, x, y); got != unit.Around(2.0, 8, 15) {
		t.Errorf("x y is %v, want 2 8 15", got)
	}
	if got := unit.Sweep(func(c unit.Corner) float64 { return c[0] / c[1] }, x, y); got != unit.Around(0.2, 0.5, 1.5) {
		t.Errorf("x/y is %v, want 0.2 0.5 1.5", got)
	}
}

func TestSweep_exactInputs(t *testing.T) {
	calls := 0
	got := unit.Sweep(func(c unit.Corner) float64 { calls++; return c[0] }, unit.Exactly(3.0), unit.Exactly(4.0))
	if got != unit.Exactly(3.0) || calls > 2 {
		t.Errorf("sweep of exact inputs is %v after %d calls, want 3 3 3 after at most 2", got, calls)
	}
}

// What is no number at a corner must not look like a figure.
func TestSweep_noNumber(t *testing.T) {
	got := unit.Sweep(func(c unit.Corner) float64 { return math.Sqrt(c[0]) }, unit.Around(-1.0, 1, 4))
	if triple := unit.TripleOf(got); triple.Low != nil || triple.High != nil {
		t.Errorf("ends are %v, want none", triple)
	}
}

func TestHull_widens(t *testing.T) {
	if got := unit.Hull(unit.Around(2.0, 3, 4), unit.Around(1.0, 9, 3.5)); got != unit.Around(1.0, 3, 4) {
		t.Errorf("hull is %v, want 1 3 4", got)
	}
}

func BenchmarkSweep_fiveInputs(b *testing.B) {
	r := unit.Around(1.0, 2, 3)
	b.ReportAllocs()
	for b.Loop() {
		unit.Sweep(func(c unit.Corner) float64 { return c[0] * c[1] / c[2] * (c[3] - c[4]) }, r, r, r, r, r)
	}
}

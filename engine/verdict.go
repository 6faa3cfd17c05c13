package engine

import (
	"math"

	"presshand/engine/unit"
)

// capacityAgainst judges a capacity against a demand: good where the least of
// the one covers the most of the other, care where the middles do, else stop.
func capacityAgainst[T ~float64](capacity, demand unit.Range[T]) Verdict {
	switch {
	case reaches(capacity.Low, demand.High):
		return Good
	case reaches(capacity.Mid, demand.Mid):
		return Care
	}
	return Stop
}

// reaches reports whether a is b or more. A figure right on a limit must not
// fall short of it by what arithmetic and a change of units leave: 6.8 less 6 mm
// is 0.8 mm.
func reaches[T ~float64](a, b T) bool {
	slack := 1e-9 * math.Max(math.Abs(float64(a)), math.Abs(float64(b)))
	return float64(a) >= float64(b)-slack
}

// Margins of the checks on the air.
const (
	nearAmbient   = 0.95 // of the ambient; few pumps get beyond
	boilingMargin = 0.7
)

// figure returns a range in SI as the figure that stands under f.
func figure(f unit.Field, r unit.Range[float64]) unit.Triple {
	u := f.Unit()
	return unit.TripleOf(unit.Around(u.Of(r.Low), u.Of(r.Mid), u.Of(r.High)))
}

package engine

import "presshand/engine/unit"

// capacityAgainst judges a capacity against a demand: good where the least of
// the one covers the most of the other, care where the middles do, else stop.
func capacityAgainst[T ~float64](capacity, demand unit.Range[T]) Verdict {
	switch {
	case capacity.Low >= demand.High:
		return Good
	case capacity.Mid >= demand.Mid:
		return Care
	}
	return Stop
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

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

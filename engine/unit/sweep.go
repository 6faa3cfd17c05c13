package unit

import "math"

// MaxSwept is how many inputs [Sweep] takes.
const MaxSwept = 12

// A Corner is one choice of values for the inputs of a sweep, in their order.
type Corner [MaxSwept]float64

// Sweep evaluates f over what its inputs can be: the middle is f at the
// middles, the ends are the least and the most over the corners, each uncertain
// input at its low or its high end. That is exact where f is monotone in each
// input by itself; an extreme inside is for the caller to add with [Hull].
// An input without uncertainty costs nothing. A figure that is not a number at
// some corner is not a number as a whole.
func Sweep(f func(Corner) float64, in ...Range[float64]) Range[float64] {
	var at, low, high Corner
	var open [MaxSwept]int
	n := 0
	for i, r := range in {
		at[i], low[i], high[i] = r.Mid, r.Low, r.High
		if r.Low != r.High {
			open[n] = i
			n++
		}
	}
	v := f(at)
	out := Range[float64]{v, v, v}
	for bits := range 1 << n {
		for k, i := range open[:n] {
			at[i] = low[i]
			if bits>>k&1 == 1 {
				at[i] = high[i]
			}
		}
		v := f(at)
		out.Low = math.Min(out.Low, v)
		out.High = math.Max(out.High, v)
	}
	return out
}

// Hull returns r widened to hold s; the middle stays that of r.
func Hull[T ~float64](r, s Range[T]) Range[T] {
	r.Low = T(math.Min(float64(r.Low), float64(s.Low)))
	r.High = T(math.Max(float64(r.High), float64(s.High)))
	return r
}

// SI returns r without its kind of quantity, in SI, for [Sweep].
func SI[T ~float64](r Range[T]) Range[float64] {
	return Range[float64]{float64(r.Low), float64(r.Mid), float64(r.High)}
}

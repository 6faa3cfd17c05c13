package unit

import "fmt"

// A Range is an uncertain quantity: the least and the most that it can
// honestly be, and the middle that a single figure would use.
type Range[T ~float64] struct{ Low, Mid, High T }

// Exactly returns a range without uncertainty.
func Exactly[T ~float64](v T) Range[T] { return Range[T]{v, v, v} }

// Around returns a range from its three figures.
func Around[T ~float64](low, mid, high T) Range[T] { return Range[T]{low, mid, high} }

// Times returns r scaled by a factor that is not negative.
func (r Range[T]) Times(k float64) Range[T] {
	return Range[T]{T(float64(r.Low) * k), T(float64(r.Mid) * k), T(float64(r.High) * k)}
}

// A RangeError says that an input lies outside what a formula is valid for.
type RangeError struct {
	What string  // the input, in words
	Got  float64 // as it came, in Unit
	Unit string
	Want string // what would be allowed
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s is %g%s, want %s", e.What, e.Got, e.Unit, e.Want)
}

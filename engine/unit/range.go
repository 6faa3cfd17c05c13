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

// AtLeast refuses a value below a least one, and one that is no number.
func AtLeast(what string, got, least float64, unit string) error {
	if got >= least && got-got == 0 {
		return nil
	}
	return &RangeError{What: what, Got: got, Unit: unit, Want: fmt.Sprintf("%g%s or more", least, unit)}
}

// MoreThan refuses a value at or below a bound, and one that is no number.
func MoreThan(what string, got, bound float64, unit string) error {
	if got > bound && got-got == 0 {
		return nil
	}
	return &RangeError{What: what, Got: got, Unit: unit, Want: fmt.Sprintf("more than %g%s", bound, unit)}
}

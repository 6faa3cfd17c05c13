package glue

import (
	"math"

	"presshand/engine/unit"
)

// Temperatures between which times are scaled; beyond them the rule of ten
// degrees has nothing to stand on.
const (
	coldestScaled = unit.Temperature(10)
	warmestScaled = unit.Temperature(35)
)

// ChalkFree is the temperature from which no glue of the PVA kinds chalks; the
// chalk points of products lie between 2 and 16 °C.
const ChalkFree = unit.Temperature(16)

// TemperatureFactor returns the factor k on a time that the table gives at 20 °C.
//
//	k = 2^((20 − T)/10), T held between 10 and 35
//
//	T  temperature of glue and wood  °C
//	k  factor                        1
//
// Model: times double for each 10 °C colder. Published factors for 10 °C run
// from 2.0 to 3.4, so 2 is mild: in the cold the true press time is longer.
// Hot hide glue sets by gelling and is not scaled.
//
// Valid for every T that is a number; NaN gives a [*unit.RangeError].
//
// Source: common practice, no source.
func TemperatureFactor(c Class, T unit.Temperature) (float64, error) {
	if math.IsNaN(float64(T)) {
		return 0, &unit.RangeError{What: "temperature", Got: float64(T), Unit: " °C", Want: "a number"}
	}
	if c.GelsCold() {
		return 1, nil
	}
	T = max(coldestScaled, min(warmestScaled, T))
	return math.Exp2((20 - T.Celsius()) / 10), nil
}

// FilmFactor returns the factor f on a press time in the open that a vacuum film
// makes of it.
//
//	t' = f t
//
//	t   press time in the open   s
//	f   factor                   1
//	t'  press time under film    s
//
// Model: the film keeps the water of the glue in. Edge joints still dry sideways
// into the strips, 1 / 1.5 / 2; faces on a core do not, 2 / 3 / 4. A glue without
// water does not mind.
//
// Valid for every class of the table.
//
// Source: our estimate; published factors for one face that lets no water
// through run from 1 to 8.
func FilmFactor(c Class, facesOnCore bool) unit.Range[float64] {
	switch {
	case !c.WaterBased:
		return unit.Exactly(1.0)
	case facesOnCore:
		return unit.Around(2.0, 3.0, 4.0)
	}
	return unit.Around(1.0, 1.5, 2.0)
}

package press

import (
	"math"

	"presshand/engine/unit"
	"presshand/engine/wood"
)

// FreeStrain returns the strain e across the grain of wood that is free to move.
//
//	e = C (M2 − M1)
//
//	C   movement coefficient              1/%
//	M1  moisture when pressed             %
//	M2  moisture it comes to              %
//	e   strain, shrinking negative        1
//
// Model: straight line through the middle of the moisture range.
//
// Valid for 0 ≤ C ≤ 0.02 and moistures of 0 to 100 %, trusted from 6 to 14 %;
// outside it the error is a [*unit.RangeError].
//
// Source: Wood Handbook FPL-GTR-282 ch. 13, change of dimension with the
// coefficients of Table 13-5.
func FreeStrain(C wood.Movement, M1, M2 unit.Percent) (float64, error) {
	if !(C >= 0 && C <= 0.02) {
		return 0, &unit.RangeError{What: "movement", Got: float64(C), Unit: " per %", Want: "from 0 to 0.02 per %"}
	}
	for _, M := range []unit.Percent{M1, M2} {
		if !(M >= 0 && M <= 100) {
			return 0, &unit.RangeError{What: "wood moisture", Got: float64(M), Unit: " %", Want: "from 0 to 100 %"}
		}
	}
	return float64(C) * float64(M2-M1), nil
}

// WidthChange returns the change d of a width that is free to move.
//
//	d = W C (M2 − M1)
//
//	W   width across the grain            m
//	C   movement coefficient              1/%
//	M1  moisture when pressed             %
//	M2  moisture it comes to              %
//	d   change, shrinking negative        m
//
// Model: as [FreeStrain]; nothing holds the wood back.
//
// Valid for 0 < W ≤ 30 m and as [FreeStrain]; outside it the error is a
// [*unit.RangeError].
//
// Source: Wood Handbook FPL-GTR-282 ch. 13, change of dimension with the
// coefficients of Table 13-5.
func WidthChange(W unit.Length, C wood.Movement, M1, M2 unit.Percent) (unit.Length, error) {
	if !(W > 0 && W <= 30) {
		return 0, &unit.RangeError{What: "width", Got: W.Millimetres(), Unit: " mm", Want: "more than 0 mm, at most 30 m"}
	}
	e, err := FreeStrain(C, M1, M2)
	return W * unit.Length(e), err
}

// Sagitta returns the height c of a shallow arc over its chord.
//
//	c = κ W² / 8
//
//	κ  curvature               1/m
//	W  width, the chord        m
//	c  height of the middle    m
//
// Model: parabola for the arc, good while c is small against W.
//
// Valid for 0 < W ≤ 30 m and a finite κ; outside it the error is a [*unit.RangeError].
//
// Source: geometry.
func Sagitta(κ unit.Curvature, W unit.Length) (unit.Length, error) {
	switch {
	case !(W > 0 && W <= 30):
		return 0, &unit.RangeError{What: "width", Got: W.Millimetres(), Unit: " mm", Want: "more than 0 mm, at most 30 m"}
	case !(math.Abs(float64(κ)) <= math.MaxFloat64):
		return 0, &unit.RangeError{What: "curvature", Got: float64(κ), Unit: " /m", Want: "a finite number"}
	}
	return finite("cup", unit.Length(float64(κ)*float64(W)*float64(W)/8))
}

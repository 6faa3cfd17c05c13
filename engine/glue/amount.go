package glue

import "presshand/engine/unit"

// spill is what stays in pot, roller and squeeze-out beyond the spread (common
// practice, no source).
const spill = 1.10

// EdgeArea returns the area A of the edge joints of some panels.
//
//	A = N (n − 1) t L
//
//	N  panels                      1
//	n  strips in one panel         1
//	t  thickness of the strips     m
//	L  length along the joints     m
//	A  joint area                  m²
//
// Model: each joint counted once, glue on the line and not on both faces.
//
// Valid for N ≥ 1, n ≥ 1, 0 < t, L ≤ 30 m; outside it the error is a [*unit.RangeError].
//
// Source: geometry.
func EdgeArea(panels, strips int, t, L unit.Length) (unit.Area, error) {
	switch {
	case panels < 1:
		return 0, &unit.RangeError{What: "count of panels", Got: float64(panels), Want: "1 or more"}
	case strips < 1:
		return 0, &unit.RangeError{What: "count of strips", Got: float64(strips), Want: "1 or more"}
	}
	a, err := area("thickness", t, "length", L)
	return unit.Area(panels*(strips-1)) * a, err
}

// FaceArea returns the area A of the glue lines under faces laid on cores.
//
//	A = N f W L
//
//	N  panels                   1
//	f  faces of a panel, 1 or 2 1
//	W  width of the panel       m
//	L  length of the panel      m
//	A  joint area               m²
//
// Model: the whole face is glued.
//
// Valid for N ≥ 1, f of 1 or 2, 0 < W, L ≤ 30 m; outside it the error is a [*unit.RangeError].
//
// Source: geometry.
func FaceArea(panels, faces int, W, L unit.Length) (unit.Area, error) {
	switch {
	case panels < 1:
		return 0, &unit.RangeError{What: "count of panels", Got: float64(panels), Want: "1 or more"}
	case faces != 1 && faces != 2:
		return 0, &unit.RangeError{What: "count of faces", Got: float64(faces), Want: "1 or 2"}
	}
	a, err := area("width", W, "length", L)
	return unit.Area(panels*faces) * a, err
}

func area(nameA string, a unit.Length, nameB string, b unit.Length) (unit.Area, error) {
	for _, side := range []struct {
		name string
		l    unit.Length
	}{{nameA, a}, {nameB, b}} {
		if !(side.l > 0 && side.l <= 30) {
			return 0, &unit.RangeError{What: side.name, Got: side.l.Millimetres(), Unit: " mm", Want: "more than 0 mm, at most 30 m"}
		}
	}
	return unit.Area(float64(a) * float64(b)), nil
}

// Mass returns the mass m of glue to mix.
//
//	m = 1.10 s A
//
//	s  spread on the glue line  kg/m²
//	A  joint area               m²
//	m  glue                     kg
//
// Model: an even spread, a tenth more for pot, roller and squeeze-out.
//
// Valid for s > 0 and A ≥ 0, finite; outside it the error is a [*unit.RangeError].
//
// Source: the spread of the class or of the label; the tenth is common
// practice, no source.
func Mass(s unit.Spread, A unit.Area) (unit.Mass, error) {
	switch {
	case !(s > 0 && s-s == 0):
		return 0, &unit.RangeError{What: "spread", Got: float64(s) * 1000, Unit: " g/m²", Want: "more than 0 g/m²"}
	case !(A >= 0 && A-A == 0):
		return 0, &unit.RangeError{What: "joint area", Got: float64(A), Unit: " m²", Want: "0 m² or more"}
	}
	return unit.Mass(spill * float64(s) * float64(A)), nil
}

package press

import (
	"math"

	"presshand/engine/unit"
)

// A Ply is one of two plies glued face to face.
type Ply struct {
	Thickness unit.Length
	Stiffness unit.Stiffness // along the width that bends
}

// BilayerCurvature returns the curvature κ of two plies of which the first
// would grow by the strain Δε more than the second, were they not glued.
//
//	κ = 6 Δε (1+m)² / (h [3 (1+m)² + (1 + m n) (m² + 1/(m n))])
//	m = t1/t2,  n = E1/E2,  h = t1 + t2
//
//	t1, t2  thicknesses                          m
//	E1, E2  stiffnesses                          Pa
//	Δε      free strain of ply 1 less that of 2  1
//	κ       curvature, ply 1 outside the bend where positive  1/m
//
// Model: two elastic strips of the same width, plane sections, no creep of wood
// or glue, bending in one direction. Creep and the other direction make the
// true cup smaller.
//
// Valid for 1 µm ≤ t1, t2 ≤ 30 m, E1, E2 > 0 and |Δε| ≤ 0.5; outside it the
// error is a [*unit.RangeError].
//
// Source: S. Timoshenko, Analysis of bi-metal thermostats, Journal of the
// Optical Society of America 11:233 (1925), equation 4.
func BilayerCurvature(ply1, ply2 Ply, Δε float64) (unit.Curvature, error) {
	for _, p := range []Ply{ply1, ply2} {
		switch {
		case !(p.Thickness >= 1e-6 && p.Thickness <= 30):
			return 0, &unit.RangeError{What: "thickness", Got: p.Thickness.Millimetres(), Unit: " mm", Want: "from 0.001 mm to 30 m"}
		case !(p.Stiffness >= 1 && p.Stiffness <= 1e15):
			return 0, &unit.RangeError{What: "stiffness", Got: p.Stiffness.Gigapascals(), Unit: " GPa", Want: "more than 0 GPa"}
		}
	}
	if !(math.Abs(Δε) <= 0.5) {
		return 0, &unit.RangeError{What: "difference of strains", Got: Δε, Want: "from -0.5 to 0.5"}
	}
	h := float64(ply1.Thickness + ply2.Thickness)
	m := float64(ply1.Thickness / ply2.Thickness)
	n := float64(ply1.Stiffness / ply2.Stiffness)
	sum := (1 + m) * (1 + m)
	return unit.Curvature(6 * Δε * sum / (h * (3*sum + (1+m*n)*(m*m+1/(m*n))))), nil
}

// MostBent returns the stiffness E1 of a face at which [BilayerCurvature] is
// greatest, whatever the strain.
//
//	E1 = E2 / m²,  m = t1/t2
//
//	t1, t2  thicknesses of face and core  m
//	E2      stiffness of the core         Pa
//	E1      stiffness of the face         Pa
//
// Model: as [BilayerCurvature]; both plies then are as stiff in bending, and
// their touching faces are stretched alike.
//
// Valid for t1, t2 > 0 and E2 > 0; it returns NaN or zero elsewhere.
//
// Source: derived, d/dn of (1 + m n)(m² + 1/(m n)) is zero at n = 1/m².
func MostBent(face unit.Length, core Ply) unit.Stiffness {
	m := float64(face / core.Thickness)
	return core.Stiffness / unit.Stiffness(m*m)
}

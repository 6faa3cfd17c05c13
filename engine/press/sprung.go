package press

import (
	"math"

	"presshand/engine/unit"
)

// MostOverfill is how many times an overfill goes into the opening at least.
const MostOverfill = 10

// Rise returns how high the middle of a panel stands that overfills its
// opening, before the vacuum lays it down.
//
//	rise = √(3 W δ / 8)
//
//	W     width of the opening                            m
//	δ     overfill, strips together less the opening      m
//	rise  height of the middle                            m
//
// Model: shallow parabolic arc, strips that do not shorten.
//
// Valid for W > 0, 0 ≤ δ ≤ W/10; outside it the error is a [*unit.RangeError].
//
// Source: length of a shallow arc, W + 8 rise² / (3 W), solved for the rise.
func Rise(W, δ unit.Length) (unit.Length, error) {
	if err := unit.MoreThan("width of the opening", W.Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	if !(δ >= 0 && δ <= W/MostOverfill) {
		return 0, &unit.RangeError{What: "overfill", Got: δ.Millimetres(), Unit: " mm", Want: "from 0 to a tenth of the opening"}
	}
	return finite("rise", unit.Length(math.Sqrt(3*float64(W)*float64(δ)/8)))
}

// SnapPressure returns the pressure at which a sprung panel lies down.
//
//	p_snap = 8.21 E⊥ t rise³ / W⁴
//
//	E⊥      stiffness of the strips across the grain   Pa
//	t       thickness of the strips                    m
//	rise    height of the middle                       m
//	W       width of the opening                       m
//	p_snap  pressure from above                        Pa
//
// Model: parabolic arch without bending stiffness between fences that do not
// give; 8.21 is 128/(9 √3), the most of 64/3 (1 − y²) y over 0 ≤ y ≤ 1.
//
// Valid for E⊥, t, W > 0, rise ≥ 0, rise small against W; outside the signs the
// error is a [*unit.RangeError].
//
// Source: derived.
func SnapPressure(E unit.Stiffness, t, rise, W unit.Length) (unit.Pressure, error) {
	if err := stiff(E); err != nil {
		return 0, err
	}
	if err := positive("thickness of the strips", t, "width of the opening", W); err != nil {
		return 0, err
	}
	if err := unit.AtLeast("rise", rise.Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	return finite("snap pressure", unit.Pressure(128/(9*math.Sqrt(3))*float64(E)*float64(t)*cube(rise)/fourth(W)))
}

// BucklePressure returns the side pressure above which loose strips lift.
//
//	p_buckle = π² E⊥ t² / (12 W²)
//
//	E⊥        stiffness of the strips across the grain   Pa
//	t         thickness of the strips                    m
//	W         width of the panel                         m
//	p_buckle  side pressure                              Pa
//
// Model: straight strut with hinged ends; an upper bound where joints are not
// glued yet.
//
// Valid for E⊥, t, W > 0; outside it the error is a [*unit.RangeError].
//
// Source: Euler's column.
func BucklePressure(E unit.Stiffness, t, W unit.Length) (unit.Pressure, error) {
	if err := stiff(E); err != nil {
		return 0, err
	}
	if err := positive("thickness of the strips", t, "width of the panel", W); err != nil {
		return 0, err
	}
	return finite("side pressure that lifts", unit.Pressure(math.Pi*math.Pi*float64(E)*float64(t*t)/(12*float64(W*W))))
}

// ClosingPressure returns the side pressure that closes a gap by bending a
// crooked strip against a straight neighbour.
//
//	p_close = 6.4 E_L w³ g / L⁴
//
//	E_L      stiffness along the grain          Pa
//	w        width of the strip                 m
//	g        gap at mid-length                  m
//	L        length of the strip                m
//	p_close  pressure on the joint              Pa
//
// Model: simply supported beam under even load, 5 q L⁴ / (384 E I), bent in its
// plane. Half of it closes two strips that are crooked and give alike.
//
// Valid for E_L, w, L > 0, g ≥ 0, L of at least ten widths for the bending
// alone; outside the signs the error is a [*unit.RangeError].
//
// Source: Wood Handbook, Eq. 9-2 and Table 9-1, k_b = 5/384.
func ClosingPressure(E unit.Stiffness, w, g, L unit.Length) (unit.Pressure, error) {
	if err := stiff(E); err != nil {
		return 0, err
	}
	if err := positive("width of the strip", w, "length of the strip", L); err != nil {
		return 0, err
	}
	if err := unit.AtLeast("gap", g.Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	return finite("pressure that closes the gap", unit.Pressure(384.0/5/12*float64(E)*cube(w)*float64(g)/fourth(L)))
}

func cube(l unit.Length) float64   { return float64(l * l * l) }
func fourth(l unit.Length) float64 { return float64(l * l * l * l) }

package press

import "presshand/engine/unit"

// HumpPressure returns the pressure that flattens a strip lying hump up.
//
//	p = 6.4 E t³ c / s⁴
//
//	E  stiffness in the direction of the span   Pa
//	t  thickness                                m
//	c  height of the hump                       m
//	s  span: the width of a cup, the length of a bow   m
//	p  pressure from above                      Pa
//
// Model: simply supported strip under even load.
//
// Valid for E, t, s > 0, c ≥ 0; outside it the error is a [*unit.RangeError].
// Beyond c of about s/10 the strip is a shell and needs more.
//
// Source: Roark's Formulas for Stress and Strain, Table 11.4 case 1a, long
// plate: y = 0.1421 q b⁴ / (E t³) with ν = 0.3; a strip without ν has 5/32.
func HumpPressure(E unit.Stiffness, t, c, s unit.Length) (unit.Pressure, error) {
	if err := bent(E, t, c, s); err != nil {
		return 0, err
	}
	return finite("pressure that flattens", unit.Pressure(6.4*float64(E)*cube(t)*float64(c)/fourth(s)))
}

// HollowPressure returns the pressure that brings the edges of a strip lying
// hollow up down to within g.
//
//	p = max(10.67 E t³ c / s⁴, 2.667 E t³ c² / (s⁴ g))
//
//	E  stiffness in the direction of the span   Pa
//	t  thickness                                m
//	c  depth of the hollow                      m
//	s  span: the width of a cup, the length of a bow   m
//	g  what may be left under the edges         m
//	p  pressure from above                      Pa
//
// Model: the middle lies flat, the ends are cantilevers of length a under even
// load; a strip of curvature κ = 8 c / s² lifts over the last a with
// p a² / 2 = E I κ, by g = κ a² / 4 at the edge. The first term bends ends of
// half the span wholly down; where g is more than c/4 it stands on the safe side.
//
// Valid for E, t, s, g > 0, c ≥ 0; outside it the error is a
// [*unit.RangeError].
//
// Source: derived, cantilever ends lifting off a flattened middle.
func HollowPressure(E unit.Stiffness, t, c, s, g unit.Length) (unit.Pressure, error) {
	if err := bent(E, t, c, s); err != nil {
		return 0, err
	}
	if err := unit.MoreThan("gap left", g.Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	k := float64(E) * cube(t) * float64(c) / fourth(s)
	return finite("pressure that flattens", unit.Pressure(max(32.0/3*k, 8.0/3*k*float64(c/g))))
}

func bent(E unit.Stiffness, t, c, s unit.Length) error {
	if err := stiff(E); err != nil {
		return err
	}
	if err := positive("thickness", t, "span", s); err != nil {
		return err
	}
	return unit.AtLeast("cup or bow", c.Millimetres(), 0, " mm")
}

package press

import "presshand/engine/unit"

// Proud returns how far the work stands above the fence beside it, so that the
// sled above lies on the work and not on the fence.
//
//	proud = core + t + (m − s) − f
//
//	core   core under the strips                          m
//	t      thickest strips                                m
//	m      mat on the strips, as bought                   m
//	s      how far the tallest strips squash it           m
//	f      height of the fence                            m
//	proud  what stands above the fence; below 0 the fence carries   m
//
// Model: rigid sled above, level.
//
// Valid for lengths of 0 or more, s ≤ m; outside it the error is a
// [*unit.RangeError].
//
// Source: geometry.
func Proud(core, t, m, s, f unit.Length) (unit.Length, error) {
	for _, l := range [...]unit.Length{core, t, m, s, f} {
		if err := unit.AtLeast("layer", l.Millimetres(), 0, " mm"); err != nil {
			return 0, err
		}
	}
	if s > m {
		return 0, &unit.RangeError{What: "squash of the mat", Got: s.Millimetres(), Unit: " mm", Want: "no more than the mat is thick"}
	}
	return finite("height above the fence", core+t+(m-s)-f)
}

// LevelPressure returns the pressure under a sled that is larger than the work
// beneath it.
//
//	p_level = p A_sled / A_strips
//
//	p         vacuum                               Pa
//	A_sled    area of the sled                     m²
//	A_strips  area of the strips under it          m²
//	p_level   pressure on the strips               Pa
//
// Model: rigid sled, nothing but the strips carries it, no film under its
// overhang.
//
// Valid for p ≥ 0 and areas above 0; outside it the error is a
// [*unit.RangeError].
//
// Source: force balance.
func LevelPressure(p unit.Pressure, sled, strips unit.Area) (unit.Pressure, error) {
	if err := unit.AtLeast("vacuum", p.Kilopascals(), 0, " kPa"); err != nil {
		return 0, err
	}
	for _, A := range [...]unit.Area{sled, strips} {
		if err := unit.MoreThan("area", A.SquareMetres(), 0, " m²"); err != nil {
			return 0, err
		}
	}
	return finite("pressure on the level", p*unit.Pressure(sled/strips))
}

// BagNeed returns the least lay-flat width and length of a bag for a stack.
//
//	w_bag = W + h + 50 mm
//	l_bag = L + h + 200 mm
//
//	W, L          width and length of the stack          m
//	h             height of the stack                    m
//	w_bag, l_bag  width and length of the bag laid flat  m
//
// Model: the film goes over the stack and under it, with something to spare at
// the sides and more at the ends, where the bag is closed.
//
// Valid for W, L, h ≥ 0; outside it the error is a [*unit.RangeError].
//
// Source: geometry of the girth; the allowances are common practice, no source.
func BagNeed(W, L, h unit.Length) (width, length unit.Length, err error) {
	for _, l := range [...]unit.Length{W, L, h} {
		if err := unit.AtLeast("stack", l.Millimetres(), 0, " mm"); err != nil {
			return 0, 0, err
		}
	}
	return W + h + unit.Millimetres(50), L + h + unit.Millimetres(200), nil
}

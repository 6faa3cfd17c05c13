package press

import "presshand/engine/unit"

// A Pair is where one bar meets the edges of two faces, one below a core and one on
// it, above the bar's foot.
type Pair struct {
	Lower, Upper unit.Length // middle of what it touches of each
	Edge         unit.Length // height of the upper face's edge above the bar, where the film presses it
}

// LeastShare returns the least share of the push that one of two faces gets from a
// bar which leans on the other.
//
//	F  = (h − r) − μ (b + r)
//	M  = (h² − r²) / 2
//	Fu = (M − F zl ∓ b²/2) / (zu − zl)
//	k  = max(0, min(F − Fu, Fu + e)) / (F + e), at most ½
//
//	bar  h, b, r and μ as in [JointPressure], h of the bar alone   m, m, m, 1
//	at   zl, zu and e as in [Pair]                                 m
//	k    share of the worse-off face                               1
//
// Model: the film pushes the bar evenly from r to h, friction holds its foot, the
// core's edge lies back and takes nothing. Two edges and the sled hold a rigid bar
// in more ways than one: the sled's answer to what presses the bar down, p b, may
// stand anywhere under its width, so at its one edge or the other. Which it is
// hangs on which face closes first.
//
// Valid for h, r, b, e ≥ 0, μ ≥ 0, zu > zl ≥ 0; outside it the error is a
// [*unit.RangeError].
//
// Source: moments about the bar's foot.
func LeastShare(bar Push, at Pair) (float64, error) {
	if err := sideInputs(0, 1, bar.Covered, bar.Width, bar.Corner, at.Lower, at.Edge); err != nil {
		return 0, err
	}
	if err := unit.AtLeast("friction", bar.Friction, 0, ""); err != nil {
		return 0, err
	}
	if err := unit.MoreThan("height between the faces", (at.Upper - at.Lower).Millimetres(), 0, " mm"); err != nil {
		return 0, err
	}
	h, r, b := bar.Covered, bar.Corner, bar.Width
	force := (h - r) - unit.Length(bar.Friction)*(b+r)
	if force+at.Edge <= 0 {
		return 0, nil // there is nothing to share
	}
	turns := (h*h-r*r)/2 - force*at.Lower
	upper := func(couple unit.Length) unit.Length { return (turns + couple) / (at.Upper - at.Lower) }
	least := min(force-upper(b*b/2), upper(-b*b/2)+at.Edge) / (force + at.Edge)
	k := min(0.5, max(0, float64(least)))
	return k, unit.AtLeast("share of a face", k, 0, "")
}

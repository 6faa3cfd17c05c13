package wood

import "presshand/engine/unit"

// A Cut is how a strip was sawn from the log.
type Cut string

const (
	Unsaid  Cut = ""
	Flat    Cut = "flat"    // rings along the width: the width runs tangentially
	Quarter Cut = "quarter" // rings across the thickness: the width runs radially
)

// The stiffness of a board against the table: the coefficient of variation of
// the modulus of elasticity is 22 %, Wood Handbook ch. 5 (from memory).
const (
	softest  = 0.78
	stiffest = 1.22
)

// AlongRange returns E_L with its spread.
func (s Species) AlongRange() unit.Range[unit.Stiffness] {
	return Spread(s.Along)
}

// Spread returns the range that a tabulated stiffness of wood stands for.
func Spread(e unit.Stiffness) unit.Range[unit.Stiffness] {
	return unit.Around(softest*e, e, stiffest*e)
}

// Across returns the stiffness across the grain, in the direction of a strip's
// width: E_T flat sawn, E_R quarter sawn. With the cut unsaid the rings may also
// lie at 45°, where wood is softest: 0.6 of the smaller of the two for hardwoods
// and 0.25 for softwoods (from memory); the middle is the mean of the two.
func (s Species) Across(c Cut) unit.Range[unit.Stiffness] {
	tangential := s.Along * unit.Stiffness(s.RatioTangential)
	radial := s.Along * unit.Stiffness(s.RatioRadial)
	switch c {
	case Flat:
		return Spread(tangential)
	case Quarter:
		return Spread(radial)
	}
	diagonal := unit.Stiffness(0.6)
	if s.Group == Softwood {
		diagonal = 0.25
	}
	return unit.Around(
		softest*diagonal*min(tangential, radial),
		(tangential+radial)/2,
		stiffest*max(tangential, radial),
	)
}

// Moves returns the movement across the grain, in the direction of a strip's
// width: C_T flat sawn, C_R quarter sawn; with the cut unsaid anything between.
func (s Species) Moves(c Cut) unit.Range[Movement] {
	switch c {
	case Flat:
		return unit.Exactly(s.Tangential)
	case Quarter:
		return unit.Exactly(s.Radial)
	}
	return unit.Around(min(s.Radial, s.Tangential), (s.Radial+s.Tangential)/2, max(s.Radial, s.Tangential))
}

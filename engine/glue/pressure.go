package glue

import (
	"math"

	"presshand/engine/unit"
)

// Pressures that the classes want on a joint.
const (
	contact      = unit.Pressure(70e3)  // common practice, no source
	contactEpoxy = unit.Pressure(10e3)  // common practice, no source
	fullHide     = unit.Pressure(350e3) // from memory
	fullEpoxy    = unit.Pressure(30e3)  // from memory
	starvedEpoxy = unit.Pressure(350e3) // common practice, no source
	fullSoft     = 690e3                // Pa; 100 psi, the lower end of advice for softwood edge joints
	fullDense    = 1205e3               // Pa; 175 psi, the lower end of advice for hardwood edge joints
	gravitySoft  = 0.40                 // our estimate, like the straight line between
	gravityDense = 0.63
)

// Contact returns the least pressure on a well fitted joint.
//
// Valid for every class of the table.
//
// Source: common practice, no source.
func Contact(c Class) unit.Pressure {
	if c.Name == epoxy {
		return contactEpoxy
	}
	return contact
}

// Full returns the pressure p that clamping advice asks of an edge joint.
//
//	p = p1 + (p2 − p1) (G − G1) / (G2 − G1), G held between G1 and G2
//
//	G       specific gravity of the wood                 1
//	G1, G2  0.40 and 0.63                                1
//	p1, p2  690 and 1205 kPa, the advice there           Pa
//	p       full pressure                                Pa
//
// Model: straight line between the lower ends of the usual 100–150 psi for
// softwood and 175–250 psi for hardwood; hide glue wants 350 kPa and epoxy
// 30 kPa of any wood.
//
// Valid for G above 0; anything else is taken as G1.
//
// Source: advice as in a woodworking magazine's guide of 2021; the line between
// is our estimate; hide and epoxy from memory.
func Full(c Class, specificGravity float64) unit.Pressure {
	switch {
	case c.IsHide():
		return fullHide
	case c.Name == epoxy:
		return fullEpoxy
	case !(specificGravity > gravitySoft): // negated, so that NaN lands here too
		return fullSoft
	}
	share := math.Min(1, (specificGravity-gravitySoft)/(gravityDense-gravitySoft))
	return unit.Pressure(fullSoft + (fullDense-fullSoft)*share)
}

// HangsOnWood reports whether [Full] differs from wood to wood.
func HangsOnWood(c Class) bool { return !c.IsHide() && c.Name != epoxy }

// Starved returns the pressure above which the class is squeezed out of the
// joint; false where the table knows no such limit.
//
// Valid for every class of the table.
//
// Source: common practice, no source.
func Starved(c Class) (unit.Pressure, bool) { return starvedEpoxy, c.Name == epoxy }

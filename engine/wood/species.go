// Package wood tells how species differ: stiffness, strength, movement; and
// how moist wood gets in air.
package wood

import (
	"strings"

	"presshand/engine/unit"
)

// A Group is hardwood or softwood.
type Group string

const (
	Hardwood Group = "hardwood"
	Softwood Group = "softwood"
)

// A Movement is the change of width, as a fraction of the width, for each per
// cent of moisture.
type Movement float64

// A Species is one row of the table.
type Species struct {
	Name            string
	Also            []string // other names of just this wood
	Loosely         []string // wider names that a shop uses for it
	Group           Group
	SpecificGravity float64        // ovendry weight, volume at 12 %; imported woods: green volume
	Along           unit.Stiffness // E_L
	RatioTangential float64        // E_T / E_L
	RatioRadial     float64        // E_R / E_L
	Radial          Movement       // C_R, quarter sawn
	Tangential      Movement       // C_T, flat sawn
	Crush           unit.Pressure  // compression across the grain at the proportional limit; 0 where no table has it
	GroupRatios     bool           // the two ratios are the mean of the group

	StrengthStanding, RatioStanding, MovementStanding unit.Standing
}

// Sources of the columns, for the working of a figure.
const (
	StrengthSource = "Wood Handbook FPL-GTR-282 Tables 5-3b and 5-5b, E_L = 1.10 × the bending modulus (note of Table 5-1)"
	RatioSource    = "Wood Handbook FPL-GTR-190 Table 5-1; where it has no row, the mean of the group"
	MovementSource = "Wood Handbook FPL-GTR-190 Table 13-5, 6 to 14 % moisture"
)

// Find returns the species of a name, an alias included. The name must be the
// whole name: "hoop pine" is not a pine of the table.
func Find(name string) (Species, bool) {
	i, ok := byName[plain(name)]
	if !ok {
		return Species{}, false
	}
	return table[i], true
}

// Names returns every name and alias that [Find] knows with the table's own
// name for it, spelled as in the table and again with hyphens and apostrophes
// left out.
func Names() map[string]string {
	names := make(map[string]string, 2*len(byName))
	for name, i := range byName {
		names[name] = table[i].Name
	}
	for _, s := range table {
		for _, list := range [][]string{{s.Name}, s.Also, s.Loosely} {
			for _, name := range list {
				names[name] = s.Name
			}
		}
	}
	return names
}

// IsLoose reports whether a name is wider than the species that [Find] returns
// for it, so that the choice ought to be said: "maple" is taken as hard maple.
func IsLoose(name string) bool { return loose[plain(name)] }

// All returns the table.
func All() []Species { return append([]Species(nil), table...) }

// Default returns the wood to reckon with where none is named: a hardwood of
// middling stiffness, its movement the mean of the table's hardwoods. How much it
// bears across the grain differs too much to be given.
func Default() Species {
	return Species{
		Name:            "hardwood",
		Group:           Hardwood,
		SpecificGravity: 0.60,
		Along:           unit.Gigapascals(12.5),
		RatioTangential: 0.062, RatioRadial: 0.123,
		Radial: meanRadial, Tangential: meanTangential,
		GroupRatios:      true,
		StrengthStanding: unit.Estimate,
		RatioStanding:    unit.Computed,
		MovementStanding: unit.Computed,
	}
}

// plain returns a name in lower case, with single spaces for hyphens and runs
// of blanks, without apostrophes.
func plain(name string) string {
	odd := false // most names stand as they are
	for i, last := 0, byte(' '); i < len(name); i++ {
		c := name[i]
		odd = odd || (c < 'a' || c > 'z') && (c != ' ' || last == ' ' || i == len(name)-1)
		last = c
	}
	if !odd {
		return name
	}
	return strings.Join(strings.Fields(spelling.Replace(strings.ToLower(name))), " ")
}

var spelling = strings.NewReplacer("-", " ", "‑", " ", "'", "", "’", "")

// Package glue tells how the classes of wood glue differ: spread, times,
// temperatures, gaps and the pressure they want. The figures are typical of a
// class; the container's label governs.
package glue

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// Default is the class reckoned with where no glue is named.
const Default = "pva"

// A Class is one row of the table. Times are those at 20 °C.
type Class struct {
	Name       string
	Also       []string
	WaterBased bool
	Spread     unit.Range[unit.Spread]
	Open       unit.Range[unit.Time] // longest wait with the spread glue uncovered; the middle halfway
	Closed     unit.Range[unit.Time] // longest wait closed up, before the pressure
	Press      unit.Range[unit.Time] // until an unstressed joint may come out, not under film
	Lowest     unit.Temperature      // lowest temperature of glue, wood and air
	Gap        unit.Length           // widest gap that it bridges
	Hazards    []Hazard

	SpreadStanding, OpenStanding, ClosedStanding, PressStanding, LowestStanding, GapStanding unit.Standing
}

// Sources of the table's figures, for the working of one: read; recalled; placed
// by us between ends that were read.
const (
	Source         = "glue class table: maker data sheets of each class, handbooks and textbooks; the label governs"
	RecalledSource = "glue class table: recalled from memory, no data sheet at hand; the label governs"
	PlacedSource   = "glue class table: our estimate between figures of data sheets; the label governs"
)

// A Hazard is what a class of glue does to who works with it.
type Hazard string

const (
	Formaldehyde       Hazard = "formaldehyde"
	Phenol             Hazard = "phenol"
	Flammable          Hazard = "flammable" // alcohol in the solvent
	Dust               Hazard = "dust"      // the powder irritates
	Isocyanate         Hazard = "isocyanate"
	IsocyanateHardener Hazard = "isocyanate-hardener" // some two-part kinds
	SkinSensitiser     Hazard = "skin-sensitiser"
	HeatsInMass        Hazard = "heats-in-mass"
	HotPot             Hazard = "hot-pot"
	Alkaline           Hazard = "alkaline"
)

// Names of the classes that a rule singles out.
const (
	pva            = "pva"
	crosslinkedPVA = "crosslinked-pva"
	aliphatic      = "aliphatic"
	resorcinol     = "resorcinol"
	melamineUrea   = "melamine-urea"
	epoxy          = "epoxy"
	hotHide        = "hot-hide"
	liquidHide     = "liquid-hide"
)

// Find returns the class of a name, an alias included; the whole name must match.
func Find(name string) (Class, bool) {
	i, ok := byName[plain(name)]
	if !ok {
		return Class{}, false
	}
	return table[i], true
}

// Names returns every name and alias that [Find] knows with the class's own
// name, spelled as in the table and again with hyphens and apostrophes left out.
func Names() map[string]string {
	names := make(map[string]string, 2*len(byName))
	for name, i := range byName {
		names[name] = table[i].Name
	}
	for _, c := range table {
		names[c.Name] = c.Name
		for _, name := range c.Also {
			names[name] = c.Name
		}
	}
	return names
}

// All returns the table.
func All() []Class { return slices.Clone(table) }

// IsHide reports whether the class is a hide glue, hot or liquid.
func (c Class) IsHide() bool { return c.Name == hotHide || c.Name == liquidHide }

// GelsCold reports whether the class is used hot and gels faster in the cold.
func (c Class) GelsCold() bool { return c.Name == hotHide }

// Chalks reports whether the class dries to a chalky layer in the cold.
func (c Class) Chalks() bool {
	return c.Name == pva || c.Name == crosslinkedPVA || c.Name == aliphatic
}

// WantsClamps reports whether the class is one whose face lines are at best
// doubtful at the pressure of a vacuum.
func (c Class) WantsClamps() bool { return c.Name == resorcinol || c.Name == melamineUrea }

// plain returns a name in lower case, with single spaces for hyphens and runs
// of blanks, without apostrophes.
func plain(name string) string {
	return strings.Join(strings.Fields(spelling.Replace(strings.ToLower(name))), " ")
}

var spelling = strings.NewReplacer("-", " ", "‑", " ", "'", "", "’", "")

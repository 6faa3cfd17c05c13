package picture

import (
	"errors"
	"fmt"

	"presshand/engine/unit"
)

// A Part is what a layer of a stack is.
type Part string

const (
	Sled    Part = "sled"
	Fence   Part = "fence" // stands beside what lies on the sled
	Core    Part = "core"
	Strips  Part = "strips"
	Film    Part = "film" // a sheet between layers
	Mat     Part = "mat"
	Caul    Part = "caul"
	SideBar Part = "bar" // stands beside, like the fence
)

// A Layer is one part of a stack with its thickness; for a fence or a bar, its
// height.
type Layer struct {
	Part      Part
	Thickness unit.Length
}

// A Bar lies against the strips' edge under the film and pushes them.
type Bar struct {
	Height unit.Length
	Width  unit.Length
	// Covered is the height above the bar's foot that counts: what lies above
	// has film on both faces. Zero: not known, nothing is marked.
	Covered unit.Range[unit.Length]
	OnBed   bool // stands on the bed beside the sled, not on the sled
	Both    bool // one on each side
}

// A Wedge is driven between the strips and the fence.
type Wedge struct {
	Gap unit.Length // its width; zero: not known
}

// Proud is how far the work stands above its fence. Nothing or less is too
// little in any case.
type Proud struct {
	By        unit.Range[unit.Length]
	TooLittle bool
}

func (p Proud) tooLittle() bool { return p.TooLittle || p.By.Mid <= 0 }

// A CrossSection is a load cut across its joints. Layers and Proud come bottom
// first; a new level begins at each sled. Zero pressures are not shown.
type CrossSection struct {
	Title   string
	Layers  []Layer
	Widths  []unit.Length // of the strips, from the bar on; none: one block
	Bar     *Bar
	Wedge   *Wedge
	Proud   []Proud     // one for each level that has a fence
	Opening unit.Length // clear height of the press; zero: not known
	Bag     bool        // in a bag, not under a frame's film
	Tent    unit.Length // what the film bridges at an inside corner

	Face     unit.Range[unit.Pressure]
	First    unit.Range[unit.Pressure] // side pressure at the joint next to the bar
	Far      unit.Range[unit.Pressure] // and at the one that gets least
	FarJoint int                       // its number; zero: the last
	Preload  unit.Range[unit.Pressure] // of the wedge, at every joint

	Units Units
}

// Draw lays the section out. It fails without a layer, and on a measure that
// is negative or not a number.
func (c CrossSection) Draw() (*Drawing, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	s := &section{CrossSection: c, d: &Drawing{Alt: c.alt()}}
	s.pile()
	s.place()
	s.bedY = s.d.heading(or(c.Title, "Cross-section"), s.note()) + s.headroom()
	s.drawBed()
	s.drawSlabs()
	s.drawSides()
	s.drawFilm()
	s.drawLid()
	s.drawProud()
	s.drawPressures()
	ladder := s.drawLadder()
	bottom := max(ladder, s.drawJoints(ladder))
	return s.d.finish(s.d.key(bottom+8, s.keyLines()) + margin), nil
}

func (c CrossSection) check() error {
	if len(c.Layers) == 0 {
		return errors.New("cross-section has no layer, want one at least")
	}
	for _, l := range c.Layers {
		if err := usable(string(l.Part), l.Thickness); err != nil {
			return err
		}
	}
	if err := usable("strip", c.Widths...); err != nil {
		return err
	}
	if c.Bar != nil {
		if err := usable("bar", c.Bar.Height, c.Bar.Width); err != nil {
			return err
		}
		if err := usable("covered height", c.Bar.Covered.Mid); err != nil {
			return err
		}
	}
	if c.Wedge != nil {
		if err := usable("wedge", c.Wedge.Gap); err != nil {
			return err
		}
	}
	for _, p := range c.Proud {
		if !(p.By.Mid > -largest && p.By.Mid < largest) {
			return fmt.Errorf("proud is %g mm, want a length", p.By.Mid.Millimetres())
		}
	}
	for _, r := range []unit.Range[unit.Pressure]{c.Face, c.First, c.Far, c.Preload} {
		if !(r.Mid >= 0 && finite(float64(r.Mid))) {
			return fmt.Errorf("pressure is %g kPa, want 0 or more", r.Mid.Kilopascals())
		}
	}
	return usable("opening", c.Opening, c.Tent)
}

// largest keeps coordinates sane; no press is longer.
const largest = unit.Length(100)

// usable refuses lengths that cannot be drawn.
func usable(what string, lengths ...unit.Length) error {
	for _, l := range lengths {
		if !(l >= 0 && l <= largest) {
			return fmt.Errorf("%s measures %g mm, want 0 to %g mm", what, l.Millimetres(), largest.Millimetres())
		}
	}
	return nil
}

func or(s, instead string) string {
	if s == "" {
		return instead
	}
	return s
}

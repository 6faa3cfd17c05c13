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

// A Verdict judges a load or a part of it.
type Verdict int

const (
	Unjudged Verdict = iota
	Good
	Care
	Stop
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
	Width  unit.Length // zero: not known, drawn as wide as usual
	// Covered is the height that pushes, from the bar's foot up: what
	// lies above has film on both faces. Zero: not known, nothing is marked.
	Covered unit.Range[unit.Length]
	Tips    unit.Length // the height from which it may tip; zero: it does not
	Wider   unit.Length // the width at which it would not
	OnBed   bool        // stands on the bed beside the sled, not on the sled
	Both    bool        // one on each side
}

// A Wedge is driven between the strips and what stands on their far side.
type Wedge struct {
	Gap  unit.Length // its width; zero: not known
	Said string      // its taper and its force, in words
}

// A Spring is a row of strips wider than the opening between the fences.
type Spring struct {
	Over unit.Length
	Rise unit.Range[unit.Length]   // of the middle, before the vacuum
	Snap unit.Range[unit.Pressure] // that lays it down
}

// Proud is how far the work stands above its fence. Nothing or less is too
// little in any case.
type Proud struct {
	By      unit.Range[unit.Length]
	Verdict Verdict
}

func (p Proud) verdict() Verdict {
	if p.By.Mid <= 0 {
		return Stop
	}
	return p.Verdict
}

// A CrossSection is a load cut across its joints. Layers and Proud come bottom
// first; a new level begins at each sled.
type CrossSection struct {
	Title   string
	Caption string // what of several things is drawn
	Verdict Verdict

	Layers   []Layer
	Thinnest unit.Length   // of the strips, where they differ
	Widths   []unit.Length // of the strips, from the bar on; none: one block
	Bar      *Bar
	Wedge    *Wedge
	Spring   *Spring
	TwoFaces bool // strips under the core too, which the side figures leave out

	Proud     []Proud     // one for each level that has a fence
	Height    unit.Length // of the stack, as worked out; zero: only as drawn
	Opening   unit.Length // clear height of the press; zero: not known
	Clearance Verdict     // of what is left under the lid
	Bag       bool        // in a bag, not under a frame's film
	Tent      unit.Length // what the film bridges at an inside corner

	Side    bool // the joints' pressures are known, were they nothing
	Face    unit.Range[unit.Pressure]
	First   unit.Range[unit.Pressure] // side pressure at the joint next to the bar
	Far     unit.Range[unit.Pressure] // and at the one that gets least
	Need    unit.Pressure             // what the glue needs at a joint; zero: not known
	Preload unit.Range[unit.Pressure] // of wedge or spring, at every joint

	SledAssumed, WidthAssumed, CoverSaid bool
	Ripped                               bool // one strip is narrower, nobody said which

	Units Units
}

// Draw lays the section out. It fails without a layer, and on a measure that
// is negative or not a number.
func (c CrossSection) Draw() (*Drawing, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	return (&section{CrossSection: c, d: &Drawing{}}).draw(), nil
}

func (s *section) draw() *Drawing {
	s.pile()
	s.place()
	s.top = s.heading()
	s.bedY = s.top + s.headroom()
	s.drawBed()
	s.drawSlabs()
	s.drawSides()
	s.drawFilm()
	s.drawLid()
	s.drawProud()
	s.drawRise()
	s.drawLadder()
	s.drawPressures()
	bottom := s.drawJoints()
	s.d.Alt = s.alt()
	return s.d.finish(s.d.key(bottom+8, s.keyLines()) + margin)
}

// heading sets the title with the verdict in words and as a sign.
func (s *section) heading() float64 {
	title := or(s.Title, "Cross-section")
	v := s.verdict()
	if w := v.word(); w != "" {
		title += ": " + w
	}
	note := s.note()
	if s.Caption != "" {
		note = s.Caption + " " + note
	}
	y := s.d.heading(fit(title, titleSize, true, Width-2*margin-30), note)
	s.d.verdict(point{Width - margin - 12, 22}, 20, v)
	return y
}

// verdict is that of the answer, and worse where the drawing does not fit under
// the lid, which the answer may not have looked at.
func (s *section) verdict() Verdict {
	v := s.clearance()
	switch {
	case v == Good: // which says nothing of the rest
		return s.Verdict
	case v == Stop && s.SledAssumed && s.Height <= 0:
		v = Care
	}
	return max(s.Verdict, v)
}

func (s *section) note() string {
	_, cut := s.mainCut()
	switch far := s.Opening > 0 && s.lidFar(); {
	case cut && far:
		return "Heights to scale, but for the lid's; widths cut short at the wavy gaps."
	case cut:
		return "Heights to scale; widths cut short at the wavy gaps."
	case far:
		return "To scale, but for the lid's height."
	}
	return "To scale."
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
	if err := usable("strip", append(c.Widths[:len(c.Widths):len(c.Widths)], c.Thinnest)...); err != nil {
		return err
	}
	if err := c.checkSides(); err != nil {
		return err
	}
	for _, p := range c.Proud {
		if !(p.By.Mid > -largest && p.By.Mid < largest) {
			return fmt.Errorf("proud is %g mm, want a length", p.By.Mid.Millimetres())
		}
	}
	for _, r := range []unit.Range[unit.Pressure]{c.Face, c.First, c.Far, c.Preload, unit.Exactly(c.Need)} {
		if !(r.Mid >= 0 && finite(float64(r.Mid))) {
			return fmt.Errorf("pressure is %g kPa, want 0 or more", r.Mid.Kilopascals())
		}
	}
	return usable("opening", c.Opening, c.Tent, c.Height)
}

// checkSides looks at what stands beside the strips.
func (c CrossSection) checkSides() error {
	if b := c.Bar; b != nil {
		if err := usable("bar", b.Height, b.Width); err != nil {
			return err
		}
		if err := usable("covered height", b.Covered.Mid, b.Tips); err != nil {
			return err
		}
	}
	if c.Wedge != nil {
		if err := usable("wedge", c.Wedge.Gap); err != nil {
			return err
		}
	}
	if c.Spring != nil {
		if err := usable("overfill", c.Spring.Over, c.Spring.Rise.Mid); err != nil {
			return err
		}
	}
	return nil
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

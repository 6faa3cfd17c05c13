package picture

import (
	"slices"

	"presshand/engine/unit"
)

// A section is a cross-section being laid out: first in lengths, then in
// points on the page.
type section struct {
	CrossSection
	d *Drawing

	slabs  []slab
	levels []level
	height unit.Length // of the stack

	scale float64 // points to the metre
	bedY  float64
	x     columns
}

// A slab is a layer where it lies: from and to above the bed.
type slab struct {
	part     Part
	from, to unit.Length
	level    int
}

// A level is a sled with what lies on it.
type level struct {
	base    unit.Length // where strips, fence and bar stand
	strips  unit.Length // the thickness of the work
	under   unit.Length // the work's underside
	fence   unit.Length // its height above base
	guessed bool        // nobody told the fence's height
	bar     bool
	ceiling unit.Length // the underside of the next level; zero: the film
}

// pile stacks the layers. A fence that stands higher than the work carries
// what comes next.
func (s *section) pile() {
	s.Proud = slices.Clone(s.Proud)
	for i, p := range s.Proud {
		s.Proud[i].TooLittle = p.tooLittle()
	}
	y := unit.Length(0)
	s.levels = []level{{}}
	here := func() *level { return &s.levels[len(s.levels)-1] }
	for i, l := range s.Layers {
		if l.Part == Sled || l.Part == Caul {
			y = max(y, here().base+here().fence)
		}
		if l.Part == Sled && i > 0 && here().strips > 0 {
			here().ceiling = y
			s.levels = append(s.levels, level{base: y})
		}
		switch l.Part {
		case Fence:
			here().fence = l.Thickness
			continue
		case SideBar:
			if s.Bar == nil {
				s.Bar = &Bar{Height: l.Thickness, Width: unit.Millimetres(19.05)}
			}
			continue
		case Strips:
			here().strips, here().under = l.Thickness, y
		}
		s.slabs = append(s.slabs, slab{l.Part, y, y + l.Thickness, len(s.levels) - 1})
		y += l.Thickness
		if l.Part == Sled {
			here().base = y
		}
	}
	s.height = max(y, here().base+here().fence)
	s.settleSides()
}

// settleSides decides where a bar finds room, and gives strips that are pushed
// a fence to lie against.
func (s *section) settleSides() {
	for i := range s.levels {
		l := &s.levels[i]
		if s.Bar != nil && l.strips > 0 {
			l.bar = l.ceiling == 0 || s.footOf(*l)+s.Bar.Height <= l.ceiling
		}
		if (l.bar && !s.Bar.Both || s.Wedge != nil) && l.strips > 0 && l.fence == 0 {
			l.fence, l.guessed = l.under-l.base+l.strips*85/100, true
		}
	}
}

// footOf returns the height above the bed at which a level's bar stands.
func (s *section) footOf(l level) unit.Length {
	if s.Bar.OnBed && l.base == s.levels[0].base {
		return 0
	}
	return l.base
}

// cover returns a block that keeps the film off the bar where the stack that
// was described does not reach so high: from and to above the bed.
func (s *section) cover(l level) (from, to unit.Length, ok bool) {
	if !l.bar || l.ceiling > 0 {
		return 0, 0, false
	}
	to = s.footOf(l) + s.Bar.Covered.Mid
	return s.height, to, to > s.height+unit.Millimetres(0.5)
}

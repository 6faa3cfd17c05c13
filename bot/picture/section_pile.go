package picture

import (
	"math"

	"presshand/engine/unit"
)

// A section is a cross-section being laid out: first in lengths, then in
// points on the page.
type section struct {
	CrossSection
	d *Drawing

	slabs  []slab
	levels []level
	height unit.Length // of what lies on each other, without the bar
	work   int         // the level that bar, wedge and side figures are about
	foot   unit.Length // of the bar above the bed

	scale       float64 // points to the metre
	top         float64 // where the heading ends
	bedY        float64
	x           columns
	ladderEnd   float64
	nearAndFar  [2][]int  // joints, see [section.namedJoints]
	leaderLines []float64 // heights on the page at which the right side is led to its labels
}

// A slab is a layer where it lies: from and to above the bed.
type slab struct {
	part     Part
	from, to unit.Length
	level    int
	squashed unit.Length // where a mat ends under vacuum; zero: not known
}

// A level is a sled with what lies on it.
type level struct {
	base    unit.Length // where strips, fence and bar stand
	strips  unit.Length // the thickness of the work
	under   unit.Length // the work's underside
	mat     int         // its slab, -1 for none
	filled  unit.Length // core, strips and mat
	fence   unit.Length // its height above base
	guessed bool        // nobody told the fence's height
	work    bool        // it holds strips or a core, which may stand proud
	proud   *Proud
}

// pile stacks the layers. A fence that stands higher than the work carries
// what comes next.
func (s *section) pile() {
	y := unit.Length(0)
	s.levels = []level{{mat: -1}}
	here := func() *level { return &s.levels[len(s.levels)-1] }
	rigid, stands := unit.Length(0), unit.Length(-1) // where a stated bar stands
	for i, l := range s.Layers {
		if l.Part == Sled || l.Part == Caul {
			y = max(y, here().base+here().fence)
		}
		if l.Part == Sled && i > 0 && (here().strips > 0 || here().fence > 0) {
			s.levels = append(s.levels, level{base: y, mat: -1})
		}
		switch l.Part {
		case Fence:
			here().fence = max(here().fence, l.Thickness)
			continue
		case SideBar:
			if s.Bar == nil && stands < 0 {
				stands = rigid
				s.Bar = &Bar{Height: l.Thickness}
			}
			continue
		case Strips:
			if here().strips == 0 || s.TwoFaces {
				here().strips, here().under = l.Thickness, y
			}
		case Mat:
			here().mat = len(s.slabs)
		}
		if l.Part == Strips || l.Part == Core || l.Part == Mat {
			here().filled += l.Thickness
			here().work = here().work || l.Part != Mat
		}
		s.slabs = append(s.slabs, slab{part: l.Part, from: y, to: y + l.Thickness, level: len(s.levels) - 1})
		y += l.Thickness
		if l.Part == Sled {
			here().base = y
		}
		if l.Part == Sled || l.Part == Caul {
			rigid = y
		}
	}
	s.height = max(y, here().base+here().fence)
	s.settle(stands)
}

// usualBar is how wide a bar is where nobody says.
const usualBar = unit.Length(0.01905)

// settle decides where the bar stands and gives strips that are pushed a fence
// to lie against.
func (s *section) settle(stands unit.Length) {
	for i, l := range s.levels {
		if l.strips > 0 {
			s.work = i
			break
		}
	}
	l := &s.levels[s.work]
	if s.Bar != nil {
		b := *s.Bar
		s.Bar = &b
		if b.Width == 0 {
			b.Width, s.WidthAssumed = usualBar, true
		}
		switch {
		case b.OnBed:
			s.foot = 0
		case stands >= 0 && !s.Side:
			s.foot = stands
		default:
			s.foot = l.base
		}
	}
	if s.pushed() && !s.bothBars() && l.strips > 0 && l.fence == 0 {
		l.fence, l.guessed = l.under-l.base+l.strips*85/100, true
	}
	s.handOut()
	s.nearAndFar[0], s.nearAndFar[1] = s.namedJoints()
}

// handOut gives each stated fence how far the work stands above it, which tells
// what the vacuum leaves of a mat.
func (s *section) handOut() {
	next := 0
	for i := range s.levels {
		l := &s.levels[i]
		if l.fence == 0 || l.guessed || !l.work || next >= len(s.Proud) {
			continue
		}
		l.proud = &s.Proud[next]
		next++
		if l.mat >= 0 {
			left := l.fence + l.proud.By.Mid - l.filled // less than nothing: what the vacuum squashes away
			if m := &s.slabs[l.mat]; left < -1e-6 && m.to+left > m.from {
				m.squashed = m.to + left
			}
		}
	}
}

// several reports whether there is work on more than one level.
func (s *section) several() bool {
	n := 0
	for _, l := range s.levels {
		if l.strips > 0 {
			n++
		}
	}
	return n > 1
}

func (s *section) bothBars() bool { return s.Bar != nil && s.Bar.Both }

// pushed reports whether something pushes the strips to one side.
func (s *section) pushed() bool {
	return s.Side || s.Bar != nil && !s.tooLow() || s.Wedge != nil || s.Spring != nil
}

// leftFence reports whether the strips lie between two fences: a wedge and a
// spring need both, film on the strips' own edge leaves that edge bare.
func (s *section) leftFence() bool {
	return s.Bar == nil && s.fenced() && (s.Wedge != nil || s.Spring != nil || !s.Side)
}

func (s *section) fenced() bool {
	for _, l := range s.levels {
		if l.fence > 0 {
			return true
		}
	}
	return false
}

// hair is less than any tape shows.
const hair = unit.Length(1e-7)

func (s *section) barTop() unit.Length { return s.foot + s.Bar.Height }

// tooLow reports whether the bar ends under the strips, or stands over them.
func (s *section) tooLow() bool {
	l := s.levels[s.work]
	return s.Bar != nil && l.strips > 0 && (s.barTop() <= l.under+hair || s.foot >= l.under+l.strips-hair)
}

// A stretch is a height on an edge, above the bed.
type stretch struct{ from, to unit.Length }

func (a stretch) length() unit.Length { return max(0, whole(a.to-a.from)) }

// pushing returns on what the film's push counts: of the bar's outer face, and
// of the strips' own edge where no bar stands before it.
func (s *section) pushing() (onBar, onEdge stretch) {
	l := s.levels[s.work]
	edge := stretch{l.under, l.under + l.strips}
	switch {
	case l.strips == 0, s.Bar == nil && (!s.Side || s.leftFence()):
		return stretch{}, stretch{}
	case s.Bar == nil, s.tooLow() && s.Bar.Covered.Mid > 0:
		return stretch{}, edge
	case s.Bar.Covered.Mid <= 0 || s.tooLow():
		return stretch{}, stretch{}
	}
	end := s.pushEnd()
	onBar = stretch{s.foot, min(end, s.barTop())}
	if end > s.barTop()+hair {
		onEdge = stretch{max(s.barTop(), l.under), max(s.barTop(), l.under) + end - s.barTop()}
	}
	return onBar, onEdge
}

// pushEnd is how far up the film pushes beside the bar: no higher than there is
// a bar or a strip to press on.
func (s *section) pushEnd() unit.Length {
	l := s.levels[s.work]
	return min(s.foot+s.Bar.Covered.Mid, max(s.barTop(), l.under+l.strips))
}

// idle is the height of the bar that does nothing: all that stands above what
// pushes.
func (s *section) idle() unit.Length {
	switch {
	case s.Bar == nil:
		return 0
	case s.tooLow():
		return s.Bar.Height
	case s.Bar.Covered.Mid <= 0, s.partWay():
		return 0
	}
	return max(0, whole(s.Bar.Height-s.Bar.Covered.Mid))
}

// partWay reports whether the bar ends part-way up the strips, where no film gets
// behind it.
func (s *section) partWay() bool {
	l := s.levels[s.work]
	return !s.tooLow() && s.barTop() <= l.under+l.strips+hair
}

// cover returns the block that keeps the film off the bar where the stack that
// was described does not reach so high: from and to above the bed.
func (s *section) cover() (stretch, bool) {
	if s.Bar == nil || s.tooLow() || s.Bar.Covered.Mid <= 0 {
		return stretch{}, false
	}
	to := min(s.foot+s.Bar.Covered.Mid, s.barTop())
	return stretch{s.height, to}, to > s.height+unit.Millimetres(0.5)
}

// stackHeight is that of the answer, unless a bar stands higher, which was not
// named among the layers; else that of all that is drawn.
func (s *section) stackHeight() unit.Length {
	if drawn := s.drawnHeight(); s.Height <= 0 || s.Bar != nil && s.barTop() > s.Height+hair {
		return drawn
	}
	return s.Height
}

func (s *section) drawnHeight() unit.Length {
	if s.Bar != nil {
		return max(s.height, s.barTop())
	}
	return s.height
}

// namedJoints returns the joints that the figures are about: the ones nearest a
// bar, and the ones farthest from any. Far is empty where there is no other.
func (s *section) namedJoints() (near, far []int) {
	n := len(s.Widths) - 1
	if n < 1 {
		return nil, nil
	}
	total, x := s.total(), unit.Length(0)
	least, most := unit.Length(math.Inf(1)), unit.Length(0)
	dist := make([]unit.Length, n)
	for i := range n {
		x += s.Widths[i]
		dist[i] = x
		if s.bothBars() {
			dist[i] = min(x, total-x)
		}
		least, most = min(least, dist[i]), max(most, dist[i])
	}
	if most-least < hair && n > 1 || n == 1 {
		for i := range n {
			near = append(near, i+1)
		}
		return near, nil
	}
	for i, d := range dist {
		switch {
		case d-least < hair:
			near = append(near, i+1)
		case most-d < hair:
			far = append(far, i+1)
		}
	}
	return near, far
}

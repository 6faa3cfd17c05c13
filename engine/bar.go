package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// frictions under strips and bar, by surface.
var frictions = map[string]unit.Range[float64]{
	"film":     {Low: 0.15, Mid: 0.20, High: 0.30}, // our estimate: polyethylene on planed wood
	"waxed":    {Low: 0.10, Mid: 0.15, High: 0.25}, // our estimate
	"bare":     {Low: 0.30, Mid: 0.40, High: 0.65}, // Wood Handbook FPL-GTR-190 p. 4-17; static end McKenzie & Karpovich 1968
	"wet-glue": {Low: 0.05, Mid: 0.15, High: 0.40}, // our estimate: it grabs within minutes
}

// Corners that the film bridges, in m (our estimate).
const (
	tentBag, tentBagMost     = 0.003, 0.006
	tentFrame, tentFrameMost = 0.006, 0.020
)

// A bar is what pushes on the edge of a panel: a side bar, or without one the
// film on the strips' own edge. Lengths in m.
type bar struct {
	none     bool
	height   float64 // H; t without a bar
	width    float64 // b, as far as it pushes; 0 without a bar
	wide     float64 // as it lies there, the usual without a bar
	sides    int     // 1 or 2
	under    float64 // u, the strips' underside above the bar's foot
	middle   float64 // z, the strips' mid-height above the bar's foot, that of both faces
	top      float64 // the strips' top above the bar's foot
	lowest   float64 // underside of the lowest layer beside the bar
	twin     bool    // faces lie on both sides of a core
	shared   bool    // and the bar touches both
	cover    unit.Range[float64]
	covering bool // what stands behind the bar is known
	caul     bool // something rigid lies on the strips
	tips     bool // tipping limits what the bar can give

	covered  unit.Range[float64] // h
	pressed  unit.Range[float64] // f, the edge above the bar with it
	corner   unit.Range[float64] // r
	friction unit.Range[float64] // μ
	drag     unit.Range[float64] // faces of the strips that rub
	lean     unit.Range[float64] // which way a bar between two faces leans, see [bar.share]
}

// bar reads what pushes on strips of thickness t; false where the bar's height
// is still missing.
func (b *builder) bar(t float64) (bar, bool, error) {
	s := bar{none: true, height: t, wide: defaultBarWidth, sides: 1, covering: true, drag: unit.Exactly(1.0), lean: unit.Exactly(0.5)}
	s.cover, s.covered, s.pressed = unit.Exactly(t), unit.Exactly(t), unit.Exactly(t)
	H, ok := b.barHeight()
	switch {
	case ok:
		s.none, s.height = false, H
		s.width = b.numberOr(unit.BarWidth, defaultBarWidth)
		s.wide = s.width
		if n, ok := b.number(unit.BarCount); ok && n >= 2 {
			s.sides = 2
		}
	case b.said(unit.BarWidth, unit.BarCount, unit.Cover):
		b.need(unit.BarHeight)
		return s, false, nil
	default:
		b.wordOr(unit.BarDenied, "none")
	}
	b.behind(&s, t)
	s.corner, s.friction = b.tent(), b.friction()
	if !s.none {
		if err := b.coverBar(&s, t); err != nil {
			return s, false, err
		}
	}
	if s.caul || s.shared { // a core lies on the lower face as a caul does
		s.drag = b.spread(1, 1, 2)
	}
	return s, true, nil
}

// barHeight returns the height of the side bar, unless there is none.
func (b *builder) barHeight() (float64, bool) {
	if b.q.Said.Word(unit.BarDenied) == "none" {
		return 0, false
	}
	if h, ok := b.number(unit.BarHeight); ok {
		return h, true
	}
	for _, l := range b.layers() {
		if l.Part == partBar && l.Thickness > 0 {
			return l.Thickness / 1000, true
		}
	}
	return 0, false
}

// behind works out what stands behind the bar: the strips, what lies under them
// beside the bar, and what lies on them. Of two faces the upper ones are meant, with
// the lower ones and the core under them.
func (b *builder) behind(s *bar, t float64) {
	a := b.surroundings()
	s.caul, s.twin = a.over > 0, a.twin
	if foot := b.word(unit.BarFoot); !s.none && foot != "" {
		a.told = true
		if foot == "bed" {
			s.lowest = b.sledUnder()
		}
	}
	s.under = s.lowest + a.under
	if s.twin {
		s.under = s.lowest + t + a.core
	}
	s.middle, s.top = s.under+t/2, s.under+t
	if s.twin {
		s.middle = (s.lowest + s.top) / 2
	}
	if s.none { // it is where one would stand
		return
	}
	a.told = a.told || b.said(unit.SledThickness)
	c := s.top + a.over
	if cover, ok := b.number(unit.Cover); ok {
		c, a.told = cover, true
	}
	s.covering = a.told
	s.cover = unit.Exactly(c)
	if !a.told {
		s.cover = b.spread(s.top, s.top, math.Max(s.top, s.height))
	}
}

// sledUnder returns the thickness of the sled that a bar on the bed stands
// beside.
func (b *builder) sledUnder() float64 {
	for _, l := range b.layers() {
		if l.Part == partStrips {
			break
		}
		if l.Part == partSled && l.Thickness > 0 {
			return l.Thickness / 1000
		}
	}
	return b.numberOr(unit.SledThickness, defaultSled)
}

// coverBar works out how much of the bar's height pushes.
func (b *builder) coverBar(s *bar, t float64) error {
	if s.height <= s.under { // the bar does not reach the strips
		s.width = 0
		return nil
	}
	if s.shared = s.twin; s.shared {
		s.lean = b.spread(0, 0.5, 1)
	}
	covered := press.CoveredHeight
	if s.shared {
		covered = press.PressedHeight
	}
	var err, err2 error
	s.covered, err = s.heights(covered, t)
	s.pressed, err2 = s.heights(press.PressedHeight, t)
	if err = firstError(err, err2); err != nil || b.exact {
		return err
	}
	tip, err := press.TippingLimit(unit.Length(s.height), unit.Length(s.width), unit.Length(s.middle))
	s.tip(float64(tip), t)
	return err
}

// heights sweeps a height that pushes over what may stand behind the bar.
func (s bar) heights(of func(H, c, t, u unit.Length) (unit.Length, error), t float64) (r unit.Range[float64], err error) {
	r = unit.Sweep(func(c unit.Corner) float64 {
		h, e := of(unit.Length(s.height), unit.Length(c[0]), unit.Length(t), unit.Length(s.under))
		err = firstError(err, e)
		return float64(h)
	}, s.cover)
	return r, err
}

// tip limits what pushes at worst to the height at which the bar tips. Beside one
// that is lower than the strips the film presses their edge whatever the bar does.
// One between two faces then leans on one of them, and pushes as much as before.
func (s *bar) tip(at, t float64) {
	if s.shared {
		s.tips = at+s.edge() < s.covered.Low
		return
	}
	if s.edge() > 0 {
		at = math.Max(at+s.edge(), t)
	}
	s.tips = at < s.covered.Low
	s.covered.Low = math.Min(s.covered.Low, at)
	s.pressed.Low = math.Min(s.pressed.Low, at)
}

// edge is how much of the strips' edge stands above the bar.
func (s bar) edge() float64 { return math.Max(0, s.top-s.height) }

// partWay reports whether the bar ends part-way up strips that lie higher than its
// foot.
func (s bar) partWay() bool {
	return !s.none && s.under > 0 && s.height > s.under && s.edge() > 0
}

// touching is the part of its push that the bar passes on to strips that it hardly
// overlaps; 1 where it does by enough.
func (s bar) touching() float64 {
	if !s.partWay() {
		return 1
	}
	return math.Min(1, (s.height-s.under)/math.Min(s.top-s.under, press.SureContact.Metres()))
}

// holding is how much of a bar's width holds its push back.
func (s bar) holding(width, covered, pressed, μ float64) float64 {
	if s.shared || !s.partWay() {
		return width
	}
	w, err := press.HoldingWidth(unit.Length(width), unit.Length(covered), unit.Length(pressed),
		unit.Length(s.top-s.under), unit.Length(s.height-s.under), μ)
	if err != nil {
		return nan
	}
	return float64(w)
}

// tent returns the corner that the film bridges.
func (b *builder) tent() unit.Range[float64] {
	if T, ok := b.number(unit.Tent); ok {
		return b.spread(0, T/2, T)
	}
	if b.word(unit.PressKind) == "frame" {
		return b.spread(0, tentFrame, tentFrameMost)
	}
	return b.spread(0, tentBag, tentBagMost)
}

// friction returns μ under strips and bar: as measured, or that of the surface.
// Strips that are glued onto a core lie on wet glue.
func (b *builder) friction() unit.Range[float64] {
	if μ, ok := b.number(unit.FrictionStated); ok {
		return unit.Exactly(μ)
	}
	usual := "film"
	if b.known(unit.CoreKind, unit.CoreThickness) {
		usual = "wet-glue"
	}
	r, ok := frictions[b.wordOr(unit.SurfaceKind, usual)]
	if !ok {
		r = frictions[usual]
		b.assume(unit.SurfaceKind, unit.Word(usual))
	}
	return b.collapse(r)
}

// push puts one choice of the uncertain inputs together, in the order of [bar.sweep].
// A share of the push is that of a bar as much smaller.
func (s bar) push(c unit.Corner) press.Push {
	push := press.Push{
		Covered: unit.Length(c[0]), Width: unit.Length(s.holding(s.width, c[0], c[5], c[2])), Corner: unit.Length(c[1]),
		Friction: c[2], Drag: c[3],
	}
	part := unit.Length(s.share(push, c[4]))
	push.Covered, push.Width, push.Corner = part*push.Covered, part*push.Width, part*push.Corner
	if k := unit.Length(s.touching()); s.shared && k < 1 { // else film on that face's own edge
		push.Covered = k*push.Covered + (1-k)*unit.Length(s.top-s.under)
		push.Width *= k
		push.Corner = k*push.Corner + (1-k)*unit.Length(c[1])
	}
	return push
}

// sweep sweeps a figure over what is uncertain about the bar, and more.
func (s bar) sweep(f func(unit.Corner) float64, more unit.Range[float64]) unit.Range[float64] {
	return unit.Sweep(f, s.covered, s.corner, s.friction, s.drag, s.lean, s.pressed, more)
}

// joint returns what the bar surely gives the joint at x.
func (s bar) joint(p unit.Range[float64], x, t float64) (r unit.Range[float64], err error) {
	r = s.sweep(func(c unit.Corner) float64 {
		v, e := press.JointPressure(unit.Pressure(c[6]), s.push(c), unit.Length(x), unit.Length(t))
		if e != nil {
			err = e
		}
		return float64(v)
	}, p)
	return r, err
}

// reach returns how far the bar reaches; without friction that has no end, if it
// pushes at all.
func (s bar) reach() unit.Range[float64] {
	return s.sweep(func(c unit.Corner) float64 {
		push := s.push(c)
		if c[2] < leastFriction && push.Covered > push.Corner {
			return math.Inf(1)
		}
		if c[2] < leastFriction {
			return 0
		}
		x, err := press.BarReach(push)
		if err != nil {
			return math.NaN()
		}
		return float64(x)
	}, unit.Range[float64]{})
}

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
	width    float64 // b; 0 without a bar
	sides    int     // 1 or 2
	under    float64 // u, the strips' underside above the bar's foot
	middle   float64 // z, the strips' mid-height above the bar's foot
	cover    unit.Range[float64]
	covering bool // what stands behind the bar is known
	caul     bool // something rigid lies on the strips
	tips     bool // tipping limits what the bar can give

	covered  unit.Range[float64] // h
	corner   unit.Range[float64] // r
	friction unit.Range[float64] // μ
	drag     unit.Range[float64] // faces of the strips that rub
}

// bar reads what pushes on strips of thickness t; false where the bar's height
// is still missing.
func (b *builder) bar(t float64) (bar, bool, error) {
	s := bar{none: true, height: t, sides: 1, middle: t / 2, covering: true, drag: unit.Exactly(1.0)}
	s.cover, s.covered = unit.Exactly(t), unit.Exactly(t)
	H, ok := b.barHeight()
	switch {
	case ok:
		s.none, s.height = false, H
		s.width = b.numberOr(unit.BarWidth, defaultBarWidth)
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
	if s.caul {
		s.drag = b.spread(1, 1, 2)
	}
	if s.none {
		return s, true, nil
	}
	return s, true, b.coverBar(&s, t)
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
// beside the bar, and what lies on them.
func (b *builder) behind(s *bar, t float64) {
	under, over, told := b.aroundStrips()
	if core, ok := b.number(unit.CoreThickness); ok {
		under, told = core, true
	}
	if caul, ok := b.number(unit.CaulThickness); ok {
		over, told = caul, true
	}
	s.caul = over > 0
	if s.none {
		return
	}
	switch b.word(unit.BarFoot) {
	case "bed":
		under, told = under+b.sledUnder(), true
	case "sled":
		told = true
	}
	told = told || b.said(unit.SledThickness)
	s.under, s.middle = under, under+t/2
	c := under + t + over
	if cover, ok := b.number(unit.Cover); ok {
		c, told = cover, true
	}
	s.covering = told
	s.cover = unit.Exactly(c)
	if !told {
		s.cover = b.spread(t, t, math.Max(t, s.height))
	}
}

// aroundStrips returns what a described stack has under the lowest strips, on
// the same sled, and rigid on top of them.
func (b *builder) aroundStrips() (under, over float64, told bool) {
	seen := false
	for _, l := range b.layers() {
		mm := l.Thickness / 1000
		switch {
		case l.Part == partStrips && seen:
			return under, over, told
		case l.Part == partStrips:
			seen, told = true, true
		case l.Part == partSled && !seen:
			under = 0
		case l.Part == partCore && !seen:
			under += mm
		case l.Part == partSled && seen && mm == 0:
			over += b.numberOr(unit.SledThickness, defaultSled)
		case (l.Part == partSled || l.Part == partCaul) && seen:
			over += mm
		}
	}
	return under, over, told && seen
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
		s.covered, s.width = unit.Exactly(t), 0
		return nil
	}
	var err error
	s.covered = unit.Sweep(func(c unit.Corner) float64 {
		h, e := press.CoveredHeight(unit.Length(s.height), unit.Length(c[0]), unit.Length(t), unit.Length(s.under))
		if e != nil {
			err = e
		}
		return float64(h)
	}, s.cover)
	if err != nil || b.exact {
		return err
	}
	tip, err := press.TippingLimit(unit.Length(s.height), unit.Length(s.width), unit.Length(s.middle))
	s.tips = float64(tip) < s.covered.Low
	s.covered.Low = math.Min(s.covered.Low, float64(tip))
	return err
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

// push puts one choice of the uncertain inputs together; the order is that of
// [bar.ranges].
func (s bar) push(c unit.Corner) press.Push {
	return press.Push{
		Covered: unit.Length(c[0]), Width: unit.Length(s.width), Corner: unit.Length(c[1]),
		Friction: c[2], Drag: c[3],
	}
}

// joint returns what the bar surely gives the joint at x.
func (s bar) joint(p unit.Range[float64], x, t float64) (r unit.Range[float64], err error) {
	r = unit.Sweep(func(c unit.Corner) float64 {
		v, e := press.JointPressure(unit.Pressure(c[4]), s.push(c), unit.Length(x), unit.Length(t))
		if e != nil {
			err = e
		}
		return float64(v)
	}, s.covered, s.corner, s.friction, s.drag, p)
	return r, err
}

// reach returns how far the bar reaches; without friction that has no end.
func (s bar) reach() unit.Range[float64] {
	return unit.Sweep(func(c unit.Corner) float64 {
		if c[2] < leastFriction {
			return math.Inf(1)
		}
		x, err := press.BarReach(s.push(c))
		if err != nil {
			return math.NaN()
		}
		return float64(x)
	}, s.covered, s.corner, s.friction, s.drag)
}

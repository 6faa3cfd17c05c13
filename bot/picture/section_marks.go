package picture

import (
	"image/color"
	"math"

	"presshand/engine/unit"
)

// dimensionBar sets the bar's height and what of it pushes on its left.
func (s *section) dimensionBar(r box) {
	edge := s.barText()
	barX, pushX := edge+17, edge+6
	s.dimension(barX, r.y0, r.y1, r.x0-3, inkColour)
	type mark struct {
		wish          float64
		name, measure string
		colour        color.NRGBA
		shows         string
		fact          fact
	}
	marks := []mark{{(r.y0 + r.y1) / 2, "bar", s.Units.length(s.Bar.Height), inkColour, "bar height", measure("mm", s.Bar.Height)}}
	if covered := s.Bar.Covered.Mid; covered > 0 && !s.tooLow() {
		y0, y1, x := s.y(s.pushEnd()), s.y(s.foot), r.x0-3
		if s.pushEnd() > s.barTop()+hair {
			x = s.x.strips[0] - 3
		}
		s.dimension(pushX, y0, y1, x, greenInk)
		marks[0].wish = (r.y0 + min(max(y0, r.y0), marks[0].wish)) / 2
		marks = append(marks, mark{(y0 + y1) / 2, "pushes", s.Units.length(covered), greenInk, "bar covered", measure("mm", covered)})
		if marks[1].wish < marks[0].wish {
			marks[0], marks[1] = marks[1], marks[0]
		}
	}
	wish, size := make([]float64, len(marks)), make([]float64, len(marks))
	for i, m := range marks {
		wish[i], size[i] = m.wish, 34
	}
	for i, y := range spread(wish, size, s.top) {
		m := marks[i]
		s.d.text(m.name, point{edge, y - 4}, right, labelSize).colour = m.colour
		t := s.d.text(fit(m.measure, labelSize, true, edge-8), point{edge, y + 11}, right, labelSize)
		t.bold, t.colour, t.shows, t.facts = true, m.colour, m.shows, []fact{m.fact}
	}
}

// dimension draws a measure line at x from y0 to y1 with extension lines to
// edge.
func (s *section) dimension(x, y0, y1, edge float64, c color.NRGBA) {
	tick := min(3.2, max(1.2, (y1-y0)/4))
	s.d.line(c, 1.3, point{x, y0}, point{x, y1})
	for _, y := range []float64{y0, y1} {
		s.d.line(c, 0.7, point{x - 4, y}, point{edge, y})
		s.d.line(c, 1.8, point{x - tick, y + tick}, point{x + tick, y - tick})
	}
}

// drawLid draws the press's lid, what is left under it, and where the bar hits
// it.
func (s *section) drawLid() {
	if s.Opening <= 0 {
		return
	}
	y := s.lidY()
	x0, x1 := s.bedEnds()
	lid := s.d.line(softInk, 1.6, point{x0, y}, point{x1, y})
	lid.dash, lid.shows = []float64{8, 4}, "lid"
	top := s.y(s.drawnHeight())
	x := s.clearanceX()
	c := verdictInk(s.clearance())
	if s.Bar != nil && s.barTop() > s.height+hair {
		s.d.line(c, 0.7, point{s.x.bar[1], top}, point{x, top}).dash = []float64{3, 3}
		if s.barTop() > s.Opening+hair {
			s.d.verdict(point{(s.x.bar[0] + s.x.bar[1]) / 2, y}, 18, Stop)
		}
	}
	a, b := min(y, top), max(y, top)
	if b-a < 1 {
		return
	}
	l := s.d.line(c, 1.6, point{x, a}, point{x, b})
	l.shows, l.facts = "clearance", []fact{measure("mm", s.Opening-s.stackHeight())}
	for _, y := range []float64{a, b} {
		s.d.line(c, 1.6, point{x - 4, y}, point{x + 4, y})
	}
	if s.lidFar() { // not to scale: the measure is broken
		mid := (a + b) / 2
		s.d.polygon(paper, point{x - 5, mid + 1}, point{x + 5, mid - 5}, point{x + 5, mid - 1}, point{x - 5, mid + 5})
		s.d.line(c, 1.2, point{x - 5, mid + 1}, point{x + 5, mid - 5})
		s.d.line(c, 1.2, point{x - 5, mid + 5}, point{x + 5, mid - 1})
	}
}

func (s *section) clearanceX() float64 { return s.x.fence[1] + 7 }

// leastClearance is what should be left under the lid where the answer did not
// judge it (common practice, no source).
const leastClearance = unit.Length(0.006)

// clearance judges what is left under the lid: as the answer does, and as too
// little where the drawing does not fit.
func (s *section) clearance() Verdict {
	switch left := s.Opening - s.stackHeight(); {
	case s.Opening <= 0:
		return Unjudged
	case left < -hair:
		return Stop
	case left < leastClearance-hair:
		return max(s.Clearance, Care)
	}
	return s.Clearance
}

func (s *section) drawProud() {
	for _, l := range s.levels {
		if l.proud == nil || s.bothBars() {
			continue
		}
		c := verdictInk(l.proud.verdict())
		top, fence := s.proudEnds(l)
		x := s.x.fence[1] + 6
		s.d.line(c, 3, point{x, top}, point{x, fence}).shows = "proud mark"
		for _, y := range []float64{top, fence} {
			s.d.line(c, 1.2, point{s.x.fence[1] - 8, y}, point{x + 5, y})
		}
	}
}

func (s *section) proudEnds(l level) (top, fence float64) {
	fence = s.y(l.base + l.fence)
	return fence - l.proud.By.Mid.Metres()*s.scale, fence
}

// drawRise draws how the middle of sprung strips stands up before the vacuum.
func (s *section) drawRise() {
	l := s.levels[s.work]
	if s.Spring == nil || s.Spring.Rise.Mid <= 0 || l.strips == 0 {
		return
	}
	x0, x1 := s.x.strips[0], s.x.strips[1]
	var ps []point
	for i := range 25 {
		t := float64(i) / 24
		up := s.Spring.Rise.Mid * unit.Length(4*t*(1-t))
		ps = append(ps, point{x0 + (x1-x0)*t, s.y(l.under + l.strips + up)})
	}
	r := s.d.line(purpleInk, 1.6, ps...)
	r.dash, r.shows, r.facts = []float64{5, 3}, "rise", []fact{measure("mm", s.Spring.Rise.Mid)}
}

// verdictInk is the colour of a mark with a verdict; a sign goes with it.
func verdictInk(v Verdict) color.NRGBA {
	switch v {
	case Care, Stop:
		return redInk
	case Good:
		return greenInk
	}
	return inkColour
}

// near is how close two lengths on the page may come before they read as one.
func near(a, b, by float64) bool { return math.Abs(a-b) < by }

package picture

import (
	"image/color"
	"math"

	"presshand/engine/unit"
)

var partTint = map[Part]color.NRGBA{
	Sled: sledTint, Core: coreTint, Mat: matTint, Caul: caulTint, Strips: woodTint,
}

func (s *section) drawBed() {
	x0, x1 := s.bedEnds()
	b := box{x0, s.bedY, x1, s.bedY + 6}
	s.d.hatch(b, 5, 1, border)
	s.d.line(softInk, 1.6, point{x0, s.bedY}, point{x1, s.bedY}).shows = "bed"
}

func (s *section) bedEnds() (x0, x1 float64) {
	return max(margin, min(s.x.strips[0], s.firstX())-24), s.x.fence[1] + 14
}

// firstX is the left edge of the leftmost part.
func (s *section) firstX() float64 {
	if s.x.bar[1] > 0 {
		if s.Bar != nil && !s.Bar.OnBed {
			return s.x.bar[0] - 10
		}
		return s.x.bar[0]
	}
	return s.x.strips[0]
}

func (s *section) drawSlabs() {
	for _, b := range s.slabs {
		x0, x1 := s.reach(b)
		r := box{x0, s.y(b.to), x1, s.y(b.from)}
		switch b.part {
		case Strips:
			s.drawStrips(r, b)
			continue
		case Film:
			continue // with the film over all, on top of the parts
		}
		p := s.d.rect(r, partTint[b.part], softInk)
		p.shows, p.facts = string(b.part), []fact{measure("mm", b.to-b.from)}
		if b.part == Mat {
			s.dots(r)
		}
		if cut, ok := s.mainCut(); ok {
			s.cutAt(cut, r)
		}
	}
	for _, l := range s.levels {
		if from, to, ok := s.cover(l); ok {
			r := box{s.x.strips[0] + 5, s.y(to), s.x.strips[1] - 5, s.y(from)}
			p := s.d.rect(r, white, softInk)
			p.dash, p.shows = []float64{4, 3}, "cover"
		}
	}
}

// mainCut is where the long layers are cut short: in the middle piece.
func (s *section) mainCut() (float64, bool) {
	for i := range s.x.pieces {
		mid := (len(s.x.pieces)/2 + i) % len(s.x.pieces)
		if p := s.x.pieces[mid]; p.cut {
			return (p.x0 + p.x1) / 2, true
		}
	}
	return 0, false
}

func (s *section) drawStrips(r box, b slab) {
	for i, p := range s.x.pieces {
		tint := woodTint
		if i%2 == 1 {
			tint = woodShade
		}
		q := box{p.x0, r.y0, p.x1, r.y1}
		sh := s.d.rect(q, tint, inkColour)
		sh.shows = string(Strips)
		sh.facts = []fact{measure("mm", b.to-b.from)}
		if p.number > 0 {
			sh.facts = append(sh.facts, fact{"strip", trimmed(float64(p.number), 0)}, measure("width-mm", p.width))
		}
		if p.cut {
			sh.facts = append(sh.facts, fact{"cut", "true"})
		}
		if p.number == 0 && len(s.Widths) > 0 {
			sh.fill = paper
			for dx := -5.0; dx <= 5; dx += 5 {
				s.d.disc(point{(p.x0+p.x1)/2 + dx, (r.y0 + r.y1) / 2}, 1.4, inkColour, none)
			}
			continue
		}
		s.grain(q)
		if p.cut {
			s.cutAt((p.x0+p.x1)/2, q)
		}
	}
}

// grain hints at the year rings of a strip's end.
func (s *section) grain(r box) {
	if r.height() < 9 || r.width() < 14 {
		return
	}
	for _, part := range []float64{0.34, 0.67} {
		y := r.y0 + r.height()*part
		rise := r.height() * 0.1
		line := func(x0, x1 float64) {
			var ps []point
			for i := range 7 {
				t := float64(i) / 6
				ps = append(ps, point{x0 + (x1-x0)*t, y - rise*math.Sin(math.Pi*t)})
			}
			s.d.line(rgb(0xD2AC6B), 0.8, ps...)
		}
		line(r.x0+3, r.x1-3)
	}
}

func (s *section) dots(r box) {
	if r.height() < 4 {
		return
	}
	for row, y := 0, r.y0+3; y < r.y1-2; row, y = row+1, y+5 {
		for x := r.x0 + 3 + float64(row%2)*4; x < r.x1-2; x += 8 {
			s.d.disc(point{x, y}, 0.9, greenInk, none)
		}
	}
}

// cutAt marks that a length is cut short at x: a wavy gap through r.
func (s *section) cutAt(x float64, r box) {
	const gap = 2.2
	edge := func(dx float64, up bool) []point {
		n := max(4, int(r.height()/3))
		ps := make([]point, 0, n+1)
		for i := range n + 1 {
			t := float64(i) / float64(n)
			if up {
				t = 1 - t
			}
			y := r.y0 - 0.8 + t*(r.height()+1.6)
			ps = append(ps, point{x + dx + 1.6*math.Sin(y/2.6), y})
		}
		return ps
	}
	s.d.polygon(paper, append(edge(-gap, false), edge(gap, true)...)...).shows = "cut"
	s.d.line(softInk, 0.9, edge(-gap, false)...)
	s.d.line(softInk, 0.9, edge(gap, false)...)
}

func (s *section) drawSides() {
	for i, l := range s.levels {
		if s.Bar != nil && s.Bar.Both && l.bar {
			s.drawBar(l, s.x.fence, false)
		}
		if l.fence > 0 {
			s.drawFence(l, s.x.fence)
			if s.Bar == nil && s.x.bar[1] > 0 {
				s.drawFence(l, s.x.bar)
			}
		}
		if s.Wedge != nil && l.strips > 0 {
			s.drawWedge(l)
		}
		if l.bar {
			s.drawBar(l, s.x.bar, i == s.lowestBar())
		}
	}
}

func (s *section) lowestBar() int {
	for i, l := range s.levels {
		if l.bar {
			return i
		}
	}
	return -1
}

func (s *section) drawFence(l level, x [2]float64) {
	if s.Bar != nil && s.Bar.Both {
		return
	}
	r := box{x[0], s.y(l.base + l.fence), x[1], s.y(l.base)}
	p := s.d.rect(r, fenceTint, softInk)
	p.shows = string(Fence)
	if !l.guessed {
		p.facts = []fact{measure("mm", l.fence)}
	}
	for x := r.x0 + 5; x < r.x1-1; x += 5 {
		s.d.line(blueInk, 0.7, point{x, r.y0 + 1}, point{x, r.y1 - 1})
	}
}

func (s *section) drawWedge(l level) {
	r := box{s.x.wedge[0], s.y(l.under + l.strips), s.x.wedge[1], s.y(l.under)}
	p := s.d.rect(r, purpleTint, inkColour)
	p.shows, p.facts = "wedge", []fact{measure("width-mm", s.Wedge.Gap)}
	s.d.line(inkColour, 1, point{r.x0 + 2, r.y1}, point{r.x1 - 2, r.y0})
}

// drawBar draws a bar, its idle part hatched; dimensioned says whether to
// set its measures beside it.
func (s *section) drawBar(l level, x [2]float64, dimensioned bool) {
	foot := s.footOf(l)
	r := box{x[0], s.y(foot + s.Bar.Height), x[1], s.y(foot)}
	p := s.d.rect(r, barTint, inkColour)
	p.shows, p.facts = "bar", []fact{measure("mm", s.Bar.Height), measure("width-mm", s.Bar.Width)}
	if idle := s.idle(); idle > 0 {
		h := box{x[0], r.y0, x[1], s.y(foot + s.Bar.Covered.Mid)}
		q := s.d.rect(h, white, inkColour)
		q.shows, q.facts = "bar idle", []fact{measure("mm", idle)}
		s.d.hatch(h.inset(0.5), 6, 1.1, softInk)
	}
	if s.Bar.Width.Metres()*s.scale > x[1]-x[0]+0.5 {
		s.cutAt((x[0]+x[1])/2, r)
	}
	if dimensioned {
		s.dimensionBar(foot, r)
	}
}

// idle is the height of the bar that does nothing.
func (s *section) idle() unit.Length {
	if s.Bar == nil || s.Bar.Covered.Mid <= 0 || s.Bar.Covered.Mid >= s.Bar.Height {
		return 0
	}
	return whole(s.Bar.Height - s.Bar.Covered.Mid)
}

package picture

import (
	"image/color"
	"math"
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
	x0 = s.x.strips[0]
	if s.x.bar[1] > 0 {
		x0 = s.x.bar[0]
	}
	for _, b := range s.slabs {
		from, _ := s.reach(b)
		x0 = min(x0, from)
	}
	x1 = s.x.fence[1] + 14
	if s.bothBars() {
		x1 += 6
	}
	return max(margin, x0-24), x1
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
			s.drawSquash(b, r)
		}
		if cut, ok := s.mainCut(); ok {
			s.cutAt(cut, r)
		}
	}
	if c, ok := s.cover(); ok {
		p := s.d.rect(box{s.x.strips[0] + behind, s.y(c.to), s.x.strips[1] - behind, s.y(c.from)}, white, softInk)
		p.dash, p.shows, p.facts = []float64{4, 3}, "cover", []fact{measure("mm", c.length())}
	}
}

// drawSquash shows how far the vacuum presses a mat together.
func (s *section) drawSquash(b slab, r box) {
	if b.squashed == 0 {
		return
	}
	y := s.y(b.squashed)
	l := s.d.line(greenInk, 1.6, point{r.x0, y}, point{r.x1, y})
	l.dash, l.shows, l.facts = []float64{5, 3}, "mat squashed", []fact{measure("mm", b.squashed-b.from)}
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
			for dx := -4.0; dx <= 4; dx += 4 {
				s.d.disc(point{(p.x0+p.x1)/2 + dx, (r.y0 + r.y1) / 2}, 1.3, inkColour, none)
			}
			continue
		}
		s.grain(q)
		if p.cut {
			s.cutAt((p.x0+p.x1)/2, q)
		}
	}
	if t := s.Thinnest; t > 0 && t < b.to-b.from-hair {
		y := s.y(b.from + t)
		l := s.d.line(inkColour, 1.2, point{r.x0, y}, point{r.x1, y})
		l.dash, l.shows, l.facts = []float64{4, 3}, "thinnest", []fact{measure("mm", t)}
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
		var ps []point
		for i := range 7 {
			t := float64(i) / 6
			ps = append(ps, point{r.x0 + 3 + (r.width()-6)*t, y - rise*math.Sin(math.Pi*t)})
		}
		s.d.line(grainTint, 0.8, ps...)
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
	for _, l := range s.levels {
		if l.fence > 0 && !s.bothBars() {
			s.drawFence(l, s.x.fence)
			if s.leftFence() {
				s.drawFence(l, s.x.bar)
			}
		}
	}
	if l := s.levels[s.work]; s.Wedge != nil && l.strips > 0 {
		p := s.d.rect(s.wedgeBox(), wedgeTint, inkColour)
		p.shows, p.facts = "wedge", []fact{measure("width-mm", s.Wedge.Gap)}
	}
	if s.Bar != nil {
		if s.Bar.Both {
			s.drawBar(s.x.fence)
		}
		s.dimensionBar(s.drawBar(s.x.bar))
	}
}

func (s *section) wedgeBox() box {
	l := s.levels[s.work]
	return box{s.x.wedge[0], s.y(l.under + l.strips), s.x.wedge[1], s.y(l.under)}
}

// drawFence draws a fence; one of which nobody said how high it is has a dashed
// outline.
func (s *section) drawFence(l level, x [2]float64) {
	r := box{x[0], s.y(l.base + l.fence), x[1], s.y(l.base)}
	p := s.d.rect(r, fenceTint, softInk)
	p.shows = string(Fence)
	if l.guessed {
		p.shows, p.fill, p.dash = "fence assumed", white, []float64{4, 3}
	} else {
		p.facts = []fact{measure("mm", l.fence)}
	}
	for x := r.x0 + 5; x < r.x1-1; x += 5 {
		s.d.line(blueInk, 0.7, point{x, r.y0 + 1}, point{x, r.y1 - 1})
	}
}

// drawBar draws a bar, its idle part hatched, and returns its outline.
func (s *section) drawBar(x [2]float64) box {
	r := box{x[0], s.y(s.barTop()), x[1], s.y(s.foot)}
	p := s.d.rect(r, barTint, inkColour)
	p.shows, p.facts = "bar", []fact{measure("mm", s.Bar.Height), measure("width-mm", s.Bar.Width)}
	if idle := s.idle(); idle > 0 {
		h := box{x[0], r.y0, x[1], s.y(s.barTop() - idle)}
		q := s.d.rect(h, white, inkColour)
		q.shows, q.facts = "bar idle", []fact{measure("mm", idle)}
		s.d.hatch(h.inset(0.5), 6, 1.1, softInk)
	}
	if s.Bar.Width.Metres()*s.scale > x[1]-x[0]+0.5 {
		s.cutAt((x[0]+x[1])/2, r)
	}
	return r
}

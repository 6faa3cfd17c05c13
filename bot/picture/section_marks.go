package picture

import (
	"fmt"
	"image/color"
	"strconv"

	"presshand/engine/unit"
)

// drawPressures draws arrows for what presses the face and the side.
func (s *section) drawPressures() {
	if s.Face.Mid > 0 {
		s.faceArrows()
	}
	if s.First.Mid > 0 || s.First.High > 0 {
		for _, l := range s.levels {
			if l.strips > 0 && (s.Bar == nil || l.bar) {
				s.sideArrows(l)
			}
		}
	}
	if s.Wedge != nil && s.Preload.Mid > 0 {
		for _, l := range s.levels {
			if l.strips > 0 {
				y := s.y(l.under + l.strips/4)
				x := s.x.strips[1]
				s.d.arrow(point{x + 2, y}, point{x - 13, y}, 3, 9, vermillion).shows = "preload arrow"
			}
		}
	}
}

// faceArrows stand on the work, their figure over them, clear of the lid.
func (s *section) faceArrows() {
	x0, x1 := s.x.strips[0]+18, s.x.strips[1]-14
	if s.Bar != nil && s.Bar.Both {
		x1 -= 4
	}
	n := min(max(int((x1-x0)/20), 2), 7)
	sky, top := s.skyline(), s.y(s.workTop())
	for i := range n {
		x := x0 + (x1-x0)*float64(i)/float64(n-1)
		tip := s.topOver(sky, x) - 5
		s.d.arrow(point{x, top - 32}, point{x, tip}, 2.4, 7.5, inkColour).shows = "face arrow"
	}
	y := top - arrowRoom
	if lid := s.y(s.Opening); s.openingShown() && y > lid-4 && y < lid+15 {
		y = lid - 8
	}
	l := s.d.text(s.Units.pressure(s.Face.Mid), point{(x0 + x1) / 2, y}, centre, textSize)
	l.bold, l.shows, l.facts = true, "face pressure", []fact{kilopascals("kpa", s.Face.Mid)}
}

func (s *section) topOver(sky []step, x float64) float64 {
	for _, st := range sky {
		if st.x0 <= x && x <= st.x1 {
			return st.y
		}
	}
	return s.bedY
}

// sideArrows push the covered part of the bar, or the strips' own edge.
func (s *section) sideArrows(l level) {
	from, to, x := l.under, l.under+l.strips, s.x.strips[0]
	if s.Bar != nil {
		x = s.x.bar[0]
		from = s.footOf(l)
		to = from + s.Bar.Height - s.idle()
	} else if s.x.bar[1] > 0 {
		return // a fence takes the push
	}
	room := (to - from).Metres() * s.scale
	lift := 0.0
	if room > 30 { // clear of the corner that the film bridges
		lift, room = 8, room-8
	}
	n := min(max(int(room/13), 1), 5)
	for i := range n {
		y := s.y(from) - lift - room*(float64(i)+0.5)/float64(n)
		s.d.arrow(point{x - 21, y}, point{x - 4, y}, 3.2, 9, vermillion).shows = "side arrow"
		if s.Bar != nil && s.Bar.Both {
			e := s.x.fence[1]
			s.d.arrow(point{e + 19, y}, point{e + 4, y}, 3.2, 9, vermillion).shows = "side arrow"
		}
	}
}

// dimensionBar sets the bar's height and what of it counts on its left.
func (s *section) dimensionBar(foot unit.Length, r box) {
	edge := s.barText()
	barX, coveredX := edge+22, edge+8
	s.dimension(barX, r.y0, r.y1, r.x0-3, inkColour)
	covered := s.Bar.Covered.Mid
	top := s.y(foot + covered)
	wish := []float64{(r.y0 + r.y1) / 2}
	rows := [][]string{{"bar", s.Units.length(s.Bar.Height)}}
	if covered > 0 {
		s.dimension(coveredX, top, r.y1, r.x0-3, greenInk)
		wish = []float64{(r.y0 + min(top, (r.y0+r.y1)/2)) / 2, (top + r.y1) / 2}
		rows = append(rows, []string{"covered", s.coveredText()})
	}
	size := []float64{31, 31}[:len(rows)]
	for i, y := range spread(wish, size, s.d.labels[len(s.d.labels)-1].at.y+8) {
		x, colour := edge, inkColour
		shows, facts := "bar height", []fact{measure("mm", s.Bar.Height)}
		if i == 1 {
			colour, shows, facts = greenInk, "bar covered", []fact{measure("mm", covered)}
		}
		for j, text := range rows[i] {
			t := s.d.text(fit(text, smallSize, j == 1, edge-8), point{x, y + float64(j)*14 - 3}, right, smallSize)
			t.bold, t.colour = j == 1, colour
			if j == 1 {
				t.shows, t.facts = shows, facts
			}
		}
		if i == 0 && len(rows) > 1 {
			s.d.line(faint, 1, point{edge + 3, y}, point{barX - 2, wish[0]})
		}
	}
}

func (s *section) coveredText() string { return s.Units.length(s.Bar.Covered.Mid) }

// dimension draws a measure line at x from y0 to y1 with extension lines to
// edge.
func (s *section) dimension(x, y0, y1, edge float64, c color.NRGBA) {
	s.d.line(c, 1.3, point{x, y0}, point{x, y1})
	for _, y := range []float64{y0, y1} {
		s.d.line(c, 0.7, point{x - 4, y}, point{edge, y})
		s.d.line(c, 1.8, point{x - 3.2, y + 3.2}, point{x + 3.2, y - 3.2})
	}
}

// drawJoints numbers the joints under the bed and sets the strips' measure
// there, below the ladder where they would meet. It returns where that ends.
func (s *section) drawJoints(ladder float64) float64 {
	y := s.bedY + 12
	if len(s.Widths) == 0 {
		return y
	}
	y = s.bedY + 20
	for i := 1; i < len(s.x.pieces); i++ {
		p, before := s.x.pieces[i], s.x.pieces[i-1]
		number := before.number
		if number == 0 {
			number = p.number - 1
		}
		if min(p.x1-p.x0, before.x1-before.x0) < 18 {
			continue
		}
		s.dropLine(p.x0, y-8)
		s.d.disc(point{p.x0, y}, 8, white, inkColour)
		l := s.d.text(strconv.Itoa(number), point{p.x0, y + 3.8}, centre, 10.5)
		l.bold, l.shows = true, "joint"
	}
	y += 22
	x0, x1 := s.x.strips[0], s.x.strips[1]
	s.d.line(softInk, 1.2, point{x0, y}, point{x1, y})
	for _, x := range []float64{x0, x1} {
		s.d.line(softInk, 0.8, point{x, y - 5}, point{x, y + 5})
		s.d.line(softInk, 1.8, point{x - 3, y + 3}, point{x + 3, y - 3})
	}
	y += 17
	l := s.d.text(fit(s.widthText(), textSize, false, Width-2*margin), point{(x0 + x1) / 2, y}, centre, textSize)
	l.shows, l.facts = "strips width", []fact{measure("mm", s.total())}
	if b := l.box(); b.x1 > Width-margin {
		l.at.x -= b.x1 - (Width - margin)
	} else if b.x0 < margin {
		l.at.x += margin - b.x0
	}
	if l.box().x1 > s.x.ladder-6 && l.box().y0 < ladder {
		l.at.y = ladder + 12
	}
	return l.at.y + 4
}

// dropLine leads from a joint down to its number.
func (s *section) dropLine(x, to float64) {
	for _, b := range s.slabs {
		if b.part == Strips {
			l := s.d.line(softInk, 0.8, point{x, s.y(b.from)}, point{x, to})
			l.dash = []float64{2, 2}
			return
		}
	}
}

func (s *section) widthText() string {
	n, same := len(s.Widths), true
	for _, w := range s.Widths {
		same = same && w == s.Widths[0]
	}
	switch {
	case n == 1:
		return "1 strip, " + s.Units.length(s.Widths[0]) + " wide"
	case same:
		return fmt.Sprintf("%d strips of %s = %s", n, s.Units.length(s.Widths[0]), s.Units.length(s.total()))
	}
	return fmt.Sprintf("%d strips, together %s", n, s.Units.length(s.total()))
}

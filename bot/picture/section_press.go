package picture

import (
	"fmt"
	"math"
	"strconv"

	"presshand/engine/unit"
)

// drawPressures draws arrows for what the film presses, on the face and on the
// side, and for what wedge and fences give.
func (s *section) drawPressures() {
	if s.Face.Mid > 0 {
		s.faceArrows()
		onBar, onEdge := s.pushing()
		if s.Bar != nil {
			if over := s.foot + s.Tent/2 - onBar.from; over > 0 && over < onBar.length()*3/4 { // at the middle of what it may bridge
				onBar.from += over
			}
			s.filmArrows(onBar, s.x.bar[0], s.x.fence[1])
		}
		s.filmArrows(onEdge, s.x.strips[0], s.x.strips[1])
	}
	if s.Preload.Mid > 0 && (s.Wedge != nil || s.Spring != nil) {
		s.fenceArrows()
	}
}

// faceArrows stand on the work, their figure over them, as far as the lid
// leaves room.
func (s *section) faceArrows() {
	top := s.y(s.workTop())
	length, label := 27.0, top-arrowRoom
	if s.Opening > 0 && s.lidY() > label-18 {
		lid := s.lidY()
		if length = min(length, top-lid-9); length < 9 {
			return
		}
		label = lid - 8
	}
	x0, x1 := s.x.strips[0]+14, s.x.strips[1]-14
	if s.Bar != nil && s.barTop() > s.workTop()+hair { // beside the corner that the film bridges
		aside := max(14, s.tent()+6)
		x0 = s.x.strips[0] + aside
		if s.bothBars() {
			x1 = s.x.strips[1] - aside
		}
	}
	n := min(max(int((x1-x0)/20), 2), 7)
	sky := s.skyline()
	for i := range n {
		x := x0 + (x1-x0)*float64(i)/float64(n-1)
		tip := s.topOver(sky, x) - 5
		s.d.arrow(point{x, top - 5 - length}, point{x, tip}, 2.4, 7.5, inkColour).shows = "face arrow"
	}
	l := s.d.text(s.Units.pressure(s.Face.Mid), point{(x0 + x1) / 2, label}, centre, textSize)
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

// filmArrows push a stretch of an edge at x, and of the one at far with bars on
// both sides. They are the film's, as those on the face.
func (s *section) filmArrows(on stretch, x, far float64) {
	room := on.length().Metres() * s.scale
	if room < 1 {
		return
	}
	n := min(max(int(room/14), 1), 5)
	head := max(min(8, room), 4)
	above := math.Inf(1) // the arrow before on the right, where the labels' lines take room
	for i := range n {
		y := s.y(on.from) - room*(float64(i)+0.5)/float64(n)
		s.d.arrow(point{x - 19, y}, point{x - 4, y}, head*0.32, head, inkColour).shows = "side arrow"
		if s.bothBars() {
			if y = s.clearOfLeaders(y, s.y(on.to), s.y(on.from)); near(y, above, 9) {
				continue
			}
			above = y
			s.d.arrow(point{far + 21, y}, point{far + 4, y}, head*0.32, head, inkColour).shows = "side arrow"
		}
	}
}

// clearOfLeaders moves an arrow's height away from the lines that lead to the
// labels, within the stretch that it stands for.
func (s *section) clearOfLeaders(y, low, high float64) float64 {
	best, far := y, -1.0
	for dy := range 7 {
		for _, at := range []float64{y - float64(dy), y + float64(dy)} {
			if at < low+4 && at < y || at > high-7 && at > y { // the film rounds the corner at the foot
				continue
			}
			gap := 7.0
			for _, l := range s.leaderLines {
				gap = min(gap, math.Abs(at-l))
			}
			if gap > far {
				best, far = at, gap
			}
		}
	}
	return best
}

// fenceArrows show the push of the wedge, or of the spring, and the fences that
// push back.
func (s *section) fenceArrows() {
	l := s.levels[s.work]
	top, bottom := s.y(l.under+l.strips), s.y(l.under)
	if !s.bothBars() && l.fence > 0 {
		top = min(max(top, s.y(l.base+l.fence)), bottom)
	}
	y := s.clearOfLeaders((top+2*bottom)/3, top, bottom)
	head := max(min(8, l.strips.Metres()*s.scale), 5)
	push := func(from, to float64) {
		s.d.arrow(point{from, y}, point{to, y}, head*0.36, head, purpleInk).shows = "preload arrow"
	}
	push(s.x.fence[1]+17, s.x.fence[1]+2)
	if s.Wedge != nil {
		push(s.x.wedge[1]-2, s.x.wedge[0]+1)
	}
	if s.leftFence() {
		push(s.x.bar[0]-17, s.x.bar[0]-2)
	}
}

// drawJoints numbers the joints under the bed, sets their figures and the
// strips' measure there. It returns where that ends.
func (s *section) drawJoints() float64 {
	y := s.bedY + 12
	if len(s.Widths) == 0 {
		return max(y, s.ladderEnd)
	}
	y = s.bedY + 21
	s.numberJoints(y)
	y = s.jointFigures(y + 25)
	y += 3
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
	if l.box().x1 > s.x.ladder-6 && l.box().y0 < s.ladderEnd {
		l.at.y = s.ladderEnd + 12
	}
	return max(l.at.y+4, s.ladderEnd)
}

// A ring round a joint's number: its radius, and what it leaves beside a long one.
const (
	ring    = 8.5
	ringGap = 3
)

// numberJoints sets the numbers of the joints, those with a figure in a ring
// and first, the others where they find room.
func (s *section) numberJoints(y float64) {
	seams := s.seams()
	var taken []box
	for _, named := range []bool{true, false} {
		for _, j := range seams {
			if j.named != named {
				continue
			}
			text := strconv.Itoa(j.number)
			half := textWidth(text, labelSize, true)/2 + 1
			if named {
				half = max(half+ringGap, ring)
			}
			b := box{j.x - half, y - 9, j.x + half, y + 9}
			if clash(b, taken) {
				continue
			}
			taken = append(taken, b)
			s.dropLine(j.x, y-9)
			if named {
				r := s.d.rect(box{j.x - half, y - ring, j.x + half, y + ring}, white, redInk)
				r.points, r.width, r.shows = box{j.x - half, y - ring, j.x + half, y + ring}.rounded(ring), 1.2, "joint ring"
			}
			l := s.d.text(text, point{j.x, y + 4.6}, centre, labelSize)
			l.bold, l.shows = true, "joint"
		}
	}
}

func clash(b box, others []box) bool {
	for _, o := range others {
		if b.overlaps(o) {
			return true
		}
	}
	return false
}

// jointFigures sets what the named joints get under their numbers, and returns
// where that ends.
func (s *section) jointFigures(y float64) float64 {
	if !s.Side {
		return y - 8
	}
	end := float64(Width - margin)
	if y-10 < s.ladderEnd {
		end = s.x.ladder - 8
	}
	var taken []box
	for i, joints := range s.nearAndFar {
		if len(joints) == 0 {
			continue
		}
		p, facts := s.First, "first joint figure"
		if i == 1 {
			p, facts = s.Far, "far joint figure"
		}
		text := jointNumbers(joints, ", ") + ": " + s.Units.pressure(p.Mid)
		w := 26 + textWidth(text, labelSize, true)
		x := min(max(s.seamAt(joints[0])-w/2, margin), end-w)
		b := box{x, y - 10, x + w + 6, y + 7}
		if n := len(taken); n > 0 && b.x0 < taken[n-1].x1 && taken[n-1].x1+w <= end {
			b.x0, b.x1 = taken[n-1].x1, taken[n-1].x1+w+6
		}
		for clash(b, taken) {
			b.y0, b.y1 = b.y0+18, b.y1+18
		}
		taken = append(taken, b)
		s.d.squeeze(box{b.x0, b.y0 + 1, b.x0 + 22, b.y0 + 15}, p.Mid <= 0)
		l := s.d.text(text, point{b.x0 + 26, b.y0 + 14}, left, labelSize)
		l.bold, l.colour, l.shows, l.facts = true, redInk, facts, []fact{kilopascals("kpa", p.Mid)}
	}
	for _, b := range taken {
		y = max(y, b.y1+8)
	}
	return y
}

func (s *section) seamAt(number int) float64 {
	for _, j := range s.seams() {
		if j.number == number {
			return j.x
		}
	}
	return (s.x.strips[0] + s.x.strips[1]) / 2
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

// whole widths are listed up to so many.
const mostListed = 12

func (s *CrossSection) widthText() string {
	n, same := len(s.Widths), true
	sum := unit.Length(0)
	for _, w := range s.Widths {
		same = same && math.Abs(float64(w-s.Widths[0])) < float64(hair)
		sum += w
	}
	switch {
	case n == 1:
		return "1 strip, " + s.Units.length(s.Widths[0]) + " wide"
	case same:
		return strconv.Itoa(n) + " strips of " + s.Units.length(s.Widths[0]) + " = " + s.Units.length(sum)
	}
	if s.Ripped {
		return fmt.Sprintf("%d strips of %s and one narrower = %s", n-1, s.Units.length(s.Widths[0]), s.Units.length(sum))
	}
	return strconv.Itoa(n) + " strips, together " + s.Units.length(sum)
}

// widthList are the widths one by one, "" where they are all the same.
func (s *CrossSection) widthList() string {
	text, same := "", true
	for i, w := range s.Widths {
		same = same && math.Abs(float64(w-s.Widths[0])) < float64(hair)
		switch {
		case i > mostListed:
		case i == mostListed:
			text += ", …"
		case i > 0:
			text += ", " + s.Units.length(w)
		default:
			text = s.Units.length(w)
		}
	}
	if same || s.Ripped {
		return ""
	}
	return text
}

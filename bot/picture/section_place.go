package picture

import (
	"math"

	"presshand/engine/unit"
)

// columns are the places of the section's parts across the page, in points.
type columns struct {
	bar    [2]float64 // left bar, or left fence
	strips [2]float64
	wedge  [2]float64
	fence  [2]float64 // right fence, or right bar
	pieces []piece
	ladder float64 // where the heights' labels begin
}

const (
	labelSize   = 13
	plainGutter = 36
	widestBar   = 34 // in points; wider ones are cut short
	widestOfTwo = 28
	fencePoints = 18
	ladderGap   = 19 // between the section and its labels
	rungHeight  = 18
	lidRoom     = 64 // over the work, for a lid that is out of scale
	arrowRoom   = 40 // for the arrows on the face and their figure
)

// place chooses the scale and gives every part its column.
func (s *section) place() {
	s.scale, s.x = 1, columns{pieces: []piece{{}}} // counting the labels wants no places yet
	labels := rungHeight * float64(len(s.rungs())+1)
	room := min(max(180+55*float64(len(s.levels)-1), labels), 560)
	s.scale = min(room/max(s.tallest().Metres(), 1e-6), 4500)
	if s.Bar != nil && s.Bar.Width > 0 {
		s.scale = min(s.scale, max(2800, s.barRoom()/s.Bar.Width.Metres()))
	}
	s.x = s.across()
}

// tallest is the height above the bed of the highest thing drawn to scale.
func (s *section) tallest() unit.Length {
	tall := s.drawnHeight()
	if c, ok := s.cover(); ok {
		tall = max(tall, c.to)
	}
	if s.Spring != nil {
		l := s.levels[s.work]
		tall = max(tall, l.under+l.strips+s.Spring.Rise.Mid)
	}
	if s.Opening > 0 && !s.lidFar() {
		tall = max(tall, s.Opening)
	}
	return tall
}

// lidFar reports whether the press's lid is too far up to be drawn to scale.
func (s *section) lidFar() bool { return s.Opening > s.drawnHeight()*3/2 }

// lidY is where the lid is drawn on the page.
func (s *section) lidY() float64 {
	if s.lidFar() {
		return s.y(s.workTop()) - lidRoom
	}
	return s.y(s.Opening)
}

// headroom is the space between the heading and the bed.
func (s *section) headroom() float64 {
	h := s.tallest().Metres()*s.scale + 10
	work := s.workTop().Metres() * s.scale
	if s.Face.Mid > 0 {
		h = max(h, work+arrowRoom+16)
	}
	switch {
	case s.Opening > 0 && s.lidFar():
		h = max(h, work+lidRoom+14)
	case s.Opening > 0:
		h = max(h, s.Opening.Metres()*s.scale+30)
	}
	return h
}

// workTop is the height of the highest thing, a bar beside the work aside.
func (s *section) workTop() unit.Length {
	top := s.height
	if c, ok := s.cover(); ok {
		top = max(top, c.to)
	}
	if s.Spring != nil {
		l := s.levels[s.work]
		top = max(top, l.under+l.strips+s.Spring.Rise.Mid)
	}
	return top
}

func (s *section) barRoom() float64 {
	if s.Bar.Both {
		return widestOfTwo
	}
	return widestBar
}

func (s *section) across() columns {
	x := columns{ladder: Width - margin - s.ladderWidth()}
	at := float64(plainGutter)
	end := x.ladder - ladderGap
	bar := 0.0
	if s.Bar != nil {
		at = s.barText() + 40
		bar = min(max(s.Bar.Width.Metres()*s.scale, 8), s.barRoom())
		x.bar = [2]float64{at, at + bar}
	} else if s.leftFence() {
		x.bar = [2]float64{at, at + fencePoints}
	}
	x.strips[0] = max(at, x.bar[1])
	far := 0.0
	switch {
	case s.bothBars():
		far, end = bar, end-10
	case s.fenced():
		far = fencePoints
	}
	wedge := 0.0
	if s.Wedge != nil {
		wedge = min(max(s.Wedge.Gap.Metres()*s.scale, 20), 26)
		end -= 8 // for the fence that pushes back
	} else if s.Spring != nil {
		end -= 8
	}
	x.pieces = s.pieces(x.strips[0], end-far-wedge)
	x.strips[1] = x.pieces[len(x.pieces)-1].x1
	x.wedge = [2]float64{x.strips[1], x.strips[1] + wedge}
	x.fence = [2]float64{x.wedge[1], x.wedge[1] + far}
	return x
}

// ladderWidth is what the longest of the labels on the right takes.
func (s *section) ladderWidth() float64 {
	w := 40.0
	for _, r := range s.rungs() {
		w = max(w, r.width())
	}
	return min(w, 118)
}

// barText is where the labels of the bar's measures end.
func (s *section) barText() float64 {
	w := textWidth("pushes", labelSize, false)
	for _, l := range []unit.Length{s.Bar.Height, s.Bar.Covered.Mid} {
		w = max(w, textWidth(s.Units.length(l), labelSize, true))
	}
	return 9 + min(w, 62)
}

func (s *section) total() unit.Length {
	sum := unit.Length(0)
	for _, w := range s.Widths {
		sum += w
	}
	return sum
}

// y returns the place on the page of a height above the bed.
func (s *section) y(h unit.Length) float64 { return s.bedY - h.Metres()*s.scale }

// behind is how far the edges of sled, core and caul stay behind the strips'.
const behind = 5

// reach returns how far a slab reaches across the page. Sleds run under bar and
// fence; what lies beside the bar stays a little behind the strips' edge.
func (s *section) reach(b slab) (x0, x1 float64) {
	x0, x1 = s.x.strips[0], s.x.strips[1]
	l := s.levels[b.level]
	switch b.part {
	case Sled:
		x1 = s.x.fence[1]
		if s.x.bar[1] > 0 && s.Bar == nil {
			x0 = s.x.bar[0]
		}
	case Caul:
		if l.fence > 0 && !l.guessed && !s.bothBars() {
			x1 = s.x.fence[1]
			if s.leftFence() {
				x0 = s.x.bar[0]
			}
		}
	case Strips, Film:
		return x0, x1
	}
	if s.Bar == nil {
		return x0, x1
	}
	if (b.part == Sled || b.part == Caul) && b.to <= s.foot+hair { // the bar stands on it
		x0 = s.x.bar[0] - s.overhang()
		if s.bothBars() {
			x1 += 10
		}
		return x0, x1
	}
	if b.from < s.barTop() {
		x0 = s.x.strips[0] + behind
		if s.bothBars() {
			x1 = s.x.strips[1] - behind
		}
	}
	return x0, x1
}

// overhang is how far the sled reaches out from under the bar: as far as the
// film needs that bridges the corner there.
func (s *section) overhang() float64 { return max(10, s.tent()+6) }

// tent is what the film bridges, in points, as far as there is room for it.
func (s *section) tent() float64 { return math.Min(s.Tent.Metres()*s.scale, 26) }

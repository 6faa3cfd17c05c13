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

// A piece is the part of a strip that is drawn.
type piece struct {
	x0, x1 float64
	number int  // of the strip, from 1; zero: several left out here
	cut    bool // shorter than to scale
	width  unit.Length
}

const (
	plainGutter = 36
	widestBar   = 54 // in points; wider ones are cut short
	fencePoints = 18
	leastPiece  = 21
	ladderGap   = 26 // between the section and its labels
	lidRoom     = 28
	arrowRoom   = 40 // for the arrows on the face and their figure
)

// place chooses the scale and gives every part its column.
func (s *section) place() {
	room := min(180+55*float64(len(s.levels)-1), 460)
	s.scale = min(room/max(s.tallest().Metres(), 1e-6), 4500)
	if s.Bar != nil && s.Bar.Width > 0 {
		s.scale = min(s.scale, max(2800, s.barRoom()/s.Bar.Width.Metres()))
	}
	s.x = s.across()
}

// tallest is the height above the bed of the highest thing drawn.
func (s *section) tallest() unit.Length {
	tall := s.height
	for _, l := range s.levels {
		if l.bar {
			tall = max(tall, s.footOf(l)+s.Bar.Height)
			if _, to, ok := s.cover(l); ok {
				tall = max(tall, to)
			}
		}
	}
	if s.openingShown() {
		tall = max(tall, s.Opening)
	}
	return tall
}

// headroom is the space between the heading and the bed.
func (s *section) headroom() float64 {
	h := s.tallest().Metres()*s.scale + 10
	if s.Face.Mid <= 0 {
		return h
	}
	h = max(h, s.workTop().Metres()*s.scale+arrowRoom+16)
	if s.openingShown() {
		h = max(h, s.Opening.Metres()*s.scale+lidRoom)
	}
	return h
}

// workTop is the height of what lies over the strips.
func (s *section) workTop() unit.Length {
	top := s.height
	for _, l := range s.levels {
		if _, to, ok := s.cover(l); ok {
			top = max(top, to)
		}
	}
	return top
}

func (s *section) barRoom() float64 {
	if s.Bar.Both {
		return widestBar * 3 / 4
	}
	return widestBar
}

// openingShown says whether the press's lid is near enough to be drawn.
func (s *section) openingShown() bool {
	return s.Opening > 0 && s.Opening <= s.height*3/2
}

func (s *section) across() columns {
	x := columns{ladder: Width - margin - s.ladderWidth()}
	at := float64(plainGutter)
	end := x.ladder - ladderGap
	bar := 0.0
	if s.Bar != nil {
		at = s.barGutter()
		bar = min(max(s.Bar.Width.Metres()*s.scale, 8), s.barRoom())
		x.bar = [2]float64{at, at + bar}
	} else if s.fenced() {
		x.bar = [2]float64{at, at + fencePoints}
	}
	x.strips[0] = max(at, x.bar[1])
	far := 0.0
	switch {
	case s.Bar != nil && s.Bar.Both:
		far, end = bar, end-8
	case s.fenced():
		far = fencePoints
	}
	wedge := 0.0
	if s.Wedge != nil {
		wedge = min(max(s.Wedge.Gap.Metres()*s.scale, 14), 26)
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
	return min(w, 110)
}

// barGutter is the room on the left for the bar's measures and its arrows.
func (s *section) barGutter() float64 { return s.barText() + 52 }

// barText is where the labels of the bar's measures end.
func (s *section) barText() float64 {
	w := textWidth("covered", smallSize, false)
	for _, l := range []unit.Length{s.Bar.Height, s.Bar.Covered.Mid} {
		w = max(w, textWidth(s.Units.length(l), smallSize, true))
	}
	return 9 + min(w, 66)
}

func (s *section) fenced() bool {
	for _, l := range s.levels {
		if l.fence > 0 {
			return true
		}
	}
	return false
}

// pieces shares the room between from and to among the strips: to scale where
// they fit, cut short where not, the middle ones left out where there are too
// many.
func (s *section) pieces(from, to float64) []piece {
	if len(s.Widths) == 0 {
		return []piece{{x0: from, x1: to, cut: true}}
	}
	ps := make([]piece, 0, len(s.Widths))
	for i, w := range s.Widths {
		ps = append(ps, piece{number: i + 1, width: w})
	}
	if full := s.total().Metres() * s.scale; full > to-from {
		if n := int((to - from) / leastPiece); len(ps) > n {
			n = max(n, 3)
			head := n / 2
			tail := n - 1 - head
			ps = append(append(ps[:head:head], piece{cut: true}), ps[len(ps)-tail:]...)
		}
	}
	limit := s.limit(ps, to-from)
	x := from
	for i := range ps {
		w := max(ps[i].width.Metres()*s.scale, 2)
		if ps[i].number == 0 {
			w = limit
		}
		if w > limit+1e-9 {
			w, ps[i].cut = limit, true
		}
		ps[i].x0, ps[i].x1 = x, x+w
		x += w
	}
	return ps
}

// limit returns the longest that a piece may be for all to fit the room.
func (s *section) limit(ps []piece, room float64) float64 {
	low, high := 0.0, room
	for range 40 {
		mid := (low + high) / 2
		sum := 0.0
		for _, p := range ps {
			if p.number == 0 {
				sum += mid
			} else {
				sum += math.Min(mid, max(p.width.Metres()*s.scale, 2))
			}
		}
		if sum <= room {
			low = mid
		} else {
			high = mid
		}
	}
	return low
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

// reach returns how far a slab reaches across the page. Sleds run under bar and
// fence; cauls stay a little behind the strips' edge on the bar's side.
func (s *section) reach(b slab) (x0, x1 float64) {
	const behind = 5
	l := s.levels[b.level]
	x0, x1 = s.x.strips[0], s.x.strips[1]
	switch b.part {
	case Sled:
		x0, x1 = s.x.strips[0], s.x.fence[1]
		switch {
		case s.Bar != nil && b.level == 0 && s.Bar.OnBed:
			x0 += behind
			if s.Bar.Both {
				x1 = s.x.strips[1] - behind
			}
		case s.x.bar[1] > 0:
			x0 = s.x.bar[0]
			if s.Bar != nil {
				x0 -= 10
			}
		}
	case Core, Caul, Mat:
		if l.bar {
			x0 += behind
			if s.Bar.Both {
				x1 -= behind
			}
		}
		if b.part == Caul && l.fence > 0 && (s.Bar == nil || !s.Bar.Both) {
			x1 = s.x.fence[1]
			if s.Bar == nil {
				x0 = s.x.bar[0]
			}
		}
	}
	return x0, x1
}

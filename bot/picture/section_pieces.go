package picture

import (
	"math"

	"presshand/engine/unit"
)

// A piece is the part of a strip that is drawn.
type piece struct {
	x0, x1 float64
	number int  // of the strip, from 1; zero: several left out here
	cut    bool // shorter than to scale
	width  unit.Length
}

const (
	leastPiece = 17.5
	gapPiece   = 15
	mostNamed  = 2 // of the joints alike that are always drawn
)

// pieces shares the room between from and to among the strips: to scale where
// they fit, cut short where not, some left out where there are too many.
func (s *section) pieces(from, to float64) []piece {
	if len(s.Widths) == 0 {
		return []piece{{x0: from, x1: to, cut: true}}
	}
	ps := s.chosen(to - from)
	limit := s.limit(ps, to-from)
	x := from
	for i := range ps {
		w := max(ps[i].width.Metres()*s.scale, 2)
		if ps[i].number == 0 {
			w = min(gapPiece, limit)
		}
		if w > limit+1e-9 {
			w, ps[i].cut = limit, true
		}
		ps[i].x0, ps[i].x1 = x, x+w
		x += w
	}
	return ps
}

// chosen are the strips that are drawn, with a gap for those left out. The ones
// beside a joint that a figure is about are always there.
func (s *section) chosen(room float64) []piece {
	n := len(s.Widths)
	keep := make([]bool, n)
	if n <= int(room/leastPiece) || s.total().Metres()*s.scale <= room {
		for i := range keep {
			keep[i] = true
		}
		return s.kept(keep)
	}
	for _, joints := range s.nearAndFar {
		for _, j := range joints[:min(len(joints), mostNamed)] {
			keep[j-1], keep[j] = true, true
		}
	}
	keep[0], keep[n-1] = true, true
	for i := range n {
		was := keep[i]
		keep[i] = true
		if float64(len(s.kept(keep)))*leastPiece > room {
			keep[i] = was
			break
		}
	}
	return s.kept(keep)
}

func (s *section) kept(keep []bool) []piece {
	var ps []piece
	for i, k := range keep {
		switch {
		case k:
			ps = append(ps, piece{number: i + 1, width: s.Widths[i]})
		case i == 0 || keep[i-1]:
			ps = append(ps, piece{cut: true})
		}
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
				sum += math.Min(mid, gapPiece)
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

// A seam is a joint as it is drawn, between two pieces.
type seam struct {
	x      float64
	number int
	named  bool // a figure is about it
}

// seams are the joints drawn, left to right.
func (s *section) seams() []seam {
	var out []seam
	for i := 1; i < len(s.x.pieces); i++ {
		before, p := s.x.pieces[i-1], s.x.pieces[i]
		j := seam{x: p.x0, number: before.number}
		if before.number == 0 {
			j.number = p.number - 1
		}
		for _, joints := range s.nearAndFar {
			for _, n := range joints {
				j.named = j.named || s.Side && n == j.number && before.number > 0 && p.number > 0
			}
		}
		out = append(out, j)
	}
	return out
}

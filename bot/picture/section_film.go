package picture

import (
	"math"
	"slices"
)

// A step is a stretch of the load's outline: flat at y from x0 to x1.
type step struct{ x0, x1, y float64 }

// bridged is the widest gap, in points, that the film is drawn to pass over.
const bridged = 9

// skyline returns the outline of all that lies on the bed, left to right.
func (s *section) skyline() []step {
	var solid []box
	add := func(x [2]float64, y float64) { solid = append(solid, box{x[0], y, x[1], s.bedY}) }
	for _, b := range s.slabs {
		x0, x1 := s.reach(b)
		add([2]float64{x0, x1}, s.y(b.to))
	}
	if s.Bar != nil {
		add(s.x.bar, s.y(s.barTop()))
		if s.Bar.Both {
			add(s.x.fence, s.y(s.barTop()))
		}
	}
	for _, l := range s.levels {
		if l.fence > 0 && !s.bothBars() {
			add(s.x.fence, s.y(l.base+l.fence))
			if s.leftFence() {
				add(s.x.bar, s.y(l.base+l.fence))
			}
		}
	}
	if s.Wedge != nil {
		add(s.x.wedge, s.wedgeBox().y0)
	}
	if c, ok := s.cover(); ok {
		add([2]float64{s.x.strips[0] + behind, s.x.strips[1] - behind}, s.y(c.to))
	}
	return bridge(outlineOf(solid, s.bedY))
}

func outlineOf(solid []box, bed float64) []step {
	var xs []float64
	for _, b := range solid {
		xs = append(xs, b.x0, b.x1)
	}
	slices.Sort(xs)
	xs = slices.Compact(xs)
	var steps []step
	for i := 1; i < len(xs); i++ {
		y, mid := bed, (xs[i-1]+xs[i])/2
		for _, b := range solid {
			if b.x0 <= mid && mid <= b.x1 {
				y = min(y, b.y0)
			}
		}
		if n := len(steps); n > 0 && math.Abs(steps[n-1].y-y) < 0.5 {
			steps[n-1].x1 = xs[i]
		} else {
			steps = append(steps, step{xs[i-1], xs[i], y})
		}
	}
	return steps
}

// bridge lifts gaps between higher neighbours that the film does not enter.
func bridge(steps []step) []step {
	var out []step
	for i, st := range steps {
		if i > 0 && i < len(steps)-1 && st.x1-st.x0 < bridged {
			st.y = min(st.y, max(steps[i-1].y, steps[i+1].y))
		}
		if n := len(out); n > 0 && math.Abs(out[n-1].y-st.y) < 0.5 {
			out[n-1].x1 = st.x1
		} else {
			out = append(out, st)
		}
	}
	return out
}

// drawFilm draws the sheets between the layers and the film over all, from bed
// to bed, cutting the inside corners that it bridges.
func (s *section) drawFilm() {
	for i, b := range s.slabs {
		if b.part == Film && i < len(s.slabs)-1 {
			x0, x1 := s.reach(b)
			y := s.y((b.from + b.to) / 2)
			l := s.d.line(blue, 1.6, point{x0, y}, point{x1, y})
			l.shows, l.facts, l.dash = "sheet", []fact{measure("mm", b.to-b.from)}, []float64{5, 3}
		}
	}
	const off = 1.8
	x0, x1 := s.bedEnds()
	path := []point{{x0, s.bedY - off}}
	y := s.bedY
	sky := s.skyline()
	for _, st := range sky {
		x := st.x0 - off
		if st.y > y { // going down: outside the part before
			x = max(st.x0+off, path[len(path)-1].x+2*off)
		}
		path = append(path, point{x, y - off}, point{x, st.y - off})
		y = st.y
	}
	end := sky[len(sky)-1].x1
	path = append(path, point{end + off, y - off}, point{end + off, s.bedY - off}, point{x1, s.bedY - off})
	s.d.line(blue, 2.4, s.bridging(path)...).shows = "film"
	if s.Bag {
		b := s.d.line(blue, 2.4, point{x0, s.bedY - off}, point{x0 - 3, s.bedY}, point{x0, s.bedY + off}, point{x1, s.bedY + off}, point{x1 + 3, s.bedY}, point{x1, s.bedY - off})
		b.shows = "bag"
	}
}

// bridging cuts the inside corners of the film's path, the one at the bar's
// foot to scale.
func (s *section) bridging(path []point) []point {
	out := path[:1:1]
	for i := 1; i < len(path)-1; i++ {
		a, b, c := path[i-1], path[i], path[i+1]
		in := math.Hypot(b.x-a.x, b.y-a.y)
		on := math.Hypot(c.x-b.x, c.y-b.y)
		turn := (b.x-a.x)*(c.y-b.y) - (b.y-a.y)*(c.x-b.x)
		r := min(3, in*0.45, on*0.45)
		if s.Tent > 0 && turn < 0 {
			r = max(r, min(s.tent(), in-1, on-1, 40))
			if !s.atFoot(b) {
				r = min(r, in*0.45, on*0.45)
			}
		}
		if turn >= 0 || r < 1 { // an outside corner, or none
			out = append(out, b)
			continue
		}
		out = append(out, point{b.x - (b.x-a.x)/in*r, b.y - (b.y-a.y)/in*r},
			point{b.x + (c.x-b.x)/on*r, b.y + (c.y-b.y)/on*r})
	}
	return append(out, path[len(path)-1])
}

// atFoot reports whether a corner of the film is that at the foot of the bar, or
// of the strips where none stands before them.
func (s *section) atFoot(p point) bool {
	x, foot := s.x.strips[0], s.levels[s.work].base
	if s.Bar != nil {
		x, foot = s.x.bar[0], s.foot
	}
	return math.Abs(p.x-x) < 4 && math.Abs(p.y-s.y(foot)) < 4
}

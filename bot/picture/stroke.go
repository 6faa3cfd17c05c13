package picture

import "math"

// outline returns the contours that a shape's stroke fills: a quadrilateral
// for each piece of line and a round joint at each bend, all of one turn.
func outline(s *shape) [][]point {
	ps := s.points
	if s.closed && len(ps) > 0 {
		ps = append(ps[:len(ps):len(ps)], ps[0])
	}
	r := s.width / 2
	var cs [][]point
	for _, run := range dashes(ps, s.dash) {
		for i := 1; i < len(run); i++ {
			if q := quad(run[i-1], run[i], r); q != nil {
				cs = append(cs, q)
			}
			if i < len(run)-1 {
				cs = append(cs, joint(run[i], r))
			}
		}
	}
	if s.closed && s.dash == nil && len(ps) > 0 {
		cs = append(cs, joint(ps[0], r))
	}
	return cs
}

func joint(p point, r float64) []point { return arc(p, r, 2*math.Pi, 0, 8) }

func quad(a, b point, r float64) []point {
	dx, dy := b.x-a.x, b.y-a.y
	l := math.Hypot(dx, dy)
	if l == 0 {
		return nil
	}
	nx, ny := -dy/l*r, dx/l*r
	return []point{{a.x + nx, a.y + ny}, {b.x + nx, b.y + ny}, {b.x - nx, b.y - ny}, {a.x - nx, a.y - ny}}
}

// dashes cuts a line into the runs that a dash pattern of two lengths, on and
// off, leaves; without a pattern it is one run.
func dashes(ps []point, dash []float64) [][]point {
	if len(dash) != 2 || !(dash[0] > 0 && dash[1] > 0) || len(ps) < 2 {
		return [][]point{ps}
	}
	runs := [][]point{{ps[0]}} // every other one is a gap
	rest := dash[0]
	for i := 1; i < len(ps); i++ {
		a, b := ps[i-1], ps[i]
		l := math.Hypot(b.x-a.x, b.y-a.y)
		done := 0.0
		for l-done > rest {
			done += rest
			cut := point{a.x + (b.x-a.x)*done/l, a.y + (b.y-a.y)*done/l}
			runs[len(runs)-1] = append(runs[len(runs)-1], cut)
			runs = append(runs, []point{cut})
			rest = dash[(len(runs)-1)%2]
		}
		rest -= l - done
		runs[len(runs)-1] = append(runs[len(runs)-1], b)
	}
	var on [][]point
	for i := 0; i < len(runs); i += 2 {
		on = append(on, runs[i])
	}
	return on
}

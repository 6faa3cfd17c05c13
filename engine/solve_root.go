package engine

import (
	"math"

	"presshand/engine/unit"
)

// scanned is how many values are tried to find where a figure crosses a goal.
const scanned = 80

// golden is the smaller part of a golden section.
const golden = 0.381966

// solve finds the first value at which the figure crosses the goal, or else the
// value at which it comes nearest.
func (s *solver) solve() solution {
	near, nearest := solution{at: nan}, 0
	best, first := math.Inf(1), nan
	var x0, d0 float64
	for i := range scanned + 1 {
		x := s.sample(i)
		d := s.miss(x)
		if math.IsNaN(d) {
			d0 = nan
			continue
		}
		if math.IsNaN(first) {
			first = d
		}
		near.moves = near.moves || math.Abs(d-first) > 1e-12*(1+math.Abs(first))
		if math.Abs(d) < best {
			best, near.at, nearest = math.Abs(d), x, i
		}
		if d == 0 || i > 0 && d0*d < 0 {
			if d != 0 {
				x = s.bisect(x0, x, d0)
			}
			return solution{at: x, met: true, moves: true}
		}
		x0, d0 = x, d
	}
	if near.moves && s.figure != GoalVerdict && nearest > 0 && nearest < scanned {
		return s.turn(near.at, s.sample(nearest-1), s.sample(nearest+1))
	}
	return near
}

// turn narrows a turning point between a and c, at which the figure comes nearest
// to the goal without the scan having seen it cross, by golden section.
func (s *solver) turn(x, a, c float64) solution {
	side := s.miss(x)
	for range 60 {
		y := x + (c-x)*golden
		if c-x < x-a {
			y = x - (x-a)*golden
		}
		d := s.miss(y)
		switch {
		case d == 0:
			return solution{at: y, met: true, moves: true}
		case d*side < 0:
			return solution{at: s.bisect(x, y, side), met: true, moves: true}
		case math.Abs(d) < math.Abs(side):
			if y > x {
				a = x
			} else {
				c = x
			}
			x, side = y, d
		case y > x:
			c = y
		default:
			a = y
		}
	}
	return solution{at: x, moves: true}
}

// sample spreads the values tried evenly by ratio where the range spans it.
func (s *solver) sample(i int) float64 {
	share := float64(i) / scanned
	if s.low > 0 {
		return s.low * math.Pow(s.high/s.low, share)
	}
	return s.low + (s.high-s.low)*share
}

// miss is by how much the figure misses the goal.
func (s *solver) miss(v float64) float64 {
	if s.figure == GoalVerdict {
		return s.forward(v)
	}
	return s.forward(v) - s.want
}

// bisect narrows a crossing by regula falsi after Illinois, which takes a
// straight line in one step, with halving to fall back on. Of a verdict it
// returns the side that is good.
func (s *solver) bisect(a, c, da float64) float64 {
	dc := s.miss(c)
	for range 200 {
		if math.Abs(c-a) <= 1e-13*math.Max(math.Abs(a), math.Abs(c)) {
			break
		}
		x := (a*dc - c*da) / (dc - da)
		if s.figure == GoalVerdict || !(x > math.Min(a, c) && x < math.Max(a, c)) {
			x = a + (c-a)/2
		}
		d := s.miss(x)
		switch {
		case d == 0:
			return x
		case math.IsNaN(d):
			return nan
		case (d < 0) == (dc < 0):
			da /= 2 // Illinois: the end that stays counts half
		default:
			a, da = c, dc
		}
		c, dc = x, d
	}
	if s.figure == GoalVerdict && dc < 0 {
		return a
	}
	return c
}

// solveCount finds the count that gives the goal, or at which the figure just
// still meets it: at least the wanted pressure, at most the wanted mass, time or
// size.
func (s *solver) solveCount() solution {
	near := solution{at: nan}
	best, last := math.Inf(1), nan
	for n := s.low; n <= s.high; n++ {
		d := s.miss(n)
		if math.IsNaN(d) {
			continue
		}
		if math.Abs(d) <= 1e-9*math.Abs(s.want) {
			return solution{at: n, met: true, moves: true}
		}
		near.moves = near.moves || !math.IsNaN(last) && d != last
		if math.Abs(d) < best {
			best, near.at = math.Abs(d), n
		}
		if !math.IsNaN(last) && (last < 0) != (d < 0) {
			if s.enough(d) {
				return solution{at: n, met: true, moves: true}
			}
			return solution{at: n - 1, met: s.enough(last), moves: true}
		}
		last = d
	}
	return near
}

// enough reports whether a miss is on the right side.
func (s *solver) enough(d float64) bool {
	if s.figure == GoalVerdict || s.figure.Unit().Dimension == unit.Pressing {
		return d >= 0
	}
	return d <= 0
}

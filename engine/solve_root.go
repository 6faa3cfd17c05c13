package engine

import (
	"math"

	"presshand/engine/unit"
)

// scanned is how many values are tried to find where a figure crosses a goal.
const scanned = 80

// golden is the smaller part of a golden section.
const golden = 0.381966

// A look is what a solver has seen on its way through the values.
type look struct {
	near      solution
	best      float64 // how far the nearest misses
	nearest   int     // sample that is the nearest, 0 where it is the end of what can be had
	first     float64 // what the first value misses
	jump      solution
	x, missed float64 // the value before
}

// solve finds the first value at which the figure meets the goal, else where it
// jumps over it, else the value at which it comes nearest. Where the figure can be
// had in a part of the range alone, the end of that part is looked at too.
func (s *solver) solve() solution {
	l := look{near: solution{at: nan, every: s.sense() != 0}, best: math.Inf(1), first: nan, missed: nan}
	for i := range scanned + 1 {
		x := s.sample(i)
		d := s.miss(x)
		if i > 0 && math.IsNaN(d) != math.IsNaN(l.missed) {
			end, short := s.end(l.x, x, l.missed, d)
			why, last := s.refused, math.IsNaN(d)
			if at := s.pass(&l, end, short, 0); at.met {
				return at
			}
			if l.near.at == end {
				l.near.ends, l.near.last, l.nearest = why, last, 0
			}
		}
		if at := s.pass(&l, x, d, i); at.met {
			return at
		}
	}
	near := l.near
	near.every = near.every && !math.IsNaN(l.first)
	switch {
	case l.jump.jump:
		return l.jump
	case near.moves && s.figure != GoalVerdict && l.nearest > 0 && l.nearest < scanned:
		return s.turn(near.at, s.sample(l.nearest-1), s.sample(l.nearest+1))
	}
	return near
}

// pass takes one more value in, and returns where the goal is met since the last.
func (s *solver) pass(l *look, x, d float64, sample int) solution {
	before, missed := l.x, l.missed
	l.x, l.missed = x, d
	if math.IsNaN(d) {
		return solution{}
	}
	if math.IsNaN(l.first) {
		l.first = d
	}
	l.near.moves = l.near.moves || math.Abs(d-l.first) > 1e-12*(1+math.Abs(l.first))
	l.near.every = l.near.every && s.enough(d)
	if math.Abs(d) < l.best {
		l.best, l.nearest = math.Abs(d), sample
		l.near.at, l.near.ends, l.near.last = x, nil, false
	}
	switch {
	case d == 0:
		return solution{at: x, met: true, moves: true}
	case missed*d < 0: // not where the one before is no number
		at := s.cross(before, x, missed, d)
		if !at.met && !l.jump.jump {
			l.jump = at
		}
		return at
	}
	return solution{}
}

// end returns the last value between a and c at which the figure can still be had, one
// of which gives it, and what that misses. Why it cannot be had beyond is left in
// refused.
func (s *solver) end(a, c, da, dc float64) (at, missed float64) {
	if math.IsNaN(da) {
		a, c, da = c, a, dc
	}
	for range 60 {
		x := a + (c-a)/2
		if x == a || x == c {
			break
		}
		if d := s.miss(x); math.IsNaN(d) {
			c = x
		} else {
			a, da = x, d
		}
	}
	s.miss(c)
	return a, da
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
			return s.cross(x, y, side, d)
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
	return solution{at: x, moves: true, every: s.sense() != 0 && s.enough(side)}
}

// How far beyond a jump a value is taken that a person is to set by hand: a share
// of it, and of a length a sixteenth of an inch.
const (
	jumpMargin = 0.01
	sixteenth  = 25.4 / 16 // mm
)

// cross narrows a crossing between a and c, where the goal is missed by da and dc,
// and looks whether the figure is met there or jumps over it.
func (s *solver) cross(a, c, da, dc float64) solution {
	slack := 1e-6 * math.Max(math.Abs(s.want), math.Min(math.Abs(da), math.Abs(dc)))
	a, c, da, dc = s.narrow(a, c, da, dc)
	if math.IsNaN(da) || math.IsNaN(dc) {
		return solution{at: nan}
	}
	if math.Abs(da) < math.Abs(dc) {
		a, c, da, dc = c, a, dc, da
	}
	switch { // c is nearer now
	case s.figure == GoalVerdict && dc < 0:
		return solution{at: a, met: true, moves: true}
	case s.figure == GoalVerdict || math.Abs(dc) <= slack:
		return solution{at: c, met: true, moves: true}
	case s.sense() == 0:
		return solution{at: c, moves: true, jump: true}
	}
	if !s.enough(dc) {
		a, c = c, a
	}
	at, margin := c, jumpMargin*math.Abs(c)
	if s.field.Dimension() == unit.Distance {
		margin = math.Max(margin, sixteenth)
	}
	if x := c + math.Copysign(margin, c-a); s.enough(s.miss(x)) {
		at = x
	}
	return solution{at: at, moves: true, jump: true, safe: true}
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

// narrow closes in on a crossing by regula falsi after Illinois, which takes a
// straight line in one step, and by halving where that is slow, as it is at a
// jump. It returns the two sides and what they miss.
func (s *solver) narrow(a, c, da, dc float64) (float64, float64, float64, float64) {
	wa, wc := da, dc // Illinois: the end that stays counts half
	for i := range 200 {
		if math.Abs(c-a) <= 1e-14*math.Max(math.Abs(a), math.Abs(c)) {
			break
		}
		x := (a*wc - c*wa) / (wc - wa)
		if i%3 == 2 || s.figure == GoalVerdict && s.q.About != Flatten || !(x > math.Min(a, c) && x < math.Max(a, c)) {
			x = a + (c-a)/2
		}
		if x == a || x == c {
			break
		}
		d := s.miss(x)
		switch {
		case d == 0 || math.IsNaN(d):
			return x, x, d, d
		case (d < 0) == (dc < 0):
			wa /= 2
			c, dc, wc = x, d, d
		default:
			a, da, wa = c, dc, dc
			c, dc, wc = x, d, d
		}
	}
	return a, c, da, dc
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
	if s.sense() > 0 {
		return d >= 0
	}
	return d <= 0
}

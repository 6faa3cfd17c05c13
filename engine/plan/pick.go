package plan

import (
	"math"
	"slices"
)

// A choice is the strips of one panel, as indices into the widths chosen from.
type choice struct {
	picked []int
	cost   int64 // see goal
	bound  int64 // no choice costs less
	// count bounds the number of strips among the choices of this cost: none
	// has fewer or, where narrow strips are wanted, none has more.
	count int
}

// effort caps the words of bits that one choice may cost: about half a second.
const effort = 400_000_000

// choose returns the strips out of ws, widest first, that suit the goal best:
// least cost, then fewest strips or, where wished, most; false where no choice
// is allowed.
func choose(ws []int64, g goal, w wish) (choice, bool) {
	if len(ws) == 0 {
		return choice{}, false
	}
	s := &search{ws: ws, step: commonStep(ws), goal: g, wish: w, tried: map[int]bool{}, proven: true}
	s.free = w.most >= len(ws) && !w.differ
	if g.trimmed() {
		s.goal.high = min(g.high, g.low+ws[0]) // beyond, a strip could be left out
	}
	var ok bool
	if s.best.bound, ok = s.goal.least(s.step); !ok {
		return choice{}, false
	}
	s.best.cost = math.MaxInt64
	ks := s.counts()
	s.try(ks[:min(2, len(ks))]) // mostly enough
	if s.met() || s.best.picked != nil && len(ks) <= 2 && s.proven {
		return s.result()
	}
	if s.spare, ok = reach(ws, s.step, s.goal); !ok {
		return choice{}, false
	}
	s.best.bound = s.spare.cost
	if s.free {
		s.goal.low, s.goal.high = s.goal.within(s.best.bound)
		ks = s.counts()
	}
	s.try(ks)
	return s.result()
}

// A search is one call of choose.
type search struct {
	ws     []int64
	step   int64
	goal   goal
	wish   wish
	free   bool // any number of any strips may be used
	best   choice
	spare  choice // of least cost where the search is free, its number of strips any
	tried  map[int]bool
	proven bool // each number tried was searched to its end
	spent  int
}

// met reports whether the best choice meets the bound.
func (s *search) met() bool { return s.best.picked != nil && s.best.cost == s.best.bound }

// try looks for the best choice of each number of strips in turn.
func (s *search) try(ks []int) {
	for _, k := range ks {
		if s.met() {
			return
		}
		if s.tried[k] {
			continue
		}
		s.tried[k] = true
		from := s.ws
		if s.wish.differ {
			from = alternating(s.ws, k)
		}
		c := newCounter(from, s)
		picked, cost, done := c.exactly(k, s.best.bound, effort-s.spent)
		s.spent += c.spent
		s.proven = s.proven && done
		if picked == nil || cost >= s.best.cost {
			continue
		}
		if s.wish.differ {
			picked = sameWidths(s.ws, from, picked)
		}
		s.best.picked, s.best.cost, s.best.count = picked, cost, k
	}
}

func (s *search) result() (choice, bool) {
	first := 0
	if ks := s.counts(); len(ks) > 0 {
		first = ks[0]
	}
	if s.free && s.spare.picked != nil && s.spare.cost < s.best.cost {
		s.best.picked, s.best.cost, s.best.count = s.spare.picked, s.spare.cost, first
	}
	if s.best.picked == nil {
		return choice{}, false
	}
	if s.proven {
		s.best.bound = s.best.cost
	}
	if !s.proven {
		s.best.count = first
	}
	return s.best, true
}

// counts returns the numbers of strips that may do, in the order to try them:
// fewest first or, where narrow strips are wanted, most first.
func (s *search) counts() []int {
	n := len(s.ws)
	var ks []int
	var wide, slim int64
	for k := 1; k <= min(n, s.wish.most); k++ {
		wide, slim = wide+s.ws[k-1], slim+s.ws[n-k]
		if wide >= s.goal.low && slim <= s.goal.high {
			ks = append(ks, k)
		}
	}
	if s.wish.narrow {
		slices.Reverse(ks)
	}
	return ks
}

// A counter looks for the best sum of exactly so many strips.
//
// Taken in order of size, any k strips differ from the k widest by offsets
// that are never negative, strip by strip. A sum near that of the k widest has
// a small total offset, so that the table is k rows of a few thousand bits in
// place of rows as long as the sum: the fewest strips need no more. The most
// strips are the same seen from the narrow end.
type counter struct {
	seq    []int64 // in steps; widest first or, where narrow, narrowest first
	step   int64
	goal   goal
	narrow bool
	spent  int
}

func newCounter(ws []int64, s *search) *counter {
	c := &counter{seq: make([]int64, len(ws)), step: s.step, goal: s.goal, narrow: s.wish.narrow}
	for i, w := range ws {
		c.seq[i] = w / s.step
	}
	if c.narrow {
		slices.Reverse(c.seq)
	}
	return c
}

// exactly returns the k strips whose sum costs least, nil where none is
// allowed; done is false where that would have been more work than allowed.
func (c *counter) exactly(k int, bound int64, allowed int) (picked []int, cost int64, done bool) {
	n := len(c.seq)
	if k > n {
		return nil, 0, true
	}
	sums := line{step: -c.step}
	if c.narrow {
		sums.step = c.step
	}
	for _, w := range c.seq[:k] {
		sums.base += w * c.step
	}
	from, to := sums.between(c.goal.low, c.goal.high)
	if to < from {
		return nil, 0, true
	}
	// The strips left out have the same total offset, counted from the other
	// end: work on whichever are fewer.
	seq, rows := c.seq, k
	if n-k < k {
		seq, rows = slices.Clone(c.seq), n-k
		slices.Reverse(seq)
	}
	words := int(to/64 + 1)
	if words*rows*n > allowed || int64(rows)*to > 1<<27 {
		return nil, 0, false
	}
	l := newLadder(seq, rows, words)
	c.spent = l.fill(sums.between(c.goal.within(bound)))
	d, cost, ok := sums.cheapest(l.rows[rows], c.goal)
	if !ok {
		return nil, 0, true
	}
	return c.indices(l.trace(d), rows != k), cost, true
}

// indices turns places in the sequence into indices of the widths; left says
// that they are the strips left out, counted from the other end.
func (c *counter) indices(at []int, left bool) []int {
	n := len(c.seq)
	in := make([]bool, n)
	for _, a := range at {
		if left {
			a = n - 1 - a
		}
		in[a] = true
	}
	var out []int
	for i := range in {
		if in[i] == left {
			continue
		}
		if c.narrow {
			out = append(out, n-1-i)
		} else {
			out = append(out, i)
		}
	}
	return out
}

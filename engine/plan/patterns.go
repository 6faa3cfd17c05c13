package plan

import "math"

// patternWork caps the steps of the exact method for stock of few widths.
const patternWork = 30_000_000

// A pattern is the strips of one panel counted by width.
type pattern struct {
	counts []int
	state  int // its counts as a number of mixed base
	strips int
	cost   int64
	sum    int64
}

// A stockroom is the stock counted by width. What is used of it is one number
// of mixed base, so that a table over all of them is an array.
type stockroom struct {
	widths []int64
	counts []int
	base   []int
	states int
}

func (b *bench) stockroom() stockroom {
	r := stockroom{states: 1}
	for i, w := range b.widths {
		if i == 0 || w != b.widths[i-1] {
			r.widths, r.counts = append(r.widths, w), append(r.counts, 0)
		}
		r.counts[len(r.counts)-1]++
	}
	for _, c := range r.counts {
		r.base = append(r.base, r.states)
		if r.states > patternWork/(c+1) {
			r.states = math.MaxInt
			break
		}
		r.states *= c + 1
	}
	return r
}

// byPatterns makes the plan by trying every way to fill each panel against
// every state of the stock, in dynamic programming; ok is false where that is
// too much work. The plan is best: most panels, then least cost, then fewest
// strips or, where wished, most.
func (b *bench) byPatterns() (sets, bool) {
	room := b.stockroom()
	if room.states > patternWork/max(1, len(b.goals)) {
		return nil, false
	}
	var all []pattern
	var tables [][]tally
	now := make([]tally, room.states)
	for i := 1; i < len(now); i++ {
		now[i] = unheard
	}
	work := 0
	for i, g := range b.goals {
		if i == 0 || g != b.goals[i-1] {
			var ok bool
			if all, ok = room.patterns(g, b.wish, patternWork/(room.states*len(b.goals))); !ok {
				return nil, false
			}
		}
		if work += len(all) * room.states; work > patternWork {
			return nil, false
		}
		now = room.serve(now, all, b.wish.narrow)
		tables = append(tables, now)
	}
	return b.unwind(room, tables), true
}

// A tally is the best way to a state of the stock after some panels.
type tally struct {
	made   int32
	strips int32
	cost   int64
	by     *pattern // of the last panel; nil where it is not made
}

var unheard = tally{made: -1}

func (t tally) betterThan(o tally, narrow bool) bool {
	switch {
	case t.made != o.made:
		return t.made > o.made
	case t.cost != o.cost:
		return t.cost < o.cost
	case narrow:
		return t.strips > o.strips
	}
	return t.strips < o.strips
}

// serve returns the best way to every state after one more panel.
func (r stockroom) serve(before []tally, ps []pattern, narrow bool) []tally {
	after := make([]tally, len(before))
	for s, t := range before {
		after[s] = t
		after[s].by = nil
	}
	used := make([]int, len(r.counts))
	for s, t := range before {
		if t.made < 0 {
			continue
		}
		for i, c := range r.counts {
			used[i] = s / r.base[i] % (c + 1)
		}
		for i := range ps {
			p := &ps[i]
			if !r.holds(used, p.counts) {
				continue
			}
			n := tally{t.made + 1, t.strips + int32(p.strips), t.cost + p.cost, p}
			if to := s + p.state; n.betterThan(after[to], narrow) {
				after[to] = n
			}
		}
	}
	return after
}

func (r stockroom) holds(used, more []int) bool {
	for i, m := range more {
		if used[i]+m > r.counts[i] {
			return false
		}
	}
	return true
}

// patterns returns every way to fill a panel that is not another with a strip
// too many; ok is false where there are more than most.
func (r stockroom) patterns(g goal, w wish, most int) (ps []pattern, ok bool) {
	trimmed := g.trimmed()
	if trimmed {
		g.high = min(g.high, g.low+r.widths[0])
	}
	counts := make([]int, len(r.widths))
	steps := 0
	var fill func(i int, sum int64, strips int) bool
	fill = func(i int, sum int64, strips int) bool {
		if steps++; steps > 100*most+10_000 || len(ps) > most {
			return false
		}
		if g.allows(sum) {
			p := r.pattern(counts, sum, strips, g)
			// Where neighbours must differ, a strip too many can be what parts two others.
			if w.differ && p.alternates() || !w.differ && (!trimmed || p.minimal(r.widths, g)) {
				ps = append(ps, p)
			}
			if trimmed && !w.differ {
				return true
			}
		}
		for j := i; j < len(r.widths) && strips < w.most; j++ {
			if counts[j] == r.counts[j] || sum+r.widths[j] > g.high {
				continue
			}
			counts[j]++
			good := fill(j, sum+r.widths[j], strips+1)
			counts[j]--
			if !good {
				return false
			}
		}
		return true
	}
	ok = fill(0, 0, 0)
	return ps, ok && len(ps) <= most
}

func (r stockroom) pattern(counts []int, sum int64, strips int, g goal) pattern {
	p := pattern{counts: append([]int(nil), counts...), strips: strips, cost: g.cost(sum), sum: sum}
	for i, c := range counts {
		p.state += c * r.base[i]
	}
	return p
}

// minimal reports whether no strip can be left out.
func (p pattern) minimal(widths []int64, g goal) bool {
	for i, c := range p.counts {
		if c > 0 && p.sum-widths[i] >= g.low {
			return false
		}
	}
	return true
}

func (p pattern) alternates() bool {
	for _, c := range p.counts {
		if c > (p.strips+1)/2 {
			return false
		}
	}
	return true
}

// unwind reads the best plan out of the tables.
func (b *bench) unwind(r stockroom, tables [][]tally) sets {
	last := tables[len(tables)-1]
	at := 0
	for s, t := range last {
		if t.betterThan(last[at], b.wish.narrow) {
			at = s
		}
	}
	ss := make(sets, len(tables))
	start := make([]int, len(r.counts)) // next unused strip of each width
	for i, c := range r.counts[:max(0, len(r.counts)-1)] {
		start[i+1] = start[i] + c
	}
	for i := len(tables) - 1; i >= 0; i-- {
		p := tables[i][at].by
		if p == nil {
			continue
		}
		ss[i] = set{made: true, cost: p.cost}
		for j, c := range p.counts {
			for range c {
				ss[i].picked = append(ss[i].picked, start[j])
				start[j]++
			}
		}
		at -= p.state
	}
	return ss
}

package plan

import "math"

// A line of sums: that of number d is base + step·d.
type line struct{ base, step int64 }

func (l line) sum(d int64) int64 { return l.base + l.step*d }

// between returns the first and the last d, neither negative, whose sums lie
// from low to high; last is less than first where there are none.
func (l line) between(low, high int64) (first, last int64) {
	if l.step < 0 {
		first, last = ceilDiv(l.base-high, -l.step), floorDiv(l.base-low, -l.step)
	} else {
		first, last = ceilDiv(low-l.base, l.step), floorDiv(high-l.base, l.step)
	}
	return max(first, 0), last
}

// cheapest returns the number in a set whose sum suits the goal best.
func (l line) cheapest(held bitset, g goal) (at, cost int64, ok bool) {
	cost = math.MaxInt64
	for d := range held.between(l.between(g.low, g.high)) {
		if c := g.cost(l.sum(d)); c < cost {
			at, cost, ok = d, c, true
		}
	}
	return at, cost, ok
}

// reach returns the choice out of ws, in any order, that suits the goal best
// with any number of strips; false where none is allowed.
func reach(ws []int64, step int64, g goal) (choice, bool) {
	var total, widest int64
	for _, w := range ws {
		total += w
		widest = max(widest, w)
	}
	if g.trimmed() {
		g.high = min(g.high, g.low+widest) // beyond, a strip could be left out
	}
	// What is left out decides the sum as well as what is taken: work on
	// whichever is less.
	sums, out := line{0, step}, total-g.low < g.low
	if out {
		sums = line{total, -step}
	}
	from, to := sums.between(g.low, min(g.high, total))
	if from > to {
		return choice{}, false
	}
	bound, _ := g.least(step)
	near, far := sums.between(g.within(bound))
	held, first := make(bitset, to/64+1), make([]uint16, (to/64+1)*64)
	held[0] = 1
	var top int64
	for i, w := range ws {
		top += w / step
		upTo := held[:min(len(held), int(top/64+1))]
		upTo.spread(upTo, w/step, first, uint16(i))
		if upTo.any(near, far) {
			break
		}
	}
	at, cost, ok := sums.cheapest(held, g)
	if !ok {
		return choice{}, false
	}
	in := make([]bool, len(ws))
	for ; at > 0; at -= ws[first[at]] / step {
		in[first[at]] = true
	}
	c := choice{cost: cost, bound: cost}
	for i := range ws {
		if in[i] != out {
			c.picked = append(c.picked, i)
		}
	}
	return c, true
}

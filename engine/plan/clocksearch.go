package plan

import (
	"math"
	"slices"

	"presshand/engine/unit"
)

// clockNodes caps the orders of work looked into.
const clockNodes = 150_000

// A foundOrder is the best, with the bound on the finish of any.
type foundOrder struct {
	order  []deed
	finish int64
	bound  int64
}

// A clockSearch is a depth-first search over orders of work.
type clockSearch struct {
	*shop
	left    []int // loads left of each class
	doing   []deed
	best    foundOrder
	sum     int64 // of the times out, to choose among orders that finish alike
	nodes   int
	watch   Watch[unit.Time]
	limited bool
	stopped bool
}

// never is a limit that is none.
const never = math.MaxInt64

// search looks for the order of work that finishes first, and before the
// limit; no order where it finds none. Without a limit it goes on until it has
// one at least.
func (s *shop) search(nodes int, limit int64, watch Watch[unit.Time]) foundOrder {
	c := &clockSearch{shop: s, nodes: nodes, limited: limit < never, watch: watch}
	c.best.finish, c.sum = limit, math.MaxInt64
	for _, class := range s.classes {
		c.left = append(c.left, len(class))
	}
	start := s.open(false)
	if c.best.bound = max(c.bound(start), s.clearedBound()); c.best.bound < limit {
		c.branch(start, 0)
	}
	// Every order was looked into. Where loads may not stay overnight that is not
	// every plan: it can pay to wait for tomorrow.
	if !c.stopped && c.best.order != nil && s.overnight {
		c.best.bound = c.best.finish
	}
	return c.best
}

// branch tries every deed from here on.
func (c *clockSearch) branch(f *floorState, sum int64) {
	if c.stopped {
		return
	}
	if c.nodes--; c.nodes <= 0 && (c.limited || c.best.order != nil) || c.nodes < -clockNodes {
		c.stopped = true
		return
	}
	if c.nodes%4096 == 0 && c.best.order != nil && !c.watch.goOn(unit.Time(c.best.finish), unit.Time(c.best.bound)) {
		c.stopped = true
		return
	}
	due := f.earliest()
	if due < 0 && c.remaining() == 0 {
		if f.finish < c.best.finish || f.finish == c.best.finish && sum < c.sum {
			c.best.order, c.best.finish, c.sum = slices.Clone(c.doing), f.finish, sum
			c.stopped = !c.watch.goOn(unit.Time(f.finish), unit.Time(c.best.bound))
		}
		return
	}
	for _, d := range c.deeds(f, due) {
		next := f.clone()
		if !c.do(next, d, nil, nil) {
			continue
		}
		class := c.take(d.load, -1)
		outs := sum
		if d.unload >= 0 {
			outs += next.now
		}
		if b := c.bound(next); b < c.best.finish {
			c.doing = append(c.doing, d)
			c.branch(next, outs)
			c.doing = c.doing[:len(c.doing)-1]
		}
		if class >= 0 {
			c.left[class]++
		}
	}
}

func (c *clockSearch) remaining() (n int) {
	for _, l := range c.left {
		n += l
	}
	return n
}

// take changes how many are left of a load's class and returns the class.
func (c *clockSearch) take(load, by int) int {
	if load < 0 {
		return -1
	}
	i := slices.IndexFunc(c.classes, func(class []int) bool { return c.turns[class[0]] == c.turns[load] })
	c.left[i] += by
	return i
}

// deeds returns what the crew can do next, the most promising first: a load
// into an empty press, else an unloading with the next load ready beside it.
func (c *clockSearch) deeds(f *floorState, due int) []deed {
	empty := slices.Index(f.holds, -1)
	var out []deed
	for i, class := range c.classes {
		if c.left[i] == 0 {
			continue
		}
		load := class[len(class)-c.left[i]]
		if empty >= 0 {
			out = append(out, deed{load, -1, empty})
		} else {
			out = append(out, deed{load, due, due})
		}
	}
	if due >= 0 {
		out = append(out, deed{-1, due, -1})
		if empty >= 0 && f.due[due] <= f.now { // it is due: out first looks better
			slices.Reverse(out)
		}
	}
	return out
}

// bound returns a time before which no order of work from here on can finish:
// the crew's own work, the last lay-up with its press time after it, or the
// presses' work shared evenly.
func (c *clockSearch) bound(f *floorState) int64 {
	b := f.finish
	var layUps, presses, jobs, ready int64
	shortest := int64(math.MaxInt64)
	for i, n := range c.left {
		t := c.turns[c.classes[i][0]]
		layUps += int64(n) * t.layUp
		presses += int64(n) * (t.press + c.unload)
		jobs += int64(n)
		if n > 0 {
			shortest = min(shortest, t.press)
		}
	}
	for p, l := range f.holds {
		r := f.now
		if l >= 0 {
			jobs++
			r = max(f.now, f.due[p]) + c.unload
			b = max(b, c.at(max(f.now, f.due[p]), c.unload)+c.unload)
		}
		ready += r
	}
	b = max(b, c.worked(f.now, layUps+jobs*c.unload))
	if shortest < math.MaxInt64 {
		b = max(b, c.at(c.worked(f.now, layUps)+shortest, c.unload)+c.unload)
		b = max(b, ceilDiv(ready+presses, int64(c.presses)))
	}
	return b
}

package plan

import (
	"slices"

	"presshand/engine/unit"
)

// A set is the strips of one panel, as indices into the bench's widths.
type set struct {
	made   bool
	picked []int
	cost   int64
}

// sets are beside the bench's panels.
type sets []set

// worth returns how many panels are made, at what cost.
func (ss sets) worth() (made int, cost int64) {
	for _, s := range ss {
		if s.made {
			made++
			cost += s.cost
		}
	}
	return made, cost
}

func (ss sets) betterThan(other sets) bool {
	m, c := ss.worth()
	om, oc := other.worth()
	return m > om || m == om && c < oc
}

// limits are what no plan can beat.
type limits struct {
	panels int
	costs  []int64 // of each panel by itself, from the whole stock; -1 where it cannot be made
}

// waste returns the least that any made panels of the stock cost together.
func (l limits) waste(made int) int64 {
	var can []int64
	for _, c := range l.costs {
		if c >= 0 {
			can = append(can, c)
		}
	}
	slices.Sort(can)
	var sum int64
	for _, c := range can[:min(made, len(can))] {
		sum += c
	}
	return sum
}

func (l limits) metBy(ss sets) bool {
	made, cost := ss.worth()
	return made >= l.panels && cost <= l.waste(made)
}

// solve makes the plan in whole numbers.
func (b *bench) solve(watch Watch[unit.Length]) (sets, StripCertificate) {
	if len(b.widths) == 0 { // none that may be used
		return make(sets, len(b.goals)), StripCertificate{Best: true, Fewest: true}
	}
	lim, first := b.limits()
	if len(b.goals) == 1 {
		return b.solveOne(first)
	}
	if ss, ok := b.byPatterns(); ok {
		cert := b.certify(ss, lim)
		cert.Best, cert.PanelsBound, cert.WasteBound = true, cert.Panels, cert.Waste
		cert.Fewest, cert.StripsBound = true, cert.Strips
		return ss, cert
	}
	best := b.inTurn(lim, b.wish, watch)
	if !lim.metBy(best) && !b.stopped {
		other := b.wish
		other.narrow = !other.narrow
		if ss := b.inTurn(lim, other, watch); ss.betterThan(best) {
			best = ss
		}
		if made, _ := best.worth(); made < lim.panels && !b.stopped {
			if ss := b.balance(lim, watch); ss.betterThan(best) {
				best = ss
			}
		}
		best = b.improve(best, lim, watch)
	}
	return best, b.certify(best, lim)
}

func (b *bench) solveOne(c choice) (sets, StripCertificate) {
	if c.picked == nil {
		return make(sets, 1), StripCertificate{Best: true, Fewest: true}
	}
	n := len(c.picked)
	return sets{{true, c.picked, c.cost}}, StripCertificate{
		Panels: 1, PanelsBound: 1,
		Waste: b.grid.length(c.cost) / 2, WasteBound: b.grid.length(c.bound) / 2,
		Strips: n, StripsBound: c.count,
		Best: c.cost == c.bound, Fewest: c.cost == c.bound && c.count == n,
	}
}

// limits returns what no plan can beat, and the best choice for the first panel.
func (b *bench) limits() (limits, choice) {
	lim := limits{costs: make([]int64, len(b.goals))}
	known := map[goal]choice{}
	var first choice
	for i, g := range b.goals {
		c, seen := known[g]
		if !seen {
			c, _ = choose(b.widths, g, b.wish)
			known[g] = c
		}
		if i == 0 {
			first = c
		}
		lim.costs[i] = c.bound
		if c.picked == nil {
			lim.costs[i] = -1
		}
	}
	lim.panels = b.mostPanels(lim.costs)
	return lim, first
}

// mostPanels bounds the panels that the stock's width can fill, narrowest
// first, the widest strips counted where their number is limited.
func (b *bench) mostPanels(costs []int64) int {
	tops := make([]int64, len(b.widths)+1)
	for i, w := range b.widths {
		tops[i+1] = tops[i] + w
	}
	made := 0
	var need int64
	for i, g := range b.goals {
		if costs[i] < 0 {
			continue
		}
		need += g.low
		pieces := min(len(b.widths), (made+1)*b.wish.most)
		if need > tops[pieces] || made+1 > len(b.widths) {
			break
		}
		made++
	}
	return made
}

// inTurn makes one panel after the other, each as well as the strips left
// allow.
func (b *bench) inTurn(lim limits, w wish, watch Watch[unit.Length]) sets {
	ss := make(sets, len(b.goals))
	used := make([]bool, len(b.widths))
	var order, rest []int
	for i := range b.goals {
		if lim.costs[i] >= 0 && len(order) < lim.panels {
			order = append(order, i)
		} else if lim.costs[i] >= 0 {
			rest = append(rest, i)
		}
	}
	slices.Reverse(order) // the widest are the hardest
	for _, i := range append(order, rest...) {
		if !b.report(ss, lim, watch) {
			break
		}
		free := unused(used)
		c, ok := choose(b.of(free), b.goals[i], w)
		if !ok {
			continue
		}
		ss[i] = b.setOf(c, free)
		for _, p := range ss[i].picked {
			used[p] = true
		}
	}
	return ss
}

// report tells the watch what is wasted so far, and returns whether to go on.
func (b *bench) report(ss sets, lim limits, watch Watch[unit.Length]) bool {
	made, cost := ss.worth()
	b.stopped = b.stopped || !watch.goOn(b.grid.length(cost)/2, b.grid.length(lim.waste(made))/2)
	return !b.stopped
}

func unused(used []bool) []int {
	var free []int
	for i, u := range used {
		if !u {
			free = append(free, i)
		}
	}
	return free
}

// of returns the widths of strips given by index.
func (b *bench) of(at []int) []int64 {
	ws := make([]int64, len(at))
	for i, a := range at {
		ws[i] = b.widths[a]
	}
	return ws
}

// setOf returns a choice out of the strips at as a set.
func (b *bench) setOf(c choice, at []int) set {
	s := set{made: true, cost: c.cost}
	for _, p := range c.picked {
		s.picked = append(s.picked, at[p])
	}
	return s
}

// redividing caps the words of bits that improving a plan for several panels
// may cost, by estimate: about half a second.
const redividing = 150_000_000

// rounds returns how often two panels may be divided anew.
func (b *bench) rounds(ss sets) int {
	strips, width := 0, int64(0)
	for i, s := range ss {
		strips += len(s.picked)
		width = max(width, b.goals[i].low)
	}
	pool := len(b.widths) - strips + 2*strips/len(ss) + 1
	table := width/commonStep(b.widths)/64 + 100
	return int(max(100, redividing/(6*int64(pool)*table)))
}

// improve takes two panels at a time, one of them unmade or wasteful, and
// divides their strips and those left over anew.
func (b *bench) improve(best sets, lim limits, watch Watch[unit.Length]) sets {
	seed := uint64(1)
	tried, rounds := 0, b.rounds(best)
	for again := true; again && tried < rounds; {
		again = false
		for p := range best {
			if lim.costs[p] < 0 || best[p].made && best[p].cost <= lim.costs[p] {
				continue
			}
			for q := range best {
				if tried >= rounds || lim.metBy(best) || !b.report(best, lim, watch) {
					return best
				}
				if q == p || !best[q].made {
					continue
				}
				tried++
				if next, ok := b.redivide(best, p, q, &seed); ok {
					best, again = next, true
				}
			}
		}
	}
	return best
}

// redivide makes panels p and q anew from their strips and those left over, in
// three ways, and returns the first plan that is better.
func (b *bench) redivide(ss sets, p, q int, seed *uint64) (sets, bool) {
	used := make([]bool, len(b.widths))
	for i, s := range ss {
		for _, at := range s.picked {
			used[at] = used[at] || i != p && i != q
		}
	}
	pool := unused(used)
	for way := range 3 {
		first, second := p, q
		if way == 1 {
			first, second = q, p
		}
		var c choice
		var ok bool
		if ws := b.of(pool); way == 2 && b.wish.most >= len(b.widths) && !b.wish.differ {
			order := shuffled(len(pool), seed)
			mixed := make([]int64, len(pool))
			for i, o := range order {
				mixed[i] = ws[o]
			}
			c, ok = reach(mixed, commonStep(ws), b.goals[first])
			for i, at := range c.picked {
				c.picked[i] = order[at]
			}
		} else {
			c, ok = choose(ws, b.goals[first], b.wish)
		}
		if !ok {
			continue
		}
		next := slices.Clone(ss)
		next[first], next[second] = b.setOf(c, pool), set{}
		rest := slices.DeleteFunc(slices.Clone(pool), func(at int) bool { return slices.Contains(next[first].picked, at) })
		if c, ok := choose(b.of(rest), b.goals[second], b.wish); ok {
			next[second] = b.setOf(c, rest)
		}
		if next.betterThan(ss) {
			return next, true
		}
	}
	return nil, false
}

// shuffled returns 0 to n-1 in an order that depends on the seed alone.
func shuffled(n int, seed *uint64) []int {
	out := make([]int, n)
	for i := range out {
		j := int(next(seed) % uint64(i+1))
		out[i] = out[j]
		out[j] = i
	}
	return out
}

// next is Marsaglia's xorshift generator, 64 bits, 2003.
func next(seed *uint64) uint64 {
	*seed ^= *seed << 13
	*seed ^= *seed >> 7
	*seed ^= *seed << 17
	return *seed
}

func (b *bench) certify(ss sets, lim limits) StripCertificate {
	made, cost := ss.worth()
	waste := lim.waste(made)
	cert := StripCertificate{
		Panels: made, PanelsBound: max(made, lim.panels),
		Waste: b.grid.length(cost) / 2, WasteBound: b.grid.length(waste) / 2,
		Best: made >= lim.panels && cost <= waste,
	}
	for _, s := range ss {
		cert.Strips += len(s.picked)
	}
	cert.StripsBound = b.stripsBound(ss)
	return cert
}

// stripsBound bounds the number of strips in plans that make the same panels:
// the widest or, where narrow ones are wanted, the narrowest that fill them.
func (b *bench) stripsBound(ss sets) int {
	var low, high int64
	for i, s := range ss {
		if s.made {
			low += b.goals[i].low
			high += b.total(s.picked)
		}
	}
	n := len(b.widths)
	if b.wish.narrow {
		k := 0
		for sum := int64(0); k < n && sum+b.widths[n-1-k] <= high; k++ {
			sum += b.widths[n-1-k]
		}
		return k
	}
	k := 0
	for sum := int64(0); k < n && sum < low; k++ {
		sum += b.widths[k]
	}
	return k
}

func (b *bench) total(at []int) (sum int64) {
	for _, a := range at {
		sum += b.widths[a]
	}
	return sum
}

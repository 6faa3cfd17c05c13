package plan

import (
	"slices"

	"presshand/engine/unit"
)

// balance spreads all strips evenly over as many panels as the stock's width
// could fill, and then moves what is over in one to where it lacks. Panel after
// panel leaves the last few strips that go together badly; this is for stock
// that is nearly all needed in panels of few strips.
func (b *bench) balance(lim limits, watch Watch[unit.Length]) sets {
	var at []int // the panels tried
	for i := range b.goals {
		if lim.costs[i] >= 0 && len(at) < lim.panels {
			at = append(at, i)
		}
	}
	heaps := b.deal(at)
	for range 4 * len(at) {
		if !b.report(nil, lim, watch) || !b.relieve(at, heaps) {
			break
		}
	}
	ss := make(sets, len(b.goals))
	for h, i := range at {
		slices.Sort(heaps[h])
		if c, ok := choose(b.of(heaps[h]), b.goals[i], b.wish); ok {
			ss[i] = b.setOf(c, heaps[h])
		}
	}
	return ss
}

// deal gives each strip, widest first, to the panel that lacks most.
func (b *bench) deal(at []int) [][]int {
	heaps := make([][]int, len(at))
	lacks := make([]int64, len(at))
	for h, i := range at {
		lacks[h] = b.goals[i].low
	}
	for s, w := range b.widths {
		most := 0
		for h := range at {
			if lacks[h] > lacks[most] {
				most = h
			}
		}
		heaps[most] = append(heaps[most], s)
		lacks[most] -= w
	}
	return heaps
}

// relieve takes the panel that lacks most and divides its strips and another's
// anew, so that it lacks less and the other nothing; false where no other helps.
func (b *bench) relieve(at []int, heaps [][]int) bool {
	lack := func(h int) int64 { return b.goals[at[h]].low - b.total(heaps[h]) }
	worst := 0
	for h := range at {
		if lack(h) > lack(worst) {
			worst = h
		}
	}
	least, with := lack(worst), -1
	if least <= 0 {
		return false
	}
	var mine, others []int
	for h := range at {
		if lack(h) >= 0 {
			continue
		}
		pool := slices.Concat(heaps[h], heaps[worst])
		slices.Sort(pool)
		c, ok := choose(b.of(pool), b.goals[at[h]], b.wish)
		if !ok {
			continue
		}
		theirs := b.setOf(c, pool).picked
		rest := slices.DeleteFunc(pool, func(s int) bool { return slices.Contains(theirs, s) })
		if l := b.goals[at[worst]].low - b.total(rest); l < least {
			least, with, mine, others = l, h, rest, theirs
		}
	}
	if with < 0 {
		return false
	}
	heaps[worst], heaps[with] = mine, others
	return true
}

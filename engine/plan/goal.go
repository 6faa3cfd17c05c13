package plan

import (
	"math"

	"presshand/engine/unit"
)

// goal returns the sums that suit a panel of width w.
func (job StripJob) goal(g grid, w unit.Length) goal {
	if !job.Wedged {
		t := g.up(w + job.Trim)
		return goal{low: t, ideal2: 2 * t, high: math.MaxInt64 / 4}
	}
	low, high := g.up(w-job.WedgeHigh), g.down(w-job.WedgeLow)
	return goal{low: max(low, 1), ideal2: g.near(2*w - job.WedgeLow - job.WedgeHigh), high: high}
}

// A goal is what the strips of one panel add up to, in grid units: low to
// high, the nearer the ideal the better. The ideal is kept doubled, because the
// middle of a window may lie half-way between two grid lines.
type goal struct{ low, ideal2, high int64 }

// cost returns twice the distance of a sum from the ideal.
func (g goal) cost(sum int64) int64 {
	return max(2*sum-g.ideal2, g.ideal2-2*sum)
}

func (g goal) allows(sum int64) bool { return g.low <= sum && sum <= g.high }

// least returns the smallest cost that any multiple of step can have, and
// whether one is allowed at all.
func (g goal) least(step int64) (int64, bool) {
	below := max(floorDiv(g.ideal2, 2*step)*step, ceilDiv(g.low, step)*step)
	best, ok := int64(math.MaxInt64), false
	for _, s := range []int64{below, below + step} {
		if g.allows(s) {
			best, ok = min(best, g.cost(s)), true
		}
	}
	return best, ok
}

// trimmed reports whether less than the ideal is never allowed.
func (g goal) trimmed() bool { return 2*g.low == g.ideal2 }

// within returns the least and the greatest sum allowed that cost no more than
// cost.
func (g goal) within(cost int64) (low, high int64) {
	return max(g.low, ceilDiv(g.ideal2-cost, 2)), min(g.high, floorDiv(g.ideal2+cost, 2))
}

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

func ceilDiv(a, b int64) int64 { return -floorDiv(-a, b) }

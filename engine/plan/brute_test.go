package plan_test

import (
	"math"

	"presshand/engine/plan"
)

// dice is a small generator for test instances (Marsaglia's xorshift, 2003).
type dice uint64

func (d *dice) roll(n int) int {
	*d ^= *d << 13
	*d ^= *d >> 7
	*d ^= *d << 17
	return int(*d % dice(n))
}

func (d *dice) from(low, high int) int { return low + d.roll(high-low+1) }

// bruteBest tries every way to give each strip to a panel or to none and
// returns the most panels, the least waste of as many in tenths of a
// millimetre doubled, and the fewest or the most strips at that.
type bruteBest struct{ panels, waste, fewest, most int }

// brute works in tenths of a millimetre; its targets include the trim. In
// wedge mode low and high are the window and the targets are the openings.
type brute struct {
	widths, targets []int
	wedged          bool
	low, high       int
	mostStrips      int
	differ          bool
}

func (b brute) best() bruteBest {
	out := bruteBest{panels: -1}
	give := make([]int, len(b.widths))
	var try func(i int)
	try = func(i int) {
		if i == len(give) {
			b.judge(give, &out)
			return
		}
		for g := 0; g <= len(b.targets); g++ {
			give[i] = g
			try(i + 1)
		}
	}
	try(0)
	return out
}

func (b brute) judge(give []int, best *bruteBest) {
	made, waste, strips := 0, 0, 0
	for t, target := range b.targets {
		sum, n := 0, 0
		count := map[int]int{}
		for i, g := range give {
			if g == t+1 {
				sum += b.widths[i]
				n++
				count[b.widths[i]]++
			}
		}
		if n == 0 {
			continue
		}
		w, ok := b.wasteOf(target, sum)
		if !ok || b.mostStrips > 0 && n > b.mostStrips || b.differ && tooMany(count, n) {
			return // an assignment that does not count
		}
		made, waste, strips = made+1, waste+w, strips+n
	}
	switch {
	case made > best.panels || made == best.panels && waste < best.waste:
		*best = bruteBest{made, waste, strips, strips}
	case made == best.panels && waste == best.waste:
		best.fewest, best.most = min(best.fewest, strips), max(best.most, strips)
	}
}

// wasteOf is doubled, because the middle of a window may be a half.
func (b brute) wasteOf(target, sum int) (int, bool) {
	if !b.wedged {
		return 2 * (sum - target), sum >= target
	}
	gap := target - sum
	return int(math.Abs(float64(2*gap - b.low - b.high))), b.low <= gap && gap <= b.high
}

func tooMany(count map[int]int, n int) bool {
	for _, c := range count {
		if c > n-n/2 {
			return true
		}
	}
	return false
}

func (b brute) job(narrow bool) plan.StripJob {
	job := plan.StripJob{Wedged: b.wedged, MostStrips: b.mostStrips, Differ: b.differ, UseNarrow: narrow,
		WedgeLow: tenths(b.low), WedgeHigh: tenths(b.high)}
	for _, w := range b.widths {
		job.Stock = append(job.Stock, plan.Pile{Width: tenths(w), Count: 1})
	}
	for _, t := range b.targets {
		job.Panels = append(job.Panels, plan.Panel{Width: tenths(t), Count: 1})
	}
	return job
}

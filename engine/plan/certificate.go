package plan

import (
	"fmt"
	"math"
	"math/big"

	"presshand/engine/unit"
)

// The checkers in the certificate files know the questions and the answers and
// nothing of how the answers are made: they share no code with the makers, do
// their own arithmetic (in whole nanometres and milliseconds), and say what is
// wrong with a plan.

// nmPerGrid is the grid of the strip plans, for what rounding to it may cost.
const nmPerGrid = 3125

// A stripCheck is one run of [CheckStrips], in nanometres.
type stripCheck struct {
	job   StripJob
	plan  StripPlan
	left  map[int64]int // stock by width
	waste int64         // doubled
	used  int
}

// CheckStrips returns what is wrong with a plan for a job; nil where the picks
// are what they say, the stock holds them, every wish is kept and the
// certificate agrees with them. That one panel of any number of strips is
// best it proves again, by its own table of sums.
func CheckStrips(job StripJob, p StripPlan) error {
	c := &stripCheck{job: job, plan: p, left: map[int64]int{}}
	for _, pile := range job.Stock {
		if pile.Count > 0 {
			c.left[nm(pile.Width)] += pile.Count
		}
	}
	made := map[int]int{}
	for i, pick := range p.Picks {
		if pick.Panel < 0 || pick.Panel >= len(job.Panels) {
			return fmt.Errorf("pick %d is for panel %d of %d", i, pick.Panel, len(job.Panels))
		}
		if made[pick.Panel]++; made[pick.Panel] > job.Panels[pick.Panel].Count {
			return fmt.Errorf("panel %d is made more often than the %d wanted", pick.Panel, job.Panels[pick.Panel].Count)
		}
		if err := c.pick(pick); err != nil {
			return fmt.Errorf("pick %d: %w", i, err)
		}
	}
	if err := c.rest(); err != nil {
		return err
	}
	if err := c.certificate(); err != nil {
		return err
	}
	return c.best()
}

func nm(l unit.Length) int64 { return int64(math.Round(float64(l) * 1e9)) }

func near(a unit.Length, b, within int64) bool {
	d := nm(a) - b
	return -within <= d && d <= within
}

func (c *stripCheck) pick(p Pick) error {
	var sum int64
	alike := false
	for i, w := range p.Widths {
		if c.left[nm(w)]--; c.left[nm(w)] < 0 {
			return fmt.Errorf("a strip of %g mm is not in stock any more", w.Millimetres())
		}
		if c.job.Narrowest > 0 && nm(w) < nm(c.job.Narrowest)-nmPerGrid || c.job.Widest > 0 && nm(w) > nm(c.job.Widest)+nmPerGrid {
			return fmt.Errorf("a strip of %g mm is not to be used", w.Millimetres())
		}
		alike = alike || i > 0 && nm(w) == nm(p.Widths[i-1])
		sum += nm(w)
	}
	c.used += len(p.Widths)
	switch n := len(p.Widths); {
	case n == 0:
		return fmt.Errorf("no strips")
	case c.job.MostStrips > 0 && n > c.job.MostStrips:
		return fmt.Errorf("%d strips, want at most %d", n, c.job.MostStrips)
	case !near(p.Sum, sum, 1):
		return fmt.Errorf("sum is said to be %g mm, is %g mm", p.Sum.Millimetres(), float64(sum)/1e6)
	case p.Differ && alike:
		return fmt.Errorf("two neighbours are alike, said to differ")
	}
	return c.fit(p, sum)
}

// fit checks that the sum suits its panel. A width off the grid may have been
// rounded by a grid line.
func (c *stripCheck) fit(p Pick, sum int64) error {
	wanted := nm(c.job.Panels[p.Panel].Width)
	if !c.job.Wedged {
		over := sum - wanted - nm(c.job.Trim)
		if over < -1 || !near(p.Over, over, 2) {
			return fmt.Errorf("runs %g mm over, said to be %g mm", float64(over)/1e6, p.Over.Millimetres())
		}
		c.waste += 2 * over
		return nil
	}
	rounding := int64(len(p.Widths)+2) * nmPerGrid / 2
	gap := wanted - sum
	low, high := nm(c.job.WedgeLow), nm(c.job.WedgeHigh)
	if gap < low-rounding || gap > high+rounding || !near(p.Gap, gap, 2) {
		return fmt.Errorf("leaves %g mm for the wedge, said to be %g mm, want %g to %g mm", float64(gap)/1e6,
			p.Gap.Millimetres(), float64(low)/1e6, float64(high)/1e6)
	}
	c.waste += max(2*gap-low-high, low+high-2*gap)
	return nil
}

func (c *stripCheck) rest() error {
	n, width := 0, int64(0)
	for w, k := range c.left {
		n += k
		width += w * int64(k)
	}
	if n != c.plan.Left || !near(c.plan.LeftWidth, width, int64(n)+2) {
		return fmt.Errorf("%d strips left of %g mm together, said to be %d of %g mm", n, float64(width)/1e6,
			c.plan.Left, c.plan.LeftWidth.Millimetres())
	}
	return nil
}

func (c *stripCheck) certificate() error {
	cert := c.plan.Certificate
	rounding := int64(c.used+2*len(c.plan.Picks)) * nmPerGrid
	switch {
	case cert.Panels != len(c.plan.Picks) || cert.Strips != c.used:
		return fmt.Errorf("certificate is of %d panels and %d strips, there are %d and %d", cert.Panels, cert.Strips, len(c.plan.Picks), c.used)
	case cert.PanelsBound < cert.Panels:
		return fmt.Errorf("%d panels are made, said to be at most %d", cert.Panels, cert.PanelsBound)
	case !near(cert.Waste, c.waste/2, rounding):
		return fmt.Errorf("waste is %g mm, certified as %g mm", float64(c.waste)/2e6, cert.Waste.Millimetres())
	case cert.WasteBound > cert.Waste || cert.WasteBound < 0:
		return fmt.Errorf("waste of %g mm is under its bound of %g mm", cert.Waste.Millimetres(), cert.WasteBound.Millimetres())
	case cert.Best && cert.Panels > 0 && (cert.PanelsBound != cert.Panels || cert.WasteBound != cert.Waste):
		return fmt.Errorf("certified as best, but off its bounds")
	case cert.Fewest && cert.StripsBound != cert.Strips:
		return fmt.Errorf("number of strips certified as best, but off its bound of %d", cert.StripsBound)
	}
	return nil
}

// best proves again that one panel is best: it marks every sum that the stock
// can have in one long number and looks for a better one. Nothing to waste
// needs no proof, and limits on strips are beyond it.
func (c *stripCheck) best() error {
	cert := c.plan.Certificate
	wanted := 0
	for _, p := range c.job.Panels {
		wanted += max(0, p.Count)
	}
	if wanted != 1 || !cert.Best || c.job.MostStrips > 0 || c.job.Differ || cert.Panels == 1 && cert.Waste == 0 {
		return nil
	}
	low, high, ok := c.betterThan()
	if !ok {
		return nil
	}
	var ws []int64
	step := new(big.Int)
	if _, exact := c.job.grid(); !exact {
		high -= int64(c.strips()) * nmPerGrid
	}
	for _, p := range c.job.Stock {
		usable := nm(p.Width) >= nm(c.job.Narrowest) && (c.job.Widest == 0 || nm(p.Width) <= nm(c.job.Widest))
		for k := 0; usable && k < p.Count; k++ {
			ws = append(ws, nm(p.Width))
			step.GCD(nil, nil, step, big.NewInt(nm(p.Width)))
		}
	}
	if len(ws) == 0 || high/step.Int64() > 1<<22 {
		return nil // no strips, or widths off any grid
	}
	if s, found := sumBetween(ws, step.Int64(), low, high); found {
		return fmt.Errorf("certified as best, but a sum of %g mm is better", float64(s)/1e6)
	}
	return nil
}

// strips is how many the stock has.
func (c *stripCheck) strips() (n int) {
	for _, p := range c.job.Stock {
		n += max(0, p.Count)
	}
	return n
}

// betterThan returns the sums that would be better than the plan's.
func (c *stripCheck) betterThan() (low, high int64, ok bool) {
	var w int64
	for _, p := range c.job.Panels {
		if p.Count > 0 {
			w = nm(p.Width)
		}
	}
	made := len(c.plan.Picks) == 1
	if !c.job.Wedged {
		low = w + nm(c.job.Trim)
		if !made {
			for _, p := range c.job.Stock {
				high = max(high, low+nm(p.Width)) // one strip less would do beyond
			}
			return low, high, true
		}
		return low, low + c.waste/2 - nmPerGrid, true
	}
	low, high = w-nm(c.job.WedgeHigh), w-nm(c.job.WedgeLow)
	if made {
		middle := (low + high) / 2
		low, high = middle-c.waste/2+nmPerGrid, middle+c.waste/2-nmPerGrid
	}
	return low, high, low > 0
}

// sumBetween looks for a sum of some of ws, all multiples of step, from low to
// high.
func sumBetween(ws []int64, step, low, high int64) (int64, bool) {
	reached, moved := big.NewInt(1), new(big.Int)
	within := new(big.Int).Lsh(big.NewInt(1), uint(high/step)+1)
	within.Sub(within, big.NewInt(1))
	for _, w := range ws {
		moved.Lsh(reached, uint(w/step))
		reached.Or(reached, moved).And(reached, within)
	}
	for i := (low + step - 1) / step; i <= high/step; i++ {
		if reached.Bit(int(i)) == 1 {
			return i * step, true
		}
	}
	return 0, false
}

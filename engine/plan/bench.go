package plan

import (
	"cmp"
	"math"
	"slices"

	"presshand/engine/unit"
)

// A bench is a job laid out in whole numbers.
type bench struct {
	grid   grid
	widths []int64 // usable strips, widest first
	pile   []int   // where each comes from
	panels []int   // index into the job's panels, one for each panel wanted, narrowest first
	goals  []goal  // beside panels
	wish   wish

	stopped bool // the watch has had enough
}

// A wish is what is asked of a panel beside its sum.
type wish struct {
	most           int // strips in one panel
	narrow, differ bool
}

func newBench(job StripJob) *bench {
	g, _ := job.grid()
	b := &bench{grid: g, wish: wish{job.MostStrips, job.UseNarrow, job.Differ}}
	byWidth := make([]int, 0, len(job.Stock))
	for i, p := range job.Stock {
		tooNarrow := job.Narrowest > 0 && usual.near(p.Width) < usual.near(job.Narrowest)
		tooWide := job.Widest > 0 && usual.near(p.Width) > usual.near(job.Widest)
		if p.Count > 0 && !tooNarrow && !tooWide {
			byWidth = append(byWidth, i)
		}
	}
	slices.SortStableFunc(byWidth, func(i, j int) int { return -cmpWidth(job.Stock[i].Width, job.Stock[j].Width) })
	for _, i := range byWidth {
		for range job.Stock[i].Count {
			b.widths = append(b.widths, job.lines(g, job.Stock[i].Width))
			b.pile = append(b.pile, i)
		}
	}
	if b.wish.most == 0 {
		b.wish.most = len(b.widths)
	}
	for i, p := range job.Panels {
		for range p.Count {
			b.panels = append(b.panels, i)
		}
	}
	slices.SortStableFunc(b.panels, func(i, j int) int { return cmpWidth(job.Panels[i].Width, job.Panels[j].Width) })
	for _, i := range b.panels {
		b.goals = append(b.goals, job.goal(g, job.Panels[i].Width))
	}
	return b
}

// lines rounds a strip so that no plan can come out too narrow: down where it
// is trimmed, to the nearest where a wedge takes up either.
func (job StripJob) lines(g grid, w unit.Length) int64 {
	if job.Wedged {
		return g.near(w)
	}
	return g.down(w)
}

func cmpWidth(a, b unit.Length) int { return cmp.Compare(nanometres(a), nanometres(b)) }

// plan puts sets into the words of the job.
func (b *bench) plan(job StripJob, ss sets, cert StripCertificate) StripPlan {
	p := StripPlan{Certificate: cert}
	used := make([]bool, len(b.widths))
	for i, s := range ss {
		if !s.made {
			continue
		}
		p.Picks = append(p.Picks, b.pick(job, b.panels[i], s.picked))
		for _, at := range s.picked {
			used[at] = true
		}
	}
	var nm int64
	for _, pile := range job.Stock {
		p.Left += max(0, pile.Count)
		nm += int64(max(0, pile.Count)) * nanometres(pile.Width)
	}
	for _, pick := range p.Picks {
		p.Left -= len(pick.Widths)
		nm -= nanometres(pick.Sum)
	}
	p.LeftWidth = unit.Length(float64(nm) / 1e9)
	b.further(job, ss, b.of(unused(used)), &p)
	return p
}

// further says how far the strips left over go.
func (b *bench) further(job StripJob, ss sets, left []int64, p *StripPlan) {
	var most int64
	for _, w := range left[:min(len(left), b.wish.most)] {
		most += w
	}
	spare := -job.Trim
	if job.Wedged {
		spare = job.WedgeHigh
	}
	if most > 0 {
		p.Reach = max(0, exactly(b.grid.length(most)+spare))
	}
	for i, s := range ss {
		if !s.made {
			p.Short = b.grid.length(max(0, b.goals[i].low-most))
			return
		}
	}
}

func (b *bench) pick(job StripJob, panel int, picked []int) Pick {
	order, differ := lay(b.of(picked))
	out := Pick{Panel: panel, Differ: differ}
	var nm int64
	for _, o := range order {
		w := job.Stock[b.pile[picked[o]]].Width
		out.Widths = append(out.Widths, w)
		nm += nanometres(w)
	}
	out.Sum = unit.Length(float64(nm) / 1e9)
	wanted := job.Panels[panel].Width
	if job.Wedged {
		out.Gap = exactly(wanted - out.Sum)
	} else {
		out.Over = max(0, exactly(out.Sum-wanted-job.Trim))
	}
	return out
}

// Sums are reported to the nanometre, which holds 1/64 in and 0.1 mm exactly
// and hides the rounding of floating-point sums.
func nanometres(l unit.Length) int64 { return int64(math.Round(l.Metres() * 1e9)) }

func exactly(l unit.Length) unit.Length { return unit.Length(float64(nanometres(l)) / 1e9) }

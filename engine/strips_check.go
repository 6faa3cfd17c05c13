package engine

import (
	"fmt"
	"math"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// judge judges whether the stock does, and says how good the choice is proven
// to be.
func (s *stripping) judge(b *builder) {
	made := len(s.plan.Picks)
	figures := s.figures()
	switch {
	case made == s.wanted || s.most && made > 0:
		b.judge("pick", Good, s.certified(), figures)
		if b.stopped && !s.plan.Certificate.Best {
			b.advise(ReasonStopped, nil)
		}
		if s.judgeNeighbours(b) {
			b.advise(s.certified(), figures) // which a check that is good does not say beside one that is not
		}
		s.adviseMore(b)
		return
	case b.stopped && s.plan.Certificate.PanelsBound > made:
		b.judge("pick", Care, ReasonPicksUnfinished, figures)
		return
	case len(s.usable()) == 0:
		b.judge("stock", Stop, ReasonStockNoneSuch, figures)
	case s.plan.Short == 0:
		b.judge("stock", Stop, ReasonStockNoFit, figures)
	case made == 0 && s.fewWanted():
		b.judge("stock", Stop, ReasonStockShortOfFew, figures)
	case made == 0 && s.limited():
		b.judge("stock", Stop, ReasonStockShortOfSuch, figures)
	case made == 0:
		b.judge("stock", Stop, ReasonStockShort, figures)
	default:
		b.judge("stock", Stop, ReasonStockShortOfMore, figures)
	}
	if made > 0 {
		b.advise(s.certified(), figures)
		s.judgeNeighbours(b)
	}
}

// fewWanted reports whether fewer strips may be taken than there are.
func (s *stripping) fewWanted() bool {
	pieces := 0
	for _, p := range s.usable() {
		pieces += p.Count
	}
	return s.job.MostStrips > 0 && s.job.MostStrips < pieces
}

// certified returns the reason that stands for the plan's certificate.
func (s *stripping) certified() Reason {
	c := s.plan.Certificate
	one := s.wanted == 1
	switch {
	case c.PanelsBound > c.Panels && !c.Best:
		return ReasonPicksMaybeMore
	case !c.Best:
		return ReasonPicksNear
	case c.Panels < s.wanted || s.most:
		return ReasonPicksMost
	case s.job.Wedged && one:
		return ReasonPickWedge
	case !s.job.Wedged && c.Waste == 0 && !(one && s.job.UseNarrow):
		return ReasonPickExact
	case !one:
		return ReasonPicksBest
	case s.job.UseNarrow && c.Fewest:
		return ReasonPickNarrow
	case s.job.UseNarrow:
		return ReasonPickNarrowMaybe
	case c.Fewest:
		return ReasonPickBest
	}
	return ReasonPickLeastWaste
}

func (s *stripping) figures() unit.Facts {
	c := s.plan.Certificate
	fs := unit.Facts{
		unit.PanelsMade: unit.Number(c.Panels), unit.PanelsMost: unit.Number(c.PanelsBound), unit.PanelCount: unit.Number(s.wanted),
		unit.Waste: unit.Waste.Number(c.Waste.Metres()), unit.WasteLeast: unit.WasteLeast.Number(c.WasteBound.Metres()),
		unit.StripsUsed: unit.Number(c.Strips), unit.StripsLeast: unit.Number(c.StripsBound),
		unit.StockReach: unit.StockReach.Number(s.plan.Reach.Metres()), unit.StockShort: unit.StockShort.Number(s.plan.Short.Metres()),
	}
	var used unit.Length
	for _, p := range s.plan.Picks {
		used += p.Sum
	}
	if used > 0 {
		fs[unit.WastePercent] = unit.Number(math.Ceil(1000*float64((c.Waste-c.WasteBound)/used)-1e-9) / 10)
	}
	if s.job.MostStrips > 0 {
		fs[unit.StripCount] = unit.Number(s.job.MostStrips)
	}
	if held := s.held(); len(held) > 0 {
		fs[unit.Held] = held
	}
	if s.job.Wedged {
		fs[unit.WedgeLow] = unit.WedgeLow.Number(s.job.WedgeLow.Metres())
		fs[unit.WedgeHigh] = unit.WedgeHigh.Number(s.job.WedgeHigh.Metres())
	}
	return fs
}

// adviseMore tells where one panel was chosen for and the stock makes several.
func (s *stripping) adviseMore(b *builder) {
	if s.most || s.wanted > 1 || b.known(unit.PanelCount, unit.Targets) {
		return
	}
	all := s.job
	all.Panels = []plan.Panel{{Width: s.job.Panels[0].Width, Count: s.widthFor(s.job.Panels[0].Width)}}
	if all.Panels[0].Count < 2 {
		return
	}
	p, err := plan.Strips(all, watched[unit.Length](b))
	if err != nil || len(p.Picks) < 2 {
		return
	}
	b.advise(ReasonStockMakesMore, unit.Facts{unit.PanelsMade: unit.Number(len(p.Picks))})
}

// work keeps the working of the first pick, and how the choice was made.
func (s *stripping) work(b *builder) {
	const source = "subset sums by dynamic programming on a grid of 1/320 mm (derived)"
	c := s.plan.Certificate
	p := s.plan.Picks[0]
	b.work(unit.WidthSum, unit.Exactly(p.Sum.Metres()), "sum of the strips taken; most panels first, then least waste, then fewest strips", source, Computed, func() string {
		return fmt.Sprintf("%d strips; waste %s, least possible %s", len(p.Widths), say(unit.Waste, c.Waste.Metres()), say(unit.WasteLeast, c.WasteBound.Metres()))
	})
	panel := s.job.Panels[p.Panel].Width.Metres()
	if s.job.Wedged {
		b.work(unit.WedgeGap, unit.Exactly(p.Gap.Metres()), "opening − sum", "geometry", Computed, func() string {
			return say(unit.WedgeGap, panel) + " − " + say(unit.WedgeGap, p.Sum.Metres())
		})
		return
	}
	b.work(unit.Over, unit.Exactly(p.Over.Metres()), "sum − target − trim", "geometry", Computed, func() string {
		return say(unit.Over, p.Sum.Metres()) + " − " + say(unit.Over, panel) + " − " + say(unit.Over, s.job.Trim.Metres())
	})
}

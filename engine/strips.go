package engine

import (
	"errors"
	"math"
	"slices"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// A stripping is what a question about strips asks for, and what came of it.
type stripping struct {
	job    plan.StripJob
	most   bool // as many panels as the stock makes
	wanted int
	plan   plan.StripPlan
}

// answerStrips answers which strips of a stock make the panels.
func answerStrips(b *builder) error {
	s := stripping{job: plan.StripJob{Stock: b.stock()}}
	s.fit(b)
	s.wish(b)
	panels, err := b.panelsWanted()
	if err != nil {
		return err
	}
	if len(s.job.Stock) == 0 {
		b.need(unit.StockPiles)
	}
	if len(panels) == 0 {
		b.need(unit.TargetWidth)
	}
	if len(b.a.Needs) > 0 {
		return nil
	}
	s.job.Panels = panels
	s.many(b)
	if s.plan, err = plan.Strips(s.job, watched[unit.Length](b)); err != nil {
		return underField(err, stripFields)
	}
	s.give(b)
	s.judge(b)
	return nil
}

// stripFields are the fields behind what a choice of strips refuses.
var stripFields = map[string]unit.Field{
	"strip width": unit.StockPiles, "number of strips in stock": unit.StockPiles,
	"panel width": unit.TargetWidth, "number of panels": unit.PanelCount, "trim": unit.Trim,
	"most strips in a panel": unit.StripCount, "room for the wedge": unit.WedgeLow, "most room for the wedge": unit.WedgeHigh,
}

// underField names the field in an error of a plan.
func underField(err error, fields map[string]unit.Field) error {
	var bad *unit.RangeError
	if !errors.As(err, &bad) {
		return err
	}
	f, ok := fields[bad.What]
	if !ok {
		return err
	}
	return &unit.RangeError{What: string(f), Got: bad.Got, Unit: bad.Unit, Want: bad.Want}
}

// stock returns the strips at hand: as listed, else so many of one width.
func (b *builder) stock() []plan.Pile {
	v, _ := b.value(unit.StockPiles)
	listed, _ := v.(unit.Piles)
	if n, ok := b.number(unit.StripCount); len(listed) == 0 && ok {
		if w, ok := b.number(unit.StripWidth); ok {
			listed = unit.Piles{{Width: w * 1000, Count: int(math.Min(n, plan.MaxPieces+1))}}
		}
	}
	out := make([]plan.Pile, 0, len(listed))
	for _, p := range listed {
		out = append(out, plan.Pile{Width: unit.Millimetres(p.Width), Count: p.Count})
	}
	return out
}

// panelsWanted returns the panels to fill: as listed, else so many of one
// width, one where no count is said.
func (b *builder) panelsWanted() ([]plan.Panel, error) {
	v, _ := b.value(unit.Targets)
	if listed, ok := v.(unit.Piles); ok && len(listed) > 0 {
		out := make([]plan.Panel, 0, len(listed))
		for _, p := range listed {
			out = append(out, plan.Panel{Width: unit.Millimetres(p.Width), Count: p.Count})
		}
		return out, nil
	}
	w, ok := b.number(unit.TargetWidth)
	if !ok {
		if w, ok = b.number(unit.PanelWidth); !ok {
			return nil, nil
		}
	}
	n := 1
	if b.known(unit.PanelCount) {
		var err error
		if n, err = b.count(unit.PanelCount, 1); err != nil {
			return nil, err
		}
	}
	return []plan.Panel{{Width: unit.Length(w), Count: n}}, nil
}

// fit reads how the strips have to fit: to be trimmed, or with room for a wedge.
func (s *stripping) fit(b *builder) {
	if n, ok := b.number(unit.StripCount); ok && b.known(unit.StockPiles) {
		s.job.MostStrips = int(math.Min(n, plan.MaxPieces))
	}
	s.job.Wedged = b.known(unit.WedgeLow, unit.WedgeHigh) || b.known(unit.WedgeRatio, unit.WedgeForce) && !b.known(unit.Trim)
	if !s.job.Wedged {
		s.job.Trim = unit.Length(b.numberOr(unit.Trim, plan.DefaultTrim.Metres()))
		return
	}
	low, high := plan.DefaultWedge[0].Metres(), plan.DefaultWedge[1].Metres()
	if v, ok := b.number(unit.WedgeHigh); ok {
		low, high = math.Min(low, v), v
	}
	low = b.numberOr(unit.WedgeLow, low)
	high = b.numberOr(unit.WedgeHigh, math.Max(high, low))
	s.job.WedgeLow, s.job.WedgeHigh = unit.Length(low), unit.Length(high)
}

// many counts the panels wanted: as said, or as many as there is width for
// where how many is what is asked.
func (s *stripping) many(b *builder) {
	s.most = slices.Contains(b.q.For, unit.PanelCount) && !b.said(unit.PanelCount) && len(s.job.Panels) == 1
	if s.most {
		s.job.Panels[0].Count = s.widthFor(s.job.Panels[0].Width)
	}
	for _, p := range s.job.Panels {
		s.wanted += p.Count
	}
}

// widthFor returns how many panels all the strips together are wide enough for,
// at least one.
func (s *stripping) widthFor(panel unit.Length) int {
	var all unit.Length
	for _, p := range s.usable() {
		all += p.Width * unit.Length(p.Count)
	}
	each := panel + s.job.Trim
	if s.job.Wedged {
		each = panel - s.job.WedgeHigh
	}
	if !(each > 0) {
		return plan.MaxPanels
	}
	return int(math.Max(1, math.Min(plan.MaxPanels, math.Floor((all/each).Metres()+1e-9))))
}

// give records the picks and what they come to.
func (s *stripping) give(b *builder) {
	picks := make(unit.Sets, 0, len(s.plan.Picks))
	var sums, overs, gaps unit.Triples
	var targets unit.Numbers
	for _, p := range s.plan.Picks {
		widths := make([]float64, 0, len(p.Widths))
		for _, w := range p.Widths {
			widths = append(widths, tidy(w))
		}
		picks = append(picks, widths)
		sums = append(sums, exactTriple(unit.WidthSum, p.Sum))
		overs = append(overs, exactTriple(unit.Over, p.Over))
		gaps = append(gaps, exactTriple(unit.WedgeGap, p.Gap))
		targets = append(targets, tidy(s.job.Panels[p.Panel].Width))
	}
	give(b, unit.StripsLeft, unit.Exactly(float64(s.plan.Left)))
	give(b, unit.PanelsMade, unit.Exactly(float64(len(picks))))
	if s.most {
		give(b, unit.PanelCount, unit.Exactly(float64(len(picks))))
	}
	if len(picks) < s.wanted {
		give(b, unit.StockReach, unit.Exactly(s.plan.Reach))
		give(b, unit.StockShort, unit.Exactly(s.plan.Short))
	}
	if len(picks) == 0 {
		return
	}
	b.giveValue(unit.Picks, picks)
	b.giveValue(unit.PickTargets, targets)
	b.giveEach(unit.WidthSum, sums)
	if s.job.Wedged {
		b.giveEach(unit.WedgeGap, gaps)
	} else {
		b.giveEach(unit.Over, overs)
	}
	s.work(b)
}

// giveEach records a figure of one pick, or the figures of several.
func (b *builder) giveEach(f unit.Field, each unit.Triples) {
	if len(each) == 1 {
		b.giveValue(f, each[0])
		return
	}
	b.giveValue(f, each)
}

func exactTriple(f unit.Field, l unit.Length) unit.Triple {
	return figure(f, unit.Exactly(l.Metres()))
}

// tidy returns a length in mm without the rounding of a floating-point number.
func tidy(l unit.Length) float64 { return math.Round(l.Millimetres()*1e6) / 1e6 }

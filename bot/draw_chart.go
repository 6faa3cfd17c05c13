package bot

import (
	"math"
	"regexp"
	"slices"

	"presshand/bot/picture"
	"presshand/engine"
	"presshand/engine/unit"
)

const (
	curvePoints = 12  // along a curve, beside those where it bends
	maxCharted  = 120 // strips; the marks of more would be a line
)

// chart draws how the side pressure falls with the distance from the bar.
func (d Drawn) chart() picture.PressureChart {
	out := picture.PressureChart{
		Units: d.units(), Reach: rangeOf[unit.Length](unit.BarReach, d.Answer.Values[unit.BarReach]),
		Preload: d.pressure(unit.Preload), Contact: d.pressure(unit.GlueContact).Mid, Full: d.pressure(unit.GlueFull).Mid,
		Closing: d.pressure(unit.Closing), Pusher: d.pusher(),
	}
	widths := d.stripWidths()
	var whole unit.Length
	for _, w := range widths {
		whole += w
	}
	if len(widths) < 2 {
		return out
	}
	for _, x := range distances(whole, out.Reach, out.Pusher) {
		if p, ok := d.pushAt(x, whole); ok {
			out.Curve = append(out.Curve, picture.PressureAt{Distance: x, Pressure: p})
		}
	}
	var x unit.Length
	for i, w := range widths[:len(widths)-1] {
		x += w
		if p, ok := d.pushAt(x, whole); ok {
			p = unit.Around(max(p.Low, out.Preload.Low), max(p.Mid, out.Preload.Mid), max(p.High, out.Preload.High))
			out.Joints = append(out.Joints, picture.Joint{Number: i + 1, PressureAt: picture.PressureAt{Distance: x, Pressure: p}})
		}
	}
	if !d.agrees(out) {
		out.Curve = nil
	}
	return out
}

// pusher is what pushes on the edge, as the section draws it.
func (d Drawn) pusher() picture.Pusher {
	switch bar := d.bar(); {
	case bar == nil:
		return picture.FilmAlone
	case bar.Both:
		return picture.TwoBars
	}
	return picture.OneBar
}

// distances are where a curve is worked out: all along, where the push of
// either bar ends, and halfway between two.
func distances(whole unit.Length, reach unit.Range[unit.Length], from picture.Pusher) []unit.Length {
	out := []unit.Length{reach.Low, reach.Mid, reach.High}
	if from == picture.TwoBars {
		out = append(out, whole-reach.Low, whole-reach.Mid, whole-reach.High, whole/2)
	}
	for i := range curvePoints + 1 {
		out = append(out, whole*unit.Length(i)/curvePoints)
	}
	for i, x := range out {
		out[i] = min(max(x, 0), whole)
	}
	slices.Sort(out)
	return slices.CompactFunc(out, func(a, b unit.Length) bool { return max(a-b, b-a) < whole/1e6 })
}

// stripWidths are the strips from the bar on.
func (d Drawn) stripWidths() []unit.Length {
	var out []unit.Length
	if ws, ok := d.Question.Said[unit.StripWidths].(unit.Numbers); ok {
		for _, w := range ws {
			out = append(out, unit.Millimetres(w))
		}
		return out
	}
	n, w := d.count(unit.StripCount), d.length(unit.StripWidth)
	if n > maxCharted || w <= 0 {
		return nil
	}
	for range n {
		out = append(out, w)
	}
	// Of strips counted from the panel's width one is ripped narrower; the far
	// joint is a whole one in from the fence.
	if panel := d.length(unit.PanelWidth); n > 2 && panel > 0 && d.Answer.Assumed.Has(unit.StripCount) {
		if rest := panel - unit.Length(n-1)*w; rest > 0 {
			out[n-2] = rest
		}
	}
	return out
}

// fromWedge is what the bar's push does without.
var fromWedge = []unit.Field{unit.WedgeRatio, unit.WedgeForce, unit.Overfill, unit.StripWidth, unit.StripCount, unit.PanelWidth, unit.Gap}

// pushAt is what the bar alone gives a joint at a distance: that of the same
// panel sawn through there, without its wedge.
func (d Drawn) pushAt(x, whole unit.Length) (unit.Range[unit.Pressure], bool) {
	x = min(max(x, whole/1e6), whole-whole/1e6) // a strip of nothing is none
	q := engine.Question{About: engine.Side, Said: d.Question.Said.Clone(), Room: d.Question.Room}
	for f, v := range d.solved() {
		q.Said[f] = v
	}
	for _, f := range fromWedge {
		delete(q.Said, f)
	}
	q.Said[unit.StripWidths] = unit.Numbers{x.Millimetres(), (whole - x).Millimetres()}
	a, err := engine.Compute(q)
	if err != nil {
		return unit.Range[unit.Pressure]{}, false
	}
	v, ok := a.Values[unit.SideFirstJoint]
	return rangeOf[unit.Pressure](unit.SideFirstJoint, v), ok
}

// solvable are the inputs that a question may ask for backwards.
var solvable = []unit.Field{unit.BarHeight, unit.BarWidth, unit.Vacuum, unit.StripThickness, unit.CaulThickness}

// solved are the inputs that the answer found, and what it took for that.
func (d Drawn) solved() unit.Facts {
	out := unit.Facts{}
	for _, f := range solvable {
		if t, ok := d.Answer.Values[f].(unit.Triple); ok && t.Mid != nil && !d.Question.Said.Has(f) {
			out[f] = unit.Number(*t.Mid)
		}
	}
	if cover, ok := d.Answer.Assumed[unit.Cover]; ok {
		out[unit.Cover] = cover
	}
	return out
}

// agrees reports whether the answer's first and far joint are in the chart, as
// they are unless it stands on more than the question said.
func (d Drawn) agrees(c picture.PressureChart) bool {
	for _, f := range []unit.Field{unit.SideFirstJoint, unit.SideFarJoint} {
		want := d.pressure(f).Mid
		if !slices.ContainsFunc(c.Joints, func(j picture.Joint) bool {
			return math.Abs(float64(j.Pressure.Mid-want)) <= 1e-6*math.Abs(float64(want))+1
		}) {
			return false
		}
	}
	return true
}

// along are the words with which the fall of the pressure is asked for.
var along = regexp.MustCompile(`(?i)\b(chart|plot|graph|curve)\b|\b(against|with|over) (the )?distance\b|\bfalls? off\b|\b(pressure|push)\b[^.?;,]{0,30}\balong\b`)

// asksReach reports whether the question is how far the bar reaches, or for its
// push along the panel, or for the far joint where the bar may not get there.
func (d Drawn) asksReach() bool {
	far := slices.Contains(d.Question.For, unit.SideFarJoint) && len(d.solved()) == 0 && d.Answer.Verdict != engine.Good &&
		!d.Answer.Values.Has(unit.Preload) && d.pressure(unit.SideFarJoint).Low <= 0
	return far || d.along || slices.Contains(d.Question.For, unit.BarReach)
}

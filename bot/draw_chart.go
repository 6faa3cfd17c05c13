package bot

import (
	"slices"

	"presshand/bot/picture"
	"presshand/engine"
	"presshand/engine/unit"
)

// curvePoints is how many points a drawn curve has.
const curvePoints = 24

// chart draws how the side pressure falls with the distance from the bar.
func (d Drawn) chart() picture.PressureChart {
	out := picture.PressureChart{
		Units: d.units(), Reach: rangeOf[unit.Length](unit.BarReach, d.Answer.Values[unit.BarReach]),
		Preload: d.pressure(unit.Preload), Contact: d.pressure(unit.GlueContact).Mid, Full: d.pressure(unit.GlueFull).Mid,
	}
	widths := d.stripWidths()
	var whole unit.Length
	for _, w := range widths {
		whole += w
	}
	if len(widths) < 2 {
		return out
	}
	for _, x := range distances(whole, out.Reach) {
		if p, ok := d.pushAt(x, whole); ok {
			out.Curve = append(out.Curve, picture.PressureAt{Distance: x, Pressure: p})
		}
	}
	var x unit.Length
	for i, w := range widths[:len(widths)-1] {
		x += w
		if p, ok := d.pushAt(x, whole); ok {
			out.Joints = append(out.Joints, picture.Joint{Number: i + 1, PressureAt: picture.PressureAt{Distance: x, Pressure: p}})
		}
	}
	return out
}

// distances are where a curve is worked out: all along, and where the push ends.
func distances(whole unit.Length, reach unit.Range[unit.Length]) []unit.Length {
	out := []unit.Length{reach.Low, reach.Mid, reach.High}
	for i := range curvePoints + 1 {
		out = append(out, whole*unit.Length(i)/curvePoints)
	}
	for i, x := range out {
		out[i] = min(max(x, whole/1000), whole*999/1000) // a strip of nothing is none
	}
	slices.Sort(out)
	return slices.Compact(out)
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
	if n := d.count(unit.StripCount); n <= maxDrawn && d.length(unit.StripWidth) > 0 {
		for range n {
			out = append(out, d.length(unit.StripWidth))
		}
	}
	return out
}

// fromWedge is what the bar's push does without.
var fromWedge = []unit.Field{unit.WedgeRatio, unit.WedgeForce, unit.Overfill, unit.StripWidth, unit.StripCount, unit.PanelWidth, unit.Gap}

// pushAt is what the bar alone gives a joint at a distance: that of the same
// panel sawn through there, without its wedge.
func (d Drawn) pushAt(x, whole unit.Length) (unit.Range[unit.Pressure], bool) {
	q := engine.Question{About: engine.Side, Said: d.Question.Said.Clone(), Room: d.Question.Room}
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

// asksReach reports whether the question is how far the bar reaches.
func (d Drawn) asksReach() bool { return slices.Contains(d.Question.For, unit.BarReach) }

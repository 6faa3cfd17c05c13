package bot

import (
	"maps"
	"math"
	"slices"
	"strings"

	"presshand/bot/picture"
	"presshand/engine"
	"presshand/engine/unit"
)

// section draws a load cut across its joints.
func (d Drawn) section() picture.CrossSection {
	out := picture.CrossSection{
		Title: d.title, Caption: d.caption, Verdict: verdictSigns[d.Answer.Verdict],
		Units: d.units(), Layers: d.layers(), Widths: d.rowWidths(), Opening: d.length(unit.Opening), Bar: d.bar(),
		Wedge: d.wedge(), Spring: d.spring(), TwoFaces: d.twoFaces(), Proud: d.proud(),
		Height: d.answered(unit.StackHeight).Mid, Clearance: verdictSigns[d.check("height")],
		Tent: d.length(unit.Tent), Side: d.Answer.Values.Has(unit.SideFirstJoint), Face: d.pressure(unit.FacePressure),
		First: d.pressure(unit.SideFirstJoint), Far: d.pressure(unit.SideFarJoint), Preload: d.pressure(unit.Preload),
		WidthAssumed: d.Answer.Assumed.Has(unit.BarWidth), CoverSaid: d.Question.Said.Has(unit.Cover),
	}
	if v, ok := d.Question.Said[unit.Vacuum].(unit.Number); ok && out.Face.Mid == 0 && d.check("vacuum") != engine.Stop {
		out.Face = unit.Exactly(unit.Kilopascals(float64(v))) // the film presses with the vacuum, whatever was asked
	}
	if out.Side {
		out.Need = d.pressure(unit.GlueContact).Mid
	}
	if n := len(out.Widths); n > 1 && d.Answer.Assumed.Has(unit.StripCount) {
		out.Ripped = out.Widths[n/2] < out.Widths[0]
	}
	if d.Answer.Verdict == engine.Ask {
		var lacks []string
		for _, f := range d.Answer.Needs {
			lacks = append(lacks, nameOf(f))
		}
		out.Caption = "Not judged yet, for want of " + listed(lacks, "and") + "."
	}
	kind, _ := d.value(unit.PressKind).(unit.Word)
	out.Bag = kind == "bag"
	_, told := d.Question.Said[unit.StackLayers].(unit.Layers)
	out.SledAssumed = !told && d.length(unit.SledThickness) == 0
	if most, least := d.length(unit.StripThickest), d.length(unit.StripThinnest); least > 0 && least < most {
		out.Thinnest = least
	}
	return out
}

// piled reports whether a stack was described and its height worked out, which
// is worth a picture though something else is asked for.
func (d Drawn) piled() bool {
	return d.Answer.About == engine.Stack && d.Answer.Values.Has(unit.StackHeight)
}

var verdictSigns = map[engine.Verdict]picture.Verdict{engine.Good: picture.Good, engine.Care: picture.Care, engine.Stop: picture.Stop}

// check is the verdict of the first check of a name.
func (d Drawn) check(name string) engine.Verdict {
	for _, c := range d.Answer.Checks {
		if c.Name == name {
			return c.Verdict
		}
	}
	return engine.None
}

// answered is a length that the answer worked out.
func (d Drawn) answered(f unit.Field) unit.Range[unit.Length] {
	return rangeOf[unit.Length](f, d.Answer.Values[f])
}

// nanometres tells two lengths apart as no tape does.
func nanometres(l unit.Length) int64 { return int64(math.Round(l.Metres() * 1e9)) }

// statedLengths are the sizes that the person gave, as the reply's text writes
// them; what is worked out is rounded as a tape reads it.
func (d Drawn) statedLengths() map[int64]string {
	out := map[int64]string{}
	add := func(f unit.Field, mm float64, u unit.Unit) {
		out[nanometres(unit.Millimetres(mm))] = d.style.stated(f, mm, u)
	}
	for _, f := range slices.Sorted(maps.Keys(d.Question.Said)) { // in one order, should two be as long in different units
		v := d.Question.Said[f]
		if f.Dimension() != unit.Distance || !strings.HasSuffix(string(f), "_mm") {
			continue
		}
		u := d.style.fields[f]
		switch v := v.(type) {
		case unit.Number:
			add(f, float64(v), u)
		case unit.Numbers:
			for _, n := range v {
				add(f, n, u)
			}
		}
	}
	if stack, ok := d.Question.Said[unit.StackLayers].(unit.Layers); ok {
		for _, l := range stack {
			add(unit.StripThickness, l.Thickness, d.style.fields[unit.StackLayers])
		}
	}
	delete(out, 0)
	return out
}

// mostStrips keeps a row within what a picture can hold in mind.
const mostStrips = 2000

// rowWidths are the strips from the bar on. Where their count follows from the
// panel's width, one is ripped narrower, and not the one at the fence.
func (d Drawn) rowWidths() []unit.Length {
	if ws, ok := d.Question.Said[unit.StripWidths].(unit.Numbers); ok {
		var out []unit.Length
		for _, w := range ws {
			out = append(out, unit.Millimetres(w))
		}
		return out
	}
	n, w := d.count(unit.StripCount), d.length(unit.StripWidth)
	if n < 1 || n > mostStrips || w <= 0 {
		return nil
	}
	out := make([]unit.Length, n)
	for i := range out {
		out[i] = w
	}
	if panel := d.length(unit.PanelWidth); panel > 0 && d.Answer.Assumed.Has(unit.StripCount) {
		if last := panel - w*unit.Length(n-1); last > 0 && last < w {
			out[n/2] = last
		}
	}
	return out
}

// proud is how far each level stands above its fence, as it was judged.
func (d Drawn) proud() []picture.Proud {
	var judged []engine.Verdict
	for _, c := range d.Answer.Checks {
		if c.Name == "proud of the fence" {
			judged = append(judged, c.Verdict)
		}
	}
	var out []picture.Proud
	each, _ := d.Answer.Values[unit.Proud].(unit.Triples)
	for i, t := range each {
		p := picture.Proud{By: rangeOf[unit.Length](unit.Proud, t)}
		if i < len(judged) {
			p.Verdict = verdictSigns[judged[i]]
		}
		out = append(out, p)
	}
	return out
}

func (d Drawn) wedge() *picture.Wedge {
	said := d.Question.Said
	if !said.Has(unit.WedgeRatio) && !said.Has(unit.WedgeForce) {
		return nil
	}
	var words []string
	if n, ok := said[unit.WedgeRatio].(unit.Number); ok {
		words = append(words, "1 in "+d.style.stated(unit.WedgeRatio, float64(n), unit.Unit{}))
	}
	if f, ok := said[unit.WedgeForce].(unit.Number); ok {
		words = append(words, "driven with "+d.style.stated(unit.WedgeForce, float64(f), d.style.fields[unit.WedgeForce]))
	}
	return &picture.Wedge{Gap: d.length(unit.WedgeGap), Said: strings.Join(words, ", ")}
}

func (d Drawn) spring() *picture.Spring {
	over, ok := d.Question.Said[unit.Overfill].(unit.Number)
	if !ok || over <= 0 {
		return nil
	}
	return &picture.Spring{Over: unit.Millimetres(float64(over)), Rise: d.answered(unit.Rise), Snap: d.pressure(unit.Snap)}
}

// twoFaces reports whether faces lie on both sides of a core.
func (d Drawn) twoFaces() bool {
	_, told := d.Question.Said[unit.StackLayers].(unit.Layers)
	return d.count(unit.Faces) == 2 && d.length(unit.CoreThickness) > 0 && !told
}

// layers are those stated, or the sled with the core, the strips and what lies
// on them.
func (d Drawn) layers() []picture.Layer {
	if stack, ok := d.Question.Said[unit.StackLayers].(unit.Layers); ok {
		var out []picture.Layer
		for _, l := range stack {
			out = append(out, picture.Layer{Part: picture.Part(l.Part), Thickness: d.layerThickness(l)})
		}
		return out
	}
	sled := d.length(unit.SledThickness)
	if sled == 0 {
		sled = usualSled
	}
	strips := max(d.length(unit.StripThickness), d.length(unit.StripThickest))
	out := []picture.Layer{{Part: picture.Sled, Thickness: sled}}
	if d.twoFaces() {
		out = append(out, picture.Layer{Part: picture.Strips, Thickness: strips})
	}
	for _, l := range []picture.Layer{
		{Part: picture.Core, Thickness: d.length(unit.CoreThickness)}, {Part: picture.Strips, Thickness: strips},
		{Part: picture.Mat, Thickness: d.length(unit.MatThickness)}, {Part: picture.Caul, Thickness: d.length(unit.CaulThickness)},
	} {
		if l.Thickness > 0 {
			out = append(out, l)
		}
	}
	return out
}

// usualSled is drawn where nobody says how thick the sled is.
const usualSled = unit.Length(0.019)

// layerFields are the fields that say how thick a layer is where it does not.
var layerFields = map[picture.Part]unit.Field{
	picture.Sled: unit.SledThickness, picture.Core: unit.CoreThickness, picture.Strips: unit.StripThickness,
	picture.Film: unit.FilmThickness, picture.Mat: unit.MatThickness, picture.Caul: unit.CaulThickness, picture.SideBar: unit.BarHeight,
}

// layerThickness is how thick the answer took a layer of a stated stack.
func (d Drawn) layerThickness(l unit.Layer) unit.Length {
	part, own := picture.Part(l.Part), unit.Millimetres(l.Thickness)
	most, least := d.length(unit.StripThickest), d.length(unit.StripThinnest)
	if part == picture.Strips && most > 0 && (own == 0 || least > 0 && own >= least && own < most) { // a range is that of its own level
		return most
	}
	if own != 0 {
		return own
	}
	if f, ok := layerFields[part]; ok {
		if t := d.length(f); t > 0 || part != picture.Sled {
			return t
		}
		return usualSled
	}
	return 0
}

func (d Drawn) bar() *picture.Bar {
	height := d.length(unit.BarHeight)
	if height == 0 || d.Question.Said.Has(unit.BarDenied) {
		return nil
	}
	foot, _ := d.value(unit.BarFoot).(unit.Word)
	bar := &picture.Bar{
		Height: height, Width: d.length(unit.BarWidth), Both: d.count(unit.BarCount) == 2, OnBed: foot == "bed",
		Covered: d.answered(unit.BarCovered),
	}
	for _, a := range d.Answer.Advice {
		if a.Reason == engine.ReasonWiderBar {
			tips, _ := a.Figures[unit.BarTipping].(unit.Number)
			wider, _ := a.Figures[unit.BarWidthLeast].(unit.Number)
			bar.Tips, bar.Wider = unit.Millimetres(float64(tips)), unit.Millimetres(float64(wider))
		}
	}
	return bar
}

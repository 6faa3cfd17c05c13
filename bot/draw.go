package bot

import (
	"presshand/bot/picture"
	"presshand/engine"
	"presshand/engine/unit"
)

// Draw draws the first answer of a reply that a picture says more of than its
// words. False where there is none.
func (r Reply) Draw() (*picture.Drawing, bool) {
	for _, d := range r.Drawn {
		if drawing, ok := d.Draw(); ok {
			return drawing, true
		}
	}
	return nil, false
}

// Draw draws an answer: strips as they lie, a day on the clock or loads on the bed, a load cut across
// its joints or, where it was asked how far a bar reaches, its push against the
// distance.
func (d Drawn) Draw() (*picture.Drawing, bool) {
	if d.Answer.Verdict == engine.Ask {
		return nil, false
	}
	var drawing *picture.Drawing
	var err error
	switch d.Answer.About {
	case engine.Strips:
		drawing, err = d.strips().Draw()
	case engine.Schedule:
		drawing, err = d.day()
	case engine.Side, engine.Load, engine.Stack:
		if d.asksReach() {
			if drawing, err = d.chart().Draw(); err == nil {
				return drawing, true
			}
		}
		drawing, err = d.withDay(d.section().Draw())
	default:
		return nil, false
	}
	return drawing, err == nil // a load that has nothing to show is no failure
}

func (d Drawn) units() picture.Units {
	first, _ := d.style.units(unit.StripWidth)
	pressure, _ := d.style.units(unit.SideFarJoint)
	return picture.Units{
		Length:     func(l unit.Length) string { return amount(l.Metres(), first) },
		Pressure:   func(p unit.Pressure) string { return amount(p.Pascals(), pressure) },
		LengthAxis: first, PressureAxis: pressure,
	}
}

// value looks a field up as said, then as assumed, then as computed.
func (d Drawn) value(f unit.Field) unit.Value {
	for _, fs := range []unit.Facts{d.Question.Said, d.Answer.Assumed, d.Answer.Values, d.Question.Room} {
		if v, ok := fs[f]; ok {
			return v
		}
	}
	return nil
}

func (d Drawn) length(f unit.Field) unit.Length {
	switch v := d.value(f).(type) {
	case unit.Number:
		return unit.Length(f.SI(v))
	case unit.Triple:
		if v.Mid != nil {
			return unit.Length(f.SI(unit.Number(*v.Mid)))
		}
	}
	return 0
}

func (d Drawn) count(f unit.Field) int {
	n, _ := d.value(f).(unit.Number)
	return int(n)
}

func rangeOf[T ~float64](f unit.Field, v unit.Value) unit.Range[T] {
	t, ok := v.(unit.Triple)
	if !ok || t.Mid == nil {
		return unit.Range[T]{}
	}
	si := func(end *float64) T {
		if end == nil {
			end = t.Mid
		}
		return T(f.SI(unit.Number(*end)))
	}
	return unit.Around(si(t.Low), si(t.Mid), si(t.High))
}

func (d Drawn) pressure(f unit.Field) unit.Range[unit.Pressure] {
	return rangeOf[unit.Pressure](f, d.Answer.Values[f])
}

// maxDrawn is how many strips a section shows one by one.
const maxDrawn = 40

// section draws a load cut across its joints.
func (d Drawn) section() picture.CrossSection {
	out := picture.CrossSection{
		Units: d.units(), Layers: d.layers(), Opening: d.length(unit.Opening), Bar: d.bar(),
		Tent: d.length(unit.Tent), Face: d.pressure(unit.FacePressure), First: d.pressure(unit.SideFirstJoint),
		Far: d.pressure(unit.SideFarJoint), Preload: d.pressure(unit.Preload),
	}
	kind, _ := d.value(unit.PressKind).(unit.Word)
	out.Bag = kind == "bag"
	if d.Question.Said.Has(unit.WedgeRatio) || d.Question.Said.Has(unit.WedgeForce) {
		out.Wedge = &picture.Wedge{Gap: d.length(unit.WedgeGap)}
	}
	if n := d.count(unit.StripCount); n > 0 && n <= maxDrawn && d.length(unit.StripWidth) > 0 {
		for range n {
			out.Widths = append(out.Widths, d.length(unit.StripWidth))
		}
	}
	proud, _ := d.Answer.Values[unit.Proud].(unit.Triples)
	for _, t := range proud {
		by := rangeOf[unit.Length](unit.Proud, t)
		out.Proud = append(out.Proud, picture.Proud{By: by, TooLittle: by.Mid < unit.Millimetres(0.8)}) // common practice, no source
	}
	return out
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
		sled = unit.Millimetres(19) // the usual one
	}
	out := []picture.Layer{{Part: picture.Sled, Thickness: sled}}
	strips := max(d.length(unit.StripThickness), d.length(unit.StripThickest))
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

// layerFields are the fields that say how thick a layer is where it does not.
var layerFields = map[picture.Part]unit.Field{
	picture.Sled: unit.SledThickness, picture.Core: unit.CoreThickness, picture.Strips: unit.StripThickness,
	picture.Film: unit.FilmThickness, picture.Mat: unit.MatThickness, picture.Caul: unit.CaulThickness,
}

// layerThickness is how thick the answer took a layer of a stated stack.
func (d Drawn) layerThickness(l unit.Layer) unit.Length {
	part := picture.Part(l.Part)
	if t := d.length(unit.StripThickest); part == picture.Strips && t > 0 {
		return t
	}
	if l.Thickness != 0 {
		return unit.Millimetres(l.Thickness)
	}
	if f, ok := layerFields[part]; ok {
		return d.length(f)
	}
	return 0
}

func (d Drawn) bar() *picture.Bar {
	height := d.length(unit.BarHeight)
	if height == 0 || d.Question.Said.Has(unit.BarDenied) {
		return nil
	}
	foot, _ := d.value(unit.BarFoot).(unit.Word)
	return &picture.Bar{
		Height: height, Width: d.length(unit.BarWidth), Both: d.count(unit.BarCount) == 2, OnBed: foot == "bed",
		Covered: rangeOf[unit.Length](unit.BarCovered, d.Answer.Values[unit.BarCovered]),
	}
}

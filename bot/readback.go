package bot

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// understood says back what a thread states, in the person's own units.
func (s style) understood(thread Thread) string {
	var words []string
	for _, x := range inOrder(thread.Said) {
		if w, known := s.sheet(x, thread.Said); known {
			if w != "" {
				words = append(words, w)
			}
			continue
		}
		w := s.saying(x.Field, x.Value, s.fields[x.Field])
		if w == "" {
			continue
		}
		if x.Field == unit.StripCount && thread.Said.has(unit.StockPiles) {
			w = "at most " + w // of a stock
		}
		if x.Note != "" {
			w += " (" + x.Note + ")"
		}
		words = append(words, w)
	}
	for _, a := range thread.Compare {
		var each []string
		for _, x := range a.Values {
			each = append(each, s.saying(a.Field, x.Value, named[x.Unit]))
		}
		words = append(words, listed(each, "or"))
	}
	return strings.Join(words, ", ")
}

// saidFirst is the order in which a load is read back; the rest follows as said.
var saidFirst = []unit.Field{
	unit.StripCount, unit.StripWidth, unit.StripWidths, unit.StripThickness, unit.StripThinnest, unit.StripThickest, unit.StripLength,
	unit.Species, unit.Sawn, unit.PanelCount, unit.PanelWidth, unit.PanelLength, unit.CoreKind, unit.CoreThickness, unit.Faces,
	unit.BarDenied, unit.BarHeight, unit.BarWidth, unit.BarCount, unit.BarFoot, unit.Cover, unit.WedgeRatio, unit.WedgeForce, unit.WedgeAgain, unit.Overfill,
	unit.PressKind, unit.BedWidth, unit.BedLength, unit.Opening, unit.PumpSpeed, unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent,
	unit.SurfaceKind, unit.GlueClass, unit.ShopTemp,
}

func inOrder(s Statement) Statement {
	out := make(Statement, 0, len(s))
	for _, f := range saidFirst {
		if x, ok := s.find(f); ok {
			out = append(out, x)
		}
	}
	for _, x := range s {
		if !slices.Contains(saidFirst, x.Field) {
			out = append(out, x)
		}
	}
	return out
}

// sheet reads a width and a length that belong together back as one: "8 panels
// 24 × 48 in". The others of the group then say nothing; known is false where x
// belongs to no such group.
func (s style) sheet(x Said, all Statement) (words string, known bool) {
	for _, g := range []struct {
		name          string
		count         unit.Field
		width, length unit.Field
	}{
		{"panel", unit.PanelCount, unit.PanelWidth, unit.PanelLength}, {"bed", "", unit.BedWidth, unit.BedLength},
		{"sled", "", unit.SledWidth, unit.SledLength}, {"bag", "", unit.BagWidth, unit.BagLength},
	} {
		w, okW := all.find(g.width)
		l, okL := all.find(g.length)
		if !okW || !okL || x.Field != g.count && x.Field != g.width && x.Field != g.length {
			continue
		}
		if x.Field != g.width {
			return "", true
		}
		name := g.name
		if n, ok := all.find(g.count); ok && n.Value != unit.Number(1) {
			name = s.plain(g.count, n.Value, unit.Unit{}) + " " + name + "s"
		}
		wide, long := s.plain(g.width, w.Value, s.fields[g.width]), s.plain(g.length, l.Value, s.fields[g.length])
		return name + " " + withoutUnit(wide, long) + " × " + long, true
	}
	return "", false
}

// assumedOrder is the order in which assumptions are told, those that matter
// most to a verdict first. Others are only in the data.
var assumedOrder = []unit.Field{
	unit.Cover, unit.Vacuum, unit.StripCount, unit.StripWidth, unit.StripThickness, unit.PanelWidth, unit.PanelLength,
	unit.BarHeight, unit.BarWidth, unit.BarDenied, unit.BarFoot, unit.SurfaceKind, unit.GlueClass, unit.Species, unit.Sawn,
	unit.Altitude, unit.Ambient, unit.ShopTemp, unit.WoodMoisture, unit.ServiceTemp, unit.CupUp,
	unit.CoreKind, unit.CoreThickness, unit.Faces, unit.SledThickness, unit.Trim, unit.WedgeLow, unit.WedgeHigh,
	unit.MatFirmness, unit.MatThickness, unit.BedWidth, unit.BedLength, unit.Opening, unit.PumpSpeed, unit.PumpLimit,
	unit.PressVolume, unit.PressCount, unit.StartTime, unit.LayupPanel, unit.LayupLoad, unit.PressTime, unit.Unload, unit.Leak,
	unit.StripLength, unit.PanelThickness, unit.WorkHours, unit.Overnight,
}

// maxAssumed is how many assumptions a reply tells.
const maxAssumed = 8

// assumed says which defaults an answer used.
func (s style) assumed(fs unit.Facts) string {
	var words []string
	for _, f := range assumedOrder {
		v, ok := fs[f]
		if !ok {
			continue
		}
		w := s.supposing(f, v)
		switch f {
		case unit.BedLength: // told with the width
			continue
		case unit.BedWidth:
			w = s.bed(fs)
		}
		if f == unit.Altitude && v == unit.Number(0) {
			w = "sea level"
		}
		if w != "" && len(words) < maxAssumed {
			words = append(words, w)
		}
	}
	return strings.Join(words, ", ")
}

// supposing is saying for what was worked out: lengths as a tape reads them.
func (s style) supposing(f unit.Field, v unit.Value) string {
	n, isNumber := v.(unit.Number)
	if form, ok := said[f]; ok && isNumber && f.Dimension() == unit.Distance && f != unit.Altitude {
		return strings.Replace(form, "%", s.show(f, float64(n)), 1)
	}
	return s.saying(f, v, unit.Unit{})
}

// bed says how big a bed was assumed, as roughly as a bed is known.
func (s style) bed(fs unit.Facts) string {
	width, _ := fs.SI(unit.BedWidth)
	length, ok := fs.SI(unit.BedLength)
	if !ok {
		return ""
	}
	u := unit.Inch
	if s.metric {
		u = unit.MM
	}
	return "a bed of " + decimals(u.Of(width), 0) + " × " + decimals(u.Of(length), 0) + " " + u.Symbol
}

// saying puts one field and its value as one would say them.
func (s style) saying(f unit.Field, v unit.Value, u unit.Unit) string {
	form, ok := said[f]
	if !ok {
		return ""
	}
	if one, ok := singular[f]; ok && v == unit.Number(1) {
		return one
	}
	if none, ok := zero[f]; ok && v == unit.Number(0) {
		return none
	}
	value := s.plain(f, v, u)
	if f == unit.CoreKind && strings.HasPrefix(value, "a ") {
		return "on " + value
	}
	return strings.Replace(form, "%", value, 1)
}

// plain shows a stated value in u, or in the person's own unit where u is none.
func (s style) plain(f unit.Field, v unit.Value, u unit.Unit) string {
	switch v := v.(type) {
	case unit.Number:
		return s.stated(f, float64(v), u)
	case unit.Word:
		if w, ok := wordsOf[f][string(v)]; ok {
			return w
		}
		switch f {
		case unit.Title, unit.Note, unit.GlueLot, unit.Job, unit.PressName:
			return quoted(string(v))
		}
		return string(v)
	case unit.Numbers:
		var each []string
		for _, n := range v {
			each = append(each, s.stated(f, n, u))
		}
		return listed(each, "and")
	case unit.Layers:
		return s.layers(v)
	case unit.Piles:
		return s.piles(v)
	}
	return ""
}

// stated shows a number as it was said: in its own unit, not rounded away.
func (s style) stated(f unit.Field, n float64, u unit.Unit) string {
	si := f.SI(unit.Number(n))
	switch d := f.Dimension(); {
	case d == unit.Count:
		return strconv.FormatFloat(n, 'f', -1, 64)
	case u.Symbol == "" || u.Dimension != d:
		u, _ = s.units(f)
		if d == unit.Distance {
			if si > 5 && f == unit.Altitude {
				u = other(unit.Unit{Metric: !s.metric}, [2]unit.Unit{unit.Foot, unit.Metre})
				return decimals(u.Of(si), 0) + " " + u.Symbol
			}
			return exactly(si, u)
		}
		return s.show(f, n)
	case d == unit.Distance:
		return exactly(si, u)
	}
	if f.Dimension() == unit.Lasting {
		return duration(si)
	}
	return decimals(u.Of(si), 3) + " " + u.Symbol
}

func (s style) layers(layers unit.Layers) string {
	var each []string
	for _, l := range layers {
		w := l.Part
		if l.Thickness > 0 {
			w += " " + s.stated(unit.StripThickness, l.Thickness, s.fields[unit.StackLayers])
		}
		each = append(each, w)
	}
	return strings.Join(each, " / ")
}

func (s style) piles(piles unit.Piles) string {
	var each []string
	for i, p := range piles {
		if i == 12 {
			each = append(each, fmt.Sprintf("… (%d in all)", strips(piles)))
			break
		}
		u := s.fields[unit.StockPiles]
		if p.Length > 0 {
			each = append(each, strconv.Itoa(p.Count)+" panels "+s.size(p.Width, p.Length))
			continue
		}
		each = append(each, strconv.Itoa(p.Count)+" at "+s.stated(unit.StripWidth, p.Width, u))
	}
	return strings.Join(each, ", ")
}

// strips is how many there are in piles.
func strips(piles unit.Piles) (n int) {
	for _, p := range piles {
		n += p.Count
	}
	return n
}

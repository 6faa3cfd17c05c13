package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// placed gives measures whose part was not named to the part that the thread is
// about: "make it 30 wide" is what strips must fill in a thread that picks strips.
func (t *turn) placed(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || p.NewStart {
		return p
	}
	if len(p.Asks) > 0 && !p.Inferred {
		return t.glueForThem(p)
	}
	p = t.someWider(p)
	to := looseFields[t.before.Asks[0].About]
	if t.before.Asks[0].About == grammar.Pump && namesPanel.MatchString(t.m.Text) && !frameDeep.MatchString(t.m.Text) {
		to = inPress
	}
	for i, f := range p.Facts {
		if f.Field == unit.PanelWidth && t.before.Asks[0].About == grammar.Strips && t.before.Said.has(unit.StockPiles) {
			p.Facts[i].Field = unit.TargetWidth
		}
		if f.Field == unit.StripWidth && t.before.Asks[0].About == grammar.Stack && t.stacked("strips") && !stated(p.Facts, unit.StripThickness) && !saysWide.MatchString(t.m.Text) {
			p.Facts[i].Field = unit.StripThickness // "strips are 1, no wait 15/16"
		}
		if n, _ := f.Value.(unit.Number); f.Field == unit.Opening && t.opensWide(float64(n)) {
			p.Facts[i].Field = unit.TargetWidth
		}
		if f.Field == unit.StripLength && f.Loose && t.onlySaid(unit.PanelLength, unit.StripLength) && t.before.Asks[0].About == grammar.Glue {
			p.Facts[i].Field = unit.PanelLength // "each one's only 36 long"
		}
		if f.Loose && (t.besideHeight(f) || f.Field == unit.StripWidth && stated(p.Facts, unit.BarHeight) && t.before.Said.has(unit.StripWidth) && !namesStrip.MatchString(t.m.Text)) { // "2 high 1 wide"
			p.Facts[i].Field = unit.BarWidth
			continue
		}
		if g, ok := to[f.Field]; ok && f.Loose && (!t.onlySaid(f.Field, g) || t.soManyPanels(f)) && !t.eachStrip(f) {
			p.Facts[i].Field = g
		}
	}
	return p
}

// besideHeight: "and 3/4 wide", right behind the bar's height and far from what the
// strips are wide, is of the bar.
func (t *turn) besideHeight(f grammar.Fact) bool {
	const farOff = 2
	x, ok := t.before.Said.find(unit.StripWidth)
	was, _ := x.Value.(unit.Number)
	now, _ := f.Value.(unit.Number)
	latest := t.before.Latest
	return f.Field == unit.StripWidth && len(latest) == 1 && latest[0] == unit.BarHeight && ok && !t.before.Said.has(unit.BarWidth) && farOff*now < was
}

// onBed lays what was asked about on another bed: "and on a 4x8".
var onBed = regexp.MustCompile(`(?i)\b(?:on|in|with) (?:a|an|the|our|my) \d+ ?(?:x|×|by) ?\d+\W*(?:bed|press|frame|table)?\W*$`)

// bedAgain gives a size without its part to the bed in a thread that asks how many
// panels go on one.
func (t *turn) bedAgain(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || p.NewStart || t.before.Asks[0].About != grammar.Schedule || !t.before.Said.has(unit.BedWidth) || stated(p.Facts, unit.BedWidth) || !onBed.MatchString(t.m.Text) {
		return p
	}
	for i, f := range p.Facts {
		if f.Field == unit.PanelWidth {
			p.Facts[i].Field = unit.BedWidth
		}
		if f.Field == unit.PanelLength {
			p.Facts[i].Field = unit.BedLength
		}
	}
	return p
}

var (
	// earlyHour is a clock time as both halves of a day have one.
	earlyHour = regexp.MustCompile(`^[1-5](?:[:.]\d\d)?$`)
	// saysHalf tells the halves of a day apart.
	saysHalf = regexp.MustCompile(`(?i)\b(?:a\.?m|p\.?m)\b|\d[ap]m?\b|\b(?:morning|early|earlier|afternoon|evening|noon|tonight|night)\b`)
)

// lossNotTaper: in a thread of a leak "no, 1 in 15" is no wedge's taper but so much of a
// minute's loss.
func (t *turn) lossNotTaper(p grammar.Phrase) grammar.Phrase {
	x, leaks := t.before.Said.find(unit.Leak)
	if !leaks || p.NewStart || t.before.Said.has(unit.WedgeRatio) || wedged.MatchString(t.m.Text) {
		return p
	}
	u, known := named[x.Unit]
	for i, f := range p.Facts {
		if n, isNumber := f.Value.(unit.Number); f.Field == unit.WedgeRatio && isNumber && n > 0 && known && strings.Contains(f.Text, " in ") {
			p.Facts[i] = grammar.Fact{Field: unit.Leak, Value: unit.Leak.Number(u.SI(1 / float64(n))), Unit: u, Text: f.Text}
			p.Asks = slices.DeleteFunc(slices.Clone(p.Asks), func(a grammar.Ask) bool { return a.About == grammar.Side })
		}
	}
	return p
}

// wedged names a wedge.
var wedged = regexp.MustCompile(`(?i)\b(wedge|taper|slope)`)

// saysWide says which way a measure goes.
var saysWide = regexp.MustCompile(`(?i)\b(wide|width|widths|across|broad)\b`)

// stacked reports whether the thread's stack has a part.
func (t *turn) stacked(part string) bool {
	x, _ := t.before.Said.find(unit.StackLayers)
	layers, _ := x.Value.(unit.Layers)
	return slices.ContainsFunc(layers, func(l unit.Layer) bool { return l.Part == part })
}

// glueForThem counts panels where a message asks anew of so many of what the thread is
// about: "how much glue for six of them".
func (t *turn) glueForThem(p grammar.Phrase) grammar.Phrase {
	if !asksGlue(p) || !forThem.MatchString(t.m.Text) || !t.before.Said.has(unit.StripCount) {
		return p
	}
	for i, f := range p.Facts {
		if f.Field == unit.StripCount && !namesStrip.MatchString(t.m.Text) {
			p.Facts = slices.Clone(p.Facts)
			p.Facts[i].Field = unit.PanelCount
		}
	}
	return p
}

func asksGlue(p grammar.Phrase) bool {
	return slices.ContainsFunc(p.Asks, func(a grammar.Ask) bool { return a.About == grammar.Glue })
}

// someOf counts a part of what was counted before.
var someOf = regexp.MustCompile(`(?i)\bof (them|em|those|these)\b`)

// someWider reads "three of them are 30 wide" of panels that were all alike.
func (t *turn) someWider(p grammar.Phrase) grammar.Phrase {
	n, width, ok := countAndWidth(p.Facts)
	said := t.before.Said.facts()
	all, counted := said.Number(unit.PanelCount)
	wide, isWide := said.Number(unit.PanelWidth)
	long, isLong := said.Number(unit.PanelLength)
	if !ok || len(p.Facts) != 2 || !counted || !isWide || !isLong || float64(n) >= float64(all) || !someOf.MatchString(t.m.Text) || width == float64(wide) {
		return p
	}
	x, _ := t.before.Said.find(unit.PanelWidth)
	piles := unit.Piles{{Width: float64(wide), Length: float64(long), Count: int(all) - n}, {Width: width, Length: float64(long), Count: n}}
	p.Facts = []grammar.Fact{{Field: unit.Targets, Value: piles, Unit: named[x.Unit], Text: strings.TrimSpace(t.m.Text)}}
	return p
}

// namesPanel names what lies in the press; inPress are its measures then.
var (
	namesPanel = regexp.MustCompile(`(?i)\b(panel|door|top|board|core|lid|slab)s?\b`)
	frameDeep  = regexp.MustCompile(`(?i)\bdeep\b`)
	inPress    = map[unit.Field]unit.Field{unit.StripThickness: unit.PanelThickness, unit.StripWidth: unit.PanelWidth, unit.StripLength: unit.PanelLength}
)

// ofThem is how one counts what was just asked about: "make two of them".
var ofThem = regexp.MustCompile(`(?i)\b(make|making|build|building|do|doing|glue|gluing|if)\b[^.,;]* of (them|em|those|these)\b`)

// forThem is how one asks again for so many of what was just worked out.
var forThem = regexp.MustCompile(`(?i)\bfor (?:all |about |like |say |only |just )*[\w-]+ of (?:them|em|those|these)\b`)

// namesStrip names the strips of a panel.
var namesStrip = regexp.MustCompile(`(?i)\b(?:strip|stave|slat|lam|lamella|board|batten|piece|stick|rip)s?\b`)

// soManyPanels reports whether "if there's three of them" counts the panel that was
// asked about and not its strips, of which there are many more; what is wanted "for
// ten of them" is of panels.
func (t *turn) soManyPanels(f grammar.Fact) bool {
	if f.Field == unit.StripCount && forThem.MatchString(t.m.Text) && !namesStrip.MatchString(t.m.Text) {
		return true
	}
	n, _ := f.Value.(unit.Number)
	strips, _ := t.before.Said.facts().Number(unit.StripCount)
	return f.Field == unit.StripCount && 2*float64(n) <= strips && ofThem.MatchString(t.m.Text)
}

// opensWide reports whether an opening of so many mm is what strips are chosen to
// fill, between the fences, and not the height of a press.
func (t *turn) opensWide(mm float64) bool {
	target, told := t.before.Said.facts().Number(unit.TargetWidth)
	tall, _ := t.before.Said.facts().Number(unit.Opening)
	return told && t.before.Asks[0].About == grammar.Strips && mm > float64(target)/2 && mm < float64(target)*2 && mm > 3*float64(tall)
}

// matOnly leaves out how firm a mat is that the thread does not have: "medium?".
func (t *turn) matOnly(p grammar.Phrase) grammar.Phrase {
	stack, _ := t.before.Said.find(unit.StackLayers)
	layers, _ := stack.Value.(unit.Layers)
	if t.before.Said.has(unit.MatThickness, unit.MatFirmness, unit.MatFirm) || slices.ContainsFunc(layers, func(l unit.Layer) bool { return l.Part == "mat" }) {
		return p
	}
	for i, f := range p.Facts {
		if f.Field == unit.MatFirmness && f.Loose {
			p.Facts = slices.Delete(slices.Clone(p.Facts), i, i+1)
			p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], f.Text)
			return p
		}
	}
	return p
}

// sledOfTwo gives the one sled of a stack that a message names its thickness: "the
// top sled is 15".
func (t *turn) sledOfTwo(p grammar.Phrase) grammar.Phrase {
	x, _ := t.before.Said.find(unit.StackLayers)
	layers, _ := x.Value.(unit.Layers)
	said := oneSled.FindStringSubmatch(t.m.Text)
	var sleds []int
	for i, l := range layers {
		if l.Part == "sled" {
			sleds = append(sleds, i)
		}
	}
	if said == nil || len(sleds) < 2 || p.NewStart || stated(p.Facts, unit.StackLayers) {
		return p
	}
	at := sleds[0]
	if w := strings.ToLower(said[1]); w == "top" || w == "upper" {
		at = sleds[len(sleds)-1]
	}
	if k := slices.Index(p.Drops, grammar.Part("sled")); k >= 0 { // "no top sled"
		p.Drops = slices.Delete(slices.Clone(p.Drops), k, k+1)
		p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], grammar.Fact{Field: unit.StackLayers, Value: slices.Delete(slices.Clone(layers), at, at+1), Unit: named[x.Unit], Text: said[0]})
		return p
	}
	for i, f := range p.Facts {
		if n, isNumber := f.Value.(unit.Number); isNumber && (f.Field == unit.SledThickness || f.Field == unit.CaulThickness) {
			p.Facts = slices.Clone(p.Facts)
			p.Facts[i] = relaid(layers, at, float64(n), f.Unit, f.Text)
			return p
		}
	}
	return p
}

// oneSled names the sled at the bottom or on top.
var oneSled = regexp.MustCompile(`(?i)\b(top|upper|bottom|lower) sled\b`)

// relaid is a stack with another thickness of one layer.
func relaid(layers unit.Layers, at int, mm float64, u unit.Unit, text string) grammar.Fact {
	layers = slices.Clone(layers)
	layers[at].Thickness = mm
	return grammar.Fact{Field: unit.StackLayers, Value: layers, Unit: u, Text: text}
}

// layerAgain takes a bare number for the layer of the thread's stack that a word
// beside it names: "make the fence 5".
func (t *turn) layerAgain(a grammar.Amendment) (grammar.Fact, bool) {
	x, _ := t.before.Said.find(unit.StackLayers)
	layers, _ := x.Value.(unit.Layers)
	at := -1
	for i, l := range layers {
		if l.Part == a.Layer && at >= 0 && layers[at].Thickness != l.Thickness {
			return grammar.Fact{}, false
		}
		if l.Part == a.Layer {
			at = i
		}
	}
	if at < 0 {
		return grammar.Fact{}, false
	}
	u := a.Unit
	if u.Symbol == "" {
		u = t.unitOf(x)
	}
	n, _ := amendment(unit.SledThickness, u, a).Value.(unit.Number)
	layers = slices.Clone(layers)
	for i, l := range layers { // "fences 3/8", where all were alike
		if l.Part == a.Layer {
			layers[i].Thickness = float64(n)
		}
	}
	return grammar.Fact{Field: unit.StackLayers, Value: layers, Unit: u, Text: a.Text}, true
}

// laidOnTop puts a mat that a message lays on top of a stack told before onto it:
// "and a 3/8 pad on top of all that?".
func (t *turn) laidOnTop(p grammar.Phrase) grammar.Phrase {
	x, ok := t.before.Said.find(unit.StackLayers)
	layers, isStack := x.Value.(unit.Layers)
	if !ok || !isStack || p.NewStart || !strings.Contains(strings.ToLower(t.m.Text), "on top") || stated(p.Facts, unit.StackLayers) || placeTold(t.m.Text, layers) >= 0 {
		return p
	}
	for _, l := range layers {
		if l.Part == "mat" {
			return p
		}
	}
	for i, f := range p.Facts {
		n, isNumber := f.Value.(unit.Number)
		if f.Field == unit.MatThickness && isNumber {
			p.Facts = slices.Clone(p.Facts)
			p.Facts[i] = grammar.Fact{Field: unit.StackLayers, Value: append(slices.Clone(layers), unit.Layer{Part: "mat", Thickness: float64(n)}), Unit: f.Unit, Text: f.Text}
			return p
		}
	}
	return p
}

// onlySaid reports whether the thread itself has f and not g.
func (t *turn) onlySaid(f, g unit.Field) bool { return t.before.Said.has(f) && !t.before.Said.has(g) }

// looseFields are, by topic, what a measure without its part is of.
var looseFields = map[grammar.Topic]map[unit.Field]unit.Field{
	grammar.Strips:   {unit.StripWidth: unit.TargetWidth, unit.PanelWidth: unit.TargetWidth, unit.StripCount: unit.PanelCount},
	grammar.Glue:     {unit.BarCount: unit.Faces, unit.StripCount: unit.PanelCount},
	grammar.Move:     {unit.BarCount: unit.Faces, unit.StripWidth: unit.PanelWidth, unit.StripLength: unit.PanelLength, unit.ShopHumidity: unit.ServiceHumidity},
	grammar.Face:     {unit.StripWidth: unit.PanelWidth, unit.StripLength: unit.PanelLength, unit.BarCount: unit.Faces, unit.StripCount: unit.PanelCount},
	grammar.Stack:    {unit.StripThickness: unit.PanelThickness},
	grammar.Schedule: {unit.StripThickness: unit.PanelThickness, unit.StripCount: unit.PanelCount, unit.StripWidth: unit.PanelWidth, unit.StripLength: unit.PanelLength},
	grammar.Pump:     {unit.StripWidth: unit.BedWidth, unit.StripLength: unit.BedLength, unit.PanelWidth: unit.BedWidth, unit.PanelLength: unit.BedLength, unit.PanelThickness: unit.Opening, unit.StripThickness: unit.Opening},
}

// layered are the fields that say how thick a part of a stack is.
var layered = map[unit.Field]string{
	unit.StripThickness: "strips", unit.SledThickness: "sled", unit.CaulThickness: "caul", unit.MatThickness: "mat", unit.CoreThickness: "core",
}

// restacked returns s with the thicknesses that one message states in the stack
// that was told before.
func (s Statement) restacked(now Statement) Statement {
	stack, ok := s.find(unit.StackLayers)
	layers, isStack := stack.Value.(unit.Layers)
	if !ok || !isStack || now.has(unit.StackLayers) {
		return s
	}
	changed := append(unit.Layers(nil), layers...)
	found := false
	for _, x := range now {
		n, isNumber := x.Value.(unit.Number)
		for i := range changed {
			if isNumber && layered[x.Field] == changed[i].Part {
				changed[i].Thickness, found = float64(n), true
			}
		}
	}
	if !found {
		return s
	}
	stack.Value = changed
	return s.with(stack)
}

// habits returns what a message left to the shop's habit, by the value that it was
// taken for: "maple" is hard maple, a 1x6 dresses to 3/4 by 5 1/2 in.
func (s Statement) habits() unit.Facts {
	out := unit.Facts{}
	for _, x := range s {
		if x.Note != "" && (x.Field == unit.Species || x.Field == unit.StripWidth || x.Field == unit.StripThickness) {
			out[x.Field] = x.Value
		}
	}
	return out
}

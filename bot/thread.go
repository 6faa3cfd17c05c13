package bot

import (
	"reflect"
	"slices"

	"presshand/engine/unit"
	"presshand/grammar"
)

// A Thread is what a thread remembers: its last question.
type Thread struct {
	Asks    []Wanted
	Said    Statement
	Compare []Alternative
	In      []string      // symbols of the units that answers are wanted in
	Latest  []unit.Field  // what the last message stated
	Earlier Statement     // what gave way to a later value, the latest last
	Covered Covering      // what was said of the bar's inner face without a height
	Bar     bool          `json:",omitempty"` // a bar is there, of which no measure was said
	Load    int           // the load that the thread is about, 0 for none
	Looked  bool          `json:",omitempty"` // whether the last message only looked at that load
	Means   bool          `json:",omitempty"` // a word was explained last
	Peril   grammar.Peril // the danger that was asked about last, "" once something else is
	Pending []Pending     // what the last reply asked for
	Warned  []string      // cautions shown so far
}

// Covering says how far up something keeps the film off the bar's inner face.
type Covering string

const (
	ToTop    Covering = "to its top"    // of the bar
	ToStrips Covering = "to the strips" // the film gets down behind the bar
)

// covered returns what a thread states, with the covered height that follows
// from the bar or the strips.
func (t Thread) covered() Statement {
	from := map[Covering]unit.Field{ToTop: unit.BarHeight, ToStrips: unit.StripThickness}[t.Covered]
	x, ok := t.Said.find(from)
	if !ok || t.Said.has(unit.Cover) {
		return t.Said
	}
	return t.Said.with(Said{Field: unit.Cover, Value: x.Value, Unit: x.Unit, Text: string(t.Covered)})
}

// lacksBar reports whether a bar is there that pushes on what w asks, and nothing says
// how high it is: the engine is told of it and asks for its height.
func (t Thread) lacksBar(w Wanted, room unit.Facts) bool {
	told := t.Said.has(unit.BarHeight, unit.BarDenied, unit.BarCount, unit.StackLayers) || room.Has(unit.BarHeight) || room.Has(unit.BarDenied)
	compared := slices.ContainsFunc(t.Compare, func(a Alternative) bool { return a.Field == unit.BarHeight })
	return (t.Bar || t.Said.has(unit.BarFoot)) && !told && !compared && w.Solve != unit.BarHeight && (w.About == grammar.Side || w.About == grammar.Load)
}

// A Wanted is one thing asked.
type Wanted struct {
	About grammar.Topic
	Solve unit.Field   // the field asked for, or ""
	Goal  unit.Facts   // what it must give; empty for the usual goal
	For   []unit.Field // figures asked for by name
	Peril grammar.Peril
}

// An Alternative is a field with several values to compare.
type Alternative struct {
	Field  unit.Field
	Values Statement
}

// A Profile is what holds in a room unless a message says otherwise.
type Profile struct {
	Said     Statement
	Pictures grammar.Pictures `json:",omitempty"` // "" as it is configured
}

func (t Thread) empty() bool { return len(t.Asks) == 0 }

// amended returns t after a phrase: what it drops is gone, what it states
// stands, and what it asks is asked in place of the earlier question.
func (t Thread) amended(p grammar.Phrase) Thread {
	if p.NewStart {
		t = Thread{}
	}
	t.Looked = false
	before := t.Said
	for _, part := range p.Drops {
		t.Said = dropped(t.Said, part)
		if part == "bar" {
			t.Covered = ""
		}
	}
	for _, a := range p.Asks {
		if a.Solve != "" { // what is looked for is no longer what it was
			t.Said = t.Said.without(a.Solve)
		}
	}
	t.Said = t.Said.stating(p.Facts).lacking(p.Drops)
	t.Earlier = t.Earlier.remembering(before, t.Said)
	for _, c := range p.Clashes {
		t.Said = t.Said.without(c.Field)
	}
	for _, r := range p.Refused {
		t.Said = t.Said.without(r.Field)
	}
	if len(p.Facts) > 0 {
		t.Latest = nil
	}
	for _, f := range p.Facts {
		t.Latest = append(t.Latest, f.Field)
	}
	t.Peril = perilAfter(t.Peril, p)
	t.Compare = choices(t.Compare, p)
	t.Covered = covering(t.Covered, p)
	t.Bar = (t.Bar || p.BarStands) && !slices.Contains(p.Drops, "bar")
	t.Pending, t.Means = nil, false
	t.Asks = asked(t.Asks, p)
	if len(p.In) > 0 {
		t.In = nil
		for _, u := range p.In {
			t.In = append(t.In, u.Symbol)
		}
	}
	return t
}

// perilAfter is the danger that a thread is about after p.
func perilAfter(earlier grammar.Peril, p grammar.Phrase) grammar.Peril {
	for _, a := range p.Asks {
		if a.About == grammar.Safety {
			return a.Peril
		}
	}
	if len(p.Facts) > 0 || len(p.Asks) > 0 || p.Command != nil {
		return ""
	}
	return earlier
}

func covering(earlier Covering, p grammar.Phrase) Covering {
	switch {
	case p.Covered:
		return ToTop
	case p.Uncovered:
		return ToStrips
	}
	return earlier
}

// asked returns what is asked after p: its own questions, else the earlier
// ones, of which one that looked for a field now stated becomes a plain one.
func asked(earlier []Wanted, p grammar.Phrase) []Wanted {
	var own []Wanted
	for _, a := range p.Asks {
		if computed(a.About) {
			own = append(own, wanted(a))
		}
	}
	if len(own) > 0 {
		return own
	}
	out := append([]Wanted(nil), earlier...)
	for i, w := range out {
		for _, f := range p.Facts {
			if w.Solve != "" && f.Field == w.Solve {
				out[i].Solve, out[i].Goal = "", nil
			}
		}
	}
	return out
}

func wanted(a grammar.Ask) Wanted {
	w := Wanted{About: a.About, Solve: a.Solve, For: a.For, Peril: a.Peril}
	if len(a.Goal) > 0 {
		w.Goal = unit.Facts{}
		for f, x := range a.Goal {
			w.Goal[f] = x.Value
		}
	}
	return w
}

// choices returns what is compared after p: its own alternatives, else the
// earlier ones that it did not decide.
func choices(earlier []Alternative, p grammar.Phrase) []Alternative {
	var out []Alternative
	for _, c := range p.Choices {
		a := Alternative{Field: c.Field}
		for _, f := range c.Values {
			a.Values = append(a.Values, saidOf(f))
		}
		out = append(out, a)
	}
	if len(out) > 0 || len(p.Asks) > 0 && p.Command == nil {
		return out
	}
	for _, a := range earlier {
		decided := false
		for _, f := range p.Facts {
			decided = decided || f.Field == a.Field
		}
		if !decided {
			out = append(out, a)
		}
	}
	return out
}

// replaces lists, for a field, the fields that say the same thing in another
// way and so give way to it.
var replaces = map[unit.Field][]unit.Field{
	unit.StripWidth:       {unit.StripWidths},
	unit.StripWidths:      {unit.StripWidth},
	unit.StripThickness:   {unit.StripThickest, unit.StripThinnest},
	unit.StripThickest:    {unit.StripThickness, unit.ThicknessSpread},
	unit.StripThinnest:    {unit.StripThickness, unit.ThicknessSpread},
	unit.ThicknessSpread:  {unit.StripThickest, unit.StripThinnest},
	unit.Vacuum:           {unit.VacuumAbsolute, unit.VacuumPercent},
	unit.VacuumAbsolute:   {unit.Vacuum, unit.VacuumPercent},
	unit.VacuumPercent:    {unit.Vacuum, unit.VacuumAbsolute},
	unit.Altitude:         {unit.Ambient},
	unit.BarHeight:        {unit.BarDenied},
	unit.BarDenied:        {unit.BarHeight, unit.BarWidth, unit.BarCount, unit.BarFoot, unit.Cover},
	unit.MatThickness:     {unit.MatDenied},
	unit.MatFirmness:      {unit.MatDenied, unit.MatFirm},
	unit.MatFirm:          {unit.MatDenied, unit.MatFirmness},
	unit.MatDenied:        {unit.MatThickness, unit.MatFirmness, unit.MatFirm},
	unit.WoodMoisture:     {unit.WoodMoistureLow, unit.WoodMoistureHigh},
	unit.WoodMoistureLow:  {unit.WoodMoisture},
	unit.WoodMoistureHigh: {unit.WoodMoisture},
	unit.TargetWidth:      {unit.Targets},
	unit.Targets:          {unit.TargetWidth, unit.PanelWidth, unit.PanelCount},
	unit.PanelWidth:       {unit.Targets},
	unit.SurfaceKind:      {unit.FrictionStated},
	unit.LayupPanel:       {unit.LayupLoad},
	unit.LayupLoad:        {unit.LayupPanel},
}

// stating returns s after the facts of one message. What the message says
// twice in different ways stands twice; what was said before gives way.
func (s Statement) stating(facts []grammar.Fact) Statement {
	now := make(Statement, 0, len(facts))
	for _, f := range facts {
		now.put(saidOf(f))
	}
	for _, x := range now {
		for _, gone := range replaces[x.Field] {
			if !now.has(gone) {
				s = s.without(gone)
			}
		}
	}
	if x, ok := now.find(unit.Targets); ok && sized(x.Value) && !now.has(unit.PanelLength) {
		s = s.without(unit.PanelLength)
	}
	s = append(make(Statement, 0, len(s)+len(now)), s.restacked(now)...)
	for _, x := range now {
		s.put(x)
	}
	return s
}

// mostEarlier is how many values a thread can go back to.
const mostEarlier = 12

// remembering returns s with what of before is otherwise in now, or is gone.
func (s Statement) remembering(before, now Statement) Statement {
	out := s[:len(s):len(s)]
	for _, x := range before {
		n, isNumber := x.Value.(unit.Number)
		_, isStack := x.Value.(unit.Layers)
		if y, ok := now.find(x.Field); !ok && x.Field != unit.BarDenied && x.Field != unit.MatDenied || isNumber && ok && y.Value != n || isStack && !reflect.DeepEqual(x.Value, y.Value) {
			out = append(out, x)
		}
	}
	return out[max(0, len(out)-mostEarlier):]
}

// sized reports whether panels have a length each.
func sized(v unit.Value) bool {
	piles, ok := v.(unit.Piles)
	return ok && len(piles) > 0 && piles[0].Length > 0
}

// yielding returns the room's defaults without those that s says otherwise.
func (s Statement) yielding(room unit.Facts) unit.Facts {
	out := room
	for _, x := range s {
		for _, gone := range replaces[x.Field] {
			if out.Has(gone) {
				out = out.Clone()
				delete(out, gone)
			}
		}
	}
	return out
}

// parts lists what each part of a load is known by.
var parts = map[grammar.Part][]unit.Field{
	"wedge":    {unit.WedgeRatio, unit.WedgeForce, unit.WedgeAgain, unit.Overfill, unit.WedgeLow, unit.WedgeHigh},
	"bar":      {unit.BarHeight, unit.BarWidth, unit.BarCount, unit.BarFoot, unit.Cover},
	"mat":      {unit.MatThickness, unit.MatFirmness, unit.MatFirm},
	"core":     {unit.CoreKind, unit.CoreThickness, unit.Faces},
	"caul":     {unit.CaulThickness, unit.Cover},
	"sled":     {unit.SledThickness, unit.SledWidth, unit.SledLength},
	"gap":      {unit.Gap},
	"cup":      {unit.Cup, unit.CupUp},
	"bow":      {unit.Bow},
	"leak":     {unit.Leak},
	"label":    {unit.LabelOpen, unit.LabelClosed, unit.LabelPress, unit.LabelSpread, unit.LabelMinTemp},
	"trim":     {unit.Trim},
	"tent":     {unit.Tent},
	"pump":     {unit.PumpSpeed, unit.PumpLimit},
	"deadline": {unit.Deadline},
	"glue":     {unit.GlueClass},
	"opening":  {unit.Opening},
	"film":     {unit.SurfaceKind},
	"species":  {unit.Species},
}

// denials are the fields by which a load says that it lacks a part.
var denials = map[grammar.Part]unit.Field{"bar": unit.BarDenied, "mat": unit.MatDenied}

// dropped returns s without a part of the load.
func dropped(s Statement, part grammar.Part) Statement {
	s = s.without(parts[part]...)
	s = s.lacking([]grammar.Part{part})
	if f, ok := denials[part]; ok {
		s = s.with(Said{Field: f, Value: unit.Word("none"), Text: "no " + string(part)})
	}
	return s
}

// lacking takes the parts out of the stack, which may have been amended since.
func (s Statement) lacking(parts []grammar.Part) Statement {
	x, _ := s.find(unit.StackLayers)
	layers, isStack := x.Value.(unit.Layers)
	if !isStack || len(parts) == 0 {
		return s
	}
	for _, part := range parts {
		layers = layersWithout(layers, string(part))
	}
	x.Value = layers
	return s.with(x)
}

func layersWithout(layers unit.Layers, part string) unit.Layers {
	out := make(unit.Layers, 0, len(layers))
	for _, l := range layers {
		if l.Part != part {
			out = append(out, l)
		}
	}
	return out
}

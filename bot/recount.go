package bot

import (
	"math"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// recounted works out what a message changes by how much, from what the thread has:
// "2 more strips". What it does not have is asked for.
func (t *turn) recounted(p grammar.Phrase) grammar.Phrase {
	p = t.otherPush(t.morePanels(p))
	for _, c := range p.Changes {
		f, ok := t.afterChange(c)
		switch want := wantedInstead(f); {
		case ok && want != "":
			p.Refused = append(p.Refused[:len(p.Refused):len(p.Refused)], grammar.Refusal{Field: f.Field, Text: c.By.Text, Want: want})
		case ok:
			p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], f)
			p.Amends = t.withoutRestated(p.Amends, f)
		default:
			p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], c.By.Text)
			switch {
			case slices.Contains(c.Fields, unit.StripCount) && t.before.Said.has(unit.StockPiles) && !t.before.Said.has(unit.StripCount):
				t.lacks = append(t.lacks, unit.StockPiles) // "2 of them are split" of several piles
			case len(c.Fields) > 0:
				t.lacks = append(t.lacks, c.Fields[0])
			}
		}
	}
	for part, f := range bareOf {
		if slices.Contains(p.Gains, part) && !t.before.Said.has(f) && !stated(p.Facts, f) && !stated(p.Facts, unit.StackLayers) {
			t.lacks = append(t.lacks, f)
		}
	}
	if slices.Contains(p.Gains, "wedge") && !t.before.Said.has(unit.WedgeRatio) && !stated(p.Facts, unit.WedgeRatio) {
		t.lacks = append(t.lacks, unit.WedgeRatio)
	}
	return p
}

// otherPush takes away the bar of a thread that is to have "a wedge instead", and its wedge
// where it is to have a bar.
func (t *turn) otherPush(p grammar.Phrase) grammar.Phrase {
	if p.NewStart || t.before.empty() || len(p.Drops) > 0 {
		return p
	}
	bar, wedge := t.before.Said.has(unit.BarHeight), t.before.Said.has(unit.WedgeRatio, unit.WedgeForce)
	toBar := stated(p.Facts, unit.BarHeight)
	toWedge := slices.Contains(p.Gains, "wedge") || stated(p.Facts, unit.WedgeRatio) || stated(p.Facts, unit.WedgeForce)
	if bar == wedge || toBar == toWedge || bar == toBar {
		return p
	}
	if toBar && t.putInstead(p.Facts, pushesByBar, unit.BarHeight) {
		p.Drops = []grammar.Part{"wedge"}
	} else if toWedge && t.putInstead(p.Facts, wedged, unit.WedgeRatio, unit.WedgeForce) {
		p.Drops = []grammar.Part{"bar"}
	}
	return p
}

// morePanels adds panels of another size to those of the thread: "add 2 panels 12x60".
func (t *turn) morePanels(p grammar.Phrase) grammar.Phrase {
	x, _ := t.before.Said.find(unit.Targets)
	targets, ok := x.Value.(unit.Piles)
	if !ok {
		targets, ok = t.planSize()
	}
	if !ok || len(p.Changes) != 1 || p.Changes[0].Less || p.Changes[0].Times || !slices.Contains(p.Changes[0].Fields, unit.PanelCount) {
		return p
	}
	more := unit.Pile{Count: int(p.Changes[0].By.Value)}
	var rest []grammar.Fact
	for _, f := range p.Facts {
		n, _ := f.Value.(unit.Number)
		switch f.Field {
		case unit.PanelWidth, unit.TargetWidth:
			more.Width = float64(n)
		case unit.PanelLength:
			more.Length = float64(n)
		default:
			rest = append(rest, f)
		}
	}
	if more.Width == 0 || (more.Length > 0) != (targets[0].Length > 0) || x.Value == nil && more.Width == targets[0].Width && more.Length == targets[0].Length {
		return p
	}
	piles := append(slices.Clone(targets), more)
	p.Facts = append(rest, grammar.Fact{Field: unit.Targets, Value: piles, Unit: named[x.Unit], Text: strings.TrimSpace(t.m.Text)})
	p.Changes = nil
	return p
}

// planSize is the one size of all panels of a thread's plan, and how many there are of it.
func (t *turn) planSize() (unit.Piles, bool) {
	var size unit.Pile
	for _, x := range t.before.Said {
		n, _ := x.Value.(unit.Number)
		switch x.Field {
		case unit.PanelWidth:
			size.Width = float64(n)
		case unit.PanelLength:
			size.Length = float64(n)
		case unit.PanelCount:
			size.Count = int(n)
		}
	}
	planned := t.before.Said.has(unit.StartTime, unit.Deadline, unit.PressCount)
	return unit.Piles{size}, planned && size.Width > 0 && size.Length > 0 && size.Count > 0
}

// wantedInstead says what a changed number could be where it cannot be what came
// of the change; else it is empty.
func wantedInstead(f grammar.Fact) string {
	n, isNumber := f.Value.(unit.Number)
	switch {
	case f.Field.Dimension() == unit.Warmth || !isNumber:
		return ""
	case n <= 0:
		return "less than there is"
	case f.Field.Dimension() == unit.Count && float64(n) != math.Trunc(float64(n)):
		return "a whole number"
	}
	return grammar.CannotBe(f.Field, float64(n))
}

// afterChange is the number that a change makes of the thread's own.
func (t *turn) afterChange(c grammar.Change) (grammar.Fact, bool) {
	if f, ok := t.shifted(c); ok {
		return f, true
	}
	x, ok := t.changing(c)
	if !ok {
		return grammar.Fact{}, false
	}
	old, _ := x.Value.(unit.Number)
	u := c.By.Unit
	if u.Symbol == "" || c.Times || u.Dimension == unit.Warmth && u != unit.DegC && u != unit.DegF {
		u = t.unitOf(x)
	}
	a := c.By
	a.Unit = u
	switch was := writtenIn(u, x.Field, old); {
	case c.Times:
		a.Value = was * c.By.Value
	case c.Less:
		a.Value = was - c.By.Value
	default:
		a.Value = was + c.By.Value
	}
	return amendment(x.Field, u, a), true
}

// withoutRestated leaves out a bare number that tells what a change comes to: "1/4 less
// thickness on em, 3/4".
func (t *turn) withoutRestated(amends []grammar.Amendment, f grammar.Fact) []grammar.Amendment {
	n, isNumber := f.Value.(unit.Number)
	return slices.DeleteFunc(slices.Clone(amends), func(a grammar.Amendment) bool {
		return isNumber && a.Layer == "" && sameNumber(n, f.Field, f.Unit, a)
	})
}

// changing is what a change is of: of several things that the thread has, one that
// was said last.
func (t *turn) changing(c grammar.Change) (Said, bool) {
	fields := c.Fields
	if len(fields) == 0 && len(t.before.Latest) == 1 {
		fields = t.before.Latest
	}
	var had []Said
	for _, f := range fields {
		x, _ := t.before.Said.find(f)
		if _, isNumber := x.Value.(unit.Number); isNumber && (c.By.Unit.Symbol == "" || c.By.Unit.Dimension == f.Dimension()) {
			had = append(had, x)
		}
	}
	for _, x := range had {
		if slices.Contains(t.before.Latest, x.Field) {
			return x, true
		}
	}
	if len(had) == 0 {
		return Said{}, false
	}
	return had[0], true
}

// hinted takes a bare number for what the word beside it says: "thicker, 1/2".
func (t *turn) hinted(a grammar.Amendment) (grammar.Fact, bool) {
	if f, ok := t.anotherOne(a); ok {
		return f, true
	}
	if slices.Contains(a.Of, unit.BarHeight) && t.before.Said.has(unit.BarDenied) {
		return t.held(unit.BarHeight, a) // "scrap the bar", then "with a 1 in instead"
	}
	for _, f := range a.Of {
		if x, ok := t.before.Said.find(f); ok {
			if a.Unit.Symbol == "" {
				a.Unit = t.unitOf(x)
			}
			return t.held(f, a)
		}
	}
	if len(a.Of) > 1 && slices.Contains([]unit.Field{unit.StripLength, unit.StripWidth, unit.StripThickness}, a.Of[0]) && namesStrip.MatchString(t.m.Text) {
		return t.held(a.Of[0], a) // "longer staves, 60"
	}
	return grammar.Fact{}, false
}

// anotherOne takes "and a 26 in one?" for the one length that the last message told,
// unless it answers what was asked.
func (t *turn) anotherOne(a grammar.Amendment) (grammar.Fact, bool) {
	if !a.One || len(t.before.Pending)+len(t.before.Compare) > 0 {
		return grammar.Fact{}, false
	}
	var lengths []unit.Field
	for _, f := range t.before.Latest {
		if x, _ := t.before.Said.find(f); f.Dimension() == unit.Distance && x.Value != nil {
			lengths = append(lengths, f)
		}
	}
	if len(lengths) == 0 {
		lengths = t.ofPartToldLast()
	}
	if len(lengths) != 1 {
		return grammar.Fact{}, false
	}
	if a.Unit.Symbol == "" {
		x, _ := t.before.Said.find(lengths[0])
		a.Unit = t.unitOf(x)
	}
	return t.held(lengths[0], a)
}

// sizeOf is what a bare measure of a part is of which something else was told.
var sizeOf = map[unit.Field]unit.Field{
	unit.MatFirmness: unit.MatThickness, unit.MatFirm: unit.MatThickness, unit.CoreKind: unit.CoreThickness, unit.BarCount: unit.BarHeight, unit.BarFoot: unit.BarHeight,
}

// ofPartToldLast is the measure of the part that the last message told of without one:
// "medium mat?", then "a half inch one".
func (t *turn) ofPartToldLast() []unit.Field {
	var out []unit.Field
	for _, f := range t.before.Latest {
		if g, ok := sizeOf[f]; ok && t.before.Said.has(g) && !slices.Contains(out, g) {
			out = append(out, g)
		}
	}
	return out
}

// sought takes a bare number for what the thread looks for, or pumps down to: "I
// have a 1 1/2, will that do", "to 20".
func (t *turn) sought(a grammar.Amendment) (grammar.Fact, bool) {
	if t.takesBack() {
		return grammar.Fact{}, false
	}
	for _, w := range t.before.Asks {
		if w.Solve != "" {
			if f, ok := t.held(w.Solve, a); ok && likely[w.Solve] != [2]float64{} {
				return f, true
			}
		}
		if w.About == grammar.Pump && strings.Contains(" "+strings.ToLower(t.m.Text), " to "+strings.ToLower(a.Text)) {
			return t.held(unit.Vacuum, a)
		}
	}
	return grammar.Fact{}, false
}

// alone takes a number for the one thing of the whole thread that it can be in place
// of: a per cent where one was said in per cent, else what is nearest where nothing
// else is near.
func (t *turn) alone(a grammar.Amendment) (grammar.Fact, bool) {
	if u := asForce(a.Unit, unit.WedgeForce); u.Dimension == unit.Pushing && t.before.Said.has(unit.WedgeRatio) {
		return amendment(unit.WedgeForce, u, a), true // "300 N" of a wedge
	}
	if a.Unit.Symbol == "%" && t.before.Said.has(unit.Vacuum) && !t.before.Said.has(unit.ShopHumidity, unit.ServiceHumidity, unit.WoodMoisture, unit.WoodMoistureLow) {
		return t.held(unit.Vacuum, a) // "and at 92%?"
	}
	best, n := grammar.Fact{}, 0
	for _, x := range t.before.Said {
		old, isNumber := x.Value.(unit.Number)
		u := a.Unit
		if u.Symbol == "" {
			u = t.unitOf(x)
		}
		counts := x.Field.Dimension() == unit.Count && a.Unit.Symbol == "" && a.Value == math.Trunc(a.Value)
		if !isNumber || a.Value <= 0 || !counts && (u.Symbol == "" || u.Dimension != x.Field.Dimension()) {
			continue
		}
		off := math.Abs(math.Log(a.Value / writtenIn(u, x.Field, old)))
		if x.Field == unit.Ambient && off > weatherMoves && !t.correctsByTone() {
			continue // no weather
		}
		if now := amendment(x.Field, u, a); off <= farOff || u.Dimension == unit.Proportion && a.Unit.Symbol != "" {
			v, _ := now.Value.(unit.Number)
			if !isLikely(x.Field, v) {
				continue
			}
			n++
			if off <= closeBy {
				best = now
			}
		}
	}
	return best, n == 1 && best.Field != ""
}

// closeBy and farOff are, as logarithms, how far a later value of something is from
// the one before, and how far what it cannot be is; our estimate.
const closeBy, farOff = 0.45, 1.4

// takesBack reports whether a message corrects rather than wonders.
func (t *turn) takesBack() bool {
	text := strings.ToLower(strings.TrimSpace(t.m.Text))
	return t.correctsByTone() && !strings.HasPrefix(text, "what about")
}

// wondersAtBar reports whether a bare length that a message wonders at is the
// bar's: it is near the bar told last, or says the strips' own width again.
func (t *turn) wondersAtBar(a grammar.Amendment) bool {
	x, ok := t.before.Said.find(unit.BarHeight)
	old, isNumber := x.Value.(unit.Number)
	if !ok || !isNumber || t.takesBack() || t.before.empty() || t.before.Asks[0].About != grammar.Side || !slices.Contains(t.before.Latest, unit.BarHeight) {
		return false
	}
	u := a.Unit
	if u.Symbol == "" {
		u = t.unitOf(x)
	}
	if u.Dimension != unit.Distance {
		return false
	}
	width, _ := t.before.Said.facts().Number(unit.StripWidth)
	now, _ := amendment(unit.StripWidth, u, a).Value.(unit.Number)
	off := math.Abs(math.Log(a.Value / writtenIn(u, unit.BarHeight, old)))
	return off < 0.55 || math.Abs(float64(now)-width) < 0.01
}

// countsThem: the number of "for just one of them" is no measure.
func (t *turn) countsThem(a grammar.Amendment) bool {
	_, behind, found := strings.Cut(strings.ToLower(t.m.Text), strings.ToLower(a.Text))
	return found && a.Unit.Symbol == "" && a.Value == math.Trunc(a.Value) && a.Value >= 1 && isLikely(unit.PanelCount, unit.Number(a.Value)) && someOf.MatchString(behind) && strings.HasPrefix(strings.TrimSpace(behind), "of ")
}

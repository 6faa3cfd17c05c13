package bot

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// A Pending is what the last reply of a thread asked for: a field, and what was
// said of it where that was two things.
type Pending struct {
	Field unit.Field
	Texts []string
}

// pending returns what a reply asked for.
func pending(needs []unit.Field, clashes []grammar.Clash) []Pending {
	out := make([]Pending, 0, len(needs))
	for _, f := range needs {
		p := Pending{Field: f}
		for _, c := range clashes {
			if statedField(c.Field) == f {
				p.Texts = c.Texts
			}
		}
		out = append(out, p)
	}
	return out
}

// bareReplies turns the bare numbers of a message into facts, in the light of
// the thread. One that fits nothing is unused.
func (t *turn) bareReplies(p grammar.Phrase) grammar.Phrase {
	explains := slices.ContainsFunc(p.Asks, func(a grammar.Ask) bool { return a.About == grammar.Why })
	for _, a := range p.Amends {
		f, ok := t.meantBy(a)
		ok = ok && !explains // "how do you come up with 12"
		if !ok {
			p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], a.Text)
			continue
		}
		p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], t.ofAll(f))
	}
	if len(p.Amends) == 0 && len(t.before.Compare) > 0 && len(p.Choices) == 0 {
		p = t.chosenBySize(t.chosenByPlace(t.chosenAmongOthers(p)))
	}
	return p
}

// allOfThem tells that pieces which differed are alike now.
var allOfThem = regexp.MustCompile(`(?i)\b(they all|all of (them|em)|all (say|read|are|show)|both (say|read|are|show)|both of (them|em)|every (single )?one|everything)\b`)

// ofAll takes "now they all say 8" for what all pieces have, not for one end of
// how they differ.
func (t *turn) ofAll(f grammar.Fact) grammar.Fact {
	if !allOfThem.MatchString(t.m.Text) {
		return f
	}
	switch f.Field {
	case unit.WoodMoistureLow, unit.WoodMoistureHigh:
		f.Field = unit.WoodMoisture
	case unit.StripThinnest, unit.StripThickest:
		f.Field = unit.StripThickness
	}
	return f
}

// chosenAmongOthers finds a number that decides a comparison among others in
// the message: "two it is, and leave them in 45 min".
func (t *turn) chosenAmongOthers(p grammar.Phrase) grammar.Phrase {
	for i, text := range p.Unused {
		alone := t.bot.Parse(text, grammar.Habit{Metric: t.settings.Metric}).Amends
		if len(alone) != 1 {
			continue
		}
		if f, ok := t.chosen(alone[0]); ok && !stated(p.Facts, f.Field) {
			p.Unused = slices.Delete(slices.Clone(p.Unused), i, i+1)
			p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], f)
			return p
		}
	}
	return p
}

func stated(facts []grammar.Fact, f unit.Field) bool {
	return slices.ContainsFunc(facts, func(x grammar.Fact) bool { return x.Field == f })
}

// meantBy returns what a bare number states: what the last reply asked for, one
// of the values compared, else a later value for something said before. A word
// of correction looks at what was said before first.
func (t *turn) meantBy(a grammar.Amendment) (grammar.Fact, bool) {
	ways := []func(grammar.Amendment) (grammar.Fact, bool){t.hinted, t.takesPlace, t.askedFor, t.chosen, t.sought, t.instead, t.alone}
	if t.correctsByTone() {
		ways = []func(grammar.Amendment) (grammar.Fact, bool){t.hinted, t.takesPlace, t.chosen, t.sought, t.instead, t.askedFor, t.alone}
	}
	if len(a.Of) > 0 && a.Of[0] == unit.PanelCount {
		ways = []func(grammar.Amendment) (grammar.Fact, bool){t.hinted, t.askedFor} // what a customer wants more of is neither strips nor vacuum
	}
	if a.Was != 0 && len(a.Of) > 0 {
		ways = []func(grammar.Amendment) (grammar.Fact, bool){t.takesPlace, t.ofPart} // "the bar is 3/4 not 1"
	}
	if a.Layer != "" {
		return t.layerAgain(a)
	}
	if t.countsThem(a) {
		return grammar.Fact{Field: unit.PanelCount, Value: unit.Number(a.Value), Text: a.Text}, t.before.Said.has(unit.PanelCount)
	}
	for _, way := range []func(grammar.Amendment) (grammar.Fact, bool){t.weather, t.degreesThen, t.degreesAgain, t.pushedTo, t.tankHolds} {
		if f, ok := way(a); ok {
			return f, true
		}
	}
	if namesWidth(a) && t.before.Said.has(unit.StockPiles) {
		return grammar.Fact{}, false // "use the 3s up first"
	}
	if backTo.MatchString(t.m.Text) {
		ways = append([]func(grammar.Amendment) (grammar.Fact, bool){t.returned}, ways...)
	}
	for _, way := range ways {
		if f, ok := way(a); ok {
			return f, true
		}
	}
	return grammar.Fact{}, false
}

// takesPlace takes a bare number for what has the value that it is to replace.
func (t *turn) takesPlace(a grammar.Amendment) (grammar.Fact, bool) {
	was := grammar.Amendment{Value: a.Was}
	for _, x := range t.before.Said {
		if len(a.Of) > 0 && !slices.Contains(a.Of, x.Field) {
			continue
		}
		if n, isNumber := x.Value.(unit.Number); a.Was != 0 && isNumber && sameNumber(n, x.Field, named[x.Unit], was) {
			if x.Field.Dimension() == unit.Count && a.Value != math.Trunc(a.Value) {
				width, told := t.before.Said.find(unit.StripWidth)
				if x.Field != unit.StripCount || !told {
					continue
				}
				x = width // "the 8 are really 2 1/2" of 8 strips 2 1/4 wide
			}
			u := a.Unit
			if u.Symbol == "" {
				u = named[x.Unit]
			}
			return amendment(x.Field, u, a), true
		}
	}
	return grammar.Fact{}, false
}

// ofPart takes a bare number for the part that it is told of, whatever was said of that before.
func (t *turn) ofPart(a grammar.Amendment) (grammar.Fact, bool) { return t.held(a.Of[0], a) }

// weatherTurns are words of a barometer that moves.
var weatherTurns = regexp.MustCompile(`(?i)\b(back (up |down )?to|back (up|down)|climb\w*|rose|risen|rising|fell|fallen|falling|tomorrow|tonight|storm|forecast|weather\w*|radio|front|high pressure|low pressure|glass)\b`)

// weather takes a bare number for a later barometer: "and back to 29.9 tomorrow".
func (t *turn) weather(a grammar.Amendment) (grammar.Fact, bool) {
	x, told := t.before.Said.find(unit.Ambient)
	old, isNumber := x.Value.(unit.Number)
	if !told || !isNumber || a.Unit.Symbol != "" || a.Value <= 0 || t.before.Said.has(unit.Vacuum) || !weatherTurns.MatchString(t.m.Text) {
		return grammar.Fact{}, false
	}
	u := t.unitOf(x)
	return amendment(unit.Ambient, u, a), math.Abs(math.Log(a.Value/writtenIn(u, unit.Ambient, old))) <= weatherMoves
}

// backTo is how one goes back to what was said before: "back to 20", "20 was right".
var backTo = regexp.MustCompile(`(?i)\b(back|return|returning|revert) to\b|\b(was|were) (right|correct|true) ?(after all|all along)?\W*$`)

// returned takes a bare number for the value that it had before: "back to the
// 40".
func (t *turn) returned(a grammar.Amendment) (grammar.Fact, bool) {
	for _, x := range slices.Backward(slices.Concat(t.before.Said, t.before.Earlier)) {
		was := a
		was.Unit = asForce(a.Unit, x.Field)
		if n, isNumber := x.Value.(unit.Number); isNumber && sameNumber(n, x.Field, named[x.Unit], was) {
			return grammar.Fact{Field: x.Field, Value: n, Unit: named[x.Unit], Text: a.Text}, true
		}
	}
	return grammar.Fact{}, false
}

// correctsByTone reports whether a message takes back what it said before.
func (t *turn) correctsByTone() bool {
	text := strings.ToLower(strings.TrimSpace(t.m.Text))
	for _, w := range []string{"make that", "make it", "change", "what about", "i meant", "not "} {
		if strings.HasPrefix(text, w) {
			return true
		}
	}
	return false
}

// askedFor takes a bare number for the first thing asked for that it can be.
func (t *turn) askedFor(a grammar.Amendment) (grammar.Fact, bool) {
	for _, p := range t.before.Pending {
		if len(p.Texts) > 0 {
			if f, ok := t.oneOf(p, a); ok {
				return f, true
			}
		}
		if f, ok := t.held(p.Field, a); ok {
			return f, true
		}
	}
	return grammar.Fact{}, false
}

// oneOf takes a bare number for the one of two values said that it names.
func (t *turn) oneOf(p Pending, a grammar.Amendment) (grammar.Fact, bool) {
	for _, text := range p.Texts {
		said := t.bot.Parse(text, grammar.Habit{Metric: t.settings.Metric})
		for _, f := range said.Facts {
			n, isNumber := f.Value.(unit.Number)
			if statedField(f.Field) == p.Field && isNumber && sameNumber(n, f.Field, f.Unit, a) {
				f.Text = a.Text
				return f, true
			}
		}
		for _, x := range said.Amends {
			if x.Value == a.Value {
				if a.Unit.Symbol == "" {
					a.Unit = x.Unit
				}
				return t.held(p.Field, a)
			}
		}
	}
	return grammar.Fact{}, false
}

// sameNumber reports whether a names the number n of a field written in u.
func sameNumber(n unit.Number, f unit.Field, u unit.Unit, a grammar.Amendment) bool {
	written := writtenIn(u, f, n)
	return (a.Unit.Symbol == "" || a.Unit.Symbol == u.Symbol) && math.Abs(written-a.Value) <= 1e-6*math.Abs(a.Value)
}

// writtenIn is the number n of a field as one writes it in u.
func writtenIn(u unit.Unit, f unit.Field, n unit.Number) float64 {
	if u.Dimension == f.Dimension() && f.Dimension() != unit.Count && u.Factor != 0 {
		return u.Of(f.SI(n))
	}
	return float64(n)
}

// chosen takes a bare number for the value compared that it names.
func (t *turn) chosen(a grammar.Amendment) (grammar.Fact, bool) {
	for _, c := range t.before.Compare {
		for _, x := range c.Values {
			n, isNumber := x.Value.(unit.Number)
			if isNumber && sameNumber(n, c.Field, named[x.Unit], a) {
				return grammar.Fact{Field: c.Field, Value: n, Unit: named[x.Unit], Text: a.Text}, true
			}
		}
	}
	return grammar.Fact{}, false
}

// pullTo tells what a pump is to reach: "and to just 0.7?", "what if i stop at 21", "20 is plenty".
var pullTo = regexp.MustCompile(`(?i)^\W*(?:(?:and|but|so|what|how|about|if|say|i|we|only|just|down) )*(?:to|need|stop at) (?:(?:only|just|about) )*-?[\d.,]+\W*$|^\W*-?[\d.,]+ (?:is|would be|will be|will) (?:enough|plenty|do)\W*$`)

// furthest is how far, as a logarithm, a later value may be from the only one
// stated last: twelve times as much; our estimate.
const furthest = 2.5

// weatherMoves is, as a logarithm, how far a barometer moves; our estimate.
const weatherMoves = 0.08

// instead takes a bare number for a later value of what was stated last: of a
// vacuum where its inches can only be those of a gauge, else of the field that
// it is nearest to.
func (t *turn) instead(a grammar.Amendment) (grammar.Fact, bool) {
	vacuum, hasVacuum := t.before.Said.find(unit.Vacuum)
	hasVacuum = hasVacuum && !a.One
	if hasVacuum && a.Value >= 10 && a.Value <= 30 && (a.Unit.Symbol == "in" || a.Unit.Symbol == "" && vacuum.Unit == "inHg" && len(t.before.Latest) != 1) {
		return amendment(unit.Vacuum, unit.InHg, a), true
	}
	if hasVacuum && a.Unit.Symbol == "" && pullTo.MatchString(t.m.Text) && t.before.Asks[0].About == grammar.Pump {
		now := amendment(unit.Vacuum, named[vacuum.Unit], a)
		if n, _ := now.Value.(unit.Number); isLikely(unit.Vacuum, n) {
			return now, true
		}
	}
	best, nearest := grammar.Fact{}, math.Log(4)
	for _, f := range t.before.Latest {
		if f == unit.StripWidth && t.wondersAtBar(a) || f.Dimension() == unit.Count && strings.Contains(" "+strings.ToLower(t.m.Text), " at "+a.Text) {
			continue // "out at 3" counts nothing
		}
		if f == unit.BarCount && (a.Unit.Dimension == unit.Distance || a.Value != math.Trunc(a.Value)) {
			f = unit.BarHeight // "2 bars", then "make it 1 in"
		}
		x, _ := t.before.Said.find(f)
		old, isNumber := x.Value.(unit.Number)
		if !isNumber || f.Dimension() == unit.Count && a.Value != math.Trunc(a.Value) {
			continue
		}
		u := asForce(a.Unit, f)
		if u.Symbol == "" {
			u = t.unitOf(x)
		} else if u.Dimension != f.Dimension() {
			continue
		}
		now := amendment(f, u, a)
		if x.Note == grammar.JointsAndOne { // "9 joints", then "sorry 8"
			now.Value, now.Note = unit.Number(a.Value+1), x.Note
		}
		if n, _ := now.Value.(unit.Number); !isLikely(f, n) {
			continue
		}
		if off := math.Abs(math.Log(a.Value / writtenIn(u, f, old))); off <= nearest || len(t.before.Latest) == 1 && off <= furthest {
			best, nearest = now, off
		}
	}
	if best.Field == unit.Ambient && nearest > weatherMoves && (hasVacuum || !t.correctsByTone() && a.Unit.Symbol == "") {
		best = grammar.Fact{} // no weather: a later vacuum
	}
	if best.Field != "" && t.elsewhere(a, best.Field, nearest) {
		return grammar.Fact{}, false
	}
	if best.Field == "" && hasVacuum && a.Value >= 10 && a.Value <= 30 && a.Unit.Symbol == "" && vacuum.Unit == "inHg" {
		return amendment(unit.Vacuum, unit.InHg, a), true
	}
	return best, best.Field != ""
}

// elsewhere reports whether a number that is far from what f was is just what
// another thing of the thread could become: "70" after 16 panels at 65 °F.
func (t *turn) elsewhere(a grammar.Amendment, f unit.Field, off float64) bool {
	for _, x := range t.before.Said {
		old, isNumber := x.Value.(unit.Number)
		u := a.Unit
		if u.Symbol == "" {
			u = t.unitOf(x)
		}
		counts := x.Field.Dimension() == unit.Count && (f.Dimension() == unit.Count || len(t.before.Latest) > 1) && a.Unit.Symbol == "" && a.Value == math.Trunc(a.Value)
		if x.Field == f || !isNumber || !counts && (u.Dimension != x.Field.Dimension() || u.Symbol == "") || a.Value <= 0 {
			continue
		}
		if other := math.Abs(math.Log(a.Value / writtenIn(u, x.Field, old))); (off > farAway || off > farAway/2 && x.Field.Dimension() == unit.Count && f.Dimension() != unit.Count) && other < farAway/3 {
			return true
		}
	}
	return false
}

// farAway is, as a logarithm, how far a later value is seldom; our estimate.
const farAway = 0.9

// likely are the numbers that a field usually holds, to tell what a bare number
// answers; our estimate of what a shop has.
var likely = map[unit.Field][2]float64{
	unit.BarCount: {1, 2}, unit.Faces: {1, 2}, unit.Trim: {0.5, 150}, unit.Tent: {0, 50}, unit.Overfill: {0.1, 15}, unit.ThicknessSpread: {0.02, 12},
	unit.WedgeRatio: {2, 60}, unit.CaulThickness: {3, 80}, unit.FenceThickness: {1, 120},
	unit.StripCount: {2, 200}, unit.PanelCount: {1, 500}, unit.PressCount: {1, 20},
	unit.StripWidth: {6, 400}, unit.StripThickness: {1.5, 80}, unit.StripLength: {150, 6000},
	unit.StripThickest: {1.5, 80}, unit.StripThinnest: {1.5, 80}, unit.PanelThickness: {3, 100},
	unit.PanelWidth: {50, 3000}, unit.PanelLength: {150, 6000}, unit.TargetWidth: {50, 5000},
	unit.BarHeight: {3, 150}, unit.BarWidth: {3, 150}, unit.SledThickness: {3, 60}, unit.CoreThickness: {2, 60},
	unit.MatThickness: {1, 50}, unit.Opening: {20, 600}, unit.Gap: {0, 6}, unit.Cup: {0.2, 40}, unit.Bow: {0.2, 100},
	unit.Vacuum: {25, 102}, unit.VacuumPercent: {20, 100}, unit.ShopTemp: {-5, 45}, unit.ServiceTemp: {-5, 45}, unit.WoodMoisture: {3, 30}, unit.ServiceHumidity: {10, 95},
	unit.BagWidth: {200, 4000}, unit.BagLength: {300, 9000},
	unit.ShopHumidity: {10, 95}, unit.Altitude: {0, 4500}, unit.PumpSpeed: {0.2, 50},
}

package bot

import (
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// answering is a bot whose engine has one answer to everything.
func answering(p grammar.Phrase, a engine.Answer, err error) *Bot {
	b := scripted(p)
	b.Engine.Compute = func(q engine.Question) (engine.Answer, error) {
		a.About = q.About
		return a, err
	}
	return b
}

func TestHandle_stripsInWords(t *testing.T) {
	p := grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Strips}}, Facts: []grammar.Fact{
		{Field: unit.StockPiles, Value: unit.Piles{{Width: 53.975, Count: 12}, {Width: 76.2, Count: 9}}, Unit: unit.Inch},
		{Field: unit.TargetWidth, Value: unit.Number(1219.2), Unit: unit.Inch},
	}}
	a := engine.Answer{Verdict: engine.Good, Values: unit.Facts{
		unit.Picks:    unit.Sets{{76.2, 76.2, 53.975}, {53.975, 53.975}},
		unit.WidthSum: unit.TripleOf(unit.Exactly(1231.9)), unit.StripsLeft: unit.Number(7),
	}}
	r := handle(t, answering(p, a, nil), "…")
	for _, want := range []string{
		"2 of 3 in and 1 of 2 1/8 in", "2 of 2 1/8 in", "Strips left over: 7",
		"Read as stock 12 at 2 1/8 in, 9 at 3 in, to come out 48 in wide.",
	} {
		if !strings.Contains(r.Text, want) {
			t.Errorf("reply lacks %q:\n%s", want, r.Text)
		}
	}
}

// What the engine refuses goes to unused and is asked for.
func TestHandle_rangeErrorAsks(t *testing.T) {
	p := grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Face}}, Facts: []grammar.Fact{fact(unit.Altitude, unit.Number(20000))}}
	err := &unit.RangeError{What: string(unit.Altitude), Got: 20000, Unit: " m", Want: "up to 11000 m"}
	r := handle(t, answering(p, engine.Answer{}, err), "…")
	if r.Verdict != engine.Ask || len(r.Needs) != 1 || r.Needs[0] != unit.Altitude || r.Read.Has(unit.Altitude) || len(r.Unused) != 1 {
		t.Errorf("verdict %s, needs %v, read %v, unused %v; want ask, the height, nothing, 20000 m", r.Verdict, r.Needs, r.Read, r.Unused)
	}
	if !strings.Contains(r.Text, "up to 11000 m") {
		t.Errorf("%q does not say what could be", r.Text)
	}
}

// No default stands in for a number that cannot be.
func TestHandle_refusedIsNotReplacedByADefault(t *testing.T) {
	r := handle(t, scripted(grammar.Phrase{
		Asks: []grammar.Ask{{About: grammar.Face}}, Facts: []grammar.Fact{fact(unit.Vacuum, unit.Number(84.66))},
		Refused: []grammar.Refusal{{Field: unit.Altitude, Text: "60000 ft", Want: "a height of −430 to 9000 m"}},
	}), "…")
	if r.Verdict != engine.Ask || len(r.Values) > 0 || strings.Contains(r.Text, "sea level") {
		t.Errorf("verdict %s, values %v: %s; want a question and no figure at sea level", r.Verdict, r.Values, r.Text)
	}
}

// One of two questions lacks something: the other is answered, and what is
// missing is asked for last.
func TestHandle_oneOfTwoLacks(t *testing.T) {
	b := scripted(grammar.Phrase{
		Asks:  []grammar.Ask{{About: grammar.Face}, {About: grammar.Pump}},
		Facts: []grammar.Fact{fact(unit.Vacuum, unit.Number(84.66))},
	})
	r := handle(t, b, "…")
	last := r.Lines[len(r.Lines)-1]
	if r.Verdict == engine.Ask || len(r.Needs) == 0 || !r.Values.Has(unit.FacePressure) || last.Kind != Question {
		t.Errorf("verdict %s, needs %v, last line %+v; want the face answered and the pump asked for last", r.Verdict, r.Needs, last)
	}
	if r.About != grammar.Face || len(r.Also) != 1 || r.Also[0] != grammar.Pump {
		t.Errorf("about %s and %v, want face and pump", r.About, r.Also)
	}
}

// A reply is short: eight lines of figures at most.
func TestHandle_short(t *testing.T) {
	b := New(NewMemory())
	for _, q := range []string{
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue, 1:12 wedge driven with 200 lb, 1/32 crook, 48 long, oak",
		"plan: 6 staves 2 3/4 wide, 3/4 thick, 36 long, beech, bar 1 1/2, 25 inHg, d4, 60F, 8% mc",
		"far joint? and how much glue? 5 strips 2 1/4 wide, 1/4 thick, 36 long, 1 in bar, 25 inHg",
	} {
		r := handle(t, b, q)
		n := 0
		for _, l := range r.Lines {
			if l.Kind == Figure || l.Kind == Reason {
				n++
			}
		}
		if n > maxFigures || r.Lines[0].Kind != Headline {
			t.Errorf("%q has %d lines of figures and begins with kind %d, want at most %d behind a headline:\n%s", q, n, r.Lines[0].Kind, maxFigures, r.Text)
		}
	}
}

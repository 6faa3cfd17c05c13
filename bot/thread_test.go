package bot

import (
	"context"
	"encoding/json"
	"reflect"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

func fact(f unit.Field, v unit.Value) grammar.Fact { return grammar.Fact{Field: f, Value: v} }

func side(facts ...grammar.Fact) grammar.Phrase {
	return grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Side}}, Facts: facts}
}

func TestThread_amended(t *testing.T) {
	first := Thread{}.amended(side(fact(unit.StripCount, unit.Number(5)), fact(unit.BarHeight, unit.Number(25.4)),
		fact(unit.WedgeRatio, unit.Number(12)), fact(unit.WedgeForce, unit.Number(900)), fact(unit.VacuumPercent, unit.Number(85))))
	for name, c := range map[string]struct {
		p    grammar.Phrase
		want unit.Facts
	}{
		"a later value replaces": {grammar.Phrase{Facts: []grammar.Fact{fact(unit.StripCount, unit.Number(6))}},
			unit.Facts{unit.StripCount: unit.Number(6), unit.BarHeight: unit.Number(25.4), unit.WedgeRatio: unit.Number(12), unit.WedgeForce: unit.Number(900), unit.VacuumPercent: unit.Number(85)}},
		"without the wedge drops both of its fields": {grammar.Phrase{Drops: []grammar.Part{"wedge"}},
			unit.Facts{unit.StripCount: unit.Number(5), unit.BarHeight: unit.Number(25.4), unit.VacuumPercent: unit.Number(85)}},
		"a gauge replaces a per cent": {grammar.Phrase{Facts: []grammar.Fact{fact(unit.Vacuum, unit.Number(80))}, Drops: []grammar.Part{"wedge"}},
			unit.Facts{unit.StripCount: unit.Number(5), unit.BarHeight: unit.Number(25.4), unit.Vacuum: unit.Number(80)}},
		"without the bar denies it": {grammar.Phrase{Drops: []grammar.Part{"bar", "wedge"}},
			unit.Facts{unit.StripCount: unit.Number(5), unit.VacuumPercent: unit.Number(85), unit.BarDenied: unit.Word("none")}},
		"a clash leaves nothing": {grammar.Phrase{Clashes: []grammar.Clash{{Field: unit.BarHeight}}, Drops: []grammar.Part{"wedge"}},
			unit.Facts{unit.StripCount: unit.Number(5), unit.VacuumPercent: unit.Number(85)}},
		"a new start forgets": {grammar.Phrase{NewStart: true, Facts: []grammar.Fact{fact(unit.Cup, unit.Number(3))}},
			unit.Facts{unit.Cup: unit.Number(3)}},
	} {
		if got := first.amended(c.p).Said.facts(); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: thread says %v, want %v", name, got, c.want)
		}
	}
	if n := len(first.Said); n != 5 {
		t.Errorf("amending changed the thread itself: %d facts, want 5", n)
	}
}

func TestThread_bothInOneMessageStand(t *testing.T) {
	got := Thread{}.amended(side(fact(unit.Ambient, unit.Number(83)), fact(unit.Altitude, unit.Number(1600)))).Said.facts()
	if !got.Has(unit.Ambient) || !got.Has(unit.Altitude) {
		t.Errorf("thread says %v, want the barometer and the height", got)
	}
}

func TestThread_solvedFieldStated(t *testing.T) {
	th := Thread{}.amended(grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Side, Solve: unit.BarHeight}}})
	th = th.amended(grammar.Phrase{Facts: []grammar.Fact{fact(unit.Vacuum, unit.Number(80))}})
	if th.Asks[0].Solve != unit.BarHeight {
		t.Errorf("another fact ends the search for the bar")
	}
	th = th.amended(grammar.Phrase{Facts: []grammar.Fact{fact(unit.BarHeight, unit.Number(25.4))}})
	if th.Asks[0].Solve != "" {
		t.Errorf("a stated bar is still searched for")
	}
}

func TestThread_comesBackFromJSON(t *testing.T) {
	in := Thread{
		Asks: []Wanted{{About: grammar.Side, Solve: unit.BarHeight, Goal: unit.Facts{unit.SideFarJoint: unit.Number(70)}, For: []unit.Field{unit.Preload}}},
		Said: Statement{
			{Field: unit.StripCount, Value: unit.Number(5), Text: "5 strips"},
			{Field: unit.StackLayers, Value: unit.Layers{{Part: "sled", Thickness: 19}}, Unit: "mm"},
		},
		Compare: []Alternative{{Field: unit.GlueClass, Values: Statement{{Field: unit.GlueClass, Value: unit.Word("pva")}}}},
		In:      []string{"psi"}, Load: 14, Latest: []unit.Field{unit.StripCount}, Covered: ToTop,
	}
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var out Thread
	if err := json.Unmarshal(text, &out); err != nil || !reflect.DeepEqual(in, out) {
		t.Errorf("came back as %+v (%v), want %+v", out, err, in)
	}
}

// scripted answers every message with the next phrase of a list.
func scripted(phrases ...grammar.Phrase) *Bot {
	b := New(NewMemory())
	b.Parse = func(string, grammar.Habit) grammar.Phrase {
		p := phrases[0]
		phrases = phrases[1:]
		return p
	}
	return b
}

func handle(t *testing.T, b *Bot, text string) Reply {
	t.Helper()
	r, err := b.Handle(context.Background(), Message{Room: "shop", Thread: "1", From: "ana", Text: text})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestHandle_clashAsks(t *testing.T) {
	r := handle(t, scripted(grammar.Phrase{
		Asks:    []grammar.Ask{{About: grammar.Face}},
		Clashes: []grammar.Clash{{Field: unit.VacuumAbsolute, Texts: []string{"25 inHg", "50 kPa"}}},
	}), "…")
	if r.Verdict != engine.Ask || len(r.Needs) == 0 || r.Needs[0] != unit.Vacuum || r.Read.Has(unit.Vacuum) {
		t.Errorf("verdict %s, needs %v, read %v; want ask, the vacuum, nothing", r.Verdict, r.Needs, r.Read)
	}
	if r.Lines[0].Kind != Headline || r.Lines[0].Text != "You gave “25 inHg” and “50 kPa” for the vacuum. Which is it?" {
		t.Errorf("first line is %+v, want the question", r.Lines[0])
	}
}

// 85 % of 101.325 kPa is 86.13 kPa.
func TestHandle_readsPerCentAsDifference(t *testing.T) {
	r := handle(t, scripted(grammar.Phrase{
		Asks: []grammar.Ask{{About: grammar.Face}}, Facts: []grammar.Fact{fact(unit.VacuumPercent, unit.Number(85))},
	}), "…")
	p, ok := r.Read.Number(unit.Vacuum)
	if !ok || p < 86.12 || p > 86.14 || r.Read.Has(unit.VacuumPercent) {
		t.Errorf("read is %v, want a vacuum of 86.13 alone", r.Read)
	}
}

func TestHandle_bareNumberAmends(t *testing.T) {
	first := side(fact(unit.StripCount, unit.Number(5)), grammar.Fact{Field: unit.Vacuum, Value: unit.Number(84.66), Unit: unit.InHg})
	b := scripted(first,
		grammar.Phrase{Amends: []grammar.Amendment{{Text: "22 inches", Value: 22, Unit: unit.Inch}}},
		grammar.Phrase{Amends: []grammar.Amendment{{Text: "6", Value: 6}}},
	)
	handle(t, b, "…")
	// 22 inHg is 22 × 3.386389 = 74.50 kPa
	if p, _ := handle(t, b, "…").Read.Number(unit.Vacuum); p < 74.49 || p > 74.51 {
		t.Errorf("22 inches gives a vacuum of %g kPa, want 74.50", p)
	}
	r := handle(t, b, "…")
	if len(r.Unused)+len(r.Read) == 0 {
		t.Errorf("the bare 6 is neither read nor unused")
	}
}

func TestHandle_profileFillsAssumed(t *testing.T) {
	b := scripted(
		grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Profile}}, Facts: []grammar.Fact{fact(unit.Altitude, unit.Number(1600))}},
		grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Face}}, Facts: []grammar.Fact{fact(unit.Vacuum, unit.Number(70))}},
	)
	handle(t, b, "…")
	r := handle(t, b, "…")
	if r.Read.Has(unit.Altitude) || r.Assumed[unit.Altitude] != unit.Number(1600) {
		t.Errorf("read %v, assumed %v; want the height assumed only", r.Read, r.Assumed)
	}
}

func TestHandle_everyDangerHasAnAnswer(t *testing.T) {
	for peril := range dangers {
		r := handle(t, scripted(grammar.Phrase{Asks: []grammar.Ask{{About: grammar.Safety, Peril: peril}}}), "…")
		if r.About != grammar.Safety || r.Verdict != engine.Stop && r.Verdict != engine.Care || len(r.Cautions) == 0 || len(r.Values) > 0 {
			t.Errorf("%s: about %s, %s, cautions %v, values %v; want a caution and no figure", peril, r.About, r.Verdict, r.Cautions, r.Values)
		}
	}
}

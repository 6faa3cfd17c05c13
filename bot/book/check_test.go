package book_test

import (
	"encoding/json"
	"errors"
	"reflect"
	"testing"

	"presshand/bot/book"
	"presshand/engine/unit"
)

// Tolerances by hand: 2 % of 25.4 mm is 0.508 mm, more than 0.5 mm; 2 % of
// 6.35 mm is 0.127 mm, less than 0.5 mm; 1 inHg is 3.386 kPa.
func TestCompare_tolerance(t *testing.T) {
	for _, c := range []struct {
		field    unit.Field
		measured unit.Value
		agrees   bool
	}{
		{unit.BarHeight, unit.Number(25.4 + 0.508), true},
		{unit.BarHeight, unit.Number(25.4 + 0.509), false},
		{unit.BarHeight, unit.Number(25.4 - 0.508), true},
		{unit.BarHeight, unit.Number(19.05), false},
		{unit.StripThickness, unit.Number(6.85), true},
		{unit.StripThickness, unit.Number(6.86), false},
		{unit.Vacuum, unit.Number(84.659725 - 3.386), true},
		{unit.Vacuum, unit.Number(84.659725 - 3.387), false},
		{unit.StripCount, unit.Number(5), true},
		{unit.StripCount, unit.Number(6), false},
		{unit.Species, unit.Word("walnut"), true},
		{unit.Species, unit.Word("oak"), false},
	} {
		got := book.Compare(walnut(), unit.Facts{c.field: c.measured})
		if len(got) != 1 || got[0].Agrees != c.agrees || !got[0].Known() {
			t.Errorf("%s measured %v: %+v, want agrees: %v", c.field, c.measured, got, c.agrees)
		}
	}
}

func TestCompare_several(t *testing.T) {
	p := walnut()
	p.Said[unit.StripWidths] = unit.Numbers{50, 60}
	p.Said[unit.MatDenied] = unit.Word("none")
	got := book.Compare(p, unit.Facts{
		unit.StripWidths: unit.Number(60.5), unit.MatThickness: unit.Number(10), unit.Cup: unit.Number(2), unit.BarHeight: unit.Number(19.05),
	})
	var names []unit.Field
	for _, c := range book.Differing(got) {
		names = append(names, c.Field)
	}
	// the 19 mm bar, and a mat where the plan has none; a cup was not planned
	if want := []unit.Field{unit.BarHeight, unit.MatThickness}; !reflect.DeepEqual(names, want) {
		t.Errorf("differ: %v, want %v", names, want)
	}
	if book.Agree(got) {
		t.Error("what differs counts as agreeing")
	}
}

func TestLoad_Measure_agreesAndDiffers(t *testing.T) {
	l := after(t, "check")
	if c := l.Check; !c.Agrees || c.By != ben || c.Own || len(c.Compared) != 2 || !l.HasValidCheck() {
		t.Errorf("check is %+v, want Ben's, which agrees on two values", c)
	}
	l = after(t, "differ")
	d := book.Differing(l.Check.Compared)
	if l.State != book.Posted || len(d) != 1 || d[0].Planned != unit.Number(25.4) || d[0].Measured != unit.Number(19.05) {
		t.Errorf("load is %s, differing %+v; want posted, bar planned 25.4, measured 19.05", l.State, d)
	}
	if again := l.Plan.Amended(l.Check.Measured); again[unit.BarHeight] != unit.Number(19.05) || l.Plan.Said[unit.BarHeight] != unit.Number(25.4) {
		t.Errorf("question for what was measured has bar %v, the plan %v", again[unit.BarHeight], l.Plan.Said[unit.BarHeight])
	}
	// a check that agreed is void once someone measures otherwise
	if l = after(t, "check", "differ"); l.HasValidCheck() || l.State != book.Posted {
		t.Errorf("load is %s, want posted", l.State)
	}
}

func TestLoad_Measure_refusals(t *testing.T) {
	l := posted(t)
	corrected := after(t, "correct") // by Ann
	byBen, err := l.Correct(by(ben, 5), book.Correction{Plan: corrected.Plan})
	if err != nil {
		t.Fatal(err)
	}
	bens, err := l.Apply(byBen)
	if err != nil {
		t.Fatal(err)
	}
	eve := book.Person{ID: "eve"}
	one := unit.Facts{unit.BarHeight: unit.Number(25.4)}
	for name, c := range map[string]struct {
		load     book.Load
		by       book.Person
		measured unit.Facts
		policy   book.Policy
		why      book.Why
	}{
		"own":                   {l, ann, asPlanned, book.Policy{}, book.OwnLoad},
		"own in a small shop":   {l, ann, asPlanned, book.Policy{OwnCheck: true}, ""},
		"own revision":          {bens, ben, asPlanned, book.Policy{}, book.OwnLoad},
		"poster of a revision":  {bens, ann, asPlanned, book.Policy{}, book.OwnLoad},
		"third of a revision":   {bens, eve, asPlanned, book.Policy{}, ""},
		"not among checkers":    {l, ben, asPlanned, book.Policy{Checkers: []string{"eve"}}, book.NotAChecker},
		"among checkers":        {l, ben, asPlanned, book.Policy{Checkers: []string{"eve", "ben"}}, ""},
		"looks fine":            {l, ben, nil, book.Policy{}, book.TooFew},
		"one value":             {l, ben, one, book.Policy{}, book.TooFew},
		"one and a word":        {l, ben, unit.Facts{unit.BarHeight: unit.Number(25.4), unit.Species: unit.Word("walnut")}, book.Policy{}, book.TooFew},
		"one and one unplanned": {l, ben, unit.Facts{unit.BarHeight: unit.Number(25.4), unit.Cup: unit.Number(1)}, book.Policy{}, book.TooFew},
	} {
		e, err := c.load.Measure(by(c.by, 6), c.measured, c.policy)
		if c.why == "" {
			if err != nil || e.Detail.Own != c.policy.OwnCheck {
				t.Errorf("%s: %v, own %v", name, err, e.Detail.Own)
			}
			continue
		}
		if !errors.Is(err, &book.RefusedError{Why: c.why, Act: book.Check}) {
			t.Errorf("%s: got %v, want refused: %s", name, err, c.why)
		}
	}
}

func TestComparison_json(t *testing.T) {
	for _, c := range book.Compare(walnut(), unit.Facts{unit.BarHeight: unit.Number(19.05), unit.Species: unit.Word("oak"), unit.Cup: unit.Number(1)}) {
		data, err := json.Marshal(c)
		if err != nil {
			t.Fatal(err)
		}
		var back book.Comparison
		if err := json.Unmarshal(data, &back); err != nil || !reflect.DeepEqual(back, c) {
			t.Errorf("%s reads back as %+v (%v), want %+v", data, back, err, c)
		}
	}
	var c book.Comparison
	if err := json.Unmarshal([]byte(`{"field":"x","measured":{`), &c); err == nil {
		t.Error("broken JSON is read")
	}
}

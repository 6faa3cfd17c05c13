package engine_test

import (
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// wishedPile is 4 of 40, 6 of 60 and 3 of 80 mm for a panel of 347.3 mm and 12.7
// to trim: 360 mm.
func wishedPile(f unit.Field, v unit.Value) unit.Facts {
	return unit.Facts{
		unit.StockPiles:  unit.Piles{{Width: 40, Count: 4}, {Width: 60, Count: 6}, {Width: 80, Count: 3}},
		unit.TargetWidth: unit.Number(347.3), f: v,
	}
}

// By hand: 360 is 3 × 80 + 2 × 60, five strips; from 60 mm on the same; up to 60
// mm 6 × 60; with the narrow ones first 4 × 40 + 2 × 60 + 80, seven.
func TestStrips_wishes(t *testing.T) {
	for _, c := range []struct {
		field  unit.Field
		value  unit.Value
		strips int
		reason engine.Reason
	}{
		{unit.Narrowest, unit.Number(60), 5, engine.ReasonPickExact},
		{unit.Widest, unit.Number(60), 6, engine.ReasonPickExact},
		{unit.UseFirst, unit.Word("narrow"), 7, engine.ReasonPickNarrow},
		{unit.Neighbours, unit.Word("differ"), 5, engine.ReasonPickExact},
	} {
		a := mustAnswer(t, engine.Strips, wishedPile(c.field, c.value))
		picks, _ := a.Values[unit.Picks].(unit.Sets)
		if len(picks) != 1 || len(picks[0]) != c.strips {
			t.Fatalf("%s: picks %v, want one of %d strips", c.field, picks, c.strips)
		}
		wantCheck(t, a, "pick", engine.Good, c.reason)
		if held := a.Checks[0].Figures[unit.Held]; !slices.Equal(held.(unit.Words), unit.Words{string(c.field)}) {
			t.Errorf("%s: held to %v", c.field, held)
		}
		for i, w := range picks[0] {
			switch {
			case c.field == unit.Narrowest && w < 60, c.field == unit.Widest && w > 60, c.field == unit.Neighbours && i > 0 && w == picks[0][i-1]:
				t.Errorf("%s: picks %v", c.field, picks[0])
			}
		}
	}
}

// A limit that a strip just meets lets it through, in inches too.
func TestStrips_limitIsMet(t *testing.T) {
	said := unit.Facts{
		unit.StockPiles:  unit.Piles{{Width: 2.125 * 25.4, Count: 20}},
		unit.TargetWidth: unit.Number(300), unit.Narrowest: unit.Number(53.975), unit.Widest: unit.Number(53.975),
	}
	wantCheck(t, mustAnswer(t, engine.Strips, said), "pick", engine.Good, engine.ReasonPickBest)
}

func TestStrips_wishesThatCannotBe(t *testing.T) {
	a := mustAnswer(t, engine.Strips, wishedPile(unit.Narrowest, unit.Number(90)))
	wantCheck(t, a, "stock", engine.Stop, engine.ReasonStockNoneSuch)
	a = mustAnswer(t, engine.Strips, wishedPile(unit.Narrowest, unit.Number(70))) // 3 × 80 = 240
	wantCheck(t, a, "stock", engine.Stop, engine.ReasonStockShortOfSuch)
	alike := unit.Facts{unit.StockPiles: unit.Piles{{Width: 60, Count: 6}}, unit.TargetWidth: unit.Number(347.3), unit.Neighbours: unit.Word("differ")}
	a = mustAnswer(t, engine.Strips, alike)
	wantCheck(t, a, "neighbours", engine.Care, engine.ReasonNeighboursAlike)
	wantCheck(t, a, "pick", engine.Good, engine.ReasonPickExact)
	if held, ok := a.Checks[0].Figures[unit.Held]; ok {
		t.Errorf("held to %v, want nothing", held)
	}
}

// manyWidths are 300 strips of as many widths, a hundredth of a mm apart, for 60
// panels: more than is looked through in a while.
func manyWidths() unit.Facts {
	var stock unit.Piles
	for i := range 300 {
		stock = append(stock, unit.Pile{Width: 40.003 + float64(i*i*7%8000)/100, Count: 1})
	}
	return unit.Facts{unit.StockPiles: stock, unit.TargetWidth: unit.Number(350), unit.PanelCount: unit.Number(60)}
}

// Broken off at any time, an answer is a plan that the checker passes, with its
// bound, and says so.
func TestStrips_brokenOff(t *testing.T) {
	for _, after := range []int{0, 1, 30, 61, 90} {
		asked := 0
		a, err := engine.Compute(engine.Question{About: engine.Strips, Said: manyWidths(), GoOn: func() bool {
			asked++
			return asked <= after
		}})
		if err != nil {
			t.Fatal(err)
		}
		made, _ := a.Values[unit.PanelsMade].(unit.Triple)
		i := slices.IndexFunc(a.Checks, func(c engine.Check) bool { return c.Name == "pick" })
		switch {
		case asked > after+1:
			t.Errorf("asked %d times more after no", asked-after-1)
		case i < 0:
			t.Errorf("after %d: checks %v, want one of the pick", after, a.Checks)
		case *made.Mid < 60 && (a.Checks[i].Reason != engine.ReasonPicksUnfinished || a.Verdict != engine.Care):
			t.Errorf("after %d: %v panels, %s, %s", after, *made.Mid, a.Verdict, a.Checks[i].Reason)
		case *made.Mid == 60:
			wantAdvice(t, a, engine.ReasonStopped, unit.PanelsMade, nil)
		}
	}
}

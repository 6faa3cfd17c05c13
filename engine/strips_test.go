package engine_test

import (
	"errors"
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

func pilesOf(pairs ...float64) unit.Piles {
	var out unit.Piles
	for i := 0; i+1 < len(pairs); i += 2 {
		out = append(out, unit.Pile{Count: int(pairs[i]), Width: pairs[i+1]})
	}
	return out
}

// By hand: of 12 at 54, 9 at 76 and 7 at 95 mm nothing comes to 610 or 611 mm.
// For an even count c of 95 mm 610 leaves 27a + 38b = 305, 210, 115 or 20, for an
// odd one 611 leaves 258, 163 or 68: none has an answer. 612 has one, 5 × 54 +
// 2 × 76 + 2 × 95, so that 2 mm run over and 28 − 9 = 19 strips are left.
func TestStrips_leastWaste(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{
		unit.StockPiles: pilesOf(12, 54, 9, 76, 7, 95), unit.TargetWidth: unit.Number(600), unit.Trim: unit.Number(10),
	})
	wantTriple(t, a, unit.WidthSum, 612, 612, 612, 1e-9)
	wantTriple(t, a, unit.Over, 2, 2, 2, 1e-9)
	wantTriple(t, a, unit.StripsLeft, 19, 19, 19, 0)
	wantCheck(t, a, "pick", engine.Good, engine.ReasonPickBest)
	picks, _ := a.Values[unit.Picks].(unit.Sets)
	if len(picks) != 1 || !slices.Equal(slices.Sorted(slices.Values(picks[0])), []float64{54, 54, 54, 54, 54, 76, 76, 95, 95}) {
		t.Errorf("picks are %v, want 5 at 54, 2 at 76 and 2 at 95", picks)
	}
	if a.Values.Has(unit.WedgeGap) || a.Verdict != engine.Good {
		t.Errorf("verdict %s, gap %v; want good and no gap", a.Verdict, a.Values[unit.WedgeGap])
	}
}

// 10 strips of 2 1/8 in and a trim of 12.7 mm, which nobody said: 9 × 53.975 =
// 485.775 mm for 470 mm, 3.075 mm over.
func TestStrips_usualTrim(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{unit.StockPiles: pilesOf(10, 53.975), unit.TargetWidth: unit.Number(470)})
	wantTriple(t, a, unit.Over, 3.075, 3.075, 3.075, 1e-9)
	if a.Assumed[unit.Trim] != unit.Number(12.7) {
		t.Errorf("trim assumed is %v, want 12.7", a.Assumed[unit.Trim])
	}
}

// 7 × 70 = 490 mm leave 10 mm of 500, 6 × 70 leave 80: only the first is within
// the usual 10 to 20 mm.
func TestStrips_usualWedge(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{
		unit.StockPiles: pilesOf(10, 70), unit.TargetWidth: unit.Number(500), unit.WedgeRatio: unit.Number(12),
	})
	wantTriple(t, a, unit.WedgeGap, 10, 10, 10, 1e-9)
	wantCheck(t, a, "pick", engine.Good, engine.ReasonPickWedge)
	if a.Values.Has(unit.Over) || a.Assumed.Has(unit.Trim) {
		t.Errorf("over %v and trim %v, want neither", a.Values[unit.Over], a.Assumed[unit.Trim])
	}
	if a.Assumed[unit.WedgeLow] != unit.Number(10) || a.Assumed[unit.WedgeHigh] != unit.Number(20) {
		t.Errorf("window assumed is %v to %v, want 10 to 20", a.Assumed[unit.WedgeLow], a.Assumed[unit.WedgeHigh])
	}
}

// Of 70 mm strips 420 and 490 mm leave 35 and −35 of 455: no wedge takes either,
// though there is wood enough.
func TestStrips_nothingLands(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{
		unit.StockPiles: pilesOf(10, 70), unit.TargetWidth: unit.Number(455), unit.WedgeLow: unit.Number(10), unit.WedgeHigh: unit.Number(20),
	})
	wantCheck(t, a, "stock", engine.Stop, engine.ReasonStockNoFit)
}

// 7 × 50 + 3 × 70 = 560 mm, less 12.7 of trim make 547.3 mm; 750 lack 202.7.
func TestStrips_notEnough(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{unit.StockPiles: pilesOf(7, 50, 3, 70), unit.TargetWidth: unit.Number(750)})
	wantCheck(t, a, "stock", engine.Stop, engine.ReasonStockShort)
	wantTriple(t, a, unit.StockReach, 547.3, 547.3, 547.3, 0.004)
	wantTriple(t, a, unit.StockShort, 202.7, 202.7, 202.7, 0.004)
	wantTriple(t, a, unit.StripsLeft, 10, 10, 10, 0)
	if a.Values.Has(unit.Picks) {
		t.Errorf("picks are %v, want none", a.Values[unit.Picks])
	}
}

// Ten strips would do, the widest four of them do not: 3 × 70 + 50 = 260 mm,
// less 12.7 of trim make 247.3 mm; 400 lack 152.7.
func TestStrips_notEnoughOfSoFew(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{
		unit.StockPiles: pilesOf(7, 50, 3, 70), unit.TargetWidth: unit.Number(400), unit.StripCount: unit.Number(4),
	})
	wantCheck(t, a, "stock", engine.Stop, engine.ReasonStockShortOfFew)
	wantTriple(t, a, unit.StockReach, 247.3, 247.3, 247.3, 0.004)
	wantTriple(t, a, unit.StockShort, 152.7, 152.7, 152.7, 0.004)
}

// 22 × 70 + 15 × 55 = 2365 mm are 5.8 times the 408 mm of one panel: five can be
// made, as 6 × 70 = 420 and the like show, and six cannot.
func TestStrips_asManyAsPossible(t *testing.T) {
	a, err := engine.Compute(engine.Question{About: engine.Strips, For: []unit.Field{unit.PanelCount}, Said: unit.Facts{
		unit.StockPiles: pilesOf(22, 70, 15, 55), unit.TargetWidth: unit.Number(400), unit.Trim: unit.Number(8),
	}})
	if err != nil {
		t.Fatal(err)
	}
	wantTriple(t, a, unit.PanelCount, 5, 5, 5, 0)
	picks, _ := a.Values[unit.Picks].(unit.Sets)
	overs, _ := a.Values[unit.Over].(unit.Triples)
	if len(picks) != 5 || len(overs) != 5 || a.Verdict != engine.Good {
		t.Errorf("%d picks, %d of them judged, verdict %s; want 5, 5 and good", len(picks), len(overs), a.Verdict)
	}
}

// Two panels of 450 + 6 mm and one of 620 + 6 from 24 × 60 and 10 × 85 mm: the
// least waste is found again by trying how many of the wide strips each panel
// takes.
func TestStrips_severalWidths(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{
		unit.StockPiles: pilesOf(24, 60, 10, 85), unit.Targets: pilesOf(2, 450, 1, 620), unit.Trim: unit.Number(6),
	})
	targets, _ := a.Values[unit.PickTargets].(unit.Numbers)
	if !slices.Equal(slices.Sorted(slices.Values(targets)), []float64{450, 450, 620}) {
		t.Fatalf("panels are %v, want 450, 450 and 620", targets)
	}
	wantCheck(t, a, "pick", engine.Good, engine.ReasonPicksBest)
	overs, _ := a.Values[unit.Over].(unit.Triples)
	waste := 0.0
	for _, o := range overs {
		waste += *o.Mid
	}
	narrow := func(need, wide int) int { return max(0, (need-85*wide+59)/60) }
	least := 1 << 20
	for i := range 11 {
		for j := range 11 - i {
			for k := range 11 - i - j {
				n1, n2, n3 := narrow(456, i), narrow(456, j), narrow(626, k)
				if n1+n2+n3 <= 24 {
					least = min(least, 60*(n1+n2+n3)+85*(i+j+k)-456-456-626)
				}
			}
		}
	}
	if waste < float64(least)-1e-9 || waste > float64(least)+1e-9 {
		t.Errorf("waste is %g mm, want %d", waste, least)
	}
}

// One panel is chosen for where no count is said and none is asked for; that the
// stock makes more is told. 10 × 50 mm make two of 200 + 12.7.
func TestStrips_tellsOfMore(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{unit.StockPiles: pilesOf(10, 50), unit.TargetWidth: unit.Number(200)})
	i := slices.IndexFunc(a.Advice, func(f engine.Finding) bool { return f.Reason == engine.ReasonStockMakesMore })
	if i < 0 || a.Advice[i].Figures[unit.PanelsMade] != unit.Number(2) {
		t.Errorf("advice is %v, want two panels in all", a.Advice)
	}
}

func TestStrips_needs(t *testing.T) {
	a := mustAnswer(t, engine.Strips, unit.Facts{unit.TargetWidth: unit.Number(600)})
	if !slices.Equal(a.Needs, []unit.Field{unit.StockPiles}) || a.Verdict != engine.Ask {
		t.Errorf("needs %v, verdict %s; want the stock and ask", a.Needs, a.Verdict)
	}
	a = mustAnswer(t, engine.Strips, unit.Facts{unit.StockPiles: pilesOf(5, 50)})
	if !slices.Equal(a.Needs, []unit.Field{unit.TargetWidth}) {
		t.Errorf("needs %v, want the width", a.Needs)
	}
}

// A refused number is told under the field that it was said for.
func TestStrips_refusesByField(t *testing.T) {
	_, err := engine.Compute(engine.Question{About: engine.Strips, Said: unit.Facts{
		unit.StockPiles: pilesOf(5, 0.01), unit.TargetWidth: unit.Number(600),
	}})
	var bad *unit.RangeError
	if !errors.As(err, &bad) || bad.What != string(unit.StockPiles) {
		t.Errorf("error is %v, want one about the stock", err)
	}
}

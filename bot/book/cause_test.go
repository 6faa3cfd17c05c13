package book_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
)

func fields(s string) []string { return strings.Fields(s) }

// Margins by hand:
//
//	far joint  35 of 70 kPa            35/70 − 1        = −0.5
//	closing    (90 − 6) of 70 kPa      84/70 − 1        =  0.2
//	open time  600 s for 500 s         600/500 − 1      =  0.2 → 480 s for 500 s = −0.04
//	cold       12 °C over 10 °C        2/10             =  0.2
//	proud      0.6 of 0.8 mm           0.6/0.8 − 1      = −0.25
//	uneven     0.15 of 0.5 mm          0.15/0.5 − 1     = −0.7
//	early      45 of 60 min            45/60 − 1        = −0.25
func TestCauses_rankedByMargin(t *testing.T) {
	p := walnut()
	p.Values[unit.SideFarJoint] = triple(35, 90, 140)
	p.Values[unit.GlueContact] = triple(70, 70, 70)
	p.Values[unit.Closing] = triple(3, 6, 6)
	p.Values[unit.ClosedTime] = triple(480, 900, 1200)
	p.Values[unit.LayupPanel] = triple(500, 500, 500)
	p.Values[unit.MinTemp] = triple(10, 10, 10)
	p.Values[unit.Proud] = unit.Numbers{1.2, 0.6}
	p.Said[unit.ShopTemp] = unit.Number(12)
	p.Said[unit.StripThickest], p.Said[unit.StripThinnest] = unit.Number(6.5), unit.Number(6)
	l := book.Load{Plan: p, InAt: noon, OutAt: noon.Add(45 * time.Minute)}
	want := []struct {
		reason book.CauseReason
		margin float64
	}{
		{book.UnevenWithoutMat, -0.7}, {book.FarJointUnderContact, -0.5}, {book.ProudTooSmall, -0.25}, {book.OutTooEarly, -0.25},
		{book.OpenTimeOverrun, -0.04}, {book.ClosingTooHard, 0.2}, {book.ColdShop, 0.2},
	}
	got := book.Causes(l)
	if len(got) != len(want) {
		t.Fatalf("got %d causes, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		if got[i].Reason != w.reason || math.Abs(got[i].Margin-w.margin) > 1e-9 || len(got[i].Figures) == 0 {
			t.Errorf("cause %d is %s at %g with %v, want %s at %g", i, got[i].Reason, got[i].Margin, got[i].Figures, w.reason, w.margin)
		}
	}
}

// The lay-up that the plan was judged by counts, pump-down and all panels in it:
// 300 s for 440 s is 300/440 − 1 = −0.32, where one panel alone takes 140 s.
func TestCauses_layupAsJudged(t *testing.T) {
	p := walnut()
	p.Values[unit.ClosedTime] = triple(300, 720, 1200)
	p.Values[unit.LayupPanel] = triple(140, 140, 140)
	p.Checks = []engine.Check{{Name: "lay-up", Finding: engine.Finding{Figures: unit.Facts{unit.LayupLoad: triple(440, 440, 440)}}}}
	got := book.Causes(book.Load{Plan: p})
	if len(got) != 1 || got[0].Reason != book.OpenTimeOverrun || math.Abs(got[0].Margin-(300.0/440-1)) > 1e-9 || got[0].Figures[unit.LayupLoad] != unit.Number(440) {
		t.Errorf("got %+v, want the open time overrun by 440 s of lay-up", got)
	}
}

// What the plan does not say is not a cause.
func TestCauses_onlyWhatTheLoadSays(t *testing.T) {
	if got := book.Causes(book.Load{}); len(got) != 0 {
		t.Errorf("an empty load has causes: %+v", got)
	}
	p := walnut()
	p.Said[unit.ThicknessSpread], p.Said[unit.MatThickness] = unit.Number(0.5), unit.Number(10)
	if got := book.Causes(book.Load{Plan: p}); len(got) != 0 {
		t.Errorf("uneven strips under a mat are a cause: %+v", got)
	}
	delete(p.Said, unit.MatThickness)
	if got := book.Causes(book.Load{Plan: p}); len(got) != 1 || got[0].Reason != book.UnevenWithoutMat {
		t.Errorf("got %+v, want uneven strips only", got)
	}
}

// The least of several figures counts, and a negative proud is worse than none.
func TestCauses_leastOfSeveral(t *testing.T) {
	p := walnut()
	p.Values[unit.SideFarJoint] = unit.Triples{triple(80, 90, 100), triple(7, 20, 30)}
	p.Values[unit.GlueContact] = triple(70, 70, 70)
	p.Values[unit.Proud] = unit.Number(-0.8)
	got := book.Causes(book.Load{Plan: p})
	// −0.8/0.8 − 1 = −2, 7/70 − 1 = −0.9
	if len(got) != 2 || got[0].Margin != -2 || math.Abs(got[1].Margin+0.9) > 1e-9 {
		t.Errorf("got %+v, want proud at −2 and the far joint at −0.9", got)
	}
}

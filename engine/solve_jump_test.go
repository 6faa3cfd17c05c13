package engine_test

import (
	"math"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// onCore are two strips of 50.8 × 6.35 mm on a core of 38.1 mm at 84.66 kPa, on
// wet glue (μ 0.15, corner 3 mm).
func onCore() unit.Facts {
	return unit.Facts{
		unit.StripCount: unit.Number(2), unit.StripWidth: unit.Number(50.8), unit.StripThickness: unit.Number(6.35),
		unit.CoreThickness: unit.Number(38.1), unit.Vacuum: unit.Number(84.66),
	}
}

// By hand: film on the strips' own edge leaves nothing of 6.35 mm at 50.8, and a bar as
// high as their top has 44.45. 68.95 kPa take 68.95 · 6.35 / 84.66 = 5.1716 mm besides
// 3 + 0.15 · 3 + 0.15 · 19.05 + 0.15 · 50.8: a bar that counts for 19.0991. That is one
// which overlaps the strips by (19.0991 − 6.35) · 3 / 38.1 = 1.00387 mm, too little to be
// sure of it; 41.1 is.
func TestSolveFor_barThatHardlyOverlaps(t *testing.T) {
	a, err := engine.SolveFor(engine.Question{About: engine.Side, Said: onCore()}, unit.BarHeight, unit.Facts{unit.SideFarJoint: unit.Number(68.95)})
	if err != nil {
		t.Fatal(err)
	}
	if got := solved(t, a, unit.BarHeight); math.Abs(got-39.10387) > 1e-4 {
		t.Errorf("bar %g mm, want 1.00387 above 38.1", got)
	}
	figures, _ := advised(a, engine.ReasonBarBarely)
	if h, _ := figures.Number(unit.BarHeight); math.Abs(h-41.1) > 1e-9 {
		t.Errorf("advises %v, want a bar of 41.1 mm", figures)
	}
}

// A panel of strips of 100 mm takes a strip more at each 101 mm or so: 20 × 1000 mm of
// joint each, 150 g/m² and a tenth more, 3.3 g. 8 g lie between two joints and
// three, and two are within it; the width is no exact answer.
func TestSolveFor_jumpStaysWithin(t *testing.T) {
	said := unit.Facts{
		unit.StripWidth: unit.Number(100), unit.StripThickness: unit.Number(20), unit.StripLength: unit.Number(1000),
		unit.LabelSpread: unit.Number(150),
	}
	a, err := engine.SolveFor(engine.Question{About: engine.Glue, Said: said}, unit.PanelWidth, unit.Facts{unit.GlueMass: unit.Number(8)})
	if err != nil {
		t.Fatal(err)
	}
	wantCheck(t, a, "goal", engine.Care, engine.ReasonJumps)
	W := solved(t, a, unit.PanelWidth)
	said[unit.PanelWidth] = unit.Number(W)
	if got := *mustAnswer(t, engine.Glue, said).Values[unit.GlueMass].(unit.Triple).Mid; math.Abs(got-6.6) > 1e-9 {
		t.Errorf("%g mm takes %g g, want 6.6", W, got)
	}
	// an area is wanted as it stands, and 0.05 m² is none of 0.04 and 0.06
	c, _ := goalCheck(t, engine.Glue, said, unit.PanelWidth, unit.Facts{unit.JointArea: unit.Number(0.05)})
	if c.Reason != engine.ReasonNotExactly {
		t.Errorf("check %v, want that 0.05 m² cannot be had exactly", c)
	}
}

// Whatever a solver gives as solved gives the figure wanted when it is put back,
// for all inputs that make the push rise steeply and many goals.
func TestSolveFor_steepRisesAreMet(t *testing.T) {
	solvedOnes := 0
	for _, f := range []unit.Field{unit.BarHeight, unit.CoreThickness, unit.SledThickness, unit.PanelWidth} {
		for _, figure := range []unit.Field{unit.SideFarJoint, unit.SideFirstJoint, unit.BarReach, unit.BarCovered} {
			for want := 5.0; want < 900; want *= 1.7 {
				said := onCore()
				said[unit.BarHeight], said[unit.Cover], said[unit.BarFoot] = unit.Number(60), unit.Number(60), unit.Word("bed")
				delete(said, f)
				a, err := engine.SolveFor(engine.Question{About: engine.Side, Said: said}, f, unit.Facts{figure: unit.Number(want)})
				if err != nil {
					t.Fatalf("%s for %s: %v", f, figure, err)
				}
				if !hasAdvice(a, engine.ReasonSolved) {
					continue
				}
				solvedOnes++
				if got := *a.Values[figure].(unit.Triple).Mid; math.Abs(got-want) > 1e-3*want {
					t.Errorf("%s of %v is solved for %s %g and gives %g", f, a.Values[f], figure, want, got)
				}
			}
		}
	}
	if solvedOnes < 90 {
		t.Errorf("%d solved, want 90", solvedOnes)
	}
}

// By hand, hump up: 6.4 · 12530 N/mm² · (19.05/1219.2)³ / 1219.2 mm is 0.25 kPa for
// each mm, so a tenth of the length, 121.92 mm, takes 30.6 kPa of the 81.3 at hand:
// there is more, but so deep a bow is no shallow one.
func TestSolveFor_anyBow(t *testing.T) {
	said := unit.Facts{
		unit.StripThickness: unit.Number(19.05), unit.StripLength: unit.Number(1219.2), unit.Species: unit.Word("red oak"),
		unit.Vacuum: unit.Number(81.27), unit.CupUp: unit.Word("hump"),
	}
	a, err := engine.SolveFor(engine.Question{About: engine.Flatten, Said: said}, unit.Bow, nil)
	if err != nil {
		t.Fatal(err)
	}
	wantCheck(t, a, "goal", engine.None, engine.ReasonAnyUpTo)
	if got := solved(t, a, unit.Bow); math.Abs(got-121.92) > 1e-9 || a.Verdict == engine.Stop {
		t.Errorf("bow %g mm, %s; want 121.92 and no stop", got, a.Verdict)
	}
}

// The vacuum that flattens at the middles is 56.285 kPa (test of flattening); to be
// sure of it the least of the dial has to cover the stiffest wood: 1.22 · 56.285 +
// 2.54 = 71.21 kPa.
func TestSolveFor_flatForSure(t *testing.T) {
	said := cuppedCherry("hump")
	delete(said, unit.Vacuum)
	delete(said, unit.VacuumPercent)
	a, err := engine.SolveFor(engine.Question{About: engine.Flatten, Said: said}, unit.Vacuum, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range a.Advice {
		if f.Reason == engine.ReasonSureFrom {
			if sure, _ := f.Figures.Number(unit.Vacuum); math.Abs(sure-(1.22*56.285+2.54)) > 0.01 {
				t.Errorf("sure from %g kPa, want 71.21", sure)
			}
			said[unit.Vacuum] = f.Figures[unit.Vacuum]
			if v := mustAnswer(t, engine.Flatten, said).Verdict; v != engine.Good {
				t.Errorf("at that vacuum it is %s, want good", v)
			}
			return
		}
	}
	t.Errorf("advice %v, want what is sure", a.Advice)
}

// What comes nearest is no solution and stands under the figures of the check
// alone.
func TestSolveFor_nearestIsNoValue(t *testing.T) {
	said := unit.Facts{unit.Vacuum: unit.Number(80), unit.PanelWidth: unit.Number(600), unit.PanelLength: unit.Number(900), unit.VacuumPercent: unit.Number(80)}
	delete(said, unit.Vacuum)
	c, _ := goalCheck(t, engine.Face, said, unit.Ambient, unit.Facts{unit.FacePressure: unit.Number(200)})
	if c.Figures[unit.Ambient] != unit.Number(110) {
		t.Errorf("check %v, want the nearest, 110 kPa", c)
	}
}

// A fence that has to be found: sled, fence, strips of 7.9 mm; 1.6 mm proud leaves 6.3.
func TestSolveFor_fence(t *testing.T) {
	said := unit.Facts{unit.StackLayers: unit.Layers{layer("sled", 19), layer("fence", 0), layer("strips", 7.9), layer("sled", 19)}}
	a, err := engine.SolveFor(engine.Question{About: engine.Stack, Said: said}, unit.FenceThickness, unit.Facts{unit.Proud: unit.Number(1.6)})
	if got := solved(t, a, unit.FenceThickness); err != nil || math.Abs(got-6.3) > 1e-9 {
		t.Errorf("fence %g mm (%v), want 6.3", got, err)
	}
	if l := said[unit.StackLayers].(unit.Layers); l[1].Thickness != 0 {
		t.Error("the question was changed")
	}
}

// A core of up to 60 mm stands behind a bar of 60, and one as high as the bar leaves
// only the strips' own edge: the figure rises to that and drops to nothing. By hand
// at 50 mm: 84.66 · [(56.35 − 3) − 0.15 · (19.05 + 3) − 0.15 · 50.8] / 6.35 = 565.59,
// with little room between there and the drop, for cores in other places too.
func TestSolveFor_justBeforeADrop(t *testing.T) {
	for _, core := range []float64{35, 50, 72, 110, 150} {
		said := onCore()
		delete(said, unit.CoreThickness)
		said[unit.BarHeight] = unit.Number(1.2 * core)
		want := 84.66 * ((core + 6.35 - 3) - 0.15*(19.05+3) - 0.15*50.8) / 6.35
		a, err := engine.SolveFor(engine.Question{About: engine.Side, Said: said}, unit.CoreThickness, unit.Facts{unit.SideFarJoint: unit.Number(want)})
		if got := solved(t, a, unit.CoreThickness); err != nil || math.Abs(got-core) > 1e-6*core {
			t.Errorf("core of %g mm (%v), want %g", got, err, core)
		}
	}
}

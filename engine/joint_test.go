package engine_test

import (
	"math"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// The verdict of a joint, with an exact bar whose far joint has so much pressure
// as the vacuum gives: 0.8 kPa a kPa of 80 with the factor of 8 mm on 10.
func TestJoint_verdicts(t *testing.T) {
	for name, c := range map[string]struct {
		more unit.Facts
		v    engine.Verdict
		r    engine.Reason
	}{
		// 64 kPa at the far joint, 70 wanted
		"under contact": {nil, engine.Care, engine.ReasonJointUnderContact},
		// a preload is too little to help: no friction, 80·60/10 = 480
		"hand-tight unsaid": {unit.Facts{unit.FrictionStated: unit.Number(0)}, engine.Care, engine.ReasonJointHandTight},
		"hand-tight said":   {unit.Facts{unit.FrictionStated: unit.Number(0), unit.Gap: unit.Number(0)}, engine.Good, engine.ReasonJointTight},
		"gap within glue":   {unit.Facts{unit.FrictionStated: unit.Number(0), unit.Gap: unit.Number(0.1), unit.StripLength: unit.Number(1000)}, engine.Good, engine.ReasonJointTight},
		// epoxy wants 10 and 30
		"full": {unit.Facts{unit.GlueClass: unit.Word("epoxy")}, engine.Good, engine.ReasonJointFull},
		// 6.4 · 12.5 GPa · 50³ · 1 mm / 1000⁴ = 10 kPa to close 1 mm
		"gap that closes":     {unit.Facts{unit.FrictionStated: unit.Number(0), unit.Gap: unit.Number(1), unit.StripLength: unit.Number(1000)}, engine.Care, engine.ReasonJointGapWide},
		"gap that stays":      {unit.Facts{unit.Gap: unit.Number(1), unit.StripLength: unit.Number(1000)}, engine.Stop, engine.ReasonJointOpen},
		"gap, length unsaid":  {unit.Facts{unit.FrictionStated: unit.Number(0), unit.Gap: unit.Number(1)}, engine.Care, engine.ReasonJointGapLength},
		"beyond the reach":    {unit.Facts{unit.FrictionStated: unit.Number(0.5)}, engine.Care, engine.ReasonJointBeyondReach},
		"wide gap, over full": {unit.Facts{unit.GlueClass: unit.Word("hot-hide"), unit.FrictionStated: unit.Number(0), unit.Gap: unit.Number(1), unit.StripLength: unit.Number(1000)}, engine.Good, engine.ReasonJointFull},
	} {
		t.Run(name, func(t *testing.T) {
			wantCheck(t, mustAnswer(t, engine.Side, exactBar(c.more)), "far joint", c.v, c.r)
		})
	}
}

// The same joint with the film's friction of 0.15 to 0.30: 60 − 9 − 30, 60 − 12 −
// 40 and 60 − 18 − 60 mm are left, 168, 64 and 0 kPa. What the middle or the best
// would allow, the worst does not.
func TestJoint_verdictsOfARange(t *testing.T) {
	for name, c := range map[string]struct {
		more unit.Facts
		v    engine.Verdict
		r    engine.Reason
	}{
		"middle over full":     {unit.Facts{unit.GlueClass: unit.Word("epoxy")}, engine.Care, engine.ReasonJointBeyondReach},
		"hand-tight":           {unit.Facts{unit.GlueClass: unit.Word("epoxy"), unit.Gap: unit.Number(0)}, engine.Care, engine.ReasonJointBeyondReach},
		"gap closes at best":   {unit.Facts{unit.Gap: unit.Number(1), unit.StripLength: unit.Number(1000)}, engine.Care, engine.ReasonJointGapWide},
		"gap is the glue's":    {unit.Facts{unit.Gap: unit.Number(0.15), unit.StripLength: unit.Number(1000), unit.FrictionStated: unit.Number(0)}, engine.Good, engine.ReasonJointTight},
		"gap a little over it": {unit.Facts{unit.Gap: unit.Number(0.151), unit.StripLength: unit.Number(1000), unit.FrictionStated: unit.Number(0)}, engine.Care, engine.ReasonJointGapWide},
	} {
		said := exactBar(nil)
		delete(said, unit.FrictionStated)
		for f, v := range c.more {
			said[f] = v
		}
		t.Run(name, func(t *testing.T) { wantCheck(t, mustAnswer(t, engine.Side, said), "far joint", c.v, c.r) })
	}
	a := mustAnswer(t, engine.Side, func() unit.Facts { s := exactBar(nil); delete(s, unit.FrictionStated); return s }())
	wantTriple(t, a, unit.SideFarJoint, 0, 64, 168, 1e-9)
}

// By hand: 6.4 · 12.5e9 · 0.05³ · 0.001 / 1⁴ = 10 kPa; half of 0.78 of it at best,
// 1.22 of it at worst. Of the far joint's 64 that leaves 54.
func TestJoint_closing(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.Gap: unit.Number(1), unit.StripLength: unit.Number(1000)}))
	wantTriple(t, a, unit.Closing, 3.9, 10, 12.2, 1e-9)
	wantTriple(t, a, unit.SideNet, 64-12.2, 54, 64-3.9, 1e-9)
}

// Cherry bears 4.76 MPa across the grain. Half of it is 2.38 MPa: a bar of 60 mm
// on 2 mm strips without friction gives 80·30 = 2.4 MPa, on 1 mm 4.8 MPa.
func TestJoint_crush(t *testing.T) {
	for thick, c := range map[float64]struct {
		v engine.Verdict
		r engine.Reason
	}{
		10: {"", ""}, 2.05: {"", ""}, 2: {engine.Care, engine.ReasonCrushNear}, 1: {engine.Stop, engine.ReasonCrushed},
	} {
		said := exactBar(unit.Facts{unit.Species: unit.Word("cherry"), unit.FrictionStated: unit.Number(0), unit.StripThickness: unit.Number(thick)})
		wantCheck(t, mustAnswer(t, engine.Side, said), "crush", c.v, c.r)
	}
	// a dial's 78 kPa may be 80.5: 4.83 MPa on 1 mm where the middle is 4.68
	dial := exactBar(unit.Facts{unit.Species: unit.Word("cherry"), unit.FrictionStated: unit.Number(0), unit.StripThickness: unit.Number(1), unit.Vacuum: unit.Number(78)})
	delete(dial, unit.VacuumPercent)
	wantCheck(t, mustAnswer(t, engine.Side, dial), "crush", engine.Stop, engine.ReasonCrushed)
	dial[unit.StripThickness] = unit.Number(2) // 2.42 MPa where the middle is 2.34
	wantCheck(t, mustAnswer(t, engine.Side, dial), "crush", engine.Care, engine.ReasonCrushNear)
	teak := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.Species: unit.Word("teak")}))
	if !hasAdvice(teak, engine.ReasonCrushUnknown) {
		t.Errorf("advice %v, want that no table has teak's strength", teak.Advice)
	}
}

// Epoxy starves above 350 kPa: without friction 80·60/10 = 480.
func TestJoint_starvedEpoxy(t *testing.T) {
	said := exactBar(unit.Facts{unit.GlueClass: unit.Word("epoxy"), unit.FrictionStated: unit.Number(0)})
	wantCheck(t, mustAnswer(t, engine.Side, said), "starved joint", engine.Care, engine.ReasonStarved)
	said[unit.GlueClass] = unit.Word("pva")
	wantCheck(t, mustAnswer(t, engine.Side, said), "starved joint", "", "")
}

// By hand: taper 1:8, μ 0.4 by the reference file D/N = 0.9526, so 1000 N push
// 1049.8 N to the side; on 10 mm × 1 m 104.98 kPa. At worst (μ 0.5) tan(α+φ) =
// (0.125 + 0.5)/(1 − 0.0625) = 0.66667, N 857.1, 85.71 kPa, less the squeeze-out:
// E⊥ mid 12.5·(0.062 + 0.123)/2 = 1.15625 GPa · 4 · 0.05/250 mm = 925 kPa: nothing
// is left. At best (0.3) 0.425/0.9625 = 0.44156, N 1348.5.
func TestPreload_drivenWedge(t *testing.T) {
	said := unit.Facts{
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(10), unit.StripLength: unit.Number(1000),
		unit.WedgeRatio: unit.Number(8), unit.WedgeForce: unit.Number(1000),
	}
	a := mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.Preload, 0, 104.98, 134.85, 0.01)
	wantTriple(t, a, unit.FenceLoad, 0, 1049.8, 1348.5, 0.1)
	wantTriple(t, a, unit.SideFarJoint, 0, 104.98, 134.85, 0.01)
	wantCheck(t, a, "wedge", engine.Good, engine.ReasonWedgeHolds)
	if !hasAdvice(a, engine.ReasonDriveAgain) || !hasCaution(a, engine.CautionPinch) {
		t.Errorf("advice %v, cautions %v; want to drive it again and to mind the fingers", a.Advice, a.Cautions)
	}
	if a.Values.Has(unit.SideIdeal) {
		t.Error("a quoted bar pressure is given without a vacuum")
	}
	said[unit.WedgeRatio] = unit.Number(1) // 45° against 2 · 16.7°
	wantCheck(t, mustAnswer(t, engine.Side, said), "wedge", engine.Care, engine.ReasonWedgeSlips)
}

// By hand, quarter sawn cherry E_R = 0.197 · 11.3 = 2.2261 GPa: δ/W = 1/500,
// 1/E = 0.44922e-9, t/(W K_f) = 0.02/(0.5·15e6) = 2.66667e-9 per Pa:
// 0.8 · 0.002/3.11589e-9 = 513.5 kPa; rise √(3·500·1/8) = 13.69 mm.
func TestPreload_overfill(t *testing.T) {
	said := unit.Facts{
		unit.PanelWidth: unit.Number(500), unit.StripThickness: unit.Number(20), unit.Overfill: unit.Number(1),
		unit.Species: unit.Word("cherry"), unit.Sawn: unit.Word("quarter"),
	}
	a := mustAnswer(t, engine.Side, said)
	lowGive := 1/(0.78*2.2261e9) + 0.02/(0.5*5e6)
	highGive := 1/(1.22*2.2261e9) + 0.02/(0.5*50e6)
	wantTriple(t, a, unit.Preload, 0.6*0.0015/lowGive/1e3, 513.5, 0.0025/highGive/1e3, 0.05)
	wantTriple(t, a, unit.Rise, math.Sqrt(3*500*0.75/8), 13.69, math.Sqrt(3*500*1.25/8), 0.005)
	// π² · 2.2261e9 · 0.02² / (12 · 0.25) = 2929.4 kPa, above the preload
	wantTriple(t, a, unit.Buckle, 0.78*2929.4, 2929.4, 1.22*2929.4, 0.5)
	wantCheck(t, a, "lift", engine.Good, engine.ReasonNoLift)
	if !hasCaution(a, engine.CautionHoldDown) {
		t.Errorf("cautions %v, want to hold the sprung strips down", a.Cautions)
	}
	said[unit.StripThickness] = unit.Number(4) // buckles at 117 kPa, carries 0.8·0.002/(0.449+0.533)e-9 = 1629
	wantCheck(t, mustAnswer(t, engine.Side, said), "lift", engine.Care, engine.ReasonLifts)
}

// A preload and a bar: the larger counts at each joint.
func TestPreload_largerCounts(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(unit.Facts{
		unit.StripLength: unit.Number(1000), unit.WedgeRatio: unit.Number(8), unit.WedgeForce: unit.Number(1000),
	}))
	wantTriple(t, a, unit.SideFirstJoint, 304, 304, 304, 1e-9)
	wantTriple(t, a, unit.SideFarJoint, 64, 104.98, 134.85, 0.01)
}

package engine_test

import (
	"math"
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand with h = b = 60 mm and no corner: the reach is 60/μ − 60 mm, so it shows
// each surface's friction; strips on a core lie on wet glue.
func TestDefaults_surfaces(t *testing.T) {
	film := [3]float64{140, 240, 340}
	glue := [3]float64{90, 340, 1140}
	for name, c := range map[string]struct {
		more unit.Facts
		want [3]float64
	}{
		"unsaid":   {nil, film},
		"film":     {unit.Facts{unit.SurfaceKind: unit.Word("film")}, film},
		"waxed":    {unit.Facts{unit.SurfaceKind: unit.Word("waxed")}, [3]float64{180, 340, 540}},
		"bare":     {unit.Facts{unit.SurfaceKind: unit.Word("bare")}, [3]float64{60/0.65 - 60, 90, 140}},
		"wet-glue": {unit.Facts{unit.SurfaceKind: unit.Word("wet-glue")}, glue},
		"on core":  {unit.Facts{unit.CoreKind: unit.Word("mdf")}, glue},
	} {
		said := exactBar(c.more)
		delete(said, unit.FrictionStated)
		t.Log(name)
		wantTriple(t, mustAnswer(t, engine.Side, said), unit.BarReach, c.want[0], c.want[1], c.want[2], 1e-9)
	}
}

// By hand with μ 0.2: (60 − r − 0.2·(60 + r))/0.2 = 240 − 6 r mm shows the corner
// that the film bridges.
func TestDefaults_tents(t *testing.T) {
	for name, c := range map[string]struct {
		more     unit.Facts
		low, mid float64
	}{
		"unsaid": {nil, 6, 3},
		"bag":    {unit.Facts{unit.PressKind: unit.Word("bag")}, 6, 3},
		"frame":  {unit.Facts{unit.PressKind: unit.Word("frame")}, 20, 6},
		"said":   {unit.Facts{unit.PressKind: unit.Word("frame"), unit.Tent: unit.Number(10)}, 10, 5},
	} {
		said := exactBar(nil)
		delete(said, unit.Tent)
		for f, v := range c.more {
			said[f] = v
		}
		t.Log(name)
		wantTriple(t, mustAnswer(t, engine.Side, said), unit.BarReach, 240-6*c.low, 240-6*c.mid, 240, 1e-9)
	}
}

// By hand: even strips squash 10 mm of mat by 10·80/(80 + 3 σ25) under 80 kPa;
// 8 + 10 − 7 mm less that stand proud.
func TestDefaults_firmness(t *testing.T) {
	for kind, σ := range map[string][3]float64{"": {34, 48, 62}, "soft": {14, 24, 34}, "medium": {34, 48, 62}, "firm": {62, 76, 90}} {
		said := unit.Facts{
			unit.Ambient: unit.Number(100), unit.VacuumPercent: unit.Number(80),
			unit.StackLayers: unit.Layers{layer("sled", 19), layer("fence", 7), layer("strips", 8), layer("mat", 10), layer("caul", 12)},
		}
		if kind != "" {
			said[unit.MatFirmness] = unit.Word(kind)
		}
		proud := mustAnswer(t, engine.Stack, said).Values[unit.Proud].(unit.Triples)[0]
		for i, got := range []*float64{proud.Low, proud.Mid, proud.High} {
			if want := 11 - 800/(80+3*σ[i]); math.Abs(*got-want) > 1e-9 {
				t.Errorf("%q: proud %g mm at %g kPa, want %g", kind, *got, σ[i], want)
			}
		}
	}
}

// Nothing said of the count, five strips share a mat.
func TestDefaults_stripsOnMat(t *testing.T) {
	said := unit.Facts{unit.MatThickness: unit.Number(6), unit.ThicknessSpread: unit.Number(1), unit.Vacuum: unit.Number(80)}
	unsaid := mustAnswer(t, engine.Stack, said).Values[unit.MatLow].(unit.Triple)
	said[unit.StripCount] = unit.Number(5)
	five := mustAnswer(t, engine.Stack, said).Values[unit.MatLow].(unit.Triple)
	if *unsaid.Low != *five.Low || *unsaid.High != *five.High {
		t.Errorf("mat low %g to %g, with five strips %g to %g", *unsaid.Low, *unsaid.High, *five.Low, *five.High)
	}
}

func TestDefaults_assumed(t *testing.T) {
	said := panelOf(unit.Facts{unit.BarHeight: unit.Number(30), unit.BarFoot: unit.Word("bed")})
	a := mustAnswer(t, engine.Side, said)
	for f, want := range map[unit.Field]unit.Value{
		unit.BarWidth: unit.Number(19.05), unit.SledThickness: unit.Number(19), unit.SurfaceKind: unit.Word("film"),
		unit.GlueClass: unit.Word("pva"), unit.Species: unit.Word("hardwood"), unit.ShopTemp: unit.Number(21),
	} {
		if a.Assumed[f] != want {
			t.Errorf("assumed %s is %v, want %v", f, a.Assumed[f], want)
		}
	}
	for f := range said {
		if a.Assumed.Has(f) {
			t.Errorf("%s was said and is told as assumed", f)
		}
	}
}

// By hand: with enough force squeeze-out leaves something: 20 kN at worst push
// 17142.9 N, 1714.3 kPa on 10 mm × 1 m, less 925 kPa as in the test of the wedge.
func TestPreload_squeezeOut(t *testing.T) {
	a := mustAnswer(t, engine.Side, unit.Facts{
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(10), unit.StripLength: unit.Number(1000),
		unit.WedgeRatio: unit.Number(8), unit.WedgeForce: unit.Number(20000),
	})
	wantTriple(t, a, unit.Preload, 1714.29-925, 20*104.976, 20*134.85, 0.2)
}

// By hand as in the test of the overfill: 9 mm strips are preloaded with 970 kPa
// and buckle at 593, 12 mm ones with 781 and at 1055, both at the mids.
func TestPreload_liftsAtTheMids(t *testing.T) {
	for thick, r := range map[float64]engine.Reason{9: engine.ReasonLifts, 12: engine.ReasonNoLift} {
		a := mustAnswer(t, engine.Side, unit.Facts{
			unit.PanelWidth: unit.Number(500), unit.StripThickness: unit.Number(thick), unit.Overfill: unit.Number(1),
			unit.Species: unit.Word("cherry"), unit.Sawn: unit.Word("quarter"),
		})
		v := engine.Good
		if r == engine.ReasonLifts {
			v = engine.Care
		}
		wantCheck(t, a, "lift", v, r)
	}
}

// By hand: a step of 1/8 in adds 80·3.175/10 = 25.4 kPa to a joint that gets
// something, one of 1 inHg adds 0.8 · 3.386389; and with a corner of 3 mm contact at
// the far joint takes 70·10/80 + 3 + 0.2·63 + 40 = 64.35 mm.
func TestSide_whatAStepAdds(t *testing.T) {
	said := exactBar(nil)
	adds := func(r engine.Reason, f unit.Field) float64 {
		a := mustAnswer(t, engine.Side, said)
		i := slices.IndexFunc(a.Advice, func(f engine.Finding) bool { return f.Reason == r })
		if i < 0 {
			t.Fatalf("advice %v, want %s", a.Advice, r)
		}
		v, _ := a.Advice[i].Figures.Number(f)
		return v
	}
	if got := adds(engine.ReasonEachBarStep, unit.SideFarJoint); math.Abs(got-25.4) > 1e-9 {
		t.Errorf("a step of bar adds %g kPa, want 25.4", got)
	}
	if got := adds(engine.ReasonEachVacuumStep, unit.SideFarJoint); math.Abs(got-0.8*3.386389) > 1e-9 {
		t.Errorf("a step of vacuum adds %g kPa, want 2.709", got)
	}
	said[unit.Tent] = unit.Number(6)
	if got := adds(engine.ReasonBarForContact, unit.BarHeight); math.Abs(got-64.35) > 1e-9 {
		t.Errorf("contact takes a bar of %g mm, want 64.35", got)
	}
}

package engine_test

import (
	"maps"
	"math"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// advised returns the figures of some advice.
func advised(a engine.Answer, r engine.Reason) (unit.Facts, bool) {
	for _, f := range a.Advice {
		if f.Reason == r {
			return f.Figures, true
		}
	}
	return nil, false
}

// The bar advised, each measure rounded up to 1/32 in or 0.5 mm, gives the far joint
// contact at the mids, does not tip and stands as high as the strips; and no bar
// 1.6 mm lower does, however wide, tried in steps of 0.1 mm. By hand for the
// first: strips at u = 38.1, z = 41.275, 84.66 kPa, μ 0.15, r 3, x 228.6: 70 · 6.35/84.66
// + 3 + 0.15 (b + 3 + 228.6) = 42.99 + 0.15 b mm, where 19.05 mm of width tip.
func TestSide_barAdvised(t *testing.T) {
	type bench struct{ t, u, b, x, p, μ, contact float64 }
	for name, c := range map[string]struct {
		said unit.Facts
		at   bench
	}{
		"bar under the strips": {unit.Facts{
			unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(57.15), unit.StripThickness: unit.Number(6.35), unit.CoreThickness: unit.Number(19.05),
			unit.BarHeight: unit.Number(25.4), unit.BarFoot: unit.Word("bed"), unit.SledThickness: unit.Number(19.05), unit.Vacuum: unit.Number(84.66),
		}, bench{6.35, 38.1, 19.05, 228.6, 84.66, 0.15, 70}},
		"wide bar under thick strips": {unit.Facts{
			unit.StripCount: unit.Number(6), unit.StripWidth: unit.Number(60), unit.StripThickness: unit.Number(20), unit.GlueClass: unit.Word("epoxy"),
			unit.BarHeight: unit.Number(12), unit.BarWidth: unit.Number(50), unit.BarFoot: unit.Word("bed"), unit.SledThickness: unit.Number(18), unit.Vacuum: unit.Number(80),
		}, bench{20, 18, 50, 300, 80, 0.2, 10}},
		"advice must reach the strips": {unit.Facts{
			unit.StripCount: unit.Number(2), unit.StripWidth: unit.Number(38.1), unit.StripThickness: unit.Number(7.9375), unit.CoreThickness: unit.Number(12.7), unit.SurfaceKind: unit.Word("film"),
			unit.BarHeight: unit.Number(12.7), unit.BarFoot: unit.Word("bed"), unit.SledThickness: unit.Number(12.7), unit.Vacuum: unit.Number(68.94757),
		}, bench{7.9375, 25.4, 19.05, 38.1, 68.94757, 0.2, 70}},
		"no bar beside a core": {unit.Facts{
			unit.StripCount: unit.Number(3), unit.StripWidth: unit.Number(40), unit.StripThickness: unit.Number(20), unit.CoreThickness: unit.Number(18), unit.SurfaceKind: unit.Word("film"),
			unit.BarDenied: unit.Word("none"), unit.Vacuum: unit.Number(80),
		}, bench{20, 18, 19.05, 80, 80, 0.2, 70}},
		"no bar": {unit.Facts{
			unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(57.15), unit.StripThickness: unit.Number(6.35), unit.BarDenied: unit.Word("none"), unit.Vacuum: unit.Number(84.66),
		}, bench{6.35, 0, 19.05, 228.6, 84.66, 0.2, 70}},
	} {
		figures, ok := advised(mustAnswer(t, engine.Side, c.said), engine.ReasonBarForContact)
		if !ok {
			t.Errorf("%s: no bar is advised", name)
			continue
		}
		will := func(h, b float64) bool {
			k := c.at
			joint := k.p * ((h - 3) - k.μ*(b+3) - k.μ*k.x) / k.t
			z := k.u + k.t/2
			return joint >= k.contact && h >= k.u+k.t-1e-9 && h <= (h*h+b*b)/(2*math.Max(z, h-z))+1e-9
		}
		height, _ := figures.Number(unit.BarHeight)
		width, wider := figures.Number(unit.BarWidthLeast)
		if !wider {
			width = c.at.b
		}
		for _, mark := range []float64{25.4 / 32, 0.5} {
			h, b := math.Ceil(height/mark-1e-6)*mark, math.Ceil(width/mark-1e-6)*mark
			if !wider {
				b = width
			}
			if !will(h, b) {
				t.Errorf("%s: a bar of %.2f × %.2f mm is advised and will not do", name, h, b)
			}
		}
		for b := c.at.b; b < 300; b += 0.1 {
			if will(height-1.6, b) {
				t.Errorf("%s: %.2f mm are advised, and %.2f × %.2f would do", name, height, height-1.6, b)
				break
			}
		}
	}
}

// With friction as great as the press itself a wider bar only holds itself back, so
// none is advised.
func TestSide_noBarWithMuchFriction(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.FrictionStated: unit.Number(1.2), unit.BarHeight: unit.Number(12)}))
	if figures, ok := advised(a, engine.ReasonBarForContact); ok {
		t.Errorf("a bar is advised, %v", figures)
	}
}

// Strips 2 mm over the opening press with more than any bar of 38 mm: no step of
// bar or vacuum adds to that, nor does a caul. A bar lower than the strips is
// their height of film, and a step higher it still is.
func TestSide_adviceThatAddsNothing(t *testing.T) {
	said := unit.Facts{
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(30), unit.StripThickness: unit.Number(15),
		unit.BarHeight: unit.Number(38), unit.SurfaceKind: unit.Word("waxed"), unit.Vacuum: unit.Number(90),
	}
	low := maps.Clone(said)
	low[unit.BarHeight] = unit.Number(12)
	said[unit.Overfill] = unit.Number(2)
	for name, c := range map[string]struct {
		said unit.Facts
		none []engine.Reason
	}{
		"preloaded": {said, []engine.Reason{engine.ReasonEachBarStep, engine.ReasonEachVacuumStep, engine.ReasonCoverBar}},
		"low bar":   {low, []engine.Reason{engine.ReasonEachBarStep, engine.ReasonWiderBar}},
	} {
		a := mustAnswer(t, engine.Side, c.said)
		for _, r := range c.none {
			if figures, ok := advised(a, r); ok {
				t.Errorf("%s: advises %s, %v", name, r, figures)
			}
		}
	}
	// covered to its top, 38 mm of bar: 90 kPa · 3.175 mm / 15 mm = 19.05 kPa a step
	delete(said, unit.Overfill)
	said[unit.Cover] = unit.Number(38)
	figures, _ := advised(mustAnswer(t, engine.Side, said), engine.ReasonEachBarStep)
	if gain, _ := figures.Number(unit.SideFarJoint); math.Abs(gain-19.05) > 1e-6 {
		t.Errorf("a step adds %g kPa, want 19.05", gain)
	}
}

// No wood to crush is named: 1.5 MPa is more than half of what basswood bears, the
// softest hardwood of the table (2.55 MPa), and 1.2 MPa is not.
func TestSide_crushUnknown(t *testing.T) {
	for force, near := range map[float64]bool{1500: true, 1200: false} {
		// N = D/(tan(α + φ) + tan φ), at the most with μ 0.3; a wedge so blunt that N = D:
		// tan(α + φ) + 0.3 = 1 where tan α = (0.7 − 0.3)/(1 + 0.21) = 1/3.025. 1 mm by 1 m.
		a := mustAnswer(t, engine.Side, unit.Facts{
			unit.StripCount: unit.Number(3), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(1), unit.StripLength: unit.Number(1000),
			unit.WedgeRatio: unit.Number(3.025), unit.WedgeForce: unit.Number(force),
		})
		figures, ok := advised(a, engine.ReasonCrushUnknown)
		if crush, has := figures.Number(unit.Crushing); !ok || has != near || near && math.Abs(crush-2550) > 0.5 {
			t.Errorf("%g N: %v, want near %v", force, figures, near)
		}
	}
}

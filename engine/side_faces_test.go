package engine_test

import (
	"maps"
	"math"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// twoFaces are strips of 10 mm on both sides of a core of 20, and a bar 10 wide, all
// exact.
func twoFaces(more unit.Facts) unit.Facts {
	said := exactBar(unit.Facts{
		unit.CoreThickness: unit.Number(20), unit.Faces: unit.Number(2), unit.SurfaceKind: unit.Word("film"),
		unit.BarHeight: unit.Number(40), unit.BarWidth: unit.Number(10), unit.FrictionStated: unit.Number(0.05),
	})
	delete(said, unit.Cover)
	maps.Copy(said, more)
	return said
}

// By hand: 40 mm of bar beside 10 + 20 + 10 push with F = 40 − 0.05 · 10 = 39.5 mm, 19.75
// to a face, and the joints at 50 and 200 mm lose 2.5 and 10: 80 · 17.25 / 10 and 80 ·
// 9.75 / 10 kPa. It turns with 40²/2 = 800 about its foot and may lean by 10²/2 = 50
// either way, so the upper face at 35 mm gets (800 − 39.5 · 5 ∓ 50)/30 = 18.417 or 21.75
// and the lower one at 5 mm the rest, at least 17.75. That loses 2 · 2.5 under a core
// that stays; the other face then gets 21.75. The rule says 80 · 40 / (2 · 10).
func TestSide_bothFaces(t *testing.T) {
	stack := twoFaces(unit.Facts{unit.StackLayers: unit.Layers{layer("sled", 19), layer("strips", 10), layer("core", 20), layer("strips", 10), layer("film", 0.15)}})
	delete(stack, unit.Faces)
	delete(stack, unit.CoreThickness)
	for name, said := range map[string]unit.Facts{"both faces": twoFaces(nil), "as a stack": stack} {
		a := mustAnswer(t, engine.Side, said)
		t.Log(name)
		wantTriple(t, a, unit.BarCovered, 40, 40, 40, 1e-9)
		wantTriple(t, a, unit.SideIdeal, 160, 160, 160, 1e-9)
		wantTriple(t, a, unit.SideFirstJoint, 8*12.75, 8*17.25, 8*19.25, 1e-9)
		wantTriple(t, a, unit.SideFarJoint, 0, 8*9.75, 8*11.75, 1e-9)
		wantTriple(t, a, unit.BarReach, 177.5, 395, 435, 1e-9)
		if !hasAdvice(a, engine.ReasonBothFaces) || !hasAdvice(a, engine.ReasonKeepBack) {
			t.Errorf("advice %v, want what each face gets and the core kept back", a.Advice)
		}
		if s := stepOf(t, a, unit.SideFarJoint); !strings.Contains(s.Formula, "½ ((h − r)") || !strings.Contains(s.Numbers, "½ ((40 − 0)") {
			t.Errorf("worked as %q, %q; want a half of the push", s.Formula, s.Numbers)
		}
	}
	solved, err := engine.SolveFor(engine.Question{About: engine.Side, Said: twoFaces(nil)}, unit.Vacuum, unit.Facts{unit.SideFarJoint: unit.Number(78)})
	if v, ok := solved.Values[unit.Vacuum].(unit.Triple); err != nil || !ok || math.Abs(*v.Mid-80) > 1e-6 {
		t.Errorf("%v of vacuum (%v), want 80 at the middle", solved.Values[unit.Vacuum], err)
	}
}

// A bar of 36 mm touches 6 of the upper face's 10: the film presses the other 4 there.
// Together it is 40 as before; at worst F = 35.5 turns with 36²/2 = 648, the upper face
// is met at 33: (648 − 35.5 · 5 + 50)/28 = 18.589, and the lower one gets 16.911. One of
// 25 ends under the upper face: 10 − 2.5 mm of film at the first joint of that one.
func TestSide_bothFacesLowBar(t *testing.T) {
	lower := 35.5 - (648-35.5*5+50)/28
	a := mustAnswer(t, engine.Side, twoFaces(unit.Facts{unit.BarHeight: unit.Number(36)}))
	wantTriple(t, a, unit.BarCovered, 40, 40, 40, 1e-9)
	wantTriple(t, a, unit.SideFirstJoint, 8*(lower-5), 8*17.25, 8*(39.5-lower-2.5), 1e-9)
	a = mustAnswer(t, engine.Side, twoFaces(unit.Facts{unit.BarHeight: unit.Number(25)}))
	wantTriple(t, a, unit.SideFirstJoint, 60, 60, 60, 1e-9)
	if !hasAdvice(a, engine.ReasonBarUnderUpperFace) || hasAdvice(a, engine.ReasonBothFaces) {
		t.Errorf("advice %v, want that the bar ends under the upper face", a.Advice)
	}
	bed := twoFaces(unit.Facts{unit.BarHeight: unit.Number(15), unit.BarFoot: unit.Word("bed"), unit.SledThickness: unit.Number(19)})
	if a := mustAnswer(t, engine.Side, bed); !hasAdvice(a, engine.ReasonBarTooLow) {
		t.Errorf("advice %v, want that the bar touches nothing", a.Advice)
	}
}

// A bar that just reaches the upper face gives its joints no jump: half-way to the 3 mm
// of overlap that are enough, half of what film on the edge gives, 10 mm less the 2.5
// to the joint, and half of the 17.25 mm beside a bar of 33 and more.
func TestSide_bothFacesHardlyReached(t *testing.T) {
	last := 60.0
	for H := 29.99; H < 36; H += 0.01 {
		now := *mustAnswer(t, engine.Side, twoFaces(unit.Facts{unit.BarHeight: unit.Number(H)})).Values[unit.SideFirstJoint].(unit.Triple).Mid
		if now < last-1e-9 || now > last+0.3 { // 78 kPa over 3 mm
			t.Fatalf("%g mm of bar give %g kPa after %g", H, now, last)
		}
		last = now
	}
	a := mustAnswer(t, engine.Side, twoFaces(unit.Facts{unit.BarHeight: unit.Number(31.5)}))
	if first := *a.Values[unit.SideFirstJoint].(unit.Triple).Mid; math.Abs(first-8*(7.5+17.25)/2) > 1e-9 {
		t.Errorf("%g kPa, want %g", first, 8*(7.5+17.25)/2)
	}
	if s := stepOf(t, a, unit.SideFirstJoint); !strings.Contains(s.Formula, "k ½ (") || !hasAdvice(a, engine.ReasonBarBarely) {
		t.Errorf("worked as %q, advice %v", s.Formula, a.Advice)
	}
}

// Beside faces of 10, 20 and 10 under a caul of 40 a bar of 80 by 10 mm is covered to
// its top; about the middle at 20 it leans from (80² + 10²)/(2 · 60) = 54 mm on, and
// does not when √(2 · 80 · 60 − 80²) = 56.57 wide. With μ 0.1 contact of 70 kPa at 200
// mm takes 2 (70 · 10 / 80 + 20) = 57.5 mm, and 6 more for a bar of 60: 63.5.
func TestSide_bothFacesAdvice(t *testing.T) {
	a := mustAnswer(t, engine.Side, twoFaces(unit.Facts{unit.BarHeight: unit.Number(80), unit.CaulThickness: unit.Number(40)}))
	wantTriple(t, a, unit.BarCovered, 80, 80, 80, 1e-9)
	figures, _ := advised(a, engine.ReasonWiderBar)
	if w, _ := figures.Number(unit.BarWidthLeast); math.Abs(w-math.Sqrt(3200)) > 1e-9 || figures.Has(unit.BarTipping) {
		t.Errorf("advises %v, want a bar 56.57 wide", figures)
	}
	a = mustAnswer(t, engine.Side, twoFaces(unit.Facts{unit.FrictionStated: unit.Number(0.1), unit.BarWidth: unit.Number(60)}))
	figures, _ = advised(a, engine.ReasonBarForContact)
	if h, _ := figures.Number(unit.BarHeight); math.Abs(h-63.5) > 0.05 {
		t.Errorf("advises %v, want a bar of 63.5", figures)
	}
}

// A wedge drives both faces as well: of the 104.972 kPa of TestSide_wedgeDrivenAgain
// each gets half, and the fence as much as before, 1049.72 N on its metre.
func TestSide_wedgeOnBothFaces(t *testing.T) {
	a := mustAnswer(t, engine.Side, twoFaces(unit.Facts{
		unit.StripLength: unit.Number(1000), unit.WedgeRatio: unit.Number(8), unit.WedgeForce: unit.Number(1000), unit.WedgeAgain: unit.Word("yes"),
	}))
	wantTriple(t, a, unit.Preload, 85.714/2, 104.972/2, 134.851/2, 0.001)
	wantTriple(t, a, unit.FenceLoad, 857.14, 1049.72, 1348.51, 0.01)
}

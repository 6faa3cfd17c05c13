package engine_test

import (
	"math"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// inch is a layer of so many inches.
func inch(part string, in float64) unit.Layer { return layer(part, in*25.4) }

// ranged is a stack at 24 inHg of which some strips have a range, in inches; its
// layer has the thickest.
func ranged(thin, thick float64, layers ...unit.Layer) unit.Facts {
	return unit.Facts{
		unit.StripThinnest: unit.Number(thin * 25.4), unit.StripThickest: unit.Number(thick * 25.4),
		unit.Vacuum: unit.Number(24 * 3.386389), unit.StackLayers: unit.Layers(layers),
	}
}

// wantProud fails unless the levels stand proud so, at the mids, in mm.
func wantProud(t *testing.T, a engine.Answer, want ...float64) {
	t.Helper()
	got, _ := a.Values[unit.Proud].(unit.Triples)
	if len(got) != len(want) {
		t.Fatalf("proud %v, want %d levels", got, len(want))
	}
	for i, w := range want {
		if !math.IsNaN(w) && math.Abs(*got[i].Mid-w) > 0.001 {
			t.Errorf("level %d stands %g mm proud, want %g", i+1, *got[i].Mid, w)
		}
	}
}

// wantLevel fails unless a check on a level came out so.
func wantLevel(t *testing.T, a engine.Answer, name string, level float64, v engine.Verdict) {
	t.Helper()
	for _, c := range a.Checks {
		if n, _ := c.Figures.Number(unit.StackLevel); c.Name == name && n == level {
			if c.Verdict != v {
				t.Errorf("%s on level %g: %s, want %s", name, level, c.Verdict, v)
			}
			return
		}
	}
	if v != "" {
		t.Errorf("no check %q on level %g in %v", name, level, a.Checks)
	}
}

// A thickness range belongs to its own level. By hand: the lower strips of 1/4
// beside a fence of 3/8 are 6.35 − 9.525 = −3.175 mm proud. Height: sled 19.05 +
// fence 9.525 + sled 19.05 + strips 11.1125 + mat 9.525 + caul 19.05 = 87.3125.
func TestStack_rangeOfOneLevel(t *testing.T) {
	a := mustAnswer(t, engine.Stack, ranged(3./8, 7./16,
		inch("sled", .75), inch("fence", 3./8), inch("strips", 1./4),
		inch("sled", .75), inch("fence", 1./4), inch("strips", 7./16), inch("mat", 3./8), inch("caul", .75)))
	wantProud(t, a, -3.175, math.NaN())
	wantLevel(t, a, "proud of the fence", 1, engine.Stop)
	wantLevel(t, a, "uneven strips", 1, "") // it is even
	wantTriple(t, a, unit.StackHeight, 87.3125, 87.3125, 87.3125, 1e-6)

	// The other way round: 19.05 − 15.875 = 3.175 mm.
	a = mustAnswer(t, engine.Stack, ranged(1./4, 9./32,
		inch("sled", .75), inch("fence", 5./8), inch("strips", .75),
		inch("sled", .75), inch("fence", 3./8), inch("strips", 9./32), inch("mat", 3./8), inch("caul", .75)))
	wantProud(t, a, 3.175, math.NaN())
	wantLevel(t, a, "proud of the fence", 1, engine.Good)
}

// A mat evens the strips that it lies against, on its own level, under something
// rigid there; anywhere else it evens nothing.
func TestStack_matWhereItLies(t *testing.T) {
	for name, layers := range map[string]unit.Layers{
		"on another level":    {inch("sled", .75), inch("strips", .25), inch("mat", .375), inch("sled", .75), inch("strips", .375), inch("caul", .75)},
		"above the caul":      {inch("sled", .75), inch("strips", .375), inch("caul", .75), inch("mat", .375)},
		"below the sled":      {inch("mat", .375), inch("sled", .75), inch("strips", .375), inch("caul", .75)},
		"below the core":      {inch("sled", .75), inch("mat", .375), inch("core", .75), inch("strips", .375), inch("caul", .75)},
		"above another core":  {inch("sled", .75), inch("strips", .375), inch("core", .75), inch("mat", .375), inch("caul", .75)},
		"on top of two cauls": {inch("sled", .75), inch("strips", .375), inch("caul", .25), inch("mat", .375), inch("caul", .25)},
	} {
		a := mustAnswer(t, engine.Stack, ranged(5./16, 3./8, layers...))
		if t.Log(name); a.Values.Has(unit.MatLow) {
			t.Errorf("thin strips get %v through a mat that is not on them", a.Values[unit.MatLow])
		}
		wantCheck(t, a, "uneven strips", engine.Stop, engine.ReasonUneven)
	}
	for name, layers := range map[string]unit.Layers{
		"on the strips":    {inch("sled", .75), inch("strips", .375), inch("mat", .375), inch("caul", .75)},
		"under the strips": {inch("sled", .75), inch("mat", .375), inch("strips", .375), inch("caul", .75)},
	} {
		a := mustAnswer(t, engine.Stack, ranged(5./16, 3./8, layers...))
		if t.Log(name); !a.Values.Has(unit.MatLow) {
			t.Error("no pressure on the thin strips")
		}
		wantCheck(t, a, "uneven strips", "", "")
	}
}

// Under film alone any spread is fine, mat or no mat.
func TestStack_matUnderFilmAlone(t *testing.T) {
	a := mustAnswer(t, engine.Stack, ranged(1./4, 5./16, inch("sled", .75), inch("strips", 5./16), inch("mat", 3./8)))
	wantCheck(t, a, "uneven strips", engine.Good, engine.ReasonFilmForgives)
	if a.Verdict != engine.Good || a.Values.Has(unit.MatLow) {
		t.Errorf("%s with %v, want good and nothing through the mat", a.Verdict, a.Values[unit.MatLow])
	}
}

// Each level has its own mat. By bisection of (1 − φ) σ(s/m) + φ σ((s − d)/m) = p
// outside this code, 5 mm of a medium mat on strips 0.8 mm apart at 70 kPa hand on
// 44.9 kPa, between 28.6 and 49.1 over the dial and the mat.
func TestStack_ownMat(t *testing.T) {
	said := ranged(16/25.4, 16.8/25.4, layer("sled", 22), layer("strips", 9.5), layer("mat", 12),
		layer("sled", 15), layer("strips", 16.8), layer("mat", 5), layer("caul", 6))
	said[unit.Vacuum] = unit.Number(70)
	wantTriple(t, mustAnswer(t, engine.Stack, said), unit.MatLow, 28.6, 44.9, 49.1, 0.05)
}

// A mat told of beside the stack lies on the strips: 19.05 + 9.525 + 9.525 + 19.05
// = 57.15 mm high. At 50 kPa for a quarter squash and 81.27 kPa the even mat would
// stand 9.525/(1 + 81.27/150) = 6.18 mm; more over thin strips.
func TestStack_matBesideTheStack(t *testing.T) {
	said := ranged(3./8, 3./8, inch("sled", .75), inch("fence", 1./4), inch("strips", 3./8), inch("caul", .75))
	said[unit.MatThickness], said[unit.MatFirm] = unit.Number(9.525), unit.Number(50)
	a := mustAnswer(t, engine.Stack, said)
	wantTriple(t, a, unit.StackHeight, 57.15, 57.15, 57.15, 1e-6)
	wantProud(t, a, 9.525+9.525/(1+24*3.386389/150)-6.35)
}

// Where a range and a spread are both said, the larger counts: 5/16 − 1/4 in is
// 1.5875 mm, more than the 0.1 mm said of all, which an even level keeps.
func TestStack_rangeAndSpread(t *testing.T) {
	said := ranged(1./4, 5./16, inch("sled", .75), inch("strips", .5), inch("sled", .75), inch("strips", 5./16), inch("sled", .75))
	said[unit.ThicknessSpread] = unit.Number(0.1)
	a := mustAnswer(t, engine.Stack, said)
	wantLevel(t, a, "uneven strips", 1, engine.Good)
	wantLevel(t, a, "uneven strips", 2, engine.Stop)
}

// Of two mats on uneven levels the one that hands on less is told, with its level.
func TestStack_worstMatIsNamed(t *testing.T) {
	said := unit.Facts{
		unit.Vacuum: unit.Number(80), unit.ThicknessSpread: unit.Number(1),
		unit.StackLayers: unit.Layers{layer("sled", 19), layer("strips", 8), layer("mat", 12), layer("sled", 19), layer("strips", 8), layer("mat", 4), layer("caul", 12)},
	}
	a := mustAnswer(t, engine.Stack, said)
	if n, _ := checkOf(t, a, "thinnest strips").Figures.Number(unit.StackLevel); n != 2 {
		t.Errorf("level %g is named, want 2 with the thinner mat", n)
	}
	said[unit.StackLayers] = said[unit.StackLayers].(unit.Layers)[3:]
	alone := mustAnswer(t, engine.Stack, said).Values[unit.MatLow].(unit.Triple)
	if both := a.Values[unit.MatLow].(unit.Triple); *both.Mid != *alone.Mid {
		t.Errorf("the thin strips get %g kPa, and %g without the other level", *both.Mid, *alone.Mid)
	}
}

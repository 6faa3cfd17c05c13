package engine_test

import (
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand, quarter sawn cherry E_R 2.2261 GPa: E t³ c/s⁴ of 10 mm, 2 mm cup over
// 150 mm is 2.2261e9 · 1e-6 · 0.002/5.0625e-4 = 8794.5 Pa; hump 6.4 of it, hollow
// 2.667 · 2/0.15 = 35.56 of it.
func cuppedCherry(up string) unit.Facts {
	said := unit.Facts{
		unit.Cup: unit.Number(2), unit.StripWidth: unit.Number(150), unit.StripThickness: unit.Number(10),
		unit.Species: unit.Word("cherry"), unit.Sawn: unit.Word("quarter"), unit.Vacuum: unit.Number(85),
	}
	if up != "" {
		said[unit.CupUp] = unit.Word(up)
	}
	return said
}

func TestFlatten_whichWayUp(t *testing.T) {
	const hump, hollow = 6.4 * 8.7945, 320.0 / 9 * 8.7945
	a := mustAnswer(t, engine.Flatten, cuppedCherry("hump"))
	wantTriple(t, a, unit.FlattenNeed, 0.78*hump, hump, 1.22*hump, 0.01)
	wantCheck(t, a, "flat", engine.Good, engine.ReasonFlattens)
	if hasAdvice(a, engine.ReasonHumpUp) {
		t.Error("hump up is advised where it lies so")
	}
	a = mustAnswer(t, engine.Flatten, cuppedCherry("hollow"))
	wantTriple(t, a, unit.FlattenNeed, 0.78*hollow, hollow, 1.22*hollow, 0.05)
	wantCheck(t, a, "flat", engine.Stop, engine.ReasonStaysCurled)
	a = mustAnswer(t, engine.Flatten, cuppedCherry(""))
	wantTriple(t, a, unit.FlattenNeed, 0.78*hump, hump, 1.22*hollow, 0.05)
	wantCheck(t, a, "flat", engine.Care, engine.ReasonMayFlatten)
	if !hasAdvice(a, engine.ReasonHumpUp) {
		t.Errorf("advice %v, want hump up", a.Advice)
	}
}

// A bow bends along the grain, hard maple E_L 13.88 GPa: 6.4 · 13.88e9 · 0.02³ ·
// 0.005 / 1.5⁴ = 3553.28/5.0625 = 701.9 Pa. With a cup as well the two add up.
func TestFlatten_bowAndCup(t *testing.T) {
	said := unit.Facts{
		unit.Bow: unit.Number(5), unit.StripLength: unit.Number(1500), unit.StripThickness: unit.Number(20),
		unit.Species: unit.Word("hard maple"), unit.CupUp: unit.Word("hump"), unit.Sawn: unit.Word("flat"),
	}
	a, err := engine.Compute(engine.Question{About: engine.Flatten, Said: said, For: []unit.Field{unit.FlattenNeed}})
	if err != nil || a.Verdict == engine.Ask {
		t.Fatalf("%v (%v), want the need alone without a vacuum", a.Needs, err)
	}
	wantTriple(t, a, unit.FlattenNeed, 0.78*0.7019, 0.7019, 1.22*0.7019, 2e-4)
	// the cup of 1 mm over 100 mm: 6.4 · 0.9022e9 · 8e-6 · 0.001/1e-4 = 461.9 kPa
	said[unit.Cup], said[unit.StripWidth], said[unit.Vacuum] = unit.Number(1), unit.Number(100), unit.Number(80)
	a = mustAnswer(t, engine.Flatten, said)
	wantTriple(t, a, unit.FlattenNeed, 0.78*462.63, 462.63, 1.22*462.63, 0.1)
}

// What is left of the vacuum presses the glue line: 85 − 56.28 = 28.7 kPa is
// under half of PVA's 70, and enough for epoxy's 10 with 82.46 − 68.67 at worst.
func TestFlatten_whatIsLeftForTheGlue(t *testing.T) {
	said := cuppedCherry("hump")
	said[unit.GlueClass] = unit.Word("pva")
	a := mustAnswer(t, engine.Flatten, said)
	wantTriple(t, a, unit.FlattenLeft, 82.46-68.67, 85-56.285, 87.54-43.90, 0.02)
	wantCheck(t, a, "glue line", engine.Stop, engine.ReasonFaceUnderContact)
	said[unit.GlueClass] = unit.Word("epoxy")
	wantCheck(t, mustAnswer(t, engine.Flatten, said), "glue line", engine.Good, engine.ReasonFaceContact)
}

func TestFlatten_needs(t *testing.T) {
	for _, f := range []unit.Field{unit.Cup, unit.StripWidth, unit.StripThickness, unit.Vacuum} {
		said := cuppedCherry("hump")
		delete(said, f)
		if a := mustAnswer(t, engine.Flatten, said); !slices.Equal(a.Needs, []unit.Field{f}) || a.Verdict != engine.Ask {
			t.Errorf("without %s: needs %v, %s", f, a.Needs, a.Verdict)
		}
	}
}

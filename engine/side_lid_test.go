package engine_test

import (
	"maps"
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// Strips and the bar beside them are judged against an opening. By hand, in mm: on
// a sled of 19.05 a bar of 25.4 tops out at 44.45, on the usual one of 19 at 44.4;
// from the bed one of 40 at 40, and one of 25.4 is lower than sled and strips, 19.05
// + 12.7 = 31.75; two faces of 12.7 on 19.05 lie 19 + 12.7 + 19.05 + 12.7 = 63.45 high.
func TestSide_underTheLid(t *testing.T) {
	sled := unit.Facts{unit.SledThickness: unit.Number(19.05)}
	bed := unit.Facts{unit.SledThickness: unit.Number(19.05), unit.BarFoot: unit.Word("bed")}
	tall := unit.Facts{unit.SledThickness: unit.Number(19.05), unit.BarFoot: unit.Word("bed"), unit.BarHeight: unit.Number(40)}
	faces := unit.Facts{unit.CoreThickness: unit.Number(19.05), unit.Faces: unit.Number(2)}
	for name, c := range map[string]struct {
		more            unit.Facts
		opening, height float64
		v               engine.Verdict
		r               engine.Reason
	}{
		"bar too high":         {sled, 38.1, 44.45, engine.Stop, engine.ReasonBarTooHigh},
		"bar fits barely":      {sled, 50, 44.45, engine.Care, engine.ReasonBarFitsBarely},
		"bar fits":             {sled, 50.45, 44.45, engine.Good, engine.ReasonFits},
		"usual sled":           {nil, 44, 44.4, engine.Stop, engine.ReasonBarTooHigh},
		"low bar on the bed":   {bed, 31, 31.75, engine.Stop, engine.ReasonTooHigh},
		"tall bar on the bed":  {tall, 38.1, 40, engine.Stop, engine.ReasonBarTooHigh},
		"both faces of a core": {faces, 65, 63.45, engine.Care, engine.ReasonFitsBarely},
	} {
		said := panelOf(unit.Facts{unit.StripThickness: unit.Number(12.7), unit.BarHeight: unit.Number(25.4), unit.Opening: unit.Number(c.opening)})
		maps.Copy(said, c.more)
		for _, about := range []engine.Topic{engine.Side, engine.Load} {
			a := mustAnswer(t, about, said)
			t.Log(name, about)
			wantTriple(t, a, unit.StackHeight, c.height, c.height, c.height, 1e-9)
			wantCheck(t, a, "height", c.v, c.r)
		}
	}
}

// A lid is nobody's business where no opening is known, nor at a wedge set on the
// bench in a room that has one; and no bar is advised that does not go under it.
func TestSide_noLid(t *testing.T) {
	bare := panelOf(unit.Facts{unit.BarHeight: unit.Number(25.4)})
	a := mustAnswer(t, engine.Side, bare)
	if _, ok := advised(a, engine.ReasonBarForContact); a.Values.Has(unit.StackHeight) || !ok {
		t.Errorf("height %v, advice %v; want no height and a bar that makes contact", a.Values[unit.StackHeight], a.Advice)
	}
	bare[unit.Opening] = unit.Number(60)
	if figures, ok := advised(mustAnswer(t, engine.Side, bare), engine.ReasonBarForContact); ok {
		t.Errorf("a bar is advised that does not go under the lid: %v", figures)
	}
	wedged, err := engine.Compute(engine.Question{About: engine.Side, Room: unit.Facts{unit.Opening: unit.Number(100)}, Said: unit.Facts{
		unit.WedgeRatio: unit.Number(6), unit.WedgeForce: unit.Number(500), unit.StripThickness: unit.Number(18), unit.StripLength: unit.Number(1500),
	}})
	if err != nil || wedged.Values.Has(unit.StackHeight) {
		t.Errorf("a wedge on the bench is judged under a lid: %v (%v)", wedged.Values, err)
	}
}

// A bar told of beside the stack stands on its sled: 19.05 + 76.2 = 95.25 mm. On
// two levels it stands on the upper one too, 19 + 8 + 19 + 25 = 71, and one on the
// bed starts there. A bar denied has no height.
func TestStack_barBesideTheStack(t *testing.T) {
	one := unit.Layers{inch("sled", .75), inch("fence", .25), inch("strips", 5./16), layer("film", 0.15), inch("caul", .75)}
	two := unit.Layers{layer("sled", 19), layer("strips", 8), layer("sled", 19), layer("strips", 8)}
	for name, c := range map[string]struct {
		layers      unit.Layers
		bar, height float64
		more        unit.Facts
	}{
		"one level":      {one, 76.2, 95.25, nil},
		"lower bar":      {one, 12.7, 19.05 + 7.9375 + 0.15 + 19.05, nil},
		"two levels":     {two, 25, 71, nil},
		"on the bed":     {two, 60, 60, unit.Facts{unit.BarFoot: unit.Word("bed")}},
		"low on the bed": {two, 50, 54, unit.Facts{unit.BarFoot: unit.Word("bed")}},
		"no bar":         {two, 60, 54, unit.Facts{unit.BarDenied: unit.Word("none")}},
	} {
		said := unit.Facts{unit.StackLayers: c.layers, unit.BarHeight: unit.Number(c.bar), unit.Opening: unit.Number(76.2)}
		maps.Copy(said, c.more)
		a, err := engine.Compute(engine.Question{About: engine.Stack, Said: said, Why: true})
		if t.Log(name); err != nil {
			t.Fatal(err)
		}
		wantTriple(t, a, unit.StackHeight, c.height, c.height, c.height, 1e-9)
		if name != "one level" {
			continue
		}
		wantCheck(t, a, "height", engine.Stop, engine.ReasonBarTooHigh)
		i := slices.IndexFunc(a.Working, func(s engine.Step) bool { return s.Name == string(unit.StackHeight) })
		if i < 0 || a.Working[i].Numbers != "side bar on its foot, 19.05 mm + 76.2 mm" {
			t.Errorf("working %v, want the bar on its foot", a.Working)
		}
	}
}

package engine_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// A load gives what its parts give, under the worst of their verdicts.
func TestLoad_allParts(t *testing.T) {
	said := wholeLoad()
	said[unit.StackLayers] = unit.Layers{layer("sled", 19), layer("strips", 20), layer("sled", 19)}
	said[unit.Opening] = unit.Number(100)
	said[unit.Cup] = unit.Number(0.5)
	load := mustAnswer(t, engine.Load, said)
	worst := engine.None
	for _, part := range []engine.Topic{engine.Side, engine.Stack, engine.Flatten, engine.Face, engine.Glue} {
		a := mustAnswer(t, part, said)
		for f := range a.Values {
			if !load.Values.Has(f) {
				t.Errorf("the load lacks %s of %s", f, part)
			}
		}
		for _, c := range a.Checks {
			if !slices.ContainsFunc(load.Checks, func(l engine.Check) bool { return l.Name == c.Name }) && c.Name != "face" {
				t.Errorf("the load lacks the check %q of %s", c.Name, part)
			}
		}
	}
	for _, c := range load.Checks {
		worst = engine.Worst(worst, c.Verdict)
	}
	if load.Verdict != worst || worst == engine.None {
		t.Errorf("verdict %s, the worst check has %s", load.Verdict, worst)
	}
	for _, c := range []engine.Caution{engine.CautionPowerCut, engine.CautionHands, engine.CautionPinch, engine.CautionLabel} {
		if !hasCaution(load, c) {
			t.Errorf("cautions %v, want %s", load.Cautions, c)
		}
	}
}

// What a lesser part lacks does not hold a load up; what its joints lack does.
func TestLoad_needs(t *testing.T) {
	said := panelOf(unit.Facts{unit.BarHeight: unit.Number(25), unit.GlueClass: unit.Word("pva")})
	if a := mustAnswer(t, engine.Load, said); len(a.Needs) != 0 {
		t.Errorf("needs %v, want nothing: the amount of glue was not asked for", a.Needs)
	}
	delete(said, unit.StripThickness)
	if a := mustAnswer(t, engine.Load, said); !slices.Equal(a.Needs, []unit.Field{unit.StripThickness}) || a.Verdict != engine.Ask {
		t.Errorf("needs %v, %s; want the thickness", a.Needs, a.Verdict)
	}
	if a := mustAnswer(t, engine.Load, unit.Facts{}); a.Verdict != engine.Ask || len(a.Needs) == 0 {
		t.Errorf("an empty load is %s with needs %v, want to be asked", a.Verdict, a.Needs)
	}
}

func TestLoad_structural(t *testing.T) {
	said := exactBar(unit.Facts{unit.StructuralUse: unit.Word("yes")})
	if a := mustAnswer(t, engine.Side, said); !hasCaution(a, engine.CautionStructural) {
		t.Errorf("cautions %v, want that a tread is a matter for the code", a.Cautions)
	}
}

// The room's defaults fill what was not said, and are told as assumed.
func TestCompute_roomDefaults(t *testing.T) {
	said := panelOf(nil)
	delete(said, unit.VacuumPercent)
	room := unit.Facts{unit.Vacuum: unit.Number(80), unit.BarHeight: unit.Number(30), unit.StripThickness: unit.Number(99)}
	a, err := engine.Compute(engine.Question{About: engine.Side, Said: said, Room: room})
	if err != nil {
		t.Fatal(err)
	}
	wantTriple(t, a, unit.SideIdeal, 3*77.46, 240, 3*82.54, 1e-9) // of 10 mm as said, not of 99
	if a.Assumed[unit.Vacuum] != unit.Number(80) || a.Assumed[unit.BarHeight] != unit.Number(30) || a.Assumed.Has(unit.StripThickness) {
		t.Errorf("assumed %v, want the vacuum and the bar of the room alone", a.Assumed)
	}
	said[unit.VacuumPercent] = unit.Number(50) // said in another way goes before the room's dial
	if a, err = engine.Compute(engine.Question{About: engine.Side, Said: said, Room: room}); err != nil {
		t.Fatal(err)
	}
	wantTriple(t, a, unit.FacePressure, 50, 50, 50, 1e-9)
}

// Whatever is said, what comes out is an error or figures in order, and JSON.
func TestCompute_anyPressIsFiniteAndOrdered(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	fields := []unit.Field{
		unit.StripCount, unit.StripWidth, unit.StripThickness, unit.StripLength, unit.PanelWidth, unit.Vacuum, unit.VacuumPercent, unit.VacuumAbsolute,
		unit.Altitude, unit.Ambient, unit.BarHeight, unit.BarWidth, unit.BarCount, unit.Cover, unit.SledThickness, unit.CaulThickness, unit.CoreThickness,
		unit.WedgeRatio, unit.WedgeForce, unit.Overfill, unit.Tent, unit.FrictionStated, unit.Gap, unit.Cup, unit.Bow, unit.MatThickness, unit.MatFirm,
		unit.ThicknessSpread, unit.Opening, unit.SledWidth, unit.SledLength, unit.BagWidth, unit.ShopTemp,
	}
	odd := []float64{0, -1, 1e-300, 1e300, -1e300, 1e12, 5e-324}
	answered := 0
	for range 4000 {
		said := unit.Facts{unit.StackLayers: unit.Layers{layer("sled", 19), layer("fence", 5), layer("strips", 6), layer("mat", 4), layer("caul", 9)}}
		for _, f := range fields {
			switch k := r.Float64(); {
			case k < 0.5:
				said[f] = unit.Number(math.Exp(r.Float64()*7 - 2))
			case k < 0.52:
				said[f] = unit.Number(odd[r.IntN(len(odd))])
			}
		}
		for _, about := range []engine.Topic{engine.Face, engine.Side, engine.Flatten, engine.Stack, engine.Load} {
			a, err := engine.Compute(engine.Question{About: about, Said: said, Why: r.IntN(8) == 0})
			if err != nil {
				continue
			}
			answered++
			text, err := json.Marshal(a)
			if err != nil || strings.Contains(string(text), "NaN") {
				t.Fatalf("%s %v: %v", about, said, err)
			}
			for f, v := range a.Values {
				if v, ok := v.(unit.Triple); ok && v.Low != nil && v.Mid != nil && v.High != nil && !(*v.Low <= *v.Mid && *v.Mid <= *v.High) {
					t.Fatalf("%s %s is out of order: %g %g %g from %v", about, f, *v.Low, *v.Mid, *v.High, said)
				}
			}
		}
	}
	if answered < 2000 {
		t.Fatalf("%d answers, want 2000 or more to have tried anything", answered)
	}
}

// Each figure of the contract has its working where it is asked for.
func TestCompute_workingOfPressFigures(t *testing.T) {
	side := wholeLoad()
	side[unit.Overfill] = unit.Number(1)
	for _, c := range []struct {
		about engine.Topic
		said  unit.Facts
		want  []unit.Field
	}{
		{engine.Face, unit.Facts{unit.Vacuum: unit.Number(80), unit.PanelWidth: unit.Number(600), unit.PanelLength: unit.Number(900)},
			[]unit.Field{unit.Ambient, unit.FacePressure, unit.FaceForce, unit.FaceTonsPerSquareFoot}},
		{engine.Side, side, []unit.Field{unit.Ambient, unit.FacePressure, unit.SideIdeal, unit.SideFirstJoint, unit.SideFarJoint, unit.BarCovered,
			unit.BarReach, unit.Preload, unit.Rise, unit.Snap, unit.Buckle, unit.Closing, unit.GlueContact, unit.GlueFull}},
		{engine.Flatten, cuppedCherry(""), []unit.Field{unit.FlattenNeed, unit.FacePressure}},
		{engine.Flatten, unit.Facts{unit.Vacuum: unit.Number(80), unit.StripThickness: unit.Number(10), unit.Cup: unit.Number(1), unit.Bow: unit.Number(3),
			unit.StripWidth: unit.Number(150), unit.StripLength: unit.Number(900), unit.GlueClass: unit.Word("pva")}, []unit.Field{unit.FlattenNeed, unit.FlattenLeft}},
		{engine.Stack, unit.Facts{unit.Vacuum: unit.Number(80), unit.ThicknessSpread: unit.Number(0.5), unit.SledWidth: unit.Number(500), unit.SledLength: unit.Number(900),
			unit.PanelWidth: unit.Number(400), unit.PanelLength: unit.Number(800), unit.Opening: unit.Number(100), unit.StackLayers: unit.Layers{
				layer("sled", 19), layer("fence", 5), layer("strips", 8), layer("mat", 6), layer("caul", 12)}},
			[]unit.Field{unit.StackHeight, unit.Proud, unit.MatLow}},
	} {
		a := mustAnswer(t, c.about, c.said)
		for _, f := range c.want {
			i := slices.IndexFunc(a.Working, func(s engine.Step) bool { return s.Name == string(f) })
			if i < 0 {
				t.Errorf("%s has no working of %s", c.about, f)
				continue
			}
			if s := a.Working[i]; s.Formula == "" || s.Numbers == "" || s.Result == "" || s.Source == "" || s.Standing == "" {
				t.Errorf("%s: the working of %s lacks a part: %+v", c.about, f, s)
			}
		}
		for f := range a.Values {
			if f != unit.Opening && !slices.ContainsFunc(a.Working, func(s engine.Step) bool { return s.Name == string(f) }) {
				t.Errorf("%s has no working of %s", c.about, f)
			}
		}
		q := engine.Question{About: c.about, Said: c.said}
		if b, err := engine.Compute(q); err != nil || len(b.Working) != 0 {
			t.Errorf("%s keeps %d steps unasked (%v)", c.about, len(b.Working), err)
		}
	}
}

// One panel of five strips has 4 × 19.05 mm × 1219.2 mm = 0.0929 m² of joints; at
// the 150, 175 and 225 g/m² of yellow glue and a tenth more that is 15.3, 17.9 and
// 23.0 g.
func TestLoad_glueOfOnePanel(t *testing.T) {
	a := mustAnswer(t, engine.Load, unit.Facts{
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(57.15), unit.StripThickness: unit.Number(19.05),
		unit.StripLength: unit.Number(1219.2), unit.Species: unit.Word("hard maple"), unit.BarHeight: unit.Number(38.1),
		unit.PressKind: unit.Word("frame"), unit.Vacuum: unit.Number(81.273), unit.GlueClass: unit.Word("aliphatic"),
	})
	wantTriple(t, a, unit.GlueMass, 15.3, 17.9, 23.0, 0.05)
}

package engine_test

import (
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

func layer(part string, mm float64) unit.Layer { return unit.Layer{Part: part, Thickness: mm} }

// By hand: 19 + 8 (the fence of 6 stands lower) + 0.15 + 19 + 8 + 0.15 = 54.3 mm;
// the lower level stands 2 mm proud, the upper has nothing rigid above.
func TestStack_twoLevels(t *testing.T) {
	a := mustAnswer(t, engine.Stack, unit.Facts{
		unit.Opening: unit.Number(60),
		unit.StackLayers: unit.Layers{
			layer("sled", 19), layer("fence", 6), layer("strips", 8), layer("film", 0),
			layer("sled", 19), layer("fence", 6), layer("strips", 8), layer("film", 0.15),
		},
	})
	wantTriple(t, a, unit.StackHeight, 54.3, 54.3, 54.3, 1e-9)
	proud, _ := a.Values[unit.Proud].(unit.Triples)
	if len(proud) != 1 || *proud[0].Mid < 1.999 || *proud[0].Mid > 2.001 {
		t.Errorf("proud %v, want one level of 2 mm", proud)
	}
	wantCheck(t, a, "height", engine.Care, engine.ReasonFitsBarely) // 5.7 mm left
	wantCheck(t, a, "proud of the fence", engine.Good, engine.ReasonProud)
	if a.Assumed[unit.FilmThickness] != unit.Number(0.15) {
		t.Errorf("assumed %v, want the film's 0.15 mm", a.Assumed)
	}
}

// By hand: three times 19.05 + 12.7 is 95.25 mm, and the caul of 12 lies on top once; panels
// that may lie side by side are no levels.
func TestStack_panelsOnSleds(t *testing.T) {
	said := unit.Facts{unit.PanelCount: unit.Number(3), unit.PanelThickness: unit.Number(19.05), unit.SledThickness: unit.Number(12.7), unit.Opening: unit.Number(76.2)}
	a := mustAnswer(t, engine.Stack, said)
	wantTriple(t, a, unit.StackHeight, 95.25, 95.25, 95.25, 1e-9)
	wantCheck(t, a, "height", engine.Stop, engine.ReasonTooHigh)
	said[unit.CaulThickness] = unit.Number(12)
	wantTriple(t, mustAnswer(t, engine.Stack, said), unit.StackHeight, 107.25, 107.25, 107.25, 1e-9)
	said[unit.PanelWidth], said[unit.PanelLength] = unit.Number(600), unit.Number(1200)
	wantTriple(t, mustAnswer(t, engine.Stack, said), unit.StackHeight, 43.75, 43.75, 43.75, 1e-9)
}

// A side bar counts where it stands higher than what lies on its sled, and no
// sled rests on it.
func TestStack_sideBar(t *testing.T) {
	for bar, height := range map[float64]float64{10: 19 + 8 + 12, 25: 19 + 25} {
		a := mustAnswer(t, engine.Stack, unit.Facts{unit.StackLayers: unit.Layers{
			layer("sled", 19), layer("strips", 8), layer("bar", bar), layer("caul", 12),
		}})
		wantTriple(t, a, unit.StackHeight, height, height, height, 1e-9)
		if a.Values.Has(unit.Proud) {
			t.Errorf("proud %v of a bar, want none", a.Values[unit.Proud])
		}
	}
}

// A fence that stands higher than the work counts, and carries the sled.
func TestStack_fenceCarries(t *testing.T) {
	for fence, c := range map[float64]struct {
		height float64
		v      engine.Verdict
		r      engine.Reason
	}{
		10:  {19 + 10 + 19, engine.Stop, engine.ReasonFenceCarries},
		8:   {19 + 8 + 19, engine.Stop, engine.ReasonFenceCarries},
		7.5: {19 + 8 + 19, engine.Care, engine.ReasonProudLittle},
		7:   {19 + 8 + 19, engine.Good, engine.ReasonProud},
	} {
		a := mustAnswer(t, engine.Stack, unit.Facts{unit.StackLayers: unit.Layers{
			layer("sled", 19), layer("fence", fence), layer("strips", 8), layer("sled", 19),
		}})
		wantTriple(t, a, unit.StackHeight, c.height, c.height, c.height, 1e-9)
		wantCheck(t, a, "proud of the fence", c.v, c.r)
	}
}

// By hand, even strips on 10 mm of mat measured at 40 kPa: 80 kPa squash it by
// 0.4, so 8 + 6 − 7 = 7 mm stand proud; uncompressed it counts whole in the height.
func TestStack_squashedMat(t *testing.T) {
	said := unit.Facts{
		unit.Ambient: unit.Number(100), unit.VacuumPercent: unit.Number(80), unit.MatFirm: unit.Number(40),
		unit.StackLayers: unit.Layers{layer("sled", 19), layer("fence", 7), layer("strips", 8), layer("mat", 10), layer("caul", 12)},
	}
	a := mustAnswer(t, engine.Stack, said)
	wantTriple(t, a, unit.StackHeight, 49, 49, 49, 1e-9)
	proud := a.Values[unit.Proud].(unit.Triples)
	if len(proud) != 1 || *proud[0].Low < 6.999 || *proud[0].High > 7.001 {
		t.Errorf("proud %v, want 7 mm", proud)
	}
	if !hasAdvice(a, engine.ReasonFoamGas) {
		t.Errorf("advice %v, want what foam does under vacuum", a.Advice)
	}
	delete(said, unit.VacuumPercent)
	if a := mustAnswer(t, engine.Stack, said); !slices.Equal(a.Needs, []unit.Field{unit.Vacuum}) {
		t.Errorf("needs %v, want the vacuum that squashes the mat", a.Needs)
	}
}

// By hand as in the press package: half thin, 1 mm thinner, 10 mm of 40 kPa under
// 100 kPa: the thin strips get 80. A count of two strips makes the share half.
func TestStack_matLow(t *testing.T) {
	a := mustAnswer(t, engine.Stack, unit.Facts{
		unit.Ambient: unit.Number(101), unit.VacuumAbsolute: unit.Number(1), unit.MatFirm: unit.Number(40), unit.MatThickness: unit.Number(10),
		unit.StripThickest: unit.Number(9), unit.StripThinnest: unit.Number(8), unit.StripCount: unit.Number(2), unit.StripWidth: unit.Number(100),
	})
	wantTriple(t, a, unit.MatLow, 80, 80, 80, 1e-9)
	wantCheck(t, a, "thinnest strips", engine.Good, engine.ReasonFaceContact)
}

// A sled of 0.84 m² on 0.60 m² of strips presses with 1.4 of 50 kPa.
func TestStack_wideSledConcentrates(t *testing.T) {
	a := mustAnswer(t, engine.Stack, unit.Facts{
		unit.Ambient: unit.Number(100), unit.VacuumPercent: unit.Number(50), unit.SledWidth: unit.Number(700), unit.SledLength: unit.Number(1200),
		unit.PanelWidth: unit.Number(500), unit.PanelLength: unit.Number(1200),
		unit.StackLayers: unit.Layers{layer("sled", 19), layer("strips", 8), layer("sled", 19)},
	})
	wantTriple(t, a, unit.LevelPressure, 70, 70, 70, 1e-9)
	small := mustAnswer(t, engine.Stack, unit.Facts{
		unit.Vacuum: unit.Number(50), unit.SledWidth: unit.Number(500), unit.SledLength: unit.Number(1200), unit.PanelWidth: unit.Number(500), unit.PanelLength: unit.Number(1200),
		unit.StackLayers: unit.Layers{layer("sled", 19), layer("strips", 8), layer("sled", 19)},
	})
	if small.Values.Has(unit.LevelPressure) || hasAdvice(small, engine.ReasonSledConcentrates) {
		t.Errorf("a sled as large as the strips concentrates: %v", small.Values)
	}
}

func TestStack_unevenStrips(t *testing.T) {
	for name, c := range map[string]struct {
		spread float64
		layers unit.Layers
		v      engine.Verdict
		r      engine.Reason
	}{
		"film alone": {0.8, unit.Layers{layer("sled", 19), layer("strips", 8), layer("film", 0.15)}, engine.Good, engine.ReasonFilmForgives},
		"rigid sled": {0.16, unit.Layers{layer("sled", 19), layer("strips", 8), layer("sled", 19)}, engine.Stop, engine.ReasonUneven},
		"sled of no thickness said, level on level": {0.16, unit.Layers{
			layer("sled", 19), layer("strips", 8), layer("sled", 0), layer("strips", 8), layer("film", 0.15)}, engine.Stop, engine.ReasonUneven},
		"rigid sled, planed": {0.14, unit.Layers{layer("sled", 19), layer("strips", 8), layer("sled", 19)}, engine.Good, engine.ReasonEven},
	} {
		a := mustAnswer(t, engine.Stack, unit.Facts{unit.ThicknessSpread: unit.Number(c.spread), unit.StackLayers: c.layers})
		t.Log(name)
		wantCheck(t, a, "uneven strips", c.v, c.r)
	}
}

// A stack of 600 × 1250 × 46 mm takes a bag of 696 × 1496 mm laid flat.
func TestStack_bag(t *testing.T) {
	for width, r := range map[float64]engine.Reason{700: engine.ReasonBagFits, 690: engine.ReasonBagSmall} {
		a := mustAnswer(t, engine.Stack, unit.Facts{
			unit.SledWidth: unit.Number(600), unit.SledLength: unit.Number(1250), unit.BagWidth: unit.Number(width), unit.BagLength: unit.Number(1500),
			unit.StackLayers: unit.Layers{layer("sled", 19), layer("strips", 8), layer("sled", 19)},
		})
		v := engine.Good
		if r == engine.ReasonBagSmall {
			v = engine.Stop
		}
		wantCheck(t, a, "bag", v, r)
	}
}

func TestStack_needs(t *testing.T) {
	for name, c := range map[string]struct {
		said unit.Facts
		want []unit.Field
	}{
		"nothing":      {unit.Facts{unit.Opening: unit.Number(100)}, []unit.Field{unit.StackLayers}},
		"a mat":        {unit.Facts{unit.Opening: unit.Number(100), unit.StackLayers: unit.Layers{layer("sled", 0), layer("sled", 0), layer("mat", 0)}}, []unit.Field{unit.MatThickness}},
		"bare strips":  {unit.Facts{unit.StackLayers: unit.Layers{layer("sled", 19), layer("strips", 0)}}, []unit.Field{unit.StripThickness}},
		"low, no dial": {unit.Facts{unit.MatThickness: unit.Number(6), unit.ThicknessSpread: unit.Number(1)}, []unit.Field{unit.Vacuum}},
	} {
		a := mustAnswer(t, engine.Stack, c.said)
		if !slices.Equal(a.Needs, c.want) || a.Verdict != engine.Ask {
			t.Errorf("%s: needs %v, %s; want %v", name, a.Needs, a.Verdict, c.want)
		}
	}
}

// A mat denied where strips differ means that something rigid lies on them: above
// 0.15 mm the thin ones get nothing.
func TestStack_noMatUnderRigid(t *testing.T) {
	a := mustAnswer(t, engine.Stack, unit.Facts{
		unit.MatDenied: unit.Word("none"), unit.StripThickest: unit.Number(6.731), unit.StripThinnest: unit.Number(6.35),
	})
	wantCheck(t, a, "uneven strips", engine.Stop, engine.ReasonUneven)
	if len(a.Needs) > 0 {
		t.Errorf("needs %v, want none", a.Needs)
	}
	a = mustAnswer(t, engine.Stack, unit.Facts{unit.StripThickest: unit.Number(6.731), unit.StripThinnest: unit.Number(6.35)})
	if len(a.Needs) == 0 {
		t.Error("nothing said of what lies on the strips: want the stack")
	}
}

// A sled of 18 mm and strips of 22 are 40 mm high; around 1200 × 2400 mm of it
// goes a bag of 1200 + 40 + 50 by 2400 + 40 + 200 mm.
func TestStack_toldPartByPart(t *testing.T) {
	said := unit.Facts{
		unit.SledWidth: unit.Number(1200), unit.SledLength: unit.Number(2400), unit.SledThickness: unit.Number(18),
		unit.StripThickness: unit.Number(22), unit.BagWidth: unit.Number(1350), unit.BagLength: unit.Number(3000),
	}
	a := mustAnswer(t, engine.Stack, said)
	wantTriple(t, a, unit.StackHeight, 40, 40, 40, 1e-9)
	wantCheck(t, a, "bag", engine.Good, engine.ReasonBagFits)
	said[unit.BagWidth] = unit.Number(1285)
	wantCheck(t, mustAnswer(t, engine.Stack, said), "bag", engine.Stop, engine.ReasonBagSmall)
}

// A mat of middling softness hands on the most: softer, it lies nearly as hard as
// the sled; firmer, it spans the thin strips. By bisection of (1 − φ) σ(s/m) +
// φ σ((s − d)/m) = p outside this code, a soft mat of 10 mm on strips 2 mm apart:
// at φ = 0.2 and 87.46 kPa the thin ones get 42.272, 43.661 and 42.077 kPa at σ25
// of 14, 24 and 34, at φ = 0.5 and 92.54 kPa 53.139, 56.720 and 56.696. The most is
// had where the tall strips squash (1 + 0.2)/2 of it, the thin ones 0.4: of 92.54
// kPa each half carries its share of 1.5 to 0.6667, so the thin 2 · 0.6667/2.1667
// of it, 56.948.
func TestStack_matOfMiddlingSoftness(t *testing.T) {
	a := mustAnswer(t, engine.Stack, unit.Facts{
		unit.Ambient: unit.Number(100), unit.Vacuum: unit.Number(90), unit.MatFirmness: unit.Word("soft"),
		unit.MatThickness: unit.Number(10), unit.ThicknessSpread: unit.Number(2), unit.StripCount: unit.Number(5),
	})
	wantTriple(t, a, unit.MatLow, 42.077, 55.229, 56.948, 0.001)
}

// Under film a fence of 10 mm beside strips of 8 mm carries the mat at their edges,
// whatever the mat; one that the work or a mat below it reaches over does not.
func TestStack_fenceCarriesMat(t *testing.T) {
	for name, c := range map[string]struct {
		layers unit.Layers
		care   bool
	}{
		"below":       {unit.Layers{layer("sled", 18), layer("fence", 10), layer("strips", 8), layer("mat", 6)}, true},
		"flush":       {unit.Layers{layer("sled", 18), layer("fence", 8), layer("strips", 8), layer("mat", 6)}, false},
		"mat beneath": {unit.Layers{layer("sled", 18), layer("fence", 10), layer("mat", 6), layer("strips", 8)}, false},
	} {
		a := mustAnswer(t, engine.Stack, unit.Facts{unit.StackLayers: c.layers})
		got := slices.ContainsFunc(a.Checks, func(k engine.Check) bool { return k.Reason == engine.ReasonFenceMat && k.Verdict == engine.Care })
		if got != c.care {
			t.Errorf("%s: fence carries the mat %v, want %v", name, got, c.care)
		}
	}
}

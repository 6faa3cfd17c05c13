package engine_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// At 20 °C the table as it stands; the press time 1, 1.5 and 2 times under film:
// pva closes in 5, 15, 20 min and is pressed 30, 60, 90 min.
func TestGlue_tableTimes(t *testing.T) {
	a := mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("pva"), unit.ShopTemp: unit.Number(20)})
	wantTriple(t, a, unit.ClosedTime, 300, 900, 1200, 1e-9)
	wantTriple(t, a, unit.PressTime, 30, 90, 180, 1e-9)
	wantTriple(t, a, unit.MinTemp, 10, 10, 10, 0)
	cold := mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("pva"), unit.ShopTemp: unit.Number(10)})
	wantTriple(t, cold, unit.ClosedTime, 600, 1800, 2400, 1e-9)
	wantTriple(t, cold, unit.PressTime, 60, 180, 360, 1e-9)
}

// Faces on a core, sealed by film: 2, 3 and 4 times; no water, no film factor.
func TestGlue_pressTimeOnCore(t *testing.T) {
	core := unit.Facts{unit.GlueClass: unit.Word("pva"), unit.ShopTemp: unit.Number(20), unit.CoreKind: unit.Word("mdf")}
	wantTriple(t, mustAnswer(t, engine.Glue, core), unit.PressTime, 60, 180, 360, 1e-9)
	core[unit.GlueClass] = unit.Word("epoxy")
	wantTriple(t, mustAnswer(t, engine.Glue, core), unit.PressTime, 480, 960, 2880, 1e-9)
}

// Hot hide glue is not scaled by temperature.
func TestGlue_hotHideUnscaled(t *testing.T) {
	a := mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("hot-hide"), unit.ShopTemp: unit.Number(15)})
	wantTriple(t, a, unit.ClosedTime, 15, 60, 300, 1e-9)
	wantCheck(t, a, "temperature", engine.Care, engine.ReasonGelsFast)
}

// A label's figures stand for the table's.
func TestGlue_labelReplacesTable(t *testing.T) {
	a := mustAnswer(t, engine.Glue, unit.Facts{
		unit.GlueClass: unit.Word("pva"), unit.ShopTemp: unit.Number(20),
		unit.LabelOpen: unit.Number(8), unit.LabelClosed: unit.Number(10), unit.LabelPress: unit.Number(45),
		unit.LabelSpread: unit.Number(200), unit.LabelMinTemp: unit.Number(7),
		unit.PanelLength: unit.Number(1000), unit.StripCount: unit.Number(6), unit.StripThickness: unit.Number(20),
	})
	wantTriple(t, a, unit.OpenTime, 480, 480, 480, 1e-9)
	wantTriple(t, a, unit.ClosedTime, 600, 600, 600, 1e-9)
	wantTriple(t, a, unit.PressTime, 45, 67.5, 90, 1e-9)
	wantTriple(t, a, unit.MinTemp, 7, 7, 7, 0)
	wantTriple(t, a, unit.GlueMass, 22, 22, 22, 1e-9) // 5 · 0.02 · 1 = 0.1 m², 200 · 0.1 · 1.1
	for _, f := range []unit.Field{unit.LabelOpen, unit.LabelClosed, unit.LabelPress, unit.LabelSpread, unit.LabelMinTemp} {
		if _, assumed := a.Assumed[f]; assumed {
			t.Errorf("%s is assumed, want it as said", f)
		}
	}
}

// Eight panels 24 × 48 of 2 1/4 strips, 3/4 thick: 24/2.25 = 10.67, so 11 strips
// and 10 joints; 8 · 10 · 0.01905 · 1.2192 = 1.8581 m²; at 80, 175 and 250 g/m²
// and a tenth more 163.5, 357.7 and 511.0 g.
func TestGlue_amountOfEightPanels(t *testing.T) {
	a := mustAnswer(t, engine.Glue, eightPanels())
	wantTriple(t, a, unit.JointArea, 1.8581, 1.8581, 1.8581, 1e-4)
	wantTriple(t, a, unit.GlueMass, 163.5, 357.7, 511.0, 0.05)
	wantTriple(t, a, unit.LayupPanel, 260, 260, 260, 1e-9) // 60 + 10 · 20
	if a.Assumed[unit.StripCount] != unit.Number(11) || len(a.Needs) > 0 {
		t.Errorf("count of strips %v, needs %v; want 11 assumed, nothing needed", a.Assumed[unit.StripCount], a.Needs)
	}
}

func eightPanels() unit.Facts {
	return unit.Facts{
		unit.GlueClass: unit.Word("pva"), unit.PanelCount: unit.Number(8), unit.PanelWidth: unit.Number(609.6),
		unit.PanelLength: unit.Number(1219.2), unit.StripWidth: unit.Number(57.15), unit.StripThickness: unit.Number(19.05),
	}
}

// Two faces 24 × 80 in laid on cores: 2 · 0.6096 · 2.032 = 2.4774 m², at 250 g/m²
// and a tenth more 681.3 g; both sides twice that; eight strips each of 3.175 mm
// add 2 · 7 · 0.003175 · 2.032 = 0.0903 m².
func TestGlue_amountOnCore(t *testing.T) {
	said := unit.Facts{
		unit.GlueClass: unit.Word("epoxy"), unit.StripThickness: unit.Number(3.175), unit.CoreKind: unit.Word("mdf"),
		unit.PanelWidth: unit.Number(609.6), unit.PanelLength: unit.Number(2032), unit.PanelCount: unit.Number(2),
	}
	a := mustAnswer(t, engine.Glue, said)
	wantTriple(t, a, unit.JointArea, 2.4774, 2.4774, 2.4774, 1e-4)
	if mid := *a.Values[unit.GlueMass].(unit.Triple).Mid; !(math.Abs(mid-681.3) <= 0.1) || !hasAdvice(a, engine.ReasonEdgesNotCounted) {
		t.Errorf("glue %g g, advice %v; want 681.3 g and a word on the edges", mid, a.Advice)
	}
	bare := said.Clone()
	delete(bare, unit.StripThickness)
	bare[unit.StripCount] = unit.Number(8)
	wantTriple(t, mustAnswer(t, engine.Glue, bare), unit.JointArea, 2.4774, 2.4774, 2.4774, 1e-4)
	said[unit.Faces] = unit.Number(2)
	wantTriple(t, mustAnswer(t, engine.Glue, said), unit.JointArea, 4.9548, 4.9548, 4.9548, 1e-4)
	said[unit.Faces], said[unit.StripCount] = unit.Number(1), unit.Number(8)
	wantTriple(t, mustAnswer(t, engine.Glue, said), unit.JointArea, 2.5677, 2.5677, 2.5677, 1e-4)
}

func TestGlue_temperature(t *testing.T) {
	for _, c := range []struct {
		class string
		T     float64
		v     engine.Verdict
		r     engine.Reason
	}{
		{"polyurethane", 8, engine.Stop, engine.ReasonTooCold},
		{"polyurethane", 10, engine.Good, engine.ReasonWarmEnough},
		{"polyurethane", 12, engine.Good, engine.ReasonWarmEnough},
		{"pva", 9.9, engine.Stop, engine.ReasonTooCold},
		{"pva", 10, engine.Care, engine.ReasonMayChalk},
		{"crosslinked-pva", 15.9, engine.Care, engine.ReasonMayChalk},
		{"aliphatic", 12.7777777, engine.Care, engine.ReasonMayChalk},
		{"aliphatic", 16, engine.Good, engine.ReasonWarmEnough},
		{"urea-formaldehyde", 18, engine.Stop, engine.ReasonTooCold},
		{"hot-hide", 20, engine.Care, engine.ReasonGelsFast},
		{"hot-hide", 21, engine.Good, engine.ReasonWarmEnough},
		{"casein", 6, engine.Good, engine.ReasonWarmEnough},
	} {
		a := mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word(c.class), unit.ShopTemp: unit.Number(c.T)})
		wantCheck(t, a, "temperature", c.v, c.r)
		if a.Verdict != c.v || len(a.Needs) > 0 {
			t.Errorf("%s at %g °C: %s, needs %v; want %s", c.class, c.T, a.Verdict, a.Needs, c.v)
		}
	}
	fifty := float64(unit.Fahrenheit(50)) // 10 °C but for the last digit
	wantCheck(t, mustAnswer(t, engine.Glue, unit.Facts{unit.ShopTemp: unit.Number(fifty), unit.GlueClass: unit.Word("polyurethane")}),
		"temperature", engine.Good, engine.ReasonWarmEnough)
	wantCheck(t, mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("pva")}), "temperature", "", "")
}

func TestGlue_woodMoisture(t *testing.T) {
	for m, want := range map[float64]struct {
		v engine.Verdict
		r engine.Reason
	}{
		3.9: {engine.Stop, engine.ReasonWoodTooDry}, 4: {engine.Care, engine.ReasonWoodEdge}, 5.9: {engine.Care, engine.ReasonWoodEdge},
		6: {engine.Good, engine.ReasonWoodDryEnough}, 14: {engine.Good, engine.ReasonWoodDryEnough}, 14.1: {engine.Care, engine.ReasonWoodEdge},
		15: {engine.Care, engine.ReasonWoodEdge}, 16: {engine.Care, engine.ReasonWoodEdge}, 16.1: {engine.Stop, engine.ReasonWoodTooWet},
	} {
		a := mustAnswer(t, engine.Glue, unit.Facts{unit.WoodMoisture: unit.Number(m), unit.Species: unit.Word("white oak")})
		wantCheck(t, a, "wood moisture", want.v, want.r)
		if a.Verdict != want.v {
			t.Errorf("%g %%: %s, want %s", m, a.Verdict, want.v)
		}
	}
}

func TestGlue_unevenMoisture(t *testing.T) {
	for high, want := range map[float64]struct {
		v engine.Verdict
		r engine.Reason
	}{10: {engine.Good, engine.ReasonWoodEven}, 10.5: {engine.Care, engine.ReasonWoodUneven}, 17: {engine.Care, engine.ReasonWoodUneven}} {
		a := mustAnswer(t, engine.Glue, unit.Facts{unit.WoodMoistureLow: unit.Number(8), unit.WoodMoistureHigh: unit.Number(high)})
		wantCheck(t, a, "even moisture", want.v, want.r)
		if high == 17 {
			wantCheck(t, a, "wood moisture", engine.Stop, engine.ReasonWoodTooWet)
		}
	}
}

// The air of 70 % brings wood to 13.1 % (Wood Handbook Table 4-2, 70 °F), so that
// at 16 % it is still drying.
func TestGlue_woodOffBalance(t *testing.T) {
	a := mustAnswer(t, engine.Glue, unit.Facts{unit.WoodMoisture: unit.Number(16), unit.ShopHumidity: unit.Number(70), unit.GlueClass: unit.Word("pva")})
	wantTriple(t, a, unit.Emc, 13.1, 13.1, 13.1, 0.1)
	if a.Verdict != engine.Care || !hasAdvice(a, engine.ReasonWoodOffBalance) {
		t.Errorf("%s with %v, want care and a word on the wood's balance", a.Verdict, a.Advice)
	}
}

// Aliphatic closes in 5, 12 and 20 min: good to 0.7 · 300 = 210 s, care to 720 s.
// A panel takes 60 s and 20 s a joint.
func TestGlue_layup(t *testing.T) {
	for n, want := range map[int]struct {
		v engine.Verdict
		r engine.Reason
	}{
		8: {engine.Good, engine.ReasonLayupWithin}, 9: {engine.Care, engine.ReasonLayupTight},
		34: {engine.Care, engine.ReasonLayupTight}, 35: {engine.Stop, engine.ReasonLayupTooLong},
	} {
		a := mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("aliphatic"), unit.ShopTemp: unit.Number(20), unit.StripCount: unit.Number(n)})
		wantCheck(t, a, "lay-up", want.v, want.r)
		layup := 60 + 20*float64(n-1)
		wantTriple(t, a, unit.LayupPanel, layup, layup, layup, 1e-9)
	}
}

// A load's lay-up is that of its panels and 5 min to pull down: 3 · (60 + 4 · 20)
// + 300 = 720 s, just the 12 min; one panel more is too long.
func TestGlue_layupOfLoad(t *testing.T) {
	for panels, want := range map[int]struct {
		v engine.Verdict
		r engine.Reason
	}{3: {engine.Care, engine.ReasonLayupTight}, 4: {engine.Stop, engine.ReasonLayupTooLong}} {
		a := mustAnswer(t, engine.Load, unit.Facts{
			unit.GlueClass: unit.Word("aliphatic"), unit.ShopTemp: unit.Number(20), unit.PanelCount: unit.Number(panels),
			unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(20), unit.Vacuum: unit.Number(80),
		})
		wantCheck(t, a, "lay-up", want.v, want.r)
	}
}

// Six panels of 180 s are 1080 s, beyond the 12 min of PVA at 20 °C; two are within them.
func TestGlue_notInOneLoad(t *testing.T) {
	for panels, want := range map[int]bool{1: false, 2: false, 6: true} {
		a := mustAnswer(t, engine.Glue, unit.Facts{
			unit.GlueClass: unit.Word("aliphatic"), unit.ShopTemp: unit.Number(20), unit.PanelCount: unit.Number(panels), unit.LayupPanel: unit.Number(180),
		})
		wantCheck(t, a, "lay-up", engine.Good, engine.ReasonLayupWithin)
		warned := slices.ContainsFunc(a.Advice, func(f engine.Finding) bool { return f.Reason == engine.ReasonNotInOneLoad })
		if warned != want {
			t.Errorf("%d panels: warned %v, want %v", panels, warned, want)
		}
	}
}

func TestGlue_gapAndPressTime(t *testing.T) {
	a := mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("pva"), unit.Gap: unit.Number(0.15)})
	wantCheck(t, a, "gap", engine.Good, engine.ReasonGapBridged)
	a = mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("pva"), unit.Gap: unit.Number(0.2)})
	wantCheck(t, a, "gap", engine.Care, engine.ReasonGapTooWide)
	for minutes, want := range map[float64]struct {
		v engine.Verdict
		r engine.Reason
	}{180: {engine.Good, engine.ReasonPressedLongEnough}, 120: {engine.Care, engine.ReasonPressedBarely}, 60: {engine.Stop, engine.ReasonPressedTooShort}} {
		a := mustAnswer(t, engine.Glue, unit.Facts{unit.ShopTemp: unit.Number(20), unit.PressTime: unit.Number(minutes)})
		wantCheck(t, a, "press time", want.v, want.r) // pva: 30, 90, 180 min
	}
}

// An amount needs the panel's size; a word on the cold does not.
func TestGlue_needs(t *testing.T) {
	a := mustAnswer(t, engine.Glue, unit.Facts{unit.PanelCount: unit.Number(8)})
	if want := []unit.Field{unit.PanelWidth, unit.PanelLength, unit.StripWidth, unit.StripThickness}; a.Verdict != engine.Ask || !slices.Equal(a.Needs, want) {
		t.Errorf("%s, needs %v; want ask and %v", a.Verdict, a.Needs, want)
	}
	a = mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("epoxy"), unit.CoreKind: unit.Word("mdf"), unit.PanelWidth: unit.Number(600)})
	if want := []unit.Field{unit.PanelLength}; !slices.Equal(a.Needs, want) {
		t.Errorf("needs %v, want %v", a.Needs, want)
	}
	a = mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word("pva")})
	if len(a.Needs) > 0 || len(a.Lacks[unit.GlueMass]) == 0 {
		t.Errorf("needs %v, the amount lacks %v; want no need and the lack noted", a.Needs, a.Lacks[unit.GlueMass])
	}
	asked, err := engine.Compute(engine.Question{About: engine.Glue, Said: unit.Facts{}, For: []unit.Field{unit.GlueMass}})
	if err != nil || asked.Verdict != engine.Ask {
		t.Errorf("asked how much: %s, needs %v (%v); want ask", asked.Verdict, asked.Needs, err)
	}
}

func TestGlue_cautions(t *testing.T) {
	for class, want := range map[string]engine.Caution{
		"pva": engine.CautionLabel, "urea-formaldehyde": engine.CautionFormaldehyde, "resorcinol": engine.CautionFlammable,
		"polyurethane": engine.CautionIsocyanate, "epoxy": engine.CautionEpoxySkin, "hot-hide": engine.CautionHotGlue,
	} {
		if a := mustAnswer(t, engine.Glue, unit.Facts{unit.GlueClass: unit.Word(class)}); !hasCaution(a, want) || hasCaution(a, "") {
			t.Errorf("%s warns of %q, want %q among them", class, a.Cautions, want)
		}
	}
}

func ExampleCompute_glue() {
	a, err := engine.Compute(engine.Question{About: engine.Glue, Said: eightPanels()})
	fmt.Printf("%.0f g %v\n", *a.Values[unit.GlueMass].(unit.Triple).Mid, err)
	// Output: 358 g <nil>
}

func BenchmarkCompute_glue(b *testing.B) {
	q := engine.Question{About: engine.Glue, Said: eightPanels()}
	for b.Loop() {
		if _, err := engine.Compute(q); err != nil {
			b.Fatal(err)
		}
	}
}

package engine_test

import (
	"errors"
	"math"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// 25 inHg is 84.66 kPa, 12.279 psi and 0.8841 short ton on the square foot (NIST
// SP 811); a dial of class 2.5 is out by 2.54 kPa; 4 × 8 ft are 2.97290 m².
func TestFace_sheetAt25InHg(t *testing.T) {
	a := mustAnswer(t, engine.Face, unit.Facts{
		unit.Vacuum: unit.Number(84.659725), unit.PanelWidth: unit.Number(1219.2), unit.PanelLength: unit.Number(2438.4),
	})
	wantTriple(t, a, unit.Ambient, 99.325, 101.325, 103.325, 1e-9)
	wantTriple(t, a, unit.FacePressure, 82.119725, 84.659725, 87.199725, 1e-9)
	wantTriple(t, a, unit.FaceTonsPerSquareFoot, 82.119725/95.760518, 0.8841, 87.199725/95.760518, 5e-5)
	wantTriple(t, a, unit.FaceForce, 82119.725*2.97290, 84659.725*2.97290, 87199.725*2.97290, 2)
	if a.Verdict != engine.None || len(a.Needs) != 0 {
		t.Errorf("verdict %s, needs %v; want none and nothing", a.Verdict, a.Needs)
	}
	if got := a.Assumed[unit.Altitude]; got != unit.Number(0) {
		t.Errorf("assumed altitude is %v, want 0", got)
	}
}

// At 5000 ft the air has 12.23 psia (published table): the per cent and the
// absolute reading hang on it, with 2 kPa of weather, and a barometer is exact.
func TestFace_waysToSayTheVacuum(t *testing.T) {
	high := unit.Facts{unit.Altitude: unit.Number(1524), unit.VacuumPercent: unit.Number(85)}
	pa := 12.23 * 6.894757
	wantTriple(t, mustAnswer(t, engine.Face, high), unit.FacePressure, 0.85*(pa-2), 0.85*pa, 0.85*(pa+2), 0.03)

	absolute := unit.Facts{unit.Altitude: unit.Number(1524), unit.VacuumAbsolute: unit.Number(15)}
	wantTriple(t, mustAnswer(t, engine.Face, absolute), unit.FacePressure, pa-17, pa-15, pa-13, 0.03)

	absolute[unit.Ambient] = unit.Number(84)
	wantTriple(t, mustAnswer(t, engine.Face, absolute), unit.FacePressure, 69, 69, 69, 1e-9)
}

// More than the height allows is answered with stop, at what the air has.
func TestFace_moreVacuumThanAir(t *testing.T) {
	for said, want := range map[float64]engine.Reason{
		90: engine.ReasonVacuumAboveAmbient, 84: engine.ReasonVacuumAboveAmbient, 82: engine.ReasonVacuumNearAmbient,
	} {
		a := mustAnswer(t, engine.Face, unit.Facts{unit.Ambient: unit.Number(84), unit.Vacuum: unit.Number(said)})
		v := engine.Care
		if said >= 84 {
			v = engine.Stop
		}
		wantCheck(t, a, "vacuum", v, want)
		if top := *a.Values[unit.FacePressure].(unit.Triple).High; top > 84 {
			t.Errorf("face pressure reaches %g kPa under 84 kPa of air", top)
		}
	}
	within := mustAnswer(t, engine.Face, unit.Facts{unit.Ambient: unit.Number(84), unit.Vacuum: unit.Number(79)})
	wantCheck(t, within, "vacuum", "", "")
	if !hasAdvice(within, engine.ReasonVacuumWithin) {
		t.Errorf("advice %v, want what the air here allows", within.Advice)
	}
}

// Steam tables: water boils at 2.49 kPa at 21 °C and at 7.38 kPa at 40 °C.
func TestFace_waterBoils(t *testing.T) {
	for _, c := range []struct {
		left, T float64
		glue    string
		v       engine.Verdict
		r       engine.Reason
	}{
		{2.2, 21, "pva", engine.Stop, engine.ReasonBoils},
		{3.0, 21, "pva", engine.Care, engine.ReasonBoilsNear},
		{7.0, 40, "pva", engine.Stop, engine.ReasonBoils},
		{12, 21, "pva", "", ""},
		{2.2, 21, "epoxy", "", ""},
	} {
		a := mustAnswer(t, engine.Face, unit.Facts{
			unit.Ambient: unit.Number(101), unit.Vacuum: unit.Number(101 - c.left),
			unit.ShopTemp: unit.Number(c.T), unit.GlueClass: unit.Word(c.glue),
		})
		wantCheck(t, a, "water", c.v, c.r)
	}
}

// A face line wants 70 kPa: good from there, care from half of it; resorcinol
// never better than care.
func TestFace_glueLine(t *testing.T) {
	for _, c := range []struct {
		vacuum float64
		glue   string
		v      engine.Verdict
		r      engine.Reason
	}{
		{75, "pva", engine.Good, engine.ReasonFaceContact},
		{60, "pva", engine.Care, engine.ReasonFaceNearContact},
		{34, "pva", engine.Stop, engine.ReasonFaceUnderContact},
		{34, "epoxy", engine.Good, engine.ReasonFaceContact},
		{80, "resorcinol", engine.Care, engine.ReasonFaceWantsClamps},
	} {
		a := mustAnswer(t, engine.Face, unit.Facts{unit.Vacuum: unit.Number(c.vacuum), unit.GlueClass: unit.Word(c.glue)})
		wantCheck(t, a, "face", c.v, c.r)
	}
}

func TestStatedVacuum_percentAndAbsolute(t *testing.T) {
	for _, c := range []struct {
		said, room unit.Facts
		want       float64
	}{
		{unit.Facts{unit.Vacuum: unit.Number(80)}, nil, 80},
		{unit.Facts{unit.VacuumPercent: unit.Number(90), unit.Ambient: unit.Number(90)}, nil, 81},
		{unit.Facts{unit.VacuumAbsolute: unit.Number(20)}, unit.Facts{unit.Ambient: unit.Number(95)}, 75},
		{unit.Facts{unit.VacuumAbsolute: unit.Number(20), unit.Ambient: unit.Number(100)}, unit.Facts{unit.Ambient: unit.Number(95)}, 80},
	} {
		p, ok := engine.StatedVacuum(c.said, c.room)
		if !ok || math.Abs(p.Kilopascals()-c.want) > 1e-9 {
			t.Errorf("%v in %v: %g kPa %v, want %g", c.said, c.room, p.Kilopascals(), ok, c.want)
		}
	}
	if _, ok := engine.StatedVacuum(unit.Facts{unit.BarHeight: unit.Number(25)}); ok {
		t.Error("a bar alone states a vacuum")
	}
}

func TestCompute_refuses(t *testing.T) {
	var r *unit.RangeError
	for _, said := range []unit.Facts{
		{unit.Vacuum: unit.Number(math.NaN())}, {unit.Vacuum: unit.Number(math.Inf(1))}, {unit.Vacuum: unit.Number(-5)},
		{unit.Vacuum: unit.Number(50), unit.Altitude: unit.Number(20000)}, {unit.VacuumAbsolute: unit.Number(150)},
	} {
		if _, err := engine.Compute(engine.Question{About: engine.Face, Said: said}); !errors.As(err, &r) {
			t.Errorf("%v: error is %v, want a range error", said, err)
		}
	}
	if _, err := engine.Compute(engine.Question{About: "tea"}); err == nil {
		t.Error("a topic that does not exist is answered")
	}
}

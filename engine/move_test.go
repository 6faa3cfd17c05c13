package engine_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

func walnutTop() unit.Facts {
	return unit.Facts{
		unit.PanelWidth: unit.Number(914.4), unit.Species: unit.Word("walnut"), unit.Sawn: unit.Word("flat"),
		unit.WoodMoisture: unit.Number(8), unit.ServiceHumidity: unit.Number(40), unit.ServiceTemp: unit.Number(21.1111),
	}
}

// Wood Handbook Table 4-2 prints 7.7 % for 70 °F and 40 %: 914.4 · 0.00274 · (−0.3)
// = −0.752 mm; the table's last digit is worth 0.1 · 0.00274 · 914.4 = 0.25 mm.
func TestMove_walnutTop(t *testing.T) {
	a := mustAnswer(t, engine.Move, walnutTop())
	wantTriple(t, a, unit.Emc, 7.7, 7.7, 7.7, 0.1)
	wantTriple(t, a, unit.WidthChange, -0.752, -0.752, -0.752, 0.25)
	if a.Verdict != engine.None || len(a.Needs) > 0 {
		t.Errorf("%s, needs %v; want a plain figure", a.Verdict, a.Needs)
	}
}

// The cut unsaid: the ends at C_R 0.00190 and C_T 0.00274, the middle at 0.00232;
// all in proportion to the flat sawn figure. Numerically ordered: shrinking, the
// most comes first.
func TestMove_cutUnsaid(t *testing.T) {
	flat := *mustAnswer(t, engine.Move, walnutTop()).Values[unit.WidthChange].(unit.Triple).Mid
	said := walnutTop()
	delete(said, unit.Sawn)
	a := mustAnswer(t, engine.Move, said)
	wantTriple(t, a, unit.WidthChange, flat, flat*232/274, flat*190/274, 1e-9)
	if !hasAdvice(a, engine.ReasonCutUnsaid) {
		t.Errorf("advice %v, want a word on the cut", a.Advice)
	}
	said[unit.Sawn] = unit.Word("quarter")
	wantTriple(t, mustAnswer(t, engine.Move, said), unit.WidthChange, flat*190/274, flat*190/274, flat*190/274, 1e-9)
}

// Pieces from 6 to 10 % in air of 7.7: some swell and some shrink. At C_T 0.00274
// on 914.4 mm from 10: −5.76, from 6: +4.26, from the middle of 8: −0.75 mm.
func TestMove_piecesDiffer(t *testing.T) {
	said := walnutTop()
	delete(said, unit.WoodMoisture)
	said[unit.WoodMoistureLow], said[unit.WoodMoistureHigh] = unit.Number(6), unit.Number(10)
	wantTriple(t, mustAnswer(t, engine.Move, said), unit.WidthChange, -5.76, -0.75, 4.26, 0.03)
}

func TestMove_outsidePublishedRange(t *testing.T) {
	said := walnutTop()
	said[unit.WoodMoisture] = unit.Number(15)
	wantCheck(t, mustAnswer(t, engine.Move, said), "moisture range", engine.Care, engine.ReasonOutsideMovingRange)
	said = walnutTop()
	said[unit.ServiceHumidity] = unit.Number(20) // 4.5 % in Table 4-2
	wantCheck(t, mustAnswer(t, engine.Move, said), "moisture range", engine.Care, engine.ReasonOutsideMovingRange)
	wantCheck(t, mustAnswer(t, engine.Move, walnutTop()), "moisture range", "", "")
}

// A question about air alone is answered with the moisture alone; Table 4-2 prints
// 9.2 % for 70 °F and 50 %.
func TestMove_airAlone(t *testing.T) {
	a := mustAnswer(t, engine.Move, unit.Facts{unit.ShopHumidity: unit.Number(50), unit.ShopTemp: unit.Number(21.1111)})
	wantTriple(t, a, unit.Emc, 9.2, 9.2, 9.2, 0.1)
	if len(a.Needs) > 0 || len(a.Values) != 1 {
		t.Errorf("values %v, needs %v; want the moisture alone", a.Values, a.Needs)
	}
}

// Frost is below the published table and a kiln above it: the end of the table stands in,
// and calls for care.
func TestMove_beyondTheTable(t *testing.T) {
	a := mustAnswer(t, engine.Move, unit.Facts{unit.ShopHumidity: unit.Number(50), unit.ShopTemp: unit.Number(-15)})
	wantTriple(t, a, unit.Emc, 9.5, 9.5, 9.5, 0.15) // Table 4-2, 30 °F and 50 %
	wantCheck(t, a, "air", engine.Care, engine.ReasonAirHeld)
	said := walnutTop()
	wantCheck(t, mustAnswer(t, engine.Move, said), "air", "", "")
	said[unit.ServiceTemp] = unit.Number(140)
	a = mustAnswer(t, engine.Move, said)
	wantCheck(t, a, "air", engine.Care, engine.ReasonAirHeld)
	if a.Verdict != engine.Care || !a.Values.Has(unit.WidthChange) {
		t.Errorf("verdict %s, values %v; want care and the width's change", a.Verdict, a.Values)
	}
}

// Wood that nobody measured comes from the shop's air when it goes elsewhere.
func TestMove_fromShopToHouse(t *testing.T) {
	said := walnutTop()
	delete(said, unit.WoodMoisture)
	said[unit.ShopHumidity], said[unit.ShopTemp] = unit.Number(50), unit.Number(21.1111)
	a := mustAnswer(t, engine.Move, said)
	wantTriple(t, a, unit.WidthChange, -3.76, -3.76, -3.76, 0.5) // 914.4 · 0.00274 · (7.7 − 9.2), two printed digits
	if m, ok := a.Assumed.Number(unit.WoodMoisture); !ok || !(math.Abs(m-9.2) <= 0.1) {
		t.Errorf("assumed %v, want wood of 9.2 %%", a.Assumed)
	}
}

func TestMove_needs(t *testing.T) {
	for name, c := range map[string]struct {
		said unit.Facts
		want []unit.Field
	}{
		"width alone": {unit.Facts{unit.PanelWidth: unit.Number(914.4)}, []unit.Field{unit.WoodMoisture, unit.ServiceHumidity}},
		"no moisture": {unit.Facts{unit.PanelWidth: unit.Number(914.4), unit.ServiceHumidity: unit.Number(40)}, []unit.Field{unit.WoodMoisture}},
		"no air":      {unit.Facts{unit.PanelWidth: unit.Number(914.4), unit.WoodMoisture: unit.Number(8)}, []unit.Field{unit.ServiceHumidity}},
		"warmth":      {unit.Facts{unit.ShopTemp: unit.Number(20)}, []unit.Field{unit.ServiceHumidity}},
		"no core": {unit.Facts{unit.PanelWidth: unit.Number(457), unit.WoodMoisture: unit.Number(8), unit.ServiceHumidity: unit.Number(30), unit.CoreKind: unit.Word("mdf")},
			[]unit.Field{unit.StripThickness, unit.CoreThickness}},
	} {
		a := mustAnswer(t, engine.Move, c.said)
		if !slices.Equal(a.Needs, c.want) || a.Verdict != engine.Ask {
			t.Errorf("%s: %s, needs %v; want ask, %v", name, a.Verdict, a.Needs, c.want)
		}
	}
}

func TestMove_refuses(t *testing.T) {
	for f, v := range map[unit.Field]float64{unit.PanelWidth: -1, unit.WoodMoisture: 120, unit.ServiceHumidity: 130} {
		said := walnutTop()
		said[f] = unit.Number(v)
		if a, err := engine.Compute(engine.Question{About: engine.Move, Said: said}); err == nil {
			t.Errorf("%s of %g gives %v, want an error", f, v, a.Values)
		}
	}
}

func ExampleCompute_move() {
	a, err := engine.Compute(engine.Question{About: engine.Move, Said: walnutTop()})
	fmt.Printf("%.1f %% %v\n", *a.Values[unit.Emc].(unit.Triple).Mid, err)
	// Output: 7.7 % <nil>
}

func BenchmarkCompute_move(b *testing.B) {
	q := engine.Question{About: engine.Move, Said: cherryOnPly()}
	for b.Loop() {
		if _, err := engine.Compute(q); err != nil {
			b.Fatal(err)
		}
	}
}

package engine_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand: 1000 l, a pump rated 100 l/s without a limit, no leak, from 100 kPa to
// 10: 10 s · ln 10 = 23.026 s at its rating, /0.85 = 27.089, /0.7 = 32.894.
func TestPump_byHand(t *testing.T) {
	a := mustAnswer(t, engine.Pump, tenth())
	wantTriple(t, a, unit.Pump, 23.026, 27.089, 32.894, 0.001)
	wantTriple(t, a, unit.UltimateVacuum, 100, 100, 100, 1e-9)
	wantCheck(t, a, "pump", engine.Good, engine.ReasonPumpReaches)
	if len(a.Assumed) > 0 {
		t.Errorf("assumed %v, want nothing", a.Assumed)
	}
}

func tenth() unit.Facts {
	return unit.Facts{
		unit.PressVolume: unit.Number(1000), unit.PumpSpeed: unit.Number(100), unit.PumpLimit: unit.Number(0),
		unit.Ambient: unit.Number(100), unit.Vacuum: unit.Number(90),
	}
}

// 100 l at 6 kPa/min, 100 Pa/s, leak 10 Pa m³/s; a pump rated 2 l/s without a
// limit leaves 5000 Pa at its rating, 5882 at 0.85 and 7143 at 0.7 of it.
func TestPump_leak(t *testing.T) {
	for vacuum, want := range map[float64]struct {
		v engine.Verdict
		r engine.Reason
	}{
		92: {engine.Good, engine.ReasonPumpReaches}, 94: {engine.Care, engine.ReasonPumpMayNotReach},
		94.5: {engine.Stop, engine.ReasonPumpCannotReach}, 96: {engine.Stop, engine.ReasonPumpCannotReach},
	} {
		a := mustAnswer(t, engine.Pump, unit.Facts{
			unit.PressVolume: unit.Number(100), unit.Leak: unit.Number(6), unit.PumpSpeed: unit.Number(2), unit.PumpLimit: unit.Number(0),
			unit.Ambient: unit.Number(100), unit.Vacuum: unit.Number(vacuum),
		})
		wantTriple(t, a, unit.UltimateVacuum, 92.857, 94.118, 95, 0.001)
		wantCheck(t, a, "pump", want.v, want.r)
		pump, given := a.Values[unit.Pump].(unit.Triple)
		low, mid, high := vacuum < 95, vacuum < 94.118, vacuum < 92.857
		if given != low || given && ((pump.Low != nil) != low || (pump.Mid != nil) != mid || (pump.High != nil) != high) {
			t.Errorf("to %g kPa: %v; want ends %v, %v, %v", vacuum, pump, low, mid, high)
		}
		if a.Verdict != want.v {
			t.Errorf("to %g kPa: %s, want %s", vacuum, a.Verdict, want.v)
		}
	}
}

// The ends are the least and the most that a dense grid over pump, limit and
// weather finds with the closed form written out here.
func TestPump_rangeAgainstGrid(t *testing.T) {
	const V, rated, r, vacuum = 0.2265, 0.00236, 12.0, 78e3
	a := mustAnswer(t, engine.Pump, unit.Facts{
		unit.PressVolume: unit.Number(V * 1000), unit.PumpSpeed: unit.Number(rated * 1000), unit.Leak: unit.Number(r * 60 / 1000), unit.Vacuum: unit.Number(vacuum / 1000),
	})
	least, most := math.Inf(1), math.Inf(-1)
	deep, shallow := math.Inf(-1), math.Inf(1)
	const n = 24
	for i := 0; i <= n; i++ {
		for j := 0; j <= n; j++ {
			for k := 0; k <= n; k++ {
				S := rated * (0.7 + 0.3*float64(i)/n)
				limit := 1e3 + 9e3*float64(j)/n
				pa := 101325 + 4e3*(float64(k)/n-0.5)
				floor := limit + V*r/S
				t := V / S * math.Log((pa-floor)/(pa-vacuum-floor))
				least, most = math.Min(least, t), math.Max(most, t)
				deep, shallow = math.Max(deep, pa-floor), math.Min(shallow, pa-floor)
			}
		}
	}
	mid := V / (0.85 * rated) * math.Log((101325-4e3-V*r/(0.85*rated))/(101325-vacuum-4e3-V*r/(0.85*rated)))
	wantTriple(t, a, unit.Pump, least, mid, most, 1e-6*most)
	wantTriple(t, a, unit.UltimateVacuum, shallow/1000, (101325-4e3-V*r/(0.85*rated))/1000, deep/1000, 1e-9*deep)
}

// 85 kPa down to pva's 70 at 1 kPa a minute: 15 min on a dial give or take 2.54
// kPa; a dial never shows more than the air.
func TestPump_powerCut(t *testing.T) {
	said := unit.Facts{unit.Vacuum: unit.Number(85), unit.Leak: unit.Number(1), unit.Ambient: unit.Number(100), unit.GlueClass: unit.Word("pva"), unit.ShopTemp: unit.Number(20)}
	a := mustAnswer(t, engine.Pump, said)
	wantTriple(t, a, unit.Hold, 60*12.46, 900, 60*17.54, 1e-6)
	if a.Verdict != engine.None || len(a.Needs) > 0 || !hasAdvice(a, engine.ReasonHoldAgainstPress) || !hasCaution(a, engine.CautionPowerCut) {
		t.Errorf("%s, needs %v, advice %v, cautions %v; want a plain figure, the glue's time beside it, a warning", a.Verdict, a.Needs, a.Advice, a.Cautions)
	}
	said[unit.Vacuum] = unit.Number(99)
	wantTriple(t, mustAnswer(t, engine.Pump, said), unit.Hold, 60*26.46, 60*29, 60*30, 1e-6)
	said[unit.Vacuum] = unit.Number(60)
	below := mustAnswer(t, engine.Pump, said)
	wantTriple(t, below, unit.Hold, 0, 0, 0, 0)
	if !hasAdvice(below, engine.ReasonBelowContact) {
		t.Errorf("60 kPa on pva: advice %v, want a word that it is below contact", below.Advice)
	}
	said[unit.GlueClass] = unit.Word("epoxy") // 10 kPa is enough
	wantTriple(t, mustAnswer(t, engine.Pump, said), unit.Hold, 60*47.46, 60*50, 60*52.54, 1e-6)
}

// A pump's target carries no dial error; a target read against the air does.
func TestPump_holdFromTarget(t *testing.T) {
	said := unit.Facts{
		unit.Vacuum: unit.Number(85), unit.Leak: unit.Number(1), unit.Ambient: unit.Number(100), unit.PumpSpeed: unit.Number(5), unit.PressVolume: unit.Number(100),
	}
	wantTriple(t, mustAnswer(t, engine.Pump, said), unit.Hold, 900, 900, 900, 1e-6)
}

func TestPump_noLeakHoldsForEver(t *testing.T) {
	a := mustAnswer(t, engine.Pump, unit.Facts{unit.Vacuum: unit.Number(85), unit.Leak: unit.Number(0)})
	if _, given := a.Values[unit.Hold]; given || !hasAdvice(a, engine.ReasonNoLeak) {
		t.Errorf("hold %v, advice %v; want none and a word that nothing leaks", a.Values[unit.Hold], a.Advice)
	}
}

// A frame 4 × 8 ft and 3 in deep holds 226.5 l; with a panel 600 × 1200 × 20 mm in
// it 14.4 l less. A bed that nobody named is 1220 × 2440 mm.
func TestPump_volume(t *testing.T) {
	frame := unit.Facts{unit.BedWidth: unit.Number(1219.2), unit.BedLength: unit.Number(2438.4), unit.Opening: unit.Number(76.2), unit.PumpSpeed: unit.Number(2.36), unit.Vacuum: unit.Number(80)}
	a := mustAnswer(t, engine.Pump, frame)
	wantTriple(t, a, unit.PressVolume, 226.535, 226.535, 226.535, 0.001)
	frame[unit.PanelWidth], frame[unit.PanelLength], frame[unit.StripThickness] = unit.Number(600), unit.Number(1200), unit.Number(20)
	wantTriple(t, mustAnswer(t, engine.Pump, frame), unit.PressVolume, 212.135, 212.135, 212.135, 0.001)
	unnamed := mustAnswer(t, engine.Pump, unit.Facts{unit.Opening: unit.Number(100), unit.PumpSpeed: unit.Number(2), unit.Vacuum: unit.Number(80)})
	wantTriple(t, unnamed, unit.PressVolume, 297.68, 297.68, 297.68, 0.001)
	if unnamed.Assumed[unit.BedWidth] != unit.Number(1220) || unnamed.Assumed[unit.BedLength] != unit.Number(2440) {
		t.Errorf("assumed %v, want the bed", unnamed.Assumed)
	}
	bag := mustAnswer(t, engine.Pump, unit.Facts{unit.BagWidth: unit.Number(1000), unit.BagLength: unit.Number(2000), unit.PumpSpeed: unit.Number(2), unit.Vacuum: unit.Number(80)})
	wantTriple(t, bag, unit.PressVolume, 20, 50, 100, 1e-9)
}

// What a message says comes before what the room keeps, the one volume too.
func TestPump_saidBeforeRoom(t *testing.T) {
	a, err := engine.Compute(engine.Question{
		About: engine.Pump,
		Said:  unit.Facts{unit.Opening: unit.Number(100), unit.Vacuum: unit.Number(80)},
		Room:  unit.Facts{unit.PressVolume: unit.Number(999), unit.PumpSpeed: unit.Number(2), unit.BedWidth: unit.Number(1000), unit.BedLength: unit.Number(1000)},
	})
	if err != nil {
		t.Fatal(err)
	}
	wantTriple(t, a, unit.PressVolume, 100, 100, 100, 1e-9)
	if _, used := a.Assumed[unit.PressVolume]; used || a.Assumed[unit.PumpSpeed] != unit.Number(2) {
		t.Errorf("assumed %v, want the pump and the bed, not the volume", a.Assumed)
	}
}

// 15 kPa absolute stays so whatever the barometer; 85 % follows it.
func TestPump_targetKinds(t *testing.T) {
	said := tenth()
	delete(said, unit.Vacuum)
	said[unit.VacuumAbsolute] = unit.Number(10)
	wantTriple(t, mustAnswer(t, engine.Pump, said), unit.Pump, 23.026, 27.089, 32.894, 0.001)
	said[unit.Ambient] = unit.Number(80) // ln 8 · 10 s = 20.794 s
	wantTriple(t, mustAnswer(t, engine.Pump, said), unit.Pump, 20.794, 24.464, 29.706, 0.001)
	delete(said, unit.VacuumAbsolute)
	said[unit.VacuumPercent] = unit.Number(90)
	wantTriple(t, mustAnswer(t, engine.Pump, said), unit.Pump, 23.026, 27.089, 32.894, 0.001)
}

func TestPump_needs(t *testing.T) {
	for name, c := range map[string]struct {
		said unit.Facts
		want []unit.Field
	}{
		"nothing":           {unit.Facts{}, []unit.Field{unit.PumpSpeed, unit.PressVolume, unit.Vacuum}},
		"a vacuum":          {unit.Facts{unit.Vacuum: unit.Number(80)}, []unit.Field{unit.PumpSpeed, unit.PressVolume}},
		"no pump":           {unit.Facts{unit.Vacuum: unit.Number(80), unit.Opening: unit.Number(90)}, []unit.Field{unit.PumpSpeed}},
		"no volume":         {unit.Facts{unit.Vacuum: unit.Number(80), unit.PumpSpeed: unit.Number(2)}, []unit.Field{unit.PressVolume}},
		"no vacuum":         {unit.Facts{unit.PumpSpeed: unit.Number(2), unit.PressVolume: unit.Number(90)}, []unit.Field{unit.Vacuum}},
		"how far":           {unit.Facts{unit.PumpSpeed: unit.Number(2), unit.PressVolume: unit.Number(90), unit.Leak: unit.Number(1)}, nil},
		"how far, where":    {unit.Facts{unit.PumpSpeed: unit.Number(2), unit.Leak: unit.Number(1)}, []unit.Field{unit.PressVolume}},
		"how long it holds": {unit.Facts{unit.Leak: unit.Number(1)}, []unit.Field{unit.Vacuum}},
	} {
		a := mustAnswer(t, engine.Pump, c.said)
		if !slices.Equal(a.Needs, c.want) || (a.Verdict == engine.Ask) != (len(c.want) > 0) {
			t.Errorf("%s: %s, needs %v; want %v", name, a.Verdict, a.Needs, c.want)
		}
	}
}

// Backwards at the middles, by hand: 10 s · ln 10/0.85 = 27.089 s at 100 l/s, so
// twice that asks for half the pump; 84 kPa holds pva's 70 for 20 min at 0.7 kPa
// a minute.
func TestPump_backwards(t *testing.T) {
	said := tenth()
	delete(said, unit.PumpSpeed)
	a, err := engine.SolveFor(engine.Question{About: engine.Pump, Said: said}, unit.PumpSpeed, unit.Facts{unit.Pump: unit.Number(54.178)})
	if err != nil {
		t.Fatal(err)
	}
	wantTriple(t, a, unit.PumpSpeed, 50, 50, 50, 0.01)
	a, err = engine.SolveFor(engine.Question{About: engine.Pump, Said: unit.Facts{unit.Vacuum: unit.Number(84)}}, unit.Leak, unit.Facts{unit.Hold: unit.Number(1200)})
	if err != nil {
		t.Fatal(err)
	}
	wantTriple(t, a, unit.Leak, 0.7, 0.7, 0.7, 1e-6)
}

func TestPump_refuses(t *testing.T) {
	for _, f := range []unit.Field{unit.PumpSpeed, unit.PressVolume, unit.Leak, unit.Ambient} {
		said := tenth()
		said[f] = unit.Number(-1)
		if a, err := engine.Compute(engine.Question{About: engine.Pump, Said: said}); err == nil {
			t.Errorf("%s of −1 gives %v, want an error", f, a.Values)
		}
	}
}

func ExampleCompute_pump() {
	a, err := engine.Compute(engine.Question{About: engine.Pump, Said: tenth()})
	fmt.Printf("%.1f s %s %v\n", *a.Values[unit.Pump].(unit.Triple).Mid, a.Verdict, err)
	// Output: 27.1 s good <nil>
}

func BenchmarkCompute_pump(b *testing.B) {
	q := engine.Question{About: engine.Pump, Said: unit.Facts{
		unit.PressVolume: unit.Number(226), unit.PumpSpeed: unit.Number(2.4), unit.Leak: unit.Number(1), unit.Vacuum: unit.Number(80),
	}}
	for b.Loop() {
		if _, err := engine.Compute(q); err != nil {
			b.Fatal(err)
		}
	}
}

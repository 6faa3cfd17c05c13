package engine_test

import (
	"math"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// figuresOf returns the figures of a check.
func figuresOf(t *testing.T, a engine.Answer, name string) unit.Facts {
	t.Helper()
	for _, c := range a.Checks {
		if c.Name == name {
			return c.Figures
		}
	}
	t.Fatalf("no check %q among %v", name, a.Checks)
	return nil
}

// onDial is one joint at 50 mm of strips 10 mm thick, a covered bar of 60 by 20 mm
// and friction 0.1 on a dial: p · (60 − 0.1 · 20 − 0.1 · 50)/10 = 5.3 p.
func onDial(kPa float64, more unit.Facts) unit.Facts {
	said := unit.Facts{
		unit.StripCount: unit.Number(2), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(10), unit.Vacuum: unit.Number(kPa),
		unit.BarHeight: unit.Number(60), unit.BarWidth: unit.Number(60), unit.Cover: unit.Number(60), unit.Tent: unit.Number(0), unit.FrictionStated: unit.Number(0.1),
	}
	for f, v := range more {
		said[f] = v
	}
	return said
}

// By hand with a bar 60 wide: (60 − 6 − 5)/10 = 4.9 p. Hide glue is clamped at 350
// kPa: 71 kPa on the dial give 335.5, 347.9 and 360.3, so the middle falls short
// where the most does not; at 71.5 it is 350.4.
func TestJoint_fullAtTheMiddle(t *testing.T) {
	hide := unit.Facts{unit.GlueClass: unit.Word("hot hide")}
	wantCheck(t, mustAnswer(t, engine.Side, onDial(71, hide)), "far joint", engine.Care, engine.ReasonJointHandTight)
	wantCheck(t, mustAnswer(t, engine.Side, onDial(71.5, hide)), "far joint", engine.Good, engine.ReasonJointFull)
}

// By hand: 14 kPa give 4.9 · 11.46, 14 and 16.54 = 56.154 to 81.046 kPa, of which
// (70 − 56.154)/24.892 = 55.62 % lie under 70.
func TestJoint_shareUnderContact(t *testing.T) {
	a := mustAnswer(t, engine.Side, onDial(14, nil))
	if got, _ := figuresOf(t, a, "far joint").Number(unit.UnderContact); math.Abs(got-55.62) > 0.01 {
		t.Errorf("%g %% under contact, want 55.62", got)
	}
}

// 72 on the dial may be 69.46, under the 70 of PVA's contact; 73 is 70.46 at least.
func TestFace_leastOfTheDial(t *testing.T) {
	for kPa, want := range map[float64]engine.Verdict{72: engine.Care, 73: engine.Good} {
		a := mustAnswer(t, engine.Face, unit.Facts{unit.Vacuum: unit.Number(kPa), unit.GlueClass: unit.Word("pva")})
		r := map[engine.Verdict]engine.Reason{engine.Care: engine.ReasonFaceMayFall, engine.Good: engine.ReasonFaceContact}[want]
		wantCheck(t, a, "face", want, r)
	}
	// resorcinol and melamine want clamps, however much the vacuum
	for _, class := range []string{"resorcinol", "melamine-urea"} {
		a := mustAnswer(t, engine.Face, unit.Facts{unit.Vacuum: unit.Number(85), unit.GlueClass: unit.Word(class)})
		wantCheck(t, a, "face", engine.Care, engine.ReasonFaceWantsClamps)
	}
}

// A wedge of 1 in 1.3 rises by 37.6°: twice the least friction angle, atan 0.3, is
// 33.4°, twice the middle one, atan 0.4, 43.6°. One of 1 in 1.6, 32.0°, stays.
func TestWedge_leastFriction(t *testing.T) {
	said := unit.Facts{unit.WedgeForce: unit.Number(1000), unit.StripThickness: unit.Number(20), unit.StripLength: unit.Number(1000), unit.WedgeRatio: unit.Number(1.3)}
	wantCheck(t, mustAnswer(t, engine.Side, said), "wedge", engine.Care, engine.ReasonWedgeSlips)
	said[unit.WedgeRatio] = unit.Number(1.6)
	wantCheck(t, mustAnswer(t, engine.Side, said), "wedge", engine.Good, engine.ReasonWedgeHolds)
}

// Of 100 kPa of air 95.2 is nearly all, 94.9 is not. At 21 °C water boils at 610.94 ·
// e^(17.625 · 21/264.04) = 2482 Pa; near it is 2482/0.7 = 3545 Pa: 96.6 kPa leave
// 3.4, 96.4 leave 3.6.
func TestAir_margins(t *testing.T) {
	near := func(kPa float64) engine.Answer {
		return mustAnswer(t, engine.Face, unit.Facts{unit.Ambient: unit.Number(100), unit.Vacuum: unit.Number(kPa), unit.GlueClass: unit.Word("pva"), unit.ShopTemp: unit.Number(21)})
	}
	wantCheck(t, near(95.2), "vacuum", engine.Care, engine.ReasonVacuumNearAmbient)
	wantCheck(t, near(94.9), "vacuum", "", "")
	wantCheck(t, near(96.6), "water", engine.Care, engine.ReasonBoilsNear)
	wantCheck(t, near(96.4), "water", "", "")
}

// A medium mat of 10 mm at 80 ± 2.54 kPa keeps 1 − p/(p + 3 σ25) of it: with 62 and
// 77.46 kPa 7.060 mm, with 48 and 80 6.429, with 34 and 82.54 5.527. Above a fence
// of 16 mm strips of 10 stand −0.473 to 0.429 to 1.060 proud, above one of 15 a
// millimetre more: neither is stopped, and neither is sure.
func TestStack_proudOnAMat(t *testing.T) {
	for fence, mid := range map[float64]float64{16: 0.429, 15: 1.429} {
		a := mustAnswer(t, engine.Stack, unit.Facts{unit.Vacuum: unit.Number(80), unit.StackLayers: unit.Layers{
			layer("sled", 19), layer("fence", fence), layer("strips", 10), layer("mat", 10), layer("sled", 19)}})
		wantCheck(t, a, "proud of the fence", engine.Care, engine.ReasonProudLittle)
		got := a.Values[unit.Proud].(unit.Triples)[0]
		if math.Abs(*got.Low-(mid-0.902)) > 0.002 || math.Abs(*got.Mid-mid) > 0.001 || math.Abs(*got.High-(mid+0.631)) > 0.002 {
			t.Errorf("proud %g %g %g, want %g to %g to %g", *got.Low, *got.Mid, *got.High, mid-0.902, mid, mid+0.631)
		}
	}
}

// Sled, strips and sled are 48 mm high; 6 mm over them is what a press should have.
func TestStack_clearance(t *testing.T) {
	for opening, want := range map[float64]engine.Verdict{47.9: engine.Stop, 48: engine.Care, 53.9: engine.Care, 54: engine.Good} {
		a := mustAnswer(t, engine.Stack, unit.Facts{unit.Opening: unit.Number(opening), unit.StackLayers: unit.Layers{
			layer("sled", 19), layer("strips", 10), layer("sled", 19)}})
		r := map[engine.Verdict]engine.Reason{engine.Stop: engine.ReasonTooHigh, engine.Care: engine.ReasonFitsBarely, engine.Good: engine.ReasonFits}[want]
		wantCheck(t, a, "height", want, r)
	}
}

// Sea level gives 99.325 to 103.325 kPa. A pump that stops at 4 ends at 95.325 at
// least and 97.325 at the middle: 95.8 it may not reach, 95.3 it does.
func TestPump_mayNotReach(t *testing.T) {
	for kPa, want := range map[float64]engine.Verdict{95.8: engine.Care, 95.3: engine.Good, 97.4: engine.Stop} {
		a := mustAnswer(t, engine.Pump, unit.Facts{unit.Vacuum: unit.Number(kPa), unit.PumpSpeed: unit.Number(2), unit.PumpLimit: unit.Number(4), unit.PressVolume: unit.Number(100)})
		r := map[engine.Verdict]engine.Reason{engine.Care: engine.ReasonPumpMayNotReach, engine.Good: engine.ReasonPumpReaches, engine.Stop: engine.ReasonPumpCannotReach}[want]
		wantCheck(t, a, "pump", want, r)
	}
}

// 69 on the dial is under the 70 that PVA needs, though it may be 71.5; 70.5 is not.
func TestHold_belowContact(t *testing.T) {
	for kPa, below := range map[float64]bool{69: true, 70.5: false} {
		a := mustAnswer(t, engine.Pump, unit.Facts{unit.Vacuum: unit.Number(kPa), unit.Leak: unit.Number(1), unit.GlueClass: unit.Word("pva")})
		if hasAdvice(a, engine.ReasonBelowContact) != below {
			t.Errorf("%g kPa: advice %v, want below contact %v", kPa, a.Advice, below)
		}
	}
}

// The movement is published from 6 to 14 %: 6.1 and 13.9 are within, 5.9 and 14.1
// are not; 50 % at 21 °C keeps wood at 9.2.
func TestMove_publishedRange(t *testing.T) {
	for mc, outside := range map[float64]bool{5.9: true, 6.1: false, 13.9: false, 14.1: true} {
		a := mustAnswer(t, engine.Move, unit.Facts{unit.WoodMoisture: unit.Number(mc), unit.ServiceHumidity: unit.Number(50), unit.ServiceTemp: unit.Number(21), unit.PanelWidth: unit.Number(500)})
		if outside {
			wantCheck(t, a, "moisture range", engine.Care, engine.ReasonOutsideMovingRange)
		} else {
			wantCheck(t, a, "moisture range", "", "")
		}
	}
}

// Timoshenko's formula with the cores written out: cherry flat sawn moves 0.00248,
// across 11.3 GPa · 0.086; what is allowed is a 300th of the width.
func TestCup_cores(t *testing.T) {
	for kind, c := range map[string][2]float64{"plywood": {8, 0.0002}, "mdf": {3.5, 0.0003}, "particleboard": {2.5, 0.0004}, "hardboard": {4, 0.0004}} {
		said := cherryOnPly()
		said[unit.CoreKind], said[unit.Sawn] = unit.Word(kind), unit.Word("flat")
		a := mustAnswer(t, engine.Move, said)
		emc := *a.Values[unit.Emc].(unit.Triple).Mid
		m, n, h := 0.25, 11.3*0.086/c[0], 15.875
		κ := 6 * (0.00248 - c[1]) * (emc - 8) * (1 + m) * (1 + m) / (h * (3*(1+m)*(1+m) + (1+m*n)*(m*m+1/(m*n))))
		if got, want := *a.Values[unit.Cup].(unit.Triple).Mid, κ*457.2*457.2/8; math.Abs(got-want) > 1e-6*math.Abs(want) {
			t.Errorf("%s: cup %g mm, want %g", kind, got, want)
		}
		if got, _ := figuresOf(t, a, "cup").Number(unit.CupAllowed); math.Abs(got-1.524) > 1e-9 {
			t.Errorf("%s: %g mm allowed, want 457.2/300", kind, got)
		}
	}
}

// With bars on both sides the nearest joint is 30 mm from the second bar, not 80
// from the first.
func TestSide_nearestOfTwoBars(t *testing.T) {
	said := exactBar(unit.Facts{unit.StripWidths: unit.Numbers{80, 50, 30}, unit.BarCount: unit.Number(2)})
	delete(said, unit.StripCount)
	delete(said, unit.StripWidth)
	if got, _ := figuresOf(t, mustAnswer(t, engine.Side, said), "first joint").Number(unit.JointAt); math.Abs(got-30) > 1e-9 {
		t.Errorf("first joint at %g mm, want 30", got)
	}
}

// A hundredth of a strip is a tape's error and no strip more: 500.4 mm of 50 mm
// strips are ten, 501 are eleven. Work is at most 30 m wide.
func TestRow_countAndWidth(t *testing.T) {
	for W, want := range map[float64]float64{500.4: 10, 501: 11} {
		said := exactBar(unit.Facts{unit.PanelWidth: unit.Number(W)})
		delete(said, unit.StripCount)
		if got, _ := mustAnswer(t, engine.Side, said).Assumed.Number(unit.StripCount); got != want {
			t.Errorf("%g mm are %g strips, want %g", W, got, want)
		}
	}
	for W, needs := range map[float64]bool{29900: false, 30100: true} {
		said := exactBar(unit.Facts{unit.PanelWidth: unit.Number(W)})
		delete(said, unit.StripCount)
		if got := len(mustAnswer(t, engine.Side, said).Needs) > 0; got != needs {
			t.Errorf("%g mm wide: asked %v, want %v", W, got, needs)
		}
	}
}

// Strips on a core, of whatever kind, lie on wet glue.
func TestSide_coreOfUnsaidKind(t *testing.T) {
	said := panelOf(unit.Facts{unit.CoreThickness: unit.Number(19)})
	if got := mustAnswer(t, engine.Side, said).Assumed.Word(unit.SurfaceKind); got != "wet-glue" {
		t.Errorf("strips lie on %q, want wet-glue", got)
	}
}

// One strip alone has no thinner ones beside it, so half the mat lies on thin ones:
// by hand, D 0.1 of a mat of 48, 80 kPa: the range is that of the dial and the
// firmness alone. At σ25 62 and 77.46 kPa (e + e')/2 with e/(1 − e) and e' = e − 0.1
// makes 0.41645 · 2; found by halving: e 0.34099, so 186 · 0.24099/0.75901 = 59.06.
func TestMat_singleStrip(t *testing.T) {
	a := mustAnswer(t, engine.Stack, unit.Facts{
		unit.MatThickness: unit.Number(10), unit.ThicknessSpread: unit.Number(1), unit.Vacuum: unit.Number(80), unit.StripCount: unit.Number(1), unit.StripWidth: unit.Number(100),
	})
	lo, hi := 0.0, 1.0
	for range 100 {
		if e := (lo + hi) / 2; (e/(1-e)+(e-0.1)/(1.1-e))/2 < 77.46/186 {
			lo = e
		} else {
			hi = e
		}
	}
	if got, want := *a.Values[unit.MatLow].(unit.Triple).Low, 186*(lo-0.1)/(1.1-lo); math.Abs(got-want) > 1e-6*want {
		t.Errorf("low end %g kPa, want %g", got, want)
	}
}

// A bed of 1 m² and 100 mm has 100 l. Strips of 10 mm on a core of 20 leave 70 of
// it; 95 mm of work is doubted and takes nothing away.
func TestPump_workInThePress(t *testing.T) {
	for _, c := range []struct{ strips, core, want float64 }{{10, 20, 70}, {10, 0, 90}, {95, 0, 100}, {89, 0, 11}} {
		said := unit.Facts{
			unit.BedWidth: unit.Number(1000), unit.BedLength: unit.Number(1000), unit.Opening: unit.Number(100), unit.PumpSpeed: unit.Number(2), unit.Vacuum: unit.Number(80),
			unit.PanelWidth: unit.Number(1000), unit.PanelLength: unit.Number(1000), unit.StripThickness: unit.Number(c.strips),
		}
		if c.core > 0 {
			said[unit.CoreThickness] = unit.Number(c.core)
		}
		wantTriple(t, mustAnswer(t, engine.Pump, said), unit.PressVolume, c.want, c.want, c.want, 1e-9)
	}
}

// More than a gauge or a tape shows is refused, and nothing else.
func TestCompute_largestNumber(t *testing.T) {
	for n, ok := range map[float64]bool{0.9e12: true, 2e12: false} {
		_, err := engine.Compute(engine.Question{About: engine.Glue, Said: unit.Facts{unit.PressVolume: unit.Number(n)}})
		if (err == nil) != ok {
			t.Errorf("%g: %v, want taken %v", n, err, ok)
		}
	}
}

// By hand: 1000 kPa at the far joint of exactBar takes 1000 · 10/80 + 0.2 · 60 + 0.2 ·
// 200 = 177 mm of bar; strips of 5 mm and of 500 are looked at too: the reach of
// exactBar is 240 mm, so two strips of 5 mm leave 80 · 47/10 = 376 kPa, and with a
// bar of 400 mm strips of 500: 80 · (400 − 12 − 100)/10 = 2304.
func TestSolveFor_wideBounds(t *testing.T) {
	for _, c := range []struct {
		more unit.Facts
		f    unit.Field
		far  float64
		want float64
	}{
		{nil, unit.BarHeight, 1000, 177},
		{unit.Facts{unit.StripCount: unit.Number(2)}, unit.StripWidth, 376, 5},
		{unit.Facts{unit.StripCount: unit.Number(2), unit.BarHeight: unit.Number(400), unit.Cover: unit.Number(400)}, unit.StripWidth, 2304, 500},
	} {
		said := exactBar(c.more)
		delete(said, c.f)
		if c.f == unit.BarHeight {
			delete(said, unit.Cover)
		}
		a, err := engine.SolveFor(engine.Question{About: engine.Side, Said: said}, c.f, unit.Facts{unit.SideFarJoint: unit.Number(c.far)})
		if err != nil || math.Abs(solved(t, a, c.f)-c.want) > 1e-6 {
			t.Errorf("%s %v (%v), want %g", c.f, a.Values[c.f], err, c.want)
		}
	}
}

// A figure that hangs on the field a little is out of reach, not without bearing:
// friction of 0.00001 under a bar of 0.5 to 500 mm takes 5 µm of 60 mm of push.
func TestSolveFor_hangsALittle(t *testing.T) {
	said := exactBar(unit.Facts{unit.FrictionStated: unit.Number(1e-5)})
	c, _ := goalCheck(t, engine.Side, said, unit.BarWidth, unit.Facts{unit.SideFirstJoint: unit.Number(900)})
	if c.Reason != engine.ReasonOutOfReach {
		t.Errorf("check %v, want out of reach", c)
	}
}

// Of two thicknesses that cup alike the thinner is told: found here by a fine scan
// forwards, just short of the thickness that cups most, on cores thin and thick.
func TestSolveFor_firstOfTwo(t *testing.T) {
	for _, core := range []float64{6, 9, 12, 16, 20, 25, 32} {
		said := unit.Facts{
			unit.PanelWidth: unit.Number(600), unit.ServiceHumidity: unit.Number(40), unit.WoodMoisture: unit.Number(10),
			unit.Species: unit.Word("teak"), unit.Sawn: unit.Word("flat"), unit.CoreKind: unit.Word("plywood"), unit.CoreThickness: unit.Number(core),
		}
		cup := func(mm float64) float64 {
			said[unit.StripThickness] = unit.Number(mm)
			return *mustAnswer(t, engine.Move, said).Values[unit.Cup].(unit.Triple).Mid
		}
		least := 0.0
		for mm := core / 3; mm < 3*core; mm += 0.05 {
			least = math.Min(least, cup(mm))
		}
		first := core / 10
		for cup(first) > 0.95*least {
			first += 0.02
		}
		delete(said, unit.StripThickness)
		a, err := engine.SolveFor(engine.Question{About: engine.Move, Said: said}, unit.StripThickness, unit.Facts{unit.Cup: unit.Number(0.95 * least)})
		if got := solved(t, a, unit.StripThickness); err != nil || math.Abs(got-first) > 0.03 {
			t.Errorf("core of %g mm: thickness %g mm (%v), want %g", core, got, err, first)
		}
	}
}

// A friction of next to nothing leaves the bar's reach without an end, and the
// working without a number that is none.
func TestWorking_slippery(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.FrictionStated: unit.Number(1e-300)}))
	if got := a.Values[unit.BarReach]; got != unit.Word("everywhere") {
		t.Errorf("reach %v, want no end", got)
	}
	for _, s := range a.Working {
		if text := s.Numbers + s.Result; strings.Contains(text, "Inf") || strings.Contains(text, "NaN") {
			t.Errorf("%s is worked as %q", s.Name, text)
		}
	}
}

// A formula that is taken beyond what it was made for says so: a cup of 7 mm in 60,
// a rise of √(3 · 200 · 12.5/8) = 30.6 mm of 200 where √(3 · 200 · 2/8) = 12.2 is shallow, a strip of
// 500 by 60 mm, a mat squashed by a fifth.
func TestLimits_said(t *testing.T) {
	cup := func(mm float64) unit.Facts {
		return unit.Facts{unit.Cup: unit.Number(mm), unit.StripWidth: unit.Number(60), unit.StripThickness: unit.Number(5), unit.Vacuum: unit.Number(80)}
	}
	sprung := func(δ float64) unit.Facts {
		return unit.Facts{unit.PanelWidth: unit.Number(200), unit.StripThickness: unit.Number(10), unit.Overfill: unit.Number(δ)}
	}
	strip := func(L float64) unit.Facts {
		return exactBar(unit.Facts{unit.StripWidth: unit.Number(60), unit.StripLength: unit.Number(L), unit.Gap: unit.Number(1)})
	}
	// 3 · 48 · ε/(1 − ε) = p: 80 kPa squash 0.357, 30 kPa 0.172
	mat := func(kPa float64) unit.Facts {
		return unit.Facts{unit.MatThickness: unit.Number(10), unit.ThicknessSpread: unit.Number(0.01), unit.Vacuum: unit.Number(kPa)}
	}
	for _, c := range []struct {
		about engine.Topic
		said  unit.Facts
		r     engine.Reason
		want  bool
	}{
		{engine.Flatten, cup(7), engine.ReasonDeepCurl, true}, {engine.Flatten, cup(5), engine.ReasonDeepCurl, false},
		{engine.Side, sprung(2), engine.ReasonSteepRise, false}, {engine.Side, sprung(12.5), engine.ReasonSteepRise, true},
		{engine.Side, strip(500), engine.ReasonStubbyStrip, true}, {engine.Side, strip(700), engine.ReasonStubbyStrip, false},
		{engine.Stack, mat(80), engine.ReasonMatOutsideFit, false}, {engine.Stack, mat(30), engine.ReasonMatOutsideFit, true},
	} {
		if a := mustAnswer(t, c.about, c.said); hasAdvice(a, c.r) != c.want {
			t.Errorf("%v: advice %v, want %s %v", c.said, a.Advice, c.r, c.want)
		}
	}
}

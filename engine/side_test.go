package engine_test

import (
	"slices"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// panelOf is five strips 50 mm wide and 10 mm thick under 80 kPa of an exact
// barometer's percent, so that the vacuum has no spread.
func panelOf(more unit.Facts) unit.Facts {
	said := unit.Facts{
		unit.Ambient: unit.Number(100), unit.VacuumPercent: unit.Number(80),
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(10),
	}
	for f, v := range more {
		said[f] = v
	}
	return said
}

// exactBar has no uncertainty left: no tent, a measured friction, a cover said,
// and a bar too wide to tip.
func exactBar(more unit.Facts) unit.Facts {
	said := panelOf(unit.Facts{
		unit.BarHeight: unit.Number(60), unit.BarWidth: unit.Number(60), unit.Cover: unit.Number(60),
		unit.Tent: unit.Number(0), unit.FrictionStated: unit.Number(0.2),
	})
	for f, v := range more {
		said[f] = v
	}
	return said
}

// By hand: h 60, b 60, μ 0.2: 60 − 12 = 48 mm is left at the bar; joints at 50
// and 200 mm lose 10 and 40: 80·38/10 = 304 and 80·8/10 = 64 kPa; the reach is
// 48/0.2 = 240 mm; quoted 80·60/10 = 480.
func TestSide_byHand(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(nil))
	wantTriple(t, a, unit.SideIdeal, 480, 480, 480, 1e-9)
	wantTriple(t, a, unit.SideFirstJoint, 304, 304, 304, 1e-9)
	wantTriple(t, a, unit.SideFarJoint, 64, 64, 64, 1e-9)
	wantTriple(t, a, unit.BarReach, 240, 240, 240, 1e-9)
	wantTriple(t, a, unit.BarCovered, 60, 60, 60, 1e-9)
	if len(a.Needs) != 0 || a.Assumed.Has(unit.SurfaceKind) {
		t.Errorf("needs %v, assumed %v; want nothing and no surface", a.Needs, a.Assumed)
	}
}

// Bars on both sides: of joints at 50, 100, 150, 200 in 250 mm the ones nearest
// the middle lie 100 mm from a bar: 48 − 20 = 28, 80·28/10 = 224 kPa.
func TestSide_barsOnBothSides(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.BarCount: unit.Number(2)}))
	wantTriple(t, a, unit.SideFirstJoint, 304, 304, 304, 1e-9)
	wantTriple(t, a, unit.SideFarJoint, 224, 224, 224, 1e-9)
	// 310 mm of 100 mm strips, the last ripped to 10: joints at 100, 200 and 300 are
	// 100, 110 and 10 mm from a bar: 48 − 2 = 46 and 48 − 22 = 26
	said := exactBar(unit.Facts{unit.BarCount: unit.Number(2), unit.PanelWidth: unit.Number(310), unit.StripWidth: unit.Number(100)})
	delete(said, unit.StripCount)
	a = mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.SideFirstJoint, 368, 368, 368, 1e-9)
	wantTriple(t, a, unit.SideFarJoint, 208, 208, 208, 1e-9)
}

// Strips that differ: 40, 60 and 90 mm put the joints at 40 and 100 mm.
func TestSide_stripsThatDiffer(t *testing.T) {
	said := exactBar(unit.Facts{unit.StripWidths: unit.Numbers{40, 60, 90}})
	delete(said, unit.StripCount)
	delete(said, unit.StripWidth)
	a := mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.SideFirstJoint, 320, 320, 320, 1e-9) // 48 − 8
	wantTriple(t, a, unit.SideFarJoint, 224, 224, 224, 1e-9)   // 48 − 20
}

// A bar standing one inch beside a 3/4 in core with 1/4 in strips on it earns four
// times the face pressure, on the sled beside bare strips once; where nothing is
// said it may be either.
func TestSide_whatStandsBehindTheBar(t *testing.T) {
	inch := func(more unit.Facts) unit.Facts {
		said := panelOf(unit.Facts{unit.StripThickness: unit.Number(6.35), unit.BarHeight: unit.Number(25.4), unit.BarWidth: unit.Number(50)})
		for f, v := range more {
			said[f] = v
		}
		return said
	}
	for name, c := range map[string]struct {
		more           unit.Facts
		low, mid, high float64
	}{
		"nothing said":    {nil, 6.35, 6.35, 25.4},
		"core":            {unit.Facts{unit.CoreThickness: unit.Number(19.05)}, 25.4, 25.4, 25.4},
		"on the sled":     {unit.Facts{unit.BarFoot: unit.Word("sled")}, 6.35, 6.35, 6.35},
		"caul on top":     {unit.Facts{unit.CaulThickness: unit.Number(19.05)}, 25.4, 25.4, 25.4},
		"thin caul":       {unit.Facts{unit.CaulThickness: unit.Number(6)}, 12.35, 12.35, 12.35},
		"cover said":      {unit.Facts{unit.Cover: unit.Number(20)}, 20, 20, 20},
		"film behind":     {unit.Facts{unit.Cover: unit.Number(6.35)}, 6.35, 6.35, 6.35},
		"bed, 3/4 sled":   {unit.Facts{unit.BarFoot: unit.Word("bed"), unit.SledThickness: unit.Number(19.05)}, 25.4, 25.4, 25.4},
		"sled, no bed":    {unit.Facts{unit.SledThickness: unit.Number(19.05)}, 6.35, 6.35, 6.35},
		"under the strip": {unit.Facts{unit.BarFoot: unit.Word("bed"), unit.SledThickness: unit.Number(30)}, 6.35, 6.35, 6.35},
		"stack": {unit.Facts{unit.StackLayers: unit.Layers{
			{Part: "sled", Thickness: 19}, {Part: "core", Thickness: 12}, {Part: "strips", Thickness: 6.35}, {Part: "caul", Thickness: 5},
		}}, 23.35, 23.35, 23.35},
	} {
		t.Run(name, func(t *testing.T) {
			wantTriple(t, mustAnswer(t, engine.Side, inch(c.more)), unit.BarCovered, c.low, c.mid, c.high, 1e-9)
		})
	}
	unsure := mustAnswer(t, engine.Side, inch(nil))
	if !hasAdvice(unsure, engine.ReasonCoverBar) || !hasAdvice(unsure, engine.ReasonKeepBack) {
		t.Errorf("advice %v, want how to cover the bar", unsure.Advice)
	}
	low := mustAnswer(t, engine.Side, inch(unit.Facts{unit.BarFoot: unit.Word("bed"), unit.SledThickness: unit.Number(30)}))
	if !hasAdvice(low, engine.ReasonBarTooLow) {
		t.Errorf("advice %v, want that the bar is under the strips", low.Advice)
	}
}

// A bar that ends where the strips begin has no part in it: 10 mm of film push on
// the strips' own edge, and 10/0.2 = 50 mm is their reach.
func TestSide_barUnderTheStrips(t *testing.T) {
	a := mustAnswer(t, engine.Side, panelOf(unit.Facts{
		unit.BarHeight: unit.Number(30), unit.BarFoot: unit.Word("bed"), unit.SledThickness: unit.Number(30),
		unit.Tent: unit.Number(0), unit.FrictionStated: unit.Number(0.2),
	}))
	wantTriple(t, a, unit.BarReach, 50, 50, 50, 1e-9)
}

// Strips glued onto a core have a face line too.
func TestSide_faceOnCore(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.CoreKind: unit.Word("mdf")}))
	wantCheck(t, a, "face", engine.Good, engine.ReasonFaceContact)
	wantCheck(t, mustAnswer(t, engine.Side, exactBar(nil)), "face", "", "")
	if !hasCaution(a, engine.CautionPorous) {
		t.Errorf("cautions %v, want that the core leaks", a.Cautions)
	}
}

// By hand: H 60, b 20, z 5: (3600 + 400)/(2·55) = 36.36 mm of 60 push at worst; a
// bar of √(2·60·55 − 3600) = 54.77 mm would not tip.
func TestSide_tippingBar(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.BarWidth: unit.Number(20)}))
	wantTriple(t, a, unit.BarCovered, 4000.0/110, 60, 60, 1e-9)
	i := slices.IndexFunc(a.Advice, func(f engine.Finding) bool { return f.Reason == engine.ReasonWiderBar })
	if i < 0 {
		t.Fatalf("advice %v, want a wider bar", a.Advice)
	}
	if w, _ := a.Advice[i].Figures.Number(unit.BarWidthLeast); w < 54.7 || w > 54.8 {
		t.Errorf("a bar %g mm wide is advised, want 54.77", w)
	}
	// on a core of 19 mm the strips' middle is at 24, and z counts less than 60 − 24
	a = mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.BarWidth: unit.Number(20), unit.CoreThickness: unit.Number(19)}))
	wantTriple(t, a, unit.BarCovered, 4000.0/72, 60, 60, 1e-9)
	if hasAdvice(mustAnswer(t, engine.Side, exactBar(nil)), engine.ReasonWiderBar) {
		t.Error("a wider bar is advised where the bar does not tip")
	}
}

// No bar: the film presses the strips' own edge, once the face pressure, which
// friction under the first strip eats: 10 − 0.2·50 = 0.
func TestSide_withoutBar(t *testing.T) {
	said := panelOf(unit.Facts{unit.BarDenied: unit.Word("none"), unit.Tent: unit.Number(0), unit.FrictionStated: unit.Number(0.2)})
	a := mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.SideIdeal, 80, 80, 80, 1e-9)
	wantTriple(t, a, unit.SideFirstJoint, 0, 0, 0, 1e-9)
	wantTriple(t, a, unit.BarReach, 50, 50, 50, 1e-9)
	delete(said, unit.BarDenied)
	if got := mustAnswer(t, engine.Side, said).Assumed.Word(unit.BarDenied); got != "none" {
		t.Errorf("bar assumed is %q, want none", got)
	}
}

// A caul that cannot move along rubs too, at worst: the joint at 200 mm loses
// another 40 mm, so nothing is left of 8; the first has 38 − 10.
func TestSide_rubbingCaul(t *testing.T) {
	a := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.CaulThickness: unit.Number(50)}))
	wantTriple(t, a, unit.SideFirstJoint, 224, 304, 304, 1e-9)
	wantTriple(t, a, unit.SideFarJoint, 0, 64, 64, 1e-9)
}

// The clamp advice by specific gravity: 690 kPa at 0.40, 1205 at 0.63; hide glue
// 350 and epoxy 30, whose contact is 10 kPa.
func TestSide_thresholds(t *testing.T) {
	for _, c := range []struct {
		glue, wood    string
		contact, full float64
	}{
		{"pva", "sitka spruce", 70, 690}, {"pva", "hard maple", 70, 1205}, {"polyurethane", "white oak", 70, 1205},
		{"hot-hide", "cherry", 70, 350}, {"epoxy", "cherry", 10, 30},
	} {
		a := mustAnswer(t, engine.Side, exactBar(unit.Facts{unit.GlueClass: unit.Word(c.glue), unit.Species: unit.Word(c.wood)}))
		wantTriple(t, a, unit.GlueContact, c.contact, c.contact, c.contact, 1e-9)
		wantTriple(t, a, unit.GlueFull, c.full, c.full, c.full, 1e-9)
	}
}

func TestSide_needs(t *testing.T) {
	without := func(fs ...unit.Field) unit.Facts {
		said := panelOf(unit.Facts{unit.BarHeight: unit.Number(25)})
		for _, f := range fs {
			delete(said, f)
		}
		return said
	}
	wedged := unit.Facts{unit.WedgeRatio: unit.Number(6), unit.WedgeForce: unit.Number(500), unit.StripThickness: unit.Number(18), unit.StripLength: unit.Number(1500)}
	for name, c := range map[string]struct {
		said unit.Facts
		want []unit.Field
	}{
		"whole":              {without(), nil},
		"no thickness":       {without(unit.StripThickness), []unit.Field{unit.StripThickness}},
		"no vacuum":          {without(unit.VacuumPercent), []unit.Field{unit.Vacuum}},
		"no width":           {without(unit.StripWidth), []unit.Field{unit.StripWidth}},
		"no count":           {without(unit.StripCount), []unit.Field{unit.StripCount}},
		"neither":            {without(unit.StripCount, unit.StripWidth), []unit.Field{unit.StripCount, unit.StripWidth}},
		"wedge, no vacuum":   {wedged, nil},
		"absurd count":       {panelOf(unit.Facts{unit.StripCount: unit.Number(5e8)}), []unit.Field{unit.StripCount}},
		"only a bar's width": {panelOf(unit.Facts{unit.BarWidth: unit.Number(19)}), []unit.Field{unit.BarHeight}},
		"absurd, no vacuum": {unit.Facts{
			unit.WedgeRatio: unit.Number(6), unit.WedgeForce: unit.Number(500), unit.StripThickness: unit.Number(18), unit.StripLength: unit.Number(1500),
			unit.StripWidth: unit.Number(50), unit.StripCount: unit.Number(5e8),
		}, []unit.Field{unit.StripCount}},
		"a force, no taper":   {unit.Facts{unit.WedgeForce: unit.Number(500), unit.StripThickness: unit.Number(18)}, []unit.Field{unit.WedgeRatio}},
		"overfill, no width":  {unit.Facts{unit.Overfill: unit.Number(1), unit.StripThickness: unit.Number(18)}, []unit.Field{unit.PanelWidth}},
		"wide gap, no length": {panelOf(unit.Facts{unit.BarHeight: unit.Number(25), unit.Gap: unit.Number(1)}), []unit.Field{unit.StripLength}},
	} {
		a := mustAnswer(t, engine.Side, c.said)
		if !slices.Equal(a.Needs, c.want) {
			t.Errorf("%s: needs %v, want %v", name, a.Needs, c.want)
		}
		if (a.Verdict == engine.Ask) != (len(c.want) > 0) {
			t.Errorf("%s: verdict %s with needs %v", name, a.Verdict, a.Needs)
		}
	}
}

// The count follows from the panel's width, and the far joint lies one strip in.
func TestSide_countFromWidths(t *testing.T) {
	said := exactBar(unit.Facts{unit.PanelWidth: unit.Number(250)})
	delete(said, unit.StripCount)
	a := mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.SideFarJoint, 64, 64, 64, 1e-9)
	if got := a.Assumed[unit.StripCount]; got != unit.Number(5) {
		t.Errorf("strips assumed %v, want 5", got)
	}
}

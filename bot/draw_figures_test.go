package bot

import (
	"testing"

	"presshand/bot/picture"
	"presshand/engine/unit"
)

// Each figure of the description is the answer's of that name, with its ends.
func TestSection_figures(t *testing.T) {
	pressures := map[unit.Field]func(picture.CrossSection) unit.Range[unit.Pressure]{
		unit.FacePressure:   func(c picture.CrossSection) unit.Range[unit.Pressure] { return c.Face },
		unit.SideFirstJoint: func(c picture.CrossSection) unit.Range[unit.Pressure] { return c.First },
		unit.SideFarJoint:   func(c picture.CrossSection) unit.Range[unit.Pressure] { return c.Far },
		unit.Preload:        func(c picture.CrossSection) unit.Range[unit.Pressure] { return c.Preload },
		unit.GlueContact:    func(c picture.CrossSection) unit.Range[unit.Pressure] { return unit.Exactly(c.Need) },
		unit.Snap: func(c picture.CrossSection) unit.Range[unit.Pressure] {
			if c.Spring == nil {
				return unit.Range[unit.Pressure]{}
			}
			return c.Spring.Snap
		},
	}
	seen := map[unit.Field]int{}
	for _, text := range []string{
		"6 strips 2 wide, 1/2 thick, 2 in bar, 3/4 caul, waxed sled, 25 inHg, yellow glue",
		"6 strips 2 wide, 3/4 thick, 1:12 wedge driven with 200 lb, 48 long, 25 inHg, epoxy",
		"6 strips 2 wide, 3/4 thick, strips run 1/16 over the opening, 25 inHg, yellow glue, 48 long",
		"6 strips 2 wide, 1/4 thick, 1 in bar on both sides, 3/4 caul, 25 inHg, yellow glue",
	} {
		d := drawnFirst(t, text)
		c := d.section()
		for f, drawn := range pressures {
			want, got := unit.Range[unit.Pressure]{}, drawn(c)
			if v, ok := d.Answer.Values[f].(unit.Triple); ok && v.Low != nil && v.Mid != nil && v.High != nil {
				want = unit.Around(unit.Kilopascals(*v.Low), unit.Kilopascals(*v.Mid), unit.Kilopascals(*v.High))
				seen[f]++
			}
			for _, pair := range [][2]unit.Pressure{{got.Low, want.Low}, {got.Mid, want.Mid}, {got.High, want.High}} {
				if diff := (pair[0] - pair[1]).Pascals(); diff > 0.01 || diff < -0.01 {
					t.Errorf("%q: %s is drawn as %v, want %v", text, f, got, want)
					break
				}
			}
		}
		if c.First == c.Far && d.Answer.Values.Has(unit.BarCovered) && c.Preload.Mid == 0 {
			t.Errorf("%q: first and far joint are alike, want a case that tells them apart", text)
		}
		if rise, ok := d.Answer.Values[unit.Rise].(unit.Triple); ok {
			seen[unit.Rise]++
			if c.Spring == nil || mm(c.Spring.Rise.Mid) != mm(unit.Millimetres(*rise.Mid)) {
				t.Errorf("%q: drawn spring %+v, want a rise of %g mm", text, c.Spring, *rise.Mid)
			}
		}
	}
	for f := range pressures {
		if seen[f] == 0 {
			t.Errorf("no answer gave %s, want one at least", f)
		}
	}
	if seen[unit.Rise] == 0 {
		t.Error("no answer gave a rise, want one at least")
	}
}

// The vacuum that was said presses, whatever was asked: 25 inHg are 84.66 kPa.
// One that no air has is not drawn.
func TestSection_vacuumSaid(t *testing.T) {
	for text, want := range map[string]float64{
		"stack: sled 3/4, fence 3/8, strips 5/16, mat 3/8, sled 3/4; opening 6 in; 25 inHg": 84.659725,
		"stack: sled 3/4, fence 1/4, strips 5/16, film, sled 3/4; opening 6 in":             0,
		"stack: sled 3/4, strips 5/16, film, sled 3/4; opening 6 in; 29 inHg, at 5280 ft":   0,
	} {
		if got := drawnFirst(t, text).section().Face.Mid.Kilopascals(); got < want-0.001 || got > want+0.001 {
			t.Errorf("%q: the film presses with %g kPa, want %g", text, got, want)
		}
	}
}

// Verdict, title, caption and whether the joints are judged come over as well.
func TestSection_words(t *testing.T) {
	for _, c := range []struct {
		text    string
		verdict picture.Verdict
		caption string
		side    bool
	}{
		{"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue", picture.Care, "", true},
		{"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 29.5 inHg, yellow glue, 95F", picture.Stop, "", true},
		{"two sleds, base 3/4, fence 1/4, strips 5/16, film, sled 3/4, press opening 4 in", picture.Good, "", false},
		{"stack: sled 3/4, fence 3/8, strips 5/16, mat 3/8, sled 3/4; opening 6 in", picture.Unjudged, "Not judged yet, for want of the vacuum.", false},
		{"1 in or 1 1/2 bar? 5 strips 2 1/4 wide, 1/2 thick, 25 inHg, yellow glue", picture.Care, "Drawn: bar height 1 1/2 in, better than bar height 1 in.", true},
	} {
		got := drawnFirst(t, c.text).section()
		if got.Verdict != c.verdict || got.Caption != c.caption || got.Side != c.side {
			t.Errorf("%q: verdict %s, caption %q, joints %v; want %s, %q, %v", c.text, signed(got.Verdict), got.Caption, got.Side, signed(c.verdict), c.caption, c.side)
		}
	}
}

// Figures are written as who asked reads them: a size that was said as it was
// said, one that was worked out as a tape shows it: to 1/32 in, 0.79 mm, and to
// half a millimetre. 70 kPa are 10.15 psi.
func TestSection_units(t *testing.T) {
	for _, c := range []struct {
		text                                    string
		of                                      [2]unit.Length
		said, tape, pressure, axis, pressuresIn string
	}{
		{"5 strips 2 1/4 wide, 19/64 thick, 1 in bar, 25 inHg, yellow glue, at 5280 ft", [2]unit.Length{unit.Inches(19.0 / 64), unit.Inches(21.0 / 64)}, "19/64 in", "11/32 in", "10.2 psi", "in", "psi"},
		{"5 strips 57 mm wide, 7.9 mm thick, 25 mm bar, 85 kPa, pva, elevation 1600 m", [2]unit.Length{unit.Millimetres(7.9), unit.Millimetres(5.6)}, "7.9 mm", "5.5 mm", "70 kPa", "mm", "kPa"},
	} {
		u := drawnFirst(t, c.text).section().Units
		got := [5]string{u.Length(c.of[0]), u.Length(c.of[1]), u.Pressure(unit.Kilopascals(70)), u.LengthAxis.Symbol, u.PressureAxis.Symbol}
		if want := [5]string{c.said, c.tape, c.pressure, c.axis, c.pressuresIn}; got != want {
			t.Errorf("%q: figures are written %q, want %q", c.text, got, want)
		}
	}
}

// A stack that only lacks the vacuum has its picture, one that lacks what it is
// made of has none.
func TestDraw_stackThatLacksTheVacuum(t *testing.T) {
	for text, want := range map[string]bool{
		"stack: sled 3/4, fence 3/8, strips 5/16, mat 3/8, sled 3/4; opening 6 in": true,
		"6 strips 2 wide, 1 in bar, 25 inHg":                                       false,
	} {
		if d, ok := drawnFirst(t, text).Draw(); ok != want || ok && d.Title != "Cross-section" {
			t.Errorf("%q has a drawing: %v, want %v without a verdict", text, ok, want)
		}
	}
}

package picture

import (
	"math"
	"math/rand/v2"
	"testing"

	"presshand/engine/unit"
)

// filmOff is how far the film's line is drawn off what it lies on.
const filmOff = 1.8

// filmAt is the height on the page of the film over x.
func filmAt(t *testing.T, d *Drawing, x float64) float64 {
	t.Helper()
	films := shown(d, "film")
	if len(films) != 1 {
		t.Fatalf("%d films over all, want one", len(films))
	}
	ps, y := films[0].points, math.Inf(1)
	for i := 1; i < len(ps); i++ {
		a, b := ps[i-1], ps[i]
		if b.x < a.x-0.01 {
			t.Errorf("film runs back from %v to %v", a, b)
		}
		if a.x <= x && x <= b.x {
			at := a.y
			if b.x > a.x {
				at += (b.y - a.y) * (x - a.x) / (b.x - a.x)
			}
			y = min(y, at)
		}
	}
	return y
}

// upright reports whether the film runs upright at x from one height to another,
// but for the corners that it rounds by up to 3 points.
func upright(d *Drawing, x, from, to float64) bool {
	low, high := min(from, to), max(from, to)
	for _, f := range shown(d, "film") {
		for i := 1; i < len(f.points); i++ {
			a, b := f.points[i-1], f.points[i]
			if near(a.x, x, 0.01) && near(b.x, x, 0.01) && min(a.y, b.y) < low+5 && max(a.y, b.y) > high-5 {
				return true
			}
		}
	}
	return false
}

// By hand, in inches over the bed, sled 3/4, strips 1/4, fence up to 0.9625: the
// film rises at the sled's edge, lies on the sled, rises at the bar's outer face,
// lies on the bar's top, comes down its inner face to the first thing that keeps
// it off, lies on that, and comes down at the fence and at the sled's far edge.
func TestCrossSection_filmPath(t *testing.T) {
	caul := barOn(0.25, Bar{Height: in(1.5), Width: in(0.75), Covered: unit.Exactly(in(1))})
	caul.Layers = append(caul.Layers, Layer{Caul, in(0.75)})
	full := barOn(0.25, Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(1))})
	full.Layers = append(full.Layers, Layer{Caul, in(0.75)})
	for name, c := range map[string]struct {
		of        CrossSection
		foot, bar float64 // of the bar over the bed, and its top
		work      float64 // what the film lies on beside the bar
	}{
		"covered by the strips alone": {barOn(0.25, Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(0.25))}), 0.75, 1.75, 1},
		"covered by a caul in part":   {caul, 0.75, 2.25, 1.75},
		"covered to its top":          {full, 0.75, 1.75, 1.75},
		"a block to be laid there":    {barOn(0.25, Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(1))}), 0.75, 1.75, 1.75},
		"on the bed":                  {barOn(0.25, Bar{Height: in(2), Width: in(0.75), OnBed: true, Covered: unit.Exactly(in(1))}), 0, 2, 1},
		"lower than the strips":       {barOn(0.75, Bar{Height: in(0.5), Width: in(0.75), Covered: unit.Exactly(in(0.75))}), 0.75, 1.25, 1.5},
		"under the strips":            {barOn(0.25, Bar{Height: in(0.5), Width: in(0.75), OnBed: true, Covered: unit.Exactly(in(0.25))}), 0, 0.5, 1},
	} {
		s, d := drawn(c.of)
		x := s.x
		for what, pair := range map[string][2]float64{
			"over the bar":       {filmAt(t, d, (x.bar[0]+x.bar[1])/2), s.y(in(c.bar)) - filmOff},
			"over the work":      {filmAt(t, d, (x.strips[0]+x.strips[1])/2), s.y(in(c.work)) - filmOff},
			"beside the bar":     {filmAt(t, d, x.bar[0]-6), s.y(in(c.foot)) - filmOff},
			"over the bed, left": {shown(d, "film")[0].points[0].y, s.bedY - filmOff},
			"over the fence":     {filmAt(t, d, (x.fence[0]+x.fence[1])/2+4), s.y(s.levels[0].base+s.levels[0].fence) - filmOff},
		} {
			if !near(pair[0], pair[1], 0.01) {
				t.Errorf("%s: film %s lies at %.2f, want %.2f", name, what, pair[0], pair[1])
			}
		}
		if !upright(d, x.bar[0]-filmOff, s.y(in(c.foot)), s.y(in(c.bar))) {
			t.Errorf("%s: no film on the bar's outer face", name)
		}
		inner := upright(d, x.bar[1]+filmOff, s.y(in(c.bar)), s.y(in(c.work)))
		if want := c.bar > c.work; inner != want {
			t.Errorf("%s: film on the bar's inner face: %v, want %v", name, inner, want)
		}
		if own := upright(d, x.strips[0]-filmOff, s.y(in(c.bar)), s.y(in(c.work))); own != (c.bar < c.work) {
			t.Errorf("%s: film on the work's own edge: %v, want %v", name, own, c.bar < c.work)
		}
	}
}

// With bars on both sides the film does the same on the right; without one it
// lies on the strips' own edge.
func TestCrossSection_filmOnTheOtherSide(t *testing.T) {
	s, d := drawn(barOn(0.25, Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(0.25)), Both: true}))
	for _, x := range []float64{s.x.bar[0] - filmOff, s.x.bar[1] + filmOff, s.x.fence[1] + filmOff} {
		if top := s.y(in(1.75)); !upright(d, x, top, top+8) {
			t.Errorf("no film upright at %.1f, want it on each bar's faces", x)
		}
	}
	plain := barOn(0.5, Bar{})
	plain.Bar = nil
	s, d = drawn(plain)
	if !upright(d, s.x.strips[0]-filmOff, s.y(in(0.75)), s.y(in(1.25))) {
		t.Error("no film on the strips' own edge")
	}
}

// By hand: at the foot of a bar on the sled a film that bridges 1/4 in leaves the
// bar 1/4 in up and the sled 1/4 in out.
func TestCrossSection_filmBridges(t *testing.T) {
	c := barOn(0.5, Bar{Height: in(1.25), Width: in(0.75), Covered: unit.Exactly(in(0.5))})
	c.Tent = in(0.25)
	s, d := drawn(c)
	r := in(0.25).Metres() * s.scale
	foot := point{s.x.bar[0] - filmOff, s.y(in(0.75)) - filmOff}
	found := false
	ps := shown(d, "film")[0].points
	for i := 1; i < len(ps); i++ {
		a, b := ps[i-1], ps[i]
		found = found || near(a.x, foot.x-r, 0.01) && near(a.y, foot.y, 0.01) && near(b.x, foot.x, 0.01) && near(b.y, foot.y-r, 0.01)
	}
	if !found {
		t.Errorf("film %v cuts no corner of %.1f at the bar's foot %v", ps, r, foot)
	}
}

// The film lies on no part from below.
func TestCrossSection_filmOverAll(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	parts := []string{"sled", "core", "strips", "mat", "caul", "fence", "fence assumed", "bar", "wedge", "cover"}
	tried := 0
	for i := range 200 {
		_, d := drawn(randomSection(r, Units{}, ""))
		for _, part := range parts {
			for _, p := range shown(d, part) {
				for b, at := around(p), 0.25; at < 1; at += 0.25 {
					tried++
					if y := filmAt(t, d, b.x0+b.width()*at); y > b.y0+0.1 {
						t.Errorf("load %d: film at %.1f, under the top of the %s at %.1f", i, y, part, b.y0)
					}
				}
			}
		}
		if t.Failed() {
			return
		}
	}
	if tried < 1000 {
		t.Errorf("%d places tried, want some thousand", tried)
	}
}

// Sheets lie between the layers, a bag goes round under the bed's line.
func TestCrossSection_sheetsAndBag(t *testing.T) {
	c := CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}, {Film, unit.Millimetres(0.15)}, {Caul, in(0.75)}}, Bag: true}
	s, d := drawn(c)
	sheets, bags := shown(d, "sheet"), shown(d, "bag")
	if len(sheets) != 1 || len(bags) != 1 {
		t.Fatalf("%d sheets and %d bags, want one each", len(sheets), len(bags))
	}
	if y := sheets[0].points[0].y; sheets[0].dash == nil || !near(y, s.y(in(1)+unit.Millimetres(0.075)), 0.01) {
		t.Errorf("sheet at %.2f, dashes %v; want it dashed on the strips at %.2f", y, sheets[0].dash, s.y(in(1)))
	}
	if b := around(bags[0]); b.y1 <= s.bedY {
		t.Errorf("bag ends at %.1f, want it under the bed at %.1f", b.y1, s.bedY)
	}
}

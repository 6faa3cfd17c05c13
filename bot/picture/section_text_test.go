package picture

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"presshand/engine/unit"
)

// printed are the texts of a drawing as its SVG has them, each with what it
// shows before it.
func printed(t *testing.T, d *Drawing) []string {
	t.Helper()
	var out []string
	for _, e := range readSVG(t, d.SVG()) {
		if e.name == "text" {
			out = append(out, strings.TrimPrefix(e.attr["data-shows"]+" = ", " = ")+strings.TrimSuffix(e.text, "\n"))
		}
	}
	return out
}

// distinct has another figure for each thing, so that none can stand for another:
// 100 kPa are 14.5 psi, 50 7.3, 20 2.9, 70 10.2 and 200 29.0.
func distinct() CrossSection {
	return CrossSection{
		Verdict: Care, Layers: []Layer{{Sled, in(0.875)}, {Core, in(0.625)}, {Strips, in(0.25)}, {Film, unit.Millimetres(0.15)}, {Mat, in(0.375)}, {Caul, in(0.75)}},
		Thinnest: in(0.1875), Widths: equal(5, in(2.25)), Bar: &Bar{Height: in(1.5), Width: in(1.0625), Covered: unit.Around(in(0.5), in(1.125), in(1.25))},
		Opening: in(4), Tent: in(0.3125), Face: kpa(90, 100, 110), Side: true, First: kpa(40, 50, 60), Far: kpa(10, 20, 30), Need: unit.Kilopascals(70), Units: inch,
		Wedge: &Wedge{Gap: in(0.6875), Said: "1 in 12"}, Preload: kpa(150, 200, 250),
	}
}

// Every figure is printed beside its own name.
func TestCrossSection_printed(t *testing.T) {
	_, d := drawn(distinct())
	got := printed(t, d)
	for _, want := range []string{
		"title = Cross-section: take care",
		"bar", "bar height = 1 1/2 in", "pushes", "bar covered = 1 1/8 in",
		"sled height = sled 7/8 in", "core height = core 5/8 in", "strips height = strips 3/16–1/4 in", "mat height = mat 3/8 in",
		"caul height = caul 3/4 in", "fence height = fence*", "wedge width = wedge 11/16 in", "opening = lid 4 in",
		"clearance height = 1 1/8 in left", "face pressure = 14.5 psi",
		"joint = 1", "joint = 2", "joint = 3", "joint = 4", "first joint figure = 1: 7.3 psi", "far joint figure = 4: 2.9 psi",
		"strips width = 5 strips of 2 1/4 in = 11 1/4 in",
		"Film presses with 14.5 psi (13.1–16.0 psi)", "Film between the layers",
		"tent = The film bridges corners, up to 5/16 in high: there it does", "not push",
		"side first = Side, joint 1: 7.3 psi (5.8–8.7 psi)", "side far = Side, joint 4: 2.9 psi (1.5–4.4 psi)",
		"need = The glue needs 10.2 psi at each joint", "preload = Wedge, every joint: 29.0 psi (21.8–36.3 psi)",
		"Wedge 1 in 12; the fence pushes back", "Dashed in the strips: the thinnest, 3/16 in",
		"stack height = Stack 2 7/8 in high; opening 4 in: 1 1/8 in to spare",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("texts lack %q", want)
		}
	}
	if t.Failed() {
		t.Logf("%q", got)
	}
	for _, want := range []string{"Hatched: 3/8 in of the bar does nothing", "1 1/8 in (1/2–1 1/4 in) pushes", "* Assumed: a fence on the far side, how high is not said"} {
		if !strings.Contains(d.Alt, want) || !strings.Contains(strings.Join(got, " "), want[:20]) {
			t.Errorf("alt %q and texts lack %q", d.Alt, want)
		}
	}
}

// The words for how a bar pushes go with what is drawn.
func TestCrossSection_printedBars(t *testing.T) {
	for want, c := range map[string]CrossSection{
		"Hatched: 3/4 in of the bar does nothing, with film on both its faces; 1/4 in pushes": barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(0.25))}),
		"1/2 in of the bar pushes": barOn(0.25, Bar{Height: in(0.8), OnBed: true, Covered: unit.Exactly(in(0.5))}),
		"1 in of the bar pushes":   barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(1))}),
		"3/4 in pushes: the bar, and film on the strips' own edge above it, 1/4 in":                            barOn(0.75, Bar{Height: in(0.5), Covered: unit.Exactly(in(0.75))}),
		"Hatched: the bar ends under the strips and does nothing; film pushes on the strips' own edge, 1/4 in": barOn(0.25, Bar{Height: in(0.5), OnBed: true, Covered: unit.Exactly(in(0.25))}),
		"Hatched: the bar ends under the strips and does nothing.":                                             barOn(0.25, Bar{Height: in(0.5), OnBed: true}),
		"Dashed: lay a caul or sled there, up to 1 1/2 in on the bar (assumed)":                                barOn(0.25, Bar{Height: in(1.5), Covered: unit.Exactly(in(1.5))}),
		"Dashed: what keeps the film off the bar up to 1 1/2 in; nobody said what it is":                       with(barOn(0.25, Bar{Height: in(1.5), Covered: unit.Exactly(in(1.5))}), func(c *CrossSection) { c.CoverSaid = true }),
		"A side bar 1 in high and 1/2 in wide, standing on the bed":                                            barOn(0.25, Bar{Height: in(1), Width: in(0.5), OnBed: true}),
		"On both sides a bar 1 in high and 1/2 in wide, standing on the sled":                                  barOn(0.25, Bar{Height: in(1), Width: in(0.5), Both: true}),
		"* Assumed: sled 3/4 in; a fence on the far side, how high is not said; bar 1/2 in wide":               with(barOn(0.25, Bar{Height: in(1), Width: in(0.5)}), func(c *CrossSection) { c.SledAssumed, c.WidthAssumed = true, true }),
		"1 in high over the sled, to the top of the bar. * Assumed: sled":                                      with(barOn(0.25, Bar{Height: in(1)}), func(c *CrossSection) { c.SledAssumed = true }),
		"Stack 1 3/4 in high, to the top of the bar, with the assumed sled; opening 4 in":                      with(barOn(0.25, Bar{Height: in(1)}), func(c *CrossSection) { c.SledAssumed, c.Opening = true, in(4) }),
		"Side figures are for one face, with its half of the bar's push; the bar presses both":                 with(barOn(0.25, Bar{Height: in(1)}), func(c *CrossSection) { c.TwoFaces = true }),
		"Strips 1/16 in wider than the opening: the middle rises 1/2 in before the vacuum; hold it down. It lies down": with(barOn(0.25, Bar{}), func(c *CrossSection) {
			c.Bar, c.Spring = nil, &Spring{in(1.0 / 16), unit.Exactly(in(0.5)), kpa(9, 9, 9)}
		}),
	} {
		_, d := drawn(c)
		if !strings.Contains(d.Alt, want) {
			t.Errorf("alt %q lacks %q", d.Alt, want)
		}
	}
}

// What is printed says the figure that the drawing keeps for it, whatever the
// load.
func TestCrossSection_textsAreTheirFigures(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 4))
	seen := map[string]int{}
	for i := range 400 {
		_, d := drawn(randomSection(r, inch, ""))
		for _, l := range d.labels {
			for _, f := range l.facts {
				v := number(t, f.value)
				write := map[string]func(float64) string{
					"mm":  func(v float64) string { return tape(unit.Millimetres(v)) },
					"kpa": func(v float64) string { return psi(unit.Kilopascals(v)) },
				}[f.key]
				if write == nil || v == 0 && l.shows == "wedge width" || l.shows == "tent" || strings.HasSuffix(l.text, "…") {
					continue
				}
				if l.shows == "clearance height" {
					v = math.Abs(v)
				}
				seen[l.shows]++
				const kept = 0.0006 // the figure is kept to a thousandth
				if !strings.Contains(l.text, write(v)) && !strings.Contains(l.text, write(v-kept)) && !strings.Contains(l.text, write(v+kept)) {
					t.Errorf("load %d: %s of %s %s is printed %q, want %s in it", i, l.shows, f.value, f.key, l.text, write(v))
				}
			}
		}
	}
	for _, shows := range []string{"bar height", "bar covered", "sled height", "strips height", "fence height", "proud", "opening", "clearance height", "face pressure",
		"first joint figure", "far joint figure", "side first", "side far", "need", "preload", "rise height", "snap", "stack height", "cover height", "strips width", "wedge width"} {
		if seen[shows] == 0 {
			t.Errorf("no label shows %s, want some", shows)
		}
	}
}

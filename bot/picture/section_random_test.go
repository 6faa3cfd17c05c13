package picture

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"presshand/engine/unit"
)

// some returns v now and then, and nothing otherwise.
func some[T any](r *rand.Rand, n int, v T) (none T) {
	if r.IntN(n) == 0 {
		return v
	}
	return none
}

func lengths(mid unit.Length) unit.Range[unit.Length] { return unit.Around(mid/2, mid, mid*3/2) }

// randomSection describes a load of any kind: bars on one side, on both, on the
// bed, too low, up to the lid; wedge and overfill; no bar; one strip or hundreds.
func randomSection(r *rand.Rand, u Units, title string) CrossSection {
	c := CrossSection{Title: title, Widths: randomWidths(r), Units: u, Face: some(r, 1+r.IntN(2), pressure(r, 100)), Bag: r.IntN(2) == 0,
		Tent: some(r, 2, mm(r, 0, 30)), Side: r.IntN(4) > 0, First: some(r, 1+r.IntN(2), pressure(r, 900)), Far: some(r, 1+r.IntN(2), pressure(r, 900)),
		Need: some(r, 2, unit.Kilopascals(70)), Verdict: Verdict(r.IntN(4)), Clearance: Verdict(r.IntN(4)), SledAssumed: r.IntN(3) == 0,
		WidthAssumed: r.IntN(3) == 0, TwoFaces: r.IntN(6) == 0, CoverSaid: r.IntN(2) == 0}
	for range 1 + r.IntN(5) {
		c.Layers = append(c.Layers, Layer{Sled, mm(r, 3, 60)})
		if r.IntN(2) == 0 {
			c.Layers = append(c.Layers, Layer{Fence, mm(r, 2, 60)})
			c.Proud = append(c.Proud, Proud{By: unit.Exactly(mm(r, -10, 10)), Verdict: Verdict(r.IntN(4))})
		}
		for _, p := range []Part{Core, Strips, Film, Mat, SideBar, Caul} {
			if p == Strips || r.IntN(3) == 0 {
				c.Layers = append(c.Layers, Layer{p, mm(r, 0.15, 60)})
			}
		}
	}
	if r.IntN(2) == 0 {
		c.Bar = randomBar(r)
	}
	if r.IntN(3) == 0 {
		c.Wedge, c.Preload = &Wedge{Gap: some(r, 2, mm(r, 0, 40)), Said: some(r, 2, "1 in 12, driven with 200 lbf")}, pressure(r, 500)
	}
	if r.IntN(4) == 0 {
		c.Spring, c.Preload = &Spring{Over: mm(r, 0, 5), Rise: lengths(mm(r, 0, 40)), Snap: pressure(r, 80)}, pressure(r, 500)
	}
	c.Opening, c.Thinnest = some(r, 2, mm(r, 20, 600)), some(r, 3, mm(r, 1, 20))
	c.Height = some(r, 3, mm(r, 20, 500))
	switch r.IntN(10) {
	case 0:
		c.Widths = nil
	case 1:
		c.Widths = equal(40+r.IntN(300), mm(r, 5, 100))
	case 2:
		c.Widths = equal(1, mm(r, 5, 1000))
	}
	return c
}

func randomBar(r *rand.Rand) *Bar {
	h := mm(r, 3, 150)
	covered := h * unit.Length(r.Float64()*1.3)
	return &Bar{Height: h, Width: some(r, 1+r.IntN(2), mm(r, 0, 120)), Covered: lengths(some(r, 1+r.IntN(2), covered)),
		Tips: some(r, 3, h/2), Wider: some(r, 2, h), OnBed: r.IntN(3) == 0, Both: r.IntN(3) == 0}
}

// stretched makes a load's parts, strips and bar a few times as large, or as small,
// each kind by itself.
func stretched(r *rand.Rand, c CrossSection) CrossSection {
	by := func() unit.Length { return []unit.Length{0.2, 1, 5, 20}[r.IntN(4)] }
	k := by()
	for i := range c.Layers {
		c.Layers[i].Thickness *= k
	}
	k = by()
	for i := range c.Widths {
		c.Widths[i] *= k
	}
	if b := c.Bar; b != nil {
		k = by()
		b.Height, b.Covered = b.Height*k, lengths(b.Covered.Mid*k)
	}
	return c
}

// Labels stay apart and on the page with layers a metre thick and names that
// never end.
func TestLabels_stretchedSections(t *testing.T) {
	r := rand.New(rand.NewPCG(77, 7))
	for i := range 400 {
		c := stretched(r, randomSection(r, []Units{{}, inch, exactInches}[i%3], strings.Repeat("É", r.IntN(400))))
		d, err := c.Draw()
		if err != nil {
			t.Fatalf("load %d: %v", i, err)
		}
		tidy(t, fmt.Sprint("load ", i), d)
		if t.Failed() {
			return
		}
	}
}

// A long line under strips that stand far to the right keeps to the page.
func TestLabels_longSum(t *testing.T) {
	c := barOn(0.25, Bar{Height: in(1 + 17.0/32), Width: in(2), Covered: unit.Exactly(in(0.25))})
	c.Widths, c.Ripped = equal(1999, in(11+27.0/32)), true
	c.Widths[1000] = in(5 + 13.0/32)
	s, d := drawn(c)
	tidy(t, "long sum", d)
	for _, l := range d.labels {
		if middle := (s.x.strips[0] + s.x.strips[1]) / 2; l.shows == "strips width" && middle+l.box().width()/2 < Width-margin {
			t.Errorf("%q under %.0f fits where it is, want one that has to be moved", l.text, middle)
		}
		if b := l.box(); l.shows == "strips width" && (b.x1 > Width-margin+0.01 || b.x0 < margin-0.01) {
			t.Errorf("%q runs from %.1f to %.1f, want it within the margins", l.text, b.x0, b.x1)
		}
	}
}

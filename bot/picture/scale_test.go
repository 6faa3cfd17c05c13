package picture

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"presshand/engine/unit"
)

// corners returns the bounding box of a polygon as it stands in the SVG.
func corners(t *testing.T, e element) box {
	t.Helper()
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range strings.Fields(e.attr["points"]) {
		xs, ys, _ := strings.Cut(p, ",")
		x, errX := strconv.ParseFloat(xs, 64)
		y, errY := strconv.ParseFloat(ys, 64)
		if errX != nil || errY != nil {
			t.Fatalf("point %q is not two numbers", p)
		}
		b = box{min(b.x0, x), min(b.y0, y), max(b.x1, x), max(b.y1, y)}
	}
	return b
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("data %q is not a number", s)
	}
	return v
}

// Each layer's height, read back from its shape, is in one ratio to the height
// that was put in, and each measure beside the section is that height.
func TestCrossSection_toScale(t *testing.T) {
	for name, of := range sections() {
		c := of.(CrossSection)
		d, err := c.Draw()
		if err != nil {
			t.Fatal(err)
		}
		all := readSVG(t, d.SVG())
		want := map[string][]float64{}
		for _, l := range c.Layers {
			want[string(l.Part)] = append(want[string(l.Part)], l.Thickness.Millimetres())
		}
		scale, got := 0.0, map[string][]float64{}
		for _, e := range all {
			part := e.attr["data-shows"]
			mm, ok := e.attr["data-mm"]
			if e.name != "polygon" || !ok || want[part] == nil && part != "bar" && part != "bar idle" {
				continue
			}
			h := corners(t, e).height()
			if v := number(t, mm); scale == 0 {
				scale = h / v
			} else if math.Abs(h/v-scale) > 0.03/v { // coordinates are rounded to 0.01
				t.Errorf("%s: %s of %s mm is %.2f high, want %.2f", name, part, mm, h, v*scale)
			}
			got[part] = append(got[part], number(t, mm))
		}
		for part, ws := range want {
			for _, w := range ws {
				if part != string(Film) && !slices.ContainsFunc(got[part], func(g float64) bool { return math.Abs(g-w) < 0.001 }) {
					t.Errorf("%s: %s drawn %v mm, want one of %.3f mm", name, part, got[part], w)
				}
			}
		}
		if c.Bar != nil && !slices.ContainsFunc(got["bar"], func(g float64) bool { return math.Abs(g-c.Bar.Height.Millimetres()) < 0.001 }) {
			t.Errorf("%s: bar drawn %v mm, want %v", name, got["bar"], c.Bar.Height.Millimetres())
		}
	}
}

// The numbers beside the section are written in the person's own units.
func TestCrossSection_measuresAsText(t *testing.T) {
	d, err := sections()["section-stack"].Draw()
	if err != nil {
		t.Fatal(err)
	}
	var texts []string
	for _, e := range readSVG(t, d.SVG()) {
		if e.name == "text" {
			texts = append(texts, strings.TrimSpace(e.text))
		}
	}
	for _, want := range []string{"sled 3/4 in", "fence 1/4 in", "strips 5/16 in", "mat 3/8 in", "caul 3/4 in", "proud 1/16 in", "lid 4 in", "6 strips of 2 in = 12 in"} {
		if !slices.Contains(texts, want) {
			t.Errorf("labels %q lack %q", texts, want)
		}
	}
}

// By hand: sled 3/4 + fence 1/4 + a sled 3/4 that lies on the fence, because
// the strips are only 3/16: 1 3/4 in.
func TestCrossSection_fenceCarries(t *testing.T) {
	s := &section{CrossSection: CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Fence, in(0.25)}, {Strips, in(3.0 / 16)}, {Sled, in(0.75)}}}}
	s.pile()
	if got := s.height.Inches(); math.Abs(got-1.75) > 1e-9 {
		t.Errorf("stack is %g in high, want 1.75 in", got)
	}
}

func TestStripLayout_toScale(t *testing.T) {
	widths := []unit.Length{0.08, 0.06, 0.1, 0.02}
	d, err := StripLayout{Panels: []StripPanel{{Widths: widths, Wedge: 0.014}}}.Draw()
	if err != nil {
		t.Fatal(err)
	}
	var got, labelled []unit.Length
	scale := 0.0
	for _, e := range readSVG(t, d.SVG()) {
		switch e.attr["data-shows"] {
		case "strip":
			mm := number(t, e.attr["data-width-mm"])
			got = append(got, unit.Millimetres(mm))
			if h := corners(t, e).height(); scale == 0 {
				scale = h / mm
			} else if math.Abs(h/mm-scale) > 0.03/mm {
				t.Errorf("strip of %g mm is %g high, want %g", mm, h, mm*scale)
			}
		case "strip width":
			labelled = append(labelled, unit.Millimetres(number(t, e.attr["data-mm"])))
		}
	}
	near := func(a, b unit.Length) bool { return math.Abs(float64(a-b)) < 1e-6 }
	if !slices.EqualFunc(got, widths, near) || !slices.EqualFunc(labelled, widths, near) {
		t.Errorf("strips drawn %v and labelled %v, want %v", got, labelled, widths)
	}
}

func TestBedPlan_toScale(t *testing.T) {
	p := plans()["bed"].(BedPlan)
	d, err := p.Draw()
	if err != nil {
		t.Fatal(err)
	}
	var bed box
	var scale float64
	drawn := map[string]int{}
	for _, e := range readSVG(t, d.SVG()) {
		b := corners(t, e)
		switch e.attr["data-shows"] {
		case "bed":
			bed, scale = b, b.width()/p.Length.Millimetres()
			if math.Abs(b.height()/p.Width.Millimetres()-scale) > 1e-4 {
				t.Errorf("bed is drawn %g by %g, want one scale", b.width(), b.height())
			}
		case "panel":
			drawn[e.attr["data-name"]]++
			want := box{number(t, e.attr["data-x-mm"]), number(t, e.attr["data-y-mm"]), 0, 0}
			for _, pair := range [][2]float64{{b.x0 - bed.x0, want.x0}, {b.y0 - bed.y0, want.y0},
				{b.width(), number(t, e.attr["data-along-mm"])}, {b.height(), number(t, e.attr["data-across-mm"])}} {
				if math.Abs(pair[0]-pair[1]*scale) > 0.03 {
					t.Errorf("panel %s: %g drawn for %g mm, want %g", e.attr["data-name"], pair[0], pair[1], pair[1]*scale)
				}
			}
		}
	}
	if !maps.Equal(drawn, map[string]int{"A": 3, "B": 2, "C": 1}) {
		t.Errorf("panels drawn %v, want 3 A, 2 B and a C", drawn)
	}
}

// Reading the chart the other way: a joint's mark lies where the tick marks
// say that its distance and pressure are.
func TestPressureChart_toScale(t *testing.T) {
	d, err := plans()["chart-long"].Draw()
	if err != nil {
		t.Fatal(err)
	}
	p := plans()["chart-long"].(PressureChart).plot(0)
	marks := map[string]box{}
	var contact box
	for _, e := range readSVG(t, d.SVG()) {
		switch e.attr["data-shows"] {
		case "joint":
			marks[e.attr["data-joint"]] = corners(t, e)
		case "contact":
			contact = corners(t, e)
		}
	}
	// Joint 1 at 2 in, joint 3 at 6 in: 4 in between them on a frame of 48 in.
	want := 4.0 / 48 * p.frame.width()
	if got := marks["3"].centre().x - marks["1"].centre().x; len(marks) != 23 || math.Abs(got-want) > 0.02 {
		t.Errorf("%d joints, 1 and 3 apart by %g, want 23 and %g", len(marks), got, want)
	}
	// Joint 1 has 300·(1 − 0.0508/0.9) kPa = 283.07 kPa, the glue needs 70 kPa.
	want = (283.0667 - 70) / (headroom * 350) * p.frame.height()
	if got := contact.y0 - marks["1"].centre().y; math.Abs(got-want) > 0.05 {
		t.Errorf("joint 1 lies %g over the contact line, want %g", got, want)
	}
}

func TestDayClock_toScale(t *testing.T) {
	d, err := plans()["clock"].Draw()
	if err != nil {
		t.Fatal(err)
	}
	n, scale := 0, 0.0
	for _, e := range readSVG(t, d.SVG()) {
		if e.attr["data-shows"] != "press" {
			continue
		}
		n++
		minutes := number(t, e.attr["data-to-min"]) - number(t, e.attr["data-from-min"])
		if minutes != 90 {
			t.Errorf("%s is pressed %g min, want 90", e.attr["data-load"], minutes)
		}
		h := corners(t, e).height()
		if scale == 0 {
			scale = h
		}
		if math.Abs(h-scale) > 0.02 {
			t.Errorf("%s is %g high, want %g as the others", e.attr["data-load"], h, scale)
		}
	}
	if n != 6 {
		t.Errorf("%d loads in presses, want 6", n)
	}
}

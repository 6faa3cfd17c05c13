package picture

import (
	"bytes"
	"fmt"
	"image/color"
	"image/png"
	"math"
	"testing"
)

// As it is sent a drawing is three pixels to the point.
func TestScreen_weighsLittle(t *testing.T) {
	for name, of := range samples() {
		d, err := of.Draw()
		if err != nil {
			t.Fatal(err)
		}
		got, err := d.Screen()
		if err != nil {
			t.Fatal(err)
		}
		if len(got) > 100_000 {
			t.Errorf("%s weighs %d bytes, want 100 000 at most", name, len(got))
		}
		c, err := png.DecodeConfig(bytes.NewReader(got))
		if err != nil || c.Width != 3*Width || c.Height != int(math.Ceil(d.Height()*3)) {
			t.Errorf("%s is %d by %d (%v), want %d by %g", name, c.Width, c.Height, err, 3*Width, d.Height()*3)
		}
	}
}

// A drawing so long that it would weigh too much has fewer pixels.
func TestScreen_long(t *testing.T) {
	for lines, pixels := range map[int]int{40: 3, 90: 2, 900: 1} {
		d := &Drawing{height: float64(20*lines + 20)}
		for i := range lines {
			d.text(fmt.Sprintf("strip %d of figured maple, %d 1/4 in, %d to %d psi", i, i%7, i%11, i%13), point{margin, float64(20*i + 20)}, left, textSize)
		}
		got, err := d.Screen()
		if err != nil {
			t.Fatal(err)
		}
		c, err := png.DecodeConfig(bytes.NewReader(got))
		if err != nil || c.Width != pixels*Width || pixels > 1 && len(got) > 120_000 {
			t.Errorf("%d lines are %d pixels wide (%v) and weigh %d bytes, want %d pixels to the point", lines, c.Width, err, len(got), pixels)
		}
	}
}

// The bitmap shows what the SVG does: each bar of the day's clock has its own
// colour where its shape stands in the SVG.
func TestPNG_sameShapesAsSVG(t *testing.T) {
	d, err := plans()["clock"].Draw()
	if err != nil {
		t.Fatal(err)
	}
	bytesOf, err := d.Screen()
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(bytesOf))
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, e := range readSVG(t, d.SVG()) {
		if shows := e.attr["data-shows"]; shows != "press" && shows != "lay-up" {
			continue
		}
		n++
		b := corners(t, e)
		at := img.At(int(3*b.x0)+9, int(3*b.y0)+9) // inside, beside the label
		if got := hex(color.NRGBAModel.Convert(at).(color.NRGBA)); got != e.attr["fill"] {
			t.Errorf("%s of %s is %s in the bitmap, want %s", e.attr["data-shows"], e.attr["data-load"], got, e.attr["fill"])
		}
	}
	if n != 12 {
		t.Errorf("%d bars, want 12", n)
	}
}

func TestPNG_sizeRefused(t *testing.T) {
	d, err := sections()["section-bar"].Draw()
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range []int{0, -1, 1 << 20} {
		if _, err := d.PNG(w); err == nil {
			t.Errorf("%d pixels wide is drawn, want an error", w)
		}
	}
}

// WCAG 2.2, relative luminance and contrast ratio; 4.5 is its level AA for
// small type.
func contrast(a, b color.NRGBA) float64 {
	luminance := func(c color.NRGBA) float64 {
		channel := func(v uint8) float64 {
			s := float64(v) / 255
			if s <= 0.04045 {
				return s / 12.92
			}
			return math.Pow((s+0.055)/1.055, 2.4)
		}
		return 0.2126*channel(c.R) + 0.7152*channel(c.G) + 0.0722*channel(c.B)
	}
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func TestLabels_contrast(t *testing.T) {
	for name, of := range samples() {
		d, err := of.Draw()
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range d.labels {
			ground := paper
			for _, s := range d.shapes { // the last filled shape under the label's middle
				if s.closed && s.fill.A > 0 && holds(s.points, l.box().centre()) {
					ground = s.fill
				}
			}
			if c := contrast(l.colour, ground); c < 4.5 {
				t.Errorf("%s: label %q has contrast %.1f on %s, want 4.5", name, l.text, c, hex(ground))
			}
		}
	}
}

// holds tells whether p lies in a polygon, by counting crossings.
func holds(ps []point, p point) bool {
	in := false
	for i, a := range ps {
		b := ps[(i+1)%len(ps)]
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}

func BenchmarkPNG_typicalLoad(b *testing.B) { screens(b, sections()["section-caul"]) }

func BenchmarkPNG_typicalDay(b *testing.B) { screens(b, plans()["clock"]) }

func screens(b *testing.B, of description) {
	for b.Loop() {
		d, err := of.Draw()
		if err != nil {
			b.Fatal(err)
		}
		out, err := d.Screen()
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(out)), "B/picture")
	}
}

func BenchmarkSVG_typicalLoad(b *testing.B) {
	for b.Loop() {
		d, err := sections()["section-caul"].Draw()
		if err != nil {
			b.Fatal(err)
		}
		d.SVG()
	}
}

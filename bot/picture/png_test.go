package picture

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"testing"
)

const screen = 2 * Width // pixels; two to the point, as most screens have

func TestPNG_weighsLittle(t *testing.T) {
	for name, of := range samples() {
		d, err := of.Draw()
		if err != nil {
			t.Fatal(err)
		}
		got, err := d.PNG(screen)
		if err != nil {
			t.Fatal(err)
		}
		if len(got) > 120_000 {
			t.Errorf("%s weighs %d bytes, want 120 000 at most", name, len(got))
		}
		c, err := png.DecodeConfig(bytes.NewReader(got))
		if err != nil || c.Width != screen || c.Height != int(math.Ceil(d.Height()*2)) {
			t.Errorf("%s is %d by %d (%v), want %d by %g", name, c.Width, c.Height, err, screen, d.Height()*2)
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
	bytesOf, err := d.PNG(screen)
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
		at := img.At(int(2*b.x0)+6, int(2*b.y0)+6) // inside, beside the label
		if got := hex(color.NRGBAModel.Convert(at).(color.NRGBA)); got != e.attr["fill"] {
			t.Errorf("%s of %s is %s in the bitmap, want %s", e.attr["data-shows"], e.attr["data-load"], got, e.attr["fill"])
		}
	}
	if n != 12 {
		t.Errorf("%d bars, want 12", n)
	}
}

// Long lines and the page are painted part by part, which is faster and looks
// the same: but for a shade where two parts meet.
func TestPNG_paintedInParts(t *testing.T) {
	for name, of := range samples() {
		d, err := of.Draw()
		if err != nil {
			t.Fatal(err)
		}
		size := image.Rect(0, 0, screen, int(math.Ceil(d.Height()*2)))
		parts, whole := &canvas{img: image.NewRGBA(size), scale: 2}, &canvas{img: image.NewRGBA(size), scale: 2}
		for i := range d.shapes {
			s := &d.shapes[i]
			parts.shape(s)
			if s.fill.A > 0 {
				whole.fill([][]point{s.points}, s.fill, size)
			}
			if s.stroke.A > 0 && s.width > 0 {
				whole.fill(outline(s), s.stroke, size)
			}
		}
		off := 0
		for i := range parts.img.Pix {
			if math.Abs(float64(parts.img.Pix[i])-float64(whole.img.Pix[i])) > 32 {
				off++
			}
		}
		if most := len(parts.img.Pix) / 5000; off > most {
			t.Errorf("%s: %d of %d bytes differ, want %d at most", name, off, len(parts.img.Pix), most)
		}
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

func BenchmarkPNG_typicalLoad(b *testing.B) {
	for b.Loop() {
		d, err := sections()["section-caul"].Draw()
		if err != nil {
			b.Fatal(err)
		}
		out, err := d.PNG(screen)
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

package picture

import (
	"image/color"
	"math"
	"math/rand/v2"
	"testing"
)

// sights turn linear sRGB into what is left of it without one kind of cones.
// Matrices of severity 1.0 from G. M. Machado, M. M. Oliveira and L. A. F.
// Fernandes, A Physiologically-based Model for Simulation of Color Vision
// Deficiency, IEEE Transactions on Visualization and Computer Graphics 15 (2009),
// 1291–1298, as its authors tabulate them.
var sights = map[string][3][3]float64{
	"all cones":    {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"protanopia":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deuteranopia": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritanopia":   {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// seen is a colour in CIELAB as it looks to an eye.
func seen(c color.NRGBA, sight [3][3]float64) [3]float64 {
	linear := func(v uint8) float64 { // IEC 61966-2-1
		if s := float64(v) / 255; s > 0.04045 {
			return math.Pow((s+0.055)/1.055, 2.4)
		} else {
			return s / 12.92
		}
	}
	in, out := [3]float64{linear(c.R), linear(c.G), linear(c.B)}, [3]float64{}
	for i, row := range sight {
		out[i] = min(max(row[0]*in[0]+row[1]*in[1]+row[2]*in[2], 0), 1)
	}
	f := func(t float64) float64 { // CIE 15
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	x := f((0.4124*out[0] + 0.3576*out[1] + 0.1805*out[2]) / 0.9505)
	y := f(0.2126*out[0] + 0.7152*out[1] + 0.0722*out[2])
	z := f((0.0193*out[0] + 0.1192*out[1] + 0.9505*out[2]) / 1.0890)
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

// apart is the difference of two colours to an eye, CIE 1976.
func apart(a, b color.NRGBA, sight [3][3]float64) float64 {
	p, q := seen(a, sight), seen(b, sight)
	return math.Sqrt((p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1]) + (p[2]-q[2])*(p[2]-q[2]))
}

// White and black are 100 apart to every eye; sRGB's red is 53.24, 80.09, 67.20
// in CIELAB (D65).
func TestSeen_known(t *testing.T) {
	red := seen(rgb(0xFF0000), sights["all cones"])
	for i, want := range [3]float64{53.24, 80.09, 67.20} {
		if math.Abs(red[i]-want) > 0.1 {
			t.Errorf("red is %.2f, want 53.24, 80.09, 67.20", red)
		}
	}
	for name, s := range sights {
		if got := apart(rgb(0), rgb(0xFFFFFF), s); math.Abs(got-100) > 0.1 {
			t.Errorf("%s: black and white are %.2f apart, want 100", name, got)
		}
	}
}

// leastApart is what two tints side by side must differ by, well over the 2.3
// that the eye just notices, at which they are told apart on a poor screen too
// (our own choice).
const leastApart = 8

// pattern is what is drawn within a part over its tint: marks and their colours.
func pattern(d *Drawing, at int) string {
	b, marks, text := around(d.shapes[at]), 0, ""
	for _, m := range d.shapes[at+1:] {
		a := around(m)
		if m.shows != "" || a.x0 < b.x0-0.1 || a.x1 > b.x1+0.1 || a.y0 < b.y0-0.1 || a.y1 > b.y1+0.1 {
			break
		}
		marks, text = marks+1, hex(m.fill)+" "+hex(m.stroke)
	}
	if marks < 3 {
		return ""
	}
	return text
}

// Whoever looks, parts that touch differ in tint or in pattern.
func TestCrossSection_partsToldApart(t *testing.T) {
	parts := map[string]bool{"sled": true, "core": true, "mat": true, "caul": true, "strips": true, "fence": true, "bar": true, "bar idle": true, "wedge": true}
	r := rand.New(rand.NewPCG(8, 1))
	met := map[string]bool{}
	for range 400 {
		_, d := drawn(randomSection(r, Units{}, ""))
		for i, a := range d.shapes {
			for j, b := range d.shapes[:i] {
				p, q := around(a), around(b)
				if !parts[a.shows] || !parts[b.shows] || a.fill == b.fill || !p.inset(-0.5).overlaps(q) || p.inset(0.5).overlaps(q) {
					continue
				}
				met[a.shows+" "+b.shows], met[b.shows+" "+a.shows] = true, true
				if pattern(d, i) != pattern(d, j) {
					continue
				}
				for name, s := range sights {
					if got := apart(a.fill, b.fill, s); got < leastApart-0.05 {
						t.Errorf("%s: %s and %s are %.1f apart and without a pattern, want %d", name, a.shows, b.shows, got, leastApart)
					}
				}
			}
		}
		if t.Failed() {
			return
		}
	}
	for _, pair := range []string{"mat sled", "mat caul", "core strips", "core caul", "wedge strips", "wedge caul", "wedge fence", "bar strips", "bar sled", "fence sled", "bar idle bar"} {
		if !met[pair] {
			t.Errorf("no %s beside each other, want some", pair)
		}
	}
}

// The inks of the signs differ from each other, and so do the shapes of the
// verdicts, which their ink alone does not tell.
func TestInks_toldApart(t *testing.T) {
	const inksApart = 12 // thin lines need more than areas do
	inks := map[string]color.NRGBA{"film": blue, "side": vermillion, "face": inkColour, "wedge": purpleInk, "pushes": greenInk}
	for a, p := range inks {
		for b, q := range inks {
			for name, s := range sights {
				if got := apart(p, q, s); a != b && got < inksApart {
					t.Errorf("%s: the inks of %s and %s are %.1f apart, want %d", name, a, b, got, inksApart)
				}
			}
		}
	}
	corners := map[Verdict]int{}
	for _, v := range []Verdict{Good, Care, Stop} {
		d := &Drawing{}
		d.verdict(point{50, 50}, 20, v)
		corners[v] = len(d.shapes[0].points)
	}
	if corners[Care] != 3 || corners[Stop] != 9 || corners[Good] < 20 {
		t.Errorf("signs have %v corners, want a triangle, an octagon and a disc", corners)
	}
}

package picture

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"math/rand/v2"
	"testing"

	"golang.org/x/image/vector"
)

// covers returns what part of each pixel the raster covers.
func covers(r *raster) []float64 {
	got := make([]float64, r.width*r.height)
	r.sweep(func(row, from, to int, covered float64) {
		for x := from; x < to; x++ {
			got[row*r.width+x] = math.Min(covered, 1)
		}
	})
	return got
}

// Any polygon covers what it does by the rasteriser of golang.org/x/image,
// which works otherwise: it sums over every pixel of the box.
func TestRaster_asAnother(t *testing.T) {
	const w, h = 600, 30 // up to 512 it reckons with whole numbers, less well
	rnd := rand.New(rand.NewPCG(1, 2))
	r := newRaster(w, h)
	for i := range 2000 {
		other := vector.NewRasterizer(w, h)
		other.DrawOp = draw.Src
		for range 1 + rnd.IntN(3) {
			n := 3 + rnd.IntN(5)
			for k := range n {
				p := point{rnd.Float64()*700 - 50, rnd.Float64()*50 - 10}
				if rnd.IntN(3) == 0 { // upright and level edges, on pixels' edges
					p = point{math.Round(p.x), math.Round(p.y)}
				}
				switch {
				case k == 0:
					r.moveTo(p)
					other.MoveTo(float32(p.x), float32(p.y))
				default:
					r.lineTo(p)
					other.LineTo(float32(p.x), float32(p.y))
				}
			}
			r.close()
			other.ClosePath()
		}
		want := image.NewAlpha(image.Rect(0, 0, w, h))
		other.Draw(want, want.Bounds(), image.Opaque, image.Point{})
		for at, c := range covers(r) {
			if math.Abs(c-float64(want.Pix[at])/255) > 0.01 {
				t.Fatalf("polygon %d covers %.3f of pixel %d, %d; want %.3f", i, c, at%w, at/w, float64(want.Pix[at])/255)
			}
		}
	}
}

// A curve is as good as its own points, many of them.
func TestRaster_curves(t *testing.T) {
	const w, h = 60, 60
	rnd := rand.New(rand.NewPCG(5, 6))
	some := func() point { return point{rnd.Float64() * w, rnd.Float64() * h} }
	curve, points := newRaster(w, h), newRaster(w, h)
	for i := range 500 {
		a, b, c, d := some(), some(), some(), some()
		curve.moveTo(a)
		points.moveTo(a)
		if i%2 == 0 {
			curve.quadTo(b, c)
		} else {
			curve.cubeTo(b, c, d)
		}
		for k := 1; k <= 1000; k++ {
			v := float64(k) / 1000
			u := 1 - v
			p := point{u*u*a.x + 2*u*v*b.x + v*v*c.x, u*u*a.y + 2*u*v*b.y + v*v*c.y}
			if i%2 == 1 {
				p = point{u*u*u*a.x + 3*u*u*v*b.x + 3*u*v*v*c.x + v*v*v*d.x, u*u*u*a.y + 3*u*u*v*b.y + 3*u*v*v*c.y + v*v*v*d.y}
			}
			points.lineTo(p)
		}
		want := covers(points)
		for at, got := range covers(curve) {
			if math.Abs(got-want[at]) > 0.1 {
				t.Fatalf("curve %d covers %.3f of pixel %d, %d; want %.3f", i, got, at%w, at/w, want[at])
			}
		}
	}
}

// By hand: a square of 2.5 by 1.5 pixels at 1.5, 1 covers half of the second
// pixel, the next two whole, and of the row below half as much.
func TestRaster_byHand(t *testing.T) {
	r := newRaster(5, 4)
	for i, p := range []point{{1.5, 1}, {4, 1}, {4, 2.5}, {1.5, 2.5}} {
		if i == 0 {
			r.moveTo(p)
		} else {
			r.lineTo(p)
		}
	}
	want := []float64{0, 0, 0, 0, 0, 0, 0.5, 1, 1, 0, 0, 0.25, 0.5, 0.5, 0, 0, 0, 0, 0, 0}
	for at, c := range covers(r) {
		if math.Abs(c-want[at]) > 1e-9 {
			t.Errorf("pixel %d, %d is covered by %g, want %g", at%5, at/5, c, want[at])
		}
	}
}

// What is written is what another reads, also where rows repeat and colours are
// transparent.
func TestEncode_readsBack(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for _, size := range []image.Point{{1, 1}, {7, 3}, {300, 120}, {1170, 40}} {
		img := image.NewPaletted(image.Rectangle{Max: size}, color.Palette{
			color.NRGBA{1, 2, 3, 0xFF}, color.NRGBA{}, color.NRGBA{200, 100, 50, 0xFF}, color.NRGBA{9, 9, 9, 0x80},
		})
		for y := range size.Y {
			for x := range size.X {
				img.SetColorIndex(x, y, uint8(rnd.IntN(4)))
			}
			if y > 0 && rnd.IntN(2) == 0 {
				copy(img.Pix[y*img.Stride:], img.Pix[(y-1)*img.Stride:y*img.Stride])
			}
		}
		data, err := encode(img)
		if err != nil {
			t.Fatal(err)
		}
		back, err := png.Decode(bytes.NewReader(data))
		if err != nil || back.Bounds() != img.Bounds() {
			t.Fatalf("%v reads back as %v (%v)", size, back, err)
		}
		for y := range size.Y {
			for x := range size.X {
				if color.NRGBAModel.Convert(back.At(x, y)) != img.At(x, y) {
					t.Fatalf("of %v pixel %d, %d is %v, want %v", size, x, y, back.At(x, y), img.At(x, y))
				}
			}
		}
	}
}

// Two inks that are all but alike are each shown as they are.
func TestCanvas_flatColours(t *testing.T) {
	a, b := rgb(0xFCFBF8), rgb(0xFFFFFF)
	d := &Drawing{height: 20}
	d.polygon(a, box{0, 0, Width, 20}.corners()...)
	d.polygon(b, box{10, 5, 20, 15}.corners()...)
	data, err := d.PNG(Width)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	for at, want := range map[image.Point]color.NRGBA{{5, 5}: a, {15, 10}: b, {25, 10}: a} {
		if got := color.NRGBAModel.Convert(img.At(at.X, at.Y)); got != want {
			t.Errorf("%v is %v, want %v", at, got, want)
		}
	}
}

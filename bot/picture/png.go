package picture

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// maxPixels keeps the memory of one picture within bounds.
const maxPixels = 40_000_000

// PNG returns the drawing so many pixels wide; twice [Width] suits most
// screens. It weighs least in its few flat colours, so it is written with a
// palette.
func (d *Drawing) PNG(width int) ([]byte, error) {
	scale := float64(width) / Width
	height := int(math.Ceil(d.height * scale))
	if width < 1 || height < 1 || float64(width)*float64(height) > maxPixels {
		return nil, fmt.Errorf("picture is %d by %d pixels, want 1 to %d in all", width, height, maxPixels)
	}
	c := &canvas{img: image.NewRGBA(image.Rect(0, 0, width, height)), scale: scale}
	for i := range d.shapes {
		c.shape(&d.shapes[i])
	}
	for _, l := range d.labels {
		c.label(l)
	}
	var w bytes.Buffer
	enc := png.Encoder{CompressionLevel: png.DefaultCompression}
	if err := enc.Encode(&w, paletted(c.img, d.colours())); err != nil {
		return nil, fmt.Errorf("png cannot be written: %w", err)
	}
	return w.Bytes(), nil
}

// A canvas is a bitmap that takes shapes in points.
type canvas struct {
	img   *image.RGBA
	scale float64
	ras   vector.Rasterizer
}

func (c *canvas) shape(s *shape) {
	if s.fill.A > 0 {
		c.fill([][]point{s.points}, s.fill)
	}
	if s.stroke.A > 0 && s.width > 0 {
		c.fill(outline(s), s.stroke)
	}
}

// fill paints closed contours; where contours of one turn overlap, they join.
func (c *canvas) fill(contours [][]point, ink color.NRGBA) {
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, ps := range contours {
		for _, p := range ps {
			b = box{min(b.x0, p.x), min(b.y0, p.y), max(b.x1, p.x), max(b.y1, p.y)}
		}
	}
	r, ok := c.begin(b)
	if !ok {
		return
	}
	for _, ps := range contours {
		for i, p := range ps {
			x, y := float32(p.x*c.scale)-float32(r.Min.X), float32(p.y*c.scale)-float32(r.Min.Y)
			if i == 0 {
				c.ras.MoveTo(x, y)
			} else {
				c.ras.LineTo(x, y)
			}
		}
		c.ras.ClosePath()
	}
	c.ras.Draw(c.img, r, image.NewUniform(ink), image.Point{})
}

// begin readies the rasteriser for the pixels of b, and says whether any of
// them are on the bitmap.
func (c *canvas) begin(b box) (image.Rectangle, bool) {
	if !(b.x0 <= b.x1 && b.y0 <= b.y1) {
		return image.Rectangle{}, false
	}
	r := image.Rect(int(math.Floor(b.x0*c.scale)), int(math.Floor(b.y0*c.scale)),
		int(math.Ceil(b.x1*c.scale)), int(math.Ceil(b.y1*c.scale))).Intersect(c.img.Bounds())
	if r.Empty() {
		return r, false
	}
	c.ras.Reset(r.Dx(), r.Dy())
	c.ras.DrawOp = draw.Over
	return r, true
}

// label fills the outlines of the letters.
func (c *canvas) label(l label) {
	b := l.box()
	r, ok := c.begin(box{b.x0 - 2, b.y0 - 2, b.x1 + 2, b.y1 + 2})
	if !ok {
		return
	}
	f := typeface(l.bold)
	size := l.size * c.scale
	ppem := fixed.Int26_6(math.Round(size * 64))
	pen := point{b.x0*c.scale - float64(r.Min.X), l.at.y*c.scale - float64(r.Min.Y)}
	var buf sfnt.Buffer
	for _, letter := range l.text {
		g, err := f.GlyphIndex(&buf, letter)
		if err != nil {
			continue
		}
		if segments, err := f.LoadGlyph(&buf, g, ppem, nil); err == nil {
			c.glyph(segments, pen)
		}
		pen.x += advance(f, &buf, letter) * size
	}
	c.ras.Draw(c.img, r, image.NewUniform(l.colour), image.Point{})
}

func (c *canvas) glyph(segments sfnt.Segments, pen point) {
	at := func(p fixed.Point26_6) (x, y float32) {
		return float32(pen.x + float64(p.X)/64), float32(pen.y + float64(p.Y)/64)
	}
	for i, s := range segments {
		x, y := at(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				c.ras.ClosePath()
			}
			c.ras.MoveTo(x, y)
		case sfnt.SegmentOpLineTo:
			c.ras.LineTo(x, y)
		case sfnt.SegmentOpQuadTo:
			x2, y2 := at(s.Args[1])
			c.ras.QuadTo(x, y, x2, y2)
		case sfnt.SegmentOpCubeTo:
			x2, y2 := at(s.Args[1])
			x3, y3 := at(s.Args[2])
			c.ras.CubeTo(x, y, x2, y2, x3, y3)
		}
	}
	if len(segments) > 0 {
		c.ras.ClosePath()
	}
}

package picture

import (
	"fmt"
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// maxPixels keeps the memory of one picture within bounds.
const maxPixels = 40_000_000

// Screen returns the drawing as PNG as it is sent and shown: three pixels to the
// point, sharp on a phone; fewer where a long drawing would weigh too much.
func (d *Drawing) Screen() (data []byte, err error) {
	for scale := sharp; scale > 0; scale-- {
		if data, err = d.PNG(scale * Width); err == nil && len(data) <= maxWeight {
			break
		}
	}
	return data, err
}

const (
	sharp     = 3       // pixels to the point
	maxWeight = 120_000 // bytes
)

// PNG returns the drawing so many pixels wide. It weighs least in its few flat
// colours, so it is written with a palette.
func (d *Drawing) PNG(width int) ([]byte, error) {
	scale := float64(width) / Width
	height := int(math.Ceil(d.height * scale))
	if width < 1 || height < 1 || float64(width)*float64(height) > maxPixels {
		return nil, fmt.Errorf("picture is %d by %d pixels, want 1 to %d in all", width, height, maxPixels)
	}
	c := newCanvas(width, height, scale, d.colours())
	for i := range d.shapes {
		c.shape(&d.shapes[i])
	}
	for _, l := range d.labels {
		c.label(l)
	}
	out, err := encode(c.bitmap())
	if err != nil {
		return nil, fmt.Errorf("png cannot be written: %w", err)
	}
	return out, nil
}

func (c *canvas) shape(s *shape) {
	if s.fill.A > 0 {
		c.contour(s.points)
		c.paint(s.fill)
	}
	if s.stroke.A > 0 && s.width > 0 {
		for _, ps := range outline(s) {
			c.contour(ps)
		}
		c.paint(s.stroke)
	}
}

func (c *canvas) contour(ps []point) {
	for i, p := range ps {
		p = point{p.x * c.scale, p.y * c.scale}
		if i == 0 {
			c.raster.moveTo(p)
		} else {
			c.raster.lineTo(p)
		}
	}
}

// label fills the outlines of the letters.
func (c *canvas) label(l label) {
	f := typeface(l.bold)
	size := l.size * c.scale
	ppem := fixed.Int26_6(math.Round(size * 64))
	pen := point{l.box().x0 * c.scale, l.at.y * c.scale}
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
	c.paint(l.colour)
}

func (c *canvas) glyph(segments sfnt.Segments, pen point) {
	at := func(p fixed.Point26_6) point { return point{pen.x + float64(p.X)/64, pen.y + float64(p.Y)/64} }
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			c.raster.moveTo(at(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			c.raster.lineTo(at(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			c.raster.quadTo(at(s.Args[0]), at(s.Args[1]))
		case sfnt.SegmentOpCubeTo:
			c.raster.cubeTo(at(s.Args[0]), at(s.Args[1]), at(s.Args[2]))
		}
	}
}

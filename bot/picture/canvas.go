package picture

import (
	"image"
	"image/color"
	"math"
)

// A canvas is a bitmap of a palette that takes shapes in points. What is covered
// whole gets its flat colour; an edge gets one of a few mixtures with what lies
// under it, so that few colours are made, which weigh little.
type canvas struct {
	img    *image.Paletted
	scale  float64
	raster *raster
	inks   quantiser
	mixed  map[uint8]*mixture
	row    []uint8 // one row of the ink in use
	ink    uint8   // of that row
}

// steps is how many mixtures an edge has, the whole ink counted. At three pixels
// to the point more are not seen, and weigh a fifth more.
const steps = 8

// A mixture is what becomes of each colour of the palette under each step of an
// ink, 0 where that was not asked for yet.
type mixture [steps][256]uint8

func newCanvas(width, height int, scale float64, flat []color.NRGBA) *canvas {
	c := &canvas{
		img: image.NewPaletted(image.Rect(0, 0, width, height), nil), scale: scale,
		raster: newRaster(width, height), mixed: map[uint8]*mixture{}, row: make([]uint8, width),
	}
	c.inks.palette = append(c.inks.palette, color.NRGBA{}) // outside the rounded corners
	for _, f := range flat {
		c.inks.keep(f)
	}
	return c
}

// bitmap returns what was painted.
func (c *canvas) bitmap() *image.Paletted {
	c.img.Palette = c.inks.palette
	return c.img
}

// paint fills what the raster was told, with a colour.
func (c *canvas) paint(ink color.NRGBA) {
	if at := c.inks.flat[ink]; at != c.ink {
		c.ink = at
		for i := range c.row {
			c.row[i] = at
		}
	}
	m := c.mixed[c.ink]
	if m == nil {
		m = &mixture{}
		c.mixed[c.ink] = m
	}
	c.raster.sweep(func(row, from, to int, covered float64) {
		step := int(math.Min(covered, 1)*steps + 0.5)
		pixels := c.img.Pix[row*c.img.Stride+from : row*c.img.Stride+to]
		switch {
		case step >= steps:
			copy(pixels, c.row)
		case step > 0:
			for i, under := range pixels {
				over := m[step][under]
				if over == 0 {
					over = c.mix(under, step)
					m[step][under] = over
				}
				pixels[i] = over
			}
		}
	})
}

// mix returns a colour under a step of the ink. A pixel is outside the picture
// or inside; its edge has no steps.
func (c *canvas) mix(under uint8, step int) uint8 {
	if under == 0 {
		if 2*step < steps {
			return 0
		}
		return c.ink
	}
	a, b := c.inks.palette[under].(color.NRGBA), c.inks.palette[c.ink].(color.NRGBA)
	part := func(x, y uint8) uint8 { return uint8((int(x)*(steps-step) + int(y)*step + steps/2) / steps) }
	return c.inks.index(part(a.R, b.R), part(a.G, b.G), part(a.B, b.B))
}

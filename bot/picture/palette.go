package picture

import (
	"image"
	"image/color"
)

// colours returns each flat colour of the drawing once.
func (d *Drawing) colours() []color.NRGBA {
	seen := map[color.NRGBA]bool{none: true}
	var cs []color.NRGBA
	keep := func(c color.NRGBA) {
		if !seen[c] {
			seen[c] = true
			cs = append(cs, c)
		}
	}
	for i := range d.shapes {
		keep(d.shapes[i].fill)
		keep(d.shapes[i].stroke)
	}
	for _, l := range d.labels {
		keep(l.colour)
	}
	return cs
}

// paletted returns img with at most 256 colours: the flat ones as they are,
// the softened edges between them as met, rounded once the palette is full.
func paletted(img *image.RGBA, flat []color.NRGBA) *image.Paletted {
	q := &quantiser{}
	q.palette = append(q.palette, color.NRGBA{}) // outside the rounded corners
	for _, c := range flat {
		q.index(c.R, c.G, c.B)
	}
	out := image.NewPaletted(img.Rect, nil)
	var last [4]uint8
	at := uint8(0)
	for i := range out.Pix {
		p := [4]uint8(img.Pix[4*i : 4*i+4])
		if p != last {
			last, at = p, 0
			if p[3] >= 0x80 {
				at = q.index(p[0], p[1], p[2])
			}
		}
		out.Pix[i] = at
	}
	out.Palette = q.palette
	return out
}

// A quantiser hands out places in a palette to colours, alike ones (five bits
// a channel) sharing one.
type quantiser struct {
	palette color.Palette
	table   [1 << 15]uint8
}

func (q *quantiser) index(r, g, b uint8) uint8 {
	key := int(r>>3)<<10 | int(g>>3)<<5 | int(b>>3)
	if i := q.table[key]; i != 0 {
		return i
	}
	i := uint8(0)
	c := color.NRGBA{r, g, b, 0xFF}
	if len(q.palette) < 256 {
		q.palette = append(q.palette, c)
		i = uint8(len(q.palette) - 1)
	} else {
		i = uint8(1 + q.palette[1:].Index(c))
	}
	q.table[key] = i
	return i
}

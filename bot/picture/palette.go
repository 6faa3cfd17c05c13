package picture

import "image/color"

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

// A quantiser hands out places in a palette to colours, alike ones (five bits
// a channel) sharing one.
type quantiser struct {
	palette color.Palette
	flat    map[color.NRGBA]uint8
	table   [1 << 15]uint8
}

// keep gives a flat colour a place of its own, so that it is shown as it is.
func (q *quantiser) keep(c color.NRGBA) {
	if q.flat == nil {
		q.flat = map[color.NRGBA]uint8{}
	}
	i := uint8(len(q.palette))
	q.palette = append(q.palette, c)
	q.flat[c] = i
	if key := keyOf(c.R, c.G, c.B); q.table[key] == 0 {
		q.table[key] = i
	}
}

func keyOf(r, g, b uint8) int { return int(r>>3)<<10 | int(g>>3)<<5 | int(b>>3) }

func (q *quantiser) index(r, g, b uint8) uint8 {
	key := keyOf(r, g, b)
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

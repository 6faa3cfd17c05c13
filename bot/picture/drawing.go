package picture

import (
	"image/color"
	"math"
)

// Width is that of every drawing, in points. A phone shows it one to one.
const Width = 390

const margin = 12

// A Drawing is laid out and ready to be written.
type Drawing struct {
	Title string
	Alt   string // the drawing in words

	height float64
	shapes []shape
	labels []label
}

// Height returns the drawing's height in points; [Width] is its width.
func (d *Drawing) Height() float64 { return d.height }

type point struct{ x, y float64 }

// A shape is a polygon or a line. What it shows goes into the SVG as data.
type shape struct {
	shows  string
	facts  []fact
	points []point
	closed bool
	fill   color.NRGBA
	stroke color.NRGBA
	width  float64
	dash   []float64
}

// A fact is a data attribute: a measure, or a word about one.
type fact struct{ key, value string }

type anchor int

const (
	left anchor = iota
	centre
	right
)

// A label is one line of text; at is where its baseline begins, is centred or
// ends.
type label struct {
	shows  string
	facts  []fact
	text   string
	at     point
	anchor anchor
	size   float64
	bold   bool
	colour color.NRGBA
}

// Type sizes, in points.
const (
	titleSize = 17
	textSize  = 13
	smallSize = 12
)

func (d *Drawing) add(s shape) { d.shapes = append(d.shapes, s) }

func (d *Drawing) rect(b box, fill, stroke color.NRGBA) *shape {
	d.add(shape{points: b.corners(), closed: true, fill: fill, stroke: stroke, width: 1})
	return &d.shapes[len(d.shapes)-1]
}

func (d *Drawing) line(stroke color.NRGBA, width float64, points ...point) *shape {
	d.add(shape{points: points, stroke: stroke, width: width})
	return &d.shapes[len(d.shapes)-1]
}

func (d *Drawing) polygon(fill color.NRGBA, points ...point) *shape {
	d.add(shape{points: points, closed: true, fill: fill})
	return &d.shapes[len(d.shapes)-1]
}

func (d *Drawing) disc(c point, r float64, fill, stroke color.NRGBA) *shape {
	d.add(shape{points: arc(c, r, 0, 2*math.Pi, 24), closed: true, fill: fill, stroke: stroke, width: 1.2})
	return &d.shapes[len(d.shapes)-1]
}

// text adds a label and returns it, to be made bold or coloured.
func (d *Drawing) text(s string, at point, a anchor, size float64) *label {
	d.labels = append(d.labels, label{text: clean(s), at: at, anchor: a, size: size, colour: inkColour})
	return &d.labels[len(d.labels)-1]
}

// box returns the space that the label takes.
func (l label) box() box {
	w := textWidth(l.text, l.size, l.bold)
	x := l.at.x
	switch l.anchor {
	case centre:
		x -= w / 2
	case right:
		x -= w
	}
	return box{x, l.at.y - ascent*l.size, x + w, l.at.y + descent*l.size}
}

// A box is upright; y grows downwards.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) corners() []point {
	return []point{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}}
}

func (b box) width() float64  { return b.x1 - b.x0 }
func (b box) height() float64 { return b.y1 - b.y0 }
func (b box) centre() point   { return point{(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2} }

func (b box) overlaps(c box) bool {
	return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1
}

func (b box) inset(by float64) box { return box{b.x0 + by, b.y0 + by, b.x1 - by, b.y1 - by} }

// rounded returns the outline of b with corners of radius r.
func (b box) rounded(r float64) []point {
	var ps []point
	for i, c := range []point{{b.x1 - r, b.y1 - r}, {b.x0 + r, b.y1 - r}, {b.x0 + r, b.y0 + r}, {b.x1 - r, b.y0 + r}} {
		ps = append(ps, arc(c, r, float64(i)*math.Pi/2, float64(i+1)*math.Pi/2, 6)...)
	}
	return ps
}

func arc(c point, r, from, to float64, n int) []point {
	ps := make([]point, 0, n+1)
	for i := range n + 1 {
		a := from + (to-from)*float64(i)/float64(n)
		ps = append(ps, point{c.x + r*math.Cos(a), c.y + r*math.Sin(a)})
	}
	return ps
}

// hatch draws lines at 45° across b, apart by gap.
func (d *Drawing) hatch(b box, gap, width float64, stroke color.NRGBA) {
	for c := b.x0 + b.y0 + gap/2; c < b.x1+b.y1; c += gap { // each line is x + y = c
		x0, x1 := math.Max(b.x0, c-b.y1), math.Min(b.x1, c-b.y0)
		if x1-x0 > 0.5 {
			d.line(stroke, width, point{x0, c - x0}, point{x1, c - x1})
		}
	}
}

// arrow draws a solid arrow from one point to another.
func (d *Drawing) arrow(from, to point, width, head float64, c color.NRGBA) *shape {
	dx, dy := to.x-from.x, to.y-from.y
	l := math.Hypot(dx, dy)
	if l == 0 {
		l = 1
	}
	ux, uy := dx/l, dy/l
	at := func(along, across float64) point {
		return point{from.x + ux*along - uy*across, from.y + uy*along + ux*across}
	}
	return d.polygon(c, at(0, -width/2), at(l-head, -width/2), at(l-head, -head/2), at(l, 0), at(l-head, head/2), at(l-head, width/2), at(0, width/2))
}

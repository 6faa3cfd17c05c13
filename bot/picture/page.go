package picture

import "image/color"

// heading sets the title and a note under it, and returns where the drawing
// proper may begin.
func (d *Drawing) heading(title, note string) float64 {
	d.Title = clean(title)
	y := 28.0
	l := d.text(fit(title, titleSize, true, Width-2*margin), point{margin, y}, left, titleSize)
	l.bold, l.shows = true, "title"
	for _, line := range wrap(note, smallSize, Width-2*margin) {
		y += 16
		d.text(line, point{margin, y}, left, smallSize).colour = softInk
	}
	return y + 12
}

// finish closes the page at a height, on its own ground.
func (d *Drawing) finish(height float64) *Drawing {
	d.height = height
	ground := shape{
		shows: "page", points: box{0.5, 0.5, Width - 0.5, height - 0.5}.rounded(10), closed: true,
		fill: paper, stroke: border, width: 1,
	}
	d.shapes = append([]shape{ground}, d.shapes...)
	return d
}

// A key line explains one sign of the drawing, or states a figure.
type keyLine struct {
	sign   func(d *Drawing, b box) // draws the sign in a box of 18 by 14
	text   string
	strong bool
	colour color.NRGBA
	shows  string
	facts  []fact
}

// boldWider is about how much wider bold letters are set.
const boldWider = 1.08

// key sets lines under a drawing and returns where they end.
func (d *Drawing) key(y float64, lines []keyLine) float64 {
	const indent = margin + 26
	for _, k := range lines {
		size := float64(textSize)
		if k.strong {
			size *= boldWider
		}
		for i, text := range wrap(k.text, size, Width-margin-indent) {
			y += 18
			if i == 0 && k.sign != nil {
				k.sign(d, box{margin, y - 12, margin + 18, y + 2})
			}
			l := d.text(text, point{indent, y}, left, textSize)
			if k.colour.A > 0 {
				l.colour = k.colour
			}
			l.bold = k.strong && textWidth(text, textSize, true) <= Width-margin-indent
			if i == 0 {
				l.shows, l.facts = k.shows, k.facts
			}
		}
		y += 3
	}
	return y
}

// warning draws a triangle with an exclamation mark, so that too little is not
// told by colour alone.
func (d *Drawing) warning(c point, size float64) {
	h := size / 2
	s := d.polygon(vermillion, point{c.x, c.y - h}, point{c.x + h*1.1, c.y + h}, point{c.x - h*1.1, c.y + h})
	s.shows = "warning"
	d.line(white, size/7, point{c.x, c.y - h*0.35}, point{c.x, c.y + h*0.35})
	d.line(white, size/7, point{c.x, c.y + h*0.55}, point{c.x, c.y + h*0.82})
}

package picture

// Below sets another drawing under this one, on one page and with both their
// words.
func (d *Drawing) Below(under *Drawing) *Drawing {
	const seam = 8 // the lower one's heading has room over it
	out := &Drawing{Title: d.Title, Alt: d.Alt + " " + under.Alt}
	y := d.height - seam
	for _, s := range append(d.parts(), shape{points: []point{{margin, y}, {Width - margin, y}}, stroke: border, width: 1}) {
		out.add(s)
	}
	out.labels = append(out.labels, d.labels...)
	for _, s := range under.parts() {
		moved := make([]point, len(s.points))
		for i, p := range s.points {
			moved[i] = point{p.x, p.y + y}
		}
		s.points = moved
		out.add(s)
	}
	for _, l := range under.labels {
		l.at.y += y
		out.labels = append(out.labels, l)
	}
	return out.finish(y + under.height)
}

// parts are the shapes of a drawing without its page.
func (d *Drawing) parts() []shape {
	if len(d.shapes) > 0 && d.shapes[0].shows == "page" {
		return d.shapes[1:len(d.shapes):len(d.shapes)]
	}
	return d.shapes[:len(d.shapes):len(d.shapes)]
}

package picture

import "math"

// word is how a verdict is put in words.
func (v Verdict) word() string {
	switch v {
	case Good:
		return "good"
	case Care:
		return "take care"
	case Stop:
		return "stop"
	}
	return ""
}

// verdict draws the sign of a verdict, told by its shape as well: a tick in a
// disc, a triangle, an octagon.
func (d *Drawing) verdict(c point, size float64, v Verdict) {
	r := size / 2
	switch v {
	case Good:
		d.disc(c, r, greenInk, none).shows = "good"
		d.line(white, size/8, point{c.x - r*0.45, c.y}, point{c.x - r*0.1, c.y + r*0.4}, point{c.x + r*0.5, c.y - r*0.4})
	case Care:
		d.warning(c, size*0.86)
	case Stop:
		d.polygon(redInk, arc(c, r, math.Pi/8, math.Pi/8+2*math.Pi, 8)...).shows = "stop"
		d.line(white, size/6, point{c.x - r*0.5, c.y}, point{c.x + r*0.5, c.y})
	}
}

// squeeze draws the sign of a joint's pressure: two arrows that meet in it,
// crossed out where there is none.
func (d *Drawing) squeeze(b box, nothing bool) {
	c := b.centre()
	head := min(8, b.height()*0.6)
	d.arrow(point{b.x0, c.y}, point{c.x - 1.2, c.y}, 2.6, head, vermillion).shows = "joint arrow"
	d.arrow(point{b.x1, c.y}, point{c.x + 1.2, c.y}, 2.6, head, vermillion).shows = "joint arrow"
	d.line(inkColour, 1.2, point{c.x, b.y0 + 1}, point{c.x, b.y1 - 1})
	if nothing {
		d.line(inkColour, 1.8, point{b.x0 + 2, b.y1 - 1}, point{b.x1 - 2, b.y0 + 1}).shows = "crossed out"
	}
}

func filmSign(d *Drawing, b box) {
	d.line(blue, 2.4, point{b.x0, b.y1 - 1}, point{b.x1, b.y1 - 1})
	c := b.centre()
	d.arrow(point{c.x, b.y0 - 1}, point{c.x, b.y1 - 3}, 2.6, 8, inkColour)
}

func sheetSign(d *Drawing, b box) {
	y := b.centre().y
	d.line(blue, 1.6, point{b.x0, y}, point{b.x1, y}).dash = []float64{5, 3}
}

func jointSign(d *Drawing, b box)   { d.squeeze(box{b.x0 - 1, b.y0, b.x1 + 1, b.y1}, false) }
func noJointSign(d *Drawing, b box) { d.squeeze(box{b.x0 - 1, b.y0, b.x1 + 1, b.y1}, true) }
func careSign(d *Drawing, b box)    { d.verdict(b.centre(), 15, Care) }
func stopSign(d *Drawing, b box)    { d.verdict(b.centre(), 15, Stop) }
func verdictSign(v Verdict) func(d *Drawing, b box) {
	switch v {
	case Care:
		return careSign
	case Stop:
		return stopSign
	}
	return heightSign
}

func fenceSign(d *Drawing, b box) {
	y := b.centre().y
	d.arrow(point{b.x1, y}, point{b.x0, y}, 3, 8, purpleInk)
}

func riseSign(d *Drawing, b box) {
	c := b.centre()
	d.line(purpleInk, 1.6, point{b.x0, b.y1 - 2}, point{c.x, b.y0 + 2}, point{b.x1, b.y1 - 2}).dash = []float64{4, 2}
}

func hatchSign(d *Drawing, b box) {
	d.rect(b, white, inkColour)
	d.hatch(b.inset(0.5), 5, 1, softInk)
}

func coverSign(d *Drawing, b box) { d.rect(b, white, softInk).dash = []float64{4, 3} }

func matSign(d *Drawing, b box) {
	y := b.centre().y
	d.line(greenInk, 1.6, point{b.x0, y}, point{b.x1, y}).dash = []float64{5, 3}
}

func pushSign(d *Drawing, b box) {
	c := b.centre()
	d.line(greenInk, 1.3, point{c.x, b.y0}, point{c.x, b.y1})
	for _, y := range []float64{b.y0, b.y1} {
		d.line(greenInk, 1.3, point{c.x - 5, y}, point{c.x + 5, y})
	}
}

func heightSign(d *Drawing, b box) {
	c := b.centre()
	d.line(inkColour, 1.3, point{c.x, b.y0}, point{c.x, b.y1})
	for _, y := range []float64{b.y0, b.y1} {
		d.line(inkColour, 1.3, point{c.x - 5, y}, point{c.x + 5, y})
	}
}

func tentSign(d *Drawing, b box) {
	d.rect(box{b.x1 - 6, b.y0, b.x1, b.y1}, barTint, inkColour)
	d.line(blue, 2.2, point{b.x0, b.y1 - 1}, point{b.x0 + 3, b.y1 - 1}, point{b.x1 - 8, b.y0 + 3}, point{b.x1 - 8, b.y0})
}

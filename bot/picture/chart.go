package picture

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// A PressureAt is the side pressure at a distance from the bar's face.
type PressureAt struct {
	Distance unit.Length
	Pressure unit.Range[unit.Pressure]
}

// A Joint is a glue line between two strips, counted from the bar.
type Joint struct {
	Number int
	PressureAt
}

// A PressureChart shows how the side pressure falls with the distance from the
// bar. Curve rises in distance; straight lines join its points. Zero levels
// and a zero reach are not shown.
type PressureChart struct {
	Title   string
	Curve   []PressureAt
	Joints  []Joint
	Contact unit.Pressure // what the glue needs
	Full    unit.Pressure // what gives its full strength
	Reach   unit.Range[unit.Length]
	Preload unit.Range[unit.Pressure] // held at every joint by a wedge
	Units   Units
}

// Draw lays the chart out. It fails with fewer than two points, and on figures
// that are not finite.
func (c PressureChart) Draw() (*Drawing, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	d := &Drawing{Alt: c.alt()}
	top := d.heading(or(c.Title, "Side pressure along the panel"), "Middle line with its range; joints numbered from the bar.")
	p := c.plot(top)
	p.d = d
	p.drawGrid()
	p.drawReach()
	p.drawBand()
	p.drawLevels()
	p.drawJoints()
	return d.finish(d.key(p.frame.y1+48, p.keyLines()) + margin), nil
}

func (c PressureChart) check() error {
	if len(c.Curve) < 2 {
		return fmt.Errorf("curve has %d points, want two or more", len(c.Curve))
	}
	last := unit.Length(-1)
	for _, p := range c.Curve {
		if !(p.Distance > last) {
			return errors.New("curve runs back, want rising distances")
		}
		last = p.Distance
	}
	points := c.Curve[:len(c.Curve):len(c.Curve)]
	for _, j := range c.Joints {
		points = append(points, j.PressureAt)
	}
	for _, p := range points {
		if err := usable("distance", p.Distance); err != nil {
			return err
		}
		for _, v := range []unit.Pressure{p.Pressure.Low, p.Pressure.Mid, p.Pressure.High} {
			if !(v >= 0 && v < 1e9) {
				return fmt.Errorf("side pressure is %g kPa, want 0 or more", v.Kilopascals())
			}
		}
	}
	return nil
}

// A plot is a chart with its axes settled.
type plot struct {
	PressureChart
	d        *Drawing
	frame    box
	width    unit.Length   // at the right edge
	most     unit.Pressure // at the upper edge
	fullFits bool
}

const plotHeight = 230

func (c PressureChart) plot(top float64) *plot {
	p := &plot{PressureChart: c}
	p.width = c.Curve[len(c.Curve)-1].Distance
	high := max(c.Preload.High, 0)
	for _, pt := range c.Curve {
		high = max(high, pt.Pressure.High)
	}
	for _, j := range c.Joints {
		p.width = max(p.width, j.Distance)
		high = max(high, j.Pressure.High)
	}
	high = max(high, c.Contact)
	p.fullFits = c.Full > 0 && c.Full <= high*8/5
	if p.fullFits {
		high = max(high, c.Full)
	}
	p.most = max(high*112/100, 1000)
	p.frame = box{margin + 38, top + 22, Width - margin - 12, top + 22 + plotHeight}
	return p
}

func (p *plot) px(l unit.Length) float64 {
	return p.frame.x0 + float64(l/p.width)*p.frame.width()
}

func (p *plot) py(v unit.Pressure) float64 {
	return p.frame.y1 - float64(v/p.most)*p.frame.height()
}

// drawGrid draws the axes with round numbers in the person's own units.
func (p *plot) drawGrid() {
	d, f := p.d, p.frame
	d.rect(f, white, none)
	u := p.Units.pressureAxis()
	for _, v := range ticks(u.Of(p.most.Pascals()), 6) {
		y := p.py(unit.Pressure(u.SI(v)))
		d.line(rgb(0xE6E8EA), 1, point{f.x0, y}, point{f.x1, y})
		d.text(trimmed(v, 6), point{f.x0 - 6, y + 4}, right, smallSize)
	}
	l := d.text("side pressure, "+u.Symbol, point{margin, f.y0 - 9}, left, smallSize)
	l.colour = softInk
	w := p.Units.lengthAxis()
	for _, v := range ticks(w.Of(p.width.Metres()), 6) {
		x := p.px(unit.Length(w.SI(v)))
		d.line(inkColour, 1, point{x, f.y1}, point{x, f.y1 + 4})
		d.text(trimmed(v, 6), point{x, f.y1 + 17}, centre, smallSize)
	}
	d.text("distance from the bar, "+w.Symbol, point{(f.x0 + f.x1) / 2, f.y1 + 35}, centre, smallSize).colour = softInk
	d.line(inkColour, 1.4, point{f.x0, f.y0}, point{f.x0, f.y1}, point{f.x1, f.y1})
}

// ticks returns round numbers from 0 to most, about n of them.
func ticks(most float64, n int) []float64 {
	step := math.Pow(10, math.Floor(math.Log10(most/float64(n))))
	for _, k := range []float64{1, 2, 5, 10} {
		if most/(step*k) <= float64(n) {
			step *= k
			break
		}
	}
	var vs []float64
	for i := 0; float64(i)*step <= most*(1+1e-9); i++ {
		vs = append(vs, float64(i)*step)
	}
	return vs
}

// drawReach shades what the bar does not reach.
func (p *plot) drawReach() {
	if p.Reach.Mid <= 0 || p.Reach.Mid >= p.width {
		return
	}
	x := p.px(p.Reach.Mid)
	b := box{x, p.frame.y0, p.frame.x1, p.frame.y1}
	p.d.rect(b, rgb(0xF1F1EE), none)
	p.d.hatch(b, 11, 1, faint)
	s := p.d.line(softInk, 1.6, point{x, b.y0}, point{x, b.y1})
	s.dash, s.shows, s.facts = []float64{2, 3}, "reach", []fact{measure("mm", p.Reach.Mid)}
}

func (p *plot) drawBand() {
	var up, down, mid []point
	for _, c := range p.Curve {
		x := p.px(c.Distance)
		up = append(up, point{x, p.py(c.Pressure.High)})
		down = append([]point{{x, p.py(c.Pressure.Low)}}, down...)
		mid = append(mid, point{x, p.py(c.Pressure.Mid)})
	}
	p.d.polygon(bandTint, append(up, down...)...).shows = "range"
	p.d.line(skyBlue, 1, up...)
	p.d.line(skyBlue, 1, down...)
	p.d.line(blue, 2.8, mid...).shows = "middle"
	if p.Preload.Mid > 0 {
		y := p.py(p.Preload.Mid)
		s := p.d.line(purple, 2.4, point{p.frame.x0, y}, point{p.frame.x1, y})
		s.dash, s.shows, s.facts = []float64{10, 3}, "preload", []fact{kilopascals("kpa", p.Preload.Mid)}
	}
}

func (p *plot) drawLevels() {
	level := func(v unit.Pressure, name string, sign shape) {
		y := p.py(v)
		s := p.d.line(sign.stroke, sign.width, point{p.frame.x0, y}, point{p.frame.x1, y})
		s.dash, s.shows, s.facts = sign.dash, name, []fact{kilopascals("kpa", v)}
	}
	if p.Contact > 0 {
		level(p.Contact, "contact", contactLine)
	}
	if p.fullFits {
		level(p.Full, "full", fullLine)
	}
}

var (
	contactLine = shape{stroke: vermillion, width: 2, dash: []float64{7, 4}}
	fullLine    = shape{stroke: green, width: 2, dash: []float64{2, 3}}
)

// drawJoints sets a mark on the middle line at each joint and numbers over the
// frame as many as there is room for, the first and the last surely.
func (p *plot) drawJoints() {
	last := len(p.Joints) - 1
	free, lastX := p.frame.x0-30, 0.0
	if last >= 0 {
		lastX = p.px(p.Joints[last].Distance)
	}
	for i, j := range p.Joints {
		x, y := p.px(j.Distance), p.py(j.Pressure.Mid)
		p.whisker(x, j.Pressure)
		s := p.d.disc(point{x, y}, 4, white, inkColour)
		s.shows = "joint"
		s.facts = []fact{{"joint", strconv.Itoa(j.Number)}, measure("mm", j.Distance), kilopascals("kpa", j.Pressure.Mid)}
		if x-free < 19 || i != last && lastX-x < 19 {
			continue
		}
		free = x
		p.d.disc(point{x, p.frame.y0 + 10}, 8, white, inkColour)
		l := p.d.text(strconv.Itoa(j.Number), point{x, p.frame.y0 + 13.8}, centre, 10.5)
		l.bold, l.shows = true, "joint number"
	}
}

// whisker draws a joint's range, lightly where there are many.
func (p *plot) whisker(x float64, r unit.Range[unit.Pressure]) {
	if len(p.Joints) > 12 {
		p.d.line(skyBlue, 0.8, point{x, p.py(r.High)}, point{x, p.py(r.Low)})
		return
	}
	p.d.line(softInk, 1, point{x, p.py(r.High)}, point{x, p.py(r.Low)})
	for _, e := range []unit.Pressure{r.Low, r.High} {
		p.d.line(softInk, 1.2, point{x - 3.5, p.py(e)}, point{x + 3.5, p.py(e)})
	}
}

func (p *plot) keyLines() []keyLine {
	u := p.Units
	band := func(d *Drawing, b box) {
		c := b.centre()
		d.rect(box{b.x0, b.y0 + 1, b.x1, b.y1 - 1}, bandTint, none)
		d.line(blue, 2.8, point{b.x0, c.y}, point{b.x1, c.y})
		d.disc(c, 3.6, white, inkColour)
	}
	like := func(s shape) func(d *Drawing, b box) {
		return func(d *Drawing, b box) {
			y := b.centre().y
			d.line(s.stroke, s.width, point{b.x0, y}, point{b.x1, y}).dash = s.dash
		}
	}
	var ks []keyLine
	for _, j := range p.ends() {
		ks = append(ks, keyLine{sign: band, strong: true, text: fmt.Sprintf("Joint %d: %s", j.Number, span(j.Pressure, u.pressure))})
	}
	if p.Contact > 0 {
		ks = append(ks, keyLine{sign: like(contactLine), text: "The glue needs " + u.pressure(p.Contact)})
	}
	if p.Full > 0 {
		text := "Full strength from " + u.pressure(p.Full)
		if !p.fullFits {
			text += ", above this chart"
		}
		ks = append(ks, keyLine{sign: like(fullLine), text: text})
	}
	if p.Preload.Mid > 0 {
		ks = append(ks, keyLine{sign: like(shape{stroke: purple, width: 2.4, dash: []float64{10, 3}}), text: "Wedge holds " + span(p.Preload, u.pressure)})
	}
	if p.Reach.Mid > 0 {
		k := keyLine{sign: reachSign, text: "The bar reaches " + span(p.Reach, u.length)}
		if p.Reach.Mid < p.width {
			k.sign = func(d *Drawing, b box) { d.rect(b, rgb(0xF1F1EE), softInk); d.hatch(b.inset(0.5), 6, 1, softInk) }
			k.text += "; beyond (hatched) only fit or a wedge holds"
		}
		ks = append(ks, k)
	}
	return ks
}

func reachSign(d *Drawing, b box) {
	y := b.centre().y
	d.line(inkColour, 1.4, point{b.x0, b.y0 + 1}, point{b.x0, b.y1 - 1})
	d.arrow(point{b.x0, y}, point{b.x1, y}, 1.4, 7, inkColour)
}

// ends returns the first joint and the one with the least pressure.
func (c PressureChart) ends() []Joint {
	if len(c.Joints) == 0 {
		return nil
	}
	least := c.Joints[0]
	for _, j := range c.Joints {
		if j.Pressure.Mid <= least.Pressure.Mid {
			least = j
		}
	}
	if least.Number == c.Joints[0].Number {
		return c.Joints[:1]
	}
	return []Joint{c.Joints[0], least}
}

func (c PressureChart) alt() string {
	var b strings.Builder
	u := c.Units
	first, last := c.Curve[0], c.Curve[len(c.Curve)-1]
	fmt.Fprintf(&b, "Chart of side pressure against distance from the bar: from %s at %s to %s at %s.",
		span(first.Pressure, u.pressure), u.length(first.Distance), span(last.Pressure, u.pressure), u.length(last.Distance))
	p := &plot{PressureChart: c, width: last.Distance, fullFits: true}
	for _, k := range p.keyLines() {
		fmt.Fprintf(&b, " %s.", strings.ReplaceAll(k.text, " (hatched)", ""))
	}
	return b.String()
}

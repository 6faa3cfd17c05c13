package picture

import (
	"errors"
	"fmt"
	"math"

	"presshand/engine/unit"
)

// A PressureAt is the side pressure at a distance from the first bar's face.
type PressureAt struct {
	Distance unit.Length
	Pressure unit.Range[unit.Pressure]
}

// A Joint is a glue line between two strips, counted from the first bar.
type Joint struct {
	Number int
	PressureAt
}

// A Pusher is what pushes on a panel's edge.
type Pusher int

const (
	OneBar    Pusher = iota
	TwoBars          // one on either side
	FilmAlone        // on the strips' own edge
)

// A PressureChart shows how the side pressure falls with the distance from the
// bar. Curve is the bar's push, rising in distance from one edge of the panel to
// the other; straight lines join its points. A threshold of zero is not shown.
type PressureChart struct {
	Title   string
	Pusher  Pusher
	Curve   []PressureAt
	Joints  []Joint       // with what holds each: the larger of push and preload
	Contact unit.Pressure // what the glue needs
	Full    unit.Pressure // what gives its full strength
	Reach   unit.Range[unit.Length]
	Preload unit.Range[unit.Pressure] // held at every joint by a wedge
	Closing unit.Range[unit.Pressure] // what closing gaps takes of it
	Units   Units
}

// Draw lays the chart out. It fails with fewer than two points, and on figures
// that are not finite.
func (c PressureChart) Draw() (*Drawing, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	d := &Drawing{Alt: c.alt()}
	note := "Middle line with its range; joints numbered from the " + c.from() + "."
	p := c.plot(d.heading(or(c.Title, "Side pressure along the panel"), note))
	p.d = d
	p.drawGrid()
	p.drawReach()
	p.drawBand()
	p.drawThresholds()
	p.drawJoints()
	p.nameThresholds()
	return d.finish(d.key(p.frame.y1+48, p.keyLines()) + margin), nil
}

// from names where distances begin.
func (c PressureChart) from() string {
	switch c.Pusher {
	case TwoBars:
		return "first bar"
	case FilmAlone:
		return "edge"
	}
	return "bar"
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
	named    []box // the names of thresholds
}

const (
	plotHeight = 230
	headroom   = 1.14 // over the highest figure, for the range of the reach
)

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
	p.most = max(high*headroom, 1000)
	p.frame = box{margin + 38, top + 40, Width - margin - 12, top + 40 + plotHeight}
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
	d.text("side pressure, "+u.Symbol, point{margin, f.y0 - 30}, left, smallSize).colour = softInk
	w := p.Units.lengthAxis()
	for _, v := range ticks(w.Of(p.width.Metres()), 6) {
		x := p.px(unit.Length(w.SI(v)))
		d.line(inkColour, 1, point{x, f.y1}, point{x, f.y1 + 4})
		d.text(trimmed(v, 6), point{x, f.y1 + 17}, centre, smallSize)
	}
	d.text("distance from the "+p.from()+", "+w.Symbol, point{(f.x0 + f.x1) / 2, f.y1 + 35}, centre, smallSize).colour = softInk
	d.line(inkColour, 1.4, point{f.x0, f.y0}, point{f.x0, f.y1}, point{f.x1, f.y1})
	if p.Pusher == TwoBars {
		d.line(inkColour, 1.4, point{f.x1, f.y0}, point{f.x1, f.y1})
	}
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

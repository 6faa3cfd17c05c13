package picture

import (
	"fmt"
	"strings"

	"presshand/engine/unit"
)

func (p *plot) keyLines() []keyLine {
	u := p.Units
	var ks []keyLine
	for i, j := range p.ends() {
		text := fmt.Sprintf("Joint %d: %s", j.Number, span(j.Pressure, u.pressure))
		if i > 0 {
			text = fmt.Sprintf("Joint %d, the farthest: %s", j.Number, span(j.Pressure, u.pressure))
		}
		ks = append(ks, keyLine{sign: bandSign, strong: true, text: text})
	}
	if p.Contact > 0 {
		ks = append(ks, keyLine{sign: lineSign(contactLine), text: "The glue needs " + u.pressure(p.Contact)})
	}
	if p.Closing.Mid > 0 {
		ks = append(ks, keyLine{text: "Closing the gap takes " + span(p.Closing, u.pressure) + " of what a joint gets"})
	}
	if p.Full > 0 {
		text := "Full strength from " + u.pressure(p.Full)
		if !p.fullFits {
			text += ", above this chart"
		}
		ks = append(ks, keyLine{sign: lineSign(fullLine), text: text})
	}
	if p.Preload.Mid > 0 {
		ks = append(ks, keyLine{text: "The wedge holds " + span(p.Preload, u.pressure), sign: func(d *Drawing, b box) {
			lineSign(preloadLine)(d, b)
			d.wedgeMark(b.centre())
		}})
		if p.Reach.High > 0 {
			ks = append(ks, keyLine{sign: lineSign(aloneLine), text: p.pusher() + " alone"})
		}
	}
	return append(ks, p.reachLine())
}

// reachLine says how far the push goes.
func (p *plot) reachLine() keyLine {
	k := keyLine{sign: reachSign, text: p.pusher() + " reaches " + span(p.Reach, p.Units.length)}
	switch {
	case whole(p.Reach.Mid) <= 0 && p.Reach.High > 0:
		k.text = fmt.Sprintf("%s: no reach to count on, at best %s", p.pusher(), p.Units.length(p.Reach.High))
	case whole(p.Reach.Mid) <= 0:
		k.text = p.pusher() + ": no reach to count on"
	}
	if _, _, ok := p.beyond(); !ok {
		k.text += ", all the panel"
		return k
	}
	k.sign = func(d *Drawing, b box) { d.rect(b, rgb(0xF1F1EE), softInk); d.hatch(b.inset(0.5), 6, 1, softInk) }
	holds := "only fit or a wedge holds"
	if p.Preload.Mid > 0 {
		holds = "only the wedge and the fit hold"
	}
	k.text += "; beyond (hatched) " + holds
	return k
}

func (c PressureChart) pusher() string {
	switch c.Pusher {
	case TwoBars:
		return "Each bar"
	case FilmAlone:
		return "The film's push on the edge"
	}
	return "The bar"
}

func bandSign(d *Drawing, b box) {
	c := b.centre()
	d.rect(box{b.x0, b.y0 + 1, b.x1, b.y1 - 1}, bandTint, none)
	d.line(blue, 2.8, point{b.x0, c.y}, point{b.x1, c.y})
	d.disc(c, 3.6, white, inkColour)
}

func lineSign(s shape) func(d *Drawing, b box) {
	return func(d *Drawing, b box) {
		y := b.centre().y
		d.line(s.stroke, s.width, point{b.x0, y}, point{b.x1, y}).dash = s.dash
	}
}

func reachSign(d *Drawing, b box) {
	y := b.centre().y
	d.line(inkColour, 1.4, point{b.x0, b.y0 + 1}, point{b.x0, b.y1 - 1})
	d.arrow(point{b.x0, y}, point{b.x1, y}, 1.4, 7, inkColour)
}

// ends returns the first joint and the one farthest from any bar.
func (c PressureChart) ends() []Joint {
	if len(c.Joints) == 0 {
		return nil
	}
	if far := c.farthest(); far.Number != c.Joints[0].Number {
		return []Joint{c.Joints[0], far}
	}
	return c.Joints[:1]
}

// farthest returns the joint farthest from any bar; there has to be one.
func (c PressureChart) farthest() Joint {
	far, most := c.Joints[0], unit.Length(-1)
	for _, j := range c.Joints {
		x := j.Distance
		if c.Pusher == TwoBars {
			x = min(x, c.Curve[len(c.Curve)-1].Distance-x)
		}
		if whole(x-most) > 0 {
			far, most = j, x
		}
	}
	return far
}

// toldJoints is how many joints are told one by one in words.
const toldJoints = 24

func (c PressureChart) alt() string {
	var b strings.Builder
	u := c.Units
	first, last := c.Curve[0], c.Curve[len(c.Curve)-1]
	fmt.Fprintf(&b, "Chart of side pressure against distance from the %s: from %s at %s to %s at %s.",
		c.from(), span(first.Pressure, u.pressure), u.length(first.Distance), span(last.Pressure, u.pressure), u.length(last.Distance))
	p := &plot{PressureChart: c, width: last.Distance, fullFits: true}
	for _, k := range p.keyLines() {
		fmt.Fprintf(&b, " %s.", strings.ReplaceAll(k.text, " (hatched)", ""))
	}
	if n := len(c.Joints); n > 2 && n <= toldJoints {
		var each []string
		for _, j := range c.Joints {
			each = append(each, u.pressure(j.Pressure.Mid))
		}
		fmt.Fprintf(&b, " Middles of joints 1 to %d: %s.", n, strings.Join(each, ", "))
	}
	return b.String()
}

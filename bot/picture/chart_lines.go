package picture

import (
	"math"
	"slices"
	"strconv"

	"presshand/engine/unit"
)

// Lines of a chart, each of its own pattern and mark.
var (
	contactLine = shape{stroke: vermillion, width: 2, dash: []float64{7, 4}}
	fullLine    = shape{stroke: green, width: 2, dash: []float64{2, 3}}
	preloadLine = shape{stroke: wedgeInk, width: 1.6}
	aloneLine   = shape{stroke: blue, width: 1.2}
	bandEdge    = rgb(0x3F8FC4) // over 3 to 1 on the page
	wedgeInk    = rgb(0x9A3F78)
)

// beyond is the part of the panel that no bar reaches, none if it is all
// reached.
func (p *plot) beyond() (from, to unit.Length, ok bool) {
	from, to = max(p.Reach.Mid, 0), p.width
	if p.Pusher == TwoBars {
		to -= from
	}
	return from, to, from < to
}

// drawReach shades what no bar reaches, and marks the range of the reach.
func (p *plot) drawReach() {
	from, to, ok := p.beyond()
	if ok {
		b := box{p.px(from), p.frame.y0, p.px(to), p.frame.y1}
		s := p.d.rect(b, rgb(0xF1F1EE), none)
		s.shows, s.facts = "out of reach", []fact{measure("from-mm", from), measure("to-mm", to)}
		p.d.hatch(b, 11, 1, faint)
	}
	y := p.frame.y0 + 9
	limit := p.width
	if p.Pusher == TwoBars {
		limit /= 2
	}
	for i, at := range p.places() {
		low, high := p.px(at(min(p.Reach.Low, limit))), p.px(at(min(p.Reach.High, limit)))
		p.d.line(inkColour, 1.4, point{low, y}, point{high, y}).shows = "reach range"
		for _, end := range []struct {
			l unit.Length
			x float64
		}{{p.Reach.Low, low}, {p.Reach.High, high}} {
			if end.l <= limit {
				p.d.line(inkColour, 1.4, point{end.x, y - 4}, point{end.x, y + 4})
			}
		}
		if x := max(low, high) + 5; i == 0 && x+textWidth("reach", smallSize, false) < p.px(limit)-4 {
			p.named = append(p.named, box{x - 2, y - 6, x + textWidth("reach", smallSize, false) + 2, y + 7})
			p.d.rect(p.named[len(p.named)-1], white, none)
			p.d.text("reach", point{x, y + 4}, left, smallSize)
		}
		if ok {
			x := p.px(at(from))
			s := p.d.line(inkColour, 1.6, point{x, p.frame.y0}, point{x, p.frame.y1})
			s.dash, s.shows, s.facts = []float64{2, 3}, "reach", []fact{measure("mm", p.Reach.Mid)}
		}
	}
}

// places are how distances are counted: from each bar.
func (p *plot) places() []func(unit.Length) unit.Length {
	all := []func(unit.Length) unit.Length{func(l unit.Length) unit.Length { return l }}
	if p.Pusher == TwoBars {
		all = append(all, func(l unit.Length) unit.Length { return p.width - l })
	}
	return all
}

// held is one line of the chart: where the push falls under the preload it
// follows that.
func (p *plot) held(of func(unit.Range[unit.Pressure]) unit.Pressure) []point {
	least := of(p.Preload)
	var ps []point
	for i, c := range p.Curve {
		v := of(c.Pressure)
		if i > 0 {
			before := of(p.Curve[i-1].Pressure)
			if (before-least)*(v-least) < 0 {
				share := unit.Length((least - before) / (v - before))
				x := p.Curve[i-1].Distance + share*(c.Distance-p.Curve[i-1].Distance)
				ps = append(ps, point{p.px(x), p.py(least)})
			}
		}
		ps = append(ps, point{p.px(c.Distance), p.py(max(v, least))})
	}
	return ps
}

func lowEnd(r unit.Range[unit.Pressure]) unit.Pressure  { return max(r.Low, 0) }
func middle(r unit.Range[unit.Pressure]) unit.Pressure  { return max(r.Mid, 0) }
func highEnd(r unit.Range[unit.Pressure]) unit.Pressure { return max(r.High, 0) }

func (p *plot) drawBand() {
	up, down := p.held(highEnd), p.held(lowEnd)
	back := slices.Clone(down)
	slices.Reverse(back)
	p.d.polygon(bandTint, append(slices.Clone(up), back...)...).shows = "range"
	p.d.line(bandEdge, 1, up...)
	p.d.line(bandEdge, 1, down...)
	if p.Preload.Mid > 0 {
		var alone []point
		for _, c := range p.Curve {
			alone = append(alone, point{p.px(c.Distance), p.py(c.Pressure.Mid)})
		}
		p.d.line(aloneLine.stroke, aloneLine.width, alone...).shows = "bar alone"
	}
	p.d.line(blue, 2.8, p.held(middle)...).shows = "middle"
}

// A threshold is a line across the chart.
type threshold struct {
	at    unit.Pressure
	shows string
	name  string
	sign  shape
}

func (p *plot) thresholds() []threshold {
	var all []threshold
	if p.Contact > 0 {
		all = append(all, threshold{p.Contact, "contact", "glue needs", contactLine})
	}
	if p.fullFits {
		all = append(all, threshold{p.Full, "full", "full strength", fullLine})
	}
	if p.Preload.Mid > 0 {
		all = append(all, threshold{p.Preload.Mid, "preload", "wedge", preloadLine})
	}
	return all
}

func (p *plot) drawThresholds() {
	for _, l := range p.thresholds() {
		y := p.py(l.at)
		s := p.d.line(l.sign.stroke, l.sign.width, point{p.frame.x0, y}, point{p.frame.x1, y})
		s.dash, s.shows, s.facts = l.sign.dash, l.shows, []fact{kilopascals("kpa", l.at)}
		if l.shows == "preload" {
			for x := p.frame.x0 + 14; x < p.frame.x1-6; x += 34 {
				p.d.wedgeMark(point{x, y})
			}
		}
	}
}

// wedgeMark is a little wedge on a line, so that it is told without colour.
func (d *Drawing) wedgeMark(c point) {
	d.polygon(wedgeInk, point{c.x - 6, c.y}, point{c.x + 6, c.y - 4}, point{c.x + 6, c.y + 4})
}

// nameThresholds writes on each line what it is, where there is room for it.
func (p *plot) nameThresholds() {
	for _, l := range p.thresholds() {
		text := l.name + " " + p.Units.pressure(l.at)
		b, ok := p.roomFor(textWidth(text, smallSize, true)+6, l)
		if !ok {
			continue
		}
		p.named = append(p.named, b)
		p.d.rect(b, white, none)
		t := p.d.text(text, point{b.x0 + 3, b.y1 - 3.5}, left, smallSize)
		t.bold, t.shows = true, "threshold"
	}
}

// roomFor finds where beside its line a name covers neither a mark nor another
// line, from the right.
func (p *plot) roomFor(width float64, l threshold) (box, bool) {
	const tall = 15
	y := p.py(l.at)
	for x := p.frame.x1 - width - 3; x > p.frame.x0+3; x -= 8 {
		for _, y0 := range []float64{y - tall - 2, y + 2.5} {
			b := box{x, y0, x + width, y0 + tall}
			if y0 > p.frame.y0+15 && y0+tall < p.frame.y1-2 && p.free(b) {
				return b, true
			}
		}
	}
	return box{}, false
}

func (p *plot) free(b box) bool {
	for _, n := range p.named {
		if n.overlaps(b) {
			return false
		}
	}
	for _, l := range p.thresholds() {
		if y := p.py(l.at); y > b.y0-4 && y < b.y1+4 && math.Abs(y-b.y0) > 3 && math.Abs(y-b.y1) > 3 {
			return false
		}
	}
	for _, j := range p.Joints {
		c := point{p.px(j.Distance), p.py(j.Pressure.Mid)}
		if b.overlaps(box{c.x - 6, c.y - 6, c.x + 6, c.y + 6}) {
			return false
		}
	}
	ps := p.held(middle)
	for i := 1; i < len(ps); i++ {
		if crosses(b, ps[i-1], ps[i]) {
			return false
		}
	}
	return true
}

// crosses reports whether a line from p to q enters b.
func crosses(b box, p, q point) bool {
	const steps = 40
	for i := range steps + 1 {
		s := float64(i) / steps
		x, y := p.x+(q.x-p.x)*s, p.y+(q.y-p.y)*s
		if x > b.x0-2 && x < b.x1+2 && y > b.y0-2 && y < b.y1+2 {
			return true
		}
	}
	return false
}

// drawJoints sets a mark on the middle line at each joint and numbers over the
// frame as many as there is room for, the ends and the farthest first.
func (p *plot) drawJoints() {
	apart := p.frame.width()
	for i := 1; i < len(p.Joints); i++ {
		apart = min(apart, p.px(p.Joints[i].Distance)-p.px(p.Joints[i-1].Distance))
	}
	for _, j := range p.Joints {
		x, y := p.px(j.Distance), p.py(j.Pressure.Mid)
		p.whisker(x, j.Pressure, apart)
		s := p.d.disc(point{x, y}, min(max(0.34*apart, 1.6), 4), white, inkColour)
		s.shows = "joint"
		s.facts = []fact{{"joint", strconv.Itoa(j.Number)}, measure("mm", j.Distance), kilopascals("kpa", j.Pressure.Mid),
			kilopascals("low-kpa", j.Pressure.Low), kilopascals("high-kpa", j.Pressure.High)}
	}
	var taken []float64
	for _, i := range p.toNumber() {
		x := p.px(p.Joints[i].Distance)
		if slices.ContainsFunc(taken, func(t float64) bool { return math.Abs(t-x) < numberSize+2 }) {
			continue
		}
		taken = append(taken, x)
		y := p.frame.y0 - 13
		p.d.line(softInk, 1, point{x, y}, point{x, p.frame.y0})
		p.d.disc(point{x, y}, numberSize/2, white, inkColour)
		l := p.d.text(strconv.Itoa(p.Joints[i].Number), point{x, y + 4.3}, centre, smallSize)
		l.bold, l.shows = true, "joint number"
	}
}

// toNumber orders the joints by how much their numbers are wanted.
func (p *plot) toNumber() []int {
	if len(p.Joints) == 0 {
		return nil
	}
	order := []int{0, len(p.Joints) - 1}
	for i, j := range p.Joints {
		if j.Number == p.farthest().Number {
			order = append(order, i)
		}
	}
	for i := range p.Joints {
		order = append(order, i)
	}
	var once []int
	for _, i := range order {
		if !slices.Contains(once, i) {
			once = append(once, i)
		}
	}
	return once
}

// whisker draws a joint's range, lightly where there are many.
func (p *plot) whisker(x float64, r unit.Range[unit.Pressure], apart float64) {
	p.d.line(softInk, min(1, max(0.5, apart/12)), point{x, p.py(r.High)}, point{x, p.py(r.Low)})
	if apart < 12 {
		return
	}
	for _, e := range []unit.Pressure{r.Low, r.High} {
		p.d.line(softInk, 1.2, point{x - 3.5, p.py(e)}, point{x + 3.5, p.py(e)})
	}
}

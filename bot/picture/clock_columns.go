package picture

import (
	"cmp"
	"image/color"
	"slices"
	"strconv"

	"presshand/engine/unit"
)

var (
	skyTint   = rgb(0xCFE6F6)
	greenTint = rgb(0x8FD0B9)
	waitTint  = rgb(0xFBEBCB)
	tooLate   = rgb(0xFBE7DC)
)

func (t *timetable) drawGrid() {
	d, x1 := t.d, float64(Width-margin)
	d.rect(box{t.axis, t.top(), x1, t.bottom()}, white, none)
	if y := t.y(t.Deadline); t.Deadline > 0 && y < t.bottom() {
		d.rect(box{t.axis, max(y, t.top()), x1, t.bottom()}, tooLate, none).shows = "after the deadline"
	}
	for _, h := range t.hours() {
		d.line(rgb(0xDDE1E4), 1, point{t.axis, h.y}, point{x1, h.y})
		d.text(h.text, point{t.axis - 6, h.y + 4}, right, smallSize).colour = softInk
	}
	column := func(name string, x, width float64) {
		d.line(border, 1, point{x, t.top() - 18}, point{x, t.bottom()})
		l := d.text(fit(name, textSize, true, width-6), point{x + width/2, t.top() - 8}, centre, textSize)
		l.bold, l.shows = true, "column"
	}
	column("crew", t.axis, crewColumn)
	for i, name := range t.Presses {
		if textWidth(name, textSize, true) > t.column-6 {
			name = strconv.Itoa(i + 1)
		}
		column(name, t.axis+crewColumn+float64(i)*t.column, t.column)
	}
	d.line(inkColour, 1.4, point{t.axis, t.top()}, point{x1, t.top()})
}

// drawLoad draws a load's stay in its press, as usual and in a narrow lane
// beside it late.
func (t *timetable) drawLoad(l ClockLoad) {
	x := t.axis + crewColumn + float64(l.Press)*t.column
	lane := func(from, to unit.Time) box { return box{x + 3, t.y(from), x + t.lane - 2, t.y(to)} }
	u := l.Usual
	t.bar(lane(u.In, u.Due), barTint, "press", l, u.In, u.Due)
	if u.Unload > u.Due {
		t.bar(lane(u.Due, u.Unload), waitTint, "waits", l, u.Due, u.Unload).dash = []float64{3, 2}
	}
	if u.Out > u.Unload {
		b := lane(u.Unload, u.Out)
		t.bar(b, greenTint, "unload in press", l, u.Unload, u.Out)
		t.d.bars(b)
	}
	t.times(lane(u.In, u.Due), l)
	if late := l.late(); t.lane < t.column && late.Out > late.In {
		b := box{x + t.lane + 1, t.y(late.In), x + t.column - 3, t.y(late.Out)}
		t.bar(b, white, "late", l, late.In, late.Out)
		t.d.hatch(b.inset(0.5), 9, 1, faint)
		t.lateName(b, l)
	}
}

// lateName writes a load's number into its late bar.
func (t *timetable) lateName(b box, l ClockLoad) {
	text := strconv.Itoa(l.Number)
	w := textWidth(text, smallSize, true)
	b = t.clear(b)
	if b.height() < 16 || w+6 > b.width() {
		return
	}
	c := b.centre()
	if room := (box{c.x - w/2, c.y - 7, c.x + w/2, c.y + 7}); slices.ContainsFunc(t.lateNames, room.overlaps) {
		return
	} else {
		t.lateNames = append(t.lateNames, room)
	}
	t.d.rect(box{c.x - w/2 - 2, c.y - 7, c.x + w/2 + 2, c.y + 7}, white, none)
	n := t.d.text(text, point{c.x, c.y + 4.3}, centre, smallSize)
	n.bold, n.shows = true, "late load"
}

func (t *timetable) bar(b box, fill color.NRGBA, shows string, l ClockLoad, from, to unit.Time) *shape {
	s := t.d.rect(b, fill, inkColour)
	s.shows = shows
	s.facts = []fact{{"load", l.name()}, {"from-min", trimmed(from.Minutes(), 2)}, {"to-min", trimmed(to.Minutes(), 2)}}
	return s
}

// bars rule b upright.
func (d *Drawing) bars(b box) {
	for x := b.x0 + 5; x < b.x1-1; x += 6 {
		d.line(greenInk, 0.9, point{x, b.y0 + 1}, point{x, b.y1 - 1})
	}
}

// clear is the highest part of a bar that no cut and no deadline crosses.
func (t *timetable) clear(b box) box {
	var across []box
	for _, k := range t.cuts {
		across = append(across, box{b.x0, k.y - cutRoom, b.x1, k.y + cutRoom})
	}
	if y := t.y(t.Deadline); t.Deadline > 0 {
		across = append(across, box{b.x0, y - 3, b.x1, y + 3})
	}
	slices.SortFunc(across, func(a, b box) int { return cmp.Compare(a.y0, b.y0) })
	best, y := box{b.x0, b.y0, b.x1, b.y0}, b.y0
	for _, a := range append(across, box{b.x0, b.y1, b.x1, b.y1}) {
		if end := min(a.y0, b.y1); end-y > best.height() {
			best = box{b.x0, y, b.x1, end}
		}
		y = max(y, a.y1)
	}
	return best
}

// times writes a load's name and when it goes in and out, as far as they fit.
func (t *timetable) times(b box, l ClockLoad) {
	b = t.clear(b)
	in, out := t.Units.clock(l.Usual.In), t.Units.clock(l.Usual.Out)
	lines := []string{in + "–" + out}
	if textWidth(lines[0], smallSize, false) > b.width()-4 {
		lines = []string{in + "–", out}
	}
	for _, s := range lines {
		if textWidth(s, smallSize, false) > b.width()-4 {
			lines = nil
			break
		}
	}
	if b.height() < 20+14*float64(len(lines)) {
		lines = nil
	}
	name := l.name()
	if textWidth(name, textSize, true) > b.width()-4 {
		name = strconv.Itoa(l.Number)
	}
	if b.height() < 15 || textWidth(name, textSize, true) > b.width()-2 {
		return
	}
	y := b.centre().y + 4.6 - 7*float64(len(lines))
	n := t.d.text(name, point{b.centre().x, y}, centre, textSize)
	n.bold, n.shows = true, "load"
	for _, s := range lines {
		y += 14
		t.d.text(s, point{b.centre().x, y}, centre, smallSize).shows = "times"
	}
	if t.Deadline > 0 && l.Usual.Out > t.Deadline && b.width() > 60 {
		t.d.warning(point{b.x1 - 9, b.y1 - 9}, 12)
	}
}

// drawCuts breaks the columns where time is cut out, and says how much.
func (t *timetable) drawCuts() {
	for _, k := range t.cuts {
		t.drawCut(k, t.axis-3, t.axis+30)
		s := t.drawCut(k, t.axis+crewColumn, Width-margin)
		s.shows, s.facts = "cut", []fact{{"from-min", trimmed(k.from.Minutes(), 2)}, {"to-min", trimmed(k.to.Minutes(), 2)}}
		l := t.d.text(lasting(k.to-k.from), point{t.axis - 6, k.y + 3}, right, smallSize)
		l.shows, l.colour = "cut out", softInk
	}
}

// drawCut draws a gap with wavy edges; the names of the crew's work are left
// out of it.
func (t *timetable) drawCut(k cut, from, to float64) *shape {
	var up, down []point
	for i, x := 0, from; x <= to; i, x = i+1, x+9 {
		y := k.y - 4 + 3*float64(i%2)
		up, down = append(up, point{x, y - 3}), append(down, point{x, y + 5})
	}
	back := slices.Clone(down)
	slices.Reverse(back)
	t.d.polygon(paper, append(slices.Clone(up), back...)...)
	t.d.line(softInk, 1, up...)
	return t.d.line(softInk, 1, down...)
}

func (t *timetable) drawDeadline() {
	if t.Deadline == 0 || t.Deadline < t.knots[0].at {
		return
	}
	y := t.y(t.Deadline)
	from := t.axis + crewColumn // beside the names of the crew's work
	t.d.line(redInk, 2.4, point{t.axis - 3, y}, point{t.axis + 30, y}).dash = []float64{9, 3}
	t.d.line(white, 5, point{from, y}, point{Width - margin, y})
	s := t.d.line(redInk, 2.4, point{from, y}, point{Width - margin, y})
	s.dash, s.shows, s.facts = []float64{9, 3}, "deadline", []fact{{"min", trimmed(t.Deadline.Minutes(), 2)}}
	l := t.d.text(t.Units.clock(t.Deadline), point{t.axis - 6, y + 4}, right, smallSize)
	l.bold, l.colour = true, redInk
}

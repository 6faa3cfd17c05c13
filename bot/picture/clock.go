package picture

import (
	"fmt"
	"image/color"
	"math"
	"strings"

	"presshand/engine/unit"
)

// A DayClock shows a day at the presses as a calendar does: time runs down,
// the crew and each press have a column.
type DayClock struct {
	Title    string
	Presses  []string // their names, left to right
	Loads    []ClockLoad
	Deadline unit.Time // since midnight; zero: none
	Units    Units
}

// A ClockLoad is one load's way through a press, in time since midnight:
// laid up by the crew from LayUp to In, shut in the press from In to Out,
// taken out from Out to Clear.
type ClockLoad struct {
	Name  string
	Press int // an index of Presses
	LayUp unit.Time
	In    unit.Time
	Out   unit.Time
	Late  unit.Time // when it may come out at the latest; zero: as Out
	Clear unit.Time // zero: not shown
}

// Draw lays the day out. It fails without a load, and on times that run back.
func (c DayClock) Draw() (*Drawing, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	d := &Drawing{Alt: c.alt()}
	top := d.heading(or(c.Title, "The day's clock"), "Time runs down.")
	t := c.table(top + 22)
	t.d = d
	t.drawGrid()
	for i := range c.Loads {
		t.drawLoad(i)
	}
	t.drawDeadline()
	return d.finish(d.key(t.y(t.until)+10, c.keyLines()) + margin), nil
}

const longestDay = unit.Time(14 * 24 * 3600)

func (c DayClock) check() error {
	if len(c.Loads) == 0 || len(c.Presses) == 0 {
		return fmt.Errorf("clock has %d loads and %d presses, want one of each at least", len(c.Loads), len(c.Presses))
	}
	for _, l := range c.Loads {
		if l.Press < 0 || l.Press >= len(c.Presses) {
			return fmt.Errorf("load %q is in press %d, want 0 to %d", l.Name, l.Press, len(c.Presses)-1)
		}
		late, end := max(l.Late, l.Out), max(l.Clear, l.Out)
		if !(l.LayUp >= 0 && l.LayUp <= l.In && l.In <= l.Out && l.Out <= late && late <= longestDay && end <= longestDay) {
			return fmt.Errorf("load %q runs %g, %g, %g min, want rising times within two weeks", l.Name, l.LayUp.Minutes(), l.In.Minutes(), l.Out.Minutes())
		}
	}
	if !(c.Deadline >= 0 && c.Deadline <= longestDay) {
		return fmt.Errorf("deadline is %g min, want 0 or more", c.Deadline.Minutes())
	}
	return nil
}

// A timetable is a clock with its axis settled.
type timetable struct {
	DayClock
	d           *Drawing
	top         float64
	from, until unit.Time
	scale       float64 // points to the second
	axis        float64 // where the columns begin
	column      float64 // how wide each is
}

const (
	leastBar   = 38   // points that the shortest stay in a press should have
	tallestDay = 1300 // points
)

func (c DayClock) table(top float64) *timetable {
	t := &timetable{DayClock: c, top: top, from: longestDay}
	shortest := longestDay
	for _, l := range c.Loads {
		t.from = min(t.from, l.LayUp)
		t.until = max(t.until, l.Out, l.Late, l.Clear)
		if l.Out > l.In {
			shortest = min(shortest, l.Out-l.In)
		}
	}
	if c.Deadline > 0 {
		t.until = max(t.until, c.Deadline)
	}
	const hour = 3600
	t.from = unit.Time(math.Floor(t.from.Seconds()/hour) * hour)
	t.until = unit.Time(math.Ceil(t.until.Seconds()/hour) * hour)
	if t.until <= t.from {
		t.until = t.from + hour
	}
	t.scale = min(max(leastBar/shortest.Seconds(), 38.0/hour), 110.0/hour, tallestDay/(t.until-t.from).Seconds())
	t.axis = margin
	for _, at := range t.hours() {
		t.axis = max(t.axis, margin+8+textWidth(c.Units.clock(at), smallSize, false))
	}
	t.column = (Width - margin - t.axis) / float64(len(c.Presses)+1)
	return t
}

func (t *timetable) y(at unit.Time) float64 { return t.top + (at-t.from).Seconds()*t.scale }

// hours returns the full hours to be written, far enough apart to read.
func (t *timetable) hours() []unit.Time {
	step := unit.Time(3600)
	for _, h := range []unit.Time{1, 2, 3, 6, 12, 24} {
		step = h * 3600
		if step.Seconds()*t.scale >= 18 {
			break
		}
	}
	var hs []unit.Time
	for at := t.from; at <= t.until; at += step {
		hs = append(hs, at)
	}
	return hs
}

func (t *timetable) drawGrid() {
	d, x1 := t.d, float64(Width-margin)
	names := append([]string{"crew"}, t.Presses...)
	bottom := t.y(t.until)
	d.rect(box{t.axis, t.top, x1, bottom}, white, none)
	for _, at := range t.hours() {
		y := t.y(at)
		d.line(rgb(0xDDE1E4), 1, point{t.axis, y}, point{x1, y})
		d.text(t.Units.clock(at), point{t.axis - 6, y + 4}, right, smallSize).colour = softInk
	}
	for i, name := range names {
		x := t.axis + float64(i)*t.column
		d.line(border, 1, point{x, t.top - 18}, point{x, bottom})
		l := d.text(fit(name, textSize, true, t.column-6), point{x + t.column/2, t.top - 8}, centre, textSize)
		l.bold, l.shows = true, "column"
	}
	d.line(inkColour, 1.4, point{t.axis, t.top}, point{x1, t.top})
}

func (t *timetable) drawLoad(i int) {
	l := t.Loads[i]
	crew := t.cell(0, l.LayUp, l.In)
	t.bar(crew, skyTint, "lay-up", l.Name, l.LayUp, l.In)
	t.name(crew, l.Name)
	b := t.cell(l.Press+1, l.In, l.Out)
	if late := t.lateEnd(i); late > l.Out {
		h := t.cell(l.Press+1, l.Out, late)
		t.bar(h, white, "late", l.Name, l.Out, l.Late)
		t.d.hatch(h.inset(0.5), 6, 1, softInk)
	}
	t.bar(b, barTint, "press", l.Name, l.In, l.Out)
	t.times(b, l)
	if l.Clear > l.Out {
		u := t.cell(0, l.Out, l.Clear)
		t.bar(u, greenTint, "unload", l.Name, l.Out, l.Clear)
		t.d.bars(u)
	}
}

// lateEnd is when a load may still lie in its press, cut off where the next
// one goes in.
func (t *timetable) lateEnd(i int) unit.Time {
	late := t.Loads[i].Late
	for j, o := range t.Loads {
		if j != i && o.Press == t.Loads[i].Press && o.In >= t.Loads[i].Out {
			late = min(late, o.In)
		}
	}
	return late
}

func (t *timetable) cell(column int, from, to unit.Time) box {
	x := t.axis + float64(column)*t.column
	return box{x + 3, t.y(from), x + t.column - 3, t.y(to)}
}

func (t *timetable) bar(b box, fill color.NRGBA, shows, name string, from, to unit.Time) {
	s := t.d.rect(b, fill, inkColour)
	s.shows = shows
	s.facts = []fact{{"load", name}, {"from-min", trimmed(from.Minutes(), 2)}, {"to-min", trimmed(to.Minutes(), 2)}}
}

// bars rule b upright.
func (d *Drawing) bars(b box) {
	for x := b.x0 + 5; x < b.x1-1; x += 6 {
		d.line(greenInk, 0.9, point{x, b.y0 + 1}, point{x, b.y1 - 1})
	}
}

// name writes a load's name into a bar of the crew's, if it fits.
func (t *timetable) name(b box, name string) {
	name = fit(name, smallSize, false, b.width()-6)
	if b.height() >= 15 && name != "" {
		t.d.text(name, point{b.centre().x, b.centre().y + 4.2}, centre, smallSize)
	}
}

// times writes a load's name and when it goes in and out, as far as they fit.
func (t *timetable) times(b box, l ClockLoad) {
	in, out := t.Units.clock(l.In), t.Units.clock(l.Out)
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
	name := fit(l.Name, textSize, true, b.width()-6)
	if b.height() < 16 || name == "" {
		return
	}
	y := b.centre().y + 4.6 - 7*float64(len(lines))
	n := t.d.text(name, point{b.centre().x, y}, centre, textSize)
	n.bold, n.shows = true, "load"
	for _, s := range lines {
		y += 14
		t.d.text(s, point{b.centre().x, y}, centre, smallSize).shows = "times"
	}
}

func (t *timetable) drawDeadline() {
	if t.Deadline <= t.from {
		return
	}
	y := t.y(t.Deadline)
	s := t.d.line(vermillion, 2.2, point{t.axis - 3, y}, point{Width - margin, y})
	s.dash, s.shows, s.facts = []float64{7, 4}, "deadline", []fact{{"min", trimmed(t.Deadline.Minutes(), 2)}}
}

var (
	skyTint   = rgb(0xCFE6F6)
	greenTint = rgb(0x8FD0B9)
)

func (c DayClock) keyLines() []keyLine {
	swatch := func(fill color.NRGBA) func(d *Drawing, b box) {
		return func(d *Drawing, b box) { d.rect(b, fill, inkColour) }
	}
	ks := []keyLine{{sign: swatch(barTint), text: "In the press, with the times in and out"}}
	late, clear := unit.Time(0), false
	for _, l := range c.Loads {
		if l.Late > l.Out {
			late = max(late, l.Late)
		}
		clear = clear || l.Clear > l.Out
	}
	if late > 0 {
		ks = append(ks, keyLine{sign: hatchSign, text: "It may take so long; the last is out by " + c.Units.clock(late)})
	}
	ks = append(ks, keyLine{sign: swatch(skyTint), text: "The crew lays up"})
	if clear {
		ks = append(ks, keyLine{text: "The crew unloads", sign: func(d *Drawing, b box) {
			d.rect(b, greenTint, inkColour)
			d.bars(b)
		}})
	}
	if c.Deadline > 0 {
		ks = append(ks, keyLine{sign: func(d *Drawing, b box) {
			y := b.centre().y
			d.line(vermillion, 2.2, point{b.x0, y}, point{b.x1, y}).dash = []float64{7, 4}
		}, text: "Deadline " + c.Units.clock(c.Deadline)})
	}
	return ks
}

func (c DayClock) alt() string {
	var b strings.Builder
	b.WriteString("The day's clock.")
	for _, l := range c.Loads {
		press := "the press"
		if l.Press >= 0 && l.Press < len(c.Presses) {
			press = clean(c.Presses[l.Press])
		}
		fmt.Fprintf(&b, " %s: laid up from %s, in %s at %s, out at %s", clean(l.Name), c.Units.clock(l.LayUp), press, c.Units.clock(l.In), c.Units.clock(l.Out))
		if l.Late > l.Out {
			fmt.Fprintf(&b, ", at the latest %s", c.Units.clock(l.Late))
		}
		b.WriteByte('.')
	}
	if c.Deadline > 0 {
		fmt.Fprintf(&b, " Deadline %s.", c.Units.clock(c.Deadline))
	}
	return b.String()
}

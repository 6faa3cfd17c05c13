package picture

import (
	"fmt"
	"image/color"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

func (c DayClock) keyLines() []keyLine {
	swatch := func(fill color.NRGBA) func(d *Drawing, b box) {
		return func(d *Drawing, b box) { d.rect(b, fill, inkColour) }
	}
	ks := c.deadlineLines()
	ks = append(ks, keyLine{sign: swatch(barTint), text: "In the press, as usual"})
	if c.has(func(t ClockTimes) bool { return t.Unload > t.Due }) {
		ks = append(ks, keyLine{text: "Ready, waits for the crew", sign: func(d *Drawing, b box) {
			d.rect(b, waitTint, inkColour).dash = []float64{3, 2}
		}})
	}
	if c.uncertain() {
		ks = append(ks, keyLine{text: "In the press at the latest, where every load takes its longest", sign: func(d *Drawing, b box) {
			d.rect(b, white, inkColour)
			d.hatch(b.inset(0.5), 6, 1, softInk)
		}})
	}
	ks = append(ks, keyLine{sign: swatch(skyTint), text: "The crew lays up"})
	if c.has(func(t ClockTimes) bool { return t.Out > t.Unload }) {
		ks = append(ks, keyLine{text: "The crew unloads", sign: func(d *Drawing, b box) {
			d.rect(b, greenTint, inkColour)
			d.bars(b)
		}})
	}
	if len(timeSpansOf(c.events())) > 1 {
		ks = append(ks, keyLine{text: "Left out where nothing happens, and for how long", sign: func(d *Drawing, b box) {
			t := &timetable{d: d}
			t.drawCut(cut{y: b.centre().y}, b.x0, b.x1)
		}})
	}
	return ks
}

func (c DayClock) has(what func(ClockTimes) bool) bool {
	for _, l := range c.Loads {
		if what(l.Usual) {
			return true
		}
	}
	return false
}

// deadlineLines say whether all is out in time, and what is not.
func (c DayClock) deadlineLines() []keyLine {
	if c.Deadline == 0 {
		return nil
	}
	usual, late := c.missed()
	warn := func(d *Drawing, b box) { d.warning(b.centre(), 14) }
	line := func(d *Drawing, b box) {
		y := b.centre().y
		d.line(redInk, 2.4, point{b.x0, y}, point{b.x1, y}).dash = []float64{9, 3}
	}
	by := c.Units.clock(c.Deadline)
	last := unit.Time(0)
	for _, l := range c.Loads {
		last = max(last, l.late().Out)
	}
	k := keyLine{shows: "deadline kept", facts: []fact{{"loads-late", strconv.Itoa(len(usual))}, {"loads-late-at-worst", strconv.Itoa(len(usual) + len(late))}}}
	switch {
	case len(usual) > 0:
		k.sign, k.strong, k.colour = warn, true, redInk
		k.text = fmt.Sprintf("Deadline %s missed: %s", by, c.howLate(usual))
		ks := []keyLine{k}
		if len(late) > 0 {
			ks = append(ks, keyLine{sign: line, text: "Late too where the glue takes its longest: " + numbers(late)})
		}
		return ks
	case len(late) > 0:
		k.sign, k.strong = line, true
		k.text = fmt.Sprintf("Deadline %s holds as usual; where the glue takes its longest, late: %s, the last out at %s", by, numbers(late), c.Units.clock(last))
	default:
		k.sign, k.strong = line, true
		k.text = fmt.Sprintf("Deadline %s holds, all out by %s at the latest", by, c.Units.clock(last))
		if !c.uncertain() {
			k.text = fmt.Sprintf("Deadline %s holds, all out by %s", by, c.Units.clock(last))
		}
	}
	return []keyLine{k}
}

// howLate tells loads with how long after the deadline each is out.
func (c DayClock) howLate(loads []ClockLoad) string {
	const told = 4
	var each []string
	for i, l := range loads {
		if i == told && len(loads) > told+1 {
			each = append(each, fmt.Sprintf("and %d more", len(loads)-told))
			break
		}
		each = append(each, fmt.Sprintf("load %d by %s", l.Number, lasting(l.Usual.Out-c.Deadline)))
	}
	return strings.Join(each, ", ")
}

// numbers names loads by their numbers.
func numbers(loads []ClockLoad) string {
	var each []string
	for _, l := range loads {
		each = append(each, strconv.Itoa(l.Number))
	}
	if len(each) == 1 {
		return "load " + each[0]
	}
	return "loads " + strings.Join(each, ", ")
}

// A tableColumn is one figure of every load.
type tableColumn struct {
	head string
	of   func(ClockLoad) string
	key  string // of the fact
	at   func(ClockLoad) unit.Time
}

func (c DayClock) tableColumns() []tableColumn {
	clock := func(head, key string, of func(ClockLoad) unit.Time) tableColumn {
		return tableColumn{head, func(l ClockLoad) string { return strings.TrimSuffix(c.Units.clock(of(l)), " d") }, key, of}
	}
	all := []tableColumn{{head: "load", of: func(l ClockLoad) string { return strconv.Itoa(l.Number) }}}
	if c.Loads[0].Panels > 0 {
		all = append(all, tableColumn{head: "panels", of: func(l ClockLoad) string { return strconv.Itoa(l.Panels) }})
	}
	if len(c.Presses) > 1 {
		all = append(all, tableColumn{head: "press", of: func(l ClockLoad) string { return strconv.Itoa(l.Press + 1) }})
	}
	all = append(all, clock("lay up", "lay-up-min", func(l ClockLoad) unit.Time { return l.Usual.LayUp }),
		clock("in", "in-min", func(l ClockLoad) unit.Time { return l.Usual.In }),
		clock("out", "out-min", func(l ClockLoad) unit.Time { return l.Usual.Out }))
	if c.uncertain() {
		all = append(all, clock("at latest", "late-min", func(l ClockLoad) unit.Time { return l.late().Out }))
	}
	return all
}

const tableRow = 16

func (c DayClock) tableWidths(columns []tableColumn) (widths []float64, whole float64) {
	for _, col := range columns {
		w := textWidth(col.head, smallSize, false)
		for _, l := range c.Loads {
			w = max(w, textWidth(col.of(l), smallSize, true))
		}
		widths, whole = append(widths, w), whole+w
	}
	return widths, whole
}

// drawTable writes every load's times, and returns where they end.
func (c DayClock) drawTable(d *Drawing, y float64) float64 {
	const indent = 16 // for a warning
	columns := c.tableColumns()
	widths, whole := c.tableWidths(columns)
	gap := min((Width-2*margin-indent-whole)/float64(max(len(columns)-1, 1)), 24)
	y += 12
	x := float64(margin + indent)
	for i, col := range columns {
		x += widths[i]
		d.text(col.head, point{x, y}, right, smallSize).colour = softInk
		x += gap
	}
	d.line(border, 1, point{margin, y + 5}, point{Width - margin, y + 5})
	y += 3
	last := unit.Time(0)
	for _, l := range c.Loads {
		last = max(last, l.late().Out)
		y += tableRow
		overdue := c.Deadline > 0 && l.Usual.Out > c.Deadline
		if overdue {
			d.warning(point{margin + 6, y - 4}, 11)
		}
		x := float64(margin + indent)
		for i, col := range columns {
			x += widths[i]
			t := d.text(col.of(l), point{x, y}, right, smallSize)
			if col.at != nil {
				at := col.at(l)
				t.shows, t.facts = "table", []fact{{"load", l.name()}, {col.key, trimmed(at.Minutes(), 2)}}
				if (col.key == "out-min" || col.key == "late-min") && c.Deadline > 0 && at > c.Deadline {
					t.bold, t.colour = true, redInk
				}
			}
			x += gap
		}
	}
	if last > 24*hour {
		y += tableRow
		d.text("+1 is one day later, and so on.", point{margin + indent, y}, left, smallSize).colour = softInk
	}
	return y + 4
}

func (c DayClock) alt() string {
	var b strings.Builder
	b.WriteString("The day's clock.")
	for _, k := range c.deadlineLines() {
		b.WriteString(" " + k.text + ".")
	}
	for _, l := range c.Loads {
		press := "the press"
		if l.Press >= 0 && l.Press < len(c.Presses) && len(c.Presses) > 1 {
			press = strings.ToLower(clean(c.Presses[l.Press]))
		}
		b.WriteString(" " + l.name())
		if l.Panels > 0 {
			b.WriteString(", " + plural(l.Panels, "panel"))
		}
		u := l.Usual
		clock := c.Units.clock
		fmt.Fprintf(&b, ": lay up %s, into %s %s, unload %s, out %s", clock(u.LayUp), press, clock(u.In), clock(u.Unload), clock(u.Out))
		if late := l.late(); late.Out > u.Out {
			fmt.Fprintf(&b, ", at the latest %s", clock(late.Out))
		}
		b.WriteByte('.')
	}
	return b.String()
}

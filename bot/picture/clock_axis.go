package picture

import (
	"math"
	"slices"

	"presshand/engine/unit"
)

// A timetable is a clock with its axis settled.
type timetable struct {
	DayClock
	d         *Drawing
	knots     []knot
	cuts      []cut
	scale     float64 // points to the second, where nothing is cut out
	axis      float64 // where the columns begin
	column    float64 // how wide that of a press is
	lane      float64 // how wide a stay in a press is drawn as usual
	lateNames []box
}

// A knot of the axis: between two of them time runs evenly.
type knot struct {
	at unit.Time
	y  float64
}

// A cut leaves out a stretch in which nothing happens.
type cut struct {
	from, to unit.Time
	y        float64 // the middle
}

const (
	hour       = unit.Time(3600)
	longestGap = 4 * hour // without an event; what is longer is cut
	keptAtCut  = hour / 2 // before and after a cut
	cutHeight  = 24       // points
	cutRoom    = 9        // points on either side of a cut's middle that its waves take
	leastBar   = 38       // points that the shortest stay in a press should have
	tallestDay = 640      // points
	crewColumn = 88       // points
)

func (c DayClock) timetable(top float64) *timetable {
	t := &timetable{DayClock: c}
	events := c.events()
	shortest := longestDay
	for _, l := range c.Loads {
		if l.Usual.Out > l.Usual.In {
			shortest = min(shortest, l.Usual.Out-l.Usual.In)
		}
	}
	spans := timeSpansOf(events)
	shown, cuts := 0.0, 0.0
	for _, s := range spans {
		if s.cut {
			cuts += cutHeight
		} else {
			shown += (s.to - s.from).Seconds()
		}
	}
	t.scale = min(max(leastBar/shortest.Seconds(), 38/hour.Seconds()), 110/hour.Seconds())
	t.scale = min(t.scale, max(tallestDay-cuts, tallestDay/2)/shown)
	y := top
	t.knots = []knot{{spans[0].from, y}}
	for _, s := range spans {
		h := (s.to - s.from).Seconds() * t.scale
		if s.cut {
			h = cutHeight
			t.cuts = append(t.cuts, cut{s.from, s.to, y + h/2})
		}
		y += h
		t.knots = append(t.knots, knot{s.to, y})
	}
	t.axis = margin
	for _, h := range t.hours() {
		t.axis = max(t.axis, margin+8+textWidth(h.text, smallSize, false))
	}
	for _, k := range t.cuts {
		t.axis = max(t.axis, margin+8+textWidth(lasting(k.to-k.from), smallSize, false))
	}
	if c.Deadline > 0 {
		t.axis = max(t.axis, margin+8+textWidth(c.Units.clock(c.Deadline), smallSize, true))
	}
	t.column = (Width - margin - t.axis - crewColumn) / float64(len(c.Presses))
	t.lane = t.column
	if c.uncertain() {
		t.lane = t.column * 0.66
	}
	return t
}

// events are all the times at which something begins or ends.
func (c DayClock) events() []unit.Time {
	var all []unit.Time
	for _, l := range c.Loads {
		u, late := l.Usual, l.late()
		all = append(all, u.LayUp, u.In, u.Due, u.Unload, u.Out, late.In, late.Out)
	}
	if c.Deadline > 0 {
		all = append(all, c.Deadline)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// A timeSpan is a stretch of time, drawn to scale or cut short.
type timeSpan struct {
	from, to unit.Time
	cut      bool
}

// timeSpansOf divides time from the full hour before the first event to the one
// after the last.
func timeSpansOf(events []unit.Time) []timeSpan {
	from := hour * unit.Time(math.Floor(float64(events[0]/hour)))
	last := events[len(events)-1]
	until := max(hour*unit.Time(math.Ceil(float64(last/hour))), from+hour)
	var out []timeSpan
	for i, e := range events[:len(events)-1] {
		next := events[i+1]
		if next-e <= longestGap {
			continue
		}
		out = append(out, timeSpan{from, e + keptAtCut, false}, timeSpan{e + keptAtCut, next - keptAtCut, true})
		from = next - keptAtCut
	}
	return append(out, timeSpan{from, until, false})
}

func (t *timetable) y(at unit.Time) float64 {
	for i := 1; i < len(t.knots); i++ {
		a, b := t.knots[i-1], t.knots[i]
		if at <= b.at || i == len(t.knots)-1 {
			return a.y + float64((at-a.at)/(b.at-a.at))*(b.y-a.y)
		}
	}
	return t.knots[0].y
}

func (t *timetable) top() float64    { return t.knots[0].y }
func (t *timetable) bottom() float64 { return t.knots[len(t.knots)-1].y }

// A tick is a full hour on the axis.
type tick struct {
	y    float64
	text string
}

// hours returns the full hours to be written, far enough apart to read; the
// first of another day names it.
func (t *timetable) hours() []tick {
	const room = 17 // points
	step := hour
	for _, h := range []unit.Time{1, 2, 3, 6, 12, 24} {
		step = h * hour
		if step.Seconds()*t.scale >= room {
			break
		}
	}
	var out []tick
	last, today := -room*2.0, 0
	for at := t.knots[0].at; at <= t.knots[len(t.knots)-1].at; at += step {
		y := t.y(at)
		if t.hidden(at) || y-last < room || t.Deadline > 0 && math.Abs(y-t.y(t.Deadline)) < room-2 {
			continue
		}
		day := int(math.Floor(float64(at / (24 * hour))))
		text := t.Units.clock(at - unit.Time(day)*24*hour)
		if day != today {
			text = "d" + trimmed(float64(day+1), 0) + " " + text
		}
		last, today = y, day
		out = append(out, tick{y, text})
	}
	return out
}

// hidden reports whether a time is cut out, or so near that its label would
// touch that of the cut.
func (t *timetable) hidden(at unit.Time) bool {
	y := t.y(at)
	for _, k := range t.cuts {
		if math.Abs(y-k.y) < cutHeight/2+5 {
			return true
		}
	}
	return false
}

// lasting writes a duration to the minute.
func lasting(d unit.Time) string {
	minutes := int(math.Round(d.Minutes()))
	switch h, m := minutes/60, minutes%60; {
	case h == 0:
		return trimmed(float64(m), 0) + " min"
	case m == 0:
		return trimmed(float64(h), 0) + " h"
	default:
		return trimmed(float64(h), 0) + " h " + trimmed(float64(m), 0)
	}
}

package picture

import (
	"fmt"

	"presshand/engine/unit"
)

// A DayClock shows a day at the presses as a calendar does: time runs down,
// the crew and each press have a column. Under it is a table of the loads.
type DayClock struct {
	Title    string
	Presses  []string // their names, left to right
	Loads    []ClockLoad
	Deadline unit.Time // since midnight; zero: none
	Units    Units
}

// A ClockLoad is one load's way through a press: as usual, and where every load
// takes its longest.
type ClockLoad struct {
	Number int
	Panels int // how many lie in it; zero: not shown
	Press  int // an index of Presses
	Usual  ClockTimes
	Late   ClockTimes // zero: as usual
}

// ClockTimes are one load's times since midnight.
type ClockTimes struct {
	LayUp, LaidUp unit.Time // the crew lays it up
	In, Due       unit.Time // shut in the press, and ready to come out
	Unload, Out   unit.Time // the crew takes it out
}

func (t ClockTimes) rising() bool {
	return t.LayUp >= 0 && t.LayUp <= t.LaidUp && t.LaidUp <= t.In && t.In <= t.Due && t.Due <= t.Unload && t.Unload <= t.Out && t.Out <= longestDay
}

func (l ClockLoad) late() ClockTimes {
	if l.Late.Out == 0 {
		return l.Usual
	}
	return l.Late
}

func (l ClockLoad) name() string { return fmt.Sprintf("Load %d", l.Number) }

// Draw lays the day out. It fails without a load, and on times that run back.
func (c DayClock) Draw() (*Drawing, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	d := &Drawing{Alt: c.alt()}
	note := "Time runs down."
	if c.uncertain() {
		note = "Time runs down. Hatched: in the press if the glue takes its longest each time."
	}
	t := c.timetable(d.heading(or(c.Title, "The day's clock"), note) + 22)
	t.d = d
	t.drawGrid()
	for _, l := range c.Loads {
		t.drawLoad(l)
	}
	t.drawCrew()
	t.drawCuts()
	t.drawDeadline()
	bottom := d.key(t.bottom()+8, c.keyLines())
	return d.finish(c.drawTable(d, bottom+12) + margin), nil
}

const longestDay = unit.Time(60 * 24 * 3600)

func (c DayClock) check() error {
	if len(c.Loads) == 0 || len(c.Presses) == 0 {
		return fmt.Errorf("clock has %d loads and %d presses, want one of each at least", len(c.Loads), len(c.Presses))
	}
	for _, l := range c.Loads {
		if l.Press < 0 || l.Press >= len(c.Presses) {
			return fmt.Errorf("load %d is in press %d, want 0 to %d", l.Number, l.Press, len(c.Presses)-1)
		}
		if !l.Usual.rising() || !l.late().rising() || l.late().Out < l.Usual.Out {
			return fmt.Errorf("load %d runs %v, late %v, want rising times within 60 days", l.Number, l.Usual, l.Late)
		}
	}
	if !(c.Deadline >= 0 && c.Deadline <= longestDay) {
		return fmt.Errorf("deadline is %g min, want 0 or more", c.Deadline.Minutes())
	}
	return nil
}

// uncertain reports whether any load may come out later than usual.
func (c DayClock) uncertain() bool {
	for _, l := range c.Loads {
		if l.late().Out > l.Usual.Out {
			return true
		}
	}
	return false
}

// missed are the loads that come out after the deadline: as usual, and those
// that do only where the glue takes its longest.
func (c DayClock) missed() (usual, late []ClockLoad) {
	if c.Deadline == 0 {
		return nil, nil
	}
	for _, l := range c.Loads {
		switch {
		case l.Usual.Out > c.Deadline:
			usual = append(usual, l)
		case l.late().Out > c.Deadline:
			late = append(late, l)
		}
	}
	return usual, late
}

package bot

import (
	"fmt"
	"math"

	"presshand/bot/picture"
	"presshand/engine/plan"
	"presshand/engine/unit"
)

// How much of a day is drawn; more would not be legible on a phone.
const (
	maxDrawnLoads   = 24
	maxDrawnPresses = 6
)

// day draws when the loads of a day go in and come out, and where their panels
// lie. A day that is not drawn on the clock has its end in words.
func (d Drawn) day() (*picture.Drawing, error) {
	day := d.Answer.Day
	timed := day != nil && day.Timed && len(day.Loads) > 0 && day.Loads[0].Stage.Out > 0
	beds := d.beds()
	if timed && len(day.Loads) <= maxDrawnLoads && day.Presses <= maxDrawnPresses {
		under, err := beds.Draw()
		if err != nil {
			return nil, err
		}
		clock, err := d.clock().Draw()
		if err != nil {
			return under, nil // times that cannot be drawn
		}
		return clock.Below(under), nil
	}
	if timed {
		beds.Notes = append([]string{capital(d.style.dayHeadline(d.Answer))}, beds.Notes...)
		for _, c := range d.Answer.Checks {
			if c.Name == "deadline" {
				beds.Notes = append(beds.Notes, d.style.sentence(c.Finding, worked{question: d.Question, answer: d.Answer}))
			}
		}
	}
	return beds.Draw()
}

// withDay sets the day of a load under what else is drawn of it.
func (d Drawn) withDay(of *picture.Drawing, err error) (*picture.Drawing, error) {
	if d.Answer.Day == nil {
		return of, err
	}
	day, dayErr := d.day()
	switch {
	case dayErr != nil:
		return of, err
	case err != nil:
		return day, nil
	}
	return of.Below(day), nil
}

// clock draws when each load of a day goes in and comes out.
func (d Drawn) clock() picture.DayClock {
	day := d.Answer.Day
	out := picture.DayClock{Units: d.units(), Deadline: day.Deadline}
	for i := range day.Presses {
		name := "Press"
		if day.Presses > 1 {
			name = fmt.Sprintf("Press %d", i+1)
		}
		out.Presses = append(out.Presses, name)
	}
	for i, l := range day.Loads {
		out.Loads = append(out.Loads, picture.ClockLoad{
			Number: i + 1, Panels: len(l.Panels), Press: l.Stage.Press, Usual: timesOf(l.Stage), Late: timesOf(l.Late),
		})
	}
	return out
}

// timesOf are a load's times as the words have them.
func timesOf(s plan.Stage) picture.ClockTimes {
	return picture.ClockTimes{
		LayUp: minuteAfter(s.LayUp), LaidUp: minuteAfter(s.LaidUp), In: minuteAfter(s.Shut),
		Due: minuteAfter(s.Due), Unload: minuteAfter(s.Unloading), Out: minuteAfter(s.Out),
	}
}

// minuteAfter is the full minute that the words have too.
func minuteAfter(t unit.Time) unit.Time {
	return unit.Minutes(math.Ceil(t.Minutes() - 1e-6))
}

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

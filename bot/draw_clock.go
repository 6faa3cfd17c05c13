package bot

import (
	"fmt"
	"math"

	"presshand/bot/picture"
	"presshand/engine/unit"
)

// maxDrawnLoads is how many loads of a day are drawn; more would not be legible
// on a phone.
const maxDrawnLoads = 16

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
			Name: fmt.Sprintf("Load %d", i+1), Press: l.Stage.Press,
			LayUp: minuteAfter(l.Stage.LayUp), In: minuteAfter(l.Stage.Shut),
			Out: minuteAfter(l.Stage.Out), Late: minuteAfter(max(l.Late.Out, l.Stage.Out)),
		})
	}
	return out
}

// minuteAfter is the full minute that the words have too.
func minuteAfter(t unit.Time) unit.Time {
	return unit.Minutes(math.Ceil(t.Minutes() - 1e-6))
}

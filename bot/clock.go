package bot

import (
	"fmt"
	"math"

	"presshand/engine/unit"
)

// clocks are the fields whose number is a time since the first midnight, in
// seconds.
var clocks = map[unit.Field]bool{
	unit.LastOut: true, unit.LastOutLate: true, unit.LastOutLeast: true, unit.OutBy: true, unit.LatestStart: true,
}

// clock shows a time since the first midnight, to the minute that follows:
// "16:05", "08:30 the next day".
func clock(seconds float64) string {
	minutes := int(math.Ceil(seconds/60 - 1e-6))
	text := fmt.Sprintf("%02d:%02d", minutes/60%24, minutes%60)
	switch days := minutes / (24 * 60); days {
	case 0:
		return text
	case 1:
		return text + " the next day"
	default:
		return fmt.Sprintf("%s on day %d", text, days+1)
	}
}

// dayClock shows a time with its day where that is not today, and returns its
// day.
func dayClock(t unit.Time, today int) (string, int) {
	minutes := int(math.Ceil(t.Minutes() - 1e-6))
	day := minutes / (24 * 60)
	text := clock(float64(minutes%(24*60)) * 60)
	if day != today {
		text = fmt.Sprintf("day %d %s", day+1, text)
	}
	return text, day
}

package bot

import (
	"strings"
	"time"

	"presshand/grammar"
)

// toldTime is when a load is said to have gone in or come out, or zero: "ten minutes ago",
// "10:15".
func (t *turn) toldTime(c *grammar.Command) time.Time {
	if c.Ago > 0 {
		return t.m.At.Add(-c.Ago)
	}
	if c.Time == "" {
		return time.Time{}
	}
	if strings.HasPrefix(c.Time, ":") {
		return lastMinute(t.m.At, c.Time)
	}
	at, ok := t.clock(c.Time)
	switch {
	case !ok:
		return time.Time{}
	case c.Half:
		return nearestHalf(t.m.At, at)
	case at.Sub(t.m.At) > 12*time.Hour: // "14 out 23:50" after midnight
		return at.AddDate(0, 0, -1)
	}
	return at
}

// lastMinute is when the clock last stood at so many minutes past an hour: ":30".
func lastMinute(now time.Time, past string) time.Time {
	at, err := time.Parse(":04", past)
	if err != nil {
		return time.Time{}
	}
	been := now.Add(time.Minute)
	when := been.Truncate(time.Minute).Add(time.Duration(at.Minute()-been.Minute()) * time.Minute)
	if when.After(been) {
		return when.Add(-time.Hour)
	}
	return when
}

// clock returns a time like "9:05" on the day of the message.
func (t *turn) clock(text string) (time.Time, bool) {
	clock, err := time.Parse("15:04", text)
	if err != nil {
		return time.Time{}, false
	}
	y, m, d := t.m.At.Date()
	return time.Date(y, m, d, clock.Hour(), clock.Minute(), 0, 0, t.m.At.Location()), true
}

// nearestHalf chooses between the two times of a day that a clock face shows alike: the
// last that has been today, by a minute that clocks may differ; before the first of them
// the one that lies nearer, that of the night before or that to come.
func nearestHalf(now, morning time.Time) time.Time {
	if morning.Hour() == 12 {
		morning = morning.Add(-12 * time.Hour)
	}
	later := morning.Add(12 * time.Hour)
	been := now.Add(time.Minute)
	switch {
	case !later.After(been):
		return later
	case !morning.After(been):
		return morning
	}
	if before := later.AddDate(0, 0, -1); now.Sub(before) < morning.Sub(now) {
		return before
	}
	return morning
}

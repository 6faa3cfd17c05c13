package book

import (
	"fmt"
	"time"

	"presshand/engine/unit"
)

// A Kind is what a reminder is for.
type Kind string

const (
	TimeUp    Kind = "time up"    // the press time is over
	AskResult Kind = "ask result" // no result was given yet
)

// resultAfter is how long after the press time, or after coming out, a load is
// asked for its result.
const resultAfter = 24 * time.Hour

// A Reminder is something to be said about a load of its own accord, once.
type Reminder struct {
	Key  string // the same however often it is worked out
	Room string
	Load int
	Kind Kind
	Due  time.Time
}

// PressTime returns how long the plan says that the load is to lie in the
// press; ok is false where it does not say.
func (p Plan) PressTime() (low, mid, high time.Duration, ok bool) {
	v, found := p.Values[unit.PressTime]
	if !found {
		v, found = p.Figure(unit.PressTime)
	}
	if !found {
		return 0, 0, 0, false
	}
	t, isTriple := v.(unit.Triple)
	if n, isNumber := v.(unit.Number); isNumber {
		m := float64(n)
		t, isTriple = unit.Triple{Low: &m, Mid: &m, High: &m}, true
	}
	if !isTriple || t.Mid == nil {
		return 0, 0, 0, false
	}
	mid = minutes(*t.Mid)
	low, high = mid, mid
	if t.Low != nil {
		low = minutes(*t.Low)
	}
	if t.High != nil {
		high = minutes(*t.High)
	}
	return low, mid, high, true
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// UpAt returns when the press time is up at its high end; ok is false for a
// load that did not go in or whose plan gives no press time.
func (l Load) UpAt() (at time.Time, ok bool) {
	_, _, high, ok := l.Plan.PressTime()
	if !ok || l.InAt.IsZero() {
		return time.Time{}, false
	}
	return l.InAt.Add(high), true
}

// Pressed returns how long the load has been, or was, in the press.
func (l Load) Pressed(now time.Time) time.Duration {
	switch {
	case l.InAt.IsZero():
		return 0
	case !l.OutAt.IsZero():
		return l.OutAt.Sub(l.InAt)
	}
	return now.Sub(l.InAt)
}

// Reminders returns what is still to be said about the load as it stands.
func (l Load) Reminders() []Reminder {
	var out []Reminder
	up, timed := l.UpAt()
	if l.InPress() && timed {
		out = append(out, l.reminder(TimeUp, up))
	}
	switch {
	case l.State == Taken:
		out = append(out, l.reminder(AskResult, l.OutAt.Add(resultAfter)))
	case l.InPress() && timed:
		out = append(out, l.reminder(AskResult, up.Add(resultAfter)))
	case l.InPress():
		out = append(out, l.reminder(AskResult, l.InAt.Add(resultAfter)))
	}
	return out
}

// reminder names the entry that started the clock in its key, so that the load
// is reminded again only if it goes in again.
func (l Load) reminder(k Kind, due time.Time) Reminder {
	started := 0
	for _, e := range l.Standing() {
		if e.Act == In {
			started = e.Seq
		}
	}
	return Reminder{Key: fmt.Sprintf("%s/%d/%d/%s", l.Room, l.Number, started, k), Room: l.Room, Load: l.Number, Kind: k, Due: due}
}

package book

import "time"

// A Turnout is what becomes of a message of someone who says much.
type Turnout string

const (
	Heard    Turnout = "heard"    // is answered
	Slowed   Turnout = "slowed"   // gets one polite line about the limit
	Silenced Turnout = "silenced" // gets nothing, until the minute is over
)

// CrowdWindow is how near in time messages count together, before or after:
// what is caught up with comes in any order.
const CrowdWindow = time.Minute

// TurnoutOf says what becomes of a person's next message, where most are
// answered within the window, 0 for any number, and of those near it so many
// were heard and slowed. Who is silenced does not have to wait longer for it.
func TurnoutOf(most, heard, slowed int) Turnout {
	switch {
	case most == 0 || heard < most:
		return Heard
	case slowed == 0:
		return Slowed
	}
	return Silenced
}

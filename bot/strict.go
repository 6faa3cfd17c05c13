package bot

import (
	"context"
	"encoding/json"
	"slices"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/grammar"
)

// A StrictClerk answers like a [Clerk], except that in some rooms a second
// check counts only if its message came sealed: encrypted, from a device that
// its owner vouches for, so that no server on the way can have made it up.
type StrictClerk struct {
	Clerk
	Demands func(room string) bool
}

// Answer works an event out.
func (c StrictClerk) Answer(ctx context.Context, e book.Event) (book.Outcome, error) {
	o, err := c.Clerk.Answer(ctx, e)
	if err != nil || !checks(o) || !c.Demands(e.Place.Room) || sealed(e) {
		return o, err
	}
	r := Reply{About: grammar.Book, Verdict: engine.Ask}
	r.say(Headline, "That check does not count: in this room a check has to come encrypted, from a device that you have verified.")
	r.say(Question, "Verify your session in the security settings of your chat program, then send the check again.")
	r = r.finished()
	body, err := r.sheet().body()
	if err != nil {
		return book.Outcome{}, err
	}
	was := o.Replies[0]
	return book.Outcome{Replies: []book.Outgoing{{
		Message: was.Message, Replaces: was.Replaces, Text: r.Text, Body: body, At: was.At,
	}}}, nil
}

func checks(o book.Outcome) bool {
	return slices.ContainsFunc(o.Entries, func(e book.Entry) bool { return e.Act == book.Check })
}

// sealed reports what the service noted in the event's extra, beside what a
// [Gesture] has there.
func sealed(e book.Event) bool {
	var noted struct {
		Sealed bool `json:"sealed"`
	}
	return json.Unmarshal(e.Extra, &noted) == nil && noted.Sealed
}

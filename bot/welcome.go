package bot

import (
	"bytes"
	"context"
	"encoding/json"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/grammar"
)

// Arrived is the Extra of the [book.Event] with which a service tells, once for
// each time, that the bot itself came into a room. The event has no text and no
// thread; it is answered with the welcome.
func Arrived() json.RawMessage { return json.RawMessage(`{"arrived":true}`) }

func arrived(e book.Event) bool { return bytes.Equal(e.Extra, Arrived()) }

// welcome says what the bot answers in a room, how it is spoken to there, and
// one thing to try. Prefixes are the words that may stand before a message to
// it, beside its name.
func welcome(metric bool, prefixes []string) Reply {
	r := Reply{About: grammar.Words, Verdict: engine.None}
	called, before := "my name", ""
	if len(prefixes) > 0 {
		before = prefixes[0] + ", "
		called += " or “" + prefixes[0] + ",”"
	}
	r.say(Headline, "Hello. I answer questions about pressing wood under vacuum, and keep a book of the loads.")
	r.say(Figure, "Begin a message to me with "+called+"; in the thread of my answer go on without.")
	r.say(Figure, "Try “"+before+loadExample(metric)+"”. “"+before+"help” tells the rest.")
	return r.finished()
}

// greet answers the bot's own arrival in a room.
func (c Clerk) greet(ctx context.Context, e book.Event) (book.Outcome, error) {
	var prefixes []string
	if c.Prefixes != nil {
		prefixes = c.Prefixes(e.Place.Room)
	}
	r := welcome(c.Bot.settings(e.Place.Room).Metric, prefixes)
	return c.outcome(ctx, e, r, r.sheet(), book.Outcome{}, earlier{})
}

package bot

import (
	"context"
	"time"

	"presshand/bot/book"
)

// A Message is what a person typed, addressed to the bot, with the mention or
// prefix already taken off.
type Message struct {
	Room   string    // where its settings, its loads and its threads live
	Thread string    // "" for a thread of its own, which is not remembered
	ID     string    // the message's key over all services, "" where it has none
	From   string    // who typed it: the same for one person on every service
	Name   string    // what to call them, "" for From
	Via    string    // the service, where the load book has to remember it
	Text   string    // as typed, several lines allowed
	At     time.Time // when, by the service's clock
}

// A Room is a chat service, or one stream of messages of it.
type Room interface {
	// Receive returns the next message. It blocks until there is one, until ctx
	// is done, or until the stream ends, which is io.EOF.
	Receive(ctx context.Context) (Message, error)
	// Send answers m. It may be called once for each message received.
	Send(ctx context.Context, m Message, r Reply) error
	// Close gives back what the room holds. Receive then returns io.EOF.
	Close() error
}

// A Picture goes with a reply. Alt says in words what it shows.
type Picture struct {
	Alt string
	PNG []byte
}

// A Clock tells the time.
type Clock interface{ Now() time.Time }

// A Store keeps what threads, rooms and the load book remember. It may be used
// from several goroutines at once.
type Store interface {
	book.Reader
	// Record keeps all that one message changes, or nothing of it.
	// [book.ErrConflict] says that something it builds on has changed meanwhile.
	Record(ctx context.Context, o book.Outcome, at time.Time) error
}

// Settings are how one room is run.
type Settings struct {
	Metric bool           // bare lengths are millimetres; else inches
	Policy book.Policy    // who may check a load
	Zone   *time.Location // nil: the zone of the message's time
}

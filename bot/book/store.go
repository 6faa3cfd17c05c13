package book

import (
	"context"
	"errors"
	"io"
	"time"
)

// What a store answers, to be told apart with errors.Is.
var (
	ErrNotFound = errors.New("not found")
	ErrNone     = errors.New("nothing to do")                       // no event, reply or reminder to claim
	ErrConflict = errors.New("changed by someone else meanwhile")   // read again and try again
	ErrAnswered = errors.New("answered already")                    // the event or reminder was dealt with
	ErrBusy     = errors.New("store is locked by another process")  // try again later
	ErrReadOnly = errors.New("store cannot be written")             // file or server is read-only
	ErrFull     = errors.New("no space left for the store")         // disk or quota
	ErrLost     = errors.New("store cannot be reached")             // connection lost or refused
	ErrNewer    = errors.New("store was made by a newer presshand") // its schema is unknown here
	ErrBackup   = errors.New("backup is damaged or not one of presshand's")
	ErrDamaged  = errors.New("store is damaged or not a presshand store")
	ErrNotEmpty = errors.New("store is not empty")
)

// A Reader reads the load book.
type Reader interface {
	// Load returns a load with its entries, or ErrNotFound.
	Load(ctx context.Context, room string, n int) (Load, error)
	// NextNumber returns the number of the room's next load. Two may be told
	// the same; recording the second then gives ErrConflict.
	NextNumber(ctx context.Context, room string) (int, error)
	// Loads returns the loads that q chooses, the newest first.
	Loads(ctx context.Context, room string, q Query) ([]Load, error)
	// Acts returns a person's latest entries in a room, the latest first,
	// without undoings.
	Acts(ctx context.Context, room, person string, limit int) ([]Entry, error)
	// Thread and Profile return what is remembered; Version is 0 where nothing is.
	Thread(ctx context.Context, room, name string) (Thread, error)
	Profile(ctx context.Context, room string) (Profile, error)
	// Reply returns the last reply to a message, or ErrNotFound.
	Reply(ctx context.Context, p Place, message string) (Outgoing, error)
}

// An Inbox keeps what was said until it is answered.
type Inbox interface {
	// Receive keeps an event; fresh is false for one that is there already.
	// Only once it returns without an error may the service be told that the
	// event arrived. most is how many messages of one person are answered
	// within a minute, 0 for any number: what becomes of this one is decided
	// here, by [TurnoutOf], for all processes and for good.
	Receive(ctx context.Context, e Event, at time.Time, most int) (fresh bool, err error)
	// ClaimEvent leases the oldest open event of a room in which no other is
	// leased, so that a room is answered in order; ErrNone if there is none.
	ClaimEvent(ctx context.Context, c Claim) (Event, error)
	// RetryEvent gives a claimed event back, not to be claimed before a time;
	// a zero time gives it up for good.
	RetryEvent(ctx context.Context, key string, after time.Time, reason string) error
	// Record keeps an outcome in one transaction. ErrAnswered: someone else
	// dealt with the event or the reminder; ErrConflict: what the outcome
	// builds on has changed. Nothing is kept then.
	Record(ctx context.Context, o Outcome, at time.Time) error
}

// An Outbox keeps what is to be sent until a service took it.
type Outbox interface {
	// ClaimOutgoing leases the oldest open reply of a room, for one of some
	// services; ErrNone if there is none. What is beside the words waits for
	// all that is older, words wait for older words.
	ClaimOutgoing(ctx context.Context, c Claim, services []string) (Outgoing, error)
	// Sent keeps that the service took a reply, and the service's id for it.
	Sent(ctx context.Context, key, ref string, at time.Time) error
	// RetryOutgoing is RetryEvent for a reply.
	RetryOutgoing(ctx context.Context, key string, after time.Time, reason string) error
}

// A Claim is who leases work, from when and for how long. Work that is not
// finished when its lease ends goes to the next who asks.
type Claim struct {
	Worker string
	Now    time.Time
	For    time.Duration
	Words  bool // of replies, only those that are not beside the words
}

// A Calendar keeps what is to be said of its own accord. Recording an outcome
// with entries brings the reminders of their loads up to date.
type Calendar interface {
	// ClaimReminder leases a reminder that is due, or ErrNone. It is done when
	// an outcome that names it is recorded.
	ClaimReminder(ctx context.Context, c Claim) (Reminder, error)
}

// Leases let one process at a time do a thing, a Matrix sync say.
type Leases interface {
	// Hold takes or renews a lease; held is false while another has it.
	Hold(ctx context.Context, name string, c Claim) (held bool, err error)
	// Release gives a lease back.
	Release(ctx context.Context, name, worker string) error
	// Free drops what a worker of this name had claimed before it died.
	Free(ctx context.Context, worker string) error
	// Mark and SetMark keep a place in a stream: the last event seen.
	Mark(ctx context.Context, name string) (string, error)
	SetMark(ctx context.Context, name, place string) error
}

// A Keeper looks after the store.
type Keeper interface {
	// Entries calls f with each entry of a room, or of all rooms where room is
	// "", in the order in which they were recorded.
	Entries(ctx context.Context, room string, f func(Entry) error) error
	// Rooms returns the rooms that have loads, by name.
	Rooms(ctx context.Context) ([]string, error)
	// Forget blanks a person: who they are in the book, and what they said. It
	// returns how many entries and messages it blanked.
	Forget(ctx context.Context, person string) (int, error)
	// Sweep drops the texts of messages dealt with before a time, and threads
	// not spoken in since; loads stay. It returns how many rows it cleared.
	Sweep(ctx context.Context, before time.Time) (int, error)
	Depth(ctx context.Context) (Depth, error)
	// Backup writes all that the store holds; Restore reads it into a store
	// that is empty.
	Backup(ctx context.Context, w io.Writer) error
	Restore(ctx context.Context, r io.Reader) error
	Close() error
}

// A Store keeps everything. Its methods may be called by several goroutines
// and, on a server, by several processes at once.
type Store interface {
	Reader
	Inbox
	Outbox
	Calendar
	Leases
	Keeper
}

// Package desk works through what was said to the bot: it takes an event from
// the inbox, has it answered, records the answer with its event in one
// transaction, and sends it from the outbox until the service took it.
//
// A process can be killed between any two of these steps, and several can work
// on one store. An event is answered once, because only one outcome can be
// recorded for it; a reply is seen once, because it is sent under the same
// idempotency key each time.
package desk

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"sync"
	"time"

	"presshand/bot/book"
)

// A Handler answers. It may read the store, and must not change it or send
// anything: it can be asked again for the same event.
type Handler interface {
	Answer(ctx context.Context, e book.Event) (book.Outcome, error)
	// Remind words a reminder that is due.
	Remind(ctx context.Context, r book.Reminder) (book.Outcome, error)
	// Apologise answers an event that Answer failed on again and again.
	Apologise(e book.Event, err error) book.Outcome
}

// A Sender hands a reply to its service and returns the service's id for it.
// Sending the same key again must not show it twice: where o.Tries is not 0 the
// service may have it already. The error may be a [*WaitError] or wrap
// [ErrRefused]; after any other the reply is sent again.
type Sender interface {
	Send(ctx context.Context, o book.Outgoing) (ref string, err error)
}

// ErrRefused says that a service will never take a reply.
var ErrRefused = errors.New("service refuses the message")

// A WaitError says when a service will take the next reply.
type WaitError struct {
	After time.Duration
	Err   error
}

func (e *WaitError) Error() string { return fmt.Sprintf("service asks to wait %v: %v", e.After, e.Err) }
func (e *WaitError) Unwrap() error { return e.Err }

// A Desk works for a store. Store, Handler, Senders, Worker and Clock must be
// set; a zero value elsewhere takes the default beside it.
type Desk struct {
	Store   book.Store
	Handler Handler
	Senders map[string]Sender // by service; replies for other services are left to other processes
	Worker  string            // a name that no other process has at the same time
	Clock   func() time.Time
	Log     *slog.Logger

	Lanes    int           // how many rooms are answered at once: 2
	Posts    int           // how many rooms are sent to at once, more where a service is slow to take a reply: as many
	Lease    time.Duration // how long a claim holds; after a death, others wait that long: 30 s
	Poll     time.Duration // how often work recorded by other processes is looked for: 500 ms
	Grace    time.Duration // how long work in hand may take once Run is told to stop: 8 s
	Reign    time.Duration // how long a leader's lease holds unless it is renewed: 20 s
	Keep     time.Duration // how long message texts are kept; 0 is for ever
	Patience time.Duration // how long a picture is tried that its service does not take: 2 min
	Tries    int           // how often answering is tried before the apology: 5
	Most     int           // how many messages of one person are answered within a minute; 0 is any number

	once             sync.Once
	said, due, words chan struct{} // something new in the inbox, in the outbox, there for the lane of words
	late             lateness
}

func (d *Desk) init() {
	d.once.Do(func() {
		d.said, d.due, d.words = make(chan struct{}, 1), make(chan struct{}, 1), make(chan struct{}, 1)
		d.Lanes = or(d.Lanes, 2)
		d.Posts = or(d.Posts, d.Lanes)
		d.Lease = or(d.Lease, 30*time.Second)
		d.Poll = or(d.Poll, 500*time.Millisecond)
		d.Grace = or(d.Grace, 8*time.Second)
		d.Reign = or(d.Reign, 20*time.Second)
		d.Patience = or(d.Patience, 2*time.Minute)
		d.Tries = or(d.Tries, 5)
		if d.Log == nil {
			d.Log = slog.New(slog.DiscardHandler)
		}
	})
}

func or[T comparable](v, otherwise T) T {
	var zero T
	if v == zero {
		return otherwise
	}
	return v
}

// Receive records an event. Once it returns without an error the service may
// be told that the event arrived; fresh is false for one that is known.
func (d *Desk) Receive(ctx context.Context, e book.Event) (fresh bool, err error) {
	d.init()
	fresh, err = d.Store.Receive(ctx, e, d.Clock(), d.Most)
	if fresh {
		nudge(d.said)
	}
	return fresh, err
}

func nudge(c chan struct{}) {
	select {
	case c <- struct{}{}:
	default:
	}
}

// Resume drops what a process of this name had claimed before it died, so that
// its work is taken up at once. It comes before Run and Lead.
func (d *Desk) Resume(ctx context.Context) error { return d.Store.Free(ctx, d.Worker) }

// Run works until ctx is done, then finishes what it has in hand.
func (d *Desk) Run(ctx context.Context) {
	d.init()
	var wg sync.WaitGroup
	for range d.Lanes {
		wg.Go(func() { d.loop(ctx, "answer", d.said, d.answerNext) })
	}
	for i := range d.Posts {
		nudged, step := d.due, d.sendNext
		if i == 1 {
			nudged, step = d.words, d.sendWords
		}
		wg.Go(func() { d.loop(ctx, "send", nudged, step) })
	}
	wg.Go(func() { d.loop(ctx, "remind", nil, d.remindNext) })
	if d.Keep > 0 {
		wg.Go(func() { d.sweep(ctx) })
	}
	wg.Wait()
}

// sweep drops the texts of old messages, at once and then every hour.
func (d *Desk) sweep(ctx context.Context) {
	for ctx.Err() == nil {
		work, done := d.inHand(ctx)
		if _, err := d.Store.Sweep(work, d.Clock().Add(-d.Keep)); err != nil {
			d.Log.Warn("desk: old messages not dropped", "error", err)
		}
		done()
		pause(ctx, time.Hour)
	}
}

// loop does step after step; with nothing to do it waits for a nudge or for
// the next poll, after an error for longer and longer.
func (d *Desk) loop(ctx context.Context, what string, nudged <-chan struct{}, step func(context.Context) error) {
	failures := 0
	for ctx.Err() == nil {
		work, done := d.inHand(ctx)
		err := step(work)
		done()
		wait := d.Poll
		switch {
		case err == nil:
			failures = 0
			continue
		case errors.Is(err, book.ErrNone):
			failures = 0
		default:
			failures++
			wait = backoff(failures, storeWait)
			d.Log.Warn("desk: step failed", "step", what, "error", err, "again_in", wait)
		}
		select {
		case <-ctx.Done():
		case <-nudged:
		case <-time.After(wait):
		}
	}
}

// inHand returns a context for one step. It ends before the lease does, so
// that nobody else has the work yet, and outlives ctx by the grace.
func (d *Desk) inHand(ctx context.Context) (context.Context, context.CancelFunc) {
	work, cancel := context.WithTimeout(context.WithoutCancel(ctx), d.Lease*2/3)
	stop := context.AfterFunc(ctx, func() {
		select {
		case <-work.Done():
		case <-time.After(d.Grace):
			cancel()
		}
	})
	return work, func() { stop(); cancel() }
}

// How long to wait after failures: for the store, which everything waits for,
// and for an event or a reply, which only its room waits for.
const (
	shortestWait = 100 * time.Millisecond
	storeWait    = 5 * time.Second
	roomWait     = time.Minute
)

// backoff doubles with each failure, up to longest.
func backoff(failures int, longest time.Duration) time.Duration {
	wait := shortestWait
	for range failures - 1 {
		if wait *= 2; wait > longest {
			return longest
		}
	}
	return wait
}

func (d *Desk) claim() book.Claim {
	return book.Claim{Worker: d.Worker, Now: d.Clock(), For: d.Lease}
}

package desk

import (
	"context"
	"errors"
	"maps"
	"slices"
	"sync"
	"time"

	"presshand/bot/book"
)

// sendNext sends the next reply, or returns book.ErrNone.
func (d *Desk) sendNext(ctx context.Context) error { return d.send(ctx, d.claim()) }

// sendWords sends the next reply that is no picture: one lane is kept for
// words, so that pictures that a service is slow to take hold up none.
func (d *Desk) sendWords(ctx context.Context) error {
	c := d.claim()
	c.Words = true
	err := d.send(ctx, c)
	if err == nil {
		nudge(d.due) // what stood behind these words
	}
	return err
}

func (d *Desk) send(ctx context.Context, c book.Claim) error {
	o, err := d.Store.ClaimOutgoing(ctx, c, slices.Sorted(maps.Keys(d.Senders)))
	if err != nil {
		return err
	}
	ref, err := d.Senders[o.Place.Service].Send(ctx, o)
	if err == nil {
		d.late.settled(o.Key)
		return d.Store.Sent(ctx, o.Key, ref, d.Clock())
	}
	after := backoff(o.Tries+1, roomWait)
	var wait *WaitError
	asked := errors.As(err, &wait)
	if asked {
		after = wait.After
	}
	// the step may have run out of time; giving back must not fail for that
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), d.Lease/3)
	defer cancel()
	switch {
	case errors.Is(err, ErrRefused), o.Beside && d.tooLate(o, asked):
		d.Log.Error("desk: reply given up", "service", o.Place.Service, "picture", o.Beside, "tries", o.Tries+1, "error", err)
		d.late.settled(o.Key)
		return d.Store.RetryOutgoing(ctx, o.Key, time.Time{}, err.Error())
	case !asked:
		d.Log.Warn("desk: reply not sent", "service", o.Place.Service, "picture", o.Beside, "tries", o.Tries+1, "again_in", after, "error", err)
	}
	return d.Store.RetryOutgoing(ctx, o.Key, d.Clock().Add(after), err.Error())
}

// Beyond [Desk.Patience] a picture is tried this often, for there may have been
// no try before; where the service asks to wait, for so many times as long.
const (
	lastTries  = 3
	longerWait = 30
)

// tooLate reports whether a picture that failed is not worth another try.
func (d *Desk) tooLate(o book.Outgoing, asked bool) bool {
	now := d.Clock()
	first, failures := d.late.failed(o.Key, now, asked)
	if asked {
		return now.Sub(first) >= longerWait*d.Patience
	}
	return failures >= lastTries && now.Sub(o.At) >= d.Patience
}

// lateness is which pictures could not be sent, by their keys. It need not
// outlive the process: a picture is then tried for that much longer.
type lateness struct {
	mu    sync.Mutex
	tried map[string]attempts
}

// attempts are those at one picture.
type attempts struct {
	first    time.Time
	failures int
}

// maxLate is how many are remembered; beyond it all begin anew.
const maxLate = 10_000

func (l *lateness) failed(key string, now time.Time, asked bool) (first time.Time, failures int) {
	l.mu.Lock()
	defer l.mu.Unlock()
	a, ok := l.tried[key]
	if !ok {
		if l.tried == nil || len(l.tried) >= maxLate {
			l.tried = map[string]attempts{}
		}
		a.first = now
	}
	if !asked {
		a.failures++
	}
	l.tried[key] = a
	return a.first, a.failures
}

func (l *lateness) settled(key string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	delete(l.tried, key)
}

package desk

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"

	"presshand/bot/book"
)

// rereads is how often an answer is worked out again because something it
// builds on changed meanwhile.
const rereads = 10

// answerNext answers the next event, or returns book.ErrNone.
func (d *Desk) answerNext(ctx context.Context) error {
	e, err := d.Store.ClaimEvent(ctx, d.claim())
	if err != nil {
		return err
	}
	err = d.settle(ctx, func() (book.Outcome, error) {
		o, err := d.Handler.Answer(ctx, e)
		return addressed(o, e), err
	})
	var failed *handlerError
	if !errors.As(err, &failed) {
		return err
	}
	if e.Tries+1 < d.Tries {
		after := d.Clock().Add(backoff(e.Tries+1, roomWait))
		return errors.Join(err, d.Store.RetryEvent(ctx, e.Key, after, "handler failed"))
	}
	return errors.Join(err, d.settle(ctx, func() (book.Outcome, error) {
		return addressed(d.Handler.Apologise(e, failed.err), e), nil
	}))
}

// addressed fills in what each answer to an event has in common.
func addressed(o book.Outcome, e book.Event) book.Outcome {
	o.Event = e.Key
	for i := range o.Replies {
		r := &o.Replies[i]
		r.Event = e.Key
		if r.Key == "" {
			r.Key = fmt.Sprintf("%s#%d", e.Key, i)
		}
		if r.Place == (book.Place{}) {
			r.Place = e.Place
		}
		if r.Message == "" {
			r.Message = e.Message
		}
	}
	return o
}

// remindNext says the next reminder that is due, or returns book.ErrNone.
func (d *Desk) remindNext(ctx context.Context) error {
	r, err := d.Store.ClaimReminder(ctx, d.claim())
	if err != nil {
		return err
	}
	return d.settle(ctx, func() (book.Outcome, error) {
		o, err := d.Handler.Remind(ctx, r)
		o.Reminder = r.Key
		for i := range o.Replies {
			if o.Replies[i].Key == "" {
				o.Replies[i].Key = fmt.Sprintf("%s#%d", r.Key, i)
			}
		}
		return o, err
	})
}

// settle works an outcome out and records it, again when what it builds on
// has changed. What someone else dealt with is settled too.
func (d *Desk) settle(ctx context.Context, work func() (book.Outcome, error)) error {
	var err error
	for range rereads {
		var o book.Outcome
		if o, err = careful(work); err != nil {
			return err
		}
		err = d.Store.Record(ctx, o, d.Clock())
		switch {
		case err == nil:
			nudge(d.due)
			nudge(d.words)
			return nil
		case errors.Is(err, book.ErrAnswered):
			return nil
		case !errors.Is(err, book.ErrConflict):
			return err
		}
	}
	return err
}

// A handlerError is a failure of the handler, not of the store.
type handlerError struct{ err error }

func (e *handlerError) Error() string { return "handler: " + e.err.Error() }
func (e *handlerError) Unwrap() error { return e.err }

// careful turns a panic into an error, and marks what is not the store's fault.
func careful(work func() (book.Outcome, error)) (o book.Outcome, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = &handlerError{fmt.Errorf("panic: %v\n%s", p, debug.Stack())}
		}
	}()
	o, err = work()
	if err != nil && !ofStore(err) {
		err = &handlerError{err}
	}
	return o, err
}

// ofStore reports whether trying again later can help, however often it takes.
func ofStore(err error) bool {
	for _, e := range []error{
		book.ErrBusy, book.ErrReadOnly, book.ErrFull, book.ErrLost, context.Canceled, context.DeadlineExceeded,
	} {
		if errors.Is(err, e) {
			return true
		}
	}
	return false
}

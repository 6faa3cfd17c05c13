package matrix

import (
	"context"
	"errors"
	"net"
	"net/http"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
	"presshand/bot/desk"
)

// A sendError is a failure of sending an event, the only one that leaves open
// whether it arrived.
type sendError struct{ err error }

func (e *sendError) Error() string { return e.err.Error() }
func (e *sendError) Unwrap() error { return e.err }

// brokeOff reports whether an event may have arrived although sending it
// failed: the request went out, and no homeserver refused it.
func brokeOff(err error) bool {
	var sending *sendError
	if !errors.As(err, &sending) {
		return false
	}
	var dial *net.OpError
	if errors.As(err, &dial) && dial.Op == "dial" {
		return false
	}
	var e mautrix.HTTPError
	return !errors.As(err, &e) || e.Response == nil || e.Response.StatusCode >= http.StatusInternalServerError
}

// doubted notes that a reply may have arrived, also for the process that comes
// after this one.
func (s *session) doubted(ctx context.Context, key string, err error) error {
	if !brokeOff(err) {
		return err
	}
	ctx, done := context.WithTimeout(context.WithoutCancel(ctx), signalFor)
	defer done()
	return errors.Join(err, s.store.keepDoubt(ctx, key, time.Now()))
}

const (
	// catchUp is how long a homeserver that was just restarted may take to show
	// what it had accepted.
	catchUp = time.Second
	// surfaces is how long it may take a homeserver that was killed in the
	// middle of a request, and has forgotten the transaction id. Dendrite's
	// parts take what they had not finished up again after 30 s; what it had
	// not even stored, after five minutes, for which nobody waits: see echo.
	surfaces = 35 * time.Second
)

var errDoubt = errors.New("homeserver broke off while it took the reply; waiting for it to show")

// lookAgain looks for a reply that was tried before. A WaitError says that it
// may still show.
func (s *session) lookAgain(ctx context.Context, o book.Outgoing) (id.EventID, error) {
	found, err := s.lookFor(ctx, o)
	if err != nil || found != "" {
		return found, err
	}
	since, err := s.store.doubt(ctx, o.Key)
	switch {
	case err != nil:
		return "", err
	case since.IsZero(): // sent by a process that was killed: the homeserver knows its transaction id
		pause(ctx, catchUp)
		return s.lookFor(ctx, o)
	case time.Since(since) < surfaces:
		return "", &desk.WaitError{After: catchUp, Err: errDoubt}
	}
	return "", nil
}

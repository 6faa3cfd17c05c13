package matrix

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"sync"
	"time"

	"maunium.net/go/mautrix"

	"presshand/bot/book"
	"presshand/bot/desk"
)

// An Inbox takes what was said; what it took without an error is not lost.
type Inbox interface {
	Receive(ctx context.Context, e book.Event) (fresh bool, err error)
}

// An Account is one Matrix account, as one process serves it.
type Account struct {
	cfg   Config
	inbox Inbox
	book  book.Reader

	live chan *session // holds the session while there is one
}

// Open returns an account, which takes what was said to in, and reads in the
// load book whom a reminder is for. It is served by [Account.Run].
func Open(c Config, in Inbox, b book.Reader) (*Account, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	return &Account{cfg: c, inbox: in, book: b, live: make(chan *session, 1)}, nil
}

// After the death of the process that serves an account another one serves it
// within a reign and a quarter, and goes on with what the dead one had in hand
// within a lease: well within the 30 s that a handover may take.
const (
	lease = 20 * time.Second
	reign = 16 * time.Second
)

// Serve serves an account whenever this process holds the account's lease,
// until ctx is done or something is wrong that only people can mend. The desk
// must be one of its own, with store, handler, name and clock; its senders are
// set here, and its lease and reign where they are not. It works while the
// account is served: two processes that send for one account would use the same
// step of a key twice.
func Serve(ctx context.Context, c Config, d *desk.Desk) error {
	a, err := Open(c, d, d.Store)
	if err != nil {
		return err
	}
	d.Lease, d.Reign = cmp.Or(d.Lease, lease), cmp.Or(d.Reign, reign)
	// before it leads: what is dropped includes the lease of the account
	if err := d.Resume(ctx); err != nil {
		a.cfg.Log.Warn("matrix: earlier claims not freed", "error", err)
	}
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	d.Lead(ctx, "matrix/"+c.User, func(ctx context.Context) {
		a.cfg.Log.Info("matrix: this process serves the account", "user", c.User)
		d.Senders = map[string]desk.Sender{Service: serving{a, ctx.Done()}}
		var wg sync.WaitGroup
		working, done := context.WithCancel(ctx)
		wg.Go(func() { d.Run(working) })
		if err := a.Run(ctx); err != nil {
			stop(err)
		}
		done()
		wg.Wait()
	})
	if err := context.Cause(ctx); err != nil && !errors.Is(err, context.Canceled) {
		return err
	}
	return nil
}

// Run logs in and syncs, again and again after failures, until ctx is done or
// something is wrong that only people can mend.
func (a *Account) Run(ctx context.Context) error {
	if !Encrypts {
		a.cfg.Log.Warn("matrix: this program was built without Matrix encryption; rooms that are encrypted are left")
	}
	for failures := 0; ctx.Err() == nil; failures++ {
		began := time.Now()
		err := a.serve(ctx)
		if time.Since(began) > longestWait { // it worked in between
			failures = 0
		}
		switch {
		case err == nil, ctx.Err() != nil:
		case lasting(err):
			return fmt.Errorf("matrix account %s: %w", a.cfg.User, err)
		default:
			a.cfg.Heard(err)
			wait := max(backoff(failures), retryAfter(err))
			a.cfg.Log.Warn("matrix: account cannot be served", "error", brief(err), "again_in", wait)
			pause(ctx, wait)
		}
	}
	return nil
}

// Check logs in and opens the keys as serving would, and says what is in the
// way. It posts nothing; a new store becomes a new device.
func Check(ctx context.Context, c Config) error {
	if err := c.check(); err != nil {
		return err
	}
	s, err := connect(ctx, c)
	if err != nil {
		return err
	}
	s.cipher, err = newCipher(ctx, s)
	return errors.Join(err, s.close())
}

// serve logs in, then syncs and sends until ctx is done.
func (a *Account) serve(ctx context.Context) (err error) {
	s, err := connect(ctx, a.cfg)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.close()) }()
	s.inbox, s.book = a.inbox, a.book
	if s.cipher, err = newCipher(ctx, s); err != nil {
		return err
	}
	s.dress(ctx)
	a.cfg.Log.Info("matrix: serving", "user", s.client.UserID, "device", s.client.DeviceID, "encryption", Encrypts)
	var wg sync.WaitGroup
	defer wg.Wait()
	working, stop := context.WithCancel(ctx)
	defer stop()
	wg.Go(func() { s.signal(working) })
	wg.Go(func() { s.visit(working) })
	wg.Go(func() { s.await(working) })
	a.live <- s
	defer func() { <-a.live }() // waits for a reply that is being sent
	return s.follow(ctx)
}

// Send sends a reply, once for each key, and returns the event that shows it.
// It waits for the account to be connected. One reply is sent at a time.
func (a *Account) Send(ctx context.Context, o book.Outgoing) (ref string, err error) {
	return serving{Account: a}.Send(ctx, o)
}

// serving is an account until it is over: then no reply waits for it to be
// connected, which it may never be again.
type serving struct {
	*Account
	over <-chan struct{} // nil: never
}

var errOver = errors.New("account is not served any more")

func (v serving) Send(ctx context.Context, o book.Outgoing) (ref string, err error) {
	select {
	case <-ctx.Done():
		return "", fmt.Errorf("account is not connected: %w", ctx.Err())
	case <-v.over:
		return "", &desk.WaitError{Err: errOver}
	case s := <-v.live:
		defer func() { v.live <- s }()
		return s.Send(ctx, o)
	}
}

// lasting reports whether trying again cannot help.
func lasting(err error) bool {
	return isAny(err,
		ErrNotSetUp, ErrUnverified, ErrStoreMismatch, ErrLostDevice, ErrRecoveryKey, ErrStoreKey, ErrToken, ErrLogin, mautrix.MUserDeactivated)
}

const longestWait = 10 * time.Second

// backoff doubles with each failure.
func backoff(failures int) time.Duration {
	return min(250*time.Millisecond<<min(failures, 6), longestWait)
}

func nudge(c chan struct{}) {
	select {
	case c <- struct{}{}:
	default:
	}
}

func pause(ctx context.Context, t time.Duration) {
	select {
	case <-ctx.Done():
	case <-time.After(t):
	}
}

package adaptertest

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// Open opens a store by the name that its kind goes by: a path, a URL.
type Open func(ctx context.Context, name string) (book.Store, error)

// The environment of a child: the store's name, the service's address, its own
// name.
const (
	childStore   = "PRESSHAND_CHILD_STORE"
	childService = "PRESSHAND_CHILD_SERVICE"
	childWorker  = "PRESSHAND_CHILD_WORKER"
)

// Child turns the test binary into a bot process if it was started as one, and
// returns otherwise. A store's TestMain calls it first.
func Child(open Open) {
	if os.Getenv(childStore) == "" {
		return
	}
	if err := child(open); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	os.Exit(0)
}

// child serves until it is killed, or told to stop.
func child(open Open) error {
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGTERM)
	defer stop()
	s, err := open(ctx, os.Getenv(childStore))
	if err != nil {
		return err
	}
	svc := client{base: os.Getenv(childService), worker: os.Getenv(childWorker)}
	d := &desk.Desk{
		Store: s, Handler: newClerk(s), Senders: map[string]desk.Sender{"test": svc},
		Worker: svc.worker, Clock: time.Now, Lease: 500 * time.Millisecond, Poll: 20 * time.Millisecond, Reign: 2 * time.Second,
	}
	if err := d.Resume(ctx); err != nil {
		return err
	}
	done := make(chan struct{})
	go func() { defer close(done); d.Run(ctx) }()
	go d.Lead(ctx, "sync", svc.beat)
	for ctx.Err() == nil {
		if err := svc.listen(ctx, d); err != nil {
			time.Sleep(5 * time.Millisecond)
		}
	}
	<-done
	return s.Close()
}

// client is a process's end of the service.
type client struct{ base, worker string }

func (c client) call(ctx context.Context, path string, in, out any) error {
	body, err := json.Marshal(in)
	if err != nil {
		return err
	}
	req, err := http.NewRequestWithContext(ctx, http.MethodPost, c.base+path+"?worker="+c.worker, bytes.NewReader(body))
	if err != nil {
		return err
	}
	resp, err := http.DefaultClient.Do(req)
	if err != nil {
		return err
	}
	defer resp.Body.Close()
	if resp.StatusCode != http.StatusOK {
		return fmt.Errorf("service says %s", resp.Status)
	}
	return json.NewDecoder(resp.Body).Decode(out)
}

// listen takes what the service delivers: it is recorded, then acknowledged.
func (c client) listen(ctx context.Context, d *desk.Desk) error {
	var es []book.Event
	if err := c.call(ctx, "/deliver", nil, &es); err != nil {
		return err
	}
	for _, e := range es {
		if _, err := d.Receive(ctx, e); err != nil {
			return err
		}
		var ok bool
		if err := c.call(ctx, "/ack", e.Key, &ok); err != nil {
			return err
		}
	}
	return nil
}

// beat tells the service who leads, for as long as it does.
func (c client) beat(ctx context.Context) {
	for ctx.Err() == nil {
		var ok bool
		_ = c.call(ctx, "/beat", nil, &ok) // the next beat tells as much
		time.Sleep(20 * time.Millisecond)
	}
}

// Send hands a reply to the service, which knows its key again.
func (c client) Send(ctx context.Context, o book.Outgoing) (ref string, err error) {
	return o.Key, c.call(ctx, "/send", o, &ref)
}

// clerk is the bot's own, which answers messages as in a shop. Reminders are
// left out: the crash test is about messages.
type clerk struct{ bot.Clerk }

func newClerk(s book.Store) clerk {
	return clerk{bot.Clerk{Bot: bot.New(s), Draw: func(string) bool { return false }}}
}

// Remind says nothing.
func (clerk) Remind(context.Context, book.Reminder) (book.Outcome, error) {
	return book.Outcome{}, nil
}

package desk

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"presshand/bot/book"
)

// counter is a store of one event and one reply, which notes what is asked of
// it. What a test does not need panics.
type counter struct {
	book.Store
	mu       sync.Mutex
	events   []book.Event
	outgoing []book.Outgoing
	recorded []book.Outcome
	record   func(n int) error // what the n-th Record returns
	retried  []time.Time       // of events
	resent   []time.Time       // of replies
	sent     []string
	held     func() (bool, error)
	released int
}

func (c *counter) ClaimEvent(context.Context, book.Claim) (e book.Event, err error) {
	if len(c.events) == 0 {
		return e, book.ErrNone
	}
	e, c.events = c.events[0], c.events[1:]
	return e, nil
}

func (c *counter) ClaimOutgoing(context.Context, book.Claim, []string) (o book.Outgoing, err error) {
	if len(c.outgoing) == 0 {
		return o, book.ErrNone
	}
	o, c.outgoing = c.outgoing[0], c.outgoing[1:]
	return o, nil
}

func (c *counter) Record(_ context.Context, o book.Outcome, _ time.Time) error {
	c.recorded = append(c.recorded, o)
	if c.record == nil {
		return nil
	}
	return c.record(len(c.recorded))
}

func (c *counter) RetryEvent(_ context.Context, _ string, after time.Time, _ string) error {
	c.retried = append(c.retried, after)
	return nil
}

func (c *counter) RetryOutgoing(_ context.Context, _ string, after time.Time, _ string) error {
	c.resent = append(c.resent, after)
	return nil
}

func (c *counter) Sent(_ context.Context, key, ref string, _ time.Time) error {
	c.sent = append(c.sent, key+"="+ref)
	return nil
}

func (c *counter) Hold(context.Context, string, book.Claim) (bool, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.held()
}

func (c *counter) Release(context.Context, string, string) error {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.released++
	return nil
}

// mouth is a handler and a sender of functions.
type mouth struct {
	answer func(book.Event) (book.Outcome, error)
	send   func(book.Outgoing) (string, error)
}

func (m mouth) Answer(_ context.Context, e book.Event) (book.Outcome, error) { return m.answer(e) }
func (m mouth) Remind(_ context.Context, r book.Reminder) (book.Outcome, error) {
	return book.Outcome{Replies: []book.Outgoing{{Text: string(r.Kind)}}}, nil
}
func (m mouth) Apologise(_ book.Event, err error) book.Outcome {
	return book.Outcome{Replies: []book.Outgoing{{Text: "sorry: " + err.Error()}}}
}
func (m mouth) Send(_ context.Context, o book.Outgoing) (string, error) { return m.send(o) }

var noon = time.Date(2031, 3, 4, 12, 0, 0, 0, time.UTC)

func newDesk(c *counter, m mouth) *Desk {
	d := &Desk{Store: c, Handler: m, Senders: map[string]Sender{"test": m}, Worker: "w", Clock: func() time.Time { return noon }}
	d.init()
	return d
}

var asked = book.Event{Key: "e1", Message: "m1", Place: book.Place{Service: "test", Room: "joinery", Thread: "t1"}}

func TestAnswer_addressesTheReply(t *testing.T) {
	c := &counter{events: []book.Event{asked}}
	d := newDesk(c, mouth{answer: func(book.Event) (book.Outcome, error) {
		return book.Outcome{Replies: []book.Outgoing{{Text: "a"}, {Text: "b", Key: "own", Place: book.Place{Room: "loft"}}}}, nil
	}})
	if err := d.answerNext(t.Context()); err != nil {
		t.Fatal(err)
	}
	if len(c.recorded) != 1 || c.recorded[0].Event != "e1" {
		t.Fatalf("recorded %+v, want one outcome of e1", c.recorded)
	}
	a, b := c.recorded[0].Replies[0], c.recorded[0].Replies[1]
	if a.Key != "e1#0" || a.Place != asked.Place || a.Message != "m1" || b.Key != "own" || b.Place.Room != "loft" {
		t.Errorf("replies are %+v and %+v, want the first to e1's message, the second as it came", a, b)
	}
	if err := d.answerNext(t.Context()); !errors.Is(err, book.ErrNone) {
		t.Errorf("got %v with nothing to do", err)
	}
}

// What changed meanwhile is read again; what someone else answered is left.
func TestAnswer_conflicts(t *testing.T) {
	for name, c := range map[string]struct {
		record         func(int) error
		asked, retried int
		err            error
	}{
		"twice changed": {func(n int) error {
			if n < 3 {
				return book.ErrConflict
			}
			return nil
		}, 3, 0, nil},
		"always changed": {func(int) error { return book.ErrConflict }, rereads, 0, book.ErrConflict},
		"answered":       {func(int) error { return book.ErrAnswered }, 1, 0, nil},
		"disk full":      {func(int) error { return book.ErrFull }, 1, 0, book.ErrFull},
	} {
		n := 0
		store := &counter{events: []book.Event{asked}, record: c.record}
		d := newDesk(store, mouth{answer: func(book.Event) (book.Outcome, error) { n++; return book.Outcome{}, nil }})
		if err := d.answerNext(t.Context()); !errors.Is(err, c.err) {
			t.Errorf("%s: got %v, want %v", name, err, c.err)
		}
		if n != c.asked || len(store.retried) != c.retried {
			t.Errorf("%s: asked %d times and gave back %d, want %d and %d", name, n, len(store.retried), c.asked, c.retried)
		}
	}
}

func TestAnswer_failures(t *testing.T) {
	fail := func(err error) func(book.Event) (book.Outcome, error) {
		return func(book.Event) (book.Outcome, error) { return book.Outcome{}, err }
	}
	for name, c := range map[string]struct {
		answer  func(book.Event) (book.Outcome, error)
		tries   int
		retried []time.Time
		sorry   bool
	}{
		"first":       {fail(errors.New("no such wood")), 0, []time.Time{noon.Add(100 * time.Millisecond)}, false},
		"third":       {fail(errors.New("no such wood")), 2, []time.Time{noon.Add(400 * time.Millisecond)}, false},
		"last":        {fail(errors.New("no such wood")), 4, nil, true},
		"panic":       {func(book.Event) (book.Outcome, error) { panic("no such wood") }, 4, nil, true},
		"store fails": {fail(fmt.Errorf("load: %w", book.ErrLost)), 40, nil, false},
	} {
		e := asked
		e.Tries = c.tries
		store := &counter{events: []book.Event{e}}
		if err := newDesk(store, mouth{answer: c.answer}).answerNext(t.Context()); err == nil {
			t.Errorf("%s: no error to log", name)
		}
		if fmt.Sprint(store.retried) != fmt.Sprint(c.retried) {
			t.Errorf("%s: given back until %v, want %v", name, store.retried, c.retried)
		}
		sorry := len(store.recorded) == 1 && strings.Contains(store.recorded[0].Replies[0].Text, "no such wood") && store.recorded[0].Event == "e1"
		if sorry != c.sorry {
			t.Errorf("%s: recorded %+v, want an apology: %v", name, store.recorded, c.sorry)
		}
	}
}

func TestSend_outcomes(t *testing.T) {
	for name, c := range map[string]struct {
		err    error
		tries  int
		sent   []string
		resent []time.Time
	}{
		"taken":      {nil, 0, []string{"r1=ref"}, nil},
		"asked wait": {&WaitError{7 * time.Second, errors.New("429")}, 0, nil, []time.Time{noon.Add(7 * time.Second)}},
		"first":      {errors.New("timeout"), 0, nil, []time.Time{noon.Add(100 * time.Millisecond)}},
		"many":       {errors.New("timeout"), 30, nil, []time.Time{noon.Add(time.Minute)}},
		"refused":    {fmt.Errorf("channel is gone: %w", ErrRefused), 0, nil, []time.Time{{}}},
	} {
		store := &counter{outgoing: []book.Outgoing{{Key: "r1", Tries: c.tries, Place: book.Place{Service: "test"}}}}
		d := newDesk(store, mouth{send: func(book.Outgoing) (string, error) { return "ref", c.err }})
		if err := d.sendNext(t.Context()); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if fmt.Sprint(store.sent, store.resent) != fmt.Sprint(c.sent, c.resent) {
			t.Errorf("%s: sent %v, again at %v; want %v and %v", name, store.sent, store.resent, c.sent, c.resent)
		}
	}
}

// A picture is tried for a while, words for ever.
func TestSend_pictureGivenUp(t *testing.T) {
	failed, limited := errors.New("503"), &WaitError{time.Second, errors.New("429")}
	for name, c := range map[string]struct {
		err     error
		words   bool
		tries   int
		age     time.Duration // of the picture at the last of them; at the first it is new
		givenUp bool
	}{
		"soon":             {failed, false, 20, 119 * time.Second, false},
		"late":             {failed, false, 3, 2 * time.Minute, true},
		"late, but new":    {failed, false, 2, time.Hour, false},
		"words":            {failed, true, 20, 24 * time.Hour, false},
		"asked to wait":    {limited, false, 20, 59 * time.Minute, false},
		"asked for ever":   {limited, false, 2, time.Hour, true},
		"refused":          {fmt.Errorf("no scope: %w", ErrRefused), false, 1, 0, true},
		"words, asked too": {limited, true, 20, 24 * time.Hour, false},
	} {
		o := book.Outgoing{Key: "r1", Beside: !c.words, At: noon, Place: book.Place{Service: "test"}}
		store := &counter{outgoing: slices.Repeat([]book.Outgoing{o}, c.tries)}
		d := newDesk(store, mouth{send: func(book.Outgoing) (string, error) { return "", c.err }})
		for i := range c.tries {
			if i == c.tries-1 {
				d.Clock = func() time.Time { return noon.Add(c.age) }
			}
			if err := d.sendNext(t.Context()); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		if got := store.resent[c.tries-1].IsZero(); got != c.givenUp {
			t.Errorf("%s: given up: %v, want %v", name, got, c.givenUp)
		}
		if n := len(d.late.tried); n > 0 && c.givenUp {
			t.Errorf("%s: %d pictures are still remembered", name, n)
		}
	}
}

// Pictures that a service is slow to take leave a lane for the words.
func TestRun_laneForWords(t *testing.T) {
	store := &lanes{claimed: make(chan bool)}
	d := &Desk{Store: store, Worker: "w", Clock: time.Now, Posts: 3, Poll: time.Hour}
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan struct{})
	go func() { d.Run(ctx); close(done) }()
	words := 0
	for range 3 {
		if <-store.claimed {
			words++
		}
	}
	stop()
	<-done
	if words != 1 {
		t.Errorf("%d of 3 lanes are for words alone, want 1", words)
	}
}

// lanes notes what each lane asks for.
type lanes struct {
	onceStore
	claimed chan bool
}

func (l *lanes) ClaimOutgoing(_ context.Context, c book.Claim, _ []string) (o book.Outgoing, err error) {
	l.claimed <- c.Words
	return o, book.ErrNone
}

// A leader stops when another holds the lease, or when one may for all it
// knows.
func TestLead_stops(t *testing.T) {
	for name, later := range map[string]func() (bool, error){ // what Hold says after the first time
		"another leads":     func() (bool, error) { return false, nil },
		"store unreachable": func() (bool, error) { return false, book.ErrLost },
	} {
		first := true
		store := &counter{}
		store.held = func() (bool, error) {
			if first {
				first = false
				return true, nil
			}
			return later()
		}
		d := newDesk(store, mouth{})
		d.Reign, d.Clock = 40*time.Millisecond, time.Now
		ctx, stop := context.WithCancel(t.Context())
		led := make(chan struct{})
		go d.Lead(ctx, "sync", func(ctx context.Context) { <-ctx.Done(); close(led) })
		select {
		case <-led:
		case <-time.After(time.Minute):
			t.Fatalf("%s: still leads", name)
		}
		stop()
	}
}

func TestLead_givesTheLeaseBack(t *testing.T) {
	store := &counter{held: func() (bool, error) { return true, nil }}
	d := newDesk(store, mouth{})
	d.Reign, d.Clock = time.Second, time.Now
	ctx, stop := context.WithCancel(t.Context())
	d.Lead(ctx, "sync", func(context.Context) { stop() })
	if store.released != 1 {
		t.Errorf("given back %d times, want once", store.released)
	}
}

// What is in hand when the desk is told to stop is finished.
func TestRun_finishesWhatItHasInHand(t *testing.T) {
	started, finish := make(chan struct{}), make(chan struct{})
	store := &onceStore{counter: counter{events: []book.Event{asked}}}
	d := &Desk{Store: store, Worker: "w", Clock: time.Now, Lanes: 1, Handler: mouth{answer: func(book.Event) (book.Outcome, error) {
		close(started)
		<-finish
		return book.Outcome{}, nil
	}}}
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan struct{})
	go func() { d.Run(ctx); close(done) }()
	<-started
	stop()
	close(finish)
	<-done
	if len(store.recorded) != 1 {
		t.Errorf("recorded %d outcomes, want the one in hand", len(store.recorded))
	}
}

// onceStore has no reminders and takes no records after its context ended.
type onceStore struct{ counter }

func (*onceStore) ClaimReminder(context.Context, book.Claim) (r book.Reminder, err error) {
	return r, book.ErrNone
}

func (s *onceStore) Record(ctx context.Context, o book.Outcome, at time.Time) error {
	if ctx.Err() != nil {
		return ctx.Err()
	}
	return s.counter.Record(ctx, o, at)
}

// sweeper notes from when on texts are kept.
type sweeper struct {
	onceStore
	before chan time.Time
}

func (s *sweeper) Sweep(_ context.Context, before time.Time) (int, error) {
	s.before <- before
	return 0, nil
}

func TestRun_dropsOldTexts(t *testing.T) {
	store := &sweeper{before: make(chan time.Time, 1)}
	d := &Desk{Store: store, Worker: "w", Clock: func() time.Time { return noon }, Keep: 90 * 24 * time.Hour}
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan struct{})
	go func() { d.Run(ctx); close(done) }()
	// 90 days before 4 March 2031 is 4 December 2030: 4 + 28 + 31 + 27 days
	if got, want := <-store.before, time.Date(2030, 12, 4, 12, 0, 0, 0, time.UTC); !got.Equal(want) {
		t.Errorf("drops what is before %v, want %v", got, want)
	}
	stop()
	<-done
}

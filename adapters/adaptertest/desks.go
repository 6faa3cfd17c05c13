package adaptertest

import (
	"context"
	"fmt"
	"sync"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/bot/desk"
)

// bell is a handler that answers everything and a sender that counts what a
// room would see.
type bell struct {
	clerk
	s     book.Store
	mu    sync.Mutex
	heard map[string]int // by idempotency key
}

func (b *bell) Answer(_ context.Context, e book.Event) (book.Outcome, error) {
	return book.Outcome{Replies: []book.Outgoing{{Text: e.Text}}}, nil
}

func (b *bell) Remind(ctx context.Context, r book.Reminder) (book.Outcome, error) {
	l, err := b.s.Load(ctx, r.Room, r.Load)
	return book.Outcome{Replies: []book.Outgoing{{Place: l.Place, Text: string(r.Kind)}}}, err
}

func (b *bell) Send(_ context.Context, o book.Outgoing) (string, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.heard[o.Key]++
	return o.Key, nil
}

// twoDesks has two desks work on one store: each message is answered once, and
// a reminder that came due while nobody was there is said once.
func twoDesks(t *testing.T, fresh Fresh) {
	s := fresh(t)
	const messages = 20
	for i := range messages {
		receive(t, s, event(fmt.Sprintf("e%02d", i), "t1", "hello"))
	}
	long := time.Now().Add(-3 * time.Hour)
	post(t, s, ann, long, plan(25.4, 6.35, "walnut", "epoxy")) // press time up to two hours
	do(t, s, 1, long, goIn(ben, long))
	room := &bell{clerk: newClerk(s), s: s, heard: map[string]int{}}
	working, stop := context.WithCancel(t.Context())
	var wg sync.WaitGroup
	for i := range 2 {
		d := &desk.Desk{Store: s, Handler: room, Senders: map[string]desk.Sender{"test": room},
			Worker: fmt.Sprint("desk", i), Clock: time.Now, Poll: 5 * time.Millisecond}
		wg.Go(func() { d.Run(working) })
	}
	for range 3000 {
		d, err := s.Depth(t.Context())
		must(t, err)
		room.mu.Lock()
		n := len(room.heard)
		room.mu.Unlock()
		if d == (book.Depth{}) && n > messages {
			break
		}
		time.Sleep(10 * time.Millisecond)
	}
	stop()
	wg.Wait()
	if len(room.heard) != messages+1 {
		t.Errorf("the room heard %d things, want %d answers and one reminder: %v", len(room.heard), messages, room.heard)
	}
	for key, n := range room.heard {
		if n != 1 {
			t.Errorf("%q was sent %d times, want once", key, n)
		}
	}
}

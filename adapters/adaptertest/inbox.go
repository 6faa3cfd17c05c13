package adaptertest

import (
	"fmt"
	"reflect"
	"sync"
	"testing"
	"time"

	"presshand/bot/book"
)

func receiveOnce(t *testing.T, fresh Fresh) {
	s := fresh(t)
	e := event("e1", "t1", "5 strips")
	e.Extra = []byte(`{"ts":"1.2"}`)
	receive(t, s, e)
	again := e
	again.Text = "redelivered"
	isNew, err := s.Receive(ctx(t), again, noon.Add(time.Hour), 0)
	must(t, err)
	if isNew {
		t.Error("a redelivered event counts as new")
	}
	e.Turnout = book.Heard
	if got := take(t, s, claim("w", noon), "e1"); !reflect.DeepEqual(got, e) {
		t.Errorf("got event %+v, want %+v", got, e)
	}
	take(t, s, claim("w", noon), "")
}

func roomInOrder(t *testing.T, fresh Fresh) {
	s := fresh(t)
	other := event("other", "t9", "in another room")
	other.Place.Room = "loft"
	receive(t, s, event("z", "t1", "first"), event("a", "t2", "second"), other)
	take(t, s, claim("w1", noon), "z")
	take(t, s, claim("w2", noon), "other") // the room of z waits for it, this one does not
	take(t, s, claim("w3", noon), "")
	must(t, s.Record(ctx(t), book.Outcome{Event: "z"}, noon))
	take(t, s, claim("w3", noon), "a")
}

func claimExpires(t *testing.T, fresh Fresh) {
	s := fresh(t)
	receive(t, s, event("e1", "t1", "hello"))
	take(t, s, claim("dead", noon), "e1")
	take(t, s, claim("next", noon.Add(59*time.Second)), "")
	e := take(t, s, claim("next", noon.Add(time.Minute)), "e1")
	if e.Tries != 1 {
		t.Errorf("claimed %d times before, want 1", e.Tries)
	}
}

func retryAndGiveUp(t *testing.T, fresh Fresh) {
	s := fresh(t)
	receive(t, s, event("e1", "t1", "hello"), event("e2", "t1", "next"))
	take(t, s, claim("w", noon), "e1")
	must(t, s.RetryEvent(ctx(t), "e1", noon.Add(time.Second), "later"))
	take(t, s, claim("w", noon), "") // e2 does not overtake it
	take(t, s, claim("w", noon.Add(time.Second)), "e1")
	must(t, s.RetryEvent(ctx(t), "e1", time.Time{}, "never"))
	take(t, s, claim("w", noon), "e2")
	d, err := s.Depth(ctx(t))
	must(t, err)
	if want := (book.Depth{Inbox: 1, DeadInbox: 1}); d != want {
		t.Errorf("depth is %+v, want %+v", d, want)
	}
}

// reply is an outcome with everything in it.
func reply(t testing.TB, s book.Store, key string) book.Outcome {
	t.Helper()
	b := book.NewLedger(s, room)
	_, err := b.Post(t.Context(), saying(ann, noon, key), book.Posting{Plan: plan(25.4, 6.35, "walnut", "epoxy")})
	must(t, err)
	return book.Outcome{
		Event: key, Entries: b.Entries(),
		Thread:  &book.Thread{Room: room, Name: "t1", State: []byte(`{"q":1}`)},
		Profile: &book.Profile{Room: room, State: []byte(`{"p":1}`)},
		Replies: []book.Outgoing{{Key: key + "#0", Place: book.Place{Service: "test", Room: room, Thread: "t1"}, Message: "m-" + key, Text: "posted"}},
	}
}

// nothingKept fails if any part of a reply is in the store.
func nothingKept(t testing.TB, s book.Store, replies int) {
	t.Helper()
	d, err := s.Depth(t.Context())
	must(t, err)
	if d.Outbox != replies {
		t.Errorf("outbox holds %d replies, want %d", d.Outbox, replies)
	}
	n, err := s.NextNumber(t.Context(), room)
	must(t, err)
	if n != replies+1 {
		t.Errorf("next load is %d, want %d", n, replies+1)
	}
}

func recordWholeOrNot(t *testing.T, fresh Fresh) {
	s := fresh(t)
	receive(t, s, event("e1", "t1", "post it"))
	o := reply(t, s, "e1")
	o.Thread.Version = 7 // nobody has written seven versions
	want(t, s.Record(ctx(t), o, noon), book.ErrConflict)
	nothingKept(t, s, 0)
	take(t, s, claim("w", noon), "e1") // and the event is still open
	must(t, s.Record(ctx(t), reply(t, s, "e1"), noon))
	nothingKept(t, s, 1)
	take(t, s, claim("w", noon.Add(time.Hour)), "")
	d, err := s.Depth(ctx(t))
	must(t, err)
	if d.Inbox != 0 {
		t.Errorf("%d events open, want none", d.Inbox)
	}
}

func answeredOnce(t *testing.T, fresh Fresh) {
	s := fresh(t)
	receive(t, s, event("e1", "t1", "post it"))
	first, second := reply(t, s, "e1"), reply(t, s, "e1")
	must(t, s.Record(ctx(t), first, noon))
	want(t, s.Record(ctx(t), second, noon), book.ErrAnswered)
	nothingKept(t, s, 1)
	want(t, s.Record(ctx(t), book.Outcome{Event: "unknown"}, noon), book.ErrAnswered)
}

func versions(t *testing.T, fresh Fresh) {
	s := fresh(t)
	keep := func(version int, state string) error {
		return s.Record(ctx(t), book.Outcome{
			Thread:  &book.Thread{Room: room, Name: "t1", Version: version, State: []byte(state)},
			Profile: &book.Profile{Room: room, Version: version, State: []byte(state)},
		}, noon)
	}
	must(t, keep(0, `{"v":1}`))
	want(t, keep(0, `{"v":"lost"}`), book.ErrConflict)
	must(t, keep(1, `{"v":2}`))
	th, err := s.Thread(ctx(t), room, "t1")
	must(t, err)
	if th.Version != 2 || string(th.State) != `{"v":2}` {
		t.Errorf("thread is at version %d with %s, want 2 with {\"v\":2}", th.Version, th.State)
	}
	p, err := s.Profile(ctx(t), room)
	must(t, err)
	if p.Version != 2 || string(p.State) != `{"v":2}` {
		t.Errorf("profile is at version %d with %s, want 2 with {\"v\":2}", p.Version, p.State)
	}
	none, err := s.Thread(ctx(t), room, "never")
	must(t, err)
	if none.Version != 0 || none.State != nil {
		t.Errorf("an unknown thread is at version %d with %s, want 0 with nothing", none.Version, none.State)
	}
}

// manyWorkers has four workers answer what waits in ten rooms: each event is
// answered once, and no room out of order.
func manyWorkers(t *testing.T, fresh Fresh) {
	s := fresh(t)
	const rooms, each = 10, 6
	for i := range rooms * each {
		e := event(fmt.Sprintf("e%03d", i), "t", "hello")
		e.Place.Room = fmt.Sprintf("room%d", i%rooms)
		receive(t, s, e)
	}
	var mu sync.Mutex
	answered := map[string][]string{}
	var wg sync.WaitGroup
	for w := range 4 {
		wg.Go(func() {
			for range 10000 {
				e, err := s.ClaimEvent(ctx(t), claim(fmt.Sprint("w", w), noon))
				if err != nil {
					mu.Lock()
					n := 0
					for _, keys := range answered {
						n += len(keys)
					}
					mu.Unlock()
					if n == rooms*each {
						return
					}
					continue
				}
				mu.Lock()
				answered[e.Place.Room] = append(answered[e.Place.Room], e.Key)
				mu.Unlock()
				if err := s.Record(ctx(t), book.Outcome{Event: e.Key}, noon); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	for r := range rooms {
		keys := answered[fmt.Sprintf("room%d", r)]
		if len(keys) != each {
			t.Errorf("room %d got %d answers, want %d: %v", r, len(keys), each, keys)
		}
		for i, k := range keys {
			if want := fmt.Sprintf("e%03d", i*rooms+r); k != want {
				t.Errorf("room %d answered %q at place %d, want %q", r, k, i, want)
			}
		}
	}
}

func free(t *testing.T, fresh Fresh) {
	s := fresh(t)
	receive(t, s, event("e1", "t1", "hello"))
	take(t, s, claim("desk", noon), "e1")
	must(t, s.Free(ctx(t), "someone else"))
	take(t, s, claim("desk", noon), "")
	must(t, s.Free(ctx(t), "desk"))
	take(t, s, claim("desk", noon), "e1")
}

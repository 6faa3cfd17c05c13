package adaptertest

import (
	"fmt"
	"sync"
	"testing"
	"time"

	"presshand/bot/book"
)

// saysAt has a person say something at a second of the clock, and returns what
// becomes of it.
func saysAt(t *testing.T, s book.Store, by book.Person, room string, second float64, most int) book.Turnout {
	t.Helper()
	e := event(fmt.Sprint(by.ID, room, second), "t1", "hello")
	e.Place.Room, e.From, e.At = room, by, noon.Add(time.Duration(second*float64(time.Second)))
	_, err := s.Receive(ctx(t), e, noon, most)
	must(t, err)
	got, err := s.ClaimEvent(ctx(t), claim("w", noon))
	must(t, err)
	must(t, s.Record(ctx(t), book.Outcome{Event: got.Key}, noon))
	return got.Turnout
}

// crowd holds each person to so many messages a minute: by their own times,
// over all rooms, each message once.
func crowd(t *testing.T, fresh Fresh) {
	s := fresh(t)
	for _, said := range []struct {
		by     book.Person
		room   string
		second float64
		want   book.Turnout
	}{
		{ann, room, 0, book.Heard}, {ann, "loft", 1, book.Heard}, {ann, room, 2, book.Heard},
		{ann, room, 3, book.Slowed}, {ann, "loft", 4, book.Silenced}, {ben, room, 5, book.Heard},
		{ann, room, 59.9, book.Silenced},
		{ann, room, 60, book.Heard},      // a minute after the first
		{ann, room, 60.5, book.Silenced}, // the line about the limit is less than a minute ago
		{ann, room, 62, book.Heard}, {ann, room, 62.5, book.Heard}, {ann, room, 63, book.Slowed},
		{ann, room, -60, book.Heard}, // caught up with late
		{ann, room, 2.5, book.Silenced},
	} {
		if got := saysAt(t, s, said.by, said.room, said.second, 3); got != said.want {
			t.Errorf("%s in %s at %g s: message is %s, want %s", said.by.Name, said.room, said.second, got, said.want)
		}
	}
	if got := saysAt(t, s, ann, room, 3.5, 0); got != book.Heard {
		t.Errorf("without a limit a message is %s, want heard", got)
	}
}

func crowdTriesAgain(t *testing.T, fresh Fresh) {
	s := fresh(t)
	for second, want := range []book.Turnout{book.Heard, book.Slowed, book.Silenced} {
		e := event(fmt.Sprint("e", second), "t1", "hello")
		for _, isNew := range []bool{true, false} { // delivered, and delivered again
			got, err := s.Receive(ctx(t), e, noon, 1)
			must(t, err)
			if got != isNew {
				t.Errorf("event %s is new: %v, want %v", e.Key, got, isNew)
			}
		}
		for try := range 2 {
			if got := take(t, s, claim("w", noon), e.Key); got.Turnout != want || got.Tries != try {
				t.Errorf("event %s, try %d: message is %s, want %s", e.Key, got.Tries, got.Turnout, want)
			}
			must(t, s.RetryEvent(ctx(t), e.Key, noon, "again"))
		}
		must(t, s.Record(ctx(t), book.Outcome{Event: e.Key}, noon))
	}
}

// Crowd has two processes take what one person says at once: together they
// answer as much as one would, also after both were started again.
func Crowd(t *testing.T, name string, open Open) {
	const each, most = 12, 5
	var stores []book.Store
	for range 2 {
		s, err := open(t.Context(), name)
		must(t, err)
		stores = append(stores, s)
	}
	var talking sync.WaitGroup
	for i, s := range stores {
		talking.Go(func() {
			for n := range each {
				if _, err := s.Receive(t.Context(), event(fmt.Sprint(i, "-", n), "t1", "hello"), noon, most); err != nil {
					t.Error(err)
				}
			}
		})
	}
	talking.Wait()
	for _, s := range stores {
		must(t, s.Close())
	}
	s, err := open(t.Context(), name)
	must(t, err)
	defer s.Close()
	_, err = s.Receive(t.Context(), event("after the start", "t1", "hello"), noon, most)
	must(t, err)
	got := map[book.Turnout]int{}
	for range 2*each + 1 {
		e, err := s.ClaimEvent(t.Context(), claim("w", noon))
		must(t, err)
		must(t, s.Record(t.Context(), book.Outcome{Event: e.Key}, noon))
		got[e.Turnout]++
	}
	if got[book.Heard] != most || got[book.Slowed] != 1 || got[book.Silenced] != 2*each-most {
		t.Errorf("of %d messages at once these were heard, slowed and silenced: %v; want %d, 1 and the rest", 2*each+1, got, most)
	}
}

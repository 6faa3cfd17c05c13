package adaptertest

import (
	"testing"
	"time"

	"presshand/bot/book"
)

func queue(t testing.TB, s book.Store, replies ...book.Outgoing) {
	t.Helper()
	must(t, s.Record(t.Context(), book.Outcome{Replies: replies}, noon))
}

func outgoing(key, service, room string) book.Outgoing {
	return book.Outgoing{Key: key, Place: book.Place{Service: service, Room: room, Thread: "t1"}, Message: "m-" + key, Text: "text of " + key, Body: []byte(`{"b":1}`)}
}

func send(t testing.TB, s book.Store, at time.Time, key string, services ...string) book.Outgoing {
	t.Helper()
	o, err := s.ClaimOutgoing(t.Context(), claim("w", at), services)
	if key == "" {
		want(t, err, book.ErrNone)
		return o
	}
	must(t, err)
	if o.Key != key {
		t.Fatalf("claimed reply %q, want %q", o.Key, key)
	}
	return o
}

func outbox(t *testing.T, fresh Fresh) {
	s := fresh(t)
	queue(t, s, outgoing("r2", "one", "a"), outgoing("r1", "one", "a"), outgoing("r3", "two", "b"))
	send(t, s, noon, "", "three")
	send(t, s, noon, "")
	got := send(t, s, noon, "r2", "one")
	if got.Text != "text of r2" || string(got.Body) != `{"b":1}` || got.Tries != 0 || !got.At.Equal(noon) {
		t.Errorf("claimed %+v, want what was queued at %v", got, noon)
	}
	send(t, s, noon, "", "one") // r1 does not overtake r2
	send(t, s, noon, "r3", "one", "two")
	must(t, s.RetryOutgoing(ctx(t), "r2", noon.Add(2*time.Second), "429"))
	send(t, s, noon.Add(time.Second), "", "one")
	if again := send(t, s, noon.Add(2*time.Second), "r2", "one"); again.Tries != 1 {
		t.Errorf("claimed %d times before, want 1: the sender must know that it may be doubtful", again.Tries)
	}
	must(t, s.Sent(ctx(t), "r2", "ref-r2", noon))
	must(t, s.RetryOutgoing(ctx(t), "r2", noon, "too late")) // what is sent stays sent
	send(t, s, noon, "r1", "one")
	must(t, s.RetryOutgoing(ctx(t), "r1", time.Time{}, "channel is gone"))
	d, err := s.Depth(ctx(t))
	must(t, err)
	if want := (book.Depth{Outbox: 1, DeadOutbox: 1}); d != want {
		t.Errorf("depth is %+v, want %+v", d, want)
	}
	want(t, s.Record(ctx(t), book.Outcome{Replies: []book.Outgoing{outgoing("r1", "one", "a")}}, noon), book.ErrConflict)
}

// besideWords: a picture comes after the words before it, and holds none up.
func besideWords(t *testing.T, fresh Fresh) {
	s := fresh(t)
	picture := func(key string) book.Outgoing {
		o := outgoing(key, "one", "a")
		o.Beside = true
		return o
	}
	queue(t, s, outgoing("w1", "one", "a"), picture("p1"), outgoing("w2", "one", "a"), picture("p2"), outgoing("w3", "one", "a"))
	send(t, s, noon, "w1", "one")
	send(t, s, noon, "", "one")
	must(t, s.Sent(ctx(t), "w1", "ref", noon))
	words := claim("w", noon)
	words.Words = true
	o, err := s.ClaimOutgoing(ctx(t), words, []string{"one"})
	must(t, err)
	if o.Key != "w2" || o.Beside {
		t.Errorf("claimed %q, beside the words: %v; want the words w2", o.Key, o.Beside)
	}
	must(t, s.Sent(ctx(t), "w2", "ref", noon))
	if o := send(t, s, noon, "p1", "one"); !o.Beside {
		t.Error("the picture is claimed as words")
	}
	send(t, s, noon, "w3", "one") // passes the picture while that is sent, and p2 waits for both
	send(t, s, noon, "", "one")
	must(t, s.RetryOutgoing(ctx(t), "w3", noon.Add(time.Second), "503"))
	must(t, s.RetryOutgoing(ctx(t), "p1", noon.Add(time.Hour), "503"))
	send(t, s, noon.Add(time.Second), "w3", "one") // passes it while that is put off
	must(t, s.Sent(ctx(t), "w3", "ref", noon))
	send(t, s, noon.Add(time.Minute), "", "one") // p2 does not pass p1, which it may replace
	must(t, s.RetryOutgoing(ctx(t), "p1", time.Time{}, "refused"))
	send(t, s, noon.Add(time.Minute), "p2", "one")
}

func editInPlace(t *testing.T, fresh Fresh) {
	s := fresh(t)
	first := outgoing("r1", "one", "a")
	queue(t, s, first)
	found, err := s.Reply(ctx(t), first.Place, first.Message)
	must(t, err)
	if found.Key != "r1" || found.Ref != "" {
		t.Errorf("found reply %q with id %q, want r1 that is not sent yet", found.Key, found.Ref)
	}
	edit := outgoing("r2", "one", "a")
	edit.Message, edit.Replaces = first.Message, "r1"
	queue(t, s, edit)
	send(t, s, noon, "r1", "one")
	must(t, s.Sent(ctx(t), "r1", "ref-r1", noon))
	if got := send(t, s, noon, "r2", "one"); got.ReplacesRef != "ref-r1" {
		t.Errorf("the edit is of %q, want the id that the first got: ref-r1", got.ReplacesRef)
	}
	if found, err = s.Reply(ctx(t), first.Place, first.Message); err != nil || found.Key != "r2" {
		t.Errorf("found reply %q (%v), want the latest, r2", found.Key, err)
	}
	_, err = s.Reply(ctx(t), first.Place, "nobody asked")
	want(t, err, book.ErrNotFound)
}

func leases(t *testing.T, fresh Fresh) {
	s := fresh(t)
	hold := func(worker string, at time.Time, wantHeld bool) {
		t.Helper()
		held, err := s.Hold(ctx(t), "sync", claim(worker, at))
		must(t, err)
		if held != wantHeld {
			t.Errorf("%s at %v holds: %v, want %v", worker, at.Sub(noon), held, wantHeld)
		}
	}
	hold("a", noon, true)
	hold("b", noon.Add(59*time.Second), false)
	hold("a", noon.Add(30*time.Second), true) // renewed
	hold("b", noon.Add(60*time.Second), false)
	hold("b", noon.Add(90*time.Second), true) // a is dead
	hold("a", noon.Add(91*time.Second), false)
	must(t, s.Release(ctx(t), "sync", "a")) // not a's to release
	hold("a", noon.Add(91*time.Second), false)
	must(t, s.Release(ctx(t), "sync", "b"))
	hold("a", noon.Add(91*time.Second), true)
}

func marks(t *testing.T, fresh Fresh) {
	s := fresh(t)
	place, err := s.Mark(ctx(t), "channel")
	must(t, err)
	if place != "" {
		t.Errorf("an unknown stream stands at %q, want nowhere", place)
	}
	must(t, s.SetMark(ctx(t), "channel", "17.1"))
	must(t, s.SetMark(ctx(t), "channel", "17.2"))
	if place, err = s.Mark(ctx(t), "channel"); err != nil || place != "17.2" {
		t.Errorf("the stream stands at %q (%v), want 17.2", place, err)
	}
}

package adaptertest

import (
	"encoding/hex"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"presshand/bot/book"
)

// A Disk is where a store writes. Fill leaves it little room, Free makes room
// again.
type Disk struct{ Fill, Free func() }

// FullDisk has a disk run full under a store that is at work, twice. What does
// not fit is refused whole, again and again, while what was recorded can be
// read. Once there is room the same store goes on, and so does one that was
// closed while the disk was full.
func FullDisk(t *testing.T, name string, open Open, d Disk) {
	s, err := open(t.Context(), name)
	must(t, err)
	defer d.Free()
	posted := 0
	for _, closes := range []bool{false, true} {
		posted++
		must(t, postAtLength(t, s, posted))
		d.Fill()
		posted = untilFull(t, s, posted)
		if closes {
			must(t, s.Close())
		}
		d.Free()
		if closes {
			s, err = open(t.Context(), name)
			must(t, err)
			holdsPosted(t, s, posted)
		}
		posted++
		must(t, postAtLength(t, s, posted))
		holdsPosted(t, s, posted)
	}
	must(t, s.Close())
}

// untilFull posts until the disk is full, and tries thrice more. It returns
// how many loads there are then.
func untilFull(t *testing.T, s book.Store, posted int) int {
	t.Helper()
	const enough = 1000
	var err error
	for err == nil && posted < enough {
		if err = postAtLength(t, s, posted+1); err == nil {
			posted++
		}
	}
	for range 3 {
		TellsThatItIsFull(t, err)
		holdsPosted(t, s, posted)
		err = postAtLength(t, s, posted+1)
	}
	TellsThatItIsFull(t, err)
	t.Logf("%d loads were posted when the disk was full", posted)
	return posted
}

// TellsThatItIsFull fails unless an error says in one line that there is no
// space.
func TellsThatItIsFull(t *testing.T, err error) {
	t.Helper()
	want(t, err, book.ErrFull)
	if line := err.Error(); !strings.Contains(line, book.ErrFull.Error()) || strings.Contains(line, "\n") {
		t.Errorf("error is %q, want one line that says %q", line, book.ErrFull)
	}
}

// postAtLength receives the n-th message and records its answer, which is long
// and cannot be compressed. It may be tried again.
func postAtLength(t *testing.T, s book.Store, n int) error {
	t.Helper()
	key := fmt.Sprint("e", n)
	if _, err := s.Receive(t.Context(), event(key, "t1", "post it"), noon, 0); err != nil {
		return err
	}
	b := book.NewLedger(s, room)
	_, err := b.Post(t.Context(), saying(ann, noon, key), book.Posting{Plan: plan(25.4, 6.35, "walnut", "epoxy")})
	must(t, err)
	noise := make([]byte, 50_000)
	rand.NewChaCha8([32]byte{byte(n)}).Read(noise) // it never fails
	return s.Record(t.Context(), book.Outcome{
		Event: key, Entries: b.Entries(),
		Replies: []book.Outgoing{{Key: key, Place: book.Place{Service: "test", Room: room}, Text: hex.EncodeToString(noise)}},
	}, noon)
}

// holdsPosted fails unless the store holds so many loads and their answers,
// and nothing of a later one but perhaps its message.
func holdsPosted(t *testing.T, s book.Store, posted int) {
	t.Helper()
	next, err := s.NextNumber(t.Context(), room)
	must(t, err)
	d, err := s.Depth(t.Context())
	must(t, err)
	if next != posted+1 || d.Outbox != posted || d.Inbox > 1 {
		t.Errorf("store holds loads up to %d and %+v, want %d loads, as many replies, one open message at most", next-1, d, posted)
	}
	for n := 1; n <= posted; n++ {
		if l, err := s.Load(t.Context(), room, n); err != nil || l.State != book.Posted || l.Poster != ann {
			t.Errorf("load %d is %s by %q (%v), want it posted by Ann", n, l.State, l.Poster.Name, err)
		}
	}
}

package adaptertest

import (
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/engine/unit"
)

// told is what was said to the stores of each schema, by the version that could
// first keep it. The rows that came of it then are in the folder upgrade.
var told = map[int64]func(testing.TB, book.Store){1: messagesTold, 2: bookTold, 3: placesTold}

// messagesTold leaves one message answered and one open, and a reply to each
// of two messages: one sent, one open.
func messagesTold(t testing.TB, s book.Store) {
	receive(t, s, event("e1", "t1", "5 strips, 1 in bar"), event("e2", "t1", "4 checked, bar 1 in"))
	take(t, s, claim("w", noon), "e1")
	must(t, s.Record(t.Context(), book.Outcome{
		Event: "e1", Thread: &book.Thread{Room: room, Name: "t1", State: []byte(`{"q":1}`)},
		Profile: &book.Profile{Room: room, State: []byte(`{"bed":"4x8"}`)},
		Replies: []book.Outgoing{outgoing("r1", "test", room), outgoing("r2", "test", room)},
	}, noon))
	send(t, s, noon, "r1", "test")
	must(t, s.Sent(t.Context(), "r1", "ref-r1", noon))
}

// bookTold leaves load 1 in the press, checked after it was corrected, and held
// for a while before; and load 2, copied from it, with a check that differs.
func bookTold(t testing.TB, s book.Store) {
	at := func(minutes int) time.Time { return noon.Add(time.Duration(minutes) * time.Minute) }
	measured := func(minutes int, bar, strips unit.Number) func(book.Load) (book.Entry, error) {
		return func(l book.Load) (book.Entry, error) {
			found := unit.Facts{unit.BarHeight: bar, unit.StripThickness: strips}
			return l.Measure(saying(ben, at(minutes), "e5"), found, book.Policy{})
		}
	}
	b := book.NewLedger(s, room)
	place := book.Place{Service: "test", Room: room, Thread: "t1"}
	_, err := b.Post(t.Context(), saying(ann, at(0), "e3"), book.Posting{
		Plan: plan(19.05, 6.35, "walnut", "epoxy"), Title: "walnut tops", Job: "212", GlueLot: "B7", Place: place})
	must(t, err)
	_, err = b.Post(t.Context(), saying(ann, at(1), "e4"), book.Posting{
		Plan: plan(38.1, 6.35, "oak", "pva"), From: 1, Place: place})
	must(t, err)
	for _, did := range []struct {
		load int
		act  func(book.Load) (book.Entry, error)
	}{
		{1, measured(2, 19, 6.4)}, {2, measured(3, 25, 6.4)},
		{1, func(l book.Load) (book.Entry, error) {
			return l.Correct(saying(ann, at(4), "e6"), book.Correction{Plan: plan(25.4, 6.35, "walnut", "epoxy"), Note: "1 in bar"})
		}},
		{1, measured(5, 25, 6.5)},
		{1, func(l book.Load) (book.Entry, error) { return l.Hold(saying(ann, at(6), "e7"), "mat missing") }},
		{1, func(l book.Load) (book.Entry, error) { return l.Clear(saying(ben, at(7), "e8"), "") }},
		{1, func(l book.Load) (book.Entry, error) {
			return l.PutIn(saying(ben, at(9), "e9"), book.Going{Press: "2", Time: at(8)})
		}},
	} {
		_, err := b.Do(t.Context(), did.load, did.act)
		must(t, err)
	}
	must(t, s.Record(t.Context(), book.Outcome{Entries: b.Entries()}, at(9)))
}

// placesTold leaves a lease and a place in a stream.
func placesTold(t testing.TB, s book.Store) {
	_, err := s.Hold(t.Context(), "sync", claim("desk", noon))
	must(t, err)
	must(t, s.SetMark(t.Context(), "channel", "17.1"))
}

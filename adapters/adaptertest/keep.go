package adaptertest

import (
	"bytes"
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/engine/unit"
)

func forget(t *testing.T, fresh Fresh) {
	s := fresh(t)
	receive(t, s, event("e1", "t1", "said by Ann"), event("e2", "t1", "Ann's, not answered yet"))
	must(t, s.Record(ctx(t), reply(t, s, "e1"), noon))
	do(t, s, 1, noon, func(l book.Load) (book.Entry, error) { return l.Hold(saying(ben, noon, ""), "mat missing") })
	queue(t, s, book.Outgoing{Key: "to Ben", Place: book.Place{Service: "second", Room: room}, Text: "1 was posted by Ann"})
	send(t, s, noon, "to Ben", "second")
	must(t, s.Sent(ctx(t), "to Ben", "ref", noon))
	n, err := s.Forget(ctx(t), "ann")
	must(t, err)
	if n != 3 { // two messages, one entry
		t.Errorf("blanked %d, want 3", n)
	}
	var dump bytes.Buffer
	must(t, s.Backup(ctx(t), &dump))
	for _, trace := range []string{`"ann"`, "Ann"} {
		if strings.Contains(dump.String(), trace) {
			t.Errorf("the store still holds %s", trace)
		}
	}
	take(t, s, claim("w", noon), "")
	l, err := s.Load(ctx(t), room, 1)
	must(t, err)
	if l.State != book.Held || l.Poster != (book.Person{}) || l.Entries[1].By != ben {
		t.Errorf("load is %s by %v, held by %v; want it held by Ben, its poster blank", l.State, l.Poster, l.Entries[1].By)
	}
	if n, err := s.Forget(ctx(t), ""); err != nil || n != 0 {
		t.Errorf("forgetting nobody blanked %d (%v), want 0", n, err)
	}
}

func sweep(t *testing.T, fresh Fresh) {
	s := fresh(t)
	receive(t, s, event("e1", "t1", "old and answered"), event("e2", "t1", "old and open"))
	must(t, s.Record(ctx(t), reply(t, s, "e1"), noon))
	send(t, s, noon, "e1#0", "test")
	must(t, s.Sent(ctx(t), "e1#0", "ref", noon))
	if n, err := s.Sweep(ctx(t), noon); err != nil || n != 0 {
		t.Errorf("cleared %d (%v) of what is not old, want 0", n, err)
	}
	n, err := s.Sweep(ctx(t), noon.Add(time.Second))
	must(t, err)
	if n != 3 { // one message, one reply, one thread
		t.Errorf("cleared %d, want 3", n)
	}
	if e := take(t, s, claim("w", noon), "e2"); e.Text != "old and open" {
		t.Errorf("the open message says %q, want it kept", e.Text)
	}
	isNew, err := s.Receive(ctx(t), event("e1", "t1", "redelivered"), noon, 0)
	must(t, err)
	if isNew {
		t.Error("a swept event counts as new when it comes again")
	}
	if _, err := s.Load(ctx(t), room, 1); err != nil {
		t.Errorf("load 1 went with the sweep: %v", err)
	}
}

// hostileText is kept as it is, but for what no text column can hold.
func hostileText(t *testing.T, fresh Fresh) {
	s := fresh(t)
	for text, kept := range map[string]string{
		"'); DROP TABLE entries; --": "'); DROP TABLE entries; --",
		"? $1 :name %s \\":           "? $1 :name %s \\",
		"🪵 ½ \u202e":                 "🪵 ½ \u202e",
		"null\x00byte":               "null\uFFFDbyte",
		"broken \xff utf8":           "broken \uFFFD utf8",
	} {
		e := event(text, text, text)
		e.From = book.Person{ID: text, Name: text}
		e.Place.Room = text
		receive(t, s, e)
		got := take(t, s, claim(text, noon), kept)
		if got.Text != kept || got.From.ID != kept || got.Place.Room != kept {
			t.Errorf("got %q by %q in %q, want %q thrice", got.Text, got.From.ID, got.Place.Room, kept)
		}
		b := book.NewLedger(s, text)
		_, err := b.Post(ctx(t), book.Saying{By: e.From, At: noon, Event: text}, book.Posting{Title: text, Plan: plan(1, 2, text, "epoxy")})
		must(t, err)
		must(t, s.Record(ctx(t), book.Outcome{Event: text, Entries: b.Entries(), Replies: []book.Outgoing{{Key: text, Place: e.Place, Text: text}}}, noon))
		found, err := s.Loads(ctx(t), text, book.Query{Like: unit.Facts{unit.Species: unit.Word(text)}})
		must(t, err)
		if len(found) != 1 {
			t.Errorf("found %d loads of species %q, want 1", len(found), text)
		}
	}
}

// backup moves everything to another store, and only into an empty one.
func backup(t *testing.T, fresh Fresh) {
	from, to := fresh(t), fresh(t)
	receive(t, from, event("e1", "t1", "post it"), event("e2", "t1", "wait"))
	must(t, from.Record(ctx(t), reply(t, from, "e1"), noon))
	do(t, from, 1, noon, goIn(ben, noon))
	must(t, from.SetMark(ctx(t), "channel", "17.1"))
	var kept bytes.Buffer
	must(t, from.Backup(ctx(t), &kept))
	copied := kept.String()
	must(t, to.Restore(ctx(t), &kept))
	want(t, to.Restore(ctx(t), strings.NewReader(copied)), book.ErrNotEmpty)
	a, err := from.Load(ctx(t), room, 1)
	must(t, err)
	b, err := to.Load(ctx(t), room, 1)
	must(t, err)
	if !reflect.DeepEqual(a, b) {
		t.Errorf("restored load\n%+v\nwant\n%+v", b, a)
	}
	take(t, to, claim("w", noon), "e2")
	send(t, to, noon, "e1#0", "test")
	post(t, to, ann, noon, plan(25.4, 6.35, "oak", "pva")) // the counters go on
	var again bytes.Buffer
	must(t, from.Backup(ctx(t), &again))
	if again.String() != copied {
		t.Error("two backups of the same store differ")
	}
	third := fresh(t)
	want(t, third.Restore(ctx(t), strings.NewReader("something else")), book.ErrBackup)
	want(t, third.Restore(ctx(t), strings.NewReader(copied[:len(copied)-20])), book.ErrBackup)
	for _, row := range []string{`{"table":"lathe","row":{}}`, `{"table":"marks","row":{"colour":"red"}}`, copied[strings.Index(copied, "\n")+1:]} {
		want(t, third.Restore(ctx(t), strings.NewReader(copied+row)), book.ErrBackup) // the last one has each row twice
	}
	if n, err := third.NextNumber(ctx(t), room); err != nil || n != 1 {
		t.Errorf("a broken backup left loads up to %d (%v), want none", n-1, err)
	}
	newer := strings.Replace(copied, `"schema":`, `"schema":9`, 1)
	want(t, third.Restore(ctx(t), strings.NewReader(newer)), book.ErrNewer)
}

// entries come room by room, or all, in the order of recording, however many.
func entries(t *testing.T, fresh Fresh) {
	s := fresh(t)
	const many = 600 // more than is read at a time
	for _, room := range []string{"loft", "joinery"} {
		b := book.NewLedger(s, room)
		for range many {
			_, err := b.Post(ctx(t), saying(ann, noon, ""), book.Posting{Plan: plan(25.4, 6.35, "walnut", "epoxy")})
			must(t, err)
		}
		must(t, s.Record(ctx(t), book.Outcome{Entries: b.Entries()}, noon))
	}
	for room, want := range map[string]int{"": 2 * many, "loft": many, "joinery": many, "shed": 0} {
		n := 0
		must(t, s.Entries(ctx(t), room, func(e book.Entry) error {
			if room != "" && e.Room != room || e.Load != n%many+1 {
				t.Errorf("entry %d is load %d of %s", n, e.Load, e.Room)
			}
			n++
			return nil
		}))
		if n != want {
			t.Errorf("got %d entries of room %q, want %d", n, room, want)
		}
	}
	rooms, err := s.Rooms(ctx(t))
	must(t, err)
	if !reflect.DeepEqual(rooms, []string{"joinery", "loft"}) {
		t.Errorf("rooms are %v, want joinery and loft", rooms)
	}
	stop := errors.New("enough")
	want(t, s.Entries(ctx(t), "", func(book.Entry) error { return stop }), stop)
}

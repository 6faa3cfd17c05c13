package adaptertest

import (
	"context"
	"errors"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
)

// Fresh opens an empty store that is closed when the test ends.
type Fresh func(t testing.TB) book.Store

// Book is the conformance suite of a store.
func Book(t *testing.T, fresh Fresh) {
	for name, test := range map[string]func(*testing.T, Fresh){
		"receive_once":           receiveOnce,
		"room_in_order":          roomInOrder,
		"claim_expires":          claimExpires,
		"retry_and_give_up":      retryAndGiveUp,
		"record_whole_or_not":    recordWholeOrNot,
		"answered_once":          answeredOnce,
		"conflicting_entries":    conflictingEntries,
		"versions":               versions,
		"outbox":                 outbox,
		"beside_words":           besideWords,
		"edit_in_place":          editInPlace,
		"load_returns_as_posted": loadReturnsAsPosted,
		"queries":                queries,
		"undo_across_loads":      undoAcrossLoads,
		"reminders":              reminders,
		"leases":                 leases,
		"marks":                  marks,
		"entries":                entries,
		"forget":                 forget,
		"sweep":                  sweep,
		"hostile_text":           hostileText,
		"backup":                 backup,
		"two_desks":              twoDesks,
		"two_press_at_once":      twoPressAtOnce,
		"many_workers":           manyWorkers,
		"free":                   free,
		"crowd":                  crowd,
		"crowd_tries_again":      crowdTriesAgain,
	} {
		t.Run(name, func(t *testing.T) { test(t, fresh) })
	}
}

// The clock of these tests: any time will do.
var noon = time.Date(2031, 3, 4, 12, 0, 0, 0, time.UTC)

var (
	ann = book.Person{ID: "ann", Name: "Ann"}
	ben = book.Person{ID: "ben", Name: "Ben"}
)

const room = "joinery"

func event(key, thread, text string) book.Event {
	return book.Event{
		Key: key, Place: book.Place{Service: "test", Room: room, Thread: thread},
		Message: "m-" + key, From: ann, Text: text, At: noon,
	}
}

func claim(worker string, at time.Time) book.Claim {
	return book.Claim{Worker: worker, Now: at, For: time.Minute}
}

// plan is a load that a joiner might post; the figures need only be there.
func plan(bar, thickness float64, species, glue string) book.Plan {
	return book.Plan{
		About: engine.Side,
		Said: unit.Facts{
			unit.BarHeight: unit.Number(bar), unit.StripThickness: unit.Number(thickness),
			unit.Species: unit.Word(species), unit.GlueClass: unit.Word(glue), unit.StripCount: unit.Number(5),
		},
		Assumed: unit.Facts{unit.Vacuum: unit.Number(84.66)},
		Values:  unit.Facts{unit.PressTime: triple(60, 90, 120), unit.SideFarJoint: triple(40, 90, 130)},
		Verdict: engine.Care,
		Checks: []engine.Check{{Name: "far joint", Verdict: engine.Care, Finding: engine.Finding{
			Reason: "far joint hangs on friction", Figures: unit.Facts{unit.SideFarJoint: triple(40, 90, 130)}}}},
	}
}

func triple(low, mid, high float64) unit.Triple {
	return unit.Triple{Low: &low, Mid: &mid, High: &high}
}

func saying(p book.Person, at time.Time, event string) book.Saying {
	return book.Saying{By: p, At: at, Event: event}
}

// post records a load and returns it.
func post(t testing.TB, s book.Store, by book.Person, at time.Time, p book.Plan) book.Load {
	t.Helper()
	b := book.NewLedger(s, room)
	l, err := b.Post(t.Context(), saying(by, at, ""), book.Posting{
		Plan: p, Title: "tops", Place: book.Place{Service: "test", Room: room, Thread: "t1"}})
	must(t, err)
	must(t, s.Record(t.Context(), book.Outcome{Entries: b.Entries()}, at))
	return l
}

// do records an act of a load and returns the load after it.
func do(t testing.TB, s book.Store, n int, at time.Time, act func(book.Load) (book.Entry, error)) book.Load {
	t.Helper()
	b := book.NewLedger(s, room)
	l, err := b.Do(t.Context(), n, act)
	must(t, err)
	must(t, s.Record(t.Context(), book.Outcome{Entries: b.Entries()}, at))
	return l
}

func goIn(by book.Person, at time.Time) func(book.Load) (book.Entry, error) {
	return func(l book.Load) (book.Entry, error) {
		return l.PutIn(saying(by, at, ""), book.Going{Anyway: true})
	}
}

func comeOut(by book.Person, at time.Time) func(book.Load) (book.Entry, error) {
	return func(l book.Load) (book.Entry, error) { return l.TakeOut(saying(by, at, ""), time.Time{}) }
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func want(t testing.TB, got, want error) {
	t.Helper()
	if !errors.Is(got, want) {
		t.Fatalf("got error %v, want %v", got, want)
	}
}

func receive(t testing.TB, s book.Store, es ...book.Event) {
	t.Helper()
	for _, e := range es {
		fresh, err := s.Receive(t.Context(), e, noon, 0)
		must(t, err)
		if !fresh {
			t.Fatalf("event %q is known already, want it to be new", e.Key)
		}
	}
}

// take claims the next event and checks which it is; "" for none.
func take(t testing.TB, s book.Store, c book.Claim, key string) book.Event {
	t.Helper()
	e, err := s.ClaimEvent(t.Context(), c)
	if key == "" {
		want(t, err, book.ErrNone)
		return e
	}
	must(t, err)
	if e.Key != key {
		t.Fatalf("claimed event %q, want %q", e.Key, key)
	}
	return e
}

func ctx(t testing.TB) context.Context { return t.Context() }

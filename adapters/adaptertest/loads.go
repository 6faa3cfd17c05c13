package adaptertest

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"sync"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/engine/unit"
)

func loadReturnsAsPosted(t *testing.T, fresh Fresh) {
	s := fresh(t)
	_, err := s.Load(ctx(t), room, 1)
	want(t, err, book.ErrNotFound)
	posted := post(t, s, ann, noon, plan(25.4, 6.35, "walnut", "epoxy"))
	checked := do(t, s, 1, noon, func(l book.Load) (book.Entry, error) {
		return l.Measure(saying(ben, noon, "e2"), unit.Facts{unit.BarHeight: unit.Number(25), unit.StripThickness: unit.Number(6.5)}, book.Policy{})
	})
	if checked.State != book.Checked || posted.State != book.Posted {
		t.Errorf("states are %s and %s, want posted and checked", posted.State, checked.State)
	}
	got, err := s.Load(ctx(t), room, 1)
	must(t, err)
	if !reflect.DeepEqual(got, checked) {
		t.Errorf("got load\n%+v\nwant\n%+v", got, checked)
	}
	if n, err := s.NextNumber(ctx(t), room); err != nil || n != 2 {
		t.Errorf("next load is %d (%v), want 2", n, err)
	}
	if n, err := s.NextNumber(ctx(t), "another room"); err != nil || n != 1 {
		t.Errorf("first load of another room is %d (%v), want 1", n, err)
	}
}

func conflictingEntries(t *testing.T, fresh Fresh) {
	s := fresh(t)
	post(t, s, ann, noon, plan(25.4, 6.35, "walnut", "epoxy"))
	late := book.NewLedger(s, room)
	_, err := late.Do(ctx(t), 1, func(l book.Load) (book.Entry, error) { return l.Drop(saying(ann, noon, ""), "") })
	must(t, err)
	do(t, s, 1, noon, func(l book.Load) (book.Entry, error) { return l.Hold(saying(ben, noon, ""), "mat missing") })
	want(t, s.Record(ctx(t), book.Outcome{Entries: late.Entries()}, noon), book.ErrConflict)
	l, err := s.Load(ctx(t), room, 1)
	must(t, err)
	if l.State != book.Held || len(l.Entries) != 2 {
		t.Errorf("load is %s with %d entries, want held with 2", l.State, len(l.Entries))
	}
}

// queries compares the store with the same query asked of each load.
func queries(t *testing.T, fresh Fresh) {
	s := fresh(t)
	r := rand.New(rand.NewPCG(3, 5))
	pick := func(of ...string) string { return of[r.IntN(len(of))] }
	var all []book.Load
	for i := range 60 {
		at := noon.Add(time.Duration(i) * time.Hour)
		p := plan([]float64{19.05, 25.4, 38.1}[r.IntN(3)], []float64{6.35, 19.05}[r.IntN(2)], pick("walnut", "oak"), pick("epoxy", "pva"))
		if r.IntN(3) == 0 {
			delete(p.Said, unit.BarHeight)
		}
		l := post(t, s, ann, at, p)
		if r.IntN(2) == 0 {
			l = do(t, s, l.Number, at, func(l book.Load) (book.Entry, error) {
				return l.PutIn(saying(ben, at, ""), book.Going{Press: pick("1", "2"), Anyway: true})
			})
		}
		switch r.IntN(3) {
		case 0:
			l = do(t, s, l.Number, at, func(l book.Load) (book.Entry, error) { return l.Hold(saying(ben, at, ""), "wait") })
		case 1:
			if l.InPress() {
				l = do(t, s, l.Number, at.Add(30*time.Hour), comeOut(ben, at.Add(30*time.Hour)))
			}
		}
		all = append(all, l)
	}
	yes, no := true, false
	for name, q := range map[string]book.Query{
		"all": {}, "in the press": {InPress: true}, "press 2": {InPress: true, Press: "2"},
		"three states":  {States: []book.State{book.Posted, book.Held, book.Taken}},
		"a day":         {From: noon.Add(20 * time.Hour), To: noon.Add(30 * time.Hour)},
		"last five":     {Like: unit.Facts{unit.GlueClass: unit.Word("epoxy")}, Limit: 5},
		"walnut bar":    {Like: unit.Facts{unit.Species: unit.Word("walnut"), unit.StripThickness: unit.Number(6.5)}, Bar: &yes},
		"without a bar": {Bar: &no}, "1 in bar": {Like: unit.Facts{unit.BarHeight: unit.Number(25)}},
		"none": {Like: unit.Facts{unit.Species: unit.Word("elm")}},
	} {
		var expect []int
		for _, l := range slices.Backward(all) {
			if q.Matches(l) && len(expect) < q.Most() {
				expect = append(expect, l.Number)
			}
		}
		if (len(expect) == 0) != (name == "none") {
			t.Fatalf("%s: the loads of this test do not try it", name)
		}
		found, err := s.Loads(ctx(t), room, q)
		must(t, err)
		var got []int
		for _, l := range found {
			got = append(got, l.Number)
		}
		if !slices.Equal(got, expect) {
			t.Errorf("%s: got loads %v, want %v", name, got, expect)
		}
	}
}

func undoAcrossLoads(t *testing.T, fresh Fresh) {
	s := fresh(t)
	for range 3 {
		post(t, s, ann, noon, plan(25.4, 6.35, "walnut", "epoxy"))
	}
	b := book.NewLedger(s, room)
	for _, n := range []int{2, 3} { // "2 and 3 in anyway"
		_, err := b.Do(ctx(t), n, func(l book.Load) (book.Entry, error) {
			return l.PutIn(saying(ben, noon, "e1"), book.Going{Anyway: true})
		})
		must(t, err)
	}
	must(t, s.Record(ctx(t), book.Outcome{Entries: b.Entries()}, noon))
	b = book.NewLedger(s, room)
	back, err := b.Undo(ctx(t), saying(ben, noon, "e2"), 0)
	must(t, err)
	must(t, s.Record(ctx(t), book.Outcome{Entries: b.Entries()}, noon))
	if len(back) != 2 || back[0].Number != 2 || back[1].Number != 3 || back[0].State != book.Posted || back[1].State != book.Posted {
		t.Errorf("undo gave %d loads, want 2 and 3 posted again: %+v", len(back), back)
	}
	_, err = book.NewLedger(s, room).Undo(ctx(t), saying(ben, noon, "e3"), 0)
	want(t, err, &book.RefusedError{Why: book.NothingToUndo})
	acts, err := s.Acts(ctx(t), room, "ben", 10)
	must(t, err)
	if len(acts) != 2 || acts[0].Load != 3 {
		t.Errorf("got %d acts of Ben, want the two ins, the latest first: %+v", len(acts), acts)
	}
}

func reminders(t *testing.T, fresh Fresh) {
	s := fresh(t)
	due := func(at time.Time) (book.Reminder, error) { return s.ClaimReminder(ctx(t), claim("w", at)) }
	for range 2 {
		post(t, s, ann, noon, plan(25.4, 6.35, "walnut", "epoxy")) // press time 60–120 min
	}
	do(t, s, 1, noon, goIn(ben, noon))
	do(t, s, 2, noon, goIn(ben, noon))
	do(t, s, 2, noon.Add(time.Hour), comeOut(ben, noon.Add(time.Hour))) // no need to say that its time is up
	_, err := due(noon.Add(2*time.Hour - time.Second))
	want(t, err, book.ErrNone)
	r, err := due(noon.Add(2 * time.Hour))
	must(t, err)
	if r.Load != 1 || r.Kind != book.TimeUp || r.Room != room || !r.Due.Equal(noon.Add(2*time.Hour)) {
		t.Errorf("got reminder %+v, want time up for load 1 after two hours", r)
	}
	_, err = due(noon.Add(2 * time.Hour))
	want(t, err, book.ErrNone)
	must(t, s.Record(ctx(t), book.Outcome{Reminder: r.Key}, noon))
	want(t, s.Record(ctx(t), book.Outcome{Reminder: r.Key}, noon), book.ErrAnswered)
	late := noon.Add(3 * time.Hour) // said once, whatever happens to the load after
	do(t, s, 1, late, func(l book.Load) (book.Entry, error) { return l.Hold(saying(ben, late, ""), "wait") })
	do(t, s, 1, late, func(l book.Load) (book.Entry, error) { return l.Clear(saying(ben, late, ""), "") })
	_, err = due(late)
	want(t, err, book.ErrNone)
	// a day after each came out, or after its time was up
	for _, w := range []struct {
		load int
		at   time.Time
	}{{2, noon.Add(25 * time.Hour)}, {1, noon.Add(26 * time.Hour)}} {
		_, err = due(w.at.Add(-time.Second))
		want(t, err, book.ErrNone)
		r, err := due(w.at)
		must(t, err)
		if r.Load != w.load || r.Kind != book.AskResult {
			t.Errorf("got reminder %+v, want the result of load %d asked for", r, w.load)
		}
		must(t, s.Record(ctx(t), book.Outcome{Reminder: r.Key}, w.at))
	}
	_, err = due(noon.Add(1000 * time.Hour))
	want(t, err, book.ErrNone)
}

// twoPressAtOnce has people put the same load in at the same moment: one does,
// the others learn that it is in.
func twoPressAtOnce(t *testing.T, fresh Fresh) {
	s := fresh(t)
	post(t, s, ann, noon, plan(25.4, 6.35, "walnut", "epoxy"))
	var mu sync.Mutex
	in, known := 0, 0
	var wg sync.WaitGroup
	for i := range 4 {
		who := book.Person{ID: fmt.Sprint("person", i)}
		wg.Go(func() {
			b := book.NewLedger(s, room)
			_, err := b.Do(ctx(t), 1, goIn(who, noon))
			if err == nil {
				err = s.Record(ctx(t), book.Outcome{Entries: b.Entries()}, noon)
			}
			if errors.Is(err, book.ErrConflict) { // again, with the book as it is now
				b = book.NewLedger(s, room)
				_, err = b.Do(ctx(t), 1, goIn(who, noon))
			}
			mu.Lock()
			defer mu.Unlock()
			switch {
			case err == nil:
				in++
			case errors.Is(err, &book.RefusedError{Why: book.AlreadyThere}):
				known++
			default:
				t.Error(err)
			}
		})
	}
	wg.Wait()
	l, err := s.Load(ctx(t), room, 1)
	must(t, err)
	if in != 1 || known != 3 || len(l.Entries) != 2 {
		t.Errorf("%d went in and %d were told, with %d entries; want 1, 3 and 2", in, known, len(l.Entries))
	}
}

package book_test

import (
	"cmp"
	"context"
	"slices"
	"testing"

	"presshand/bot/book"
	"presshand/engine/unit"
)

// shelf is a store's reading half over some loads.
type shelf struct{ pages }

func (s shelf) NextNumber(context.Context, string) (int, error) {
	next := 1
	for _, l := range s.pages {
		next = max(next, l.Number+1)
	}
	return next, nil
}

func (s shelf) Loads(_ context.Context, _ string, q book.Query) (out []book.Load, _ error) {
	for _, l := range slices.SortedFunc(slices.Values(s.pages), func(a, b book.Load) int { return cmp.Compare(b.Number, a.Number) }) {
		if q.Matches(l) && len(out) < q.Most() {
			out = append(out, l)
		}
	}
	return out, nil
}

func (s shelf) Acts(_ context.Context, _, person string, limit int) (out []book.Entry, _ error) {
	for _, l := range s.pages {
		for _, e := range l.Entries {
			if e.By.ID == person && e.Act != book.Undo {
				out = append([]book.Entry{e}, out...)
			}
		}
	}
	return out[:min(len(out), limit)], nil
}

func (shelf) Thread(context.Context, string, string) (book.Thread, error) { return book.Thread{}, nil }
func (shelf) Profile(context.Context, string) (book.Profile, error)       { return book.Profile{}, nil }
func (shelf) Reply(context.Context, book.Place, string) (book.Outgoing, error) {
	return book.Outgoing{}, book.ErrNotFound
}

// "post it, and hold it" in one message: the second sees what the first did.
func TestLedger_oneMessageDoesSeveralThings(t *testing.T) {
	b := book.NewLedger(shelf{pages{posted(t)}}, "joinery")
	var numbers []int
	for range 2 {
		l, err := b.Post(t.Context(), by(ben, 1), book.Posting{Plan: walnut(), From: 14})
		if err != nil {
			t.Fatal(err)
		}
		numbers = append(numbers, l.Number)
	}
	if !slices.Equal(numbers, []int{15, 16}) {
		t.Errorf("posted as %v, want 15 and 16", numbers)
	}
	held, err := b.Do(t.Context(), 15, acts["hold"])
	if err != nil || held.State != book.Held || held.From != 14 || held.Place.Room != "joinery" {
		t.Errorf("15 is %s after a hold (%v), want held", held.State, err)
	}
	es := b.Entries()
	if len(es) != 3 || es[2].Load != 15 || es[2].Seq != 2 {
		t.Errorf("added %+v, want two posts and a hold", es)
	}
	found, err := b.Find(t.Context(), book.Query{States: []book.State{book.Posted}})
	if err != nil || len(found) != 2 || found[0].Number != 16 || found[1].Number != 14 {
		t.Errorf("found %d posted loads (%v), want 16 and 14", len(found), err)
	}
}

func TestLedger_noSuchLoad(t *testing.T) {
	b := book.NewLedger(shelf{}, "joinery")
	_, err := b.Do(t.Context(), 14, acts["hold"])
	refused(t, err, book.NoSuchLoad)
	_, err = b.Undo(t.Context(), by(ann, 1), 14)
	refused(t, err, book.NoSuchLoad)
	_, err = b.Undo(t.Context(), by(ann, 1), 0)
	refused(t, err, book.NothingToUndo)
}

func TestLedger_undoOfOneLoad(t *testing.T) {
	b := book.NewLedger(shelf{pages{after(t, "check", "hold")}}, "joinery")
	ls, err := b.Undo(t.Context(), by(ben, 9), 14)
	if err != nil || len(ls) != 1 || ls[0].State != book.Checked {
		t.Errorf("undo gave %v (%v), want 14 checked", ls, err)
	}
	// and in the same message, once more
	ls, err = b.Undo(t.Context(), by(ben, 9), 0)
	if err != nil || len(ls) != 1 || ls[0].State != book.Posted {
		t.Errorf("undo gave %v (%v), want 14 posted", ls, err)
	}
}

func TestQuery_limits(t *testing.T) {
	for limit, want := range map[int]int{0: 50, -3: 50, 5: 5, 500: 500, 501: 500} {
		if got := (book.Query{Limit: limit}).Most(); got != want {
			t.Errorf("limit %d gives at most %d, want %d", limit, got, want)
		}
	}
}

// A bar that the plan denies is no bar.
func TestLoad_Traits(t *testing.T) {
	p := walnut()
	l := book.Load{Plan: p}
	if tr := l.Traits(); tr.Species != "walnut" || tr.Glue != "pva" || *tr.Bar != 25.4 || *tr.Thickness != 6.35 {
		t.Errorf("traits are %+v", tr)
	}
	p.Said[unit.BarDenied] = unit.Word("none")
	if tr := l.Traits(); tr.Bar != nil {
		t.Errorf("a load without a bar is found by a bar of %v mm", *tr.Bar)
	}
}

package book_test

import (
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"presshand/bot/book"
)

// ways leads to each state a load can be in, a hold from each of its three
// origins counted apart.
var ways = map[string]string{
	"posted": "", "checked": "check", "pressing": "check in", "unchecked pressing": "anyway",
	"held posted": "hold", "held checked": "check hold", "held pressing": "check in hold",
	"out": "check in out", "judged": "check in out judge", "dropped": "drop",
}

// what each act comes to from each state: a state, or the reason of a refusal.
// The columns are those of order.
var order = []string{"posted", "checked", "pressing", "unchecked pressing", "held posted", "held checked", "held pressing", "out", "judged", "dropped"}

var transitions = map[string][10]string{
	"check":   {"checked", "checked", "pressing", "pressing", "!held", "!held", "!held", "!out already", "!out already", "!dropped"},
	"differ":  {"posted", "posted", "pressing", "pressing", "!held", "!held", "!held", "!out already", "!out already", "!dropped"},
	"uncheck": {"!no valid check", "posted", "pressing", "!no valid check", "!no valid check", "held", "held", "!out already", "!out already", "!dropped"},
	"hold":    {"held", "held", "held", "held", "!already so", "!already so", "!already so", "!out already", "!out already", "!dropped"},
	"clear":   {"!not held", "!not held", "!not held", "!not held", "posted", "checked", "pressing", "!not held", "!not held", "!dropped"},
	"correct": {"posted", "posted", "pressing", "pressing", "held", "held", "held", "out", "judged", "!dropped"},
	"in":      {"!no valid check", "pressing", "!already so", "!already so", "!held", "!held", "!held", "!out already", "!out already", "!dropped"},
	"anyway":  {"pressing", "pressing", "!already so", "!already so", "!held", "!held", "!held", "!out already", "!out already", "!dropped"},
	"out":     {"!not in the press", "!not in the press", "out", "out", "!held", "!held", "!held", "!already so", "!already so", "!dropped"},
	"judge":   {"!not in the press", "!not in the press", "!still in the press", "!still in the press", "!not in the press", "!not in the press", "!still in the press", "judged", "judged", "!dropped"},
	"drop":    {"dropped", "dropped", "dropped", "dropped", "dropped", "dropped", "dropped", "dropped", "!has a result", "!already so"},
}

func TestLoad_transitions(t *testing.T) {
	for name, row := range transitions {
		for i, from := range order {
			l := after(t, strings.Fields(ways[from])...)
			before := l
			e, err := acts[name](l)
			if why, no := strings.CutPrefix(row[i], "!"); no {
				var r *book.RefusedError
				if !errors.As(err, &r) || r.Why != book.Why(why) || r.Load.State != l.State {
					t.Errorf("%s when %s: got %v, want refused: %s", name, from, err, why)
				}
				continue
			}
			if err != nil {
				t.Errorf("%s when %s: %v", name, from, err)
				continue
			}
			next, err := l.Apply(e)
			if err != nil || string(next.State) != row[i] {
				t.Errorf("%s when %s: got %s (%v), want %s", name, from, next.State, err, row[i])
			}
			if !reflect.DeepEqual(l, before) {
				t.Errorf("%s when %s changed the load it was applied to", name, from)
			}
			again, err := book.Fold(next.Entries)
			if err != nil || !reflect.DeepEqual(again, next) {
				t.Errorf("%s when %s: folded again gives another load (%v)", name, from, err)
			}
		}
	}
}

// Undoing anything gives the load as it was, but for its entries.
func TestLoad_undo(t *testing.T) {
	for name, row := range transitions {
		for i, from := range order {
			if strings.HasPrefix(row[i], "!") {
				continue
			}
			l := after(t, strings.Fields(ways[from])...)
			back := apply(t, apply(t, l, name), "undo")
			if len(back.Entries) != len(l.Entries)+2 {
				t.Errorf("undo of %s when %s: %d entries, want %d", name, from, len(back.Entries), len(l.Entries)+2)
			}
			back.Entries, back.Revisions = l.Entries, l.Revisions
			if !reflect.DeepEqual(back, l) {
				t.Errorf("undo of %s when %s: load is %s at revision %d, want %s at %d, and all else as before", name, from, back.State, back.Revision, l.State, l.Revision)
			}
		}
	}
}

func TestLoad_undoOfPosting(t *testing.T) {
	l := apply(t, posted(t), "undo")
	if l.State != book.Dropped || l.Title != "tops" || len(l.Entries) != 2 {
		t.Errorf("load is %s with %d entries, want dropped with 2", l.State, len(l.Entries))
	}
	_, err := l.Undo(by(ann, 8))
	refused(t, err, book.NothingToUndo)
	_, err = l.Hold(by(ann, 8), "")
	refused(t, err, book.IsDropped)
}

func TestLoad_undoIsForOneself(t *testing.T) {
	l := after(t, "check")
	_, err := l.Undo(by(ann, 8))
	var r *book.RefusedError
	if !errors.As(err, &r) || r.Why != book.OthersSince || r.By != ben || r.Since != book.Check {
		t.Errorf("got %v, want refused because Ben checked since", err)
	}
	_, err = l.Undo(by(book.Person{ID: "eve"}, 8))
	refused(t, err, book.NothingToUndo)
	_, err = l.Undo(by(book.Person{}, 8)) // someone forgotten
	refused(t, err, book.NothingToUndo)
}

func TestLoad_undoAgainGoesFurtherBack(t *testing.T) {
	l := after(t, "check", "hold", "undo", "undo")
	if l.State != book.Posted || l.Check != nil {
		t.Errorf("load is %s, want posted without a check", l.State)
	}
}

// One message may do several things to a load; undo takes all of them back.
func TestLoad_undoOfOneMessage(t *testing.T) {
	l := posted(t)
	s := by(ben, 9)
	s.Event = "checked and in"
	for _, a := range []act{
		func(l book.Load) (book.Entry, error) { return l.Measure(s, asPlanned, book.Policy{}) },
		func(l book.Load) (book.Entry, error) { return l.PutIn(s, book.Going{}) },
	} {
		e, err := a(l)
		if err != nil {
			t.Fatal(err)
		}
		if l, err = l.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	if l = apply(t, l, "undo"); l.State != book.Posted || l.Check != nil {
		t.Errorf("load is %s, want posted without a check", l.State)
	}
}

func TestLoad_correctionVoidsTheCheck(t *testing.T) {
	l := after(t, "check", "correct")
	if l.State != book.Posted || l.Revision != 2 || l.Check != nil || l.Author != ann || l.Poster != ann {
		t.Errorf("load is %s at revision %d with check %v, want posted at 2 with none", l.State, l.Revision, l.Check)
	}
	_, err := l.PutIn(by(ben, 6), book.Going{})
	refused(t, err, book.NotChecked)
	_, err = l.Correct(by(ann, 9), book.Correction{Plan: l.Plan})
	refused(t, err, book.NothingNew)
	// undone, revision 1 and its check hold again, and the next correction is revision 3
	if l = apply(t, l, "undo"); l.Revision != 1 || !l.HasValidCheck() {
		t.Errorf("load is at revision %d with check %v, want 1 with its check", l.Revision, l.Check)
	}
	if l = apply(t, l, "correct"); l.Revision != 3 {
		t.Errorf("load is at revision %d, want 3", l.Revision)
	}
}

func TestLoad_clockRunsThroughAHold(t *testing.T) {
	l := after(t, "check", "in", "hold")
	if !l.InPress() || !l.InAt.Equal(noon.Add(6*time.Minute)) || l.HeldFor != "mat missing" {
		t.Errorf("held load: in press %v since %v for %q", l.InPress(), l.InAt, l.HeldFor)
	}
	l = apply(t, l, "clear")
	if l.Pressed(noon.Add(36*time.Minute)) != 30*time.Minute || l.HeldFor != "" {
		t.Errorf("pressed for %v, want 30m", l.Pressed(noon.Add(36*time.Minute)))
	}
}

func TestLoad_anywayIsRecorded(t *testing.T) {
	if l := after(t, "anyway"); !l.Anyway || !l.Last().Detail.Anyway {
		t.Error("a load that went in unchecked does not say so")
	}
	if l := after(t, "check", "anyway"); l.Anyway || l.Last().Detail.Anyway {
		t.Error("a checked load says that it went in unchecked")
	}
}

func TestLoad_statedTimes(t *testing.T) {
	l := after(t, "check", "in")
	in := noon.Add(6 * time.Minute)
	for at, why := range map[time.Time]book.Why{
		in.Add(-time.Minute):         book.BadTime, // before it went in
		noon.Add(103 * time.Minute):  book.Ahead,   // three minutes ahead of the message
		noon.Add(101 * time.Minute):  "",           // clocks differ by a minute
		noon.Add(61 * time.Minute):   "",
		noon.Add(-100 * time.Minute): book.BadTime,
	} {
		e, err := l.TakeOut(by(ben, 100), at)
		if why != "" {
			refused(t, err, why)
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		next, err := l.Apply(e)
		if err != nil || !next.OutAt.Equal(at) || !e.At.Equal(noon.Add(100*time.Minute)) {
			t.Errorf("out at %v, said at %v (%v), want %v", next.OutAt, e.At, err, at)
		}
	}
}

func TestApply_outOfOrder(t *testing.T) {
	l := posted(t)
	good, err := l.Hold(by(ben, 3), "")
	if err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*book.Entry){
		"seq":      func(e *book.Entry) { e.Seq = 3 },
		"load":     func(e *book.Entry) { e.Load = 15 },
		"room":     func(e *book.Entry) { e.Room = "loft" },
		"revision": func(e *book.Entry) { e.Revision = 2 },
	} {
		e := good
		spoil(&e)
		if _, err := l.Apply(e); !errors.Is(err, book.ErrOutOfOrder) {
			t.Errorf("%s: got %v, want out of order", name, err)
		}
	}
	if _, err := book.Fold([]book.Entry{{Room: "joinery", Load: 14, Seq: 1, Act: book.Hold}}); err == nil {
		t.Error("a book that begins with a hold is read")
	}
	unknown := good
	unknown.Act = "burn"
	if _, err := l.Apply(unknown); err == nil {
		t.Error("an unknown act is taken")
	}
}

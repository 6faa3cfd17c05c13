package book_test

import (
	"errors"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/engine/unit"
)

var noon = time.Date(2031, 3, 4, 12, 0, 0, 0, time.UTC)

var (
	ann = book.Person{ID: "ann", Name: "Ann"}
	ben = book.Person{ID: "ben", Name: "Ben"}
)

func by(p book.Person, minute int) book.Saying {
	return book.Saying{By: p, At: noon.Add(time.Duration(minute) * time.Minute)}
}

func triple(low, mid, high float64) unit.Triple {
	return unit.Triple{Low: &low, Mid: &mid, High: &high}
}

// walnut is the plan of these tests: a 1 in bar, strips of 1/4 in, 25 inHg.
func walnut() book.Plan {
	return book.Plan{
		Said: unit.Facts{
			unit.BarHeight: unit.Number(25.4), unit.StripThickness: unit.Number(6.35), unit.StripCount: unit.Number(5),
			unit.Species: unit.Word("walnut"),
		},
		Assumed: unit.Facts{unit.Vacuum: unit.Number(84.659725), unit.GlueClass: unit.Word("pva")},
		Values:  unit.Facts{unit.PressTime: triple(60, 90, 120)},
	}
}

var asPlanned = unit.Facts{unit.BarHeight: unit.Number(25.4), unit.StripThickness: unit.Number(6.35)}

// an act on a load, as a phrase names it.
type act func(book.Load) (book.Entry, error)

var acts = map[string]act{
	"check": func(l book.Load) (book.Entry, error) { return l.Measure(by(ben, 1), asPlanned, book.Policy{}) },
	"differ": func(l book.Load) (book.Entry, error) {
		return l.Measure(by(ben, 1), unit.Facts{unit.BarHeight: unit.Number(19.05), unit.StripThickness: unit.Number(6.35)}, book.Policy{})
	},
	"uncheck": func(l book.Load) (book.Entry, error) { return l.Uncheck(by(ben, 2), "wrong sled") },
	"hold":    func(l book.Load) (book.Entry, error) { return l.Hold(by(ben, 3), "mat missing") },
	"clear":   func(l book.Load) (book.Entry, error) { return l.Clear(by(ben, 4), "") },
	"correct": func(l book.Load) (book.Entry, error) {
		p := walnut()
		p.Said[unit.BarHeight] = unit.Number(19.05)
		return l.Correct(by(ann, 5), book.Correction{Plan: p, Note: "3/4 bar"})
	},
	"in":     func(l book.Load) (book.Entry, error) { return l.PutIn(by(ben, 6), book.Going{Press: "2"}) },
	"anyway": func(l book.Load) (book.Entry, error) { return l.PutIn(by(ben, 6), book.Going{Anyway: true}) },
	"out":    func(l book.Load) (book.Entry, error) { return l.TakeOut(by(ben, 100), time.Time{}) },
	"judge":  func(l book.Load) (book.Entry, error) { return l.Judge(by(ben, 200), "joint 3 open", false) },
	"drop":   func(l book.Load) (book.Entry, error) { return l.Drop(by(ann, 7), "") },
	"undo":   func(l book.Load) (book.Entry, error) { return l.Undo(by(l.Last().By, 300)) },
}

func posted(t testing.TB) book.Load {
	t.Helper()
	l, err := book.Fold([]book.Entry{book.Posting{Plan: walnut(), Title: "tops", Place: book.Place{Room: "joinery"}}.Entry(by(ann, 0), 14)})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// after returns load 14 after some acts, each of which must be taken.
func after(t testing.TB, names ...string) book.Load {
	t.Helper()
	l := posted(t)
	for _, name := range names {
		l = apply(t, l, name)
	}
	return l
}

func apply(t testing.TB, l book.Load, name string) book.Load {
	t.Helper()
	e, err := acts[name](l)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	next, err := l.Apply(e)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return next
}

func refused(t testing.TB, err error, why book.Why) {
	t.Helper()
	if !errors.Is(err, &book.RefusedError{Why: why}) {
		t.Fatalf("got error %v, want refused: %s", err, why)
	}
}

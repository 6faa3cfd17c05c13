package book

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"presshand/engine/unit"
)

// A State is how far a load has come.
type State string

const (
	Posted   State = "posted"   // planned, waits for its second check
	Checked  State = "checked"  // measured by a second person, agrees with the plan
	Held     State = "held"     // stopped until cleared
	Pressing State = "pressing" // in the press
	Taken    State = "out"      // out of the press, no result yet
	Judged   State = "judged"   // has its result
	Dropped  State = "dropped"  // given up, kept in the book
)

// A Load is what its entries come to. The zero Load has none yet.
type Load struct {
	Room      string
	Number    int
	Revision  int
	Revisions int // how many there have been; more than Revision after an undone correction
	State     State
	HeldFrom  State  // while held: the state that clearing goes back to
	HeldFor   string // while held: why
	Plan      Plan
	Title     string
	Job       string
	GlueLot   string
	From      int    // the load it is a copy of, or 0
	Press     string // the press it went into, if one was named
	Poster    Person // who posted it
	Author    Person // who made this revision
	PostedAt  time.Time
	Place     Place        // where it was posted
	Check     *SecondCheck // the last check of this revision, or nil
	InAt      time.Time    // zero until it goes in
	OutAt     time.Time    // zero until it comes out
	Anyway    bool         // went in without a valid check
	Finding   string
	Good      bool
	JudgedAt  time.Time
	Entries   []Entry
}

// A SecondCheck is what a second person measured and how it compares.
type SecondCheck struct {
	By       Person
	At       time.Time
	Measured unit.Facts
	Compared []Comparison
	Agrees   bool
	Own      bool // checked by the one who planned it, which the room allows
}

// HasValidCheck reports whether this revision was measured and agrees.
func (l Load) HasValidCheck() bool { return l.Check != nil && l.Check.Agrees }

// InPress reports whether the load lies in the press, held or not.
func (l Load) InPress() bool {
	return l.State == Pressing || l.State == Held && l.HeldFrom == Pressing
}

// Last returns the load's latest entry.
func (l Load) Last() Entry {
	if len(l.Entries) == 0 {
		return Entry{}
	}
	return l.Entries[len(l.Entries)-1]
}

// ErrOutOfOrder says that an entry does not follow the load's last one: another
// was appended in between, or it belongs to another load.
var ErrOutOfOrder = errors.New("entry does not follow the last of its load")

// Fold returns the load that its entries, in order, come to.
func Fold(entries []Entry) (Load, error) {
	var l Load
	for _, e := range entries {
		var err error
		if l, err = l.Apply(e); err != nil {
			return Load{}, fmt.Errorf("load %d entry %d: %w", e.Load, e.Seq, err)
		}
	}
	return l, nil
}

// Apply returns the load after one more entry. The error is [ErrOutOfOrder] or
// a [*RefusedError]; l itself is never changed.
func (l Load) Apply(e Entry) (Load, error) {
	if err := l.follows(e); err != nil {
		return l, err
	}
	next, err := l.step(e)
	if err != nil {
		return l, err
	}
	next.Entries = append(slices.Clip(l.Entries), e)
	return next, nil
}

func (l Load) follows(e Entry) error {
	if len(l.Entries) > 0 && (e.Room != l.Room || e.Load != l.Number) {
		return fmt.Errorf("%w: got load %d of another, want load %d", ErrOutOfOrder, e.Load, l.Number)
	}
	if want := len(l.Entries) + 1; e.Seq != want {
		return fmt.Errorf("%w: got entry %d, want %d", ErrOutOfOrder, e.Seq, want)
	}
	want := l.Revision
	if e.Act == Post || e.Act == Correct {
		want = l.Revisions + 1
	}
	if e.Revision != want {
		return fmt.Errorf("%w: got revision %d, want %d", ErrOutOfOrder, e.Revision, want)
	}
	return nil
}

package book

import (
	"reflect"
	"slices"
	"time"

	"presshand/engine/unit"
)

// A Policy says who may check in a room.
type Policy struct {
	OwnCheck bool     // a one-person shop: the planner may check
	Checkers []string // IDs of those who may check; empty: everyone
}

// A Posting is a load to be posted.
type Posting struct {
	Plan    Plan
	Title   string
	Job     string
	GlueLot string
	From    int // the load it is a copy of
	Place   Place
}

// Entry returns the first entry of load n.
func (p Posting) Entry(s Saying, n int) Entry {
	plan := p.Plan
	e := Load{Room: p.Place.Room, Number: n}.entry(Post, s, Detail{
		Plan: &plan, Title: p.Title, Job: p.Job, GlueLot: p.GlueLot, From: p.From,
		Service: p.Place.Service, Thread: p.Place.Thread,
	})
	e.Revision = 1
	return e
}

func (l Load) entry(a Act, s Saying, d Detail) Entry {
	return Entry{
		Room: l.Room, Load: l.Number, Seq: len(l.Entries) + 1, Revision: l.Revision,
		Act: a, By: s.By, At: s.At, Event: s.Event, Detail: d,
	}
}

// tried returns e if the load takes it.
func (l Load) tried(e Entry) (Entry, error) {
	if l.Number == 0 || len(l.Entries) == 0 {
		return Entry{}, l.refuse(e.Act, NoSuchLoad)
	}
	if _, err := l.Apply(e); err != nil {
		return Entry{}, err
	}
	return e, nil
}

// Measure returns the check of a second person, compared with the plan. The
// entry's Agrees says how it came out.
func (l Load) Measure(s Saying, measured unit.Facts, p Policy) (Entry, error) {
	own := s.By.ID == l.Poster.ID || s.By.ID == l.Author.ID
	compared := append(Compare(l.Plan, measured), l.unsettled(measured)...)
	e, err := l.tried(l.entry(Check, s, Detail{
		Measured: measured.Clone(), Compared: compared, Agrees: Agree(compared), Own: own,
	}))
	switch {
	case err != nil:
		return Entry{}, err
	case own && !p.OwnCheck:
		return Entry{}, l.refuse(Check, OwnLoad)
	case len(p.Checkers) > 0 && !slices.Contains(p.Checkers, s.By.ID):
		return Entry{}, l.refuse(Check, NotAChecker)
	case comparedNumbers(compared) < 2:
		return Entry{}, &RefusedError{Act: Check, Why: TooFew, Load: l, Compared: compared}
	}
	return e, nil
}

// unsettled are the comparisons of the last check that differed and that the
// things measured now do not cover: they stand until they are measured again.
func (l Load) unsettled(measured unit.Facts) []Comparison {
	if l.Check == nil {
		return nil
	}
	return slices.DeleteFunc(Differing(l.Check.Compared), func(c Comparison) bool {
		return settles(measured, c.Field) || slices.ContainsFunc(contrary[c.Field], measured.Has)
	})
}

// Uncheck withdraws the check of this revision.
func (l Load) Uncheck(s Saying, note string) (Entry, error) {
	return l.tried(l.entry(Uncheck, s, Detail{Note: note}))
}

// Hold stops the load until it is cleared; the press clock runs on.
func (l Load) Hold(s Saying, note string) (Entry, error) {
	return l.tried(l.entry(Hold, s, Detail{Note: note}))
}

// Clear puts a held load back where it was.
func (l Load) Clear(s Saying, note string) (Entry, error) {
	return l.tried(l.entry(Clear, s, Detail{Note: note}))
}

// A Correction replaces a load's plan. Empty words keep what was.
type Correction struct {
	Plan    Plan
	Title   string
	Job     string
	GlueLot string
	Note    string // as typed
}

// Correct makes the load's next revision.
func (l Load) Correct(s Saying, c Correction) (Entry, error) {
	if reflect.DeepEqual(c.Plan.Said, l.Plan.Said) && c.Title == "" && c.Job == "" && c.GlueLot == "" {
		return Entry{}, l.refuse(Correct, NothingNew)
	}
	plan := c.Plan
	e := l.entry(Correct, s, Detail{Plan: &plan, Title: c.Title, Job: c.Job, GlueLot: c.GlueLot, Note: c.Note})
	e.Revision = l.Revisions + 1
	return l.tried(e)
}

// A Going says how a load goes in.
type Going struct {
	Press  string    // the press's name, where the room has several
	Time   time.Time // the time stated, or zero
	Anyway bool      // even without a valid check
}

// postedLate is how long a load that goes by paper on the wall may lie in the press before
// somebody posts it; our estimate.
const postedLate = 15 * time.Minute

// PutIn starts the press clock. Without a valid check the refusal is
// [NotChecked] unless g.Anyway, which the book remembers.
func (l Load) PutIn(s Saying, g Going) (Entry, error) {
	when, err := l.stated(In, s, g.Time)
	if err != nil {
		return Entry{}, err
	}
	if when != nil && len(l.Entries) > 0 && when.Before(l.Entries[0].At.Add(-postedLate)) {
		return Entry{}, l.refuse(In, BadTime)
	}
	return l.tried(l.entry(In, s, Detail{Press: g.Press, When: when, Anyway: g.Anyway && !l.HasValidCheck()}))
}

// TakeOut stops the press clock, at the stated time if it is not zero.
func (l Load) TakeOut(s Saying, at time.Time) (Entry, error) {
	when, err := l.stated(Out, s, at)
	if err != nil {
		return Entry{}, err
	}
	return l.tried(l.entry(Out, s, Detail{When: when}))
}

// stated refuses a time that has not come yet, but for the minute that a wall
// clock and a server may differ.
func (l Load) stated(a Act, s Saying, at time.Time) (*time.Time, error) {
	if at.IsZero() {
		return nil, nil
	}
	if at.After(s.At.Add(time.Minute)) {
		return nil, l.refuse(a, Ahead)
	}
	return &at, nil
}

// Judge gives the result.
func (l Load) Judge(s Saying, finding string, good bool) (Entry, error) {
	return l.tried(l.entry(Judge, s, Detail{Note: finding, Good: good}))
}

// Drop gives the load up; it stays in the book.
func (l Load) Drop(s Saying, note string) (Entry, error) {
	return l.tried(l.entry(Drop, s, Detail{Note: note}))
}

// Undo takes back what the saying's person did last to this load, all that one
// message did at once. It is refused once someone has built on it.
func (l Load) Undo(s Saying) (Entry, error) {
	standing := l.Standing()
	if len(standing) == 0 || s.By.ID == "" {
		return Entry{}, l.refuse(Undo, NothingToUndo)
	}
	last := standing[len(standing)-1]
	if last.By.ID != s.By.ID {
		why := NothingToUndo
		if slices.ContainsFunc(standing, func(e Entry) bool { return e.By.ID == s.By.ID }) {
			why = OthersSince
		}
		return Entry{}, &RefusedError{Act: Undo, Why: why, Load: l, By: last.By, Since: last.Act}
	}
	back := []int{last.Seq}
	for i := len(standing) - 2; i >= 0 && last.Event != "" && standing[i].Event == last.Event; i-- {
		back = append([]int{standing[i].Seq}, back...)
	}
	return l.tried(l.entry(Undo, s, Detail{Undoes: back}))
}

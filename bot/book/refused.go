package book

import "fmt"

// A Why says why the book refuses an act.
type Why string

const (
	NoSuchLoad    Why = "no such load"
	AlreadyThere  Why = "already so"           // said twice; nothing to do
	OwnLoad       Why = "own load"             // the planner cannot be the second person
	NotAChecker   Why = "not a checker"        // the room names who can check
	TooFew        Why = "too few measured"     // fewer than two measured values that the plan has too
	NotChecked    Why = "no valid check"       // needs "anyway" to go in, or nothing to withdraw
	IsHeld        Why = "held"                 // must be cleared first
	NotHeld       Why = "not held"             // nothing to clear
	NotIn         Why = "not in the press"     // cannot come out or be judged
	StillIn       Why = "still in the press"   // must come out first
	IsOut         Why = "out already"          // too late for this act
	IsDropped     Why = "dropped"              // nothing more can be done with it
	HasResult     Why = "has a result"         // undo the result first
	NothingToUndo Why = "nothing to undo"      // this person did nothing here that still stands
	OthersSince   Why = "others acted since"   // someone has built on it
	BadTime       Why = "time cannot be"       // out before in
	Ahead         Why = "time lies ahead"      // later than now
	NothingNew    Why = "nothing to correct"   // a correction that changes nothing
	NoFinding     Why = "no finding"           // a result that says nothing
	NotTheLast    Why = "not the last to undo" // an undo that skips what came later
)

// A RefusedError says why an act cannot be done on a load. It carries the load
// as it stands, so that the answer can tell its state.
type RefusedError struct {
	Act      Act
	Why      Why
	Load     Load
	Compared []Comparison // TooFew: what could be compared, and what not
	By       Person       // OthersSince: who did Since
	Since    Act
}

func (e *RefusedError) Error() string {
	if e.Load.State == "" {
		return fmt.Sprintf("cannot %s load %d: %s", e.Act, e.Load.Number, e.Why)
	}
	return fmt.Sprintf("cannot %s load %d, which is %s: %s", e.Act, e.Load.Number, e.Load.State, e.Why)
}

// Is makes errors.Is match refusals by their reason: a target with only Why
// set matches every refusal for that reason.
func (e *RefusedError) Is(target error) bool {
	t, ok := target.(*RefusedError)
	return ok && t.Why == e.Why && (t.Act == "" || t.Act == e.Act)
}

func (l Load) refuse(a Act, w Why) error { return &RefusedError{Act: a, Why: w, Load: l} }

package book

import "slices"

// step applies one entry by the rules of its act, whatever its Seq. The rules
// are what a replay needs; who may act is decided before an entry is made.
func (l Load) step(e Entry) (Load, error) {
	if e.Act == Post {
		return l.posted(e)
	}
	switch {
	case len(l.Entries) == 0 && l.Number == 0:
		return l, (Load{Room: e.Room, Number: e.Load}).refuse(e.Act, NoSuchLoad)
	case e.Act == Undo:
		return l.undone(e)
	case l.State == Dropped && e.Act == Drop:
		return l, l.refuse(e.Act, AlreadyThere)
	case l.State == Dropped:
		return l, l.refuse(e.Act, IsDropped)
	}
	rule, ok := rules[e.Act]
	if !ok {
		return l, l.refuse(e.Act, "unknown act")
	}
	return rule(l, e)
}

var rules = map[Act]func(Load, Entry) (Load, error){
	Check: Load.checked, Uncheck: Load.unchecked, Hold: Load.held, Clear: Load.cleared,
	Correct: Load.corrected, In: Load.wentIn, Out: Load.cameOut, Judge: Load.judged, Drop: Load.dropped,
}

func (l Load) posted(e Entry) (Load, error) {
	d := e.Detail
	if l.Number != 0 || d.Plan == nil {
		return l, l.refuse(Post, AlreadyThere)
	}
	return Load{
		Room: e.Room, Number: e.Load, Revision: e.Revision, Revisions: e.Revision, State: Posted,
		Plan: *d.Plan, Title: d.Title, Job: d.Job, GlueLot: d.GlueLot, From: d.From,
		Poster: e.By, Author: e.By, PostedAt: e.At,
		Place: Place{Service: d.Service, Room: e.Room, Thread: d.Thread},
	}, nil
}

func (l Load) checked(e Entry) (Load, error) {
	switch l.State {
	case Held:
		return l, l.refuse(Check, IsHeld)
	case Taken, Judged:
		return l, l.refuse(Check, IsOut)
	}
	d := e.Detail
	l.Check = &SecondCheck{By: e.By, At: e.At, Measured: d.Measured, Compared: d.Compared, Agrees: d.Agrees, Own: d.Own}
	if l.State != Pressing {
		l.State = Posted
		if d.Agrees {
			l.State = Checked
		}
	}
	return l, nil
}

// unchecked withdraws a check. What lies in the press stays there.
func (l Load) unchecked(e Entry) (Load, error) {
	switch {
	case l.State == Taken || l.State == Judged:
		return l, l.refuse(Uncheck, IsOut)
	case l.Check == nil:
		return l, l.refuse(Uncheck, NotChecked)
	}
	return l.withoutCheck(), nil
}

func (l Load) withoutCheck() Load {
	l.Check = nil
	if l.State == Checked {
		l.State = Posted
	}
	if l.State == Held && l.HeldFrom == Checked {
		l.HeldFrom = Posted
	}
	return l
}

func (l Load) held(e Entry) (Load, error) {
	switch l.State {
	case Held:
		return l, l.refuse(Hold, AlreadyThere)
	case Taken, Judged:
		return l, l.refuse(Hold, IsOut)
	}
	l.HeldFrom, l.State, l.HeldFor = l.State, Held, e.Detail.Note
	return l, nil
}

func (l Load) cleared(e Entry) (Load, error) {
	if l.State != Held {
		return l, l.refuse(Clear, NotHeld)
	}
	l.State, l.HeldFrom, l.HeldFor = l.HeldFrom, "", ""
	return l, nil
}

// corrected makes a new revision, which has not been checked. What lies in the
// press or came out of it stays where it is.
func (l Load) corrected(e Entry) (Load, error) {
	d := e.Detail
	if d.Plan == nil {
		return l, l.refuse(Correct, NothingNew)
	}
	l = l.withoutCheck()
	l.Plan, l.Author = *d.Plan, e.By
	l.Revision, l.Revisions = e.Revision, max(l.Revisions, e.Revision)
	for _, kept := range []struct {
		to   *string
		said string
	}{{&l.Title, d.Title}, {&l.Job, d.Job}, {&l.GlueLot, d.GlueLot}} {
		if kept.said != "" {
			*kept.to = kept.said
		}
	}
	return l, nil
}

func (l Load) wentIn(e Entry) (Load, error) {
	switch {
	case l.State == Held:
		return l, l.refuse(In, IsHeld)
	case l.State == Pressing:
		return l, l.refuse(In, AlreadyThere)
	case l.State == Taken || l.State == Judged:
		return l, l.refuse(In, IsOut)
	case !l.HasValidCheck() && !e.Detail.Anyway:
		return l, l.refuse(In, NotChecked)
	}
	l.State, l.InAt, l.Anyway = Pressing, e.When(), !l.HasValidCheck()
	l.Press = e.Detail.Press
	return l, nil
}

func (l Load) cameOut(e Entry) (Load, error) {
	switch {
	case l.State == Held:
		return l, l.refuse(Out, IsHeld)
	case l.State == Taken || l.State == Judged:
		return l, l.refuse(Out, AlreadyThere)
	case l.State != Pressing:
		return l, l.refuse(Out, NotIn)
	case e.When().Before(l.InAt):
		return l, l.refuse(Out, BadTime)
	}
	l.State, l.OutAt = Taken, e.When()
	return l, nil
}

// judged gives the result; a later one replaces it and both stay in the book.
func (l Load) judged(e Entry) (Load, error) {
	switch {
	case l.InPress():
		return l, l.refuse(Judge, StillIn)
	case l.State != Taken && l.State != Judged:
		return l, l.refuse(Judge, NotIn)
	case e.Detail.Note == "":
		return l, l.refuse(Judge, NoFinding)
	}
	l.State, l.Finding, l.Good, l.JudgedAt = Judged, e.Detail.Note, e.Detail.Good, e.At
	return l, nil
}

func (l Load) dropped(e Entry) (Load, error) {
	if l.State == Judged {
		return l, l.refuse(Drop, HasResult)
	}
	l.State, l.HeldFrom, l.HeldFor = Dropped, "", ""
	return l, nil
}

// undone takes back the latest entries that still stand. Taking back the
// posting itself drops the load.
func (l Load) undone(e Entry) (Load, error) {
	standing := l.Standing()
	n := len(e.Detail.Undoes)
	if n == 0 || n > len(standing) {
		return l, l.refuse(Undo, NothingToUndo)
	}
	for i, back := range standing[len(standing)-n:] {
		if back.Seq != e.Detail.Undoes[i] {
			return l, l.refuse(Undo, NotTheLast)
		}
	}
	rest := standing[:len(standing)-n]
	if len(rest) == 0 {
		rest = standing[:1]
	}
	var again Load
	for _, s := range rest {
		var err error
		if again, err = again.step(s); err != nil {
			return l, err
		}
	}
	if n == len(standing) {
		again.State = Dropped
	}
	again.Revisions = l.Revisions
	return again, nil
}

// Standing returns the load's entries that were not taken back, without the
// undoings themselves.
func (l Load) Standing() []Entry {
	var gone []int
	for _, e := range l.Entries {
		gone = append(gone, e.Detail.Undoes...)
	}
	return slices.DeleteFunc(slices.Clone(l.Entries), func(e Entry) bool {
		return e.Act == Undo || slices.Contains(gone, e.Seq)
	})
}

package book

import (
	"context"
	"errors"
	"slices"
)

// A Ledger is the book of one room as one message sees it: what the store
// holds, and what the message adds, which the store does not have yet.
type Ledger struct {
	from  Reader
	room  string
	added map[int]Load
	new   []Entry
}

// NewLedger opens the book of a room.
func NewLedger(r Reader, room string) *Ledger {
	return &Ledger{from: r, room: room, added: map[int]Load{}}
}

// Entries returns what was added, for [Outcome.Entries].
func (b *Ledger) Entries() []Entry { return b.new }

// Load returns load n. The error is a [*RefusedError] with [NoSuchLoad] where
// the room has no such load.
func (b *Ledger) Load(ctx context.Context, n int) (Load, error) {
	if l, ok := b.added[n]; ok {
		return l, nil
	}
	l, err := b.from.Load(ctx, b.room, n)
	if errors.Is(err, ErrNotFound) {
		return Load{}, Load{Room: b.room, Number: n}.refuse("find", NoSuchLoad)
	}
	return l, err
}

// Post adds a load under the room's next number.
func (b *Ledger) Post(ctx context.Context, s Saying, p Posting) (Load, error) {
	n, err := b.from.NextNumber(ctx, b.room)
	if err != nil {
		return Load{}, err
	}
	for b.added[n].Number == n {
		n++
	}
	p.Place.Room = b.room
	return b.add(Load{}, p.Entry(s, n))
}

// Do adds what act returns for load n as it stands.
func (b *Ledger) Do(ctx context.Context, n int, act func(Load) (Entry, error)) (Load, error) {
	l, err := b.Load(ctx, n)
	if err != nil {
		return l, err
	}
	e, err := act(l)
	if err != nil {
		return l, err
	}
	return b.add(l, e)
}

func (b *Ledger) add(l Load, e Entry) (Load, error) {
	next, err := l.Apply(e)
	if err != nil {
		return l, err
	}
	b.added[next.Number] = next
	b.new = append(b.new, e)
	return next, nil
}

// lookBack is how many of a person's acts an undo looks through for one that
// still stands.
const lookBack = 100

// Undo takes back the last thing that the saying's person did to load n, or
// in the room where n is 0: all that one message did, to several loads too, or
// nothing of it.
func (b *Ledger) Undo(ctx context.Context, s Saying, n int) ([]Load, error) {
	loads, err := b.LastTouched(ctx, s, n)
	if err != nil {
		return nil, err
	}
	var entries []Entry
	for _, l := range loads {
		e, err := l.Undo(s)
		if err != nil {
			return nil, err
		}
		entries = append(entries, e)
	}
	for i, e := range entries {
		if loads[i], err = b.add(loads[i], e); err != nil {
			return nil, err
		}
	}
	return loads, nil
}

// LastTouched returns the loads that the person's last standing act was done
// to, in one message.
func (b *Ledger) LastTouched(ctx context.Context, s Saying, n int) ([]Load, error) {
	if n != 0 {
		l, err := b.Load(ctx, n)
		return []Load{l}, err
	}
	var acts []Entry
	if s.By.ID != "" {
		var err error
		if acts, err = b.from.Acts(ctx, b.room, s.By.ID, lookBack); err != nil {
			return nil, err
		}
	}
	var loads []Load
	var event string
	for _, e := range acts {
		if len(loads) > 0 && (event == "" || e.Event != event) {
			break
		}
		l, err := b.Load(ctx, e.Load)
		if err != nil {
			return nil, err
		}
		stands := slices.ContainsFunc(l.Standing(), func(x Entry) bool { return x.Seq == e.Seq })
		seen := slices.ContainsFunc(loads, func(x Load) bool { return x.Number == l.Number })
		if stands && !seen {
			loads, event = append(loads, l), e.Event
		}
	}
	if len(loads) == 0 {
		return nil, Load{Room: b.room}.refuse(Undo, NothingToUndo)
	}
	slices.Reverse(loads)
	return loads, nil
}

// Find returns the loads that q chooses, what the message added included.
func (b *Ledger) Find(ctx context.Context, q Query) ([]Load, error) {
	stored, err := b.from.Loads(ctx, b.room, q)
	if err != nil {
		return nil, err
	}
	found := slices.DeleteFunc(stored, func(l Load) bool { return b.added[l.Number].Number == l.Number })
	for _, l := range b.added {
		if q.Matches(l) {
			found = append(found, l)
		}
	}
	newestFirst(found)
	return found[:min(len(found), q.Most())], nil
}

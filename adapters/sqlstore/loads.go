package sqlstore

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"presshand/bot/book"
	"presshand/engine/unit"
)

func number(n *unit.Number) any {
	if n == nil {
		return nil
	}
	return float64(*n)
}

const entryColumns = `SELECT room, load, seq, revision, act, person, person_name, said_at, event, detail FROM entries `

func scanEntry(scan scanner) (e book.Entry, err error) {
	var at int64
	var act, detail string
	if err := scan(&e.Room, &e.Load, &e.Seq, &e.Revision, &act, &e.By.ID, &e.By.Name, &at, &e.Event, &detail); err != nil {
		return e, err
	}
	e.Act, e.At = book.Act(act), fromMicros(at)
	if err := json.Unmarshal([]byte(detail), &e.Detail); err != nil {
		return e, fmt.Errorf("%w: load %d entry %d: %w", book.ErrDamaged, e.Load, e.Seq, err)
	}
	return e, nil
}

func (c conn) entries(ctx context.Context, where string, args ...any) (out []book.Entry, err error) {
	err = c.each(ctx, func(scan scanner) error {
		e, err := scanEntry(scan)
		out = append(out, e)
		return err
	}, entryColumns+where, args...)
	return out, err
}

func (c conn) load(ctx context.Context, room string, n int) (book.Load, error) {
	es, err := c.entries(ctx, `WHERE room = ? AND load = ? ORDER BY seq`, room, n)
	if err != nil {
		return book.Load{}, err
	}
	if len(es) == 0 {
		return book.Load{}, fmt.Errorf("load %d: %w", n, book.ErrNotFound)
	}
	return book.Fold(es)
}

// Load returns a load with its entries.
func (s *Store) Load(ctx context.Context, room string, n int) (book.Load, error) {
	return s.read().load(ctx, room, n)
}

// NextNumber returns the number after the room's last.
func (s *Store) NextNumber(ctx context.Context, room string) (n int, err error) {
	err = s.read().one(ctx, []any{&n}, `SELECT number + 1 FROM loads WHERE room = ? ORDER BY number DESC LIMIT 1`, room)
	if errors.Is(err, book.ErrNotFound) {
		return 1, nil
	}
	return n, err
}

// Acts returns a person's latest entries.
func (s *Store) Acts(ctx context.Context, room, person string, limit int) ([]book.Entry, error) {
	return s.read().entries(ctx, `WHERE room = ? AND person = ? AND act <> ? ORDER BY n DESC LIMIT ?`,
		room, person, string(book.Undo), limit)
}

// Loads returns the loads that q chooses.
func (s *Store) Loads(ctx context.Context, room string, q book.Query) ([]book.Load, error) {
	if some, err := s.read().any(ctx, room, q); err != nil || !some {
		return nil, err
	}
	where, args := conditions(room, q)
	var numbers []int
	err := s.read().each(ctx, func(scan scanner) error {
		var n int
		err := scan(&n)
		numbers = append(numbers, n)
		return err
	}, `SELECT number FROM loads WHERE `+where+` ORDER BY number DESC LIMIT ?`, append(args, q.Most())...)
	if err != nil || len(numbers) == 0 {
		return nil, err
	}
	es, err := s.read().entries(ctx, `WHERE room = ? AND load IN (`+holes(len(numbers))+`) ORDER BY load DESC, seq`,
		append([]any{room}, anys(numbers)...)...)
	if err != nil {
		return nil, err
	}
	return foldEach(es)
}

// foldEach folds entries that stand together by load.
func foldEach(es []book.Entry) (out []book.Load, err error) {
	for from := 0; from < len(es); {
		to := from
		for to < len(es) && es[to].Load == es[from].Load {
			to++
		}
		l, err := book.Fold(es[from:to])
		if err != nil {
			return nil, err
		}
		out, from = append(out, l), to
	}
	return out, nil
}

// traits are the columns that queries find a load by.
var traits = []struct {
	field  unit.Field
	column string
}{{unit.GlueClass, "glue"}, {unit.Species, "species"}, {unit.BarHeight, "bar_mm"}, {unit.StripThickness, "thickness_mm"}}

// any reports whether some load has each of the numbers asked for, and a bar or
// none as asked: a look that spares a search through the whole book for what is
// not in it.
func (c conn) any(ctx context.Context, room string, q book.Query) (bool, error) {
	if q.Bar != nil {
		if some, err := c.some(ctx, room, barred(*q.Bar)); err != nil || !some {
			return false, err
		}
	}
	for _, t := range traits {
		v, ok := q.Like[t.field].(unit.Number)
		if !ok {
			continue
		}
		low, high := book.Window(t.field, v)
		some, err := c.some(ctx, room, t.column+` BETWEEN ? AND ?`, float64(low), float64(high))
		if err != nil || !some {
			return false, err
		}
	}
	return true, nil
}

// some reports whether a load of the room meets a condition.
func (c conn) some(ctx context.Context, room, condition string, args ...any) (bool, error) {
	n := 0
	err := c.one(ctx, []any{&n}, `SELECT 1 FROM loads WHERE room = ? AND `+condition+` LIMIT 1`, append([]any{room}, args...)...)
	if errors.Is(err, book.ErrNotFound) {
		return false, nil
	}
	return err == nil, err
}

// barred is the condition that a load has a bar, or none.
func barred(bar bool) string {
	if bar {
		return `bar_mm IS NOT NULL`
	}
	return `bar_mm IS NULL`
}

func conditions(room string, q book.Query) (string, []any) {
	where, args := []string{"room = ?"}, []any{room}
	add := func(cond string, with ...any) {
		where, args = append(where, cond), append(args, with...)
	}
	if len(q.States) > 0 {
		var states []string
		for _, s := range q.States {
			states = append(states, string(s))
		}
		add(`state IN (`+holes(len(states))+`)`, anys(states)...)
	}
	if q.InPress {
		add(`in_press = 1`)
	}
	if q.Press != "" {
		add(`press = ?`, q.Press)
	}
	if !q.From.IsZero() {
		add(`touched_at >= ?`, micros(q.From))
	}
	if !q.To.IsZero() {
		add(`posted_at < ?`, micros(q.To))
	}
	if q.Bar != nil {
		add(barred(*q.Bar))
	}
	for _, t := range traits {
		switch v := q.Like[t.field].(type) {
		case unit.Word:
			add(t.column+` = ?`, string(v))
		case unit.Number:
			low, high := book.Window(t.field, v)
			// the plus keeps to the order of the numbers, which soon finds what is common
			add(`+`+t.column+` BETWEEN ? AND ?`, float64(low), float64(high))
		}
	}
	return strings.Join(where, " AND "), args
}

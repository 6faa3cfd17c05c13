package sqlstore

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"presshand/bot/book"
)

// Record keeps all that an event or a reminder changes, in one transaction.
func (s *Store) Record(ctx context.Context, o book.Outcome, at time.Time) error {
	err := s.write(ctx, func(c conn) error {
		for _, step := range []func(context.Context, conn, book.Outcome, time.Time) error{
			markAnswered, appendEntries, keepThread, keepProfile, queueReplies,
		} {
			if err := step(ctx, c, o, at); err != nil {
				return err
			}
		}
		return nil
	})
	if errors.Is(err, ErrDuplicate) {
		return fmt.Errorf("%w: %w", book.ErrConflict, err)
	}
	return err
}

// markAnswered is the first step: of two who answer the same event, the second
// waits here for the first and then goes away.
func markAnswered(ctx context.Context, c conn, o book.Outcome, at time.Time) error {
	if o.Event != "" {
		n, err := c.exec(ctx, `UPDATE inbox SET state = 'answered', done_at = ?, worker = '', lease_until = 0
			WHERE key = ? AND state = 'open'`, micros(at), o.Event)
		if err != nil {
			return err
		}
		if n == 0 {
			return fmt.Errorf("event %q: %w", o.Event, book.ErrAnswered)
		}
	}
	if o.Reminder != "" {
		n, err := c.exec(ctx, `UPDATE reminders SET state = 'said', worker = '', lease_until = 0
			WHERE key = ? AND state = 'open'`, o.Reminder)
		if err != nil {
			return err
		}
		if n == 0 {
			return fmt.Errorf("reminder %q: %w", o.Reminder, book.ErrAnswered)
		}
	}
	return nil
}

func keepThread(ctx context.Context, c conn, o book.Outcome, at time.Time) error {
	t := o.Thread
	switch {
	case t == nil:
		return nil
	case t.Version == 0:
		return changed("thread")(c.exec(ctx, `INSERT INTO threads (room, name, version, state, touched_at)
			VALUES (?, ?, 1, ?, ?) ON CONFLICT (room, name) DO NOTHING`, t.Room, t.Name, string(t.State), micros(at)))
	}
	return changed("thread")(c.exec(ctx, `UPDATE threads SET version = version + 1, state = ?, touched_at = ?
		WHERE room = ? AND name = ? AND version = ?`, string(t.State), micros(at), t.Room, t.Name, t.Version))
}

func keepProfile(ctx context.Context, c conn, o book.Outcome, _ time.Time) error {
	p := o.Profile
	switch {
	case p == nil:
		return nil
	case p.Version == 0:
		return changed("profile")(c.exec(ctx, `INSERT INTO profiles (room, version, state)
			VALUES (?, 1, ?) ON CONFLICT (room) DO NOTHING`, p.Room, string(p.State)))
	}
	return changed("profile")(c.exec(ctx, `UPDATE profiles SET version = version + 1, state = ?
		WHERE room = ? AND version = ?`, string(p.State), p.Room, p.Version))
}

// changed turns a change that did not find the version it builds on into a
// conflict.
func changed(what string) func(int, error) error {
	return func(n int, err error) error {
		if err == nil && n == 0 {
			return fmt.Errorf("%s: %w", what, book.ErrConflict)
		}
		return err
	}
}

func queueReplies(ctx context.Context, c conn, o book.Outcome, at time.Time) error {
	for _, r := range o.Replies {
		n, err := c.next(ctx, "outbox")
		if err != nil {
			return err
		}
		if _, err := c.exec(ctx, `INSERT INTO outbox
			(key, n, service, room, thread, event, message, replaces, said, body, said_at, beside)
			VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
			r.Key, n, r.Place.Service, r.Place.Room, r.Place.Thread, o.Event, r.Message, r.Replaces,
			r.Text, string(r.Body), micros(at), bit(r.Beside)); err != nil {
			return fmt.Errorf("reply %q: %w", r.Key, err)
		}
	}
	return nil
}

func appendEntries(ctx context.Context, c conn, o book.Outcome, _ time.Time) error {
	after := map[int]book.Load{}
	for _, e := range o.Entries {
		l, ok := after[e.Load]
		if !ok {
			var err error
			if l, err = c.load(ctx, e.Room, e.Load); err != nil && !errors.Is(err, book.ErrNotFound) {
				return err
			}
		}
		next, err := l.Apply(e)
		if errors.Is(err, book.ErrOutOfOrder) {
			return fmt.Errorf("%w: %w", book.ErrConflict, err)
		}
		if err != nil {
			return err
		}
		if err := c.insertEntry(ctx, e); err != nil {
			return err
		}
		after[e.Load] = next
	}
	for _, l := range after {
		if err := c.keepLoad(ctx, l); err != nil {
			return err
		}
	}
	return nil
}

func (c conn) insertEntry(ctx context.Context, e book.Entry) error {
	detail, err := json.Marshal(e.Detail)
	if err != nil {
		return fmt.Errorf("load %d entry %d: %w", e.Load, e.Seq, err)
	}
	n, err := c.next(ctx, "entries")
	if err != nil {
		return err
	}
	_, err = c.exec(ctx, `INSERT INTO entries
		(room, load, seq, n, revision, act, person, person_name, said_at, event, detail)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		e.Room, e.Load, e.Seq, n, e.Revision, string(e.Act), e.By.ID, e.By.Name, micros(e.At), e.Event, string(detail))
	return err
}

// keepLoad brings the row for queries and the reminders of a load up to date.
// A reminder that was said stays, so that it is not said again.
func (c conn) keepLoad(ctx context.Context, l book.Load) error {
	t := l.Traits()
	if _, err := c.exec(ctx, `INSERT INTO loads
		(room, number, state, in_press, press, glue, species, bar_mm, thickness_mm, posted_at, touched_at)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (room, number) DO UPDATE SET
		state = excluded.state, in_press = excluded.in_press, press = excluded.press, glue = excluded.glue,
		species = excluded.species, bar_mm = excluded.bar_mm, thickness_mm = excluded.thickness_mm,
		touched_at = excluded.touched_at`,
		l.Room, l.Number, string(l.State), bit(l.InPress()), l.Press, t.Glue, t.Species, number(t.Bar), number(t.Thickness),
		micros(l.PostedAt), micros(l.Last().At)); err != nil {
		return err
	}
	if _, err := c.exec(ctx, `DELETE FROM reminders WHERE room = ? AND load = ? AND state = 'open'`, l.Room, l.Number); err != nil {
		return err
	}
	for _, r := range l.Reminders() {
		if _, err := c.exec(ctx, `INSERT INTO reminders (key, room, load, kind, due_at) VALUES (?, ?, ?, ?, ?)
			ON CONFLICT (key) DO NOTHING`, r.Key, r.Room, r.Load, string(r.Kind), micros(r.Due)); err != nil {
			return err
		}
	}
	return nil
}

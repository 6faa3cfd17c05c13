package sqlstore

import (
	"context"
	"errors"

	"presshand/bot/book"
)

// Thread returns what is remembered of a conversation.
func (s *Store) Thread(ctx context.Context, room, name string) (book.Thread, error) {
	t := book.Thread{Room: room, Name: name}
	var state string
	err := s.read().one(ctx, []any{&t.Version, &state},
		`SELECT version, state FROM threads WHERE room = ? AND name = ?`, room, name)
	t.State = raw(state)
	return t, orNew(err)
}

// Profile returns a room's own defaults.
func (s *Store) Profile(ctx context.Context, room string) (book.Profile, error) {
	p := book.Profile{Room: room}
	var state string
	err := s.read().one(ctx, []any{&p.Version, &state}, `SELECT version, state FROM profiles WHERE room = ?`, room)
	p.State = raw(state)
	return p, orNew(err)
}

// orNew takes what is not there for something at version 0.
func orNew(err error) error {
	if errors.Is(err, book.ErrNotFound) {
		return nil
	}
	return err
}

// Hold takes or renews a lease.
func (s *Store) Hold(ctx context.Context, name string, cl book.Claim) (held bool, err error) {
	err = s.write(ctx, func(c conn) error {
		n, err := c.exec(ctx, `INSERT INTO leases (name, worker, lease_until) VALUES (?, ?, ?)
			ON CONFLICT (name) DO UPDATE SET worker = excluded.worker, lease_until = excluded.lease_until
			WHERE leases.worker = excluded.worker OR leases.lease_until <= ?`,
			name, cl.Worker, micros(cl.Now.Add(cl.For)), micros(cl.Now))
		held = n == 1
		return err
	})
	return held, err
}

// Release gives a lease back.
func (s *Store) Release(ctx context.Context, name, worker string) error {
	return s.write(ctx, func(c conn) error {
		_, err := c.exec(ctx, `DELETE FROM leases WHERE name = ? AND worker = ?`, name, worker)
		return err
	})
}

// Free drops what a worker claimed before it died.
func (s *Store) Free(ctx context.Context, worker string) error {
	return s.write(ctx, func(c conn) error {
		for _, table := range []string{"inbox", "outbox", "reminders"} {
			if _, err := c.exec(ctx, `UPDATE `+table+` SET worker = '', lease_until = 0
				WHERE worker = ? AND state = 'open'`, worker); err != nil {
				return err
			}
		}
		_, err := c.exec(ctx, `DELETE FROM leases WHERE worker = ?`, worker)
		return err
	})
}

// Mark returns a place in a stream, "" before the first.
func (s *Store) Mark(ctx context.Context, name string) (place string, err error) {
	err = s.read().one(ctx, []any{&place}, `SELECT place FROM marks WHERE name = ?`, name)
	return place, orNew(err)
}

// SetMark keeps a place in a stream.
func (s *Store) SetMark(ctx context.Context, name, place string) error {
	return s.write(ctx, func(c conn) error {
		_, err := c.exec(ctx, `INSERT INTO marks (name, place) VALUES (?, ?)
			ON CONFLICT (name) DO UPDATE SET place = excluded.place`, name, place)
		return err
	})
}

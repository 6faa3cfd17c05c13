package sqlstore

import (
	"context"
	"encoding/json"
	"errors"
	"time"

	"presshand/bot/book"
)

// Receive keeps an event, once.
func (s *Store) Receive(ctx context.Context, e book.Event, at time.Time) (fresh bool, err error) {
	err = s.write(ctx, func(c conn) error {
		n, err := c.next(ctx, "inbox")
		if err != nil {
			return err
		}
		added, err := c.exec(ctx, `INSERT INTO inbox
			(key, n, service, room, thread, message, edits, person, person_name, said, extra, said_at, received_at)
			VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (key) DO NOTHING`,
			e.Key, n, e.Place.Service, e.Place.Room, e.Place.Thread, e.Message, e.Edits,
			e.From.ID, e.From.Name, e.Text, string(e.Extra), micros(e.At), micros(at))
		fresh = added == 1
		return err
	})
	return fresh, err
}

// oldest chooses, of the open rows of a table, the oldest of a room in which
// none is leased or put off: a room is served in order.
func (d Dialect) oldest(table, where string) string {
	lock := ""
	if d.RowLocks {
		lock = " FOR UPDATE SKIP LOCKED"
	}
	return `(SELECT key FROM ` + table + ` a
		WHERE a.state = 'open' AND a.lease_until <= ? AND a.not_before <= ?` + where + `
		AND NOT EXISTS (SELECT 1 FROM ` + table + ` b
			WHERE b.room = a.room AND b.service = a.service AND b.state = 'open' AND b.n < a.n)
		ORDER BY a.n LIMIT 1` + lock + `)`
}

// ClaimEvent leases the next event to be answered.
func (s *Store) ClaimEvent(ctx context.Context, cl book.Claim) (e book.Event, err error) {
	err = s.write(ctx, func(c conn) error {
		var extra string
		var at int64
		err := c.one(ctx, []any{&e.Key, &e.Place.Service, &e.Place.Room, &e.Place.Thread, &e.Message, &e.Edits,
			&e.From.ID, &e.From.Name, &e.Text, &extra, &at, &e.Tries},
			`UPDATE inbox SET worker = ?, lease_until = ?, tries = tries + 1
			WHERE key = `+s.dialect.oldest("inbox", "")+`
			RETURNING key, service, room, thread, message, edits, person, person_name, said, extra, said_at, tries - 1`,
			cl.Worker, micros(cl.Now.Add(cl.For)), micros(cl.Now), micros(cl.Now))
		e.At, e.Extra = fromMicros(at), raw(extra)
		return noneFor(err)
	})
	return e, err
}

// RetryEvent gives an event back, or up.
func (s *Store) RetryEvent(ctx context.Context, key string, after time.Time, reason string) error {
	return s.giveBack(ctx, "inbox", key, after, reason)
}

func (s *Store) giveBack(ctx context.Context, table, key string, after time.Time, reason string) error {
	state := "open"
	if after.IsZero() {
		state = "dead"
	}
	return s.write(ctx, func(c conn) error {
		_, err := c.exec(ctx, `UPDATE `+table+` SET state = ?, not_before = ?, reason = ?, worker = '', lease_until = 0
			WHERE key = ? AND state = 'open'`, state, micros(after), reason, key)
		return err
	})
}

// noneFor says that there was nothing to claim.
func noneFor(err error) error {
	if errors.Is(err, book.ErrNotFound) {
		return book.ErrNone
	}
	return err
}

func raw(s string) json.RawMessage {
	if s == "" {
		return nil
	}
	return json.RawMessage(s)
}

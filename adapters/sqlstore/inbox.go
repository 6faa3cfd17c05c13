package sqlstore

import (
	"context"
	"encoding/json"
	"errors"
	"time"

	"presshand/bot/book"
)

// Receive keeps an event, once.
func (s *Store) Receive(ctx context.Context, e book.Event, at time.Time, most int) (fresh bool, err error) {
	err = s.write(ctx, func(c conn) error {
		n, err := c.next(ctx, "inbox") // from here on others wait, so that the crowd is counted one by one
		if err != nil {
			return err
		}
		turnout, err := c.turnout(ctx, e, most)
		if err != nil {
			return err
		}
		added, err := c.exec(ctx, `INSERT INTO inbox
			(key, n, service, room, thread, message, edits, person, person_name, said, extra, said_at, received_at, turnout)
			VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (key) DO NOTHING`,
			e.Key, n, e.Place.Service, e.Place.Room, e.Place.Thread, e.Message, e.Edits,
			e.From.ID, e.From.Name, e.Text, string(e.Extra), micros(e.At), micros(at), string(turnout))
		fresh = added == 1
		return err
	})
	return fresh, err
}

// turnout says what becomes of an event that is not kept yet.
func (c conn) turnout(ctx context.Context, e book.Event, most int) (book.Turnout, error) {
	if most == 0 {
		return book.Heard, nil
	}
	var near [2]int
	for i, kind := range []book.Turnout{book.Heard, book.Slowed} {
		if err := c.one(ctx, []any{&near[i]}, `SELECT COUNT(*) FROM inbox
			WHERE person = ? AND turnout = ? AND said_at > ? AND said_at < ?`, e.From.ID, string(kind),
			micros(e.At.Add(-book.CrowdWindow)), micros(e.At.Add(book.CrowdWindow))); err != nil {
			return "", err
		}
	}
	return book.TurnoutOf(most, near[0], near[1]), nil
}

// oldest chooses, of the open rows of a table, the oldest of a room in which
// none that it waits for is leased or put off: a room is served in order.
func (d Dialect) oldest(table, where, waits string) string {
	lock := ""
	if d.RowLocks {
		lock = " FOR UPDATE SKIP LOCKED"
	}
	return `(SELECT key FROM ` + table + ` a
		WHERE a.state = 'open' AND a.lease_until <= ? AND a.not_before <= ?` + where + `
		AND NOT EXISTS (SELECT 1 FROM ` + table + ` b
			WHERE b.room = a.room AND b.service = a.service AND b.state = 'open' AND b.n < a.n` + waits + `)
		ORDER BY a.n LIMIT 1` + lock + `)`
}

// ClaimEvent leases the next event to be answered.
func (s *Store) ClaimEvent(ctx context.Context, cl book.Claim) (e book.Event, err error) {
	err = s.write(ctx, func(c conn) error {
		var extra string
		var at int64
		err := c.one(ctx, []any{&e.Key, &e.Place.Service, &e.Place.Room, &e.Place.Thread, &e.Message, &e.Edits,
			&e.From.ID, &e.From.Name, &e.Text, &extra, &at, &e.Turnout, &e.Tries},
			`UPDATE inbox SET worker = ?, lease_until = ?, tries = tries + 1
			WHERE key = `+s.dialect.oldest("inbox", "", "")+`
			RETURNING key, service, room, thread, message, edits, person, person_name, said, extra, said_at, turnout, tries - 1`,
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

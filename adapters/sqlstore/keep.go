package sqlstore

import (
	"context"
	"slices"
	"strings"
	"time"

	"presshand/bot/book"
)

// page is how many entries are read at a time: what reads them may be slow, or
// use the store.
const page = 500

// Entries calls f with each entry, in the order of their recording.
func (s *Store) Entries(ctx context.Context, room string, f func(book.Entry) error) error {
	after := int64(0)
	for {
		var found []book.Entry
		err := s.read().each(ctx, func(scan scanner) error {
			e, err := scanEntry(func(dest ...any) error { return scan(append(dest, &after)...) })
			found = append(found, e)
			return err
		}, `SELECT room, load, seq, revision, act, person, person_name, said_at, event, detail, n FROM entries
			WHERE n > ? AND (room = ? OR ? = '') ORDER BY n LIMIT ?`, after, room, room, page)
		if err != nil {
			return err
		}
		for _, e := range found {
			if err := f(e); err != nil {
				return err
			}
		}
		if len(found) < page {
			return nil
		}
	}
}

// Rooms returns the rooms that have loads.
func (s *Store) Rooms(ctx context.Context) (rooms []string, err error) {
	err = s.read().each(ctx, func(scan scanner) error {
		var name string
		err := scan(&name)
		rooms = append(rooms, name)
		return err
	}, `SELECT DISTINCT room FROM loads ORDER BY room`)
	return rooms, err
}

// Forget blanks a person. What they said and is not answered yet will not be.
// A name that someone typed into a note is beyond it.
func (s *Store) Forget(ctx context.Context, person string) (blanked int, err error) {
	if person == "" {
		return 0, nil
	}
	err = s.write(ctx, func(c conn) error {
		blanked = 0
		for _, q := range []struct {
			counts bool
			query  string
		}{
			{false, `DELETE FROM threads WHERE EXISTS (SELECT 1 FROM inbox
				WHERE inbox.room = threads.room AND inbox.thread = threads.name AND inbox.person = ?)`},
			// what was sent to others may name the person, and is needed no more
			{false, `UPDATE outbox SET said = '', body = '' WHERE state <> 'open' AND room IN (
				SELECT room FROM inbox WHERE person = ? UNION SELECT room FROM entries WHERE person = ?)`},
			{false, `UPDATE outbox SET said = '', body = '', state = CASE state WHEN 'open' THEN 'dead' ELSE state END
				WHERE event <> '' AND event IN (SELECT key FROM inbox WHERE person = ?)`},
			{true, `UPDATE inbox SET person = '', person_name = '', said = '', extra = '',
				state = CASE state WHEN 'open' THEN 'dead' ELSE state END WHERE person = ?`},
			{true, `UPDATE entries SET person = '', person_name = '' WHERE person = ?`},
		} {
			args := slices.Repeat([]any{person}, strings.Count(q.query, "?"))
			n, err := c.exec(ctx, q.query, args...)
			if err != nil {
				return err
			}
			if q.counts {
				blanked += n
			}
		}
		return nil
	})
	if err != nil || s.dialect.Purge == nil {
		return blanked, err
	}
	return blanked, s.dialect.explain(s.dialect.Purge(ctx, s.db))
}

// Sweep drops old texts and threads.
func (s *Store) Sweep(ctx context.Context, before time.Time) (cleared int, err error) {
	err = s.write(ctx, func(c conn) error {
		cleared = 0
		for _, query := range []string{
			`UPDATE inbox SET said = '', extra = '', person_name = ''
				WHERE received_at < ? AND state <> 'open' AND (said <> '' OR extra <> '' OR person_name <> '')`,
			`UPDATE outbox SET said = '', body = '' WHERE said_at < ? AND state <> 'open' AND (said <> '' OR body <> '')`,
			`DELETE FROM threads WHERE touched_at < ?`,
		} {
			n, err := c.exec(ctx, query, micros(before))
			if err != nil {
				return err
			}
			cleared += n
		}
		return nil
	})
	return cleared, err
}

// Depth counts what waits and what was given up.
func (s *Store) Depth(ctx context.Context) (d book.Depth, err error) {
	for _, q := range []struct {
		to           *int
		table, state string
	}{{&d.Inbox, "inbox", "open"}, {&d.Outbox, "outbox", "open"}, {&d.DeadInbox, "inbox", "dead"}, {&d.DeadOutbox, "outbox", "dead"}} {
		if err := s.read().one(ctx, []any{q.to}, `SELECT COUNT(*) FROM `+q.table+` WHERE state = '`+q.state+`'`); err != nil {
			return d, err
		}
	}
	return d, nil
}

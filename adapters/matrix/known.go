package matrix

import (
	"context"
	"encoding/json"
	"time"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// A message is what is remembered of one taken or sent: where it stands.
type message struct {
	ID       id.EventID
	Room     id.RoomID
	Sender   id.UserID
	Root     id.EventID // of its thread
	Key      string     // of the reply, for one sent
	Shows    id.EventID // the event that it edits, or itself
	Load     int        // that it is about, or 0
	Revision int
}

func (s *store) know(ctx context.Context, m message) error {
	return s.exec(ctx, `INSERT INTO known (event_id, room_id, sender, root, key, shows, load, revision, at)
		VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)
		ON CONFLICT (event_id) DO UPDATE SET root = excluded.root, load = excluded.load, revision = excluded.revision`,
		m.ID, m.Room, m.Sender, m.Root, m.Key, m.Shows, m.Load, m.Revision, time.Now().UnixMilli())
}

// nowShows keeps what the event is about that a reply edits: people react to
// that one.
func (s *store) nowShows(ctx context.Context, m message) error {
	return s.exec(ctx, `UPDATE known SET load = $1, revision = $2 WHERE event_id = $3`, m.Load, m.Revision, m.Shows)
}

// known returns what is remembered of a message; its ID is "" for none.
func (s *store) known(ctx context.Context, event id.EventID) (message, error) {
	return s.find(ctx, `event_id = $1`, string(event))
}

// sent returns the message that a reply went out as.
func (s *store) sent(ctx context.Context, key string) (message, error) {
	return s.find(ctx, `key = $1`, key)
}

func (s *store) find(ctx context.Context, where, what string) (m message, err error) {
	err = s.one(ctx, []any{&m.ID, &m.Room, &m.Sender, &m.Root, &m.Key, &m.Shows, &m.Load, &m.Revision},
		`SELECT event_id, room_id, sender, root, key, shows, load, revision FROM known WHERE `+where, what)
	return m, err
}

// inThread reports whether the bot takes part in a thread.
func (s *store) inThread(ctx context.Context, room id.RoomID, root id.EventID) (in bool, err error) {
	err = s.one(ctx, []any{&in}, `SELECT true FROM known WHERE room_id = $1 AND root = $2 LIMIT 1`, room, root)
	return in, err
}

func (s *store) keepDoubt(ctx context.Context, key string, since time.Time) error {
	return s.exec(ctx, `INSERT INTO doubts (key, since) VALUES ($1, $2)
		ON CONFLICT (key) DO UPDATE SET since = excluded.since`, key, since.UnixMilli())
}

func (s *store) dropDoubt(ctx context.Context, key string) error {
	return s.exec(ctx, `DELETE FROM doubts WHERE key = $1`, key)
}

// doubt returns when a homeserver broke off taking a reply, the zero time if
// it never did.
func (s *store) doubt(ctx context.Context, key string) (time.Time, error) {
	var since int64
	err := s.one(ctx, []any{&since}, `SELECT since FROM doubts WHERE key = $1`, key)
	if since == 0 {
		return time.Time{}, err
	}
	return time.UnixMilli(since), err
}

// wait keeps an encrypted event until its key arrives.
func (s *store) wait(ctx context.Context, e *event.Event) error {
	b, err := json.Marshal(e)
	if err != nil {
		return err
	}
	return s.exec(ctx, `INSERT INTO waiting (event_id, event, since) VALUES ($1, $2, $3)
		ON CONFLICT (event_id) DO NOTHING`, e.ID, string(b), time.Now().UnixMilli())
}

func (s *store) stopWaiting(ctx context.Context, event id.EventID) error {
	return s.exec(ctx, `DELETE FROM waiting WHERE event_id = $1`, event)
}

// A waiter is an encrypted event that waits for its key.
type waiter struct {
	event *event.Event
	since time.Time
	asked bool
}

func (s *store) asked(ctx context.Context, event id.EventID) error {
	return s.exec(ctx, `UPDATE waiting SET asked = true WHERE event_id = $1`, event)
}

func (s *store) waiters(ctx context.Context) (out []waiter, err error) {
	rows, err := s.db.Query(ctx, `SELECT event, since, asked FROM waiting ORDER BY since, event_id`)
	if err != nil {
		return nil, ofStore(err)
	}
	defer rows.Close()
	for rows.Next() {
		var text string
		var since int64
		var asked bool
		if err := rows.Scan(&text, &since, &asked); err != nil {
			return nil, ofStore(err)
		}
		w := waiter{event: &event.Event{}, since: time.UnixMilli(since), asked: asked}
		if err := json.Unmarshal([]byte(text), w.event); err != nil {
			return nil, err
		}
		out = append(out, w)
	}
	return out, ofStore(rows.Err())
}

// tell reports whether a room is to be told that something there cannot be
// read: once.
func (s *store) tell(ctx context.Context, room id.RoomID) (bool, error) {
	var told bool
	if err := s.one(ctx, []any{&told}, `SELECT told FROM sealed WHERE room_id = $1`, room); err != nil || told {
		return false, err
	}
	return true, s.exec(ctx, `INSERT INTO sealed (room_id, told) VALUES ($1, true)
		ON CONFLICT (room_id) DO UPDATE SET told = true`, room)
}

// An invitation is a room that the account was asked into.
type invitation struct {
	room    id.RoomID
	inviter id.UserID
	since   time.Time
}

func (s *store) invite(ctx context.Context, room id.RoomID, inviter id.UserID) error {
	return s.exec(ctx, `INSERT INTO invited (room_id, inviter, since) VALUES ($1, $2, $3)
		ON CONFLICT (room_id) DO UPDATE SET inviter = excluded.inviter`, room, inviter, time.Now().UnixMilli())
}

func (s *store) answered(ctx context.Context, room id.RoomID) error {
	return s.exec(ctx, `DELETE FROM invited WHERE room_id = $1`, room)
}

func (s *store) invitations(ctx context.Context) (out []invitation, err error) {
	rows, err := s.db.Query(ctx, `SELECT room_id, inviter, since FROM invited ORDER BY since, room_id`)
	if err != nil {
		return nil, ofStore(err)
	}
	defer rows.Close()
	for rows.Next() {
		var v invitation
		var since int64
		if err := rows.Scan(&v.room, &v.inviter, &since); err != nil {
			return nil, ofStore(err)
		}
		v.since = time.UnixMilli(since)
		out = append(out, v)
	}
	return out, ofStore(rows.Err())
}

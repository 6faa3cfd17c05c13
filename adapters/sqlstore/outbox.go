package sqlstore

import (
	"context"
	"time"

	"presshand/bot/book"
)

// ClaimOutgoing leases the next reply to be sent.
func (s *Store) ClaimOutgoing(ctx context.Context, cl book.Claim, services []string) (o book.Outgoing, err error) {
	if len(services) == 0 {
		return o, book.ErrNone
	}
	err = s.write(ctx, func(c conn) error {
		args := []any{cl.Worker, micros(cl.Now.Add(cl.For)), micros(cl.Now), micros(cl.Now), bit(!cl.Words)}
		var body string
		var at int64
		err := c.one(ctx, append(outgoingColumns(&o, &body, &at), &o.Tries, &o.Beside),
			`UPDATE outbox SET worker = ?, lease_until = ?, tries = tries + 1
			WHERE key = `+s.dialect.oldest("outbox", ` AND a.beside <= ? AND a.service IN (`+holes(len(services))+`)`, ` AND b.beside <= a.beside`)+`
			RETURNING key, service, room, thread, event, message, replaces, said, body, said_at, ref, tries - 1, beside = 1`,
			append(args, anys(services)...)...)
		if err != nil {
			return noneFor(err)
		}
		o.Body, o.At = raw(body), fromMicros(at)
		if o.Replaces == "" {
			return nil
		}
		return c.each(ctx, func(scan scanner) error { return scan(&o.ReplacesRef) },
			`SELECT ref FROM outbox WHERE key = ?`, o.Replaces)
	})
	return o, err
}

func outgoingColumns(o *book.Outgoing, body *string, at *int64) []any {
	return []any{&o.Key, &o.Place.Service, &o.Place.Room, &o.Place.Thread, &o.Event, &o.Message, &o.Replaces,
		&o.Text, body, at, &o.Ref}
}

func bit(is bool) int {
	if is {
		return 1
	}
	return 0
}

// Reply returns the last reply to a message.
func (s *Store) Reply(ctx context.Context, p book.Place, message string) (o book.Outgoing, err error) {
	var body string
	var at int64
	err = s.read().one(ctx, append(outgoingColumns(&o, &body, &at), &o.Tries),
		`SELECT key, service, room, thread, event, message, replaces, said, body, said_at, ref, tries FROM outbox
		WHERE room = ? AND message = ? AND service = ? ORDER BY n DESC LIMIT 1`, p.Room, message, p.Service)
	o.Body, o.At = raw(body), fromMicros(at)
	return o, err
}

// Sent keeps that the service took a reply.
func (s *Store) Sent(ctx context.Context, key, ref string, at time.Time) error {
	return s.write(ctx, func(c conn) error {
		_, err := c.exec(ctx, `UPDATE outbox SET state = 'sent', ref = ?, done_at = ?, worker = '', lease_until = 0
			WHERE key = ? AND state <> 'sent'`, ref, micros(at), key)
		return err
	})
}

// RetryOutgoing gives a reply back, or up.
func (s *Store) RetryOutgoing(ctx context.Context, key string, after time.Time, reason string) error {
	return s.giveBack(ctx, "outbox", key, after, reason)
}

// ClaimReminder leases a reminder that is due.
func (s *Store) ClaimReminder(ctx context.Context, cl book.Claim) (r book.Reminder, err error) {
	lock := ""
	if s.dialect.RowLocks {
		lock = " FOR UPDATE SKIP LOCKED"
	}
	err = s.write(ctx, func(c conn) error {
		var kind string
		var due int64
		err := c.one(ctx, []any{&r.Key, &r.Room, &r.Load, &kind, &due},
			`UPDATE reminders SET worker = ?, lease_until = ? WHERE key = (SELECT key FROM reminders
				WHERE state = 'open' AND due_at <= ? AND lease_until <= ? ORDER BY due_at, key LIMIT 1`+lock+`)
			RETURNING key, room, load, kind, due_at`,
			cl.Worker, micros(cl.Now.Add(cl.For)), micros(cl.Now), micros(cl.Now))
		r.Kind, r.Due = book.Kind(kind), fromMicros(due)
		return noneFor(err)
	})
	return r, err
}

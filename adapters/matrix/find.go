package matrix

import (
	"context"
	"fmt"
	"time"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
)

// skew is how far the clocks of the bot and the homeserver may differ.
const skew = 10 * time.Minute

// lookFor looks in the room for a reply that was sent and whose arrival is in
// doubt. It returns "" where there is none.
func (s *session) lookFor(ctx context.Context, o book.Outgoing) (id.EventID, error) {
	oldest := o.At.Add(-skew).UnixMilli()
	from := ""
	for range gapPages {
		r, err := s.messages(ctx, id.RoomID(o.Place.Room), from, "")
		if err != nil {
			return "", fmt.Errorf("whether a reply arrived is not to be had: %w", err)
		}
		for _, e := range r.Chunk {
			e.RoomID = id.RoomID(o.Place.Room)
			if e.Timestamp < oldest {
				return "", nil
			}
			if e.Sender != s.client.UserID {
				continue
			}
			m, err := s.ownMessage(ctx, e)
			if err != nil {
				return "", err
			}
			if m.Key == o.Key {
				return e.ID, nil
			}
		}
		if from = r.End; from == "" || len(r.Chunk) == 0 {
			break
		}
	}
	return "", nil
}

// ownMessage returns what one of the account's own messages was sent as: its
// key is "" where it cannot be read, of an earlier device say.
func (s *session) ownMessage(ctx context.Context, e *event.Event) (m message, err error) {
	m = message{ID: e.ID, Room: e.RoomID, Sender: e.Sender, Shows: e.ID}
	e.Type.Class = event.MessageEventType
	if parse(e) != nil {
		return m, nil
	}
	if e.Type == event.EventEncrypted && s.cipher != nil {
		clear, err := s.decipher(ctx, e)
		if err != nil && passing(err) {
			return m, err
		}
		if err != nil {
			s.log.Debug("matrix: own message cannot be read", "event", e.ID, "error", err)
			return m, nil
		}
		e = clear
	}
	c := e.Content.AsMessage()
	m.Root = c.RelatesTo.GetThreadParent()
	if was := c.RelatesTo.GetReplaceID(); was != "" {
		m.Shows = was
	}
	m.Key, _ = e.Content.Raw[keyField].(string)
	m.Load, m.Revision = numberIn(e, loadField), numberIn(e, revisionField)
	return m, nil
}

func numberIn(e *event.Event, field string) int {
	n, _ := e.Content.Raw[field].(float64) // as JSON has numbers
	return int(n)
}

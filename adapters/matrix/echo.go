package matrix

import (
	"context"
	"errors"
	"fmt"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
)

// echo takes in that one of the account's own replies stands in the room. A
// homeserver that was killed in the middle of taking it may show it minutes
// later, when the reply was sent again: the latecomer is taken back.
func (s *session) echo(ctx context.Context, e *event.Event) error {
	if e.Type.Type != event.EventMessage.Type && e.Type.Type != event.EventEncrypted.Type {
		return nil
	}
	if m, err := s.store.known(ctx, e.ID); err != nil || m.ID != "" {
		return err
	}
	m, err := s.ownMessage(ctx, e)
	if err != nil || m.Key == "" {
		return err
	}
	first, err := s.store.sent(ctx, m.Key)
	if err != nil {
		return err
	}
	switch first.ID {
	case e.ID: // recorded meanwhile by who sent it
		return nil
	case "":
		return errors.Join(s.store.know(ctx, m), s.store.nowShows(ctx, m))
	}
	return s.takeBack(ctx, e, first)
}

// takeBack takes a reply back that came twice, if the first stands there.
func (s *session) takeBack(ctx context.Context, e *event.Event, first message) error {
	if _, err := s.client.GetEvent(ctx, e.RoomID, first.ID); refused(err) {
		return nil
	} else if err != nil {
		return fmt.Errorf("whether a reply stands in the room is not to be had: %w", err)
	}
	s.log.Warn("matrix: a reply came twice, the second is taken back", "room", e.RoomID, "event", e.ID)
	_, err := s.client.RedactEvent(ctx, e.RoomID, e.ID, mautrix.ReqRedact{Reason: "sent twice", TxnID: "twice" + txn(string(e.ID))})
	if err != nil && !refused(err) {
		return fmt.Errorf("reply that came twice cannot be taken back: %w", err)
	}
	return nil
}

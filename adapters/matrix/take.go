package matrix

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot"
	"presshand/bot/book"
)

// take deals with something said or done in a room.
func (s *session) take(ctx context.Context, e *event.Event) error {
	e.Type.Class = event.MessageEventType
	if e.Sender == s.client.UserID {
		return s.echo(ctx, e)
	}
	if time.Since(time.UnixMilli(e.Timestamp)) > s.cfg.MaxAge {
		return nil
	}
	if err := parse(e); err != nil {
		return err
	}
	switch e.Type {
	case event.EventEncrypted:
		return s.open(ctx, e)
	case event.EventMessage:
		return s.said(ctx, e)
	case event.EventReaction:
		return s.reacted(ctx, e)
	}
	return nil
}

// open reads an encrypted event, or keeps it until its key arrives.
func (s *session) open(ctx context.Context, e *event.Event) error {
	if err := s.store.seal(ctx, e.RoomID); err != nil || s.cipher == nil {
		return err
	}
	clear, err := s.decipher(ctx, e)
	switch {
	case errors.Is(err, errNoKey):
		return s.store.wait(ctx, e)
	case err != nil:
		return errors.Join(err, s.tellUnread(ctx, e.RoomID))
	case clear.Type.Type == event.EventMessage.Type:
		return s.said(ctx, clear)
	case clear.Type.Type == event.EventReaction.Type:
		return s.reacted(ctx, clear)
	}
	return nil
}

// decipherTries is how often an event is tried that the store of keys fails on.
const decipherTries = 10

// decipher reads an encrypted event. A failure of the store of keys is one of
// a moment, so that the event is tried again; but one that lasts while the rest
// of the store works must not hold up what waits for it for ever.
func (s *session) decipher(ctx context.Context, e *event.Event) (*event.Event, error) {
	clear, err := s.cipher.decrypt(ctx, e)
	s.deciphering.Lock()
	defer s.deciphering.Unlock()
	var ours *storeError
	if !errors.As(err, &ours) {
		delete(s.undeciphered, e.ID)
		return clear, readable(clear, err)
	}
	if s.undeciphered[e.ID]++; s.undeciphered[e.ID] < decipherTries {
		return nil, err
	}
	return nil, fmt.Errorf("store of keys fails on it: %w", ours.err)
}

// readable parses what was decrypted.
func readable(clear *event.Event, err error) error {
	if err != nil {
		return err
	}
	return parse(clear)
}

// said records a message, if it is meant for the bot.
func (s *session) said(ctx context.Context, e *event.Event) error {
	c := e.Content.AsMessage()
	if c.MsgType != event.MsgText && c.MsgType != event.MsgEmote {
		return nil // notices are other bots
	}
	was, edits, err := s.edited(ctx, c)
	if err != nil {
		return err
	}
	if edits {
		if c.NewContent == nil || !was.editableIn(e) {
			return nil
		}
		c = c.NewContent
	}
	root, err := s.rootOf(ctx, e, was)
	if err != nil {
		return err
	}
	text, meant, err := s.addressed(ctx, e, c, root)
	if err != nil || !meant && !edits {
		return err
	}
	x := book.Event{Text: text, Edits: string(was.ID)}
	if x.Extra, err = json.Marshal(envelope{Sealed: vouched(e)}); err != nil {
		return err
	}
	return s.record(ctx, e, root, x)
}

// envelope is how a message came, the extra of its event.
type envelope struct {
	bot.Gesture
	Sealed bool `json:"sealed,omitempty"`
}

// vouched reports whether a message came encrypted, from a device that its
// owner's identity vouches for: the homeserver cannot have made it up.
func vouched(e *event.Event) bool {
	return e.Mautrix.WasEncrypted && !e.Mautrix.ForwardedKeys && e.Mautrix.TrustState >= id.TrustStateCrossSignedTOFU
}

// edited returns what is known of the message that another one edits.
func (s *session) edited(ctx context.Context, c *event.MessageEventContent) (was message, edits bool, err error) {
	target := c.RelatesTo.GetReplaceID()
	if target == "" {
		return message{}, false, nil
	}
	was, err = s.store.known(ctx, target)
	return was, true, err
}

// editableIn reports whether an event may edit a message: one that was for the
// bot, of the same person in the same room. Programs can be made to send any
// event as an edit of any other.
func (m message) editableIn(e *event.Event) bool {
	return m.ID != "" && m.Key == "" && m.Room == e.RoomID && m.Sender == e.Sender
}

// rootOf returns the root of the thread that a message stands in: that of the
// message it edits, that of its thread, that of the reply that it answers, or
// the message itself.
func (s *session) rootOf(ctx context.Context, e *event.Event, was message) (id.EventID, error) {
	if was.ID != "" {
		return was.Root, nil
	}
	c := e.Content.AsMessage()
	if root := c.RelatesTo.GetThreadParent(); root != "" {
		return root, nil
	}
	if to := c.RelatesTo.GetReplyTo(); to != "" {
		m, err := s.store.known(ctx, to)
		if err != nil || m.ID != "" {
			return m.Root, err
		}
	}
	return e.ID, nil
}

// record puts an event into the inbox, then remembers where it stands. Killed
// in between, it sees the event again and the inbox knows it.
func (s *session) record(ctx context.Context, e *event.Event, root id.EventID, x book.Event) error {
	name := string(e.Sender)
	if m, err := s.store.state.TryGetMember(ctx, e.RoomID, e.Sender); err != nil {
		return ofStore(err)
	} else if m != nil && m.Displayname != "" {
		name = m.Displayname
	}
	x.Key = Service + "/" + string(e.ID)
	x.Place = book.Place{Service: Service, Room: string(e.RoomID), Thread: string(root)}
	x.Message = string(e.ID)
	x.From = s.cfg.Person(string(e.Sender), name)
	x.At = time.UnixMilli(e.Timestamp)
	fresh, err := s.inbox.Receive(ctx, x)
	if err != nil {
		return err
	}
	if fresh {
		s.seen(e.RoomID, e.ID, root)
	}
	return s.store.know(ctx, message{ID: e.ID, Room: e.RoomID, Sender: e.Sender, Root: root, Shows: e.ID})
}

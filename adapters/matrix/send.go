package matrix

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// Send shows a reply, once for each key, and returns its event.
func (s *session) Send(ctx context.Context, o book.Outgoing) (ref string, err error) {
	defer func() { err = explain(err) }()
	sheet, err := bot.SheetOf(o)
	if err != nil {
		return "", fmt.Errorf("%w: %w", desk.ErrRefused, err)
	}
	if sheet.Withdraw {
		return o.ReplacesRef, s.withdraw(ctx, o)
	}
	m, err := s.store.sent(ctx, o.Key)
	if err != nil {
		return "", err
	}
	m.Room, m.Root, m.Key, m.Sender = id.RoomID(o.Place.Room), id.EventID(o.Place.Thread), o.Key, s.client.UserID
	m.Load, m.Revision = sheet.Load, sheet.Revision
	if m.ID == "" && o.Tries > 0 {
		if m.ID, err = s.lookAgain(ctx, o); err != nil {
			return "", err
		}
	}
	if m.ID == "" {
		if m.ID, err = s.post(ctx, o, sheet, m); err != nil {
			return "", s.doubted(ctx, o.Key, err)
		}
	}
	s.answered(m.Room)
	m.Shows = m.ID
	if o.ReplacesRef != "" {
		m.Shows = id.EventID(o.ReplacesRef)
	}
	if err := s.store.know(ctx, m); err != nil {
		return "", err
	}
	if err := s.store.nowShows(ctx, m); err != nil {
		return "", err
	}
	return string(m.Shows), s.store.dropDoubt(ctx, o.Key)
}

// withdraw takes an earlier reply away.
func (s *session) withdraw(ctx context.Context, o book.Outgoing) error {
	if o.ReplacesRef == "" {
		return nil // it was never shown
	}
	_, err := s.client.RedactEvent(ctx, id.RoomID(o.Place.Room), id.EventID(o.ReplacesRef), mautrix.ReqRedact{TxnID: txn(o.Key)})
	return err
}

// post makes the event and sends it, encrypted where the room is or was.
func (s *session) post(ctx context.Context, o book.Outgoing, sheet bot.Sheet, m message) (id.EventID, error) {
	room := id.RoomID(o.Place.Room)
	sealed, err := s.isSealed(ctx, room)
	if err != nil {
		return "", err
	}
	if sealed && s.cipher == nil {
		return "", fmt.Errorf("%w: %w", desk.ErrRefused, ErrNoEncryption)
	}
	content, err := s.content(ctx, o, sheet, sealed)
	if err != nil {
		return "", err
	}
	return s.put(ctx, room, content, m, sealed)
}

// What an event of the bot holds for itself: the reply's key, so that it is
// found again, and the load that it is about, for people may react to it before
// the homeserver has said that it took it.
const (
	keyField      = "presshand.key"
	loadField     = "presshand.load"
	revisionField = "presshand.revision"
)

// put sends one event under a message's key.
func (s *session) put(ctx context.Context, room id.RoomID, c *event.MessageEventContent, m message, sealed bool) (id.EventID, error) {
	full := &event.Content{Parsed: c, Raw: map[string]any{keyField: m.Key}}
	if m.Load != 0 {
		full.Raw[loadField], full.Raw[revisionField] = m.Load, m.Revision
	}
	kind, content := event.EventMessage, any(full)
	if sealed {
		if err := s.readState(ctx, room); err != nil {
			return "", err
		}
		encrypted, err := s.cipher.encrypt(ctx, room, kind, full)
		if err != nil {
			return "", err
		}
		kind, content = event.EventEncrypted, encrypted
	} else if err := s.stillPlain(ctx, room); err != nil {
		return "", err
	}
	r, err := s.client.SendMessageEvent(ctx, room, kind, content, mautrix.ReqSendEvent{TransactionID: txn(m.Key), DontEncrypt: true})
	if err != nil {
		return "", &sendError{err}
	}
	return r.EventID, nil
}

// stillPlain asks once more, right before something is sent in clear: making it
// may have taken a while. Once sealed, it is made anew.
func (s *session) stillPlain(ctx context.Context, room id.RoomID) error {
	sealed, err := s.isSealed(ctx, room)
	if err == nil && sealed {
		return &desk.WaitError{Err: errSealedMeanwhile}
	}
	return err
}

var errSealedMeanwhile = errors.New("room was encrypted while the reply was made")

// txn is a key as it may stand in a path.
func txn(key string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune("/#%?$", r) || r <= ' ' {
			return '_'
		}
		return r
	}, key)
}

// explain tells the desk what an error of the homeserver means.
func explain(err error) error {
	var wait *desk.WaitError
	if err == nil || errors.Is(err, desk.ErrRefused) || errors.As(err, &wait) {
		return err
	}
	if wait := retryAfter(err); wait > 0 {
		return &desk.WaitError{After: wait, Err: err}
	}
	var e mautrix.HTTPError
	if errors.As(err, &e) && e.Response != nil && e.Response.StatusCode == http.StatusRequestEntityTooLarge {
		return fmt.Errorf("%w: %w", desk.ErrRefused, err)
	}
	for _, refusal := range []error{mautrix.MForbidden, mautrix.MNotFound, mautrix.MTooLarge, mautrix.MBadJSON} {
		if errors.Is(err, refusal) {
			return fmt.Errorf("%w: %w", desk.ErrRefused, err)
		}
	}
	return err
}

// retryAfter returns how long a homeserver that is asked too often wants to be
// left alone, 0 for any other error.
func retryAfter(err error) time.Duration {
	var e mautrix.HTTPError
	if !errors.As(err, &e) || !errors.Is(err, mautrix.MLimitExceeded) {
		return 0
	}
	if e.Response != nil {
		if n, err := strconv.Atoi(e.Response.Header.Get("Retry-After")); err == nil && n > 0 {
			return time.Duration(n) * time.Second
		}
	}
	if e.RespError != nil {
		if ms, ok := e.RespError.ExtraData["retry_after_ms"].(float64); ok && ms > 0 {
			return time.Duration(ms) * time.Millisecond
		}
	}
	return 4 * time.Second
}

// tellUnread says once in a room that something there cannot be read.
func (s *session) tellUnread(ctx context.Context, room id.RoomID) error {
	tell, err := s.store.tell(ctx, room)
	if err != nil || !tell {
		return err
	}
	s.show(signal{room: room, unread: true})
	return nil
}

func (s *session) sayUnread(ctx context.Context, room id.RoomID) error {
	c := &event.MessageEventContent{MsgType: event.MsgNotice, Body: unreadSays, Mentions: &event.Mentions{}}
	_, err := s.put(ctx, room, c, message{Key: "unread/" + string(room)}, true)
	return err
}

const unreadSays = "I cannot read some of what was said here: its key did not reach me. Please send it again; if that does not help, verify your session."

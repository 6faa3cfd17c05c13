package matrix

import (
	"context"
	"time"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// A signal shows people that something was seen, and is being answered. It may
// get lost: nothing depends on it.
type signal struct {
	room        id.RoomID
	event, root id.EventID // seen; "" where an answer was sent
	unread      bool       // something could not be read
}

const (
	signalFor = 5 * time.Second // how long a signal may take
	typingFor = 20 * time.Second
)

func (s *session) seen(room id.RoomID, event, root id.EventID) {
	s.show(signal{room: room, event: event, root: root})
}

func (s *session) answered(room id.RoomID) { s.show(signal{room: room}) }

func (s *session) show(g signal) {
	select {
	case s.signals <- g:
	default:
	}
}

// signal sends read receipts and says when the bot is typing.
func (s *session) signal(ctx context.Context) {
	for {
		var g signal
		select {
		case <-ctx.Done():
			return
		case g = <-s.signals:
		}
		brief, done := context.WithTimeout(ctx, signalFor)
		if g.event != "" {
			s.debug("receipt", s.client.SendReceipt(brief, g.room, g.event, event.ReceiptTypeRead, receiptFor(g.event, g.root)))
		}
		if g.unread {
			s.debug("unread", s.sayUnread(brief, g.room))
		} else {
			_, err := s.client.UserTyping(brief, g.room, g.event != "", typingFor)
			s.debug("typing", err)
		}
		done()
	}
}

// receiptFor is the body of a read receipt: it names the thread of what was
// read. The root of a thread does not count as in it.
func receiptFor(event, root id.EventID) map[string]string {
	if event == root {
		return map[string]string{}
	}
	return map[string]string{"thread_id": string(root)}
}

func (s *session) debug(what string, err error) {
	if err != nil {
		s.log.Debug("matrix: signal not sent", "signal", what, "error", err)
	}
}

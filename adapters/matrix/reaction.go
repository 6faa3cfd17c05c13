package matrix

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"maunium.net/go/mautrix/event"

	"presshand/bot"
	"presshand/bot/book"
)

// gestures says what a reaction to a reply about a load stands for. None of
// them checks a load: a homeserver can make a reaction up. A tick asks for
// what was measured.
var gestures = map[string]string{
	"✋": "hold %d", "⏸": "hold %d", "🛑": "hold %d",
	"▶": "clear %d",
	"📥": "%d in", "⏬": "%d in",
	"📤": "%d out", "⏫": "%d out",
	"✅": "%d looks fine", "✔": "%d looks fine", "👍": "%d looks fine",
}

// gestureOf drops what only says how a sign is drawn: as a picture, in a tone
// of skin.
func gestureOf(sign string) (phrase string, ok bool) {
	sign = strings.Map(func(r rune) rune {
		if r == 0xFE0F || r >= 0x1F3FB && r <= 0x1F3FF {
			return -1
		}
		return r
	}, sign)
	phrase, ok = gestures[sign]
	return phrase, ok
}

// reacted records a reaction to a reply about a load as the phrase that it
// stands for.
func (s *session) reacted(ctx context.Context, e *event.Event) error {
	to := e.Content.AsReaction().RelatesTo
	phrase, ok := gestureOf(to.Key)
	if !ok {
		return nil
	}
	m, err := s.store.known(ctx, to.EventID)
	if err != nil || m.Key == "" || m.Load == 0 || m.Room != e.RoomID {
		return err
	}
	x := book.Event{Text: fmt.Sprintf(phrase, m.Load)}
	if x.Extra, err = json.Marshal(envelope{Gesture: bot.Gesture{Load: m.Load, Revision: m.Revision}}); err != nil {
		return err
	}
	return s.record(ctx, e, m.Root, x)
}

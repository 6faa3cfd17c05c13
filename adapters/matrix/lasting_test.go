//go:build goolm

package matrix

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
)

// What the inbox did not take while the bot ran comes again when it is started
// the next time: the place in the stream is saved after the inbox.
func TestSession_placeAfterTheInbox(t *testing.T) {
	s, _ := setUp(t)
	healthy := s.store
	full := &fullStore{Store: healthy}
	s.store = full
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	eventually(t, func() string {
		if full.refused.Load() < 2 {
			return "message does not come again"
		}
		return ""
	})
	s.shut(t)
	s.store = healthy
	s.start(t)
	ana.answer(t, room, s.user(), root, 1)
}

// A fullStore takes no event.
type fullStore struct {
	book.Store
	refused atomic.Int64
}

func (f *fullStore) Receive(context.Context, book.Event, time.Time, int) (bool, error) {
	f.refused.Add(1)
	return false, fmt.Errorf("no room: %w", book.ErrFull)
}

// When the press time is up, who put the load in is told, by a pill, in the
// load's thread.
func TestAccount_reminder(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, ben := newHand(t, "ana"), newHand(t, "ben")
	room := meet(t, ana, ben, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	for i, saying := range []struct {
		who  *hand
		text string
	}{{ana, "post it"}, {ben, "1 checked, bar 1 in, strips 1/4"}, {ben, "1 in"}} {
		saying.who.ask(t, room, root, saying.text)
		ana.answer(t, room, s.user(), root, i+2)
	}
	s.ahead.Store(int64(12 * time.Hour))
	e := ana.answer(t, room, s.user(), root, 5)
	c := e.Content.AsMessage()
	if !e.Mautrix.WasEncrypted || c.Mentions == nil || !slices.Equal(c.Mentions.UserIDs, []id.UserID{ben.UserID}) {
		t.Errorf("reminder came encrypted: %v, and mentions %+v; want %s", e.Mautrix.WasEncrypted, c.Mentions, ben.UserID)
	}
	if !strings.HasPrefix(c.FormattedBody, pill(ben.UserID, "ben")) || !strings.HasPrefix(c.Body, "ben: ") {
		t.Errorf("body %q, HTML %q", c.Body, c.FormattedBody)
	}
}

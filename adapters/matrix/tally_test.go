//go:build goolm

package matrix

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
)

// A conversation is what people said to the bot in a room, and what became of
// it, as one of them sees it and as the bot's book has it.
type conversation struct {
	hand *hand
	room id.RoomID
	bot  id.UserID
	said []id.EventID
	book book.Store
}

func bookAt(t testing.TB, at string) book.Store {
	t.Helper()
	s, err := openBook(t.Context(), at)
	must(t, err)
	t.Cleanup(func() { must(t, s.Close()) })
	return s
}

const (
	// queued is how much of people's messages, and how much of the bot's, a
	// homeserver that loses its queue may lose with it.
	queued = 3
	// waitForTwins is how long an answer that comes twice is waited for.
	waitForTwins = 3 * time.Second
)

// answeredOnce waits until each message that people said was answered, what
// they said among it, and sees that none was answered twice. What a homeserver
// that was killed shows late, people said too. No bot can help what it accepted
// and lost.
func (c *conversation) answeredOnce(t testing.TB, limit time.Duration) {
	t.Helper()
	within(t, limit, func() string {
		if n := c.tally(t); n.working || max(len(n.ofPeople), len(n.ofBot)) > queued*server.Emptied() {
			return n.String()
		}
		return ""
	})
	time.Sleep(waitForTwins)
	for m, n := range c.answers(t) {
		if n > 1 {
			t.Errorf("message %s was answered %d times, want once", m, n)
		}
	}
}

// answers counts the answers to each message of people that was shown.
func (c *conversation) answers(t testing.TB) map[id.EventID]int {
	out := map[id.EventID]int{}
	for _, e := range c.hand.messages(c.room) {
		m := e.Content.AsMessage()
		switch {
		case e.Type.Type != event.EventMessage.Type:
		case slices.Contains(c.said, e.ID):
			out[e.ID] += 0
		case e.Sender != c.bot && strings.HasPrefix(m.Body, "press, "):
			out[e.ID] += 0
		case e.Sender == c.bot:
			out[m.RelatesTo.GetReplyTo()]++
			if !e.Mautrix.WasEncrypted {
				t.Errorf("answer %s came in clear", e.ID)
			}
		}
	}
	return out
}

// A tally is what is missing of a conversation.
type tally struct {
	working  bool         // the bot has not answered all that it got
	ofPeople []id.EventID // said, accepted, and never shown to people or to the bot
	ofBot    []id.EventID // answered, the answer accepted and never shown
}

func (n tally) String() string {
	out := fmt.Sprintf("%d messages of people %s and %d answers of the bot %s", len(n.ofPeople), n.ofPeople, len(n.ofBot), n.ofBot)
	if n.working {
		out += ", and the bot is not done"
	}
	return out
}

func (c *conversation) tally(t testing.TB) (n tally) {
	t.Helper()
	shown := c.answers(t)
	for _, m := range c.said {
		if _, ok := shown[m]; !ok {
			n.ofPeople = append(n.ofPeople, m)
		}
	}
	d, err := c.book.Depth(t.Context())
	n.working = err != nil || d.Inbox+d.Outbox > 0
	for m, answers := range shown {
		if answers > 0 {
			continue
		}
		switch _, err := c.book.Reply(t.Context(), book.Place{Service: Service, Room: string(c.room)}, string(m)); {
		case errors.Is(err, book.ErrNotFound):
			n.ofPeople = append(n.ofPeople, m)
		case err != nil:
			n.working = true
		default:
			n.ofBot = append(n.ofBot, m)
		}
	}
	return n
}

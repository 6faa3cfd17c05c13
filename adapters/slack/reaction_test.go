package slack_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"presshand/adapters/slack/slackfake"
	"presshand/bot/book"
)

// A slowStore is slow to keep which messages are cards.
type slowStore struct{ book.Store }

func (s slowStore) SetMark(ctx context.Context, name, place string) error {
	if strings.HasPrefix(name, "slack:card:") {
		time.Sleep(600 * time.Millisecond)
	}
	return s.Store.SetMark(ctx, name, place)
}

// People react to what they see, before it is known to be sent. It counts, and
// is acknowledged at once.
func TestSlack_earlyReaction(t *testing.T) {
	t.Parallel()
	o := quick()
	o.Retries = []time.Duration{0}
	s := newShop(t, o)
	s.store = slowStore{s.store}
	s.open().connected()
	thread := s.ask(strips)
	s.answers(thread, 1)
	s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Thread: thread, Text: "post it"})
	s.eventually("not posted", func() bool { return len(s.Thread(s.room, thread)) == 2 })
	s.React(s.room, s.Thread(s.room, thread)[1].TS, s.ben, "raised_hand", true)
	s.answers(thread, 3)
	if s.load().State != book.Held {
		t.Errorf("load is %s, want it held", s.load().State)
	}
	if at := s.Traffic(); len(at.Lost) > 0 {
		t.Errorf("%d events were given up, want all acknowledged in time", len(at.Lost))
	}
}

// A reaction to what is no load is acknowledged at once as well.
func TestSlack_reactionToNoLoad(t *testing.T) {
	o := quick()
	o.Retries = []time.Duration{0}
	s := newShop(t, o).open().connected()
	got := s.answers(s.ask("what is a caul"), 1)[0]
	s.React(s.room, got.TS, s.ben, "raised_hand", true)
	s.still()
	if at := s.Traffic(); len(at.Lost) > 0 {
		t.Errorf("%d events were given up, want the reaction acknowledged in time", len(at.Lost))
	}
}

// A home that Slack is slow to take holds no channel up.
func TestSlack_slowHome(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Fail("views.publish", slackfake.Fault{Times: 100, RetryAfter: 20 * time.Second})
	s.Deliver(map[string]any{"type": "app_home_opened", "user": s.ana, "channel": s.room, "tab": "home", "event_ts": "1.2"})
	s.answers(s.ask("what is a caul"), 1)
}

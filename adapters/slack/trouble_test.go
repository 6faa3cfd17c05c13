package slack_test

import (
	"context"
	"errors"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"presshand/adapters/slack"
	"presshand/adapters/slack/slackfake"
	"presshand/bot/book"
)

// A token that Slack will never take again ends the process, and says so.
func TestSlack_tokenRefusedAtStart(t *testing.T) {
	for _, code := range []string{"invalid_auth", "not_authed", "account_inactive", "token_revoked", "token_expired"} {
		s := newShop(t, quick())
		s.Fail("auth.test", slackfake.Fault{Times: 1000, Error: code})
		ctx, cancel := context.WithTimeout(t.Context(), 5*time.Second)
		err := slack.New(s.conf, nil, s.store).Run(ctx)
		cancel()
		if err == nil || !strings.Contains(err.Error(), code) || !strings.Contains(err.Error(), "make a new one") {
			t.Errorf("with %s serving ended with %v, want to be told of the token", code, err)
		}
	}
}

func TestSlack_invitedOnce(t *testing.T) {
	s := newShop(t, quick())
	other := s.Channel("elsewhere")
	s.conf.Allowed = func(room string) bool { return room != other }
	s.open().connected()
	for _, at := range []string{"1.2", "1.2", "1.3"} {
		s.Deliver(map[string]any{"type": "member_joined_channel", "user": slackfake.BotUser, "channel": other, "inviter": s.ana, "event_ts": at})
	}
	s.still()
	if n := len(s.Messages(other)); n != 2 {
		t.Errorf("%d notes for two invitations, one of them told twice; want 2", n)
	}
}

// Marks are put off for as long as Slack says.
func TestSlack_markLimited(t *testing.T) {
	t.Parallel()
	s := newShop(t, quick()).open().connected()
	s.Fail("reactions.add", slackfake.Fault{RetryAfter: time.Minute})
	s.answers(s.ask("what is a caul"), 1)
	s.eventually("not marked", func() bool { return s.Calls("reactions.add") == 1 })
	s.answers(s.ask("what is a caul"), 1)
	time.Sleep(1500 * time.Millisecond) // marks come every 1.2 s
	if n := s.Calls("reactions.add"); n != 1 {
		t.Errorf("%d marks were tried, want to wait", n)
	}
}

// A flaky store cannot be read for a while.
type flaky struct {
	book.Store
	fails atomic.Bool
}

func (f *flaky) Load(ctx context.Context, room string, n int) (book.Load, error) {
	if f.fails.Load() {
		return book.Load{}, errors.New("store cannot be reached")
	}
	return f.Store.Load(ctx, room, n)
}

func (f *flaky) Mark(ctx context.Context, name string) (string, error) {
	if f.fails.Load() {
		return "", errors.New("store cannot be reached")
	}
	return f.Store.Mark(ctx, name)
}

func TestSlack_formWithoutStore(t *testing.T) {
	s := newShop(t, quick())
	f := &flaky{Store: s.store}
	s.store = f
	s.open().connected()
	thread, card := s.posted()
	f.fails.Store(true)
	s.click(card, s.ben, "check")
	s.eventually("nobody is told that no form opens", func() bool {
		m := s.Thread(s.room, thread)
		got := m[len(m)-1]
		return got.Private == s.ben && strings.Contains(got.Text, "form could not be opened") && strings.Contains(got.Text, "1 checked, bar …")
	})
}

// A button counts whatever stands beside it. What makes no sense at all is not
// acknowledged, so that Slack tells who pressed it.
func TestSlack_buttonAmongUnknownBlocks(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	thread, card := s.posted()
	press := func(envelope, value string, channel any) {
		s.Send(map[string]any{"type": "interactive", "envelope_id": envelope, "accepts_response_payload": true, "payload": map[string]any{
			"type": "block_actions", "user": map[string]any{"id": s.ben}, "channel": channel, "trigger_id": "t.1",
			"message":   map[string]any{"type": "message", "ts": card, "thread_ts": thread, "blocks": []any{map[string]any{"type": "section", "text": 7}}},
			"container": map[string]any{"type": "message", "message_ts": card, "channel_id": s.room, "thread_ts": thread},
			"actions":   []any{map[string]any{"action_id": "hold", "block_id": "load", "value": value, "type": "button", "action_ts": "1772608000.000002"}},
		}})
	}
	press("env-senseless", "1:1", 7)
	press("env-good", "1:1", map[string]any{"id": s.room})
	s.answers(thread, 3)
	if got := s.load().State; got != book.Held || !s.Acked("env-good") || s.Acked("env-senseless") {
		t.Errorf("load is %s, want it held, and the good button alone acknowledged", got)
	}
}

package slack_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"presshand/adapters/slack/slackfake"
	"presshand/bot/book"
)

// A gate is an inbox that can stand still, or fail.
type gate struct {
	to     func(context.Context, book.Event) (bool, error)
	closed atomic.Bool
	fails  atomic.Bool
	called atomic.Int64
}

func (g *gate) Receive(ctx context.Context, e book.Event) (bool, error) {
	g.called.Add(1)
	if g.fails.Load() {
		return false, errors.New("no space left")
	}
	for g.closed.Load() {
		select {
		case <-ctx.Done():
			return false, ctx.Err()
		case <-time.After(5 * time.Millisecond):
		}
	}
	return g.to(ctx, e)
}

func gated(t *testing.T) (*shop, *gate) {
	s, g := newShop(t, quick()), &gate{}
	g.to = func(ctx context.Context, e book.Event) (bool, error) { return s.desk.Receive(ctx, e) }
	s.inbox = g
	return s.open().connected(), g
}

// What could not be recorded is not acknowledged, so that it comes again.
func TestSlack_inboxFails(t *testing.T) {
	s, g := gated(t)
	g.fails.Store(true)
	ts := s.ask(strips)
	s.eventually("the event did not come again", func() bool { return g.called.Load() >= 3 }) // a mention is two events
	if n := s.Traffic().Acknowledged; n > 0 {
		t.Errorf("%d events were acknowledged, want none", n)
	}
	g.fails.Store(false)
	s.answers(ts, 1)
}

// While the consumer stands still the socket stays alive; everything is
// answered once afterwards.
func TestSlack_stalledConsumer(t *testing.T) {
	s, g := gated(t)
	g.closed.Store(true)
	var asked []string
	for range 120 { // more than the library's channel of 50 holds
		asked = append(asked, s.ask("what is a caul"))
	}
	time.Sleep(1200 * time.Millisecond) // longer than a socket may go without a ping
	if at := s.Traffic(); !s.slack.Connected() || at.Open != 1 || at.Opened != 1 {
		t.Error("the socket was lost while the consumer stood still")
	}
	g.closed.Store(false)
	for _, ts := range asked {
		s.answers(ts, 1)
	}
}

func TestSlack_droppedSocket(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	var asked []string
	for i := range 30 {
		asked = append(asked, s.ask("what is a caul"))
		if i%7 == 3 {
			s.DropSockets()
		}
	}
	for _, ts := range asked {
		s.answers(ts, 1)
	}
	if s.slack.Reconnects() == 0 {
		t.Error("no reconnect was counted")
	}
}

func TestSlack_disconnect(t *testing.T) {
	for _, reason := range []string{"warning", "refresh_requested", "too_many_websockets"} {
		s := newShop(t, quick()).open().connected()
		s.Disconnect(reason)
		s.eventually("no new socket", func() bool { return s.Traffic().Opened == 2 && s.slack.Connected() })
		s.answers(s.ask(strips), 1)
	}
}

// A peer that never pings is dead, whatever TCP says.
func TestSlack_silentSocket(t *testing.T) {
	o := quick()
	o.Silent = true
	s := newShop(t, o).open()
	s.eventually("a silent socket was kept", func() bool { return s.Traffic().Opened >= 2 })
	s.answers(s.ask(strips), 1)
}

func TestSlack_socketsRefused(t *testing.T) {
	s := newShop(t, quick())
	s.Fail("apps.connections.open", slackfake.Fault{Times: 2, Error: "internal_error"})
	s.Fail("socket", slackfake.Fault{Times: 1, Status: 503})
	s.open().connected()
	s.answers(s.ask(strips), 1)
}

func TestSlack_webAPIDownAtStart(t *testing.T) {
	s := newShop(t, quick())
	s.Fail("auth.test", slackfake.Fault{Status: 502})
	s.Fail("users.list", slackfake.Fault{Times: 3, Cut: true})
	s.open().connected()
	s.answers(s.ask(strips), 1)
}

// Retries keep the event's id; a mention comes as two events. None is answered
// twice, none is dropped for being a retry.
func TestSlack_redelivery(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	ts := s.ask(strips)
	for range 3 {
		s.Redeliver(s.room, ts)
	}
	s.answers(ts, 1)
	s.open().connected() // what was answered before a restart too
	s.Redeliver(s.room, ts)
	s.answers(ts, 1)
}

// An event that was sent while no socket was open comes as a retry only.
func TestSlack_firstHeardAsRetry(t *testing.T) {
	s := newShop(t, quick())
	ts := s.ask(strips)
	s.open()
	s.answers(ts, 1)
}

func TestSlack_unknownEnvelopes(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Deliver(map[string]any{"type": "subteam_members_changed_again", "event_ts": "1.2"})
	s.Deliver(map[string]any{"type": "message", "channel": 7, "text": []int{1}})
	s.Send(map[string]any{"type": "weather", "envelope_id": "env-x", "payload": map[string]any{}})
	s.Send("no object at all")
	s.eventually("an unknown event was not acknowledged", func() bool { return s.Traffic().Acknowledged >= 2 })
	s.eventually("an unknown envelope was not acknowledged", func() bool { return s.Acked("env-x") })
	// a part that the library cannot read must not lose the message
	ts := s.ask(strips)
	s.answers(ts, 1)
	s.mentionWith(t, map[string]any{"blocks": []any{map[string]any{"type": "section", "text": 7}}})
}

func (s *shop) mentionWith(t *testing.T, extra map[string]any) {
	t.Helper()
	ts := s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Text: "nothing to do with it"})
	e := map[string]any{"type": "app_mention", "channel": s.room, "user": s.ana, "text": slackfake.Mention + " what is a caul", "ts": ts, "event_ts": ts}
	for k, v := range extra {
		e[k] = v
	}
	s.Deliver(e)
	s.answers(ts, 1)
}

func TestSlack_rateLimited(t *testing.T) {
	t.Parallel()
	s := newShop(t, quick()).open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Times: 2, RetryAfter: time.Second})
	before := time.Now()
	s.answers(s.ask(strips), 1)
	if waited := time.Since(before); waited < 2*time.Second {
		t.Errorf("sent after %v, want to wait one second twice as told", waited)
	}
	if n := s.Calls("conversations.replies"); n > 0 {
		t.Errorf("looked %d times for a reply that was surely not sent", n)
	}
}

// The stand-in refuses a second message within the second; the adapter must
// never let it come to that.
func TestSlack_pace(t *testing.T) {
	o := quick()
	o.Pace = 300 * time.Millisecond
	s := newShop(t, o)
	s.conf.Pace = 300 * time.Millisecond
	s.open().connected()
	var asked []string
	for range 6 {
		asked = append(asked, s.ask("what is a caul"))
	}
	for _, ts := range asked {
		s.answers(ts, 1)
	}
	if wrong := s.Overstepped(); len(wrong) > 0 {
		t.Errorf("sent too fast: %v", wrong)
	}
}

// Slack took the message and the answer got lost: the metadata tells.
func TestSlack_answerLost(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Times: 1, Lost: true})
	s.answers(s.ask(strips), 1)
	if s.Calls("chat.postMessage") != 1 {
		t.Errorf("posted %d times, want once", s.Calls("chat.postMessage"))
	}
	s.Fail("chat.postMessage", slackfake.Fault{Times: 2, Cut: true})
	s.Fail("conversations.replies", slackfake.Fault{Times: 1, Status: 500})
	s.answers(s.ask(strips), 1)
}

// A doubtful reply stays doubtful while its channel's turn is waited for.
func TestSlack_answerLostAndPaced(t *testing.T) {
	o := quick()
	o.Pace = 300 * time.Millisecond
	s := newShop(t, o)
	s.conf.Pace = o.Pace
	s.open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Times: 1, Lost: true})
	s.answers(s.ask(strips), 1)
}

func TestSlack_serverErrors(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Times: 1, Status: 503})
	s.Fail("chat.postMessage", slackfake.Fault{Times: 1, Error: "fatal_error"})
	s.answers(s.ask(strips), 1)
}

// A channel that the bot was thrown out of holds nothing else up.
func TestSlack_channelGone(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Times: 1, Error: "not_in_channel"})
	ts := s.ask(strips)
	s.answers(ts, 0)
	s.answers(s.ask(strips), 1)
}

// Of a doubtful reply into a thread that was deleted nothing is there.
func TestSlack_threadGone(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Cut: true})
	s.Fail("conversations.replies", slackfake.Fault{Times: 1000, Error: "thread_not_found"})
	s.answers(s.ask(strips), 1)
}

// What Slack answers with an error again and again holds its channel up for an
// hour, not for ever.
func TestSlack_errorThatStays(t *testing.T) {
	var ahead atomic.Int64
	s := newShop(t, quick())
	s.conf.Clock = func() time.Time { return time.Now().Add(time.Duration(ahead.Load())) }
	s.open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Times: 1000, Error: "team_access_not_granted"})
	s.ask(strips)
	s.eventually("it is not tried again", func() bool { return s.Calls("chat.postMessage") >= 3 })
	gone := func() int {
		d, err := s.store.Depth(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		return d.DeadOutbox
	}
	if n := gone(); n > 0 {
		t.Fatalf("%d replies were given up at once", n)
	}
	ahead.Store(int64(time.Hour))
	s.eventually("it is tried for ever", func() bool { return gone() == 1 })
}

func TestSlack_blocksRefused(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Times: 1, Error: "invalid_blocks"})
	got := s.answers(s.ask(strips), 1)[0]
	if !strings.Contains(got.Text, "Read as 5 strips") || len(got.Blocks) > 0 {
		t.Errorf("sent %q with blocks %s, want the words alone", got.Text, got.Blocks)
	}
}

func TestSlack_alreadyReacted(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Fail("reactions.add", slackfake.Fault{Times: 1, Error: "already_reacted"})
	ts := s.ask(strips)
	s.answers(ts, 1)
	s.eventually("the message was not marked", func() bool { return s.Calls("reactions.add") > 0 })
	second := s.ask(strips)
	s.answers(second, 1)
	s.eventually("the second message was not marked as seen", func() bool {
		for _, m := range s.Messages(s.room) {
			if m.TS == second && len(m.Reactions) == 1 && m.Reactions[0] == "eyes" {
				return true
			}
		}
		return false
	})
}

// An upload that fails half way is made again; the words come once and first.
func TestSlack_uploadFails(t *testing.T) {
	t.Parallel()
	for name, fault := range map[string]struct {
		method string
		f      slackfake.Fault
	}{
		"no address":         {"files.getUploadURLExternal", slackfake.Fault{Error: "internal_error"}},
		"limited":            {"files.getUploadURLExternal", slackfake.Fault{RetryAfter: time.Second}},
		"cut half way":       {"upload", slackfake.Fault{Cut: true}},
		"refused":            {"upload", slackfake.Fault{Status: 500}},
		"not completed":      {"files.completeUploadExternal", slackfake.Fault{Status: 503}},
		"completed unheard":  {"files.completeUploadExternal", slackfake.Fault{Lost: true}},
		"completed, limited": {"files.completeUploadExternal", slackfake.Fault{RetryAfter: time.Second}},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := newShop(t, quick())
			s.draw = true
			s.open().connected()
			s.Fail(fault.method, fault.f)
			ts := s.ask(strips)
			s.eventually("no picture", func() bool { return len(s.Thread(s.room, ts)) >= 2 })
			got := s.answers(ts, 2)
			if got[0].File != "" || got[1].Alt == "" || got[1].Bytes == 0 || got[1].Thread != ts {
				t.Errorf("thread shows %+v, want words and then a picture with an alt text", got)
			}
		})
	}
}

func TestSlack_ackOnItsSocket(t *testing.T) {
	s, g := gated(t)
	g.closed.Store(true)
	ts := s.ask(strips)
	s.eventually("not delivered", func() bool { return g.called.Load() > 0 })
	s.DropSockets()
	s.eventually("no new socket", func() bool { return s.Traffic().Opened == 2 })
	g.closed.Store(false)
	s.answers(ts, 1)
	if n := s.Traffic().Stray; n > 0 {
		t.Errorf("%d acknowledgements went to a socket that does not know the event", n)
	}
}

func field(t *testing.T, raw json.RawMessage, path ...string) any {
	t.Helper()
	var v any
	if err := json.Unmarshal(raw, &v); err != nil {
		t.Fatalf("%s: %v", raw, err)
	}
	for _, p := range path {
		m, ok := v.(map[string]any)
		if !ok {
			t.Fatalf("%s has no %s", raw, fmt.Sprint(path))
		}
		v = m[p]
	}
	return v
}

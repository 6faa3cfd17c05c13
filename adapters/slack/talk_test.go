package slack_test

import (
	"bytes"
	"errors"
	"log/slog"
	"strings"
	"sync"
	"testing"
	"time"

	"presshand/adapters/slack"
	"presshand/adapters/slack/slackfake"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// sly is what somebody types to have the bot call a channel or set words in
// bold.
const sly = "<!channel> & *x*"

// What is typed comes back as it was typed, in no markup, wherever it is shown.
func TestSlack_showsNoMarkup(t *testing.T) {
	s := echoing(t)
	ts := s.ask(slackfake.Typed(sly))
	wantPlain(t, s.answers(ts, 1)[0])
	s.Edit(s.room, ts, slackfake.Mention+" again "+slackfake.Typed(sly))
	s.eventually("not edited", func() bool { return strings.Contains(s.Thread(s.room, ts)[0].Text, "again") })
	wantPlain(t, s.answers(ts, 1)[0])

	outside := s.Channel("outside")
	s.Leave(outside)
	if _, err := s.Command(outside, s.ana, "/press", slackfake.Typed(sly)); err != nil {
		t.Fatal(err)
	}
	s.eventually("no answer outside", func() bool { return len(s.Messages(outside)) == 1 })
	got := s.Messages(outside)[0]
	if words := slackfake.TextOf(got.Blocks); !strings.Contains(words, sly) || strings.Contains(string(got.Blocks), "mrkdwn") || strings.Contains(got.Text, "<") {
		t.Errorf("outside it shows %q and blocks %s, want what was typed, without markup", got.Text, got.Blocks)
	}
}

// wantPlain wants a message to show what was typed, and to call nobody.
func wantPlain(t *testing.T, m slackfake.Message) {
	t.Helper()
	if !strings.Contains(m.Text, slackfake.Typed(sly)) || strings.Contains(m.Text, "<") || m.Mrkdwn || !strings.Contains(slackfake.TextOf(m.Blocks), sly) {
		t.Errorf("shows %q (read as markup: %v) and blocks %s, want what was typed, plain", m.Text, m.Mrkdwn, m.Blocks)
	}
}

// Notes to one person are plain as well, whatever they tell of.
func TestSlack_notesShowNoMarkup(t *testing.T) {
	s := newShop(t, quick())
	other := s.Channel("elsewhere")
	s.conf.Allowed = func(room string) bool { return room != other }
	s.open().connected()
	thread, card := s.posted()
	s.Fail("views.open", slackfake.Fault{Error: sly})
	s.click(card, s.ben, "check")
	s.eventually("nobody is told that no form opens", func() bool { return s.last(thread).Private == s.ben })
	if got := s.last(thread); !strings.Contains(got.Text, slackfake.Typed(sly)) || strings.Contains(got.Text, "<") || got.Mrkdwn {
		t.Errorf("the note shows %q (read as markup: %v)", got.Text, got.Mrkdwn)
	}
	s.Deliver(map[string]any{"type": "member_joined_channel", "user": slackfake.BotUser, "channel": other, "inviter": s.ana, "event_ts": "1.2"})
	s.eventually("the inviter is not told", func() bool { return len(s.Messages(other)) == 1 })
	if got := s.Messages(other)[0]; got.Mrkdwn || got.Private != s.ana {
		t.Errorf("the note to the inviter is %+v, want it plain and private", got)
	}
}

// Each reaction that says something is understood, with every tone of skin.
func TestSlack_everyReaction(t *testing.T) {
	for _, c := range []struct {
		from  string
		names []string
		want  book.State
	}{
		{"", []string{"raised_hand", "hand", "octagonal_sign", "double_vertical_bar", "raised_hand::skin-tone-6"}, book.Held},
		{"hold 1", []string{"arrow_forward", "vertical_traffic_light"}, book.Posted},
		{"1 checked, bar 1 in, strips 1/4", []string{"inbox_tray"}, book.Pressing},
		{"1 in anyway", []string{"outbox_tray"}, book.Taken},
		{"", []string{"white_check_mark", "+1", "eyes"}, book.Posted},
	} {
		for _, name := range c.names {
			s := newShop(t, quick()).open().connected()
			thread, card := s.posted()
			if c.from != "" {
				s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Thread: thread, Text: c.from})
				card = s.answers(thread, 3)[2].TS
			}
			before := s.load().State
			s.React(s.room, card, s.ben, name, true)
			s.still()
			if c.want != before {
				s.eventually(name+" says nothing", func() bool { return s.load().State == c.want })
			}
			if got := s.load().State; got != c.want {
				t.Errorf("after %s the load is %s, want %s", name, got, c.want)
			}
			s.stop()
		}
	}
}

// A channel that Slack wants left alone is left alone by every reply, and no
// other is.
func TestSlack_limitHoldsTheChannel(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	other := s.Channel("other")
	send := func(key, room string) error {
		_, err := s.slack.Send(t.Context(), book.Outgoing{Key: key, Place: book.Place{Service: slack.Service, Room: room}, Text: key, At: time.Now()})
		return err
	}
	s.Fail("chat.postMessage", slackfake.Fault{RetryAfter: time.Minute})
	for _, key := range []string{"first", "second"} {
		var wait *desk.WaitError
		if err := send(key, s.room); !errors.As(err, &wait) || wait.After < 50*time.Second {
			t.Errorf("%s is answered %v, want to wait a minute", key, err)
		}
	}
	if n := s.Calls("chat.postMessage"); n != 1 {
		t.Errorf("%d messages were tried, want the first alone", n)
	}
	if err := send("third", other); err != nil {
		t.Errorf("another channel waits too: %v", err)
	}
}

// A message that has the mark already is no failure.
func TestSlack_markedAlready(t *testing.T) {
	t.Parallel()
	var text safeText
	s := newShop(t, quick())
	s.conf.Log = slog.New(slog.NewTextHandler(&text, &slog.HandlerOptions{Level: slog.LevelDebug}))
	s.open().connected()
	s.Fail("reactions.add", slackfake.Fault{Error: "already_reacted"})
	s.answers(s.ask(strips), 1)
	s.eventually("not marked", func() bool { return s.Calls("reactions.add") == 1 })
	s.Fail("reactions.add", slackfake.Fault{Error: "too_many_reactions"})
	s.answers(s.ask(strips), 1)
	s.eventually("a failure is not told", func() bool { return strings.Contains(text.String(), "too_many_reactions") })
	if strings.Contains(text.String(), "already_reacted") {
		t.Errorf("log tells of a failure that is none:\n%s", text.String())
	}
}

// A safeText is written and read at once.
type safeText struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (s *safeText) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.Write(p)
}

func (s *safeText) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.String()
}

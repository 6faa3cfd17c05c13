package slack_test

import (
	"strings"
	"testing"

	"presshand/adapters/slack/slackfake"
)

// A channel that the bot comes into is told once what it is for, though the
// event comes twice; that somebody else came is none of its business.
func TestSlack_arrives(t *testing.T) {
	s := newShop(t, quick())
	s.open().connected()
	here := s.Channel("press-room")
	for _, who := range []string{s.ana, slackfake.BotUser, slackfake.BotUser} {
		s.Deliver(map[string]any{"type": "member_joined_channel", "user": who, "channel": here, "inviter": s.ana, "event_ts": "1.2"})
	}
	s.eventually("the channel was not told", func() bool { return len(s.Messages(here)) > 0 })
	ts := s.Say(slackfake.Saying{Channel: here, User: s.ana, Text: slackfake.Mention + " " + strips})
	s.eventually("no answer", func() bool { return len(s.Thread(here, ts)) == 1 })
	told := 0
	for _, m := range s.Messages(here) {
		if strings.Contains(m.Text, "pressing wood under vacuum") {
			told++
			if m.Thread != "" || m.Private != "" {
				t.Errorf("welcome is said to %q in thread %q, want it said to all in the channel", m.Private, m.Thread)
			}
		}
	}
	if told != 1 {
		t.Errorf("the welcome is said %d times, want once", told)
	}
}

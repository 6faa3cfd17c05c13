package slack_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"presshand/adapters/slack/slackfake"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// A parrot answers with what is written to it.
type parrot struct{ desk.Handler }

func (parrot) Answer(_ context.Context, e book.Event) (book.Outcome, error) {
	o := book.Outgoing{Text: e.Text, At: e.At, Message: e.Message}
	if e.Edits != "" {
		o.Message, o.Replaces = e.Edits, "slack:"+e.Place.Room+":"+e.Edits+"#0"
	}
	return book.Outcome{Replies: []book.Outgoing{o}}, nil
}

// echoing is a shop that answers with what is asked.
func echoing(t *testing.T) *shop {
	s := newShop(t, quick())
	s.handler = parrot{}
	return s.open().connected()
}

// Words that Slack does not take for a message that is changed are cut where
// blocks show them whole.
func TestSlack_editToLongWords(t *testing.T) {
	s := echoing(t)
	ts := s.ask("short")
	first := s.answers(ts, 1)[0]
	long := strings.TrimSpace(strings.Repeat("a < b & c ", 390))
	s.Edit(s.room, ts, slackfake.Mention+" "+slackfake.Typed(long))
	s.eventually("the answer was not changed", func() bool { return s.Thread(s.room, ts)[0].Text != first.Text })
	got := s.answers(ts, 1)[0]
	if words := strings.ReplaceAll(slackfake.TextOf(got.Blocks), "\n", ""); words != long {
		t.Errorf("blocks show %d characters, want all %d", len(words), len(long))
	}
	if !strings.HasSuffix(got.Text, " …") || len([]rune(got.Text)) > 4000 || len([]rune(got.Text)) < 3990 {
		t.Errorf("words are %d characters, want them cut to 4000", len([]rune(got.Text)))
	}
	if wrong := s.Overstepped(); len(wrong) > 0 {
		t.Errorf("oversteps Slack's limits: %v", wrong)
	}
}

// What is too long for blocks too is posted anew, once, and the earlier message
// says so.
func TestSlack_editToMoreThanBlocksHold(t *testing.T) {
	s := echoing(t)
	ts := s.ask("short")
	first := s.answers(ts, 1)[0]
	s.Fail("chat.postMessage", slackfake.Fault{Lost: true})
	long := strings.TrimSpace(strings.Repeat("word ", 4000))
	s.Edit(s.room, ts, slackfake.Mention+" "+long)
	s.eventually("nothing was posted anew", func() bool { return len(s.Thread(s.room, ts)) >= 2 })
	got := s.answers(ts, 2)
	if got[0].TS != first.TS || !strings.Contains(got[0].Text, "further down") || len(slackfake.TextOf(got[0].Blocks)) > 0 {
		t.Errorf("the earlier answer shows %q and blocks %s, want to be sent on", got[0].Text, got[0].Blocks)
	}
	if got[1].Text != long || got[1].Thread != ts {
		t.Errorf("the new answer has %d characters in thread %s, want all %d in %s", len(got[1].Text), got[1].Thread, len(long), ts)
	}
	if wrong := s.Overstepped(); len(wrong) > 0 {
		t.Errorf("oversteps Slack's limits: %v", wrong)
	}
}

// Blocks that Slack refuses are left out, however they are sent.
func TestSlack_editBlocksRefused(t *testing.T) {
	for _, code := range []string{"invalid_blocks", "invalid_blocks_format", "msg_blocks_too_long", "msg_too_long"} {
		s := echoing(t)
		ts := s.ask("short")
		s.answers(ts, 1)
		s.Fail("chat.update", slackfake.Fault{Error: code})
		s.Edit(s.room, ts, slackfake.Mention+" shorter")
		s.eventually("the edit was lost to "+code, func() bool {
			m := s.Thread(s.room, ts)
			return m[len(m)-1].Text == "shorter"
		})
		s.still()
	}
}

// A note to one person goes out plain as well.
func TestSlack_privateBlocksRefused(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	thread, card := s.posted()
	own, _ := s.form(card, s.ana)
	s.Fail("chat.postEphemeral", slackfake.Fault{Error: "msg_blocks_too_long"})
	s.submit(own, s.ana, `{"bar_height_mm":"1 in","strip_thickness_mm":"1/4"}`)
	if got := s.last(thread); got.Private != s.ana || !strings.Contains(got.Text, "someone else has to measure") || len(got.Blocks) > 0 {
		t.Errorf("shows %+v, want the words to ana alone", got)
	}
}

// pictures counts the pictures that a thread shows.
func (s *shop) pictures(ts string) (n int) {
	for _, m := range s.Thread(s.room, ts) {
		if m.File != "" {
			n++
		}
	}
	return n
}

// An upload whose end is unheard replaces the earlier picture all the same.
func TestSlack_editPictureUnheard(t *testing.T) {
	t.Parallel()
	s := newShop(t, quick())
	s.draw = true
	s.open().connected()
	ts := s.ask(strips)
	before := s.answers(ts, 2)[1].File
	s.Fail("files.completeUploadExternal", slackfake.Fault{Lost: true})
	s.Edit(s.room, ts, slackfake.Mention+" "+strings.Replace(strips, "5 strips", "6 strips", 1))
	s.eventually("the edit was not answered", func() bool { return strings.Contains(s.Thread(s.room, ts)[0].Text, "6 strips") })
	s.still()
	if got := s.answers(ts, 2)[1].File; got == "" || got == before {
		t.Errorf("the thread shows picture %q, want another than %q", got, before)
	}
}

// A picture that Slack is slow to show is not sent twice, however old the
// message that it answers is, and whoever tries again.
func TestSlack_pictureShownLate(t *testing.T) {
	t.Parallel()
	for name, dies := range map[string]bool{"goes on": false, "dies": true} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			o := quick()
			o.ShareAfter = time.Second
			s := newShop(t, o)
			s.draw = true
			s.open().connected()
			s.Fail("files.getUploadURLExternal", slackfake.Fault{RetryAfter: 4 * time.Second}) // the message is old by then
			s.Fail("files.completeUploadExternal", slackfake.Fault{Lost: true})
			ts := s.ask(strips)
			s.eventually("no upload", func() bool { return s.Calls("files.completeUploadExternal") > 0 })
			if dies {
				s.open().connected()
			}
			s.eventually("no picture", func() bool { return s.pictures(ts) > 0 })
			s.still()
			s.answers(ts, 2)
			if n := s.Calls("files.completeUploadExternal"); n != 1 {
				t.Errorf("%d uploads, want one", n)
			}
		})
	}
}

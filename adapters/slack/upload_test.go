package slack_test

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"presshand/adapters/slack/slackfake"
)

// gone waits until nothing waits any more, and sees that n replies are given up.
func (s *shop) gone(n int) {
	s.t.Helper()
	s.still()
	d, err := s.store.Depth(s.t.Context())
	if err != nil || d.DeadOutbox != n {
		s.t.Errorf("%d replies are given up (%v), want %d", d.DeadOutbox, err, n)
	}
}

// A picture that Slack never takes holds no words up, and is given up after a
// while; after a refusal at once.
func TestSlack_uploadFailsForEver(t *testing.T) {
	t.Parallel()
	const address, upload, complete = "files.getUploadURLExternal", "upload", "files.completeUploadExternal"
	for name, c := range map[string]struct {
		method string
		f      slackfake.Fault
		atOnce bool
	}{
		"no scope":          {address, slackfake.Fault{Error: "missing_scope"}, true},
		"switched off":      {address, slackfake.Fault{Error: "file_uploads_disabled"}, true},
		"not to be shown":   {complete, slackfake.Fault{Error: "missing_scope"}, true},
		"Slack's trouble":   {address, slackfake.Fault{Error: "internal_error"}, false},
		"server's trouble":  {address, slackfake.Fault{Status: 500}, false},
		"bytes not taken":   {upload, slackfake.Fault{Status: 503}, false},
		"cut":               {upload, slackfake.Fault{Cut: true}, false},
		"never completed":   {complete, slackfake.Fault{Status: 500}, false},
		"limited for a day": {address, slackfake.Fault{RetryAfter: 24 * time.Hour}, false},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := newShop(t, quick())
			s.draw = true
			s.open().connected()
			c.f.Times = 1_000_000
			s.Fail(c.method, c.f)
			for _, text := range []string{strips, "what is a caul", "what is a sled"} {
				ts := s.ask(text)
				s.eventually("no answer", func() bool { return len(s.Thread(s.room, ts)) == 1 })
			}
			if !c.atOnce {
				s.eventually("no picture that the words passed", func() bool {
					d, err := s.store.Depth(t.Context())
					return err == nil && d.Outbox == 1
				})
			}
			if c.f.RetryAfter > 0 {
				return
			}
			if !c.atOnce {
				s.upload = time.Nanosecond
				s.open().connected()
			}
			s.gone(1)
			if n := s.Calls(c.method); c.atOnce && n != 1 {
				t.Errorf("tried %d times, want once", n)
			}
		})
	}
}

// Slack takes no more than 1000 characters in the place of a picture.
func TestSlack_altText(t *testing.T) {
	t.Parallel()
	s := newShop(t, quick())
	s.draw = true
	s.open().connected()
	ts := s.ask("44 panels 24x48, three presses, start 7:30, pva at 65f")
	alt := s.answers(ts, 2)[1].Alt
	if n := utf8.RuneCountInString(alt); n < 500 || n > 1000 || !strings.HasSuffix(alt, ". …") {
		t.Errorf("alt text has %d characters and ends in %q, want up to 1000 and whole sentences", n, alt[max(0, len(alt)-40):])
	}
	if wrong := s.Overstepped(); len(wrong) > 0 {
		t.Errorf("oversteps Slack's limits: %v", wrong)
	}
}

// A room that wants no pictures gets none, also after a restart.
func TestSlack_picturesOff(t *testing.T) {
	t.Parallel()
	s := newShop(t, quick())
	s.draw = true
	s.open().connected()
	s.answers(s.ask(strips), 2)
	s.answers(s.ask("no pictures here please"), 1)
	s.open().connected()
	s.answers(s.ask(strips), 1)
	s.answers(s.ask("pictures on"), 1)
	s.answers(s.ask(strips), 2)
}

package slack_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"presshand/adapters/slack/slackfake"
	"presshand/bot/book"
)

func TestSlack_outage(t *testing.T) {
	o := quick()
	o.Retries = []time.Duration{0} // Slack gives up soon; what is missed must be read
	s := newShop(t, o).open().connected()
	thread := s.ask(strips)
	s.answers(thread, 1)
	aside := s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Text: "lunch?"})
	changed := s.ask("what is a caul")
	s.answers(changed, 1)
	talk := s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Text: "which bar?"})
	s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Thread: talk, Text: "the 1 in one"})
	s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Thread: talk, Text: slackfake.Mention + " what is a bar"})
	s.answers(talk, 1)
	s.stop()
	missed := s.ask("what is a sled")
	direct := s.Direct(s.ben)
	inDirect := s.Say(slackfake.Saying{Channel: direct, User: s.ben, Text: "what is a mat"})
	below := s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Thread: thread, Text: "make it oak"})
	late := s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Thread: aside, Text: slackfake.Mention + " what is a bag"})
	s.Edit(s.room, changed, slackfake.Mention+" what is a fence")
	s.eventually("Slack still tries", func() bool { return s.Traffic().Waiting == 0 })
	s.open().connected()
	s.eventually("what was missed is not answered", func() bool { return len(s.Thread(s.room, missed)) == 1 && len(s.Thread(s.room, thread)) == 2 })
	s.answers(thread, 2)
	s.answers(aside, 1)
	s.answers(talk, 1) // what was said there before the bot was named is not for it
	if got := s.answers(changed, 1)[0].Text; !strings.Contains(got, "fence") {
		t.Errorf("the edit was missed: %s", got)
	}
	if n := len(s.Thread(direct, inDirect)); n != 1 || below == late {
		t.Errorf("%d answers to the direct message, want 1", n)
	}
	s.open().connected()
	s.answers(missed, 1)
}

// An outage of a process that lives on is caught up with as well, though the
// history can be read only at the second try.
func TestSlack_outageWhileAlive(t *testing.T) {
	var ahead atomic.Int64
	o := quick()
	o.Retries = []time.Duration{0}
	clock := func() time.Time { return time.Now().Add(time.Duration(ahead.Load())) }
	o.Clock = clock
	s := newShop(t, o)
	s.conf.Clock, s.conf.Again = clock, 50*time.Millisecond
	s.open().connected()
	s.answers(s.ask(strips), 1)
	s.Refuse(true)
	s.eventually("a socket is open", func() bool { return !s.slack.Connected() })
	missed := s.ask("what is a sled")
	s.eventually("Slack still tries", func() bool { return s.Traffic().Waiting == 0 })
	ahead.Store(int64(10 * time.Minute))
	s.Fail("conversations.history", slackfake.Fault{Error: "fatal_error"})
	s.Fail("users.conversations", slackfake.Fault{Status: 502})
	s.Refuse(false)
	s.eventually("what was missed is not answered", func() bool { return len(s.Thread(s.room, missed)) == 1 })
	s.answers(missed, 1)
}

// The library gives up where it takes the app for gone.
func TestSlack_gone(t *testing.T) {
	s := newShop(t, quick())
	s.conf.Again = 50 * time.Millisecond
	s.Fail("apps.connections.open", slackfake.Fault{Error: "account_inactive"})
	s.Fail("apps.connections.open", slackfake.Fault{Status: 404})
	s.open().connected()
	s.answers(s.ask(strips), 1)
}

// What is older than an hour is left alone after an outage.
func TestSlack_outageTooOld(t *testing.T) {
	var ahead atomic.Int64
	o := quick()
	o.Retries = []time.Duration{0}
	clock := func() time.Time { return time.Now().Add(time.Duration(ahead.Load())) }
	o.Clock = clock
	s := newShop(t, o)
	s.conf.Clock = clock
	s.open().connected()
	s.answers(s.ask(strips), 1)
	s.stop()
	old := s.ask("what is a sled")
	s.given(1)
	ahead.Store(int64(2 * time.Hour))
	young := s.ask("what is a mat")
	s.open().connected()
	s.answers(young, 1)
	s.answers(old, 0)
}

// What was said before the bot was first here is none of its business.
func TestSlack_firstStart(t *testing.T) {
	o := quick()
	o.Retries = []time.Duration{0}
	s := newShop(t, o)
	old := s.ask(strips)
	s.eventually("Slack still tries", func() bool { return s.Traffic().Waiting == 0 })
	s.open().connected()
	s.answers(s.ask(strips), 1)
	s.answers(old, 0)
}

// A process that dies between two steps leaves nothing undone or done twice.
func TestSlack_killed(t *testing.T) {
	s := newShop(t, quick())
	s.conf.Pace = 20 * time.Millisecond
	s.open().connected()
	var asked []string
	for range 5 {
		for range 4 {
			asked = append(asked, s.ask("what is a caul"))
		}
		s.open()
	}
	for _, ts := range asked {
		s.answers(ts, 1)
	}
}

// given waits until Slack has given up n events that nobody acknowledged.
func (s *shop) given(n int) {
	s.t.Helper()
	s.eventually("Slack still tries", func() bool { return s.Traffic().Waiting == 0 && len(s.Traffic().Lost) >= n })
}

// The store can stand still for longer than Slack tries, with the socket open
// all the while: what Slack gave up is read from the history.
func TestSlack_inboxFailsForLong(t *testing.T) {
	t.Parallel()
	s, g := gatedFor(t, time.Millisecond)
	s.answers(s.ask(strips), 1)
	g.fails.Store(true)
	ts := s.ask("what is a sled")
	s.given(2) // a mention is two events
	g.fails.Store(false)
	s.answers(ts, 1)
	if at := s.Traffic(); at.Opened != 1 {
		t.Errorf("%d sockets were opened, want the first to last", at.Opened)
	}
	s.answers(s.ask("what is a mat"), 1)
}

// The same over a death: the time of what was left is not lost.
func TestSlack_inboxFailsUntilDeath(t *testing.T) {
	t.Parallel()
	s, g := gatedFor(t, time.Hour)
	var ahead atomic.Int64
	s.conf.Clock = func() time.Time { return time.Now().Add(time.Duration(ahead.Load())) }
	s.open().connected()
	s.answers(s.ask(strips), 1)
	g.fails.Store(true)
	ts := s.ask("what is a sled")
	s.given(2)
	ahead.Store(int64(10 * time.Minute))
	before := g.called.Load()
	s.eventually("what was left was not tried", func() bool { return g.called.Load() > before })
	g.fails.Store(false)
	s.open().connected()
	s.answers(ts, 1)
}

// What finds no room to wait in is read as well.
func TestSlack_tooMuchWaits(t *testing.T) {
	s, g := gatedFor(t, time.Millisecond)
	g.closed.Store(true)
	var asked []string
	for range 160 { // two events each
		asked = append(asked, s.ask("what is a caul"))
	}
	s.given(10)
	g.closed.Store(false)
	for _, ts := range asked {
		s.answers(ts, 1)
	}
}

// gatedFor is a shop with a gate, and a Slack that soon gives up.
func gatedFor(t *testing.T, again time.Duration) (*shop, *gate) {
	o := quick()
	o.Retries = []time.Duration{0}
	s, g := newShop(t, o), &gate{}
	s.conf.Again = again
	g.to = func(ctx context.Context, e book.Event) (bool, error) { return s.desk.Receive(ctx, e) }
	s.inbox = g
	return s.open().connected(), g
}

// What came shortly before the last moment that is known to be good may not
// have been acknowledged: it is read again.
func TestSlack_outageOverlap(t *testing.T) {
	o := quick()
	o.Retries = []time.Duration{0}
	s := newShop(t, o).open().connected()
	s.answers(s.ask(strips), 1)
	s.stop()
	missed := s.ask("what is a sled")
	s.given(2)
	alive := slackfake.Time(missed).Add(time.Minute)
	if err := s.store.SetMark(t.Context(), "slack:alive", fmt.Sprintf("%d.000000", alive.Unix())); err != nil {
		t.Fatal(err)
	}
	s.open().connected()
	s.answers(missed, 1)
}

// After an outage every kind of conversation is read, page by page. Those that
// the token may not list or read hold the others up no more than those that
// Slack fails on.
func TestSlack_outageEverywhere(t *testing.T) {
	without := func(scope string) []string {
		return slices.DeleteFunc(scopeNames(), func(s string) bool { return s == scope })
	}
	for name, c := range map[string]struct {
		scopes []string
		fault  slackfake.Fault
		missed string // the kind that is not read
	}{
		"all may be read":     {scopes: scopeNames()},
		"one kind not listed": {scopes: without("groups:read"), missed: "private"},
		"one kind not read":   {scopes: without("mpim:history"), missed: "group"},
		"Slack has a trouble": {scopes: scopeNames(), fault: slackfake.Fault{Error: "internal_error"}},
	} {
		t.Run(name, func(t *testing.T) {
			o := quick()
			o.Retries, o.Page, o.Scopes = []time.Duration{0}, 2, c.scopes
			s := newShop(t, o)
			s.conf.Again = 10 * time.Millisecond
			s.open().connected()
			s.answers(s.ask(strips), 1)
			s.stop()
			type said struct{ kind, room, ts string }
			var all []said
			for i := range 3 {
				for kind, room := range map[string]string{
					"public": s.Channel(fmt.Sprint("tops-", i)), "private": s.Private(fmt.Sprint("office-", i)),
					"group": s.Group(fmt.Sprint("us-", i)), "direct": s.Direct(s.User(fmt.Sprint("p", i))),
				} {
					for range 3 {
						ts := s.Say(slackfake.Saying{Channel: room, User: s.ana, Text: slackfake.Mention + " what is a caul"})
						all = append(all, said{kind, room, ts})
					}
				}
			}
			s.given(len(all))
			if c.fault != (slackfake.Fault{}) {
				s.Fail("conversations.history", c.fault)
			}
			s.open().connected()
			for _, m := range all {
				if m.kind != c.missed {
					s.eventually("not answered in "+m.kind, func() bool { return len(s.Thread(m.room, m.ts)) == 1 })
				}
			}
			s.still()
			for _, m := range all {
				if n := len(s.Thread(m.room, m.ts)); m.kind == c.missed && n > 0 {
					t.Errorf("%d answers in %s, which may not be read", n, m.kind)
				}
			}
		})
	}
}

// A channel that Slack never gives out, or whose history cannot be read, is left
// after some tries; the others are read, and Slack is then left alone.
func TestSlack_outageOfOneChannelForEver(t *testing.T) {
	for name, spoil := range map[string]func(*shop){
		"Slack's trouble": func(s *shop) {
			s.FailIn(s.room, "conversations.history", slackfake.Fault{Times: 1000, Error: "internal_error"})
		},
		"garbled": func(s *shop) {
			s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Text: "x", Blocks: `[{"type":"section","text":7}]`})
		},
	} {
		t.Run(name, func(t *testing.T) {
			o := quick()
			o.Retries = []time.Duration{0}
			s := newShop(t, o)
			s.conf.Again = 10 * time.Millisecond
			s.open().connected()
			s.answers(s.ask(strips), 1)
			s.stop()
			other := s.Channel("other")
			spoil(s)
			missed := s.Say(slackfake.Saying{Channel: other, User: s.ana, Text: slackfake.Mention + " what is a caul"})
			s.given(2)
			s.open().connected()
			s.eventually("the other channel is not read", func() bool { return len(s.Thread(other, missed)) == 1 })
			s.eventually("Slack is asked for ever", func() bool {
				before := s.Calls("conversations.history")
				time.Sleep(100 * time.Millisecond)
				return s.Calls("conversations.history") == before
			})
		})
	}
}

package slack_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"presshand/adapters/slack/slackfake"
	"presshand/bot/book"
)

// posted has ana post a load; it returns the thread and the message with its
// buttons.
func (s *shop) posted() (thread, card string) {
	s.t.Helper()
	thread = s.ask(strips)
	s.answers(thread, 1)
	s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Thread: thread, Text: "post it"})
	got := s.answers(thread, 2)
	return thread, got[1].TS
}

func (s *shop) load() book.Load {
	s.t.Helper()
	l, err := s.store.Load(context.Background(), s.room, 1)
	if err != nil {
		s.t.Fatal(err)
	}
	return l
}

func (s *shop) click(ts, user, action string) {
	s.t.Helper()
	if err := s.Click(s.room, ts, user, action); err != nil {
		s.t.Fatal(err)
	}
}

// press presses a button that the message had before.
func (s *shop) press(ts, user, action string) {
	s.t.Helper()
	if err := s.Press(s.room, ts, user, action, "1:1"); err != nil {
		s.t.Fatal(err)
	}
}

func (s *shop) last(thread string) slackfake.Message {
	s.t.Helper()
	s.still()
	all := s.Thread(s.room, thread)
	return all[len(all)-1]
}

// form presses the button of the check and returns the form.
func (s *shop) form(card, user string) (id string, view json.RawMessage) {
	s.t.Helper()
	before, _ := s.Form()
	s.click(card, user, "check")
	s.eventually("no form opened", func() bool { id, view = s.Form(); return id != before })
	return id, view
}

func TestSlack_buttons(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	thread, card := s.posted()
	s.click(card, s.ben, "hold")
	s.answers(thread, 3)
	if s.load().State != book.Held {
		t.Fatalf("load is %s, want it held", s.load().State)
	}
	if got := s.Thread(s.room, thread)[1]; strings.Contains(string(got.Blocks), "actions") || !strings.Contains(string(got.Blocks), "Load 1 posted") {
		t.Errorf("the earlier message has blocks %s, want its words without buttons", got.Blocks)
	}
	s.press(card, s.ben, "hold") // from a screen that is not up to date: told to ben alone
	if got := s.last(thread); got.Private != s.ben || s.load().State != book.Held {
		t.Errorf("a second press shows %+v, want a note to ben alone", got)
	}
	s.click(s.Thread(s.room, thread)[2].TS, s.ben, "clear")
	s.answers(thread, 5)
	if s.load().State != book.Posted {
		t.Errorf("load is %s, want it posted again", s.load().State)
	}
	for _, m := range s.Thread(s.room, thread) {
		if m.Thread != thread || m.Unfurls || m.Mrkdwn {
			t.Errorf("message %+v is not in the thread, unfurls links or is read as markup", m)
		}
	}
}

// A load that is dropped, out or judged has nothing to press any more.
func TestSlack_buttonsGoWithTheLoad(t *testing.T) {
	for last, say := range map[book.State][]string{
		book.Dropped: {"drop 1"},
		book.Taken:   {"1 in anyway", "1 out"},
		book.Judged:  {"1 in anyway", "1 out", "1 result: good"},
	} {
		s := newShop(t, quick()).open().connected()
		thread, _ := s.posted()
		for i, text := range say {
			s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Thread: thread, Text: text})
			s.answers(thread, 3+i)
		}
		if got := s.load().State; got != last {
			t.Fatalf("after %v the load is %s, want %s", say, got, last)
		}
		for _, m := range s.Thread(s.room, thread) {
			if strings.Contains(string(m.Blocks), "actions") {
				t.Errorf("a %s load can be worked with below %q", last, m.Text)
			}
		}
		if updates := s.Calls("chat.update"); updates > 2 {
			t.Errorf("%s: %d messages were changed, want those with buttons", last, updates)
		}
	}
}

// The form asks for what was measured, shows no planned figure, and counts for
// its revision only.
func TestSlack_checkForm(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	thread, card := s.posted()
	id, view := s.form(card, s.ben)
	if shown := slackfake.TextOf(mustField(t, view, "blocks")); strings.ContainsAny(shown, "0123456789") || !strings.Contains(shown, "Bar height") || !strings.Contains(shown, "in inches") {
		t.Errorf("form shows %q, want it to ask for the bar height in inches, without figures", shown)
	}
	for fields, bad := range map[string]string{
		`{"bar_height_mm":"fine","strip_thickness_mm":"1/4"}`: "bar_height_mm",
		`{"bar_height_mm":"1 in"}`:                            "Measure at least two",
		`{}`:                                                  "Measure at least two",
		`{"bar_height_mm":"1 in, 1 dropped","strip_thickness_mm":"1/4"}`:    "bar_height_mm",
		`{"bar_height_mm":"1 in","strip_thickness_mm":"<!channel> 1/4 in"}`: "strip_thickness_mm",
	} {
		if answer := s.submit(id, s.ben, fields); !strings.Contains(string(answer), bad) || !strings.Contains(string(answer), `"errors"`) {
			t.Errorf("form with %s was answered %s, want an error about %s", fields, answer, bad)
		}
	}
	s.answers(thread, 2)
	if answer := s.submit(id, s.ben, `{"bar_height_mm":"1 in","strip_thickness_mm":"1/4","vacuum_kpa":"25"}`); string(answer) != "" && string(answer) != "null" {
		t.Errorf("a good form was answered %s", answer)
	}
	got := s.answers(thread, 3)[2]
	if !strings.Contains(got.Text, "agrees, checked by “ben”") || s.load().State != book.Checked {
		t.Errorf("after the form: %s, %s", s.load().State, got.Text)
	}
	s.click(got.TS, s.ben, "in")
	if got := s.last(thread); !strings.Contains(got.Text, "went in at") || s.load().State != book.Pressing {
		t.Errorf("after the button: %s, %s", s.load().State, got.Text)
	}
	s.click(s.last(thread).TS, s.ana, "out")
	if s.last(thread); s.load().State != book.Taken {
		t.Errorf("load is %s, want it out", s.load().State)
	}
}

func (s *shop) submit(id, user, fields string) json.RawMessage {
	s.t.Helper()
	var typed map[string]string
	if err := json.Unmarshal([]byte(fields), &typed); err != nil {
		s.t.Fatal(err)
	}
	answer, err := s.Submit(id, user, typed)
	if err != nil {
		s.t.Fatal(err)
	}
	return answer
}

func mustField(t *testing.T, raw json.RawMessage, path ...string) json.RawMessage {
	t.Helper()
	b, err := json.Marshal(field(t, raw, path...))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestSlack_checkFormRefused(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	thread, card := s.posted()
	own, _ := s.form(card, s.ana)
	s.submit(own, s.ana, `{"bar_height_mm":"1 in","strip_thickness_mm":"1/4"}`)
	if got := s.last(thread); got.Private != s.ana || !strings.Contains(got.Text, "someone else has to measure") {
		t.Errorf("own check shows %+v, want a note to ana alone", got)
	}
	stale, _ := s.form(card, s.ben)
	s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Thread: thread, Text: "correction to 1: 3/4 bar"})
	s.answers(thread, 4)
	answer := s.submit(stale, s.ben, `{"bar_height_mm":"3/4 in","strip_thickness_mm":"1/4"}`)
	if says := field(t, answer, "errors", "bar_height_mm"); !strings.Contains(fmt.Sprint(says), "at revision 2 now") {
		t.Errorf("a form of an earlier revision is answered %s, want an error on its first field", answer)
	}
	if s.answers(thread, 4); s.load().State != book.Posted {
		t.Errorf("load is %s, want it posted still", s.load().State)
	}
	before, _ := s.Form()
	s.press(card, s.ben, "check")
	s.eventually("nobody was told that the button is outdated", func() bool {
		m := s.Thread(s.room, thread)
		got := m[len(m)-1]
		return got.Private == s.ben && strings.Contains(got.Text, "use the buttons of its last message")
	})
	if after, _ := s.Form(); after != before {
		t.Error("the button of an earlier revision opened a form")
	}
	s.press(card, s.ben, "hold")
	if got := s.last(thread); !strings.Contains(got.Text, "changed since") || s.load().State != book.Posted {
		t.Errorf("a button of an earlier revision shows %+v, state %s", got, s.load().State)
	}
}

// An edit replaces the words in place and the picture by another.
func TestSlack_editWithPicture(t *testing.T) {
	s := newShop(t, quick())
	s.draw = true
	s.open().connected()
	ts := s.ask(strips)
	before := s.answers(ts, 2)
	s.Edit(s.room, ts, slackfake.Mention+" "+strings.Replace(strips, "5 strips", "6 strips", 1))
	s.eventually("the picture was not replaced", func() bool {
		now := s.Thread(s.room, ts)
		return len(now) == 2 && now[1].File != "" && now[1].File != before[1].File
	})
	now := s.answers(ts, 2)
	if now[0].TS != before[0].TS || !strings.Contains(now[0].Text, "6 strips") || now[1].Alt == before[1].Alt {
		t.Errorf("after the edit the thread shows %+v", now)
	}
}

// An edit to a question without a picture takes the earlier one away, and a
// picture can come again.
func TestSlack_editToNoPicture(t *testing.T) {
	s := newShop(t, quick())
	s.draw = true
	s.open().connected()
	ts := s.ask(strips)
	s.answers(ts, 2)
	shows := func(words string, messages int) {
		t.Helper()
		s.eventually("the thread does not show what was asked last: "+words, func() bool {
			now := s.Thread(s.room, ts)
			return len(now) == messages && strings.Contains(now[0].Text, words)
		})
		s.answers(ts, messages)
	}
	for range 2 {
		s.Edit(s.room, ts, slackfake.Mention+" what is a caul")
		shows("caul", 1)
	}
	s.Edit(s.room, ts, slackfake.Mention+" "+strips)
	shows("5 strips", 2)
	s.Fail("files.delete", slackfake.Fault{Error: "file_deleted"}) // by hand, meanwhile
	s.Fail("files.delete", slackfake.Fault{Status: 500})
	s.Edit(s.room, ts, slackfake.Mention+" what is a mat")
	s.eventually("the edit is not answered", func() bool { return strings.Contains(s.Thread(s.room, ts)[0].Text, "mat") })
	s.still()
	if d, err := s.store.Depth(t.Context()); err != nil || d.DeadOutbox > 0 {
		t.Errorf("%+v (%v), want nothing given up", d, err)
	}
}

// What the book wrote stands; an edit says so and does nothing.
func TestSlack_editOfAnAct(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	thread, _ := s.posted()
	act := s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Thread: thread, Text: "hold 1: mat missing"})
	s.answers(thread, 3)
	s.Edit(s.room, act, "drop 1")
	s.eventually("the edit was not answered", func() bool { return strings.Contains(s.Thread(s.room, thread)[2].Text, "The book keeps what was said") })
	if s.answers(thread, 3); s.load().State != book.Held {
		t.Errorf("load is %s, want it held as before the edit", s.load().State)
	}
}

func TestSlack_home(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.OpenHome(s.ana)
	s.eventually("the home stays empty", func() bool { return len(s.Home(s.ana)) > 0 })
	shown := slackfake.TextOf(mustField(t, s.Home(s.ana), "blocks"))
	for _, want := range []string{"5 strips 2 1/4 wide", "post it", "No reaction checks a load"} {
		if !strings.Contains(shown, want) {
			t.Errorf("home lacks %q", want)
		}
	}
	if wrong := s.Overstepped(); len(wrong) > 0 {
		t.Errorf("home oversteps limits: %v", wrong)
	}
}

func TestSlack_notAllowed(t *testing.T) {
	s := newShop(t, quick())
	other := s.Channel("elsewhere")
	s.conf.Allowed = func(room string) bool { return room != other }
	s.open().connected()
	s.Deliver(map[string]any{"type": "member_joined_channel", "user": slackfake.BotUser, "channel": other, "inviter": s.ana, "event_ts": "1.2"})
	s.eventually("the inviter was not told", func() bool { m := s.Messages(other); return len(m) == 1 && m[0].Private == s.ana })
	ts := s.Say(slackfake.Saying{Channel: other, User: s.ana, Text: slackfake.Mention + " " + strips})
	if answer, err := s.Command(other, s.ana, "/press", "help"); err != nil || !strings.Contains(string(answer), "not set up for this channel") {
		t.Errorf("a command is answered %s (%v), want to be told", answer, err)
	}
	s.answers(s.ask(strips), 1)
	if n := len(s.Thread(other, ts)); n > 0 {
		t.Errorf("%d answers in a channel that is not served", n)
	}
}

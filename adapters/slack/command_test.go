package slack_test

import (
	"strings"
	"testing"

	"presshand/adapters/slack/slackfake"
)

func TestSlack_slashCommand(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	if _, err := s.Command(s.room, s.ana, "/press", strips); err != nil {
		t.Fatal(err)
	}
	s.eventually("no answer", func() bool { return len(s.Messages(s.room)) == 1 })
	s.still()
	root := s.Messages(s.room)[0]
	if root.Thread != "" || !strings.Contains(root.Text, "Read as 5 strips") {
		t.Fatalf("the command shows %+v, want an answer that begins a thread", root)
	}
	s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Thread: root.TS, Text: "make it oak"})
	if got := s.answers(root.TS, 2)[1]; !strings.Contains(got.Text, "red oak") || !strings.Contains(got.Text, "5 strips") {
		t.Errorf("the thread of the command does not go on: %s", got.Text)
	}
	s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Thread: root.TS, Text: "post it"})
	card := s.answers(root.TS, 3)[2]
	s.click(card.TS, s.ben, "hold")
	if got := s.answers(root.TS, 4)[3]; !strings.Contains(got.Text, "on hold") {
		t.Errorf("the button in the thread of the command shows %s", got.Text)
	}
	if _, err := s.Command(s.room, s.ana, "/press", ""); err != nil {
		t.Fatal(err)
	}
	s.eventually("no help", func() bool {
		all := s.Messages(s.room)
		return strings.Contains(all[len(all)-1].Text, "Tell me what is in the press")
	})
}

// A command's answer whose acknowledgement got lost is found again in the
// channel.
func TestSlack_slashCommandAnswerLost(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Fail("chat.postMessage", slackfake.Fault{Lost: true})
	if _, err := s.Command(s.room, s.ana, "/press", strips); err != nil {
		t.Fatal(err)
	}
	s.eventually("no answer", func() bool { return len(s.Messages(s.room)) >= 1 })
	s.still()
	root := s.Messages(s.room)
	if len(root) != 1 {
		t.Fatalf("%d answers, want 1", len(root))
	}
	s.Say(slackfake.Saying{Channel: s.room, User: s.ben, Thread: root[0].TS, Text: "make it oak"})
	s.answers(root[0].TS, 2)
}

// Where the bot may not post, the asker alone gets the answer.
func TestSlack_slashCommandOutside(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	s.Leave(s.room)
	if _, err := s.Command(s.room, s.ana, "/press", strips); err != nil {
		t.Fatal(err)
	}
	s.eventually("no answer", func() bool { return len(s.Messages(s.room)) == 1 })
	if got := s.Messages(s.room)[0]; got.Private != s.ana || !strings.Contains(got.Text, "Read as 5 strips") || !strings.Contains(got.Text, "/invite") {
		t.Errorf("the command shows %+v, want the answer to ana alone", got)
	}
}

// What cannot be answered begins no thread: the asker alone is told.
func TestSlack_slashCommandInVain(t *testing.T) {
	s := newShop(t, quick()).open().connected()
	for i, c := range []struct{ text, want string }{
		{"xyzzy frobnicate", "I only know about pressing wood"},
		{"how much glue", "“"},
		{"14 out", "14"},
	} {
		if _, err := s.Command(s.room, s.ana, "/press", c.text); err != nil {
			t.Fatal(err)
		}
		s.eventually("no answer to "+c.text, func() bool { return len(s.Messages(s.room)) > i })
		s.still()
		if got := s.Messages(s.room)[i]; got.Private != s.ana || got.Thread != "" || !strings.Contains(got.Text, c.want) {
			t.Errorf("%q shows %+v, want a note to ana alone with %q", c.text, got, c.want)
		}
	}
}

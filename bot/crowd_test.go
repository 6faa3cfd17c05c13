package bot_test

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"presshand/bot"
	"presshand/bot/book"
)

var seven = time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)

func say(t *testing.T, b *bot.Bot, m bot.Message) bot.Reply {
	t.Helper()
	if m.Room == "" {
		m.Room = "shop"
	}
	if m.At.IsZero() {
		m.At = seven
	}
	r, err := b.Handle(context.Background(), m)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Who says too much gets one line, then nothing.
func TestClerk_turnout(t *testing.T) {
	clerk := bot.Clerk{Bot: bot.New(bot.NewMemory()), Most: 3}
	for turnout, want := range map[book.Turnout]struct {
		replies int
		says    string
	}{
		book.Heard:    {1, "tons"},
		book.Slowed:   {1, "more than 3 messages in a minute"},
		book.Silenced: {0, ""},
	} {
		o, err := clerk.Answer(t.Context(), book.Event{
			Key: "e", Place: book.Place{Service: "test", Room: "shop", Thread: string(turnout)}, Message: "m",
			From: book.Person{ID: "ana"}, Text: "25 inHg on a 4x8", At: seven, Turnout: turnout,
		})
		if err != nil {
			t.Fatal(err)
		}
		if len(o.Replies) != want.replies || want.replies > 0 && !strings.Contains(o.Replies[0].Text, want.says) {
			t.Errorf("%s: got %d replies %.200q, want %d with %q", turnout, len(o.Replies), fmt.Sprint(o.Replies), want.replies, want.says)
		}
		if turnout == book.Slowed && (strings.Contains(o.Replies[0].Text, "\n") || o.Thread == nil) {
			t.Errorf("slowed: answered %q and thread %v, want one line and a thread that it is part of", o.Replies[0].Text, o.Thread)
		}
	}
}

// What comes to nothing is for who made a gesture or gave a command alone; what
// is said in a message is answered where it was said.
func TestClerk_privateInVain(t *testing.T) {
	clerk := bot.Clerk{Bot: bot.New(bot.NewMemory())}
	for _, extra := range []string{"", `{"user":"U1"}`} {
		want := ""
		if extra != "" {
			want = "U1"
		}
		e := book.Event{Key: "e", Place: book.Place{Service: "test", Room: "shop"}, Message: "m", From: book.Person{ID: "ana"}, At: seven, Extra: []byte(extra)}
		private := func(o book.Outcome) string {
			s, err := bot.SheetOf(o.Replies[0])
			if err != nil || len(s.Lines) == 0 {
				t.Fatalf("reply %+v: %v", o.Replies, err)
			}
			return s.Private
		}
		for text, want := range map[string]string{"xyzzy frobnicate": want, "how much glue": want, "25 inHg on a 4x8": "", "help": ""} {
			e.Text = text
			o, err := clerk.Answer(t.Context(), e)
			if err != nil {
				t.Fatal(err)
			}
			if got := private(o); got != want {
				t.Errorf("%q with extra %q is for %q alone, want %q", text, extra, got, want)
			}
		}
		if got := private(clerk.Apologise(e, errors.New("no luck"))); got != want {
			t.Errorf("an apology with extra %q is for %q alone, want %q", extra, got, want)
		}
	}
}

func TestHandle_length(t *testing.T) {
	b := bot.New(bot.NewMemory())
	question := "25 inHg on a 4x8"
	for n, long := range map[int]bool{4000: false, 4001: true} {
		text := question + strings.Repeat("é", n-len(question))
		r := say(t, b, bot.Message{From: "ana", Text: text})
		if got := strings.Contains(r.Text, "I read up to 4000"); got != long {
			t.Errorf("%d characters: says that it is too long: %v, want %v", n, got, long)
		}
		if long && (r.About != bot.Unknown || strings.Contains(r.Text, "\n") || len(r.Read) > 0) {
			t.Errorf("%d characters: about %s, reads %v and says %q, want one line", n, r.About, r.Read, r.Text)
		}
	}
}

const (
	load  = "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue"
	check = "1 checked, bar 1 in, strips 1/4, gauge 25"
)

// Who may check, by the room's policy.
func TestHandle_whoMayCheck(t *testing.T) {
	for _, c := range []struct {
		name   string
		policy book.Policy
		by     string
		want   string
	}{
		{"another person", book.Policy{}, "ben", "agrees, checked by “ben”."},
		{"the poster", book.Policy{}, "ana", "You planned load 1, so someone else has to measure it."},
		{"the poster, allowed", book.Policy{OwnCheck: true}, "ana", "their own load, which this shop allows"},
		{"not named", book.Policy{Checkers: []string{"cy"}}, "ben", "checked by one of the people named for it"},
		{"named", book.Policy{Checkers: []string{"cy"}}, "cy", "agrees, checked by “cy”."},
		{"named, but the poster", book.Policy{Checkers: []string{"ana"}}, "ana", "You planned load 1"},
	} {
		b := bot.New(bot.NewMemory())
		b.Settings = func(string) bot.Settings { return bot.Settings{Policy: c.policy} }
		say(t, b, bot.Message{Thread: "a", From: "ana", Text: load})
		say(t, b, bot.Message{Thread: "a", From: "ana", Text: "post it"})
		if r := say(t, b, bot.Message{Thread: "a", From: c.by, Text: check}); !strings.Contains(r.Text, c.want) {
			t.Errorf("%s: answered %q, want %q in it", c.name, r.Text, c.want)
		}
	}
}

// Two services give one person one id: their own load stays their own.
func TestHandle_samePersonOnTwoServices(t *testing.T) {
	b := bot.New(bot.NewMemory())
	say(t, b, bot.Message{Thread: "a", From: "ana", Name: "Ana L.", Via: "slack", Text: load})
	say(t, b, bot.Message{Thread: "a", From: "ana", Name: "Ana L.", Via: "slack", Text: "post it"})
	r := say(t, b, bot.Message{Thread: "b", From: "ana", Name: "@ana:yard", Via: "matrix", Text: check})
	if !strings.Contains(r.Text, "someone else has to measure it") {
		t.Errorf("answered %q, want it refused", r.Text)
	}
}

func TestHandle_greetings(t *testing.T) {
	b := bot.New(bot.NewMemory())
	for text, want := range map[string]string{
		"hello": "Hello. What are you pressing?", "good morning all!": "Hello.", "thanks!": "You're welcome.", "cheers mate 👍": "You're welcome.",
		"thanks for the fish": "I only know about pressing wood",
	} {
		r := say(t, b, bot.Message{From: "ana", Text: text})
		if !strings.HasPrefix(r.Text, want) || strings.Contains(r.Text, "\n") || r.About != bot.Unknown {
			t.Errorf("%q is answered %q (about %s), want one line that begins with %q", text, r.Text, r.About, want)
		}
	}
}

// Every number of a message about something else is left unused.
func TestHandle_foreignMessage(t *testing.T) {
	b := bot.New(bot.NewMemory())
	for text, numbers := range map[string][]string{
		"how many bundles of shingle for a 20x30 roof, 6/12":       {"20", "30", "6/12"},
		"how many eggs for a 9 inch cake pan, oven at 350 degrees": {"9", "350"},
		"sing me a song about 12 drummers":                         {"12"},
		"torque for lug nuts on 1/2 in studs?":                     {"1/2"},
	} {
		r := say(t, b, bot.Message{Thread: "x", From: "ana", Text: text})
		unused := strings.Join(r.Unused, " | ")
		for _, n := range numbers {
			if !strings.Contains(unused, n) {
				t.Errorf("%q: unused is %q, want %s in it", text, unused, n)
			}
		}
		if r.About != bot.Unknown || len(r.Read) > 0 || strings.Contains(r.Text, "\n") {
			t.Errorf("%q: about %s, read %v, answered %q; want unknown, nothing, one line", text, r.About, r.Read, r.Text)
		}
	}
}

package bot_test

import (
	"context"
	"encoding/json"
	"regexp"
	"strings"
	"testing"
	"time"

	"presshand/bot"
)

// dangerous is what nothing typed may become in a reply.
var dangerous = regexp.MustCompile(`<[@!#a-zA-Z/]|://|\bNaN\b|\bInf\b|%!`)

// Whatever is typed, in a thread of two messages: a valid reply, a line of
// text, nothing that pings or links, and a verdict from the closed list.
func FuzzHandle(f *testing.F) {
	for _, s := range []string{
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue", "what about 22 inches", "make it oak", "without the bar",
		"1 in or 1 1/2 bar?", "what bar for 50 psi at the far joint", "post it as <!channel> http://x.y", "1 checked, bar 1 in, strips 1/4",
		"14 in", "undo", "why", "what is a caul", "can I use a glass jar", "our press is a 4x8, 4 in opening", "stack: sled 3/4, fence 1/4, strips 5/16",
		"got 12 at 2 1/8, 9 at 3; need 48 wide", "14 panels 24x48, two presses, start 7:30, pva at 65f", "1/0 thick", "-3 wide", "1e400", "",
		"\x00\xff", "<@U1> ½ ¼ “25” inHg",
	} {
		f.Add(s, "what about 22 inches")
		f.Add("5 strips 2 wide, 1/4 thick, 1 in bar, 25 inHg", s)
	}
	at := time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)
	f.Fuzz(func(t *testing.T, first, second string) {
		b := bot.New(bot.NewMemory())
		for _, text := range []string{first, second} {
			r, err := b.Handle(context.Background(), bot.Message{Room: "shop", Thread: "1", From: "ana", Text: text, At: at})
			if err != nil {
				t.Fatalf("%q: %v", text, err)
			}
			if line := r.AppendJSON(nil); !json.Valid(line) {
				t.Errorf("%q: reply is no JSON: %s", text, line)
			}
			if r.About == "" || strings.TrimSpace(r.Text) == "" || !strings.Contains(" good care stop ask none ", " "+string(r.Verdict)+" ") {
				t.Errorf("%q: about %q, verdict %q, text %q", text, r.About, r.Verdict, r.Text)
			}
			if found := dangerous.FindString(r.Text); found != "" {
				t.Errorf("%q: reply has %q: %s", text, found, r.Text)
			}
		}
	})
}

package bot_test

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"presshand/bot"
	"presshand/bot/book"
)

// A check counts in a strict room only from a message that came sealed; in
// another room always, and what is no check always.
func TestStrictClerk_sealedChecksOnly(t *testing.T) {
	for _, c := range []struct {
		name, extra string
		strict      bool
		want        string
	}{
		{"sealed", `{"sealed":true}`, true, "agrees"},
		{"in clear", `{"sealed":false}`, true, "does not count"},
		{"nothing noted", ``, true, "does not count"},
		{"another room", ``, false, "agrees"},
	} {
		t.Run(c.name, func(t *testing.T) {
			store := bot.NewMemory()
			clerk := bot.StrictClerk{Clerk: bot.Clerk{Bot: bot.New(store)}, Demands: func(string) bool { return c.strict }}
			say := func(who, text, extra string) string {
				e := book.Event{
					Key: who + text, Place: book.Place{Service: "test", Room: "shop", Thread: "tops"}, Message: text,
					From: book.Person{ID: who, Name: who}, Text: text, Extra: json.RawMessage(extra), At: time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC),
				}
				o, err := clerk.Answer(t.Context(), e)
				if err != nil {
					t.Fatal(err)
				}
				if err := store.Record(t.Context(), o, e.At); err != nil {
					t.Fatal(err)
				}
				return o.Replies[0].Text
			}
			say("ana", "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue", "")
			if got := say("ana", "post it", ""); !strings.Contains(got, "posted") {
				t.Fatalf("a load cannot be posted in clear: %s", got)
			}
			if got := say("ben", "1 checked, bar 1 in, strips 1/4", c.extra); !strings.Contains(got, c.want) {
				t.Errorf("check is answered %q, want %q in it", got, c.want)
			}
			l, err := store.Load(t.Context(), "shop", 1)
			if err != nil || l.HasValidCheck() != (c.want == "agrees") {
				t.Errorf("load has a valid check: %v (%v)", l.HasValidCheck(), err)
			}
		})
	}
}

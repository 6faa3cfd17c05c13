package bot

import (
	"strings"
	"testing"
	"time"

	"presshand/bot/book"
)

// A room that the bot comes into is told what it answers, how it is spoken to
// and what to try; what is quoted works there.
func TestWelcome(t *testing.T) {
	for _, metric := range []bool{false, true} {
		for prefix, address := range map[string]string{"": "my name;", "press": "my name or “press,”;"} {
			b := New(NewMemory())
			b.Settings = func(string) Settings { return Settings{Metric: metric} }
			c := Clerk{Bot: b}
			if prefix != "" {
				c.Prefixes = func(string) []string { return []string{prefix} }
			}
			e := book.Event{
				Key: "came", Place: book.Place{Service: "test", Room: "loft"}, From: book.Person{ID: "ana"},
				At: time.Date(2031, 3, 4, 7, 0, 0, 0, time.UTC), Extra: Arrived(),
			}
			o, err := c.Answer(t.Context(), e)
			if err != nil || len(o.Replies) != 1 || o.Thread != nil || len(o.Entries) > 0 {
				t.Fatalf("arrival comes to %+v, %v; want one reply and nothing else", o, err)
			}
			text := o.Replies[0].Text
			if !strings.Contains(text, "pressing wood") || !strings.Contains(text, address) || strings.Count(text, "\n") > 3 {
				t.Errorf("welcome is %q, want it short and with %q", text, address)
			}
			tried := 0
			for _, q := range quotedExample.FindAllStringSubmatch(text, -1) {
				said := strings.TrimPrefix(q[1], prefix+", ")
				if q[1] == prefix+"," || prefix != "" && said == q[1] {
					continue
				}
				tried++
				answersWell(t, said, metric, replies(t, metric, ana, said)[0])
			}
			if tried != 2 {
				t.Errorf("%d things to try work, want an example and help: %s", tried, text)
			}
		}
	}
}

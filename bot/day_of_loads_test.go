package bot_test

import (
	"strings"
	"testing"
	"time"

	"presshand/bot"
)

// What is said of a load in its thread, by the people of a shop over a morning, is of
// that load, whatever else the message says.
func TestHandle_dayOfLoads(t *testing.T) {
	b := bot.New(bot.NewMemory())
	for _, said := range []struct {
		at         string
		from, text string
		want       string
	}{
		{"07:00", "ana", "5 strips 2 1/4 wide, 1/4 thick, 36 long, 1 in bar, 25 inHg, yellow glue", "Take care"},
		{"07:05", "ana", "post it as cockpit table", "posted by"},
		{"07:20", "ben", "1 is checked: bar 1 in, strips 1/4, 5 of them", "agrees"},
		{"07:22", "ben", "uncheck, I took the wrong rule", "the check is withdrawn"},
		{"07:25", "ben", "1 checked: bar 1 in, strips 1/4, 5 of them", "agrees"},
		{"07:30", "ana", "1 in", "went in at 07:30"},
		{"07:31", "ana", "oops that was 7:26", "in the press since 07:30"},
		{"07:40", "ana", "in press 2 i mean", "in the press already"},
		{"07:50", "ben", "pump tripped, its at 18 inHg", "Stop"},
		{"08:00", "ben", "anything still in", "cockpit table"},
		{"09:40", "ben", "its out, all joints tight", "came out at 09:40"},
		{"09:41", "ana", "joint 2 has a hairline", "result"},
		{"09:45", "ana", "what came out today", "cockpit table"},
		{"09:46", "ana", "whats been out today", "cockpit table"},
	} {
		at, err := time.Parse(time.RFC3339, "2026-03-04T"+said.at+":00Z")
		if err != nil {
			t.Fatal(err)
		}
		r := say(t, b, bot.Message{Thread: "t", From: said.from, Text: said.text, At: at})
		if !strings.Contains(r.Text, said.want) {
			t.Errorf("%q gets %.200q, want %q in it", said.text, r.Text, said.want)
		}
	}
}

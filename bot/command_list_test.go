package bot_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"presshand/bot"
)

// A list that leaves loads out does not give their number for that of all.
func TestHandle_listSaysThatItIsCut(t *testing.T) {
	b := bot.New(bot.NewMemory())
	at := time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)
	say := func(text string) string {
		r, err := b.Handle(context.Background(), bot.Message{Room: "r", Thread: "t", From: "ana", Text: text, At: at})
		if err != nil {
			t.Fatal(err)
		}
		return r.Text
	}
	say("5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, post it")
	for range 49 {
		say("same as 1")
	}
	if text := say("list loads"); !strings.HasPrefix(text, "50 loads:") {
		t.Errorf("of 50 it says %q", text)
	}
	say("same as 1")
	if text := say("list loads"); !strings.HasPrefix(text, "The latest 50 loads:") {
		t.Errorf("of 51 it says %q", text)
	}
	for question, want := range map[string]string{
		"how many loads are waiting for a check": "51 loads:", "last 3": "3 loads:", "loads this week": "The latest 50 loads:",
	} {
		if text := say(question); !strings.HasPrefix(text, want) {
			t.Errorf("%q gets %q, want %q", question, fmt.Sprintf("%.40s", text), want)
		}
	}
}

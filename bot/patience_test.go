package bot_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"presshand/bot"
	"presshand/grammar"
)

// longSearch wants more of a pile than can be looked through in a while.
func longSearch() bot.Message {
	var b strings.Builder
	b.WriteString("need 60 panels 350 wide, widths")
	for i := range 300 {
		fmt.Fprintf(&b, " %.2f", 40+float64(i*i*7%8000)/100)
	}
	return bot.Message{Room: "shop", Thread: "t", ID: "1", From: "ana", Text: b.String() + " mm", At: time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)}
}

// A bot that has lost patience tells the best so far, that it stopped, and what
// is not ruled out.
func TestPatience_tellsTheBestSoFar(t *testing.T) {
	b := bot.New(bot.NewMemory())
	b.Patience = time.Nanosecond
	r, err := b.Handle(context.Background(), longSearch())
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(r.Text, "I stopped looking") || len(r.Read) == 0 {
		t.Errorf("%.300s, want that it stopped looking", r.Text)
	}
}

// Who breaks off gets the best so far too, and the thread goes on from it.
func TestPatience_brokenOff(t *testing.T) {
	b := bot.New(bot.NewMemory())
	ctx, stop := context.WithCancel(context.Background())
	b.Parse = func(text string, h grammar.Habit) grammar.Phrase {
		stop()
		return grammar.Parse(text, h)
	}
	m := longSearch()
	r, err := b.Handle(ctx, m)
	if err != nil || !strings.Contains(r.Text, "I stopped looking") {
		t.Fatalf("%.300s, %v; want that it stopped looking", r.Text, err)
	}
	b.Parse = grammar.Parse
	m.ID, m.Text = "2", "make it 10 panels"
	if r, err = b.Handle(context.Background(), m); err != nil || !strings.HasPrefix(r.Text, "Good. 10 panels") {
		t.Errorf("%.300s, %v; want ten panels", r.Text, err)
	}
}

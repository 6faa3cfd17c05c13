package bot_test

import (
	"context"
	"testing"
	"time"

	"presshand/bot"
)

// One message of each kind that a shop sends most, through parser, engine and
// JSON.
func BenchmarkHandle_json(b *testing.B) {
	messages := []string{
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue",
		"how many tons on a 4x8 at 25 inHg",
		"will 24 inHg flatten 1/8 cup in 3/8 oak 5 wide",
		"how much pva for 8 panels 24x48 of 2 1/4 strips 3/4 thick",
	}
	x := bot.New(bot.NewMemory())
	at := time.Date(2026, 3, 4, 7, 0, 0, 0, time.UTC)
	var line []byte
	for i := 0; b.Loop(); i++ {
		r, err := x.Handle(context.Background(), bot.Message{Room: "shop", From: "ana", At: at, Text: messages[i%len(messages)]})
		if err != nil {
			b.Fatal(err)
		}
		line = r.AppendJSON(line[:0])
	}
}

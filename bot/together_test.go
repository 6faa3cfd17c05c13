package bot_test

import (
	"strings"
	"sync"
	"testing"

	"presshand/bot"
)

// However many take a load in at once, one of them does.
func TestHandle_manyTakeItInAtOnce(t *testing.T) {
	b := bot.New(bot.NewMemory())
	say(t, b, bot.Message{Thread: "a", From: "ana", Text: load})
	say(t, b, bot.Message{Thread: "a", From: "ana", Text: "post it"})
	say(t, b, bot.Message{Thread: "a", From: "ben", Text: check})
	people := []string{"ana", "ben", "cy", "dot", "eli", "flo"}
	replies := make([]string, len(people))
	var wg sync.WaitGroup
	for i, who := range people {
		wg.Go(func() {
			r, err := b.Handle(t.Context(), bot.Message{Room: "shop", ID: who, From: who, Text: "1 in", At: seven})
			if err != nil {
				t.Errorf("%s: %v", who, err)
			}
			replies[i] = r.Text
		})
	}
	wg.Wait()
	in, late := 0, 0
	for _, text := range replies {
		switch {
		case strings.Contains(text, "went in at 07:00"):
			in++
		case strings.Contains(text, "is in the press already"):
			late++
		}
	}
	if in != 1 || late != len(people)-1 {
		t.Errorf("%d took it in and %d came late, want 1 and %d: %q", in, late, len(people)-1, replies)
	}
}

package bottest_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"presshand/bot/bottest"
)

// Every scene in testdata/talk can be typed in a terminal by hand; in those in
// its folder clock, time passes and the bot is started anew as well.
func TestPlay_scenes(t *testing.T) {
	var files []string
	for _, pattern := range []string{"../../testdata/talk/*.txtar", "../../testdata/talk/clock/*.txtar"} {
		found, err := filepath.Glob(pattern)
		if err != nil || len(found) == 0 {
			t.Fatalf("%s finds %d scenes (%v), want some", pattern, len(found), err)
		}
		files = append(files, found...)
	}
	for _, name := range files {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			scene, err := bottest.Read(text)
			if err != nil {
				t.Fatal(err)
			}
			wrong, err := bottest.Play(context.Background(), scene)
			if err != nil {
				t.Fatal(err)
			}
			for _, w := range wrong {
				t.Error(w)
			}
		})
	}
}

// A scene that wants the wrong thing must fail, or none of them says anything.
func TestPlay_noticesWhatIsWrong(t *testing.T) {
	for _, want := range []string{"seventeen elephants", "not: unit", "about: side", "verdict: stop", "needs: species", "state: posted"} {
		scene, err := bottest.Read([]byte("A test.\n-- 07:00 ana --\nwhat units do you take\n-- bot --\n" + want + "\n"))
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasPrefix(want, "not: ") {
			scene.Turns[0].Want = []string{"not: inHg"}
		}
		wrong, err := bottest.Play(context.Background(), scene)
		if err != nil || len(wrong) != 1 {
			t.Errorf("%q: %d things are wrong (%v), want 1", want, len(wrong), err)
		}
	}
}

func TestRead_refuses(t *testing.T) {
	for name, text := range map[string]string{
		"no turns":      "A test.\n",
		"no reply":      "A test.\n-- 07:00 ana --\nhello\n",
		"empty reply":   "A test.\n-- 07:00 ana --\nhello\n-- bot --\n",
		"no time":       "A test.\n-- ana --\nhello\n-- bot --\nhello\n",
		"wrong time":    "A test.\n-- 7 ana --\nhello\n-- bot --\nhello\n",
		"wrong setting": "A test.\nweather: rain\n-- 07:00 ana --\nhello\n-- bot --\nhello\n",
	} {
		if _, err := bottest.Read([]byte(text)); err == nil {
			t.Errorf("%s: was read, want an error", name)
		}
	}
}

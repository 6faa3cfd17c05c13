package main

import (
	"errors"
	"strings"
	"testing"

	"presshand/bot/bottest"
	"presshand/testdata/talk"
)

// The demo shows a scene that is played in full: each thing said, and a reply
// that has all that the scene wants of it.
func TestDemo_isTheScene(t *testing.T) {
	text, err := talk.Scenes.ReadFile(demoScene)
	if err != nil {
		t.Fatal(err)
	}
	scene, err := bottest.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	wrong, err := bottest.Play(t.Context(), scene)
	if err != nil || len(wrong) > 0 {
		t.Fatalf("scene is not played as it is written: %v %q", err, wrong)
	}
	code, out, errs := ran(t, "", "demo")
	if code != exitOK || errs != "" {
		t.Fatalf("code %d, %q", code, errs)
	}
	rest := out
	for _, turn := range scene.Turns {
		_, after, found := strings.Cut(rest, turn.Message.From+": "+turn.Message.Text)
		if !found {
			t.Fatalf("demo lacks %q", turn.Message.Text)
		}
		rest = after
	}
	if n := strings.Count(out, "\n    "); n < len(scene.Turns) {
		t.Errorf("demo has %d lines of replies, want one or more for each of %d turns", n, len(scene.Turns))
	}
}

// A reader that goes away ends the demo with a word on stderr.
func TestDemo_brokenPipe(t *testing.T) {
	var errs strings.Builder
	code := run(t.Context(), []string{"demo"}, streams{strings.NewReader(""), broken{}, &errs})
	if code != exitFailed || !strings.Contains(errs.String(), "reply cannot be written") {
		t.Errorf("code %d, %q", code, errs.String())
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("broken pipe") }

package bot

import (
	"bytes"
	"image/png"
	"log/slog"
	"strings"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/bot/picture"
)

var noon = time.Date(2031, 3, 4, 12, 0, 0, 0, time.UTC)

// A picture that cannot be made is told to whoever runs the bot.
func TestClerk_pictureNotMade(t *testing.T) {
	var log bytes.Buffer
	c := Clerk{Log: slog.New(slog.NewTextHandler(&log, nil))}
	if p, ok := c.picture("tops", &picture.Drawing{Title: "of walnut"}); ok || p != nil {
		t.Fatalf("a drawing of no height is made: %v", p)
	}
	if said := log.String(); !strings.Contains(said, "picture not made") || !strings.Contains(said, "room=tops") || strings.Contains(said, "walnut") {
		t.Errorf("the log says %q, want the room and why, and nothing of what is drawn", said)
	}
	if _, ok := (Clerk{}).picture("tops", &picture.Drawing{}); ok {
		t.Error("a drawing of no height is made where no log is kept")
	}
}

// What is sent is light, however much is drawn, and sharp: two or three pixels
// to the point.
func TestClerk_pictureWeighsLittle(t *testing.T) {
	b := New(NewMemory())
	for _, text := range []string{
		"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, 3/4 caul",
		"got 100 at 1/4, need 20 wide",
		"got 60 at 1 1/8, 60 at 7/8, 50 at 1 3/8; need three panels 40 wide",
		"30 panels 24x48, 6 panels 12x30, start 7:30, pva at 65f",
		"44 panels 24x48, three presses, start 7:30, pva at 65f",
	} {
		r, err := b.Handle(t.Context(), Message{Room: "tops", From: "ana", Text: text})
		if err != nil {
			t.Fatal(err)
		}
		_, p, ok, err := Clerk{Bot: b}.draw(t.Context(), "tops", r)
		if !ok || err != nil {
			t.Fatalf("%q has no picture", text)
		}
		c, err := png.DecodeConfig(bytes.NewReader(p.PNG))
		if err != nil || len(p.PNG) > 120_000 || c.Width < 2*picture.Width {
			t.Errorf("%q is drawn %d pixels wide (%v) and weighs %d bytes, want at least %d and at most 120 000", text, c.Width, err, len(p.PNG), 2*picture.Width)
		}
	}
}

// What a room says of pictures counts before what is configured for it, until
// it forgets its setup; another room has its own.
func TestClerk_picturesAsSaid(t *testing.T) {
	const load = "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg"
	for _, configured := range []bool{true, false} {
		b := New(NewMemory())
		c := Clerk{Bot: b, Draw: func(string) bool { return configured }}
		for _, step := range []struct {
			said  string
			drawn bool
		}{
			{"what is a caul", configured},
			{"pictures off", false},
			{"our press is a 4x8, 4 in opening", false},
			{"pictures on", true},
			{"no pictures here please", false},
			{"reset our setup", configured},
		} {
			if _, err := b.Handle(t.Context(), Message{Room: "tops", From: "ana", Text: step.said, At: noon}); err != nil {
				t.Fatal(err)
			}
			for room, want := range map[string]bool{"tops": step.drawn, "office": configured} {
				o, err := c.Answer(t.Context(), book.Event{Key: "e", Message: "m", Place: book.Place{Service: "test", Room: room}, Text: load, At: noon})
				if err != nil {
					t.Fatal(err)
				}
				if got := len(o.Replies) == 2 && o.Replies[1].Beside; got != want {
					t.Errorf("configured %v, after %q there is a picture in %s: %v, want %v", configured, step.said, room, got, want)
				}
			}
		}
	}
}

package bot

import (
	"bytes"
	"log/slog"
	"strings"
	"testing"

	"presshand/bot/picture"
)

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

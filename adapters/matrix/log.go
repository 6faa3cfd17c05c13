package matrix

import (
	"encoding/json"
	"errors"
	"log/slog"
	"net/url"

	"github.com/rs/zerolog"
)

// quietLog passes on what mautrix warns of, without what a message says.
func quietLog(to *slog.Logger) zerolog.Logger {
	return zerolog.New(warnings{to}).Level(zerolog.WarnLevel)
}

type warnings struct{ to *slog.Logger }

// Write takes one record of zerolog, which is a JSON object.
func (w warnings) Write(record []byte) (int, error) {
	var r struct {
		Message string `json:"message"`
		Error   string `json:"error"`
		Room    string `json:"room_id"`
		Event   string `json:"event_id"`
	}
	if err := json.Unmarshal(record, &r); err == nil {
		w.to.Debug("matrix: library warns", "says", r.Message, "error", r.Error, "room", r.Room, "event", r.Event)
	}
	return len(record), nil
}

// brief leaves the address out of a request's error: it is long, and holds the
// place in the stream.
func brief(err error) error {
	var e *url.Error
	if errors.As(err, &e) {
		return e.Err
	}
	return err
}

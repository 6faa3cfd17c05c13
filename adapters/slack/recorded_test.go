package slack_test

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"presshand/adapters/slack"
	"presshand/adapters/slack/slackfake"
	"presshand/bot/book"
)

// A box is an inbox that keeps what it gets.
type box struct {
	mu  sync.Mutex
	all []book.Event
}

func (b *box) Receive(_ context.Context, e book.Event) (bool, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.all = append(b.all, e)
	return true, nil
}

func (b *box) got() []book.Event {
	b.mu.Lock()
	defer b.mu.Unlock()
	return append([]book.Event(nil), b.all...)
}

// A recorded envelope, and what the inbox must have of it.
type recorded struct {
	Envelope map[string]any
	Want     *struct {
		Key, Room, Thread, Message, Edits, From, Text, Extra string
		At                                                   *time.Time
	}
}

func TestSlack_recorded(t *testing.T) {
	files, err := filepath.Glob("../../testdata/slack/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("found %d recorded envelopes (%v), want some", len(files), err)
	}
	for _, name := range files {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".json"), func(t *testing.T) {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			var r recorded
			if err := json.Unmarshal(text, &r); err != nil {
				t.Fatal(err)
			}
			playRecorded(t, r)
		})
	}
}

// channel is where the envelope comes from.
func (r recorded) channel() string {
	payload, _ := r.Envelope["payload"].(map[string]any)
	event, _ := payload["event"].(map[string]any)
	item, _ := event["item"].(map[string]any)
	place, _ := payload["channel"].(map[string]any)
	for _, v := range []any{event["channel"], item["channel"], place["id"], payload["channel_id"]} {
		if id, ok := v.(string); ok {
			return id
		}
	}
	return ""
}

func playRecorded(t *testing.T, r recorded) {
	s, b := newShop(t, quick()), &box{}
	s.inbox = b
	s.conf.MaxAge = 24 * time.Hour
	s.open().connected()
	s.Send(r.Envelope)
	// what is said next in the same channel tells when the envelope was dealt with
	s.Deliver(map[string]any{"type": "app_mention", "channel": r.channel(), "user": s.ana, "text": slackfake.Mention + " the end", "ts": "1772608000.000001"})
	want := 1
	if r.Want != nil {
		want = 2
	}
	s.eventually("the envelope was not dealt with", func() bool { return len(b.got()) >= want })
	s.stop()
	got := b.got()
	if len(got) != want {
		t.Fatalf("inbox has %+v, want %d", got, want)
	}
	if r.Want == nil {
		return
	}
	e, w := got[0], r.Want
	wanted := book.Event{
		Key: w.Key, Place: book.Place{Service: slack.Service, Room: w.Room, Thread: w.Thread}, Message: w.Message, Edits: w.Edits,
		From: book.Person{ID: w.From}, Text: w.Text, At: e.At,
	}
	if w.At != nil {
		wanted.At = *w.At
	}
	if e.Key != wanted.Key || e.Place != wanted.Place || e.Message != wanted.Message || e.Edits != wanted.Edits || e.From != wanted.From ||
		e.Text != wanted.Text || !e.At.Equal(wanted.At) || string(e.Extra) != w.Extra {
		t.Errorf("inbox has\n%+v extra %s, want\n%+v extra %s", e, e.Extra, wanted, w.Extra)
	}
}

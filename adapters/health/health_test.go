package health_test

import (
	"context"
	"errors"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"presshand/adapters/health"
	"presshand/adapters/sqlite"
	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

func get(t *testing.T, h http.Handler, path string) (int, string) {
	t.Helper()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, path, nil))
	return w.Code, w.Body.String()
}

type service struct{ sent chan string }

func (s service) Send(_ context.Context, o book.Outgoing) (string, error) {
	s.sent <- o.Key
	return "1", nil
}

// Two questions and a word that is none of the bot's business go through a
// desk: each is counted once, under its topic.
func TestStore_countsMessages(t *testing.T) {
	kept, err := sqlite.Memory(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	defer kept.Close()
	m := health.New()
	store := m.Store(kept)
	s := service{make(chan string, 10)}
	d := &desk.Desk{
		Store: store, Handler: bot.Clerk{Bot: bot.New(store)}, Senders: map[string]desk.Sender{"chat": s},
		Worker: "test", Clock: time.Now, Poll: 5 * time.Millisecond,
	}
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan struct{})
	go func() { defer close(done); d.Run(ctx) }()
	for i, text := range []string{"25 inHg on a 4x8", "what is a caul", "zzqx table saw"} {
		id := string(rune('a' + i))
		_, err := d.Receive(ctx, book.Event{
			Key: id, Place: book.Place{Service: "chat", Room: "shop", Thread: id}, Message: id,
			From: book.Person{ID: "ana"}, Text: text, At: time.Now(),
		})
		if err != nil {
			t.Fatal(err)
		}
		<-s.sent
	}
	stop()
	<-done
	_, text := get(t, m.Handler(), "/metrics")
	for _, want := range []string{
		`presshand_messages_total{adapter="chat",topic="face"} 1`,
		`presshand_messages_total{adapter="chat",topic="words"} 1`,
		`presshand_messages_total{adapter="chat",topic="unknown"} 1`,
		`presshand_answer_seconds_count{adapter="chat"} 3`,
		`presshand_waiting{box="outbox"} 0`,
		`presshand_given_up{box="outbox"} 0`,
	} {
		if !strings.Contains(text, want+"\n") {
			t.Errorf("metrics lack %s", want)
		}
	}
	if n := strings.Count(text, "presshand_unread_words_total{adapter=\"chat\"} "); n != 1 {
		t.Errorf("metrics have %d counts of unread words, want 1", n)
	}
	if strings.Contains(text, `presshand_unread_words_total{adapter="chat"} 0`) {
		t.Error("no unread words are counted, want some of “zzqx table saw”")
	}
	if strings.Contains(text, "zzqx") {
		t.Error("metrics show what was said")
	}
}

// What waits is told even while nobody works.
func TestStore_tellsDepth(t *testing.T) {
	kept, err := sqlite.Memory(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	defer kept.Close()
	m := health.New()
	store := m.Store(kept)
	for _, id := range []string{"a", "b"} {
		if _, err := store.Receive(t.Context(), book.Event{Key: id, Place: book.Place{Service: "chat", Room: "shop"}, Text: "x"}, time.Now(), 0); err != nil {
			t.Fatal(err)
		}
	}
	if _, text := get(t, m.Handler(), "/metrics"); !strings.Contains(text, `presshand_waiting{box="inbox"} 2`+"\n") {
		t.Error("metrics do not tell that 2 messages wait")
	}
}

func TestHandler_ready(t *testing.T) {
	m := health.New()
	m.Reconnects("chat", func() int64 { return 7 })
	var down error
	m.Ready("chat", func(context.Context) error { return down })
	if code, text := get(t, m.Handler(), "/readyz"); code != http.StatusOK || text != "chat: ok\n" {
		t.Errorf("got %d %q, want 200 and chat: ok", code, text)
	}
	down = errors.New("not connected")
	if code, text := get(t, m.Handler(), "/readyz"); code != http.StatusServiceUnavailable || text != "chat: not connected\n" {
		t.Errorf("got %d %q, want 503 and the reason", code, text)
	}
	if code, _ := get(t, m.Handler(), "/healthz"); code != http.StatusOK {
		t.Errorf("alive is %d, want 200 whatever is down", code)
	}
	if _, text := get(t, m.Handler(), "/metrics"); !strings.Contains(text, `presshand_reconnects_total{adapter="chat"} 7`+"\n") {
		t.Error("metrics lack the reconnects")
	}
	if code, _ := get(t, m.Handler(), "/"); code != http.StatusNotFound {
		t.Errorf("other paths give %d, want 404", code)
	}
}

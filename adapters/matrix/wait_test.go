//go:build goolm

package matrix

import (
	"io"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"maunium.net/go/mautrix/id"
)

// tooMany answers that the homeserver is asked too often.
func tooMany(w http.ResponseWriter, seconds string) {
	w.Header().Set("Retry-After", seconds)
	w.WriteHeader(http.StatusTooManyRequests)
	_, _ = io.WriteString(w, `{"errcode":"M_LIMIT_EXCEEDED","error":"too many requests"}`)
}

// A log-in comes again only when the homeserver wants it.
func TestAccount_obeysTheLimitOfLogins(t *testing.T) {
	s, _ := setUp(t)
	s.config.Store = t.TempDir() + "/plain.db"
	g, at := newGateway(t)
	var mu sync.Mutex
	var logins []time.Time
	g.meddle(func(w http.ResponseWriter, r *http.Request) bool {
		if !strings.HasSuffix(r.URL.Path, "/login") {
			return false
		}
		mu.Lock()
		defer mu.Unlock()
		logins = append(logins, time.Now())
		if len(logins) > 1 {
			return false
		}
		tooMany(w, "2")
		return true
	})
	s.config.Homeserver = at
	s.config.RecoveryKey = "given so that serving goes on to the end"
	ended := make(chan error, 1)
	go func() { ended <- Serve(t.Context(), s.config, newDesk(s.store, "bot", false, false)) }()
	<-ended
	if len(logins) != 2 || logins[1].Sub(logins[0]) < 2*time.Second {
		t.Errorf("logged in at %v, want twice, 2 s apart", logins)
	}
}

// An invitation that cannot be taken up yet keeps no other waiting.
func TestSession_joinsWhatCanBeJoined(t *testing.T) {
	s, _ := setUp(t)
	g, at := newGateway(t)
	s.config.Homeserver = at
	ana := newHand(t, "ana")
	first := ana.room(t, false, s.user())
	g.meddle(func(w http.ResponseWriter, r *http.Request) bool {
		if !joins(r, first) {
			return false
		}
		w.WriteHeader(http.StatusBadGateway)
		return true
	})
	s.start(t)
	ana.hasJoined(t, ana.room(t, false, s.user()), s.user())
	g.meddle(nil)
	ana.hasJoined(t, first, s.user())
}

// A join comes again only when the homeserver wants it, whatever other
// invitations come.
func TestSession_obeysTheLimitOfJoins(t *testing.T) {
	s, _ := setUp(t)
	g, at := newGateway(t)
	s.config.Homeserver = at
	ana := newHand(t, "ana")
	first := ana.room(t, false, s.user())
	refused := make(chan struct{})
	var mu sync.Mutex
	var tries []time.Time
	g.meddle(func(w http.ResponseWriter, r *http.Request) bool {
		if !joins(r, "") {
			return false
		}
		mu.Lock()
		defer mu.Unlock()
		tries = append(tries, time.Now())
		if len(tries) > 1 {
			return false
		}
		close(refused)
		tooMany(w, "2")
		return true
	})
	s.start(t)
	<-refused
	ana.hasJoined(t, ana.room(t, false, s.user()), s.user())
	ana.hasJoined(t, first, s.user())
	mu.Lock()
	defer mu.Unlock()
	if waited := tries[1].Sub(tries[0]); waited < 2*time.Second {
		t.Errorf("joined again after %v, want 2 s at least", waited)
	}
}

// joins reports whether a request joins a room: "" for any.
func joins(r *http.Request, room id.RoomID) bool {
	return r.Method == http.MethodPost && strings.Contains(r.URL.Path, "/join") && strings.Contains(r.URL.Path, string(room))
}

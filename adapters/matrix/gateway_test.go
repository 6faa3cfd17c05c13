//go:build goolm

package matrix

import (
	"bytes"
	"io"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// A gateway stands between the bot and the homeserver: it notes what is asked
// and can spoil the answers to messages sent.
type gateway struct {
	http.Handler // the homeserver
	front        *httptest.Server

	mu     sync.Mutex
	typing []bool // as it was turned on and off
	sent   int
	spoil  func(n int, w http.ResponseWriter, r *http.Request) (spoiled bool) // the answer to the n-th message
	amid   func(w http.ResponseWriter, r *http.Request) (answered bool)       // any other request
}

func newGateway(t testing.TB) (*gateway, string) {
	t.Helper()
	to, err := url.Parse(server.URL)
	must(t, err)
	g := &gateway{Handler: httputil.NewSingleHostReverseProxy(to)}
	g.front = httptest.NewServer(http.HandlerFunc(g.serve))
	t.Cleanup(g.front.Close)
	return g, g.front.URL
}

func (g *gateway) serve(w http.ResponseWriter, r *http.Request) {
	switch {
	case strings.Contains(r.URL.Path, "/typing/"):
		body := bodyOf(r)
		g.mu.Lock()
		g.typing = append(g.typing, bytes.Contains(body, []byte("true")))
		g.mu.Unlock()
	case strings.Contains(r.URL.Path, "/send/m.room"):
		g.mu.Lock()
		g.sent++
		n, spoil := g.sent, g.spoil
		g.mu.Unlock()
		if spoil != nil && spoil(n, w, r) {
			return
		}
	default:
		g.mu.Lock()
		amid := g.amid
		g.mu.Unlock()
		if amid != nil && amid(w, r) {
			return
		}
	}
	g.Handler.ServeHTTP(w, r)
}

// typed reports whether typing was turned on, and off at last.
func (g *gateway) typed() bool {
	g.mu.Lock()
	defer g.mu.Unlock()
	return slices.Contains(g.typing, true) && !g.typing[len(g.typing)-1]
}

// bodyOf reads a request's body, and puts it back.
func bodyOf(r *http.Request) []byte {
	body, _ := io.ReadAll(r.Body) // what is missing shows in the test
	r.Body = io.NopCloser(bytes.NewReader(body))
	return body
}

// meddle has all requests but messages and typing seen by f, which may answer
// them itself.
func (g *gateway) meddle(f func(w http.ResponseWriter, r *http.Request) (answered bool)) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.amid = f
}

// The homeserver is asked too often: its answer says how long to wait, and the
// reply comes then, once. People see the bot typing meanwhile.
func TestSession_obeysTheLimit(t *testing.T) {
	s, _ := setUp(t)
	g, at := newGateway(t)
	var refused, served time.Time
	g.spoil = func(n int, w http.ResponseWriter, _ *http.Request) bool {
		if n > 1 {
			served = time.Now()
			return false
		}
		refused = time.Now()
		w.Header().Set("Retry-After", "2")
		w.WriteHeader(http.StatusTooManyRequests)
		_, _ = io.WriteString(w, `{"errcode":"M_LIMIT_EXCEEDED","error":"too many requests","retry_after_ms":2000}`)
		return true
	}
	s.config.Homeserver = at
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	eventually(t, func() string {
		if !g.typed() {
			return "the bot was not seen typing, or still is"
		}
		return ""
	})
	s.shut(t)
	g.front.Close() // returns when its last request has ended
	if waited := served.Sub(refused); waited < 2*time.Second || g.sent != 2 {
		t.Errorf("sent %d times, again after %v; want twice, after 2 s", g.sent, waited)
	}
	if n := len(ana.replies(room, s.user(), root)); n != 1 {
		t.Errorf("%d replies, want 1", n)
	}
	if !g.typed() {
		t.Errorf("typing was turned %v, want on, and off at last", g.typing)
	}
}

// The homeserver takes a reply, is killed before it can say so, and has
// forgotten transaction ids when it comes back: the reply stands there once.
func TestSession_answerLost(t *testing.T) {
	s, _ := setUp(t)
	g, at := newGateway(t)
	emptied := server.Emptied()
	g.spoil = func(n int, w http.ResponseWriter, r *http.Request) bool {
		if n > 1 {
			return false
		}
		g.Handler.ServeHTTP(httptest.NewRecorder(), r)
		server.Kill()
		if err := server.Up(t.Context()); err != nil {
			t.Error(err)
		}
		w.WriteHeader(http.StatusBadGateway)
		return true
	}
	s.config.Homeserver = at
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	asked := time.Now()
	within(t, 2*surfaces, func() string {
		if len(ana.replies(room, s.user(), root)) == 0 {
			return "no reply"
		}
		return ""
	})
	t.Logf("the reply stood there after %v", time.Since(asked))
	s.dealtWith(t)
	next := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), next, 1)
	s.shut(t)
	g.front.Close()
	lost := server.Emptied() - emptied // a queue that is lost may have held the reply, which is then said again
	if n := len(ana.replies(room, s.user(), root)); n != 1 || g.sent < 2 || g.sent > 2+lost {
		t.Errorf("%d replies after %d messages sent, want 1 after 2 and up to %d more", n, g.sent, lost)
	}
}

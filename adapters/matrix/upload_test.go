//go:build goolm

package matrix

import (
	"net/http"
	"strings"
	"testing"
	"time"
)

// A picture that the homeserver never takes holds no words up, and is given up
// after a while; after a refusal at once.
func TestSession_uploadFailsForEver(t *testing.T) {
	for name, c := range map[string]struct {
		status int
		says   string
		atOnce bool
	}{
		"server's trouble": {http.StatusInternalServerError, `{"errcode":"M_UNKNOWN","error":"disk"}`, false},
		"behind a proxy":   {http.StatusBadGateway, "bad gateway", false},
		"too large":        {http.StatusRequestEntityTooLarge, `{"errcode":"M_TOO_LARGE","error":"large"}`, true},
		"not allowed":      {http.StatusForbidden, `{"errcode":"M_FORBIDDEN","error":"no media"}`, true},
	} {
		t.Run(name, func(t *testing.T) {
			s, _ := setUp(t)
			s.draw = true
			g, at := newGateway(t)
			s.config.Homeserver = at
			g.meddle(func(w http.ResponseWriter, r *http.Request) bool {
				if !strings.Contains(r.URL.Path, "/media/") {
					return false
				}
				w.WriteHeader(c.status)
				_, _ = w.Write([]byte(c.says))
				return true
			})
			s.start(t)
			ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
			room := meet(t, ana, zoe, s, true)
			for range 2 {
				root := ana.ask(t, room, "", "press, "+load)
				ana.answer(t, room, s.user(), root, 1)
			}
			if !c.atOnce {
				s.waiting(t, 2, 0)
				s.ahead.Store(int64(5 * time.Minute))
			}
			s.waiting(t, 0, 2)
		})
	}
}

// waiting waits until so many replies are open and so many are given up.
func (s *stand) waiting(t testing.TB, open, dead int) {
	t.Helper()
	eventually(t, func() string {
		d, err := s.store.Depth(t.Context())
		must(t, err)
		if d.Outbox != open || d.DeadOutbox != dead {
			return "replies wait, or are given up, otherwise than they should"
		}
		return ""
	})
}

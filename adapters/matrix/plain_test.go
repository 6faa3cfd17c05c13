//go:build goolm

package matrix

import (
	"net/http"
	"strings"
	"sync"
	"testing"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// Encryption is turned on while a picture is uploaded for a plain room: the
// picture is made anew and comes sealed.
func TestSession_sealedAmidAnUpload(t *testing.T) {
	s, _ := setUp(t)
	s.draw = true
	g, at := newGateway(t)
	s.config.Homeserver = at
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	s.start(t)
	room := meet(t, ana, zoe, s, false)
	var once sync.Once
	g.meddle(func(_ http.ResponseWriter, r *http.Request) bool {
		if strings.Contains(r.URL.Path, "/media/") {
			once.Do(func() { ana.seal(t, room) })
		}
		return false
	})
	root := ana.ask(t, room, "", "press, "+load)
	ana.picture(t, room, s.user(), root)
	s.shut(t)
	for _, e := range ana.replies(room, s.user(), root) {
		if c := e.Content.AsMessage(); c.MsgType == event.MsgImage && (!e.Mautrix.WasEncrypted || c.File == nil) {
			t.Errorf("picture came encrypted: %v, with an encrypted file: %v", e.Mautrix.WasEncrypted, c.File != nil)
		}
	}
}

// A room that was sealed stays so, although the homeserver denies it.
func TestSession_sealedWhateverTheHomeserverSays(t *testing.T) {
	s, _ := setUp(t)
	g, at := newGateway(t)
	s.config.Homeserver = at
	g.meddle(func(w http.ResponseWriter, r *http.Request) bool {
		if !strings.Contains(r.URL.Path, "/state/m.room.encryption") {
			return false
		}
		w.WriteHeader(http.StatusNotFound)
		_, _ = w.Write([]byte(`{"errcode":"M_NOT_FOUND","error":"no such state"}`))
		return true
	})
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	if !ana.answer(t, room, s.user(), root, 1).Mautrix.WasEncrypted {
		t.Error("reply came in clear")
	}
	s.shut(t)
	if n, err := inClear(t.Context(), ana, room); err != nil || n > 0 {
		t.Errorf("%d messages stand in clear (%v), want none", n, err)
	}
}

// seal turns encryption on in a room.
func (h *hand) seal(t testing.TB, room id.RoomID) {
	t.Helper()
	_, err := h.SendStateEvent(t.Context(), room, event.StateEncryption, "", &event.EncryptionEventContent{Algorithm: id.AlgorithmMegolmV1})
	must(t, err)
}

// picture waits for a picture in a thread.
func (h *hand) picture(t testing.TB, room id.RoomID, from id.UserID, root id.EventID) *event.MessageEventContent {
	t.Helper()
	var c *event.MessageEventContent
	eventually(t, func() string {
		for _, e := range h.replies(room, from, root) {
			if c = e.Content.AsMessage(); c.MsgType == event.MsgImage {
				return ""
			}
		}
		return "no picture"
	})
	return c
}

//go:build goolm

package matrix

import (
	"net/http"
	"strings"
	"sync"
	"testing"

	"maunium.net/go/mautrix"
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

// Nonsense in the room's state does not keep the key from being renewed when
// somebody is removed, also where there never was anything else.
func TestSession_renewsTheKey(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	for name, sealedBefore := range map[string]bool{"sealed before": true, "never sealed well": false} {
		t.Run(name, func(t *testing.T) {
			room := meet(t, ana, zoe, s, sealedBefore)
			_, err := ana.SendStateEvent(t.Context(), room, event.StateEncryption, "", map[string]any{"algorithm": "none"})
			must(t, err)
			session := func() string {
				root := ana.ask(t, room, "", "press, "+load)
				return ana.sessionOf(t, room, s.user(), root)
			}
			before := session()
			if again := session(); again != before {
				t.Fatal("the key is renewed each time, so that nothing is tested")
			}
			_, err = ana.KickUser(t.Context(), room, &mautrix.ReqKickUser{UserID: zoe.UserID})
			must(t, err)
			if session() == before {
				t.Error("who was removed can read on")
			}
		})
	}
}

// sessionOf waits for the last message of a user, sealed in a thread, and
// returns which key it was sealed with.
func (h *hand) sessionOf(t testing.TB, room id.RoomID, from id.UserID, root id.EventID) (session string) {
	t.Helper()
	eventually(t, func() string {
		r, err := h.Messages(t.Context(), room, "", "", mautrix.DirectionBackward, nil, 20)
		must(t, err)
		for _, e := range r.Chunk {
			rel, _ := e.Content.Raw["m.relates_to"].(map[string]any)
			if e.Sender == from && rel["event_id"] == string(root) {
				session, _ = e.Content.Raw["session_id"].(string)
				return ""
			}
		}
		return "no reply in the thread"
	})
	if session == "" {
		t.Fatal("reply came in clear")
	}
	return session
}

//go:build goolm

package matrix

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// Invitations are accepted by room, person or server, and declined otherwise.
func TestAccount_invitations(t *testing.T) {
	s, _ := setUp(t)
	ana, ben := newHand(t, "ana"), newHand(t, "ben")
	listed := ben.room(t, true)
	s.config.Allow = []string{string(ana.UserID), string(listed), "example.org"}
	s.start(t)
	for _, c := range []struct {
		name string
		room id.RoomID
		from *hand
		want event.Membership
	}{
		{"person", ana.room(t, true), ana, event.MembershipJoin},
		{"room", listed, ben, event.MembershipJoin},
		{"neither", ben.room(t, true), ben, event.MembershipLeave},
	} {
		_, err := c.from.InviteUser(t.Context(), c.room, &mautrix.ReqInviteUser{UserID: s.user()})
		must(t, err)
		eventually(t, func() string {
			var m event.MemberEventContent
			must(t, c.from.StateEvent(t.Context(), c.room, event.StateMember, string(s.user()), &m))
			if m.Membership != c.want {
				return fmt.Sprintf("%s: membership is %s, want %s", c.name, m.Membership, c.want)
			}
			return ""
		})
	}
}

// What was said before the bot came is not answered, nor what is too old.
func TestAccount_oldMessages(t *testing.T) {
	s, _ := setUp(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := ana.room(t, false, zoe.UserID)
	zoe.join(t, room)
	before := ana.ask(t, room, "", "press, "+load)
	s.start(t)
	_, err := ana.InviteUser(t.Context(), room, &mautrix.ReqInviteUser{UserID: s.user()})
	must(t, err)
	ana.hasJoined(t, room, s.user())
	after := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), after, 1)
	s.shut(t)
	late := ana.ask(t, room, "", "press, what is a caul")
	time.Sleep(1100 * time.Millisecond)
	s.config.MaxAge = time.Second
	s.start(t)
	time.Sleep(1100 * time.Millisecond)
	now := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), now, 1)
	s.dealtWith(t)
	for name, root := range map[string]id.EventID{"said before it came": before, "too old": late} {
		if n := len(ana.replies(room, s.user(), root)); n > 0 {
			t.Errorf("%s: answered %d times, want never", name, n)
		}
	}
}

// What was said in a direct chat before the bot had taken the invitation was
// said to it.
func TestAccount_firstDirectMessage(t *testing.T) {
	s, _ := setUp(t)
	ana := newHand(t, "ana")
	type chat struct {
		room id.RoomID
		root id.EventID
	}
	var chats []chat
	for _, encrypted := range []bool{false, true} {
		room := ana.direct(t, encrypted, s.user())
		chats = append(chats, chat{room, ana.ask(t, room, "", load)})
	}
	s.start(t)
	for _, c := range chats {
		ana.answer(t, c.room, s.user(), c.root, 1)
	}
}

// After a long time away the homeserver leaves out what is not recent; it is
// fetched, and answered once.
func TestAccount_gap(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	s.shut(t)
	missed := ana.ask(t, room, root, "make it oak")
	for i := range timelineOf + 20 {
		zoe.ask(t, room, "", fmt.Sprint("talk of the day ", i))
	}
	s.start(t)
	if got := ana.answer(t, room, s.user(), root, 2).Content.AsMessage().Body; missed == "" || !strings.Contains(got, "red oak") {
		t.Errorf("missed message is answered %q", got)
	}
}

// A key that comes late is asked for, and the message is answered then.
func TestAccount_lateKey(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	s.shut(t)
	st, err := openStore(t.Context(), s.config.Store)
	must(t, err)
	must(t, st.exec(t.Context(), `DELETE FROM crypto_megolm_inbound_session`))
	must(t, st.close())
	ana.ask(t, room, root, "make it oak")
	s.start(t)
	if got := ana.answer(t, room, s.user(), root, 2).Content.AsMessage().Body; !strings.Contains(got, "red oak") {
		t.Errorf("message whose key came late is answered %q", got)
	}
}

// A message that is never readable gets the room told so, once, sealed.
func TestAccount_tellsThatItCannotRead(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	for range 2 {
		_, err := ana.SendMessageEvent(t.Context(), room, event.EventEncrypted, map[string]any{
			"algorithm": "m.megolm.v1.aes-sha2", "ciphertext": strings.Repeat("QUJD", 40), "device_id": "GONE", "sender_key": "x",
			"session_id": strings.Repeat("a", 42),
		}, mautrix.ReqSendEvent{DontEncrypt: true})
		must(t, err)
	}
	eventually(t, func() string {
		n := 0
		for _, e := range ana.messages(room) {
			if e.Sender == s.user() && strings.HasPrefix(e.Content.AsMessage().Body, "I cannot read") {
				n++
				if !e.Mautrix.WasEncrypted {
					t.Error("told so in clear")
				}
			}
		}
		if n != 1 {
			return fmt.Sprintf("told %d times, want once", n)
		}
		return ""
	})
}

// People see the bot's name and picture, and that it read a message.
func TestAccount_profileAndReceipts(t *testing.T) {
	s, _ := setUp(t)
	s.config.Avatar = onePixel(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	g, at := newGateway(t)
	s.config.Homeserver = at
	var mu sync.Mutex
	receipts := map[string]string{} // their bodies by event
	g.meddle(func(_ http.ResponseWriter, r *http.Request) bool {
		if _, of, ok := strings.Cut(r.URL.Path, "/receipt/m.read/"); ok {
			mu.Lock()
			defer mu.Unlock()
			receipts[of] = string(bodyOf(r))
		}
		return false
	})
	s.start(t)
	read := ana.reads(s.user())
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	reply := ana.ask(t, room, root, "make it oak")
	ana.answer(t, room, s.user(), root, 2)
	eventually(t, func() string {
		if !read(root) || !read(reply) {
			return "no read receipt"
		}
		return ""
	})
	mu.Lock()
	defer mu.Unlock()
	for of, want := range map[id.EventID]string{root: `{}`, reply: `{"thread_id":"` + string(root) + `"}`} {
		if got := receipts[string(of)]; got != want {
			t.Errorf("receipt is %s, want %s", got, want)
		}
	}
	p, err := ana.GetProfile(t.Context(), s.user())
	must(t, err)
	if p.DisplayName != "Press Hand" || p.AvatarURL.IsEmpty() {
		t.Errorf("profile is %q with picture %s", p.DisplayName, p.AvatarURL)
	}
}

// reads returns what tells whether a user has read a message, as far as the
// hand's program knows.
func (h *hand) reads(user id.UserID) func(id.EventID) bool {
	var mu sync.Mutex
	read := map[id.EventID]bool{}
	h.Syncer.(mautrix.ExtensibleSyncer).OnEvent(func(_ context.Context, e *event.Event) {
		mu.Lock()
		defer mu.Unlock()
		c, isReceipt := e.Content.Parsed.(*event.ReceiptEventContent)
		if !isReceipt {
			return
		}
		for of, by := range *c {
			if _, ok := by[event.ReceiptTypeRead][user]; ok {
				read[of] = true
			}
		}
	})
	return func(m id.EventID) bool {
		mu.Lock()
		defer mu.Unlock()
		return read[m]
	}
}

func onePixel(t testing.TB) []byte {
	t.Helper()
	var b bytes.Buffer
	must(t, png.Encode(&b, image.NewGray(image.Rect(0, 0, 1, 1))))
	return b.Bytes()
}

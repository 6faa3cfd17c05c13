//go:build !goolm

package matrix

import (
	"bytes"
	"errors"
	"log/slog"
	"strings"
	"sync"
	"testing"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
	"presshand/bot/desk"
)

const load = "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue"

// Built without encryption, the program says so at its start, serves plain
// rooms, declines encrypted ones, and leaves a room that becomes encrypted.
func TestServe_withoutEncryption(t *testing.T) {
	if _, err := Setup(t.Context(), Config{}, false); !errors.Is(err, ErrNoEncryption) {
		t.Errorf("set-up gave %v, want %v", err, ErrNoEncryption)
	}
	s := newStand(t)
	var said lockedBuffer
	s.config.Log = slog.New(slog.NewTextHandler(&said, nil))
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := ana.room(t, false, s.user(), zoe.UserID)
	zoe.join(t, room)
	ana.hasJoined(t, room, s.user())
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	if !strings.Contains(said.String(), "without Matrix encryption") {
		t.Errorf("nothing is said of the missing encryption:\n%s", said.String())
	}
	ana.hasLeft(t, ana.room(t, true, s.user()), s.user())
	_, err := ana.SendStateEvent(t.Context(), room, event.StateEncryption, "", &event.EncryptionEventContent{Algorithm: id.AlgorithmMegolmV1})
	must(t, err)
	ana.hasLeft(t, room, s.user())
}

// Built without encryption, the program sends nothing into a room that was
// encrypted, and gives the reply up.
func TestSend_withoutEncryption(t *testing.T) {
	s := newStand(t)
	ana := newHand(t, "ana")
	room := ana.room(t, false)
	x, err := connect(t.Context(), checkedConfig(t, s.config))
	must(t, err)
	defer func() { must(t, x.close()) }()
	must(t, x.store.seal(t.Context(), room))
	_, err = x.Send(t.Context(), book.Outgoing{Key: "k", Place: book.Place{Service: Service, Room: string(room)}, Text: "in clear", At: time.Now()})
	if !errors.Is(err, desk.ErrRefused) || !errors.Is(err, ErrNoEncryption) {
		t.Errorf("sending gave %v, want it refused for want of encryption", err)
	}
	r, err := ana.Messages(t.Context(), room, "", "", mautrix.DirectionBackward, nil, 20)
	must(t, err)
	for _, e := range r.Chunk {
		if e.Sender == s.user() {
			t.Errorf("%s was sent", e.Type.Type)
		}
	}
}

// hasLeft waits until a user is out of a room.
func (h *hand) hasLeft(t testing.TB, room id.RoomID, user id.UserID) {
	t.Helper()
	eventually(t, func() string {
		var m event.MemberEventContent
		must(t, h.StateEvent(t.Context(), room, event.StateMember, string(user), &m))
		if m.Membership != event.MembershipLeave {
			return "membership is " + string(m.Membership)
		}
		return ""
	})
}

// A lockedBuffer is written by one goroutine and read by another.
type lockedBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (l *lockedBuffer) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

func (l *lockedBuffer) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.String()
}

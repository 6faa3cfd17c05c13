package matrix

import (
	"context"
	"fmt"
	"log/slog"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

const password = "hand-in-hand"

var registered atomic.Int64

// newName returns a user's name that no other test has.
func newName(who string) string { return fmt.Sprintf("%s-%d", who, registered.Add(1)) }

// wordOf returns the word that a test calls a user by.
func wordOf(user string) string {
	word, _, _ := strings.Cut(strings.TrimPrefix(user, "@"), "-")
	return word
}

// A hand is a person of the shop with a chat program of their own.
type hand struct {
	*mautrix.Client
	word string

	mu    sync.Mutex
	heard []*event.Event // messages, decrypted, in the order of their arrival
	known map[id.EventID]bool
}

// restless is a syncer that does not wait long after a failure.
type restless struct{ *mautrix.DefaultSyncer }

func (restless) OnFailedSync(*mautrix.RespSync, error) (time.Duration, error) {
	return 50 * time.Millisecond, nil
}

// newHand registers a person, whose identity vouches for their program, and has
// them listen.
func newHand(t testing.TB, word string) *hand {
	t.Helper()
	return newHandWith(t, word, true)
}

func newHandWith(t testing.TB, word string, vouched bool) *hand {
	t.Helper()
	c, err := server.Register(t.Context(), newName(word), password)
	must(t, err)
	h := &hand{Client: c, word: word, known: map[id.EventID]bool{}}
	s := mautrix.NewDefaultSyncer()
	c.Syncer = restless{s}
	h.equip(t, vouched)
	for _, kind := range []event.Type{event.EventMessage, event.EventReaction} {
		s.OnEventType(kind, h.hear)
	}
	s.OnEventType(event.EventRedaction, h.unhear)
	must(t, c.SetDisplayName(t.Context(), word))
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan struct{})
	go func() {
		defer close(done)
		for ctx.Err() == nil {
			if err := c.SyncWithContext(ctx); err != nil && ctx.Err() == nil {
				time.Sleep(20 * time.Millisecond)
			}
		}
	}()
	t.Cleanup(func() { stop(); <-done; h.disarm(t) })
	return h
}

func (h *hand) hear(_ context.Context, e *event.Event) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if !h.known[e.ID] {
		h.known[e.ID] = true
		h.heard = append(h.heard, e)
	}
}

// unhear forgets what was taken back.
func (h *hand) unhear(_ context.Context, e *event.Event) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.heard = slices.DeleteFunc(h.heard, func(x *event.Event) bool { return x.ID == e.Redacts })
}

// messages returns what the hand has heard in a room, the oldest first.
func (h *hand) messages(room id.RoomID) []*event.Event {
	h.mu.Lock()
	defer h.mu.Unlock()
	var out []*event.Event
	for _, e := range h.heard {
		if e.RoomID == room {
			out = append(out, e)
		}
	}
	return out
}

// room makes a room with other users in it.
func (h *hand) room(t testing.TB, encrypted bool, users ...id.UserID) id.RoomID {
	t.Helper()
	return h.create(t, encrypted, &mautrix.ReqCreateRoom{Preset: "private_chat", Invite: users})
}

// direct begins a direct chat.
func (h *hand) direct(t testing.TB, encrypted bool, with id.UserID) id.RoomID {
	t.Helper()
	return h.create(t, encrypted, &mautrix.ReqCreateRoom{Preset: "trusted_private_chat", Invite: []id.UserID{with}, IsDirect: true})
}

func (h *hand) create(t testing.TB, encrypted bool, req *mautrix.ReqCreateRoom) id.RoomID {
	t.Helper()
	if encrypted {
		req.InitialState = []*event.Event{{
			Type:    event.StateEncryption,
			Content: event.Content{Parsed: &event.EncryptionEventContent{Algorithm: id.AlgorithmMegolmV1}},
		}}
	}
	r, err := h.CreateRoom(t.Context(), req)
	must(t, err)
	if encrypted {
		h.knowsEncrypted(t, r.RoomID)
	}
	return r.RoomID
}

// join takes an invitation.
func (h *hand) join(t testing.TB, room id.RoomID) {
	t.Helper()
	_, err := h.JoinRoomByID(t.Context(), room)
	must(t, err)
}

// say sends a message, encrypted where the room is.
func (h *hand) say(t testing.TB, room id.RoomID, c *event.MessageEventContent) id.EventID {
	t.Helper()
	if c.MsgType == "" {
		c.MsgType = event.MsgText
	}
	r, err := h.SendMessageEvent(t.Context(), room, event.EventMessage, c)
	must(t, err)
	return r.EventID
}

// ask says a text, in a thread if root is not "".
func (h *hand) ask(t testing.TB, room id.RoomID, root id.EventID, text string) id.EventID {
	t.Helper()
	c := &event.MessageEventContent{Body: text}
	if root != "" {
		c.RelatesTo = (&event.RelatesTo{}).SetThread(root, root)
	}
	return h.say(t, room, c)
}

// hasJoined waits until a user is in a room.
func (h *hand) hasJoined(t testing.TB, room id.RoomID, user id.UserID) {
	t.Helper()
	eventually(t, func() string {
		r, err := h.JoinedMembers(t.Context(), room)
		must(t, err)
		if _, in := r.Joined[user]; !in {
			return fmt.Sprintf("%s is not in the room", user)
		}
		return ""
	})
}

// replies returns what a user said in a thread, without edits.
func (h *hand) replies(room id.RoomID, from id.UserID, root id.EventID) []*event.Event {
	var out []*event.Event
	for _, e := range h.messages(room) {
		if e.Sender != from || e.Type.Type != event.EventMessage.Type {
			continue
		}
		if rel := e.Content.AsMessage().RelatesTo; rel.GetThreadParent() == root && rel.GetReplaceID() == "" {
			out = append(out, e)
		}
	}
	return out
}

// answer waits for the n-th reply of a user in a thread.
func (h *hand) answer(t testing.TB, room id.RoomID, from id.UserID, root id.EventID, n int) *event.Event {
	t.Helper()
	var got []*event.Event
	eventually(t, func() string {
		if got = h.replies(room, from, root); len(got) >= n {
			return ""
		}
		return fmt.Sprintf("%d replies in the thread, want %d", len(got), n)
	})
	return got[n-1]
}

const patienceOfTests = 20 * time.Second

// eventually waits until f is content; f says what is wrong.
func eventually(t testing.TB, f func() string) {
	t.Helper()
	within(t, patienceOfTests, f)
}

func within(t testing.TB, limit time.Duration, f func() string) {
	t.Helper()
	var wrong string
	for end := time.Now().Add(limit); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		if wrong = f(); wrong == "" {
			return
		}
	}
	t.Fatalf("after %v still: %s", limit, wrong)
}

// logOf writes what an account logs into a test's output.
func logOf(t testing.TB) *slog.Logger {
	w := &testLog{t: t}
	t.Cleanup(func() {
		w.mu.Lock()
		defer w.mu.Unlock()
		w.over = true
	})
	return slog.New(slog.NewTextHandler(w, &slog.HandlerOptions{Level: slog.LevelDebug}))
}

type testLog struct {
	t    testing.TB
	mu   sync.Mutex
	over bool
}

func (w *testLog) Write(b []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if !w.over {
		w.t.Log(strings.TrimSpace(string(b)))
	}
	return len(b), nil
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

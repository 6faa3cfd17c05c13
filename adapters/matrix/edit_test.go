//go:build goolm

package matrix

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
)

// What someone else sends as an edit of a person's message, or of the bot's
// reply, or from another room, changes nothing.
func TestAccount_editsOfOthers(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room, elsewhere := meet(t, ana, zoe, s, false), meet(t, ana, zoe, s, false)
	root := ana.ask(t, room, "", "press, "+load)
	reply := ana.answer(t, room, s.user(), root, 1)
	s.dealtWith(t)
	const changed = "press, what is a caul"
	zoe.edit(t, room, root, changed)
	zoe.edit(t, room, reply.ID, changed)
	ana.edit(t, elsewhere, root, changed)
	for _, r := range []id.RoomID{room, elsewhere} {
		next := ana.ask(t, r, "", "press, "+load)
		ana.answer(t, r, s.user(), next, 1)
	}
	s.dealtWith(t)
	for _, r := range []id.RoomID{room, elsewhere} {
		for _, e := range ana.messages(r) {
			if c := e.Content.AsMessage(); e.Sender == s.user() && c.RelatesTo.GetReplaceID() != "" {
				t.Errorf("reply was changed to %q", c.NewContent.Body)
			}
		}
	}
	if n := len(ana.replies(room, s.user(), root)) + len(ana.replies(elsewhere, s.user(), root)); n != 1 {
		t.Errorf("%d replies to the question, want 1", n)
	}
	ana.edit(t, room, root, changed)
	eventually(t, func() string {
		for _, e := range ana.messages(room) {
			if e.Sender == s.user() && e.Content.AsMessage().RelatesTo.GetReplaceID() == reply.ID {
				return ""
			}
		}
		return "own edit changes nothing"
	})
}

// A reaction means the load that a reply is about after its last edit.
func TestAccount_reactionToAnEditedReply(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	for range 2 {
		root := ana.ask(t, room, "", "press, "+load)
		ana.answer(t, room, s.user(), root, 1)
		ana.ask(t, room, root, "post it")
		ana.answer(t, room, s.user(), root, 2)
	}
	root := ana.ask(t, room, "", "press, load 1")
	reply := ana.answer(t, room, s.user(), root, 1)
	ana.edit(t, room, root, "press, load 2")
	eventually(t, func() string {
		for _, e := range ana.messages(room) {
			if e.Sender == s.user() && e.Content.AsMessage().RelatesTo.GetReplaceID() == reply.ID {
				return ""
			}
		}
		return "reply is not edited"
	})
	s.dealtWith(t)
	_, err := ana.SendReaction(t.Context(), room, reply.ID, "✋")
	must(t, err)
	if got := ana.answer(t, room, s.user(), root, 2).Content.AsMessage().Body; !strings.Contains(got, "Load 2") || !strings.Contains(got, "on hold") {
		t.Errorf("reaction is answered %q, want load 2 on hold", got)
	}
}

// A reaction counts also before the homeserver has said that it took the reply.
func TestAccount_quickReaction(t *testing.T) {
	s, _ := setUp(t)
	g, at := newGateway(t)
	s.config.Homeserver = at
	reacted := make(chan struct{})
	const card = 2 // of the bot's messages
	g.spoil = func(n int, w http.ResponseWriter, r *http.Request) bool {
		answer := httptest.NewRecorder()
		g.Handler.ServeHTTP(answer, r)
		if n == card {
			<-reacted
		}
		w.WriteHeader(answer.Code)
		_, _ = w.Write(answer.Body.Bytes())
		return true
	}
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	ana.ask(t, room, root, "post it")
	_, err := ana.SendReaction(t.Context(), room, ana.answer(t, room, s.user(), root, card).ID, "✋")
	must(t, err)
	defer close(reacted)
	eventually(t, func() string {
		if l, err := s.store.Load(t.Context(), string(room), 1); err != nil || l.State != book.Held {
			return fmt.Sprintf("load is %s (%v), want it held", l.State, err)
		}
		return ""
	})
}

// edit sends a text as an edit of an event.
func (h *hand) edit(t testing.TB, room id.RoomID, was id.EventID, text string) id.EventID {
	t.Helper()
	c := &event.MessageEventContent{MsgType: event.MsgText, Body: text}
	c.SetEdit(was)
	return h.say(t, room, c)
}

// A store of the first version is carried forward with what it knows.
func TestOpenStore_upgrades(t *testing.T) {
	at := t.TempDir() + "/matrix.db"
	st, err := openStore(t.Context(), at)
	must(t, err)
	for _, q := range []string{
		`ALTER TABLE known DROP COLUMN sender`,
		`INSERT INTO known (event_id, room_id, root, at) VALUES ('$e', '!r', '$root', 1)`,
		`UPDATE presshand_version SET version = 1, compat = 1`,
	} {
		must(t, st.exec(t.Context(), q))
	}
	must(t, st.close())
	st, err = openStore(t.Context(), at)
	must(t, err)
	defer func() { must(t, st.close()) }()
	m, err := st.known(t.Context(), "$e")
	must(t, err)
	if m.Root != "$root" || m.Sender != "" {
		t.Errorf("message is %+v, want its thread, and nobody as sender", m)
	}
}

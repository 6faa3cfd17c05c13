package adaptertest

import (
	"fmt"
	"strings"
	"testing"

	"presshand/bot/book"
)

func placeOf(h *house, room string) book.Place {
	return book.Place{Service: h.service.Name(), Room: room}
}

// posted has ana post a load and returns its thread and the message that shows
// it.
func posted(h *house, room string) (thread, card string) {
	h.t.Helper()
	thread, _ = h.ask(Post{Room: room, Person: "ana", Text: question, Addressed: true})
	has(h.t, h.follow(Post{Room: room, Thread: thread, Person: "ana", Text: "post it"}, 1), "Load 1 posted by “ana”")
	return thread, h.latest(room, thread)
}

// latest is the id of the last message that the bot shows in a thread.
func (h *house) latest(room, thread string) string {
	all := h.service.Shown(h.t, room, thread)
	return all[len(all)-1].ID
}

// state waits until load 1 of the room is in a state.
func (h *house) state(room string, want book.State) {
	h.t.Helper()
	eventually(h.t, func() string {
		l, err := h.store.Load(h.t.Context(), room, 1)
		if err != nil || l.State != want {
			return fmt.Sprintf("load 1 is %q (%v), want %q", l.State, err, want)
		}
		return ""
	})
}

// Reactions hold a load, clear it, take it in and out.
func signs(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	thread, card := posted(h, room)
	h.service.React(t, room, card, "ben", Hold)
	h.state(room, book.Held)
	h.service.React(t, room, card, "ben", Clear)
	h.state(room, book.Posted)
	has(t, h.waitFor(room, thread, 4)[3], "Load 1")
	has(t, h.follow(Post{Room: room, Thread: thread, Person: "ben", Text: "1 checked, bar 1 in, strips 1/4"}, 4), "agrees")
	h.service.React(t, room, h.latest(room, thread), "cy", In)
	h.state(room, book.Pressing)
	h.waitFor(room, thread, 6)
	h.service.React(t, room, h.latest(room, thread), "cy", Out)
	h.state(room, book.Taken)
	if l, err := h.store.Load(t.Context(), room, 1); err != nil || l.Last().By.ID != "cy" {
		t.Errorf("taken out by %q (%v), want cy", l.Last().By.ID, err)
	}
}

// No reaction checks a load, and one on a message that shows no load, or on
// someone else's message, does nothing.
func signChecksNot(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	thread, card := posted(h, room)
	h.service.React(t, room, card, "ben", Approve)
	h.service.React(t, room, thread, "ben", Hold)
	first := h.service.Shown(t, room, thread)[0].ID
	h.service.React(t, room, first, "ben", Hold)
	h.settled(room)
	h.state(room, book.Posted)
	for _, s := range h.service.Shown(t, room, thread) {
		if strings.Contains(s.Text, "agrees") || strings.Contains(s.Text, "on hold") {
			t.Errorf("a reaction did something: %s", s.Text)
		}
	}
}

// A reaction on the card of a revision does nothing to the next.
func signOfARevised(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	thread, card := posted(h, room)
	has(t, h.follow(Post{Room: room, Thread: thread, Person: "ana", Text: "correction to 1: 3/4 bar"}, 2), "revision 2")
	h.service.React(t, room, card, "ben", Hold)
	eventually(t, func() string {
		for _, s := range h.service.Shown(t, room, thread) {
			if strings.Contains(s.Text, "changed since") {
				return ""
			}
		}
		return "nobody was told that the load changed since"
	})
	h.state(room, book.Posted)
}

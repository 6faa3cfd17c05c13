package adaptertest

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/bottest"
)

const question = "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue"

func mention(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	_, reply := h.ask(Post{Room: room, Person: "ana", Text: question, Addressed: true})
	has(t, reply, "Read as 5 strips, 2 1/4 in wide")
}

func prefix(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	_, reply := h.ask(Post{Room: room, Person: "ana", Text: question, Prefixed: true})
	has(t, reply, "Read as 5 strips, 2 1/4 in wide")
}

func direct(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Direct(t, "ana")
	id, reply := h.ask(Post{Room: room, Person: "ana", Text: question})
	has(t, reply, "Read as 5 strips")
	has(t, h.follow(Post{Room: room, Thread: id, Person: "ana", Text: "make it oak"}, 1), "red oak", "5 strips")
}

// What is not said to the bot it neither answers nor stores.
func notAddressed(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	aside := h.service.Say(t, Post{Room: room, Person: "ana", Text: question})
	below := h.service.Say(t, Post{Room: room, Person: "ben", Thread: aside, Text: "what about 22 inches"})
	h.settled(room)
	if got := h.words(room, aside); len(got) > 0 {
		t.Errorf("answered %q to what was not said to it", got)
	}
	for _, id := range []string{aside, below} {
		if _, err := h.store.Reply(t.Context(), placeOf(h, room), id); err == nil {
			t.Error("keeps a reply to what was not said to it")
		}
	}
}

// Once the bot takes part in a thread, it need not be named there.
func threadGoesOn(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	aside := h.service.Say(t, Post{Room: room, Person: "ana", Text: "what do you think?"})
	has(t, h.follow(Post{Room: room, Thread: aside, Person: "ben", Text: question, Addressed: true}, 0), "5 strips")
	has(t, h.follow(Post{Room: room, Thread: aside, Person: "ana", Text: "what about 22 inches"}, 1), "22 inHg", "5 strips")
	h.restart(func() {})
	has(t, h.follow(Post{Room: room, Thread: aside, Person: "ana", Text: "make it oak"}, 2), "22 inHg", "red oak")
}

func edit(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	p := Post{Room: room, Person: "ana", Text: "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, oak", Addressed: true}
	id, _ := h.ask(p)
	before := h.service.Shown(t, room, id)
	p.Text = "6 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg"
	h.service.Edit(t, p, id)
	eventually(t, func() string {
		got := h.service.Shown(t, room, id)
		if len(got) != 1 || got[0].ID != before[0].ID {
			return fmt.Sprintf("the thread shows %v, want the one reply %s edited", got, before[0].ID)
		}
		if !strings.Contains(got[0].Text, "6 strips") {
			return "the reply is still to the first wording"
		}
		if strings.Contains(got[0].Text, "red oak") {
			return "the reply remembers what the message does not say any more"
		}
		return ""
	})
	p.Text = "7 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg"
	h.service.Edit(t, p, id)
	eventually(t, func() string {
		if got := h.service.Shown(t, room, id); len(got) != 1 || !strings.Contains(got[0].Text, "7 strips") {
			return fmt.Sprintf("the thread shows %v, want the one reply edited again", got)
		}
		return ""
	})
}

func redelivery(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	id, _ := h.ask(Post{Room: room, Person: "ana", Text: question, Addressed: true})
	for range 3 {
		h.service.Redeliver(t, room, id)
	}
	h.restart(func() { h.service.Redeliver(t, room, id) })
	h.settled(room)
	h.waitFor(room, id, 1)
}

// What was said while the bot was down is answered once; what was answered
// before is not answered again.
func restart(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	before, _ := h.ask(Post{Room: room, Person: "ana", Text: question, Addressed: true})
	var meanwhile, below, aside string
	h.restart(func() {
		meanwhile = h.service.Say(t, Post{Room: room, Person: "ben", Text: "what is a caul", Addressed: true})
		below = h.service.Say(t, Post{Room: room, Thread: before, Person: "ana", Text: "make it oak"})
		aside = h.service.Say(t, Post{Room: room, Person: "ana", Text: "lunch?"})
	})
	has(t, h.waitFor(room, meanwhile, 1)[0], "caul")
	has(t, h.waitFor(room, before, 2)[1], "red oak", "5 strips")
	h.restart(func() {})
	h.settled(room)
	h.waitFor(room, meanwhile, 1)
	h.waitFor(room, before, 2)
	if got := h.words(room, aside); len(got) > 0 || below == "" {
		t.Errorf("answered %q to what was not said to it", got)
	}
}

func otherBots(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	id := h.service.Say(t, Post{Room: room, Person: "clank", Text: question, Addressed: true, Bot: true})
	h.settled(room)
	if got := h.words(room, id); len(got) > 0 {
		t.Errorf("answered %q to another bot", got)
	}
}

func picture(t *testing.T, r Rooms) {
	h := r.open(t)
	h.draw = true
	h.restart(func() {})
	room := h.service.Room(t)
	id, _ := h.ask(Post{Room: room, Person: "ana", Text: question, Addressed: true})
	eventually(t, func() string {
		var pictures []Shown
		for _, s := range h.service.Shown(t, room, id) {
			if s.Picture != "" {
				pictures = append(pictures, s)
			}
		}
		if len(pictures) != 1 {
			return fmt.Sprintf("%d pictures with an alt text in the thread, want 1", len(pictures))
		}
		return ""
	})
}

func hostileRoomText(t *testing.T, r Rooms) {
	h := r.open(t)
	room := h.service.Room(t)
	id, _ := h.ask(Post{Room: room, Person: "ana", Text: question, Addressed: true})
	h.follow(Post{Room: room, Thread: id, Person: "ana", Text: "post it"}, 1)
	for i, note := range []string{"<!channel> & <@U1> @room", "*b* _i_ ~s~ `c` <b>h</b>", "[x](http://example.com) http://example.com", "a\u202eb\u0007 &lt;!here&gt;"} {
		reply := h.follow(Post{Room: room, Thread: id, Person: "ana", Text: "hold 1: " + note}, 2+2*i)
		for _, bad := range []string{"<!channel>", "<@", "@room", "*b*", "<b>", "](", "://", "\u202e", "\u0007", "<!here>"} {
			if strings.Contains(reply, bad) {
				t.Errorf("%q lets %q through:\n%s", note, bad, reply)
			}
		}
		h.follow(Post{Room: room, Thread: id, Person: "ana", Text: "clear 1"}, 3+2*i)
	}
}

// scenes plays every scene and wants the very replies that the bot gives
// without a service in between.
func scenes(t *testing.T, r Rooms) {
	files, err := filepath.Glob(r.Scenes)
	if err != nil || len(files) == 0 {
		t.Fatalf("found %d scenes (%v), want some", len(files), err)
	}
	for _, name := range files {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			text, err := os.ReadFile(name)
			must(t, err)
			scene, err := bottest.Read(text)
			must(t, err)
			play(t, r, scene)
		})
	}
}

// A Timed service gives messages the time of the clock that the adapter got.
type Timed interface{ Timed() }

// unreminded is a store in which no reminder falls due. A scene jumps from one
// message to the next, over the end of a press time; whether a service would
// bring the next message or the reminder first is open.
type unreminded struct{ book.Store }

func (unreminded) ClaimReminder(context.Context, book.Claim) (book.Reminder, error) {
	return book.Reminder{}, book.ErrNone
}

// A Dated service tells the exact time that it gave a message.
type Dated interface {
	At(t testing.TB, room, id string) time.Time
}

func play(t *testing.T, r Rooms, scene bottest.Scene) {
	h := r.open(t)
	h.set = scene.Settings
	h.set.Zone = time.UTC
	h.restart(func() { h.store = unreminded{h.store} })
	straight := bot.New(bot.NewMemory())
	straight.Settings = func(string) bot.Settings { return h.set }
	room, roots, shown := h.service.Room(t), map[string]string{}, map[string]int{}
	_, timed := h.service.(Timed)
	dated, isDated := h.service.(Dated)
	for i, turn := range scene.Turns {
		m := turn.Message
		if timed {
			h.clock.set(m.At)
		} else {
			m.At = h.clock.Now()
		}
		p := Post{Room: room, Person: m.From, Text: m.Text, Thread: roots[m.Thread], Addressed: m.Thread == "" || roots[m.Thread] == ""}
		id := h.service.Say(t, p)
		if isDated {
			m.At = dated.At(t, room, id)
		}
		root := p.Thread
		if root == "" {
			root = id
			roots[m.Thread] = id
		}
		if m.Thread == "" {
			delete(roots, "")
			m.Thread = fmt.Sprint("alone-", i)
		}
		m.Name, m.Via = m.From, h.service.Name()
		want, err := straight.Handle(t.Context(), m)
		must(t, err)
		got := h.waitFor(room, root, shown[root]+1)[shown[root]]
		shown[root]++
		if got != want.Text {
			t.Errorf("%s %s: %q\ngot:\n%s\nwant:\n%s", m.At.Format("15:04"), m.From, m.Text, got, want.Text)
		}
	}
}

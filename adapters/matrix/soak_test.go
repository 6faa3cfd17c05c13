//go:build goolm

package matrix

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync/atomic"
	"testing"
	"time"

	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/adapters/postgres/pgserver"
)

// soak returns how many messages are said and how often each side is killed:
// few, unless PRESSHAND_SOAK is set.
func soak() (messages, kills int) {
	if os.Getenv("PRESSHAND_SOAK") != "" {
		return 1000, 20
	}
	return 80, 4
}

// The homeserver is killed and started again, and so is the bot, while people
// talk on: nothing is lost, nothing doubled, nothing in clear.
func TestServe_killedInTurn(t *testing.T) {
	messages, kills := soak()
	s, _ := setUp(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	o := order{s.config.Homeserver, s.config.User, s.config.Store, filepath.Join(t.TempDir(), "book.db"), "bot"}
	bot := spawn(t, o)
	room := meet(t, ana, zoe, s, true)
	var asked atomic.Int64
	k := &killer{due: make(chan struct{}, 2*kills), done: make(chan struct{})}
	go k.work(t, bot, o, func() bool { return int(asked.Load()) > answered(ana, room, s.user()) })
	said := make([]id.EventID, messages)
	for i, due := 0, 0; i < messages; i++ {
		who, root := []*hand{ana, zoe}[i%2], id.EventID("")
		if i%4 > 0 {
			root = said[i-i%4]
		}
		said[i] = who.insist(t, room, root, fmt.Sprintf("press, %d strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg", 2+i))
		asked.Add(1)
		for ; due < (i+1)*2*kills/messages; due++ {
			k.due <- struct{}{}
		}
	}
	close(k.due)
	<-k.done
	defer k.bot.kill()
	talk := &conversation{hand: ana, room: room, bot: s.user(), said: said, book: bookAt(t, o.Book)}
	talk.answeredOnce(t, 5*time.Minute)
	if n, err := inClear(t.Context(), ana, room); err != nil || n > 0 {
		t.Errorf("%d messages stand in clear (%v), want none", n, err)
	}
	t.Logf("%d messages, %d kills, %d of them while something waited for its answer; the homeserver lost its queue %d times, and with it %s",
		messages, 2*kills, k.amid, server.Emptied(), talk.tally(t))
	if k.amid < kills/2 {
		t.Errorf("%d of %d kills came while something waited: they hit nothing", k.amid, 2*kills)
	}
}

// A killer kills the bot and the homeserver in turn, and starts them again.
type killer struct {
	due  chan struct{}
	done chan struct{}
	bot  *process
	amid int // kills while something waited
}

func (k *killer) work(t testing.TB, bot *process, o order, waits func() bool) {
	defer close(k.done)
	const seed = 7
	r := rand.New(rand.NewPCG(seed, seed))
	n := 0
	for k.bot = bot; ; n++ {
		if _, more := <-k.due; !more {
			return
		}
		time.Sleep(time.Duration(r.IntN(60)) * time.Millisecond)
		for range 50 { // into the work rather than beside it
			if waits() {
				k.amid++
				break
			}
			time.Sleep(2 * time.Millisecond)
		}
		if n%2 == 0 {
			k.bot.kill()
			k.bot = spawn(t, o)
			continue
		}
		server.Kill()
		if err := server.Up(context.Background()); err != nil {
			t.Error(err)
			return
		}
	}
}

// answered counts the messages that a user has answered in a room.
func answered(h *hand, room id.RoomID, from id.UserID) int {
	answers := map[id.EventID]bool{}
	for _, e := range h.messages(room) {
		if to := e.Content.AsMessage().RelatesTo.GetReplyTo(); e.Sender == from && to != "" {
			answers[to] = true
		}
	}
	return len(answers)
}

// insist says a text until it stands in the room, once, although the
// homeserver is killed now and then.
func (h *hand) insist(t testing.TB, room id.RoomID, root id.EventID, text string) id.EventID {
	t.Helper()
	c := &event.MessageEventContent{MsgType: event.MsgText, Body: text}
	if root != "" {
		c.RelatesTo = (&event.RelatesTo{}).SetThread(root, root)
	}
	for range 100 {
		r, err := h.SendMessageEvent(t.Context(), room, event.EventMessage, c)
		if err == nil {
			return r.EventID
		}
		t.Logf("%s says it again: %v", h.word, err)
		for range 20 { // it may stand there although the answer was lost
			time.Sleep(50 * time.Millisecond)
			for _, e := range h.messages(room) {
				if e.Sender == h.UserID && e.Content.AsMessage().Body == text {
					return e.ID
				}
			}
		}
	}
	t.Fatalf("%q cannot be said", text)
	return ""
}

// Two bot processes share PostgreSQL: one serves the account, and the other
// takes it over within 30 s of its death.
func TestServe_handover(t *testing.T) {
	pg, err := pgserver.Start(t.Context())
	must(t, err)
	defer func() { must(t, pg.Stop()) }()
	url, err := pg.Database(t.Context())
	must(t, err)
	s := newStand(t)
	s.config.Store = url
	_, err = Setup(t.Context(), s.config, false)
	must(t, err)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	first := spawn(t, order{s.config.Homeserver, s.config.User, url, url, "first"})
	defer func() { first.kill() }()
	room := meet(t, ana, zoe, s, true) // the first serves by now
	second := spawn(t, order{s.config.Homeserver, s.config.User, url, url, "second"})
	defer func() { second.kill() }()
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	said := []id.EventID{root}
	for i := range 5 {
		said = append(said, zoe.ask(t, room, root, fmt.Sprintf("what about %d inches", 20+i)))
	}
	first.kill()
	died := time.Now()
	for i := range 5 {
		said = append(said, zoe.ask(t, room, root, fmt.Sprintf("what about %d inches", 15+i)))
	}
	talk := &conversation{hand: ana, room: room, bot: s.user(), said: said, book: bookAt(t, url)}
	talk.answeredOnce(t, 33*time.Second)
	took := time.Since(died) - waitForTwins
	if took > 30*time.Second {
		t.Errorf("handover took %v, want 30 s at most", took)
	}
	t.Logf("handover took %v", took)
}

package adaptertest

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// A Service is a chat service, or its stand-in, that outlives the bot. People
// go by one word; the adapter has to give them that word as their ID and name.
type Service interface {
	Name() string // as in [book.Place]
	// Connect returns the bot's end. It brings what is said to the inbox and
	// may keep marks in the store.
	Connect(t testing.TB, in Inbox, s book.Store, clock func() time.Time) Chat
	Room(t testing.TB) string                  // a new room, with the bot and everyone in it
	Direct(t testing.TB, person string) string // a new or known conversation of the bot with one person
	// Say has someone say something and returns the message's id. Where the
	// room is not a direct one and p.Addressed is set, it is said to the bot.
	Say(t testing.TB, p Post) string
	Edit(t testing.TB, p Post, id string) // p as it was said, with another text
	React(t testing.TB, room, id, person string, s Sign)
	Redeliver(t testing.TB, room, id string) // the same event comes again
	// Shown returns what the bot shows in the thread of a message, the oldest
	// first; what was edited as it is now.
	Shown(t testing.TB, room, root string) []Shown
}

// A Post is something that a person says.
type Post struct {
	Room, Person, Text string
	Thread             string // id of the message whose thread it is said in, or ""
	Addressed          bool
	Prefixed           bool // by the bot's prefix instead of a mention
	Bot                bool // said by another bot
}

// Shown is a message of the bot as people see it.
type Shown struct {
	ID, Text string
	Picture  string // its alt text, where it is a picture
	Private  bool   // seen by one person only
}

// A Sign is what a reaction means, whatever it looks like.
type Sign string

// The signs that the bot knows. Approve is the one that must not check a load.
const (
	Hold, Clear Sign = "hold", "clear"
	In, Out     Sign = "in", "out"
	Approve     Sign = "approve"
)

// A Chat is an adapter as a process runs it.
type Chat interface {
	desk.Sender
	// Run brings what is said to the inbox until ctx ends.
	Run(ctx context.Context) error
}

// An Inbox takes what was said; once it returns without an error the service
// may be told so.
type Inbox interface {
	Receive(ctx context.Context, e book.Event) (fresh bool, err error)
}

// Rooms is what the conformance suite of rooms needs.
type Rooms struct {
	Service func(t testing.TB) Service    // a new one
	Store   func(t testing.TB) book.Store // an empty one
	Scenes  string                        // pattern of the scenes to be played
}

// Room is the conformance suite of a chat service's adapter.
func Room(t *testing.T, r Rooms) {
	for name, test := range map[string]func(*testing.T, Rooms){
		"mention":           mention,
		"prefix":            prefix,
		"direct":            direct,
		"not_addressed":     notAddressed,
		"thread_goes_on":    threadGoesOn,
		"edit":              edit,
		"redelivery":        redelivery,
		"restart":           restart,
		"other_bots":        otherBots,
		"picture":           picture,
		"signs":             signs,
		"sign_checks_not":   signChecksNot,
		"sign_of_a_revised": signOfARevised,
		"hostile_text":      hostileRoomText,
	} {
		t.Run(name, func(t *testing.T) { test(t, r) })
	}
	t.Run("scenes", func(t *testing.T) { scenes(t, r) })
}

// A house is a service with the bot serving it.
type house struct {
	t       testing.TB
	service Service
	store   book.Store
	clock   *clock
	set     bot.Settings
	draw    bool
	stop    func()
}

// A clock runs on from a time that can be set.
type clock struct {
	mu    sync.Mutex
	at    time.Time
	since time.Time
}

func (c *clock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.at.Add(time.Since(c.since))
}

func (c *clock) set(at time.Time) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.at, c.since = at, time.Now()
}

// open starts a bot on a new service.
func (r Rooms) open(t testing.TB) *house {
	h := &house{t: t, service: r.Service(t), store: r.Store(t), clock: &clock{}}
	h.clock.set(time.Now())
	h.start()
	t.Cleanup(func() { h.stop() })
	return h
}

// start runs the bot as a process would, on what the store holds.
func (h *house) start() {
	b := bot.New(h.store)
	b.Settings = func(string) bot.Settings { return h.set }
	d := &desk.Desk{
		Store: h.store, Handler: bot.Clerk{Bot: b, Clock: h.clock, Draw: func(string) bool { return h.draw }},
		Worker: "bot", Clock: h.clock.Now, Poll: 20 * time.Millisecond,
	}
	chat := h.service.Connect(h.t, d, h.store, h.clock.Now)
	d.Senders = map[string]desk.Sender{h.service.Name(): chat}
	must(h.t, d.Resume(h.t.Context()))
	ctx, cancel := context.WithCancel(context.Background())
	var wg sync.WaitGroup
	wg.Go(func() { d.Run(ctx) })
	wg.Go(func() {
		if err := chat.Run(ctx); err != nil && ctx.Err() == nil {
			h.t.Errorf("adapter stopped: %v", err)
		}
	})
	var once sync.Once
	h.stop = func() { once.Do(func() { cancel(); wg.Wait() }) }
}

// restart stops the bot, has something happen, and starts it again.
func (h *house) restart(meanwhile func()) {
	h.stop()
	meanwhile()
	h.start()
}

// patience is how long a reply may take before the test fails.
const patience = 20 * time.Second

// eventually waits until f is content; f says what is wrong.
func eventually(t testing.TB, f func() string) {
	t.Helper()
	var wrong string
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if wrong = f(); wrong == "" {
			return
		}
	}
	t.Fatalf("after %v still: %s", patience, wrong)
}

// words returns the texts that are shown in a thread.
func (h *house) words(room, root string) []string {
	var out []string
	for _, s := range h.service.Shown(h.t, room, root) {
		if s.Picture == "" {
			out = append(out, s.Text)
		}
	}
	return out
}

// waitFor waits until the thread shows n texts and returns them.
func (h *house) waitFor(room, root string, n int) []string {
	h.t.Helper()
	var got []string
	eventually(h.t, func() string {
		if got = h.words(room, root); len(got) >= n {
			return ""
		}
		return fmt.Sprintf("%d replies in the thread, want %d: %q", len(got), n, got)
	})
	if len(got) > n {
		h.t.Fatalf("%d replies in the thread, want %d:\n%s", len(got), n, strings.Join(got, "\n--\n"))
	}
	return got
}

// ask says something outside any thread and returns its id and the reply.
func (h *house) ask(p Post) (id, reply string) {
	h.t.Helper()
	id = h.service.Say(h.t, p)
	return id, h.waitFor(p.Room, id, 1)[0]
}

// follow says something in a thread in which n replies stand, and returns the
// next.
func (h *house) follow(p Post, n int) string {
	h.t.Helper()
	h.service.Say(h.t, p)
	return h.waitFor(p.Room, p.Thread, n+1)[n]
}

// settled waits until all that was said before is dealt with: a last question
// is answered, and nothing waits.
func (h *house) settled(room string) {
	h.t.Helper()
	h.ask(Post{Room: room, Person: "zoe", Text: "units", Addressed: true})
	eventually(h.t, func() string {
		d, err := h.store.Depth(h.t.Context())
		must(h.t, err)
		if d.Inbox+d.Outbox > 0 {
			return fmt.Sprintf("%d events and %d replies wait", d.Inbox, d.Outbox)
		}
		return ""
	})
}

func has(t testing.TB, text string, parts ...string) {
	t.Helper()
	for _, p := range parts {
		if !strings.Contains(text, p) {
			t.Errorf("reply lacks %q:\n%s", p, text)
		}
	}
}

//go:build goolm

package matrix

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/adapters/adaptertest"
	"presshand/adapters/sqlite"
	"presshand/bot/book"
)

// The conformance suite of rooms, and all scenes, through a real homeserver in
// encrypted rooms.
func TestAccount_conformance(t *testing.T) {
	adaptertest.Room(t, adaptertest.Rooms{
		Service: func(t testing.TB) adaptertest.Service { return newShop(t, true) },
		Store:   memory,
		Scenes:  "../../testdata/talk/*.txtar",
	})
}

// The suite once more in plain rooms, with one of the scenes.
func TestAccount_conformanceInClear(t *testing.T) {
	adaptertest.Room(t, adaptertest.Rooms{
		Service: func(t testing.TB) adaptertest.Service { return newShop(t, false) },
		Store:   memory,
		Scenes:  "../../testdata/talk/day.txtar",
	})
}

func memory(t testing.TB) book.Store {
	s, err := sqlite.Memory(t.Context())
	must(t, err)
	t.Cleanup(func() { must(t, s.Close()) })
	return s
}

// A shop is an account of the bot with the people around it.
type shop struct {
	config Config
	sealed bool  // its rooms are encrypted
	keeper *hand // who makes the rooms and reads what stands there

	mu     sync.Mutex
	people map[string]*hand
	reader map[id.RoomID]*hand
	came   map[visit]bool
	chat   *watched
	stamps map[string]time.Time // by message
	place  string               // in the stream, before anything was said
}

// A visit is a person in a room.
type visit struct {
	who  *hand
	room id.RoomID
}

func newShop(t testing.TB, sealed bool) *shop {
	t.Helper()
	name := newName("press")
	c, err := server.Register(t.Context(), name, password)
	must(t, err)
	s := &shop{
		config: Config{
			Homeserver: server.URL, User: string(c.UserID), Password: password, Name: "Press Hand",
			Store: filepath.Join(t.TempDir(), "matrix.db"), Allow: []string{"localhost"},
			Log:    logOf(t),
			Person: func(user, name string) book.Person { return book.Person{ID: wordOf(user), Name: name} },
		},
		sealed: sealed, stamps: map[string]time.Time{}, people: map[string]*hand{}, reader: map[id.RoomID]*hand{}, came: map[visit]bool{},
	}
	_, err = Setup(t.Context(), s.config, false)
	must(t, err)
	s.keeper = s.person(t, "keeper")
	if sealed {
		t.Cleanup(func() { s.nothingInClear(t) })
	}
	return s
}

func (s *shop) person(t testing.TB, word string) *hand {
	t.Helper()
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.people[word] == nil {
		s.people[word] = newHand(t, word)
	}
	return s.people[word]
}

func (s *shop) bot() id.UserID { return id.UserID(s.config.User) }

func (s *shop) Name() string { return Service }

// watched is an account whose session a test can reach.
type watched struct {
	*Account
	done chan struct{}
}

func (w *watched) Run(ctx context.Context) error {
	defer close(w.done)
	return w.Account.Run(ctx)
}

// Timed says that messages get the time of the test's clock: a homeserver
// stamps them with its own.
func (s *shop) Timed() {}

type stamped struct {
	Inbox
	clock func() time.Time
	stamp func(message string, at time.Time) time.Time
}

func (s stamped) Receive(ctx context.Context, e book.Event) (bool, error) {
	e.At = s.stamp(e.Message, s.clock())
	return s.Inbox.Receive(ctx, e)
}

// stamp keeps the time that a message got first, as finely as a store does.
func (s *shop) stamp(message string, at time.Time) time.Time {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.stamps[message].IsZero() {
		s.stamps[message] = at.Truncate(time.Microsecond)
	}
	return s.stamps[message]
}

// At waits for the time that a message got.
func (s *shop) At(t testing.TB, _, message string) (at time.Time) {
	t.Helper()
	eventually(t, func() string {
		s.mu.Lock()
		defer s.mu.Unlock()
		if at = s.stamps[message]; at.IsZero() {
			return "message was not taken"
		}
		return ""
	})
	return at
}

func (s *shop) Connect(t testing.TB, in adaptertest.Inbox, b book.Store, clock func() time.Time) adaptertest.Chat {
	a, err := Open(s.config, stamped{in, clock, s.stamp}, b)
	must(t, err)
	s.chat = &watched{a, make(chan struct{})}
	return s.chat
}

func (s *shop) Room(t testing.TB) string {
	return string(s.open(t, s.keeper, s.person(t, "zoe")))
}

func (s *shop) Direct(t testing.TB, person string) string {
	return string(s.open(t, s.person(t, person)))
}

// open makes a room with the bot and others in it.
func (s *shop) open(t testing.TB, maker *hand, others ...*hand) id.RoomID {
	t.Helper()
	room := maker.room(t, s.sealed, s.bot())
	s.came[visit{maker, room}] = true
	for _, o := range others {
		s.bring(t, maker, o, room)
	}
	maker.hasJoined(t, room, s.bot())
	s.mu.Lock()
	s.reader[room] = maker
	s.mu.Unlock()
	if s.place == "" {
		live := <-s.chat.live
		s.place, _ = live.store.place(t.Context(), s.bot())
		s.chat.live <- live
	}
	return room
}

// bring has someone come into a room.
func (s *shop) bring(t testing.TB, maker, who *hand, room id.RoomID) {
	t.Helper()
	if s.came[visit{who, room}] {
		return
	}
	_, err := maker.InviteUser(t.Context(), room, &mautrix.ReqInviteUser{UserID: who.UserID})
	must(t, err)
	who.join(t, room)
	if s.sealed {
		who.knowsEncrypted(t, room)
		who.knowsMember(t, room, s.bot())
		for _, other := range s.people { // what they say is encrypted for the newcomer too
			if s.came[visit{other, room}] {
				other.knowsMember(t, room, who.UserID)
			}
		}
	}
	s.came[visit{who, room}] = true
}

func (s *shop) in(room string) *hand {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.reader[id.RoomID(room)]
}

func (s *shop) Say(t testing.TB, p adaptertest.Post) string {
	t.Helper()
	who := s.person(t, p.Person)
	s.bring(t, s.in(p.Room), who, id.RoomID(p.Room))
	return string(who.say(t, id.RoomID(p.Room), s.content(p)))
}

func (s *shop) content(p adaptertest.Post) *event.MessageEventContent {
	c := &event.MessageEventContent{MsgType: event.MsgText, Body: p.Text}
	if p.Bot {
		c.MsgType = event.MsgNotice
	}
	switch {
	case p.Prefixed:
		c.Body = "press, " + p.Text
	case p.Addressed:
		c.Body = "Press Hand: " + p.Text
		c.Format, c.FormattedBody = event.FormatHTML, pill(s.bot(), "Press Hand")+": "+strings.ReplaceAll(p.Text, "<", "&lt;")
		c.Mentions = &event.Mentions{UserIDs: []id.UserID{s.bot()}}
	}
	if p.Thread != "" {
		c.RelatesTo = (&event.RelatesTo{}).SetThread(id.EventID(p.Thread), id.EventID(p.Thread))
	}
	return c
}

func (s *shop) Edit(t testing.TB, p adaptertest.Post, was string) {
	t.Helper()
	c := s.content(p)
	c.SetEdit(id.EventID(was))
	s.person(t, p.Person).say(t, id.RoomID(p.Room), c)
}

var signs = map[adaptertest.Sign]string{
	adaptertest.Hold: "✋🏽", adaptertest.Clear: "▶️", adaptertest.In: "📥", adaptertest.Out: "📤", adaptertest.Approve: "✅",
}

func (s *shop) React(t testing.TB, room, message, person string, sign adaptertest.Sign) {
	t.Helper()
	who := s.person(t, person)
	s.bring(t, s.in(room), who, id.RoomID(room))
	_, err := who.SendReaction(t.Context(), id.RoomID(room), id.EventID(message), signs[sign])
	must(t, err)
}

// Redeliver gives the account the event again, or puts it back to before the
// event if it does not run.
func (s *shop) Redeliver(t testing.TB, room, message string) {
	t.Helper()
	select {
	case <-s.chat.done:
		st, err := openStore(t.Context(), s.config.Store)
		must(t, err)
		must(t, st.keepPlace(t.Context(), s.bot(), s.place))
		must(t, st.close())
		return
	default:
	}
	e, err := s.keeper.GetEvent(t.Context(), id.RoomID(room), id.EventID(message))
	must(t, err)
	live := <-s.chat.live
	defer func() { s.chat.live <- live }()
	live.mu.Lock()
	defer live.mu.Unlock()
	must(t, live.guarded(t.Context(), id.RoomID(room), e, live.take))
}

func (s *shop) Shown(t testing.TB, room, root string) []adaptertest.Shown {
	reader := s.in(room)
	edited := map[id.EventID]string{}
	for _, e := range reader.messages(id.RoomID(room)) {
		c := e.Content.AsMessage()
		if was := c.RelatesTo.GetReplaceID(); was != "" && e.Sender == s.bot() {
			edited[was] = c.NewContent.Body
		}
	}
	var out []adaptertest.Shown
	for _, e := range reader.replies(id.RoomID(room), s.bot(), id.EventID(root)) {
		c := e.Content.AsMessage()
		if len(c.Mentions.UserIDs) > 0 {
			continue // a reminder, which comes of its own accord while the scene's clock jumps on
		}
		shown := adaptertest.Shown{ID: string(e.ID), Text: c.Body}
		if text, ok := edited[e.ID]; ok {
			shown.Text = text
		}
		if c.MsgType == event.MsgImage {
			shown.Picture, shown.Text = shown.Text, ""
		}
		out = append(out, shown)
	}
	return out
}

// nothingInClear reads what the homeserver holds of the rooms.
func (s *shop) nothingInClear(t testing.TB) {
	for room, reader := range s.reader {
		n, err := inClear(context.Background(), reader, room)
		if err != nil || n > 0 {
			t.Errorf("%d messages stand in clear in an encrypted room (%v), want none", n, err)
		}
	}
}

// inClear counts the messages of a room that the homeserver can read.
func inClear(ctx context.Context, h *hand, room id.RoomID) (n int, err error) {
	from := ""
	for {
		r, err := h.Messages(ctx, room, from, "", mautrix.DirectionBackward, nil, 100)
		if err != nil {
			return n, fmt.Errorf("room cannot be read: %w", err)
		}
		for _, e := range r.Chunk {
			if e.Type.Type == event.EventMessage.Type {
				n++
			}
		}
		if from = r.End; from == "" || len(r.Chunk) == 0 {
			return n, nil
		}
	}
}

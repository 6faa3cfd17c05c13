//go:build goolm

package matrix

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image/png"
	"strings"
	"testing"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
	"presshand/bot/desk"
)

const load = "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue"

// setUp returns a stand whose account is set up, and what its set-up printed.
func setUp(t testing.TB) (*stand, string) {
	t.Helper()
	s := newStand(t)
	done, err := Setup(t.Context(), s.config, false)
	must(t, err)
	if done.RecoveryKey == "" {
		t.Fatal("set-up gave no recovery key")
	}
	return s, done.RecoveryKey
}

// meet makes a room with the bot, a hand and a bystander, and waits for the bot.
func meet(t testing.TB, h, bystander *hand, s *stand, encrypted bool) id.RoomID {
	t.Helper()
	room := h.room(t, encrypted, s.user(), bystander.UserID)
	bystander.join(t, room)
	h.hasJoined(t, room, s.user())
	for _, who := range []*hand{h, bystander} {
		if encrypted {
			who.knowsEncrypted(t, room)
		}
		who.knowsMember(t, room, s.user())
	}
	return room
}

// A plain room is answered in clear, an encrypted one sealed: notices in the
// thread, with HTML and a body that reads without it, pinging nobody.
func TestAccount_answersInTheThread(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	for name, encrypted := range map[string]bool{"plain": false, "encrypted": true} {
		t.Run(name, func(t *testing.T) {
			room := meet(t, ana, zoe, s, encrypted)
			root := ana.ask(t, room, "", "press, "+load)
			e := ana.answer(t, room, s.user(), root, 1)
			c := e.Content.AsMessage()
			if e.Mautrix.WasEncrypted != encrypted {
				t.Errorf("reply came encrypted: %v, want %v", e.Mautrix.WasEncrypted, encrypted)
			}
			if encrypted && e.Mautrix.TrustState < id.TrustStateCrossSignedTOFU {
				t.Errorf("reply is trusted as %v, want as from a device that is vouched for", e.Mautrix.TrustState)
			}
			if c.MsgType != event.MsgNotice || c.Mentions == nil || len(c.Mentions.UserIDs) > 0 || c.Mentions.Room {
				t.Errorf("reply is %s and mentions %+v, want a notice that mentions nobody", c.MsgType, c.Mentions)
			}
			if !strings.Contains(c.Body, "Read as 5 strips") || !strings.Contains(c.FormattedBody, "<strong>") {
				t.Errorf("body %q, HTML %q", c.Body, c.FormattedBody)
			}
			if zoe.answer(t, room, s.user(), root, 1).Content.AsMessage().Body != c.Body {
				t.Error("the bystander reads something else")
			}
		})
	}
}

// A room that was encrypted gets nothing in clear, whatever its state says
// later, and whatever the program remembers.
func TestAccount_neverInClear(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, false)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	ana.seal(t, room)
	ana.knowsEncrypted(t, room)
	ana.ask(t, room, root, "make it oak")
	if !ana.answer(t, room, s.user(), root, 2).Mautrix.WasEncrypted {
		t.Fatal("reply came in clear after encryption was turned on")
	}
	// nonsense in the state must not turn it off
	_, err := ana.SendStateEvent(t.Context(), room, event.StateEncryption, "", map[string]any{"algorithm": "none"})
	must(t, err)
	if _, err := ana.SendMessageEvent(t.Context(), room, event.EventMessage,
		&event.MessageEventContent{MsgType: event.MsgText, Body: "what about 22 inches", RelatesTo: (&event.RelatesTo{}).SetThread(root, root)},
		mautrix.ReqSendEvent{DontEncrypt: true}); err != nil {
		t.Fatal(err)
	}
	s.dealtWith(t)
	eventually(t, func() string {
		for _, e := range ana.replies(room, s.user(), root) {
			if strings.Contains(e.Content.AsMessage().Body, "22 inHg") {
				if !e.Mautrix.WasEncrypted {
					t.Fatal("reply came in clear after nonsense in the room's state")
				}
				return ""
			}
		}
		return "not answered"
	})
	s.shut(t)
	r, err := inClearFrom(ana, room, s.user())
	must(t, err)
	if r != 1 {
		t.Errorf("%d replies stand in clear, want the first only", r)
	}
}

// inClearFrom counts what a user said in clear.
func inClearFrom(h *hand, room id.RoomID, user id.UserID) (n int, err error) {
	r, err := h.Messages(context.Background(), room, "", "", mautrix.DirectionBackward, nil, 100)
	if err != nil {
		return 0, err
	}
	for _, e := range r.Chunk {
		if e.Sender == user && e.Type.Type == event.EventMessage.Type {
			n++
		}
	}
	return n, nil
}

// The store is lost, and a reply is sent before anything was synced: the state
// of the room comes from the homeserver, and the members too.
func TestAccount_sealsWithAnEmptyStore(t *testing.T) {
	s, key := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	s.shut(t)
	s.config.Store, s.config.RecoveryKey = t.TempDir()+"/new.db", key
	x, err := connect(t.Context(), checkedConfig(t, s.config))
	must(t, err)
	defer func() { must(t, x.close()) }()
	x.cipher, err = newCipher(t.Context(), x)
	must(t, err)
	_, err = x.Send(t.Context(), book.Outgoing{
		Key: "late", Place: book.Place{Service: Service, Room: string(room), Thread: string(root)}, Message: string(root), Event: "e",
		Text: "a late reply", At: time.Now(),
	})
	must(t, err)
	for _, who := range []*hand{ana, zoe} {
		if e := who.answer(t, room, s.user(), root, 2); !e.Mautrix.WasEncrypted || e.Content.AsMessage().Body != "a late reply" {
			t.Errorf("%s got %q, encrypted %v", who.word, e.Content.AsMessage().Body, e.Mautrix.WasEncrypted)
		}
	}
}

// A strict room counts a check from a device that is vouched for; not what was
// said in clear, which a homeserver can make up, nor what came sealed from a
// device that nobody vouches for.
func TestAccount_strictCheck(t *testing.T) {
	s, _ := setUp(t)
	s.strict = true
	s.start(t)
	ana, ben, eve := newHand(t, "ana"), newHand(t, "ben"), newHandWith(t, "eve", false)
	room := meet(t, ana, ben, s, true)
	_, err := ana.InviteUser(t.Context(), room, &mautrix.ReqInviteUser{UserID: eve.UserID})
	must(t, err)
	eve.join(t, room)
	eve.knowsEncrypted(t, room)
	eve.knowsMember(t, room, s.user())
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	ana.ask(t, room, root, "post it")
	ana.answer(t, room, s.user(), root, 2)
	const check = "1 checked, bar 1 in, strips 1/4"
	_, err = ben.SendMessageEvent(t.Context(), room, event.EventMessage,
		&event.MessageEventContent{MsgType: event.MsgText, Body: check, RelatesTo: (&event.RelatesTo{}).SetThread(root, root)},
		mautrix.ReqSendEvent{DontEncrypt: true})
	must(t, err)
	if got := ana.answer(t, room, s.user(), root, 3).Content.AsMessage().Body; !strings.Contains(got, "does not count") {
		t.Errorf("check in clear is answered %q", got)
	}
	eve.ask(t, room, root, check)
	if got := ana.answer(t, room, s.user(), root, 4).Content.AsMessage().Body; !strings.Contains(got, "does not count") {
		t.Errorf("check from a device that nobody vouches for is answered %q", got)
	}
	ben.ask(t, room, root, check)
	if got := ana.answer(t, room, s.user(), root, 5).Content.AsMessage().Body; !strings.Contains(got, "agrees") {
		t.Errorf("sealed check is answered %q", got)
	}
}

// A picture is encrypted where the room is, has its words as caption, and
// comes out as it went in.
func TestAccount_picture(t *testing.T) {
	s, _ := setUp(t)
	s.draw = true
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	for name, encrypted := range map[string]bool{"plain": false, "encrypted": true} {
		t.Run(name, func(t *testing.T) {
			room := meet(t, ana, zoe, s, encrypted)
			root := ana.ask(t, room, "", "press, "+load)
			c := ana.picture(t, room, s.user(), root)
			if c.Body == "" || c.Body == c.FileName || c.Info.MimeType != "image/png" || c.Info.Width == 0 {
				t.Errorf("picture has words %q, file name %q, info %+v", c.Body, c.FileName, c.Info)
			}
			if (c.File != nil) != encrypted || (c.URL != "") == encrypted {
				t.Errorf("picture's file is %v at %q in a room that is encrypted: %v", c.File, c.URL, encrypted)
			}
			uri := c.URL
			if encrypted {
				uri = c.File.URL
			}
			data, err := ana.DownloadBytes(t.Context(), uri.ParseOrIgnore())
			must(t, err)
			if encrypted {
				if _, err := png.Decode(bytes.NewReader(data)); err == nil {
					t.Error("homeserver holds the picture in clear")
				}
				must(t, c.File.DecryptInPlace(data))
			}
			if _, err := png.Decode(bytes.NewReader(data)); err != nil {
				t.Errorf("picture cannot be read: %v", err)
			}
		})
	}
}

// The same key twice is one message: the store knows it, and if the store was
// lost in between, the room does.
func TestSession_sendOnce(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	for name, encrypted := range map[string]bool{"plain": false, "encrypted": true} {
		t.Run(name, func(t *testing.T) {
			room := meet(t, ana, zoe, s, encrypted)
			root := ana.ask(t, room, "", "press, "+load)
			ana.answer(t, room, s.user(), root, 1)
			x, err := connect(t.Context(), checkedConfig(t, s.config))
			must(t, err)
			defer func() { must(t, x.close()) }()
			x.cipher, err = newCipher(t.Context(), x)
			must(t, err)
			o := book.Outgoing{
				Key: name + " twice", Place: book.Place{Service: Service, Room: string(room), Thread: string(root)}, Event: "e",
				Message: string(root), Text: "once", At: time.Now(),
			}
			first, err := x.Send(t.Context(), o)
			must(t, err)
			must(t, x.store.exec(t.Context(), `DELETE FROM known WHERE key = $1`, o.Key))
			server.Kill() // which also makes it forget transaction ids
			must(t, server.Up(t.Context()))
			o.Tries = 1
			second, err := x.Send(t.Context(), o)
			must(t, err)
			if first != second {
				t.Errorf("sent as %s and as %s, want one message", first, second)
			}
		})
	}
}

// A reply that shows a second time, because the homeserver had forgotten that
// it had it, is taken back.
func TestSession_latecomerTakenBack(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	for name, encrypted := range map[string]bool{"plain": false, "encrypted": true} {
		t.Run(name, func(t *testing.T) {
			room := meet(t, ana, zoe, s, encrypted)
			root := ana.ask(t, room, "", "press, "+load)
			first := ana.answer(t, room, s.user(), root, 1)
			s.dealtWith(t)
			x, err := connect(t.Context(), checkedConfig(t, s.config))
			must(t, err)
			defer func() { must(t, x.close()) }()
			x.cipher, err = newCipher(t.Context(), x)
			must(t, err)
			m, err := x.store.known(t.Context(), first.ID)
			must(t, err)
			server.Kill()
			must(t, server.Up(t.Context()))
			c := &event.MessageEventContent{MsgType: event.MsgNotice, Body: "again", RelatesTo: (&event.RelatesTo{}).SetThread(root, root)}
			twin, err := x.put(t.Context(), room, c, message{Key: m.Key}, encrypted)
			must(t, err)
			if twin == first.ID {
				t.Fatal("homeserver knows the transaction id, so that nothing is tested")
			}
			eventually(t, func() string {
				e, err := ana.GetEvent(t.Context(), room, twin)
				if err != nil { // a homeserver just started shows it late
					return err.Error()
				}
				if e.Unsigned.RedactedBecause == nil {
					return "the second reply stands"
				}
				return ""
			})
			if e, err := ana.GetEvent(t.Context(), room, first.ID); err != nil || e.Unsigned.RedactedBecause != nil {
				t.Errorf("the first reply was taken back too (%v)", err)
			}
		})
	}
}

// An event that makes the program panic, or that the store will never take,
// goes aside; what comes after it is answered.
func TestSession_poisonGoesAside(t *testing.T) {
	s, _ := setUp(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	bad := &poisoned{Store: s.store}
	s.store = bad
	s.start(t)
	room := meet(t, ana, zoe, s, true)
	for _, poison := range []string{"panic", "refuse"} {
		ana.ask(t, room, "", "press, "+poison)
	}
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	s.shut(t)
	st, err := openStore(t.Context(), s.config.Store)
	must(t, err)
	defer func() { must(t, st.close()) }()
	var n int
	must(t, st.one(t.Context(), []any{&n}, `SELECT count(*) FROM aside`))
	if n != 2 {
		t.Errorf("%d events stand aside, want 2", n)
	}
}

type poisoned struct{ book.Store }

func (p *poisoned) Receive(ctx context.Context, e book.Event, at time.Time, most int) (bool, error) {
	switch e.Text {
	case "panic":
		panic("poison")
	case "refuse":
		return false, errors.New("value cannot be stored")
	}
	return p.Store.Receive(ctx, e, at, most)
}

// While the store cannot take events the sync stands still, and nothing is lost.
func TestSession_waitsForTheStore(t *testing.T) {
	s, _ := setUp(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	sick := &failing{Store: s.store, left: 3}
	s.store = sick
	s.start(t)
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	if sick.left != 0 {
		t.Errorf("store was asked %d times less than it failed", sick.left)
	}
}

type failing struct {
	book.Store
	left int
}

func (f *failing) Receive(ctx context.Context, e book.Event, at time.Time, most int) (bool, error) {
	if f.left > 0 {
		f.left--
		return false, fmt.Errorf("no room: %w", book.ErrFull)
	}
	return f.Store.Receive(ctx, e, at, most)
}

var _ desk.Sender = (*session)(nil)

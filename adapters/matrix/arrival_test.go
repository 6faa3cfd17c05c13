//go:build goolm

package matrix

import (
	"fmt"
	"strings"
	"testing"

	"maunium.net/go/mautrix"
)

// A room of several that the bot comes into is told once what it is for, sealed
// where the room is, also after a restart; in a room of two it waits to be asked.
func TestAccount_arrives(t *testing.T) {
	s, _ := setUp(t)
	s.config.Welcome = true
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	for _, encrypted := range []bool{false, true} {
		room := ana.room(t, encrypted, zoe.UserID)
		zoe.join(t, room)
		_, err := ana.InviteUser(t.Context(), room, &mautrix.ReqInviteUser{UserID: s.user()})
		must(t, err)
		eventually(t, func() string {
			if n := len(ana.replies(room, s.user(), "")); n != 1 {
				return fmt.Sprintf("room (encrypted %v) is told %d things, want the welcome", encrypted, n)
			}
			return ""
		})
		if text := ana.replies(room, s.user(), "")[0].Content.AsMessage().Body; !strings.Contains(text, "pressing wood under vacuum") {
			t.Errorf("welcome is %q", text)
		}
		s.shut(t)
		s.start(t)
		root := ana.ask(t, room, "", "press, "+load)
		ana.answer(t, room, s.user(), root, 1)
		if n := len(ana.replies(room, s.user(), "")); n != 1 {
			t.Errorf("room is told %d things after a restart, want one still", n)
		}
	}
	two := ana.room(t, false, s.user())
	ana.hasJoined(t, two, s.user())
	root := ana.ask(t, two, "", load)
	ana.answer(t, two, s.user(), root, 1)
	if n := len(ana.replies(two, s.user(), "")); n != 0 {
		t.Errorf("room of two is told %d things unasked, want none", n)
	}
}

//go:build goolm

package matrix

import (
	"fmt"
	"testing"

	"maunium.net/go/mautrix/event"
)

// An edit to a question without a picture takes the earlier one away.
func TestAccount_pictureWithdrawn(t *testing.T) {
	s, _ := setUp(t)
	s.draw = true
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, true)
	root := ana.ask(t, room, "", "press, "+load)
	shows := func(pictures int) {
		t.Helper()
		eventually(t, func() string {
			n := 0
			for _, e := range ana.replies(room, s.user(), root) {
				if e.Content.AsMessage().MsgType == event.MsgImage {
					n++
				}
			}
			if n == pictures {
				return ""
			}
			return fmt.Sprintf("%d pictures, want %d", n, pictures)
		})
	}
	shows(1)
	c := &event.MessageEventContent{MsgType: event.MsgText, Body: "press, what is a caul"}
	c.SetEdit(root)
	ana.say(t, room, c)
	shows(0)
	s.dealtWith(t)
}

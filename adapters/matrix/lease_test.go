//go:build goolm

package matrix

import (
	"testing"
	"time"

	"presshand/bot/book"
)

// While a process serves the account no other may; it gives the account up in
// good order.
func TestServe_holdsTheAccount(t *testing.T) {
	s, _ := setUp(t)
	s.start(t)
	ana, zoe := newHand(t, "ana"), newHand(t, "zoe")
	room := meet(t, ana, zoe, s, false)
	root := ana.ask(t, room, "", "press, "+load)
	ana.answer(t, room, s.user(), root, 1)
	held := func() bool {
		t.Helper()
		got, err := s.store.Hold(t.Context(), "matrix/"+s.config.User, book.Claim{Worker: "another", Now: time.Now(), For: time.Second})
		must(t, err)
		return got
	}
	if held() {
		t.Error("another process takes the account while it is served")
	}
	s.shut(t)
	if !held() {
		t.Error("account is held by a process that ended")
	}
}

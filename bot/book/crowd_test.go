package book_test

import (
	"testing"

	"presshand/bot/book"
)

func TestTurnoutOf(t *testing.T) {
	for _, c := range []struct {
		most, heard, slowed int
		want                book.Turnout
	}{
		{20, 0, 0, book.Heard}, {20, 19, 0, book.Heard}, {20, 20, 0, book.Slowed}, {20, 20, 1, book.Silenced},
		{20, 19, 1, book.Heard},  // the first of them is more than a minute ago
		{20, 30, 0, book.Slowed}, // the limit was lowered
		{0, 1000, 0, book.Heard},
	} {
		if got := book.TurnoutOf(c.most, c.heard, c.slowed); got != c.want {
			t.Errorf("most %d, heard %d, slowed %d: message is %s, want %s", c.most, c.heard, c.slowed, got, c.want)
		}
	}
}

package postgres_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"presshand/adapters/adaptertest"
	"presshand/adapters/postgres"
	"presshand/adapters/postgres/pgserver"
	"presshand/bot/book"
)

// page is how PostgreSQL grows its tables, and segment how it makes its log:
// no limit may be lower than one of these.
const (
	page    = 8 << 10
	segment = 16 << 20
)

// The first time a page is cut off by the end of the disk, the second time
// there is none left at all.
func TestFullDisk(t *testing.T) {
	own, at := ownServer(t)
	limit := func(size int64) {
		if err := own.LimitFiles(t.Context(), size); err != nil {
			t.Fatal(err)
		}
	}
	room := int64(segment + page/2)
	adaptertest.FullDisk(t, at, open, adaptertest.Disk{
		Fill: func() { limit(room); room = segment + 256*page },
		Free: func() { limit(pgserver.Unlimited) },
	})
}

// Without room for its log the server gives up, and so does the next one.
// Started again with room, it has all that it had taken.
func TestReceive_logDoesNotFit(t *testing.T) {
	own, at := ownServer(t)
	s, err := postgres.Open(t.Context(), at)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if err := own.LimitFiles(t.Context(), segment/2+page/2); err != nil {
		t.Fatal(err)
	}
	kept := 0
	for err = receive(t, s, kept); err == nil; err = receive(t, s, kept) {
		if kept++; kept == 2000 {
			t.Fatal("the log never ran full")
		}
	}
	for range 3 {
		if !errors.Is(err, book.ErrFull) && !errors.Is(err, book.ErrLost) {
			t.Errorf("got %v, want that the disk is full or the store cannot be reached", err)
		}
		err = receive(t, s, kept)
	}
	_ = own.Down(t.Context()) // it may be down already
	if err := own.Up(t.Context()); err != nil {
		t.Fatal(err)
	}
	if err := receive(t, s, kept); err != nil {
		t.Errorf("with room again: %v", err)
	}
	d, err := s.Depth(t.Context())
	if err != nil || d.Inbox != kept+1 {
		t.Errorf("store holds %+v (%v), want the %d messages that it took before and one more", d, err, kept)
	}
}

// receive has a store keep the n-th message, which is long.
func receive(t *testing.T, s book.Store, n int) error {
	_, err := s.Receive(t.Context(), event(fmt.Sprint("e", n), strings.Repeat("five strips ", 10_000)), noon, 0)
	return err
}

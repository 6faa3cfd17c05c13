package sqlite_test

import (
	"bytes"
	"database/sql"
	"errors"
	"os"
	"strings"
	"testing"
	"time"

	"presshand/adapters/sqlite"
	"presshand/bot/book"
)

// What a person said, and who they are, is in none of the files of a store
// once they are forgotten, while it is open and others use it.
func TestForget_leavesNothingInTheFiles(t *testing.T) {
	path := file(t)
	s, err := sqlite.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	other, err := sqlite.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	traces := []string{"said by Zoltan", "zoltan@example", "answered to Zoltan", "thread of Zoltan", "edited by Zoltan"}
	e := event("e1", traces[0])
	e.From, e.Place.Thread = book.Person{ID: traces[1], Name: "Zoltan"}, "t1"
	for _, text := range []string{traces[0], traces[4]} {
		e.Text = text
		if _, err := s.Receive(t.Context(), e, noon, 0); err != nil {
			t.Fatal(err)
		}
		if _, err := s.ClaimEvent(t.Context(), book.Claim{Worker: "w", Now: noon, For: time.Minute}); err != nil {
			t.Fatal(err)
		}
		kept, err := s.Thread(t.Context(), "joinery", "t1")
		if err != nil {
			t.Fatal(err)
		}
		kept.Room, kept.Name = "joinery", "t1"
		kept.State = []byte(`{"said":"` + traces[3] + " " + text + `"}`)
		o := book.Outcome{Event: e.Key, Thread: &kept, Replies: []book.Outgoing{{Key: e.Key + "#0", Place: e.Place, Text: traces[2]}}}
		if err := s.Record(t.Context(), o, noon); err != nil {
			t.Fatal(err)
		}
		e.Key = "e2"
	}
	if held := tracesIn(t, path, traces); held != len(traces) {
		t.Fatalf("%d of the traces are in the files before, want %d", held, len(traces))
	}
	if n, err := other.Forget(t.Context(), traces[1]); err != nil || n != 2 {
		t.Fatalf("blanked %d (%v), want 2", n, err)
	}
	if held := tracesIn(t, path, append(traces, "Zoltan")); held != 0 {
		t.Errorf("%d traces are in the files still", held)
	}
}

// tracesIn counts which of some texts the file and its log hold.
func tracesIn(t *testing.T, path string, traces []string) (held int) {
	t.Helper()
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	log, err := os.ReadFile(path + "-wal")
	if err != nil {
		t.Fatal(err)
	}
	for _, trace := range traces {
		if bytes.Contains(append(file, log...), []byte(trace)) {
			held++
			t.Logf("held: %s", trace)
		}
	}
	return held
}

// Who reads all the while keeps the log from being cut off: that is told, and
// forgetting again does it.
func TestForget_whileSomebodyReads(t *testing.T) {
	path := made(t)
	s, err := sqlite.OpenSettings(t.Context(), path, "_pragma=busy_timeout(20)")
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	e := event("e2", "by Zoltan")
	e.From.ID = "zoltan"
	if _, err := s.Receive(t.Context(), e, noon, 0); err != nil {
		t.Fatal(err)
	}
	other, err := sql.Open("sqlite", strings.Replace(sqlite.DSN(path), "_txlock=immediate&", "", 1))
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	reading, err := other.Begin()
	if err != nil {
		t.Fatal(err)
	}
	var n int
	if err := reading.QueryRow(`SELECT COUNT(*) FROM inbox`).Scan(&n); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Forget(t.Context(), "zoltan"); !errors.Is(err, book.ErrBusy) {
		t.Errorf("forgetting while somebody reads gave %v, want %v", err, book.ErrBusy)
	}
	if err := reading.Rollback(); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Forget(t.Context(), "zoltan"); err != nil {
		t.Error(err)
	}
}

package sqlite_test

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"presshand/adapters/sqlite"
	"presshand/bot/book"
)

var noon = time.Date(2031, 3, 4, 12, 0, 0, 0, time.UTC)

func event(key, text string) book.Event {
	return book.Event{Key: key, Place: book.Place{Service: "test", Room: "joinery"}, Text: text, At: noon}
}

// made returns the path of a store that holds one event.
func made(t *testing.T) string {
	t.Helper()
	path := file(t)
	s, err := sqlite.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Receive(t.Context(), event("e1", "kept"), noon, 0); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

// still fails unless the store holds exactly the event that made put there.
func still(t *testing.T, path string) {
	t.Helper()
	s, err := sqlite.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	d, err := s.Depth(t.Context())
	if err != nil || d != (book.Depth{Inbox: 1}) {
		t.Errorf("store holds %+v (%v), want the one event that it took", d, err)
	}
}

func TestOpen_failures(t *testing.T) {
	dir := t.TempDir()
	text := filepath.Join(dir, "notes.txt")
	if err := os.WriteFile(text, []byte(strings.Repeat("not a database\n", 100)), 0o600); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]error{
		text: book.ErrDamaged, dir: book.ErrLost, filepath.Join(dir, "no", "such", "folder.db"): book.ErrLost,
	} {
		s, err := sqlite.Open(t.Context(), path)
		if err == nil {
			s.Close()
		}
		if !errors.Is(err, want) || !strings.Contains(err.Error(), path) {
			t.Errorf("%s: got %v, want %v and the path", path, err, want)
		}
	}
	if data, err := os.ReadFile(text); err != nil || !strings.HasPrefix(string(data), "not a database") {
		t.Error("a file that is not a store was written to")
	}
}

func TestReceive_lockedByAnother(t *testing.T) {
	path := made(t)
	s, err := sqlite.OpenSettings(t.Context(), path, "_pragma=busy_timeout(20)")
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	other, err := sql.Open("sqlite", sqlite.DSN(path))
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	lock, err := other.Begin() // takes the write lock at once
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Receive(t.Context(), event("e2", "lost"), noon, 0); !errors.Is(err, book.ErrBusy) {
		t.Errorf("locked: got %v, want busy", err)
	}
	if _, err := s.Thread(t.Context(), "joinery", "t1"); err != nil {
		t.Errorf("reading while another writes: %v", err)
	}
	if err := lock.Rollback(); err != nil {
		t.Fatal(err)
	}
	still(t, path)
	if fresh, err := s.Receive(t.Context(), event("e2", "again"), noon, 0); err != nil || !fresh {
		t.Errorf("once free: fresh %v, %v", fresh, err)
	}
}

func TestReceive_readOnly(t *testing.T) {
	path := made(t)
	s, err := sqlite.OpenSettings(t.Context(), path, "_pragma=query_only(1)")
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if _, err := s.Receive(t.Context(), event("e2", "lost"), noon, 0); !errors.Is(err, book.ErrReadOnly) {
		t.Errorf("got %v, want that the store cannot be written", err)
	}
	if err := s.Record(t.Context(), book.Outcome{Event: "e1"}, noon); !errors.Is(err, book.ErrReadOnly) {
		t.Errorf("got %v, want that the store cannot be written", err)
	}
	still(t, path)
}

// A disk is full when the file may not grow.
func TestReceive_fullDisk(t *testing.T) {
	path := made(t)
	s, err := sqlite.OpenSettings(t.Context(), path, "_pragma=max_page_count(1)") // SQLite takes it for the present size
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	long := strings.Repeat("five strips ", 10000)
	if _, err := s.Receive(t.Context(), event("e2", long), noon, 0); !errors.Is(err, book.ErrFull) {
		t.Errorf("got %v, want that the disk is full", err)
	}
	still(t, path)
	if err := s.Record(t.Context(), book.Outcome{Event: "e1"}, noon); err != nil {
		t.Errorf("what needs no room: %v", err)
	}
}

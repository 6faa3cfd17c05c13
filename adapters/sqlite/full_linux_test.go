package sqlite_test

import (
	"database/sql"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"

	"presshand/adapters/adaptertest"
	"presshand/adapters/sqlite"
	"presshand/adapters/sqlstore"
)

// limitFiles keeps all files of this process to a size; what would be written
// beyond it is refused, as on a full disk or at a quota.
func limitFiles(t *testing.T, size uint64) {
	t.Helper()
	var l syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &l); err != nil {
		t.Fatal(err)
	}
	l.Cur = min(size, l.Max)
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &l); err != nil {
		t.Fatal(err)
	}
}

const unlimited = ^uint64(0)

// alone runs the test in a process of its own and reports whether this is it: go test
// keeps a log of what a test opens, which the limit would hit as well.
func alone(t *testing.T) bool {
	t.Helper()
	const mark = "PRESSHAND_TEST_ALONE"
	if os.Getenv(mark) == t.Name() {
		return true
	}
	run := exec.CommandContext(t.Context(), os.Args[0], "-test.run=^"+t.Name()+"$", "-test.v")
	run.Env = append(os.Environ(), mark+"="+t.Name())
	out, err := run.CombinedOutput()
	if err != nil || !strings.Contains(string(out), "--- PASS: "+t.Name()) {
		t.Errorf("%v\n%s", err, out)
	}
	return false
}

// logSize is how long the write-ahead log of a store is.
func logSize(t *testing.T, path string) uint64 {
	t.Helper()
	f, err := os.Stat(path + "-wal")
	if err != nil {
		t.Fatal(err)
	}
	return uint64(f.Size())
}

func TestFullDisk(t *testing.T) {
	path := file(t)
	adaptertest.FullDisk(t, path, open, adaptertest.Disk{
		Fill: func() { limitFiles(t, logSize(t, path)+500_000) },
		Free: func() { limitFiles(t, unlimited) },
	})
}

// However far opening comes before the disk is full, it says so, and is done
// as if nothing had been once there is room.
func TestOpen_fullDisk(t *testing.T) {
	if !alone(t) {
		return
	}
	defer limitFiles(t, unlimited)
	for _, v := range []int64{0, 1, today(t)} {
		t.Run(fmt.Sprintf("from_schema_%d", v), func(t *testing.T) {
			refused := 0
			for size := uint64(0); opensOnFullDisk(t, size, v) != nil; size += 30_000 {
				if refused++; refused > 100 {
					t.Fatalf("still refused with room for %d bytes", size)
				}
			}
			if refused == 0 {
				t.Error("opened with no room at all")
			}
			t.Logf("refused %d times", refused)
		})
	}
}

// today is the version of the schema that a store has today.
func today(t *testing.T) int64 {
	t.Helper()
	db, err := sql.Open("sqlite", sqlite.DSN(file(t)))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	versions, err := sqlstore.Versions(db, sqlite.Dialect)
	if err != nil {
		t.Fatal(err)
	}
	return versions[len(versions)-1]
}

// ofSchema makes a store of a schema, 0 for none, with a thread in it.
func ofSchema(t *testing.T, path string, version int64) {
	t.Helper()
	if version == 0 {
		return
	}
	db, err := sql.Open("sqlite", sqlite.DSN(path))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := sqlstore.MigrateTo(t.Context(), db, sqlite.Dialect, version); err != nil {
		t.Fatal(err)
	}
	if _, err := db.ExecContext(t.Context(), `INSERT INTO threads (room, name, version, state, touched_at)
		VALUES ('joinery', 't1', 3, '{}', 0)`); err != nil {
		t.Fatal(err)
	}
}

// opensOnFullDisk opens a store while its files may have a size, then without
// a limit, and returns the first one's error.
func opensOnFullDisk(t *testing.T, size uint64, schema int64) error {
	t.Helper()
	path := file(t)
	ofSchema(t, path, schema)
	limitFiles(t, size)
	s, full := sqlite.Open(t.Context(), path)
	limitFiles(t, unlimited)
	if full == nil {
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		return nil
	}
	adaptertest.TellsThatItIsFull(t, full)
	if !strings.Contains(full.Error(), path) {
		t.Errorf("error is %q, want the path in it", full)
	}
	s, err := sqlite.Open(t.Context(), path)
	if err != nil {
		t.Fatalf("with room again after %q: %v", full, err)
	}
	defer s.Close()
	if th, err := s.Thread(t.Context(), "joinery", "t1"); err != nil || (th.Version == 3) != (schema > 0) {
		t.Errorf("after %q the thread is at %d (%v), want 3 where there was one", full, th.Version, err)
	}
	if fresh, err := s.Receive(t.Context(), event("e1", "after"), noon, 20); err != nil || !fresh {
		t.Errorf("after %q: fresh %v, %v", full, fresh, err)
	}
	return full
}

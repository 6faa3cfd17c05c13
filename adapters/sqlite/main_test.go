package sqlite_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"presshand/adapters/adaptertest"
	"presshand/adapters/sqlite"
	"presshand/bot/book"
)

func TestMain(m *testing.M) {
	adaptertest.Child(open)
	os.Exit(m.Run())
}

func open(ctx context.Context, path string) (book.Store, error) { return sqlite.Open(ctx, path) }

func file(t testing.TB) string { return filepath.Join(t.TempDir(), "press hand #1?.db") }

func fresh(t testing.TB) book.Store {
	t.Helper()
	s, err := sqlite.Open(t.Context(), file(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func memory(t testing.TB) book.Store {
	t.Helper()
	s, err := sqlite.Memory(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

package postgres_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"testing"

	"presshand/adapters/adaptertest"
	"presshand/adapters/postgres"
	"presshand/adapters/postgres/pgserver"
	"presshand/bot/book"
)

var server *pgserver.Server

// TestMain starts one server for all tests. Without PostgreSQL there is nothing
// to test, which is a failure where CI is set.
func TestMain(m *testing.M) {
	adaptertest.Child(open)
	os.Exit(run(m))
}

func open(ctx context.Context, url string) (book.Store, error) { return postgres.Open(ctx, url) }

func run(m *testing.M) int {
	var err error
	server, err = pgserver.Start(context.Background())
	switch {
	case errors.Is(err, pgserver.ErrNotInstalled) && os.Getenv("CI") == "":
		fmt.Fprintln(os.Stderr, err)
		return 0
	case err != nil:
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	code := m.Run()
	if err := server.Stop(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return code
}

func database(t testing.TB) string {
	t.Helper()
	url, err := server.Database(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return url
}

func fresh(t testing.TB) book.Store {
	t.Helper()
	s, err := postgres.Open(t.Context(), database(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

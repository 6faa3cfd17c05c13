package adaptertest

import (
	"database/sql"
	"testing"

	"presshand/adapters/sqlstore"
	"presshand/bot/book"
)

// Upgrade opens stores of each earlier schema: what they hold stays, and the
// schema is then today's. A store of a schema that is not known yet is refused.
// connect opens the database called name, which open makes a store of.
func Upgrade(t *testing.T, d sqlstore.Dialect, name func() string, connect func(string) (*sql.DB, error), open Open) {
	t.Helper()
	db, err := connect(name())
	must(t, err)
	versions, err := sqlstore.Versions(db, d)
	must(t, err)
	must(t, db.Close())
	if len(versions) == 0 {
		t.Fatal("there are no versions of the schema")
	}
	for _, v := range versions {
		at := name()
		db, err := connect(at)
		must(t, err)
		must(t, sqlstore.MigrateTo(t.Context(), db, d, v))
		// in each version since the first
		_, err = db.ExecContext(t.Context(), `INSERT INTO threads (room, name, version, state, touched_at) VALUES ('joinery', 't1', 3, '{"q":1}', 5)`)
		must(t, err)
		must(t, db.Close())
		s, err := open(t.Context(), at)
		must(t, err)
		th, err := s.Thread(t.Context(), room, "t1")
		if err != nil || th.Version != 3 || string(th.State) != `{"q":1}` {
			t.Errorf("from version %d: thread is at %d with %s (%v), want it as it was", v, th.Version, th.State, err)
		}
		post(t, s, ann, noon, plan(25.4, 6.35, "walnut", "epoxy"))
		must(t, s.Close())
		s, err = open(t.Context(), at) // and once more
		must(t, err)
		if _, err := s.Load(t.Context(), room, 1); err != nil {
			t.Errorf("from version %d: %v", v, err)
		}
		must(t, s.Close())
	}
	at := name()
	s, err := open(t.Context(), at)
	must(t, err)
	must(t, s.Close())
	db, err = connect(at)
	must(t, err)
	_, err = db.ExecContext(t.Context(), `INSERT INTO goose_db_version (version_id, is_applied) VALUES (9999, TRUE)`)
	must(t, err)
	must(t, db.Close())
	_, err = open(t.Context(), at)
	want(t, err, book.ErrNewer)
}

// OpenTogether opens a new store from several goroutines at once, as several
// processes do when they are first started.
func OpenTogether(t *testing.T, name string, open Open) {
	errs := make(chan error)
	for range 4 {
		go func() {
			s, err := open(t.Context(), name)
			if err == nil {
				err = s.Close()
			}
			errs <- err
		}()
	}
	for range 4 {
		if err := <-errs; err != nil {
			t.Error(err)
		}
	}
}

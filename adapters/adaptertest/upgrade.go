package adaptertest

import (
	"database/sql"
	"embed"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"presshand/adapters/sqlstore"
	"presshand/bot/book"
	"presshand/engine/unit"
)

// earlier has the rows that [told] came to, as they were written when a schema
// was new, by its version. It is never written anew: that is what it tries.
//
//go:embed upgrade/*.sql
var earlier embed.FS

// Upgrade opens stores of each earlier schema: what they hold stays, is read
// whole and can be worked with, and the schema is then today's. A store of a
// schema that is not known yet is refused. connect opens the database called
// name, which open makes a store of.
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
		t.Run(fmt.Sprintf("from_%d", v), func(t *testing.T) {
			at := name()
			db, err := connect(at)
			must(t, err)
			must(t, sqlstore.MigrateTo(t.Context(), db, d, v))
			fill(t, db, v)
			must(t, db.Close())
			s, err := open(t.Context(), at)
			must(t, err)
			sameAsToday(t, s, name(), open, v)
			goesOn(t, s, v)
			must(t, s.Close())
			s, err = open(t.Context(), at) // and once more
			must(t, err)
			if l, err := s.Load(t.Context(), room, 3); err != nil || l.Title != "tops" {
				t.Errorf("load posted after the upgrade is %q (%v), want tops", l.Title, err)
			}
			must(t, s.Close())
		})
	}
	t.Run("picture_of_5", func(t *testing.T) { picturesPassed(t, d, name(), connect, open) })
	t.Run("newer", func(t *testing.T) { refusesNewer(t, name(), connect, open) })
}

// fill puts the rows of a schema and of those before it into a database.
func fill(t *testing.T, db *sql.DB, version int64) {
	t.Helper()
	for v := range told {
		if v > version {
			continue
		}
		rows, err := earlier.ReadFile(fmt.Sprintf("upgrade/%d.sql", v))
		must(t, err)
		for statement := range strings.SplitSeq(strings.TrimSuffix(string(rows), ";\n"), ";\n") {
			_, err := db.ExecContext(t.Context(), statement)
			must(t, err)
		}
	}
}

// sameAsToday compares a store with one that was told the same today.
func sameAsToday(t *testing.T, s book.Store, name string, open Open, version int64) {
	t.Helper()
	today, err := open(t.Context(), name)
	must(t, err)
	defer today.Close()
	for _, v := range slices.Sorted(maps.Keys(told)) {
		if v <= version {
			told[v](t, today)
		}
	}
	got, want := lines(t, s), lines(t, today)
	for _, l := range want {
		if !slices.Contains(got, l) {
			t.Errorf("after the upgrade the store misses %s", l)
		}
	}
	for _, l := range got {
		if !slices.Contains(want, l) {
			t.Errorf("after the upgrade the store has %s, which is not as said", l)
		}
	}
}

func lines(t *testing.T, s book.Store) []string {
	t.Helper()
	var b strings.Builder
	must(t, s.Backup(t.Context(), &b))
	return strings.Split(b.String(), "\n")
}

// goesOn works with what [told] came to, up to a version, and posts load 3.
func goesOn(t *testing.T, s book.Store, version int64) {
	t.Helper()
	if e := take(t, s, claim("w", noon), "e2"); e.From != ann || e.Turnout != book.Heard {
		t.Errorf("open event is %+v, want it said by Ann and heard", e)
	}
	send(t, s, noon, "r2", "test")
	if th, err := s.Thread(t.Context(), room, "t1"); err != nil || th.Version != 1 || string(th.State) != `{"q":1}` {
		t.Errorf("thread is at %d with %s (%v), want it as it was", th.Version, th.State, err)
	}
	if version < 2 { // there was no book yet
		for range 2 {
			post(t, s, ann, noon, plan(25.4, 6.35, "walnut", "epoxy"))
		}
	} else {
		bookIsWhole(t, s)
	}
	if l := post(t, s, ann, noon, plan(25.4, 6.35, "walnut", "epoxy")); l.Number != 3 {
		t.Errorf("next load is %d, want 3", l.Number)
	}
}

// bookIsWhole reads the loads of [bookTold], and takes the first out.
func bookIsWhole(t *testing.T, s book.Store) {
	t.Helper()
	l, err := s.Load(t.Context(), room, 1)
	must(t, err)
	var acts []book.Act
	for _, e := range l.Entries {
		acts = append(acts, e.Act)
	}
	if want := []book.Act{book.Post, book.Check, book.Correct, book.Check, book.Hold, book.Clear, book.In}; !slices.Equal(acts, want) {
		t.Errorf("load 1 has the entries %v, want %v", acts, want)
	}
	if l.Revision != 2 || l.State != book.Pressing || l.Press != "2" || l.Job != "212" || l.GlueLot != "B7" ||
		l.Poster != ann || !l.InAt.Equal(noon.Add(8*time.Minute)) || l.Plan.Said[unit.BarHeight] != unit.Number(25.4) {
		t.Errorf("load 1 is %+v, want revision 2 in press 2 since 12:08, bar 25.4 mm", l)
	}
	if c := l.Check; c == nil || c.By != ben || !c.Agrees || len(c.Compared) != 2 || c.Measured[unit.BarHeight] != unit.Number(25) {
		t.Errorf("check of load 1 is %+v, want Ben's of revision 2", c)
	}
	l, err = s.Load(t.Context(), room, 2)
	must(t, err)
	if l.From != 1 || l.State != book.Posted || l.Check == nil || l.Check.Agrees || len(book.Differing(l.Check.Compared)) != 1 {
		t.Errorf("load 2 is %+v with check %+v, want a copy of 1 whose bar differs", l, l.Check)
	}
	found, err := s.Loads(t.Context(), room, book.Query{InPress: true, Like: unit.Facts{unit.GlueClass: unit.Word("epoxy")}})
	if err != nil || len(found) != 1 || found[0].Number != 1 {
		t.Errorf("with epoxy in the press are %d loads (%v), want load 1", len(found), err)
	}
	up := noon.Add(8*time.Minute + 2*time.Hour)
	if r, err := s.ClaimReminder(t.Context(), claim("w", up)); err != nil || r.Kind != book.TimeUp || r.Load != 1 {
		t.Errorf("due after two hours in the press is %+v (%v), want that the time of load 1 is up", r, err)
	}
	if l := do(t, s, 1, up, comeOut(ben, up)); l.State != book.Taken || len(l.Entries) != 8 {
		t.Errorf("load 1 is %s with %d entries, want out with 8", l.State, len(l.Entries))
	}
}

// picturesPassed: a picture that waited when nothing told it from words holds
// them up no longer.
func picturesPassed(t *testing.T, d sqlstore.Dialect, at string, connect func(string) (*sql.DB, error), open Open) {
	db, err := connect(at)
	must(t, err)
	must(t, sqlstore.MigrateTo(t.Context(), db, d, 5))
	for n, message := range []string{"m1/picture", "m2"} {
		_, err = db.ExecContext(t.Context(), fmt.Sprintf(`INSERT INTO outbox
			(key, n, service, room, thread, event, message, replaces, said, body, said_at)
			VALUES ('r%d', %d, 'test', 'joinery', 't1', '', '%s', '', '', '', 0)`, n+1, n+1, message))
		must(t, err)
	}
	must(t, db.Close())
	s, err := open(t.Context(), at)
	must(t, err)
	if o := send(t, s, noon, "r1", "test"); !o.Beside {
		t.Error("the picture is taken for words")
	}
	send(t, s, noon, "r2", "test")
	must(t, s.Close())
}

func refusesNewer(t *testing.T, at string, connect func(string) (*sql.DB, error), open Open) {
	s, err := open(t.Context(), at)
	must(t, err)
	must(t, s.Close())
	db, err := connect(at)
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

package adaptertest

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"testing"
	"time"

	"presshand/bot/book"
	"presshand/engine/unit"
)

// generated is how many loads the benchmarks of queries run on.
const generated = 1_000_000

// Generate fills the tables of an empty store with loads of one room, one
// posted each minute from noon on: three bars, seven species, five glues, and
// every 5000th of them in the press. It goes past the store, in statements
// that SQLite and PostgreSQL both know, because a million loads one by one
// take long.
func Generate(ctx context.Context, db *sql.DB, loads int) error {
	numbers := fmt.Sprintf(`WITH RECURSIVE g(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM g WHERE i < %d),
		l AS (SELECT i, 'species' || (i %% 7) AS species, 'glue' || (i %% 5) AS glue,
			CASE i %% 3 WHEN 0 THEN 19.05 WHEN 1 THEN 25.4 ELSE 38.1 END AS bar,
			CASE i %% 5000 WHEN 0 THEN 1 ELSE 0 END AS pressing,
			CAST(%d AS BIGINT) + CAST(60000000 AS BIGINT) * i AS at FROM g)`, loads, noon.UnixMicro())
	for _, statement := range []string{
		`INSERT INTO loads (room, number, state, in_press, press, glue, species, bar_mm, thickness_mm, posted_at, touched_at) ` + numbers + `
			SELECT 'joinery', i, CASE pressing WHEN 1 THEN 'pressing' ELSE 'posted' END, pressing, '', glue, species, bar, 6.35, at, at FROM l`,
		`INSERT INTO entries (room, load, seq, n, revision, act, person, person_name, said_at, event, detail) ` + numbers + `
			SELECT 'joinery', i, 1, i, 1, 'post', 'ann', 'Ann', at, 'e' || i,
			'{"plan":{"about":"side","said":{"bar_height_mm":' || bar || ',"strip_thickness_mm":6.35,"species":"' || species ||
			'","glue":"' || glue || '"},"verdict":"care"}}' FROM l`,
		`INSERT INTO entries (room, load, seq, n, revision, act, person, person_name, said_at, event, detail) ` + numbers + fmt.Sprintf(`
			SELECT 'joinery', i, 2, %d + i, 1, 'in', 'ben', 'Ben', at, 'i' || i, '{"anyway":true}' FROM l WHERE pressing = 1`, loads),
		`ANALYZE`,
	} {
		if _, err := db.ExecContext(ctx, statement); err != nil {
			return err
		}
	}
	return nil
}

// BenchmarkQueries times what people ask of the book, on a million loads.
func BenchmarkQueries(b *testing.B, s book.Store, db *sql.DB) {
	if err := Generate(b.Context(), db, generated); err != nil {
		b.Fatal(err)
	}
	last := noon.Add(generated * time.Minute)
	from, to := book.Today(last)
	bar, noBar := true, false
	walnut := unit.Facts{unit.Species: unit.Word("species3"), unit.StripThickness: unit.Number(6.35)}
	for _, q := range []struct {
		name  string
		query book.Query
		found int
	}{
		{"in_the_press", book.Query{InPress: true}, 50},
		{"today", book.Query{From: from, To: to}, 50},
		{"last_five_with_glue", book.Query{Like: unit.Facts{unit.GlueClass: unit.Word("glue2")}, Limit: 5}, 5},
		{"wood_thickness_bar", book.Query{Like: walnut, Bar: &bar, Limit: 5}, 5},
		{"bar_height", book.Query{Like: unit.Facts{unit.BarHeight: unit.Number(25)}, Limit: 5}, 5},
		{"wood_that_is_rare", book.Query{Like: unit.Facts{unit.Species: unit.Word("none")}}, 0},
		{"bar_that_is_rare", book.Query{Like: unit.Facts{unit.BarHeight: unit.Number(60), unit.Species: unit.Word("species3")}}, 0},
		{"bar_that_is_rare_in_any_wood", book.Query{Like: unit.Facts{unit.BarHeight: unit.Number(60)}}, 0},
		{"results_of_a_glue", book.Query{States: []book.State{book.Judged}, Like: unit.Facts{unit.GlueClass: unit.Word("glue2")}}, 0},
		{"on_hold", book.Query{States: []book.State{book.Held}}, 0},
		{"without_a_bar", book.Query{Bar: &noBar}, 0},
		{"wood_without_a_bar", book.Query{Bar: &noBar, Like: unit.Facts{unit.Species: unit.Word("species3")}}, 0},
		{"in_a_press_of_that_name", book.Query{InPress: true, Press: "2"}, 0},
	} {
		b.Run(q.name, func(b *testing.B) {
			for b.Loop() {
				found, err := s.Loads(b.Context(), room, q.query)
				if err != nil || len(found) != q.found {
					b.Fatalf("found %d (%v), want %d", len(found), err, q.found)
				}
			}
		})
	}
	b.Run("load", func(b *testing.B) {
		for b.Loop() {
			if _, err := s.Load(b.Context(), room, generated/2); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("next_number", func(b *testing.B) {
		for b.Loop() {
			if n, err := s.NextNumber(b.Context(), room); err != nil || n != generated+1 {
				b.Fatal(n, err)
			}
		}
	})
}

// BenchmarkRecord times what lies between a message and its answer being safe:
// the event received, and its outcome recorded with a load, a thread and a
// reply. Beside the mean it gives the median, which one slow disk flush does not
// move.
func BenchmarkRecord(b *testing.B, s book.Store) {
	b.Run("receive", func(b *testing.B) {
		var took laps
		for i := 0; b.Loop(); i++ {
			started := time.Now()
			e := event(fmt.Sprint("r", i), "t", "five strips")
			e.At = noon.Add(time.Duration(i) * 4 * time.Second) // as fast as one person may talk and be heard
			if _, err := s.Receive(b.Context(), e, noon, 20); err != nil {
				b.Fatal(err)
			}
			took.add(started)
		}
		took.report(b)
	})
	b.Run("record", func(b *testing.B) {
		var took laps
		for i := 0; b.Loop(); i++ {
			started := time.Now()
			key := fmt.Sprint("e", i)
			l := book.NewLedger(s, room)
			if _, err := l.Post(b.Context(), saying(ann, noon, key), book.Posting{Plan: plan(25.4, 6.35, "walnut", "epoxy")}); err != nil {
				b.Fatal(err)
			}
			o := book.Outcome{
				Entries: l.Entries(), Thread: &book.Thread{Room: room, Name: key, State: []byte(`{"load":1}`)},
				Replies: []book.Outgoing{{Key: key, Place: book.Place{Service: "test", Room: room}, Text: "posted"}},
			}
			if err := s.Record(b.Context(), o, noon); err != nil {
				b.Fatal(err)
			}
			took.add(started)
		}
		took.report(b)
	})
}

// laps are how long each round of a benchmark took.
type laps []time.Duration

func (l *laps) add(started time.Time) { *l = append(*l, time.Since(started)) }

func (l laps) report(b *testing.B) {
	slices.Sort(l)
	b.ReportMetric(float64(l[len(l)/2].Nanoseconds()), "median-ns/op")
}

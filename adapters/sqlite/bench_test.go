package sqlite_test

import (
	"database/sql"
	"testing"

	"presshand/adapters/adaptertest"
	"presshand/adapters/sqlite"
)

func BenchmarkRecord(b *testing.B) { adaptertest.BenchmarkRecord(b, fresh(b)) }

func BenchmarkQueries(b *testing.B) {
	path := file(b)
	s, err := sqlite.Open(b.Context(), path)
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	db, err := sql.Open("sqlite", sqlite.DSN(path))
	if err != nil {
		b.Fatal(err)
	}
	defer db.Close()
	adaptertest.BenchmarkQueries(b, s, db)
}

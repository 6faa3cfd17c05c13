package postgres_test

import (
	"database/sql"
	"testing"

	"presshand/adapters/adaptertest"
	"presshand/adapters/postgres"
)

func BenchmarkRecord(b *testing.B) { adaptertest.BenchmarkRecord(b, fresh(b)) }

func BenchmarkQueries(b *testing.B) {
	at := database(b)
	s, err := postgres.Open(b.Context(), at)
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	db, err := sql.Open("pgx", at)
	if err != nil {
		b.Fatal(err)
	}
	defer db.Close()
	adaptertest.BenchmarkQueries(b, s, db)
}

package main

import (
	"context"
	"database/sql"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"presshand/adapters/adaptertest"
	"presshand/adapters/sqlite"
)

// A million loads are listed and exported in a time and a space that do not
// grow out of hand.
func BenchmarkKept_million(b *testing.B) {
	const loads = 1_000_000
	path := filepath.Join(b.TempDir(), "shop.db")
	generate(b, path, loads)
	for _, c := range []struct {
		name string
		args []string
		rows int // at least so many lines
	}{
		{"loads", []string{"loads", "--store", path}, 500},
		{"export_csv", []string{"export", "--store", path, "--format", "csv"}, loads},
		{"export_json", []string{"export", "--store", path, "--format", "json"}, loads},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var lines lineCounter
				var errs strings.Builder
				code := run(context.Background(), c.args, streams{in: strings.NewReader(""), out: &lines, err: &errs})
				if code != exitOK || int(lines) < c.rows {
					b.Fatalf("code %d, %d lines, want %d; %s", code, lines, c.rows, errs.String())
				}
			}
		})
	}
}

// generate makes a store of so many loads.
func generate(b *testing.B, path string, loads int) {
	s, err := sqlite.Open(b.Context(), path)
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		b.Fatal(err)
	}
	defer db.Close()
	if err := adaptertest.Generate(b.Context(), db, loads); err != nil {
		b.Fatal(err)
	}
}

// A lineCounter takes what is printed and keeps the number of its lines.
type lineCounter int

func (n *lineCounter) Write(p []byte) (int, error) {
	*n += lineCounter(strings.Count(string(p), "\n"))
	return len(p), nil
}

var _ io.Writer = new(lineCounter)

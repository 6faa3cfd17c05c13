package press_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"
)

// reference returns the rows of a table of published numbers.
func reference(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows (%v), want a heading and more", name, len(rows), err)
	}
	return rows[1:]
}

// leading returns the number that a cell begins with.
func leading(t *testing.T, cell string) float64 {
	t.Helper()
	word, _, _ := strings.Cut(strings.Fields(cell)[0], ";")
	v, err := strconv.ParseFloat(word, 64)
	if err != nil {
		t.Fatalf("cell %q: %v", cell, err)
	}
	return v
}

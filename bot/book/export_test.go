package book_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"presshand/bot/book"
)

// pages is a book in memory, as the exports and a ledger read it.
type pages []book.Load

func (p pages) Entries(_ context.Context, room string, f func(book.Entry) error) error {
	for _, l := range p {
		for _, e := range l.Entries {
			if room != "" && e.Room != room {
				continue
			}
			if err := f(e); err != nil {
				return err
			}
		}
	}
	return nil
}

func (p pages) Load(_ context.Context, _ string, n int) (book.Load, error) {
	for _, l := range p {
		if l.Number == n {
			return l, nil
		}
	}
	return book.Load{}, book.ErrNotFound
}

func table(t testing.TB, p pages, room string) []map[string]string {
	t.Helper()
	var out bytes.Buffer
	if err := book.ExportCSV(t.Context(), p, room, &out); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var named []map[string]string
	for _, r := range rows[1:] {
		m := map[string]string{}
		for i, c := range r {
			m[rows[0][i]] = c
		}
		named = append(named, m)
	}
	return named
}

func TestExportCSV_tellsWhoWhenWhat(t *testing.T) {
	got := table(t, pages{after(t, "check", "in", "out", "judge", "undo")}, "joinery")
	want := []map[string]string{
		{"load": "14", "entry": "1", "act": "post", "state": "posted", "by": "Ann", "at": "2031-03-04T12:00:00Z", "title": "tops", "agrees": "", "good": ""},
		{"entry": "2", "act": "check", "state": "checked", "by": "Ben", "by_id": "ben", "at": "2031-03-04T12:01:00Z", "agrees": "true",
			"measured": `{"bar_height_mm":25.4,"strip_thickness_mm":6.35}`},
		{"entry": "3", "act": "in", "state": "pressing", "press": "2", "at": "2031-03-04T12:06:00Z", "anyway": ""},
		{"entry": "4", "act": "out", "state": "out", "at": "2031-03-04T13:40:00Z"},
		{"entry": "5", "act": "judge", "state": "judged", "note": "joint 3 open", "good": "false", "revision": "1"},
		{"entry": "6", "act": "undo", "state": "out", "undoes": "5"},
	}
	if len(got) != len(want) {
		t.Fatalf("got %d rows, want %d", len(got), len(want))
	}
	for i, w := range want {
		for column, cell := range w {
			if got[i][column] != cell {
				t.Errorf("row %d: %s is %q, want %q", i+1, column, got[i][column], cell)
			}
		}
	}
	if n := len(table(t, pages{posted(t)}, "loft")); n != 0 {
		t.Errorf("%d rows of another room, want none", n)
	}
}

// interleaved is a book whose loads were all posted before any went on.
type interleaved struct{ pages }

func (b interleaved) Entries(_ context.Context, _ string, f func(book.Entry) error) error {
	for seq := range b.pages[0].Entries {
		for _, l := range b.pages {
			if err := f(l.Entries[seq]); err != nil {
				return err
			}
		}
	}
	return nil
}

// A book of more loads than are kept in mind tells the state of each all the same.
func TestExportCSV_manyLoads(t *testing.T) {
	l := after(t, "check", "in", "undo")
	const many = 5000
	var b interleaved
	for n := range many {
		one := l
		one.Number, one.Entries = n+1, slices.Clone(l.Entries)
		for i := range one.Entries {
			one.Entries[i].Load = n + 1
		}
		b.pages = append(b.pages, one)
	}
	var out bytes.Buffer
	if err := book.ExportCSV(t.Context(), b, "", &out); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil || len(rows) != 1+4*many {
		t.Fatalf("got %d rows (%v), want %d", len(rows), err, 1+4*many)
	}
	for i, row := range rows[1:] {
		state := slices.Index(rows[0], "state")
		if want := []string{"posted", "checked", "pressing", "checked"}[i/many]; row[state] != want || row[1] != strconv.Itoa(i%many+1) {
			t.Fatalf("row %d is load %s, %s, want %d, %s", i+1, row[1], row[state], i%many+1, want)
		}
	}
}

func TestExportCSV_defusesFormulas(t *testing.T) {
	for _, note := range []string{
		`=HYPERLINK("http://example.com","click")`, "+1", "-1", "@SUM(A1)", " =1", "\t=1", "＝1", "|cmd", "%0A", "\r\n=1",
	} {
		l := posted(t)
		e, err := l.Hold(by(ben, 1), note)
		if err != nil {
			t.Fatal(err)
		}
		if l, err = l.Apply(e); err != nil {
			t.Fatal(err)
		}
		got := table(t, pages{l}, "")[1]["note"]
		if kept := strings.ReplaceAll("'"+note, "\r\n", "\n"); got != kept {
			t.Errorf("note %q is in the cell as %q, want %q", note, got, kept)
		}
	}
	if got := table(t, pages{after(t, "hold")}, "")[1]["note"]; got != "mat missing" {
		t.Errorf("a plain note is in the cell as %q", got)
	}
}

func TestExportJSON_readsBack(t *testing.T) {
	late := after(t, "check", "in")
	at := time.Date(2031, 3, 4, 13, 15, 0, 0, time.FixedZone("", 3600))
	e, err := late.TakeOut(by(ben, 100), at)
	if err != nil {
		t.Fatal(err)
	}
	if late, err = late.Apply(e); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := book.ExportJSON(t.Context(), pages{late}, "", &out); err != nil {
		t.Fatal(err)
	}
	var rows []struct {
		Load  int
		Act   string
		At    time.Time
		When  time.Time
		Plan  *book.Plan
		State string
	}
	if err := json.Unmarshal(out.Bytes(), &rows); err != nil {
		t.Fatal(err)
	}
	if len(rows) != 4 || rows[0].Plan == nil || rows[0].Plan.Said.Word("species") != "walnut" || rows[0].Load != 14 || rows[3].State != "out" {
		t.Errorf("got %+v, want four entries, the plan with the first", rows)
	}
	if !rows[3].When.Equal(at) || !rows[3].At.Equal(noon.Add(100*time.Minute)) {
		t.Errorf("out at %v, said at %v", rows[3].When, rows[3].At)
	}
	out.Reset()
	if err := book.ExportJSON(t.Context(), pages{}, "", &out); err != nil || strings.TrimSpace(out.String()) != "[]" {
		t.Errorf("an empty book is %q (%v), want []", out.String(), err)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestExport_fullDisk(t *testing.T) {
	p := pages{after(t, "check")}
	if err := book.ExportCSV(t.Context(), p, "", full{}); err == nil {
		t.Error("CSV on a full disk gives no error")
	}
	if err := book.ExportJSON(t.Context(), p, "", full{}); err == nil {
		t.Error("JSON on a full disk gives no error")
	}
}

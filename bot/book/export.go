package book

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"io"
	"strconv"
	"strings"
	"time"

	"presshand/engine/unit"
)

// An exporter reads the book of a store.
type exporter interface {
	Load(ctx context.Context, room string, n int) (Load, error)
	Entries(ctx context.Context, room string, f func(Entry) error) error
}

// line is one entry as it leaves the house. A time is in RFC 3339.
type line struct {
	Room     string       `json:"room"`
	Load     int          `json:"load"`
	Entry    int          `json:"entry"`
	Revision int          `json:"revision"`
	Act      Act          `json:"act"`
	State    State        `json:"state"` // of the load after the entry
	By       string       `json:"by"`
	ByID     string       `json:"by_id"`
	At       string       `json:"at"`
	When     string       `json:"when,omitempty"` // the time stated, if one was
	Title    string       `json:"title,omitempty"`
	Job      string       `json:"job,omitempty"`
	GlueLot  string       `json:"glue_lot,omitempty"`
	Press    string       `json:"press,omitempty"`
	Note     string       `json:"note,omitempty"`
	Agrees   *bool        `json:"agrees,omitempty"`
	Own      bool         `json:"own_check,omitempty"`
	Anyway   bool         `json:"anyway,omitempty"`
	Good     *bool        `json:"good,omitempty"`
	From     int          `json:"same_as,omitempty"`
	Undoes   []int        `json:"undoes,omitempty"`
	Measured unit.Facts   `json:"measured,omitempty"`
	Compared []Comparison `json:"compared,omitempty"`
	Plan     *Plan        `json:"plan,omitempty"`
}

func lineOf(e Entry, s State) line {
	d := e.Detail
	l := line{
		Room: e.Room, Load: e.Load, Entry: e.Seq, Revision: e.Revision, Act: e.Act, State: s,
		By: e.By.Name, ByID: e.By.ID, At: e.At.Format(time.RFC3339),
		Title: d.Title, Job: d.Job, GlueLot: d.GlueLot, Press: d.Press, Note: d.Note,
		Own: d.Own, Anyway: d.Anyway, From: d.From, Undoes: d.Undoes,
		Measured: d.Measured, Compared: d.Compared, Plan: d.Plan,
	}
	if d.When != nil {
		l.When = d.When.Format(time.RFC3339)
	}
	switch e.Act {
	case Check:
		l.Agrees = &d.Agrees
	case Judge:
		l.Good = &d.Good
	}
	return l
}

// recent is how many loads are kept in mind while exporting; the book of years
// does not fit in memory.
const recent = 2000

// lines calls f with each entry of a room, or of all where room is "", and
// with the state that it brought its load to.
func lines(ctx context.Context, from exporter, room string, f func(line) error) error {
	type place struct {
		room string
		load int
	}
	loads := map[place]Load{}
	return from.Entries(ctx, room, func(e Entry) error {
		at := place{e.Room, e.Load}
		l, ok := loads[at]
		if !ok && e.Seq > 1 {
			var err error
			if l, err = before(ctx, from, e); err != nil {
				return err
			}
		}
		l, err := l.Apply(e)
		if err != nil {
			return err
		}
		if !ok && len(loads) == recent {
			clear(loads)
		}
		loads[at] = l
		return f(lineOf(e, l.State))
	})
}

// before returns the load of an entry as it was before it.
func before(ctx context.Context, from exporter, e Entry) (Load, error) {
	l, err := from.Load(ctx, e.Room, e.Load)
	if err != nil {
		return Load{}, err
	}
	return Fold(l.Entries[:min(e.Seq-1, len(l.Entries))])
}

// ExportJSON writes the book as one JSON array, an object for each entry.
func ExportJSON(ctx context.Context, from exporter, room string, w io.Writer) error {
	between := "[\n"
	err := lines(ctx, from, room, func(l line) error {
		data, err := json.Marshal(l)
		if err != nil {
			return err
		}
		_, err = io.WriteString(w, between+string(data))
		between = ",\n"
		return err
	})
	if err != nil {
		return err
	}
	if between == "[\n" {
		_, err = io.WriteString(w, "[]\n")
		return err
	}
	_, err = io.WriteString(w, "\n]\n")
	return err
}

var columns = []string{
	"room", "load", "entry", "revision", "act", "state", "by", "by_id", "at", "when", "title", "job", "glue_lot",
	"press", "note", "agrees", "own_check", "anyway", "good", "same_as", "undoes", "measured", "verdict", "plan", "assumed", "figures",
}

// ExportCSV writes the book as a table, a row for each entry. No cell begins
// with what a spreadsheet takes for a formula.
func ExportCSV(ctx context.Context, from exporter, room string, w io.Writer) error {
	out := csv.NewWriter(w)
	if err := out.Write(columns); err != nil {
		return err
	}
	err := lines(ctx, from, room, func(l line) error {
		cells, err := l.cells()
		if err != nil {
			return err
		}
		for i, c := range cells {
			cells[i] = defused(c)
		}
		return out.Write(cells)
	})
	if err != nil {
		return err
	}
	out.Flush()
	return out.Error()
}

func (l line) cells() ([]string, error) {
	var said, assumed, figures, measured string
	var verdict string
	facts := []struct {
		to   *string
		from unit.Facts
	}{{&measured, l.Measured}}
	if l.Plan != nil {
		verdict = string(l.Plan.Verdict)
		facts = append(facts, []struct {
			to   *string
			from unit.Facts
		}{{&said, l.Plan.Said}, {&assumed, l.Plan.Assumed}, {&figures, l.Plan.Values}}...)
	}
	for _, f := range facts {
		if len(f.from) == 0 {
			continue
		}
		data, err := json.Marshal(f.from)
		if err != nil {
			return nil, err
		}
		*f.to = string(data)
	}
	undoes := make([]string, len(l.Undoes))
	for i, n := range l.Undoes {
		undoes[i] = strconv.Itoa(n)
	}
	return []string{
		l.Room, strconv.Itoa(l.Load), strconv.Itoa(l.Entry), strconv.Itoa(l.Revision), string(l.Act), string(l.State),
		l.By, l.ByID, l.At, l.When, l.Title, l.Job, l.GlueLot, l.Press, l.Note,
		maybe(l.Agrees), yes(l.Own), yes(l.Anyway), maybe(l.Good), nonZero(l.From), strings.Join(undoes, " "),
		measured, verdict, said, assumed, figures,
	}, nil
}

func maybe(b *bool) string {
	if b == nil {
		return ""
	}
	return strconv.FormatBool(*b)
}

func yes(b bool) string {
	if b {
		return "true"
	}
	return ""
}

func nonZero(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// defused puts an apostrophe before what a spreadsheet would run: a formula
// may also hide behind blanks or the full-width signs.
func defused(cell string) string {
	bare := strings.TrimLeft(cell, " \t\r\n\u00a0\u3000")
	if bare == "" {
		return cell
	}
	if strings.ContainsRune("=+-@|%＝＋－＠", []rune(bare)[0]) || strings.ContainsAny(cell[:1], "\t\r\n") {
		return "'" + cell
	}
	return cell
}

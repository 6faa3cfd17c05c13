package bot

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"presshand/bot/book"
	"presshand/engine/unit"
	"presshand/grammar"
)

// mostFound is how many loads are looked at where a question names no number.
const mostFound = 50

// list answers from the book.
func (t *turn) list(ctx context.Context, r *Reply, c *grammar.Command) error {
	if len(c.Loads) > 0 {
		for _, n := range c.Loads {
			if err := t.show(ctx, r, n); err != nil {
				return err
			}
		}
		return nil
	}
	s := sieveOf(c, t.phrase.Facts)
	q := t.query(c)
	most := q.Limit
	if most == 0 || most > book.MostLoads {
		most = mostFound
	}
	if s != (sieve{}) || c.Query != nil && c.Query.Count {
		most = book.MostLoads
	}
	q.Limit = min(most+1, book.MostLoads) // one more tells whether there are more
	loads, err := t.ledger.Find(ctx, q)
	if err != nil {
		return err
	}
	more := c.Query == nil || c.Query.Last == 0 || c.Query.Last > book.MostLoads
	more = more && len(loads) >= q.Limit
	loads = s.through(loads[:min(len(loads), most)])
	r.loads(loads...)
	t.saysList(r, c, loads, more)
	return nil
}

// query is what the store is asked for.
func (t *turn) query(c *grammar.Command) book.Query {
	q := book.Query{Like: unit.Facts{}, Press: c.Press}
	for _, f := range t.phrase.Facts {
		switch f.Field {
		case unit.GlueClass, unit.Species, unit.BarHeight, unit.StripThickness:
			q.Like[f.Field] = f.Value
		}
	}
	if c.Query == nil {
		return q
	}
	q.InPress, q.Limit = c.Query.Pressing, c.Query.Last
	switch {
	case c.Query.State == string(book.Taken):
		q.States = []book.State{book.Taken, book.Judged} // what was judged came out too
	case c.Query.State != "":
		q.States = []book.State{book.State(c.Query.State)}
	case c.Query.Result != "":
		q.States = []book.State{book.Judged}
	}
	q.From, q.To = span(c.Query, t.m.At)
	if c.Query.Bar || c.Query.NoBar {
		q.Bar = &c.Query.Bar
	}
	return q
}

// span returns the days that a question is about, none for all of them. Weeks
// begin on Monday.
func span(q *grammar.Query, now time.Time) (from, to time.Time) {
	day, next := book.Today(now)
	monday := day.AddDate(0, 0, -(int(day.Weekday())+6)%7)
	first := day.AddDate(0, 0, 1-day.Day())
	switch {
	case q.Span == "yesterday":
		return day.AddDate(0, 0, -1), day
	case q.Span == "this week":
		return monday, next
	case q.Span == "last week":
		return monday.AddDate(0, 0, -7), monday
	case q.Span == "this month":
		return first, next
	case q.Span == "last month":
		return first.AddDate(0, -1, 0), first
	case q.Today:
		return day, next
	}
	return from, to
}

// A sieve is what the found loads must have besides; the store knows no column
// for it.
type sieve struct{ result, job, lot string }

func sieveOf(c *grammar.Command, facts []grammar.Fact) sieve {
	var s sieve
	if c.Query != nil {
		s.result = c.Query.Result
	}
	for _, f := range facts {
		w, _ := f.Value.(unit.Word)
		switch f.Field {
		case unit.Job:
			s.job = string(w)
		case unit.GlueLot:
			s.lot = string(w)
		}
	}
	return s
}

func (s sieve) through(loads []book.Load) []book.Load {
	return slices.DeleteFunc(loads, func(l book.Load) bool {
		return s.result != "" && l.Good != (s.result == "good") || s.job != "" && !sameName(s.job, l.Job) || s.lot != "" && !sameName(s.lot, l.GlueLot)
	})
}

// sameName compares what people call a job or a lot: "B7", "b-7".
func sameName(a, b string) bool { return bareName(a) == bareName(b) }

const maxListed = 20

func (t *turn) saysList(r *Reply, c *grammar.Command, loads []book.Load, more bool) {
	pressing := c.Query != nil && c.Query.Pressing
	if len(loads) == 0 {
		text := "No such load in the book."
		switch {
		case pressing && !more:
			text = "Nothing is in the press."
		case more:
			text = fmt.Sprintf("No such load among the latest %d.", book.MostLoads)
		}
		r.say(Headline, text)
		return
	}
	text := foundSays(loads, more)
	if judged, good := results(loads); judged > 1 && (c.Query == nil || c.Query.Result == "") {
		text += fmt.Sprintf(", %d with a result, %d of them good", judged, good)
	}
	if pressing {
		text = "In the press: " + strings.Replace(text, "The", "the", 1)
	}
	r.say(Headline, text+":")
	for i, l := range loads {
		if i == maxListed {
			r.say(Figure, fmt.Sprintf("… and %d more.", len(loads)-maxListed))
			return
		}
		line := entitled(l) + ": " + stateSays[l.State]
		if l.InPress() {
			if l.State == book.Held {
				line += ", in the press"
			}
			line += t.pressingTimes(l)
		}
		if l.Finding != "" {
			line += ", result " + quoted(l.Finding)
		}
		r.say(Figure, line+".")
	}
}

// foundSays says how many loads were found; where there are more of them than
// were looked at, that these are the latest.
func foundSays(loads []book.Load, more bool) string {
	text := fmt.Sprintf("%d loads", len(loads))
	switch {
	case more && (len(loads) == mostFound || len(loads) == book.MostLoads):
		text = "The latest " + text
	case more:
		text += fmt.Sprintf(" among the latest %d", book.MostLoads)
	case len(loads) == 1:
		text = "One load"
	}
	return text
}

// results counts loads with a result, and those with a good one.
func results(loads []book.Load) (judged, good int) {
	for _, l := range loads {
		if l.State == book.Judged {
			judged++
			if l.Good {
				good++
			}
		}
	}
	return judged, good
}

// mostTold is how many entries a history shows, the latest ones.
const mostTold = 20

// history tells all that was done to a load.
func (t *turn) history(r *Reply, l book.Load) {
	r.say(Headline, entitled(l)+": "+stateSays[l.State]+".")
	from := max(0, len(l.Entries)-mostTold)
	if from > 0 {
		r.say(Figure, fmt.Sprintf("%d earlier entries are left out.", from))
	}
	for _, e := range l.Entries[from:] {
		line := capital(clockFrom(t.m.At, e.At)) + " " + callOf(e.By) + " " + actSays(e)
		if note := e.Detail.Note; note != "" && e.Act != book.Correct {
			line += ": " + quoted(note)
		}
		r.say(Figure, line+".")
	}
}

// actSays tells what an entry did.
func actSays(e book.Entry) string {
	switch {
	case e.Act == book.Check && e.Detail.Agrees:
		return "checked it, agrees"
	case e.Act == book.Check:
		return "checked it, differs"
	case e.Act == book.In && e.Detail.Anyway:
		return "put it in without a valid check"
	}
	return acts[e.Act]
}

var acts = map[book.Act]string{
	book.Post: "posted it", book.Uncheck: "withdrew the check", book.Hold: "held it", book.Clear: "cleared it", book.Correct: "corrected it",
	book.In: "put it in", book.Out: "took it out", book.Judge: "gave the result", book.Drop: "dropped it", book.Undo: "took that back",
}

// bareName is a name without its case and marks.
func bareName(s string) string {
	return strings.Map(func(c rune) rune {
		if unicode.IsLetter(c) || unicode.IsDigit(c) {
			return unicode.ToLower(c)
		}
		return -1
	}, s)
}

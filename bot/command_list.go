package bot

import (
	"context"
	"fmt"

	"presshand/bot/book"
	"presshand/engine/unit"
	"presshand/grammar"
)

// list answers from the book.
func (t *turn) list(ctx context.Context, r *Reply, c *grammar.Command) error {
	q := book.Query{Like: unit.Facts{}}
	if c.Query != nil {
		q.InPress, q.Limit = c.Query.Pressing, c.Query.Last
		if c.Query.State != "" {
			q.States = []book.State{book.State(c.Query.State)}
		}
		if c.Query.Today {
			q.From, q.To = book.Today(t.m.At)
		}
		if c.Query.Bar || c.Query.NoBar {
			q.Bar = &c.Query.Bar
		}
	}
	q.Press = c.Press
	for _, f := range t.phrase.Facts {
		switch f.Field {
		case unit.GlueClass, unit.Species, unit.BarHeight, unit.StripThickness:
			q.Like[f.Field] = f.Value
		}
	}
	loads, err := t.ledger.Find(ctx, q)
	if err != nil {
		return err
	}
	if len(c.Loads) > 0 {
		for _, n := range c.Loads {
			if err := t.show(ctx, r, n); err != nil {
				return err
			}
		}
		return nil
	}
	r.loads(loads...)
	t.saysList(r, c, loads)
	return nil
}

const maxListed = 20

func (t *turn) saysList(r *Reply, c *grammar.Command, loads []book.Load) {
	pressing := c.Query != nil && c.Query.Pressing
	if len(loads) == 0 {
		text := "No such load in the book."
		if pressing {
			text = "Nothing is in the press."
		}
		r.say(Headline, text)
		return
	}
	text := fmt.Sprintf("%d loads:", len(loads))
	if len(loads) == 1 {
		text = "One load:"
	}
	if judged, good := results(loads); judged > 1 {
		text = fmt.Sprintf("%d loads, %d with a result, %d of them good:", len(loads), judged, good)
	}
	if pressing {
		text = "In the press: " + text
	}
	r.say(Headline, text)
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

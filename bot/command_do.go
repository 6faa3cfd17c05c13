package bot

import (
	"context"
	"fmt"

	"presshand/grammar"
)

func (t *turn) show(ctx context.Context, r *Reply, n int) error {
	l, err := t.ledger.Load(ctx, n)
	if err != nil {
		return err
	}
	r.loads(l)
	if t.phrase.Command.History {
		t.history(r, l)
		return nil
	}
	t.card(r, l)
	return nil
}

// undo takes back what this person did last.
func (t *turn) undo(ctx context.Context, r *Reply, c *grammar.Command) error {
	n := 0
	if len(c.Loads) > 0 {
		n = c.Loads[0]
	}
	loads, err := t.ledger.Undo(ctx, t.saying(), n)
	if err != nil {
		return err
	}
	r.loads(loads...)
	for _, l := range loads {
		r.say(Headline, fmt.Sprintf("Taken back. %s is %s again.", entitled(l), stateSays[l.State]))
	}
	return nil
}

// notDone answers what was not done or is still to come: nothing changes.
func (t *turn) notDone(ctx context.Context, r *Reply, c *grammar.Command) error {
	loads, err := t.meant(ctx, c)
	if err != nil {
		return err
	}
	for _, n := range loads {
		l, err := t.ledger.Load(ctx, n)
		if err != nil {
			return err
		}
		r.loads(l)
		r.say(Headline, entitled(l)+" is "+stateSays[l.State]+". Nothing is changed.")
		switch {
		case c.ToCome:
			r.say(Question, fmt.Sprintf("Tell me when it has happened, like “%d %s”.", n, example(c.Meant, t.settings.Metric)))
		case l.HasValidCheck() && (c.Meant == "" || c.Meant == grammar.Check || c.Meant == grammar.Uncheck):
			r.say(Question, fmt.Sprintf("If its check does not stand, say “uncheck %d”.", n))
		}
	}
	if len(loads) == 0 {
		r.say(Headline, "Nothing is changed.")
	}
	return nil
}

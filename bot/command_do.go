package bot

import (
	"context"
	"fmt"
	"strings"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// check compares what a second person measured with the plan.
func (t *turn) check(ctx context.Context, r *Reply, n int) error {
	measured := t.measured()
	l, err := t.ledger.Do(ctx, n, func(l book.Load) (book.Entry, error) {
		return l.Measure(t.saying(), measured, t.settings.Policy)
	})
	if err != nil {
		return err
	}
	r.loads(l)
	st := styleOf(t.settings.Metric, Thread{Said: Statement(nil).stating(t.phrase.Command.Measured)})
	if l.HasValidCheck() {
		r.Verdict = engine.Good
		text := fmt.Sprintf("%s agrees, checked by %s.", entitled(l), callOf(l.Check.By))
		if l.Check.Own {
			text += " It is their own load, which this shop allows."
		}
		r.say(Headline, verdictWord(engine.Good)+text)
		r.say(Figure, fmt.Sprintf("When it goes in: “%d in”.", l.Number))
		return nil
	}
	r.Verdict = engine.Stop
	var each []string
	for _, c := range book.Differing(l.Check.Compared) {
		each = append(each, fmt.Sprintf("%s planned %s, measured %s", strings.TrimPrefix(nameOf(c.Field), "the "),
			st.plain(c.Field, c.Planned, unit.Unit{}), st.plain(c.Field, c.Measured, st.fields[c.Field])))
	}
	r.say(Headline, verdictWord(engine.Stop)+fmt.Sprintf("%s differs: %s.", entitled(l), strings.Join(each, "; ")))
	t.recomputed(r, st, l, measured)
	r.say(Question, fmt.Sprintf("Put it right and measure again, or say “correction to %d: …” if the plan was wrong.", l.Number))
	return nil
}

// recomputed adds the figures for what was measured.
func (t *turn) recomputed(r *Reply, st style, l book.Load, measured unit.Facts) {
	q := engine.Question{About: l.Plan.About, Said: l.Plan.Amended(measured), Room: t.profile.Said.facts()}
	a, err := t.bot.Engine.Compute(q)
	if err != nil || a.Verdict == engine.Ask {
		return
	}
	w := worked{want: Wanted{About: grammar.Topic(q.About)}, question: q, answer: a}
	head, used := st.headline(w)
	if head != "" {
		r.say(Figure, "As measured: "+head)
	}
	for i, line := range st.figureLines(w, used) {
		if i == 3 {
			break
		}
		r.say(Figure, line)
	}
	for f, v := range a.Values {
		if _, ok := r.Values[f]; !ok {
			r.Values[f] = v
		}
	}
	r.Drawn = append(r.Drawn, Drawn{q, a, st})
}

func (t *turn) show(ctx context.Context, r *Reply, n int) error {
	l, err := t.ledger.Load(ctx, n)
	if err != nil {
		return err
	}
	r.loads(l)
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

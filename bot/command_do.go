package bot

import (
	"context"
	"fmt"
	"slices"
	"strconv"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
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
	if n == 0 && t.before.Load > 0 {
		last, err := t.ledger.LastTouched(ctx, t.saying(), 0)
		if err != nil {
			return err
		}
		if !slices.ContainsFunc(last, func(l book.Load) bool { return l.Number == t.before.Load }) {
			t.asksWhichUndo(r, last)
			return nil
		}
	}
	if len(c.Loads) > 1 {
		for _, each := range c.Loads {
			one := &grammar.Command{Verb: grammar.Undo, Loads: []int{each}}
			if err := t.refuses(r, t.undo(ctx, r, one)); err != nil {
				return err
			}
		}
		return nil
	}
	loads, err := t.ledger.Undo(ctx, t.saying(), n)
	if err != nil {
		return err
	}
	r.loads(loads...)
	for _, l := range loads {
		r.say(Headline, fmt.Sprintf("Taken back%s. %s is %s again.", t.takenBack(l), entitled(l), stateSays[l.State]))
	}
	if len(loads) == 1 && meansSeveral(c.Note) {
		r.say(Question, "That was the last thing you did, and no more is taken back. Say “undo” again for the one before it.")
	}
	return nil
}

// asksWhichUndo asks where the last that somebody did was not done to the thread's load.
func (t *turn) asksWhichUndo(r *Reply, last []book.Load) {
	r.loads(last...)
	var names []string
	for _, l := range last {
		names = append(names, strconv.Itoa(l.Number))
	}
	r.Verdict = engine.Ask
	r.need(unit.LoadNumber)
	r.say(Headline, fmt.Sprintf("The last you did was to load %s, and load %d is this thread's. Nothing is changed.", listed(names, "and"), t.before.Load))
	r.say(Question, fmt.Sprintf("Say which: “undo %d” or “undo %d”.", last[0].Number, t.before.Load))
}

// takenBack tells what the last entry of a load took back: ": going in, at 07:20".
func (t *turn) takenBack(l book.Load) string {
	var out []string
	for _, e := range l.Entries {
		if slices.Contains(l.Last().Detail.Undoes, e.Seq) {
			out = append(out, deeds[e.Act]+", at "+clockFrom(t.m.At, e.At))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return ": " + listed(out, "and")
}

var deeds = map[book.Act]string{
	book.Post: "the posting", book.Check: "the check", book.Uncheck: "withdrawing the check", book.Hold: "the hold", book.Clear: "the clearing",
	book.Correct: "the correction", book.In: "going in", book.Out: "coming out", book.Judge: "the result", book.Drop: "the drop",
}

// notDone answers what was not done or is still to come: nothing changes.
func (t *turn) notDone(ctx context.Context, r *Reply, c *grammar.Command) error {
	if c.Lacks == grammar.LacksRest {
		return t.asksWhich(ctx, r, c)
	}
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
		case c.Lacks != "":
			if n == loads[len(loads)-1] {
				t.asksForLack(r, c, loads)
			}
		case c.ToCome:
			r.say(Question, "Tell me when it has happened, like “"+t.orderOf(c.Meant, n)+"”.")
		case c.Meant == grammar.Check && isUnchecked(l):
			r.say(Question, fmt.Sprintf("A check is what you measured yourself, like “%d %s”.", n, measuredExample(t.settings.Metric)))
		case c.Meant == grammar.Show:
			if next := nextWord(l); next != "" {
				r.say(Question, next)
			}
		case l.HasValidCheck() && (c.Meant == "" || c.Meant == grammar.Check || c.Meant == grammar.Uncheck):
			r.say(Question, fmt.Sprintf("If its check does not stand, say “uncheck %d”.", n))
		}
	}
	switch {
	case len(loads) == 0 && c.ToCome && c.Meant == grammar.Post:
		r.say(Headline, "Nothing is posted yet. Say “post it” when it is to be.")
	case len(loads) == 0:
		r.say(Headline, "Nothing is changed.")
	}
	return nil
}

// orderOf shows how a verb is said of a load: "1 in", "hold 1".
func (t *turn) orderOf(v grammar.Verb, n int) string {
	if slices.Contains([]grammar.Verb{grammar.Hold, grammar.Clear, grammar.Drop, grammar.Uncheck}, v) {
		return fmt.Sprintf("%s %d", v, n)
	}
	return fmt.Sprintf("%d %s", n, example(v, t.settings.Metric))
}

// asksForLack asks for what an order left open.
func (t *turn) asksForLack(r *Reply, c *grammar.Command, loads []int) {
	r.Verdict = engine.Ask
	like := t.orderOf(c.Meant, loads[0])
	switch c.Lacks {
	case grammar.LacksWhich:
		r.need(unit.LoadNumber)
		r.say(Question, fmt.Sprintf("Which of them? Say its number, like “%s”.", like))
	case grammar.LacksWhen:
		r.need(unit.AtTime)
		r.say(Question, fmt.Sprintf("When was that? Say it like “%s 2 hours ago”, or at what time today.", like))
	default:
		r.say(Question, fmt.Sprintf("I am not sure what you mean. If it is to stand in the book, say “%s”.", like))
	}
}

// nextWord is what a load waits to be told, or nothing.
func nextWord(l book.Load) string {
	switch l.State {
	case book.Held:
		return fmt.Sprintf("“clear %d” lets it go on.", l.Number)
	case book.Checked:
		return fmt.Sprintf("Say “%d in” when it is in the press.", l.Number)
	case book.Pressing:
		return fmt.Sprintf("Say “%d out” when it is out.", l.Number)
	case book.Taken:
		return fmt.Sprintf("How did it come out? Like “%d result: good” or “%[1]d result: joint 3 open”.", l.Number)
	}
	return ""
}

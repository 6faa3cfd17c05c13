package bot

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// post turns the thread's question into the room's next load.
func (t *turn) post(ctx context.Context, r *Reply, c *grammar.Command) error {
	thread := t.before.amended(t.phrase)
	r.Read = mergedFacts(read(thread, t.profile.Said.facts(), nil), r.Read)
	if len(thread.Said) == 0 || len(thread.Compare) > 0 || !pressable(thread) {
		r.Verdict = engine.Ask
		r.need(unit.StripCount)
		r.say(Headline, "There is no load to post in this thread yet. Describe one, like “6 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue”, then say “post it”.")
		if len(thread.Compare) > 0 {
			r.Lines[len(r.Lines)-1].Text = "You are still comparing. Say which one it is, then “post it”."
		}
		return nil
	}
	plan, ok := t.plan(r, thread)
	if !ok {
		return nil
	}
	l, err := t.ledger.Post(ctx, t.saying(), t.posting(c, plan, 0))
	if err != nil {
		return err
	}
	t.saysPosted(r, l)
	thread.Load = l.Number
	return t.keep(thread)
}

// pressable reports whether a thread's question is one about a load.
func pressable(thread Thread) bool {
	for _, w := range thread.Asks {
		if w.About == grammar.Load || w.About == grammar.Side || w.About == grammar.Stack || w.About == grammar.Glue || w.About == grammar.Flatten {
			return true
		}
	}
	return len(thread.Asks) == 0 && topicOf(thread.Said, nil) != ""
}

func mergedFacts(fs, over unit.Facts) unit.Facts {
	out := fs.Clone()
	maps.Copy(out, over)
	return out
}

// plan works a whole load out of what a thread says. Where something is
// missing it asks, and ok is false.
func (t *turn) plan(r *Reply, thread Thread) (book.Plan, bool) {
	return t.planOf(r, thread.Said.facts(), thread.Said.yielding(t.profile.Said.facts()))
}

func (t *turn) planOf(r *Reply, said, room unit.Facts) (book.Plan, bool) {
	q := engine.Question{About: engine.Load, Said: said, Room: room}
	a, err := t.bot.Engine.Compute(q)
	if err == nil && a.Verdict == engine.Ask {
		q.About = engine.Side
		if side, sideErr := t.bot.Engine.Compute(q); sideErr == nil && side.Verdict != engine.Ask {
			a = side
		}
	}
	switch {
	case err != nil:
		r.trouble(err)
		return book.Plan{}, false
	case a.Verdict == engine.Ask:
		r.Verdict = engine.Ask
		r.need(a.Needs...)
		r.ask(styleOf(t.settings.Metric, Thread{}), t.phrase)
		return book.Plan{}, false
	}
	return book.PlanOf(said, a), true
}

func (t *turn) posting(c *grammar.Command, plan book.Plan, from int) book.Posting {
	p := book.Posting{Plan: plan, Title: c.Title, From: from, Place: book.Place{Service: t.m.Via, Room: t.m.Room, Thread: t.m.Thread}}
	for _, f := range t.phrase.Facts {
		w, _ := f.Value.(unit.Word)
		switch f.Field {
		case unit.Title:
			p.Title = string(w)
		case unit.Job:
			p.Job = string(w)
		case unit.GlueLot:
			p.GlueLot = string(w)
		}
	}
	return p
}

func (t *turn) saysPosted(r *Reply, l book.Load) {
	r.loads(l)
	r.Verdict = l.Plan.Verdict
	done := "posted by " + callOf(l.Poster)
	if l.Revision > 1 {
		done = "changed by " + callOf(l.Author)
	}
	r.say(Headline, fmt.Sprintf("%s %s; by the figures: %s.", entitled(l), done, verdictSays[l.Plan.Verdict]))
	r.say(Question, fmt.Sprintf("Someone else please measure %s, and say it like “%d checked, bar …, strips …, gauge …”.", toMeasure(l.Plan), l.Number))
	for _, c := range l.Plan.Cautions {
		if says := cautionSays[c]; says != "" { // shown when it was planned; here only in the data
			r.Cautions = append(r.Cautions, says)
		}
	}
}

var verdictSays = map[engine.Verdict]string{
	engine.Good: "good", engine.Care: "take care", engine.Stop: "stop, do not press it like this", engine.None: "nothing to judge",
}

// copyLoad posts a load like another, with what the message changes.
func (t *turn) copyLoad(ctx context.Context, r *Reply, c *grammar.Command) error {
	from := c.From
	if from == 0 && len(c.Loads) > 0 {
		from = c.Loads[len(c.Loads)-1]
	}
	if from == 0 {
		from = t.before.Load
	}
	source, err := t.ledger.Load(ctx, from)
	if err != nil {
		return err
	}
	said := t.changed(source.Plan)
	plan, ok := t.planOf(r, said, t.profile.Said.facts())
	if !ok {
		return nil
	}
	p := t.posting(c, plan, from)
	if p.Title == "" {
		p.Title = source.Title
	}
	l, err := t.ledger.Post(ctx, t.saying(), p)
	if err != nil {
		return err
	}
	if len(c.Loads) > 0 && c.Loads[0] != l.Number && c.Loads[0] != from {
		r.say(Reason, fmt.Sprintf("The next number here is %d, so it is load %d and not %d.", l.Number, l.Number, c.Loads[0]))
	}
	t.saysPosted(r, l)
	return t.follow(said, l.Number)
}

// changed is a plan's question with what the message changes of it.
func (t *turn) changed(p book.Plan) unit.Facts {
	var s Statement
	for _, f := range orderOf(p.Said) {
		s = append(s, Said{Field: f, Value: p.Said[f]})
	}
	return Thread{Said: s}.amended(t.phrase).Said.facts()
}

// follow makes a load the one that the thread is about.
func (t *turn) follow(said unit.Facts, load int) error {
	thread := Thread{Asks: []Wanted{{About: grammar.Load}}, Load: load}
	for _, f := range orderOf(said) {
		thread.Said = append(thread.Said, Said{Field: f, Value: said[f]})
	}
	return t.keep(thread)
}

// orderOf returns the fields of some facts in the order of their names.
func orderOf(fs unit.Facts) []unit.Field { return slices.Sorted(maps.Keys(fs)) }

// correct makes a load's next revision.
func (t *turn) correct(ctx context.Context, r *Reply, n int) error {
	l, err := t.ledger.Load(ctx, n)
	if err != nil {
		return err
	}
	wasChecked := l.HasValidCheck()
	said := t.changed(l.Plan)
	plan, ok := t.planOf(r, said, t.profile.Said.facts())
	if !ok {
		return nil
	}
	p := t.posting(t.phrase.Command, plan, 0)
	l, err = t.ledger.Do(ctx, n, func(l book.Load) (book.Entry, error) {
		return l.Correct(t.saying(), book.Correction{Plan: plan, Title: p.Title, Job: p.Job, GlueLot: p.GlueLot, Note: t.phrase.Command.Note})
	})
	if err != nil {
		return err
	}
	if wasChecked {
		r.say(Reason, "The check of the earlier revision does not count any more.")
	}
	t.saysPosted(r, l)
	return nil
}

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

// notDone answers a statement that something was not done: nothing changes.
func (t *turn) notDone(ctx context.Context, r *Reply, c *grammar.Command) error {
	for _, n := range c.Loads {
		l, err := t.ledger.Load(ctx, n)
		if err != nil {
			return err
		}
		r.loads(l)
		r.say(Headline, entitled(l)+" is "+stateSays[l.State]+". Nothing is changed.")
		if l.HasValidCheck() {
			r.say(Question, fmt.Sprintf("If its check does not stand, say “uncheck %d”.", n))
		}
	}
	if len(c.Loads) == 0 {
		r.say(Headline, "Nothing is changed.")
	}
	return nil
}

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
	}
	q.Press = c.Press
	for _, f := range t.phrase.Facts {
		switch f.Field {
		case unit.GlueClass, unit.Species, unit.BarHeight, unit.StripThickness:
			q.Like[f.Field] = f.Value
		case unit.BarDenied:
			no := false
			q.Bar = &no
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
			line += " since " + clockOf(l.InAt)
			if up, ok := l.UpAt(); ok {
				line += ", done by " + clockOf(up)
			}
		}
		if l.Finding != "" {
			line += ", result " + quoted(l.Finding)
		}
		r.say(Figure, line+".")
	}
}

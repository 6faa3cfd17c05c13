package bot

import (
	"context"
	"fmt"
	"maps"
	"reflect"
	"slices"

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
		r.say(Headline, "There is no load to post in this thread yet. Describe one, like “"+loadExample(t.settings.Metric)+"”, then say “post it”.")
		if len(thread.Compare) > 0 {
			r.Lines[len(r.Lines)-1].Text = "You are still comparing " + styleOf(t.settings.Metric, thread).understood(Thread{Compare: thread.Compare}) + ". Say which one it is, then “post it”."
		}
		return nil
	}
	plan, ok := book.Plan{}, false
	if room := t.profile.Said.facts(); thread.lacksBar(Wanted{About: grammar.Side}, room) {
		r.Verdict = engine.Ask
		r.need(unit.BarHeight)
		r.ask(styleOf(t.settings.Metric, thread), t.phrase)
	} else {
		plan, ok = t.plan(r, thread)
	}
	if !ok { // a bare number may answer what it asks
		thread.Pending = pending(r.Needs, nil)
		return t.keep(thread)
	}
	l, err := t.ledger.Post(ctx, t.saying(), t.posting(c, plan, 0))
	if err != nil {
		return err
	}
	t.saysPosted(r, l)
	if slices.ContainsFunc(t.phrase.Facts, isFigured) { // nobody saw yet how they were read
		st := styleOf(t.settings.Metric, thread)
		r.say(Figure, t.headlineOf(l.Plan))
		r.say(ReadAs, "Read as "+st.understood(thread)+".")
	}
	thread.Load = l.Number
	thread.Said = thread.Said.without(unit.Title) // the next load has a name of its own
	return t.keep(thread)
}

// isFigured reports whether a fact bears on the figures, unlike a job or a lot.
func isFigured(f grammar.Fact) bool {
	return f.Field != unit.Job && f.Field != unit.GlueLot && f.Field != unit.Title
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
		r.trouble(err, t.settings.Metric)
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
	if p.Title == "" {
		p.Title = wordIn(plan.Said, unit.Title)
	}
	p.Job, p.GlueLot = wordIn(plan.Said, unit.Job), wordIn(plan.Said, unit.GlueLot)
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

func wordIn(fs unit.Facts, f unit.Field) string {
	w, _ := fs[f].(unit.Word)
	return string(w)
}

func (t *turn) saysPosted(r *Reply, l book.Load) {
	r.loads(l)
	r.Verdict = l.Plan.Verdict
	done := "posted by " + callOf(l.Poster)
	if l.Revision > 1 {
		done = "changed by " + callOf(l.Author)
	}
	r.say(Headline, fmt.Sprintf("%s %s; by the figures: %s.", entitled(l), done, verdictSays[l.Plan.Verdict]))
	if l.Revision > 1 || l.From > 0 { // else its figures were shown just before
		r.say(Reason, t.headlineOf(l.Plan))
	}
	r.say(Question, fmt.Sprintf("Someone else please measure %s, and say it like “%d checked, bar …, strips …, gauge …”.", toMeasure(l.Plan), l.Number))
	for _, c := range l.Plan.Cautions {
		if says := cautionSays[c]; says != "" { // shown when it was planned; here only in the data
			r.Cautions = append(r.Cautions, says)
		}
	}
}

// headlineOf is the figure that a plan hangs on.
func (t *turn) headlineOf(p book.Plan) string {
	a := engine.Answer{About: p.About, Verdict: p.Verdict, Values: p.Values, Assumed: p.Assumed, Checks: p.Checks}
	head, _ := t.styleOfPlan(p).headline(worked{
		want: Wanted{About: grammar.Topic(p.About)}, question: engine.Question{About: p.About, Said: p.Said}, answer: a,
	})
	return capital(head)
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
	return Thread{Said: statementOf(p.Said)}.amended(t.phrase).Said.facts()
}

// statementOf states facts in the order of their names.
func statementOf(fs unit.Facts) Statement {
	var s Statement
	for _, f := range slices.Sorted(maps.Keys(fs)) {
		s = append(s, Said{Field: f, Value: fs[f]})
	}
	return s
}

// follow makes a load the one that the thread is about.
func (t *turn) follow(said unit.Facts, load int) error {
	return t.keep(Thread{Asks: []Wanted{{About: grammar.Load}}, Said: statementOf(said), Load: load})
}

// correct makes a load's next revision.
func (t *turn) correct(ctx context.Context, r *Reply, n int) error {
	l, err := t.ledger.Load(ctx, n)
	if err != nil {
		return err
	}
	wasChecked := l.HasValidCheck()
	said := t.changed(l.Plan)
	if t.before.Load == n { // the thread's question goes on
		r.Read = mergedFacts(read(Thread{Said: statementOf(said)}, t.profile.Said.facts(), nil), r.Read)
	}
	plan, ok := t.planOf(r, said, t.profile.Said.facts())
	if !ok {
		return nil
	}
	p := t.posting(t.phrase.Command, plan, 0)
	if p.Job == l.Job {
		p.Job = ""
	}
	if p.GlueLot == l.GlueLot {
		p.GlueLot = ""
	}
	l, err = t.ledger.Do(ctx, n, func(l book.Load) (book.Entry, error) {
		return l.Correct(t.saying(), book.Correction{Plan: plan, Title: p.Title, Job: p.Job, GlueLot: p.GlueLot, Note: t.phrase.Command.Note})
	})
	if err != nil {
		return err
	}
	delete(r.Read, unit.Note)
	t.saysPosted(r, l)
	if wasChecked {
		r.say(Reason, "The check of the earlier revision does not count any more.")
	}
	if t.before.Load != n {
		return nil
	}
	thread := t.before.amended(t.phrase)
	thread.Said, thread.Load = restated(said, thread.Said), n
	return t.keep(thread)
}

// restated states facts as they were said before, where they are the same.
func restated(facts unit.Facts, before Statement) Statement {
	out := statementOf(facts)
	for i, x := range out {
		if was, ok := before.find(x.Field); ok && reflect.DeepEqual(was.Value, x.Value) {
			out[i] = was
		}
	}
	return out
}

package bot

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// errDoubtful says that a check agrees in its numbers but tells more than them.
var errDoubtful = errors.New("check tells more than its numbers")

// check compares what a second person measured with the plan.
func (t *turn) check(ctx context.Context, r *Reply, n int) error {
	measured := t.measured()
	var doubts []string
	l, err := t.ledger.Do(ctx, n, func(l book.Load) (book.Entry, error) {
		e, err := l.Measure(t.saying(), measured, t.settings.Policy)
		if doubts = t.speaksAgainst(l.Plan); err == nil && e.Detail.Agrees && len(doubts) > 0 {
			return book.Entry{}, errDoubtful
		}
		return e, err
	})
	if errors.Is(err, errDoubtful) {
		return t.saysDoubtful(ctx, r, n, doubts)
	}
	if refused := new(book.RefusedError); errors.As(err, &refused) && len(doubts) > 0 && refused.Load.HasValidCheck() {
		return t.saysDoubtful(ctx, r, n, doubts)
	}
	if err != nil {
		return err
	}
	r.loads(l)
	st := styleOf(t.settings.Metric, Thread{Said: Statement(nil).stating(t.phrase.Command.Measured)})
	if l.HasValidCheck() {
		t.saysAgreed(r, l)
		return nil
	}
	r.Verdict = engine.Stop
	var each []string
	for _, c := range book.Differing(l.Check.Compared) {
		each = append(each, st.differs(c))
	}
	r.say(Headline, verdictWord(engine.Stop)+fmt.Sprintf("%s differs: %s.", entitled(l), strings.Join(each, "; ")))
	if len(doubts) > 0 {
		r.say(Reason, "It also tells of "+listed(eachQuoted(doubts), "and")+".")
	}
	t.recomputed(r, st, l)
	r.say(Question, fmt.Sprintf("Put it right and measure again, or say “correction to %d: …” if the plan was wrong.", l.Number))
	return nil
}

// isWriter reports whether a name is that of who wrote the message.
func (t *turn) isWriter(name string) bool {
	called := strings.FieldsFunc(strings.ToLower(t.m.Name+" "+t.m.From), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) })
	return slices.Contains(called, strings.ToLower(name))
}

// notTheirs asks for what the writer measured where somebody else is said to have checked.
func (t *turn) notTheirs(ctx context.Context, r *Reply, c *grammar.Command) error {
	for _, f := range c.Measured {
		r.note(f.Text)
	}
	return t.notDone(ctx, r, &grammar.Command{Verb: grammar.NotDone, Meant: grammar.Check, Loads: c.Loads})
}

// saysAgreed tells that a check agrees, what nobody measured, and what the figures
// of the load say where that is to stop.
func (t *turn) saysAgreed(r *Reply, l book.Load) {
	text := fmt.Sprintf("%s agrees, checked by %s.", entitled(l), callOf(l.Check.By))
	if l.Check.Own {
		text += " It is their own load, which this shop allows."
	}
	r.Verdict = engine.Good
	if l.Plan.Verdict == engine.Stop {
		r.Verdict = engine.Stop
		text += " It is what was planned, but by the figures: " + verdictSays[engine.Stop] + "."
	}
	r.say(Headline, verdictWord(r.Verdict)+text)
	if l.Plan.Verdict == engine.Stop {
		r.say(Reason, t.headlineOf(l.Plan))
	}
	if left := unmeasured(l); len(left) > 0 {
		r.say(Reason, "Nobody measured "+listed(left, "and")+".")
	}
	if l.Plan.Verdict == engine.Stop {
		r.say(Question, fmt.Sprintf("Put it right with “correction to %d: …”; “%d in” presses it all the same.", l.Number, l.Number))
		return
	}
	r.say(Figure, fmt.Sprintf("When it goes in: “%d in”.", l.Number))
}

// unmeasured names what the second person could have measured and did not.
func unmeasured(l book.Load) []string {
	measured := l.Check.Measured
	gauged := measured.Has(unit.Vacuum) || measured.Has(unit.VacuumPercent) || measured.Has(unit.VacuumAbsolute)
	var out []string
	for _, m := range measurable {
		if book.Covers(l.Plan.Said, m.field) && !book.Covers(measured, m.field) && !(m.name == "gauge" && gauged) {
			out = append(out, m.name)
		}
	}
	return out
}

// recomputed adds the figures for what was measured.
func (t *turn) recomputed(r *Reply, st style, l book.Load) {
	measured := unit.Facts{}
	for _, c := range l.Check.Compared { // with what still stands from the check before
		measured[c.Field] = c.Measured
	}
	q := engine.Question{About: l.Plan.About, Said: asMeasured(l.Plan, measured), Room: t.profile.Said.facts()}
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
	r.Drawn = append(r.Drawn, Drawn{Question: q, Answer: a, style: st, title: fmt.Sprintf("Load %d, as measured", l.Number)})
}

// asMeasured is a plan's question with what was measured in the place of it.
func asMeasured(p book.Plan, measured unit.Facts) unit.Facts {
	said := p.Amended(measured)
	for f := range measured {
		for _, gone := range replaces[f] {
			if !measured.Has(gone) {
				delete(said, gone)
			}
		}
	}
	return said
}

// differs tells how a measured value is not the planned one.
func (st style) differs(c book.Comparison) string {
	name := strings.TrimPrefix(nameOf(c.Field), "the ")
	part := map[unit.Field]string{unit.BarDenied: "the bar", unit.MatDenied: "the mat"}[c.Field]
	if n, ok := c.Planned.(unit.Number); ok && part != "" {
		planned, way := unit.BarHeight, "high"
		if c.Field == unit.MatDenied {
			planned, way = unit.MatThickness, "thick"
		}
		return fmt.Sprintf("%s is planned %s %s and is not there", part, st.plain(planned, n, unit.Unit{}), way)
	}
	if part != "" {
		return part + " is planned and is not there"
	}
	return fmt.Sprintf("%s planned %s, measured %s", name, st.plain(c.Field, c.Planned, unit.Unit{}), st.plain(c.Field, c.Measured, st.fields[c.Field]))
}

// speaksAgainst returns what a check tells against itself: what the message leaves
// unclear, and parts of the plan that it denies.
func (t *turn) speaksAgainst(p book.Plan) []string {
	out := t.phrase.Command.Doubts
	for _, part := range t.phrase.Drops {
		planned := slices.ContainsFunc(parts[part], p.Said.Has)
		if _, compared := denials[part]; planned && !compared {
			out = append(out[:len(out):len(out)], "no "+string(part))
		}
	}
	return out
}

func eachQuoted(texts []string) []string {
	out := make([]string, len(texts))
	for i, text := range texts {
		out[i] = quoted(text)
	}
	return out
}

// saysDoubtful asks about what a check tells beside its numbers. An earlier check of the
// load does not stand against it.
func (t *turn) saysDoubtful(ctx context.Context, r *Reply, n int, doubts []string) error {
	l, err := t.ledger.Load(ctx, n)
	if err != nil {
		return err
	}
	says := "Load %d is not checked yet, because of %s."
	unclear := t.phrase.Command.Unclear
	if l.HasValidCheck() && !slices.ContainsFunc(doubts, func(d string) bool { return !slices.Contains(unclear, d) }) {
		r.loads(l)
		r.Verdict = engine.Ask
		r.need(unit.Measured)
		r.say(Headline, fmt.Sprintf("Load %d is still checked; I do not understand %s, so nothing is changed.", n, listed(eachQuoted(doubts), "and")))
		r.say(Question, fmt.Sprintf("If its check does not stand, say “uncheck %d”; if something is wrong, “hold %d: …”.", n, n))
		return nil
	}
	if l.HasValidCheck() { // what was found since speaks against it
		l, err = t.ledger.Do(ctx, n, func(l book.Load) (book.Entry, error) {
			return l.Uncheck(t.saying(), strings.Join(doubts, "; "))
		})
		says = "Load %d is not checked any more, because of %s."
	}
	if err != nil {
		return err
	}
	r.loads(l)
	r.Verdict = engine.Ask
	r.need(unit.Measured)
	r.say(Headline, fmt.Sprintf(says, n, listed(eachQuoted(doubts), "and")))
	r.say(Question, fmt.Sprintf("Say again what you measured, one number for each thing. If something is wrong, “hold %d: …” stops the load.", n))
	return nil
}

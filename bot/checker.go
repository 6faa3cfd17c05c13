package bot

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// unchecked returns the thread's load where it waits for its check and the
// message is from someone who may measure it: the figures of the plan are not
// for them.
func (t *turn) unchecked(ctx context.Context) (book.Load, bool, error) {
	if t.before.Load == 0 {
		return book.Load{}, false, nil
	}
	l, err := t.ledger.Load(ctx, t.before.Load)
	if errors.As(err, new(*book.RefusedError)) { // there is no such load
		return l, false, nil
	}
	return l, err == nil && isUnchecked(l) && t.mayCheck(l), err
}

func isUnchecked(l book.Load) bool {
	return l.State == book.Posted || l.State == book.Held && l.HeldFrom == book.Posted
}

// mayCheck reports whether whoever wrote the message could be a load's second
// person.
func (t *turn) mayCheck(l book.Load) bool {
	named := t.settings.Policy.Checkers
	return t.m.From != l.Poster.ID && t.m.From != l.Author.ID && (len(named) == 0 || slices.Contains(named, t.m.From))
}

// toChecker answers a possible checker in the thread of an unchecked load: what
// they measured is a check, a single figure is asked about, and what would show
// the plan is put off. It reports false for all else.
func (t *turn) toChecker(ctx context.Context) (Reply, bool, error) {
	p := &t.phrase
	if p.Command != nil || p.NewStart {
		return Reply{}, false, nil
	}
	l, is, err := t.unchecked(ctx)
	if err != nil || !is {
		return Reply{}, false, err
	}
	figured := t.asksFigures() && !p.Inferred
	switch {
	case !figured && t.measures() && t.takesForCheck():
		r, err := t.command(ctx)
		return r, true, err
	case !figured && len(p.Facts) == 1 && isMeasurable(p.Facts[0]) && !t.changesByTone() && !asksByTone(strings.ToLower(t.m.Text)):
		return t.asksWhetherMeasured(l), true, nil
	case t.asksFigures() || t.asks(grammar.Why) || t.amends() && !t.changesLittle():
		return t.keepsFigures(l), true, nil
	}
	return Reply{}, false, nil
}

// measuring are words of somebody who holds a tape.
var measuring = regexp.MustCompile(`(?i)\b(checked|rechecked|measured|verified|i get|i got|i find|i found|i read)\b`)

// measures reports whether a message tells what somebody measured: two things
// that a tape or a gauge reads and nothing else, or one with a word of measuring.
func (t *turn) measures() bool {
	facts := t.phrase.Facts
	if len(facts) == 0 || !slices.ContainsFunc(facts, isMeasurable) || asksByTone(strings.ToLower(t.m.Text)) || t.changesByTone() {
		return false
	}
	all := !slices.ContainsFunc(facts, func(f grammar.Fact) bool { return !isMeasurable(f) && !isDenied(f) })
	return all && (len(facts) > 1 || len(t.phrase.Unused) > 0) || measuring.MatchString(t.m.Text)
}

func isMeasurable(f grammar.Fact) bool {
	return slices.ContainsFunc(measurable, func(m measuredPart) bool { return m.field == f.Field })
}

func isDenied(f grammar.Fact) bool { return f.Field == unit.BarDenied || f.Field == unit.MatDenied }

// takesForCheck reads the message again as a check.
func (t *turn) takesForCheck() bool {
	text := "checked, " + withoutMarkup(t.m.Text)
	if m := ofLoad.FindStringSubmatch(t.m.Text); m != nil { // "1: bar 3/4, strips 1/4" in the thread of another
		text = m[1] + " checked, " + m[2]
	}
	p := t.bot.Parse(text, grammar.Habit{Metric: t.settings.Metric})
	if p.Command != nil && p.Command.Verb == grammar.NotDone && p.Command.Meant == grammar.Check {
		t.phrase = p // "not checked yet, bar 1, strips 1/2"
		return true
	}
	if p.Command == nil || p.Command.Verb != grammar.Check || len(p.Command.Measured) == 0 {
		return false
	}
	t.phrase = p
	return true
}

// changeWords are words by which someone changes the plan rather than tells what is.
var changeWords = []string{"make", "change", "use", "actually", "sorry", "should", "without", "take", "swap", "switch", "set", "oops", "correction", "wrong", "we'll", "instead", "needs", "must", "let's", "lets"}

// changesByTone reports whether a message has a word of changing a plan.
func (t *turn) changesByTone() bool {
	words := strings.FieldsFunc(strings.ToLower(t.m.Text), func(c rune) bool { return strings.ContainsRune(" ,.:;!?\n\t", c) })
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(changeWords, w) }) || strings.Contains(strings.ToLower(t.m.Text), "go with")
}

// asksWhetherMeasured asks what a single figure of an unchecked load is.
func (t *turn) asksWhetherMeasured(l book.Load) Reply {
	r := t.aboutUnchecked(l)
	r.need(unit.Measured)
	r.say(Headline, fmt.Sprintf("Did you measure that, or is it a correction? Nothing is changed in load %d.", l.Number))
	r.say(Question, fmt.Sprintf("Measured: say it with a second thing, like “%d checked, bar …, gauge …”. A correction: “correction to %d: …”.", l.Number, l.Number))
	return r
}

// keepsFigures puts off a question that would show the plan.
func (t *turn) keepsFigures(l book.Load) Reply {
	r := t.aboutUnchecked(l)
	r.say(Headline, fmt.Sprintf("Load %d waits for its second check, so I keep its figures from whoever may measure it.", l.Number))
	r.say(Question, fmt.Sprintf("Tell me what you measured: “%d checked, bar …, strips …, gauge …”. For a change say “correction to %d: …”; a question of its own begins with “new one:”.", l.Number, l.Number))
	return r
}

func (t *turn) aboutUnchecked(l book.Load) Reply {
	r := Reply{About: grammar.Book, Verdict: engine.Ask, Values: unit.Facts{}}
	r.Read = read(Thread{Said: Statement(nil).stating(t.phrase.Facts)}, nil, nil)
	r.note(t.phrase.Unused...)
	r.loads(l)
	return r
}

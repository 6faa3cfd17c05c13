package bot

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// namedFirst begins what is said of a load by its number: "load 3: make it 5 strips", "3
// should be 7 strips", "for 3 use epoxy".
var namedFirst = regexp.MustCompile(`(?i)^\W*(?:(?:sorry|ok|okay|oops|actually|so|hey|wait)[,.\s]+)*((?:for |on |in )?(?:load |#|no\.? ?|number )*)(\d{1,6})(\s*[:=]\s*|\s*,?\s+)((?:(?:please\s+)?(?:should(?:'ve| have| be|ve)?(?: been| be)?|must be|is actually|is really|was actually|actually|really|make it|make that|change it to|change to|change|needs to be|needs to have|needs|is meant to be|was meant to be|is supposed to be|gets|use|takes|wants|has actually|has|is)\s+)*)(.+)$`)

// asksAfter opens a question behind a number that may be that of an item of a list.
var asksAfter = regexp.MustCompile(`(?i)\b(how|what|whats|what's|when|which|why|where|who|whether|can|does|do|will|is it|are)\b`)

// correctsNamed reads what changes a load that is named by its number outside its own
// thread. Who did not plan it and says no word of changing may have measured it, so
// that one is asked.
func (t *turn) correctsNamed(ctx context.Context) (Reply, bool, error) {
	p := &t.phrase
	m := namedFirst.FindStringSubmatch(strings.TrimSpace(withoutMarkup(t.m.Text)))
	if m == nil || p.Command != nil || p.NewStart || !t.before.empty() && t.before.Load == 0 || asksByTone(strings.ToLower(t.m.Text)) || asksAfter.MatchString(m[5]) || !slices.Contains(p.Unused, m[2]) {
		return Reply{}, false, nil
	}
	n, err := strconv.Atoi(m[2])
	changing, bare := strings.TrimSpace(m[4]) != "", strings.TrimSpace(m[1]) == "" && strings.TrimSpace(m[3]) == ""
	if err != nil || n == t.before.Load || !changing && !strings.ContainsAny(m[3], ":=") || !p.Inferred && t.asksFigures() && strings.TrimSpace(m[4]) == "" {
		return Reply{}, false, nil
	}
	l, err := t.ledger.Load(ctx, n)
	if errors.As(err, new(*book.RefusedError)) {
		return Reply{}, false, nil
	}
	if err != nil {
		return Reply{}, false, fmt.Errorf("load book: %w", err)
	}
	said := t.bot.Parse(fmt.Sprintf("correction to %d: %s", n, m[5]), grammar.Habit{Metric: t.settings.Metric})
	c := said.Command
	if c == nil || c.Verb != grammar.Correct || len(said.Facts) == 0 || len(said.Facts) >= wholeQuestion || len(said.Unused)+len(said.Choices)+len(said.Refused)+len(said.Clashes) > 0 {
		return Reply{}, false, nil
	}
	own := t.m.From == l.Poster.ID || t.m.From == l.Author.ID
	waits := l.State == book.Posted || l.State == book.Checked || l.State == book.Held && l.HeldFrom != book.Pressing
	if wishes := hesitates.MatchString(t.m.Text); !waits || wishes || !own && (!changing || bare || tellsOnly.MatchString(m[4])) {
		return t.asksWhetherToChange(l, m[5]), true, nil
	}
	t.phrase = said
	t.phrase.Command.Note = t.m.Text
	r, err := t.command(ctx)
	return r, true, err
}

// tellsOnly may tell of what was found as well as of what is planned: "load 3 has 7 strips".
var tellsOnly = regexp.MustCompile(`(?i)^(?:(?:is|has|was|really|actually|gets|takes)\s*)*$`)

// hesitates is said by who is not sure, or tells of another's word.
var hesitates = regexp.MustCompile(`(?i)\b(maybe|perhaps|might|probably|think|guess|reckon|tomorrow|later|next time|not|don'?t|isn'?t|shouldn'?t|said|says|unless|hope|could|would)\b`)

// asksWhetherToChange leaves a load as it is that somebody may have meant to change.
func (t *turn) asksWhetherToChange(l book.Load, what string) Reply {
	r := Reply{About: grammar.Book, Verdict: engine.Ask, Values: unit.Facts{}}
	r.loads(l)
	r.say(Headline, fmt.Sprintf("%s is %s. Nothing is changed in it.", entitled(l), stateSays[l.State]))
	r.say(Question, fmt.Sprintf("If its plan is to change, say “correction to %d: %s”; what you measured begins with “%d checked”.", l.Number, strings.TrimRight(what, " .!"), l.Number))
	return r
}

// looksGood takes "1 looks good" for a result where the load is out, of which there is
// nothing to measure any more.
func (t *turn) looksGood(ctx context.Context, c *grammar.Command, n int) bool {
	if c.Verb != grammar.Check || len(c.Measured)+len(c.Doubts) > 0 || len(t.phrase.Unused) > 0 || c.Then != nil || toneOf(t.m.Text) != fine || !seenGood.MatchString(t.m.Text) {
		return false
	}
	l, err := t.ledger.Load(ctx, n)
	return err == nil && l.State == book.Taken
}

// seenGood is how a load looks that came out well.
var seenGood = regexp.MustCompile(`(?i)\b(looks?|looked|looking|seems?|checks? out)\b.*$`)

package bot

import (
	"context"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// meansSeveral reports whether an order without a number is of more loads than one: "hold
// everything", "hold both".
func meansSeveral(note string) bool {
	note, _, _ = strings.Cut(strings.ToLower(note), " till ")
	note, _, _ = strings.Cut(note, " until ")
	note, _, _ = strings.Cut(note, ",")
	note, _, _ = strings.Cut(note, ":")
	words := strings.Fields(note)
	return len(words) > 0 && slices.Contains([]string{"everything", "both", "all", "every", "them"}, words[0]) &&
		!slices.ContainsFunc(words[1:], func(w string) bool {
			return !slices.Contains([]string{"of", "them", "the", "these", "those", "loads", "load", "now", "please", "pls", "all", "both", "right"}, w)
		})
}

// asksWhich names the loads that an order of several can be of. Nothing is done.
func (t *turn) asksWhich(ctx context.Context, r *Reply, c *grammar.Command) error {
	states := []book.State{book.Posted, book.Checked, book.Pressing}
	verb := c.Verb
	if verb == grammar.NotDone {
		verb = c.Meant
	}
	switch verb {
	case grammar.Clear:
		states = []book.State{book.Held}
	case grammar.Out:
		states = []book.State{book.Pressing}
	case grammar.In:
		states = []book.State{book.Posted, book.Checked}
	}
	found, err := t.ledger.Find(ctx, book.Query{States: states})
	if err != nil {
		return err
	}
	r.Verdict = engine.Ask
	r.need(unit.LoadNumber)
	var each, numbers []string
	found = slices.DeleteFunc(found, func(l book.Load) bool { return slices.Contains(c.Loads, l.Number) })
	for _, l := range found {
		each = append(each, fmt.Sprintf("%d (%s)", l.Number, stateSays[l.State]))
		numbers = append(numbers, fmt.Sprint(l.Number))
	}
	const most = 8
	if len(found) == 0 || len(found) > most {
		r.say(Headline, "Which loads? Nothing is changed yet; say their numbers.")
		return nil
	}
	r.say(Headline, "Which loads? Nothing is changed yet. By the book there is "+listed(each, "and")+".")
	order := fmt.Sprintf("%s %s", verb, strings.Join(numbers, ", "))
	if verb == grammar.In || verb == grammar.Out {
		order = fmt.Sprintf("%s %s", listed(numbers, "and"), verb)
	}
	r.say(Question, "“"+order+"” does it to all of them.")
	return nil
}

// bothMove tells that two loads went in or came out, and of neither which: "both in since
// 7:16".
var bothMove = regexp.MustCompile(`(?i)^\W*(?:they(?:'re| are)?\s+|we put\s+|put\s+|i put\s+)?both (?:are |went |going |came |of them )?(in|out)(?:\s+(?:now|since|at)\b.*)?\W*$`)

// timesTold are numbers and clock times in a message.
var timesTold = regexp.MustCompile(`\d+(?:[:.]\d+)?`)

// movesBoth reads bothMove as an order of loads that are still to be named.
func (t *turn) movesBoth(p grammar.Phrase, text string) (grammar.Phrase, bool) {
	m := bothMove.FindStringSubmatch(text)
	if m == nil || p.Command != nil {
		return p, false
	}
	verb := grammar.In
	if strings.EqualFold(m[1], "out") {
		verb = grammar.Out
	}
	return grammar.Phrase{Command: &grammar.Command{Verb: verb, Note: "both"}, Unused: timesTold.FindAllString(text, -1)}, true
}

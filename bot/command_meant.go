package bot

import (
	"context"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"presshand/bot/book"
	"presshand/grammar"
)

// orderBehind parts a finding from the order of another load behind it: "1 good, 2 in".
func (t *turn) orderBehind(n int, finding string) (head string, then *grammar.Command) {
	for _, at := range clauseMarks.FindAllStringIndex(finding, -1) {
		p := t.bot.Parse(strings.TrimSpace(finding[at[1]:]), grammar.Habit{Metric: t.settings.Metric})
		c := p.Command
		if c == nil || len(c.Loads) == 0 || slices.Contains(c.Loads, n) || toneOf(finding[:at[0]]) == neither {
			continue
		}
		if slices.Contains([]grammar.Verb{grammar.In, grammar.Out, grammar.Hold, grammar.Clear, grammar.Drop, grammar.NotDone}, c.Verb) {
			return strings.TrimSpace(finding[:at[0]]), c
		}
	}
	return finding, nil
}

var (
	clauseMarks = regexp.MustCompile(`[,;.]\s*(?:and |then )*|\s(?:and|then)\s+`)
	// meantOther begins an order that takes the place of the one before it: "oops i meant 2 in".
	meantOther = regexp.MustCompile(`(?i)^\W*(?:(?:oops|sorry|no|wait|ah|oh|actually|wrong|my bad|whoops)\W+)*(?:i )?(?:meant?|meaning)\b|^\W*(?:oops|whoops|wrong load|wrong one|wrong number)\b`)
)

// stillStands names the load that the order before this one was done to, where this one
// was to take its place: that stays as it is.
func (t *turn) stillStands(ctx context.Context, r *Reply, c *grammar.Command) error {
	state := map[grammar.Verb]book.State{
		grammar.In: book.Pressing, grammar.Out: book.Taken, grammar.Hold: book.Held, grammar.Drop: book.Dropped, grammar.Clear: book.Checked,
	}[c.Verb]
	if state == "" || len(c.Loads) != 1 || !meantOther.MatchString(t.m.Text) {
		return nil
	}
	found, err := t.ledger.Find(ctx, book.Query{States: []book.State{state}, Limit: 20})
	if err != nil {
		return err
	}
	var last book.Load
	for _, l := range found {
		e := l.Last()
		if l.Number != c.Loads[0] && e.By.ID == t.m.From && t.m.At.Sub(e.At) < time.Hour && (last.Number == 0 || e.At.After(last.Last().At)) {
			last = l
		}
	}
	if last.Number != 0 {
		r.say(Question, fmt.Sprintf("%s is %s still; “undo %d” takes that back.", entitled(last), stateSays[last.State], last.Number))
	}
	return nil
}

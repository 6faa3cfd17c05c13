package bot

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// Results of several loads in one message: "1 good and 2 bad", "both good".

var (
	// findingHead names the loads that a finding is of: "1 and 2", "load 2:".
	findingHead = regexp.MustCompile(`(?i)(^\s*|[,;.\n]\s*(?:and |but )?|\s(?:and|but)\s+)((?:loads?\s+|#)?\d{1,6}(?:(?:\s*[,&+]\s*|\s+and\s+)(?:and\s+)?(?:loads?\s+|#)?\d{1,6})*)(?:\s*[:=–—-]\s*|\s+)(?:(?:result|results|is|was|are|were|both|all|came out|came|looks?|turned out)[:\s]+)*(\pL)`)
	// bothFound is of two loads that are not named.
	bothFound = regexp.MustCompile(`(?i)^\W*(?:(?:ok|okay|so|and|they|they're|theyre|they are|them|the two|those|loads|of)\s+)*both\b(?:\s+(?:of them|loads|are|were|came out|look|looked))*\s+(.*)$`)
)

// A loadFinding is what was found of some loads.
type loadFinding struct {
	loads   []int
	finding string
}

// findingsOf parts a message into the findings of the loads that it names, or returns none.
func findingsOf(text string) []loadFinding {
	heads := findingHead.FindAllStringSubmatchIndex(text, -1)
	if len(heads) == 0 || heads[0][0] != 0 {
		return nil
	}
	var out []loadFinding
	for k, at := range heads {
		end := len(text)
		if k+1 < len(heads) {
			end = heads[k+1][0]
		}
		f := loadFinding{finding: strings.Trim(text[at[6]:end], " \t\n,;.!")}
		for _, digits := range digitRuns.FindAllString(text[at[4]:at[5]], -1) {
			n, err := strconv.Atoi(digits)
			if err != nil || n == 0 {
				return nil
			}
			f.loads = append(f.loads, n)
		}
		first := findingWords(f.finding)
		if len(first) == 0 || toneOf(f.finding) == neither || soundOf(first[:min(2, len(first))]) == neither {
			return nil
		}
		out = append(out, f)
	}
	return out
}

// severalResults takes what a message tells of several loads that are out for their results,
// and reports whether it does.
func (t *turn) severalResults(ctx context.Context) (Reply, bool, error) {
	text := strings.TrimSpace(t.m.Text)
	if len(text) > 2*maxFinding || asksByTone(strings.ToLower(text)) || t.before.Load == 0 && !digitRuns.MatchString(text) && !bothFound.MatchString(text) {
		return Reply{}, false, nil
	}
	if both := bothFound.FindStringSubmatch(text); both != nil && t.mayBeOfBoth(both[1]) {
		return t.bothResults(ctx, both[1])
	}
	findings := findingsOf(text)
	if len(findings) == 0 || len(findings) == 1 && len(findings[0].loads) == 1 && findings[0].loads[0] == t.before.Load {
		return Reply{}, false, nil
	}
	out := false
	for _, f := range findings {
		for _, n := range f.loads {
			l, err := t.ledger.Load(ctx, n)
			switch {
			case errors.As(err, new(*book.RefusedError)):
				return Reply{}, false, nil
			case err != nil:
				return Reply{}, false, fmt.Errorf("load book: %w", err)
			}
			out = out || l.State == book.Taken || l.State == book.Judged
		}
	}
	if !out {
		return Reply{}, false, nil
	}
	return t.judgedEach(ctx, findings)
}

// mayBeOfBoth reports whether what is said behind "both" is of loads: "both joints open" is
// of one.
func (t *turn) mayBeOfBoth(finding string) bool {
	c, words := t.phrase.Command, findingWords(finding)
	return len(words) > 0 && toneOf(finding) != neither && soundOf(words[:1]) != neither && (c == nil || c.Verb == grammar.Result && len(c.Loads) == 0)
}

// judgedEach gives each load its own result.
func (t *turn) judgedEach(ctx context.Context, findings []loadFinding) (Reply, bool, error) {
	var first, last *grammar.Command
	for _, f := range findings {
		c := &grammar.Command{Verb: grammar.Result, Loads: f.loads, Note: f.finding}
		if first == nil {
			first = c
		} else {
			last.Then = c
		}
		last = c
	}
	last.Note, last.Then = t.orderBehind(last.Loads[0], last.Note) // "1 good, drop 5"
	t.phrase = grammar.Phrase{Command: first}
	r, err := t.command(ctx)
	return r, true, err
}

// bothResults judges two loads that are not named, where just two are out.
func (t *turn) bothResults(ctx context.Context, finding string) (Reply, bool, error) {
	found, err := t.ledger.Find(ctx, book.Query{States: []book.State{book.Taken}, Limit: 3})
	if err != nil {
		return Reply{}, false, fmt.Errorf("load book: %w", err)
	}
	switch {
	case len(found) == 0:
		return Reply{}, false, nil
	case len(found) == 2:
		return t.judgedEach(ctx, []loadFinding{{[]int{min(found[0].Number, found[1].Number), max(found[0].Number, found[1].Number)}, finding}})
	}
	r := Reply{About: grammar.Book, Verdict: engine.Ask, Values: unit.Facts{}}
	r.need(unit.LoadNumber)
	r.say(Headline, fmt.Sprintf("Which loads? Nothing is written down yet. Say it like “%d result: good”.", found[0].Number))
	return r, true, nil
}

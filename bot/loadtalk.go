package bot

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/grammar"
)

// What people say of a load in its own thread without a word to the book.

var (
	// faulty tells of a part that is not as it should be.
	faulty = regexp.MustCompile(`(?i)\b(bar|batten|caul|mat|wedge|film|plastic|fence|core|sled|strips?|seal|breather)\b[^.?!,;]{0,20}\b(is|are|'s|s|was|were)\b[^.?!,;]{0,12}\b(missing|not there|not in|cracked|broken|split|bent|torn|warped|wet)\b`)
	// whenOut asks when a load may leave the press.
	whenOut = regexp.MustCompile(`(?i)\b(when|how long|how much longer|what time|how soon)\b.*\b(come out|comes out|out|to go|left|open (it|the press|the frame|the bag|this)|done|ready)\b|\b(can|could|may|ok to|okay to|safe to|time to) (i|we|you)?\s*(take|pull|get|open|let)\b.*\b(out|it|press|frame|bag|them|this)\b`)
	// opensIt names the press that is to be opened.
	opensIt = regexp.MustCompile(`(?i)\bopen (up )?(the|our|this) (press|frame|bag)\b`)
	// clockTime is a time of day as one writes it.
	clockTime = regexp.MustCompile(`\b([01]?\d|2[0-3])[:.]([0-5]\d)\b`)
	// wasGood puts a bad result right.
	wasGood = regexp.MustCompile(`(?i)\b(it|that|they|load|result)\b[^.?!,;]{0,10}\b(was|were|is|came out)\b[^.?!,;]{0,10}\b(good|fine|sound|tight)\b[^.?!,;]{0,12}$`)
	// notIn says that a load is not in the press.
	notIn = regexp.MustCompile(`(?i)\b(not|isn'?t|wasn'?t|never|ain'?t)( it)? (in|gone in|went in)( the press)?( yet)?\W*$`)
)

// talksOfLoad answers what is said of the thread's load beside its figures; is is
// false where the message is something else.
func (t *turn) talksOfLoad(ctx context.Context) (r Reply, is bool, err error) {
	if t.phrase.Command != nil || t.phrase.NewStart {
		return Reply{}, false, nil
	}
	if t.before.Load == 0 {
		return t.opensPress(ctx)
	}
	l, err := t.ledger.Load(ctx, t.before.Load)
	if errors.As(err, new(*book.RefusedError)) {
		return Reply{}, false, nil
	}
	if err != nil {
		return Reply{}, false, fmt.Errorf("load book: %w", err)
	}
	text := strings.TrimSpace(t.m.Text)
	if r, lost := t.vacuumLost(l); lost {
		return r, true, nil
	}
	switch {
	case !asksByTone(strings.ToLower(text)) && (l.State == book.Posted || l.State == book.Checked || l.InPress()) && faulty.MatchString(text):
		return t.faultOf(l, faulty.FindString(text)), true, nil
	case t.tellsReading() && (l.State == book.Posted || l.State == book.Checked || l.State == book.Held && l.HeldFrom != book.Pressing):
		r := t.aboutUnchecked(l)
		r.say(Headline, fmt.Sprintf("Is that a reading or a correction? Nothing is changed in load %d.", l.Number))
		r.say(Question, fmt.Sprintf("A correction is said like “correction to %d: …”.", l.Number))
		return r, true, nil
	case l.InPress() && whenOut.MatchString(text) && !t.asks(grammar.Pump):
		return t.outAt(l, text), true, nil
	case l.InPress() && notIn.MatchString(text) && len(t.phrase.Facts) == 0:
		return t.inByTheBook(l), true, nil
	case l.State == book.Judged && !l.Good && t.asks(grammar.Why) && saysFailed(text):
		r := Reply{About: grammar.Book}
		r.loads(l)
		t.saysJudged(&r, l)
		return r, true, nil
	}
	return Reply{}, false, nil
}

// tellsReading reports whether a message tells one figure that a gauge shows.
func (t *turn) tellsReading() bool {
	text := strings.ToLower(t.m.Text)
	return len(t.phrase.Facts) == 1 && gaugeReads.MatchString(text) && !ordering.MatchString(text) && !asksByTone(text)
}

// opensPress answers "when can I open the press" where one load lies in it.
func (t *turn) opensPress(ctx context.Context) (Reply, bool, error) {
	text := strings.TrimSpace(t.m.Text)
	if !t.before.empty() || len(t.phrase.Facts)+len(t.phrase.Amends) > 0 || !opensIt.MatchString(text) || !whenOut.MatchString(text) {
		return Reply{}, false, nil
	}
	found, err := t.ledger.Find(ctx, book.Query{InPress: true, Limit: 2})
	if err != nil {
		return Reply{}, false, fmt.Errorf("load book: %w", err)
	}
	if len(found) != 1 {
		return Reply{}, false, nil
	}
	return t.outAt(found[0], text), true, nil
}

// saysFailed reports whether a "why" is of how a load came out.
func saysFailed(text string) bool {
	words := findingWords(text)
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(badWords, w) })
}

// faultOf asks for a hold where someone tells what is wrong with a load.
func (t *turn) faultOf(l book.Load, fault string) Reply {
	r := Reply{About: grammar.Book, Verdict: engine.Stop}
	r.loads(l)
	r.say(Headline, fmt.Sprintf("%s%s is %s, and %s speaks against it. Nothing is changed yet.", verdictWord(engine.Stop), entitled(l), stateSays[l.State], quoted(fault)))
	r.say(Question, fmt.Sprintf("“hold %d: %s” stops it until it is put right.", l.Number, fault))
	return r
}

// outAt tells when a load in the press is done, and what of a time that was asked for.
func (t *turn) outAt(l book.Load, text string) Reply {
	r := Reply{About: grammar.Book, Verdict: engine.None}
	r.loads(l)
	r.say(Headline, fmt.Sprintf("%s went in at %s, %s ago.", entitled(l), clockFrom(t.m.At, l.InAt), duration(t.m.At.Sub(l.InAt).Seconds())))
	low, mid, high, ok := l.Plan.PressTime()
	if !ok {
		r.say(Reason, "Its plan gives no press time: go by the glue's label.")
		return r
	}
	line := "Usually done at " + clockFrom(t.m.At, l.InAt.Add(mid))
	if low != high {
		line += fmt.Sprintf(", could be %s to %s", clockFrom(t.m.At, l.InAt.Add(low)), clockFrom(t.m.At, l.InAt.Add(high)))
	}
	r.say(Figure, line+".")
	at, what := t.m.At, "Now"
	if found := clockTime.FindStringSubmatch(text); found != nil {
		if c, ok := t.clock(found[1] + ":" + found[2]); ok {
			if c.Before(l.InAt) {
				c = c.Add(12 * time.Hour) // "can it come out at 3:30" of what went in at 14:00
			}
			at, what = c, clockOf(c)
		}
	}
	r.Verdict, line = outVerdict(at.Sub(l.InAt), low, high)
	r.say(Reason, what+line)
	return r
}

// outVerdict judges leaving the press after so long.
func outVerdict(after, low, high time.Duration) (engine.Verdict, string) {
	switch {
	case after < low:
		return engine.Stop, " is too early."
	case after < high:
		return engine.Care, " may be early; if the shop or the wood is cold or wet, wait for the latest."
	}
	return engine.Good, " is late enough."
}

// inByTheBook answers who says that a load is not in the press.
func (t *turn) inByTheBook(l book.Load) Reply {
	r := Reply{About: grammar.Book, Verdict: engine.Ask}
	r.loads(l)
	r.say(Headline, fmt.Sprintf("By the book %s went in at %s. Nothing is changed yet.", lower(entitled(l)), clockFrom(t.m.At, l.InAt)))
	r.say(Question, "Whoever said so takes it back with “undo”.")
	return r
}

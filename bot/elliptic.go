package bot

import (
	"context"
	"math"
	"slices"
	"strings"

	"presshand/bot/book"
	"presshand/engine/unit"
	"presshand/grammar"
)

// parse reads a message. A bare number is read in the light of the thread:
// "what about 22 inches", "and 1 1/2?".
func (t *turn) parse(text string) grammar.Phrase {
	p := t.bot.Parse(text, grammar.Habit{Metric: t.settings.Metric})
	if p.Inferred && !t.before.empty() && !p.NewStart {
		p.Asks = slices.DeleteFunc(slices.Clone(p.Asks), func(a grammar.Ask) bool { return computed(a.About) })
	}
	for _, a := range p.Amends {
		f, ok := t.meantBy(a)
		if !ok {
			p.Unused = append(p.Unused, a.Text)
			continue
		}
		p.Facts = append(p.Facts, f)
	}
	return p
}

// meantBy returns what a bare number states: the vacuum where its inches can
// only be those of a gauge, else that of the fields stated last which it is
// nearest to.
func (t *turn) meantBy(a grammar.Amendment) (grammar.Fact, bool) {
	vacuum, hasVacuum := t.before.Said.find(unit.Vacuum)
	if hasVacuum && a.Value >= 10 && a.Value <= 30 && (a.Unit.Symbol == "in" || a.Unit.Symbol == "" && vacuum.Unit == "inHg" && len(t.before.Latest) != 1) {
		return amendment(unit.Vacuum, unit.InHg, a), true
	}
	best, nearest := grammar.Fact{}, math.Log(4)
	for _, f := range t.before.Latest {
		x, _ := t.before.Said.find(f)
		old, isNumber := x.Value.(unit.Number)
		if !isNumber {
			continue
		}
		u := a.Unit
		if u.Symbol == "" {
			u = t.unitOf(x)
		} else if u.Dimension != f.Dimension() {
			continue
		}
		now := amendment(f, u, a)
		n, _ := now.Value.(unit.Number)
		if off := math.Abs(math.Log(float64(n / old))); off <= nearest || len(t.before.Latest) == 1 {
			best, nearest = now, off
		}
	}
	return best, best.Field != ""
}

// unitOf is the unit that a field was last written in.
func (t *turn) unitOf(x Said) unit.Unit {
	if u, ok := named[x.Unit]; ok {
		return u
	}
	u, _ := styleOf(t.settings.Metric, Thread{}).units(x.Field)
	return u
}

func amendment(f unit.Field, u unit.Unit, a grammar.Amendment) grammar.Fact {
	value := unit.Number(a.Value)
	if u.Dimension == f.Dimension() && u.Symbol != "" && f.Dimension() != unit.Count {
		value = f.Number(u.SI(a.Value))
	}
	return grammar.Fact{Field: f, Value: value, Unit: u, Text: a.Text}
}

// corrects reports whether a message in the thread of a load that is not in the
// press yet changes that load: it says so in a few words and asks nothing. A
// whole new load, or "what if", is a question.
func (t *turn) corrects(ctx context.Context) (bool, error) {
	p := &t.phrase
	if t.before.Load == 0 || p.Command != nil || p.NewStart || len(p.Asks)+len(p.Choices)+len(p.Refused)+len(p.Clashes) > 0 || !t.changesLittle() {
		return false, nil
	}
	l, err := t.ledger.Load(ctx, t.before.Load)
	if err != nil {
		return false, err
	}
	return l.State == book.Posted || l.State == book.Checked || l.State == book.Held && l.HeldFrom != book.Pressing, nil
}

// amending are words by which a message changes what was said.
var amending = []string{
	"make ", "change ", "use ", "actually", "sorry", "it's ", "its ", "it is ", "should ", "without ", "no ", "take ", "swap ",
	"switch ", "go with ", "set ", "oops", "correction", "wrong", "not ", "that's ", "thats ", "we'll ", "the ",
}

func (t *turn) changesLittle() bool {
	text := strings.ToLower(strings.TrimSpace(t.m.Text))
	if len(t.phrase.Facts)+len(t.phrase.Drops) == 0 || len(t.phrase.Facts) > 3 || asksByTone(text) {
		return false
	}
	if len(t.phrase.Facts)+len(t.phrase.Drops) == 1 {
		return true
	}
	return slices.ContainsFunc(amending, func(w string) bool { return strings.HasPrefix(text, w) })
}

// asksByTone reports whether a message wonders rather than states.
func asksByTone(text string) bool {
	if strings.Contains(text, "?") {
		return true
	}
	for _, w := range []string{"what if", "what about", "how about", "if we", "if i"} {
		if strings.Contains(text, w) {
			return true
		}
	}
	for _, w := range []string{"what", "how", "if ", "would", "could", "and "} {
		if strings.HasPrefix(text, w) {
			return true
		}
	}
	return false
}

package bot

import (
	"fmt"
	"slices"

	"presshand/engine/unit"
	"presshand/grammar"
)

// moved gives what the last message told to the part that a later one says it is of:
// "the bar not the panel", "sorry thats a cup not a bow". What it had taken the place
// of stands again.
func (t *turn) moved(p grammar.Phrase) grammar.Phrase {
	if p.Moved == nil || t.before.empty() || p.NewStart || p.Command != nil || len(p.Choices)+len(p.Changes) > 0 {
		return p
	}
	x, ok := t.misplaced(p.Moved)
	n, isNumber := x.Value.(unit.Number)
	to := p.Moved.Field(x.Field)
	if !ok || !isNumber || to == "" || to == x.Field || to.Dimension() != x.Field.Dimension() || !isLikely(to, n) || stated(p.Facts, to) || stated(p.Facts, x.Field) {
		return p
	}
	t.before.Said = t.before.Said.without(x.Field)
	for _, was := range slices.Backward(t.before.Earlier) {
		if was.Field == x.Field && was.Value != x.Value {
			t.before.Said = t.before.Said.with(was)
			break
		}
	}
	p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], grammar.Fact{Field: to, Value: n, Unit: named[x.Unit], Text: x.Text})
	p.Asks = slices.DeleteFunc(slices.Clone(p.Asks), func(a grammar.Ask) bool { return !a.Guessed && a.About == grammar.Flatten || p.Inferred })
	return p
}

// misplaced is what a thread has of the part that was named wrongly: of what was told
// last, else the only thing that was told.
func (t *turn) misplaced(m *grammar.Mistaken) (Said, bool) {
	var of, lengths []Said
	for _, f := range t.before.Latest {
		x, ok := t.before.Said.find(f)
		if !ok || f.Dimension() != unit.Distance {
			continue
		}
		lengths = append(lengths, x)
		if m.Of(f) {
			of = append(of, x)
		}
	}
	switch {
	case len(of) == 1:
		return of[0], true
	case len(of) == 0 && len(lengths) == 1:
		return lengths[0], true
	}
	return Said{}, false
}

// shifted moves a clock time of the thread: "start half an hour earlier".
func (t *turn) shifted(c grammar.Change) (grammar.Fact, bool) {
	if len(c.Fields) != 1 || c.By.Unit.Dimension != unit.Lasting {
		return grammar.Fact{}, false
	}
	x, _ := t.before.Said.find(c.Fields[0])
	clock, isClock := x.Value.(unit.Word)
	var h, m int
	if _, err := fmt.Sscanf(string(clock), "%d:%d", &h, &m); !isClock || err != nil {
		return grammar.Fact{}, false
	}
	by := int(c.By.Unit.SI(c.By.Value)/60 + 0.5)
	if c.Less {
		by = -by
	}
	at := h*60 + m + by
	if at < 0 || at >= 24*60 {
		return grammar.Fact{}, false
	}
	return grammar.Fact{Field: x.Field, Value: unit.Word(fmt.Sprintf("%02d:%02d", at/60, at%60)), Text: c.By.Text}, true
}

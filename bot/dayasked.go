package bot

import (
	"slices"

	"presshand/engine/unit"
	"presshand/grammar"
)

// dayAsked takes a thread that counts panels for a day's plan as soon as a time of the day is
// told: "will we be out by 4" behind "18 panels of 20x40, two to a load".
func (t *turn) dayAsked(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || t.before.Load > 0 || p.NewStart || p.Command != nil || len(p.Asks) > 0 || !t.before.Said.has(unit.PanelCount) ||
		t.before.Asks[0].About == grammar.Schedule || !stated(p.Facts, unit.Deadline) && !stated(p.Facts, unit.StartTime) {
		return p
	}
	if slices.ContainsFunc(t.before.Asks, func(w Wanted) bool { return w.Solve != "" }) {
		return p
	}
	p.Asks = []grammar.Ask{{About: grammar.Schedule}}
	return p
}

package bot

import (
	"regexp"

	"presshand/engine/unit"
	"presshand/grammar"
)

// suchPanels orders some of what was described: "three of them", "make it 4 of those".
var suchPanels = regexp.MustCompile(`(?i)^\W*(?:(?:and|ok|so|now|for|make|makes|it|that|say|times|i|we|need|want|got|have|there'?s|what about|how about)\b[\s,.!:;-]*)*[\w-]+ (?:of (?:them|em|these|those)|off|such|like (?:that|it|this))\W*$`)

// severalPanels takes a count "of them" for panels where the thread describes a panel with
// its strips and asks for what all of it takes.
func (t *turn) severalPanels(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || p.NewStart || p.Command != nil || len(p.Facts) != 1 || p.Facts[0].Field != unit.StripCount || !suchPanels.MatchString(t.m.Text) {
		return p
	}
	about := t.before.Asks[0].About
	if about != grammar.Glue && about != grammar.Schedule && about != grammar.Face || !t.before.Said.has(unit.StripCount) || !t.before.Said.has(unit.PanelWidth, unit.PanelLength, unit.StripLength) {
		return p
	}
	p.Facts = []grammar.Fact{p.Facts[0]}
	p.Facts[0].Field = unit.PanelCount
	return p
}

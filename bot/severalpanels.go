package bot

import (
	"regexp"
	"slices"

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

// sorryThem puts right a count "of them": "sorry, three of them".
var sorryThem = regexp.MustCompile(`(?i)^\W*(?:sorry|no|nope|wait|oops|actually)\b.* of (?:them|em|these|those)\W*$`)

// maybeGone leaves unread "sorry, three of them" behind a message that left fewer panels, as it
// may tell how many went.
func (t *turn) maybeGone(p grammar.Phrase) grammar.Phrase {
	last := len(t.before.Earlier) - 1
	if last < 0 || t.before.Earlier[last].Field != unit.PanelCount || !slices.Contains(t.before.Latest, unit.PanelCount) || len(p.Facts) != 1 || p.Facts[0].Field != unit.StripCount || !sorryThem.MatchString(t.m.Text) {
		return p
	}
	x, _ := t.before.Said.find(unit.PanelCount)
	left, _ := x.Value.(unit.Number)
	was, _ := t.before.Earlier[last].Value.(unit.Number)
	if n, _ := p.Facts[0].Value.(unit.Number); left < was && n <= left {
		p.Facts, p.Unused = nil, append(p.Unused[:len(p.Unused):len(p.Unused)], p.Facts[0].Text)
	}
	return p
}

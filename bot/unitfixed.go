package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// thatsIn says in which unit the numbers of a thread were, and no more: "oops that's mm, not
// inches", "those are all in inches".
var thatsIn = regexp.MustCompile(`(?i)^\W*(?:(?:oops|sorry|no|nope|wait|oh|ah|whoops|my bad|and|so|should have said|i should have said|all|everything|everything's|that|those|these|they|it|that's|thats|they're|theyre|it's|its|these're|is|are|was|were|in|i mean|i meant|make|of it|of them|numbers|by the way|btw)\b[\s,.!:;-]*)*` +
	`(mm|millimetres?|millimeters?|inches|inch)(?:\s*(?:,\s*)?(?:not|instead of|rather than)\s+(?:in\s+)?(?:mm|millimetres?|millimeters?|inches|inch|in))?(?:\s*(?:sorry|by the way|btw|all of it|all of them))?\W*$`)

// corrects tells "oops that's mm" from "in mm", which wants the answer so.
var corrects = regexp.MustCompile(`(?i)\b(oops|whoops|sorry|no|nope|wait|bad|thats|that's|those|these|theyre|they're|they|its|it's|were|was|are|is|meant|mean|should|make|all|everything|everything's|not|instead|rather)\b`)

// unitFixed puts the lengths that a thread told without a unit into the one that they were
// meant in.
func (t *turn) unitFixed(p grammar.Phrase) grammar.Phrase {
	found := thatsIn.FindStringSubmatch(t.m.Text)
	if found == nil || !corrects.MatchString(t.m.Text) || strings.HasSuffix(strings.TrimSpace(t.m.Text), "?") || t.before.empty() || t.before.Load > 0 || p.Command != nil || len(p.Facts)+len(p.Changes)+len(p.Choices)+len(p.Amends) > 0 {
		return p
	}
	meant := unit.Inch
	if strings.HasPrefix(strings.ToLower(found[1]), "m") {
		meant = unit.MM
	}
	var fixed []grammar.Fact
	for _, x := range t.before.Said {
		u, known := named[x.Unit]
		switch v := x.Value.(type) {
		case unit.Word:
			continue
		case unit.Number:
			if known && x.Note == "" && x.Field.Dimension() == unit.Distance && u.Symbol != meant.Symbol && bareText(x.Text, u.Metric) {
				fixed = append(fixed, grammar.Fact{Field: x.Field, Value: x.Field.Number(meant.SI(writtenIn(u, x.Field, v))), Unit: meant, Text: x.Text})
			}
		case unit.Piles:
			if !known || unitTyped.MatchString(x.Text) {
				return p
			}
			fixed = append(fixed, grammar.Fact{Field: x.Field, Value: pilesIn(v, meant.SI(1)/u.SI(1)), Unit: meant, Text: x.Text})
		case unit.Layers:
			if !known || unitTyped.MatchString(x.Text) {
				return p
			}
			fixed = append(fixed, grammar.Fact{Field: x.Field, Value: layersIn(v, meant.SI(1)/u.SI(1)), Unit: meant, Text: x.Text})
		default:
			return p // some of the lengths would stay as they are
		}
	}
	p.Facts = append(p.Facts, fixed...)
	return p
}

// unitTyped finds a unit of length beside a number.
var unitTyped = regexp.MustCompile(`(?i)\d ?(?:mm|cm|m|in|inch|inches|ft|feet|foot|["'”″’])(?:[^a-z]|$)`)

// pilesIn are piles whose measures are so many times as large.
func pilesIn(ps unit.Piles, times float64) unit.Piles {
	out := slices.Clone(ps)
	for i := range out {
		out[i].Width *= times
		out[i].Length *= times
	}
	return out
}

// layersIn are layers that are so many times as thick.
func layersIn(ls unit.Layers, times float64) unit.Layers {
	out := slices.Clone(ls)
	for i := range out {
		out[i].Thickness *= times
	}
	return out
}

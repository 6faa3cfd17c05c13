package bot

import (
	"regexp"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// thatsIn says in which unit the numbers of a thread were, and no more: "oops that's mm, not
// inches", "those are all in inches".
var thatsIn = regexp.MustCompile(`(?i)^\W*(?:(?:oops|sorry|no|nope|wait|oh|ah|whoops|my bad|and|so|should have said|i should have said|all|everything|everything's|that|those|these|they|it|that's|thats|they're|theyre|it's|its|these're|is|are|was|were|in|i mean|i meant|make|of it|of them|numbers|by the way|btw)\b[\s,.!:;-]*)*` +
	`(mm|millimetres?|millimeters?|inches|inch)(?:\s*(?:,\s*)?(?:not|instead of|rather than)\s+(?:in\s+)?(?:mm|millimetres?|millimeters?|inches|inch|in))?(?:\s*(?:sorry|by the way|btw|all of it|all of them))?\W*$`)

// unitFixed puts the lengths that a thread told without a unit into the one that they were
// meant in.
func (t *turn) unitFixed(p grammar.Phrase) grammar.Phrase {
	found := thatsIn.FindStringSubmatch(t.m.Text)
	if found == nil || t.before.empty() || t.before.Load > 0 || p.Command != nil || len(p.Facts)+len(p.Changes)+len(p.Choices)+len(p.Amends) > 0 {
		return p
	}
	meant := unit.Inch
	if strings.HasPrefix(strings.ToLower(found[1]), "m") {
		meant = unit.MM
	}
	for _, x := range t.before.Said {
		n, isNumber := x.Value.(unit.Number)
		u, known := named[x.Unit]
		if !isNumber || !known || x.Note != "" || x.Field.Dimension() != unit.Distance || u.Symbol == meant.Symbol || !bareText(x.Text, u.Metric) {
			continue
		}
		p.Facts = append(p.Facts, grammar.Fact{Field: x.Field, Value: x.Field.Number(meant.SI(writtenIn(u, x.Field, n))), Unit: meant, Text: x.Text})
	}
	return p
}

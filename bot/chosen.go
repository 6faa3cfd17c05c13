package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// bySize names the greater or the lesser of values that were compared: "ok the
// shorter one then", "go with the taller bar".
var bySize = regexp.MustCompile(`(?i)\bthe (?:(tall|bigg|high|larg|thick|wid|deep|long|heavi|fatt)|(short|small|low|thinn|narrow|shallow|light|skinni|littl))(?:er|est|e)? ?(?:one|bar|batten|mat|caul|wedge|please|then|,|\W*$)`)

// chosenBySize decides the thread's comparison for the one that a message names by
// its size.
func (t *turn) chosenBySize(p grammar.Phrase) grammar.Phrase {
	said := bySize.FindStringSubmatch(t.m.Text)
	if said == nil || len(t.before.Compare) != 1 || len(p.Asks)+len(p.Changes)+len(p.Drops) > 0 || p.Command != nil {
		return p
	}
	c := t.before.Compare[0]
	if stated(p.Facts, c.Field) {
		return p
	}
	var best Said
	for i, x := range c.Values {
		n, isNumber := x.Value.(unit.Number)
		old, _ := best.Value.(unit.Number)
		if !isNumber {
			return p
		}
		if i == 0 || (said[1] != "") == (n > old) {
			best = x
		}
	}
	n, _ := best.Value.(unit.Number)
	p.Facts = append(p.Facts[:len(p.Facts):len(p.Facts)], grammar.Fact{Field: c.Field, Value: n, Unit: named[best.Unit], Text: strings.TrimSpace(said[0])})
	p.Unused = slices.DeleteFunc(slices.Clone(p.Unused), func(w string) bool { return strings.Contains(strings.ToLower(said[0]), strings.ToLower(w)) })
	return p
}

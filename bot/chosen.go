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

// byPlace names one of two values that were compared by where it stood: "go with the
// second", "the latter then".
var byPlace = regexp.MustCompile(`(?i)^\W*(?:ok |okay |so |then |and |we |we'?ll |i |i'?ll |let'?s |lets )*(?:go with|go for|take|use|make it|do|pick|choose)? ?the (?:(first|former)|(second|latter))(?: one| bar| option| mat)?(?: then| please)?\W*$`)

// chosenByPlace decides the thread's comparison for the one that stood first or second.
func (t *turn) chosenByPlace(p grammar.Phrase) grammar.Phrase {
	said := byPlace.FindStringSubmatch(t.m.Text)
	if said == nil || len(t.before.Compare) != 1 || len(t.before.Compare[0].Values) != 2 || len(p.Asks)+len(p.Changes)+len(p.Drops)+len(p.Facts) > 0 || p.Command != nil {
		return p
	}
	c := t.before.Compare[0]
	x := c.Values[0]
	if said[2] != "" {
		x = c.Values[1]
	}
	p.Facts = append(p.Facts, grammar.Fact{Field: c.Field, Value: x.Value, Unit: named[x.Unit], Text: said[1] + said[2]})
	p.Unused, p.Amends = nil, nil
	return p
}

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

package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

// withoutIt takes away, or puts back, what was spoken of last.
var withoutIt = regexp.MustCompile(`(?i)^\W*(?:(?:and|ok|okay|or|so|but|then|now|what about|how about|what if we go|what if i go|what if we|what if i|say|try|go|just|actually)\W+)*(?:(without|lose|drop|skip|forget|ditch|leave out|no)|(put|with|bring|have)) (?:it|that|that one|one)( off| out| away)?( back| back on| back in)?(?: then| now| again| altogether)?\W*$`)

// neverMind says no more than that something is not to be.
var neverMind = regexp.MustCompile(`(?i)^\W*(forget|no|skip|drop) (it|that|one|that one)\W*$`)

// ofLast reads "and without it?", "put it back" of the part that the last message told.
func (t *turn) ofLast(p grammar.Phrase) grammar.Phrase {
	said := withoutIt.FindStringSubmatch(t.m.Text)
	if said == nil || t.before.empty() || t.before.Load > 0 || p.Command != nil || len(p.Facts)+len(p.Amends)+len(p.Changes)+len(p.Drops) > 0 {
		return p
	}
	part := t.lastPart()
	switch bare := neverMind.MatchString(t.m.Text); {
	case bare: // takes back what was said, not the part
	case part == "":
	case said[1] != "" && said[4] == "":
		p.Drops = append(slices.Clone(p.Drops), part)
	case said[2] != "" && said[4] != "":
		p.Facts = t.again(p.Facts, part)
	}
	return p
}

// lastPart is the one part that what was told last is of; "" for none.
func (t *turn) lastPart() grammar.Part {
	var last grammar.Part
	for _, part := range []grammar.Part{"bar", "mat", "caul", "wedge"} {
		if slices.ContainsFunc(t.before.Latest, func(f unit.Field) bool { return slices.Contains(parts[part], f) }) {
			if last != "" {
				return ""
			}
			last = part
		}
	}
	if last == "" || slices.ContainsFunc(t.before.Latest, func(f unit.Field) bool {
		return !slices.Contains(parts[last], f) && !strings.HasSuffix(string(f), "denied")
	}) {
		return ""
	}
	return last
}

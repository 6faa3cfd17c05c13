package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

var (
	pushesByBar = regexp.MustCompile(`(?i)\b(?:bar|batten|upstand)s?\b`)
	clauseEnd   = regexp.MustCompile(`[,;.?!()\n]+(?:\s+|$)|\s+(?:-+|&|\+|and|but|then|with)\s+`)
	besidesIt   = regexp.MustCompile(`\b(?:as well|too|also|add|adding|added|plus|both|keep|keeping|(?:other|far|opposite) (?:side|end))\b`)
)

// putInstead reports whether "instead" is said of the part that named finds and fields
// measure: not in "use 6 strips instead and a 1:12 wedge as well".
func (t *turn) putInstead(facts []grammar.Fact, named *regexp.Regexp, fields ...unit.Field) bool {
	found := false
	for _, c := range clauseEnd.Split(strings.ToLower(t.m.Text), -1) {
		names, says := named.MatchString(c), strings.Contains(c, "instead")
		if strings.Contains(c, "instead of") || (names || says) && besidesIt.MatchString(c) {
			return false
		}
		found = found || says && (names || !tellsOther(c, facts, fields))
	}
	return found
}

// tellsOther reports whether a clause tells something else than the fields.
func tellsOther(clause string, facts []grammar.Fact, fields []unit.Field) bool {
	return slices.ContainsFunc(facts, func(f grammar.Fact) bool {
		return f.Text != "" && strings.Contains(clause, strings.ToLower(f.Text)) && !slices.Contains(fields, f.Field)
	})
}

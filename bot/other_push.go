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
	clauseEnd   = regexp.MustCompile(`(?i)[,;.?!()\n]+(?:\s+|$)|\s+(?:-+|&|\+|and|but|then)\s+`)
	besidesIt   = regexp.MustCompile(`(?i)\b(?:as well|too|also|add|adding|added|plus|both|keep|keeping|(?:to|with|beside|besides|on top of|along with|next to) the (?:side )?(?:bar|batten|wedge))\b`)
	leadsIn     = regexp.MustCompile(`(?i)^\W*(?:(?:ok|okay|so|no|or|well|what|how|about|if|we|i|you|he|she|they|says?|said|wants?|lets?|let's|let|just|do|did|does|it|that|use|used|try|go|going|put|have|could|can|with|to|in|for|a|be|on)\W+)*$`)
)

// putInstead reports whether "instead" is said of the part that named finds and fields
// measure, and of nothing else: not in "use 6 strips instead and a 1:12 wedge as well".
func (t *turn) putInstead(facts []grammar.Fact, named *regexp.Regexp, fields ...unit.Field) bool {
	clauses := clauseEnd.Split(strings.ToLower(t.m.Text), -1)
	about := func(c string) bool { return named.MatchString(c) || onlyOf(c, facts, fields) }
	found := false
	for k, c := range clauses {
		before, behind, says := strings.Cut(c, "instead")
		switch {
		case strings.HasPrefix(behind, " of"), about(c) && besidesIt.MatchString(c):
			return false
		case !says:
		case about(before), leadsIn.MatchString(before) && about(behind):
			found = true
		case leadsIn.MatchString(before) && leadsIn.MatchString(behind): // "a 1:12 wedge, instead"
			found = found || k > 0 && about(clauses[k-1]) || k == 0 && len(clauses) > 1 && about(clauses[1])
		}
	}
	return found
}

// onlyOf reports whether a clause tells one of the fields and no other.
func onlyOf(clause string, facts []grammar.Fact, fields []unit.Field) bool {
	found := false
	for _, f := range facts {
		if f.Text == "" || !strings.Contains(clause, strings.ToLower(f.Text)) {
			continue
		}
		if !slices.Contains(fields, f.Field) {
			return false
		}
		found = true
	}
	return found
}

package bot

import (
	"slices"
	"strings"

	"presshand/grammar"
)

// wishWords begin the words that wish something of a plan.
var wishWords = map[grammar.Topic][]string{
	grammar.Strips:   {"alike", "altern", "narrow", "neighbo", "random", "repeat", "skinn", "wide"},
	grammar.Schedule: {"dinner", "lunch", "midday", "midnight", "noon"},
}

// wishes are unread words that may ask for another plan than the one made.
func wishes(r *Reply, p grammar.Phrase) []string {
	var out []string
	for _, u := range r.Unused {
		begins := func(word string) bool { return strings.HasPrefix(strings.ToLower(u), word) }
		if slices.ContainsFunc(wishWords[r.About], begins) && !slices.Contains(p.Negated, u) {
			out = append(out, quoted(u))
		}
	}
	return out
}

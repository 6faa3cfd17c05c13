package bot

import (
	"fmt"
	"slices"
	"strings"

	"presshand/grammar"
)

// Every example that is shown comes from the helps, in the units of the room
// that it is shown in.

// Examples are some things to try, in the units of a room. Each is answered as
// it stands.
func Examples(metric bool) []string {
	out := slices.Clone(examplesOf(grammar.Side, metric))
	for _, about := range []grammar.Topic{grammar.Strips, grammar.Glue, grammar.Schedule, grammar.Profile} {
		out = append(out, examplesOf(about, metric)[0])
	}
	return out
}

// CheckExample shows how the second check of a load is said, in the units of a
// room: “14 checked, bar 1 in, strips 1/4, gauge 25”.
func CheckExample(load int, metric bool) string {
	return fmt.Sprintf("%d %s", load, measuredExample(metric))
}

// measuredExample is a second check without its load.
func measuredExample(metric bool) string {
	for _, e := range examplesOf(grammar.Book, metric) {
		if _, said, found := strings.Cut(e, " checked, "); found {
			return "checked, " + said
		}
	}
	return "checked"
}

// loadExample is a whole load, as it can be posted.
func loadExample(metric bool) string { return examplesOf(grammar.Side, metric)[0] }

// askExample is the shortest question that has an answer: a load without its
// glue.
func askExample(metric bool) string {
	said := loadExample(metric)
	return said[:strings.LastIndex(said, ", ")]
}

// setupExample is what a room has.
func setupExample(metric bool) string { return examplesOf(grammar.Profile, metric)[0] }

func examplesOf(about grammar.Topic, metric bool) []string {
	return helps[slices.IndexFunc(helps, func(h help) bool { return h.about == about })].examples(metric)
}

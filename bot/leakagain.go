package bot

import (
	"regexp"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

var (
	// soMuchIn is a drop without a unit: "1 every 2 min".
	soMuchIn = regexp.MustCompile(`(?i)\b([\d.,/]+|an?|one|two|three|four|five|six|ten|half) (every|in|over|per|each|a) ((?:[\d.,/]+ |a |an |two |three |five |ten )?(?:min|mins|minutes?|hours?|hrs?|seconds?|secs?))\b`)
	// dropUnit is the unit in which a leak was told: "1 inHg every 5 min".
	dropUnit = regexp.MustCompile(`^[\d.,/ ½¼¾]+ ?([A-Za-z"]+)`)
)

// leaksAgain reads "its more like 1 every 2 min" of the leak that the thread tells, in
// the unit in which it told it.
func (t *turn) leaksAgain(p grammar.Phrase) grammar.Phrase {
	x, ok := t.before.Said.find(unit.Leak)
	said, was := soMuchIn.FindStringSubmatch(t.m.Text), dropUnit.FindStringSubmatch(x.Text)
	if !ok || said == nil || was == nil || p.NewStart || p.Command != nil || len(p.Facts)+len(p.Asks)+len(p.Choices)+len(p.Changes) > 0 {
		return p
	}
	u := was[1]
	if strings.EqualFold(u, "in") || strings.HasPrefix(strings.ToLower(u), "inch") || u == `"` {
		u = "inHg"
	}
	again := t.bot.Parse("leaks "+said[1]+" "+u+" "+said[2]+" "+said[3], grammar.Habit{Metric: t.settings.Metric})
	if len(again.Facts) != 1 || again.Facts[0].Field != unit.Leak {
		return p
	}
	again.Facts[0].Text = said[0]
	p.Facts, p.Amends, p.Unused = again.Facts, nil, again.Unused
	return p
}

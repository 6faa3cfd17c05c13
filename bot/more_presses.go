package bot

import (
	"regexp"
	"slices"

	"presshand/engine/unit"
	"presshand/grammar"
)

// thereAre tells of a number of what there is one of so far: "suppose theres two of them".
var thereAre = regexp.MustCompile(`(?i)^\W*(?:(?:and|ok|so|but|now|well|suppose|supposing|say|imagine|assume|assuming|what|if)\b[\s,.!:;-]*)*(?:there(?:'?s|’s| is| are| were| was)|(?:i|we|you)(?:'ve|ve)? (?:had|have|got|get|borrow|borrowed|buy|bought))\s+[\w-]+ of (?:them|em|these|those)\W*$`)

// morePresses takes "suppose theres two of them" for the one press of a day's plan, which has
// more panels than that.
func (t *turn) morePresses(p grammar.Phrase) grammar.Phrase {
	const most = 4
	p = t.pressesDown(p)
	if p.NewStart || p.Command != nil || len(p.Facts) != 1 || p.Facts[0].Field != unit.StripCount && p.Facts[0].Field != unit.PanelCount || !thereAre.MatchString(t.m.Text) {
		return p
	}
	said := t.before.Said.facts()
	presses, _ := said.Number(unit.PressCount)
	panels, _ := said.Number(unit.PanelCount)
	if slices.Contains(t.before.Latest, unit.PanelCount) && !slices.Contains(t.before.Latest, unit.PressCount) {
		return p // panels were counted last
	}
	if n, _ := p.Facts[0].Value.(unit.Number); presses != 1 || n < 2 || n > most || float64(n) >= float64(panels) || t.before.Said.has(unit.StripCount) {
		return p
	}
	p.Facts = []grammar.Fact{p.Facts[0]}
	p.Facts[0].Field = unit.PressCount
	return p
}

// outOfUse tells of presses that are gone: "one press is down", "two of the presses broke".
var outOfUse = regexp.MustCompile(`(?i)\b(one|two|1|2) (?:more )?(?:of (?:the|our|my) )?(?:press|presses|frame|frames|bag|bags)(?:'s|’s)? (?:(?:is|are|has|have|just|went|gone|now) )*(?:down|out|broke|broken|broke down|dead|bust|busted|off|out of action|packed up)\W*$`)

// pressesDown takes the presses that are out of use off those of the thread.
func (t *turn) pressesDown(p grammar.Phrase) grammar.Phrase {
	m := outOfUse.FindStringSubmatch(t.m.Text)
	if m == nil || p.NewStart || len(p.Facts) != 1 || p.Facts[0].Field != unit.PressCount {
		return p
	}
	down := 1
	if m[1] == "2" || m[1] == "two" {
		down = 2
	}
	had, ok := t.before.Said.facts().Number(unit.PressCount)
	if n, _ := p.Facts[0].Value.(unit.Number); !ok || int(n) != down || int(had) <= down {
		return p
	}
	p.Facts = []grammar.Fact{p.Facts[0]}
	p.Facts[0].Value = unit.Number(int(had) - down)
	return p
}

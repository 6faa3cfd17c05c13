package bot

import (
	"regexp"
	"slices"
	"strings"

	"presshand/engine/unit"
	"presshand/grammar"
)

var (
	// ofThose counts what the thread told once.
	ofThose      = regexp.MustCompile(`(?i)\b(?:of (?:those|these|that|them)|like (?:that|those))\b`)
	theseOrThose = regexp.MustCompile(`(?i)\b(?:of|like) (?:those|these|that)\b`)
	// notOne takes back that there is one: "three of those instead of one".
	notOne = regexp.MustCompile(`(?i)\b(?:instead of|rather than|not|in place of) (?:just |only )?(?:the )?(?:one|1|a single one)\b`)
)

// mostLevels is how many levels a count of them builds.
const mostLevels = 12

// levelsOfThose lays so many levels on each other in a thread that told one: "three of
// those instead of one".
func (t *turn) levelsOfThose(p grammar.Phrase) grammar.Phrase {
	if t.before.empty() || p.NewStart || p.Command != nil || t.before.Asks[0].About != grammar.Stack || len(p.Facts) != 1 || p.Facts[0].Field != unit.StripCount || namesStrip.MatchString(t.m.Text) || !ofThose.MatchString(t.m.Text) {
		return p
	}
	n, _ := p.Facts[0].Value.(unit.Number)
	x, ok := t.before.Said.find(unit.StackLayers)
	layers, _ := x.Value.(unit.Layers)
	if !ok || !oneLevel(layers) || n < 2 || n > mostLevels || !notOne.MatchString(t.m.Text) {
		if theseOrThose.MatchString(t.m.Text) { // strips, sleds or levels
			p.Unused = append(p.Unused[:len(p.Unused):len(p.Unused)], p.Facts[0].Text)
			p.Facts, p.Asks, p.Inferred = nil, nil, false
		}
		return p
	}
	var all unit.Layers
	for range int(n) {
		all = append(all, layers...)
	}
	p.Facts = []grammar.Fact{{Field: unit.StackLayers, Value: all, Unit: named[x.Unit], Text: p.Facts[0].Text}}
	p.Asks, p.Inferred = nil, false
	p.Unused = slices.DeleteFunc(slices.Clone(p.Unused), func(w string) bool { return strings.EqualFold(w, "one") || w == "1" })
	return p
}

// oneLevel reports whether layers are one sled at the bottom with its work and nothing
// that lies once on all.
func oneLevel(layers unit.Layers) bool {
	n := map[string]int{}
	for _, l := range layers {
		n[l.Part]++
	}
	return len(layers) > 1 && layers[0].Part == "sled" && n["sled"] == 1 && n["strips"] == 1 && n["caul"] == 0
}

package bot

import (
	"regexp"

	"presshand/engine/unit"
	"presshand/grammar"
)

// allThese are several of a kind.
var allThese = regexp.MustCompile(`(?i)\b(?:they|they're|theyre|these|those|them|all|each)\b`)

// eachStrip reports whether "they should all be 2 1/2 wide" tells of the strips of a thread, as
// its panel is many times that wide.
func (t *turn) eachStrip(f grammar.Fact) bool {
	const least = 4
	if f.Field != unit.StripWidth || !allThese.MatchString(t.m.Text) || !t.before.Said.has(unit.StripCount, unit.StripWidth, unit.StockPiles) && t.before.Asks[0].About != grammar.Strips {
		return false
	}
	n, _ := f.Value.(unit.Number)
	said := t.before.Said.facts()
	for _, across := range []unit.Field{unit.PanelWidth, unit.TargetWidth} {
		if wide, ok := said.Number(across); ok && least*float64(n) <= float64(wide) {
			return true
		}
	}
	return false
}

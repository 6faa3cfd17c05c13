package grammar_test

import (
	"strings"
	"testing"

	"presshand/grammar"
)

const typical = `5 strips 2-1/4 wide x 1/4 thick, 36 long, hard maple, 1" bar, 25 inHg on plastic, yellow glue — good to press?`

func BenchmarkParse_typical(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		grammar.Parse(typical, grammar.Habit{})
	}
}

// 4,000 characters is the longest message that is read.
func BenchmarkParse_hostile(b *testing.B) {
	for name, unit := range map[string]string{
		"numbers": "1 ", "sizes": "1 x 1 ", "words": "strap stripz ", "units": `1" `, "cues": "how much vac ", "bars": "1 in bar or ", "breaks": "1, ", "sorry": "sorry 6 strips ",
		"piles": "12 @ 2 1/4, ", "widths": "42 mm ", "half piles": "12 @ 2 1/4 to 3, ",
	} {
		text := strings.Repeat(unit, 4000/len(unit))
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				grammar.Parse(text, grammar.Habit{})
			}
		})
	}
}

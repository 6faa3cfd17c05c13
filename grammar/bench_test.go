package grammar_test

import (
	"fmt"
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
		b.Run(name, func(b *testing.B) { parses(b, strings.Repeat(unit, 4000/len(unit))) })
	}
	var apart strings.Builder
	for n := 101; apart.Len() < 4000; n++ {
		fmt.Fprint(&apart, n, " ")
	}
	b.Run("numbers apart", func(b *testing.B) { parses(b, apart.String()[:4000]) })
}

func parses(b *testing.B, text string) {
	for b.Loop() {
		grammar.Parse(text, grammar.Habit{})
	}
}

package grammar

import "slices"

// A mark is a sign as it is dictated.
type mark struct {
	said  [2]string
	norm  string
	shape shape
}

var marks = []mark{
	{[2]string{"comma"}, ",", shapeSymbol}, {[2]string{"colon"}, ":", shapeSymbol}, {[2]string{"semicolon"}, ";", shapeBreak},
	{[2]string{"period"}, ".", shapeBreak}, {[2]string{"full", "stop"}, ".", shapeBreak},
	{[2]string{"question", "mark"}, "?", shapeBreak}, {[2]string{"exclamation", "mark"}, "!", shapeBreak}, {[2]string{"exclamation", "point"}, "!", shapeBreak},
	{[2]string{"new", "line"}, "\n", shapeBreak}, {[2]string{"new", "paragraph"}, "\n", shapeBreak}, {[2]string{"newline"}, "\n", shapeBreak},
}

// dictatedMarks makes signs of those that a phone wrote down as words, "seven strips
// comma two wide period": two at least, one of them a comma, a full stop or a question
// mark. The comma of "zero comma eight five" is a point.
func dictatedMarks(scraps []scrap) []scrap {
	said, sure := 0, false
	for i := range scraps {
		if m, n := markAt(scraps, i); n > 0 {
			said++
			sure = sure || m.norm == "," || n == 2
		}
	}
	if said == 0 {
		return scraps
	}
	for i := 1; i < len(scraps); i++ {
		if scraps[i].norm == "comma" && noughts[scraps[i-1].norm] {
			scraps[i].norm = "point"
			said--
		}
	}
	if said < 2 || !sure {
		return scraps
	}
	for i := 0; i < len(scraps); i++ {
		if m, n := markAt(scraps, i); n > 0 {
			scraps[i].shape, scraps[i].norm, scraps[i].end = m.shape, m.norm, scraps[i+n-1].end
			scraps = slices.Delete(scraps, i+1, i+n)
		}
	}
	return scraps
}

// markAt is the sign that is said at scrap i, and in how many words.
func markAt(scraps []scrap, i int) (mark, int) {
	if scraps[i].shape != shapeWord {
		return mark{}, 0
	}
	switch scraps[i].norm {
	case "comma", "colon", "semicolon", "period", "full", "question", "exclamation", "new", "newline":
	default:
		return mark{}, 0
	}
	for _, m := range marks {
		if m.said[0] != scraps[i].norm {
			continue
		}
		if m.said[1] == "" {
			return m, 1
		}
		if isWord(scraps, i+1, m.said[1]) {
			return m, 2
		}
	}
	return mark{}, 0
}

// stumbling is what is said while a number is looked for.
var stumbling = wordSet(`… ... .. uh uhh um umm er erm hm hmm`)

// unhesitant drops what is said between a joining word and its number: "3 at… 3 1/4",
// "12 of, uh, 2 3/8".
func unhesitant(scraps []scrap) []scrap {
	for i := 1; i+1 < len(scraps); i++ {
		if !in(scraps[i-1].norm, "at", "@", "of", "by") {
			continue
		}
		end, stumbled := i, false
		for end < len(scraps) && (stumbling[scraps[end].norm] || in(scraps[end].norm, ",", ".")) {
			stumbled = stumbled || stumbling[scraps[end].norm] || end > i && scraps[end].norm == "." && scraps[end-1].norm == "."
			end++
		}
		if stumbled && end < len(scraps) && scraps[end].shape >= shapeInt && scraps[end].shape <= shapePair {
			scraps = slices.Delete(scraps, i, end)
		}
	}
	return scraps
}

package grammar

import (
	"strings"
	"unicode/utf8"
)

// plainEnd returns the end of the word at start where it is of small letters and digits
// alone, so that it is its own norm; start where it is not.
func plainEnd(text string, start int) int {
	end := start
	for end < len(text) && (text[end] >= 'a' && text[end] <= 'z' || end > start && text[end] >= '0' && text[end] <= '9') {
		end++
	}
	if end < len(text) {
		switch c := text[end]; {
		case c >= 'A' && c <= 'Z', c >= utf8.RuneSelf, c == '\'', c == '&':
			return start
		}
	}
	return end
}

func exponent(s string) bool {
	s = strings.TrimLeft(s, "+-")
	return s != "" && isDigit(rune(s[0]))
}

package bot

import (
	"strings"
	"unicode"
)

// withoutMarkup takes out what chat services put into a text: mentions and
// channels in angle brackets go, a link leaves its label.
func withoutMarkup(s string) string {
	if !strings.Contains(s, "<") {
		return s
	}
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(s, "<")
		out.WriteString(before)
		if !found {
			return out.String()
		}
		inside, after, closed := strings.Cut(rest, ">")
		if !closed || !isMarkup(inside) {
			out.WriteByte('<')
			s = rest
			continue
		}
		out.WriteString(" " + label(inside) + " ")
		s = after
	}
}

func isMarkup(inside string) bool {
	if inside == "" || strings.ContainsAny(inside[:1], " 0123456789.") || strings.Contains(inside, "\n") {
		return false
	}
	return strings.ContainsAny(inside[:1], "@#!") || strings.Contains(inside, "://")
}

// label is what a link shows; a mention shows nothing.
func label(inside string) string {
	if strings.ContainsAny(inside[:1], "@#!") {
		return ""
	}
	_, text, _ := strings.Cut(inside, "|")
	return text
}

// maxQuoted is how many characters of something typed are shown.
const maxQuoted = 60

// harmless are look-alikes of the characters by which a chat service would
// ping, link or format.
var harmless = map[rune]rune{
	'<': '‹', '>': '›', '&': '＆', '@': '＠', '#': '＃', '*': '∗', '_': 'ˍ', '~': '∼',
	'`': 'ˋ', '[': '［', ']': '］', '\\': '＼', '|': '¦',
}

// quoted returns something typed so that it can be shown anywhere: it pings
// nobody, links nowhere and formats nothing.
func quoted(s string) string {
	in := []rune(s)
	out := make([]rune, 0, len(in)+2)
	for i, c := range in {
		if len(out) == maxQuoted {
			out = append(out, '…')
			break
		}
		out = append(out, harmlessAt(in, i, c))
	}
	return "“" + strings.TrimSpace(string(out)) + "”"
}

func harmlessAt(in []rune, i int, c rune) rune {
	if h, ok := harmless[c]; ok {
		return h
	}
	between := func(is func(rune) bool) bool {
		return i > 0 && i+1 < len(in) && is(in[i-1]) && is(in[i+1])
	}
	switch {
	case c == ':' && !between(unicode.IsDigit):
		return '∶'
	case c == '.' && between(unicode.IsLetter):
		return '․'
	case unicode.IsControl(c), unicode.Is(unicode.Cf, c):
		return ' '
	}
	return c
}

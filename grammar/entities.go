package grammar

import (
	"strconv"
	"strings"
)

// entities are marks as a page writes them.
var entities = map[string]rune{"&quot;": '"', "&#34;": '"', "&apos;": '\'', "&#39;": '\'', "&#x27;": '\'', "&amp;": '&', "&lt;": '<', "&gt;": '>', "&nbsp;": ' ', "&times;": 'x', "&deg;": '°', "&frac12;": '½', "&frac14;": '¼', "&frac34;": '¾', "&ndash;": '-', "&mdash;": '-', "&rsquo;": '\'', "&lsquo;": '\'', "&rdquo;": '"', "&ldquo;": '"', "&prime;": '\'', "&Prime;": '"'}

// entity returns the mark that "&quot;" and the like stand for at the byte given, and
// how long that is; 0 where there is none.
func (s *scanner) entity(at int) (rune, int) {
	const longest = 8
	end := strings.IndexByte(s.text[at:min(at+longest, len(s.text))], ';')
	if end < 0 {
		return 0, 0
	}
	name := s.text[at : at+end+1]
	if r, ok := entities[name]; ok {
		return r, end + 1
	}
	if n, err := strconv.ParseInt(strings.Trim(name, "&#;"), 10, 32); err == nil && strings.HasPrefix(name, "&#") {
		if r, ok := symbols[rune(n)]; ok {
			return r, end + 1 // "&#8243;"
		}
	}
	return 0, 0
}

// belowLabel reports whether the new line goes on with the number of a label: "bar:"
// and "1 1/2" alone in the line below.
func (s *scanner) belowLabel() bool {
	if len(s.scraps) == 0 || s.scraps[len(s.scraps)-1].norm != ":" {
		return false
	}
	const longest = 24
	line := strings.TrimLeft(s.text[s.pos:], "\r\n\t ")
	line = line[:min(longest, len(line))]
	end := strings.IndexAny(line, "\r\n")
	if end < 0 && len(line) == longest {
		return false
	}
	if end >= 0 {
		line = line[:end]
	}
	return line != "" && isDigit(rune(line[0])) && len(strings.Fields(line)) <= 3
}

// tags are those that give text its looks.
var tags = wordSet(`b i u s p br em strong code pre span div li ul ol td tr th table`)

// withMarks writes the marks that a page spells out: a name with "&quot;" in it would end
// at the semicolon when it is read again.
func withMarks(name string) string {
	if !strings.Contains(name, "&") {
		return name
	}
	s := scanner{text: name}
	var out strings.Builder
	for at := 0; at < len(name); {
		if r, n := s.entity(at); name[at] == '&' && n > 0 {
			out.WriteRune(r)
			at += n
			continue
		}
		out.WriteByte(name[at])
		at++
	}
	return out.String()
}

// tag returns the length of a page's mark-up at the start of s, like "<b>" or
// "</p>"; one that holds more than its name is read like any text.
func tag(s string) int {
	if len(s) < 3 || s[0] != '<' {
		return 0
	}
	n := 1
	if s[n] == '/' {
		n++
	}
	name := n
	for n < len(s) && n-name <= 10 && (s[n] >= 'a' && s[n] <= 'z' || s[n] >= 'A' && s[n] <= 'Z') {
		n++
	}
	if n == len(s) || s[n] != '>' || !tags[strings.ToLower(s[name:n])] {
		return 0
	}
	return n + 1
}

// twoDots reports whether two dots stand right between two whole numbers or decimals;
// three are a pause.
func (s *scanner) twoDots() bool {
	if !s.afterDigit() || !strings.HasPrefix(s.text[s.pos:], "..") || !s.digitAt(s.pos+2) {
		return false
	}
	end := s.pos + 2
	for s.digitAt(end) {
		end++
	}
	return end >= len(s.text) || s.text[end] != '/'
}

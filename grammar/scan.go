package grammar

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// shape is what a run of characters looks like, before any word is known.
type shape uint8

const (
	shapeWord shape = iota
	shapeInt
	shapeDecimal
	shapeFraction
	shapePair   // 7:30, 1:12
	shapeSymbol // one character
	shapeBreak  // full stop, question mark, semicolon, new line
	shapeBad    // digits that are no number: 1e400, 1.2.3, 0x41
)

// A scrap is a run of characters of one shape.
type scrap struct {
	shape      shape
	norm       string // lower case, apostrophes gone, glyph fractions written out
	start, end int    // bytes of the message
	glued      bool   // nothing between it and the scrap before
	ordinal    bool   // a fraction written "32nd"
	taken      bool   // misspelt, and taken for norm
}

// glyphs are the fractions that have a character of their own.
var glyphs = map[rune]string{
	'½': "1/2", '⅓': "1/3", '⅔': "2/3", '¼': "1/4", '¾': "3/4", '⅕': "1/5", '⅖': "2/5",
	'⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
}

// symbols are characters with several drawings, by the one that we use.
var symbols = map[rune]rune{
	'“': '"', '”': '"', '″': '"', '„': '"', '‟': '"', '’': '\'', '‘': '\'', '′': '\'',
	'−': '-', '–': '-', '—': '-', '‑': '-', '‒': '-', '×': 'x', '✕': 'x', '⁄': '/', '∕': '/',
	'º': '°', '˚': '°', '，': ',', '。': '.', '？': '?',
}

type scanner struct {
	text   string
	pos    int
	scraps []scrap
}

// scan splits a message into scraps. It never fails: what it does not know is
// a symbol.
func scan(text string) []scrap { return scanOn(nil, text) }

// scanOn appends the scraps of a message.
func scanOn(scraps []scrap, text string) []scrap {
	s := &scanner{text: text, scraps: slices.Grow(scraps, len(text)/4+4)}
	for s.pos < len(s.text) {
		if n := markup(s.text[s.pos:]); n > 0 {
			s.pos += n
			continue
		}
		s.next()
	}
	return s.scraps
}

// markup returns the length of a chat service's own mark at the start of s:
// a mention of a person or channel, or a link.
func markup(s string) int {
	if s[0] != 'h' && s[0] != '@' && s[0] != '<' {
		return 0
	}
	if strings.HasPrefix(s, "http://") || strings.HasPrefix(s, "https://") {
		if end := strings.IndexAny(s, " \t\n<>\"')"); end > 0 {
			return end
		}
		return len(s)
	}
	if len(s) > 1 && s[0] == '@' && (s[1] >= 'a' && s[1] <= 'z' || s[1] >= 'A' && s[1] <= 'Z') {
		n := 1
		for n < len(s) && (s[n] == '_' || s[n] == '.' || s[n] == '-' || s[n] >= 'a' && s[n] <= 'z' || s[n] >= 'A' && s[n] <= 'Z' || s[n] >= '0' && s[n] <= '9') {
			n++
		}
		return n
	}
	if n := tag(s); n > 0 {
		return n
	}
	if len(s) < 3 || s[0] != '<' || !strings.ContainsRune("@#!h", rune(s[1])) {
		return 0
	}
	if s[1] == 'h' && !strings.HasPrefix(s, "<http") {
		return 0
	}
	end := strings.IndexAny(s, "> \n")
	if end < 0 || s[end] != '>' {
		return 0
	}
	return end + 1
}

func (s *scanner) rune(at int) (rune, int) {
	if s.text[at] == '&' {
		if r, n := s.entity(at); n > 0 {
			return r, n
		}
	}
	if b := s.text[at]; b < utf8.RuneSelf {
		return rune(b), 1 // no drawing of another
	}
	r, n := utf8.DecodeRuneInString(s.text[at:])
	if to, ok := symbols[r]; ok {
		r = to
	}
	return r, n
}

func (s *scanner) next() {
	r, n := s.rune(s.pos)
	start := s.pos
	switch {
	case (r == '\n' || r == '\r') && s.belowLabel():
		s.pos += n
	case r == '\n' || r == '\r':
		s.pos += n
		s.add(shapeBreak, start, "\n")
	case r == '\t' && s.betweenNumbers():
		s.pos += n
		s.add(shapeSymbol, start, "|") // parts the columns of a table
	case unicode.IsSpace(r) || r == '\u200b' || r == '\ufeff' || r == utf8.RuneError && n == 1 || unicode.Is(unicode.Cf, r):
		s.pos += n
	case r == '.' && s.twoDots():
		s.pos += 2
		s.add(shapeSymbol, start, "-") // "24..26"
	case isDigit(r) || r == '.' && s.digitAt(s.pos+n) && !s.afterDigit():
		s.number()
	case glyphs[r] != "":
		s.pos += n
		s.add(shapeFraction, start, glyphs[r])
	case (r == 'x' || r == 'X') && s.times(s.pos+n), r == '*' && len(s.scraps) > 0 && s.scraps[len(s.scraps)-1].end == s.pos && s.scraps[len(s.scraps)-1].shape != shapeSymbol && s.timesStar(s.pos+n):
		s.pos += n
		s.add(shapeSymbol, start, "x")
	case r == '\'' && s.pos > 0 && isDigit(rune(s.text[s.pos-1])) && s.pos+n < len(s.text) && s.text[s.pos+n] == 's' && !s.letterAt(s.pos+n+1):
		s.pos += n + 1 // "14's on hold"
	case r == '\'' && s.letterAt(s.pos+n) && (s.pos == 0 || !isDigit(rune(s.text[s.pos-1]))):
		s.pos += n // 'em
	case unicode.IsLetter(r):
		s.word()
	case strings.ContainsRune(".?!;", r):
		s.pos += n
		s.add(shapeBreak, start, string(r))
	case unicode.IsNumber(r) || unicode.IsDigit(r):
		s.pos += n
		s.add(shapeBad, start, s.text[start:s.pos])
	default:
		s.pos += n
		s.add(shapeSymbol, start, string(r))
	}
}

// timesStar reports whether a star, ending at the byte given, multiplies: digits
// behind it that no brace closes.
func (s *scanner) timesStar(end int) bool {
	from := end
	for s.digitAt(end) {
		end++
	}
	return end > from && !(end < len(s.text) && s.text[end] == '}')
}

// times reports whether an x, ending at the byte given, multiplies: a number or
// a unit before it and no letter behind it.
func (s *scanner) times(end int) bool {
	if len(s.scraps) == 0 || s.letterAt(end) {
		return false
	}
	last := s.scraps[len(s.scraps)-1]
	return last.shape != shapeBreak
}

func (s *scanner) add(sh shape, start int, norm string) {
	glued := len(s.scraps) > 0 && s.scraps[len(s.scraps)-1].end == start
	s.scraps = append(s.scraps, scrap{shape: sh, norm: norm, start: start, end: s.pos, glued: glued})
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func (s *scanner) digitAt(at int) bool { return at < len(s.text) && isDigit(rune(s.text[at])) }

// betweenNumbers reports whether a tab stands right between two numbers.
func (s *scanner) betweenNumbers() bool {
	if len(s.scraps) == 0 || !s.digitAt(s.pos+1) {
		return false
	}
	last := s.scraps[len(s.scraps)-1]
	return last.shape >= shapeInt && last.shape <= shapePair && last.end == s.pos
}

func (s *scanner) afterDigit() bool { return s.pos > 0 && isDigit(rune(s.text[s.pos-1])) }

func (s *scanner) digits() {
	for s.digitAt(s.pos) {
		s.pos++
	}
}

// number reads an integer, a decimal, a fraction a/b or a pair a:b.
func (s *scanner) number() {
	start := s.pos
	s.digits()
	sh := shapeInt
	norm := ""
	switch {
	case s.thousands():
		norm = strings.ReplaceAll(s.text[start:s.pos], ",", "")
		if s.decimalPoint() {
			sh = shapeDecimal
			s.pos++
			s.digits()
			norm = strings.ReplaceAll(s.text[start:s.pos], ",", "")
		}
	case s.decimalPoint() || s.decimalComma(start):
		sh = shapeDecimal
		s.pos++
		s.digits()
	case s.slash():
		sh = shapeFraction
		_, n := s.rune(s.pos)
		mid := s.pos
		s.pos += n
		s.digits()
		norm = s.text[start:mid] + "/" + s.text[mid+n:s.pos]
	case s.at(':') && s.digitAt(s.pos+1):
		sh = shapePair
		s.pos++
		s.digits()
	}
	if s.badTail(start, sh) || sh == shapeInt && s.ordinal(start) {
		return
	}
	if norm == "" {
		norm = strings.Replace(s.text[start:s.pos], ",", ".", 1)
	}
	s.add(sh, start, norm)
}

func (s *scanner) at(b byte) bool { return s.pos < len(s.text) && s.text[s.pos] == b }

func (s *scanner) decimalPoint() bool { return s.at('.') && s.digitAt(s.pos+1) }

// decimalComma takes "1,2" and "0,125" for decimals, "1,200" and a list
// without spaces for none.
func (s *scanner) decimalComma(start int) bool {
	if !s.at(',') || !s.digitAt(s.pos+1) {
		return false
	}
	end := s.pos + 1
	for s.digitAt(end) {
		end++
	}
	if end < len(s.text) && s.text[end] == ',' && s.digitAt(end+1) {
		return false
	}
	return end-s.pos-1 != 3 || s.text[start] == '0'
}

// thousands reads on over groups of three digits: "1,200".
func (s *scanner) thousands() bool {
	at, first := s.pos, s.pos
	for first > 0 && isDigit(rune(s.text[first-1])) {
		first--
	}
	if s.pos-first > 3 || s.text[first] == '0' {
		return false
	}
	for at+3 < len(s.text) && s.text[at] == ',' && s.digitAt(at+1) && s.digitAt(at+2) && s.digitAt(at+3) && !s.digitAt(at+4) {
		at += 4
	}
	if at == s.pos {
		return false
	}
	s.pos = at
	return true
}

func (s *scanner) slash() bool {
	if s.pos >= len(s.text) {
		return false
	}
	r, n := s.rune(s.pos)
	return r == '/' && s.digitAt(s.pos+n)
}

// badTail takes in what makes a number unreadable: a second point, an exponent,
// a hexadecimal tail, a date.
func (s *scanner) badTail(start int, sh shape) bool {
	end := s.pos
	rest := s.text[end:]
	bad := false
	switch {
	case sh == shapeInt && start > 1 && s.text[start-1] == '/' && unicode.IsLetter(rune(s.text[start-2])):
		bad = true // "pi/8"
	case rest == "":
	case (rest[0] == '.' || rest[0] == ':' || rest[0] == '/') && sh != shapeInt && len(rest) > 1 && isDigit(rune(rest[1])):
		bad = true
	case (rest[0] == 'e' || rest[0] == 'E') && exponent(rest[1:]):
		bad = true
	case (rest[0] == 'x' || rest[0] == 'X') && s.text[start:end] == "0":
		bad = true
	}
	if !bad {
		return false
	}
	for s.pos < len(s.text) && (isDigit(rune(s.text[s.pos])) || strings.ContainsRune(".:/+-abcdefxABCDEFX", rune(s.text[s.pos]))) {
		s.pos++
	}
	s.add(shapeBad, start, s.text[start:s.pos])
	return true
}

// ordinal takes in "2nd", and reads "64th" as a part where one of 8 to 128.
func (s *scanner) ordinal(start int) bool {
	rest := s.text[s.pos:]
	for _, tail := range []string{"ths", "th", "nds", "nd", "rd", "st"} {
		if len(rest) >= len(tail) && strings.EqualFold(rest[:len(tail)], tail) && !s.letterAt(s.pos+len(tail)) {
			digits := s.text[start:s.pos]
			s.pos += len(tail)
			switch digits {
			case "8", "16", "32", "64", "128":
				s.add(shapeFraction, start, "1/"+digits)
				s.scraps[len(s.scraps)-1].ordinal = true
			default:
				s.add(shapeBad, start, s.text[start:s.pos])
			}
			return true
		}
	}
	return false
}

// word reads letters and the digits among them ("d3"), without apostrophes. A
// hyphen ends it.
func (s *scanner) word() {
	start := s.pos
	if end := plainEnd(s.text, start); end > start {
		s.pos = end
		s.addWord(start, s.text[start:end])
		return
	}
	var b strings.Builder
	for s.pos < len(s.text) {
		r, n := s.rune(s.pos)
		switch {
		case unicode.IsLetter(r):
			b.WriteRune(unicode.ToLower(r))
		case isDigit(r) && s.pos > start, r == '²' || r == '³', unicode.Is(unicode.Mn, r):
			b.WriteRune(r)
		case r == '\'' && s.letterAt(s.pos+n):
			if s.contracts(s.pos + n) {
				s.addWord(start, b.String())
				s.pos += n + 2
				return
			}
		default:
			s.addWord(start, b.String())
			return
		}
		s.pos += n
	}
	s.addWord(start, b.String())
}

// contracts reports whether "ll" ends the word at the byte given: "the bar'll do".
func (s *scanner) contracts(at int) bool {
	return at+2 <= len(s.text) && strings.EqualFold(s.text[at:at+2], "ll") && !s.letterAt(at+2)
}

// addWord writes "w/" and "w/o" out.
func (s *scanner) addWord(start int, w string) {
	if w == "w" && s.at('/') {
		s.pos++
		w = "with"
		if (s.at('o') || s.at('O')) && !s.letterAt(s.pos+1) {
			s.pos++
			w = "without"
		}
	}
	s.add(shapeWord, start, w)
}

func (s *scanner) letterAt(at int) bool {
	if at >= len(s.text) {
		return false
	}
	r, _ := s.rune(at)
	return unicode.IsLetter(r)
}

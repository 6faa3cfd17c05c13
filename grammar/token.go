package grammar

import (
	"math/big"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// The symbols that the scraps of a message are sorted into.
const (
	symInt lexer.TokenType = iota + 1
	symDecimal
	symFraction
	symQuarters // 4/4, 8/4: lumber
	symPair     // 7:30, 1:12
	symWords    // a number in words
	symBad
	symUnit
	symMinus
	symTimes
	symTo
	symOr
	symAt
	symTerm // a word or run of words with a meaning
	symWord // any other word, and all that is no part of a measure
	symComma
	symBreak
	symSlash
	symMark
	symNumber // any number but Int and Fraction
	symLink   // x, by, to, or, at between two amounts
)

// symbolNames are the symbols of the tree.
var symbolNames = map[string]lexer.TokenType{
	"EOF": lexer.EOF, "Int": symInt, "Fraction": symFraction, "Number": symNumber, "Unit": symUnit, "Minus": symMinus, "Link": symLink,
}

// A token is one or more scraps with one meaning.
type token struct {
	symbol     lexer.TokenType
	norm       string
	text       string // as typed
	start, end int
	glued      bool
	plural     bool // a number with an s: "the 50s"
	taken      bool // misspelt, and taken for norm
	meaning    meaning
	value      *big.Rat // of a number in words
	list       *stockList
}

// tokenizer gives scraps their meaning.
type tokenizer struct {
	text    string
	scraps  []scrap
	at      int
	tokens  []token
	guesses int
}

func tokenize(text string) []token { return new(scratch).tokenize(text) }

func (t *tokenizer) next() {
	s := t.scraps[t.at]
	switch s.shape {
	case shapeInt:
		t.integer()
	case shapeDecimal:
		t.push(symDecimal, 1)
	case shapeFraction:
		t.fraction(s)
	case shapePair:
		t.push(symPair, 1)
	case shapeBad:
		t.push(symBad, 1)
	case shapeBreak:
		t.push(symBreak, 1)
	case shapeSymbol:
		t.symbol(s)
	default:
		t.word(s)
	}
}

// integer reads "2 and a half" and "3 32nds" as one number.
func (t *tokenizer) integer() {
	if !t.goesOn(t.at + 1) {
		t.push(symInt, 1)
		return
	}
	whole, _ := new(big.Rat).SetString(t.scraps[t.at].norm)
	if t.dozens(whole) {
		return
	}
	if whole != nil && isAnd(t.scraps, t.at+1) && t.at+2 < len(t.scraps) && t.scraps[t.at+2].shape == shapeWord {
		if part, n := fractionWords(t.scraps, t.at+2); n > 0 {
			t.push(symWords, n+2).value = part.Add(part, whole)
			return
		}
	}
	if whole != nil && isWord(t.scraps, t.at+1, "and") && t.at+2 < len(t.scraps) && t.scraps[t.at+2].shape == shapeFraction && !t.scraps[t.at+2].ordinal && !t.sizeAndThickness() && !t.sizeAndTrim(whole) {
		if part := rational(t.scraps[t.at+2].norm); part != nil && part.Cmp(one) < 0 {
			t.push(symWords, 3).value = part.Add(part, whole)
			return
		}
	}
	if t.partInWords(whole) {
		return
	}
	if t.at+1 < len(t.scraps) && whole != nil && t.scraps[t.at+1].ordinal {
		part, _ := new(big.Rat).SetString(t.scraps[t.at+1].norm)
		t.push(symWords, 2).value = part.Mul(part, whole)
		return
	}
	t.push(symInt, 1)
}

// goesOn reports whether scrap i may go on with the number before it.
func (t *tokenizer) goesOn(i int) bool {
	return i < len(t.scraps) && (t.scraps[i].ordinal || isAnd(t.scraps, i) || t.dozenAt(i))
}

// sizeAndThickness: "30 x 60 and 3/4 thick" is a size and a thickness.
func (t *tokenizer) sizeAndThickness() bool {
	l := t.last()
	return l != nil && l.symbol == symTimes && (isWord(t.scraps, t.at+3, "thick") || isWord(t.scraps, t.at+4, "thick"))
}

// sizeAndTrim: "need 36 and 1/4 trim" is a width and what comes off.
func (t *tokenizer) sizeAndTrim(whole *big.Rat) bool {
	m, n := trade.longest(t.scraps, t.at+3)
	return n > 0 && m.kind == kindRole && m.id == "trim" && whole.Cmp(big.NewRat(12, 1)) >= 0
}

// push makes a token of the next n scraps.
func (t *tokenizer) push(sym lexer.TokenType, n int) *token {
	first, last := t.scraps[t.at], t.scraps[t.at+n-1]
	norm := first.norm
	if n > 1 {
		var b strings.Builder
		b.Grow(last.end - first.start + n)
		for i, s := range t.scraps[t.at : t.at+n] {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(s.norm)
			first.taken = first.taken || s.taken
		}
		norm = b.String()
	}
	t.tokens = append(t.tokens, token{
		symbol: sym, norm: norm, text: t.text[first.start:last.end],
		start: first.start, end: last.end, glued: first.glued, taken: first.taken,
	})
	t.at += n
	return &t.tokens[len(t.tokens)-1]
}

// dozens reads "2 dozen" and "1/2 doz".
func (t *tokenizer) dozens(n *big.Rat) bool {
	if n == nil || !t.dozenAt(t.at+1) {
		return false
	}
	v := new(big.Rat).Mul(n, big.NewRat(12, 1))
	if v.IsInt() {
		t.push(symWords, 2).value = v
	}
	return v.IsInt()
}

func (t *tokenizer) dozenAt(i int) bool {
	return isWord(t.scraps, i, "dozen") || isWord(t.scraps, i, "dozens") || isWord(t.scraps, i, "doz")
}

func (t *tokenizer) fraction(s scrap) {
	if t.dozenAt(t.at+1) && t.dozens(rational(s.norm)) {
		return
	}
	num, den, _ := strings.Cut(s.norm, "/")
	if den == "4" && len(num) <= 2 && (len(num) == 2 || num >= "4") && num[0] != '0' {
		t.push(symQuarters, 1)
		return
	}
	t.push(symFraction, 1)
}

func (t *tokenizer) last() *token {
	if len(t.tokens) == 0 {
		return nil
	}
	return &t.tokens[len(t.tokens)-1]
}

// afterNumber reports whether the token before is a number.
func (t *tokenizer) afterNumber() bool {
	l := t.last()
	return l != nil && l.symbol >= symInt && l.symbol <= symBad
}

func (t *tokenizer) numberAt(i int) bool {
	if i >= len(t.scraps) {
		return false
	}
	switch t.scraps[i].shape {
	case shapeInt, shapeDecimal, shapeFraction:
		return true
	}
	return false
}

func (t *tokenizer) symbol(s scrap) {
	next := t.numberAt(t.at + 1)
	nextGlued := t.at+1 < len(t.scraps) && t.scraps[t.at+1].glued
	switch s.norm {
	case ",":
		t.push(symComma, 1)
	case "/":
		t.push(symSlash, 1)
	case "@":
		t.push(symAt, 1)
	case "x":
		t.linkOr(symTimes, next && t.afterAmount())
	case "-":
		t.hyphen(s, next, nextGlued)
	case "+", "&":
		if next && t.jointsMixed() && (s.norm == "&" || s.glued && nextGlued) {
			t.at++ // "2+3/8", "2 & 3/8"
			return
		}
		t.push(symMark, 1)
	default:
		if s.norm == "%" && nextGlued && t.scraps[t.at+1].shape == shapeWord {
			t.push(symMark, 1) // "%d"
			return
		}
		if m, n := units.longest(t.scraps, t.at); n > 0 && t.afterNumber() && t.unitFits(m, n) {
			t.push(symUnit, n).meaning = m
			return
		}
		t.push(symMark, 1)
	}
}

// jointsMixed reports whether a whole number stands before and a proper fraction
// behind: the two are one number.
func (t *tokenizer) jointsMixed() bool {
	l := t.last()
	if l == nil || l.symbol != symInt || t.at+1 >= len(t.scraps) || t.scraps[t.at+1].shape != shapeFraction {
		return false
	}
	return proper(t.scraps[t.at+1].norm)
}

// hyphen is a sign, a mixed number's joint ("2-1/4"), a range or a dash.
func (t *tokenizer) hyphen(s scrap, next, nextGlued bool) {
	after := t.afterNumber()
	switch {
	case after && next && t.jointsMixed() && s.glued && nextGlued:
		t.at++ // the joint of a mixed number
	case after && s.glued && nextGlued && next:
		t.push(symTo, 1)
	case next && nextGlued && !s.glued:
		t.push(symMinus, 1)
	case next && nextGlued && s.glued && !after && t.last() != nil && t.last().symbol == symMark:
		t.push(symMinus, 1)
	case next && nextGlued && t.at == 0:
		t.push(symMinus, 1)
	case after && s.glued && nextGlued && hyphenUnits[scrapNorm(t.scraps, t.at+1)]:
		t.at++ // "1-inch bar"
	case !s.glued && !nextGlued:
		t.push(symComma, 1) // a dash
	default:
		t.push(symMark, 1)
	}
}

// hyphenUnits are the units that a hyphen joins to their number.
var hyphenUnits = wordSet(`inch in foot ft mm cm`)

// between reports whether "between" stands just before: "between 8 and 12".
func (t *tokenizer) between() bool {
	for i := len(t.tokens) - 1; i >= 0 && i >= len(t.tokens)-4; i-- {
		if t.tokens[i].norm == "between" {
			return true
		}
	}
	return false
}

func (t *tokenizer) afterAmount() bool {
	l := t.last()
	return l != nil && l.symbol >= symInt && l.symbol <= symUnit
}

// linkOr makes a link between two numbers, or a mark where there is nothing to
// link.
func (t *tokenizer) linkOr(sym lexer.TokenType, link bool) {
	if !link {
		sym = symMark
	}
	t.push(sym, 1)
}

func (t *tokenizer) word(s scrap) {
	if t.afterNumber() && (t.inchAndPart(s) || t.behindNumber(s)) {
		return
	}
	if t.pluralWords(s) {
		return
	}
	if t.roughQuarters(s) {
		return
	}
	if v, n := wordNumber(t.scraps, t.at); n > 0 && !t.tradeRun(n) && !t.pronoun(s, n) {
		many := t.manyParts(n)
		tok := t.push(symWords, n)
		tok.value, tok.plural = v, many
		return
	}
	if t.inchAnd(s) || t.oneOfUnit(s) || t.link(s) || t.minus(s) {
		return
	}
	if m, n := trade.longest(t.scraps, t.at); n > 0 && !t.fillsNumber(m, n) {
		t.push(symTerm, n).meaning = m
		return
	}
	if t.shortIs(s) {
		return
	}
	if m, n := units.longest(t.scraps, t.at); n > 0 && (len(s.norm) > 1) {
		t.push(symTerm, n).meaning = m
		return
	}
	t.push(symWord, 1)
}

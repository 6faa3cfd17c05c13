package grammar

import (
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// pronouns are words after which "one" is no number: "wrong one".
var pronouns = wordSet(`wrong this that last which other each every any new old far right same first second bottom top no the good bad next only`)

// whichOne are words that tell one of several from the others.
var whichOne = wordSet(`big small tall short low high thick thin wide narrow fat skinny long tallest shortest thickest thinnest widest narrowest biggest smallest best better steel oak spare middle little large`)

// shortIs reads "friction's" for "friction is".
func (t *tokenizer) shortIs(s scrap) bool {
	bare, short := strings.CutSuffix(strings.ToLower(strings.ReplaceAll(t.text[s.start:s.end], "’", "'")), "'s")
	if !short || fill[s.norm] {
		return false
	}
	m, n := trade.longest([]scrap{{shape: s.shape, norm: bare}}, 0)
	if n == 0 {
		return false
	}
	tok := t.push(symTerm, 1)
	tok.meaning, tok.norm = m, bare
	return true
}

// quarterStock are the thicknesses that rough lumber is sold in, in quarters of an inch.
var quarterStock = map[string]string{"four": "4/4", "five": "5/4", "six": "6/4", "eight": "8/4", "ten": "10/4", "twelve": "12/4", "sixteen": "16/4"}

// roughQuarters reads "five quarter walnut" and "eight-quarter stock".
func (t *tokenizer) roughQuarters(s scrap) bool {
	size, sold := quarterStock[s.norm]
	at := skipHyphen(t.scraps, t.at+1)
	if !sold || !isWord(t.scraps, at, "quarter") || at+1 >= len(t.scraps) {
		return false
	}
	next := skipHyphen(t.scraps, at+1)
	m, _ := trade.longest(t.scraps, next)
	if m.kind != kindWood && !isWord(t.scraps, next, "stock") && !isWord(t.scraps, next, "lumber") && !isWord(t.scraps, next, "rough") {
		return false
	}
	t.push(symQuarters, at+1-t.at).norm = size
	return true
}

func (t *tokenizer) pronoun(s scrap, n int) bool {
	l := t.last()
	if s.norm == "one" && n == 1 && l != nil && l.symbol == symFraction && t.at+1 >= len(t.scraps) {
		return true // "and with a 1 1/2 one"
	}
	if s.norm != "one" || n != 1 {
		return false
	}
	if t.sizedOne(t.at) {
		return true
	}
	if l != nil && (l.norm == "on" || l.norm == "the") && t.at+1 < len(t.scraps) {
		_, m := trade.longest(t.scraps, t.at+1)
		return m == 0 && (!hyphenUnits[t.scraps[t.at+1].norm] || t.scraps[t.at+1].norm == "in") // "the one inch then"
	}
	if k := len(t.tokens) - 2; k >= 0 && (l.symbol == symWord || whichOne[l.norm]) && (t.tokens[k].norm == "the" || t.tokens[k].norm == "that") && (strings.HasSuffix(l.norm, "er") || firmness[l.norm] != "" || whichOne[l.norm]) && (t.at+1 >= len(t.scraps) || t.scraps[t.at+1].shape != shapeWord || !t.nounAt(t.at+1) && !t.unitAt(t.at+1)) {
		return true // "the taller one", "the medium one"
	}
	return l != nil && pronouns[l.norm] && (t.at+1 >= len(t.scraps) || t.scraps[t.at+1].shape != shapeWord || !t.nounAt(t.at+1))
}

// sizedOne: "and a 60 one?", "with a 1 1/2 tall one" tell one of several by its size;
// the "one" is the scrap at the place given.
func (t *tokenizer) sizedOne(at int) bool {
	k := len(t.tokens) - 1
	if k > 0 && t.tokens[k].meaning.kind == kindAttr {
		k--
	}
	last := k
	for k >= 0 && (t.tokens[k].symbol >= symInt && t.tokens[k].symbol <= symUnit) {
		k--
	}
	if k < 0 || k == last || !articles[t.tokens[k].norm] {
		return false
	}
	next := at + 1
	if next >= len(t.scraps) {
		return true
	}
	_, number := wordNumber(t.scraps, next)
	return number == 0 && !t.numberAt(next) && !t.nounAt(next) && !t.unitAt(next) && t.scraps[next].norm != "and"
}

// articles stand before a thing.
var articles = wordSet(`a an the that this my our`)

func (t *tokenizer) unitAt(i int) bool {
	_, n := units.longest(t.scraps, i)
	return n > 0
}

// fillsNumber reports whether a run that says nothing ends in the beginning of a
// number: "twelve of the two and three quarters".
func (t *tokenizer) fillsNumber(m meaning, n int) bool {
	if m.kind != kindFill || n < 2 || wholes[t.scraps[t.at+n-1].norm] == 0 {
		return false
	}
	_, k := wordNumber(t.scraps, t.at+n-1)
	return k > 1
}

// directionAt reports whether an adjective of measuring stands at scrap i: "thick".
func (t *tokenizer) directionAt(i int) bool {
	m, n := trade.longest(t.scraps, i)
	return n == 1 && m.kind == kindAttr && !nounForm(t.scraps[i].norm)
}

func (t *tokenizer) nounAt(i int) bool {
	m, n := trade.longest(t.scraps, i)
	return n > 0 && m.kind == kindNoun
}

// tradeRun reports whether a run of trade words longer than n starts here:
// "two part epoxy", "one face".
func (t *tokenizer) tradeRun(n int) bool {
	_, m := trade.longest(t.scraps, t.at)
	return m > n
}

// timesOrTill: the "by" of "24x60 by 3pm", "24 by 60 by four o'clock" joins no sizes.
func (t *tokenizer) timesOrTill() lexer.TokenType {
	if t.hourAt(t.at + 1) {
		return 0
	}
	return symTimes
}

// hourAt reports whether an hour of the day stands at scrap i: "3:30", "3 pm", "four in the
// afternoon"; "1:12" is a wedge.
func (t *tokenizer) hourAt(i int) bool {
	if i >= len(t.scraps) {
		return false
	}
	n := 1
	switch t.scraps[i].shape {
	case shapePair:
		return !strings.HasPrefix(t.scraps[i].norm, "1:")
	case shapeInt:
	default:
		if _, n = wordNumber(t.scraps, i); n == 0 {
			return false
		}
	}
	m, _ := trade.longest(t.scraps, i+n)
	return m.kind == kindRole && (m.id == "am" || m.id == "pm") && !(isWord(t.scraps, i+n, "am") && isWord(t.scraps, i+n+1, "i"))
}

// byAbout is how many words join two numbers in "1 5/8 by a heavy 3/4"; 0 elsewhere.
func (t *tokenizer) byAbout(s scrap) int {
	if s.norm != "by" || !t.afterAmount() {
		return 0
	}
	n := 1
	if isWord(t.scraps, t.at+n, "a") || isWord(t.scraps, t.at+n, "an") {
		n++
	}
	if scantWords[scrapNorm(t.scraps, t.at+n)] {
		n++
	}
	if !scantWords[scrapNorm(t.scraps, t.at+n-1)] || !t.numberAt(t.at+n) {
		return 0
	}
	return n
}

// minus reads the sign in words: "minus 0.8 bar".
func (t *tokenizer) minus(s scrap) bool {
	if s.norm != "minus" && s.norm != "negative" || t.afterAmount() {
		return false
	}
	if _, n := wordNumber(t.scraps, t.at+1); !t.numberAt(t.at+1) && (n == 0 || !t.gaugeNear(t.at+1+n)) {
		return false // "minus one strip"
	}
	t.push(symMinus, 1)
	return true
}

// link reads the words that join two numbers: by, to, or.
func (t *tokenizer) link(s scrap) bool {
	var sym lexer.TokenType
	switch s.norm {
	case "up":
	case "by":
		sym = t.timesOrTill()
	case "at":
		sym = symAt
	case "to", "through", "till", "til", "thru":
		sym = symTo
	case "or", "vs", "versus":
		sym = symOr
	case "and":
		if !t.between() {
			return false
		}
		sym = symTo
	default:
		return false
	}
	if s.norm == "or" && (isWord(t.scraps, t.at+1, "a") || isWord(t.scraps, t.at+1, "an")) && t.numberAt(t.at+2) && t.afterAmount() {
		t.push(symOr, 2).norm = "or"
		return true
	}
	if n := t.byAbout(s); n > 0 {
		t.push(symTimes, n).norm = "by"
		return true
	}
	if s.norm == "up" && isWord(t.scraps, t.at+1, "to") && t.numberAt(t.at+2) && t.afterAmount() {
		t.push(symTo, 2).norm = "to"
		return true
	}
	next := t.numberAt(t.at+1) && sym != 0
	if !next && s.norm != "through" && sym != 0 {
		v, n := wordNumber(t.scraps, t.at+1)
		next = n > 0 && v != nil
	}
	if !next || !t.afterAmount() {
		return false
	}
	t.push(sym, 1)
	return true
}

package grammar

import (
	"math/big"

	"presshand/engine/unit"
)

// rareNumber reads the numbers in words that few write so.
func rareNumber(scraps []scrap, i int) (*big.Rat, int) {
	if i >= len(scraps) || scraps[i].shape != shapeWord {
		return nil, 0
	}
	w := scraps[i].norm
	if _, whole := wholes[w]; !whole && w != "a" && w != "an" && w != "point" && !noughts[w] {
		return nil, 0
	}
	for _, rare := range [...]func([]scrap, int) (*big.Rat, int){pointWords, rareParts, thirds, thousandWords, bareHundred} {
		if v, n := rare(scraps, i); n > 0 {
			return v, n
		}
	}
	return nil, 0
}

// thirds reads "two thirds", "a third of an inch", "two and a third".
func thirds(scraps []scrap, i int) (*big.Rat, int) {
	if i >= len(scraps) || scraps[i].shape != shapeWord {
		return nil, 0
	}
	whole := wholes[scraps[i].norm]
	switch {
	case whole == 2 && isWord(scraps, i+1, "thirds") && isWord(scraps, i+2, "of") && isWord(scraps, i+3, "an") && isWord(scraps, i+4, "inch"):
		return big.NewRat(2, 3), 4
	case whole == 2 && isWord(scraps, i+1, "thirds") && !isWord(scraps, i+2, "of"):
		return big.NewRat(2, 3), 2
	case whole > 0 && whole < 20 && isWord(scraps, i+1, "and") && (isWord(scraps, i+2, "a") || isWord(scraps, i+2, "one")) && isWord(scraps, i+3, "third"):
		return big.NewRat(3*whole+1, 3), 4
	case whole > 0 && whole < 20 && isWord(scraps, i+1, "and") && isWord(scraps, i+2, "two") && isWord(scraps, i+3, "thirds"):
		return big.NewRat(3*whole+2, 3), 4
	case (isWord(scraps, i, "a") || whole == 1) && isWord(scraps, i+1, "third") && isWord(scraps, i+2, "of") && isWord(scraps, i+3, "an") && isWord(scraps, i+4, "inch"):
		return big.NewRat(1, 3), 4
	}
	return nil, 0
}

// thousandWords reads "six thousand", "a thousand", "five thousand two hundred and eighty".
func thousandWords(scraps []scrap, i int) (*big.Rat, int) {
	v, n := int64(1), 1
	if !isWord(scraps, i, "a") {
		v, n = underThousand(scraps, i)
	}
	if n == 0 || v < 1 || !isWord(scraps, i+n, "thousand") {
		return nil, 0
	}
	v, n = 1000*v, n+1
	at := i + n
	if isWord(scraps, at, "and") {
		at++
	}
	if rest, m := underThousand(scraps, at); m > 0 && rest > 0 && rest < 1000 {
		if _, part := denominator(scraps, at+m); !part {
			return new(big.Rat).SetInt64(v + rest), at + m - i
		}
	}
	return new(big.Rat).SetInt64(v), n
}

// bareHundred reads "a hundred and sixty" and "hundred and ten" without a count of
// hundreds.
func bareHundred(scraps []scrap, i int) (*big.Rat, int) {
	at := i
	if isWord(scraps, at, "a") {
		at++
	}
	if !isWord(scraps, at, "hundred") || i > 0 && (isWord(scraps, i-1, "couple") || isWord(scraps, i-1, "few") || isWord(scraps, i-1, "several") || isWord(scraps, i-1, "of")) {
		return nil, 0
	}
	at++
	rest, n := tensWords(scraps, at)
	return new(big.Rat).SetInt64(100 + rest), at + n - i
}

// underThousand is wholeWords for what stands before and behind a thousand.
func underThousand(scraps []scrap, i int) (int64, int) {
	if i >= len(scraps) || scraps[i].shape != shapeWord {
		return 0, 0
	}
	return wholeWords(scraps, i)
}

// rareParts reads the fractions that are told in two words: "a thirty second of an
// inch", "three thirty seconds", "five sixty-fourths".
func rareParts(scraps []scrap, i int) (*big.Rat, int) {
	num, at := int64(0), i
	switch {
	case isWord(scraps, at, "a") || isWord(scraps, at, "an"):
		num, at = 1, at+1
	case at < len(scraps) && scraps[at].shape == shapeWord:
		num, at = wholes[scraps[at].norm], at+1
	}
	at = skipHyphen(scraps, at)
	d, n := rareDenominator(scraps, at)
	if n == 0 || num < 1 || num >= min(d, 20) {
		return nil, 0
	}
	end := at + n
	many := scraps[end-1].norm[len(scraps[end-1].norm)-1] == 's'
	if !many && !openBefore(scraps, i) && !isWord(scraps, end, "of") && !isWord(scraps, end, "inch") && (end >= len(scraps) || !outOfTrue[scraps[end].norm]) || many && num == 1 && d == 32 {
		return nil, 0 // "a thirty second spread"
	}
	if isWord(scraps, end, "of") && (isWord(scraps, end+1, "an") || isWord(scraps, end+1, "a")) && isWord(scraps, end+2, "inch") {
		end += 2
	}
	return big.NewRat(num, d), end - i
}

// openBefore reports whether what stands open is spoken of just before scrap i: "one
// joint's open about a thirty second".
func openBefore(scraps []scrap, i int) bool {
	for k := i - 1; k >= 0 && k >= i-6 && scraps[k].shape == shapeWord; k-- {
		switch scraps[k].norm {
		case "gap", "crook", "open", "proud", "bowed", "cupped":
			return k < i-1 || !isWord(scraps, i+3, "time")
		}
	}
	return false
}

// rareDenominator is 32 or 64, and how many scraps say it.
func rareDenominator(scraps []scrap, at int) (int64, int) {
	if at >= len(scraps) {
		return 0, 0
	}
	last := skipHyphen(scraps, at+1)
	switch {
	case scraps[at].norm == "thirty" && (isWord(scraps, last, "second") || isWord(scraps, last, "seconds")):
		return 32, last - at + 1
	case scraps[at].norm == "sixty" && (isWord(scraps, last, "fourth") || isWord(scraps, last, "fourths")):
		return 64, last - at + 1
	}
	return 0, 0
}

// pluralWords reads what names strips or sheets by a number in words: "eighteen by
// forty eights", "two and a halfs", "fours, five".
func (t *tokenizer) pluralWords(s scrap) bool {
	if v := wholes[s.norm]; v >= 20 && v < 100 && t.last() != nil && t.last().symbol == symTimes {
		at := skipHyphen(t.scraps, t.at+1)
		if ones := onesOf(t.scraps, at); ones > 0 {
			tok := t.push(symWords, at-t.at+1)
			tok.value, tok.plural = new(big.Rat).SetInt64(v+ones), true
			return true
		}
	}
	v, many := manyOf[s.norm]
	if !many {
		return false
	}
	next := t.at + 1
	told := next+1 < len(t.scraps) && (t.scraps[next].norm == "," || t.scraps[next].norm == ":") && wholes[t.scraps[next+1].norm] > 0
	starts := t.last() == nil || t.last().symbol == symBreak || t.last().symbol == symComma || t.last().norm == ":"
	counted := t.last() != nil && (t.last().symbol == symInt || t.last().symbol == symWords && !t.last().plural || t.last().norm == "more") // "eleven twos", "2 more threes"
	if !counted && !(t.last() != nil && t.last().norm == "the") && !(told && starts) {
		return false
	}
	tok := t.push(symWords, 1)
	tok.value, tok.plural = new(big.Rat).SetInt64(v), true
	return true
}

// onesOf is the last figure of a size in the plural, "eights" of "forty eights"; 0
// where none stands there.
func onesOf(scraps []scrap, at int) int64 {
	if at >= len(scraps) {
		return 0
	}
	if scraps[at].norm == "eights" { // alone it may be a misspelt part
		return 8
	}
	if v := manyOf[scraps[at].norm]; v < 10 {
		return v
	}
	return 0
}

// manyParts reports whether n scraps from the one at hand say a width in the plural:
// "two and a halfs", "three and a quarters".
func (t *tokenizer) manyParts(n int) bool {
	if n < 3 {
		return false
	}
	last := t.scraps[t.at+n-1].norm
	return (isWord(t.scraps, t.at+n-2, "a") || isWord(t.scraps, t.at+n-2, "an")) && (last == "halfs" || last == "halves" || last == "quarters" || last == "eighths")
}

// gaugeNear reports whether a unit of pressure or a word of the gauge stands behind
// the scrap at i or before the one at hand: "minus eighty five on the dial".
func (t *tokenizer) gaugeNear(i int) bool {
	for k := i; k < len(t.scraps) && k < i+4; k++ {
		if m, n := trade.longest(t.scraps, k); n > 0 && m.kind == kindVacuum {
			return true
		}
		if m, n := units.longest(t.scraps, k); n > 0 && m.unit.Dimension == unit.Pressing {
			return true
		}
	}
	for k := len(t.tokens) - 1; k >= 0 && k > len(t.tokens)-4; k-- {
		if t.tokens[k].meaning.kind == kindVacuum {
			return true
		}
	}
	return false
}

// partInWords reads "2 and three eighths".
func (t *tokenizer) partInWords(whole *big.Rat) bool {
	if whole == nil || !isWord(t.scraps, t.at+1, "and") || t.sizeAndThickness() {
		return false
	}
	part, n := wordNumber(t.scraps, t.at+2)
	if n < 2 || part.Sign() <= 0 || part.Cmp(one) >= 0 {
		return false
	}
	if m, k := trade.longest(t.scraps, t.at+2+n); k > 0 && m.kind == kindRole && m.id == "trim" && whole.Cmp(big.NewRat(12, 1)) >= 0 {
		return false // "need 36 and one quarter trim"
	}
	if t.partBefore() && t.partBehind(t.at+2+n) {
		return false // "sled 1 and three quarter mat"
	}
	t.push(symWords, n+2).value = part.Add(part, whole)
	return true
}

// partBefore reports whether a part of the stack stands right before the tokenizer.
func (t *tokenizer) partBefore() bool {
	if t.at == 0 {
		return false
	}
	m, n := trade.longest(t.scraps, t.at-1)
	return n > 0 && m.kind == kindNoun
}

// partBehind reports whether a part, or how thick one is, stands at scrap i.
func (t *tokenizer) partBehind(i int) bool {
	m, n := trade.longest(t.scraps, i)
	return n > 0 && (m.kind == kindNoun || m.kind == kindAttr && m.id == "thick")
}

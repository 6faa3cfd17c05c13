package grammar

import (
	"math/big"
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// behindNumber reads what only a number before it makes a unit, a plural or a
// bar of pressure.
func (t *tokenizer) behindNumber(s scrap) bool {
	if s.norm == "s" && s.glued && (t.last().symbol == symInt || t.last().symbol == symFraction) {
		t.last().plural = true
		t.last().end, t.last().text = s.end, t.text[t.last().start:s.end]
		t.at++
		return true
	}
	if u, ok := unitAndPart(s); ok {
		rest := s
		s.norm, s.end, rest.norm, rest.start, rest.glued = u, s.start+len(u), s.norm[len(u):], s.start+len(u), true
		t.scraps = slices.Insert(t.scraps, t.at, s)
		t.scraps[t.at+1] = rest
	}
	if m, n := units.longest(t.scraps, t.at); n > 0 && t.unitFits(m, n) {
		t.push(symUnit, n).meaning = m
		if n == 1 {
			t.skipDot(s)
		}
		t.andPart()
		return true
	}
	if s.norm == "of" && (isWord(t.scraps, t.at+1, "an") || isWord(t.scraps, t.at+1, "a")) && isWord(t.scraps, t.at+2, "inch") {
		t.push(symUnit, 3).meaning = meaning{kind: kindUnit, id: "in", unit: &unit.Inch} // "3/4 of an inch"
		return true
	}
	if s.glued && t.last().symbol == symFraction && (s.norm == "ths" || s.norm == "th" || s.norm == "nds" || s.norm == "nd") {
		t.last().end, t.last().text = s.end, t.text[t.last().start:s.end]
		t.at++ // "5/16ths"
		return true
	}
	if s.norm == "of" && isWord(t.scraps, t.at+1, "a") && isWord(t.scraps, t.at+2, "bar") && t.partOfOne() {
		t.push(symUnit, 3).meaning = meaning{kind: kindUnit, id: "bar", unit: &unit.Bar} // "nine tenths of a bar"
		return true
	}
	if t.partsOf(s) {
		return true
	}
	if s.norm == "no" && s.glued && !(t.at+2 < len(t.scraps) && t.scraps[t.at+1].norm == "." && t.scraps[t.at+2].shape != shapeWord) { // but "7no. 38"
		t.at++ // "5no strips"
		return true
	}
	if s.norm == "no" && t.at+2 < len(t.scraps) && t.scraps[t.at+1].norm == "." && t.scraps[t.at+1].glued && t.scraps[t.at+2].shape == shapeWord && t.last().symbol == symInt {
		t.at += 2 // "5 no. staves"
		return true
	}
	if s.norm == "bar" || s.norm == "bars" {
		return t.barUnit()
	}
	return false
}

// partsOf makes a fraction of "3 eighths" and "3 quarter bar"; "3 quarter inch
// strips" are three.
func (t *tokenizer) partsOf(s scrap) bool {
	d, ok := parts[s.norm]
	l := t.last()
	if !ok || l.symbol != symInt || t.at > 1 && t.scraps[t.at-2].shape != shapeWord && t.scraps[t.at-2].norm != "," {
		return false
	}
	if !strings.HasSuffix(s.norm, "s") {
		m, n := trade.longest(t.scraps, t.at+1)
		if n == 0 || m.kind != kindNoun || !in(m.id, "bar", "mat", "sled", "caul", "core") || isPlural(t.scraps[t.at+n].norm) {
			return false
		}
	}
	n, err := strconv.ParseInt(l.norm, 10, 64)
	if err != nil || n <= 0 || n >= d {
		return false
	}
	l.symbol, l.value = symWords, big.NewRat(n, d)
	l.end, l.text = s.end, t.text[l.start:s.end]
	t.at++
	if isWord(t.scraps, t.at, "of") && (isWord(t.scraps, t.at+1, "an") || isWord(t.scraps, t.at+1, "a")) {
		if m, n := units.longest(t.scraps, t.at+2); n > 0 && m.unit.Dimension == unit.Lasting {
			t.at += 2 // "3 quarters of an hour"
		}
	}
	return true
}

// gluedParts are what people write right behind a unit: "1inbar", "60mmwide".
var gluedParts = wordSet(`bar bars wide thick long tall high strip strips mat caul sled panel gap cup bow`)

// unitAndPart is the unit that a scrap begins with where a part goes on from it.
func unitAndPart(s scrap) (string, bool) {
	for _, u := range [...]string{"in", "mm", "ft", "cm"} {
		if rest, ok := strings.CutPrefix(s.norm, u); ok && s.glued && gluedParts[rest] && s.end-s.start == len(s.norm) {
			return u, true
		}
	}
	return "", false
}

// corrects reports whether the number at hand follows a word that corrects.
func (t *tokenizer) corrects() bool {
	k := len(t.tokens) - 3 // before the number and its unit
	for k >= 0 && t.tokens[k].norm == "," {
		k--
	}
	return k >= 0 && t.tokens[k].meaning.kind == kindFix
}

// barUnit takes "bar" for the unit behind a decimal that vacuum can have; a
// shop's side bar is written as a fraction or with a unit of its own.
func (t *tokenizer) barUnit() bool {
	if t.at+1 < len(t.scraps) && t.isLabel(t.scraps[t.at], t.scraps[t.at+1].norm) {
		return false
	}
	l := t.last()
	signed := len(t.tokens) > 1 && t.tokens[len(t.tokens)-2].symbol == symMinus
	small := l.symbol == symDecimal && (strings.HasPrefix(l.norm, "0.") || strings.HasPrefix(l.norm, ".")) || l.symbol == symWords && strings.Contains(l.norm, "point ")
	absolute := t.at+1 < len(t.scraps) && (t.scraps[t.at+1].norm == "abs" || t.scraps[t.at+1].norm == "absolute" || t.scraps[t.at+1].norm == "vacuum" || t.scraps[t.at+1].norm == "gauge" || t.scraps[t.at+1].norm == "below")
	if !small && !signed && !absolute && !t.wantedBar() && !t.vacuumBefore() {
		return false
	}
	t.push(symUnit, 1).meaning = meaning{kind: kindUnit, id: "bar", unit: &unit.Bar}
	return true
}

// vacuumBefore: "vacuum 1.2 bar" is a pressure, though none can be.
func (t *tokenizer) vacuumBefore() bool {
	for i := len(t.tokens) - 2; i >= 0 && i >= len(t.tokens)-3; i-- {
		if t.tokens[i].meaning.kind == kindVacuum && t.tokens[len(t.tokens)-1].symbol == symDecimal {
			return true
		}
	}
	return false
}

// wantedBar: "for 3 bar at the far joint" is a pressure.
func (t *tokenizer) wantedBar() bool {
	wanted := false
	for i := len(t.tokens) - 2; i >= 0 && i >= len(t.tokens)-4; i-- {
		switch t.tokens[i].norm {
		case "for", "get", "give", "gives", "reach", "need", "needs", "want", "wants", "have", "says", "see":
			wanted = true
		}
	}
	if wanted && t.last().symbol == symDecimal && isWord(t.scraps, t.at+1, "on") && isWord(t.scraps, t.at+2, "it") {
		return true // "which bar height do I need to have 1,5 bar on it"
	}
	return wanted && (isWord(t.scraps, t.at+1, "at") || isWord(t.scraps, t.at+1, "on")) && (isWord(t.scraps, t.at+2, "the") || isWord(t.scraps, t.at+2, "each") || isWord(t.scraps, t.at+2, "every"))
}

// prepositional are words before which "in" is no inch: "85 in here".
var prepositional = map[string]bool{
	"the": true, "a": true, "my": true, "our": true, "here": true, "there": true, "this": true, "that": true, "one": true, "total": true, "all": true,
	"summer": true, "winter": true, "stock": true, "clamps": true, "an": true, "and": false, "each": true, "every": true, "her": true, "his": true, "your": true, "their": true, "it": true,
}

// unitFits refuses a unit that the words around it make something else.
func (t *tokenizer) unitFits(m meaning, n int) bool {
	s := t.scraps[t.at]
	after := ""
	if t.at+n < len(t.scraps) {
		after = t.scraps[t.at+n].norm
	}
	if n == 1 && t.isLabel(s, after) {
		return false
	}
	switch s.norm {
	case "in":
		if m, k := trade.longest(t.scraps, min(t.at+n, len(t.scraps)-1)); n == 1 && k > 0 && (m.kind == kindWood || m.kind == kindGlue || m.kind == kindWoodSort) {
			return false
		}
		if n == 1 && (t.madeIn(t.at+1) || !s.glued && t.inAboutSoLong(t.at+1)) {
			return false
		}
		return n > 1 || !prepositional[after] || after == "one" && t.sizedOne(t.at+1)
	case "c", "f", "g", "m", "s", "h", "l", "n":
		return n > 1 || s.glued || t.last().symbol != symWords
	case "tons", "pounds", "lbs", "lb":
		if len(t.tokens) > 1 && t.tokens[len(t.tokens)-2].symbol == symTimes {
			return false // "4x8 tons" asks
		}
	case "second", "ton":
		return t.last().symbol != symWords || after != "check"
	case "'":
		return s.glued
	}
	return true
}

// isLabel: of "t=3/4 L=48 bar=1-1/2" and "T: 3/4 L: 48" what stands before the sign
// says what comes behind it.
func (t *tokenizer) isLabel(s scrap, after string) bool {
	if s.glued || after != "=" && after != ":" && after != "_" || len(s.norm) > 1 && s.norm != "bar" {
		return false
	}
	tight := t.scraps[t.at+1].glued && t.at+2 < len(t.scraps) && t.scraps[t.at+2].glued
	if k := len(t.tokens) - 2; k < 0 || len(s.norm) > 1 && !tight && t.tokens[k].norm != "=" && t.tokens[k].norm != ":" {
		return false
	}
	_, n := wordNumber(t.scraps, t.at+2)
	return t.numberAt(t.at+2) || n > 0 || after == "_"
}

// partOfOne reports whether the number before is one at most: "0.6", "nine tenths".
func (t *tokenizer) partOfOne() bool {
	v := t.last().value
	if t.last().symbol == symDecimal {
		v = rational(t.last().norm)
	}
	return v != nil && v.Cmp(one) <= 0
}

// inchAnd reads "inch and a half", "an inch and three quarters".
func (t *tokenizer) inchAnd(s scrap) bool {
	at := t.at
	if s.norm == "a" || s.norm == "an" || s.norm == "one" {
		at++
	}
	if unitWord, ok := halved[scrapNorm(t.scraps, at)]; ok && !t.afterNumber() && isAnd(t.scraps, at+1) {
		if part, n := fractionWords(t.scraps, at+2); n > 0 {
			t.numberOf(at+2+n-t.at, part.Add(part, one), unitWord)
			return true
		}
	}
	if t.afterNumber() || !isWord(t.scraps, at, "inch") {
		return false
	}
	if at == t.at && (t.nounAt(at+1) || t.directionAt(at+1)) && !t.afterAmount() {
		t.inchOf(1, big.NewRat(1, 1)) // "inch bar", "four wide, inch thick"
		return true
	}
	and := skipHyphen(t.scraps, at+1)
	if !isAnd(t.scraps, and) {
		return false
	}
	from := skipHyphen(t.scraps, and+1)
	part, n := hyphenated(t.scraps, from)
	if n == 0 && !(t.nounAt(from+1) && t.last() != nil && t.last().meaning.kind == kindNoun) {
		part, n = digitPart(t.scraps, from) // not of "sled an inch and 1/2 strips"
	}
	if n == 0 {
		part, n = wordNumber(t.scraps, from)
	}
	if n == 0 || part.Cmp(one) >= 0 {
		return false
	}
	t.inchOf(from+n-t.at, part.Add(part, one))
	return true
}

// andPart adds the part of the unit that stands behind a number and its unit: "two
// millimetres and a half", "2 inches and 3/4 wide".
func (t *tokenizer) andPart() {
	if len(t.tokens) < 2 || !isWord(t.scraps, t.at, "and") || t.at+1 >= len(t.scraps) {
		return
	}
	number, u := &t.tokens[len(t.tokens)-2], t.last().meaning.unit
	whole := number.value
	if number.symbol == symInt {
		whole = rational(number.norm)
	}
	if whole == nil || !whole.IsInt() || u.Dimension != unit.Distance && u.Dimension != unit.Lasting {
		return
	}
	digits := t.scraps[t.at+1].shape == shapeFraction && !t.scraps[t.at+1].ordinal
	part, n := fractionWords(t.scraps, t.at+1)
	if n == 0 {
		part, n = threeQuarters(t.scraps, t.at+1)
	}
	if digits {
		part, n = rational(t.scraps[t.at+1].norm), 1
	}
	if n == 0 || part == nil || part.Cmp(one) >= 0 || !t.endsMeasure(t.at+1+n, digits, u.Symbol == "mm" || u.Symbol == "in" && whole.Cmp(one) <= 0) {
		return
	}
	end := t.scraps[t.at+n].end
	number.symbol, number.value = symWords, new(big.Rat).Add(whole, part)
	number.text, number.end = t.text[number.start:end], end
	last := t.last()
	last.start, last.end, last.text = end, end, ""
	t.at += 1 + n
}

// threeQuarters reads a part of more than one: "three quarters".
func threeQuarters(scraps []scrap, i int) (*big.Rat, int) {
	if v, n := wordNumber(scraps, i); n > 1 && v.Cmp(one) < 0 {
		return v, n
	}
	return nil, 0
}

// endsMeasure reports whether a measure with a part of its unit can end before
// scrap i: in "3 inches and 1/2 thick" and "2 inches and a half mat" the part is
// a measure by itself.
func (t *tokenizer) endsMeasure(i int, digits, thin bool) bool {
	if i >= len(t.scraps) {
		return !digits
	}
	if _, n := units.longest(t.scraps, i); n > 0 && t.scraps[i].norm != "in" {
		return false
	}
	m, n := trade.longest(t.scraps, i)
	switch {
	case n > 0 && m.kind == kindAttr:
		return m.id != "thick" || thin && !digits
	case n > 0 && m.kind == kindNoun:
		return !digits && in(m.id, "cup", "bow", "gap", "bar", "strip", "panel")
	case n > 0 && m.kind == kindRole:
		return !digits && m.id != "trim" && m.id != "over"
	}
	return !digits
}

// halved are the other units of "an hour and a half".
var halved = map[string]unit.Unit{
	"hour": unit.Hour, "foot": unit.Foot, "metre": unit.Metre, "meter": unit.Metre, "minute": unit.Minute,
	"millimetre": unit.MM, "millimeter": unit.MM, "centimetre": unit.CM, "centimeter": unit.CM,
}

func scrapNorm(scraps []scrap, i int) string {
	if i >= len(scraps) {
		return ""
	}
	return scraps[i].norm
}

// inchOf makes n scraps a number of inches.
func (t *tokenizer) inchOf(n int, v *big.Rat) { t.numberOf(n, v, unit.Inch) }

// numberOf makes n scraps a number with its unit.
func (t *tokenizer) numberOf(n int, v *big.Rat, u unit.Unit) {
	t.push(symWords, n).value = v
	tok := *t.last()
	tok.symbol, tok.norm, tok.start, tok.text = symUnit, u.Symbol, tok.end, ""
	tok.meaning = meaning{kind: kindUnit, id: u.Symbol, unit: &u}
	t.tokens = append(t.tokens, tok)
}

// scantWords are words for a hair more or less than what is named.
var scantWords = wordSet(`full whole solid clear scant heavy strong good light shy fat bare strict generous`)

// oneOfUnit reads "an inch", "a minute" as one of the unit.
func (t *tokenizer) oneOfUnit(s scrap) bool {
	if s.norm != "a" && s.norm != "an" || t.at+1 >= len(t.scraps) || t.afterAmount() {
		return false
	}
	n := 1
	if scantWords[t.scraps[t.at+1].norm] {
		n = 2 // "a full inch"
	}
	switch scrapNorm(t.scraps, t.at+n) {
	case "inch", "foot", "metre", "meter", "minute", "hour", "yard", "millimetre", "millimeter", "centimetre", "centimeter":
		tok := t.push(symWords, n)
		tok.value = big.NewRat(1, 1)
		return true
	}
	return false
}

package grammar

import "presshand/engine/unit"

// inchAndPart: "by three eighths inch and a half bar" ends a measure below an inch
// without its unit, and begins another of one inch and more.
func (t *tokenizer) inchAndPart(s scrap) bool {
	v := t.last().value
	if s.norm != "inch" || v == nil || v.Cmp(one) >= 0 || !isWord(t.scraps, t.at+1, "and") {
		return false
	}
	part, n := fractionWords(t.scraps, t.at+2)
	if n == 0 || !t.nounAt(t.at+2+n) {
		return false
	}
	t.inchOf(2+n, part.Add(part, one))
	return true
}

// noDirection reports whether the direction word at item j measures nothing: "4 high
// of", "how long".
func (r *reader) noDirection(j int) bool {
	return r.levelWord(j) || r.word(j-1, "how") && !r.toldHow(j) || r.word(j-1, "the") && r.word(j, "wide") && r.word(j-2, "at", "on", "across") && (r.is(j+1, kindNoun, "face") || r.word(j+1, "end", "side", "face"))
}

// letterFirst: "w 2 1/4, t 3/8" with the letter between breaks.
func (r *reader) letterFirst(i int) bool {
	if i+1 >= len(r.items) || !r.free(i+1) || !r.length(i+1) {
		return false
	}
	goesOn := i+2 < len(r.items) && r.items[i+2].used && r.items[i+2].amount != nil || i+3 < len(r.items) && shortAttr(r.items[i+2].word) != "" && r.free(i+3) && r.length(i+3) // "w 2 1/4 t 3/8"
	if r.isBreak(i - 1) {
		return r.isBreak(i+2) || goesOn
	}
	again := i > 1 && r.items[i-1].amount != nil && r.is(i-2, kindAttr) && r.items[i-2].word == "width" && r.items[i-2].text != "width"
	return r.is(i-1, kindNoun) && (r.isBreak(i+2) || goesOn) || again && (r.isBreak(i+2) || goesOn)
}

// numberOfThem: "number of strips 6".
func (r *reader) numberOfThem(i int) bool {
	j := i - 1
	for j > 0 && (r.items[j].brk == ':' || r.items[j].brk == '=') {
		j--
	}
	return i-j <= 2 && r.is(j, kindNoun, "strip", "panel") && r.word(j-1, "of") && r.items[max(j-2, 0)].word == "number"
}

// falls: "gauge dropped from 25 to 21 in 5 minutes" tells two readings of a gauge.
func (r *reader) falls(i, n int) bool {
	a, b := r.items[i].amount, r.items[n].amount
	told := r.mentions(kindVacuum, "gauge", "vacuum") || r.mentions(kindAsk, "pump:hold_s")
	return told && a.value != nil && b.value != nil && a.value.Cmp(b.value) > 0 && b.value.Sign() > 0
}

// unitOfDrop gives the first of "from 0,85 to 0,80 bar in 12 minutes" the unit of the
// second.
func (r *reader) unitOfDrop(i int) {
	n := i + 1
	if n < len(r.items) && r.free(n) && r.items[n].amount.link == linkTo && (r.mentions(kindNoun, "leak") || r.falls(i, n)) && r.items[i].amount.value != nil {
		r.inNoInch(n)
		k := n + 1
		for r.word(k, "over", "within", "about", "in") || r.is(k, kindRole, "length") {
			k++
		}
		if u := r.bareVacuumUnit(r.items[i].amount); u.Dimension == unit.Pressing && k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.is(unit.Lasting) && r.items[n].amount.bare() {
			r.items[i].amount.unit, r.items[n].amount.unit = &u, &u // "drops from 0.85 to 0.7 in ten minutes"
		}
	}
	if n >= len(r.items) || !r.free(n) || r.items[n].amount.link != linkTo || !r.items[n].amount.is(unit.Pressing) {
		return
	}
	k := n + 1
	for r.word(k, "in", "over", "within", "about") || r.is(k, kindRole, "length") {
		k++
	}
	if k > n+1 && k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.is(unit.Lasting) {
		u := *r.items[n].amount.unit
		r.items[i].amount.unit = &u
	}
}

// inNoInch: of "drops to 24 in 10 min" the "in" is no inch.
func (r *reader) inNoInch(j int) {
	am := r.items[j].amount
	if am.unitRaw == "in" && j+1 < len(r.items) && r.items[j+1].amount != nil && r.items[j+1].amount.is(unit.Lasting) {
		am.unit, am.unitRaw = nil, ""
	}
}

// shortAttr is the direction of measuring that a word of a letter or two says; "" where
// it says none.
func shortAttr(word string) string {
	switch word {
	case "w", "wd", "wid":
		return "wide"
	case "t", "th", "thi":
		return "thick"
	case "h", "ht", "hgt":
		return "tall"
	case "l", "len", "lng":
		return "long"
	}
	return ""
}

// letters reads "2 1/4 w, 1/4 t" and "w=2.25, t=.25".
func (r *reader) letters() {
	if r.hoursOrLitres() {
		r.lettersAsUnits()
		r.barInHours()
	}
	if !r.says("w", "wd", "wid", "t", "th", "thi", "h", "ht", "hgt", "l", "len", "lng") {
		return
	}
	for i := range r.items {
		if r.items[i].kind != kindNone || r.items[i].amount != nil {
			continue
		}
		id := shortAttr(r.items[i].word)
		if id == "" {
			continue
		}
		behind := r.free(i-1) && (r.isBreak(i+1) || r.items[min(i+1, len(r.items)-1)].brk == 'x' || r.items[i-1].end == r.items[i].start && r.items[i+1].amount != nil)
		before := i+2 < len(r.items) && (r.items[i+1].brk == '=' || r.items[i+1].brk == ':') && r.free(i+2) || r.letterFirst(i)
		if !behind && !before {
			continue
		}
		r.items[i].meaning = meaning{kind: kindAttr, id: id}
		r.hear(i)
		if before {
			r.items[i].word = "width" // looks to its right
			r.hear(i)
		}
	}
}

// inMetres: in a metric shop "2.4 long" is no millimetres.
func (r *reader) inMetres(i int, f unit.Field) {
	am := r.items[i].amount
	const shortest, longest = 0.4, 7
	if r.habit.Metric && am.bare() && am.form == formDecimal && am.float() >= shortest && am.float() <= longest && (f == unit.StripLength || f == unit.PanelLength) {
		u := unit.Metre
		am.unit, am.unitRaw = &u, "m"
	}
}

// barInHours: of "bar 1 1/2 h" and "bar 1.5h" the letter is the height.
func (r *reader) barInHours() {
	if !r.means(kindNoun, "bar") {
		return
	}
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.unitRaw == "h" && r.free(i) && r.is(r.prev(i), kindNoun, "bar") && am.float() < 100 && !r.has(unit.BarHeight) {
			am.unit, am.unitRaw = nil, ""
			r.bind(i, unit.BarHeight)
		}
	}
}

// hoursOrLitres reports whether an amount is of a unit written "h" or "l".
func (r *reader) hoursOrLitres() bool {
	for i := range r.items {
		if am := r.items[i].amount; am != nil && (am.unitRaw == "h" || am.unitRaw == "l") {
			return true
		}
	}
	return false
}

// lettersAsUnits: of "1 1/2 w x 3/4 t x 60 l" the last is no litres.
func (r *reader) lettersAsUnits() {
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.unitRaw != "h" && am.unitRaw != "l" {
			continue
		}
		if am.unitRaw == "h" && r.free(i) && r.is(i-1, kindNoun, "bar") && !r.has(unit.BarHeight) { // "bar 1.25 h x .75 w"
			am.unit, am.unitRaw = nil, ""
			r.bind(i, unit.BarHeight)
			continue
		}
		if am.unitRaw != "l" || !r.free(i) || !r.wordIn("w") || !r.wordIn("t") || r.has(unit.StripLength) {
			continue
		}
		am.unit, am.unitRaw = nil, ""
		if r.word(i-1, "t", "w", "h") && r.free(i+1) && r.length(i+1) {
			r.bind(i+1, unit.StripLength) // "w 2 t 3/4 l 48"
			continue
		}
		r.bind(i, unit.StripLength)
	}
}

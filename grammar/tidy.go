package grammar

import (
	"math"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// tidy joins and parts the items that only the words around them tell how to.
func (r *reader) tidy() {
	r.labelMarks()
	r.groceriesOfWood()
	r.holdsThings()
	r.inPounds()
	r.pullInInches()
	r.inAMinute()
	r.slashes()
	r.outInRun()
	r.inBetween()
	r.groupedByThree()
	r.groupedThousands()
	r.foreignWords()
	r.gluedHyphens()
	r.sameInBrackets()
	r.countAndFraction()
	r.loadsOf()
	r.piecesOfPanel()
	r.wePress()
	r.sizedBarFor()
	r.thickestTold()
	r.atTheEdge()
	r.metricOddities()
	r.runsFrom()
	r.hollowJoint()
	r.canDo()
	r.spacedClock()
	r.flatSawnThings()
	r.otherMeanings()
	r.humpOfOverfill()
	r.swappedBar()
	r.inchStock()
	r.sizedOne()
	r.laidAs()
	r.timesOfPoly()
	r.comingToWork()
	r.sameThickness()
	r.upAtMark()
	r.buckets()
	r.setsOfStrips()
	r.plainThings()
	r.twoAgain()
	r.bookWords()
}

// inPounds keeps the "in" of "on a 4x8 in pounds", "at 70 in moisture content" and,
// in a metric shop, "20 panels 300x800 in before five" from being inches.
func (r *reader) inPounds() {
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.unitRaw != "in" || i+1 >= len(r.items) {
			continue
		}
		n := &r.items[i+1]
		if n.amount == nil && (n.kind == kindUnit && n.unit.Dimension != unit.Distance && n.unit.Dimension != unit.Lasting || r.is(i+1, kindAir, "mc") || r.habit.Metric && r.timesAt(i) && r.word(i+1, "before", "by", "time", "today", "at", "there") || r.is(i+1, kindAsk) && in(n.word, "tons", "ton", "grams")) {
			am.unit, am.unitRaw = nil, ""
		}
		if am.unitRaw == "in" && n.amount == nil && (seasons[n.word] || r.inSection(i)) {
			am.unit, am.unitRaw = nil, "" // "55 in summer"
		}
		if am.unitRaw == "in" && n.amount == nil && (r.habit.Metric && am.float() > 120 || in(n.word, "tonnes", "tonne", "newtons", "kilos", "kilograms", "pounds")) {
			am.unit, am.unitRaw = nil, "" // "1220x2440 in tonnes"
		}
	}
}

// seasons are times of the year in which a place has its air.
var seasons = wordSet(`winter summer winters summers wintertime summertime spring autumn january february march april may june july august september october november december jan feb aug sept dec`)

// inAMinute: behind a pressure "in a minute" is how long it takes, not an inch of
// mercury in that time.
func (r *reader) inAMinute() {
	if !r.means(kindUnit) {
		return
	}
	for i := 1; i < len(r.items); i++ {
		it := r.items[i]
		if it.amount != nil || it.kind != kindUnit || it.unit.Dimension != unit.Leaking || !strings.HasPrefix(it.word, "in ") || r.items[i-1].amount == nil {
			continue
		}
		u := unit.Minute
		at := it.start + len("in")
		r.items[i] = item{word: "in", text: r.text[it.start:at], start: it.start, end: at}
		r.hear(i)
		r.items = slices.Insert(r.items, i+1, item{
			text: strings.TrimSpace(r.text[at:it.end]), start: at, end: it.end,
			amount: &amount{value: one, form: formWords, unit: &u, unitRaw: "min"},
		})
		r.hear(i + 1)
	}
}

// slashes reads the stroke of "5 min/panel" as "per".
func (r *reader) slashes() {
	if !r.says("/") {
		return
	}
	for i := 1; i+1 < len(r.items); i++ {
		if am := r.items[i-1].amount; r.items[i].brk == '/' && am != nil && am.is(unit.Lasting) && (r.is(i+1, kindNoun, "panel") || r.word(i+1, "load") || r.is(i+1, kindVerb, "show")) {
			r.items[i].brk, r.items[i].word = 0, "per"
			r.hear(i)
		}
	}
}

// isFraction reports whether item i is a number that names nothing.
func (r *reader) isFraction(i int) bool {
	am := r.items[i].amount
	return am != nil && (am.form == formFraction || am.form == formMixed)
}

// inBetween keeps the "in" of "caul 18 in 100 daylight" from being inches, in a
// metric shop that names no other inch.
func (r *reader) inBetween() {
	if !r.habit.Metric {
		return
	}
	at := -1
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.unit == nil || am.unit.Symbol != "in" {
			continue
		}
		const leastInch = 3
		next := i + 1
		if at >= 0 || am.unitRaw != "in" || am.form != formInt && am.form != formDecimal || am.float() < leastInch || next >= len(r.items) || r.items[next].amount == nil || !r.items[next].amount.bare() || r.items[next].amount.form == formPair || r.items[next].amount.link != linkNone {
			return
		}
		at = i
	}
	if at >= 0 {
		r.items[at].amount.unit = nil
	}
}

// remove takes items [from, to) out of the message.
func (r *reader) remove(from, to int) { r.items = slices.Delete(r.items, from, to) }

// joinNext makes one whole number of items i and i+1.
func (r *reader) joinNext(i, n int) {
	it := &r.items[i]
	last := r.items[i+1]
	it.amount.value, it.amount.form = big.NewRat(int64(n), 1), formInt
	it.amount.unit, it.amount.unitRaw = last.amount.unit, last.amount.unitRaw
	it.end, it.text = last.end, r.text[it.start:last.end]
	r.remove(i+1, i+2)
}

// thousands is how a metric shop writes a length of more than a metre with its
// thousands set apart.
var thousands = regexp.MustCompile(`^[1-9][.,]\d{3}( ?mm)?$`)

// groupedThousands reads "1.200 x 2.400" and "1 200 x 2 400 mm".
func (r *reader) groupedThousands() {
	if !r.habit.Metric {
		return
	}
	r.metresToThree()
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.form == formDecimal && (am.unit == nil || am.unit.Symbol == "mm") && thousands.MatchString(r.items[i].text) && (r.inSize(i) || r.is(i+1, kindAttr, "long")) {
			am.value = new(big.Rat).Mul(am.value, big.NewRat(1000, 1))
			am.form = formInt
		}
	}
	for i := 0; i+1 < len(r.items); i++ {
		if r.spacedThousand(i) && (r.timesAt(i) || r.timesAt(i+2) && r.spacedThousand(i+2)) {
			n, _ := r.items[i].amount.whole()
			m, _ := plainWhole(r.items[i+1].amount)
			r.joinNext(i, 1000*n+m)
		}
	}
}

// belowOne is a length in metres, to the millimetre.
var belowOne = regexp.MustCompile(`^0[.,]\d{3}$`)

// metresToThree reads "1.200 x 0.600" in metres: its second number has no thousands.
func (r *reader) metresToThree() {
	for i := 1; i < len(r.items); i++ {
		if !r.timesAt(i) || r.items[i-1].amount == nil {
			continue
		}
		a, b := r.items[i-1], r.items[i]
		if belowOne.MatchString(a.text) && thousands.MatchString(b.text) || belowOne.MatchString(b.text) && thousands.MatchString(a.text) {
			for _, it := range []item{a, b} {
				u := unit.Metre
				it.amount.unit, it.amount.unitRaw = &u, "m"
			}
		}
	}
}

// inSize reports whether the amount at i is joined to another by "x".
func (r *reader) inSize(i int) bool { return r.timesAt(i) || r.timesAt(i+1) }

func (r *reader) timesAt(i int) bool {
	return i >= 0 && i < len(r.items) && r.items[i].amount != nil && r.items[i].amount.link == linkTimes
}

// spacedThousand: "1 200", where the count in "2 600 x 1200" is none.
func (r *reader) spacedThousand(i int) bool {
	if i+1 >= len(r.items) || r.items[i].amount == nil || r.items[i+1].amount == nil {
		return false
	}
	a, b := r.items[i], r.items[i+1]
	return len(a.text) == 1 && a.amount.form == formInt && a.text != "0" && b.amount.form == formInt && b.amount.link == linkNone && b.start == a.end+1 && len(b.text) >= 3 && digits(b.text) == 3
}

// digits counts the digits that a text begins with.
func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// gluedHyphens: "2-wide 3/8-thick".
func (r *reader) gluedHyphens() {
	if !r.says("-") {
		return
	}
	for i := len(r.items) - 2; i > 0; i-- {
		if r.items[i].brk == '-' && r.items[i-1].amount != nil && r.word(i+1, "ish") {
			r.remove(i, i+2) // "3/4-ish"
			continue
		}
		if r.items[i].brk == '-' && r.items[i-1].amount != nil && r.items[i-1].end == r.items[i].start && r.items[i].end == r.items[i+1].start && r.is(i+1, kindAttr) {
			r.remove(i, i+1)
		}
	}
}

// sameInBrackets drops a measure that says the one before it again in another
// unit: 2" (51 mm).
func (r *reader) sameInBrackets() {
	if !r.says("(", "[") {
		return
	}
	for i := len(r.items) - 4; i >= 0; i-- {
		if i+3 >= len(r.items) || r.items[i].amount == nil || r.items[i+2].amount == nil {
			continue
		}
		if open, shut := r.items[i+1].brk, r.items[i+3].brk; !(open == '(' && shut == ')' || open == '[' && shut == ']') {
			continue
		}
		a, b := r.items[i].amount, r.items[i+2].amount
		if a.saysAgain(b) {
			if a.unit == nil {
				a.unit, a.unitRaw = b.unit, b.unitRaw
			}
			r.items[i].end = r.items[i+3].end
			r.items[i].text = r.text[r.items[i].start:r.items[i].end]
			r.remove(i+1, i+4)
			r.unitBehind(i)
			continue
		}
		if a.unit == nil || b.unit == nil || a.value == nil || b.value == nil || a.unit.Dimension != b.unit.Dimension || a.unit.Symbol == b.unit.Symbol {
			continue
		}
		if x, y := a.unit.SI(a.float()), b.unit.SI(b.float()); math.Abs(x-y) < 0.03*math.Abs(x) {
			it := &r.items[i]
			it.end = r.items[i+3].end
			it.text = r.text[it.start:it.end]
			r.remove(i+1, i+4)
		}
	}
}

// saysAgain reports whether b is the same number in figures or in words: "six (6)".
func (am *amount) saysAgain(b *amount) bool {
	if !am.equals(b.value) || b.link != linkNone || am.plural || b.plural {
		return false
	}
	return am.unit == nil || b.unit == nil || am.unit.Symbol == b.unit.Symbol
}

// unitBehind gives the amount at item i the unit that stands apart behind it: "two (2)
// inches".
func (r *reader) unitBehind(i int) {
	k := i + 1
	am := r.items[i].amount
	if am.unit != nil || k >= len(r.items) {
		return
	}
	u, raw := r.items[k].unit, r.items[k].word
	if inch := r.items[k].amount; inch != nil && inch.unit != nil && inch.equals(one) && r.items[k].text == "inch" {
		u, raw = inch.unit, inch.unitRaw // of "one (1) inch bar" the last words alone are a bar of an inch
	}
	if u != nil {
		am.unit, am.unitRaw = u, raw
		r.items[i].end = r.items[k].end
		r.items[i].text = r.text[r.items[i].start:r.items[i].end]
		r.remove(k, k+1)
	}
}

// minutesBehind is the second half of "7h30".
var minutesBehind = regexp.MustCompile(`^h[0-5]\d$`)

// spacedClock reads "start 7 30" and "7h30" as clock times.
func (r *reader) spacedClock() {
	for i := 0; i+1 < len(r.items); i++ {
		am := r.items[i].amount
		if am == nil || am.form != formInt || am.link != linkNone || am.unit != nil {
			continue
		}
		next := &r.items[i+1]
		if next.amount == nil && next.start != r.items[i].end || next.amount != nil && len(next.text) != 2 {
			continue
		}
		h, ok := plainWhole(am)
		if !ok || h > 23 {
			continue
		}
		minutes := ""
		switch {
		case next.amount == nil && next.start == r.items[i].end && minutesBehind.MatchString(next.word):
			minutes = next.word[1:]
		case next.amount != nil && len(next.text) == 2 && digits(next.text) == 2 && next.text < "60" && next.start == r.items[i].end+1 && next.amount.link == linkNone && h > 3 && r.clockCue(i) && !r.is(i+2, kindNoun) && !r.is(i+2, kindAttr) && !r.timesAt(i+2):
			minutes = next.text
		}
		if minutes == "" {
			continue
		}
		m, _ := strconv.Atoi(minutes)
		am.form, am.pair, am.value = formPair, [2]int{h, m}, nil
		r.items[i].end, r.items[i].text = next.end, r.text[r.items[i].start:next.end]
		r.remove(i+1, i+2)
	}
}

// clockCue reports whether a word of starting or of a deadline stands right
// before item i.
func (r *reader) clockCue(i int) bool {
	j := i - 1
	for r.word(j, "at", "by") {
		j--
	}
	return r.is(j, kindRole, "start", "deadline") && r.items[j].word != "from"
}

// decimalCounts: "4.000 strips" of a printed list counts them; in a metric shop three
// noughts may be a thousand.
func (r *reader) decimalCounts() {
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.form != formDecimal || !am.bare() || am.value == nil || !am.value.IsInt() || am.link != linkNone || !r.is(i+1, kindNoun, "strip", "panel") || !isPlural(r.items[i+1].word) {
			continue
		}
		if digits := len(r.items[i].text) - 1 - strings.IndexAny(r.items[i].text, ".,"); digits != 3 || !r.habit.Metric {
			am.form = formInt
		}
	}
}

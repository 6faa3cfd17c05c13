package grammar

import (
	"math/big"
	"strings"

	"presshand/engine/unit"
)

// loosenLast notes that the part of what was read last was not named.
func (r *reader) loosenLast(loose bool) {
	if loose && len(r.bound) > 0 {
		r.bound[len(r.bound)-1].fact.Loose = true
	}
}

// bumpsUp: "bump up the vacuum" says nothing of a hump.
func (r *reader) bumpsUp() {
	if !r.says("bump up") {
		return
	}
	for i := range r.items {
		if r.items[i].word == "bump up" && r.word(i+1, "the", "my", "our") && r.partAt(i+2) {
			r.items[i].meaning, r.items[i].used = meaning{}, true
		}
	}
}

// gains reads a part that a later message adds without a measure.
func (r *reader) gains() {
	for i := range r.items {
		j := i - 1
		for r.word(j, "a", "an", "the", "one") {
			j--
		}
		if r.is(i, kindNoun, "wedge") && r.word(j, "with", "add", "adding", "use", "using", "plus") && r.amountsIn(0, len(r.items)) == 0 && !r.mentions(kindNot) {
			r.phrase.Gains = append(r.phrase.Gains, partNames[r.items[i].id])
			return
		}
		if r.is(i, kindNoun, "caul", "mat", "bar") && !isPlural(r.items[i].word) && r.word(i-1, "a", "an") && r.word(i-2, "with", "add", "adding", "use", "using", "plus", "put") && (r.next(i) < 0 || r.word(i+1, "on", "in", "there", "then")) && r.amountsIn(0, len(r.items)) == 0 && len(r.items) <= 8 && !r.mentions(kindNot) {
			r.phrase.Gains = append(r.phrase.Gains, partNames[r.items[i].id])
			return
		}
	}
}

// lessCounted: "minus 2 strips".
func (r *reader) lessCounted(i int) bool {
	am := r.items[i].amount
	set := r.is(i-1, kindFix) && (strings.HasPrefix(r.items[i-1].word, "make ") || strings.HasPrefix(r.items[i-1].word, "change "))
	return am.minus && am.bare() && am.form == formInt && r.is(r.next(i), kindNoun, "strip", "panel") && !set
}

func (r *reader) namesFigure(i int) bool {
	f, _ := r.figureNear(i)
	return f != ""
}

// sized keeps a comparative beside a measure from asking how wood moves: "2 inches
// narrower".
func (r *reader) sized() {
	if !r.habit.Follows || r.amountsIn(0, len(r.items)) == 0 {
		return
	}
	for i := range r.items {
		if c, ok := comparatives[r.items[i].word]; ok && c.attr != "" && r.is(i, kindAsk) {
			r.items[i].meaning = meaning{}
		}
	}
}

// oneMore reads "another strip", "add a panel".
func (r *reader) oneMore() {
	for i := range r.items {
		one := r.word(i-1, "another") || r.word(i-1, "a") && r.word(i-2, "add", "adding")
		if !r.is(i, kindNoun, "strip", "panel", "press") || !one || isPlural(r.items[i].word) || r.amountsIn(0, len(r.items)) > 0 || r.next(i) >= 0 {
			continue
		}
		by := Amendment{Text: r.textOf(i-1, i), Value: 1}
		less := adders[r.items[max(i-2, 0)].word] || r.word(i-2, "reject", "break", "crack", "cracked", "lost", "losing", "cull")
		r.phrase.Changes = append(r.phrase.Changes, Change{By: by, Less: less, Fields: countFields[r.items[i].id]})
	}
}

// ordinalNames are how one of several parts is told from the others.
var ordinalNames = map[string]float64{"second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9, "tenth": 10, "eleventh": 11, "twelfth": 12}

// addsNth: "add a fourth stave", "put in a sixth strip" makes so many of them.
func (r *reader) addsNth() {
	for i := range r.items {
		if r.addsEighth(i) {
			n, _ := new(big.Rat).Inv(r.items[i-1].amount.value).Float64()
			r.items[i-1].used = true
			r.say(i, countFields[r.items[i].id][0], unit.Number(n))
			continue
		}
		if !r.is(i, kindNoun, "strip", "panel", "press", "bar") || isPlural(r.items[i].word) || i < 3 || !r.word(i-2, "a", "an") || r.next(i) >= 0 {
			continue
		}
		n := ordinalNames[r.items[i-1].word]
		if f := countFields[r.items[i].id]; n > 0 && (r.word(i-3, "add", "adding", "plus", "with", "throw", "put", "need", "and", "also") || r.word(i-3, "in", "on") && r.word(i-4, "put", "throw", "add")) && !r.has(f[0]) {
			r.items[i-1].used = true
			r.say(i, f[0], unit.Number(n))
		}
	}
}

// addsEighth: in "add an eighth strip" the word for one of eight is no fraction.
func (r *reader) addsEighth(i int) bool {
	if !r.is(i, kindNoun, "strip", "panel") || isPlural(r.items[i].word) || !r.free(i-1) || r.next(i) >= 0 || !r.word(i-2, "add", "adding") {
		return false
	}
	am := r.items[i-1].amount
	return am.bare() && am.form == formWords && am.value.Num().Cmp(one.Num()) == 0 && am.value.Cmp(half) < 0
}

// dropsParts: "drop 3 panels" in a thread is of its panels, not of load 3.
func (r *reader) dropsParts(at int) bool {
	if !r.habit.Follows {
		return false
	}
	_, less := adders[r.items[at].word]
	return less && r.free(at+1) && r.countedAt(at+1) && isPlural(r.items[r.next(at+1)].word)
}

// goneWidths reads "no 3s", "the 3s are gone", of strips that the thread has, and
// "4 more at 3" of those that come in.
func (r *reader) goneWidths() {
	for i := range r.items {
		if !r.free(i) || !r.length(i) {
			continue
		}
		if _, whole := r.items[i].amount.whole(); whole && r.word(i+1, "more", "extra") && r.word(i+2, "at", "of") && r.free(i+3) && r.length(i+3) {
			r.bind(i, unit.StripCount)
			r.bind(i+3, unit.StripWidth)
			return
		}
		if r.countOfWidth(i) {
			r.bind(i, unit.StripCount)
			r.bind(i+3, unit.StripWidth)
			return
		}
		if (r.items[i].amount.plural || r.onesBehind(i)) && r.amountsIn(0, len(r.items)) == 1 && (r.excluded(i) || r.gone(i)) {
			r.phrase.Gone = append(r.phrase.Gone, r.amendment(i))
			r.items[i].used = true
		}
	}
}

// onesBehind: "the 4 inch ones".
func (r *reader) onesBehind(i int) bool {
	j := i + 1
	for r.word(j, "wide") || r.is(j, kindAttr, "wide") || r.is(j, kindUnit) {
		j++
	}
	return r.word(j, "ones")
}

// countOfWidth: "theres 6 of the 5s actually" tells a count anew, and "2 of the 3s have a knot"
// does not.
func (r *reader) countOfWidth(i int) bool {
	_, whole := r.items[i].amount.whole()
	if !whole || !r.word(i+1, "of") || !r.word(i+2, "the", "those", "these") || !r.free(i+3) || !r.items[i+3].amount.plural && r.amountsIn(0, len(r.items)) != 2 || !r.length(i+3) || r.spoiled(i+3) || r.takenBefore(i) {
		return false
	}
	return r.opensWithin(0, i, "theres", "there", "have", "got", "only", "just", "its") || r.mentions(kindFix)
}

// keptAt: "leave it at 26 but give me a taller bar" has the number said before
// again, of whatever it was.
func (r *reader) keptAt() {
	for i := range r.items {
		j := i - 1
		for r.word(j, "at", "on", "it", "that", "to", "the") {
			j--
		}
		if r.free(i) && j < i-1 && r.word(j, "leave", "keep", "stay", "stick", "back") && r.word(i-1, "at", "on", "to", "the") && (r.next(i) < 0 || r.word(i+1, "but", "and", "then")) && r.items[i].amount.value != nil {
			r.phrase.Amends = append(r.phrase.Amends, r.amendment(i))
			r.items[i].used = true
		}
		if r.broughtTo(i) || r.onlyGetsSo(i) || r.noRatherTime(i) || r.madeThat(i) {
			r.phrase.Amends = append(r.phrase.Amends, r.amendment(i))
			r.items[i].used = true
		}
	}
}

// noRatherTime: "no, an hour. and the second press …" tells another time for the last one.
func (r *reader) noRatherTime(i int) bool {
	return i == 2 && r.free(i) && r.items[i].amount.is(unit.Lasting) && r.items[i].amount.value != nil && r.word(0, "no", "nope", "nah") && r.isBreak(1) && i+1 < len(r.items) && r.isStop(i+1)
}

// madeThat: "make that 26 and leave 1/4 to trim" tells another number for one said before, of
// whatever it was, beside what else changes.
func (r *reader) madeThat(i int) bool {
	first := r.firstWord()
	for r.word(first, "ok", "okay", "no", "right", "so", "thanks", "hmm", "oh", "wait") || first < len(r.items) && r.isBreak(first) {
		first++
	}
	return i == first+1 && r.is(first, kindFix) && r.word(first, "make that", "make it", "call it") && r.free(i) && r.items[i].amount.bare() && r.items[i].amount.value != nil && r.items[i].amount.link == linkNone && r.word(i+1, "and", "with", "but", "then", "plus")
}

// bringers are verbs that bring a figure to another: "bump it to 26".
var bringers = wordSet(`bump bumped bring brought take took push pushed crank cranked turn turned knock knocked run put set up raise raised lower lowered`)

// broughtTo: "bump it to 26 and use epoxy" tells another number for one said
// before, of whatever it was.
func (r *reader) broughtTo(i int) bool {
	if !r.free(i) || !r.word(i-1, "to") || r.next(i) >= 0 && !r.word(i+1, "and", "but", "then") || r.items[i].amount.value == nil || r.amountsIn(0, len(r.items)) != 1 {
		return false
	}
	j := i - 2
	for r.word(j, "up", "down", "back") {
		j--
	}
	return r.word(j, "it", "that", "her") && j > 0 && bringers[r.items[j-1].word]
}

// widthCorrected reads "the 62s are actually 60", "the 8 are really 2 1/2" of strips that the
// thread has.
func (r *reader) widthCorrected() {
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.plural && !r.is(i+1, kindFix) && !(r.word(i+1, "are", "were") && r.word(i+2, "really")) || !r.word(i-1, "the", "those", "these", "my", "our") {
			continue
		}
		j := r.correctedTo(i)
		if r.word(i-2, "of") && i > 2 && r.items[i-3].amount != nil && !r.is(i+1, kindFix) && !r.word(i+1, "are", "were") {
			continue // "broke 2 of the 3s so it's 7"
		}
		if j < 0 || r.next(j) >= 0 && !r.is(r.next(j), kindFix) && !r.is(r.next(j), kindAttr, "wide") || r.items[i].amount.value == nil || r.items[j].amount.value == nil {
			continue
		}
		a := r.amendment(j)
		a.Was = r.items[i].amount.float()
		r.items[i].used, r.items[j].used = true, true
		r.unuse(r.items[i].text)
		r.phrase.Amends = append(r.phrase.Amends, a)
	}
}

// forThePart: "1 1/2 for the bar" gives a part its measure.
func (r *reader) forThePart() {
	for i := range r.items {
		if r.free(i) && r.length(i) && r.betweenFences(i) && r.items[i].amount.value != nil {
			r.phrase.Amends = append(r.phrase.Amends, r.amendment(i))
			r.items[i].used = true // "600 between the fences"
			continue
		}
		if r.free(i) && r.length(i) && r.word(i-1, "is", "now") && r.is(i-2, kindNoun, "fence") && r.items[i].amount.value != nil && !r.has(unit.StackLayers) {
			r.phrase.Amends = append(r.phrase.Amends, r.amendment(i))
			r.items[i].used = true // "without the mat. and the fence is 1/4"
			continue
		}
		if !r.free(i) || !r.length(i) || !r.word(i+1, "for") || !r.word(i+2, "the", "my", "our") || !r.is(i+3, kindNoun) || i+4 < len(r.items) && !r.isBreak(i+4) {
			continue
		}
		if r.is(i+3, kindNoun, "panel") && !isPlural(r.items[i+3].word) && r.items[i].amount.value != nil {
			a := r.amendment(i)
			a.Of = []unit.Field{unit.PanelWidth, unit.TargetWidth}
			r.phrase.Amends = append(r.phrase.Amends, a)
			r.items[i].used = true // "and 14 for the panel"
			continue
		}
		if f := bareFields[r.items[i+3].id]; f != "" && !r.is(i+3, kindNoun, "panel", "face") && !r.has(f) {
			r.bind(i, f)
		}
	}
}

// oneOfPart: "put the mat back but a 1/4 one" measures the part that was named.
func (r *reader) oneOfPart() {
	for i := range r.items {
		if !r.free(i) || !r.length(i) || !r.word(i+1, "one") || !r.word(i-1, "a", "an", "the", "that", "this", "my", "our") {
			continue
		}
		k := i - 1
		for k >= 0 && !r.is(k, kindNoun) {
			k--
		}
		if k >= 0 && r.within(0, k, kindNoun) < 0 && r.amountsIn(k, i) == 0 && r.is(k, kindNoun, "bar", "mat", "caul", "sled", "core", "bag") && !r.is(k-1, kindNot) && !r.is(k-2, kindNot) {
			r.bind(i, bareFields[r.items[k].id])
		}
	}
}

// onEachSide: "one on each side" are two.
func (r *reader) onEachSide() {
	for i := range r.items {
		on := i + 1
		if r.is(on, kindNoun, "bar") {
			on++
		}
		if !r.free(i) || r.items[i].amount.form != formWords || !r.items[i].amount.equals(one) || !r.word(on, "on", "at", "along") && !r.is(on, kindFact, "faces=2") {
			continue
		}
		k := on
		if !r.is(k, kindFact, "faces=2") {
			k++
		}
		if r.is(k, kindFact, "faces=2") {
			r.bothOfThem(i)
			r.items[i].used, r.items[k].meaning = true, meaning{}
			r.say(k, unit.BarCount, unit.Number(2))
			r.bound[len(r.bound)-1].fact.Loose = true
		}
	}
}

// bothOfThem takes the "two of them" before "one each side", which counts the same.
func (r *reader) bothOfThem(i int) {
	for k := range i {
		if n, ok := r.spokenOrWhole(k); ok && n == 2 && r.word(k+1, "of") && r.word(k+2, "them", "those", "em") {
			r.items[k].used = true
		}
	}
}

// spokenOrWhole is the whole number at item k, if it is free.
func (r *reader) spokenOrWhole(k int) (int, bool) {
	if !r.free(k) {
		return 0, false
	}
	return r.items[k].amount.whole()
}

// comparedBefore are the fields that a comparative before item j names: "thicker,
// 1/2", "thinner like 5/16".
func (r *reader) comparedBefore(j int) []unit.Field {
	for k := j - 1; k >= 0 && k >= j-4 && r.habit.Follows && r.items[k].amount == nil; k-- {
		if c, ok := comparatives[r.items[k].word]; ok && c.attr != "" {
			r.items[k].used = true
			return sizeFields[c.attr]
		}
		if r.word(k, "lighter", "harder", "heavier", "gentler", "softer", "stronger", "weaker") {
			r.items[k].used = true
			return []unit.Field{unit.WedgeForce, unit.Vacuum} // "lighter, 100"
		}
	}
	return nil
}

// barometers gives the number behind a barometer the unit that such a number can
// only have.
func (r *reader) barometers() {
	if !r.means(kindAir, "barometer") {
		return
	}
	for k := range r.items {
		i := r.barometerReads(k)
		if i < 0 || !r.items[i].amount.bare() {
			continue
		}
		for _, x := range barometerUnits {
			if v := r.items[i].amount.float(); v >= x.from && v <= x.to {
				u := x.unit
				r.items[i].amount.unit = &u
				r.bind(i, unit.Ambient)
				for j := k; j < i; j++ {
					r.items[j].used = true // "fell to"
				}
				break
			}
		}
	}
}

// barometerUnits are what barometers show, from a mountain to the sea.
var barometerUnits = []struct {
	from, to float64
	unit     unit.Unit
}{{20, 32, unit.InHg}, {800, 1090, unit.Mbar}, {70, 109, unit.KPa}, {0.7, 1.09, unit.Bar}}

// barometerReads is the amount behind the barometer at item k; -1 where none is.
func (r *reader) barometerReads(k int) int {
	if !r.is(k, kindAir, "barometer") {
		return -1
	}
	for i := k + 1; i < len(r.items) && i <= k+6; i++ {
		if r.free(i) {
			if n := r.next(i); r.is(n, kindVacuum) || r.is(n, kindNoun) || r.items[i].amount.link != linkNone {
				return -1
			}
			return i
		}
		if !r.idle(i) && !r.unknown(i) && !r.word(i, "went", "gone", "rose", "risen", "fell", "fallen", "dropped", "climbed", "came", "up", "down", "to", "now", "up to", "down to") && !r.is(i, kindSay) && !r.is(i, kindAir, "shop") && !r.is(i, kindVacuum, "pull") && r.items[i].brk != ':' && r.items[i].brk != '=' {
			return -1
		}
	}
	return -1
}

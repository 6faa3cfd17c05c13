package grammar

import "presshand/engine/unit"

// listedWidths reads strips of different widths: "strips 1-7/8, 2-1/4, 3 and
// 2-1/2 wide", and thicknesses told apart: "some are .74 and some are .77".
func (r *reader) listedWidths() {
	r.oneOfEachWidth()
	for i := 0; i < len(r.items); i++ {
		if n := i + 1; !r.free(i) || n >= len(r.items) || r.items[n].amount == nil && r.items[n].brk == 0 && !r.word(n, "and") && !r.wideAgain(n) {
			continue // no list
		}
		list := r.listFrom(i)
		named := r.word(i-1, "widths") || r.word(i-1, "are", "of", "is") && r.word(i-2, "widths")
		if last := len(list) - 1; named && last > 2 && r.is(r.next(list[last]), kindAttr, "thick", "long") && !r.live(r.next(list[last])+1) {
			list = list[:last] // "widths 2, 2 1/2, 3, 1/2 thick"
		}
		if len(list) < 3 && !r.twoOfThem(list) {
			r.whichOfTwo(list)
			continue
		}
		end := list[len(list)-1]
		attr := r.next(end)
		if r.is(attr, kindAttr) && r.items[attr].id != "wide" || !named && !r.is(attr, kindAttr) && !r.is(r.prev(i), kindNoun, "strip") && !(i > 1 && (r.labels(i-1) || r.word(i-1, "of", "are")) && r.is(i-2, kindAttr, "wide")) {
			continue
		}
		if k := i - 2; k >= 0 && r.labels(i-1) && r.is(k, kindNoun, "panel") && isPlural(r.items[k].word) {
			r.countListedPanels(k, len(list))
			r.panelsListed(list, attr)
			return
		}
		if r.is(r.prev(i), kindNoun, "panel") && isPlural(r.items[r.prev(i)].word) {
			r.panelsListed(list, attr)
			return
		}
		if r.countAmong(list) {
			continue
		}
		var widths unit.Numbers
		for _, k := range list {
			v, _, ok := r.valueOf(r.items[k].amount, unit.StripWidth)
			if !ok || impossible(unit.StripWidth, v) != "" {
				return
			}
			widths = append(widths, v)
		}
		for _, k := range list {
			r.items[k].used = true
		}
		if r.is(attr, kindAttr) {
			r.items[attr].used = true
		}
		text := r.textOf(i, end)
		r.countListed(i, len(list))
		r.bound = append(r.bound, binding{Fact{Field: unit.StripWidths, Value: widths, Unit: r.bareUnit(nil, unit.Distance), Text: text}, i, false})
		return
	}
}

// countAmong: of "strips 3/8, five, 2 1/4 wide" the whole number in words among digits
// counts them.
func (r *reader) countAmong(list []int) bool {
	said, broken := -1, 0
	for _, k := range list {
		switch am := r.items[k].amount; {
		case am.value == nil:
			return false
		case am.form == formWords && am.bare() && am.value.IsInt() && said < 0 && r.isBreak(k-1) && r.isBreak(k+1):
			said = k
		case am.form == formWords:
			return false
		case !am.value.IsInt():
			broken++
		}
	}
	return said >= 0 && broken > 0 && !r.has(unit.StripCount) && r.bind(said, unit.StripCount)
}

// panelsListed reads "panels 18, 20 and 22 wide": one of each width.
func (r *reader) panelsListed(list []int, attr int) {
	var piles unit.Piles
	for _, k := range list {
		v, _, ok := r.valueOf(r.items[k].amount, unit.TargetWidth)
		if !ok || impossible(unit.TargetWidth, v) != "" {
			return
		}
		piles = append(piles, unit.Pile{Width: v, Count: 1})
	}
	for _, k := range list {
		r.items[k].used = true
	}
	if r.is(attr, kindAttr) {
		r.items[attr].used = true
	}
	from, end := list[0], list[len(list)-1]
	text := r.textOf(from, end)
	r.bound = append(r.bound, binding{Fact{Field: unit.Targets, Value: piles, Unit: r.bareUnit(nil, unit.Distance), Text: text}, from, false})
}

// countListedPanels uses up "three" of "three tops: 24, 30 and 36 wide".
func (r *reader) countListedPanels(k, n int) {
	if m, ok := r.wholeAt(k - 1); ok && m == n {
		r.items[k-1].used = true
	}
}

// countListed uses up "three strips" before three widths.
func (r *reader) countListed(i, n int) {
	for j := i - 1; j >= 0 && j >= i-4; j-- {
		if k, ok := 0, false; r.free(j) {
			if k, ok = r.items[j].amount.whole(); ok && k == n {
				r.items[j].used = true
				r.bound = append(r.bound, binding{Fact{Field: unit.StripCount, Value: unit.Number(n), Text: r.items[j].text}, j, false})
			}
			return
		}
	}
}

// listFrom returns the free lengths from item i on that only commas and "and"
// part.
func (r *reader) listFrom(i int) []int {
	var list []int
	for j := i; j < len(r.items); j++ {
		switch {
		case r.free(j) && r.length(j) && r.items[j].amount.link == linkNone:
			list = append(list, j)
			if k := r.next(j); (r.is(k, kindAttr) || r.is(k, kindNoun)) && !r.wideAgain(k) {
				return list
			}
		case len(list) > 0 && r.is(j, kindAttr, "wide") && r.wideAgain(j):
		case len(list) > 0 && (r.items[j].brk == ',' || r.items[j].brk == '/' || r.items[j].brk == '+' || r.word(j, "and")):
		default:
			return list
		}
	}
	return list
}

// wideAgain: "2 wide, 2 1/2 wide and 3 wide" says it behind each.
func (r *reader) wideAgain(k int) bool {
	j := k + 1
	for j < len(r.items) && (r.items[j].brk == ',' || r.word(j, "and")) {
		j++
	}
	return r.is(k, kindAttr, "wide") && j > k+1 && j < len(r.items) && r.free(j) && r.length(j) && r.is(r.next(j), kindAttr, "wide")
}

// alternatives reads a second value offered behind "or": "a 1 in bar or a 1½?",
// "one press or two".
func (r *reader) alternatives() {
	for i := range r.items {
		if !r.free(i) || i == 0 {
			continue
		}
		j := i - 1
		for j > 0 && i-j < 7 && r.word(j, "a", "an", "the", "of", "with", "just", "do", "i", "we", "want", "need", "should", "use", "go", "for", "to", "is") {
			j--
		}
		if !r.word(j, "or", "vs", "versus") && r.items[i].amount.link != linkOr && !r.is(j, kindRole, "compare") {
			continue
		}
		if r.anotherChoice(i) {
			continue
		}
		if k := r.lastBefore(i, i); k >= 0 && r.sameSentence(r.bound[k].from, i) {
			b := r.bound[k]
			if am := r.items[i].amount; b.fact.Field == unit.Vacuum && am.bare() && (am.float() < 5 || am.form == formMixed || am.form == formFraction) {
				continue // "25 inHg, is 1 in enough or do i need 1 1/2"
			}
			v, u, ok := r.valueOf(r.items[i].amount, b.fact.Field)
			if !ok || impossible(b.fact.Field, v) != "" {
				continue
			}
			r.items[i].used = true
			r.bound = append(r.bound, binding{Fact{Field: b.fact.Field, Value: unit.Number(v), Unit: u, Text: r.items[i].text}, i, false})
		}
	}
}

// differenceOf: "difference on the far joint between 22 and 26 inHg" compares the two.
func (r *reader) differenceOf() {
	r.setAgainst()
	if !r.says("between") {
		return
	}
	for i := range r.items {
		if !r.free(i) || !r.free(i+1) || r.items[i+1].amount.link == linkNone || !r.word(i-1, "between") || !r.wordIn("difference", "gap between") || !r.items[i+1].amount.is(unit.Pressing) {
			continue
		}
		if r.items[i].amount.bare() {
			u := *r.items[i+1].amount.unit
			r.items[i].amount.unit = &u
		}
		r.choice(i, i+1, unit.Vacuum)
		return
	}
}

// firstAlternatives reads the first value of two where only the second one says of
// what: "the 1 in or the 1 1/2 in bar".
func (r *reader) firstAlternatives() {
	if !r.says("or", "vs", "versus") && !r.means(kindRole, "compare") {
		return
	}
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.link != linkNone || !r.word(i+1, "or", "vs", "versus") && !r.is(i+1, kindRole, "compare") || r.is(i-1, kindNoun) || r.is(i-1, kindAttr) {
			continue
		}
		j := i + 2
		for r.word(j, "a", "an", "the", "my", "our", "that", "with") {
			j++
		}
		if j == i+2 || j >= len(r.items) || !r.length(i) {
			continue
		}
		f := r.boundAt(j)
		if f.Dimension() != unit.Distance || f == unit.StripWidths || r.anotherChoice(i) {
			continue
		}
		am := *r.items[i].amount
		if am.unit == nil {
			am.unit = r.items[j].amount.unit
		}
		v, u, ok := r.valueOf(&am, f)
		if !ok || impossible(f, v) != "" {
			continue
		}
		r.items[i].used = true
		r.bound = append(r.bound, binding{Fact{Field: f, Value: unit.Number(v), Unit: u, Text: r.items[i].text}, i, false})
	}
}

// barsOffered reads "two bars, a 3/4 and a 1 1/4. which is better, 3/4 or 1 1/4?":
// their number is that of the heights offered.
func (r *reader) barsOffered() {
	if !r.means(kindNoun, "bar") {
		return
	}
	r.barsPiledTo()
	bars := -1
	for i := range r.items {
		if it := &r.items[i]; it.kind == kindNoun && it.id == "bar" && isPlural(it.word) {
			bars = i
		}
	}
	for i := 1; i < len(r.items) && bars >= 0; i++ {
		if !r.free(i) || !r.free(i-1) || r.items[i].amount.link != linkOr || !r.length(i) || !r.length(i-1) || r.is(r.next(i), kindNoun) || r.is(r.next(i), kindAttr) || r.size(i) > 0.2 {
			continue
		}
		a, b := r.size(i-1), r.size(i)
		r.choice(i-1, i, unit.BarHeight)
		for k := range r.items {
			if r.free(k) && r.length(k) && (r.size(k) == a || r.size(k) == b) && k < i {
				r.items[k].used = true // the same heights said before
			}
		}
		if n, ok := r.spokenNumber(bars - 1); ok && n == 2 {
			r.items[bars-1].amount.dead = true
		}
		return
	}
	if bars >= 0 {
		r.barsOnHand(bars)
	}
}

// barsOnHand reads "bars on hand are 3/4, 1 and 1 1/2 tall, which is best": heights
// to choose from.
func (r *reader) barsOnHand(bars int) {
	if !r.wordIn("which", "whichever", "whichevers", "best", "better") && !r.mentions(kindRole, "compare") {
		return
	}
	var offered, counted []int
	for i := bars + 1; i < len(r.items) && !r.isStop(i); i++ {
		switch {
		case r.free(i) && r.items[i].amount.form == formWords && r.items[i].amount.equals(one) && r.free(i+1): // "one 3/4 and one 1 1/4"
			counted = append(counted, i)
		case r.free(i) && r.length(i) && r.items[i].amount.link != linkTimes && small(r.size(i)):
			offered = append(offered, i)
		case r.items[i].amount != nil, r.is(i, kindNoun), len(offered) > 0 && !r.isBreak(i) && !r.word(i, "and", "or", "a", "an", "the") && !r.is(i, kindAttr, "tall"):
			i = len(r.items)
		}
	}
	if len(offered) < 2 {
		return
	}
	c := Choice{Field: unit.BarHeight}
	for _, i := range offered {
		v, u, ok := r.valueOf(r.items[i].amount, unit.BarHeight)
		if !ok || impossible(unit.BarHeight, v) != "" {
			return
		}
		c.Values = append(c.Values, Fact{Field: unit.BarHeight, Value: unit.Number(v), Unit: u, Text: r.items[i].text})
	}
	if n, ok := r.wholeAt(bars - 1); ok && n == len(offered) {
		counted = append(counted, bars-1)
	}
	for _, i := range append(offered, counted...) {
		r.items[i].used = true
	}
	r.phrase.Choices = append(r.phrase.Choices, c)
}

func (r *reader) sameSentence(a, b int) bool {
	for i := a; i < b; i++ {
		if r.isStop(i) {
			return false
		}
	}
	return true
}

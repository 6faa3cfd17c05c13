package grammar

import "presshand/engine/unit"

// nominal sizes of softwood lumber and what they dress to, in inches (US
// softwood lumber standard PS 20, dressed sizes, from memory).
var (
	nominalThickness = map[int]float64{1: 0.75, 2: 1.5}
	nominalWidth     = map[int]float64{2: 1.5, 3: 2.5, 4: 3.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25}
)

// products reads sizes: "24x48", "2 1/4 x 1/4 x 36", "4x8x3in".
func (r *reader) products() {
	for i := 0; i < len(r.items); i++ {
		if !r.timesAt(i+1) || !r.free(i) {
			continue
		}
		end := r.chain(i)
		if end-i < 2 || r.afterWide(i, end) {
			continue
		}
		r.product(i, end)
		i = end - 1
	}
}

// afterWide reads the rest of "2 1/2 wide x 6'4" x 7/8", where the first number has its
// direction behind it.
func (r *reader) afterWide(i, end int) bool {
	k := i - 2
	if end-i != 2 || !r.word(i-1, "x", "by") || !(r.is(k, kindAttr, "wide") || r.word(k, "w", "wd")) || !r.free(k-1) || !small(r.size(k-1)) {
		return false
	}
	long := r.longest(i, end)
	thin := i + end - 1 - long
	if r.size(long) < widestStrip || r.size(thin) > thickestStock || r.has(unit.StripLength) || r.has(unit.StripThickness) {
		return false
	}
	r.items[i].amount.link, r.items[i+1].amount.link = linkNone, linkNone
	r.items[k].meaning, r.items[k].used = meaning{kind: kindAttr, id: "wide"}, true
	r.hear(k)
	if n := r.next(end - 1); r.is(n, kindAttr, "thick", "long") && n == end {
		r.items[n].used = true
	}
	return r.bind(k-1, unit.StripWidth) && r.bind(long, unit.StripLength) && r.bind(thin, unit.StripThickness)
}

// chain returns the end of the amounts joined by "x" from item i on.
func (r *reader) chain(i int) int {
	if !r.free(i) || !r.length(i) {
		return i
	}
	if n := i + 1; n < len(r.items) && r.free(n) && r.items[n].amount.link == linkAt && n+1 < len(r.items) && r.free(n+1) && r.items[n+1].amount.link == linkTimes {
		return i // "14 @ 1-3/4 x 3/4" is a count and a size
	}
	end := i + 1
	for end < len(r.items) && r.free(end) && r.items[end].amount.link == linkTimes && r.length(end) {
		end++
	}
	return end
}

// length reports whether the amount at item i can be a length.
func (r *reader) length(i int) bool {
	am := r.items[i].amount
	if r.one(i) && am.bare() && am.link == linkNone && (i+1 >= len(r.items) || !r.is(i+1, kindAttr) && r.items[i+1].amount == nil && !r.is(i-1, kindNoun) && !r.word(i+1, "of") && !r.word(i-1, "is", "by", "to", "from")) {
		return false // "long one tomorrow"
	}
	return am != nil && (am.unit == nil || am.unit.Dimension == unit.Distance) && am.form != formPair
}

func (r *reader) product(i, end int) {
	r.spreadUnit(i, end)
	if r.countFirst(i, end) {
		if !r.bind(i, unit.StripCount) || end-i < 2 {
			return
		}
		i++
		r.items[i].amount.link = linkNone
		if end-i < 2 {
			r.bind(i, unit.StripWidth)
			return
		}
	}
	sheet := r.sheet(i, end)
	if !sheet && (r.lumberBar(i, end) || r.nominal(i, end)) {
		return
	}
	fields := r.productFields(i, end, sheet)
	if fields == nil {
		return
	}
	if r.word(i-1, "of") && r.free(i-2) && (fields[0] == unit.StripWidth || fields[0] == unit.StripThickness) && !r.has(unit.StripCount) {
		if n, ok := r.items[i-2].amount.whole(); ok && n > 1 && r.items[i-2].amount.bare() {
			r.bind(i-2, unit.StripCount) // "5 of 2 1/4 x 1/4"
		}
	}
	if n, ok := r.spokenNumber(i - 1); ok && n > 1 && fields[0] != unit.PanelWidth && (fields[0] == unit.StripWidth || fields[0] == unit.StripThickness) && !r.has(unit.StripCount) && !r.countSaid(i, end) {
		r.bind(i-1, unit.StripCount) // "six 50 x 14"
	}
	if r.items[i].amount.link == linkAt && r.free(i-1) && fields[0] == unit.StripWidth {
		if _, ok := r.items[i-1].amount.whole(); ok {
			r.bind(i-1, unit.StripCount)
		}
	}
	for k := i; k < end; k++ {
		if sheet && k < i+2 {
			u := unit.Foot
			r.items[k].amount.unit = &u
		}
		r.bind(k, fields[k-i])
		r.loosenLast(r.habit.Follows && r.countKind(kindNoun) == 0)
	}
}

// countFirst takes "5 x 2 1/4 x 1/4 strips" and, where a thickness is said with
// its word, "7 x 45 mm strips" for a count and a size.
func (r *reader) countFirst(i, end int) bool {
	n, ok := r.items[i].amount.whole()
	if !ok || n < 2 || n > 60 || r.has(unit.StripCount) || !r.mentions(kindNoun, "strip", "bar") || r.countSaid(i, end) {
		return false
	}
	if end-i == 3 && r.size(i+1) > r.size(i) && r.size(i+1) > r.size(i+2) {
		return r.size(i+1) < 0.3 // else it is a length: "5 x 48 x 3/4"
	}
	second := r.items[i+1].amount
	switch end - i {
	case 2:
		return second.unit != nil && r.mentions(kindAttr, "thick") && r.is(r.next(end-1), kindNoun, "strip")
	case 3:
		third := r.items[i+2].amount
		return r.size(i) < 0.3 && (second.form == formMixed || second.form == formFraction || third.form == formFraction || third.form == formDecimal) && r.size(i+2) < r.size(i+1)
	}
	return false
}

// countSaid reports whether another whole number counts strips.
func (r *reader) countSaid(i, end int) bool {
	for j := range r.items {
		if j >= i && j < end || !r.free(j) || r.timesAt(j) || r.timesAt(j+1) {
			continue
		}
		if _, ok := r.items[j].amount.whole(); ok && r.is(r.counted(j), kindNoun, "strip") {
			return true
		}
	}
	return false
}

// spreadUnit gives the unit behind a size to its bare numbers: "600 x 1200 mm".
func (r *reader) spreadUnit(i, end int) {
	last := r.items[end-1].amount
	r.brokenInches(i, end)
	if first := r.items[i].amount; first.is(unit.Distance) && first.unit.Symbol == "m" && last.bare() && last.float() < 10 && r.habit.Metric {
		u := *first.unit
		last.unit = &u // "2 m by 3"
	}
	if r.framedInMetres(i) {
		u := unit.Metre
		r.items[i].amount.unit, r.items[i+1].amount.unit = &u, &u
		if end-i == 3 && last.bare() && last.float() < 1 {
			last.unit = &u // "2.4 x 1.2 x 0.1"
		}
		return
	}
	if last.unit == nil || r.isSheet(i) || last.unitRaw == "ft in" {
		return
	}
	panel := r.mentions(kindNoun, "panel") && !r.mentions(kindNoun, "strip")
	for k := i; k < end-1; k++ {
		v := r.items[k].amount.float()
		if last.unit.Symbol == "ft" && end-i == 3 && (r.isFraction(k) || !panel && (r.isFraction(i) || r.isFraction(i+1))) {
			continue // "1 1/2 by 3/4 by 8 feet", "panel 1/2 by 2 by 4 ft"
		}
		if r.items[k].amount.unit == nil && !(last.unit.Symbol == "ft" && v > 16) && !(last.unit.Symbol == "m" && v > 30) { // "600 x 2.4 m"
			u := *last.unit
			r.items[k].amount.unit = &u
		}
	}
}

// nominal reads lumber sizes: "poplar 1x6s".
func (r *reader) nominal(i, end int) bool {
	a, okA := r.items[i].amount.whole()
	b, okB := r.items[i+1].amount.whole()
	t, w := nominalThickness[a], nominalWidth[b]
	if !okA || !okB || end-i != 2 || t == 0 || w == 0 || r.habit.Metric {
		return false
	}
	n, p := r.next(i+1), r.prev(i)
	if !r.items[i+1].amount.plural && !r.is(n, kindWood) && !r.is(p, kindWood) && !r.is(n, kindNoun, "strip") {
		return false
	}
	text := r.textOf(i, i+1)
	r.items[i].used, r.items[i+1].used = true, true
	for _, f := range []struct {
		field unit.Field
		v     float64
	}{{unit.StripThickness, t}, {unit.StripWidth, w}} {
		r.bound = append(r.bound, binding{Fact{Field: f.field, Value: unit.Number(round(f.v * 25.4)), Unit: unit.Inch, Text: text, Note: "nominal size, dressed"}, i, false})
	}
	return true
}

// productFields says what each number of a size is.
func (r *reader) productFields(i, end int, sheet bool) []unit.Field {
	n := end - i
	if k := r.nextNear(end - 1); n == 3 && (r.is(k, kindNoun, "core") || r.is(k, kindWood) && r.is(r.next(k), kindNoun, "core")) && r.mentions(kindNoun, "face") {
		if r.size(i) < r.size(i+2) {
			return []unit.Field{unit.CoreThickness, unit.PanelWidth, unit.PanelLength}
		}
		return []unit.Field{unit.PanelWidth, unit.PanelLength, unit.CoreThickness}
	}
	noun := r.productNoun(i, end, sheet)
	if noun == "strip" && n == 3 && r.size(i) > 0.25 && r.size(i+1) > r.size(i) {
		noun = "panel" // "18 x 30 x 3/4 from 8 strips"
	}
	if noun == "panel" && n == 3 && small(r.size(i)) && small(r.size(i+1)) && r.mentions(kindNoun, "strip") {
		noun = "strip" // "24 strips in a panel, each 1 1/2 by 3/4 by 8 feet"
	}
	switch noun {
	case "joint":
		return pick(n, unit.StripThickness, unit.StripLength)
	case "strip":
		return r.stripSize(i, end)
	case "bar":
		if r.attrBehind(end-1) == "tall" {
			return pick(n, unit.BarWidth, unit.BarHeight)
		}
		return pick(n, unit.BarHeight, unit.BarWidth)
	case "sled":
		if r.feetFirst(i) {
			return pick(n, unit.SledLength, unit.SledWidth, unit.SledThickness)
		}
		return pick(n, unit.SledWidth, unit.SledLength, unit.SledThickness)
	case "bag":
		return r.bagSize(i, n)
	case "bed", "frame", "press", "opening":
		if r.size(i) > r.size(i+1) {
			return pick(n, unit.BedLength, unit.BedWidth, unit.Opening)
		}
		return pick(n, unit.BedWidth, unit.BedLength, unit.Opening)
	}
	if n == 2 && r.attrBehind(end-1) == "tall" && r.size(end-1) < lowPanel && r.mentions(kindRole, "stackorder") {
		return nil // "stack 48 wide x 3 high"
	}
	third := unit.PanelThickness
	if r.topic == Glue || r.topic == Side {
		third = unit.StripThickness
	}
	if n == 3 && r.size(i) < 0.06 && r.size(i+1) > 0.1 && r.size(i+2) > 0.1 {
		return []unit.Field{third, unit.PanelWidth, unit.PanelLength} // "3/4 x 30 x 60 top"
	}
	if (sheet || r.feetFirst(i)) && r.size(i) > r.size(i+1) { // an 8x4 is a 4x8
		return pick(n, unit.PanelLength, unit.PanelWidth, third)
	}
	return pick(n, unit.PanelWidth, unit.PanelLength, third)
}

// feetFirst: of 5' x 24" the feet are the length, and 8' x 4' is the sheet of that
// size.
func (r *reader) feetFirst(i int) bool {
	a, b := r.items[i].amount, r.items[i+1].amount
	if a.unit != nil && a.unit.Symbol == "m" && r.size(i) > r.size(i+1) && (b.unit == nil || b.unit.Symbol == "mm") {
		return true // "1.2 m x 600"
	}
	if a.unit == nil || a.unit.Symbol != "ft" && a.unitRaw != "ft in" || r.size(i) <= r.size(i+1) {
		return false
	}
	if b.unit == nil || b.unit.Symbol != "ft" {
		return true
	}
	return sheetSizes[[2]int{int(a.float()), int(b.float())}] && a.value.IsInt() && b.value.IsInt()
}

func pick(n int, fs ...unit.Field) []unit.Field {
	if n > len(fs) {
		return nil
	}
	return fs[:n]
}

func (r *reader) bagSize(i, n int) []unit.Field {
	if r.size(i) > r.size(i+1) {
		return pick(n, unit.BagLength, unit.BagWidth)
	}
	return pick(n, unit.BagWidth, unit.BagLength)
}

// size is an amount's length in metres, or its bare number.
func (r *reader) size(i int) float64 {
	am := r.items[i].amount
	if am.unit != nil {
		return am.unit.SI(am.float())
	}
	return r.bareUnit(am, unit.Distance).SI(am.float())
}

func (r *reader) attrBehind(i int) string {
	if n := r.next(i); r.is(n, kindAttr) {
		return r.items[n].id
	}
	return ""
}

// stripSize: the longest number is the length where it is far longer, then the
// width, then the thickness.
func (r *reader) stripSize(i, end int) []unit.Field {
	a, b := r.size(i), r.size(i+1)
	switch end - i {
	case 2:
		switch {
		case b > 6*a && b > 0.5 && a < 0.02 && r.attrBehind(end-1) == "long":
			return []unit.Field{unit.StripThickness, unit.StripLength}
		case b > 6*a && b > 0.5:
			return []unit.Field{unit.StripWidth, unit.StripLength}
		case a > 6*b && a > 0.6:
			return []unit.Field{unit.StripLength, unit.StripWidth}
		case a >= b || r.habit.Follows && r.wordIn("flip", "flipped", "flipping", "turn", "turned", "rotate", "rotated"):
			return []unit.Field{unit.StripWidth, unit.StripThickness} // "and if I flip them to 18x40"
		}
		return []unit.Field{unit.StripThickness, unit.StripWidth}
	case 3:
		c := r.size(i + 2)
		switch {
		case b > a && b > c && a >= c:
			return []unit.Field{unit.StripWidth, unit.StripLength, unit.StripThickness}
		case b > a && b > c:
			return []unit.Field{unit.StripThickness, unit.StripLength, unit.StripWidth}
		}
		if a > b && a > c {
			if b >= c {
				return []unit.Field{unit.StripLength, unit.StripWidth, unit.StripThickness}
			}
			return []unit.Field{unit.StripLength, unit.StripThickness, unit.StripWidth}
		}
		if a >= b {
			return []unit.Field{unit.StripWidth, unit.StripThickness, unit.StripLength}
		}
		return []unit.Field{unit.StripThickness, unit.StripWidth, unit.StripLength}
	}
	return nil
}

func small(metres float64) bool { return metres < 0.13 }

// barBefore reports whether the clause before was about the side bar and nothing
// else that has a section.
func (r *reader) barBefore(from int) bool {
	if from == 0 {
		return false
	}
	f, t := r.clause(from - 2)
	return from >= 2 && r.within(f, t, kindNoun, "bar") >= 0 && r.within(f, t, kindFact, "bar=none") < 0 && !r.opensWithin(f, t, "off", "without", "lose", "skip", "no") && r.within(f, t, kindNot) < 0 && r.within(f, t, kindNoun, "strip", "panel") < 0 && r.amountsIn(f, t) == 0
}

// longest is the item of the longest number of a size.
func (r *reader) longest(i, end int) int {
	at := i
	for k := i; k < end; k++ {
		if r.size(k) > r.size(at) {
			at = k
		}
	}
	return at
}

// others is the longest of a size's numbers but one, in metres.
func (r *reader) others(i, end, but int) float64 {
	most := 0.0
	for k := i; k < end; k++ {
		if k != but {
			most = max(most, r.size(k))
		}
	}
	return most
}

// bySize tells a strip's section from a panel: no panel is thinner than 50 mm
// across.
func (r *reader) bySize(i, end int) string {
	small := false
	for k := i; k < end; k++ {
		small = small || r.size(k) < 0.05
	}
	if long := r.longest(i, end); small && end-i == 3 && r.others(i, end, long) < 0.3 {
		return "strip"
	}
	if small && end-i == 2 || small && r.mentions(kindNoun, "strip") {
		return "strip"
	}
	return "panel"
}

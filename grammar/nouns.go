package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// nounLengths gives a bare measure to the part beside it: "1 in bar", "bar 1 in",
// "1/4 walnut".
func (r *reader) nounLengths() {
	for i := range r.items {
		if r.free(i) && r.length(i) && !r.inRange(i) && !r.gapIs(i) && !r.behindLabel(i) && !r.barFromTo(i) {
			r.nounLength(i)
		}
	}
	for i := range r.items {
		if r.free(i) && r.free(i+1) && r.length(i) {
			r.nounRange(i)
		}
		if r.free(i) && r.word(i+1, "of") && r.word(i+2, "it", "that", "this") && r.isBreak(i+3) && r.length(i) {
			r.ofItLength(i)
		}
	}
}

// ofItLength: of "foam gives 40 kPa at 25% squash. 10 mm of it" it is the mat, the
// only part that was spoken of before.
func (r *reader) ofItLength(i int) {
	k := r.within(0, i, kindNoun)
	for j := k; j >= 0 && j < i; j++ {
		if r.is(j, kindNoun) && r.items[j].id != r.items[k].id {
			return
		}
	}
	if r.is(k, kindNoun, "mat", "caul", "core") && !r.has(bareFields[r.items[k].id]) {
		r.bind(i, bareFields[r.items[k].id])
	}
}

// behindLabel: of "thickness 1/2 bow 1/4" the first number is the thickness.
func (r *reader) behindLabel(i int) bool {
	return i > 0 && r.is(i-1, kindAttr) && nounForm(r.items[i-1].word) && !r.items[i-1].used
}

// gapIs: "the gap in the middle is 0.3".
func (r *reader) gapIs(i int) bool {
	if !r.word(i-1, "is", "was", "measures", "of") {
		return false
	}
	from, _ := r.clause(i)
	gap := r.within(from, i, kindNoun, "gap")
	return gap >= 0 && gap >= i-6 && r.amountsIn(gap, i) == 0 && r.size(i) < 0.02 && !r.has(unit.Gap) && r.bind(i, unit.Gap)
}

// inRange reports whether the amount is linked to another by "to" or "or".
func (r *reader) inRange(i int) bool {
	l := r.items[i].amount.link
	if l == linkTo || l == linkOr {
		return r.free(i-1) && r.items[i-1].amount.link != linkTimes && r.length(i-1)
	}
	return i+1 < len(r.items) && r.items[i+1].amount != nil && (r.items[i+1].amount.link == linkTo || r.items[i+1].amount.link == linkOr) && r.free(i+1) && r.length(i+1)
}

// nounRange reads "5/16 to 3/8 strips" and "1 or 1 1/2 bar".
func (r *reader) nounRange(i int) {
	j := i + 1
	l := r.items[j].amount.link
	if l != linkTo && l != linkOr || !r.length(j) {
		return
	}
	n := r.next(j)
	if l == linkTo && r.is(n, kindAttr, "wide", "long") {
		return // "strips between 2 and 3 wide"
	}
	noun := ""
	if r.is(n, kindNoun) {
		noun = r.items[n].id
	} else if p := r.prev(i); r.is(p, kindNoun) {
		noun = r.items[p].id
	} else if k := r.offeredBefore(i); k >= 0 && l == linkOr && r.next(j) < 0 {
		noun = r.items[k].id
	} else if r.is(n, kindAttr) {
		return
	}
	switch {
	case l == linkTo && noun == "bar" && r.word(i-1, "from") && !r.habit.Follows:
		r.items[i-1].used = true
		r.choice(i, j, unit.BarHeight) // "if I go from 1 in to 1 1/2 bar"
	case l == linkOr && bareFields[noun] != "":
		r.choice(i, j, bareFields[noun])
	case l == linkTo && (noun == "strip" || r.is(n, kindWood) || r.is(r.prev(i), kindWood)):
		r.bindRange(i, unit.StripThinnest, unit.StripThickest)
	case l == linkTo && !r.is(n, kindNoun) && r.size(i) < 0.1 && r.stripClause(i):
		r.bindRange(i, unit.StripThinnest, unit.StripThickest)
	case l == linkTo && !r.is(n, kindNoun) && r.size(i) < 0.1 && r.word(i-1, "from") && r.thicknessSaid(i):
		r.bindRange(i, unit.StripThinnest, unit.StripThickest)
	case l == linkTo && noun == "wedge":
		r.bindRange(i, unit.WedgeLow, unit.WedgeHigh)
	}
}

// offeredBefore is the part right before the comma or colon of "firm mat, 1/8 or
// 1/4?", where nothing else was said of how thick it is; -1 where there is none.
func (r *reader) offeredBefore(i int) int {
	if k := i - 2; k >= 0 && (r.items[i-1].brk == ',' || r.items[i-1].brk == ':') && r.is(k, kindNoun, "mat", "bar", "caul", "sled") && !r.has(bareFields[r.items[k].id]) {
		if from, _ := r.clause(k); r.amountsIn(from, k) == 0 {
			return k
		}
	}
	return -1
}

// thicknessSaid: "strips have different thickness, from 19.0 to 19.6".
func (r *reader) thicknessSaid(i int) bool {
	from, _ := r.sentence(i)
	return r.within(from, i, kindNoun, "strip") >= 0 && r.within(from, i, kindAttr, "thick") >= 0
}

// stripClause reports whether the clause is about strips.
func (r *reader) stripClause(i int) bool {
	from, to := r.clause(i)
	return r.within(from, to, kindNoun, "strip") >= 0 && r.within(from, to, kindNoun, "wedge", "panel") < 0
}

// daylightBefore is the daylight of "daylight in the press is 75 mm", where the press
// stands at item k; -1 where none is.
func (r *reader) daylightBefore(i, k int) int {
	from, _ := r.clause(i)
	d := r.within(from, k, kindNoun, "opening")
	if d < 0 || !r.is(k, kindNoun, "press", "frame") || r.items[d].word != "daylight" || !r.word(d+1, "of", "on") && !r.is(d+1, kindUnit, "in") {
		return -1
	}
	return d
}

func (r *reader) nounLength(i int) {
	if am := r.items[i].amount; am.unit == nil && am.form == formWords && am.value != nil && am.value.IsInt() && !(am.float() > 9 && (r.is(i-1, kindNoun, "bar", "opening") || r.word(i-1, "stands", "measures", "is") && r.is(i-2, kindNoun, "bar", "opening") || r.partAsTold(i) >= 0) && r.isBreak(i+1)) || (r.word(i-1, "by") || i > 0 && r.items[i-1].brk == 'x') && (r.is(i-2, kindAttr) || i > 1 && r.items[i-2].amount != nil) {
		return
	}
	k, right := r.besideNoun(i)
	if k < 0 {
		return
	}
	if !right {
		k = r.subjectNoun(i, k)
	}
	it := &r.items[k]
	id := it.id
	if right && r.equated(k) || id == "bar" && right && (r.habit.Metric && r.items[i].amount.bare() && r.size(i) < 0.006 || r.is(k+1, kindAttr, "long") && r.size(i) > widestStrip) {
		return // no bar is 3 mm high: "3 bar" may be a pressure; "is a 24 in bar long enough"
	}
	if id == "sled" && r.singularCount(i, k) || id == "bag" && !right && r.maybeGauge(i) || id == "opening" && r.ofDoor(k) {
		return
	}
	if it.kind == kindWood {
		r.woodLength(i)
		return
	}
	switch id {
	case "sled", "mat", "caul", "core", "film":
		if n, ok := r.items[i].amount.whole(); ok && n < 20 && right && !r.metricSleds(i, n) && (isPlural(it.word) || id == "core" && r.is(k+1, kindNoun, "core") && isPlural(r.items[k+1].word)) {
			return // a count of them
		}
		r.partLength(i, k)
	case "strip":
		r.stuffLength(i, it.word)
	case "joint", "pump", "reservoir", "leak", "fence", "wedge":
	case "frame", "press", "bed":
		if right && r.items[i].amount.unit == nil {
			return
		}
		if it.word == "clear height" || it.word == "daylight" || right && (r.topic == Stack || r.topic == Pump && id == "frame" || r.has(unit.StackLayers)) && id != "bed" && r.size(i) < 0.5 && !r.has(unit.Opening) {
			r.bind(i, unit.Opening)
		}
	case "opening":
		r.bind(i, r.openingField(i, k))
	case "panel":
		r.panelLength(i)
	case "cup":
		if r.topic == Move && !r.mentions(kindVacuum) && !r.mentions(kindAsk, "flatten") {
			return
		}
		r.bind(i, unit.Cup)
	default:
		if f := r.gapOrOpening(i, bareFields[id]); f != "" {
			r.bind(i, f)
		}
	}
}

// openingField is what the measure at item i, of the opening at item k, is: the press's, or
// that which strips fill.
func (r *reader) openingField(i, k int) unit.Field {
	switch {
	case r.has(unit.Overfill) && r.size(i) > 0.25 && !r.has(unit.PanelWidth):
		return unit.PanelWidth // "1/16 over on a 24 opening"
	case r.has(unit.StockPiles) && (r.mentions(kindNoun, "fence") || r.mentions(kindNoun, "wedge") || r.is(r.next(i), kindAttr, "wide")) && !r.has(unit.TargetWidth) && r.size(i) > 0.25:
		return unit.TargetWidth // "opening 800 fence to fence", "the opening's 36 wide"
	}
	return r.daylight(i, k)
}

// subjectNoun is the part that a clause whose last noun is at item k is about: the
// daylight of a press, the fence of "fence on the sled is 22".
func (r *reader) subjectNoun(i, k int) int {
	if d := r.daylightBefore(i, k); d >= 0 {
		return d
	}
	if r.word(k-1, "the", "a", "our") && r.word(k-2, "on") && r.is(k-3, kindNoun) && r.word(k+1, "is", "was") {
		return k - 3
	}
	return k
}

// daylight in a joint is its gap, daylight in a press its opening.
func (r *reader) daylight(i, k int) unit.Field {
	from, to := r.sentence(i)
	if r.within(from, to, kindNoun, "fence") >= 0 && r.has(unit.Overfill) && !r.has(unit.PanelWidth) {
		return unit.PanelWidth // what strips fill, wall to wall
	}
	if r.items[k].word == "daylight" && r.size(i) < mostApart && r.wordIn("straightedge", "straight edge", "ruler", "straight", "level") {
		return unit.Cup
	}
	if r.items[k].word == "daylight" && r.within(from, to, kindNoun, "joint") >= 0 && r.within(from, to, kindNoun, "press", "frame") < 0 {
		return unit.Gap
	}
	return unit.Opening
}

// thickestPly is more than any sheet of plywood, in metres.
const thickestPly = 0.05

// partLength binds the thickness of a layer. A sheet under a sled is the sled.
func (r *reader) partLength(i, k int) {
	f := bareFields[r.items[k].id]
	if p := r.prev(i); f == unit.CoreThickness && k > i && r.is(p, kindNoun, "caul", "sled") && p == i-2 && r.word(i-1, "is") && !r.has(bareFields[r.items[p].id]) {
		f = bareFields[r.items[p].id] // "the caul is 3/4 ply"
		r.items[k].meaning, r.items[k].used = meaning{kind: kindFill}, true
	}
	if f == unit.CoreThickness && r.underfoot(k) {
		f = unit.SledThickness
		if r.is(k+1, kindNoun, "caul", "bar") {
			f = bareFields[r.items[k+1].id] // "a 3/4 mdf caul"
		}
	}
	if f == unit.CoreThickness && strings.Contains(r.items[k].word, "ply") && r.items[i].amount.unit == nil && !r.habit.Metric && r.size(i) > thickestPly {
		return // "3 ply core" counts its plies
	}
	if f == unit.SledThickness && r.upperSled(k) {
		f = unit.CaulThickness
	}
	if f != "" && !(f == unit.SledThickness && r.has(f)) {
		r.bind(i, f)
	}
}

func (r *reader) panelLength(i int) {
	f := unit.PanelWidth
	if r.size(i) < 0.06 {
		f = unit.PanelThickness
	}
	if r.has(unit.StockPiles) && f == unit.PanelWidth && !r.has(unit.TargetWidth) {
		f = unit.TargetWidth
	}
	if !r.has(f) {
		r.bind(i, f)
	}
}

// parters are words that part a measure from a noun behind them.
var parters = wordSet(`off above below on in at for from over under against into behind beside between if then is are was when so because to that which`)

func (r *reader) amountJustBefore(k int) bool { return k > 0 && r.items[k-1].amount != nil }

// thickestStock is more than a strip is thick, in metres.
const thickestStock = 0.055

// stuffLength reads a bare measure beside strips, or beside what people call stock and
// stuff. "With 3 inches of stuff on it" is a height.
func (r *reader) stuffLength(i int, word string) {
	stuff := word == "stuff" || word == "stock"
	switch {
	case stuff && r.barOf(i), r.stockForBar(i):
		r.bind(i, unit.BarHeight)
	case r.word(i+1, "of") && r.size(i) > thickestStock && r.size(i) < widestStrip && (word == "stuff" || r.mentions(kindNoun, "bag", "opening") && !r.mentions(kindNoun, "bar")):
	case stuff && !r.has(unit.StripThickness) && !(r.habit.Follows && r.size(i) > thickestStock):
		r.bind(i, unit.StripThickness)
	default:
		r.stripLength(i)
	}
}

// stripLength reads a bare measure beside strips. From an inch up it is the
// width, below the thickness, where that is not said otherwise.
func (r *reader) stripLength(i int) {
	const inchWide, longest = 0.0254, 1.2
	inMetres := r.items[i].amount.unit != nil && (r.items[i].amount.unit.Symbol == "m" || r.items[i].amount.unit.Symbol == "ft")
	if (r.size(i) > longest || inMetres && r.size(i) > 0.6) && !r.has(unit.StripLength) {
		r.bind(i, unit.StripLength) // "a 16 ft board"
		return
	}
	if r.size(i) > widestStrip && r.word(i+1, "of") && !r.has(unit.PanelWidth) {
		r.bind(i, unit.PanelWidth) // "602 mm of strips"
		return
	}
	if r.size(i) > 2*widestStrip && !r.has(unit.StripLength) {
		r.bind(i, unit.StripLength) // "on 30 inch strips"
		return
	}
	f, other := unit.StripWidth, unit.StripThickness
	if r.size(i) < inchWide-1e-9 || r.items[i].amount.form == formQuarters {
		f, other = other, f
	}
	if r.mentions(kindNoun, "sled") && !r.mentions(kindNoun, "bar") && r.word(r.next(i)+1, "on") && r.word(r.next(i)+2, "top") {
		f, other = unit.StripThickness, unit.StripWidth // "sled 18 thick, 30 mm staves on top"
	}
	if r.afterThinning(i) {
		f, other = unit.StripThickness, unit.StripWidth
	}
	if r.phrase.Command != nil {
		f, other = unit.StripThickness, unit.StripWidth
		if r.size(i) > 0.055 {
			f, other = other, f
		}
	}
	if r.has(f) && !r.has(other) && (f == unit.StripThickness) == (r.size(i) > 0) {
		f = other
	}
	if r.has(f) {
		return
	}
	r.bind(i, f)
}

// lackedWood: "6 cup in 14 mm tassie oak" is as thick as any other wood.
func (r *reader) lackedWood(i int) bool {
	k := i + 1
	if r.word(k, "mil", "mils", "thick") {
		k++
	}
	measured := r.items[i].amount.unit != nil || k > i+1 || r.items[i].amount.form == formFraction
	return measured && r.size(i) <= thickestStock && !r.has(unit.StripThickness) && r.items[i].amount.link == linkNone && r.unknown(k) && r.is(k+1, kindWood) && !r.is(r.next(k+1), kindNoun)
}

// looseLengths reads lumber quarters, and a bare pair that follows a count of
// strips.
func (r *reader) looseLengths() {
	for i := range r.items {
		if !r.free(i) || !r.length(i) {
			continue
		}
		am := r.items[i].amount
		if _, counted := am.whole(); counted && am.form == formWords {
			continue
		}
		switch {
		case am.form == formQuarters && !r.has(unit.StripThickness):
			u := unit.Inch
			am.unit = &u
			r.bind(i, unit.StripThickness)
			if f := r.justBound(i); f != nil {
				f.Note = "quarters, rough"
			}
		case r.phrase.Command != nil && r.phrase.Command.Verb == Check && am.bare() && r.size(i) < 0.055 && !r.has(unit.StripThickness) && r.next(i) < 0 && r.prev(i) < 0:
			r.bind(i, unit.StripThickness)
		case r.topic == Flatten && !r.has(unit.StripThickness) && r.size(i) < 0.055 && r.is(i+1, kindNoun, "cup", "bow") && !r.is(i+3, kindAttr):
			r.bind(i, unit.StripThickness) // "8 wide 3/4 cup 1/8"
		case r.topic == Flatten && r.has(unit.Bow) && !r.has(unit.StripLength) && r.size(i) > 0.3 && !r.is(r.next(i), kindAttr) && r.bind(i, unit.StripLength):
		case r.lackedWood(i):
			r.bind(i, unit.StripThickness)
		case r.fitsIn(i), r.roomTold(i), r.barEnough(i), r.workedDownTo(i), r.heldInstead(i):
		case r.thicknessAlone(i):
		case r.widthAlone(i):
		case r.inchesOfTop(i) || r.woodIs(i):
		case r.lengthAlone(i):
		case r.bagLies(i), r.fencedIn(i):
		case r.byBefore(i):
		case r.aloneAfterNoun(i):
		case r.countAtWidth(i):
		case r.mentions(kindNoun, "core") && !r.has(unit.StripThickness) && r.size(i) < 0.03 && r.within(i, len(r.items), kindNoun, "core") >= 0 && am.link == linkNone && !r.is(r.next(i), kindAttr):
			r.bind(i, unit.StripThickness)
		}
	}
}

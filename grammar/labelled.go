package grammar

import "presshand/engine/unit"

// Lists that name a thing and say how many: "strips: 6 ea.", "presses - 2", "n = 8",
// "(x6)".

// labelledCounts reads the counts of such lists.
func (r *reader) labelledCounts() {
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.bare() || r.items[i].amount.link == linkTimes || r.items[i].amount.plural {
			continue
		}
		n, ok := r.items[i].amount.whole()
		if !ok || n < 1 || n > 999 {
			continue
		}
		f := r.labelledCount(i)
		if f == unit.StripCount && n >= leastMillimetres && r.widthBeforeThick(i) && r.bind(i, unit.StripWidth) {
			continue
		}
		if f == "" || r.has(f) || f == unit.StripCount && r.stockContext() {
			continue
		}
		r.bind(i, f)
		r.loosenLast(f == unit.StripCount && r.habit.Follows && r.word(i+1, "off", "ea") && r.amountsIn(0, len(r.items)) == 1) // "only 14 off"
	}
}

// leastMillimetres wide are staves in a metric shop; fewer are counted.
const leastMillimetres = 30

// widthBeforeThick: of a panel in millimetres "staves 45, thickness 38" tells the width.
func (r *reader) widthBeforeThick(i int) bool {
	return r.habit.Metric && r.is(i-1, kindNoun, "strip") && r.isBreak(i+1) && r.is(i+2, kindAttr, "thick") && !r.mentions(kindAttr, "wide") && !r.has(unit.StripWidth) && r.mentions(kindNoun, "panel")
}

// labelledCount is what the whole number at item i counts; "" where no list says.
func (r *reader) labelledCount(i int) unit.Field {
	if r.says("many") {
		if f := r.howManyIs(i); f != "" {
			return f
		}
	}
	each := (r.says("ea", "off") || r.means(kindRole, "name")) && r.eachBehind(i)
	next := i + 1
	at := next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.link == linkAt
	if r.says("of") && r.panelsBehind(i) {
		return unit.PanelCount
	}
	times := r.word(i-1, "x") || r.word(next, "x") || i > 1 && r.items[i-1].brk == 'x'
	switch {
	case r.says("n", "qty", "count") && r.letterCount(i), times && (r.timesInBrackets(i) || r.timesBrackets(i) || r.timesAfterWide(i)), r.items[i].amount.form == formWords && r.countAlone(i):
		return r.countedHere(i)
	case r.word(i-1, "number") && r.isBreak(i-2) && i+1 < len(r.items) && r.items[i+1].brk == ',':
		return r.countedHere(i)
	case r.word(i-1, "count", "numbering", "quantity", "qty") && (r.isBreak(next) || each || r.is(next, kindNoun) && next+1 < len(r.items) && r.items[next+1].amount != nil):
		return r.countedHere(i)
	}
	label, apart := i-1, false
	if label > 0 && (r.labels(label) || r.items[label].brk == ',') {
		apart = r.labels(label)
		label--
	}
	var f []unit.Field
	if of := r.labelNoun(label); of != "" {
		f = countFields[of]
	}
	if len(f) > 0 && r.opensWidths(i) {
		return ""
	}
	switch {
	case len(f) == 0 && each && !r.is(r.counted(i), kindNoun):
		return r.countedHere(i)
	case len(f) == 0:
		return ""
	case label == i-1 && r.isBreak(next) && f[0] == unit.StripCount && r.countBeside(i):
		return f[0] // "strips 5, 2 wide"
	case label == i-1 && r.countOf(label), label == i-1 && !r.word(label-1, "of") && !r.is(label-1, kindAttr) && r.isBreak(next) && r.is(next+1, kindAttr) && next+2 < len(r.items) && r.items[next+2].amount != nil:
		return f[0] // "no. of strips 9", "strips 9, width 48, thk 16"
	case label == i-1 && r.slashSizes(i), apart && r.slashSizes(i), each, at && (apart || label == i-1) && r.countsAt() < 2, apart && (r.isBreak(next) || r.is(next, kindGlue)):
		return f[0]
	}
	return ""
}

// opensWidths: the first number of "three tops: 24, 30 and 36 wide" counts nothing.
func (r *reader) opensWidths(i int) bool {
	list := r.listFrom(i)
	return len(list) > 2 && r.is(r.next(list[len(list)-1]), kindAttr, "wide")
}

// countBeside reports whether the number at item i counts strips whose width is told
// besides, and is no width of a list and no layer's thickness.
func (r *reader) countBeside(i int) bool {
	const most = 40
	if n, _ := r.items[i].amount.whole(); n > most || r.countedBefore(i) || r.layersTold() > 2 || r.topic == Stack {
		return false
	}
	if k := i + 2; k < len(r.items) && r.items[k].amount != nil && !r.is(k+1, kindAttr) {
		return false // "boards 90, 110 and 120 wide"
	}
	for j := i + 1; j < len(r.items); j++ {
		from, to := r.clause(j)
		if r.is(j, kindAttr, "wide") && r.free(j-1) && j-1 != i && (r.within(from, to, kindNoun) < 0 || r.within(from, to, kindNoun, "strip") >= 0) {
			return true
		}
	}
	return false
}

// countedBefore: of "4 strips 2, …" the first number counts the strips.
func (r *reader) countedBefore(i int) bool {
	_, counts := r.wholeAt(max(i-2, 0))
	return i > 1 && counts
}

// countOf: "no. of strips", "qty of panels".
func (r *reader) countOf(k int) bool {
	return r.word(k-1, "of") && (r.word(k-2, "no", "no.", "no .", "nr", "number", "count", "qty", "quantity") || r.is(k-2, kindRole, "name"))
}

// labels reports whether item i parts a name from what is told of it: "bar: 1",
// "bar = 1", "bar - 1".
func (r *reader) labels(i int) bool {
	return i >= 0 && i < len(r.items) && (r.items[i].brk == ':' || r.items[i].brk == '=' || r.items[i].word == "-")
}

// slashSizes reads the section behind a count in "strips: 6 / 2 in / 1/4 in".
func (r *reader) slashSizes(i int) bool {
	a, b := i+2, i+4
	if !r.is(r.labelBefore(i), kindNoun, "strip") || b >= len(r.items) || r.items[i+1].brk != '/' || r.items[i+3].brk != '/' || !r.free(a) || !r.free(b) || !r.length(a) || !r.length(b) || r.has(unit.StripWidth) || r.has(unit.StripThickness) {
		return false
	}
	if r.size(a) < r.size(b) {
		a, b = b, a
	}
	return r.bind(a, unit.StripWidth) && r.bind(b, unit.StripThickness)
}

// labelBefore is the item of the name that the count at item i is told of.
func (r *reader) labelBefore(i int) int {
	if r.labels(i - 1) {
		return i - 2
	}
	return i - 1
}

// countsAt counts the numbers that "@" joins to another.
func (r *reader) countsAt() int {
	n := 0
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.link == linkAt {
			n++
		}
	}
	return n
}

// labelNoun is the part that item k names in the plural.
func (r *reader) labelNoun(k int) string {
	if k < 0 || !r.is(k, kindNoun, "strip", "panel", "press") || !isPlural(r.items[k].word) {
		return ""
	}
	return r.items[k].id
}

// eachBehind: "6 ea.", "10 no. 620 x 900".
func (r *reader) eachBehind(i int) bool {
	if r.is(i+1, kindRole, "name") {
		width := i+2 < len(r.items) && r.items[i+2].amount != nil && r.items[i+2].amount.plural // "22 no. 58s"
		return !width && in(r.items[i+1].word, "no .", "no.", "nr")
	}
	return r.word(i+1, "ea") || r.word(i+1, "off") && r.isBreak(i+2) && !r.is(i+3, kindFix)
}

// letterCount: "n = 6" and "w 60 / t 6 / n 8".
func (r *reader) letterCount(i int) bool {
	k := i - 1
	if k > 0 && r.items[k].brk == '=' {
		return r.word(k-1, "n", "qty", "count")
	}
	return r.word(k, "n") && r.isBreak(k-1) && r.isBreak(i+1) && (r.wordIn("w") || r.wordIn("t"))
}

// timesAfterWide: "2 wide x 7", "2 1/4 wide, x5" count strips.
func (r *reader) timesAfterWide(i int) bool {
	if i < 2 || r.items[i-1].brk != 'x' && !r.word(i-1, "x") {
		return false
	}
	n, whole := r.items[i].amount.whole()
	if !whole || n < 2 || !r.items[i].amount.bare() || r.items[i].amount.form == formWords || !r.isBreak(i+1) || r.has(unit.StripCount) || !r.has(unit.StripThickness) && !r.mentions(kindAttr, "thick") && !r.mentions(kindNoun, "strip") {
		return false
	}
	k := i - 2
	if r.isBreak(k) && r.items[k].brk == ',' {
		return true
	}
	return r.is(k, kindAttr, "wide") && k > 0 && r.items[k-1].amount != nil && r.size(i) > r.size(k-1)
}

// timesInBrackets: 2" x 1/4" (x6).
func (r *reader) timesInBrackets(i int) bool {
	return i > 1 && r.word(i-1, "x") && r.items[i-2].brk == '(' && i+1 < len(r.items) && r.items[i+1].brk == ')'
}

// timesBrackets: "5 x (60 x 6)".
func (r *reader) timesBrackets(i int) bool {
	return r.word(i+1, "x") && i+3 < len(r.items) && r.items[i+2].brk == '(' && r.items[i+3].amount != nil
}

// countAlone: "5/16 thick ones, eight, ripped to 1 7/8".
func (r *reader) countAlone(i int) bool {
	n, ok := r.spokenNumber(i)
	if !ok || i > 1 && r.items[i-2].amount != nil || i+2 < len(r.items) && r.items[i+2].amount != nil && r.items[i+2].amount.form == formWords {
		return false // one of a list
	}
	return n > 1 && i > 0 && r.items[i-1].brk == ',' && i+1 < len(r.items) && r.items[i+1].brk == ',' && (r.mentions(kindNoun, "strip") || r.wordIn("ones") || r.mentions(kindAttr, "wide") && !r.mentions(kindNoun, "panel")) && r.mentions(kindNoun, "bar") && !r.dayPlan()
}

// countedHere is what a count without its noun is of: of panels where none but
// they are named, else of strips.
func (r *reader) countedHere(i int) unit.Field {
	for k := i - 1; k >= 0; k-- {
		if r.is(k, kindNoun, "strip", "panel") {
			return countFields[r.items[k].id][0]
		}
	}
	if (r.mentions(kindNoun, "panel", "core") || r.mentions(kindFact, "faces=1", "faces=2")) && !r.mentions(kindNoun, "strip", "bar") {
		return unit.PanelCount
	}
	return unit.StripCount
}

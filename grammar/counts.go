package grammar

import "presshand/engine/unit"

// JointsAndOne notes that a count of strips was told by their joints.
const JointsAndOne = "joints and one"

// counts reads how many there are of what: "5 strips", "14 panels", "two
// presses", "6 joints".
func (r *reader) counts() {
	if r.says("left", "remaining", "more", "still") {
		r.leftToPress()
	}
	r.pairs()
	if r.says("of") {
		r.panelsOfSoMany()
		r.soManyOfWidth()
	}
	for i := range r.items {
		if r.free(i) {
			r.countAt(i)
		}
	}
}

// countedBy are the fields that hold how many there are of what a noun names.
var countedBy = map[string]unit.Field{"strip": unit.StripCount, "panel": unit.PanelCount, "bar": unit.BarCount}

// countAt reads what the number at item i counts.
func (r *reader) countAt(i int) {
	am, next := r.items[i].amount, i+1
	n, ok := am.whole()
	thing := r.next(i)
	counted := r.is(thing, kindNoun, "strip", "panel")
	if am.minus && am.bare() && counted {
		r.bind(i, countedBy[r.items[thing].id])
		return
	}
	if !ok || am.plural {
		if n == 0 && am.bare() && am.value == nil && am.form != formPair && counted && isPlural(r.items[thing].word) {
			r.bind(i, countedBy[r.items[thing].id])
		}
		return
	}
	of := r.word(next, "of")
	var behind *amount
	if next < len(r.items) {
		behind = r.items[next].amount
	}
	switch {
	case am.form == formWords && r.stripsAre(i), behind != nil && behind.link == linkTimes:
	case i > 1 && (r.items[i-1].brk == 'x' || r.items[i-1].brk == '(') && (r.is(i-2, kindNoun, "strip") || r.is(i-2, kindWood) && r.items[i-1].brk == 'x') && !r.is(thing, kindAttr):
		r.bind(i, unit.StripCount)
	case of && r.isBreak(i+2) && r.mentions(kindNoun, "strip") && !r.has(unit.StripCount):
		r.items[next].used = true
		r.bind(i, unit.StripCount)
	case behind != nil && behind.plural && behind.link == linkNone && !r.has(unit.StripCount) && !r.has(unit.StockPiles):
		r.bind(i, unit.StripCount)
		r.bind(next, unit.StripWidth)
	case of && r.countOfSize(i):
		r.bind(i, unit.StripCount)
	case of && r.widthOfThose(i):
		r.bind(i, unit.StripCount)
	case r.countedPerPanel(i) || r.thereAre(i):
		r.bind(i, unit.StripCount)
	case behind != nil && r.countOfPanels(i) && !r.has(unit.PanelCount) && !r.mentions(kindNoun, "sled", "opening"): // how they lie in a stack is asked for
		r.bind(i, unit.PanelCount)
	case (r.is(i-1, kindNoun, "strip", "panel") || r.is(i-2, kindNoun, "strip", "panel")) && r.countBehind(i):
		k := i - 2
		if r.is(i-1, kindNoun) {
			k = i - 1
		}
		r.bind(i, countedBy[r.items[k].id])
	default:
		r.count(i, n)
	}
}

// thereAre: "the strips are oak, theres 6".
func (r *reader) thereAre(i int) bool {
	if !r.word(i-1, "theres", "thereare", "got", "have", "only", "are", "is") {
		return false
	}
	there := r.word(i-1, "theres", "thereare") || r.word(i-1, "got", "have") && (r.items[i].amount.form == formWords || r.has(unit.StripWidth) && r.items[i].amount.float() < 15) || r.word(i-1, "are", "is") && r.word(i-2, "there")
	if r.onlyGot(i) {
		return true
	}
	return there && r.items[i].amount.bare() && (i+1 == len(r.items) || r.isBreak(i+1)) && (r.mentions(kindNoun, "strip") || r.mentions(kindAttr, "wide") && !r.mentions(kindNoun, "panel", "press")) && !r.has(unit.StripCount) && !r.stockContext()
}

// widthOfThose reads the width that a count goes with in a thread that chooses
// strips: "recounted the 2-1/8, there's only 14 of those".
func (r *reader) widthOfThose(i int) bool {
	if !r.habit.Follows || !r.word(i+1, "of") || !r.word(i+2, "those", "them", "these") || r.next(i+2) >= 0 || r.has(unit.StripCount) {
		return false
	}
	for k := i - 1; k > 0; k-- {
		if r.free(k) {
			return r.word(k-1, "the") && r.length(k) && small(r.size(k)) && r.isBreak(k+1) && r.bind(k, unit.StripWidth)
		}
	}
	return false
}

// countBehind: "strips: 7", "panels = 3", "slats, 7."
func (r *reader) countBehind(i int) bool {
	if r.numberOfThem(i) {
		return true
	}
	if i < 2 || !r.is(i-2, kindNoun, "strip", "panel") || !isPlural(r.items[i-2].word) || r.opensWidths(i) {
		return false
	}
	alone := r.isBreak(i+1) && r.items[i].amount.bare()
	switch r.items[i-1].brk {
	case '=':
		return true
	case ':':
		return r.next(i) < 0
	case ',':
		return alone && r.prev(i-2) < 0 && r.items[i].amount.link == linkNone
	}
	return false
}

// countJoints reads how many strips n joints part.
func (r *reader) countJoints(i, n int) {
	r.items[i].used = true
	if want := impossible(unit.StripCount, float64(n+1)); want != "" {
		r.refuse(unit.StripCount, r.items[i].text, want)
		return
	}
	r.bound = append(r.bound, binding{Fact{Field: unit.StripCount, Value: unit.Number(n + 1), Text: r.items[i].text, Note: JointsAndOne}, i, false})
}

// oneEachSide: the bar at item j stands on either side of the work.
func (r *reader) oneEachSide(j int) bool {
	k := j + 1
	for r.word(k, "on", "at", "along", "down", "for", "to") {
		k++
	}
	return r.is(k, kindFact, "faces=2") || r.barEdges(j)
}

// failed are what joints do or are that did not hold.
var failed = wordSet(`open opened opening opens gap gapped gapping gaps gape fail failed failing failures starved gave cracked split parted lifted pulled popped broke broken showing weak`)

// failedJoints: "two of the joints opened", "2 joints failed" do not say how many
// there are.
func (r *reader) failedJoints(i, j int) bool {
	k := j + 1
	for r.word(k, "are", "were", "is", "have", "had", "that", "which", "came", "come", "did", "still", "let", "a", "bit", "all") {
		k++
	}
	if !r.word(i+1, "of") && !(k < len(r.items) && r.items[k].amount == nil && failed[r.items[k].word]) && !r.word(k-1, "let") {
		return false
	}
	r.items[i].amount.dead = true
	return true
}

// idOf is what the noun at item i names; "" where none stands there.
func (r *reader) idOf(i int) string {
	if !r.is(i, kindNoun) {
		return ""
	}
	return r.items[i].id
}

func (r *reader) count(i, n int) {
	j := r.counted(i)
	if j < 0 || r.countsNothing(i, j) || r.is(i-1, kindNoun, "bar", "fence", "sled", "mat", "caul") && (i < 2 || r.items[i-2].amount == nil) && r.is(j, kindNoun, "strip") && j+1 < len(r.items) && r.items[j+1].amount != nil {
		return // "bar 1 strips 6": each number behind its part
	}
	it := &r.items[j]
	spoken := r.items[i].amount.form == formWords
	switch {
	case it.word == "off" || it.word == "of them" || it.word == "ea":
		if f := r.countedThings(i, j); f != "" && n > 1 && !r.partOfThem(i, j, f) {
			r.bind(i, f)
			r.widthOfThem(j, f)
			r.loosenLast(f == unit.StripCount && (r.amountsIn(0, len(r.items)) == 1 || it.word == "off" && r.habit.Follows && r.isBreak(j+1)))
		}
	case it.amount != nil && j > 0 && r.size(j) > widestStrip && r.size(j-1) > widestStrip:
		r.bind(i, unit.PanelCount) // "fourteen 24 by 48s"
	case it.amount != nil:
		r.bind(i, unit.StripCount)
	case r.is(j, kindNoun, "face"):
		r.countFaces(i, j, n)
	case r.is(j, kindNoun, "strip") && !isPlural(it.word) && r.is(i-1, kindRole, "length") && r.mentions(kindNoun, "cup"):
		r.bind(i, unit.StripWidth) // "cup 3 mm over 150 board"
	case r.is(j, kindNoun, "strip"):
		r.countStrips(i, j, n)
	case r.is(j, kindNoun, "core"):
		if n > 1 && isPlural(it.word) && r.items[i].amount.bare() && (r.mentions(kindNoun, "face") || r.mentions(kindFact, "faces=1", "faces=2")) {
			r.bind(i, unit.PanelCount) // "4 mm faces on three ply cores"
		}
	case r.is(j, kindNoun, "joint"):
		if isPlural(it.word) && n > 0 && !(spoken && n == 1) && !r.failedJoints(i, j) { // "one joint's open" is no count
			r.countJoints(i, n)
		}
	case r.is(j, kindNoun, "panel"), r.is(j, kindPeril):
		if isPlural(it.word) || spoken || n == 1 || r.singularCount(i, j) {
			if spoken && n == 1 && !r.dayPlan() && !r.onePanelTold(i, j) {
				return
			}
			if r.word(i-1, "many", "how many") {
				return // "how many 480 panels"
			}
			r.bind(i, unit.PanelCount)
		}
	case r.is(j, kindNoun, "press", "frame", "bag") && r.pressesDown(j) > 0:
		r.items[i].used = true // "one press is down, so two"
	case r.is(j, kindNoun, "press", "frame", "bag"):
		if isPlural(it.word) && it.word != "press" || spoken || n == 1 {
			if n == 1 && r.topic != Schedule && !r.onePressNow(i, j) && !r.dayPlan() && !r.mentions(kindNoun, "panel") && (it.id != "press" || len(r.items) > 10) {
				r.items[i].used = spoken // "one bag" is a way of saying "a bag"
				return
			}
			r.bind(i, unit.PressCount)
		}
	case r.is(j, kindNoun, "bar") && n == 1 && j == i+1 && r.oneEachSide(j):
		r.items[i].used = true // "one bar each side" are two
	case r.is(j, kindNoun, "bar") && !(n > 2 && r.word(i-1, "have", "got", "are")): // several are to choose from
		if isPlural(it.word) || spoken && j == i+1 {
			r.bind(i, unit.BarCount)
		}
	}
}

// onePressNow: "make it one frame", "and with only one bag" say in a thread how many there are.
func (r *reader) onePressNow(i, j int) bool {
	only := r.word(i-1, "only", "just") || r.word(j+1, "only", "left", "working", "running")
	alone := r.amountsIn(0, len(r.items)) == 1 && r.countKind(kindNoun) == 1 && (r.word(i-1, "with", "had", "have", "say", "down to") || r.is(i-1, kindFix))
	return r.habit.Follows && (only || alone) && !r.once(0, len(r.items))
}

// onePanelTold: "20x30, one panel", "one panel 24x48".
func (r *reader) onePanelTold(i, j int) bool {
	return r.isBreak(i-1) && (i > 0 && r.isBreak(j+1) || r.free(j+1) || r.timesAt(j+2) && r.onlySize(j+2))
}

// countFaces: one or two of them are laid on a core, more are on as many panels.
func (r *reader) countFaces(i, j, n int) {
	const thickest = 0.006 // m, of a veneer
	switch {
	case n <= 2 && r.items[i].amount.bare() && r.items[i].amount.form == formInt && !isPlural(r.items[j].word) && r.mentions(kindFact, "faces=1", "faces=2") && r.size(i) <= thickest:
		// "2 veneer on 18 mdf both faces" is so thick
	case n == 1 || n == 2:
		r.bind(i, unit.Faces)
	case n > 2 && r.mentions(kindFact, "faces=2") && r.is(j-1, kindNoun, "panel"):
		r.items[i].amount.dead = true // "12 door skins, both faces": doors or skins
	case n > 2 && isPlural(r.items[j].word) && r.items[i].amount.bare():
		r.bind(i, unit.PanelCount) // "6 faces 32x80", each on a panel
	}
}

// countsNothing: "5 off each edge", "I trim 5 off" is no count, and "2 1/2s (7 of them)" one of a
// pile.
func (r *reader) countsNothing(i, j int) bool {
	switch r.items[j].word {
	case "off":
		if k := r.next(j); r.is(k, kindNoun, "wedge") || k > 0 && r.items[k].amount != nil && r.items[k].amount.form == formPair && r.is(r.next(k), kindNoun, "wedge") {
			r.items[i].used = true // "two off 1:8 folding wedges"
			return true
		}
		return r.is(i-1, kindRole, "trim") || r.is(j+1, kindRole, "in a row") || r.is(j+1, kindFact, "faces=2", "faces=1") || r.word(j+1, "both", "the", "every", "either")
	case "of them":
		return i > 1 && r.items[i-1].brk == '(' && r.items[i-2].amount != nil
	}
	return false
}

// countStrips reads how many of the strips at item j there are.
func (r *reader) countStrips(i, j, n int) {
	if m, ok := r.wholeAt(i - 1); ok && m > 1 && n > 1 && r.items[i].amount.link == linkOr && r.items[i].amount.bare() && r.items[i-1].amount.bare() && !r.has(unit.StripCount) && r.phrase.Command == nil {
		r.choice(i-1, i, unit.StripCount) // "5 or 6 strips"
		return
	}
	if m, ok := r.wholeAt(i - 1); ok && m > 1 && n > m && r.items[i].amount.link == linkTo && r.items[i-1].amount.bare() && !r.word(i-2, "from") && !r.is(i-2, kindRole, "start") && isPlural(r.items[j].word) {
		r.bind(i-1, unit.StripCount) // "5 to 7 strips": which of the two is asked
	}
	it, spoken := &r.items[j], r.items[i].amount.form == formWords
	if spoken && n == 1 || r.spoiledCount(i, j) {
		return
	}
	if n >= 1 && !isPlural(it.word) && !spoken && it.word != "pc" && it.word != "lam" {
		one := n == 1 && j == i+1 && it.word == "strip" && r.items[i].amount.bare() // "1 strip 6 wide"
		if n < 2 && !one || r.habit.Metric && n > 12 && !r.singularCount(i, j) || r.has(unit.StripCount) {
			return
		}
	}
	if r.is(r.prev(i), kindRole, "max", "min") && !(r.is(r.prev(i), kindRole, "max") && r.has(unit.StockPiles)) {
		r.items[i].amount.dead = r.is(r.prev(i), kindRole, "min") // nothing takes at least so many
		return
	}
	r.bind(i, unit.StripCount)
}

// offStrips: "11 off 60 wide", "5 no. staves": a count of pieces with a measure
// of their own behind it is one of strips.
func (r *reader) offStrips() {
	for i := range r.items {
		if !r.word(i+1, "off") || !r.free(i) || i+2 >= len(r.items) {
			continue
		}
		if _, ok := r.items[i].amount.whole(); !ok {
			continue
		}
		k := r.next(i + 1)
		last := k
		for last >= 0 && last+1 < len(r.items) && r.items[last+1].amount != nil {
			last++
		}
		if last >= 0 && r.is(r.next(last), kindNoun, "panel") {
			continue
		}
		if k >= 0 && r.items[k].amount != nil && r.length(k) {
			id, word := "strip", "pcs"
			if last == k+1 && r.timesAt(last) && r.length(last) && !r.mentions(kindNoun, "strip", "bar") && r.size(k) > widestStrip && r.size(last) > widestStrip {
				id, word = "panel", "panels" // "8 off 600x1200"
			}
			r.items[i+1].meaning, r.items[i+1].word = meaning{kind: kindNoun, id: id}, word
			r.hear(i + 1)
		}
	}
	r.wideBoards()
	if !r.says("qty", "quantity") {
		return
	}
	for i := range r.items {
		if r.word(i, "qty", "quantity") && r.free(i+1) {
			if _, ok := r.items[i+1].amount.whole(); ok {
				r.items[i].used = true
				f := unit.PanelCount
				if (r.mentions(kindNoun, "strip", "bar") || r.word(i+3, "w", "t")) && !r.mentions(kindNoun, "panel") {
					f = unit.StripCount
				}
				r.bind(i+1, f)
			}
		}
	}
}

// counted is the item that a bare number counts: the next noun, past woods and
// sorts; -1 where a number or a unit comes first.
func (r *reader) counted(i int) int {
	for j := i + 1; j < len(r.items) && j <= i+5; j++ {
		it := &r.items[j]
		switch {
		case it.amount != nil:
			if k := r.countedMeasure(i, j); k >= 0 {
				return k
			}
			return r.countedSize(i, j)
		case it.word == "of" && r.word(j+1, "those", "these") && r.is(j+2, kindNoun), r.word(j, "those", "these") && r.word(j-1, "of"):
		case it.word == "of them": // told so before
			return j
		case it.word == "of" && r.word(j+1, "them", "em", "those"):
			r.items[j+1].used = true
			it.word, it.used = "of them", true
			r.hear(j)
			return j
		case it.brk == '-' && j == i+1 && it.start == r.items[i].end, it.brk == 'x':
		case r.isBreak(j):
			return -1
		case it.kind == kindRole && (it.word == "no." || it.word == "no" || it.word == "nr"):
		case it.kind == kindPeril && it.id == "structure" && isPlural(it.word):
			return j
		case it.word == "off" && (r.is(j+1, kindRole, "in a row") || r.word(j+1, "both", "either", "every", "each") || r.is(j+1, kindFact)): // "5 off each edge"
			return -1
		case it.word == "off":
			if k := r.next(j); r.is(k, kindNoun) {
				return k
			}
			return j
		case it.kind == kindNoun && it.id == "strip" && in(it.word, "pcs", "pieces") && (r.is(j+1, kindNoun, "panel") || r.word(j+1, "of") && r.is(j+2, kindNoun, "panel")):
		case it.kind == kindNoun && it.id == "core" && r.is(j+1, kindNoun, "panel", "core") && isPlural(r.items[j+1].word):
		case it.kind == kindNoun && it.id == "panel" && !isPlural(it.word) && j+1 < len(r.items) && (r.is(j+1, kindNoun, "panel", "face") || r.word(j+1, "blanks")):
		case it.kind == kindAttr && it.word == "lengths" && (r.word(j+1, "of") || r.is(j+1, kindWood) || r.is(j-1, kindWood) && r.items[i].amount.form == formWords || r.items[i].amount.form == formWords && r.isBreak(j+1)):
			it.meaning = meaning{kind: kindNoun, id: "strip"}
			r.hear(j)
			return j
		case it.kind == kindNoun:
			return j
		case it.kind == kindWood || it.kind == kindWoodSort || it.kind == kindFact || it.kind == kindGlue:
		case it.kind == kindNone && (it.word == "of" || it.word == "more" || it.word == "identical" || it.word == "equal" || it.word == "the" || it.word == "small" || it.word == "big" || it.word == "my" || it.word == "our" || it.word == "good"):
		case it.kind == kindNone && !fill[it.word] && !r.is(j+1, kindNoun) && !r.is(j+1, kindWood):
			return -1
		case it.kind == kindNone && fill[it.word]:
			return -1
		case it.kind != kindNone:
			return -1
		}
	}
	return -1
}

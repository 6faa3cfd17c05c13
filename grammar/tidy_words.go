package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// Words that the items around them turn into something else.

// sizedBarFor: in "1 or 1 1/4 bar for five strips" the bar is told, not sought.
func (r *reader) sizedBarFor() {
	if !r.says("bar for") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if it := &r.items[i]; r.is(i, kindAsk) && it.word == "bar for" && r.items[i-1].amount != nil && r.length(i-1) {
			it.meaning, it.word = meaning{kind: kindNoun, id: "bar"}, "bar"
			r.hear(i)
		}
	}
}

// thickestTold: in "thickest board is .76" the measure is told, not sought.
func (r *reader) thickestTold() {
	if !r.means(kindAsk, "solve=strip_thickness_mm") {
		return
	}
	for i := range r.items {
		it := &r.items[i]
		if !r.is(i, kindAsk, "solve=strip_thickness_mm") || !strings.HasSuffix(strings.Fields(it.word)[0], "est") {
			continue
		}
		j := i + 1
		for j < len(r.items) && j < i+4 && (r.idle(j) || r.is(j, kindSay)) {
			j++
		}
		if j < len(r.items) && r.items[j].amount != nil && !r.word(j-1, "a", "an", "the") {
			it.meaning = meaning{kind: kindAttr, id: "thickest"}
			r.hear(i)
		}
	}
}

// upAtMark: "with the batten up at 55" tells no altitude, "cupped 3/32 across" no width.
func (r *reader) upAtMark() {
	if !r.says("up at", "across") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		up := r.is(i, kindAir, "height") && r.word(i, "up at") && r.is(i-1, kindNoun, "bar")
		cup := r.is(i, kindRole, "length") && r.word(i, "across") && r.items[i-1].amount != nil && r.is(i-2, kindNoun, "cup") && r.isBreak(i+1)
		if up || cup {
			r.items[i].meaning = meaning{kind: kindFill}
		}
	}
}

// twoAgain: "both presses... so two" tells their number again.
func (r *reader) twoAgain() {
	if !r.says("both") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if !r.is(i, kindNoun, "press") || !r.word(i-1, "both") {
			continue
		}
		j := i + 1
		for j < len(r.items) && (r.isBreak(j) || r.word(j, "so", "thats", "that", "is", "ie")) {
			j++
		}
		if n, whole := r.wholeAt(j); whole && n == 2 && r.isBreak(j+1) {
			r.items[j].used = true
		}
	}
}

// setsOfStrips: the number in "2 sets of strips" is no measure of them.
func (r *reader) setsOfStrips() {
	if !r.says("of") || !r.says("sets", "lots", "rows", "pairs") {
		return
	}
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.bare() && r.word(i+1, "sets", "lots", "rows", "pairs") && r.word(i+2, "of") && r.is(i+3, kindNoun, "strip") {
			am.dead = true
		}
	}
}

// piecesOf: of "bars 50 tall. 9 off, 70 wide" the pieces are strips, of "panels 800 x 2000,
// 4 pieces" panels, and so are boards of 18 by 40 inches.
func (r *reader) piecesOf() {
	if !r.says("board", "boards", "pieces", "slab", "plank", "off", "pcs", "pc", "stuks") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if !r.is(i, kindNoun, "strip") && !r.word(i, "board", "slab", "plank", "off") {
			continue
		}
		if r.is(i, kindNoun, "strip") && in(r.items[i].word, "board", "boards", "pieces") && r.live(i+1) && r.timesAt(i+2) && r.length(i+1) && r.length(i+2) && !r.timesAt(i+3) && min(r.size(i+1), r.size(i+2)) > narrowestBed {
			r.items[i].meaning, r.items[i].word = meaning{kind: kindNoun, id: "panel"}, "panels"
			r.hear(i)
			continue
		}
		if r.boardOfStrips(i) {
			r.items[i].meaning, r.items[i].word = meaning{kind: kindNoun, id: "panel"}, "panel"
			r.hear(i)
			continue
		}
		if n, whole := r.wholeAt(i - 1); !whole || n < 2 || !r.items[i-1].amount.bare() || i > 1 && !r.isBreak(i-2) {
			continue
		}
		it := &r.items[i]
		switch {
		case r.word(i, "off") && r.isBreak(i+1) && r.live(i+2) && r.is(i+3, kindAttr, "wide") && !r.mentions(kindNoun, "strip"):
			it.meaning, it.word = meaning{kind: kindNoun, id: "strip"}, "pieces"
			r.hear(i)
		case r.is(i, kindNoun, "strip") && in(it.word, "pieces", "pcs", "pc", "stuks") && r.isBreak(i+1) && i > 4 && r.timesAt(i-3) && r.is(i-5, kindNoun, "panel"):
			it.meaning, it.word = meaning{kind: kindNoun, id: "panel"}, "panels"
			r.hear(i)
		}
	}
}

// boardOfStrips: the board of "14 in board from 7 pieces" is a panel.
func (r *reader) boardOfStrips(i int) bool {
	if !r.word(i, "board", "slab", "plank") || !r.live(i-1) || !r.length(i-1) {
		return false
	}
	k := i + 1
	for r.word(k, "made", "glued", "up", "built") {
		k++
	}
	if r.word(k, "out") && r.word(k+1, "of") {
		k++
	}
	n, whole := r.wholeAt(k + 1)
	return whole && n > 1 && r.word(k, "from", "of", "with", "out of") && r.is(k+2, kindNoun, "strip") && isPlural(r.items[k+2].word)
}

// abrasives come in sheets that are no panels.
var abrasives = []string{"grit", "sandpaper", "abrasive", "abrasives", "emery"}

// plainThings gives things of the shop that have the name of something else their own.
func (r *reader) plainThings() {
	r.piecesOf()
	r.framedPanel()
	r.boardsOf()
	for i := 1; i+1 < len(r.items) && r.says("finished"); i++ {
		if r.word(i, "finished") && r.items[i-1].amount != nil && r.items[i-1].amount.bare() && r.is(i+1, kindNoun) {
			r.items = slices.Delete(r.items, i, i+1) // "20 finished panels"
		}
	}
	if !r.means(kindVerb, string(List)) && !r.means(kindNoun, "pump") && !r.says("shelf", "table", "counter", "sheet", "sheets") {
		return
	}
	for i := range r.items {
		if r.is(i, kindNoun, "panel") && r.word(i, "shelf", "table", "counter") && r.word(i-1, "the", "my", "our") && r.word(i-2, "on", "off") && (i+1 >= len(r.items) || r.isBreak(i+1)) {
			r.items[i].meaning = meaning{kind: kindFill} // "8 at 90 on the shelf"
		}
		if r.is(i, kindNoun, "pump") && r.is(i+1, kindPerson) {
			r.items[i].meaning = meaning{kind: kindFill} // "pump guy says"
		}
		if r.is(i, kindNoun, "panel") && r.word(i, "sheet", "sheets") && r.word(i+1, "of") && (r.word(i+2, abrasives...) || r.word(i+3, abrasives...)) {
			r.items[i].meaning = meaning{} // "50 more sheets of 120 grit"
		}
		if r.is(i, kindVerb, string(List)) && r.word(i, "list") && i+2 < len(r.items) && r.items[i+1].brk == ':' && r.items[i+2].amount != nil {
			r.items[i].meaning = meaning{kind: kindFill} // "friday's list: 14 boards 18x40"
		}
	}
}

// framedPanel: "a panel in a frame" is a door, "in the frame" the press.
func (r *reader) framedPanel() {
	if !r.says("frame") || !r.means(kindNoun, "panel") {
		return
	}
	for i := 3; i < len(r.items); i++ {
		if r.is(i, kindNoun, "frame") && r.word(i, "frame") && r.word(i-1, "a") && r.word(i-2, "in") && r.is(i-3, kindNoun, "panel") && !r.mentions(kindVacuum) && !r.pressureSaid() && !r.mentions(kindNoun, "pump", "leak") {
			r.items[i].meaning = meaning{kind: kindFill}
		}
	}
}

// sameThickness: in "the bar is the same as the thickness so 5/8 too" the bar is as high
// as the strips are thick.
func (r *reader) sameThickness() {
	if !r.says("thickness") || !r.says("same as") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindAttr, "thick") || !r.word(i, "thickness") || !r.word(i-1, "same as") && !(r.word(i-1, "the") && r.word(i-2, "same as")) {
			continue
		}
		r.items[i].meaning = meaning{kind: kindFill}
		if from, _ := r.clause(i); r.within(from, i, kindNoun, "bar") >= 0 {
			r.items[i].meaning = meaning{kind: kindAttr, id: "tall"}
			r.hear(i)
		}
	}
}

// comingToWork: who can "come in early" does not shrink.
func (r *reader) comingToWork() {
	if !r.says("come in", "comes in") {
		return
	}
	for i := range r.items {
		if it := &r.items[i]; r.is(i, kindAsk) && in(it.word, "come in", "comes in") && r.word(i+1, "early", "late", "later", "earlier", "sooner", "at", "before", "tomorrow") {
			it.meaning = meaning{kind: kindFill}
		}
	}
}

// atTheEdge: "3/8 on the edge" says how thick, "an upstand on the edge" where.
func (r *reader) atTheEdge() {
	if !r.says("on the edge", "on edge") {
		return
	}
	for i := range r.items {
		if it := &r.items[i]; r.is(i, kindAttr, "thick") && in(it.word, "on the edge", "on edge") && (i == 0 || r.items[i-1].amount == nil) {
			it.meaning = meaning{kind: kindFill}
		}
	}
}

// canDo: the "can" of "can I pull it" has no label.
func (r *reader) canDo() {
	if !r.says("can") || !r.means(kindRole, "label") {
		return
	}
	for i := range r.items {
		if r.is(i, kindRole, "label") && r.items[i].word == "can" && r.word(i+1, "i", "we", "you", "it", "they", "u", "he", "she", "this", "that", "these", "someone", "anyone", "anybody") {
			r.items[i].meaning = meaning{}
		}
	}
}

// hollowOfJoint: "0.4 mm hollow in the middle of the worst joint".
func (r *reader) hollowOfJoint() bool {
	for i := range r.items {
		if r.is(i, kindNoun, "cup") && in(r.items[i].word, "hollow", "dip") {
			if _, to := r.clause(i); r.within(i, to, kindNoun, "joint") >= 0 && r.opensWithin(i, to, "in", "of", "at", "on") {
				return true
			}
		}
	}
	return false
}

// runsFrom: in "strips run from 18.2 to 18.9" nothing starts.
func (r *reader) runsFrom() {
	if !r.says("from") || !r.means(kindRole, "start") {
		return
	}
	for i := 1; i+2 < len(r.items); i++ {
		if r.is(i, kindRole, "start") && r.items[i].word == "from" && (r.is(i-1, kindRole, "run over", "vary") || r.word(i-1, "go", "range", "ranges", "anywhere")) && r.mentions(kindNoun, "strip") && r.thickToThick(i+1) {
			r.items[i].meaning = meaning{kind: kindFill}
		}
	}
}

// metricOddities keeps "20/40" from being half a millimetre, and gives "2.4 long" beside
// "1.2 m wide" its metres.
func (r *reader) metricOddities() {
	if !r.habit.Metric {
		return
	}
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || !am.bare() {
			continue
		}
		if r.strippedLayer(i) {
			u := unit.MM
			am.unit = &u // not 22 of them
		}
		if num, den, ok := strings.Cut(r.items[i].text, "/"); am.form == formFraction && ok && len(num) > 1 && len(den) > 1 && !in(den, "16", "32", "64") {
			am.dead = true
		}
		if am.form == formDecimal && am.float() > 0 && am.float() < 10 && (r.is(i+1, kindAttr, "long") || r.is(i+1, kindAttr, "wide")) && r.metresBeside(i) {
			u := unit.Metre
			am.unit = &u
		}
	}
}

// strippedLayer: in "18 sled, 22 strips, 16 caul, 100 opening" every number is as thick
// as its layer.
func (r *reader) strippedLayer(i int) bool {
	n, whole := r.items[i].amount.whole()
	const mostStrips = 14 // fewer may be counted
	if !whole || n < mostStrips || r.items[i].amount.form != formInt || !r.is(i+1, kindNoun, "strip") || !r.isBreak(i+2) && !r.word(i+2, "and", "plus", "then") || r.within(i+2, len(r.items), kindAttr, "wide", "thick") >= 0 || !r.mentions(kindNoun, "opening") && !r.mentions(kindAsk, "stack") {
		return false
	}
	k := i - 1
	for r.word(k, "and", "plus", "then", "with") || k > 0 && r.isBreak(k) {
		k--
	}
	if !r.is(k, kindNoun, "sled", "mat", "caul") || k < 1 || r.items[k-1].amount == nil {
		return false
	}
	am := r.items[k-1].amount
	return am.form == formInt && (am.bare() || am.unitRaw == "mm") && am.float() >= 4
}

// metresBeside reports whether the sentence of item i has a width or a length in
// metres.
func (r *reader) metresBeside(i int) bool {
	from, to := r.sentence(i)
	for k := from; k < to; k++ {
		if am := r.items[k].amount; am != nil && am.unit != nil && am.unit.Symbol == "m" && r.is(k+1, kindAttr) {
			return true
		}
	}
	return false
}

// hollowJoint: a hollow that is to close is a joint's, not a cup.
func (r *reader) hollowJoint() {
	if !r.says("hollow", "dip") || !r.mentions(kindAsk, "side:closing_kpa") && !r.hollowOfJoint() || r.mentions(kindAsk, "flatten") || r.mentions(kindFact, "cup_up=hollow", "cup_up=hump") {
		return
	}
	for i := range r.items {
		if it := &r.items[i]; r.is(i, kindNoun, "cup") && in(it.word, "hollow", "dip") {
			it.meaning = meaning{kind: kindNoun, id: "gap"}
			r.hear(i)
		}
	}
}

// wePress: in "we press at 6% and it's 24 wide" a press is no thing that has a width.
func (r *reader) wePress() {
	if !r.says("press") || !r.means(kindNoun, "press") {
		return
	}
	for i := 1; i+2 < len(r.items); i++ {
		if r.is(i, kindNoun, "press") && r.word(i, "press") && r.word(i-1, "we", "i", "they") && r.word(i+1, "at") && r.items[i+2].amount != nil && r.items[i+2].amount.is(unit.Proportion) {
			r.items[i].meaning = meaning{kind: kindFill}
		}
	}
}

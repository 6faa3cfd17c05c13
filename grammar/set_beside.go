package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// numbersBeside marks numbers that name a thing, or measure what no question asks of.
func (r *reader) numbersBeside() {
	bar, panel := r.means(kindNoun, "bar"), r.means(kindNoun, "panel")
	caul, sides := r.means(kindNoun, "caul"), r.means(kindFact, "faces=2")
	short, long := r.says("short", "shy", "narrow", "under", "too"), r.says("side", "sides", "edge", "edges")
	there, run := r.says("there", "here"), r.means(kindAttr, "long")
	for i := range r.items {
		if long && r.is(i, kindAttr, "long") && r.word(i+1, "side", "sides", "edge", "edges") {
			r.longSide(i)
		}
		if r.items[i].amount == nil {
			continue
		}
		if i > 0 && r.items[i-1].brk == '#' {
			r.numberedPart(i)
		}
		if r.timesAt(i) {
			r.planedLumber(i)
		}
		if bar && (r.is(i+1, kindNoun, "bar") || run && r.is(r.next(i), kindAttr, "long")) {
			r.barLength(i)
		}
		if panel {
			r.perPanelOf(i)
		}
		if caul {
			r.cauls(i)
		}
		if sides {
			r.eitherSide(i)
		}
		if short {
			r.cameShort(i)
		}
		if am := r.items[i].amount; there && am.unitRaw == "in" && r.word(i-1, "at") && r.word(i+1, "there", "here") {
			am.dead = true // "he keeps it at 68 in there" is no inches
		}
	}
	r.endToEnd()
}

// longSide: "a bar on one long side" is not an inch long.
func (r *reader) longSide(i int) {
	if i > 0 && r.items[i-1].amount != nil && r.items[i-1].amount.equals(one) && r.items[i-1].amount.form == formWords {
		r.items[i-1].amount.dead, r.items[i-1].used = true, true
		r.items[i].meaning, r.items[i].used = meaning{kind: kindFill}, true
	}
}

// numberedPart: "#3 sled is the flat one".
func (r *reader) numberedPart(i int) {
	if r.free(i) && r.items[i].amount.bare() && r.is(i+1, kindNoun, "sled", "caul", "bar", "mat", "frame", "bag", "press", "pump", "fence") {
		r.items[i].amount.dead = true
	}
}

// planedLumber: "planed a 2x4 down to 1 1/4 by 3" tells the second size.
func (r *reader) planedLumber(i int) {
	k := i + 1
	if r.word(k, "down") {
		k++
	}
	if !r.live(i) || !r.live(i-1) || r.timesAt(i-1) || k == i+1 && !r.word(k, "down to") || !r.word(k, "to", "down to") || k+1 >= len(r.items) || r.items[k+1].amount == nil {
		return
	}
	from, _ := r.clause(i)
	for j := from; j < i; j++ {
		if r.items[j].amount == nil && (shapes(r.items[j].word) || r.word(j, "ripped", "cut", "took", "trimmed") || r.is(j, kindRole, "ripped")) {
			r.items[i].amount.dead, r.items[i-1].amount.dead = true, true
			return
		}
	}
}

// barLength: "the bar's only 46 long", "two bars, each 24 long" is how long the bar is, which
// nothing asks.
func (r *reader) barLength(i int) {
	if r.runOfBar(i) {
		r.items[i].amount.dead = true
		return
	}
	if !r.live(i) || !r.length(i) || !r.is(r.next(i), kindAttr, "long") || small(r.size(i)) {
		return
	}
	from, to := r.clause(i)
	if r.within(from, to, kindNoun, "strip", "panel", "sled", "bag", "caul") >= 0 {
		return
	}
	bar := r.within(from, i, kindNoun, "bar")
	if each := r.is(i-1, kindRole, "in a row") || r.word(i-1, "each"); bar < 0 && each && from > 1 {
		before, _ := r.clause(from - 1)
		bar = r.within(before, from, kindNoun, "bar")
	}
	if bar < 0 || r.amountsIn(bar, i) > 0 {
		return
	}
	is := strings.ContainsAny(r.items[bar].text, "'’") || r.is(i-1, kindRole, "in a row")
	for k := bar + 1; k < i; k++ {
		is = is || r.word(k, "is", "are", "was", "only")
	}
	if is {
		r.items[i].amount.dead = true
		r.items[r.next(i)].meaning = meaning{kind: kindFill}
	}
}

// runOfBar: of "7 ft bar 1 in" the first is how long the bar is, as none is so high.
func (r *reader) runOfBar(i int) bool {
	const highest = 1
	if !r.is(i+1, kindNoun, "bar") || !r.live(i) || !r.length(i) || r.items[i].amount.unit == nil || r.size(i) <= highest || r.items[i].amount.link != linkNone {
		return false
	}
	j := r.past(i+2, "is", "its", "thats", "that", "at", "of")
	return r.live(j) && r.length(j) && small(r.size(j)) && !r.timesAt(j+1)
}

// perPanelOf: of "8 ft of bar, need 4 ft per panel" the panel is not so wide, and of "12
// strips total, 6 per panel" each panel has six.
func (r *reader) perPanelOf(i int) {
	per := i + 1
	if !r.live(i) || !r.word(per, "per", "a", "each", "to") && !r.is(per, kindRole, "in a row") {
		return
	}
	panel := per + 1
	if r.word(panel, "a", "the", "each") {
		panel++
	}
	if !r.is(panel, kindNoun, "panel") || isPlural(r.items[panel].word) {
		return
	}
	if am := r.items[i].amount; am.is(unit.Distance) && am.unit != nil && r.word(per, "per") {
		am.dead = true
		return
	}
	n, whole := r.wholeAt(i)
	for k := i - 1; k >= 0 && whole && n > 0; k-- {
		m, ok := r.wholeAt(k)
		if ok && m > n && m%n == 0 && r.is(r.counted(k), kindNoun, "strip") && r.saysAll(r.counted(k)+1) {
			r.items[k].amount.dead = true
			return
		}
	}
}

// saysAll: "total", "in all", "altogether" at item k.
func (r *reader) saysAll(k int) bool {
	return r.word(k, "total", "altogether", "overall") || r.word(k, "in") && r.word(k+1, "total", "all") || r.word(k, "all") && r.word(k+1, "told", "together", "up", "in")
}

// cauls: of "the caul is 24 x 48 x 3/4" only the thickness matters.
func (r *reader) cauls(i int) {
	if end := r.chain(i); end-i == 3 && r.size(i) > widestStrip && r.size(i+1) > widestStrip && r.size(i+2) < thickestStock && r.word(i-1, "is", "was", "a") && r.is(r.prev(i-1), kindNoun, "caul") {
		r.items[i].amount.dead, r.items[i+1].amount.dead = true, true
		r.items[i+2].amount.link = linkNone
		r.bind(i+2, unit.CaulThickness)
	}
}

// endToEnd: "two bars end to end" are one bar, on one side.
func (r *reader) endToEnd() {
	if !r.says("end", "butted") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindNoun, "bar") || !isPlural(r.items[i].word) || !r.live(i-1) {
			continue
		}
		_, to := r.clause(i)
		for k := i + 1; k < to; k++ {
			if r.word(k, "end", "butted") && r.word(k+1, "to", "on", "together") {
				r.items[i-1].amount.dead = true
			}
		}
	}
}

// eitherSide: "3 strips either side of a 6 inch center board" are not all there are, and the
// board between is not as wide as they are.
func (r *reader) eitherSide(i int) {
	k := r.next(i)
	if n, ok := r.wholeAt(i); !ok || n < 1 || !r.is(k, kindNoun, "strip") {
		return
	}
	for k++; r.word(k, "on"); k++ {
	}
	if !r.is(k, kindFact, "faces=2") || !r.word(k+1, "of") || r.is(k+2, kindNoun, "bar") {
		return
	}
	r.items[i].amount.dead = true
	r.items[k].meaning, r.items[k].used = meaning{kind: kindFill}, true
	for j := k + 2; j < len(r.items) && j < k+5 && !r.isBreak(j); j++ {
		if r.live(j) && r.length(j) {
			r.items[j].amount.dead = true
			r.idleDirections(j+1, j+2)
			for b := j + 1; b < j+4 && b < len(r.items); b++ {
				if r.is(b, kindNoun, "strip") {
					r.items[b].meaning, r.items[b].used = meaning{kind: kindFill}, true
				}
			}
			return
		}
	}
}

// cameShort: "yesterday's panel came out 2 in short" tells by how much it went wrong.
func (r *reader) cameShort(i int) {
	if !r.word(i+1, "short", "shy", "narrow", "under") && !(r.word(i+1, "too") && r.word(i+2, "short", "narrow", "wide", "long")) || !r.live(i) || !r.length(i) || !small(r.size(i)) {
		return
	}
	if k := r.prev(i); r.turnedOut(k) || r.turnedOut(i-1) || r.turnedOut(i-2) || r.word(i-1, "was", "were", "ended", "finished") {
		r.items[i].amount.dead = true
		r.idleDirections(i+1, i+2)
	}
}

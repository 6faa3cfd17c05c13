package grammar

import "presshand/engine/unit"

// pairs reads "a pair of beech boards" and "a pair of presses".
func (r *reader) pairs() {
	if !r.means(kindRole, "pair") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindRole, "pair") || r.items[i].word != "pair" || !r.word(i+1, "of") {
			continue
		}
		k := i + 2
		for r.is(k, kindWood) || r.is(k, kindWoodSort) {
			k++
		}
		f := countedBy[r.idOf(k)]
		day := r.mentions(kindRole, "start", "deadline", "hours") && !r.word(k+1, "for")
		if r.is(k, kindNoun, "press") || day && r.is(k, kindNoun, "frame", "bag") {
			f = unit.PressCount
		}
		if f != "" && isPlural(r.items[k].word) && !r.has(f) {
			r.say(i, f, unit.Number(2))
		}
	}
}

// panelsBehind: "panels: 17 of 24x60" counts them before their size.
func (r *reader) panelsBehind(i int) bool {
	k := i - 1
	if r.labels(k) || r.word(k, "-") {
		k--
	}
	return k < i-1 && r.is(k, kindNoun, "panel") && isPlural(r.items[k].word) && r.word(i+1, "of") && i+3 < len(r.items) && r.items[i+2].amount != nil && r.timesAt(i+3)
}

// boardsPlanned takes boards for panels where a day of presses is planned and their size is
// wider than any strip: "23 boards 18x48, 2 presses, start 8".
func (r *reader) boardsPlanned() {
	if !r.mentions(kindRole, "start", "deadline", "hours") || r.mentions(kindNoun, "bar", "fence", "sled", "core", "face") || r.mentions(kindAttr, "wide") {
		return
	}
	board, size := -1, 0
	for i := range r.items {
		if r.is(i, kindNoun, "strip") {
			if board >= 0 || !r.word(i, "boards", "board") {
				return
			}
			board = i
		}
		if i > 0 && r.items[i].amount != nil && r.items[i-1].amount != nil && r.timesAt(i) && r.length(i) && r.length(i-1) && r.size(i) > widestStrip && r.size(i-1) > widestStrip && r.size(i) < 1.9 {
			size++
		}
	}
	if board < 0 || size != 1 || !isPlural(r.items[board].word) {
		return
	}
	if m, n := trade.longest([]scrap{{norm: "panels", shape: shapeWord}}, 0); n == 1 {
		r.items[board].meaning, r.items[board].word = m, "panels"
		r.hear(board)
	}
}

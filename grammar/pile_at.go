package grammar

import "presshand/engine/unit"

// pileAt reads a pile whose count stands at item i.
func (r *reader) pileAt(i int) (pile, bool) {
	if !r.countsPile(i) {
		return pile{}, false
	}
	joined := false
	for j := i + 1; j < len(r.items) && j <= i+5; j++ {
		switch {
		case r.items[j].amount != nil:
			if r.toldPile(i, j) || r.sizesPress(j) {
				return pile{}, false
			}
			return r.pileOf(i, j, joined)
		case r.word(j, "at", "@", "of", "x") || r.items[j].brk == '@':
			joined = true
		case r.cutTo(j):
		case !r.inPile(j):
			return pile{}, false
		}
	}
	return pile{}, false
}

// cutTo reports whether item j is of the words between a count and what its strips were cut
// to: "9 ripped to 2 1/4".
func (r *reader) cutTo(j int) bool {
	cut := func(i int) bool {
		return r.is(i, kindRole, "ripped") || r.word(i, "cut", "ripped", "sawn", "planed", "jointed", "milled", "cut to", "ripped to", "ripped at")
	}
	return cut(j) && (r.word(j+1, "to", "at") || j+1 < len(r.items) && r.items[j+1].amount != nil) || r.word(j, "to") && cut(j-1)
}

// countsPile reports whether a number that may count strips stands at item i.
func (r *reader) countsPile(i int) bool {
	if !r.free(i) || r.items[i].amount.plural || r.items[i].amount.link != linkNone {
		return false
	}
	n, whole := r.items[i].amount.whole()
	others := r.is(r.next(i), kindNoun, "panel", "press", "joint", "bag", "frame")
	return whole && n > 0 && !others && !r.is(r.prev(i), kindRole, "target", "trim")
}

// toldPile: the width at item j, behind the count at item i, is of a pile that was told
// before: "two of the 3 1/4s".
func (r *reader) toldPile(i, j int) bool {
	return r.someSpoiled(j) == i || r.items[j].amount.plural && r.word(j-1, "the") && r.ofPairs() < 2
}

// sizesPress: "one 4x8 frame".
func (r *reader) sizesPress(j int) bool {
	return r.items[j].amount.link == linkTimes && r.is(j+1, kindNoun, "press", "bag", "frame", "bed")
}

// inPile reports whether item j may stand between the count of a pile and its width: "12
// good ones at 2".
func (r *reader) inPile(j int) bool {
	numbered := r.is(j, kindRole, "name") && r.word(j, "no .", "no.", "no", "nr")
	longs := r.is(j, kindAttr, "long") && isPlural(r.items[j].word)
	return numbered || longs || r.is(j, kindNoun, "strip") || r.is(j, kindRole, "in a row") || r.is(j, kindWood) || r.is(j, kindWoodSort) ||
		r.word(j, "off", "ea", "each", "that", "are", "is", "the", "these", "those", "some", "about", "measuring", "measure", "measures", "in", "fat", "skinny", "good", "ones", "them", "by", "real", "really", "wider", "narrow", "narrower", "big", "small", "short", "odd", "decent", "old", "nice", "little", "thin", "more", "which", "roughly", "around", "exactly", "left", "over", "spare", "remaining")
}

// pileOf joins the count at item i with the width at item j.
func (r *reader) pileOf(i, j int, joined bool) (pile, bool) {
	am := r.items[j].amount
	if r.items[j].used || am.dead || am.unit != nil && am.unit.Dimension != unit.Distance {
		return pile{}, false
	}
	if j+1 < len(r.items) && r.items[j+1].amount != nil && r.items[j+1].amount.link == linkTimes {
		return pile{}, false
	}
	switch am.link {
	case linkAt, linkTimes:
		joined = true
	case linkTo, linkOr:
		return pile{}, false
	}
	if am.link == linkTimes && am.unit == nil && r.items[i].amount.form != formWords && !r.countGlued(i) && (r.timesPairs() < 2 || r.is(r.prev(i), kindNoun, "panel") || r.is(r.next(j), kindNoun, "panel")) {
		return pile{}, false
	}
	if !joined && j == i+1 && r.isBreak(i+1) {
		return pile{}, false
	}
	if r.word(j+1, "skinny", "shy", "scant", "narrow", "skimpy", "under", "undersize", "undersized", "oversize", "off") && r.size(j) < mostApart {
		return pile{}, false // "three are 1/16 skinny"
	}
	if next := r.next(j); r.is(next, kindAttr, "thick", "long") || r.is(next, kindNoun, "panel", "bar", "trim") || r.is(next, kindRole, "trim") {
		return pile{}, false
	}
	return pile{i, j}, true
}

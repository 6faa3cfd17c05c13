package grammar

import "presshand/engine/unit"

// Questions of how much or how many, in words of no fixed order.

// loosely reads "what … bar" and "how much … vacuum" with words in between.
func (r *reader) loosely() []Ask {
	if a := r.heightAlone(); a != nil {
		return a
	}
	if !r.means(kindNoun, "bar") || !r.says("what", "which", "what size bar", "how tall", "how high", "how much") {
		return nil
	}
	for i := range r.items {
		if !r.word(i, "what", "which") && !(r.is(i, kindAsk) && r.word(i, "what size bar", "how tall", "how high", "how much")) {
			continue
		}
		for j := i + 1; j < len(r.items) && j <= i+3 && !r.isBreak(j); j++ {
			if r.items[j].amount != nil {
				break
			}
			if r.is(j, kindNoun, "bar") && r.is(j+1, kindNone) && r.needs(j) {
				return []Ask{{About: Side, Solve: unit.BarHeight}}
			}
		}
	}
	return nil
}

// canLineUp: "how many can I put side by side" of strips that are told.
func (r *reader) canLineUp(i int) bool {
	j := i + 1
	for r.word(j, "many", "of", "them", "those", "these") {
		j++
	}
	return r.word(j, "can", "could", "may", "dare") && r.word(j+1, "i", "we", "you") && r.mentions(kindNoun, "strip") && !r.mentions(kindNoun, "panel") && !r.countSaid(0, 0)
}

// fillsWidth: "how many 2 1/4 strips for a 36 wide top, 1/2 trim".
func (r *reader) fillsWidth(i int) bool {
	if r.manyOfThose(i) {
		return true
	}
	_, to := r.sentence(i)
	strips := r.within(i, to, kindNoun, "strip") >= 0
	wide := r.within(i, to, kindAttr, "wide") >= 0 || r.panelSized(i, to)
	fill := r.mentions(kindRole, "trim", "target") || r.opensWithin(i, to, "for", "fill", "get", "cover")
	return strips && wide && fill && !r.pressTold()
}

// pressTold reports whether a bar or the vacuum is spoken of, as where strips are pressed.
func (r *reader) pressTold() bool {
	return r.mentions(kindNoun, "bar") || r.mentions(kindVacuum) || r.pressureSaid()
}

// manyOfThose: "need a 30 inch top. strips are 2 3/8. how many" counts strips that fill it.
func (r *reader) manyOfThose(i int) bool {
	from, _ := r.sentence(i)
	behind := r.past(i, "how", "many", "how many", "do", "i", "we", "need", "would", "that", "is")
	alone := i <= from+2 && (r.isBreak(behind) || r.word(behind, "and"))
	told := r.within(0, from, kindNoun, "strip") >= 0 && r.within(0, from, kindRole, "target") >= 0 && r.amountsIn(0, from) == 2
	return alone && told && !r.pressTold()
}

// panelSized: "for a 48 inch panel" says between two items how wide a panel is.
func (r *reader) panelSized(from, to int) bool {
	wide := func(k int) bool { return r.free(k) && r.length(k) && r.size(k) > leastFenced }
	for k := from + 1; k < to; k++ {
		if r.word(k-1, "for") && wide(k) && !r.timesAt(k+1) && (r.isBreak(k+1) || r.word(k+1, "plus", "with", "and")) {
			return true // "how many strips do I need for 33 in plus 1/2 to joint off"
		}
		if r.is(k, kindNoun, "panel") && !isPlural(r.items[k].word) && wide(k-1) && !r.timesAt(k-1) {
			return true
		}
	}
	return false
}

// stripsFor: in "how many 3 inch strips for 25 wide" the width at item i is what they
// are to fill.
func (r *reader) stripsFor(i int) bool {
	from, _ := r.clause(i)
	return r.word(i-1, "for", "fill", "get", "cover", "of") && r.within(from, i, kindNoun, "strip") >= 0 && !r.is(r.next(r.next(i)), kindNoun, "strip")
}

// heightAlone reads "bar height?" with no height said, and "how many strips … can
// i press".
func (r *reader) heightAlone() []Ask {
	if !r.says("how many", "how") && !r.means(kindAttr, "tall") {
		return nil
	}
	for i := range r.items {
		if r.is(i, kindNoun, "bar") && r.is(i+1, kindAttr, "tall") && i+2 < len(r.items) && r.items[i+2].word == "?" && !r.free(i-1) {
			return []Ask{{About: Side, Solve: unit.BarHeight}}
		}
		many := r.word(i, "how many") || r.word(i, "how") && r.word(i+1, "many")
		if many && r.fillsWidth(i) {
			return []Ask{{About: Strips}}
		}
		if !many || !r.mentions(kindNoun, "bar") {
			continue
		}
		from, to := r.sentence(i)
		strips := r.within(i, to, kindNoun, "strip")
		if r.canLineUp(i) {
			return []Ask{{About: Side, Solve: unit.StripCount}}
		}
		if strips < 0 || r.within(from, to, kindNoun, "panel") >= 0 {
			continue
		}
		for j := strips; j < to; j++ {
			if r.word(j, "can", "could", "may", "before", "till", "until", "dare") {
				return []Ask{{About: Side, Solve: unit.StripCount}}
			}
		}
	}
	return nil
}

// needs reports whether "need", "should" or "get" stands within reach of item j.
func (r *reader) needs(j int) bool {
	for k := j + 1; k < len(r.items) && k <= j+5 && !r.isStop(k); k++ {
		if r.word(k, "need", "needed", "should", "gets", "gives", "for", "would", "get", "give", "use", "must") {
			return true
		}
	}
	return false
}

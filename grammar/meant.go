package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// betterOf: "which bar is better, the 1 in or the 1 3/4" offers two.
func (r *reader) betterOf(i int) bool {
	first := -1
	for j := i + 1; j < len(r.items) && j < i+12 && r.items[j].brk != '?' && r.items[j].brk != '.'; j++ {
		switch {
		case r.free(j) && r.length(j) && small(r.size(j)) && first < 0:
			first = j
		case r.free(j) && r.length(j) && small(r.size(j)) && (r.items[j].amount.link == linkOr || r.opensWithin(first, j, "or")) && j-first < 5:
			r.choice(first, j, unit.BarHeight)
			return true
		case r.items[j].amount != nil:
			return false
		}
	}
	return false
}

// goesInPress: "will three sleds go in the frame?".
func (r *reader) goesInPress() bool {
	if !r.says("go", "goes") {
		return false
	}
	for i := range r.items {
		if r.word(i, "go", "goes") && (r.word(i+1, "in", "into") || r.is(i+1, kindUnit)) && r.mentions(kindNoun, "sled", "caul") && r.asksSomething() {
			if from, to := r.clause(i); r.within(i, to, kindNoun, "frame", "press", "bag") >= 0 && r.opensWithin(from, i, "will", "does", "do", "can", "would") {
				return true
			}
		}
	}
	return false
}

// clears: "do I clear", "will it all clear" of what is stacked in a press.
func (r *reader) clears() bool {
	if !r.means(kindVerb, "clear") {
		return false
	}
	for i := range r.items {
		if !r.is(i, kindVerb, "clear") || !r.word(i-1, "i", "we", "it", "that", "this", "they", "all", "everything", "still") || !r.mentions(kindNoun, "sled", "caul", "core", "mat") {
			continue
		}
		from, _ := r.clause(i)
		if r.opensWithin(from, i, "do", "does", "will", "would", "can", "should", "am", "are") {
			return true
		}
	}
	return false
}

// layersTold counts the parts of a stack that are told with a number.
func (r *reader) layersTold() int {
	n := 0
	for k := range r.items {
		if r.is(k, kindNoun) && layerParts[r.items[k].id] != "" && (k+1 < len(r.items) && r.items[k+1].amount != nil || k > 0 && r.items[k-1].amount != nil) {
			n++
		}
	}
	return n
}

// fitOnBed: "how many 24x24 panels fit on a 4x8 bed".
func (r *reader) fitOnBed() bool {
	if !r.says("on", "in", "into", "onto", "to", "per") || !r.howManyPanels() && !r.howManySized() || r.mentions(kindNoun, "strip", "sled") {
		return false
	}
	for i := range r.items {
		if (r.word(i, "fit", "fits", "go") || r.is(i, kindAsk, "stack")) && r.word(i+1, "on", "in", "into", "onto", "to", "per") {
			if _, to := r.clause(i); r.within(i, to, kindNoun, "bed", "press", "bag", "frame", "sled") >= 0 || r.word(i+3, "go", "pull", "load") && r.mentions(kindNoun, "bed") {
				return true
			}
		}
	}
	return false
}

// howManySized: "how many 24x48 fit on a 5x10 bed" leaves out of what.
func (r *reader) howManySized() bool {
	if !r.says("how many", "how") {
		return false
	}
	for i := range r.items {
		k := i + 1
		if r.word(i, "how") && r.word(k, "many") {
			k++
		} else if !r.word(i, "how many") {
			continue
		}
		if r.word(k, "of") {
			k++
		}
		return k+1 < len(r.items) && r.items[k].amount != nil && r.timesAt(k+1)
	}
	return false
}

// pressureOn: "how many kPa are there on the joints" asks for no vacuum.
func (r *reader) pressureOn(i int) bool {
	if !in(r.items[i].word, "how many kpa", "how many mbar") {
		return false
	}
	for j := i + 1; j < len(r.items) && j < i+8 && !r.isBreak(j) && r.items[j].amount == nil && !r.word(j, "need", "for", "want", "to"); j++ {
		if r.is(j, kindNoun, "joint", "wedge") || r.is(j, kindAsk) && cue(r.items[j].id).About == Side {
			return true
		}
	}
	return false
}

// pushesNow: "it shows 120 mbar abs. how many kPa is pressing on the face" asks for no vacuum.
func (r *reader) pushesNow(i int) bool {
	_, to := r.clause(i)
	return in(r.items[i].word, "how many kpa", "how many mbar") && r.pressureSaid() && r.word(i+1, "is", "are", "does that", "pressing", "pushing", "is pressing", "is pushing") &&
		!r.opensWithin(i, to, "need", "needed", "enough", "for", "to", "must", "should") && r.amountsIn(i, to) == 0 && !r.pressureOn(i)
}

// pressureAsked is what "how much" at item i asks where a pressure is behind it: "how much
// psi", "how much pressure on the far joint".
func (r *reader) pressureAsked(i int) Topic {
	if r.items[i].word != "how much" {
		return ""
	}
	_, to := r.clause(i)
	switch {
	case r.is(i+1, kindUnit) && r.items[i+1].unit.Dimension == unit.Pressing:
		return Face
	case !r.word(i+1, "pressure", "push", "force"):
		return ""
	case r.sideCue() || r.within(0, len(r.items), kindNoun, "joint") >= 0 || r.within(i, to, kindNoun, "bar", "wedge") >= 0:
		return Side
	}
	return Face
}

// sideCue reports whether a cue of the message asks of the sides: "the last joint".
func (r *reader) sideCue() bool {
	return slices.ContainsFunc(r.items, func(it item) bool { return it.kind == kindAsk && cue(it.id).About == Side })
}

// pressureAt: "how much pressure do I get at 26" is of the gauge at 26.
func (r *reader) pressureAt(i int) bool {
	am := r.items[i].amount
	if r.habit.Metric || !am.bare() || am.float() < 10 || am.float() > 30 || !r.word(i-1, "at") || !r.isBreak(i+1) {
		return false
	}
	from, _ := r.clause(i)
	for k := from; k < i; k++ {
		if r.pressureAsked(k) != "" {
			return true
		}
	}
	return false
}

// pushAsked reports whether what a vacuum that was told pushes is asked about.
func (r *reader) pushAsked() bool {
	for i := range r.items {
		if r.pushesNow(i) {
			return true
		}
	}
	return false
}

// faceAsked reports whether the clause of item i asks for what presses on a face:
// "how many tons on a 24x48".
func (r *reader) faceAsked(i int) bool {
	from, _ := r.clause(i)
	for k := from; k < i; k++ {
		if r.is(k, kindAsk) && cue(r.items[k].id).About == Face {
			return true
		}
	}
	return false
}

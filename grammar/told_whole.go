package grammar

import "presshand/engine/unit"

// loadTold: "boss man says 5 strips 2 wide 3/8 thick, 1 bar, 24 inHg, what's the far
// joint" hands a whole load on, where the message has no other of its own.
func (r *reader) loadTold() {
	told, strips, end := 0, false, -1
	for i := range r.items {
		am := r.items[i].amount
		switch {
		case am == nil || am.dead:
		case am.hearsay:
			told++
			strips = strips || r.countedAt(i) && r.is(r.next(i), kindNoun, "strip")
			_, end = r.sentence(i)
		case i < end:
			told++ // "…, 1/4 thick, 25 inHg"
		case am.form != formPair && (am.unit != nil || r.countedAt(i) || r.is(r.next(i), kindNoun) || r.is(r.next(i), kindAttr)):
			return
		}
	}
	const whole = 4 // numbers that more than an opinion has
	if told >= whole && strips {
		r.unhear(0, len(r.items)-1)
	}
}

// figureAtVacuum: in "1 ton per square foot at 27 inHg" and "12 psi at 25 inches" the
// first is what somebody says that the vacuum gives.
func (r *reader) figureAtVacuum(i int) bool {
	k := i + 1
	if k >= len(r.items) || !r.free(k) || r.items[k].amount.link != linkAt || !r.items[k].amount.is(unit.Pressing) {
		return false
	}
	u := r.items[i].amount.unit.Symbol
	return onFaces[u] && !onFaces[r.items[k].amount.unit.Symbol] && !r.goal(i)
}

// saidAt reports whether "at" stands before the number at item i, or before it behind a
// size: "4 strips of 3 x 3/4 at 24".
func (r *reader) saidAt(i int) bool {
	if link := r.items[i].amount.link; link != linkAt {
		return link == linkNone && r.word(i-1, "at")
	}
	return i > 0 && r.items[i-1].amount != nil && r.items[i-1].amount.link == linkTimes
}

// otherAt: "gap at 0.5", "strips vary at 0.6" tell what stands before the "at".
func (r *reader) otherAt(i int) bool {
	k := i - 1
	if r.word(k, "at") {
		k--
	}
	return r.is(k, kindRole) || r.is(k, kindFact) || r.is(k, kindNoun, "gap", "cup", "bow", "tent", "joint", "mat", "face") || r.word(k, "veneer", "leaf")
}

// onFaces are the units that a load is told in, and no gauge shows beside another's.
var onFaces = map[string]bool{unit.PSI.Symbol: true, unit.PSF.Symbol: true, unit.TonPerFt2.Symbol: true}

// framedInMetres: a metric "frame 1.2 x 2.4 x 75 deep" is told in metres, since none is so
// small in millimetres.
func (r *reader) framedInMetres(i int) bool {
	if !r.habit.Metric || i+1 >= len(r.items) || r.items[i+1].amount == nil {
		return false
	}
	small := func(am *amount) bool {
		return am.bare() && am.form == formDecimal && am.float() > 0.2 && am.float() < 10
	}
	from, to := r.clause(i)
	return small(r.items[i].amount) && small(r.items[i+1].amount) && r.within(from, to, kindNoun, "frame", "bed", "press", "panel", "bag", "sled") >= 0 && r.within(from, to, kindNoun, "strip", "bar") < 0
}

// timetables are what goes by a clock of its own.
var timetables = wordSet(`bus train tram ferry flight plane school class dentist doctor haircut recess kickoff`)

// timetabled: "my bus leaves at 5:10".
func (r *reader) timetabled(i int) bool {
	from, _ := r.clause(i)
	for k := from; k < i; k++ {
		if r.items[k].amount == nil && timetables[r.items[k].word] {
			return true
		}
	}
	return false
}

// supposes: "what if it had been 9 going in" in a thread puts nothing into the press.
func (r *reader) supposes() bool {
	if !r.habit.Follows {
		return false
	}
	i := 0
	if r.word(i, "and") {
		i++
	}
	return r.word(i, "what", "suppose") && r.word(i+1, "if") && (r.within(0, len(r.items), kindVerb, string(In)) >= 0 || r.severalGoIn(i+2))
}

// severalGoIn: "9 go in", "there are 9 going in" from item i on count what goes in; of one
// load it is "9 goes in".
func (r *reader) severalGoIn(i int) bool {
	for r.word(i, "there", "are", "theres", "only") {
		i++
	}
	n, whole := r.wholeAt(i)
	if !whole || n < 2 || !r.items[i].amount.bare() {
		return false
	}
	if r.word(i+1, "go in", "going in") {
		return r.isBreak(i + 2)
	}
	return r.word(i+1, "go", "going") && i+2 < len(r.items) && r.items[i+2].word == "in" && r.isBreak(i+3)
}

// pushWanted: "the label wants 150 psi", "need 100 psi on the edge" tell what clamps
// would give.
func (r *reader) pushWanted(i int) bool {
	from, to := r.sentence(i)
	wants := r.wanted(i) || r.opensWithin(from, i, "says", "say", "wants", "calls", "asks", "need", "needs", "specifies", "recommends")
	return wants && (r.within(from, to, kindNoun, "joint", "label") >= 0 || r.within(from, to, kindGlue) >= 0 || r.opensWithin(from, to, "clamp", "clamping", "clamps", "edge", "edges", "on the edge", "on edge", "glue", "glueline", "joint", "joints", "label", "bottle", "jug"))
}

// pushTold reports whether a pressure that no vacuum gives is wanted of a joint.
func (r *reader) pushTold() bool {
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.dead && am.is(unit.Pressing) && r.pushWanted(i) {
			return true
		}
	}
	return false
}

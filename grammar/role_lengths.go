package grammar

import "presshand/engine/unit"

// roleWords tells which of the words for what a length is for a message may hold.
type roleWords struct {
	faces, offEach, bag, joint, vary, fatter, spread, cover, trim, filled, over, saysOver, opening, square bool
	finishes, flat, ripped, machine, across, runs, apart, clear, takes, wedge                              bool
}

func (r *reader) roleWords() roleWords {
	faces := r.means(kindFact, "faces=2")
	role := r.means(kindRole)
	return roleWords{
		faces:    faces,
		offEach:  r.says("off", "from", "on") && (faces || role && r.means(kindRole, "in a row") || r.says("each", "both", "either", "every")),
		bag:      r.means(kindNoun, "bag") || r.saysLater("bag"),
		joint:    r.means(kindNoun, "joint") || r.says("better than", "closer than", "nearer than"),
		vary:     role && r.means(kindRole, "vary", "run over"),
		fatter:   r.means(kindAttr, "thickest", "thinnest") || r.says("fatter", "thicker", "thinner", "skinnier", "heavier", "fatter than", "thicker than", "thinner than"),
		spread:   r.says("spread"),
		cover:    role && r.means(kindRole, "cover") || r.says("covers", "covering", "cover", "reaches", "gets", "comes", "goes"),
		trim:     role && r.means(kindRole, "trim"),
		filled:   r.topic == Strips || r.habit.Follows || r.has(unit.StockPiles),
		over:     role && r.means(kindRole, "over"),
		saysOver: r.says("over"),
		opening:  r.means(kindNoun, "fence", "opening"),
		square:   r.says("square"),
		finishes: r.says("planer", "planing", "thicknesser", "sander"),
		flat:     r.topic == Flatten || r.means(kindNoun, "cup", "bow", "gap") || r.means(kindFact, "cup_up=hump", "cup_up=hollow") || r.has(unit.Bow),
		ripped:   role && r.means(kindRole, "ripped"),
		machine:  r.says("off", "out", "from", "through", "thru") || r.means(kindVerb, "out"),
		across:   role && r.means(kindRole, "length"),
		runs:     r.says("runs"),
		apart:    r.says("apart"),
		clear:    r.means(kindVerb, "clear"),
		takes:    (r.habit.Follows || r.says("has", "takes", "swallows")) && r.means(kindNoun, "frame", "press", "opening"),
		wedge:    r.means(kindNoun, "wedge"),
	}
}

// roleLengths reads lengths whose purpose is named: trim, overfill, a wedge's
// window, cover, spread, the run of a cup or a bow.
func (r *reader) roleLengths() {
	said := r.roleWords()
	for i := range r.items {
		if r.free(i) && r.length(i) {
			r.roleLength(i, &said)
		}
	}
}

func (r *reader) roleLength(i int, said *roleWords) {
	n, p := r.next(i), r.prev(i)
	switch {
	case said.faces && r.trimmedTwice(i), said.offEach && r.offEachEdge(i), said.bag && r.bagInside(i, p):
	case said.joint && r.jointShows(i):
		r.bind(i, unit.Gap)
	case said.vary && r.varyAcross(i, p):
	case said.fatter && r.fatterThan(i), said.spread && r.spreadBeside(i) && r.size(i) < mostApart && r.mentions(kindNoun, "strip") && r.within(0, len(r.items), kindGlue) < 0:
		r.bind(i, unit.ThicknessSpread) // "1/16 spread in these rips"
	case said.cover && r.coveredTo(i):
		r.bind(i, unit.Cover)
	case said.trim && r.is(n, kindRole, "trim") && r.word(i+1, "after") && (r.is(p, kindRole, "target") || r.is(p, kindNoun, "panel") && r.size(i) > leastFenced) && !r.has(unit.TargetWidth):
		r.bind(i, unit.TargetWidth) // "need 31 5/16 after trim"
	case said.filled && r.planedOff(i) || said.trim && (r.is(n, kindRole, "trim") || r.is(p, kindRole, "trim") && !r.is(n, kindAttr) && !r.is(n, kindNoun, "strip")):
		r.bind(i, unit.Trim)
	case said.over && r.is(p, kindRole, "over") && r.word(i-1, "of") && r.size(i) > 0.1 && !r.has(unit.PanelWidth):
		r.bind(i, unit.PanelWidth) // "1.5 over the opening of 480"
	case said.opening && r.overWhat(i):
		r.bind(i, unit.PanelWidth)
	case said.square && r.squareStrip(i, n), r.longBehind(i), said.finishes && r.finishesAt(i):
	case said.flat && (r.runOf(i) || r.crossed(i)):
	case said.ripped && r.is(p, kindRole, "ripped") && r.items[i].amount.form == formQuarters && i+1 < len(r.items) && r.free(i+1) && r.items[i+1].amount.link == linkTo:
		r.items[i].amount.dead = true
		r.bind(i+1, unit.StripWidth) // "ripped some 8/4 to 1 7/8"
	case said.ripped && r.is(p, kindRole, "ripped"), r.items[i].amount.plural && r.rippedTo(i):
		r.bind(i, unit.StripWidth)
	case said.machine && r.offMachine(i, p):
	case said.across && r.is(n, kindRole, "length") && r.word(n, "across") && (r.next(n) < 0 || r.word(n+1, "and", "by", "x")):
		r.bind(i, r.acrossOf(i, p))
	case said.saysOver && r.word(n, "over") && r.is(i-1, kindNoun, "caul", "mat"): // "caul 1/2 over" lies on the rest
	case said.saysOver && r.word(n, "over") && r.size(i) < mostOverfill && (r.next(n) < 0 || r.word(r.next(n), "size", "so", "each", "total", "in")),
		(said.over || said.saysOver) && r.overfills(i, n, p):
		r.bind(i, unit.Overfill)
	case (said.vary || said.runs) && r.boardRuns(i, p):
		r.bind(i, unit.StripLength) // "each board runs 6 ft 8"
	case said.vary && r.is(p, kindRole, "vary", "run over") && r.thickToThick(i):
		r.bindRange(i, unit.StripThinnest, unit.StripThickest)
	case said.vary && (r.is(p, kindRole, "vary") && !r.offElse(p) || r.is(n, kindRole, "vary")) || r.word(p, "out by") && r.unevenBefore(p):
		r.bind(i, unit.ThicknessSpread)
	case said.apart && r.word(i+1, "apart") && r.size(i) < mostApart && r.mentions(kindNoun, "strip") && !r.mentions(kindNoun, "gap"):
		r.bind(i, unit.ThicknessSpread)
	case said.cover && r.is(p, kindRole, "cover") && !r.opensWithin(p, i, "me", "us", "him", "her") && !r.uncovered(i):
		r.bind(i, unit.Cover)
	case said.clear && r.is(n, kindVerb, "clear") && n == i+1 && (r.mentions(kindNoun, "frame", "press") || r.mentions(kindAsk, "profile")) && !r.has(unit.Opening) && r.size(i) < 0.5:
		r.items[n].used = true
		r.bind(i, unit.Opening) // "its 5 inches clear"
	case said.takes && r.takesHigh(i):
		r.bind(i, unit.Opening) // "frame takes 4 in"
	case said.wedge && r.wedgeWindowAt(i):
		r.bindRange(i, unit.WedgeLow, unit.WedgeHigh)
	}
}

// overfills reports whether the length at item i is what strips are more than their room.
func (r *reader) overfills(i, n, p int) bool {
	if r.is(n, kindRole, "over") || r.is(p, kindRole, "over") && !r.has(unit.Overfill) || r.is(p, kindRole, "run over") && r.is(n, kindRole, "length") && r.word(n, "over") {
		return true
	}
	_, to := r.clause(i)
	return r.word(n, "over") && r.within(i, to, kindNoun, "opening", "fence") >= 0
}

// boardRuns reports whether the length at item i is how far strips run.
func (r *reader) boardRuns(i, p int) bool {
	if !r.is(p, kindRole, "run over") && !r.word(p, "runs") || r.size(i) <= 0.3 || r.has(unit.StripLength) {
		return false
	}
	from, _ := r.clause(i)
	return r.within(from, i, kindNoun, "strip") >= 0 || r.theyRun(p, i)
}

// mostOverfill, in metres: nobody forces in more; "3/4 over" is a sled on top.
const mostOverfill = 0.018

// mostApart is how much strips in one panel differ at most, in metres.
const mostApart = 0.006

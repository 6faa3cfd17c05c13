package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// productNoun is the part that a size belongs to: the one named behind it, else
// before it, else in its clause, else the one that its topic and size suggest.
func (r *reader) productNoun(i, end int, sheet bool) string {
	if r.jointSized(i, end) {
		return "joint"
	}
	if b := r.productBehind(i, end, sheet); b != "" {
		return b
	}
	if r.items[i].amount.link == linkAt && r.within(r.afterStop(i), i, kindNoun, "strip") >= 0 && r.bySize(i, end) == "strip" {
		return "strip" // "strips on the sled 5 @ 2 x 1/4"
	}
	if k := r.prev(i); r.is(k, kindFact) && strings.HasSuffix(r.items[k].word, " sled") {
		return "sled" // "waxed sled 20 x 50"
	} else if r.is(k, kindWood) && !sheet {
		return r.bySize(i, end)
	} else if b := r.broadPart(k); b != "" {
		return b
	}
	if b := r.productInClause(i, end, sheet); b != "" {
		return b
	}
	switch {
	case r.jointsBefore(i):
		return "joint"
	case r.panelBefore(i):
		return "panel"
	case r.topic == Profile && r.opens("our bag is", "our bag has", "my bag is", "my bag has") >= 0:
		return "bag"
	case r.topic == Pump && !sheet && r.word(i-1, "a") && r.word(i-2, "on"):
		return "panel" // "20 inHg on a 24x24"
	case (r.topic == Pump || r.topic == Profile) && r.bySize(i, end) != "strip":
		return "bed" // but "this pump won't pass 21, 4 strips of ash, 2 3/4 by 3/4"
	case sheet:
		return "panel"
	}
	return r.bySize(i, end)
}

// jointSized: "the joint is 20 x 900", "a 3/4 x 36 edge" tell how high and how long it is.
func (r *reader) jointSized(i, end int) bool {
	if end-i != 2 || !small(r.size(i)) || r.size(i+1) < 4*r.size(i) {
		return false
	}
	k := i - 1
	for r.word(k, "is", "are", "measures", "measure", "of", "a", "an", "about", "each") {
		k--
	}
	if k < i-1 && (r.is(k, kindNoun, "joint") || r.word(k, "edge", "edges")) {
		return !r.is(end, kindNoun)
	}
	behind := r.is(end, kindNoun, "joint") || r.word(end, "edge") && r.word(i-1, "a", "an", "the", "each", "per")
	return behind && !r.is(end+1, kindNoun) && !r.word(end+1, "glued", "banding")
}

// jointsBefore: "9 joints, 3/4 x 48 each" says how thick and how long each is.
func (r *reader) jointsBefore(i int) bool {
	from, to := r.clause(i)
	if from < 2 {
		return false
	}
	f, t := r.clause(from - 2)
	return r.within(f, t, kindNoun, "joint") >= 0 && r.within(f, t, kindNoun, "strip", "panel") < 0 && (r.opensWithin(i, to, "each", "apiece") || r.within(i, to, kindRole, "in a row") >= 0)
}

// panelBefore: "door blank, 36 by 80".
func (r *reader) panelBefore(i int) bool {
	from, _ := r.clause(i)
	if from < 2 || r.items[from-1].brk != ',' && r.items[from-1].brk != ':' && r.items[from-1].brk != '-' {
		return false
	}
	f, t := r.clause(from - 2)
	return r.within(f, t, kindNoun, "panel") >= 0 && r.within(f, t, kindNoun, "bed", "frame", "bag", "press", "strip", "opening") < 0 && r.amountsIn(f, t) == 0
}

// productBehind is the part named after a size of items [i, end).
func (r *reader) productBehind(i, end int, sheet bool) string {
	j := r.nextNear(end - 1)
	if r.manyBefore(i) && r.bySize(i, end) == "panel" {
		return "panel" // "how many 30x40 will the bag do", "the big ones, 42x96"
	}
	if r.word(end, "for", "as") && r.word(end+1, "the", "my", "our", "a") && r.is(end+2, kindNoun, "bar", "sled") {
		return r.items[end+2].id // "use a 1x2 for the side bar"
	}
	if r.is(j, kindNoun, "bar") && j+1 < len(r.items) && r.items[j+1].amount != nil && r.mentions(kindNoun, "strip") {
		j = -1 // "2 1/2 x 1/2 bar 2 tall"
	}
	for r.is(j, kindWood) || r.is(j, kindGlue) {
		if r.sizedPart(r.next(j)) == "" && r.is(j, kindWood) && !sheet {
			return r.bySize(i, end)
		}
		j = r.next(j)
	}
	if r.is(j, kindNoun, "bar") && isPlural(r.items[j].word) && strings.HasPrefix(r.items[j].word, "batten") && r.within(j+1, len(r.items), kindNoun, "bar") >= 0 {
		return "strip" // "9 no. 19x65 battens, bar 45 high"
	}
	if r.inAll(end) && r.bySize(i, end) == "panel" {
		return "panel" // "strips are 24x48 total"
	}
	switch b := r.sizedPart(j); {
	case b == "strip" && (sheet || r.size(i) > 0.25 && r.size(i+1) > 0.25):
		return "panel"
	case b != "" && b != "core":
		return b
	case r.is(j, kindNoun, "face"):
		return "panel"
	case sheet && r.has(unit.PanelWidth) && !r.has(unit.BedWidth) && r.topic == Schedule && r.word(i-1, "a", "one", "our", "the") && r.word(i-2, "on", "in"):
		return "bed" // "40 panels 16x24 on a 4x8"
	case sheet && r.has(unit.PanelWidth) && !r.has(unit.BedWidth) && r.mentions(kindNoun, "press", "frame", "bed") && !r.is(j, kindNoun, "panel"):
		return "bed"
	case (r.topic == Face || r.faceAsked(i)) && !r.mentions(kindNoun, "bar") && !r.is(j, kindNoun) && r.bySize(i, end) == "panel":
		return "panel"
	}
	return ""
}

// manyBefore reports whether "how many" or "ones" stands right before a size at item i.
func (r *reader) manyBefore(i int) bool {
	if r.isBreak(i-1) && i > 1 {
		return r.word(i-2, "ones") && r.mentions(kindAsk, "schedule")
	}
	return r.word(i-1, "how many", "ones") || r.word(i-1, "many") && r.word(i-2, "how")
}

// inAll reports whether what stands before item j is of all the strips together.
func (r *reader) inAll(j int) bool {
	return r.word(j, "total", "overall", "altogether", "combined", "assembled", "together") || r.word(j, "in", "all") && r.word(j+1, "all", "together", "total") || r.word(j, "glued") && r.word(j+1, "up")
}

// productInClause is the part named elsewhere in the clause of a size, a bag
// anywhere, or the bar of the clause before.
func (r *reader) productInClause(i, end int, sheet bool) string {
	from, to := r.clause(i)
	for k := i - 1; k >= from; k-- {
		if b := r.broadPart(k); b != "" && (b != "press" || sheet) {
			return b
		}
	}
	for k := end; k < to && sheet; k++ {
		if r.is(k, kindNoun, "frame", "bed", "bag", "panel") {
			return r.items[k].id
		}
	}
	if r.mentions(kindNoun, "bag") && !sheet && r.size(i+1) > 2 && end-i == 2 && !r.mentions(kindNoun, "panel", "sled") {
		return "bag"
	}
	if b := r.barBefore(from); b && small(r.size(i)) {
		return "bar"
	}
	return ""
}

// sizedPart is the part that item j names, if parts of its kind are told by their
// size.
func (r *reader) sizedPart(j int) string {
	if j >= 0 && r.is(j, kindNoun, "strip", "panel", "bar", "sled", "bag", "bed", "frame", "press", "core", "caul", "mat", "opening") {
		return r.items[j].id
	}
	return ""
}

// broadPart is sizedPart without those of which mostly the thickness is told: a
// size that follows them is another part's.
func (r *reader) broadPart(j int) string {
	if r.is(j, kindNoun, "core", "mat", "caul") {
		return ""
	}
	return r.sizedPart(j)
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Numbers of a piece, of some of the strips, or of what they came from.

// oneOffcut: "I have an offcut 9 in long if that helps" is of no strip in the panel.
func (r *reader) oneOffcut(i int) {
	single := r.word(i, "offcut", "off cut", "cutoff", "leftover", "scrap", "remnant") && r.word(i-1, "an", "a", "one", "some", "this", "that", "spare", "nice", "good")
	if !single || !r.is(i, kindNoun, "strip") && r.items[i].kind != kindNone && !r.is(i, kindNot) {
		return
	}
	others := false
	for k := range r.items {
		others = others || k != i && r.is(k, kindNoun, "strip") && isPlural(r.items[k].word)
	}
	if !others {
		return
	}
	_, to := r.clause(i)
	for k := i + 1; k < to; k++ {
		if r.live(k) && r.length(k) && !r.is(r.next(k), kindNoun) {
			r.items[k].amount.dead = true
			r.idleDirections(k+1, k+2)
		}
	}
}

// twists marks how far a board is out of wind, which no field holds: "twist 1/4 corner
// to corner".
func (r *reader) twists(i int) {
	if !r.live(i) || !r.length(i) {
		return
	}
	p, n := i-1, i+1
	for r.word(p, "is", "of", "about", "with", "has", "maybe", "a", "by") {
		p--
	}
	if r.word(n, "of", "a") {
		n++
	}
	twisted := func(k int) bool { return r.word(k, "twist", "twisted", "winding", "racked", "racking") }
	if twisted(p) || twisted(n) && !r.is(r.next(n), kindNoun) || r.word(n, "out") && r.word(n+1, "of") && r.word(n+2, "square", "wind", "twist", "winding") {
		r.items[i].amount.dead = true
	}
}

// lumber: "8 ft 2x10" is what the strips came from.
func (r *reader) lumber(i int) {
	r.likened(i)
	if !r.timesAt(i) || !r.live(i) || !r.live(i-1) || !r.live(i-2) || !r.items[i-2].amount.is(unit.Distance) || r.items[i-2].amount.unit.Symbol != "ft" || r.items[i-1].amount.link != linkNone {
		return
	}
	thick, ok := r.items[i-1].amount.whole()
	if wide, okW := r.items[i].amount.whole(); ok && okW && thick >= 1 && thick <= 4 && wide >= 2 && wide <= 12 && !r.is(r.next(i), kindNoun, "panel", "bed", "frame", "press") {
		for k := i - 2; k <= i; k++ {
			r.items[k].amount.dead = true
		}
	}
}

// likened: in "the difference between a fence and a bar, is it like the 2x4" the lumber
// is what a thing is held against.
func (r *reader) likened(i int) {
	if !r.timesAt(i) || !r.live(i) || !r.live(i-1) || !r.items[i].amount.bare() || !r.items[i-1].amount.bare() || !r.word(i-2, "a", "the") || r.is(r.next(i), kindNoun) {
		return
	}
	k := r.within(0, i, kindAsk, "words")
	if k >= 0 && (r.word(i-3, "like", "as", "called") || strings.Contains(r.items[k].word, "difference")) {
		r.items[i-1].amount.dead, r.items[i].amount.dead = true, true
	}
}

// someStrips keeps what is said of some of the strips from being said of all: "first 3
// strips are walnut", "2 of them 3 wide the rest 2", "half are 2 wide and half 3".
func (r *reader) someStrips(i int) {
	if !r.live(i) {
		return
	}
	if r.word(i-1, "first", "last", "outer", "outside", "middle", "inner", "outermost", "remaining", "other") && r.countedAt(i) && r.is(r.next(i), kindNoun, "strip") {
		r.items[i].amount.dead = true
		return
	}
	if r.word(i+1, "are", "is", "in", "on", "at") {
		r.groupWidth(i)
	}
	if !r.length(i) || !r.is(r.next(i), kindAttr, "wide") && !r.is(r.prev(i), kindAttr, "wide") {
		return
	}
	if some := r.word(i-1, "them", "those", "of them") && r.live(i-3) || r.word(i-1, "of them") || r.halfBehind(i); !some {
		return
	}
	_, to := r.sentence(i)
	for j := i + 1; j < to && j < i+8; j++ {
		if !r.live(j) || r.spokenHalf(j) {
			continue
		}
		if alike(r.items[i].amount, r.items[j].amount) && !r.is(r.next(j), kindNoun) && (r.opensWithin(i, j, "rest", "others", "other", "half") || r.halfBehind(j)) {
			r.items[i].amount.dead, r.items[j].amount.dead = true, true
			r.idleDirections(i+1, i+2)
			r.idleDirections(j+1, j+2)
		}
		return
	}
}

// halfBehind: "half are 2", "half the strips are 2".
func (r *reader) halfBehind(i int) bool {
	for k := i - 1; k >= 0 && k >= i-6 && !r.isBreak(k); k-- {
		if r.spokenHalf(k) || r.word(k, "half", "some") {
			return r.items[k].amount == nil || r.items[k].amount.bare()
		}
		if r.items[k].amount != nil {
			return false
		}
	}
	return false
}

// groupWidth: "the outside two are 3 wide and the four in the middle 2 1/4" tells the width
// of none but those.
func (r *reader) groupWidth(i int) {
	if n, ok := r.wholeAt(i); !ok || n > 12 || !r.items[i].amount.bare() {
		return
	}
	j := i + 1
	switch {
	case r.word(i-1, "outside", "outer", "middle", "inner", "inside", "end", "center", "centre", "outermost", "edge") && r.word(j, "are", "is"):
		j++
	case (r.word(i-1, "the") || r.isBreak(i-1)) && r.word(j, "in", "on", "at") && r.word(j+1, "the") && r.word(j+2, "middle", "outside", "center", "centre", "inside", "ends", "edges", "edge"):
		j += 3
	default:
		return
	}
	for r.word(j, "are", "is") {
		j++
	}
	if !r.live(j) || !r.length(j) || r.is(r.next(j), kindAttr, "thick", "long") || r.is(r.next(j), kindNoun) {
		return
	}
	r.items[i].amount.dead, r.items[j].amount.dead = true, true
	r.idleDirections(j+1, j+2)
}

// oneOfEachWidth: "one strip 60 wide, one 75 and one 90" tells how wide each strip is.
func (r *reader) oneOfEachWidth() {
	var at []int
	first := -1
	for i := range r.items {
		j := i + 1
		if r.items[i].amount == nil || !r.one(i) || !r.items[i].amount.bare() {
			continue
		}
		if r.is(j, kindNoun, "strip") {
			j++
		}
		if j >= len(r.items) || !r.free(j) || !r.length(j) || r.size(j) > widestStrip || r.is(r.next(j), kindNoun) || r.is(r.next(j), kindAttr) && !r.is(r.next(j), kindAttr, "wide") {
			return
		}
		if first < 0 && !r.is(i+1, kindNoun, "strip") && !r.is(i-1, kindNoun, "strip") && !(r.isBreak(i-1) && r.is(i-2, kindNoun, "strip")) {
			return // unless as in "two planks, one 5 and one 7 wide"
		}
		if first < 0 {
			first = i
		}
		at = append(at, j)
	}
	if len(at) < 2 || r.has(unit.StripWidths) || r.stockContext() {
		return
	}
	var widths unit.Numbers
	for _, j := range at {
		v, _, ok := r.valueOf(r.items[j].amount, unit.StripWidth)
		if !ok || impossible(unit.StripWidth, v) != "" {
			return
		}
		widths = append(widths, v)
	}
	for _, j := range at {
		r.items[j].used = true
		r.useWide(j)
	}
	for i := range r.items {
		if r.one(i) && i >= first && i < at[len(at)-1] {
			r.items[i].used = true
		}
	}
	r.bound = append(r.bound, binding{Fact{Field: unit.StripWidths, Value: widths, Unit: r.bareUnit(nil, unit.Distance), Text: r.textOf(at[0], at[len(at)-1])}, at[0], false})
}

package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// A lid is a sled or a caul that is said to lie on top, but not how thick it is: "sled on
// top", "and another on top", "top sled".
type lid struct {
	at   int
	part string
}

// tellsStack reports whether the layers that were found are those of a stack, though nobody
// said so: three of them, and one that is stiff.
func (r *reader) tellsStack(spans []layerSpan, lids []lid) bool {
	rigid, more := false, len(lids)
	for _, s := range spans {
		rigid = rigid || s.part == "sled" || s.part == "caul"
		if s.amount >= 0 && r.onBothEnds(s) || r.toldAgain(s) {
			more++
		}
	}
	if !slices.ContainsFunc(spans, func(s layerSpan) bool { return s.part == "strips" || s.part == "core" }) {
		more = 0
	}
	return rigid && thickSpans(spans)+more >= 3 && len(spans)+more >= 3
}

// thickSpans is how many layers have a thickness.
func thickSpans(spans []layerSpan) int {
	n := 0
	for _, s := range spans {
		if s.amount >= 0 {
			n++
		}
	}
	return n
}

// lids are those told from item from on.
func (r *reader) lids(from int) []lid {
	var out []lid
	last := "" // the part that was named last
	for i := from; i < len(r.items); i++ {
		if r.is(i, kindNoun) {
			last = r.items[i].id
		}
		part := r.lidAt(i, last)
		if part != "" && !r.lidUnsure(i) {
			out = append(out, lid{i, part})
		}
	}
	return out
}

// lidAt is the part that item i says to lie on top, "" where it is none or has a thickness.
func (r *reader) lidAt(i int, last string) string {
	switch named := r.is(i, kindNoun, "sled", "caul"); {
	case !named && (r.word(i, "another") || r.word(i, "more") && r.word(i-1, "one")) && r.onTopBehind(i) && in(last, "sled", "caul"):
		return last
	case !named || r.thickBeside(i):
		return ""
	case in(r.items[i].word, "top sled", "upper sled", "top caul", "upper caul"), r.word(i-1, "top", "upper"), r.onTopBehind(i):
		return r.items[i].id
	}
	return ""
}

// onTopBehind: "sled on top", "the same one again over the top", not "on top of the strips 3/8".
func (r *reader) onTopBehind(i int) bool {
	j := i + 1
	for r.word(j, "again", "too", "also", "laid", "goes", "going", "lies", "sits", "like", "that", "it", "the", "same", "one") {
		j++
	}
	if r.word(j, "on top of that", "on top of it") {
		return true
	}
	if !r.word(j, "on", "over", "across") {
		return false
	}
	if j++; r.word(j, "the") {
		j++
	}
	n := r.thickBehind(j)
	return r.word(j, "top") && (n < 0 || r.is(r.next(n), kindNoun)) // not "sled on top 3/4"
}

// thickBehind is the thickness told right behind item i: "is 3/4", "of 3/4"; -1 where none is.
func (r *reader) thickBehind(i int) int {
	n := i + 1
	for r.word(n, "is", "thats", "of", "at", "its") {
		n++
	}
	if n < len(r.items) && r.items[n].amount != nil && r.length(n) {
		return n
	}
	return -1
}

// thickBeside reports whether the part at item i has a number of its own.
func (r *reader) thickBeside(i int) bool {
	before := i > 0 && r.items[i-1].amount != nil && r.length(i-1) && !r.one(i-1)
	return before || r.thickBehind(i) >= 0
}

// lidUnsure reports whether the part at item i is denied, or only asked about.
func (r *reader) lidUnsure(i int) bool {
	from, to := r.clause(i)
	asked := to < len(r.items) && r.items[to].brk == '?' && r.amountsIn(from, to) == 0
	return asked || r.within(from, i, kindNot) >= 0 || r.opensWithin(from, to, "need", "needs", "should", "if", "or", "can", "could", "without", "no", "want", "maybe", "instead", "off", "away", "took", "taken", "left", "home", "lost", "goes over")
}

// closedBy lays the lids on the layers, each as thick as what else is told of the part.
func (r *reader) closedBy(lids []lid, ls unit.Layers) unit.Layers {
	fence := unit.Layers(nil)
	if at := len(ls) - 1; len(lids) > 0 && ls[at].Part == "fence" {
		ls, fence = ls[:at:at], ls[at:]
	}
	for _, l := range lids {
		if !closed(ls, l.part) {
			ls = append(ls, unit.Layer{Part: l.part, Thickness: onlyThickness(ls, l.part)})
		}
		r.items[l.at].used = true
	}
	return fenceBeside(append(ls, fence...))
}

// closed reports whether a part lies above all the work already.
func closed(ls unit.Layers, part string) bool {
	for k := len(ls) - 1; k >= 0 && ls[k].Part != "strips" && ls[k].Part != "core"; k-- {
		if ls[k].Part == part {
			return true
		}
	}
	return false
}

// onlyThickness is how thick all layers of a part are; 0 where they differ or none is told.
func onlyThickness(ls unit.Layers, part string) float64 {
	thick := 0.0
	for _, l := range ls {
		if l.Part != part || l.Thickness == 0 {
			continue
		}
		if thick != 0 && thick != l.Thickness {
			return 0
		}
		thick = l.Thickness
	}
	return thick
}

// topAndBottom lays a part on both sides of the others: "3/4 sleds top and bottom".
func (r *reader) topAndBottom(spans []layerSpan, ls unit.Layers) unit.Layers {
	for _, s := range spans {
		if !r.onBothEnds(s) {
			continue
		}
		var rest, above unit.Layers
		n := 0
		var plate unit.Layer
		for k, l := range ls {
			switch {
			case l.Part == s.part:
				plate = l
				n++
			case len(spans) == len(ls) && r.layerPlace(spans[k]) == onTop:
				above = append(above, l)
				r.usePlace(spans[k])
			default:
				rest = append(rest, l)
			}
		}
		if n == 1 {
			if at := r.endsAt(s); r.bothEnds(at) {
				r.items[at].used, r.items[at].meaning = true, meaning{}
			}
			return append(append(append(unit.Layers{plate}, rest...), plate), above...)
		}
	}
	return ls
}

// onBothEnds reports whether a part lies "top and bottom", "above and below", "on both sides".
func (r *reader) onBothEnds(s layerSpan) bool {
	return (s.part == "sled" || s.part == "caul") && (r.bothEnds(r.endsAt(s)) || s.pairedIn(r))
}

// endsAt is the item at which it may be said that a part lies on both ends.
func (r *reader) endsAt(s layerSpan) int {
	i := s.last() + 1
	for r.word(i, "at", "on", "the", "one", "each") || r.is(i, kindAttr, "thick") {
		i++
	}
	return i
}

func (r *reader) bothEnds(i int) bool {
	other := i + 2
	if r.one(other) {
		other++ // "one sled under and one over"
	}
	if r.word(i, "top", "bottom", "above", "below", "under", "over") && r.word(i+1, "and", "&") && r.word(other, "top", "bottom", "above", "below", "under", "over", "on") {
		return true
	}
	return r.word(i, "either") && r.word(i+1, "side") || r.word(i, "both") && r.word(i+1, "sides", "ends") || r.is(i, kindFact, "faces=2")
}

// betweenPanels lays as many panels as were counted where one is told and a mat lies
// between: "3 panels: sled 3/4, strips 3/4 each with a 1/4 mat between, sled on top".
func (r *reader) betweenPanels(ls unit.Layers) unit.Layers {
	n := r.panelsStacked()
	strips, mat := -1, -1
	for k, l := range ls {
		switch {
		case l.Part == "strips" && strips < 0:
			strips = k
		case l.Part == "mat" && mat < 0:
			mat = k
		case l.Part == "strips", l.Part == "mat", l.Part == "core":
			return ls
		}
	}
	if n < 2 || strips < 0 || mat < 0 || !r.liesBetween("mat") {
		return ls
	}
	var out unit.Layers
	for k, l := range ls {
		if k != mat {
			out = append(out, l)
		}
		if k == strips {
			for range n - 1 {
				out = append(out, ls[mat], ls[strips])
			}
		}
	}
	return out
}

// facedBelow lays the face of a core's underside, where faces lie on both sides and one is told.
func (r *reader) facedBelow(ls unit.Layers) unit.Layers {
	core, strips := -1, -1
	for k, l := range ls {
		switch {
		case l.Part == "core" && core < 0:
			core = k
		case l.Part == "strips" && strips < 0:
			strips = k
		case l.Part == "core", l.Part == "strips":
			return ls
		}
	}
	if core < 0 || strips != core+1 && strips != core-1 || !r.facesTwice() {
		return ls
	}
	other := core
	if strips < core {
		other = core + 1
	}
	return slices.Insert(slices.Clone(ls), other, ls[strips])
}

// facesTwice: "faces 1/8 both sides", not "bars on both sides".
func (r *reader) facesTwice() bool {
	at := r.within(0, len(r.items), kindFact, "faces=2")
	if at < 0 {
		return false
	}
	from, _ := r.clause(at)
	for k := at - 1; k >= from; k-- {
		if r.is(k, kindNoun) {
			return r.is(k, kindNoun, "face", "strip")
		}
	}
	return false
}

// betweenAll reports whether what is said to lie between lies between all of what is
// stacked: "a mat between them", not "a mat between the strips and the caul".
func (r *reader) betweenAll() bool {
	at := r.opens(betweenWords...)
	if at < 0 {
		return false
	}
	_, to := r.clause(at)
	return !r.opensWithin(at, to, "and")
}

// panelsStacked is how many panels lie on each other, 0 where that is not said, or where
// they are those of several loads.
func (r *reader) panelsStacked() int {
	if r.dayPlan() || r.wordIn("side by side", "side", "load", "loads", "presses", "per", "pulls") || !r.betweenAll() {
		return 0
	}
	for i := range r.items {
		if n, ok := r.wholeAt(i); ok && n > 1 && n < 13 && r.is(i+1, kindNoun, "panel") && isPlural(r.items[i+1].word) {
			return n
		}
	}
	return 0
}

// fenceBeside puts a fence that is told behind all others beside the work of the only level.
func fenceBeside(ls unit.Layers) unit.Layers {
	at := len(ls) - 1
	if at < 2 || ls[at].Part != "fence" || ls[0].Part != "sled" || ls[at-1].Part != "sled" && ls[at-1].Part != "caul" {
		return ls
	}
	for _, l := range ls[1 : at-1] {
		if l.Part == "sled" || l.Part == "fence" {
			return ls
		}
	}
	return append(unit.Layers{ls[0], ls[at]}, ls[1:at]...)
}

// bareLayer reports whether nothing but a caul or a core is told from item from on: "stack:
// sled 3/4, strips 5/16, caul".
func (r *reader) bareLayer(from, to, noun int) bool {
	if !r.is(noun, kindNoun, "caul", "core") || from > 0 && r.items[from-1].brk == '(' || isPlural(r.items[noun].word) || r.lidUnsure(noun) {
		return false
	}
	for i := from; i < to; i++ {
		if i != noun && !r.word(i, "a", "one", "another", "then", "and") {
			return false
		}
	}
	return !r.onTopBehind(noun)
}

// sledSpan is the sled whose thickness stands at item i.
func (r *reader) sledSpan(i int) layerSpan {
	s := layerSpan{noun: i, amount: i, part: "sled"}
	if r.is(i+1, kindNoun, "sled") {
		s.noun++
	}
	return s
}

// sledAgain: "sled 3/4, strips 1/2, sled again, strips 1/2, sled".
func (r *reader) sledAgain(from, to, noun int) bool {
	if !r.is(noun, kindNoun, "sled") || isPlural(r.items[noun].word) || from > 0 && r.items[from-1].brk == '(' || r.lidAt(noun, "") != "" {
		return false
	}
	for i := from; i < to; i++ {
		if i != noun && !r.word(i, "a", "another", "then", "and", "again", "same") && !(r.word(i, "the") && r.word(i+1, "same")) {
			return false
		}
	}
	own := to+1 < len(r.items) && r.items[to].brk == ',' && r.items[to+1].amount != nil && r.isBreak(to+2)
	return !own && (to >= len(r.items) || r.isBreak(to))
}

// sledsKnown leaves out sleds without a thickness where none has one.
func (r *reader) sledsKnown(spans []layerSpan) []layerSpan {
	if r.openLayer("sled") || slices.ContainsFunc(spans, func(s layerSpan) bool { return s.part == "sled" && s.amount >= 0 }) {
		return spans
	}
	return slices.DeleteFunc(spans, func(s layerSpan) bool { return s.part == "sled" })
}

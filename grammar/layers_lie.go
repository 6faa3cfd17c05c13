package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// sandwiched lays the part that is told first where it is said to lie: "1/2 strips between a
// 3/4 sled and a 3/8 caul", "3/8 strips under a 1/2 caul on a 3/4 sled".
func (r *reader) sandwiched(spans []layerSpan) []layerSpan {
	if len(spans) < 3 || spans[0].copies > 1 {
		return spans
	}
	says := func(a, b layerSpan, words ...string) bool {
		found := false
		for i := a.last() + 1; i < b.first(); i++ {
			if r.isBreak(i) {
				return false
			}
			found = found || r.word(i, words...)
		}
		return found
	}
	in, one, two := spans[0], spans[1], spans[2]
	if one.part == in.part || two.part == in.part {
		return spans
	}
	switch {
	case says(in, one, betweenWords...) && says(one, two, "and"):
	case says(in, one, "under", "beneath", "below") && says(one, two, "on", "onto", "over") && two.part == "sled":
	default:
		return spans
	}
	if two.part == "sled" || two.part == "strips" && one.part != "sled" {
		one, two = two, one
	}
	return append([]layerSpan{one, in, two}, spans[3:]...)
}

// fromTheTop reports whether "from the top", "starting at the top" stands right before item i.
func (r *reader) fromTheTop(i int) bool {
	for i--; i > 0 && (r.isBreak(i) || r.word(i, "its", "a", "the", "we", "have", "is", "down", "with")) && !r.word(i, "top"); i-- {
	}
	if !r.word(i, "top") {
		return false
	}
	for i--; r.word(i, "the", "very"); i-- {
	}
	return r.word(i, "from", "starting at", "start at", "starting from") || r.word(i, "at") && r.word(i-1, "starting", "start", "begin", "beginning", "starts")
}

// sameStrips: of "another sled, strips the same" the strips are as thick as those before.
func (r *reader) sameStrips(from, to, noun int) bool {
	if !r.is(noun, kindNoun, "strip") {
		return false
	}
	same := false
	for i := from; i < to; i++ {
		same = same || r.word(i, "same", "again", "another")
		if i != noun && !r.word(i, "a", "the", "another", "then", "and", "again", "same", "as", "before", "of", "more", "layer") {
			return false
		}
	}
	if !same {
		return false
	}
	for i := 0; i < from; i++ {
		if r.is(i, kindNoun, "strip") && r.thickBeside(i) {
			return true
		}
	}
	return false
}

// toldAgain reports whether a layer without a thickness is said to be one more like those before.
func (r *reader) toldAgain(s layerSpan) bool {
	if s.amount >= 0 || s.part != "sled" && s.part != "strips" {
		return false
	}
	return r.word(s.noun-1, "another", "same") || r.word(s.noun+1, "again", "same") || r.word(s.noun+1, "the") && r.word(s.noun+2, "same")
}

// eachOn: "three panels 3/4 thick, each on a 1/2 sled", "panels 3/4, each one on its own
// sled", "three panels 3/4 on 1/2 sleds".
func (r *reader) eachOn(i int) bool {
	if !r.word(i, "on", "each", "every") {
		return false
	}
	from, _ := r.sentence(i)
	if r.word(i, "on") && r.within(from, i, kindNoun, "panel") >= 0 {
		j := i + 1
		if r.word(j, "their", "own") {
			j++
		}
		return j+1 < len(r.items) && r.items[j].amount != nil && r.length(j) && r.is(j+1, kindNoun, "sled") && isPlural(r.items[j+1].word)
	}
	if !r.word(i, "each", "every") {
		return false
	}
	j := i + 1
	for r.word(j, "one", "panel", "sits", "lies", "goes", "laid", "of", "them", "is") {
		j++
	}
	if !r.word(j, "on", "upon", "onto") {
		return false
	}
	for j++; r.word(j, "a", "an", "its", "their", "own", "the", "one") || j < len(r.items) && r.items[j].amount != nil && r.length(j); j++ {
	}
	return r.is(j, kindNoun, "sled") && r.within(from, i, kindNoun, "panel") >= 0
}

// stripsOnEach: of "two sleds with a mat between, strips on each" strips lie on the last sled too.
func (r *reader) stripsOnEach() bool {
	for i := range r.items {
		if !r.word(i, "each", "both") || !r.word(i-1, "on", "on top of") && !(r.word(i-1, "of") && r.word(i-2, "top")) || r.is(i+1, kindNoun) && !r.is(i+1, kindNoun, "sled") {
			continue
		}
		if p := r.prev(i); r.is(p, kindNoun, "strip") {
			return true
		}
	}
	return false
}

// likeOthers makes the layers of a part that were named without a thickness as thick as the others.
func likeOthers(ls unit.Layers, part string) {
	thick := onlyThickness(ls, part)
	for k := range ls {
		if ls[k].Part == part && ls[k].Thickness == 0 {
			ls[k].Thickness = thick
		}
	}
}

// downwardsFrom turns round layers that are told "from the top: caul, mat, strips, sled".
func (r *reader) downwardsFrom(spans []layerSpan, told bool) []layerSpan {
	if told && r.downwards() || r.fromTheTop(min(spans[0].first(), spans[len(spans)-1].first())) {
		slices.Reverse(spans)
	}
	return spans
}

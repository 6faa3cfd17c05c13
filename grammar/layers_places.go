package grammar

import "slices"

// A place is where a layer is said to lie among all the others.
type place uint8

const (
	noPlace  place = iota
	onTop          // "caul on top 1/2", "3/4 mat over everything"
	atBottom       // "sled below 1/2", "bottom sled 3/4"
)

// toldPlace is the place that the words from item i on say, and the item behind them.
func (r *reader) toldPlace(i int) (place, int) {
	for r.word(i, "goes", "going", "lies", "laid", "sits", "thats", "that", "is") {
		i++
	}
	j := i
	switch {
	case r.word(i, "below", "beneath", "underneath", "under"):
		return atBottom, r.pastAll(i + 1)
	case r.word(i, "over", "above") && r.pastAll(i+1) > i+1:
		return onTop, r.pastAll(i + 1)
	case !r.word(i, "on", "at", "up"):
		return noPlace, i
	}
	for j++; r.word(j, "the", "very"); j++ {
	}
	switch {
	case r.word(j, "bottom"):
		return atBottom, r.pastAll(j + 1)
	case r.word(j, "top"):
		return onTop, r.pastAll(j + 1)
	}
	return noPlace, i
}

// pastAll is the item behind words for all that lies there: "of it all", "everything".
func (r *reader) pastAll(i int) int {
	j := i
	for r.word(j, "of", "it", "that", "them", "all", "the", "everything", "lot", "whole", "stack") || r.word(j, "upper", "top") && r.word(j-1, "the") && r.word(j+1, "one") || r.word(j, "one") && r.word(j-1, "upper", "top") {
		j++
	}
	if r.word(j-1, "of", "the") {
		return i // "on top of the strips"
	}
	return j
}

// placedThick is the item of the thickness told behind the place of a part that is named
// before item i: "caul on top 1/2", not "on top 1/2 strips"; -1 where none is.
func (r *reader) placedThick(i int) int {
	if n := r.prev(i); !r.is(n, kindNoun, "sled", "caul", "mat") || n < i-2 {
		return -1
	}
	p, j := r.toldPlace(i)
	if p == noPlace {
		return -1
	}
	n := r.thickBehind(j - 1)
	if n < 0 || !r.free(n) || r.linkedBehind(n) || r.is(r.next(n), kindNoun) {
		return -1
	}
	return n
}

// layerPlace is where a layer is said to lie.
func (r *reader) layerPlace(s layerSpan) place {
	w := r.items[s.noun].word
	switch {
	case s.part != "sled" && s.part != "caul" && s.part != "mat":
		return noPlace
	case in(w, "top sled", "upper sled", "top caul", "upper caul"), r.word(s.first()-1, "top", "upper"):
		return onTop
	case in(w, "bottom sled", "lower sled"), r.word(s.first()-1, "bottom", "lower"):
		return atBottom
	}
	if r.bothEnds(s.noun+1) || r.bothEnds(s.last()+1) {
		return noPlace
	}
	p, j := r.toldPlace(s.noun + 1)
	if p == noPlace {
		p, j = r.toldPlace(s.last() + 1)
	}
	if j < len(r.items) && j != s.amount && !r.isBreak(j) && !r.word(j, "is", "at", "its", "and", "then") {
		return noPlace // "under the strips"
	}
	return p
}

// placed lays what is told first but lies on top of all, and the sled that is told last but
// lies below all, where they are said to lie: "caul on top 1/2, strips 3/4, sled 3/4".
func (r *reader) placed(spans []layerSpan) []layerSpan {
	top, bottom := -1, -1
	for k, s := range spans {
		switch p := r.layerPlace(s); {
		case p == onTop && top >= 0, p == atBottom && bottom >= 0:
			return spans
		case p == onTop:
			top = k
		case p == atBottom:
			bottom = k
		}
	}
	first := top == 0 || top == 1 && bottom == 0
	last := bottom == len(spans)-1 && bottom > 1 && spans[bottom].part == "sled"
	if !first && !last {
		return spans
	}
	if !first {
		top = -1
	}
	var rest []layerSpan
	for k, s := range spans {
		if k != top && k != bottom {
			rest = append(rest, s)
		}
	}
	if len(rest) == 0 {
		return spans
	}
	if first && bottom != 0 && rest[0].part != "sled" || !first && in(rest[0].part, "mat", "caul") {
		slices.Reverse(rest) // told downwards
	}
	if bottom >= 0 {
		rest = append([]layerSpan{spans[bottom]}, rest...)
	}
	if first {
		rest = append(rest, spans[top])
	}
	for _, s := range spans {
		r.usePlace(s)
	}
	return rest
}

// usePlace uses up the words that say where a layer lies.
func (r *reader) usePlace(s layerSpan) {
	for i := max(s.first()-1, 0); i < len(r.items) && i < s.last()+3; i++ {
		if r.word(i, "upper", "lower", "top", "bottom", "below", "beneath", "underneath") {
			r.items[i].used = true
		}
	}
}

// pairAt is the sled of which the number at item i says that there are two, one below and
// one above all the rest: "two 3/4 sleds top and bottom", "between two sleds 3/4".
func (r *reader) pairAt(i, to int) (layerSpan, int) {
	if n, ok := r.wholeAt(i); !ok || n != 2 || i+2 >= to {
		return layerSpan{}, 0
	}
	s := layerSpan{noun: i + 1, amount: i + 2, count: i, copies: 1, part: "sled"}
	if r.items[i+1].amount != nil {
		s.noun, s.amount = i+2, i+1
	}
	if !r.is(s.noun, kindNoun, "sled") || !r.free(s.amount) || !r.length(s.amount) || r.linkedBehind(s.amount) || !r.onBothEnds(s) {
		return layerSpan{}, 0
	}
	return s, i + 3
}

// pairedIn reports whether all the rest is said to lie between a pair.
func (s layerSpan) pairedIn(r *reader) bool {
	i := s.count - 1
	for r.word(i, "the", "my", "our", "these", "those") {
		i--
	}
	if s.count == 0 || !r.word(i, betweenWords...) || r.opens("each", "every") >= 0 {
		return false
	}
	from, _ := r.clause(i)
	return r.within(from, i, kindNoun, "mat", "caul", "film") < 0 // "a mat between two sleds"
}

// toldFrom reports whether it is said from which end layers are told: "bottom up:".
func (r *reader) toldFrom() bool {
	for i := range r.items {
		if r.is(i, kindRole, "stackorder") && !in(r.items[i].word, "stack", "stacked", "stacking", "layers", "stack up") {
			return true
		}
	}
	return false
}

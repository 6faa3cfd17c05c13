package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// layersCorrected gives a layer the thickness that takes back the one before: "strips 7/8 no
// sorry 1 inch", "strips 7/8, make that 1".
func (r *reader) layersCorrected(spans []layerSpan) {
	for k := range spans {
		s := &spans[k]
		fix := s.last() + 1
		for fix < len(r.items) && (r.items[fix].brk == ',' || r.items[fix].brk == '(' || r.items[fix].brk == '-') {
			fix++
		}
		at := fix + 1
		for r.is(at, kindFix) || r.word(at, "its", "is", "that", "a", "the") || at < len(r.items) && r.items[at].brk == ',' {
			at++
		}
		if s.amount < 0 || !r.is(fix, kindFix) || !r.free(at) || !r.length(at) || r.is(r.next(at), kindNoun) || r.is(r.next(at), kindAttr) && !r.is(r.next(at), kindAttr, "thick") {
			continue
		}
		r.items[s.amount].amount.dead = true
		r.items[fix].used = true
		s.amount = at
	}
}

// levelsAt: "two levels sled 18", but not "2 layers plastic".
func (r *reader) levelsAt(i int) bool {
	return r.levelWord(i+1) && !r.is(i+1, kindAttr) && !(r.word(i+1, "layers") && r.is(i+2, kindNoun))
}

// bracketsFix reports whether the bracket at item i holds what takes a thickness back:
// "strips 20 (no, 19.5), foil, caul 12".
func (r *reader) bracketsFix(i int) bool {
	open := i
	for open > 0 && open > i-6 && r.items[open].brk != '(' {
		open--
	}
	return r.items[open].brk == '(' && (r.items[i].brk == ')' || open == i) && r.is(open+1, kindFix)
}

// onTopAfter is the layer that a sentence of its own lays on all the others: "…, film.
// caul 12 on top", "sled on top 18".
func (r *reader) onTopAfter(last int) (unit.Layer, bool) {
	stop := last + 1
	for stop < len(r.items) && !r.isStop(stop) {
		stop++
	}
	end := stop + 1
	noun, at, top := -1, -1, false
	for ; end < len(r.items) && !r.isBreak(end); end++ {
		switch {
		case r.word(end, "on", "over") && (r.word(end+1, "top") || r.word(end+1, "the") && r.word(end+2, "top", "lot")):
			top = true
		case r.word(end, "top", "lot") && top:
		case r.items[end].amount != nil && at < 0 && r.free(end) && r.length(end):
			at = end
		case r.is(end, kindNoun, "caul", "sled", "mat") && noun < 0:
			noun = end
		case r.items[end].amount != nil, r.is(end, kindNoun), r.is(end, kindAttr) && r.items[end].id != "thick", r.is(end, kindNot), r.is(end, kindFix):
			return unit.Layer{}, false
		}
	}
	if noun < 0 || at < 0 || !top {
		return unit.Layer{}, false
	}
	v, _, ok := r.valueOf(r.items[at].amount, unit.CaulThickness)
	if !ok || impossible(unit.CaulThickness, v) != "" {
		return unit.Layer{}, false
	}
	r.items[noun].used, r.items[at].used = true, true
	return unit.Layer{Part: r.items[noun].id, Thickness: v}, true
}

// besideStrips puts a fence that is told last where it stands: "and a 7/8 fence on the
// bottom sled", "with a 3/8 fence beside the strips".
func (r *reader) besideStrips(spans []layerSpan, ls unit.Layers) unit.Layers {
	at := len(ls) - 1
	if len(spans) != len(ls) || at < 2 || ls[at].Part != "fence" || ls[0].Part != "sled" {
		return ls
	}
	j := spans[at].last() + 1
	for r.word(j, "that", "which", "is", "sits", "stands", "standing", "sitting", "screwed", "fixed", "down", "right", "next", "to", "around", "round") {
		j++
	}
	onSled := r.word(j, "on", "onto") && r.is(r.next(j), kindNoun, "sled") && (in(r.items[r.next(j)].word, "bottom sled", "lower sled", "base", "base board", "baseboard") || r.word(r.next(j)-1, "bottom", "lower", "first"))
	along := (r.word(j, "beside", "alongside", "by", "along", "against") || r.word(j-1, "to", "around", "round")) && r.is(r.next(j), kindNoun, "strip", "core") || r.word(j, "them", "those") && r.word(j-1, "to", "around", "round")
	if !onSled && !along {
		return ls
	}
	return append(unit.Layers{ls[0], ls[at]}, ls[1:at]...)
}

// layerRange notes strips that differ in thickness; the thickest stands in the
// stack.
func (r *reader) layerRange(i int) {
	am, bm := *r.items[i].amount, *r.items[i+1].amount
	if am.unit == nil && bm.unit != nil {
		am.unit = bm.unit
	}
	for k, m := range []amount{am, bm} {
		f := unit.StripThickest
		if (r.size(i+k) < r.size(i+1-k)) || k == 0 && r.size(i) == r.size(i+1) {
			f = unit.StripThinnest
		}
		v, u, ok := r.valueOf(&m, f)
		if !ok || impossible(f, v) != "" {
			return
		}
		r.items[i+k].used = true
		r.bound = append(r.bound, binding{Fact{Field: f, Value: unit.Number(v), Unit: u, Text: r.items[i+k].text}, i + k, false})
	}
}

// stackOf is how many levels "stack of 4, each sled 1/2 with 5/16 strips on it" has, and
// the item that says so.
func (r *reader) stackOf(spans []layerSpan) (n, at int) {
	for i := 2; i < len(r.items); i++ {
		if n, ok := r.wholeAt(i); ok && n > 1 && n < 13 && r.word(i-1, "of") && r.is(i-2, kindRole, "stackorder") && r.isBreak(i+1) && r.opensWithin(i+1, len(r.items), "each", "every") {
			return n, i
		}
	}
	for i := range r.items {
		if r.is(i+1, kindRole, "stackorder") && r.word(i, "double", "triple") && !r.is(i-1, kindNot) && !r.word(i-1, "no", "without", "not") {
			return map[string]int{"double": 2, "triple": 3}[r.items[i].word], i
		}
		if r.word(i, "twice") && r.isBreak(i+1) && behindLayer(r, spans, i) {
			return 2, i // "18 sled and 22 strips, twice"
		}
	}
	return 0, -1
}

// behindLayer reports whether item i stands right behind a layer, past marks.
func behindLayer(r *reader, spans []layerSpan, i int) bool {
	for i--; i > 0 && r.isBreak(i) && !r.isStop(i); i-- {
	}
	return slices.ContainsFunc(spans, func(s layerSpan) bool { return s.last() == i })
}

// piledLevels lays n levels on each other, and on all of them what lies there once.
func (r *reader) piledLevels(spans []layerSpan, ls unit.Layers, n int) unit.Layers {
	top := r.liesOnce(spans, ls)
	ls, last := ls[:top:top], ls[top:]
	once := ls
	for range n - 1 {
		ls = append(ls, once...)
	}
	if at := len(ls) - 1; ls[at].Part == "mat" && (r.matsCounted() == n-1 || r.liesBetween("mat")) {
		ls = ls[:at] // "3 sleds, 2 mats": they lie between
	}
	return append(ls, last...)
}

// liesOnce is the first of the layers that lie once on all levels: a mat or a caul that
// is told last as on top, or what is told behind a "twice".
func (r *reader) liesOnce(spans []layerSpan, ls unit.Layers) int {
	at := len(ls) - 1
	end := spans[len(spans)-1].last()
	if at > 0 && ls[at].Part == "caul" && r.liesBetween("mat") && r.word(end+1, "on") && r.word(end+2, "top") {
		return at
	}
	if at > 0 && ls[at].Part == "caul" && r.onlyCaul(spans[len(spans)-1]) {
		return at
	}
	if at > 0 && (ls[at].Part == "mat" || ls[at].Part == "caul") && spans[len(spans)-1].part == ls[at].Part && r.onTopOfAll(end) {
		return at
	}
	if len(spans) != len(ls) {
		return len(ls)
	}
	for k := 1; k < len(spans); k++ {
		for i := spans[k-1].last(); i < spans[k].noun; i++ {
			if r.word(i, "twice") {
				return k
			}
		}
	}
	return len(ls)
}

// onlyCaul: of "3 levels of sled 3/4 and strips 5/16 with a 3/4 caul on top" there is one caul,
// on all of them; not of "a caul on top of each" or "on top of the strips".
func (r *reader) onlyCaul(s layerSpan) bool {
	first, end := s.noun, s.last()
	for first > 0 && (r.items[first-1].amount != nil && r.items[first-1].amount.form != formWords || r.is(first-1, kindUnit)) {
		first--
	}
	if s.part != "caul" || isPlural(r.items[s.noun].word) || !r.word(first-1, "a", "an", "one", "single") && !(first > 0 && r.items[first-1].text == "one") {
		return false
	}
	if r.opensWithin(0, len(r.items), "each", "every", "per", "apiece") {
		return false
	}
	k := end + 2
	if r.word(k, "the") {
		k++
	}
	return r.word(end+1, "on", "over") && r.word(k, "top", "it", "them") && r.isBreak(k+1)
}

// matsCounted is how many mats a message counts, 0 where it counts none.
func (r *reader) matsCounted() int {
	for i := 1; i < len(r.items); i++ {
		if n, ok := r.wholeAt(i - 1); ok && r.is(i, kindNoun, "mat") && isPlural(r.items[i].word) {
			r.items[i-1].used = true
			return n
		}
	}
	return 0
}

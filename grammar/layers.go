package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// layerParts are the nouns that can be a layer of a stack, by the part's name.
var layerParts = map[string]string{
	"sled": "sled", "fence": "fence", "strip": "strips", "film": "film", "mat": "mat", "caul": "caul", "core": "core", "bar": "bar", "face": "strips", "panel": "strips",
}

// layers reads a stack told bottom first: "sled 3/4, fence 1/4, strips 5/16,
// plastic, sled 3/4" or "12 caul / 18 mdf core / 4 mm strips".
func (r *reader) layers() {
	r.exceptOne()
	if r.countedLayers() {
		return
	}
	from := 0
	told := r.within(0, len(r.items), kindRole, "stackorder")
	if told > 0 && r.word(told, "layers") && r.items[told-1].amount != nil && r.is(told+1, kindNoun) {
		told = -1 // "2 layers plastic"
	}
	if told >= 0 && !r.toldLast(told) {
		from = told + 1
	}
	if told < 0 && (!r.means(kindNoun, "sled", "caul", "fence") || r.mentions(kindNoun, "bar") && !r.countsSleds()) {
		return
	}
	spans := r.sledsKnown(r.layerSpans(from, told >= 0))
	lids := r.lids(from)
	if told < 0 && r.sledsToldLast(spans) || told < 0 && !r.tellsStack(spans, lids) && !r.proudOf(spans) || told >= 0 && thickSpans(spans) < 2 {
		return
	}
	first, last := spans[0].first(), spans[len(spans)-1].last()
	r.layersCorrected(spans)
	spans = r.upwards(r.sandwiched(spans))
	if !r.toldFrom() {
		spans = r.placed(spans)
	}
	spans = r.downwardsFrom(spans, told >= 0)
	var layers unit.Layers
	for _, s := range spans {
		l := unit.Layer{Part: s.part}
		if s.amount >= 0 {
			v, _, ok := r.valueOf(r.items[s.amount].amount, unit.StripThickness)
			if !ok || impossible(unit.StripThickness, v) != "" {
				return
			}
			l.Thickness = v
		}
		for range max(s.copies, 1) {
			layers = append(layers, l)
		}
	}
	likeOthers(layers, "sled")
	likeOthers(layers, "strips")
	r.useLayers(spans)
	lastItem := spans[len(spans)-1].last()
	layers = r.repeatLevels(spans, r.besideStrips(spans, r.underneath(spans, r.onTheStrips(spans, layers))))
	layers = r.facedBelow(r.betweenPanels(r.topAndBottom(spans, layers)))
	if l, ok := r.onTopAfter(max(last, lastItem)); ok {
		layers = append(layers, l)
	}
	if l, at := r.moreWouldFit(max(last, lastItem)); at > 0 {
		layers, last = append(layers, l), max(last, at)
	}
	layers = r.closedBy(lids, layers)
	text := r.textOf(first, last)
	r.bound = append(r.bound, binding{Fact{Field: unit.StackLayers, Value: layers, Unit: r.bareUnit(nil, unit.Distance), Text: text}, first, false})
}

// upwards turns what is told downwards: "mat 1/4 on strips 3/8 on a sled 3/4".
func (r *reader) upwards(spans []layerSpan) []layerSpan {
	out := slices.Clone(spans)
	for k := 0; k < len(out); k++ {
		end := k
		for end+1 < len(out) && r.liesOn(out[end], out[end+1]) {
			end++
		}
		slices.Reverse(out[k : end+1])
		if k > 0 && end == k+1 && out[k-1].part == "fence" && out[k].part == "sled" && out[end].part == "strips" {
			out[k-1], out[k] = out[k], out[k-1] // "fence 20, strips 19 on an 18 sled"
		}
		k = end
	}
	return out
}

// liesOn reports whether a layer is said to lie on the one told behind it.
func (r *reader) liesOn(a, b layerSpan) bool {
	on := false
	for i := a.last() + 1; i < b.first(); i++ {
		if r.isBreak(i) || r.word(i, "then", "and", "next", "with") {
			return false
		}
		on = on || r.word(i, "on", "onto", "upon", "over", "atop", "above")
	}
	return on && !r.word(b.first()-1, "top", "that", "it", "them")
}

// countsSleds: "two sleds, base 3/4, …" tells a stack, whatever else is told.
func (r *reader) countsSleds() bool {
	for i := 1; i < len(r.items); i++ {
		if r.is(i, kindNoun, "sled") && isPlural(r.items[i].word) && r.items[i-1].amount != nil {
			if n, ok := r.items[i-1].amount.whole(); ok && n > 1 && n < 13 && r.items[i-1].amount.bare() {
				return true
			}
		}
	}
	return false
}

// onTheStrips moves a mat that is told last but lies on the strips: "caul 3/4, 3/8
// mat on the strips".
func (r *reader) onTheStrips(spans []layerSpan, ls unit.Layers) unit.Layers {
	for k := 1; k < len(spans) && k < len(ls); k++ {
		j := spans[k].last() + 1
		if ls[k].Part != "mat" || !r.word(j, "on", "over") || !(r.is(r.next(j), kindNoun, "strip") || r.word(j+1, "them", "those")) {
			continue
		}
		for below := k - 2; below >= 0; below-- {
			if ls[below].Part != "strips" {
				continue
			}
			mat := ls[k]
			out := append(unit.Layers(nil), ls[:below+1]...)
			out = append(append(out, mat), ls[below+1:k]...)
			return append(out, ls[k+1:]...)
		}
	}
	return ls
}

// underneath moves a layer that is said to lie below the others to the bottom:
// "fence 1/2, strips 7/16, sled 3/4 below and another on top".
func (r *reader) underneath(spans []layerSpan, ls unit.Layers) unit.Layers {
	for k := 1; k < len(spans) && k < len(ls); k++ {
		if j := spans[k].last() + 1; r.word(j, "below", "beneath", "underneath", "under") && (j+1 >= len(r.items) || r.isBreak(j+1) || r.word(j+1, "and", "it", "them", "that")) {
			r.items[j].used = true
			return append(append(unit.Layers{ls[k]}, ls[:k]...), ls[k+1:]...)
		}
	}
	return ls
}

// repeatLevels builds as many levels as sleds were counted where one level was
// told: "two sleds, base 3/4, fence 1/4, strips 5/16".
func (r *reader) repeatLevels(spans []layerSpan, ls unit.Layers) unit.Layers {
	sleds, fills := 0, 0
	for _, l := range ls {
		switch l.Part {
		case "sled":
			sleds++
		case "strips":
			fills++
		}
	}
	for i := range r.items {
		if !r.is(i, kindNoun, "sled") && !r.levelWord(i) || i == 0 || !r.free(i-1) || r.hasLabel(i-1) {
			continue
		}
		n, ok := r.items[i-1].amount.whole()
		if ok && n > 1 && n == fills && !r.is(i, kindNoun) {
			r.items[i-1].used, r.items[i].used = true, true // "two levels:" that are told in full
		}
		if !ok || n < 2 || n > 12 || sleds != 1 {
			continue
		}
		r.items[i-1].used, r.items[i].used = true, true
		return r.piledLevels(spans, ls, n)
	}
	if n, at := r.stackOf(spans); n > 1 && sleds == 1 && fills == 1 {
		r.items[at].used = true
		return r.piledLevels(spans, ls, n)
	}
	return ls
}

// A layerSpan is a part and the item of its thickness, or -1.
type layerSpan struct {
	noun, amount int
	differ       int // the second amount of a range, 0 for none
	count        int // the item of how many lie on each other, with copies
	copies       int // how many that is, 0 where none was said
	part         string
}

func (s layerSpan) first() int {
	if s.amount >= 0 && s.amount < s.noun {
		return s.amount
	}
	return s.noun
}

func (s layerSpan) last() int {
	if s.amount > s.noun {
		return s.amount
	}
	return s.noun
}

// closed adds s to the spans before it where it is a part with its thickness.
func (s layerSpan) closed(spans []layerSpan) []layerSpan {
	if s.noun >= 0 && s.amount >= 0 {
		return append(spans, s)
	}
	return spans
}

// layerSpans finds the segments that are a part with at most one thickness.
func (r *reader) layerSpans(from int, told bool) []layerSpan {
	if told {
		r.colonsInLayers(from)
	}
	var spans []layerSpan
	start := from
	for i := from; i <= len(r.items); i++ {
		if i < len(r.items) && (!r.partsLayers(i) || r.qualified(i)) {
			continue
		}
		before := len(spans)
		spans = append(spans, r.layerIn(start, i, told)...)
		if before >= 3 && r.within(start, i, kindNoun, "opening") >= 0 {
			return spans // what follows is said of the layers
		}
		start = i + 1
		if len(spans) >= 3 && i < len(r.items) && r.isStop(i) && !r.bracketsFix(i) && !r.goesOnLaying(i+1) {
			return spans
		}
	}
	return spans
}

// colonsInLayers: "bottom up - sled: 3/4, strips: 1 1/2" parts no layer from its
// thickness.
func (r *reader) colonsInLayers(from int) {
	for i := from; i+2 < len(r.items); i++ {
		if r.is(i, kindNoun) && layerParts[r.items[i].id] != "" && r.items[i+1].brk == ':' && r.free(i+2) {
			r.items[i+1] = item{start: r.items[i+1].start, end: r.items[i+1].end, word: "is", used: true}
			r.hear(i + 1)
		}
	}
}

// qualified reports whether the comma at item i stands within a layer: "core, mdf,
// 0.5" and "mat, medium, 0.25".
func (r *reader) qualified(i int) bool {
	if r.items[i].brk != ',' {
		return false
	}
	if r.is(i-1, kindNoun) && r.word(i+1, "which", "thats", "being", "its") && (r.free(i+2) || r.word(i+2, "is") && r.free(i+3)) {
		return true // "the mat, which is 6, and an 18 caul"
	}
	word := func(k int) bool {
		return k >= 0 && k < len(r.items) && (r.is(k, kindNoun, "core") || r.is(k, kindWood) || firmness[r.items[k].word] != "" && r.items[k].amount == nil)
	}
	part := func(k int) bool { return r.is(k, kindNoun, "core", "mat", "strip", "face") }
	before := part(i-1) && word(i+1) && i+3 < len(r.items) && r.items[i+2].brk == ',' && r.free(i+3)
	after := word(i-1) && i >= 3 && r.items[i-2].brk == ',' && part(i-3) && r.free(i+1)
	return before || after
}

// partsLayers: commas, slashes, arrows and "then" part the layers of a stack.
func (r *reader) partsLayers(i int) bool {
	if r.word(i, "on", "at") && r.word(i+1, "the") && r.word(i+2, "bottom", "top") || r.word(i, "on", "over", "under") && r.placedThick(i) >= 0 {
		return false // "sled on the bottom thats 3/4", "caul on top 1/2"
	}
	if r.word(i, "on") && r.is(i-1, kindNoun, "fence") && r.word(i+1, "it", "that", "there") {
		return false // "3/4 sled, fence on it is 3/8"
	}
	if i > 0 && r.word(i, "carries", "carry", "carrying", "holds", "holding", "bears", "bearing") && r.is(i-1, kindNoun, "sled") {
		return true // "each of the two sleds carries 3/8 strips"
	}
	return r.isBreak(i) || r.word(i, "then", "and", "next", "on", "over", "under") || i > 0 && r.word(i, "with", "using") && r.levelWord(i-1) || r.items[i].brk == '>'
}

func (r *reader) layerIn(from, to int, told bool) []layerSpan {
	var spans []layerSpan
	none := layerSpan{noun: -1, amount: -1}
	s := none
	for i := from; i < to; i++ {
		it := &r.items[i]
		switch {
		case r.howMany(i), r.roomFor(i), r.word(i, "top") && (r.word(i-1, "on") || r.word(i-1, "the") && (r.word(i-2, "at", "over", "on", "to", "off") || r.is(i-2, kindRole, "length"))): // no panel
		case it.word == "poly" && it.kind == kindNone && s.noun < 0:
			s.noun, s.part = i, "film" // "ten thou poly over everything"
		case it.kind == kindNoun && it.id == "bar" && !told:
			return spans
		case it.kind == kindNoun && layerParts[it.id] != "":
			if s.noun >= 0 && (s.amount > s.noun || s.part == "film" && s.amount < 0) {
				spans, s = append(spans, s), none
			}
			if s.noun < 0 || it.id == "core" {
				s.noun, s.part = i, layerParts[it.id]
			}
		case s.amount >= 0 && s.noun < 0 && r.openingBefore(i, to):
			s = none
		case r.is(i, kindNoun, "opening"):
			spans = s.closed(spans)
			if i++; !r.ownsNumber(i-1) && !(i < to && r.items[i].amount != nil && r.is(i+1, kindNoun)) {
				return spans
			}
			s = none
		case s.part == "fence" && r.is(i, kindAttr, "tall"), it.amount != nil && (r.is(r.prev(i), kindRole, "vary") || r.levelsAt(i) || r.one(i) && r.word(i+1, "layer")):
		case r.endsLayers(i):
			return spans
		case it.amount != nil:
			if !r.length(i) && it.amount.unit != nil || r.isArticle(i, to) || r.oneLayer(i, s.noun, to) {
				continue // "24 inHg", "50 kPa at 25%"
			}
			if c, next := r.copiesAt(i, to); next > 0 {
				spans, s, i = s.closed(spans), c, next-1
				continue
			}
			if !r.layerMeasure(i) || r.timesOther(i, to) || r.countsLayers(i, to, told) && !r.runOn(s.noun, i, to) {
				return spans
			}
			if r.rangeAt(i, to) {
				s = r.thicker(s, i)
				i++
				continue
			}
			if r.linkedBehind(i) || s.amount >= 0 && s.noun < 0 {
				return spans
			}
			if s.amount >= 0 {
				spans, s = append(spans, s), none
			}
			s.amount = i
		}
	}
	if s.noun >= 0 && (s.amount >= 0 || s.part == "film" || s.part == "mat" || r.openLayer(s.part) || told && r.bareLayer(from, to, s.noun) || r.sledAgain(from, to, s.noun) || r.sameStrips(from, to, s.noun)) {
		spans = append(spans, s)
	}
	return spans
}

// linkedBehind reports whether another amount is linked to that at item i.
func (r *reader) linkedBehind(i int) bool {
	return i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link != linkNone && !r.pulledAt(i+1)
}

// endsLayers reports whether item i speaks of what is no layer.
func (r *reader) endsLayers(i int) bool {
	if r.items[i].amount != nil && r.rangeAt(i, len(r.items)) && r.word(i+2, "across", "over") && r.is(r.next(i+2), kindNoun, "strip") {
		return true // "…, and 30.0 to 30.6 across the strips"
	}
	return r.roomAsked(i) && r.levelsCounted() || r.is(i, kindNoun, "frame", "gap", "press", "bag") || r.is(i, kindVacuum) || r.is(i, kindAttr) && r.items[i].id != "thick"
}

// layerMeasure reports whether the amount at item i can be how thick a layer is.
func (r *reader) layerMeasure(i int) bool {
	am := r.items[i].amount
	return !am.dead && !r.items[i].used && am.link != linkTimes && am.link != linkTo
}

// proudOf reports whether a fence and strips alone are told, to know how proud
// these stand: "fence 1/4, strips 5/16, how proud".
func (r *reader) proudOf(spans []layerSpan) bool {
	fence, strips := false, false
	for _, s := range spans {
		fence = fence || s.part == "fence" && s.amount >= 0
		strips = strips || s.part == "strips" && s.amount >= 0
	}
	return fence && strips && (r.asksFor(Stack) || r.wordIn("proud") || r.asksSomething() && !r.mentions(kindNoun, "sled", "caul") && r.wordIn("fine", "ok", "okay", "enough", "alright", "right", "good", "work")) && !r.mentions(kindNoun, "bar", "wedge")
}

// openLayer reports whether the thickness of a part of the stack is what a message
// looks for.
func (r *reader) openLayer(part string) bool {
	switch r.solving {
	case unit.FenceThickness:
		return part == "fence"
	case unit.SledThickness, unit.CaulThickness, unit.CoreThickness:
		return part == strings.TrimSuffix(string(r.solving), "_thickness_mm")
	case unit.StripThickness:
		return part == "strips"
	}
	return false
}

func isPlural(w string) bool {
	return len(w) > 2 && w[len(w)-1] == 's' && w[len(w)-2] != 's' || w == "pcs"
}

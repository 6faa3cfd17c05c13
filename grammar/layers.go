package grammar

import "presshand/engine/unit"

// layerParts are the nouns that can be a layer of a stack, by the part's name.
var layerParts = map[string]string{
	"sled": "sled", "fence": "fence", "strip": "strips", "film": "film", "mat": "mat", "caul": "caul", "core": "core", "bar": "bar", "face": "strips", "panel": "strips",
}

// layers reads a stack told bottom first: "sled 3/4, fence 1/4, strips 5/16,
// plastic, sled 3/4" or "12 caul / 18 mdf core / 4 mm strips".
func (r *reader) layers() {
	from := 0
	told := r.within(0, len(r.items), kindRole, "stackorder")
	if told >= 0 {
		from = told + 1
	}
	spans := r.layerSpans(from, told >= 0)
	if told < 0 && r.mentions(kindNoun, "bar") {
		return
	}
	rigid, thick := 0, 0
	for _, s := range spans {
		if s.amount >= 0 {
			thick++
		}
		if s.part == "sled" || s.part == "caul" {
			rigid++
		}
	}
	if told < 0 && (thick < 3 || rigid == 0 || len(spans) < 3) || told >= 0 && thick < 2 {
		return
	}
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
		layers = append(layers, l)
	}
	for _, s := range spans {
		if s.differ > 0 {
			r.layerRange(s.differ - 1)
		}
		r.items[s.noun].used = true
		if s.amount >= 0 {
			r.items[s.amount].used = true
		}
	}
	layers = r.repeatLevels(r.underneath(spans, layers))
	text := r.text[r.items[spans[0].first()].start:r.items[spans[len(spans)-1].last()].end]
	r.bound = append(r.bound, binding{Fact{Field: unit.StackLayers, Value: layers, Unit: r.bareUnit(nil, unit.Distance), Text: text}, spans[0].first(), false})
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
func (r *reader) repeatLevels(ls unit.Layers) unit.Layers {
	sleds := 0
	for _, l := range ls {
		if l.Part == "sled" {
			sleds++
		}
	}
	for i := range r.items {
		if !r.is(i, kindNoun, "sled") && !r.levelWord(i) || i == 0 || !r.free(i-1) || r.hasLabel(i-1) {
			continue
		}
		n, ok := r.items[i-1].amount.whole()
		if !ok || n < 2 || n > 12 || sleds != 1 {
			continue
		}
		r.items[i-1].used, r.items[i].used = true, true
		once := ls
		for ; n > 1; n-- {
			ls = append(ls, once...)
		}
		return ls
	}
	return ls
}

// A layerSpan is a part and the item of its thickness, or -1.
type layerSpan struct {
	noun, amount int
	differ       int // the second amount of a range, 0 for none
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

// layerSpans finds the segments that are a part with at most one thickness.
func (r *reader) layerSpans(from int, told bool) []layerSpan {
	var spans []layerSpan
	start := from
	for i := from; i <= len(r.items); i++ {
		if i < len(r.items) && !r.partsLayers(i) {
			continue
		}
		spans = append(spans, r.layerIn(start, i, told)...)
		start = i + 1
		if len(spans) >= 3 && i < len(r.items) && r.isStop(i) {
			return spans
		}
	}
	return spans
}

// partsLayers: commas, slashes, arrows and "then" part the layers of a stack.
func (r *reader) partsLayers(i int) bool {
	return r.isBreak(i) || r.word(i, "then", "and", "next", "on", "over", "under") || r.items[i].brk == '>'
}

func (r *reader) layerIn(from, to int, told bool) []layerSpan {
	var spans []layerSpan
	s := layerSpan{noun: -1, amount: -1}
	for i := from; i < to; i++ {
		it := &r.items[i]
		switch {
		case it.kind == kindNoun && layerParts[it.id] != "":
			if s.noun >= 0 && (s.amount > s.noun || s.part == "film" && s.amount < 0) {
				spans = append(spans, s)
				s = layerSpan{noun: -1, amount: -1}
			}
			if s.noun < 0 || it.id == "core" {
				s.noun, s.part = i, layerParts[it.id]
			}
		case r.is(i, kindNoun, "opening"):
			if s.noun >= 0 && s.amount >= 0 {
				spans = append(spans, s)
			}
			if !r.ownsNumber(i) && !(i+1 < to && r.items[i+1].amount != nil && r.is(i+2, kindNoun)) {
				return spans
			}
			i++
			s = layerSpan{noun: -1, amount: -1}
		case it.kind == kindNoun && (it.id == "frame" || it.id == "gap" || it.id == "press" || it.id == "bag"), it.kind == kindVacuum, it.kind == kindAttr && it.id != "thick":
			return spans
		case it.amount != nil && r.is(r.prev(i), kindRole, "vary"):
		case it.amount != nil:
			am := it.amount
			counted := r.singularCount(i, i+1)
			if n, ok := am.whole(); ok && n >= 1 && am.form != formDecimal && i+1 < to && r.is(i+1, kindNoun, "sled", "strip", "panel", "caul") && (am.form == formWords || !told && isPlural(r.items[i+1].word)) {
				counted = true
			}
			if am.dead || it.used || am.link == linkTimes || am.link == linkTo || am.unit != nil && am.unit.Dimension != unit.Distance || counted {
				return spans
			}
			if i+1 < to && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTo && r.free(i+1) && r.length(i+1) {
				s.amount, s.differ = i+1, i+1
				if r.size(i) > r.size(i+1) {
					s.amount = i
				}
				i++
				continue
			}
			if i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link != linkNone {
				return spans
			}
			if s.amount >= 0 {
				if s.noun < 0 {
					return spans
				}
				spans = append(spans, s)
				s = layerSpan{noun: -1, amount: -1}
			}
			s.amount = i
		}
	}
	if s.noun >= 0 && (s.amount >= 0 || s.part == "film" || s.part == "mat" || r.openLayer(s.part)) {
		spans = append(spans, s)
	}
	return spans
}

// openLayer reports whether the thickness of a part of the stack is what a message
// looks for.
func (r *reader) openLayer(part string) bool {
	switch r.solving {
	case unit.FenceThickness:
		return part == "fence"
	case unit.StripThickness:
		return part == "strips"
	}
	return false
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

func isPlural(w string) bool {
	return len(w) > 2 && w[len(w)-1] == 's' && w[len(w)-2] != 's' || w == "pcs"
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// levels builds as many levels as were counted where one of them was told by its
// measures: "two 3/4 sleds, 5/16 strips on each".
func (r *reader) levels() {
	if r.has(unit.StackLayers) {
		r.onEverySled()
		return
	}
	sled, strip, mat := r.measureOf(unit.SledThickness), r.measureOf(unit.StripThickness, unit.PanelThickness), r.measureOf(unit.MatThickness)
	if sled < 0 || strip < 0 {
		return
	}
	n, at := r.levelCount()
	if n < 2 || !r.has(unit.Opening) && r.topic != Stack && !r.levelWord(at+1) && !r.mentions(kindRole, "stackorder") {
		return
	}
	fill := unit.Layers{r.layerOf("strips", strip)}
	matBetween := mat >= 0 && r.boundAt(at) == unit.PanelCount && r.liesBetween("mat")
	onAll := mat >= 0 && (r.onTopOfAll(r.bound[mat].from) || r.oneMat(r.bound[mat].from) || r.matOverSleds(r.bound[mat].from))
	if mat >= 0 && !onAll && !matBetween {
		fill = append(fill, r.layerOf("mat", mat))
	}
	base := r.layerOf("sled", sled)
	between := r.opensWithin(0, len(r.items), "between")
	caul, onEach := r.caulBetween(), r.stripsOnEach()
	var layers unit.Layers
	for k := 0; k < n; k++ {
		switch panels := r.boundAt(at) == unit.PanelCount; {
		case matBetween && k > 0: // on one sled
			layers = append(append(layers, r.layerOf("mat", mat)), fill...)
		case matBetween:
			layers = append(append(layers, base), fill...)
		case panels && caul >= 0 && k > 0: // on one sled, with cauls between
			layers = append(append(layers, r.layerOf("caul", caul)), fill...)
		case panels && between && caul < 0 && k == 0: // the sleds lie between them
			layers = append(layers, fill...)
		case panels && k > 0 && caul < 0 && r.oneSled(r.bound[sled].from):
			layers = append(layers, fill...)
		case between && !panels && k == n-1 && !onEach:
			layers = append(layers, base)
		default:
			layers = append(append(layers, base), fill...)
		}
	}
	switch end := len(layers) - 1; {
	case onAll:
		layers = append(layers, r.layerOf("mat", mat))
	case layers[end].Part == "mat" && (r.matsCounted() == n-1 || onEach && r.liesBetween("mat")):
		layers = layers[:end] // "3 sleds, 2 mats": they lie between
	}
	layers = r.closedBy(r.lids(0), r.topAndBottom([]layerSpan{r.sledSpan(r.bound[sled].from)}, layers))
	first, last := r.span(at, sled, strip, mat, caul)
	r.items[at].used = true
	if r.levelWord(at + 1) {
		r.items[at+1].used = true
	}
	r.drop(unit.SledThickness, unit.StripThickness, unit.PanelThickness, unit.MatThickness)
	if caul >= 0 {
		r.drop(unit.CaulThickness)
	}
	r.bound = append(r.bound, binding{Fact{Field: unit.StackLayers, Value: layers, Unit: r.bareUnit(nil, unit.Distance), Text: r.textOf(first, last)}, first, false})
}

// liesOnTop: "…, film. caul 12 on top" begins a sentence of its own.
func (r *reader) liesOnTop(i int) bool {
	from, to := r.sentence(i)
	return from > 0 && r.within(from, to, kindNoun, "strip", "sled") < 0 && r.opensWithin(i, to, "on", "over") && r.opensWithin(i, to, "top", "lot")
}

// oneMat: of "two 3/4 sleds and a 1/2 mat and 5/8 strips" there is one mat.
func (r *reader) oneMat(i int) bool {
	return r.word(i-1, "a", "one") && r.is(i+1, kindNoun, "mat") && r.isPlain(i+2) && !r.opensWithin(0, len(r.items), "between", "each", "every", "per") && !r.mentions(kindFact, "faces=2")
}

// matOverSleds: of "each on its own sled plus a 1/4 mat on top" there is one mat.
func (r *reader) matOverSleds(i int) bool {
	return r.wordIn("own") && r.word(i-1, "a", "one") && r.is(i+1, kindNoun, "mat") && r.word(i+2, "on") && r.word(i+3, "top") && !r.word(i+4, "of")
}

// isPlain reports whether a break, an "and" or nothing stands at item i.
func (r *reader) isPlain(i int) bool {
	return i >= len(r.items) || r.isBreak(i) || r.word(i, "and", "plus", "with")
}

// onTopOfAll: of three levels with "a 3/8 mat on top of it all" there is one mat.
func (r *reader) onTopOfAll(i int) bool {
	for j := i + 1; j < len(r.items) && j <= i+4 && !r.isBreak(j); j++ {
		if r.word(j, "at") && r.word(j+1, "the") && (r.word(j+2, "top") || r.word(j+2, "very") && r.word(j+3, "top")) {
			return true
		}
		if !r.word(j, "on", "over", "above", "across") {
			continue
		}
		if r.word(j+1, "the") {
			j++
		}
		if r.word(j+1, "top") && r.word(j+2, "of") {
			j += 2
		} else if r.word(j, "on") {
			continue
		}
		if r.word(j+1, "it", "all", "the") {
			return r.word(j+2, "all", "lot", "stack", "pile", "whole", "that", "this") || r.is(j+2, kindRole, "stackorder")
		}
		return r.word(j+1, "everything") || r.word(j, "the") && r.word(j+1, "lot")
	}
	return false
}

// liesBetween reports whether a part is said to lie between the panels: "a mat 1/4
// between each", "a 1/4 mat in the middle".
func (r *reader) liesBetween(part string) bool {
	for i := range r.items {
		if !r.word(i, betweenWords...) && !(r.word(i, "in") && r.word(i+1, "the") && r.word(i+2, "middle")) && !(r.word(i, "in") && r.word(i+1, "between")) {
			continue
		}
		from, _ := r.clause(i)
		for k := i - 1; k >= from; k-- {
			if r.is(k, kindNoun, "sled", "mat", "caul", "panel", "strip", "film") {
				if r.is(k, kindNoun, part) {
					return true
				}
				break
			}
		}
	}
	return false
}

// caulBetween is the binding of the cauls that lie between panels; -1 for none:
// "cauls between 1/2 each".
func (r *reader) caulBetween() int {
	for i := range r.items {
		if r.is(i, kindNoun, "caul") && (r.word(i+1, "between") || r.word(i+1, "in") && r.word(i+2, "between")) {
			return r.measureOf(unit.CaulThickness)
		}
	}
	return -1
}

// measureOf is the binding of the first of fields that has one and no other; -1 where
// none has.
func (r *reader) measureOf(fields ...unit.Field) int {
	for _, f := range fields {
		at, n := -1, 0
		for k := range r.bound {
			if r.bound[k].fact.Field == f && !r.bound[k].weak {
				at, n = k, n+1
			}
		}
		if n == 1 {
			return at
		}
	}
	return -1
}

func (r *reader) layerOf(part string, k int) unit.Layer {
	v, _ := r.bound[k].fact.Value.(unit.Number)
	return unit.Layer{Part: part, Thickness: float64(v)}
}

// drop takes back all that was read of fields.
func (r *reader) drop(fs ...unit.Field) {
	kept := r.bound[:0]
	for _, b := range r.bound {
		gone := false
		for _, f := range fs {
			gone = gone || b.fact.Field == f
		}
		if !gone {
			kept = append(kept, b)
		}
	}
	r.bound = kept
}

// levelCount finds a number that counts sleds or levels, and its item.
func (r *reader) levelCount() (n, at int) {
	for i := range r.items {
		if r.word(i, "of the two") && r.is(i+1, kindNoun, "sled") {
			return 2, i
		}
		if am := r.items[i].amount; am != nil && r.boundAt(i) == unit.PanelCount && (r.countsLevels(i) || r.word(i+1, "of them") && r.piledUp()) {
			if n, ok := am.whole(); ok && n >= 2 && n <= 12 {
				return n, i
			}
		}
		if n, ok := r.wholeAt(i); ok && n >= 2 && n <= 12 && (!r.hasLabel(i) || r.highOf(i+1)) && r.countsLevels(i) {
			return n, i
		}
	}
	return 0, -1
}

// countsLevels reports whether the whole number at item i counts levels: "3 sleds",
// "two 3/4 sleds", "4 sled 3/4", "three layers", "4 high of".
func (r *reader) countsLevels(i int) bool {
	j := i + 1
	if j < len(r.items) && r.items[j].amount != nil && r.items[j].amount.link == linkNone && r.length(j) {
		j++
	}
	if r.is(j, kindNoun, "panel") {
		return isPlural(r.items[j].word) && r.piledUp()
	}
	if r.is(j, kindNoun, "sled") {
		return isPlural(r.items[j].word) || r.singularCount(i, j)
	}
	return j == i+1 && r.levelWord(j)
}

// piledUp reports whether panels lie on each other: "stack 4 panels", "with sleds
// between", "one on top of the other".
func (r *reader) piledUp() bool {
	return r.mentions(kindNoun, "sled") && (r.mentions(kindRole, "stackorder") || r.wordIn("between", "top", "stack", "pile", "high", "middle") || r.mentions(kindNoun, "sled") && r.saysBetween())
}

// fitsIn: "does it fit in 5 in" asks of the opening.
func (r *reader) fitsIn(i int) bool {
	j := i - 1
	for r.word(j, "a", "the", "my", "our") {
		j--
	}
	fits := r.word(j, "in", "into", "under", "inside") && (r.is(j-1, kindAsk, "stack") || (r.has(unit.StackLayers) || r.habit.Follows && r.word(j-2, "it", "that", "this")) && r.word(j-1, "go", "goes", "slide", "slides", "squeeze"))
	fits = fits || r.itFits(j) && !isPlural(r.wordAt(r.next(i)))
	return fits && !r.has(unit.Opening) && r.size(i) > 0.02 && r.size(i) < 0.6 && (r.next(i) < 0 || r.is(r.next(i), kindNoun, "press", "frame", "opening")) && r.bind(i, unit.Opening)
}

// itFits: "does that stack fit 4 in", "is it all too tall for 3 1/2". How many "we can
// fit" is a count.
func (r *reader) itFits(j int) bool {
	if r.word(j, "for", "with") && r.is(j-1, kindAsk, "stack") && r.word(j-1, "too tall") {
		j--
	}
	if !r.is(j, kindAsk, "stack") || !r.word(j, "fit", "fits", "too tall") {
		return false
	}
	for j--; r.word(j, "all", "still", "even", "just", "is", "be", "really"); j-- {
	}
	return r.word(j, "it", "that", "this", "everything", "lot", "load", "pile", "whole") || r.is(j, kindRole, "stackorder", "job") || r.is(j, kindVerb, "show")
}

// hasLabel reports whether a word right before item i says what its number is.
func (r *reader) hasLabel(i int) bool {
	return r.is(i-1, kindNoun) || r.is(i-1, kindVacuum) || r.is(i-1, kindAttr) && nounForm(r.items[i-1].word) || r.word(i-1, "at", "is", "to")
}

// levelWord reports whether item j is a word for the levels of a stack.
func (r *reader) levelWord(j int) bool {
	return j < len(r.items) && in(r.items[j].word, "layers", "levels", "tiers", "storeys", "decks") || r.word(j, "lots", "sets") && r.word(j+1, "of") && !r.is(j+2, kindNoun, "strip") || r.is(j, kindAttr, "tall") && (r.word(j+1, "of") || r.highOf(j)) || r.word(j, "up", "deep") && r.highOf(j)
}

// highOf: "pressing four high: sled 1/2, strips 1/4" and "two high with 3/4 sleds" count
// the levels.
func (r *reader) highOf(j int) bool {
	if !r.word(j, "high", "up", "deep") || !r.mentions(kindNoun, "sled") || r.mentions(kindNoun, "bar") {
		return false
	}
	if n, counted := r.wholeAt(j - 1); !counted || n < 2 || n > 12 {
		return false
	}
	if from, _ := r.clause(j); r.word(j, "deep") && r.within(from, j, kindNoun) >= 0 && r.within(from, j, kindNoun, "panel") < 0 {
		return false // "frame's 5 deep"
	}
	return r.isBreak(j+1) || r.word(j+1, "today", "tonight", "now") && r.isBreak(j+2) || r.word(j+1, "with", "using") || r.word(j, "high", "deep") && (r.word(j+1, "in") || r.word(j+1, "on") && r.is(r.next(j+1), kindNoun, "sled"))
}

// singularCount reports whether the whole number at item i counts the thing at j
// though that stands in the singular: it has a size or a count of its own behind it.
func (r *reader) singularCount(i, j int) bool {
	if i < 0 || j != i+1 || j >= len(r.items) || !r.is(j, kindNoun) || isPlural(r.items[j].word) || r.hasLabel(i) {
		return false
	}
	if n, ok := r.items[i].amount.whole(); !ok || n < 2 || r.items[i].amount.form == formDecimal {
		return false
	}
	k := j + 1
	for r.word(k, "of", "with", "at") || r.is(k, kindRole, "in a row") {
		k++
	}
	return k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.link == linkNone && (r.length(k) || k > j+1)
}

// upperSled reports whether the sled at item k lies on the strips, as a caul does:
// "18 mm upper sled on top of the strips".
func (r *reader) upperSled(k int) bool {
	if r.topic == Stack || r.has(unit.StackLayers) {
		return false
	}
	if r.word(k, "upper sled", "top sled") {
		return true
	}
	_, to := r.clause(k)
	for j := k + 1; j < to; j++ {
		if r.is(j, kindNoun, "mat", "caul", "film", "fence") {
			return false // which lies there
		}
		if r.word(j, "on", "over", "above") && (r.is(r.next(j), kindNoun, "strip") || r.word(j+1, "top", "them")) {
			return true
		}
	}
	return false
}

// stripsHave reports whether the strips' measure in a direction was read.
func (r *reader) stripsHave(attr string) bool {
	return r.has(attrFields["strip"][attr]) || attr == "thick" && r.has(unit.StripThickest)
}

// onEverySled builds the levels of "two sleds 3/4 each, panels 1/2, fence 3/8 on
// both", where what lies on the sleds was told once and the sleds by their number.
func (r *reader) onEverySled() {
	n, at := r.levelCount()
	if n >= 2 && r.boundAt(at) == unit.PanelCount {
		r.panelsBetween(n)
		return
	}
	sled, stack := r.measureOf(unit.SledThickness), r.measureOf(unit.StackLayers)
	if n < 2 || sled < 0 || stack < 0 || !r.is(at+1, kindNoun, "sled") {
		return
	}
	told, _ := r.bound[stack].fact.Value.(unit.Layers)
	var fill, last unit.Layers
	for _, part := range []string{"fence", "strips", "mat"} {
		for _, l := range told {
			if l.Part == part {
				fill = append(fill, l)
			}
		}
	}
	for _, l := range told {
		switch l.Part {
		case "film":
			last = append(last, l)
		case "fence", "strips", "mat":
		default:
			return
		}
	}
	var layers unit.Layers
	for range n {
		layers = append(append(layers, r.layerOf("sled", sled)), fill...)
	}
	r.items[at].used = true
	first, end := min(at, r.bound[sled].from, r.bound[stack].from), r.bound[sled].from
	for k := end; k < len(r.items); k++ {
		if strings.HasSuffix(r.text[:r.items[k].end], r.bound[stack].fact.Text) {
			end = k
		}
	}
	r.bound[stack].fact.Value, r.bound[stack].fact.Text = append(layers, last...), r.textOf(first, end)
	r.drop(unit.SledThickness)
}

// panelsBetween builds the stack of "two panels, sled between. sleds 3/4, panels 5/8",
// of which one sled and one panel were told.
func (r *reader) panelsBetween(n int) {
	stack := r.measureOf(unit.StackLayers)
	if stack < 0 || !r.opensWithin(0, len(r.items), "between") {
		return
	}
	told, _ := r.bound[stack].fact.Value.(unit.Layers)
	by := map[string]unit.Layer{}
	for _, l := range told {
		by[l.Part] = l
	}
	if len(told) != 2 || len(by) != 2 || by["sled"].Part == "" || by["strips"].Part == "" {
		return
	}
	layers := unit.Layers{by["strips"]}
	for range n - 1 {
		layers = append(layers, by["sled"], by["strips"])
	}
	r.bound[stack].fact.Value = layers
}

// stackHeight: "the stack is 48 wide x 3 high" tells the height of all that lies
// there, or how many lie there: no part's measure.
func (r *reader) stackHeight(i int) bool {
	from, _ := r.clause(i)
	return r.within(from, i, kindRole, "stackorder") >= 0 && r.within(from, i, kindNoun) < 0
}

// span is from where to where item at and the bindings given stand; one below 0 is none.
func (r *reader) span(at int, bound ...int) (first, last int) {
	first, last = at, at
	for _, k := range bound {
		if k >= 0 {
			first, last = min(first, r.bound[k].from), max(last, r.bound[k].from)
		}
	}
	return first, last
}

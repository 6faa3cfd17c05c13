package grammar

// copiesAt reads how many of a part lie on each other where the number at item i
// says so before its thickness: "3 panels 3/4", "2 mats of 1/4", "4 x 18 mm
// panels". Strips lie beside each other, and what has something between is told
// by that. next is the item behind, or 0.
func (r *reader) copiesAt(i, to int) (s layerSpan, next int) {
	if s, next = r.pairAt(i, to); next > 0 {
		return s, next
	}
	am := r.items[i].amount
	n, whole := am.whole()
	if !whole || n < 1 || n > 12 || !am.bare() || am.form == formDecimal || r.saysBetween() {
		return s, 0
	}
	counted := func(k int) bool {
		return k < to && r.is(k, kindNoun, "panel", "mat", "caul", "core") && isPlural(r.items[k].word)
	}
	if j := i + 1; j < to && r.timesAt(j) && r.length(j) && counted(j+1) {
		return layerSpan{noun: j + 1, amount: j, count: i, copies: n, part: layerParts[r.items[j+1].id]}, j + 2
	}
	noun := i + 1
	if r.timesOther(i, to) && r.is(i+2, kindNoun, "strip") && r.free(i+3) && r.length(i+3) {
		return layerSpan{noun: i + 2, amount: i + 3, part: "strips"}, i + 4 // "5x strips 1/2" lie side by side
	}
	times := noun < to && r.items[noun].brk == 'x'
	if times {
		noun++ // "2x mat 1/4"
	}
	if r.word(noun, "layers", "sheets", "plies") {
		for noun++; r.word(noun, "of", "the"); noun++ {
		}
	}
	if noun < to && r.is(noun, kindNoun, "film") && noun+1 >= to {
		return layerSpan{noun: noun, amount: -1, count: i, copies: 1, part: "film"}, noun + 1
	}
	if !counted(noun) && !(times && noun < to && r.is(noun, kindNoun, "panel", "mat", "caul", "core")) {
		return s, 0
	}
	thick := noun + 1
	for r.word(thick, "of", "at", "each") {
		thick++
	}
	if thick >= to || !r.free(thick) || !r.length(thick) || r.items[thick].amount.link != linkNone || r.size(thick) >= thickestLayer {
		return s, 0
	}
	return layerSpan{noun: noun, amount: thick, count: i, copies: n, part: layerParts[r.items[noun].id]}, thick + 1
}

// thickestLayer is, in metres, what no layer of a stack reaches; our estimate.
const thickestLayer = 0.1

var betweenWords = []string{"between", "inbetween"}

// saysBetween: "three panels 3/4 thick with 3/4 sleds between", "sled 3/4 under each".
func (r *reader) saysBetween() bool {
	for i := range r.items {
		each := r.is(i, kindRole, "in a row") || r.word(i, "each", "every")
		own := r.word(i, "own") && r.word(i-1, "its", "their") // "each on its own sled"
		if own || r.eachOn(i) || r.word(i, betweenWords...) || each && r.word(i-1, "under", "beneath", "on", "over", "of") || r.word(i, "middle") && r.word(i-1, "the") && r.word(i-2, "in") {
			return true
		}
	}
	return false
}

// countsLayers reports whether the number at item i is how many of a part there are.
func (r *reader) countsLayers(i, to int, told bool) bool {
	if r.singularCount(i, i+1) || r.countsStrips(i, to) {
		return true
	}
	am := r.items[i].amount
	n, ok := am.whole()
	return ok && n >= 1 && am.form != formDecimal && i+1 < to && r.is(i+1, kindNoun, "sled", "strip", "panel", "caul") && (am.form == formWords || isPlural(r.items[i+1].word) && (!told || n > 1 && r.word(i+2, "at", "of", "with")))
}

// timesOther: "2x sled" counts what copiesAt does not.
func (r *reader) timesOther(i, to int) bool { return i+1 < to && r.items[i+1].brk == 'x' }

// countsStrips: in "strips 5/16, 5 strips, mat 3/8" the number alone is how many.
func (r *reader) countsStrips(i, to int) bool {
	n, whole := r.items[i].amount.whole()
	if !whole || n < 2 || n > 40 || !r.items[i].amount.bare() || i+1 >= to || !r.is(i+1, kindNoun, "strip", "panel") || !isPlural(r.items[i+1].word) {
		return false
	}
	if r.is(i+1, kindNoun, "panel") {
		return true
	}
	if !r.habit.Metric {
		return true
	}
	for k := range r.items {
		if k != i+1 && r.is(k, kindNoun, "strip") && k+1 < len(r.items) && r.items[k+1].amount != nil {
			return true // they have their thickness there
		}
	}
	return false
}

// runOn: in "fence 6 strips 8 mat 5" each number stands behind its part.
func (r *reader) runOn(noun, i, to int) bool {
	return noun >= 0 && noun == i-1 && i+2 < to && r.is(i+1, kindNoun) && r.items[i+2].amount != nil && r.items[i+2].amount.link == linkNone
}

// pulledAt: in "caul 3/4 at 25 inHg" the number behind is no layer's.
func (r *reader) pulledAt(i int) bool {
	return r.items[i].amount.link == linkAt && (!r.length(i) || r.items[i].amount.bare() && r.size(i) > thickestLayer)
}

// isArticle: "one 1/4 mat".
func (r *reader) isArticle(i, to int) bool {
	n, whole := r.items[i].amount.whole()
	return whole && n == 1 && r.items[i].amount.form == formWords && i+1 < to && r.free(i+1) && r.length(i+1)
}

// oneLayer: "one caul 3/4", "1 mat 3/8". In "mat 1 caul 3/4" the number is the mat's,
// which stands at noun.
func (r *reader) oneLayer(i, noun, to int) bool {
	am := r.items[i].amount
	if am == nil || !am.bare() || am.link != linkNone || am.dead || noun == i-1 && noun >= 0 {
		return false
	}
	n, whole := am.whole()
	if !whole || n != 1 || am.form != formWords && (am.form != formInt || r.is(r.prev(i), kindNoun) || r.free(i-1)) {
		return false
	}
	k := i + 2
	for r.word(k, "of", "at", "is") {
		k++
	}
	if !r.is(i+1, kindNoun, "sled", "mat", "caul", "core", "panel") || isPlural(r.items[i+1].word) || k >= to || !r.free(k) || !r.length(k) {
		return false
	}
	return r.items[k].amount.link == linkNone && !r.is(r.next(k), kindNoun)
}

// howMany: of "how many sleds fit" the sleds are looked for and no layer is told.
func (r *reader) howMany(i int) bool {
	if !r.is(i, kindNoun) {
		return false
	}
	for i--; r.word(i, "more", "of", "these", "those", "such", "my", "the"); i-- {
	}
	return r.word(i, "many") && r.word(i-1, "how")
}

// roomFor: the number of "how many fit in 4 in" is the room that they go into.
func (r *reader) roomFor(i int) bool {
	j := i - 1
	for r.word(j, "a", "the", "my", "our", "under") {
		j--
	}
	return r.items[i].amount != nil && r.word(j, "in", "into", "inside", "within") && r.is(j-1, kindAsk, "stack") && r.length(i)
}

// useLayers uses up the items of the layers that were told.
func (r *reader) useLayers(spans []layerSpan) {
	for _, s := range spans {
		if s.differ > 0 {
			r.layerRange(s.differ - 1)
		}
		r.items[s.noun].used = true
		if s.copies > 0 && s.part != "strips" {
			r.items[s.count].used = true
		}
		if i := s.noun - 1; i >= 0 && r.oneLayer(i, -1, s.last()+1) {
			r.items[i].used = true
		}
		if s.amount >= 0 {
			r.items[s.amount].used = true
		}
	}
}

package grammar

import "presshand/engine/unit"

// barsOverStrips reads heights of a bar that are told from the strips: "bar stands 3/4
// above the strips", "bar same height as the strips". Where no thickness of the strips was
// told the number is left unused.
func (r *reader) barsOverStrips() {
	r.standsUp()
	for k := len(r.bound) - 1; k >= 0; k-- {
		b := &r.bound[k]
		if b.fact.Field != unit.BarHeight || b.weak || !r.overStrips(b.from+1) {
			continue
		}
		over, isNumber := b.fact.Value.(unit.Number)
		thickness, told := unit.Number(0), false
		if k := r.measureOf(unit.StripThickness); k >= 0 {
			thickness, told = r.bound[k].fact.Value.(unit.Number)
		}
		if !told || !isNumber {
			r.items[b.from].amount.dead, r.items[b.from].used = true, false
			r.bound = append(r.bound[:k], r.bound[k+1:]...)
			continue
		}
		b.fact.Value = over + thickness
		b.fact.Note = "over the strips"
	}
	if !r.means(kindNoun, "bar") || r.has(unit.BarHeight) {
		return
	}
	thick := r.measureOf(unit.StripThickness)
	for i := range r.items {
		if !r.is(i, kindNoun, "bar") {
			continue
		}
		if end := r.levelWithStrips(i + 1); end >= 0 {
			if thick < 0 {
				r.unuse(r.textOf(i+1, end))
				return
			}
			f := r.bound[thick].fact
			f.Field, f.Text = unit.BarHeight, r.textOf(i, end)
			r.bound = append(r.bound, binding{f, i, false})
			return
		}
	}
}

// overStrips reports whether "above the strips" stands at item j.
func (r *reader) overStrips(j int) bool {
	switch {
	case r.word(j, "above", "over", "past"):
		j++
	case r.word(j, "proud", "clear") && r.word(j+1, "of"), r.word(j, "higher", "taller") && r.word(j+1, "than"):
		j += 2
	case r.word(j, "above the", "proud of", "higher than", "taller than"):
		j++
	default:
		return false
	}
	first := j
	for r.word(j, "the", "top", "tops", "of", "face", "my", "our") || r.is(j, kindNoun, "panel") && r.word(j, "top", "tops") {
		j++
	}
	if !r.is(j, kindNoun, "strip") || !r.ends(j+1) {
		return false
	}
	for k := first - 2; k < first; k++ {
		if r.word(k, "higher", "taller", "proud") {
			r.items[k].used = true
		}
	}
	return true
}

// ends reports whether nothing that has to do with the item before stands at item j.
func (r *reader) ends(j int) bool {
	return j >= len(r.items) || r.isBreak(j) || r.word(j, "and", "with", "at", "plus", "but")
}

// levelWithStrips is the item of the strips where "same height as the strips" begins at
// item j; -1 where it does not.
func (r *reader) levelWithStrips(j int) int {
	for r.word(j, "is", "the", "at", "stands", "sits", "just", "exactly", "about", "of") {
		j++
	}
	tall := func(k int) bool { return r.is(k, kindAttr, "tall", "thick") || r.word(k, "height", "thickness") }
	switch {
	case r.word(j, "same") && tall(j+1) && r.word(j+2, "as"):
		j += 3
	case r.word(j, "same as") && tall(j+1):
		j += 2
	case r.word(j, "as") && tall(j+1) && r.word(j+2, "as"):
		j += 3
	case r.word(j, "flush", "level", "even") && r.word(j+1, "with"):
		j += 2
	default:
		return -1
	}
	first := j
	for r.word(j, "the", "top", "tops", "of", "my", "our") || r.is(j, kindNoun, "panel") && r.word(j, "top", "tops") {
		j++
	}
	them := r.word(j, "them", "they") && r.mentions(kindNoun, "strip")
	if (r.is(j, kindNoun, "strip") || them) && (r.ends(j+1) || r.word(j+1, "so", "are")) {
		r.items[first-2].used = true
		return j
	}
	return -1
}

// barsStacked: "two bars 3/4 each stacked" are one bar, as high as both.
func (r *reader) barsStacked() {
	count := r.measureOf(unit.BarCount)
	if count < 0 {
		return
	}
	height := r.measureOf(unit.BarHeight)
	if height < 0 {
		return
	}
	i := r.bound[count].from
	if r.items[i].amount == nil {
		return
	}
	n, whole := r.items[i].amount.whole()
	from, to := r.clause(i)
	if h := r.bound[height].from; !whole || n != 2 || h < from || h >= to || r.within(from, to, kindAttr, "tall") >= 0 || r.within(from, to, kindNoun, "strip") >= 0 || !r.barsPiled(from, to) || r.opensWithin(from, to, "total", "altogether", "overall") {
		return
	}
	b := &r.bound[height]
	v, isNumber := b.fact.Value.(unit.Number)
	if !isNumber {
		return
	}
	b.fact.Value, b.fact.Text, b.fact.Note = 2*v, r.textOf(min(i, b.from), max(i, b.from)), "two on each other"
	r.drop(unit.BarCount)
}

// barsPiled: "stacked", "on top of each other", "one on the other".
func (r *reader) barsPiled(from, to int) bool {
	for k := from; k < to; k++ {
		if r.word(k, "stacked", "piled") || r.word(k, "on") && (r.word(k+1, "top") && r.word(k+2, "of") || r.word(k+1, "each") && r.word(k+2, "other") || r.word(k-1, "one") && r.word(k+1, "the") && r.word(k+2, "other")) {
			return true
		}
	}
	return false
}

package grammar

import "presshand/engine/unit"

// widthOfWood: "9 strips of 1 7/8 ash, 3/4 thick" are as wide as is said before the wood,
// for how thick they are is said apart and is less.
func (r *reader) widthOfWood(i int) bool {
	if r.items[i].amount.form == formQuarters || r.has(unit.StripWidth) || r.mentions(kindAttr, "wide") || !r.mentions(kindNoun, "strip", "bar") {
		return false
	}
	k := r.within(0, len(r.items), kindAttr, "thick") - 1
	if k < 0 || k == i || r.items[k].amount == nil || !r.length(k) || r.size(k) >= r.size(i) {
		return false
	}
	ofPart := r.is(r.next(k+1), kindNoun, "bar", "sled", "mat", "caul", "core", "panel") || r.is(r.prev(k), kindNoun, "bar", "sled", "mat", "caul", "core", "panel")
	return r.boundAt(k) == unit.StripThickness || r.free(k) && !ofPart
}

// jointShows: "worst joint shows 0.4 mm dry" and "the worst joint won't shut better than
// 0.3 mm" are open by so much.
func (r *reader) jointShows(i int) bool {
	if r.word(i-1, "better than", "closer than", "nearer than") && r.word(i-2, "shut", "close", "closes", "closed", "down", "up") && r.size(i) < mostApart {
		return true
	}
	if !r.means(kindNoun, "joint") {
		return false
	}
	k := r.prev(i)
	if r.word(k, "shows", "has", "is", "stays", "stands", "open", "opens") {
		k = r.prev(k)
	}
	dry := r.word(i+1, "dry", "open", "of light") || r.word(k-1, "worst")
	return dry && k < i-1 && r.is(k, kindNoun, "joint") && !isPlural(r.items[k].word) && r.size(i) < mostApart && !r.has(unit.Gap)
}

// feltGap finds the feeler's figure of "light in one joint hand tight, feeler says 1/64",
// where item i says that the joints are hand tight; -1 where there is none.
func (r *reader) feltGap(i int) int {
	if !r.says("feeler", "feelers") {
		return -1
	}
	_, to := r.sentence(i)
	for k := i + 1; k < to; k++ {
		if r.free(k) && r.length(k) && r.size(k) < mostApart && r.opensWithin(max(i, k-4), k, "feeler", "feelers") {
			if r.is(k+1, kindNot) {
				return -1 // "feeler .002 wont go in"
			}
			return k
		}
	}
	return -1
}

// woodLength: a measure before a wood is the stock's thickness: "1/4 walnut",
// "4/4 cherry". Over two inches it is not thickness for certain.
func (r *reader) woodLength(i int) {
	if r.widthOfWood(i) {
		r.bind(i, unit.StripWidth)
		return
	}
	if r.size(i) <= thickestStock && !r.has(unit.StripThickness) {
		r.bind(i, unit.StripThickness)
		return
	}
	if r.size(i) > thickestStock && r.topic == Move && !r.has(unit.PanelWidth) {
		r.bind(i, unit.PanelWidth)
	} else if r.size(i) > thickestStock && !r.has(unit.StripWidth) && r.mentions(kindNoun, "strip", "joint") {
		r.bind(i, unit.StripWidth)
	}
}

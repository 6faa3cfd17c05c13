package grammar

import "presshand/engine/unit"

// faceOnBack reads "with a face on the back as well", "veneer the other side too": a
// core has faces on both sides then.
func (r *reader) faceOnBack() {
	if !r.means(kindNoun, "face") {
		return
	}
	if r.has(unit.Faces) || r.mentions(kindNot) || !r.habit.Follows && !r.wordIn("too", "also", "well") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindNoun, "face") {
			continue
		}
		j := i + 1
		for r.word(j, "on", "onto", "to", "the", "its", "over") {
			j++
		}
		if j == i+1 && !r.word(j, "underneath") || !r.backAt(j) {
			continue
		}
		if one := r.word(i-1, "a", "an", "another", "one", "second", "same", "matching", "identical"); one || i == 0 || r.isBreak(i-1) || r.word(i-1, "and", "or", "if", "we", "i", "put", "also", "both") {
			r.items[j].used = true
			r.say(i, unit.Faces, unit.Number(2))
			return
		}
	}
}

// backAt reports whether item j begins what ends a clause as the other side of a core.
func (r *reader) backAt(j int) bool {
	if !r.word(j, "back", "both", "underside", "bottom", "reverse", "underneath", "rear", "other", "opposite") {
		return false
	}
	j++
	for r.word(j, "side", "sides", "face", "faces", "of", "it", "too", "also", "as", "well", "instead", "then") || r.is(j, kindNoun, "face") {
		j++
	}
	return j >= len(r.items) || r.isBreak(j)
}

// ofJoint reports whether "of each joint", "at the seams" stands at item k: faces that
// meet there are laid on no core.
func (r *reader) ofJoint(k int) bool {
	if !r.word(k, "of", "at", "in", "on", "for", "per", "either") {
		return false
	}
	for k++; r.word(k, "of", "the", "each", "every", "all", "a", "any", "that", "this", "those", "these", "edge", "glue") || r.is(k, kindAttr); k++ {
	}
	return r.is(k, kindNoun, "joint") || r.word(k, "joint", "joints", "seam", "seams", "glueline", "gluelines", "line", "lines", "edge", "edges", "edge joint", "edge joints")
}

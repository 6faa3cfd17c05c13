package grammar

import "presshand/engine/unit"

// faceOnBack reads "with a face on the back as well", "veneer the other side too": a
// core has faces on both sides then.
func (r *reader) faceOnBack() {
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

package grammar

import "presshand/engine/unit"

// ofSeason reports whether the bare number at item i is of a time of year, told below an
// answer: "winter 20", "and 70 in summer".
func (r *reader) ofSeason(i int) bool {
	if !r.habit.Follows {
		return false
	}
	v, whole := r.items[i].amount.whole()
	if !whole || v < 8 || v > 45 || r.isDirected(i) || r.mentions(kindAir, "rh", "mc", "temp") {
		return false
	}
	season := func(k int) bool { return r.word(k, "winter", "summer", "spring", "autumn", "fall", "monsoon") }
	return season(i-1) || r.word(i-1, "is", "its", "at") && season(i-2) || r.word(i+1, "in") && (season(i+2) || r.word(i+2, "the") && season(i+3))
}

// isDirected reports whether a direction or a part stands right behind item i.
func (r *reader) isDirected(i int) bool {
	return r.is(r.next(i), kindAttr) || r.is(r.next(i), kindNoun)
}

// moistureLater: in "glued at 8 %, summer at 12 %" the second is what the wood has then,
// too dry for any room. It stays unused: the movement asks for the room's air.
func (r *reader) moistureLater(i int) bool {
	if r.items[i].amount.float() >= 16 || !r.has(unit.WoodMoisture) || r.mentions(kindAir, "rh") || r.wordIn("room", "house", "shop", "air", "humidity", "heated", "indoors", "inside") {
		return false
	}
	if !r.asksFor(Move) {
		r.phrase.Asks = append(r.phrase.Asks, Ask{About: Move})
	}
	return true
}

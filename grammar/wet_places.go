package grammar

import "presshand/engine/unit"

// placesOfBoard are where a moisture meter is put to a board.
var placesOfBoard = wordSet(`middle center centre heart core end ends edge edges face surface shell side sides top bottom outside inside tip tips butt butts`)

// wetInPlaces reads "my meter says 6 in the middle and 9 at the ends" as moisture that
// differs.
func (r *reader) wetInPlaces() {
	const driest, wettest = 3, 30
	if !r.mentions(kindAir, "mc") && !r.percentSaid() {
		return
	}
	var two []int
	for i := range r.items {
		if !r.free(i) || !r.atPlace(i) || r.items[i].amount.hearsay {
			continue
		}
		am := r.items[i].amount
		if !(am.bare() && am.form != formWords || am.is(unit.Proportion) || am.unitRaw == "in") || am.float() < driest || am.float() > wettest || !r.mentions(kindAir, "mc") && !am.is(unit.Proportion) {
			return
		}
		two = append(two, i)
	}
	if len(two) != 2 || r.items[two[0]].amount.equals(r.items[two[1]].amount.value) || r.within(two[0], two[1], kindAir, "service", "rh") >= 0 {
		return
	}
	for _, k := range two {
		r.moistureAt(k)
	}
	r.moistureRange(two[0], two[1])
}

// moistureAt takes the words of the place behind the number at item i for read.
func (r *reader) moistureAt(i int) {
	for k := i + 1; k < len(r.items) && k <= i+4; k++ {
		if r.items[k].amount != nil {
			r.items[k].used = true // "at one end"
		}
		if r.boardPlaceAt(k) {
			r.items[k].used, r.items[k].meaning = true, meaning{}
			return
		}
	}
}

// boardPlaceAt reports whether item k ends in a place of a board: "middle", "one side".
func (r *reader) boardPlaceAt(k int) bool {
	if r.items[k].amount != nil || r.items[k].brk != 0 {
		return false
	}
	ws := r.wordsOf(k)
	return placesOfBoard[ws[len(ws)-1]]
}

// atPlace: "6 in the middle", "9% at the ends", "11 on one side".
func (r *reader) atPlace(i int) bool {
	k := i + 1
	if r.items[i].amount.unitRaw != "in" {
		if !r.word(k, "in", "at", "on", "near", "toward", "towards", "by") {
			return false
		}
		k++
	}
	for k < len(r.items) && (r.word(k, "the", "each", "both", "its", "their", "very") || r.items[k].amount != nil && r.items[k].amount.form == formWords && r.items[k].amount.equals(one)) {
		k++
	}
	return k < len(r.items) && (r.boardPlaceAt(k) || r.word(k, "other", "another", "opposite"))
}

package grammar

import (
	"math/big"

	"presshand/engine/unit"
)

// asSaid reads measures that are told by how they were taken or seen rather than
// by their names: a drill bit under a cup, a feeler in a joint, a board on edge.
func (r *reader) asSaid() {
	the, middle := r.says("the", "my", "our", "that"), r.says("middle", "center", "centre", "worst", "deepest")
	feeler, joint, tent := r.says("feeler", "feelers", "shim"), r.means(kindNoun, "joint"), r.means(kindNoun, "tent")
	hump, each := r.means(kindFact, "cup_up=hump", "cup_up=hollow"), r.says("each") || r.means(kindRole, "in a row")
	off := r.says("bench", "table", "saw", "floor", "flat", "deck") || r.means(kindNoun, "bed") || r.means(kindRole, "name")
	daylight, face, to := r.says("daylight"), r.says("on the face", "on the faces"), r.says("to", "down to")
	for i := range r.items {
		if !r.free(i) || !r.length(i) {
			continue
		}
		switch {
		case the && (r.isThePart(i) || r.onTheBar(i)), middle && r.middling(i):
		case feeler && r.word(i+1, "feeler", "feelers", "shim"):
			r.items[i+1].used = true
			r.bind(i, unit.Gap)
		case r.word(i-1, "theyre") && i+1 < len(r.items) && r.items[i+1].brk == '&' && r.mentions(kindNoun, "strip") && small(r.size(i)) && !r.has(unit.StripWidth):
			r.bind(i, unit.StripWidth) // "they're 2 1/4 & 1/4 thick"
		case joint && r.openJoint(i):
			if r.size(i) > widestGap {
				r.items[i].amount.dead = true // how far along it is open
				break
			}
			r.bind(i, unit.Gap)
		case tent && r.tentIs(i):
			r.bind(i, unit.Tent)
		case hump && r.is(i-2, kindFact, "cup_up=hump", "cup_up=hollow") && r.word(i-1, "of", "by") && r.size(i) < 0.04 && !r.has(unit.Cup):
			r.bind(i, unit.Cup) // "crown up of 4 mm"
		case hump && r.is(i+1, kindFact, "cup_up=hump", "cup_up=hollow") && r.items[i].amount.form != formWords && r.size(i) < 0.026 && !r.has(unit.Cup) && !r.mentions(kindNoun, "cup"):
			r.bind(i, unit.Cup) // "1/8 hump up in 3/4 ash"
		case each && r.barsEach(i):
			r.bind(i, unit.BarHeight)
		case daylight && r.showsDaylight(i):
			r.bind(i, unit.Gap)
		case off && r.offTheBench(i):
			f := unit.Bow
			if !r.mentions(kindNoun, "bow") && r.mentions(kindNoun, "cup") {
				f = unit.Cup
			}
			r.bind(i, f)
		case face && r.faceAndEdge(i):
			r.bind(i, unit.StripWidth)
		case to && r.planedTo(i):
			r.bind(i, unit.StripThickness)
		}
	}
	r.thatsTheCup()
	r.perFoot()
}

// widestGap is what a joint can be open by, in metres; our estimate.
const widestGap = 0.004

// openJoint: "joint 4 is open 1/32", "joint 2 opened up for 6 inches".
func (r *reader) openJoint(i int) bool {
	from, _ := r.clause(i)
	joint := r.within(from, i, kindNoun, "joint")
	if joint < 0 || r.within(joint+1, i, kindNoun) >= 0 || r.has(unit.Gap) || r.is(r.next(i), kindAttr) || r.is(r.next(i), kindNoun) {
		return false
	}
	return r.within(joint, i, kindRole, "open") >= 0 || r.opensWithin(joint, i, "open", "opened", "opened up", "opens", "gapped", "failed", "split", "let go", "starved")
}

// tentIs: "tent in the corner about 4 mm".
func (r *reader) tentIs(i int) bool {
	from, _ := r.clause(i)
	k := r.within(from, i, kindNoun, "tent")
	return k >= 0 && r.opensWithin(k, i, "corner") && r.amountsIn(k, i) == 0 && r.size(i) < 0.05 && !r.has(unit.Tent)
}

// barsEach: "bars on both sides, 1 in each".
func (r *reader) barsEach(i int) bool {
	k := i + 1
	for r.is(k, kindUnit) {
		k++
	}
	if !r.word(k, "each") && !r.is(k, kindRole, "in a row") || k+1 < len(r.items) && !r.isBreak(k+1) || r.has(unit.BarHeight) || r.size(i) > 0.15 {
		return false
	}
	from, _ := r.sentence(i)
	bar := r.within(from, i, kindNoun, "bar")
	return bar >= 0 && r.within(bar, i, kindNoun, "strip", "panel", "mat", "caul") < 0 && r.amountsIn(bar, i) == 0
}

// showsDaylight: "worst seam shows daylight, about 1/32".
func (r *reader) showsDaylight(i int) bool {
	from, _ := r.sentence(i)
	for k := i - 1; k >= from && k >= i-4 && r.items[k].amount == nil; k-- {
		if r.is(k, kindNoun, "opening") && r.items[k].word == "daylight" {
			return r.within(from, k, kindNoun, "joint") >= 0 && r.size(i) < 0.02 && !r.has(unit.Gap)
		}
	}
	return false
}

// offTheBench: "the ends sit 3/4 off the bench".
func (r *reader) offTheBench(i int) bool {
	at := i + 1
	if !r.word(at, "off", "above", "over", "up") && !r.is(at, kindRole, "length") {
		return false
	}
	for at++; r.word(at, "the", "off", "from", "my"); at++ {
	}
	return r.word(at, "bench", "table", "saw", "floor", "flat", "deck") || r.is(at, kindNoun, "bed") || r.is(at, kindRole, "name") && r.items[at].word == "bench"
}

// thinners are verbs of making strips thinner to a measure.
var thinners = wordSet(`plane planes planed planing sand sands sanded sanding skim skimmed mill mills milled milling thickness thicknessed thicknessing resaw resawn resawing thin thinned dress dressed surface surfaced`)

// thinnedTo reports whether wood is worked down to the number at item i, behind "down
// to": no gauge shows it.
func (r *reader) thinnedTo(i int) bool {
	for j := i - 2; j >= 0 && j >= i-5 && r.word(i-1, "down to") && r.items[j].amount == nil; j-- {
		if thinners[r.items[j].word] {
			return true
		}
	}
	return false
}

// afterThinning: "if the strips are 28 after planing" is how thick they are then.
func (r *reader) afterThinning(i int) bool {
	j := i + 1
	for r.word(j, "now") || r.is(j, kindUnit) {
		j++
	}
	if r.size(i) > thickest || !r.habit.Follows && !r.has(unit.StripWidth) || !r.word(j, "after", "once", "when", "from", "off", "out") {
		return false
	}
	for j++; r.word(j, "of", "the", "we", "i", "theyre", "theyve", "been", "have", "its", "a", "all", "some", "more", "being"); j++ {
	}
	if !thinners[r.wordAt(j)] && !r.word(j, "planer", "thicknesser", "sander") {
		return false
	}
	r.items[j].used = true
	return true
}

// planedTo: "if I plane it to 3/8", "sanded them down to 5/16".
func (r *reader) planedTo(i int) bool {
	if !r.word(i-1, "to", "down to") || r.size(i) > thickest || r.items[i].amount.link != linkNone || r.is(r.next(i), kindAttr) || r.is(r.next(i), kindNoun) || r.has(unit.StripThickness) {
		return false
	}
	for j := i - 2; j >= 0 && j >= i-5; j-- {
		if r.items[j].amount == nil && thinners[r.items[j].word] {
			if r.is(i-1, kindVacuum) {
				r.items[i-1].meaning, r.items[i-1].used = meaning{}, true // "plane it down to half inch"
			}
			r.items[j].used = true
			return true
		}
		if !r.word(j, "it", "them", "em", "that", "this", "those", "these", "down", "all", "back", "her") && !r.is(j, kindNoun, "strip") {
			return false
		}
	}
	return false
}

// faceAndEdge: "45 on the face and 22 on the edge" is how wide and how thick.
func (r *reader) faceAndEdge(i int) bool {
	face := r.is(i+1, kindAsk) && in(r.items[i+1].word, "on the face", "on the faces")
	if !face || r.within(i, len(r.items), kindAttr, "thick") < 0 {
		return false
	}
	r.replacesCue(i + 1)
	r.items[i+1].meaning, r.items[i+1].used = meaning{}, true
	return true
}

// thatsTheCup: of "a 3/32 bit goes under the middle, so thats the cup" the measure
// stands before its name.
func (r *reader) thatsTheCup() {
	if !r.means(kindNoun, "cup", "bow", "gap") {
		return
	}
	for k := range r.items {
		if !r.is(k, kindNoun, "cup", "bow", "gap") || !r.word(k-1, "the", "my", "a") || !r.word(k-2, "thats", "is", "call", "its") {
			continue
		}
		from, _ := r.sentence(k)
		for i := k - 3; i >= from; i-- {
			if r.free(i) && r.length(i) && r.size(i) < 0.05 {
				r.bind(i, bareFields[r.items[k].id])
				return
			}
		}
	}
}

// perFoot reads a taper told by its rise and its run: "gains 1/2 in 6", "tapers 8
// mm over 120 mm".
func (r *reader) perFoot() {
	if !r.mentions(kindNoun, "wedge") || r.has(unit.WedgeRatio) {
		return
	}
	for i := range r.items {
		if !r.free(i) || !r.length(i) || !r.word(i-1, "tapers", "gains", "rises", "drops", "climbs", "taper", "tapering", "rising", "loses") && !r.is(i-1, kindNoun, "leak", "wedge") {
			continue
		}
		j := i + 1
		if !r.word(j, "in", "over", "per", "for") && !r.is(j, kindRole, "length") && !(r.items[i].amount.unitRaw == "in" && j < len(r.items) && r.items[j].amount != nil) {
			continue
		}
		for r.word(j, "in", "over", "per", "for", "every", "each") || r.is(j, kindRole, "length") {
			j++
		}
		if j >= len(r.items) || !r.free(j) || !r.length(j) || r.size(i) <= 0 {
			continue
		}
		run := r.size(j) / r.size(i)
		if r.items[j].amount.unit == nil && r.items[i].amount.unit != nil {
			run = r.items[i].amount.unit.SI(r.items[j].amount.float()) / r.size(i)
		}
		if run < 2 || run > 100 {
			continue
		}
		r.items[i].used, r.items[j].used = true, true
		r.bound = append(r.bound, binding{Fact{Field: unit.WedgeRatio, Value: unit.Number(round(run)), Text: r.textOf(i, j)}, i, false})
		return
	}
}

// footers gives boards told by their length the length: "six-footers".
func (r *reader) footers() {
	if !r.says("footers", "footer") {
		return
	}
	for i := range r.items {
		if w := r.items[i].word; w != "footers" && w != "footer" || i == 0 || r.items[i].amount != nil {
			continue
		}
		k := i - 1
		if k > 0 && r.items[k].brk == '-' {
			k--
		}
		if am := r.items[k].amount; am != nil && r.free(k) && am.bare() {
			u := unit.Foot
			am.unit, am.unitRaw = &u, "ft"
			r.items[i].used = true
			r.bind(k, unit.StripLength)
		}
	}
}

// mileUp reads "a mile up".
func (r *reader) mileUp() {
	if !r.says("mile", "miles") {
		return
	}
	for i := range r.items {
		if r.word(i, "mile", "miles") && r.word(i+1, "up", "high") && r.word(i-1, "a") && !r.has(unit.Altitude) && !r.saysFeet() {
			r.items[i].used = true
			r.bound = append(r.bound, binding{Fact{Field: unit.Altitude, Value: unit.Number(1609.344), Unit: unit.Foot, Text: "a mile"}, i, false})
		}
	}
}

// saysFeet reports whether a height may be told in feet or metres too.
func (r *reader) saysFeet() bool {
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.unit != nil && (am.unit.Symbol == "ft" || am.unit.Symbol == "m") {
			return true
		}
	}
	return false
}

// sameByUnit gives the second of two joined measures the first one's unit where
// that is of feet: "5 ft by 9".
func (r *reader) sameByUnit() {
	for i := 1; i < len(r.items); i++ {
		a, b := r.items[i-1].amount, r.items[i].amount
		if b == nil || b.link != linkTimes || a == nil || b.unit != nil || a.unit == nil || a.unit.Symbol != "ft" || b.value == nil || b.value.Cmp(big.NewRat(40, 1)) > 0 || r.timesAt(i+1) {
			continue
		}
		u := *a.unit
		if b.form != formDecimal && b.value.Denom().Cmp(big.NewInt(2)) > 0 || b.value.Cmp(one) < 0 {
			u = unit.Inch // "4' x 3/4"
		}
		b.unit, b.unitRaw = &u, u.Symbol
	}
}

// filmInside: "the plastic tucks down the inside of the bar too" leaves the bar
// with film on both faces.
func (r *reader) filmInside() bool {
	for i := range r.items {
		if !r.is(i, kindNoun, "film", "bag") {
			continue
		}
		_, to := r.clause(i)
		if r.within(i, to, kindNot) >= 0 {
			continue
		}
		for j := i + 1; j < to && j <= i+5; j++ {
			if !r.word(j, "behind", "inside") {
				continue
			}
			k := j + 1
			for r.word(k, "of", "the", "side", "face") || r.is(k, kindNoun, "face") {
				k++
			}
			return r.is(k, kindNoun, "bar") || r.word(k, "it")
		}
	}
	return false
}

// coveredTo: "cover the bar to 30", "keep it covered up to 1/2".
func (r *reader) coveredTo(i int) bool {
	if r.coverOf(i) {
		return true
	}
	if !r.word(i-1, "to") || r.has(unit.Cover) || r.size(i) > thickest {
		return false
	}
	for k := i - 2; k >= 0 && k >= i-6; k-- {
		if r.is(k, kindRole, "cover") && !r.word(k, "coverage") {
			return true
		}
		if !r.is(k, kindNoun, "bar") && !r.word(k, "the", "it", "its", "face", "up", "inner", "side", "that") && !r.idle(k) {
			return false
		}
	}
	return false
}

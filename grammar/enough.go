package grammar

import "presshand/engine/unit"

// Questions whether there is enough: of glue, and of time in the press.

// suffices are the words for what is enough.
var suffices = wordSet(`enough plenty sufficient ok okay fine alright adequate short long do cut suffice`)

// timeEnough reports whether the time at item i is asked about as one in the
// press: "is an hour in the press plenty", "will 2 hours under vacuum do", "is 40 minutes
// enough for d3".
func (r *reader) timeEnough(i int) bool {
	if am := r.items[i].amount; am == nil || !am.is(unit.Lasting) {
		return false
	}
	inPress := false
	from, to := r.sentence(i)
	if r.closingTook(i) && r.word(i+1, "enough", "sufficient") {
		return true
	}
	if r.enoughForGlue(i + 1) {
		return r.opensWithin(from, i, "is", "are", "will", "would") && !r.labelled(i)
	}
	for j := i + 1; j < to && j <= i+9 && r.items[j].amount == nil; j++ {
		inPress = inPress || r.is(j, kindNoun, "press", "bag", "frame") || r.is(j, kindRole, "clamp") || r.is(j, kindVacuum, "vacuum")
		if inPress && (suffices[r.items[j].word] || r.is(j, kindAttr, "long")) {
			from, _ := r.sentence(i)
			return r.opensWithin(from, i, "is", "will", "would", "does", "do", "can", "could", "are") && !r.labelled(i)
		}
	}
	return false
}

// enoughForGlue: "enough for d3", "plenty with epoxy" stands at item k.
func (r *reader) enoughForGlue(k int) bool {
	for r.word(k, "be", "long") || r.is(k, kindAttr, "long") {
		k++
	}
	if k+2 >= len(r.items) || r.items[k].amount != nil || !suffices[r.items[k].word] || !r.word(k+1, "for", "with") {
		return false
	}
	for k += 2; r.word(k, "the", "a", "my", "our", "this"); k++ {
	}
	return r.is(k, kindGlue)
}

// asksTimeEnough reports whether any time is asked about so, of glue or by itself.
func (r *reader) asksTimeEnough() bool {
	if !r.said(unit.Lasting) || r.mentions(kindNoun, "pump", "leak") || r.dayPlan() {
		return false
	}
	for i := range r.items {
		if r.timeEnough(i) {
			return true
		}
	}
	return false
}

// glueAt reports whether item i names a glue or glue as such.
func (r *reader) glueAt(i int) bool {
	return r.is(i, kindGlue) || r.word(i, "glue", "adhesive", "resin")
}

// glueSought reads "PU glue needed, 5 staves", "will a 250 g pot of epoxy see me
// through": how much it takes.
func (r *reader) glueSought() bool {
	if !r.means(kindGlue) && !r.says("glue", "adhesive", "resin") {
		return false
	}
	if r.measureOfGlue() {
		return true
	}
	if r.mentions(kindNoun, "bar", "pump") || r.mentions(kindVacuum) || r.pressureSaid() || r.asksFor(Glue) {
		return false
	}
	for i := range r.items {
		if !r.glueAt(i) {
			continue
		}
		if k := i + 1; r.word(k, "needed", "required", "wanted") && (k+1 >= len(r.items) || r.isBreak(k+1) || r.word(k+1, "for", "to", "on")) {
			r.items[k].used = true
			return true
		}
		if k := i + 2; r.isBreak(i-1) && r.word(i+1, "for") && k < len(r.items) && r.items[k].amount != nil && (r.is(r.next(k), kindNoun, "panel", "strip", "joint") || r.timesAt(k+1)) {
			return true // "glue for 8 panels 24x48"
		}
		if r.potBefore(i) && r.goesRound(i) {
			return true
		}
	}
	return false
}

// measureOfGlue: "oz of epoxy for 6 strips" asks how much, also where a vacuum is told.
func (r *reader) measureOfGlue() bool {
	if !r.says("of") {
		return false
	}
	for i := range r.items {
		if !r.word(i+1, "of") || !r.glueAt(i+2) || !glueMeasures[r.items[i].word] || r.items[i].amount != nil || !r.word(i+3, "for", "needed", "to") || r.is(i, kindAsk) {
			continue
		}
		if r.isBreak(i-1) || r.word(i-1, "many", "the", "how many", "in", "whats", "and") {
			return true
		}
	}
	return false
}

// glueMeasures are what glue is weighed and poured in.
var glueMeasures = wordSet(`oz ounce ounces floz g gram grams grammes kg kilo kilos lb lbs pound pounds ml cc l litre litres liter liters pint pints quart quarts gallon gallons bottles`)

// potBefore reports whether the glue at item i is so much of it: "a 250 g pot of".
func (r *reader) potBefore(i int) bool {
	for j := i - 1; j >= 0 && j >= i-5 && !r.isBreak(j); j-- {
		if am := r.items[j].amount; am != nil {
			return am.is(unit.Weight) || am.is(unit.Content)
		}
		if r.word(j, "pot", "pots", "kit", "cartridge", "pint", "quart", "gallon", "pound", "litre", "liter", "kilo") || r.is(j, kindRole, "label") {
			return r.word(j+1, "of") && (r.word(j-1, "a", "one", "this", "that", "my", "the") || j > 0 && r.items[j-1].amount != nil)
		}
	}
	return false
}

// goesRound: "see me through", "do 6 boards", "be enough", "last" behind item i.
func (r *reader) goesRound(i int) bool {
	from, to := r.sentence(i)
	for j := from; j < to; j++ {
		if r.word(j, "through", "enough", "plenty", "last", "cover", "stretch", "round", "suffice", "sufficient") || r.word(j, "go", "goes") && r.opensWithin(from, i, "far") || r.word(j, "do") && j > i {
			return true
		}
	}
	return false
}

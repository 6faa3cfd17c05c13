package grammar

import "presshand/engine/unit"

// What is out of flat, and what gets it down, in the words of the shop.

// outOfFlat reports whether a cup or a bow is spoken of.
func (r *reader) outOfFlat() bool { return r.mentions(kindNoun, "cup", "bow") }

// getsFlat reads "how much to get it down", "enough to pull her straight": what
// is out of flat is brought down.
func (r *reader) getsFlat() bool {
	if r.pressedCups() {
		return true
	}
	if !r.outOfFlat() || r.mentions(kindNoun, "bar") || r.asksFor(Flatten) {
		return false
	}
	for i := range r.items {
		moved := r.word(i, "get", "gets", "bring", "brings", "hold", "holds", "suck", "sucks", "press", "presses", "force", "coax", "draw", "lay", "make", "push", "take", "squash") || r.is(i, kindVacuum, "pull") || r.is(i, kindRole, "drive")
		j := i + 1
		if !moved || !r.word(j, "it", "her", "him", "them", "em", "that", "this", "those", "these") {
			continue
		}
		for r.word(j+1, "all", "back", "dead", "right", "pretty", "lie", "lay") {
			j++
		}
		if r.word(j+1, "down", "flat", "true", "level") || r.is(j+1, kindWoodSort) && r.word(j+1, "straight") || r.is(j+1, kindAsk, "flatten") {
			return true
		}
	}
	return false
}

// pressedCups makes a cup that is pressed down of what would be a side that lies
// down: "get the hump down".
func (r *reader) pressedCups() bool {
	if !r.means(kindFact, "cup_up=hump", "cup_up=hollow") {
		return false
	}
	found := false
	for i := range r.items {
		if it := &r.items[i]; r.is(i, kindFact, "cup_up=hump", "cup_up=hollow") && r.pressedDown(i) {
			it.meaning, found = meaning{kind: kindNoun, id: "cup"}, true
			r.hear(i)
		}
	}
	return found
}

// vacuumSought reads "what must the gauge show", "what would the pump have to pull",
// "how far do I need to pull down to flatten it".
func (r *reader) vacuumSought() bool {
	if !r.means(kindVacuum) || !r.mentions(kindNoun, "cup", "bow", "joint", "bar") || r.pressureSaid() {
		return false
	}
	for i := range r.items {
		far := r.word(i, "how") && r.word(i+1, "far", "hard", "deep", "low", "strong", "much")
		if !far && !r.word(i, "what", "whats") && !r.is(i, kindAsk, "glue:glue_g", "face", "pump:ultimate_vacuum_kpa", "words") {
			continue
		}
		pulls, must := false, false
		for j := i + 1; j < len(r.items) && j <= i+9 && !r.isBreak(j) && r.items[j].amount == nil; j++ {
			pulls = pulls || r.is(j, kindVacuum, "pull", "gauge", "vacuum")
			must = must || r.word(j, "must", "should", "have", "has", "ought", "gotta", "take", "takes") || r.is(j, kindRole, "target")
		}
		if pulls && must {
			r.replacesCue(i)
			return true
		}
	}
	return false
}

// thicknessSought reads "thickest I can leave it so that 80 kPa flattens it".
func (r *reader) thicknessSought() bool {
	if !r.means(kindAttr, "thickest", "thinnest") {
		return false
	}
	for i := range r.items {
		if r.is(i, kindAttr, "thickest", "thinnest") && r.word(i+1, "i", "we", "you", "it") && (r.is(i+2, kindRole, "label") || r.word(i+2, "can", "could", "may", "might", "should", "dare")) && r.outOfFlat() {
			r.items[i].used = true
			return true
		}
	}
	return false
}

// abandoned reports whether the question at item i was broken off: "what's the
// widest... no wait, how far".
func (r *reader) abandoned(i int) bool {
	for j := i + 1; j < len(r.items) && j <= i+6; j++ {
		switch {
		case r.is(j, kindFix) && j > i+1 && r.isBreak(j-1):
			return r.asksBehind(j)
		case r.isBreak(j), r.idle(j):
		default:
			return false
		}
	}
	return false
}

// asksBehind reports whether another question stands behind item i.
func (r *reader) asksBehind(i int) bool {
	for j := i + 1; j < len(r.items); j++ {
		if r.is(j, kindAsk) || r.word(j, "how", "what", "whats", "will", "which", "does", "can") {
			return true
		}
	}
	return false
}

// leastRun is how many times as far as it is high what is out of flat runs, at least.
const leastRun = 10

// outInRun keeps the "in" of "cup, 3 in 150" from being inches.
func (r *reader) outInRun() {
	if !r.outOfFlat() && !r.mentions(kindFact, "cup_up=hump", "cup_up=hollow") {
		return
	}
	for i := 0; i+1 < len(r.items); i++ {
		am, run := r.items[i].amount, r.items[i+1].amount
		if am == nil || run == nil || am.unitRaw != "in" || run.link != linkNone || r.is(i-1, kindNoun, "bar", "mat", "strip") {
			continue
		}
		over := run.float()
		if r.habit.Metric && run.unit != nil && run.unit.Symbol == "m" {
			over *= 1000 // "12 in 3 m"
		} else if !run.bare() {
			continue
		}
		if am.float() > 0 && over >= leastRun*am.float() {
			am.unit = nil
		}
	}
}

// runOf reads "bow, 12 mm in 2400", "cup, 3/32 per 6": how much out of flat, and
// over what, with the name in a clause of its own.
func (r *reader) runOf(i int) bool {
	j := i + 1
	inWord := r.items[i].amount.unitRaw == "in" && (r.items[i].amount.unit == nil || r.free(i+1) && r.items[i+1].amount.unit != nil)
	if inWord {
		j--
	}
	if r.word(j, "of") && r.is(j+1, kindNoun, "cup", "bow") {
		j += 2
	}
	if !inWord && !r.word(j, "in", "per", "over", "across", "on") {
		return false
	}
	for r.word(j+1, "a", "the", "its", "full", "about") {
		j++
	}
	if !r.free(j+1) || !r.length(j+1) || r.size(i) <= 0 || r.size(i) > 0.1 || r.is(r.next(j+1), kindNoun) || r.is(r.next(j+1), kindWood) {
		return false
	}
	f, over := unit.Cup, unit.StripWidth
	if r.mentions(kindNoun, "bow") || r.has(unit.Bow) {
		f, over = unit.Bow, unit.StripLength
	} else if r.mentions(kindNoun, "gap") && !r.outOfFlat() {
		f, over = unit.Gap, unit.StripLength // "crook's 1/16 in 3 ft"
	} else if !r.outOfFlat() && !r.mentions(kindFact, "cup_up=hump", "cup_up=hollow") || r.topic == Move {
		return false
	}
	run := r.size(j+1) / r.size(i)
	if run < leastRun || run > 2000 || over == unit.StripLength && r.size(j+1) < 0.2 || r.has(f) || r.has(over) {
		return false
	}
	r.bind(j+1, over)
	return r.bind(i, f)
}

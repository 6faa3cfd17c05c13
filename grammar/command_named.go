package grammar

// measuredBySomeone reads "Ana measured 14 before lunch: 1 in bar, strips 1/4", a check that
// begins with the name of who did it.
func (r *reader) measuredBySomeone() bool {
	if !r.namedFirst() {
		return false
	}
	refs, next := r.references(2)
	if len(refs) != 1 {
		return false
	}
	for r.word(next, "before", "after", "at", "lunch", "just", "now", "today", "this", "morning", "too", "again", "during", "break", "earlier", "for", "me", "us") || r.is(next, kindRole, "am", "pm") {
		next++
	}
	if !r.isBreak(next) || next+1 >= len(r.items) || r.within(next, len(r.items), kindNoun) < 0 && r.within(next, len(r.items), kindVacuum) < 0 {
		return false
	}
	r.items[0].used = true
	r.commit(&Command{Verb: Check, Loads: refs}, next)
	return true
}

// namedFirst reports whether the message begins with a name and a word of checking.
func (r *reader) namedFirst() bool {
	return len(r.items) > 3 && r.is(1, kindVerb, string(Check)) && r.unknown(0) && !notNames[r.items[0].word] && r.word(1, "measured", "checked", "remeasured", "taped", "gauged")
}

// notNames are words before "checked" that name nobody.
var notNames = wordSet(`who has have had not never nobody noone anyone someone somebody he she they it was is were been just already finally all both re ive weve double got getting be to if when after once i we you everyone`)

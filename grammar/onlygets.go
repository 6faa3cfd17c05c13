package grammar

import "presshand/engine/unit"

// onlyGetsSo: "what's the bar do if I only get 21" tells another number for one said before,
// of whatever it was, but not for the part that the question names.
func (r *reader) onlyGetsSo(i int) bool {
	return r.habit.Follows && r.free(i) && r.items[i].amount.value != nil && r.amountsIn(0, len(r.items)) == 1 && r.onlyGets(i)
}

// onlyReached: in "1 1/2 bar on 5 strips, what do I get if we only get 21" there is but the
// vacuum that a pump would fall short of.
func (r *reader) onlyReached(i int) bool {
	am := r.items[i].amount
	fits := !r.habit.Metric && am.float() >= 15 && am.float() <= 30 || r.habit.Metric && am.form == formDecimal && am.float() >= 0.3 && am.float() < 1.05
	return fits && am.bare() && am.link == linkNone && !r.habit.Follows && r.mentions(kindNoun, "bar", "strip", "mat", "cup", "face") && !r.mentions(kindAsk, "strips", "schedule") && !r.has(unit.Vacuum) && r.onlyGets(i)
}

// onlyGets: "if I only get", "when it just makes", "but we can only get to" before item i,
// the last of its clause.
func (r *reader) onlyGets(i int) bool {
	if r.next(i) >= 0 && !r.word(i+1, "on", "out") || r.word(i+1, "out", "on") && !r.word(i+2, "it", "her", "the") {
		return false
	}
	j := i - 1
	for r.word(j, "to", "about", "like", "around", "maybe", "say", "roughly", "up", "it") || r.is(j, kindSay) {
		j--
	}
	if !r.word(j, "get", "gets", "getting", "got", "make", "makes", "making", "made", "manage", "manages", "managed", "see", "sees", "reach", "reaches", "reached", "hit", "hits") && !r.is(j, kindRole, "target") {
		return false
	}
	short := false
	for j--; r.word(j, "only", "just", "barely", "ever", "can", "could", "am", "im", "were", "its"); j-- {
		short = short || r.word(j, "only", "just", "barely")
	}
	return short && (r.word(j, "i", "we", "it", "she", "you", "if", "when", "but", "ill", "well") || r.is(j, kindNoun, "pump") || r.is(j, kindPerson) || j+1 < len(r.items) && r.word(j+1, "im", "were", "its"))
}

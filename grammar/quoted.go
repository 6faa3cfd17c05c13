package grammar

import "presshand/engine/unit"

// killQuoted marks the figures of an answer that a thread asks about, and changes nothing
// with: "where does 11% emc come from", "why 10 min open", "why assume 70 degrees", "the
// handbook says 10.2 psi, why do you say less".
func (r *reader) killQuoted() {
	if !r.habit.Follows {
		return
	}
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.dead {
			continue
		}
		from, to := r.sentence(i)
		why := r.within(from, to, kindAsk, "why")
		if why >= 0 && r.opensWithin(why, i, "use", "try", "run") {
			continue // "why not use 10 psi" offers it
		}
		if why >= 0 && why < i && r.quotedBehind(why, i) || r.pushQuoted(from, i, to, why >= 0) {
			am.dead = true
		}
	}
}

// quotedBehind: item i is a figure that a question with "why" at item why is about.
func (r *reader) quotedBehind(why, i int) bool {
	if k := r.within(why, i, kindAsk, "profile"); k >= 0 && r.word(k, "assume", "assumed", "default", "defaults") {
		r.items[k].meaning, r.items[k].used = meaning{}, true
		return true
	}
	am := r.items[i].amount
	switch {
	case am.is(unit.Proportion):
		return r.within(why, min(i+2, len(r.items)), kindAsk, "move:emc_pct") >= 0 || r.opensWithin(why, min(i+2, len(r.items)), "emc", "equilibrium")
	case am.is(unit.Pressing):
		return r.within(why, i, kindAsk, "pump:ultimate_vacuum_kpa") >= 0
	case am.is(unit.Lasting):
		k := why + 1
		for r.word(k, "the", "only", "it", "is", "does", "take", "takes", "not", "just", "a", "come", "do", "you", "say") {
			k++
		}
		return k == i
	}
	return false
}

// pushQuoted: "explain the 14 psi", "is 10 psi not enough", "what makes it lose 11 psi on the
// way" name a push of the answer, and no gauge.
func (r *reader) pushQuoted(from, i, to int, why bool) bool {
	am := r.items[i].amount
	if !am.is(unit.Pressing) || am.unit.Symbol != "psi" || r.within(from, to, kindVacuum) >= 0 {
		return false
	}
	asked := r.word(i-1, "lose", "loses", "losing") && !r.opensWithin(from, i, "if") && !r.timeSaid() && !r.word(i+1, "a", "an", "per", "every", "each") ||
		(r.word(i-1, "isnt") || r.word(i-1, "is") && (r.within(i, to, kindNot) >= 0 || r.opensWithin(i, to, "far joint", "last joint", "first joint", "joint", "joints"))) && r.opensWithin(i, to, "enough", "ok", "okay", "plenty")
	if asked && !why {
		r.items[i-1].meaning = meaning{kind: kindAsk, id: "why"}
		r.hear(i - 1)
	}
	return why || asked
}

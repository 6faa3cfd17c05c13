package grammar

// labelLeast: "bottle says min 48", "label: 5 open, not below 50, clamp 40", "lowest 12C" and
// "minimum on the label is 53" tell the least warmth that a label allows.
func (r *reader) labelLeast(i int) bool {
	if !r.mentions(kindRole, "label") || !r.couldBeWarm(i) || !r.couldBeLeast(i) {
		return false
	}
	from, _ := r.sentence(i)
	if r.leastWord(i+1) && r.items[i+1].word != "at least" && r.endsLeast(i+2) && !r.timed(i-1) {
		return r.within(from, i, kindRole, "label") >= 0 // "label says 10 minimum"
	}
	k, far := i-1, false
	for r.word(k, "is", "are", "was", "of", "temp", "temperature", "on", "the", "now", "only") || r.is(k, kindRole, "label") || r.is(k, kindAir, "temp") {
		far = far || r.is(k, kindRole, "label")
		k--
	}
	if !r.leastWord(k) && !r.is(k, kindRole, "mintemp") || !r.endsLeast(i+1) {
		return false
	}
	for r.is(k-1, kindRole, "label") || r.is(k-1, kindSay) || r.word(k-1, "a", "the") {
		k--
	}
	return !r.timed(k-1) && (far || r.labelled(i))
}

// couldBeLeast keeps the bare number at item i to the degrees that a label may have for its
// least, where no time in the press can be meant.
func (r *reader) couldBeLeast(i int) bool {
	am := r.items[i].amount
	if !am.bare() {
		return true
	}
	low, high := 35.0, 75.0
	if r.habit.Metric {
		low, high = 2, 20
	}
	return am.float() >= low && am.float() <= high && (!r.asksHowLong() || r.mentions(kindRole, "open", "closed", "clamp") || r.is(i-1, kindRole, "mintemp"))
}

func (r *reader) leastWord(k int) bool {
	return r.word(k, "min", "minimum", "lowest", "at least", "mini")
}

// timed: of "clamp min 45" and "spread at least 180" the least is not of warmth.
func (r *reader) timed(k int) bool {
	for r.word(k, "is", "should", "be", "should be") {
		k--
	}
	return k >= 0 && (r.is(k, kindRole, "open", "closed", "clamp", "spread") || r.is(k, kindNoun) || r.is(k, kindAttr))
}

// endsLeast reports whether nothing behind the number goes on from it.
func (r *reader) endsLeast(k int) bool {
	if r.isBreak(k) && r.word(k+1, "under", "in") && (r.underFilm(k+2) || r.is(k+2, kindVacuum)) {
		return false // "at least 45, under film" is a time
	}
	role := r.is(k, kindRole, "open", "closed", "clamp", "spread") && k+1 < len(r.items) && r.items[k+1].amount != nil
	return r.isBreak(k) || r.word(k, "and", "but", "so", "on") || role || k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.link == linkNone
}

// weAreOnly: "and if we're at 52" says nothing else, in a thread.
func (r *reader) weAreOnly(i int) bool {
	return r.habit.Follows && r.amountsIn(0, len(r.items)) == 1 && r.items[i].amount.bare() && r.items[i].amount.form == formInt && !r.mentions(kindNoun) && !r.mentions(kindAttr) && !r.mentions(kindRole)
}

// labelAgain: "55 clamp, not 60" and "no, 14 closed" amend what the label of the thread says.
func (r *reader) labelAgain(i int) bool {
	if !r.habit.Follows || r.mentions(kindNoun) || r.mentions(kindAttr) || r.items[i].amount.form != formInt {
		return false
	}
	role := func(k int) bool { return r.is(k, kindRole, "open", "closed") || r.word(k, "clamp") }
	first := i == 0 || r.isBreak(i-1) || r.idle(i-1) || r.is(i-1, kindFix) || r.word(i-1, "make", "its", "is", "that")
	return first && role(i+1) && (r.isBreak(i+2) || r.is(i+2, kindNot)) || role(i-1) && r.isBreak(i-2) && r.is(i+1, kindNot)
}

// underFilm: "the film", "film".
func (r *reader) underFilm(k int) bool {
	for r.word(k, "the", "a") {
		k++
	}
	return r.is(k, kindNoun, "film") || r.word(k, "film")
}

// inFor: "in for 75 min", "they're in for 2 hours" of a day's plan.
func (r *reader) inFor(i int) bool {
	in := r.word(i-1, "in for") || r.word(i-1, "for") && r.word(i-2, "in")
	return in && (r.isBreak(i+1) || r.word(i+1, "each", "and", "a", "per")) && !r.labelled(i) && (r.topic == Schedule || r.dayPlan() || r.panelsAndPresses())
}

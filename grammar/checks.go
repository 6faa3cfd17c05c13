package grammar

import "presshand/engine/unit"

// measuredParts: in "second check on 31: bar measured 1 1/8" the later verb is
// of the part, not of the load.
func (r *reader) measuredParts() {
	for i := range r.items {
		if r.is(i, kindVerb, string(Check)) && r.is(i-1, kindNoun) {
			r.items[i].meaning, r.items[i].word = meaning{}, "is"
			r.hear(i)
		}
	}
}

// startsCheck: "checked – batten 38 mm" and "second check: bar 3/4" are checks of
// the thread's load; "check if the joints hold" is not.
func (r *reader) startsCheck(i int) bool {
	if r.opens("whats", "what", "who", "whos", "which", "nobody", "how") >= 0 || r.word(r.firstWord(), "is", "has") {
		return false
	}
	switch r.items[i].word {
	case "i measured", "i checked", "measured":
		return !r.asksSomething() && !r.mentions(kindFix) && !r.mentions(kindRole, "friction") && !r.mentions(kindNoun, "joint") && (r.habit.Follows || !r.mentions(kindNoun, "gap", "cup", "bow") && !r.tellsWork())
	case "check done", "check is done", "checks done", "check complete", "second check done", "check finished", "done the check", "did the check", "done the second check", "did the second check", "double check done", "checked", "second check", "verified", "double checked", "rechecked", "checks out", "looks fine", "looks good", "looks ok", "re checked", "measures", "signed off":
		return !r.asksSomething() && !(r.mentions(kindNoun, "gap", "cup", "bow") && !r.mentions(kindNoun, "bar", "strip") && !r.mentions(kindVacuum))
	}
	return false
}

// tellsWork reports whether strips are counted, or a wood or a length is told, as a new
// question does and a check without a load does not: "I measured the bar at 1 1/8. 5 strips 2
// wide 1/4 thick".
func (r *reader) tellsWork() bool {
	for i := range r.items {
		if n, ok := r.wholeAt(i); ok && n > 1 && r.items[i].amount.bare() && r.is(r.counted(i), kindNoun, "strip") && isPlural(r.items[r.counted(i)].word) {
			return r.mentions(kindVacuum) || r.pressureSaid() || r.mentions(kindAttr, "wide")
		}
	}
	return false
}

// loadsCheckedLast are the loads of "strips 9/32, bar 1 1/4 — that's 46 checked", where
// what was measured stands first.
func (r *reader) loadsCheckedLast(i int) []int {
	refs := r.justBefore(i)
	if len(refs) == 0 || !r.is(i, kindVerb, string(Check)) || !r.nothingAfter(i) || r.asksSomething() {
		return nil
	}
	first := i - 1
	for first > 0 && (r.items[first].amount != nil || !r.isBreak(first)) && !r.word(first, "thats", "so", "this", "and") {
		first--
	}
	if !r.isBreak(first) && !r.word(first, "thats", "so", "this", "and") || r.amountsIn(first, i) != len(refs) || r.amountsIn(0, first) < 2 || r.within(0, first, kindNoun, "bar", "strip", "mat", "sled", "caul") < 0 && r.within(0, first, kindVacuum) < 0 {
		return nil
	}
	for k := first; k <= i; k++ {
		r.items[k].used = true
	}
	return refs
}

func (r *reader) asksSomething() bool {
	if !r.says("?") {
		return false
	}
	for i := range r.items {
		if r.items[i].brk == '.' && r.items[i].word == "?" {
			return true
		}
	}
	return false
}

func (r *reader) showsOnly(next int) bool {
	for j := next; j < len(r.items); j++ {
		if r.is(j, kindVerb) && !r.is(j, kindVerb, "show", "list") || r.items[j].amount != nil {
			return false
		}
	}
	return true
}

// partsInARow reads a check without commas, where each number stands behind its
// part: "gauge 25 bar 1 strips 1/4".
func (r *reader) partsInARow() {
	for i := 1; i+2 < len(r.items); i++ {
		if !r.free(i) || !r.items[i].amount.bare() || !r.is(i+1, kindNoun, "bar", "strip", "mat") && !r.is(i+1, kindVacuum, "gauge") || !r.free(i+2) || r.items[i-1].used || i > 1 && r.items[i-2].amount != nil && !r.items[i-2].used {
			continue
		}
		switch {
		case r.is(i-1, kindNoun, "bar"):
			r.bind(i, unit.BarHeight)
		case r.is(i-1, kindNoun, "mat"):
			r.bind(i, unit.MatThickness)
		case r.is(i-1, kindVacuum, "gauge"):
			r.bind(i, unit.Vacuum)
		}
	}
}

// faultWords say that something is not as it should be.
var faultWords = []string{"missing", "gone", "absent", "broken", "bent", "cracked", "crack", "cracks", "split", "splits", "loose", "leaks", "leaking", "leaky",
	"dry", "wrong", "warped", "bowed", "cupped", "twisted", "torn", "ripped", "crooked", "uneven", "chipped", "hole", "holes", "kinked", "kink", "damaged", "dirty",
	"slipped", "shifted", "gap", "gaps", "short", "odd", "weird", "bad", "forgot", "forgotten", "puncture", "punctured", "tear", "problem", "differs", "different", "off",
	"rough", "noisy", "funny", "strange", "rattles", "rattling", "struggling", "struggles", "spilled", "spilt", "smeared", "dripping", "messy", "mess"}

// presence are words for a part that is there.
var presence = []string{"there", "in", "fitted", "on", "present", "here", "around", "place", "anywhere", "found"}

// missingParts reads "bar missing" and "mat is not there" in a check.
func (r *reader) missingParts() {
	for i := range r.items {
		if !r.is(i, kindNoun, "bar", "mat") || r.items[i].used {
			continue
		}
		j := i + 1
		for r.word(j, "is", "was", "are", "s", "still", "has", "been", "looks") {
			j++
		}
		denied := r.is(j, kindNot, "not")
		if denied {
			j++
		}
		gone := !denied && r.word(j, "missing", "gone", "absent", "forgotten", "isnt")
		notThere := denied && (r.word(j, presence...) || r.is(j, kindUnit, "in"))
		if !gone && !notThere {
			continue
		}
		f := unit.BarDenied
		if r.items[i].id == "mat" {
			f = unit.MatDenied
		}
		for k := i; k <= j; k++ {
			r.items[k].used = true
		}
		r.say(i, f, unit.Word("none"))
	}
}

// doubts returns the clauses of a check that speak against taking it for one
// that agrees: a number of nothing, a denial, a fault, a word that was not
// understood beside a part.
func (r *reader) doubts() []string {
	var out []string
	for _, x := range r.phrase.Refused {
		out = append(out, x.Text)
	}
	for _, x := range r.phrase.Clashes {
		out = append(out, x.Texts...)
	}
	for _, x := range r.phrase.Choices {
		for _, v := range x.Values {
			out = append(out, v.Text)
		}
	}
	for from := 0; from < len(r.items); {
		to := from
		for to < len(r.items) && !r.isBreak(to) {
			to++
		}
		faulted := to > from && (r.doubtful(from, to) || r.marksQuestion(to))
		if unread := !faulted && r.unreadIn(from, to); faulted || unread {
			said := from // without "14 checked" before it
			if verb := r.within(from, to-1, kindVerb, string(Check)); verb >= 0 && r.items[verb].used {
				said = verb + 1
			}
			out = append(out, trimmed(r.textOf(said, to-1)))
			if c := r.phrase.Command; unread && c != nil && r.within(from, to, kindNoun) < 0 && !r.opensWithin(from, to, "need", "needs") {
				c.Unclear = append(c.Unclear, out[len(out)-1])
			}
		}
		from = to + 1
	}
	return distinct(out)
}

func (r *reader) doubtful(from, to int) bool {
	if r.within(from, to, kindNoun) >= 0 && r.amountTaken(from, to) && r.guessed(from, to) || r.onlyGuesses(from, to) || r.misplaced(from, to) || r.fromElsewhere(from, to) {
		return true
	}
	for i := from; i < to; i++ {
		switch it := &r.items[i]; {
		case it.used:
		case it.amount != nil:
			if it.amount.form != formPair && !(it.amount.dead && r.amountTaken(from, to)) {
				return true
			}
		case r.is(i, kindNot, "not"):
			if i+1 < to && !r.word(i+1, faultWords...) && !r.deniesAnother(i, to) {
				return true
			}
		case r.word(i, "except", "but for"):
			return true
		case r.word(i, faultWords...), r.is(i, kindNoun, "leak"):
			if !r.faultDenied(i) && !(it.word == "dry" && r.word(i+1, "run", "fit", "fitted", "clamp")) {
				return true
			}
		case r.word(i, "open", "opened", "lifting", "lifted", "starved") && r.within(from, to, kindNoun, "joint", "strip") >= 0 && !r.faultDenied(i):
			return true
		case r.is(i, kindVerb, string(Hold), string(Drop)) && !r.gaugeHolds(i),
			r.word(i, "ish") && i > from && r.items[i-1].amount != nil, r.word(i, "so") && r.word(i-1, "or") && r.amountsIn(from, i) > 0:
			return true
		}
	}
	return false
}

// deniesAnother reports whether "not" denies a number beside one that counts:
// "1 in not 3/4".
func (r *reader) deniesAnother(i, to int) bool {
	return r.items[i+1].amount != nil && r.items[i+1].amount.dead && r.amountTaken(0, to)
}

// amountTaken reports whether a number of [from, to) was read for something.
func (r *reader) amountTaken(from, to int) bool {
	for i := from; i < to; i++ {
		if r.items[i].amount != nil && r.items[i].used {
			return true
		}
	}
	return false
}

// faultDenied: "no gaps", "nothing loose".
func (r *reader) faultDenied(i int) bool {
	return r.is(i-1, kindNot) || r.word(i-1, "nothing", "nowhere", "zero") || r.word(i-1, "any", "the", "are", "is") && r.is(i-2, kindNot)
}

// partMeasured reads "load 14 bar measured 1 1/16, gauge 24 1/2, agree": a check whose
// verb stands behind the first thing measured.
func (r *reader) partMeasured(c *Command, next int) bool {
	part := next
	for r.isBreak(part) && part < len(r.items) {
		part++
	}
	if !r.is(part, kindNoun, "bar", "strip", "mat") && !r.is(part, kindVacuum) || !r.is(part+1, kindVerb, string(Check)) || !r.word(part+1, "measured", "measures") || part+2 >= len(r.items) || r.items[part+2].amount == nil || r.asksSomething() {
		return false
	}
	r.items[part+1].used = true
	c.Verb = Check
	r.commit(c, part)
	return true
}

// foundBad reads "load 9 was bad" and "9 bad, joint 4 let go": a result.
func (r *reader) foundBad(c *Command, next int) bool {
	at := next
	for r.word(at, "was", "is", "came", "turned", "out", "all") {
		at++
	}
	if !r.word(at, "bad", "ruined", "junk", "rubbish") || !r.isBreak(at+1) || r.asksSomething() || r.within(0, next, kindVerb, "show") < 0 && !r.mentions(kindNoun, "joint") {
		return false
	}
	c.Verb = Result
	r.close(c, at+1)
	c.Note = trimmed(r.text[r.items[at].start:])
	return true
}

// checkedBehind reads "23: batten 39.5, gauge 0.83 bar - checked": a check whose
// verb stands last.
func (r *reader) checkedBehind(c *Command, next int) bool {
	if next >= len(r.items) || r.items[next].brk != ':' || r.asksSomething() {
		return false
	}
	for i := next + 1; i < len(r.items); i++ {
		if r.is(i, kindVerb, string(Check)) && (r.isBreak(i-1) || r.items[i-1].amount != nil && r.isBreak(i+1) || r.word(i-1, "all", "everything", "both", "is", "and") && r.isBreak(i-2)) && r.amountsIn(next, i) > 0 && r.amountsIn(i, len(r.items)) == 0 {
			r.items[i].used = true
			c.Verb = Check
			r.commit(c, next+1)
			return true
		}
	}
	return false
}

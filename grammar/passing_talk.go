package grammar

// What people say besides, with numbers that are of no load.

// homely things have numbers of their own: "dog weighs 60 lb", "school starts at 8".
var homely = wordSet(`school game wedding church dentist dog cat phone battery laptop`)

// crowd are who and what is counted besides: "2 guys out sick", "3 coffees".
var crowd = wordSet(`guys men people lads blokes helpers apprentices coffees pages jobs bucks dollars kids beers`)

// killTalk gives up the numbers of talk besides the question.
func (r *reader) killTalk() {
	if r.amountsIn(0, len(r.items)) < 3 {
		return
	}
	takes, home := r.says("takes", "does", "cuts", "handles"), r.says("school", "game", "wedding", "church", "dentist", "dog", "cat", "phone", "battery", "laptop")
	by, its, paid := r.says("by"), r.says("its") && r.says("am", "pm"), r.says("paid", "cost", "costs")
	for i := range r.items {
		if r.items[i].amount == nil && ofTrade(r.items[i].kind) {
			continue // nor is the clause around it plain
		}
		switch {
		case home && r.items[i].brk == 0 && homely[r.items[i].word], takes && r.machineTakes(i):
			r.killPlainClause(i)
		case r.free(i) && (r.crowdCounted(i) || by && r.answerBy(i) || its && r.timeNow(i) || paid && r.paid(i)):
			r.items[i].amount.dead = true
		}
	}
}

// killPlainClause gives up the numbers of the clause around item i if it names nothing of the
// trade and has no size: "wedding signs 18x24" are what is made.
func (r *reader) killPlainClause(i int) {
	from, to := r.clause(i)
	for k := from; k < to; k++ {
		if r.timesAt(k) {
			return
		}
		if ofTrade(r.items[k].kind) {
			return
		}
	}
	for k := from; k < to; k++ {
		if r.items[k].amount != nil {
			r.items[k].amount.dead = true
		}
	}
}

// ofTrade reports whether a word of the kind makes its clause one of the trade.
func ofTrade(k kind) bool {
	switch k {
	case kindNoun, kindVacuum, kindAir, kindGlue, kindWood, kindAttr, kindFact, kindSay:
		return true
	}
	return false
}

// machineTakes: "the planer takes 15 inches", "our saw only cuts 3".
func (r *reader) machineTakes(i int) bool {
	does := i + 1
	if r.word(does, "only") {
		does++
	}
	return r.word(does, "takes", "does", "cuts", "handles") && in(r.wordAt(i), machines...) && (r.isBreak(i-1) || r.word(i-1, "the", "my", "our"))
}

// crowdCounted: "2 guys out sick", "got 2 other jobs waiting".
func (r *reader) crowdCounted(i int) bool {
	if !r.items[i].amount.bare() {
		return false
	}
	k := i + 1
	for r.word(k, "other", "more", "of", "my", "our", "the") {
		k++
	}
	if of := k + 2; r.word(k+1, "of") && of < len(r.items) && r.items[of].amount != nil {
		return false // "3 jobs of 4 panels"
	}
	return crowd[r.wordAt(k)]
}

// answerBy: "tell me by 4", "need to know by 3".
func (r *reader) answerBy(i int) bool {
	return r.word(i-1, "by") && (r.word(i-2, "me", "us") && r.word(i-3, "tell", "answer") || r.word(i-2, "know"))
}

// timeNow: "its 5 am and nobody is here" begins no day, where no panels are pressed in turn.
func (r *reader) timeNow(i int) bool {
	return r.word(i-1, "its") && r.isBreak(i-2) && r.word(i+1, "am", "pm") && !r.dayPlan() && !r.mentions(kindNoun, "panel")
}

// paid: "that bar cost me 12", "paid 450 for it".
func (r *reader) paid(i int) bool {
	return r.items[i].amount.bare() && (r.word(i-1, "paid", "cost", "costs") || r.word(i-1, "me", "us") && r.word(i-2, "cost", "costs"))
}

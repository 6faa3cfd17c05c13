package grammar

// What people say of loads beside orders and lists.

// usedOn asks what a load was pressed with: "what bar did we use on 17".
func (r *reader) usedOn() bool {
	if !r.says("did") {
		return false
	}
	first := r.firstWord()
	if first >= len(r.items) || !in(r.wordsOf(first)[0], "what", "whats", "which", "how", "who") {
		return false
	}
	for i := first + 1; i+3 < len(r.items); i++ {
		if !r.word(i, "did") || !(r.word(i+1, "we", "i", "you", "ya", "u", "they", "he", "she", "it") || r.is(i+1, kindPerson)) {
			continue
		}
		if !r.word(i+2, "use", "run", "put", "have", "set", "pull") && !r.is(i+2, kindVacuum, "pull") {
			return false
		}
		for k := i + 3; k < len(r.items); k++ {
			if !r.word(k, "on", "for") {
				continue
			}
			refs, next := r.references(k + 1)
			if len(refs) != 1 || !r.nothingAfter(next-1) || r.amountsIn(0, k) > 0 {
				return false
			}
			for j := range r.items {
				r.items[j].used = true
			}
			r.phrase.Command = &Command{Verb: Show, Loads: refs}
			r.phrase.Asks = []Ask{{About: Book}}
			return true
		}
	}
	return false
}

// ownCheck asks who may check: "can I check my own load if nobody else is here".
func (r *reader) ownCheck() bool {
	if r.amountsIn(0, len(r.items)) > 0 {
		return false
	}
	signs := r.wordIn("sign", "signs") && r.wordIn("off") || r.word(0, "who") && r.word(1, "checks") && (r.next(1) < 0 || r.is(r.next(1), kindVerb) || r.is(r.next(1), kindAsk))
	if !r.mentions(kindVerb, string(Check)) && !signs {
		return false
	}
	asks := r.asksSomething() || r.word(r.firstWord(), "can", "could", "may", "am", "who", "does", "do", "is", "should")
	alone := r.opensWithin(0, len(r.items), "own", "myself", "yourself", "himself", "herself") || r.samePerson()
	who := r.word(r.firstWord(), "who") && r.opensWithin(0, len(r.items), "can", "may", "should", "allowed", "must", "has", "checks", "signs")
	if !asks || !alone && !who && !r.needsAnother() {
		return false
	}
	for i := range r.items {
		r.items[i].used = true
	}
	r.phrase.Asks = []Ask{{About: Words}}
	r.phrase.Perils = nil
	r.phrase.Terms = []string{"own check"}
	return true
}

// samePerson: "can the same guy sign it off".
func (r *reader) samePerson() bool {
	for i := range r.items {
		if r.word(i, "same") && r.word(i+1, "person", "guy", "man", "one", "hand", "fella", "bloke", "people") {
			return true
		}
	}
	return false
}

// checkAgain asks whether a check stands when a load is changed: "does a load need checking all
// over again if I fix one number", "what happens to the check if I correct a load".
func (r *reader) checkAgain() bool {
	if !r.mentions(kindVerb, string(Check)) && !r.wordIn("recheck", "remeasure", "re measure") {
		return false
	}
	for i := range r.items {
		if r.items[i].amount != nil && !r.items[i].amount.equals(one) {
			return false
		}
	}
	if r.mentions(kindPeril) || r.mentions(kindVerb, string(List)) {
		return false
	}
	changes := r.mentions(kindVerb, string(Correct)) || r.opensWithin(0, len(r.items), "changed", "changing", "fixed", "fixing", "corrected", "correcting", "amended", "amending", "alter", "altered", "edit", "edited", "editing", "mistyped")
	asks := r.opensWithin(0, len(r.items), "does", "do", "if", "when", "is", "will", "what", "still", "after", "should", "must")
	again := r.opensWithin(0, len(r.items), "again", "over", "happens", "stand", "stands", "count", "counts", "need", "needs", "have", "keep", "keeps", "valid", "gone", "lose", "loses", "void", "throw", "recheck", "remeasure", "survive", "redo", "good")
	if !changes || !asks || !again {
		return false
	}
	for i := range r.items {
		r.items[i].used = true
	}
	r.phrase.Asks = []Ask{{About: Words}}
	r.phrase.Terms = []string{"check again"}
	return true
}

// needsAnother: "do we really need somebody else to check it".
func (r *reader) needsAnother() bool {
	if r.mentions(kindPeril) || !r.opensWithin(0, len(r.items), "need", "have", "must", "has", "necessary", "required") {
		return false
	}
	for i := 1; i < len(r.items); i++ {
		if r.word(i, "else") && r.word(i-1, "somebody", "someone", "anybody", "anyone") || r.word(i-1, "second", "another", "other") && r.word(i, "person", "pair", "one", "guy") {
			return true
		}
	}
	return false
}

// loadsLot reads "45 is glue lot B7, job 2210" as the same.
func (r *reader) loadsLot(i int) bool {
	refs, next := r.references(i)
	if len(refs) != 1 || r.asksSomething() {
		return false
	}
	for r.word(next, "is", "was", "has", "used", "uses", "gets", "got") || next < len(r.items) && r.items[next].brk == ':' {
		next++
	}
	if !r.is(next, kindRole, "lot", "job") || next == i+1 || next+1 >= len(r.items) {
		return false
	}
	end := next
	for r.is(end, kindRole, "lot", "job") && end+1 < len(r.items) {
		for end = r.nameEnd(end) + 1; r.isBreak(end) && end < len(r.items) || r.word(end, "and"); end++ {
		}
	}
	for r.word(end, "put", "write", "note", "that", "it", "on", "the", "card", "please") {
		end++
	}
	if !r.nothingAfter(end - 1) {
		return false
	}
	r.lots(anywhere)
	r.commit(&Command{Verb: Correct, Loads: refs}, len(r.items))
	return true
}

// lotOfLoad reads "glue lot 0417 goes with load 8" as a correction to that load.
func (r *reader) lotOfLoad() bool {
	if !r.means(kindRole, "lot", "job") {
		return false
	}
	i := r.firstWord()
	if r.loadsLot(i) {
		return true
	}
	if !r.is(i, kindRole, "lot", "job") || i+1 >= len(r.items) {
		return false
	}
	j := r.nameEnd(i) + 1
	for r.word(j, "goes", "go", "is", "was", "belongs", "used", "went", "should", "be") {
		j++
	}
	if !r.word(j, "with", "for", "to", "on", "in", "into", "onto") {
		return false
	}
	refs, next := r.references(j + 1)
	if len(refs) != 1 || !r.nothingAfter(next-1) {
		return false
	}
	r.lots(anywhere)
	r.commit(&Command{Verb: Correct, Loads: refs}, len(r.items))
	return true
}

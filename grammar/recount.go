package grammar

// Verbs that change how many panels are ordered, and who or what they are said of.
var (
	recounting = wordSet(`cut cuts bumped bumps upped ups knocked knocks changed changes dropped drops raised raises lowered lowers reduced reduces trimmed trims moved moves took takes brought brings put increased decreased doubled halved pared scaled revised pushed`)
	recounters = wordSet(`they he she boss customer customers client clients office foreman buyer sales architect owner manager gaffer lady guy`)
	ordered    = wordSet(`it that them those this us order count number job the total quantity down up back`)
)

// recounts reads "8 panels, no wait the customer cut it to 5" and "they knocked it down to
// 6 from 9 panels": the later number counts the panels.
func (r *reader) recounts() {
	if !r.says("to", "down to", "up to", "back to") {
		return
	}
	for i := 1; i+2 < len(r.items); i++ {
		if !recounting[r.items[i].word] || !recounters[r.items[i-1].word] && !(r.word(i-1, "just", "then", "has", "have", "had") && i > 1 && recounters[r.items[i-2].word]) {
			continue
		}
		to := i + 1
		for to < len(r.items) && ordered[r.items[to].word] {
			to++
		}
		now := to + 1
		if to == i+1 && !r.word(to, "down to", "up to", "back to") || !r.word(to, "to", "down to", "up to", "back to") || !r.plainCount(now) || !r.isBreak(now+1) && !r.word(now+1, "from", "instead of", "not") {
			continue
		}
		was := now + 2
		if r.isBreak(now+1) || !r.countsPanels(was) {
			for was = i - 1; was >= 0 && !r.countsPanels(was); was-- {
			}
		}
		if was < 0 {
			continue
		}
		r.standsFor(was, now)
		r.items[i].used, r.items[i].meaning = true, meaning{}
		r.items[to].used, r.items[to].meaning = true, meaning{}
	}
}

// orderedBy reports whether the number at item j is what somebody who buys wants.
func (r *reader) orderedBy(j int) bool {
	return r.plainCount(j) && r.word(j-1, "wants", "want", "needs", "ordered", "asks for", "wanted") && j > 1 && recounters[r.items[j-2].word] && (r.isBreak(j+1) || r.word(j+1, "now", "instead", "of"))
}

// plainCount reports whether item i is a whole number without a unit that may count things.
func (r *reader) plainCount(i int) bool {
	if !r.free(i) || !r.items[i].amount.bare() || i+1 < len(r.items) && r.items[i+1].amount != nil {
		return false
	}
	_, whole := r.items[i].amount.whole()
	return whole
}

// countsPanels reports whether item i is a count with panels right behind it.
func (r *reader) countsPanels(i int) bool {
	return r.plainCount(i) && (r.is(i+1, kindNoun, "panel") || i+2 < len(r.items) && r.items[i+1].amount == nil && !r.isBreak(i+1) && r.is(i+2, kindNoun, "panel"))
}

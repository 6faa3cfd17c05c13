package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// What is said of a load that neither orders nor measures anything: the book stays as
// it is.

// remarksOnLoad reads "on 1 the mat is in now" and "1's caul is on": a part is where it
// belongs, and the number is the load's.
func (r *reader) remarksOnLoad() bool {
	if r.mentions(kindPeril) || r.amountsIn(0, len(r.items)) != 1 {
		return false
	}
	i := r.firstWord()
	named := r.word(i, "on", "for", "with", "at")
	if named {
		i++
	}
	named = named || r.is(i, kindVerb, "show")
	refs, next := r.references(i)
	if len(refs) != 1 || next < 1 || !r.free(next-1) || !named && !r.possessive(next-1) {
		return false
	}
	for r.word(next, "the", "its", "that", "our") || r.isBreak(next) && next < len(r.items) && r.items[next].brk == ',' {
		next++
	}
	if !r.is(next, kindNoun, "bar", "mat", "caul", "film", "wedge", "sled", "fence", "core", "strip") || r.asksSomething() || r.mentions(kindNot) {
		return false
	}
	part := next
	if r.is(part+1, kindVerb, string(In)) && r.word(part+1, "is in", "now in", "gone in", "went in", "has gone in") && (r.nothingAfter(part+1) || r.word(part+2, "now", "again", "place")) {
		r.remarks(refs, part)
		return true
	}
	for next++; r.word(next, "is", "are", "s", "has", "been", "back", "now", "all"); next++ {
	}
	if next == part+1 || !r.word(next, "there", "in", "on", "fitted", "present", "sorted", "fixed", "replaced", "done", "swapped", "back") || !r.nothingAfter(next) && !r.word(next+1, "now", "again", "place", "properly") {
		return false
	}
	r.remarks(refs, part)
	return true
}

func (r *reader) remarks(refs []int, next int) {
	r.close(&Command{Verb: NotDone, Meant: Show, Loads: refs}, next)
}

// stillIn reports whether loads are said to be where they were, and nothing more, from item
// i on: "but 32 is still in the press".
func (r *reader) stillIn(i int) bool {
	for r.isBreak(i) && i < len(r.items) || r.word(i, "but", "and", "while") {
		i++
	}
	refs, next := r.references(i)
	if len(refs) == 0 {
		return false
	}
	for r.word(next, "is", "are", "s", "was", "were", "has", "have") {
		next++
	}
	if !r.word(next, "still", "stays", "staying", "stayed", "still in", "is still in", "are still in", "stays in", "stay in", "staying in") {
		return false
	}
	if r.word(next, "still", "stays", "staying", "stayed") {
		next++
	}
	for r.word(next, "in", "still in", "stays in", "stay in", "staying in", "pressing", "the", "press", "bag", "frame", "there", "under", "vacuum", "to", "be", "stay", "now") || r.is(next, kindUnit, "in") || r.is(next, kindVerb, string(In)) || r.is(next, kindNoun, "press", "bag", "frame") {
		next++
	}
	return next >= len(r.items) || r.nothingAfter(next-1) || r.tellsHowLong(next)
}

// staysIn reads "leave 1 in till 3" and "keep 1 in 30 more minutes": the load stays in
// the press, whatever is said of how long.
func (r *reader) staysIn(at int) bool {
	if !r.says("leave", "leaving", "keep", "keeping", "left", "leaves") {
		return false
	}
	if r.mentions(kindPeril) {
		return false
	}
	for i := at; i < len(r.items) && i < at+6; i++ {
		if !r.word(i, "leave", "leaving", "keep", "keeping", "left", "leaves") {
			continue
		}
		refs, next := r.references(i + 1)
		if len(refs) == 0 || !r.quiet(at, i) || next >= len(r.items) {
			return false
		}
		if !r.word(next, "in") && !(r.items[next].amount != nil && r.items[next].amount.unitRaw == "in") || !r.tellsHowLong(next+1) {
			return false
		}
		r.close(&Command{Verb: NotDone, Meant: Out, Loads: refs}, next+1)
		return true
	}
	return false
}

// tellsHowLong reports whether a time or a length of time stands at item i: "till 3",
// "another hour", "30 more minutes", "overnight".
func (r *reader) tellsHowLong(i int) bool {
	if r.word(i, "the") && r.is(i+1, kindNoun, "press", "bag", "frame") {
		i += 2
	}
	if i >= len(r.items) {
		return false
	}
	if r.word(i, "till", "til", "until", "overnight", "longer", "tonight", "another") {
		return true
	}
	if am := r.items[i].amount; am != nil && am.link == linkTo && strings.Contains(r.textOf(i-1, i), "til") {
		return true
	}
	for k := i; k < i+4 && k < len(r.items) && !r.isBreak(k); k++ {
		if r.lasts(k) || r.is(k, kindUnit) && r.items[k].unit.Dimension == unit.Lasting {
			return true
		}
	}
	return false
}

// dueWords tell of what is to be, not of what is.
var dueWords = []string{"should", "must", "has to", "needs", "due", "ought", "supposed", "wants", "will", "can"}

// dueOut reads "1 should be out by 3", whose clock is no measure of the load.
func (r *reader) dueOut(refs []int, next int) bool {
	if r.mentions(kindPeril) {
		return false
	}
	due := false
	for i := next; i < len(r.items) && i < next+6 && !r.isBreak(i); i++ {
		word := r.items[i].word
		first, _, _ := strings.Cut(word, " ")
		due = due || in(first, dueWords...) || first == "has" && (strings.HasPrefix(word, "has to") || r.word(i+1, "to"))
		switch {
		case r.is(i, kindRole, "deadline") && strings.Contains(word, "out"), word == "out", strings.HasSuffix(word, "be out"), r.is(i, kindVerb, string(Out)):
			if !due || r.dayPlan() || r.asksSomething() {
				return false
			}
			r.close(&Command{Verb: NotDone, Meant: Out, Loads: refs, ToCome: true}, i+1)
			return true
		case r.items[i].amount != nil, r.is(i, kindNoun):
			return false
		}
	}
	return false
}

// remarkTold reads what is told of a load and changes nothing: neither a question nor an order.
func (r *reader) remarkTold() bool {
	if !r.means(kindVacuum, "gauge") && !r.means(kindVerb, string(Show)) && !r.means(kindSay) || r.asksSomething() || r.mentions(kindPeril) || r.opensWithin(0, len(r.items), "what", "whats", "how", "hows", "which", "should", "will", "can", "could", "is that", "is it", "does", "do", "why", "enough") || r.asksWhether() {
		return false
	}
	i := r.firstWord()
	for r.word(i, "the") {
		i++
	}
	for _, told := range []func(int) ([]int, int){r.gaugeMoved, r.wasOnGauge, r.loadOfStrips, r.cardAndTape} {
		if refs, next := told(i); len(refs) == 1 {
			r.remarks(refs, next)
			return true
		}
	}
	return false
}

// gaugeMoved: "gauge on load 1 slipped to 22". Without the word it is no load that a gauge is
// on: "gauge on 14" is what it shows.
func (r *reader) gaugeMoved(i int) (refs []int, next int) {
	const least = 13 // a gauge seldom shows less
	if !r.is(i, kindVacuum, "gauge") || !r.word(i+1, "on", "of", "for") {
		return nil, i
	}
	refs, next = r.references(i + 2)
	if len(refs) != 1 || refs[0] >= least && !r.is(i+2, kindVerb, string(Show)) || !r.word(next, "slipped", "dropped", "fell", "went", "came", "sagged", "slid", "crept", "drifted", "was", "jumped") {
		return nil, i
	}
	return refs, next
}

// wasOnGauge: "14 was 24 on the gauge when it went in".
func (r *reader) wasOnGauge(i int) (refs []int, next int) {
	refs, next = r.references(i)
	on := next + 2
	if !r.word(next, "was") || on >= len(r.items) || r.items[next+1].amount == nil || !r.word(on, "on", "by") {
		return nil, i
	}
	gauge := r.next(on)
	if !r.is(gauge, kindVacuum, "gauge") || r.within(gauge, len(r.items), kindNoun, "strip", "bar", "panel", "mat") >= 0 {
		return nil, i
	}
	return refs, next
}

// loadOfStrips: "14 is a 6 strip load".
func (r *reader) loadOfStrips(i int) (refs []int, next int) {
	refs, next = r.references(i)
	n := next + 2
	if !r.word(next, "is") || !r.word(next+1, "a", "the") || n >= len(r.items) || r.items[n].amount == nil || !r.is(n+1, kindNoun, "strip") || !r.is(n+2, kindVerb, string(Show)) {
		return nil, i
	}
	return refs, next
}

// cardAndTape: "card says 1 on 14 but my tape says 7/8", which is no check.
func (r *reader) cardAndTape(i int) (refs []int, next int) {
	if i+3 >= len(r.items) || !r.paperAt(i) || !r.is(i+1, kindSay) || r.items[i+2].amount == nil || !r.word(i+3, "on", "for") {
		return nil, i
	}
	refs, next = r.references(i + 4)
	if !r.word(next, "but") && !r.isBreak(next) || !r.measuresFrom(next) || r.barByTape(next) >= 0 {
		return nil, i
	}
	return refs, next
}

// barByTape is the number of "but my tape says 7/8, strips are right at 1/4, gauge 25" that is
// left for the bar, as strips and gauge have theirs; -1 where it is not.
func (r *reader) barByTape(i int) int {
	for k := i + 1; k+1 < len(r.items); k++ {
		if !r.free(k) {
			continue
		}
		_, to := r.clause(k)
		told := r.mentions(kindNoun, "bar", "mat", "sled", "caul") || r.within(i, to, kindNoun) >= 0 || r.within(i, to, kindVacuum) >= 0
		if strips := r.within(to, len(r.items), kindNoun, "strip"); !told && r.isBreak(k+1) && strips >= 0 && r.within(to, len(r.items), kindVacuum, "gauge") >= 0 {
			return k
		}
		return -1
	}
	return -1
}

package grammar

import (
	"slices"
	"strings"
)

// idleWords tell that a press is not to be had.
var idleWords = wordSet(`down broken dead bust busted kaput stuffed buggered knackered ripped torn punctured unusable toast shot unused idle`)

// pressIdle reads that one of the presses of a plan is not to be had: "press 2 stays empty"
// and "the other one's pump is out" leave one press less. In a first message, beside how
// many there are, and of another day it stays unread.
func (r *reader) pressIdle() {
	if r.amountsIn(0, len(r.items)) > 1 && r.habit.Follows || !r.habit.Follows && !r.mentions(kindNoun, "press", "frame", "bag") {
		return
	}
	for i := range r.items {
		from, state := r.onePress(i)
		if from < 0 {
			continue
		}
		if state = r.idleState(state); state < 0 {
			continue
		}
		end, now := r.endOfState(state)
		if end < 0 || r.countsPresses(end) {
			continue
		}
		if r.word(from-1, "tomorrow", "overnight") {
			from, now = from-1, false
		}
		typed := r.textOf(from, end-1)
		for k := from; k < end; k++ {
			r.items[k].meaning, r.items[k].used = meaning{}, true
			if r.word(k, "overnight") {
				r.items[k].word = "" // of one press, and no wish for all
			}
		}
		if r.habit.Follows && now {
			r.phrase.Changes = append(r.phrase.Changes, Change{By: Amendment{Text: typed, Value: 1}, Less: true, Fields: countFields["press"]})
			return
		}
		r.unuse(typed)
		r.phrase.Negated = append(r.phrase.Negated, typed)
		return
	}
}

// onePress finds the words at item i that tell one press from the others, "press 2", "no. 2
// press", "the other one", and where its state is told; -1 where there are none.
func (r *reader) onePress(i int) (from, state int) {
	numbered := func(k int) bool {
		return r.free(k) && r.items[k].amount.bare() && r.items[k].amount.form == formInt && r.items[k].amount.link == linkNone
	}
	switch press := r.is(i, kindNoun, "press", "frame", "bag") && !isPlural(r.items[i].word); {
	case press && numbered(i+1):
		return i, i + 2
	case press && numbered(i-1) && r.word(i-2, "number", "no"):
		return i - 2, i + 1
	case press && i > 0 && oneOfPresses[r.items[i-1].word] && r.items[i-1].amount == nil && !r.word(i-1, "new", "old", "spare"):
		return i - 1, i + 1
	case r.word(i, "other") && r.word(i+1, "ones") && r.pumpState(i+2) > 0:
		return i, i + 2
	}
	return -1, -1
}

// idleState is where what is told of a press from item i on ends, if it is not to be had; -1
// else.
func (r *reader) idleState(i int) int {
	if end := r.pumpState(i); end > 0 {
		return end
	}
	kept := r.word(i, "stays", "stay", "staying", "sits", "stands", "remains")
	for r.word(i, "is", "has", "stays", "stay", "staying", "sits", "stands", "remains", "will", "be", "gone", "went") {
		i++
	}
	switch {
	case r.word(i, "empty") && kept, i < len(r.items) && r.items[i].amount == nil && idleWords[r.items[i].word]:
		return i + 1
	case (r.word(i, "out") || r.is(i, kindVerb, "out")) && r.word(i+1, "of") && r.word(i+2, "action", "service", "order", "commission", "use"):
		return i + 3
	}
	return -1
}

// pumpState is where "pump is out" or "pump died" at item i ends; 0 where none is.
func (r *reader) pumpState(i int) int {
	if r.is(i, kindAsk, "pump:hold_s") && strings.HasPrefix(r.items[i].word, "pump ") {
		return i + 1
	}
	if !r.is(i, kindNoun, "pump") {
		return 0
	}
	for i++; r.word(i, "is", "has", "just", "went", "gone"); i++ {
	}
	if r.word(i, "out", "died", "gone", "failed") || i < len(r.items) && r.items[i].amount == nil && idleWords[r.items[i].word] {
		return i + 1
	}
	return 0
}

// endOfState is where the state at item i ends, if nothing but a question goes on there, and
// whether it is of now: not "tomorrow" or "overnight", nor with "then use it" behind it.
func (r *reader) endOfState(i int) (end int, now bool) {
	for r.word(i, "today", "now", "again", "though", "as", "well", "too", "this", "week") {
		i++
	}
	if r.is(i, kindAsk, "schedule") && strings.HasPrefix(r.items[i].word, "when") {
		return i, true
	}
	now = true
	for ; r.word(i, "then", "tomorrow", "overnight"); i++ {
		now = false
	}
	if !r.isBreak(i) {
		return -1, false
	}
	return i, now && !r.word(i+1, "then", "tomorrow", "overnight") && !r.usesIt(i+1)
}

// usesIt: "so use it for the walnut" follows at item i.
func (r *reader) usesIt(i int) bool {
	if i >= len(r.items) {
		return false
	}
	for _, to := r.clause(i); i < to; i++ {
		if r.word(i, "use it", "use that", "run it", "fill it") || r.word(i, "use", "run", "fill") && r.word(i+1, "it", "that") {
			return true
		}
	}
	return false
}

// countsPresses reports whether how many presses are left is told behind item i.
func (r *reader) countsPresses(i int) bool {
	return r.amountsIn(i, len(r.items)) > 0 && r.habit.Follows || r.opensWithin(i, len(r.items), "one", "just", "only", "both", "until", "till", "til", "again", "back") || r.word(r.firstWord(), "is", "was", "why", "when", "did")
}

// moreOfSize takes "another 2 of 24x48" and "2 more of 24x48" for so many more panels.
func (r *reader) moreOfSize() {
	const least = 0.15 // metres; what is narrower is a strip
	if !r.habit.Follows || r.mentions(kindNoun) {
		return
	}
	for i := range r.items {
		n, whole := r.wholeAt(i)
		if !whole || n < 1 {
			continue
		}
		k := i + 1
		if r.word(k, "more") {
			k++
		} else if !r.word(i-1, "another", "plus", "extra", "add") && !(i == 1 && r.word(0, "and")) {
			continue
		}
		size := k
		if r.word(k, "of") {
			size++
		}
		if size+1 >= len(r.items) || r.items[size].amount == nil || size == k && r.items[k].amount.link != linkAt || r.items[size+1].amount == nil || r.items[size+1].amount.link != linkTimes || !r.isBreak(size+2) || !r.length(size) || r.size(size) < least {
			continue
		}
		if r.word(0, "and") && i == 1 {
			r.items[0].word = "plus"
			r.hear(0)
		}
		end := r.items[k-1].end
		r.items = slices.Insert(r.items, k, item{meaning: meaning{kind: kindNoun, id: "panel"}, word: "panels", start: end, end: end})
		r.hear(k)
		if r.is(i-1, kindVerb, string(Copy)) {
			r.items[i-1].meaning = meaning{}
		}
		return
	}
}

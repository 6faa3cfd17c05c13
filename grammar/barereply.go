package grammar

import "strings"

// bareReply takes the one number of a message that says nothing else, for
// whatever the thread asked or said last: "make that 24", "oh 2 and a quarter".
func (r *reader) bareReply() {
	only := -1
	for i := range r.items {
		if r.items[i].amount == nil || r.items[i].used || r.items[i].amount.dead {
			continue
		}
		if only >= 0 || r.items[i].amount.value == nil {
			return
		}
		only = i
	}
	said := len(r.bound) > 0 || len(r.phrase.Choices) > 0 || len(r.phrase.Refused) > 0
	if said && (only < 0 || (!r.word(only-1, "to", "at", "about") || r.next(only) >= 0) && !r.ownSentence(only)) {
		return
	}
	if only >= 0 && r.items[only].amount.bare() && (r.spoiled(only) || only+1 < len(r.items) && otherUnits[r.items[only+1].word] || r.is(r.prev(only), kindRole, "layup", "unload", "clamp", "open", "closed", "friction", "vary", "spread", "mintemp")) {
		return // "8 cracked", "clamp 40", "film 6 mil"
	}
	if only >= 0 && r.is(only-1, kindAsk, "stack") && r.word(only-1, "fit", "fits") {
		return // "can we fit 4" counts what is not named
	}
	if only >= 0 && r.habit.Follows && r.word(only-1, "gets", "sees", "get", "see") && strings.Contains(r.wordAt(r.prev(only-1)), "joint") {
		return // "what if the far joint only gets 21" is no reading
	}
	if only >= 0 && r.pressAtHour(only) {
		return
	}
	if only >= 0 && r.smallTalk(only) {
		return
	}
	if only >= 0 && r.items[only].amount.bare() && r.heldAt(only) && (r.word(only+1, "there", "here", "in there", "in here") || r.word(only+1, "in") && r.word(only+2, "there", "here")) {
		return // "he keeps it at 68 in there" is no size
	}
	if only >= 0 && r.items[only].amount.form == formWords && r.items[only].amount.equals(one) && r.word(only+1, "of") {
		r.items[only].used = true
		return // "how much is that for one of the halves"
	}
	if only >= 0 && (r.is(only+1, kindRole, "am", "pm") && !(r.items[only].amount.float() > latest && r.word(only+1, "in the morning", "in the afternoon", "in the evening", "this afternoon", "after lunch")) || r.items[only].amount.form == formPair) {
		return // "4 pm sorry" is a time of something
	}
	if only >= 0 && r.items[only].amount.form == formWords && r.items[only].amount.equals(one) && (r.word(only+1, "had", "has", "got", "was", "is") || r.is(only+1, kindNoun, "strip") && r.word(only+2, "had", "has", "got", "was", "is", "looks")) {
		r.items[only].used = true
		return // "six not seven, one had a knot"
	}
	if only >= 1 && r.items[only].amount.bare() && r.word(only-1, "theres", "got", "have", "are") && r.word(only+1, "on", "left", "here", "over") {
		return // "theres 15 on the cart" counts what is not named
	}
	if only >= 1 && r.items[only].amount.bare() && (r.unheard(only-1) || r.word(only-1, "dropped")) {
		return // "its snurfle 3", "somebody dropped 1"
	}
	if only >= 0 && (r.someNumbered(only) || r.habit.Follows && (r.word(only-1, "was", "were", "had") && r.once(0, only) || r.word(only-1, "til", "till", "until"))) {
		return // "not more than 4 of the narrow ones", "yesterday it was 24", "stuck in traffic til 9"
	}
	itsNow := r.word(only-1, "its") && r.word(only+1, "now")
	if only >= 0 && (len(r.items) <= 14 || itsNow && len(r.items) <= 30) {
		r.phrase.Amends = append(r.phrase.Amends, r.amendment(only))
		r.items[only].used = true
	}
}

// someNumbered: "not more than 4 of the narrow ones" counts some of what is there and says no
// new number for all.
func (r *reader) someNumbered(i int) bool {
	if !r.habit.Follows || !r.items[i].amount.bare() || !r.word(i+1, "of") || !r.word(i+2, "the", "those", "these", "my", "our") {
		return false
	}
	return (r.word(i+4, "ones") || r.is(i+4, kindNoun, "strip")) && r.items[i+3].amount == nil
}

// latest o'clock: "it's 88 in the afternoon", "18 by lunch" are no times.
const latest = 12

// numbered are things of a house or a street that have a number.
var numbered = wordSet(`room channel gate floor apartment exit route bus platform seat section block ticket lane track episode season flat suite`)

// chat is what people speak of between two loads.
var chat = wordSet(`channel episode lunch dinner breakfast supper coffee beer beers pizza game games match score party birthday cost costs owe owes paid hurts hurt weigh weighs bus`)

// smallTalk reports whether the number at item i is of what people say besides: "got 2
// tickets", "back in 10", "I'll be 15 late", "Jim owes me 20", "room 12 is free".
func (r *reader) smallTalk(i int) bool {
	n := i + 1
	for r.is(n, kindUnit) {
		n++
	}
	switch {
	case seasons[r.wordAt(n)], r.word(n, "in") && seasons[r.wordAt(n+1)]:
		return true // "55 in summer" is per cent or degrees
	case r.word(n, "for", "on") && r.word(n+1, "the") && (r.word(n+2, "first", "last", "other", "others", "rest", "middle") || n+2 < len(r.items) && (ordinalNames[r.items[n+2].word] > 0 || r.items[n+2].amount != nil && r.items[n+2].amount.form == formWords)):
		return true // "400 for the third"
	case n < len(r.items) && r.unknown(n) && len(r.items[n].word) > 3 && !r.isBreak(n),
		r.word(i-1, "in") && r.word(i-2, "back", "there", "here", "home", "off", "out", "lunch", "me", "us", "leave", "leaving", "starts", "you"),
		r.word(n, "late", "early", "oclock"), r.word(i-1, "im", "hes", "shes", "weigh", "weighs", "turned", "since"),
		r.word(i-1, "at") && r.word(i-2, "you", "ya", "me", "us", "meet", "home"),
		r.word(i-1, "me", "us", "him", "her", "them", "you") && r.unknown(i-2),
		i > 0 && numbered[r.items[i-1].word],
		r.mentions(kindPeril):
		return true
	}
	for k := range r.items {
		if r.items[k].amount == nil && chat[r.items[k].word] && !(r.word(k-1, "by", "after", "before", "till", "until") && r.items[i].amount.float() > latest) {
			return true
		}
	}
	return false
}

// ownSentence: "hump up then. does it work with only 20", "call it 26. and add a
// fourth stave" have the number in a sentence that states nothing else.
func (r *reader) ownSentence(i int) bool {
	from, to := r.sentence(i)
	if r.word(i-1, "is", "would", "will", "does") && r.word(i+1, "enough", "do", "ok", "okay", "work", "plenty", "sufficient") {
		from, to = r.clause(i)
	} else if r.fixedClause(i) {
		from, to = r.clause(i)
	} else if from == 0 && to == len(r.items) || !r.is(i-1, kindFix) && !r.word(i-1, "it", "only", "with", "w", "just", "say", "that", "like") || i+1 < to && !r.isBreak(i+1) {
		return false // "say 20 mm"
	}
	for _, b := range r.bound {
		if b.from >= from && b.from < to {
			return false
		}
	}
	return r.within(from, to, kindNoun) < 0 && r.within(from, to, kindAttr) < 0 && len(r.phrase.Choices)+len(r.phrase.Refused) == 0
}

// fixedClause: "12 thou i mean, and go with the medium" has the number in a clause that but
// takes back what was said.
func (r *reader) fixedClause(i int) bool {
	behind := r.isBreak(i-1) && r.is(i+1, kindFix) && r.isBreak(i+2) && !r.isBreak(i+1)
	before := r.is(i-1, kindFix) && r.isBreak(i-2) && r.isBreak(i+1)
	return r.habit.Follows && (behind || before)
}

// unheard reports whether item i is a word that nothing knows.
func (r *reader) unheard(i int) bool {
	it := r.items[i]
	return it.kind == kindNone && it.amount == nil && it.brk == 0 && len(it.word) > 2 && !fill[it.word]
}

package grammar

import (
	"slices"
	"strconv"
	"strings"
)

// What is said like an order and is none, or leaves open which load or when.

// unsure is what a command of the items up to end lacks, or "".
func (r *reader) unsure(c *Command, end int) Lack {
	switch {
	case c.Verb == Post || c.Verb == Undo || c.Verb == Copy:
		return ""
	case r.eitherLoad(c, end):
		return LacksWhich
	case r.orNot(c):
		return LacksSense
	case r.allBut(c):
		return LacksRest
	case c.Verb != In && c.Verb != Out:
		return ""
	case r.putBack(c), c.Verb == In && r.inPhrase(end):
		return LacksSense
	case r.onAnotherDay(c, end) && !r.isToCome(end):
		return LacksWhen
	}
	return ""
}

// eitherLoad reports whether one of the loads is named behind "or": "1 or 2 out", "drop 1
// or drop 2".
func (r *reader) eitherLoad(c *Command, end int) bool {
	for i := range min(end, len(r.items)) {
		if r.items[i].amount == nil {
			continue
		}
		if n, ok := r.loadNumber(i); ok && (r.items[i].amount.link == linkOr || r.behindOr(i)) && (slices.Contains(c.Loads, n) || r.loadBefore(i, c.Loads)) {
			return true
		}
	}
	if i := r.itemFrom(c.Note); c.Note != "" {
		for r.word(i-1, "or") || r.isBreak(i-1) && i > 0 {
			i--
		}
		return r.orderBehindOr(i)
	}
	return false
}

// orNot: "1 out or not" leaves it open.
func (r *reader) orNot(c *Command) bool {
	i := slices.IndexFunc(r.items, func(it item) bool { return it.word == "or" && it.amount == nil })
	return i > 0 && r.is(i+1, kindNot) && r.nothingAfter(i+1) && len(c.Loads) > 0
}

// onlyThese takes back some of the loads of an order: "drop 1 and 2, no, just 2".
func (r *reader) onlyThese(c *Command) bool {
	if len(c.Loads) < 2 {
		return false
	}
	fixed, only := false, false
	i := r.itemFrom(c.Note)
	for ; i < len(r.items) && r.items[i].amount == nil; i++ {
		switch {
		case r.word(i, "just", "only"):
			only = true
		case r.is(i, kindFix), r.word(i, "no", "wait", "sorry", "actually", "nope", "er", "oops"):
			fixed = true
		case !r.isBreak(i) && !fill[r.items[i].word]:
			return false
		}
	}
	refs, next := r.references(i)
	if !fixed && !only || len(refs) == 0 || !r.nothingAfter(next-1) || slices.ContainsFunc(refs, func(n int) bool { return !slices.Contains(c.Loads, n) }) {
		return false
	}
	for _, n := range c.Loads {
		if !slices.Contains(refs, n) {
			r.unuse(strconv.Itoa(n))
		}
	}
	c.Loads, c.Note = refs, ""
	r.phrase.Unused = distinct(r.phrase.Unused)
	return true
}

// behindOr: "1 or maybe 2".
func (r *reader) behindOr(i int) bool {
	for i--; r.word(i, "maybe", "perhaps", "possibly", "load", "else", "number", "is", "it") || r.is(i, kindVerb, "show"); i-- {
	}
	return r.word(i, "or") && i > 0
}

// orderBehindOr reports whether another load follows "or" at item i: "1 out or 2".
func (r *reader) orderBehindOr(i int) bool {
	for ; i < len(r.items) && i >= 0; i++ {
		if r.items[i].amount != nil {
			_, ok := r.loadNumber(i)
			return ok && (r.items[i].amount.link == linkOr || r.behindOr(i) || r.word(i-2, "or") && r.verb(i-1) != "")
		}
		if !r.isBreak(i) && !r.word(i, "or", "maybe", "perhaps", "load") && r.verb(i) == "" {
			return false
		}
	}
	return false
}

// allBut reports whether the loads are those that an order leaves as they are: "all but 1
// out", "everything except 2 in".
func (r *reader) allBut(c *Command) bool {
	i := slices.IndexFunc(r.items, func(it item) bool { return it.amount != nil })
	return i > 0 && len(c.Loads) > 0 && r.exceptAllBefore(i)
}

// exceptAllBefore reports whether "all but" stands right before item i.
func (r *reader) exceptAllBefore(i int) bool {
	i--
	for r.word(i, "load", "number", "the", "for", "from") || r.is(i, kindRole, "start") || r.is(i, kindVerb, "show") || i > 0 && r.items[i].brk == '#' {
		i--
	}
	if !r.word(i, "but", "except", "except for", "besides", "bar", "save", "apart", "aside", "excluding", "other than", "but for", "minus", "not", "without") && !r.is(i, kindNoun, "bar") {
		return false
	}
	for i--; r.word(i, "of", "them", "the", "loads", "load", "those", "these", "lot", "good", "else") || i > 0 && r.items[i].brk == ','; i-- {
	}
	return r.word(i, "all", "everything", "every", "anything", "rest", "all loads", "all the loads")
}

// commandAllBut reads "drop all but 1" and "put everything except 2 in", of which nothing
// is done.
func (r *reader) commandAllBut() bool {
	if !r.says("all", "everything", "every", "anything", "rest", "all loads", "all the loads") {
		return false
	}
	i := slices.IndexFunc(r.items, func(it item) bool { return it.amount != nil })
	if i < 1 || !r.exceptAllBefore(i) || r.asksSomething() {
		return false
	}
	refs, next := r.references(i)
	if len(refs) == 0 || !r.nothingAfter(max(next, i)) && !(next > i && r.isBreak(next)) {
		return false
	}
	c := &Command{Verb: NotDone, Loads: refs, Lacks: LacksRest}
	for k := range r.items {
		if v := r.verb(k); v != "" && v != Show && v != List {
			c.Meant = v
		}
	}
	if c.Meant == "" && (r.items[i].amount.unitRaw == "in" || r.word(next, "in") || r.is(next, kindUnit, "in")) {
		c.Meant = In
	}
	if c.Meant == "" || c.Meant == Post || c.Meant == Result || c.Meant == Check && !r.nothingAfter(next) {
		return false
	}
	r.close(c, len(r.items))
	return true
}

// putBack: "1 was out at 8 but i put it back" says two things against each other.
func (r *reader) putBack(c *Command) bool {
	if c.Verb != Out {
		return false
	}
	for i := r.itemOf(c.Verb); i >= 0 && i < len(r.items); i++ {
		if !r.word(i, "back", "put it back", "back in") {
			continue
		}
		in := i
		if r.word(i+1, "in") || r.is(i+1, kindUnit, "in") {
			in++
		}
		inPress := (in > i || r.word(i, "back in")) && (r.isBreak(in+1) || r.pressWithin(in+1))
		if r.word(i, "put it back") || r.opensWithin(max(i-4, 0), i, "put", "slid", "stuck", "shoved") || inPress && !r.opensWithin(max(i-3, 0), i, "i", "we", "im", "were") {
			return true
		}
	}
	return false
}

// itemOf is the item of a verb, or -1.
func (r *reader) itemOf(v Verb) int {
	return slices.IndexFunc(r.items, func(it item) bool { return it.kind == kindVerb && Verb(it.id) == v })
}

// inNouns make a phrase of "in" before them, which says no more than how things are.
var inNouns = wordSet(`way trouble next question doubt pieces half order line queue progress stock place use danger mess turn shape hand case theory general particular fact short full time limbo
	transit storage shop office store rack mind sight reach hold charge need demand condition bits tatters ruins flight parallel series tandem total part detail advance
	between front spite addition limits tolerance spec clamps cauls glue tears error vain`)

// inPhrase reports whether the word "in" of the items up to end is of a phrase: "1 in the
// way", "2 in trouble".
func (r *reader) inPhrase(end int) bool {
	i := r.inAt(end)
	if i < 0 {
		return false
	}
	article := r.word(i+1, "the", "a", "an", "my", "our", "your", "his", "her")
	if i++; article {
		i++
	}
	if i >= len(r.items) || r.items[i].amount != nil || r.isBreak(i) && r.items[i].kind == kindNone {
		return false
	}
	if r.pressWithin(i) || article && (r.word(i, pressNames...) || r.word(i, "new", "other", "first", "second")) && (r.isBreak(i+1) || r.word(i+1, "one")) {
		return false
	}
	if inNouns[r.items[i].word] || r.word(i, "good", "bad", "great", "poor", "fine", "rough") && inNouns[r.wordAt(i+1)] {
		return true
	}
	return article && r.items[i].kind == kindNone && !r.word(i, "morning", "afternoon", "evening", "night", "minute", "bit", "sec", "second", "moment", "while", "few", "couple", "meantime", "end", "first", "other", "same", "vacuum", "vac") && !r.pressWithin(i)
}

// pressWithin reports whether a press is named at item i or the two behind it.
func (r *reader) pressWithin(i int) bool {
	for k := i; k < i+3 && !r.isBreak(k); k++ {
		if r.is(k, kindNoun, "press", "bag", "frame") || r.word(k, "in press") {
			return true
		}
	}
	return false
}

// inAt is the item of the word "in" of an order up to end, or -1; it may be a unit.
func (r *reader) inAt(end int) int {
	for i := range min(end, len(r.items)) {
		if r.items[i].amount != nil && r.items[i].amount.unitRaw == "in" || r.items[i].amount == nil && (r.word(i, "in") || r.is(i, kindUnit, "in") || r.is(i, kindVerb, string(In)) && r.items[i].word == "in") {
			return i
		}
	}
	return -1
}

// onAnotherDay reports whether a load went in or came out at a time that nobody told: "1
// out yesterday", "1 in this morning".
func (r *reader) onAnotherDay(c *Command, end int) bool {
	for i := range min(end, len(r.items)) {
		switch {
		case r.word(i, "yesterday", "overnight", "last night", "the other day") || r.word(i, "last") && r.word(i+1, "night", "week", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"):
			return true
		case c.Time != "" || c.Ago != 0:
		case r.word(i, "earlier", "this morning") || r.word(i, "this") && r.word(i+1, "morning", "afternoon", "evening"), r.word(i, "before", "after", "around", "about") && r.word(i+1, "lunch", "breakfast", "dinner", "noon", "tea", "break"):
			return true
		}
	}
	return false
}

// laterWords put off an order that they stand right behind: "drop 1 later".
var laterWords = wordSet(`later tomorrow tonight soon shortly eventually afterwards sometime someday monday tuesday wednesday thursday friday saturday sunday`)

// putOff reports whether what stands behind a command says that it is to be done later:
// "drop 1 later", "clear 2 in an hour", "post it tomorrow".
func (r *reader) putOff(c *Command) bool {
	i := len(r.items)
	switch {
	case slices.Contains([]Verb{Hold, Clear, Drop, Uncheck, Undo}, c.Verb) && c.Note != "":
		i = r.itemFrom(c.Note)
	case c.Verb == Post && r.itemOf(Post) >= 0:
		i = r.itemOf(Post) + 1
		if r.word(i-2, "ill") || r.postsUnder(i) {
			return true
		}
	}
	for r.word(i, "a", "bit", "on", "next", "this", "by", "sometime") && (r.word(i, "sometime") || laterWords[r.wordAt(i+1)] || r.word(i+1, "week", "month", "afternoon", "evening", "morning", "bit") && !r.word(i, "a")) {
		i++
		if r.word(i, "week", "month", "afternoon", "evening", "morning") {
			return c.Verb != Hold || r.word(i-1, "next")
		}
	}
	if k := i + 1; laterWords[r.wordAt(i)] && (!r.nothingAfter(i) || r.possessive(i) || i > 0 && c.Verb == Hold && r.isBreak(i-1)) {
		return c.Verb == Post && k < len(r.items) // "hold 1 tomorrow's batch is bad": a reason
	}
	if r.word(i, "in") && c.Verb != Post && !r.endsInTime(i+1) {
		return false
	}
	return laterWords[r.wordAt(i)] || r.word(i, "in") && (r.lasts(i+1) || r.word(i+1, "a", "an", "another", "the") && (r.lasts(i+2) || r.word(i+2, "morning", "afternoon", "evening")))
}

// endsInTime reports whether a length of time or a part of the day stands at item i and ends
// the message: "an hour", "the morning".
func (r *reader) endsInTime(i int) bool {
	if r.word(i, "a", "an", "another", "the") {
		i++
	}
	return (r.lasts(i) || r.word(i, "morning", "afternoon", "evening")) && r.nothingAfter(i)
}

// postsUnder reports whether an order to post ends in a condition: "post it if bob agrees",
// "post it as top, once bob is here".
func (r *reader) postsUnder(i int) bool {
	for ; i < len(r.items) && r.items[i].amount == nil && !r.word(i, "and", "then") && r.verb(i) == ""; i++ {
		if r.conditionAt(i) || r.word(i, "until", "till") {
			return true
		}
	}
	return false
}

// asksSomebody reports whether an order is given to somebody in the shop and not told as
// done: "someone take 1 out".
func (r *reader) asksSomebody(c *Command) bool {
	if c.Verb != In && c.Verb != Out {
		return false
	}
	for i := range r.firstWord() {
		if !r.word(i, "someone", "somebody", "anyone", "anybody", "everyone", "everybody", "whoever") {
			continue
		}
		for i++; r.word(i, "please", "pls", "plz", "go", "just", "quickly"); i++ {
		}
		return r.word(i, "take", "put", "get", "pull", "slide", "stick", "bring", "load", "needs", "has", "should", "must", "could", "can", "and") || r.verb(i) != "" && !strings.HasSuffix(r.wordAt(i), "ed")
	}
	return false
}

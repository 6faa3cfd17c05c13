package grammar

import (
	"strings"
)

// command reads a word to the load book. It reports whether the whole message
// is read; after a check, a copy or a correction the rest holds facts.
func (r *reader) command() bool {
	if r.getsInside() || r.daysWorkTold() || r.supposes() {
		return false
	}
	if r.remarksOnLoad() {
		return true
	}
	if r.query() {
		return true
	}
	if r.keptOut() || r.clearsAgain() || r.nobodyHas() {
		return true
	}
	if r.lotOfLoad() {
		return r.closes()
	}
	if r.commandAllBut() || r.forbidsPlainly() || r.resultTold() || r.placeTold() || r.remarkTold() {
		return true
	}
	if r.measuredBySomeone() || r.checkTold() {
		return r.closes()
	}
	at := r.opening()
	if at < 0 {
		return r.putsIn(0) || r.ordersAtTheEnd()
	}
	if r.dropsParts(at) || r.remade(at) {
		return false
	}
	if r.staysIn(0) {
		return true
	}
	if refs, next := r.references(at + 1); len(refs) == 1 && r.word(at, "make", "do") && r.copies(next) {
		at++ // "make 41 the same as 40, except …"
	}
	if refs, next := r.references(at); len(refs) > 0 && !r.goesBack(at) && r.intendedFrom(at) < 0 && !r.listsStock(at) && !r.word(at-1, "should be", "be") && !r.heldAt(at) {
		if r.aboutLoads(refs, next) {
			return r.closes()
		}
	}
	if r.doneAgain(at) || r.measuredAgain(at) {
		return false
	}
	if r.barePlea(at) || r.tookOut(at) || r.inPressNamed(at) {
		return true
	}
	if v := r.verb(at); v != "" && !r.anotherRow(at) && !r.gaugeHolds(at) && !(v == Drop && r.items[at].word == "dropped" && r.fallsOf(at)) {
		if r.verbFirst(at) {
			return r.closes()
		}
	}
	return r.laterVerb(at)
}

// goesBack: the number in "put it back to 50 and post it" is no load.
func (r *reader) goesBack(at int) bool {
	return r.habit.Follows && r.word(at-1, "to", "the") && (r.word(at-2, "back") || r.word(at-3, "back"))
}

// heldAt: the number in "he keeps it at 68 in there" is no load.
func (r *reader) heldAt(at int) bool {
	return r.word(at-1, "at") && r.word(at-2, "it", "place", "shop", "house", "keeps", "keep", "kept", "them", "sits", "stays") ||
		r.habit.Follows && r.word(at-1, "at", "to") && r.word(at-2, "it", "that", "them", "place", "house", "heat", "thermostat")
}

// barePleas are orders that name the load and nothing else.
var barePleas = map[string]Verb{"start": In, "begin": In, "stop": Hold, "take out": Out, "pull out": Out}

// barePlea reads "start 8", "stop 8" and "take out 8".
func (r *reader) barePlea(at int) bool {
	next := at + 1
	word := r.items[at].word
	if word != "take out" && r.word(next, "out") || r.is(next, kindVerb, "out") && in(word, "take", "pull") {
		word, next = word+" out", next+1
	}
	verb, ok := barePleas[word]
	if !ok {
		return false
	}
	refs, after := r.references(next)
	if len(refs) == 0 || !r.nothingAfter(after-1) {
		return false
	}
	r.close(&Command{Verb: verb, Loads: refs}, after)
	return true
}

// doneAgain reads "do 14 again but with 8 strips".
func (r *reader) doneAgain(at int) bool {
	repeats := func(i int) bool {
		return r.word(i, "do", "run", "make", "press", "build", "repeat", "doing", "running")
	}
	if repeats(at) {
		at++
	}
	verb := at - 1
	for r.word(verb, "load", "the") || r.is(verb, kindVerb, "show") {
		verb--
	}
	if !repeats(verb) {
		return false
	}
	refs, next := r.references(at)
	if len(refs) != 1 || !r.word(next, "again", "over", "once") {
		return false
	}
	for r.word(next, "again", "over", "once", "more") {
		next++
	}
	r.commit(&Command{Verb: Copy, From: refs[0]}, next)
	return true
}

// tookOut reads "pulled load 9 at 14:20", where a gauge would have no load.
func (r *reader) tookOut(at int) bool {
	if r.pullsAt(at) {
		return true
	}
	if !r.word(at, "pulled", "took", "unloaded", "emptied") && !(r.word(at, "we", "i") && r.word(at+1, "pulled", "took")) {
		return false
	}
	if r.word(at, "we", "i") {
		at++
	}
	refs, next := r.references(at + 1)
	if len(refs) == 0 || !r.is(at+1, kindVerb, "show") && !r.word(at+1, "load", "loads") || r.unitsBehind(at) {
		return false
	}
	if r.word(next, "out") || r.is(next, kindVerb, "out") {
		next++
	}
	r.close(&Command{Verb: Out, Loads: refs}, next)
	return true
}

// inPressNamed reads "in press 2" of the load that is spoken of.
func (r *reader) inPressNamed(at int) bool {
	if r.items[at].word != "in press" || at+1 >= len(r.items) || !r.nothingAfter(at+1) && !r.is(at+2, kindFix) && !r.word(at+2, "i mean", "i") {
		return false
	}
	if nx := &r.items[at+1]; r.namesPress(at+1) || nx.amount != nil && nx.amount.bare() && nx.amount.form == formInt {
		r.close(&Command{Verb: In, Press: nx.text}, at+2)
		r.phrase.Unused = nil // the number is the press's
		return true
	}
	return false
}

// verb is the verb that item i can open a command with. Some words that take
// parts away do for loads too.
func (r *reader) verb(i int) Verb {
	if r.is(i, kindVerb) {
		if r.is(i, kindVerb, string(Hold)) && (r.gaugeHolds(i) || r.word(i-1, "to") && r.word(i-2, "used", "able", "supposed")) {
			return "" // "it's holding 24 inHg", "used to hold 26"
		}
		return Verb(r.items[i].id)
	}
	switch r.items[i].word {
	case "drop", "scrap", "scratch", "forget", "ditch", "remove":
		return Drop
	case "hold on":
		return Hold
	case "correction":
		return Correct
	}
	return ""
}

// closes reports whether nothing but the command is to be read.
func (r *reader) closes() bool {
	switch r.phrase.Command.Verb {
	case Check:
		r.measuredParts()
		return false
	case Copy, Correct, Post:
		return false
	}
	return true
}

// opening is the first item that says something; "careful," and "ok so" do not.
func (r *reader) opening() int {
	from := max(r.interjection(), r.announced())
	for i := from; i < len(r.items); i++ {
		it := &r.items[i]
		if r.is(i, kindRole, "ago") && !r.amountBefore(i) {
			continue // "hey guys, 14 is in"
		}
		if it.amount != nil || it.kind != kindNone && it.kind != kindFix && it.kind != kindPerson || it.word == "correction" {
			return i
		}
		if _, plea := barePleas[it.word]; plea {
			return i
		}
		if it.word == "scratch" {
			return i
		}
		if it.kind == kindNone && it.brk == 0 && !fill[it.word] && it.word != "load" && !(i == from && r.isBreak(i+1)) {
			return -1
		}
	}
	return -1
}

// announced is the item behind "two things." or "3 updates:".
func (r *reader) announced() int {
	for i := 0; i < len(r.items) && i < 4; i++ {
		if r.items[i].amount == nil {
			continue
		}
		j := i + 1
		for r.word(j, "quick", "more", "other", "little") {
			j++
		}
		if r.word(j, "things", "thing", "items", "updates", "points", "bits", "announcements", "notes") && r.isBreak(j+1) && j+1 < len(r.items) {
			r.items[i].amount.dead = true
			return j + 2
		}
		return 0
	}
	return 0
}

// aboutLoads reads "14 checked …", "14 in", "15 same as 14 but …".
func (r *reader) aboutLoads(refs []int, next int) bool {
	if r.is(next, kindNoun) && !r.is(next+1, kindVerb) && !r.says("been") {
		return false // "5 strips …"
	}
	c := &Command{Loads: refs}
	if (r.is(next, kindUnit, "in") || r.is(next, kindVerb, "in") || r.word(next, "in")) && seasons[r.wordAt(next+1)] {
		return false // "55 in summer"
	}
	if next > 1 && r.word(next-2, "at", "was", "were", "be") && r.items[next-1].amount != nil && r.opens("if") >= 0 {
		return false // "what if it was at 11 going into the press"
	}
	if next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.link == linkTimes {
		return false // "wait 36 by 60, measured it wrong"
	}
	if next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.unit != nil {
		_, ok := r.loadNumber(next)
		return ok && r.goesIn(c, next)
	}
	if next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.link == linkAt {
		return false // "22 at 90 and 15 at 65 in the pack"
	}
	if r.beenIn(c, next) || r.checkedBehind(c, next) || r.partMeasured(c, next) || r.dueOut(refs, next) {
		return true
	}
	if r.word(next, "anyway") && r.nothingAfter(next) {
		c.Verb = In // "14 anyway"
		r.close(c, next)
		return true
	}
	if r.foundBad(c, next) {
		return true
	}
	if r.foundRight(next) {
		c.Verb = Check
		r.commit(c, next+1)
		return true
	}
	i, denied, done := r.wordsToVerb(c, next)
	if done || i >= len(r.items) {
		return done
	}
	c.Verb = Verb(r.items[i].id)
	if c.Verb == List || r.verb(i) == "" || c.Verb == Drop && r.items[i].word == "dropped" && r.fallsOf(i) {
		return false
	}
	if c.Verb == Out && r.word(i+1, "of") && (!r.word(i+2, "the") || r.is(i+3, kindNoun, "pump", "reservoir")) {
		return false
	}
	denied = denied || r.word(i-1, "not", "never") || r.is(i-1, kindNot)
	if denied && c.Verb != Copy || c.Verb == Uncheck && strings.HasPrefix(r.items[i].word, "not") {
		c.Verb, c.Meant = NotDone, c.Verb
		r.close(c, i+1)
		return true
	}
	return r.complete(c, i)
}

// wordsToVerb goes over what stands between the named loads and their verb. It
// returns the verb's item, or the end where there is none, and whether it was
// denied. Words that are the command themselves, as in "15 like 14 but …", it
// reads at once.
func (r *reader) wordsToVerb(c *Command, next int) (i int, denied, done bool) {
	for i = next; i < len(r.items) && !r.is(i, kindVerb); i++ {
		switch {
		case r.word(i, "correction"):
			c.Verb = Correct
			r.commit(c, i+1)
			return i, denied, true
		case r.word(i, "as", "like") && (i == next || i == next+1 && r.word(next, "is")) && i+1 < len(r.items):
			if from, after := r.references(i + 1); len(from) == 1 && after < len(r.items) && r.word(after, "but", "with", "except") {
				c.Verb, c.From = Copy, from[0]
				r.commit(c, after)
				return i, denied, true
			}
			return len(r.items), denied, false
		case r.word(i, "into") && r.is(r.next(i), kindNoun, "press", "bag", "frame"):
			c.Verb = In
			r.close(c, i+1)
			return i, denied, true
		case r.is(i, kindNot, "not"):
			denied = true
		case r.word(i, comingWords...), r.word(i, "be"):
		case r.word(i, "in") && r.endsAfterIn(i):
			c.Verb = In
			if denied {
				c.Verb, c.Meant = NotDone, In
			}
			r.close(c, i+1)
			return i, denied, true
		case r.items[i].kind != kindNone && !r.is(i, kindFix) && !r.is(i, kindSay) && !r.is(i, kindAsk, "load"), r.items[i].brk == 0 && !fill[r.items[i].word] && r.items[i].kind == kindNone && r.items[i].amount == nil:
			return len(r.items), denied, false
		}
	}
	return i, denied, false
}

// foundRight: "8 ok, bar measures 1 in, strips 1/4" is a check of load 8.
func (r *reader) foundRight(next int) bool {
	return r.word(next, "ok", "okay", "fine", "good", "right", "correct") && next+1 < len(r.items) && r.isBreak(next+1) && r.amountsIn(next, len(r.items)) > 1 && !r.asksSomething() && !r.word(next-2, "call", "calls", "calling")
}

// endsAfterIn: "14 is in", "14 in press 2", not "14 in oak".
func (r *reader) endsAfterIn(i int) bool {
	if r.timedBehind(i + 1) {
		return true
	}
	for j := i + 1; j < len(r.items); j++ {
		it := &r.items[j]
		switch {
		case r.isBreak(j), it.word == "anyway", r.is(j, kindNoun, "press", "bag", "frame"), it.amount != nil && it.amount.form == formPair:
			return true
		case it.amount != nil, it.kind != kindNone && it.kind != kindAir:
			return false
		}
	}
	return true
}

// goesIn reads "14 in", alone or with "anyway", a press or a time behind it.
func (r *reader) goesIn(c *Command, i int) bool {
	if r.habit.Follows && (r.word(i-1, "a", "an") || r.word(i-2, "a", "an")) {
		return false // "and a 2 in"
	}
	rest := r.next(i)
	if r.is(rest, kindNoun, "bag", "frame") && r.word(i-1, "the", "that", "my", "our", "this") {
		return false // "what about the 24 in bag"
	}
	c.Verb = In
	c.Bare = rest < 0 && r.nothingAfter(i)
	switch {
	case c.Bare, r.goesOn(i), r.word(i+1, "anyway", "now"), r.word(i+1, comingWords...), r.is(rest, kindVerb, "in"):
	case r.is(rest, kindNoun, "press", "bag", "frame"):
		if r.unitsBehind(rest) {
			return false
		}
	case rest >= 0 && r.items[rest].amount != nil && r.items[rest].amount.form == formPair:
	case rest < 0 && i+3 < len(r.items) && r.items[i+1].brk == ',' && r.is(i+2, kindNoun, "press", "bag", "frame") && (r.namesPress(i+3) || r.items[i+3].amount != nil && r.items[i+3].amount.bare()) && r.nothingAfter(i+3):
	case r.timedBehind(i + 1):
	case rest < 0 && (r.is(i+2, kindRole, "job") || r.is(i+2, kindRole, "lot")):
		r.lots(anywhere)
	case rest < 0 && r.items[i].amount.link != linkTimes && i+1 < len(r.items) && len(c.Loads) > 1:
	default:
		return false
	}
	r.close(c, i+1)
	return true
}

// complete finishes a command whose verb stands at item i, behind its loads.
func (r *reader) complete(c *Command, i int) bool {
	switch c.Verb {
	case Copy:
		from, _ := r.references(i + 1)
		if len(from) != 1 {
			return false
		}
		c.From = from[0]
		_, after := r.references(i + 1)
		r.commit(c, after)
		return true
	case Check, Correct, Post:
		r.commit(c, i+1)
		return true
	}
	r.close(c, i+1)
	return true
}

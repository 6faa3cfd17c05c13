package grammar

import (
	"slices"
	"strings"
)

// Two orders in one message, and what is said of loads that an order leaves alone.

// spared are the loads that an order leaves as they are: load 2 in "1 out, not 2".
func (r *reader) spared(c *Command) []int {
	i := r.itemFrom(c.Note)
	if r.word(i-1, sparing...) {
		i--
	}
	for r.isBreak(i) && i < len(r.items) || r.word(i, "but", "and") {
		i++
	}
	if !r.word(i, sparing...) || len(c.Loads) == 0 || c.Verb == NotDone {
		return nil
	}
	refs, next := r.references(i + 1)
	reason := c.Verb == Hold && next < len(r.items) && in(string(r.items[next].brk), ":", ",", "-")
	if len(refs) == 0 || !r.nothingAfter(next-1) && !reason || slices.ContainsFunc(refs, func(n int) bool { return slices.Contains(c.Loads, n) }) {
		return nil
	}
	return refs
}

// sparing are words before the loads that an order leaves as they are.
var sparing = []string{"not", "instead of", "rather than", "except", "except for", "other than"}

// sparedApart takes "2" out of the note "2: mat" of "hold 1 not 2: mat": it is spared, and
// the rest is the reason.
func (r *reader) sparedApart(c *Command) {
	i := r.itemFrom(c.Note)
	for r.isBreak(i) && i < len(r.items) || r.word(i, "but", "and") || r.word(i, sparing...) {
		i++
	}
	_, next := r.references(i)
	from := r.itemFrom(c.Note)
	if r.word(from-1, sparing...) {
		from--
	}
	r.phrase.Unused = slices.DeleteFunc(r.phrase.Unused, func(u string) bool { return strings.Contains(c.Note, u) })
	r.unuse(trimmed(r.text[r.items[from].start:r.items[next-1].end]))
	c.Note = ""
	if next+1 < len(r.items) {
		c.Note = trimmed(r.text[r.items[next].end:])
	}
}

// itemFrom is the item that a note at the end of the message begins at.
func (r *reader) itemFrom(note string) int {
	from := strings.LastIndex(r.text, note)
	i := 0
	for i < len(r.items) && r.items[i].start < from {
		i++
	}
	return i
}

// deniesAnotherLoad reports whether the "not" at item i is of a load beside the one
// that is spoken of: "1 out, not 2".
func (r *reader) deniesAnotherLoad(i, load int) bool {
	if !r.word(i, "not") {
		return false
	}
	refs, _ := r.references(i + 1)
	return len(refs) > 0 && !slices.Contains(refs, load)
}

// goesOn reports whether another load's order, or one that is left alone, follows "1 in"
// at item i and ends the message: "1 in, hold 2", "1 in but not 2".
func (r *reader) goesOn(i int) bool {
	j := i + 1
	for j < len(r.items) && (r.items[j].amount == nil && r.isBreak(j) || r.word(j, "but", "and", "then")) {
		j++
	}
	if j == i+2 && r.items[i+1].brk == ',' && (r.is(j, kindRole, "deadline") || r.word(j, "done", "should", "ready", "due", "till", "until", "finished")) && r.items[len(r.items)-1].word != "?" {
		return true // "1 in, done by 11 hopefully"
	}
	if j > i+1 && r.word(j, "put", "get", "slide") { // "9 in, and put 10 in press 2"
		refs, next := r.references(j + 1)
		in := r.word(next, "in", "into", "in press") || r.is(next, kindUnit, "in") || next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.unitRaw == "in"
		return len(refs) > 0 && in && (r.word(next, "in press") || r.isBreak(next+1) || r.pressWithin(next+1)) && !r.unitsBehind(next)
	}
	if j == i+1 || j >= len(r.items) || !r.word(j, "not") && !r.is(j, kindVerb, string(Hold), string(Clear), string(Drop), string(Uncheck)) {
		return false
	}
	refs, next := r.references(j + 1)
	return len(refs) > 0 && r.nothingAfter(next-1) && !r.unitsBehind(j)
}

// sparesBehind reports whether the "not" at item i, behind the order, is of other loads
// alone: "2 out not 1".
func (r *reader) sparesBehind(i int) bool {
	c := r.phrase.Command
	return len(c.Loads) > 0 && r.loadBefore(i, c.Loads) && len(r.spared(&Command{Verb: c.Verb, Loads: c.Loads, Note: r.text[r.items[i].start:]})) > 0
}

func (r *reader) loadBefore(i int, loads []int) bool {
	for k := range i {
		if r.items[k].amount == nil {
			continue
		}
		if n, ok := r.loadNumber(k); ok && slices.Contains(loads, n) {
			return true
		}
	}
	return false
}

// conditionAt reports whether the words at item i make an order wait for something: "once 2
// is out put 1 in".
func (r *reader) conditionAt(i int) bool {
	if r.word(i, "only", "but", "as") {
		i++
	}
	return r.word(i, "if", "when", "whenever", "once", "after", "unless", "provided", "assuming", "as soon as", "in case") || r.word(i, "soon", "long") && r.word(i+1, "as") || r.word(i, "soon as", "long as")
}

// awaits reports whether an order is to be done only on what its note says: "clear 1 once
// the mat is in". A hold till something is a hold.
func (r *reader) awaits(c *Command) bool {
	if c.Note == "" || !slices.Contains([]Verb{Clear, Drop, Uncheck, Hold, In, Out}, c.Verb) {
		return false
	}
	i := r.itemFrom(c.Note)
	if r.word(i-1, "if", "when", "once", "after") || r.word(i-2, "soon", "long") && r.word(i-1, "as") {
		i--
	}
	return r.conditionAt(i) && !(c.Verb == Hold && r.word(i, "unless", "after", "in case"))
}

// underCondition is the second order of a message, not to be done where the message
// begins with a condition.
func (r *reader) underCondition(first, then *Command) *Command {
	if first.Verb != Show && !r.conditionAt(r.firstWord()) {
		return then
	}
	for c := then; c != nil; c = c.Then {
		if c.Verb != Show && c.Verb != List && c.Verb != NotDone {
			*c = Command{Verb: NotDone, Meant: c.Verb, Loads: c.Loads, ToCome: true, Then: c.Then}
		}
	}
	return then
}

// anotherGoesIn reports whether a clause of another load's press begins at item i: "1 into
// press 1, 2 into press 2".
func (r *reader) anotherGoesIn(i int) bool {
	if !r.isBreak(i-1) && !r.word(i-1, "and", "then") || r.items[i].amount == nil {
		return false
	}
	refs, next := r.references(i)
	return len(refs) > 0 && (r.word(next, "in", "into", "to", "goes", "in press") || r.is(next, kindVerb, string(In)) || r.items[next-1].amount != nil && r.items[next-1].amount.unitRaw == "in")
}

// secondOrder is where the order of another load begins in the note of a first one: "clear
// 2" in "hold 1, clear 2", "1 result joint 2 open" in "2 result good, 1 result …"; -1 where
// there is none.
func (r *reader) secondOrder(c *Command) int {
	if !slices.Contains([]Verb{Hold, Clear, Drop, Uncheck, Result}, c.Verb) || len(c.Loads) == 0 || r.mentions(kindPeril) {
		return -1
	}
	for k := r.itemFrom(c.Note); k > 0 && k < len(r.items); k++ {
		if r.items[k-1].brk != ',' && r.items[k-1].brk != '.' && !r.word(k-1, ";", "and", "then", "&") {
			continue
		}
		if r.is(k, kindVerb, string(Hold), string(Clear), string(Drop), string(Uncheck)) || r.verb(k) == Drop && !r.takenBack(r.itemFrom(c.Note), k) {
			if refs, next := r.references(k + 1); len(refs) > 0 && r.nothingAfter(next-1) && !overlap(refs, c.Loads) {
				return k
			}
		}
		if c.Verb != Result && r.items[k-1].brk != ',' && r.items[k-1].brk != 0 && r.movesAt(k, c) {
			return k // "hold 1: mat missing. 2 in"
		}
		if refs, next := r.references(k); c.Verb == Result && len(refs) > 0 && !overlap(refs, c.Loads) && (r.is(next, kindVerb, string(Result)) && r.word(next, "result") || r.movesBehindPraise(k, next)) {
			return k
		}
	}
	return -1
}

// takenBack reports whether the items of [from, to) take an order back: "drop 15. wait no
// dont drop 15, drop 16".
func (r *reader) takenBack(from, to int) bool {
	return r.within(from, to, kindFix) >= 0 || r.within(from, to, kindNot) >= 0 || r.opensWithin(from, to, "no", "dont", "wait", "never", "nope")
}

// movesAt reports whether other loads than those of c go in or come out at item k, and the
// message ends with it.
func (r *reader) movesAt(k int, c *Command) bool {
	refs, next := r.references(k)
	if len(refs) == 0 || overlap(refs, c.Loads) || next >= len(r.items) || r.word(k-2, "short", "long", "off", "over", "under", "open", "out", "gap", "wide", "thick") {
		return false
	}
	moves := r.is(next, kindVerb, string(In), string(Out)) || r.is(next, kindUnit, "in") || r.word(next, "in") || r.items[next].amount != nil && r.items[next].amount.unitRaw == "in"
	return moves && r.nothingAfter(next)
}

// movesBehindPraise reports whether the loads at item k go in or out, and what was said of
// another before them is no more than that it is good: "1 result good, 2 in". Behind a fault
// "2 in" may be its length.
func (r *reader) movesBehindPraise(k, next int) bool {
	moves := r.is(next, kindVerb, string(In), string(Out)) || r.is(next, kindUnit, "in") || next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.unitRaw == "in"
	for k--; r.isBreak(k) || r.word(k, "and", "then"); k-- {
		if k < 0 {
			return false
		}
	}
	told := r.is(k, kindVerb, string(Result)) && r.word(k, "came out good", "came out fine", "came out great", "came out well", "came out perfect", "came out ok")
	return moves && r.nothingAfter(next) && (told || r.word(k, "good", "fine", "ok", "okay", "perfect", "great", "well") && (r.isBreak(k-1) || r.is(k-1, kindVerb, string(Result)) || r.word(k-1, "is", "was", "all", "came out")))
}

func overlap(a, b []int) bool {
	return slices.ContainsFunc(a, func(n int) bool { return slices.Contains(b, n) })
}

// splits takes the order of another load out of the note of a first one.
func (r *reader) splits(c *Command) bool {
	k := r.secondOrder(c)
	if k < 0 {
		return false
	}
	p := Parse(r.text[r.items[k].start:], r.habit)
	if p.Command == nil || len(p.Command.Loads) == 0 {
		return false
	}
	from := strings.LastIndex(r.text, c.Note)
	first := ""
	if at := r.items[k].start; from >= 0 && from < at {
		first = " " + trimmed(r.text[from:at])
		for _, joint := range []string{" and", " then", " &"} {
			first = strings.TrimSuffix(first, joint)
		}
		first = trimmed(first)
	}
	r.phrase.Unused = distinct(append(slices.DeleteFunc(r.phrase.Unused, func(u string) bool { return strings.Contains(r.text[r.items[k].start:], u) }), p.Unused...))
	c.Note, c.Then = first, r.underCondition(c, p.Command)
	return true
}

// guessed reports whether what a check tells in [from, to) was not measured: "strips 20 I
// think", "bar supposed to be 25", "like the plan says".
func (r *reader) guessed(from, to int) bool {
	for i := from; i < to; i++ {
		switch {
		case r.items[i].amount != nil:
		case r.word(i, "think", "i think", "guess", "i guess", "reckon", "i reckon", "assume", "probably", "presumably", "supposedly", "supposed", "roughly", "perhaps", "maybe"),
			r.word(i, "about", "around", "approx", "approximately") && i+1 < to && r.items[i+1].amount != nil,
			r.paperAt(i) && i-2 >= from && (r.word(i-1, "the", "that", "our") && r.word(i-2, "like", "per", "as", "from", "by")):
			return true
		}
	}
	return false
}

// onlyGuesses reports whether the clause [from, to) takes back some of what was measured
// before it and says no more: "…, I think".
func (r *reader) onlyGuesses(from, to int) bool {
	for i := from; i < to; i++ {
		if r.items[i].amount != nil || !r.guessed(i, i+1) && !fill[r.items[i].word] && !r.word(i, "so", "i", "we", "all") {
			return false
		}
	}
	return r.guessed(from, to) && r.amountsIn(0, from) > 0 && !r.opensWithin(from, to, "good", "fine", "ok", "okay", "set")
}

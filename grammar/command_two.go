package grammar

import (
	"slices"
	"strings"
)

// Two orders in one message, and what is said of loads that an order leaves alone.

// spared are the loads that an order leaves as they are: load 2 in "1 out, not 2".
func (r *reader) spared(c *Command) []int {
	i := r.itemFrom(c.Note)
	if r.word(i-1, "not") {
		i--
	}
	for r.isBreak(i) && i < len(r.items) || r.word(i, "but", "and") {
		i++
	}
	if !r.word(i, "not") || len(c.Loads) == 0 || c.Verb == NotDone {
		return nil
	}
	refs, next := r.references(i + 1)
	if len(refs) == 0 || !r.nothingAfter(next-1) || slices.ContainsFunc(refs, func(n int) bool { return slices.Contains(c.Loads, n) }) {
		return nil
	}
	return refs
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

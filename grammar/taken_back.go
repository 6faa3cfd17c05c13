package grammar

import "slices"

// What takes an order back in the breath that gave it: "1 out, no wait, not yet".

var (
	// takingBack are words that take back what was said before them.
	takingBack = wordSet(`no nope nah nevermind kidding joking joke jk cancel ignore leave keep forget scratch strike undo belay yet early mistake alarm`)
	// takingFixes are words of correction that take back rather than to put right.
	takingFixes = []string{"no wait", "wait no", "scratch that", "strike that", "no hang on", "no actually", "nope", "nah", "naw", "no sorry", "no hang about", "my mistake", "thats wrong"}
	// besideTaking are words that stand with those and add nothing.
	besideTaking = wordSet(`just wait sorry it that this them is its was am im i we my me a as on you were be do dont not never mind changed still only lol haha ha ok okay really actually all again please false too bit quite
		oops hang the one order alone there stop well ah oh hmm um er load my`)
	// atRest are words for how a load lies that an order is taken back of.
	atRest = wordSet(`fine good ok okay alright right sound`)
)

// takesBackIn reports whether the items from from on are of nothing but taking back what
// stands before them. A hold is taken back by what begins so: "hold 1, not good" is none.
func (r *reader) takesBackIn(from int, v Verb) bool {
	taken, first := false, true
	for i := from; i < len(r.items); i++ {
		it := &r.items[i]
		switch {
		case it.amount != nil:
			return false
		case r.isBreak(i):
			continue
		case r.is(i, kindFix):
			taken = taken || r.word(i, takingFixes...)
		case r.is(i, kindNot):
			if atRest[r.wordAt(i+1)] {
				return false
			}
			taken = taken || v != Hold || r.word(i, "no", "never")
		case takingBack[it.word], it.word == "never" && r.word(i+1, "mind"):
			taken = true
		case r.word(i, "still") && (r.staysPut(i+1, v)):
			taken = true
		case r.word(i-1, "still") && r.staysPut(i, v), r.verb(i) == v && v != Hold, besideTaking[it.word], it.kind == kindFill:
		case r.verb(i) == Drop && it.word == "scratch", r.verb(i) == Undo:
			taken = true
		case atRest[it.word] && slices.Contains([]Verb{Hold, Drop, Uncheck}, v):
		case r.is(i, kindNoun, "press", "bag", "frame") && (v == In || v == Out):
		default:
			return false
		}
		if first && v == Hold && !taken {
			return false
		}
		first = false
	}
	return taken
}

// staysPut: "1 out, sorry, still in", "1 in, no, still out".
func (r *reader) staysPut(i int, v Verb) bool {
	switch v {
	case Out:
		return r.word(i, "in", "pressing", "in press") || r.is(i, kindUnit, "in") || r.is(i, kindVerb, string(In))
	case In:
		return r.is(i, kindVerb, string(Out)) || r.word(i, "out", "waiting")
	}
	return false
}

// turnsBack reports whether what stands behind an order begins to take it back and then
// says something that is no order: "1 out, no wait, it sticks".
func (r *reader) turnsBack(c *Command) bool {
	if c.Note == "" || !slices.Contains([]Verb{In, Out, Drop, Uncheck, Clear, Hold}, c.Verb) {
		return false
	}
	i := r.itemFrom(c.Note)
	for r.isBreak(i) && i < len(r.items) {
		i++
	}
	return r.is(i, kindFix) && r.word(i, takingFixes...) && (c.Verb != Hold || !r.word(i, "nope", "nah", "naw")) ||
		r.is(i, kindFix) && r.word(i, "wait", "hang on", "hold on") && r.isBreak(i+1) ||
		r.word(i, "no") && i+1 < len(r.items) && r.isBreak(i+1)
}

// checkTakenBack reports whether a check ends with words that take it back: "3 checked, bar
// 1, strips 1/2, no wait".
func (r *reader) checkTakenBack() bool {
	last := len(r.items) - 1
	for last >= 0 && r.items[last].amount == nil {
		last--
	}
	for k := last + 1; last >= 0 && k < len(r.items); k++ {
		if r.isBreak(k) && r.takesBackIn(k+1, Check) {
			return true
		}
	}
	return false
}

// saidAgain: "no the bar is 1 1/4", "no the bar we have left is 35" deny what was said of
// the bar, not the bar.
func (r *reader) saidAgain(i int) bool {
	if !r.is(i, kindNot) || r.items[i].word != "no" || r.isBreak(i+1) {
		return false
	}
	j := i + 1
	for r.word(j, "the", "that", "my", "our", "side") {
		j++
	}
	_, to := r.clause(i)
	return r.is(j, kindNoun) && r.amountsIn(j, to) > 0 && (r.word(j+1, "is", "are", "was", "should", "will") || r.is(j+1, kindFix) || r.word(i+1, "the", "that", "my", "our"))
}

package grammar

import "strings"

// laterVerb finds a command behind other words: "looks right, post it",
// "put 14 on hold", "yeah ok that 14 is checked".
func (r *reader) laterVerb(at int) bool {
	if r.putsIn(at) {
		return true
	}
	if !r.means(kindVerb) && !r.says("drop", "scrap", "scratch", "forget", "ditch", "remove", "hold on", "correction") {
		return false
	}
	for i := at; i < len(r.items); i++ {
		it := &r.items[i]
		if r.verb(i) == "" || i == at && it.kind == kindVerb {
			continue
		}
		if r.word(i-1, "dont", "never") || r.is(i-1, kindNot, "not") {
			if r.forbids(at, i) {
				return true
			}
			continue
		}
		if it.kind != kindVerb {
			if r.dropsLater(i) {
				return true
			}
			continue
		}
		switch Verb(it.id) {
		case Post:
			if it.word == "post" && !(r.nothingAfter(i) && r.word(i-1, "and", "then")) || it.word == "post load" || it.word == "put it down" && !r.nothingAfter(i) && !r.word(i+1, "as", "in", "for", "under") || it.word == "write it up" && r.word(i-1, "to") {
				continue
			}
			r.lots(anywhere)
			r.commitPost(&Command{Verb: Post, Title: r.title(i)}, i)
			return false
		case Undo:
			if it.word == "undo" && r.nothingAfter(i) && !r.ofThing(i+1) && r.quiet(at, i) {
				r.close(&Command{Verb: Undo}, len(r.items))
				return true
			}
		case Uncheck, Hold, Clear, Drop, Correct, Check, In, Out:
			if it.word == "clear" && i > 1 && r.items[i-1].amount != nil && (r.is(i-2, kindNoun, "press", "frame", "opening", "bed") || r.word(i-2, "open")) {
				continue // "press open 95 clear"
			}
			if r.verb(i) == Drop && r.fallsOf(i) {
				continue
			}
			if load, ok := r.holdsFor(at, i); ok {
				r.close(&Command{Verb: Hold, Loads: []int{load}, Note: trimmed(r.text[r.items[at].start:r.items[i-1].start])}, len(r.items))
				return true
			}
			if r.checksLater(i) || r.ordersAfter(at, i) || r.ordersBefore(at, i) {
				return r.closes()
			}
		}
	}
	return false
}

// checksLater reads a check whose verb at item i stands behind the figures, or at
// whose head somebody says who he is.
func (r *reader) checksLater(i int) bool {
	refs := r.loadsCheckedLast(i)
	switch {
	case r.checkedLast(i):
		r.items[i].used = true
		r.commit(&Command{Verb: Check}, 0)
	case len(refs) > 0:
		r.commit(&Command{Verb: Check, Loads: refs}, 0)
	case r.checkedIt(i):
		r.commit(&Command{Verb: Check}, i+1)
	default:
		return false
	}
	return true
}

// holdsFor reads "29's mat is missing, hold it": the fault first, then what to do.
func (r *reader) holdsFor(at, i int) (load int, ok bool) {
	if r.verb(i) != Hold || r.items[i].word != "hold" || i <= at || !r.isBreak(i-1) || !r.word(i+1, "it", "that") || !r.nothingAfter(i+1) || r.amountsIn(at, i) != 1 || !r.tellsFault(i-2) {
		return 0, false
	}
	for k := at; k < i; k++ {
		if n, whole := r.wholeAt(k); whole && n > 0 && (k == at || r.word(k-1, "on", "for", "with", "in", "load", "of")) && (r.possessive(k) || !r.is(k+1, kindNoun) && !r.is(k+1, kindAttr)) {
			r.items[k].used = true
			return n, true
		}
	}
	return 0, false
}

// ordersAtTheEnd reads "breather's in, clear 8": what was done, in whatever words, and
// what is to be done.
func (r *reader) ordersAtTheEnd() bool {
	if !r.means(kindVerb, string(Clear), string(Hold), string(Uncheck)) {
		return false
	}
	for i := 1; i < len(r.items); i++ {
		verb := r.verb(i)
		if verb != Clear && verb != Hold && verb != Uncheck || !r.is(i, kindVerb) || !r.isBreak(i-1) || r.word(i-1, ";") || r.numbersIn(0, i) > 0 {
			continue
		}
		if refs, next := r.references(i + 1); len(refs) > 0 && next >= len(r.items) && !r.unitsBehind(i) {
			r.close(&Command{Verb: verb, Loads: refs}, next)
			return true
		}
	}
	return false
}

// numbersIn counts the amounts of [from, to) but for the "one" of "found another one".
func (r *reader) numbersIn(from, to int) int {
	n := r.amountsIn(from, to)
	for i := from; i < to; i++ {
		if r.items[i].amount != nil && r.items[i].amount.form == formWords && r.word(i-1, "another", "new", "spare", "the other") {
			n--
		}
	}
	return n
}

// possessive reports whether item i has "'s" with it: "29's mat".
func (r *reader) possessive(i int) bool {
	behind := r.text[r.items[i].end:]
	return strings.HasPrefix(behind, "'s") || strings.HasPrefix(behind, "’s")
}

// fallsOf: "gauge on 1 dropped to 15" and "somebody dropped 1 on the floor" take no
// load out of the book.
func (r *reader) fallsOf(i int) bool {
	if r.mentions(kindVacuum) || r.pressureSaid() || r.wordIn("pressure", "floor") {
		return true
	}
	return r.items[i].word == "dropped" && !r.word(i-1, "who", "whos", "who's") && !(r.nothingAfter(i) && i > 0 && r.items[i-1].amount != nil)
}

// checkedIt: "second here, checked it myself. Tape says bar 2 7/16 …" is a check
// of the load that is spoken of.
func (r *reader) checkedIt(i int) bool {
	return r.is(i, kindVerb, string(Check)) && r.isBreak(i-1) && r.word(i+1, "it", "this", "them") && r.amountsIn(0, i) == 0 && r.amountsIn(i, len(r.items)) > 1 && !r.asksSomething()
}

// checkedLast: "bar 38, strips 20 thick, checked" in the thread of a load.
func (r *reader) checkedLast(i int) bool {
	return r.habit.Follows && r.word(i, "checked", "chkd", "ckd", "verified", "double checked", "rechecked", "second check", "signed off", "check done") && (r.mentions(kindNoun, "bar", "strip", "mat", "sled", "caul") || r.mentions(kindVacuum)) && r.isBreak(i-1) && r.nothingAfter(i) && r.amountsIn(0, i) > 1 && !r.asksSomething()
}

// forbids reads "don't clear 14": the verb i, denied, before its loads.
func (r *reader) forbids(at, i int) bool {
	verb := r.verb(i)
	refs, next := r.references(i + 1)
	if len(refs) == 0 || r.amountsIn(at, i) > 0 || r.unitsBehind(i) {
		return false
	}
	switch verb {
	case Clear, Hold, In, Out, Check:
	case Drop:
		if r.within(i, len(r.items), kindFix) >= 0 {
			return false
		}
	default:
		return false
	}
	r.close(&Command{Verb: NotDone, Meant: verb, Loads: refs}, next)
	return true
}

// dropsLater reads "… scrap 14", whose verb also means a change of the question.
func (r *reader) dropsLater(i int) bool {
	refs, next := r.references(i + 1)
	if len(refs) == 0 || r.verb(i) != Drop || r.unitsBehind(i) || next < len(r.items) && !r.isBreak(next) {
		return false
	}
	r.close(&Command{Verb: Drop, Loads: refs}, next)
	return true
}

// ordersAfter reads the verb i with the loads after it: "ok, and clear 14".
func (r *reader) ordersAfter(at, i int) bool {
	if !r.isBreak(i-1) && !r.word(i-1, "and", "please", "pls", "to", "then", "ok", "so", "just", "can", "you") {
		return false
	}
	verb := r.verb(i)
	refs, next := r.references(i + 1)
	if len(refs) == 0 || r.opens("nobody", "noone") >= 0 {
		return false
	}
	if !r.quiet(at, i) && (verb == In || verb == Out || r.amountsIn(at, i) > 0) {
		return false
	}
	r.commitOrClose(&Command{Verb: verb, Loads: refs}, next)
	return true
}

// ordersBefore reads the verb i with the loads before it: "ok so 14 is checked".
func (r *reader) ordersBefore(at, i int) bool {
	refs := r.justBefore(i)
	if len(refs) == 0 || r.opens("nobody") >= 0 || !r.quiet(at, i-len(refs)) {
		return false
	}
	c := &Command{Verb: r.verb(i), Loads: refs}
	if c.Verb == Out && r.word(i+1, "of") {
		return false
	}
	if c.Verb == Uncheck && strings.HasPrefix(r.items[i].word, "not") {
		c.Verb = NotDone
	}
	r.commitOrClose(c, i+1)
	return true
}

// putsIn reads "put 14 in" and "don't put 20 in yet".
func (r *reader) putsIn(at int) bool {
	if !r.says("put", "get", "take", "slide", "slid", "stuck", "shoved", "load") {
		return false
	}
	for i := 0; i+1 < len(r.items); i++ {
		if !r.word(i, "put", "get", "take", "slide", "slid", "stuck", "shoved", "load") {
			continue
		}
		refs, next := r.references(i + 1)
		if len(refs) == 0 || next >= len(r.items)+1 || !r.quiet(0, i) {
			continue
		}
		in := next < len(r.items) && (r.items[next].amount != nil && r.items[next].amount.unit != nil && r.items[next].amount.unit.Symbol == "in" || r.word(next, "in") || r.is(next, kindVerb, "in"))
		if !in || r.is(next+1, kindNoun) && !r.is(next+1, kindNoun, "press", "bag", "frame") || r.is(next+1, kindAttr) || r.is(next+1, kindWood) || r.word(next+1, "of", "off", "out of", "outta", "from") || r.is(next+1, kindVerb, "out") && r.word(next+2, "of") {
			continue // "put 1 in bar on it", "get 42 in out of it"
		}
		if r.word(next+1, "the", "my", "a", "that", "our", "each", "every") && next+2 < len(r.items) && r.word(next, "in") && r.items[next+2].kind == kindNone && r.items[next+2].brk == 0 && !r.word(next+2, pressNames...) {
			continue // "put 3 in the pot"
		}
		c := &Command{Verb: In, Loads: refs}
		if i > 0 && (r.is(i-1, kindNot) || r.word(i-1, "dont")) {
			c.Verb, c.Meant = NotDone, In
		}
		r.close(c, next+1)
		return true
	}
	return false
}

// commitOrClose ends a command: a check and a correction take the figures that follow,
// the others the rest as a note.
func (r *reader) commitOrClose(c *Command, next int) {
	if c.Verb == Check || c.Verb == Correct {
		r.commit(c, next)
		return
	}
	r.close(c, next)
}

// copies reports whether item i, past "the", says that a load is like another.
func (r *reader) copies(i int) bool {
	for r.word(i, "the", "exactly", "just") {
		i++
	}
	refs, _ := r.references(i + 1)
	return r.is(i, kindVerb, string(Copy)) && len(refs) == 1
}

// nobodyHas reads "nobody's taken 29 out yet".
func (r *reader) nobodyHas() bool {
	if !r.says("nobodys", "nobody", "noones", "noone") {
		return false
	}
	i := r.firstWord()
	if !r.word(i, "nobodys", "nobody", "noones", "noone") {
		return false
	}
	if r.inAnyway() {
		return true
	}
	for k := i + 1; k <= i+3 && k < len(r.items); k++ {
		refs, next := r.references(k)
		if len(refs) == 0 {
			continue
		}
		verb := next
		if r.is(k-1, kindVerb, string(Check)) {
			verb, next = k-1, next-1 // "nobody's checked 26 yet"
		}
		if !r.is(verb, kindVerb, string(In), string(Out), string(Check)) {
			return false
		}
		c := &Command{Verb: NotDone, Meant: r.verb(verb), Loads: refs}
		if !r.asksSomething() {
			r.holdBehind(c, next+1) // "nobody has checked 44, hold it"
		}
		r.close(c, next+1)
		return true
	}
	return false
}

// inAnyway reads the end of "nobody's checked 11 and I'm not waiting. 11 in anyway".
func (r *reader) inAnyway() bool {
	i := len(r.items) - 2
	if i < 2 || !r.word(i+1, "anyway", "anyways") || !r.isBreak(i-1) || !r.free(i) || r.items[i].amount.unitRaw != "in" {
		return false
	}
	n, ok := plainWhole(r.items[i].amount)
	if !ok {
		return false
	}
	r.close(&Command{Verb: In, Loads: []int{n}, Anyway: true}, len(r.items))
	return true
}

// otherLoad reads that another load was meant, and returns the item behind: "26
// checked. no not 26, 27 i mean", "14 checked, sorry 15, bar 1 in".
func (r *reader) otherLoad(c *Command, next int) int {
	if len(c.Loads) != 1 || next <= 0 {
		return next
	}
	i, fixed := next, false
	for ; i < len(r.items); i++ {
		n, isLoad := 0, false
		if am := r.items[i].amount; am != nil && am.unit == nil {
			n, isLoad = r.loadNumber(i)
		}
		switch {
		case r.isBreak(i) || r.word(i, "oops", "its", "it", "that", "was", "load", "number", "actually"):
		case r.word(i, "instead of", "rather than"), r.deniesAnotherLoad(i, c.Loads[0]):
			return next
		case r.is(i, kindFix), r.is(i, kindNot, "no", "not"), r.word(i, "no", "wait", "sorry"):
			fixed = true
		case isLoad && n == c.Loads[0] && r.is(i-1, kindNot):
		case isLoad && (fixed && (i+1 >= len(r.items) || r.isBreak(i+1)) || r.is(i+1, kindFix)):
			c.Loads[0] = n
			for k := next; k <= i; k++ {
				r.items[k].used = true
				if r.items[k].kind == kindNot {
					r.items[k].meaning = meaning{} // it denies the number alone
				}
			}
			if r.is(i+1, kindFix) {
				i++
			}
			return i + 1
		default:
			return next
		}
	}
	return next
}

package grammar

import "presshand/engine/unit"

// What is told of a load in plain words: what was measured on it, how it came out, where it is.

// measuring tells that somebody has a tape in hand.
var measuring = wordSet(`mic mics miked mikes micd tape taped calipers caliper callipers measured measures measure got get getting`)

// checkTold reads "load 12: I get 31/32 on the bar, strips mic at .247" and "strips on 33
// measured 1/4, bar is 1 in, so checked" as checks.
func (r *reader) checkTold() bool {
	if r.is(1, kindNoun) && r.items[0].amount != nil { // "5 strips …"
		return false
	}
	if r.asksSomething() || r.mentions(kindPeril) || r.partsTold() < 2 || r.opensWithin(0, len(r.items), "what", "whats", "how", "which", "should", "will", "can", "could", "need", "want") {
		return false
	}
	i := r.firstWord()
	if refs, next := r.references(i); len(refs) == 1 && next < len(r.items) && (r.items[next].brk == ':' || (r.is(i, kindVerb, string(Show)) || i > 0 && r.items[i-1].brk == '#') && r.items[next].brk == ',') && r.measuresFrom(next) {
		r.commit(&Command{Verb: Check, Loads: refs}, next+1)
		return true
	}
	if i+3 < len(r.items) && r.paperAt(i) && r.is(i+1, kindSay) && r.free(i+2) && r.word(i+3, "on", "for") {
		refs, next := r.references(i + 4)
		at := r.barByTape(next)
		if len(refs) != 1 || at < 0 || !r.measuresFrom(next) {
			return false
		}
		r.commit(&Command{Verb: Check, Loads: refs}, next)
		r.bind(at, unit.BarHeight)
		r.items[i+2].used, r.items[i+2].amount.dead = false, true // what the card says is not measured
		for k := next; k < at; k++ {
			r.items[k].meaning, r.items[k].used = meaning{}, true
		}
		return true
	}
	if !r.is(i, kindNoun, "bar", "strip", "mat") && !r.is(i, kindVacuum, "gauge") || !r.word(i+1, "on", "of", "for") {
		return false
	}
	refs, next := r.references(i + 2)
	if len(refs) != 1 || next >= len(r.items) || !r.is(next, kindVerb, string(Check)) && !measuring[r.wordAt(next)] || r.items[next].amount != nil || r.altered(next) || r.byAnother(next) {
		return false
	}
	r.remove(i+1, next+1)
	r.restated(i + 1)
	r.commit(&Command{Verb: Check, Loads: refs}, i)
	return true
}

// measuresFrom reports whether somebody tells of measuring from item i on: "I get", "strips mic
// at", "that's my check".
func (r *reader) measuresFrom(i int) bool {
	for ; i < len(r.items); i++ {
		switch word := r.wordAt(i); {
		case r.items[i].amount != nil || r.is(i, kindNot) || !measuring[word] && !r.is(i, kindVerb, string(Check)):
		case r.word(i, "get", "got", "getting"):
			_, to := r.clause(i)
			part := r.within(i, to, kindNoun, "bar", "strip", "mat", "sled", "caul") >= 0 || r.within(i, to, kindVacuum, "gauge") >= 0
			if part && r.amountsIn(i, to) > 0 && !r.altered(i) && r.word(i-1, "i", "im", "we", "ive", "were") && !r.word(i-2, "do", "did", "would", "if", "when", "until", "till") {
				return true
			}
		case r.byAnother(i):
			return false
		case r.word(i, "check"):
			if r.word(i-1, "my") && r.nothingAfter(i) {
				r.items[i].meaning, r.items[i].used = meaning{}, true
				return true
			}
		default:
			return true
		}
	}
	return false
}

// altered reports whether what is got at item i is other than it was: "got new strips", "got
// changed to 3/4".
func (r *reader) altered(i int) bool {
	_, to := r.clause(i)
	return r.word(i, "get", "got", "getting") && r.opensWithin(i+1, to, "new", "newer", "changed", "replaced", "swapped", "cut", "planed", "longer", "shorter", "wider", "thicker", "thinner", "different", "other", "another", "more")
}

// byAnother: "as measured by whoever planned it" is no measuring of who writes.
func (r *reader) byAnother(i int) bool {
	return r.word(i+1, "by") && !r.word(i+2, "me", "us", "myself")
}

// partsTold is how many parts stand beside a number in a clause of theirs, as in a check.
func (r *reader) partsTold() int {
	told := 0
	for from := 0; from < len(r.items); {
		to := from
		for to < len(r.items) && !r.isBreak(to) {
			to++
		}
		if r.amountsIn(from, to) > 0 && (r.within(from, to, kindNoun, "bar", "strip", "mat", "sled", "caul") >= 0 || r.within(from, to, kindVacuum, "gauge") >= 0) {
			told++
		}
		from = to + 1
	}
	return told
}

// restated takes the rough word of "a fat quarter, .258" from item i on for no number.
func (r *reader) restated(i int) {
	for r.word(i, "a", "an", "at", "about", "fat", "shy", "scant", "full", "good", "bare", "light", "heavy", "just") {
		i++
	}
	if i+2 >= len(r.items) || !r.free(i) || !r.free(i+2) || r.items[i+1].brk != ',' || r.items[i].amount.unit != nil || r.items[i+2].amount.form != formDecimal {
		return
	}
	if rough, fine := r.items[i].amount.float(), r.items[i+2].amount.float(); fine > 0.9*rough && fine < 1.1*rough {
		r.remove(i, i+2)
	}
}

// resultTold reads "I'd call 25 good, no gaps", "measured the panel off load 5: 1/32 cup" and
// "write down that 19 had squeeze-out" as results.
func (r *reader) resultTold() bool {
	if r.asksSomething() || r.mentions(kindPeril) {
		return false
	}
	for i := 0; i < len(r.items) && i < 5; i++ {
		if r.items[i].amount != nil {
			return false
		}
		refs, next := []int(nil), 0
		switch {
		case r.word(i, "call", "calling", "rate", "judge"):
			if refs, next = r.references(i + 1); !r.judgedAt(next) || !r.finds(next) {
				continue
			}
		case r.is(i, kindNoun, "panel") && r.word(i+1, "off", "from", "of") && r.is(i+2, kindVerb, string(Show)):
			if refs, next = r.references(i + 2); !r.isBreak(next) || next >= len(r.items) || r.opensWithin(0, i, "next", "another", "new") {
				continue
			}
		case r.word(i, "write", "note", "jot", "record", "put") && !r.is(i+1, kindNoun):
			k := i + 1
			for r.word(k, "it", "this", "that", "down", "somewhere", "in", "the", "book", "please") || r.is(k, kindVerb, string(List)) {
				k++
			}
			if refs, next = r.references(k); !r.word(next, "had", "has", "showed", "shows", "got") || r.word(next+1, "to") || !r.finds(next) {
				continue
			}
		default:
			continue
		}
		if len(refs) != 1 {
			continue
		}
		if r.is(i-1, kindNot) { // "don't write 1 had a gap, that was load 2"
			r.close(&Command{Verb: NotDone, Meant: Result, Loads: refs}, next)
			r.phrase.Command.Note, r.phrase.Unused = "", []string{r.textOf(next, len(r.items)-1)}
			return true
		}
		r.close(&Command{Verb: Result, Loads: refs}, next)
		return true
	}
	return false
}

// judgedAt: "good", "a good one", "bad" at item i ends its clause.
func (r *reader) judgedAt(i int) bool {
	for r.word(i, "a", "pretty", "very", "all", "not") {
		i++
	}
	if !r.word(i, "good", "fine", "great", "perfect", "ok", "okay", "bad", "scrap", "junk", "ruined", "usable", "sound", "flat") {
		return false
	}
	return r.isBreak(i+1) || r.word(i+1, "one", "and", "but", "with")
}

// finds reports whether a finding of a pressed panel is told from item i on.
func (r *reader) finds(i int) bool {
	for ; i < len(r.items); i++ {
		if r.is(i, kindNoun, "joint", "gap", "cup", "bow") || r.is(i, kindFact, "gap=0") || r.items[i].amount == nil && findings[r.wordAt(i)] {
			return true
		}
	}
	return false
}

// findings are words of how a panel came out of the press.
var findings = wordSet(`squeeze squeezeout flat twist twisted tight open starved dry stained stain stains crack cracked cracks dent dents bruise bruised glued creep crept`)

// placeTold reads "12 stays in", "move 14 to press 2" and "who has 14?", of which nothing is done.
func (r *reader) placeTold() bool {
	if !r.says("move", "shift", "switch", "swap", "who", "stays", "staying", "stay", "stays in", "staying in", "stay in") {
		return false
	}
	i := r.firstWord()
	for r.isBreak(i) && i < len(r.items) || r.is(i, kindFix) || r.word(i, "no", "sorry", "wait", "ok", "but") {
		i++
	}
	switch {
	case r.mentions(kindPeril):
		return false
	case r.word(i, "move", "shift", "switch", "swap"):
		refs, next := r.references(i + 1)
		if len(refs) == 0 || !r.word(next, "to", "into", "over", "onto") {
			return false
		}
		for next++; r.word(next, "to", "the", "other", "our") || r.word(next, pressNames...); next++ {
		}
		if !r.is(next, kindNoun, "press", "bag", "frame") || r.unitsBehind(next) {
			return false
		}
		r.close(&Command{Verb: NotDone, Meant: In, Loads: refs, Lacks: LacksSense}, next)
		return true
	case r.word(i, "who") && r.word(i+1, "has", "got", "did", "is") && !r.is(i+1, kindVerb):
		refs, next := r.references(i + 2)
		if len(refs) != 1 || !(r.isBreak(next) || r.word(next, "now")) {
			return false
		}
		r.close(&Command{Verb: Show, Loads: refs}, next)
		return true
	}
	return r.staysWhere(i)
}

// staysWhere reads "3 stays in" and "13 stays, it's 11 that's out": the order behind it is done.
func (r *reader) staysWhere(i int) bool {
	refs, next := r.references(i)
	if len(refs) == 0 || !r.word(next, "stays", "staying", "stay", "stays in", "staying in", "stay in") && !(r.word(next, "is", "are", "to") && r.word(next+1, "staying", "stay", "staying in", "stay in")) {
		return false
	}
	for next++; r.word(next, "staying", "stay", "staying in", "stay in", "in", "put", "there", "where", "it", "is", "now", "for", "still", "the", "under", "vacuum") || r.is(next, kindUnit, "in") || r.is(next, kindVerb, string(In)) || r.is(next, kindNoun, "press", "bag", "frame"); next++ {
	}
	c := &Command{Verb: NotDone, Meant: Out, Loads: refs}
	if r.is(next, kindVerb, string(Out)) && r.nothingAfter(next) {
		c.Meant = In // "14 stays out"
		next++
	}
	if next < len(r.items) && !r.nothingAfter(next-1) {
		if !r.isBreak(next) && !r.tellsHowLong(next) {
			return false
		}
		for k := next; r.isBreak(next) && k < len(r.items); k++ {
			if !r.isBreak(k) && !r.word(k, "its", "it", "is", "and", "but", "only") {
				if p := Parse(r.text[r.items[k].start:], r.habit); p.Command != nil && len(p.Command.Loads) > 0 && (p.Command.Verb == In || p.Command.Verb == Out) {
					r.close(p.Command, len(r.items))
					r.phrase.Unused = append([]string{r.textOf(i, next-1)}, p.Unused...)
					return true
				}
				break
			}
		}
	}
	r.close(c, next)
	if r.outThen(next) { // "1 stays in till 3 then out": 3 is no load
		c.Note, r.phrase.Unused = "", []string{r.textOf(next, len(r.items)-1)}
	}
	return true
}

// outThen reports whether "then out" ends what is told from item i on, behind one number.
func (r *reader) outThen(i int) bool {
	for k := i + 1; k < len(r.items); k++ {
		if r.word(k-1, "then") && (r.is(k, kindVerb, string(Out)) || r.word(k, "out", "it comes out", "comes out")) && r.nothingAfter(k) {
			return r.amountsIn(i, k) == 1
		}
	}
	return false
}

// asksWhether: "is that ok", "are we good" behind a comma asks, with no question mark.
func (r *reader) asksWhether() bool {
	for i := 1; i < len(r.items); i++ {
		if r.isBreak(i-1) && (r.word(i, "is", "are", "was") && r.word(i+1, "that", "it", "this", "we", "the", "they") || r.word(i, "ok", "okay", "still ok", "good") && r.nothingAfter(i) || r.word(i, "is that", "is it") || r.word(i, "still") && r.word(i+1, "ok", "okay", "good", "fine")) {
			return true
		}
	}
	return false
}

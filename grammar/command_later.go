package grammar

import "strings"

// laterVerb finds a command behind other words: "looks right, post it",
// "put 14 on hold", "yeah ok that 14 is checked".
func (r *reader) laterVerb(at int) bool {
	if r.putsIn(at) {
		return true
	}
	for i := at; i < len(r.items); i++ {
		it := &r.items[i]
		verb := r.verb(i)
		if verb == "" || i == at && it.kind == kindVerb {
			continue
		}
		if r.word(i-1, "dont", "never") || r.is(i-1, kindNot, "not") {
			if refs, next := r.references(i + 1); len(refs) > 0 && (verb == Clear || verb == Drop && r.within(i, len(r.items), kindFix) < 0 || verb == Hold || verb == In || verb == Out || verb == Check) && r.amountsIn(at, i) == 0 && !r.unitsBehind(i) {
				r.close(&Command{Verb: NotDone, Meant: verb, Loads: refs}, next)
				return true
			}
			continue
		}
		if it.kind != kindVerb {
			if refs, next := r.references(i + 1); len(refs) > 0 && verb == Drop && !r.unitsBehind(i) && (next >= len(r.items) || r.isBreak(next)) {
				r.close(&Command{Verb: Drop, Loads: refs}, next)
				return true
			}
			continue
		}
		switch Verb(it.id) {
		case Post:
			if it.word == "post" || it.word == "post load" || it.word == "write it up" && r.word(i-1, "to") {
				continue
			}
			r.lots(anywhere)
			r.commitPost(&Command{Verb: Post, Title: r.title(i)}, i)
			return false
		case Undo:
			if it.word == "undo" && r.nothingAfter(i) && r.quiet(at, i) {
				r.close(&Command{Verb: Undo}, len(r.items))
				return true
			}
		case Uncheck, Hold, Clear, Drop, Correct, Check, In, Out:
			if r.isBreak(i-1) || r.word(i-1, "and", "please", "pls", "to", "then", "ok", "so", "just", "can", "you") {
				if refs, next := r.references(i + 1); len(refs) > 0 && r.opens("nobody", "noone") < 0 && (r.quiet(at, i) || Verb(it.id) != In && Verb(it.id) != Out && r.amountsIn(at, i) == 0) {
					c := &Command{Verb: Verb(it.id), Loads: refs}
					if r.complete2(c, next) {
						return r.closes()
					}
				}
			}
			if refs := r.justBefore(i); len(refs) > 0 && r.opens("nobody") < 0 && r.quiet(at, i-len(refs)) {
				c := &Command{Verb: Verb(it.id), Loads: refs}
				if c.Verb == Out && r.word(i+1, "of") {
					continue
				}
				if c.Verb == Uncheck && strings.HasPrefix(it.word, "not") {
					c.Verb = NotDone
				}
				if r.complete2(c, i+1) {
					return r.closes()
				}
			}
		}
	}
	return false
}

// putsIn reads "put 14 in" and "don't put 20 in yet".
func (r *reader) putsIn(at int) bool {
	for i := 0; i+1 < len(r.items); i++ {
		if !r.word(i, "put", "get", "slide", "load") {
			continue
		}
		refs, next := r.references(i + 1)
		if len(refs) == 0 || next >= len(r.items)+1 || !r.quiet(0, i) {
			continue
		}
		in := next < len(r.items) && (r.items[next].amount != nil && r.items[next].amount.unit != nil || r.word(next, "in") || r.is(next, kindVerb, "in"))
		if !in {
			continue
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

func (r *reader) complete2(c *Command, next int) bool {
	if c.Verb == Check || c.Verb == Correct {
		r.commit(c, next)
		return true
	}
	r.close(c, next)
	return true
}

package grammar

// verbFirst reads "hold 14: mat missing", "post it as walnut tops", "undo".
func (r *reader) verbFirst(i int) bool {
	c := &Command{Verb: r.verb(i)}
	refs, next := r.references(i + 1)
	for skip := i + 1; len(refs) == 0 && skip < len(r.items) && skip < i+3 && (r.word(skip, "on", "to", "for", "the", "of", "load", "me", "us") || r.is(skip, kindVerb, "show")); skip++ {
		refs, next = r.references(skip + 1)
	}
	c.Loads = refs
	if c.Verb == Out && r.word(i+1, "of") {
		return false // "out of 14 at 2 1/2 and 9 at 4"
	}
	if len(refs) > 0 && next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.unitRaw == "in" && r.items[next].amount.link == linkNone {
		return false // "check 14 in of …"
	}
	switch c.Verb {
	case Undo:
		if len(refs) == 0 && (!r.nothingAfter(i) && !r.isBreak(i+1) || r.opens("how") >= 0) {
			return false
		}
	case Post:
		describes := r.saysMuch(i+1, len(r.items))
		if r.items[i].word == "post" && len(refs) == 0 && !r.nothingAfter(i) && !describes {
			return false
		}
		if describes {
			c.Loads = nil
		}
		r.lots(anywhere)
		c.Title = r.title(i)
		r.commitPost(c, i)
		return true
	case Check:
		if len(refs) == 0 && !r.startsCheck(i) {
			return false
		}
		if len(refs) == 0 {
			next = i + 1
		}
		r.commit(c, next)
		return true
	case Result:
		if len(refs) == 0 {
			next = i + 1
		}
	case List:
		return false
	case Copy:
		if len(refs) == 0 {
			return false
		}
		c.From, c.Loads = refs[0], nil
		r.commit(c, next)
		return true
	case Correct:
		if len(refs) == 0 {
			return false
		}
		r.commit(c, next)
		return true
	case Hold, Clear:
		after := i + 1
		if r.word(after, "it", "that", "this") {
			after++
		}
		if len(refs) == 0 && !(r.nothingAfter(i) || r.isBreak(after) && r.items[i].word != "clear") {
			return false
		}
		if len(refs) == 0 {
			next = after
		}
	case Show:
		if len(refs) == 0 || !r.showsOnly(next) {
			return r.loadThenVerb(refs, next)
		}
	default:
		if len(refs) == 0 {
			return false
		}
	}
	r.close(c, next)
	return true
}

// commitPost takes an order to post whose verb is item i. What is said of the
// load around it is left to be read: "epoxy it is, post it", "post it: 5 strips".
func (r *reader) commitPost(c *Command, i int) {
	before, after := r.saysMuch(0, i), r.saysMuch(i+1, len(r.items))
	switch {
	case !before && !after:
		r.commit(c, len(r.items))
	case !before:
		r.commit(c, i+1)
	default:
		r.items[i].used = true
		r.commit(c, 0)
	}
}

// saysMuch reports whether unread items of [from, to) can state anything of a
// load: a number, a glue or a wood.
func (r *reader) saysMuch(from, to int) bool {
	for k := from; k < to; k++ {
		if it := &r.items[k]; !it.used && (it.amount != nil || it.list != nil || it.kind == kindGlue || it.kind == kindWood) {
			return true
		}
	}
	return false
}

// loadThenVerb reads "load 14 is in".
func (r *reader) loadThenVerb(refs []int, next int) bool {
	return len(refs) > 0 && r.aboutLoads(refs, next)
}

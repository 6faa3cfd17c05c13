package grammar

import (
	"cmp"
	"slices"
	"strings"
)

// verbFirst reads "hold 14: mat missing", "post it as walnut tops", "undo".
func (r *reader) verbFirst(i int) bool {
	c := &Command{Verb: r.verb(i)}
	refs, next := r.namedAfter(i)
	c.Loads = refs
	if c.Verb == Drop && r.word(i+1, "to", "down") {
		return false // "and drop to 22"
	}
	if c.Verb == Drop && r.word(i, "forget") && len(refs) > 0 && r.amountsIn(next, len(r.items)) > 0 {
		return false // "forget 5200, we moved. 1100 ft now"
	}
	if c.Verb == Out && r.word(i+1, "of") {
		return false // "out of 14 at 2 1/2 and 9 at 4"
	}
	if len(refs) > 0 && next < len(r.items) && r.items[next].amount != nil && r.items[next].amount.unitRaw == "in" && r.items[next].amount.link == linkNone {
		return false // "check 14 in of …"
	}
	if w := r.items[i].word; c.Verb == Hold && len(refs) > 0 && (strings.HasPrefix(w, "dont ") || strings.HasPrefix(w, "do not ")) && !r.endsOrder(next) {
		return false // "don't run 5 strips at once"
	}
	switch c.Verb {
	case List:
		return false
	case Post:
		if r.items[i].word == "put it down" && !r.nothingAfter(i) && !r.word(i+1, "as", "in", "for", "under") {
			return false // "put it down the coast"
		}
		return r.postFirst(c, i)
	case Check:
		if len(refs) == 0 && (!r.startsCheck(i) || r.approvesPost(i)) {
			return false
		}
		r.commit(c, next)
	case Copy:
		if len(refs) == 0 {
			return false
		}
		c.From, c.Loads = refs[0], nil
		r.commit(c, next)
	case Correct:
		if len(refs) == 0 {
			return false
		}
		r.commit(c, next)
	case Show, Result:
		if c.Verb == Show && (len(refs) == 0 || !r.showsOnly(next)) {
			return r.loadThenVerb(refs, next)
		}
		r.close(c, next)
	default:
		if len(refs) == 0 {
			var ok bool
			if next, ok = r.withoutLoad(c.Verb, i); !ok {
				return false
			}
		}
		r.close(c, next)
	}
	return true
}

// endsOrder reports whether an order to wait is over at item i, or goes on with till
// when or why.
func (r *reader) endsOrder(i int) bool {
	return i >= len(r.items) || r.isBreak(i) || r.word(i, "yet", "till", "til", "until", "before", "today", "tonight", "now", "again", "please", "pls", "because", "cos", "cause", "as", "since", "without", "unless", "if", "when", "while", "ok", "just", "for", "at", "and", "the", "we", "i") || r.is(i, kindFill)
}

// namedAfter finds the loads named after the verb i, past a few small words, and
// the item after them; without any that is the item after the verb.
func (r *reader) namedAfter(i int) ([]int, int) {
	for k := i + 1; k <= i+3 && k <= len(r.items); k++ {
		if refs, next := r.references(k); len(refs) > 0 {
			if slices.Contains([]Verb{Hold, Clear, Drop, Uncheck}, r.verb(i)) {
				return r.upTo(refs, next)
			}
			return refs, next
		}
		if k == i+1 && k < len(r.items) && r.items[k].brk == ':' && r.verb(i) == Check && r.loadOnly(k+1) {
			continue // "second check: 3, bar 1"
		}
		if !r.word(k, "on", "to", "for", "the", "of", "load", "me", "us") && !r.is(k, kindVerb, "show") {
			break
		}
	}
	return nil, i + 1
}

// loadOnly reports whether a number stands alone at item i, with a part behind its comma.
func (r *reader) loadOnly(i int) bool {
	for r.is(i, kindVerb, string(Show)) || r.word(i, "load") || i < len(r.items) && r.items[i].brk == '#' {
		i++
	}
	return i+2 < len(r.items) && r.items[i].amount != nil && r.items[i].amount.bare() && r.isBreak(i+1) && r.items[i+1].amount == nil && (r.is(i+2, kindNoun) || r.is(i+2, kindVacuum))
}

// approvesPost: "looks good, post it" is no check but an order to post.
func (r *reader) approvesPost(i int) bool {
	first, _, _ := strings.Cut(r.items[i].word, " ")
	post := r.itemOf(Post)
	return in(first, "looks", "look", "looked", "seems", "checks") && post > i && r.amountsIn(0, post) == 0
}

// upTo adds the loads of "1-3" or "1 to 3" whose second number is item next, and returns
// the item behind.
func (r *reader) upTo(refs []int, next int) ([]int, int) {
	const most = 20
	if len(refs) != 1 || !r.free(next) || !r.items[next].amount.bare() || r.items[next].amount.link != linkTo || !r.isBreak(next+1) && !r.nothingAfter(next) {
		return refs, next
	}
	last, ok := plainWhole(r.items[next].amount)
	if !ok || last <= refs[0] || last-refs[0] > most {
		return refs, next
	}
	for n := refs[0] + 1; n <= last; n++ {
		refs = append(refs, n)
	}
	r.items[next].used = true
	return refs, next + 1
}

// postFirst reads "post it as walnut tops" and "post: 5 strips …".
func (r *reader) postFirst(c *Command, i int) bool {
	describes := r.saysMuch(i+1, len(r.items))
	if r.items[i].word == "post" && (r.elsewhere() || r.picturesPosted(i+1)) {
		return false // "post 9 on the back fence is rotten"
	}
	if r.items[i].word == "post" && len(c.Loads) == 0 && !r.nothingAfter(i) && !describes {
		return false
	}
	if describes {
		c.Loads = nil
	}
	r.lots(anywhere)
	c.Title = cmp.Or(r.titledBehind(i), r.title(i))
	r.commitPost(c, i)
	return true
}

// withoutLoad reports whether the verb i may stand without a load, as "undo" and
// "hold it: mat missing" do, and where what is said with it begins.
func (r *reader) withoutLoad(verb Verb, i int) (next int, ok bool) {
	next = i + 1
	switch verb {
	case Undo:
		return next, (r.nothingAfter(i) || r.isBreak(next)) && r.opens("how") < 0 && !r.ofThing(next)
	case Hold, Clear:
		if r.ofThing(next) {
			return next, false
		}
		if r.word(next, "every", "all loads", "all the loads", "open loads") {
			last := next
			if r.word(next+1, "load") || r.is(next+1, kindVerb, "show") {
				last++
			}
			return next, r.nothingAfter(last) || r.word(last+1, "till", "until")
		}
		if r.word(next, "everything", "all", "both", "all of them", "them all") && r.isBreak(next+1) {
			return next, true // "hold everything: pump died"
		}
		if r.word(next, "it", "that", "this") {
			next++
		}
		if r.word(next-1, "that", "this") && (r.word(next, "one", "load") || r.is(next, kindVerb, "show") || r.items[min(next, len(r.items)-1)].text == "one") {
			next++ // "hold this one: sled is cupped"
		}
		return next, r.nothingAfter(i) || r.isBreak(next) && r.items[i].word != "clear"
	}
	return next, false
}

// ofThing reports whether an order is of something else than a load from item i on:
// "undo the tape", "hold that thought", "hold the line".
func (r *reader) ofThing(i int) bool {
	if i+1 >= len(r.items) || r.isBreak(i+1) || r.items[i+1].kind != kindNone || r.items[i+1].amount != nil || !r.word(i, "the", "a", "my", "your", "his", "her", "that", "this") {
		return false
	}
	return !r.word(i+1, "one", "load", "loads", "last", "thing", "please", "pls", "now", "too", "again", "till", "til", "until", "for", "because", "cos", "cause", "as", "since", "up", "ok", "and", "is", "while", "at", "yet", "thanks", "mate", "so", "then", "today", "there", "here", "if", "in", "on", "s")
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

// pullsAt reads "pull 5 at 4pm".
func (r *reader) pullsAt(at int) bool {
	if !r.word(at, "pull", "pulled") {
		return false
	}
	refs, next := r.references(at + 1)
	if len(refs) != 1 {
		return false
	}
	k := r.clockBehind(next - 1)
	if k < 0 || r.amountsIn(k+1, len(r.items)) > 0 && !(r.word(at, "pulled") && r.isBreak(k+1) && r.within(k, len(r.items), kindNoun, "joint") >= 0) {
		return false // but "pulled 1 at 9:50, all joints closed, 1/16 hump" tells a finding
	}
	r.close(&Command{Verb: Out, Loads: refs}, next)
	return true
}

// clockBehind is the clock time of "5 at 4pm" and "5 @ 16:00" behind the number at item
// i; -1 where none stands there.
func (r *reader) clockBehind(i int) int {
	k := i + 1
	at := r.word(k, "at")
	if at {
		k++
	}
	if k >= len(r.items) || r.items[k].amount == nil || !at && r.items[k].amount.link != linkAt || r.items[k].amount.form != formPair && r.daySuffix(k) == "" {
		return -1
	}
	return k
}

// remade: the number in "make that 5 clear" is no load.
func (r *reader) remade(at int) bool {
	return r.habit.Follows && r.is(at-1, kindFix) && in(r.items[at-1].word, "make that", "make it", "change that to", "change it to") && r.is(at+1, kindVerb, "clear")
}

// measuredAgain: "measured it again, its only 1/32" corrects what was said; a check
// of a load tells two things or more.
func (r *reader) measuredAgain(at int) bool {
	if !r.habit.Follows || !r.word(at, "measured", "i measured", "we measured", "remeasured", "i checked") {
		return false
	}
	told := 0
	for k := at; k < len(r.items); k++ {
		if r.live(k) && !r.word(k+1, "times", "time") { // "measured again, 3 times"
			told++
		}
	}
	return r.opensWithin(at+1, min(at+5, len(r.items)), "again") && told == 1
}

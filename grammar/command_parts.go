package grammar

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// references reads load numbers from item i: "14", "29 and 30", "load 14",
// "#14". It returns the item behind them.
func (r *reader) references(i int) ([]int, int) {
	var refs []int
	for i < len(r.items) {
		it := &r.items[i]
		switch {
		case it.amount != nil && it.used && len(refs) > 0 && r.fixedBefore(i-1):
			i++ // it stands where the one before stood
		case it.amount != nil:
			n, ok := r.loadNumber(i)
			if !ok {
				return refs, i
			}
			if k := i - 1; len(refs) > 0 && r.fixedBefore(k) {
				last := len(refs) - 1 // "16, sorry, 17"
				if slices.Contains(refs, n) {
					last = 0 // "1 and 2, no, 2"
				}
				for _, was := range refs[last:] {
					if was != n {
						r.unuse(strconv.Itoa(was))
					}
				}
				refs = refs[:last]
			}
			refs = append(refs, n)
			if it.amount.unit != nil {
				return refs, i // the verb is the unit: "14 in"
			}
			i++
		case it.brk == '#' || r.is(i, kindVerb, "show") && it.word == "load" || it.word == "load" || it.word == "loads" && len(refs) == 0 || r.is(i, kindRole, "name") && (it.word == "no" || it.word == "nr" || it.word == "number"):
			i++
		case len(refs) > 0 && r.fixFollows(i):
			i++
		case len(refs) > 0 && (it.brk == ',' || it.brk == '+' || it.brk == '&' || it.word == "and") && i+1 < len(r.items) && r.items[i+1].amount != nil && !r.ofTheCheck(i+1):
			i++
		default:
			return refs, i
		}
	}
	return refs, i
}

// ofTheCheck: the number at item i is none of a load in "hold 1, 2 strips are short",
// "check 1, 6 pieces" and "amend 1, 55 wide".
func (r *reader) ofTheCheck(i int) bool {
	if r.is(i+1, kindAttr, "wide", "thick", "long", "tall") && !nounForm(r.items[i+1].word) {
		return true
	}
	if r.word(i+1, "on", "for") && r.word(i+2, "the") && (r.is(i+3, kindVacuum) || r.is(i+3, kindNoun, "bar", "strip", "mat")) {
		return true // "checked 1, 20 on the gauge"
	}
	return r.is(i+1, kindNoun, "strip") && isPlural(r.items[i+1].word) || r.word(i+1, "of") && r.word(i+2, "them", "these", "those")
}

// fixedBefore reports whether a word of correction stands right before item k+1.
func (r *reader) fixedBefore(k int) bool {
	for ; k >= 0 && r.isBreak(k); k-- {
	}
	return r.is(k, kindFix) || r.word(k, "no", "er", "um")
}

// fixFollows reports whether item i begins a correction of a load's number: ",
// sorry, 17".
func (r *reader) fixFollows(i int) bool {
	fixed := false
	for ; i < len(r.items) && r.items[i].amount == nil; i++ {
		switch {
		case r.is(i, kindFix), r.word(i, "no", "er", "um"):
			fixed = true
		case r.items[i].brk == ',' || r.items[i].brk == '-':
		default:
			return false
		}
	}
	return fixed && i < len(r.items) && (i+1 >= len(r.items) || !r.is(i+1, kindNoun) && !r.is(i+1, kindAttr))
}

// loadNumber takes a bare whole number, or one with "in" behind it, for a load.
func (r *reader) loadNumber(i int) (int, bool) {
	am := r.items[i].amount
	if am.minus || am.dead && r.isBreak(i+1) && i+1 < len(r.items) && r.items[i+1].brk == '-' || am.link == linkTimes || am.link == linkTo || am.link == linkAt || am.value == nil || !am.value.IsInt() || am.form != formInt && !r.spokenLoad(i) || am.plural {
		return 0, false
	}
	if am.unit != nil && (am.unitRaw != "in" || am.unit.Symbol != "in" || r.word(i+1, "one")) {
		return 0, false // "the 2 in one"
	}
	if r.hyphened(i) {
		return 0, false // "it came off the 4-sided planer"
	}
	if (r.word(i-1, "measured", "i measured", "counted") || r.is(i-1, kindVerb, "out")) && r.is(i+1, kindNoun, "strip", "panel") && isPlural(r.items[i+1].word) {
		return 0, false // "I measured 4 strips", "laid out 7 strips"
	}
	n := int(am.float())
	return n, n > 0 && n < 1_000_000
}

// hyphened reports whether a word is joined to the number at item i: "4-sided", "2-part".
func (r *reader) hyphened(i int) bool {
	k := i + 2
	return k < len(r.items) && r.items[i+1].brk == '-' && r.items[i+1].start == r.items[i].end && r.items[k].start == r.items[i+1].end && r.items[k].amount == nil && r.items[k].kind == kindNone
}

// spokenLoad: "sixteen is out". Small numbers in words count things.
func (r *reader) spokenLoad(i int) bool {
	n, ok := r.spokenNumber(i)
	if ok && n > 0 && r.is(i-1, kindVerb, string(Show)) && r.word(i-1, "load") && r.is(i+1, kindVerb, string(Check), string(In), string(Out), string(Hold), string(Clear)) {
		return true // "load three checked"
	}
	return ok && n > 10 && i == 0 && (r.word(1, "is") || r.is(1, kindVerb, "in", "out"))
}

// unitsBehind reports whether measures with units stand behind item i: "54 in bag
// 10 ft long" is no load going in.
func (r *reader) unitsBehind(i int) bool {
	for j := i + 1; j < len(r.items); j++ {
		if _, _, ok := r.agoAt(j); ok {
			continue
		}
		if am := r.items[j].amount; am != nil && am.unitRaw == "in" && (r.isBreak(j-1) || r.word(j-1, "and", "then")) && r.is(r.next(j), kindNoun, "press", "bag", "frame") {
			continue // "14 in press 1, 15 in press 2"
		} else if am != nil && (am.unit != nil || am.link == linkTimes) {
			return true
		}
	}
	return false
}

func (r *reader) nothingAfter(i int) bool {
	for j := i + 1; j < len(r.items); j++ {
		if r.items[j].brk == 0 && !r.idle(j) {
			return false
		}
	}
	return true
}

// quiet reports whether nothing between from and to names a part or a number
// other than a load's.
func (r *reader) quiet(from, to int) bool {
	for i := from; i < to && i < len(r.items); i++ {
		it := &r.items[i]
		if it.kind == kindNoun && it.id != "press" || it.amount != nil && !it.used {
			if n, ok := 0, false; it.amount != nil {
				if n, ok = r.loadNumber(i); ok && n > 0 {
					continue
				}
			}
			return false
		}
	}
	return true
}

// justBefore returns the loads named right before item i: "… 14 on hold".
func (r *reader) justBefore(i int) []int {
	var refs []int
	for j := i - 1; j >= 0; j-- {
		it := &r.items[j]
		switch {
		case it.amount != nil:
			n, ok := r.loadNumber(j)
			if !ok || it.amount.unit != nil {
				return refs
			}
			refs = append([]int{n}, refs...)
		case it.word == "and" && len(refs) > 0, it.word == "is", it.word == "s", it.word == "are", it.word == "was", it.word == "load", r.is(j, kindVerb, "show"):
		default:
			return refs
		}
	}
	return refs
}

// title reads what a load is posted as.
func (r *reader) title(i int) string {
	for j := i; j < len(r.items) && j < i+4; j++ {
		if !r.word(j, "as") && r.items[j].word != "post as" {
			continue
		}
		end := j + 1
		for end < len(r.items) && !r.items[end].used && !r.isStop(end) && !(r.items[end].brk == ',' && end+1 < len(r.items) && r.items[end+1].used) && r.items[end].brk != ':' {
			r.items[end].used = true
			end++
		}
		if end == j+1 {
			return ""
		}
		for end > j+2 && r.word(end-1, "please", "pls", "plz", "thanks", "thx", "ta", "cheers", "for", "and", "with") {
			end--
		}
		if end < len(r.items) && r.items[end].brk == ')' && strings.ContainsAny(r.text[r.items[j+1].start:], ";'\"<>") {
			r.rest(j + 1)
			return strings.TrimSpace(r.text[r.items[j+1].start:]) // no name of a panel: as typed
		}
		return trimmed(r.textOf(j+1, end-1))
	}
	return ""
}

// rest is the text from item i on, used up.
func (r *reader) rest(i int) string {
	for i < len(r.items) && (r.items[i].brk != 0 && strings.IndexByte(",.:;-", r.items[i].brk) >= 0 && r.items[i].amount == nil) {
		i++
	}
	if i >= len(r.items) || r.allUsed(i) {
		return ""
	}
	for j := i; j < len(r.items); j++ {
		r.items[j].used = true
	}
	from := r.items[i].start
	if tagged := strings.LastIndexByte(r.text[:from], '<'); tagged >= 0 && tagged+tag(r.text[tagged:]) == from {
		from = tagged // as typed
	}
	return trimmed(r.text[from:])
}

// allUsed reports whether nothing but marks is left from item i on.
func (r *reader) allUsed(i int) bool {
	for j := i; j < len(r.items); j++ {
		if !r.items[j].used && (r.items[j].brk == 0 || r.items[j].amount != nil) {
			return false
		}
	}
	return true
}

// usedUpTo uses up the command's own items; a number among them that names none
// of its loads is left unused.
func (r *reader) usedUpTo(c *Command, next int) {
	for i := 0; i < next && i < len(r.items); i++ {
		it := &r.items[i]
		if it.amount != nil && !it.used {
			n, ok := r.loadNumber(i)
			if !ok || n != c.From && !slices.Contains(c.Loads, n) {
				r.unuse(it.text)
			}
		}
		it.used = true
	}
}

// commit takes the command and leaves the items from next on to be read.
func (r *reader) commit(c *Command, next int) {
	next = r.otherLoad(c, next)
	r.usedUpTo(c, next)
	r.phrase.Command = c
	if c.Verb == Check || c.Verb == Correct {
		r.holdBehind(c, next)
	}
	r.details(c, next)
	r.phrase.Asks = []Ask{{About: Book}}
}

// close takes the command; what follows is its note.
func (r *reader) close(c *Command, next int) {
	next = r.otherLoad(c, next)
	r.usedUpTo(c, next)
	r.details(c, next)
	switch c.Verb {
	case Hold, Clear, Uncheck, Result, Drop, Out, NotDone, In, Undo:
		c.Note = cmp.Or(c.Note, r.note(next))
		if c.Verb == Result && r.judges(next-1) && (c.Note == "" || next < len(r.items) && r.items[next].brk != ':') { // the verb is the finding
			c.Note = trimmed(r.text[r.items[next-1].start:])
		}
	}
	r.phrase.Command = c
	r.phrase.Asks = []Ask{{About: Book}}
}

// judges reports whether item i is a verb that tells a result by itself: "14
// failed", "14 came out well".
func (r *reader) judges(i int) bool {
	if !r.is(i, kindVerb, string(Result)) {
		return false
	}
	word := r.items[i].word
	return word == "failed" || word == "delaminated" || strings.HasPrefix(word, "came out ")
}

// note is what is said behind the verb, without the words that were read.
func (r *reader) note(next int) string {
	for next < len(r.items) && (r.items[next].used || r.word(next, "now", "anyway", "is", "at", "because", "cause", "cos", "since", "please", "thanks", "again", "b", "reason") || next < len(r.items) && r.items[next].brk == '/' || r.word(next, "c") && r.word(next-2, "b")) {
		r.items[next].used = true
		next++
	}
	return r.rest(next)
}

// details reads a press, a time, "anyway", a glue lot and a job number.
func (r *reader) details(c *Command, from int) {
	for i := from; i < len(r.items); i++ {
		it := &r.items[i]
		if c.Verb == In && i > from && it.amount != nil && it.amount.unitRaw == "in" && (r.isBreak(i-1) || r.word(i-1, "and", "then")) && r.is(r.next(i), kindNoun, "press", "bag", "frame") {
			break // "14 in press 1, 15 in press 2"
		}
		if c.Press != "" && r.anotherGoesIn(i) {
			break
		}
		switch {
		case it.word == "anyway" && (c.Verb == In || c.Verb == Check):
			c.Anyway, it.used = true, true
		case (r.is(i, kindNoun, "press", "bag", "frame") || r.word(i, "in press")) && i+1 < len(r.items) && (c.Verb == In || c.Verb == Out):
			if nx := &r.items[i+1]; nx.amount != nil && nx.amount.bare() && nx.amount.form <= formWords && nx.amount.form != formPair {
				c.Press, it.used, nx.used = nx.text, true, true
			} else if nx.kind == kindNone && nx.brk == 0 && len(nx.word) == 1 || r.namesPress(i+1) {
				c.Press, it.used, nx.used = nx.text, true, true
			}
		case (c.Verb == In || c.Verb == Out) && c.Press == "" && r.is(i, kindNoun, "press", "bag", "frame") && r.word(i-1, pressNames...) && i-1 >= from:
			c.Press, it.used, r.items[i-1].used = r.items[i-1].text, true, true // "1 in the big press"
		case r.word(i, "noon", "midday") && r.word(i-1, "at") && c.Time == "" && (c.Verb == In || c.Verb == Out):
			c.Time, c.Clock, it.used = "12:00", it.text, true
		case (c.Verb == In || c.Verb == Out) && (r.longAgo(c, i) || r.tookHalfPast(c, i) || r.digitsAt(c, i)):
		case it.amount != nil && (it.amount.form == formPair || !it.used && r.daySuffix(i) != "" && r.daySuffix(i) != " ") && (c.Verb == In || c.Verb == Out) && !r.hourBefore(i+1):
			r.at(c, i)
		case (c.Verb == In || c.Verb == Out) && r.quarterPast(c, i):
		case (c.Verb == In || c.Verb == Out) && r.hourAlone(i):
			for k := i - 1; k <= r.looseBehind(i); k++ {
				if k != i && k >= from && (k > i || r.word(k, "at", "around", "about", "since", "roughly", "approx")) {
					r.items[k].used = true
				}
			}
			am := it.amount
			h, _ := plainWhole(am)
			am.form, am.pair, am.value = formPair, [2]int{h, 0}, nil
			r.at(c, i)
		}
	}
	r.lots(anywhere)
}

// pressNames are what shops call one of several presses.
var pressNames = strings.Fields(`left right big small large little long short wide narrow north south east west front back old new upper lower top bottom main second third middle
	red blue green black white yellow hot cold heated`)

// namesPress reports whether item i, right behind "press", is its name and not
// the beginning of something else: "2 in press left".
func (r *reader) namesPress(i int) bool {
	return r.word(i, pressNames...) && !r.word(i+1, "now") && (r.isBreak(i+1) || r.word(i+1, "at", "anyway", "since", "and") || r.items[i+1].amount != nil && r.items[i+1].amount.form == formPair)
}

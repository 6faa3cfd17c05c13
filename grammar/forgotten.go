package grammar

import "presshand/engine/unit"

// forgets are words that take back what was said before them, where they stand alone.
var forgets = wordSet(`forget ignore disregard nvm nevermind scrap scratch cancel strike`)

// killForgotten marks what a later message says and takes back at once: "at 20? no,
// scratch that. bar 1 1/2". A number that stands alone behind it is a correction.
func (r *reader) killForgotten() {
	if !r.habit.Follows || r.amountsIn(0, len(r.items)) < 2 {
		return
	}
	for i := range r.items {
		if i == 0 || !r.isBreak(i-1) || r.items[i-1].brk == ',' {
			continue
		}
		end := r.takesBack(i)
		if end < 0 || r.amountsIn(0, i) == 0 || !r.tellsMore(end) {
			continue
		}
		for k := 0; k < end; k++ {
			it := &r.items[k]
			if it.amount != nil {
				it.amount.dead = true
			} else if forgets[it.word] || it.kind != kindNone && !r.isBreak(k) {
				it.meaning, it.used = meaning{}, true
			}
		}
	}
}

// takesBack is the item behind "no wait forget that." at item i; -1 where something
// else is said with it.
func (r *reader) takesBack(i int) int {
	back := false
	for ; i < len(r.items); i++ {
		it := &r.items[i]
		switch {
		case it.amount != nil:
			return -1
		case forgets[it.word] || in(it.word, "never mind", "scratch that", "strike that", "forget about", "scratch the"):
			back = true
		case r.isBreak(i):
			if back {
				return i + 1
			}
			if it.brk != ',' {
				return -1
			}
		case r.is(i, kindFix), r.word(i, "no", "wait", "ok", "okay", "oh", "ah", "that", "it", "all", "this", "i", "said", "just", "nah", "hm", "hmm", "about", "one"):
		default:
			return -1
		}
	}
	return -1
}

// tellsMore reports whether a part is named behind item i, with a number.
func (r *reader) tellsMore(i int) bool {
	part := false
	for k := i; k < len(r.items); k++ {
		part = part || r.is(k, kindNoun) || r.is(k, kindAttr) || r.is(k, kindVacuum)
	}
	return part && r.amountsIn(i, len(r.items)) > 0
}

// amendsFrom reads the number at item j for whatever the thread has at that of item
// i: "bar goes from 1 1/4 to 1 1/2", "gauge dropped from 25 to 22".
func (r *reader) amendsFrom(i, j int) bool {
	a, b := r.items[i].amount, r.items[j].amount
	n := r.next(j)
	if a.value == nil || b.value == nil || !a.bare() || b.unit != nil && !b.is(unit.Distance) || r.is(n, kindNoun) || r.is(n, kindAttr) || r.is(n, kindWood) {
		return false
	}
	from, _ := r.clause(i)
	if r.within(from, i, kindAir) >= 0 || r.within(from, i, kindGlue) >= 0 || r.within(from, i, kindNoun, "cup", "bow", "gap", "leak") > r.within(from, i, kindVacuum) {
		return false
	}
	by := r.amendment(j)
	by.Was = a.float()
	r.items[i].used, r.items[j].used = true, true
	r.unuse(r.items[i].text)
	r.phrase.Amends = append(r.phrase.Amends, by)
	return true
}

// moved reports whether the word at item i, past "down" and "up", says that something
// is no longer what it was; a gauge that falls in a time leaks.
func (r *reader) moved(i int) bool {
	if r.word(i, "down", "up", "back", "it", "them") {
		i--
	}
	if r.word(i, "went", "gone", "moved") && r.said(unit.Lasting) && r.mentions(kindVacuum, "gauge", "vacuum", "pull") {
		return false // "the gauge went from 25 to 23 in 8 minutes"
	}
	if r.word(i, "went", "gone", "switched", "changed", "moved", "swapped") {
		return true
	}
	shifts := r.word(i, "goes", "go", "going", "fell", "fallen", "crept", "creeping", "climbed", "rose", "sank", "slid", "dipped", "slipped", "sagged", "cut", "bumped", "dropped", "came", "drifted", "raised", "lowered", "change", "switch", "move", "swap") ||
		r.is(i, kindVerb, string(Drop)) || r.is(i, kindNoun, "leak") || r.is(i, kindRole, "vary")
	return shifts && r.habit.Follows && !r.said(unit.Lasting) && r.opens("overnight", "hour", "minutes") < 0 && r.amountsIn(0, len(r.items)) < 4
}

// notButBare reads "not 24, 30" and "the strips aren't 20 either, 18".
func (r *reader) notButBare() {
	for i := 1; i+2 < len(r.items); i++ {
		am := r.items[i].amount
		if am == nil || am.value == nil || !am.bare() || r.items[i].used || !r.is(i-1, kindNot, "not") {
			continue
		}
		j := i + 1
		for r.word(j, "either", "anymore", "now", "any", "more") {
			j++
		}
		if j++; j >= len(r.items) || r.items[j-1].brk != ',' || !r.free(j) || r.items[j].amount.value == nil || j+1 < len(r.items) && !r.isBreak(j+1) {
			continue
		}
		a := r.amendment(j)
		a.Was = am.float()
		r.items[i].used, r.items[j].used = true, true
		r.unuse(r.items[i].text)
		r.phrase.Amends = append(r.phrase.Amends, a)
	}
}

// uncut are words for what is still to be taken off.
var uncut = wordSet(`before rough oversize untrimmed gross uncut nominal`)

// killUncut: "500 is before I cut it, it's 480 finished" leaves the second; in a thread
// that takes the place of the first.
func (r *reader) killUncut() {
	if !r.says("is", "was") {
		return
	}
	for i := range r.items {
		if !r.live(i) || !r.word(i+1, "is", "was") || i+2 >= len(r.items) || !uncut[r.items[i+2].word] {
			continue
		}
		j := r.nextLive(i+3, len(r.items))
		if j < 0 || !alike(r.items[i].amount, r.items[j].amount) || r.is(r.next(j), kindAttr) || r.is(r.next(j), kindNoun) {
			continue
		}
		r.items[i].amount.dead = true
		if !r.habit.Follows || !r.word(j-1, "its", "is", "now", "theyre", "to") {
			continue
		}
		a := r.amendment(j)
		a.Was = r.items[i].amount.float()
		r.items[j].used = true
		for k := j + 1; k < len(r.items); k++ {
			if r.free(k) && r.items[k].amount.equals(r.items[j].amount.value) {
				r.items[k].used = true // "use 480"
			}
		}
		r.phrase.Amends = append(r.phrase.Amends, a)
	}
}

// cutDown: "cut the bar down from 1 1/4 to 1" leaves the second, whatever it is of. The
// "down" is at item k.
func (r *reader) cutDown(k int) bool {
	return r.word(k, "down", "back") && r.opensWithin(max(k-4, 0), k, "cut", "planed", "ripped", "sanded", "trimmed", "took", "brought", "sawed", "milled", "resawed", "resawn")
}

// thisTime reports whether words around item j say that it holds for once.
func (r *reader) thisTime(j int) bool {
	for k := j - 1; k >= 0 && k >= j-5 && r.items[k].amount == nil; k-- {
		if r.word(k, "this", "today", "now", "todays", "tonight") {
			return true
		}
	}
	return r.word(j+1, "today", "now", "tonight") || r.word(j+1, "this") && r.word(j+2, "time")
}

// oldOneHad: of "7 strips where the old panel had 5" the second is not of this one.
func (r *reader) oldOneHad() {
	if !r.says("old", "last", "previous", "other") {
		return
	}
	for i := 3; i < len(r.items); i++ {
		if r.free(i) && r.items[i].amount.bare() && r.word(i-1, "had", "took", "used") && r.items[i-2].amount == nil && !r.isBreak(i-2) && r.word(i-3, "old", "last", "previous", "other") && (i+1 >= len(r.items) || r.isBreak(i+1)) {
			r.items[i].amount.dead = true
		}
	}
}

// otherDays lets what is told of another day's work give way: "last month's job was 8
// strips. this one is 5".
func (r *reader) otherDays() {
	if !r.says("this", "today", "todays") {
		return
	}
	here := false
	for i := range r.items {
		here = here || r.word(i, "this") && r.word(i+1, "one", "time", "job", "panel", "batch", "week") || r.word(i, "today", "todays")
	}
	if !here {
		return
	}
	for i := range r.items {
		other := r.word(i, "last", "next") && r.word(i+1, "week", "weeks", "month", "months", "year", "years", "time", "one", "job", "batch") || r.word(i, "tomorrow", "tomorrows", "yesterday", "yesterdays") || in(r.items[i].word, "last time", "last week", "next week", "next time", "last month", "next month")
		if !other {
			continue
		}
		_, to := r.clause(i)
		for k := i + 1; k < to; k++ {
			if am := r.items[k].amount; am != nil && (am.is(unit.Pressing) || r.countedAt(k) || r.is(r.next(k), kindNoun, "bar", "strip")) {
				am.hearsay = true
			}
		}
	}
}

// saidOther: "I said beech but it is ash" leaves the second wood or glue.
func (r *reader) saidOther() {
	if !r.says("said", "wrote", "typed", "told") || !r.says("but", "and") {
		return
	}
	for i := 1; i+2 < len(r.items); i++ {
		if !r.word(i-1, "said", "wrote", "typed", "told") {
			continue
		}
		kind := r.choiceOf(i)
		if kind == "" || !r.word(i+1, "but") && !(r.word(i+1, "and", "when") && r.word(i+2, "its", "it", "is", "meant", "i")) {
			continue
		}
		for j := i + 2; j < len(r.items) && j < i+7 && !r.isStop(j); j++ {
			if r.choiceOf(j) == kind && r.items[j].word != r.items[i].word {
				r.unuse(r.textOf(i, i))
				r.items[i] = item{start: r.items[i].start, end: r.items[i].end, used: true}
				return
			}
		}
	}
}

// partBefore is what the part right before item i can have: "the bar is 3/4 not 1".
func (r *reader) partBefore(i int) []unit.Field {
	k := i - 1
	if r.word(k, "is", "was") {
		k--
	}
	if !r.is(k, kindNoun) || r.is(k, kindNoun, "panel", "face") {
		return nil
	}
	switch f := bareFields[r.items[k].id]; f {
	case "":
		return nil
	case unit.BarHeight:
		return []unit.Field{f, unit.BarWidth}
	default:
		return []unit.Field{f}
	}
}

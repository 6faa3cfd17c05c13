package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Hours of a day that are told by their shape, and those that are of another day.

// hoursBare reads "2 presses 45 min each 8 to 5" as the start and the end of a day that is
// planned: only hours run down from one to the other.
func (r *reader) hoursBare(planned bool) {
	if !planned {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if r.items[i].amount == nil || r.items[i].amount.link != linkTo && !r.word(i-1, "till", "til", "until") {
			continue
		}
		a := i - 1
		if r.items[i].amount.link != linkTo {
			a--
		}
		if r.has(unit.StartTime) || r.has(unit.Deadline) || !r.bareHour(a) || !r.bareHour(i) || r.items[a].amount.link != linkNone || !r.isBreak(i+1) || r.atLunch(a) {
			continue
		}
		from, to := r.items[a].amount.float(), r.items[i].amount.float()
		if from < 5 || from > 11 || to > 7 || to >= from {
			continue
		}
		start, ok := clockOf(r.items[a].amount, "")
		end, right := clockOf(r.items[i].amount, "pm")
		if ok && right {
			r.say(a, unit.StartTime, unit.Word(start))
			r.say(i, unit.Deadline, unit.Word(end))
		}
	}
}

// bareHour reports whether the number at item i can be an hour and nothing says that it is one.
func (r *reader) bareHour(i int) bool { return r.free(i) && r.hourOfDay(i) && !r.pairOrSuffix(i) }

// ofOtherDay: where two days are named, as in "by friday 4pm, start wednesday at 9", the
// plan begins on the one that starts, and the hour of the other is none of that day.
func (r *reader) ofOtherDay(i int) bool {
	if !r.dayBeside(i) || r.startsThatDay(i) {
		return false
	}
	first := ""
	for k := range r.items {
		if w := r.items[k].word; r.items[k].amount == nil && weekdays[w] && w != "tomorrow" && w != "todays" && w != "tomorrows" {
			if first != "" && w != first {
				return true
			}
			first = w
		}
	}
	return false
}

// startsThatDay: "start wednesday at 9", "start on tue 7:30", "begin monday morning at 8".
func (r *reader) startsThatDay(i int) bool {
	k := i - 1
	for r.word(k, "at", "on", "morning", "around", "this", "next", "is") || k >= 0 && r.items[k].amount == nil && weekdays[r.items[k].word] {
		k--
	}
	return r.is(k, kindRole, "start") && !r.word(k, "from") || r.is(k, kindAsk, "schedule") && r.word(k, "start")
}

// dayBeside reports whether a weekday stands right before the hour at item i or behind it.
func (r *reader) dayBeside(i int) bool {
	k := i - 1
	for r.word(k, "at", "by", "before", "around") {
		k--
	}
	after := r.suffixAt(i) + 1
	for r.word(after, "on") {
		after++
	}
	day := func(k int) bool {
		return k >= 0 && k < len(r.items) && r.items[k].amount == nil && weekdays[r.items[k].word]
	}
	return day(k) || day(after)
}

// doneByHour: "how many can i do by 4" in the thread of a day's plan.
func (r *reader) doneByHour(i int) bool {
	if !r.habit.Follows {
		return false
	}
	n, whole := r.items[i].amount.whole()
	if !whole || n < 1 || n > 12 || !r.items[i].amount.bare() || !r.word(i-1, "by", "before") || !r.isBreak(i+1) {
		return false
	}
	from, _ := r.clause(i)
	return r.amountsIn(from, i) == 0 && (r.opensWithin(from, i, "do", "done", "get", "finish", "finished", "out", "make", "through", "run") || r.within(from, i, kindAsk, "schedule") >= 0) && r.within(from, i, kindNoun, "strip", "bar") < 0
}

// behindBut gives up the start that was told before "but nobody's in till 7:30", which
// stands at item i.
func (r *reader) behindBut(i int) {
	from, _ := r.sentence(i)
	for k := range r.bound {
		if b := &r.bound[k]; b.fact.Field == unit.StartTime && b.from >= from && b.from < i && r.opensWithin(b.from, i, "but") {
			b.weak = true
		}
	}
}

// untilNot: "the glue room isn't warm til 7:30" tells when the day begins. The "til" stands
// at item j.
func (r *reader) untilNot(j int) bool {
	from, _ := r.clause(j)
	for k := from; k < j; k++ {
		if r.word(k, "but", "and", "so") {
			from = k
		}
	}
	return r.word(j, "until", "till", "til") && r.noneWithin(from, j) && !r.opensWithin(from, j, "stay", "wait", "work", "keep", "hang") && r.morningAt(j+1)
}

// morningAt reports whether the hour at item i is one at which work begins.
func (r *reader) morningAt(i int) bool {
	const earliest = 5
	return r.beforeNoon(i) && r.items[i].amount.pair[0] >= earliest && r.daySuffix(i) != "pm" || r.free(i) && r.daySuffix(i) == "am"
}

// pressAtHour: "the second press frees up at 9" is no size.
func (r *reader) pressAtHour(i int) bool {
	from, _ := r.clause(i)
	return r.items[i].amount.bare() && r.word(i-1, "at", "from", "till", "until", "til", "after", "up at") && r.hourOfDay(i) && r.within(from, i, kindNoun, "press", "bag", "frame") >= 0 && r.opensWithin(from, i, "free", "frees", "freed", "opens", "up", "back", "available", "ready", "again", "empty", "busy", "tied", "repaired", "fixed")
}

// bareByHour: "how many 24x48 by 4 with two presses start 8" sets the hour apart from the
// size by its "by", where the day's start is told.
func (r *reader) bareByHour(i int) bool {
	const last = 7
	n, whole := r.items[i].amount.whole()
	size := r.items[i-1].amount
	if !whole || n < 1 || n > last || size == nil || size.link != linkTimes || r.items[i-2].amount == nil || r.items[i-2].amount.link != linkNone || !strings.Contains(r.text[r.items[i-1].end:r.items[i].start], "by") || strings.Contains(r.text[r.items[i-2].end:r.items[i-1].start], "by") {
		return false
	}
	what := i - 3
	if r.is(what, kindNoun, "panel") {
		what--
	}
	howMany := what >= 0 && strings.HasSuffix(strings.ToLower(r.text[:r.items[what].end]), "how many") // else it may be a thickness
	return howMany && r.mentions(kindRole, "start", "deadline", "hours") && r.mentions(kindNoun, "press", "bag", "frame") && !r.is(r.next(i), kindAttr) && !r.mentions(kindNoun, "strip", "bar")
}

// byHour takes the hour behind a size for the deadline; see bareByHour.
func (r *reader) byHour(i int) {
	r.items[i].amount.link = linkNone
	clock, ok := clockOf(r.items[i].amount, "pm")
	if !ok || r.has(unit.Deadline) {
		r.items[i].amount.dead = true
		return
	}
	r.say(i, unit.Deadline, unit.Word(clock))
}

// plainHours: in "from 7 until 16 hours" the second number has no unit of time.
func (r *reader) plainHours() {
	for i := 2; i < len(r.items); i++ {
		am := r.items[i].amount
		if am != nil && am.link == linkTimes && am.bare() && r.bareByHour(i) {
			r.byHour(i)
			continue
		}
		if am == nil || am.unit == nil || am.unit.Symbol != "h" || !in(am.unitRaw, "hours", "h", "hrs") {
			continue
		}
		a := i - 1
		for r.word(a, "until", "till", "til", "to") {
			a--
		}
		n, whole := plainWhole(am)
		if lasts := r.is(a-2, kindRole, "clamp") || r.word(a-2, "stays", "cure", "cures", "takes", "needs"); lasts && r.word(a-1, "from", "between") {
			continue // "leave it in from 12 to 16 hours"
		}
		if whole && n > 12 && n <= 24 && r.free(a) && r.items[a].amount.bare() && (r.word(a-1, "from") || r.hoursRole(a-1)) && (a < i-1 || am.link == linkTo) {
			am.unit, am.unitRaw = nil, ""
		}
	}
}

// hourSaid reports whether an amount, or a word beside one, may be an hour's.
func (r *reader) hourSaid() bool {
	if r.means(kindRole, "am", "pm") || r.says("half", "quarter", "past", "away", "start", "sharp", "prompt") || r.says(meals...) {
		return true
	}
	for i := range r.items {
		if am := r.items[i].amount; am != nil && (am.form == formPair || am.form == formWords) {
			return true
		}
	}
	return false
}

// meals are what a clock time is told of that is no hour of work.
var meals = []string{"lunch", "break", "breaks", "smoko", "dinner", "breakfast", "coffee", "tea", "brew", "cuppa", "elevenses", "meeting", "dentist", "doctor", "doctors"}

package grammar

import (
	"strconv"

	"presshand/engine/unit"
)

// workHours reads when the crew is there: "we work 8 to 5", "shop hours 7:30 to
// 16:00, lunch 12 to 12:30", "we work 8 to 12 and 1 to 5".
func (r *reader) workHours() {
	r.plainHours()
	if !r.means(kindRole, "hours") && !(r.means(kindAsk, "schedule") && r.says("hours", "shift")) {
		return
	}
	for i := range r.items {
		if !r.hoursRole(i) {
			continue
		}
		a := r.rangeAfter(i)
		if a.from < 0 {
			continue
		}
		var shifts []shift
		first, last := a, a
		for a.from >= 0 {
			s, ok := r.shiftOf(a, shifts)
			if !ok {
				r.refuse(unit.WorkHours, r.textOf(first.from, a.end), "hours of one day, such as 8 to 5 or 7:30 to 16:00")
				r.useRange(a)
				return
			}
			shifts = append(shifts, s)
			r.useRange(a)
			last = a
			if a = (span{-1, -1, -1}); r.word(last.end+1, "and", "then") || r.items[min(last.end+1, len(r.items)-1)].brk == ',' {
				a = r.rangeAfter(last.end + 1)
			}
		}
		text := r.textOf(i, last.end)
		shifts, off := r.withoutBreak(shifts)
		if off != "" {
			text += ", " + off
		}
		r.items[i].used = true
		r.bound = append(r.bound, binding{Fact{Field: unit.WorkHours, Value: unit.Word(written(shifts)), Text: text}, i, false})
	}
}

// A span is a range of clock times by its items: the two amounts, and the last
// item that belongs to it.
type span struct{ from, to, end int }

// A shift is a stretch of a day, its ends "07:30".
type shift struct{ from, to string }

func written(shifts []shift) string {
	text := ""
	for i, s := range shifts {
		if i > 0 {
			text += ", "
		}
		text += s.from + "-" + s.to
	}
	return text
}

// hoursRole reports whether item i says that the crew's hours follow.
func (r *reader) hoursRole(i int) bool {
	return r.is(i, kindRole, "hours") || r.is(i, kindAsk, "schedule") && r.word(i, "hours", "shift")
}

// rangeAfter finds the range of clock times that follows item i with nothing but
// small words between.
func (r *reader) rangeAfter(i int) span {
	none := span{-1, -1, -1}
	j := i + 1
	for j < len(r.items) && j <= i+4 && r.items[j].amount == nil && (r.word(j, "from", "between", "are", "is", "at", "the", "its", "again") || r.items[j].brk == ':' || r.idle(j)) {
		j++
	}
	if !r.clockAt(j) {
		return none
	}
	k := r.suffixAt(j) + 1
	for k < len(r.items) && (r.word(k, "to", "till", "til", "until", "through", "thru", "and", "at") || r.items[k].brk == '-') {
		k++
	}
	if !r.clockAt(k) || k == r.suffixAt(j)+1 && r.items[k].amount.link != linkTo {
		return none
	}
	if next := r.next(k); r.namesThing(k) || r.is(next, kindAsk) && r.items[next].word == "loads" {
		return none
	}
	return span{j, k, r.suffixAt(k)}
}

// clockAt reports whether the amount at item i can be a clock time.
func (r *reader) clockAt(i int) bool {
	if !r.free(i) || r.items[i].amount.unit != nil {
		return false
	}
	_, ok := clockOf(r.items[i].amount, "")
	return ok
}

func (r *reader) useRange(a span) {
	for k := a.from; k <= a.end; k++ {
		r.items[k].used = true
	}
}

// shiftOf reads a range as a shift that follows those before it. Without a.m. or
// p.m. an end is after its start, and small hours are in the afternoon.
func (r *reader) shiftOf(a span, before []shift) (shift, bool) {
	first, second := r.daySuffix(a.from), r.daySuffix(a.to)
	from, okF := clockOf(r.items[a.from].amount, first)
	to, okT := clockOf(r.items[a.to].amount, second)
	if !okF || !okT {
		return shift{}, false
	}
	earliest := "05:00"
	if len(before) > 0 {
		earliest = before[len(before)-1].to
	}
	if first != "am" && first != "pm" && from < earliest && from < "12:00" && !r.zeroed(a.from) {
		from = afternoon(from)
	}
	if second != "am" && second != "pm" && to <= from && to < "12:00" {
		to = afternoon(to)
	}
	return shift{from, to}, from < to && (len(before) == 0 || from >= earliest)
}

// zeroed reports whether a clock time was written with a nought in front: 03:30.
func (r *reader) zeroed(i int) bool { return r.items[i].text != "" && r.items[i].text[0] == '0' }

// withoutBreak takes a break out of the shift that it lies in, and returns it as
// typed: "lunch 12 to 1".
func (r *reader) withoutBreak(shifts []shift) (rest []shift, off string) {
	for i := range r.items {
		if !r.word(i, "lunch", "dinner", "break", "breaks", "lunchtime", "siesta") {
			continue
		}
		a := r.rangeAfter(i)
		if a.from < 0 {
			continue
		}
		b, ok := r.shiftOf(a, nil)
		for k, s := range shifts {
			if ok && s.from < b.from && b.to < s.to {
				r.useRange(a)
				r.items[i].used = true
				rest = append(append(append(rest, shifts[:k]...), shift{s.from, b.from}, shift{b.to, s.to}), shifts[k+1:]...)
				return rest, r.textOf(i, a.end)
			}
		}
	}
	return shifts, ""
}

// overnight reads whether a press may hold a load over night: "nothing stays in
// the press overnight", "they can stay in overnight".
func (r *reader) overnight() {
	if !r.says("overnight", "night", "nights", "over night", "at night") {
		return
	}
	for i := range r.items {
		if !r.word(i, "overnight") && !(r.word(i, "night", "nights") && (r.word(i-1, "over", "the", "at") || r.is(i-1, kindNot)) || r.word(i, "over night", "at night")) {
			continue
		}
		from, to := r.clause(i)
		no, yes := -1, -1
		for k := from; k < min(to, i+3); k++ {
			switch {
			case r.is(k, kindNot) || r.word(k, "nothing", "nobody", "empty"):
				no = k
			case r.word(k, "can", "may", "ok", "okay", "fine", "allowed"):
				yes = k
			}
		}
		switch asks := to < len(r.items) && r.items[to].word == "?"; {
		case no >= 0 && !(asks && (r.is(from, kindAsk, "why") || !r.word(no, "nothing", "nobody", "no", "not", "none", "without", "empty"))):
			r.items[no].used = true
			r.say(i, unit.Overnight, unit.Word("no"))
		case no < 0 && yes >= 0 && !asks:
			r.say(i, unit.Overnight, unit.Word("yes"))
		}
	}
}

// shortestDay is how many hours "from 7 to 15:30" has at least; less is when something may
// begin. Our estimate.
const shortestDay = 4

// hoursIn is how many hours lie between two times of day, in whole hours.
func hoursIn(from, to string) int {
	a, _ := strconv.Atoi(from[:2])
	b, _ := strconv.Atoi(to[:2])
	return b - a
}

// betweenHours reads "3 loads between 7 am and 3:30 pm", "from 7 to 15:30" as the start and
// the end of a day.
func (r *reader) betweenHours(planned bool) {
	if !planned || !r.says("between", "from") || r.has(unit.StartTime) || r.has(unit.Deadline) {
		return
	}
	for i := range r.items {
		a := i + 1
		if !r.word(i, "between") && !(r.is(i, kindRole, "start") && r.word(i, "from")) || !r.free(a) || r.has(unit.StartTime) || r.has(unit.Deadline) {
			continue
		}
		and := r.suffixAt(a) + 1
		b := and + 1
		if and < len(r.items) && r.items[and].amount != nil && r.items[and].amount.link == linkTo {
			b = and
		}
		if b > and && !r.word(and, "and", "&", "to", "till", "til", "until") || !r.hourOfDay(a) || !r.hourOfDay(b) || !r.pairOrSuffix(a) && !r.pairOrSuffix(b) && !(r.items[a].text[0] == '0' && len(r.items[b].text) == 4) {
			continue
		}
		from, ok := clockOf(r.items[a].amount, r.daySuffix(a))
		to, right := clockOf(r.items[b].amount, r.daySuffix(b))
		if right && to <= from && r.daySuffix(b) == "" {
			to = afternoon(to)
		}
		if !ok || !right || to <= from || r.is(i, kindRole, "start") && (hoursIn(from, to) < shortestDay || r.is(i-1, kindRole, "start") || r.word(i-1, "anywhere", "start", "starts", "starting")) {
			continue
		}
		r.items[r.suffixAt(a)].used, r.items[r.suffixAt(b)].used = true, true
		r.say(a, unit.StartTime, unit.Word(from))
		r.say(b, unit.Deadline, unit.Word(to))
	}
}

// hourOfDay reports whether the number at item i can be a clock time: 7:30, 7 am, 7.
func (r *reader) hourOfDay(i int) bool {
	if !r.free(i) || r.pairOrSuffix(i) {
		return r.free(i)
	}
	n, whole := r.items[i].amount.whole()
	if whole && n >= 100 && len(r.items[i].text) == 4 && n%100 < 60 {
		return n < 2400 && r.items[i].amount.bare() && !r.namesThing(i) // 0730
	}
	return whole && n > 0 && n <= 24 && r.items[i].amount.bare() && !r.namesThing(i)
}

// noneBefore: "nobody glues before 7", "nothing goes in before 7:30" tell when the day
// begins; "not done before 5" tells no more than when it ends.
func (r *reader) noneBefore(j int) bool {
	from, _ := r.clause(j)
	return r.noneWithin(from, j)
}

// noneWithin is noneBefore for the words from item from on.
func (r *reader) noneWithin(from, j int) bool {
	for k := j - 1; k >= from; k-- {
		switch {
		case r.items[k].amount != nil || r.is(k, kindVerb, "out") || r.word(k, "out", "done", "finished", "finish", "ready", "over", "through", "leave", "leaves", "left", "home"):
			return false
		case r.is(k, kindNot) || r.word(k, "nobody", "nobodys", "noone", "nothing", "none", "never", "no", "no one"):
			return true
		}
	}
	return false
}

// inAtHour: "21 panels, pva, in at 7".
func (r *reader) inAtHour(i int) bool {
	return r.word(i-1, "at") && i > 2 && r.items[i-2].word == "in" && r.items[i-2].amount == nil && r.isBreak(i-3) && r.isBreak(i+1) && r.hourOfDay(i) && (r.dayPlan() || r.panelsAndPresses())
}

// startsElsewhere: of "Dave's in at 6:30 but nobody glues before 7" the second has a word
// for the start, and the first has none.
func (r *reader) startsElsewhere(i int) bool {
	for k := range r.items {
		if k != i && r.free(k) && r.items[k].amount.unit == nil && r.clockRole(k) == "start" && !r.noHour(k, "start", r.daySuffix(k)) {
			return true
		}
	}
	return false
}

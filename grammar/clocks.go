package grammar

import (
	"fmt"
	"strings"

	"presshand/engine/unit"
)

// clockOf returns a clock time "07:30". suffix is am, pm or nothing.
func clockOf(am *amount, suffix string) (string, bool) {
	h, m := 0, 0
	switch am.form {
	case formPair:
		h, m = am.pair[0], am.pair[1]
	case formDecimal: // 7.30
		h = int(am.float())
		m = int(am.float()*100+0.5) - h*100
	default:
		n, ok := am.whole()
		if !ok {
			return "", false
		}
		h = n
		if n >= 100 { // 0730
			h, m = n/100, n%100
		}
	}
	if suffix == "pm" && h < 12 {
		h += 12
	}
	if suffix == "am" && h == 12 {
		h = 0
	}
	if h > 23 || m > 59 || am.minus {
		return "", false
	}
	return fmt.Sprintf("%02d:%02d", h, m), true
}

// clocks reads when work starts and when it has to be out.
func (r *reader) clocks() {
	r.closedAt()
	r.pastTheHour()
	r.noon()
	planned := r.dayPlan() || r.panelsAndPresses()
	r.betweenHours(planned)
	r.hoursBare(planned)
	told := planned || r.habit.Follows || r.mentions(kindRole, "start", "deadline") || r.opens("until", "till", "til", "before") >= 0
	if told || r.hourSaid() {
		r.hours(planned, told)
	}
}

// hours reads the clock times of the message; where hours are told of, a bare number may be one.
func (r *reader) hours(planned, told bool) {
	for i := range r.items {
		if !r.free(i) {
			continue
		}
		am := r.items[i].amount
		am.dead = r.atLunch(i)
		if hour := told || r.pairOrSuffix(i) || r.halfBefore(i) || r.word(i+1, "away", "start", "sharp", "prompt"); !hour || am.dead || r.linksToTime(i) || r.linksToSize(i) || r.warmOfDay(i) || r.ofOtherDay(i) {
			continue
		}
		if r.halfBefore(i) && r.glosses(i+2) {
			r.items[i].used = true
			continue
		}
		if r.halfBefore(i) && am.unit == nil && (r.dayPlan() || r.mentions(kindRole, "start", "deadline")) {
			r.refuseHalf(i)
			continue
		}
		suffix := r.daySuffix(i)
		role := r.clockMeans(i, suffix)
		if role == "" && suffix == "" && !(am.form == formPair && (planned || r.habit.Follows && i == 0 && r.isBreak(1)) && am.link == linkNone && am.pair[0] > 3) {
			continue
		}
		if am.unit != nil && suffix == "" || role == "" && !r.dayPlan() && !r.mentions(kindNoun, "panel", "press") {
			continue
		}
		if r.noHour(i, role, suffix) || r.timetabled(i) || role == "" && r.startsElsewhere(i) {
			continue
		}
		clock, ok := clockOf(am, suffix)
		if !ok && role != "" && am.form == formPair {
			r.items[i].used = true
			r.refuse(map[string]unit.Field{"start": unit.StartTime, "deadline": unit.Deadline}[role], r.items[i].text, "a clock time such as 7:30 or 16:00")
		}
		if !ok {
			continue
		}
		f := unit.StartTime
		if role == "" && r.has(unit.StartTime) && r.mentions(kindRole, "deadline") {
			role = "deadline"
		}
		if role == "deadline" {
			f = unit.Deadline
			if (suffix == "" || r.word(r.suffixAt(i), "oclock", "o clock")) && clock < "07:00" && am.form != formPair || suffix == "" && am.form == formPair && clock < "06:00" {
				clock = afternoon(clock)
			}
		}
		if suffix != "" && i+1 < len(r.items) {
			r.items[r.suffixAt(i)].used = true
		}
		r.say(i, f, unit.Word(clock))
	}
}

// noHour reports whether a number beside a word of starting or of a deadline is none
// of the day's hours.
func (r *reader) noHour(i int, role, suffix string) bool {
	am := r.items[i].amount
	if role == "start" && suffix == "" && am.form != formPair && (!r.dayPlan() && !r.panelsAndPresses() && (r.mentions(kindVacuum) || am.float() > 12 || len(r.items) > 12) || am.float() < 4 || am.form == formFraction || am.form == formMixed || r.namesThing(i)) {
		return true
	}
	return r.whenIts(i) || am.form != formPair && suffix == "" && (am.form == formFraction || am.form == formMixed || am.form == formDecimal && am.float() < 1 || r.namesThing(i))
}

// atLunch: "lunch 12 to 12:30" is neither the start nor the end of a day.
func (r *reader) atLunch(i int) bool {
	for j := i - 1; j >= 0 && j >= i-5; j-- {
		switch {
		case r.word(j, meals...):
			return true
		case r.word(j, "at", "from", "is", "to", "till", "til", "until", "half", "quarter", "past"), r.items[j].amount != nil && r.items[j].amount.dead:
		default:
			return false
		}
	}
	return false
}

// linksToTime: "leave it in from 12 to 16 hours" says how long, not from when.
func (r *reader) linksToTime(i int) bool {
	j := i + 1
	return r.items[i].amount.bare() && r.free(j) && r.items[j].amount.link == linkTo && r.items[j].amount.is(unit.Lasting) && (r.within(max(i-4, 0), i, kindRole, "clamp") >= 0 || r.opensWithin(max(i-5, 0), i, "leave", "stays", "cure", "cures", "takes"))
}

// clockMeans returns start or deadline where the words around a clock time say so.
func (r *reader) clockMeans(i int, suffix string) string {
	am, role, n := r.items[i].amount, r.clockRole(i), i+1
	if role == "" && r.glosses(i) {
		role = r.clockRole(i - 2)
	}
	switch {
	case role == "" && (am.form == formPair || suffix != "" || r.hourAt(i)) && r.fetched(i):
		role = "deadline"
	case role == "" && r.doneByHour(i):
		role = "deadline"
	case role == "" && suffix != "" && r.word(r.suffixAt(i)+1, "start", "starts") && r.isBreak(r.suffixAt(i)+2):
		role = "start" // "1 pm start"
	case role == "" && (r.is(n, kindRole, "start") || r.is(n, kindAsk, "schedule") && r.word(n, "start")) && !r.word(n, "from") && am.unit == nil && r.next(i) == n:
		role = "start" // "0630 start"
	case am.form == formPair && am.link == linkTo && i > 0 && r.items[i-1].used && r.has(unit.StartTime) && !r.has(unit.Deadline):
		role = "deadline" // "between 7:00 and 15:30"
	case role == "" && r.word(i+1, "away", "start", "sharp", "prompt") && (am.form == formPair || r.hourOfDay(i)) && (r.isBreak(i+2) || r.word(i+2, "till", "til", "until", "to")), role == "" && r.inAtHour(i):
		role = "start" // "8:00 away", "7 sharp"
	case role == "" && (r.clockAlone(i) || r.laterStart(i)):
		role = "start"
	}
	if suffix != "" && r.outByThen(i) {
		return "deadline"
	}
	return role
}

// fetched: by the time that "truck's here at 3 pm" it is all out.
func (r *reader) fetched(i int) bool {
	from, _ := r.clause(i)
	return r.opensWithin(from, i, "truck", "trucks", "lorry", "lorrys", "van", "vans", "ute", "trailer", "driver", "drivers", "courier", "couriers", "carrier", "pickup", "collection", "delivery", "haulier", "hauler", "freight", "collects", "collected", "collecting", "fetches", "fetching", "picks", "picked", "picking")
}

// hourAt: "van comes for them at 3" of a day that is planned.
func (r *reader) hourAt(i int) bool {
	const last = 12
	if !r.word(i-1, "at", "by", "before", "around") {
		return false
	}
	n, whole := r.items[i].amount.whole()
	return whole && n >= 1 && n <= last && r.items[i].amount.bare() && r.isBreak(i+1) && (r.habit.Follows || r.dayPlan())
}

// panelsAndPresses: "12 panels 600x1200, two presses, 7:30, pva" is a day's work.
func (r *reader) panelsAndPresses() bool {
	panels, presses := false, false
	if !r.means(kindNoun, "panel") || !r.means(kindNoun, "press") {
		return false
	}
	for i := 1; i < len(r.items); i++ {
		if !r.is(i, kindNoun, "panel", "press") {
			continue
		}
		counted := r.items[i-1].amount != nil || r.word(i-1, "single", "one", "both")
		panels = panels || counted && r.is(i, kindNoun, "panel")
		presses = presses || counted && r.is(i, kindNoun, "press")
	}
	return panels && presses
}

// clockAlone: "07:30, sorry" in a thread is the start that was asked for.
func (r *reader) clockAlone(i int) bool {
	am := r.items[i].amount
	return am.form == formPair && am.pair[1] < 60 && r.habit.Follows && r.amountsIn(0, len(r.items)) == 1 && (len(r.items[i].text) == 5 || am.pair[0] > 4) && !r.mentions(kindNoun) && len(r.items) < 9
}

// outByThen: "the truck's in at 3 pm, everything has to be out by then".
func (r *reader) outByThen(i int) bool {
	for j := i + 1; j+1 < len(r.items); j++ {
		if (r.word(j, "by", "before") || strings.HasSuffix(r.items[j].word, " by") || strings.HasSuffix(r.items[j].word, " before")) && r.word(j+1, "then", "that") {
			return true
		}
	}
	return false
}

// beforeNoon reports whether item i is a clock time of the morning.
func (r *reader) beforeNoon(i int) bool {
	am := r.items[i].amount
	return am != nil && am.form == formPair && am.pair[0] < 12
}

// linksToSize: "from 19.0 to 19.6 mm".
func (r *reader) linksToSize(i int) bool {
	if i+1 >= len(r.items) || r.items[i+1].amount == nil {
		return false
	}
	am := r.items[i+1].amount
	return am.link != linkNone && am.unit != nil && am.unit.Dimension != unit.Lasting
}

// glosses reports whether the clock time at i says in brackets what the words before
// it mean: "half four (16:30)".
func (r *reader) glosses(i int) bool {
	return i >= 2 && i < len(r.items) && r.items[i-1].brk == '(' && r.free(i) && r.items[i].amount.form == formPair && r.items[i-2].amount != nil
}

// afternoon moves a clock time of the early morning past noon: "out by 4".
func afternoon(clock string) string {
	var h, m int
	fmt.Sscanf(clock, "%d:%d", &h, &m)
	return fmt.Sprintf("%02d:%02d", h+12, m)
}

func (r *reader) suffixAt(i int) int {
	for j := i + 1; j < len(r.items) && j <= i+2; j++ {
		if r.is(j, kindRole, "am", "pm") && !r.amWhat(j) && (j == i+1 || !r.is(i+1, kindNoun)) {
			return j
		}
	}
	return i
}

// amWhat: "am I ok" is no morning.
func (r *reader) amWhat(j int) bool { return r.items[j].word == "am" && r.word(j+1, "i") }

func (r *reader) daySuffix(i int) string {
	j := r.suffixAt(i)
	if j == i {
		return ""
	}
	if r.items[j].word == "oclock" || r.items[j].word == "o clock" {
		return " "
	}
	return r.items[j].id
}

// namesThing reports whether what follows the amount makes it a count or a size.
func (r *reader) namesThing(i int) bool {
	j := r.next(i)
	return r.is(j, kindNoun) || r.is(j, kindAttr) || r.is(j, kindWood) || r.is(i+1, kindUnit) || i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTimes
}

// clockRole returns start or deadline where a word just before the amount, or
// earlier in its clause with nothing else between, says so.
func (r *reader) clockRole(i int) string {
	if !r.pairOrSuffix(i) && !r.says("until", "till", "til", "before") && !r.means(kindRole, "start", "deadline") && !r.dayPlan() {
		return "" // a bare number without a word for an hour
	}
	for j := i - 1; j >= 0 && j >= i-4; j-- {
		if it := &r.items[j]; it.kind == kindNone && (it.amount != nil || it.brk != 0) {
			return ""
		}
		switch {
		case r.word(j, "quarter", "half", "past"), weekdays[r.items[j].word] && (r.is(j-1, kindRole, "start") || r.word(j-1, "on")), r.word(j, "on") && weekdays[r.wordAt(j+1)]:
		case r.is(j, kindRole, "start", "deadline"):
			if r.items[j].word == "from" && !r.dayPlan() || r.word(j, "out by") && r.unevenBefore(j) {
				return ""
			}
			return r.items[j].id
		case r.is(j, kindAsk, "schedule"):
			if in(r.items[j].word, "done by", "out by", "home by", "done before", "be ready", "be done", "all out", "all be out", "get done", "last one out", "last out") {
				return "deadline"
			}
			if r.items[j].word == "start" || in(r.items[j].word, "tomorrow", "today") && !(r.word(j+1, "is", "its", "was") && !r.pairOrSuffix(i)) && !(r.wordIn("yesterday") && r.mentions(kindVacuum, "gauge")) {
				return "start"
			}
		case j == i-1 && r.word(j, "for", "at") && r.word(j-1, "ready", "wanted", "needed", "finished") && r.pairOrSuffix(i):
			r.items[j-1].used = true
			return "deadline" // "ready for 17:00"
		case j == i-1 && r.word(j, "due") && r.pairOrSuffix(i):
			r.items[j].used = true
			return "deadline" // "due 5 pm"
		case j == i-2 && r.offAt(i):
			return "start" // "two presses, off at 7:30"
		case r.word(j, "by", "before") && r.warmBefore(j):
			return ""
		case r.word(j, "before") && r.noneBefore(j):
			return "start"
		case r.word(j, "by") && j == i-1 && r.is(r.next(i), kindRole, "start") && r.isBreak(r.next(i)+1):
			return "start"
		case r.word(j, "until", "till", "til", "before") && r.is(j-1, kindRole, "start") && r.within(max(j-6, 0), j, kindNot) >= 0:
			return "start" // "can't start til 8:15"
		case j == i-1 && r.word(j, "until", "till", "til", "before") && r.arriveNot(j):
			return "start" // "the lads don't get in till 8"
		case j == i-1 && r.pairOrSuffix(i) && r.untilNot(j):
			r.behindBut(i)
			return "start" // "the glue room isn't warm til 7:30"
		case r.word(j, "stop", "stopping") && r.pairOrSuffix(i) || r.word(j, "until", "till", "til") && r.dayPlan() && r.pairOrSuffix(i):
			return "deadline"
		case r.word(j, "by", "before") && (r.dayPlan() || r.pairOrSuffix(i) && !(r.mentions(kindNoun, "strip", "bar") && !r.mentions(kindNoun, "press", "bag", "frame"))):
			return "deadline"
		case r.is(j, kindVerb, "out") && r.dayPlan() && r.word(j+1, "at", "by", "before"):
			return "deadline"
		case r.word(j, "moved", "slipped", "slid", "pushed", "shifted", "changed", "bumped", "put", "now", "back", "gone", "brought") && r.within(max(j-3, 0), j, kindRole, "start", "deadline") >= 0:
			r.items[j].used = true // "start's moved to 9"
		case r.word(j, "at", "around", "about", "is", "the", "to", "be", "out", "done", "them", "of", "clock") || r.is(j, kindVerb, "out") || r.items[j].brk == 0 && r.idle(j):
		default:
			return ""
		}
	}
	return ""
}

// offAt: "off at 7:30", "we're away at 7:30"; a bare hour stands alone, "off at 7".
func (r *reader) offAt(i int) bool {
	const earliest = 5
	j := i - 2
	if !r.word(j, "off", "away") || !r.word(i-1, "at") || !r.isBreak(j-1) && !r.word(j-1, "we", "were", "set", "get") {
		return false
	}
	alone := r.isBreak(j-1) && r.isBreak(i+1) && r.hourOfDay(i) && r.items[i].amount.float() > earliest
	return r.beforeNoon(i) || alone && r.dayPlan()
}

// arriveNot: "nobody's here", "they don't get in", before a "till" at item j.
func (r *reader) arriveNot(j int) bool {
	from, _ := r.clause(j)
	return (r.within(from, j, kindNot) >= 0 || r.opensWithin(from, j, "nobody", "nobodys", "noone")) && r.opensWithin(from, j, "get", "gets", "come", "comes", "turn", "arrive", "arrives", "show", "here", "open", "opens") && r.within(from, j, kindNoun) < 0 && r.within(from, j, kindVacuum) < 0
}

// unevenBefore: strips that are "out by 2" differ by so much.
func (r *reader) unevenBefore(j int) bool {
	from, _ := r.clause(j)
	return (r.within(from, j, kindNoun, "strip") >= 0 || r.within(from, j, kindAttr, "thick") >= 0) && r.within(from, j, kindNoun, "panel", "press", "frame", "bag") < 0 && !r.mentions(kindRole, "start")
}

// warmBefore: "65 by noon" is how warm it gets.
func (r *reader) warmBefore(j int) bool {
	if j < 1 || r.items[j-1].amount == nil {
		return false
	}
	am := r.items[j-1].amount
	from, _ := r.clause(j)
	low, high := r.bareWarmth()
	if am.bare() && am.float() >= low && am.float() <= high && r.within(from, j-1, kindAir, "shop", "temp") >= 0 && r.within(from, j-1, kindNoun) < 0 {
		return true // "shop is 80 by noon"
	}
	return am.is(unit.Warmth) || am.bare() && am.link != linkTimes && !r.habit.Metric && am.float() >= 40 && am.float() <= 110 && r.mentions(kindGlue)
}

func (r *reader) pairOrSuffix(i int) bool {
	if r.items[i].amount == nil {
		return true // a clock time in a word
	}
	return r.items[i].amount.form == formPair || r.daySuffix(i) != ""
}

// dayPlan reports whether the message plans a day's work.
func (r *reader) dayPlan() bool {
	return r.mentions(kindAsk, "schedule") || r.mentions(kindRole, "start", "deadline", "hours") && (r.mentions(kindNoun, "panel") || r.mentions(kindNoun, "press", "bag", "frame"))
}

// asksThePlan: "start 8, 2 frames, 9 panels, out by 4, can we make it" asks of the day and
// not of strips, of which none are told.
func (r *reader) asksThePlan(i int) bool {
	return r.is(i, kindAsk, "strips") && r.word(i+1, "it") && strings.HasPrefix(r.items[i].word, "can ") &&
		r.mentions(kindRole, "start", "deadline", "hours") && r.mentions(kindNoun, "panel") && !r.mentions(kindNoun, "strip") && r.stockPairs(len(r.items)) == 0
}

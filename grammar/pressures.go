package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// pressures reads every amount with a unit of pressure: vacuum, barometer, pump
// limit, a mat's firmness or the figure that is wanted.
func (r *reader) pressures() {
	r.differenceOf()
	for i := range r.items {
		if !r.free(i) {
			continue
		}
		am := r.items[i].amount
		if n := i + 1; am.bare() && n < len(r.items) && r.free(n) && r.items[n].amount.link == linkOr && r.items[n].amount.is(unit.Pressing) {
			u := *r.items[n].amount.unit
			am.unit = &u // "0.75 or 0.9 bar"
		}
		if am.is(unit.Distance) && am.unit.Symbol == "in" && r.vacuumInches(i) {
			u := unit.InHg
			am.unit = &u
		}
		if am.is(unit.Distance) && am.unit.Symbol == "mm" && r.is(i+1, kindUnit) && r.items[i+1].word == "hg" {
			u := unit.MMHg
			am.unit = &u
		}
		if !am.is(unit.Pressing) {
			continue
		}
		r.pressure(i)
	}
}

// vacuumInches: "25 inches" is mercury beside a word of vacuum and no part.
func (r *reader) vacuumInches(i int) bool {
	if r.is(r.prev(i), kindAir, "barometer") && r.items[i].amount.float() >= 20 {
		return true
	}
	if i+2 < len(r.items) && r.items[i+1].brk == '.' && r.is(i+2, kindVacuum, "vacuum") && !r.ownReading(i+2) && r.items[i].amount.float() >= 10 {
		return true // "26 in. vac"
	}
	if v := r.items[i].amount.float(); v >= 10 && v <= 31 && r.opens("possible", "doable", "realistic") > i && r.heightSaid() && r.countKind(kindNoun) == 0 {
		return true // "at 8500 ft is 25 inches even possible"
	}
	if n := r.next(i); r.is(n, kindNoun) && r.items[n].id != "pump" && r.items[n].id != "leak" || r.is(n, kindAttr) || r.is(n, kindRole, "length") && r.word(n, "across") {
		return false
	}
	if r.word(i+1, "enough") && r.mentions(kindNoun, "cup", "bow", "bar") && r.items[i].amount.float() >= 15 && r.items[i].amount.float() <= 30 && !r.is(i-1, kindNoun) && !r.is(i-1, kindAttr) {
		return true // "twenty three inches enough?"
	}
	j := r.prev(i)
	for r.is(j, kindSay) {
		j = r.prev(j)
	}
	if i > 1 && r.isBreak(i-1) && r.is(i-2, kindVacuum, "vacuum", "gauge") && (r.items[i-1].word == "-" || r.items[i-1].brk == ':' || r.items[i-1].brk == '=') && r.items[i].amount.float() >= 5 {
		return true // `vacuum - 25"`
	}
	if v := r.items[i].amount.float(); (r.topic == Face || r.topic == Flatten) && v >= 10 && v <= 30 && r.items[i].amount.link == linkNone && !(i+1 < len(r.items) && r.items[i+1].amount != nil) && !r.is(j, kindRole, "length") && !(r.is(j, kindNoun, "panel", "strip", "cup", "bow") && !(r.word(i-1, "at") && j > 0 && r.items[j-1].amount != nil && r.items[j-1].amount.link == linkTimes)) && !r.is(r.next(i), kindWood) && !r.is(r.next(i), kindRole, "length") {
		return true
	}
	if n := i + 1; n < len(r.items) && r.is(n, kindVacuum) && r.ownReading(n) && r.is(r.prev(i), kindNoun, "bar") {
		return false
	}
	if r.is(r.next(i), kindVacuum, "vacuum") && !r.ownReading(r.next(i)) || r.is(r.next(i), kindVacuum, "gauge") && r.word(i+1, "on") {
		return true
	}
	if r.word(i-1, "to", "hit", "reach", "get", "at", "wants", "want", "need", "for") && r.pumping() && !(r.items[i].amount.float() < 10 && r.word(i-1, "at") && r.is(i-2, kindNoun, "strip")) && r.items[i].amount.link == linkNone {
		return true
	}
	if r.is(i-1, kindAsk, "pump") && (strings.HasSuffix(r.items[i-1].word, " to") || strings.HasSuffix(r.items[i-1].word, " till") || strings.HasSuffix(r.items[i-1].word, " until")) {
		return true // "time to 24 in?", "how long till 20 inches"
	}
	return r.is(j, kindVacuum, "pull", "gauge") && (r.items[i].amount.float() >= 5) || r.is(j, kindVacuum, "vacuum")
}

// unitOfGauge: "the dial only does psi and it's at -11.8".
func (r *reader) unitOfGauge(i int) *unit.Unit {
	from, _ := r.sentence(i)
	for j := i - 1; j > from; j-- {
		if am := r.items[j].amount; am != nil {
			return nil
		}
		if !r.is(j, kindUnit) || r.items[j].unit.Dimension != unit.Pressing && r.items[j].unit.Symbol != "in" {
			continue
		}
		told := r.within(from, j, kindVacuum, "gauge") >= 0 && r.items[j-1].amount == nil && (r.word(j-1, "does", "in", "is in", "reads", "shows", "only", "is", "says", "a", "an") || r.isBreak(j-1) || r.is(j-1, kindVacuum, "gauge"))
		if u := r.items[j].unit; told || u.Dimension == unit.Pressing && r.is(j+1, kindVacuum, "gauge") {
			if u.Symbol == "in" {
				return &unit.InHg
			}
			return u
		}
	}
	return nil
}

// ownReading reports whether a word of vacuum has a number of its own behind it:
// "bar 1 in vacuum 25 in".
func (r *reader) ownReading(k int) bool {
	n := k + 1
	for r.word(n, "is", "at", "of") {
		n++
	}
	return n < len(r.items) && r.items[n].amount != nil && r.items[n].amount.link == linkNone
}

func (r *reader) pressure(i int) {
	am := r.items[i].amount
	u := am.unitRaw
	switch {
	case r.goal(i) || r.goalAgain(i):
	case r.statedFigure(i): // it is for the answer to say
	case r.barometric(i):
		r.bind(i, unit.Ambient)
	case r.isMatFirmness(i):
		r.bindFirmness(i)
	case r.means(kindRole, "limit") && r.limitTold(i):
		r.pumpLimit(i)
	case r.means(kindRole, "limit") && r.limitBehind(i), r.is(i+1, kindNoun, "pump") && (r.word(i-1, "a", "an", "our", "my", "the") || r.isBreak(i-1)) && !r.live(i+2) && r.saidFlow() && !r.has(unit.PumpLimit):
		r.pumpLimit(i) // "a 10 m3/h pump, 97 kPa pump"
	case u == "psia" || r.absolute(i):
		r.bind(i, r.absoluteField(i))
	case r.beyondVacuum(i), r.figureAtVacuum(i):
		am.dead = true
	default:
		r.bind(i, unit.Vacuum)
		if k := r.rangeBefore(i); k >= 0 {
			u := *am.unit
			r.items[k].amount.unit = &u
			r.bind(k, unit.Vacuum) // which of the two is asked
		}
	}
}

// limitTold: where the pump stops was named before the pressure at item i, and in its clause.
func (r *reader) limitTold(i int) bool {
	from, to := r.clause(i)
	return r.within(from, to, kindRole, "limit") >= 0 && !r.has(unit.PumpLimit) && r.within(r.afterStop(i), i, kindRole, "limit") >= 0 && !r.needleStops(i)
}

// needleStops: "gauge stops at 23 inHg" is what it shows, of whatever pump.
func (r *reader) needleStops(i int) bool {
	from, to := r.sentence(i)
	return r.is(r.prev(r.within(r.afterStop(i), i, kindRole, "limit")), kindVacuum, "gauge") && r.within(from, to, kindNoun, "pump") < 0
}

// afterStop is where the sentence of item i begins.
func (r *reader) afterStop(i int) int {
	from, _ := r.sentence(i)
	return from
}

// barometric reports whether the pressure is the air's own: a barometer stands
// before it with no other amount between, or right behind it.
func (r *reader) barometric(i int) bool {
	if r.is(r.next(i), kindVacuum, "vacuum") {
		return false
	}
	if n := r.next(i); r.is(n, kindAir, "barometer") && r.barometerReads(n) < 0 {
		return true
	}
	if v := r.items[i].amount.unit.SI(r.items[i].amount.float()); r.word(i+1, "of") && r.word(i+2, "air", "atmosphere") && v > 60000 && v < 109000 && r.said(unit.Pressing) {
		return true // "14.7 psi of air on us"
	}
	if v := r.items[i].amount.unit.SI(r.items[i].amount.float()); r.word(i+1, "outside", "outdoors", "out") && !r.items[i].amount.minus && v > 60000 && v < 109000 && r.isBreak(i+2) {
		return true // "1013 mbar outside"
	}
	for j := i - 1; j >= 0 && !r.isStop(j) && r.items[j].amount == nil; j-- {
		if r.is(j, kindVacuum, "vacuum", "gauge", "pull") && !in(r.items[j].word, "reads", "reading", "shows", "sits at", "sitting at", "down to") {
			return false
		}
		if r.is(j, kindAir, "barometer") {
			return true
		}
	}
	return false
}

// absolute reports whether "abs" or "absolute" goes with the pressure.
func (r *reader) absolute(i int) bool {
	if !r.means(kindVacuum, "absolute") && !r.says("a", "abs") {
		return false
	}
	if i+2 < len(r.items) && r.items[i+1].brk == '(' && r.word(i+2, "a", "abs") {
		r.items[i+2].used = true
		return true
	}
	for _, j := range []int{i + 1, i + 2} {
		if r.is(j, kindVacuum, "absolute") {
			r.items[j].used = true
			return true
		}
		if j < len(r.items) && r.items[j].brk != '(' && !r.idle(j) {
			break
		}
	}
	j := r.prev(i)
	for r.is(j, kindNoun, "bag", "press", "frame", "reservoir", "bed") || r.is(j, kindUnit, "in") || r.is(j, kindSay) {
		j = r.prev(j) // "absolute pressure in the bag 140 mbar"
	}
	if r.is(j, kindVacuum, "absolute") {
		r.items[j].used = true
		return true
	}
	return false
}

// pumpLimit reads where a pump itself stops: an absolute pressure, or a vacuum
// at sea level.
func (r *reader) pumpLimit(i int) {
	am := r.items[i].amount
	if r.absolute(i) || am.is(unit.Pressing) && am.unit.SI(am.float()) < 30000 {
		r.bind(i, unit.PumpLimit)
		return
	}
	const seaLevel = 101325
	r.items[i].used = true
	v := round((seaLevel - am.unit.SI(am.float())) / 1000)
	if v < 0 {
		r.refuse(unit.PumpLimit, r.items[i].text, limits[unit.Pressing].want)
		return
	}
	r.bound = append(r.bound, binding{Fact{Field: unit.PumpLimit, Value: unit.Number(v), Unit: *am.unit, Text: r.items[i].text, Note: "vacuum at sea level"}, i, false})
}

// bareVacuum reads "pulling 26", "gauge says 24", "sitting at 25".
func (r *reader) bareVacuum() {
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.bare() || r.noReading(i) || !r.cuedAsReading(i) && r.unitOfGauge(i) == nil && !r.bareLimit(i) {
			continue
		}
		if r.items[i].amount.link == linkTimes || i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTimes {
			continue
		}
		if u := r.unitOfGauge(i); u != nil {
			r.items[i].amount.unit = u
		} else if u := r.bareVacuumUnit(r.items[i].amount); u.Dimension != unit.Pressing {
			continue
		}
		if r.absolute(i) {
			r.bind(i, unit.VacuumAbsolute)
			continue
		}
		if r.bareLimit(i) {
			u := r.bareVacuumUnit(r.items[i].amount)
			r.items[i].amount.unit = &u
			r.pumpLimit(i)
			continue
		}
		other := r.rangeBefore(i)
		if n := i + 1; r.free(n) && r.items[n].amount.link == linkTo && r.items[n].amount.bare() && r.isBreak(n+1) && r.rangeBefore(n) == i {
			other = n
		}
		r.bind(i, unit.Vacuum)
		if other >= 0 {
			r.bind(other, unit.Vacuum) // "between 23 and 24 on the gauge": which of the two is asked
		}
	}
	r.otherGauge()
}

// noReading reports what speaks against the number i being a gauge's, whatever stands before
// it: a part named after it, an unknown word, a reading of its own for the vacuum that follows.
func (r *reader) noReading(i int) bool {
	a := r.items[i].amount
	if !a.bare() || a.plural || a.form == formPair || a.form == formWords && a.float() < 5 {
		return true
	}
	n := r.next(i)
	if r.is(n, kindAttr) && !r.word(n-1, "how") || r.is(n, kindWood) {
		return true
	}
	if r.is(n, kindNoun) && !r.is(n, kindNoun, "press", "leak", "pump", "bag") && !r.startsAnew(n) && !(r.is(i-1, kindVacuum) && r.is(n, kindNoun, "bar") && n+1 < len(r.items) && r.items[n+1].amount != nil) {
		return true
	}
	if r.clockBehind(i) >= 0 || r.thinnedTo(i) || r.onPumpsPlate(i) || r.countsSized(i) {
		return true // "pull 5 at 4pm"
	}
	if i+1 < len(r.items) && r.items[i+1].kind == kindNone && r.items[i+1].amount == nil && r.items[i+1].brk == 0 && !fill[r.items[i+1].word] && !r.word(i+1, "now", "today", "currently", "earlier", "yesterday") {
		return true
	}
	if !r.is(n, kindVacuum, "vacuum") {
		return false
	}
	return n+1 < len(r.items) && r.items[n+1].brk == '=' ||
		(r.is(r.prev(i), kindNoun) || r.is(r.prev(i), kindAttr)) && r.ownReading(n) // "bar 1 vacuum 25"
}

// readingWord is the item that would make the number i a reading: what stands
// before it past "is", "on" and the like, or the gauge of its sentence.
func (r *reader) readingWord(i int) int {
	j := r.prev(i)
	for r.is(j, kindSay) || r.word(j, "is", "at", "on", "about", "steady", "stuck", "still", "now", "just", "only", "right", "sat", "stays", "stayed", "holding", "dead", "around", "the", "hits", "hit", "reaches", "gets", "parked", "pegged", "hair", "shade", "touch", "tad", "whisker", "smidge", "smidgen") || wavers[r.wordAt(j)] && r.is(j-1, kindVacuum, "gauge") {
		j = r.prev(j)
	}
	if i > 1 && (r.labels(i-1) || r.items[i-1].word == "-") && r.is(i-2, kindVacuum) {
		j = i - 2
	}
	if from, _ := r.window(i); !r.is(j, kindVacuum) && r.within(from, i, kindVacuum, "gauge") >= 0 && r.within(from, i, kindSay) >= 0 {
		j = r.within(from, i, kindVacuum, "gauge")
	}
	return j
}

// cuedAsReading reports whether words beside the number i make it a vacuum.
func (r *reader) cuedAsReading(i int) bool {
	j, n, a := r.readingWord(i), r.next(i), r.items[i].amount
	if r.cooledTo(j) {
		return false
	}
	switch {
	case r.is(j, kindVacuum, "gauge", "vacuum", "pull"), r.is(n, kindVacuum, "vacuum"), r.is(i-1, kindVacuum), r.whatGaugeSays(i), r.gaugeMovedTo(i), r.onlyReached(i), r.plainReading(i), r.bestPulled(i):
		return true
	case a.minus && a.form == formDecimal && r.habit.Metric && a.float() >= 0.3 && a.float() < 1.05 && a.link == linkNone:
		return true // "8 strips 50 x 20 at -0.85 on film"
	case a.form == formDecimal && r.habit.Metric && a.float() >= 0.6 && a.float() < 0.96 && n < 0 && a.link == linkNone && r.readingAlone(i):
		return true // "7 strips 45 x 15, bar 25, I have 0.78"
	case r.word(j, "at", "holds", "to") && r.is(r.prev(j), kindVacuum), r.onClockFace(i):
		return true
	case r.word(i-1, "at") && r.is(i-2, kindNoun, "bag", "press", "frame", "reservoir") && !r.startedAt(i):
		return true
	case r.word(i-1, "on", "at") && r.word(i-2, "were", "was", "are") && a.float() >= 10 && a.float() <= 30 && !r.habit.Metric && r.mentions(kindNoun, "leak") && r.topic == Pump:
		return true // "power tripped. we were on 25 and it's dropping 2 every 10 min"
	case r.topic == Pump && !r.habit.Metric && r.word(i-1, "at") && a.float() >= 15 && a.float() <= 30 && a.form == formInt && r.mentions(kindAsk, "pump:hold_s") && !r.is(i+1, kindRole, "am", "pm") && !r.word(i+1, "oclock", "tonight", "tomorrow"):
		return true // "if the power goes at 25 how long are we good"
	case r.topic == Pump && r.word(i-1, "to") && r.is(i-2, kindAttr, "long") && r.word(i-3, "how") && (r.habit.Metric && a.form == formDecimal && a.float() < 1.05 || !r.habit.Metric && a.float() >= 10 && a.float() <= 30):
		return true // "pump 16 m3/h, how long to 0.85"
	case r.topic == Pump && r.word(i-1, "to") && r.is(i-2, kindAsk, "pump") && r.word(i+1, "and", "or", "if", "then") && (r.habit.Metric && a.form == formDecimal && a.float() < 1.05 || !r.habit.Metric && a.float() >= 10 && a.float() <= 30):
		return true // "how long to get to 22 and …"
	case r.pressHolds(i), r.pressureAt(i):
		return true
	case r.word(i-1, "on", "at") && r.word(i-2, "sitting", "sat", "sits", "steady", "parked"):
		return true
	case r.word(i+1, "on", "in") && r.is(n, kindVacuum, "gauge"), r.gaugeBehind(i):
		return true
	case !r.habit.Metric && a.float() >= 10 && a.float() <= 30 && r.gaugeHolds(i-1) && (r.isBreak(i+1) || r.word(i+1, "now", "today", "tonight", "at")):
		return true // "we were holding twenty four and a half"
	case r.topic == Flatten && !r.habit.Metric && a.float() >= 10 && a.float() <= 30 && r.word(i-1, "is", "will", "would") && r.word(i+1, "enough", "be") && r.amountsIn(max(i-3, 0), i) == 0:
		return true // "is twenty enough to lay down a 1/16 cup"
	case r.topic == Flatten && !r.habit.Metric && a.float() >= 10 && a.float() <= 30 && a.form != formFraction && r.is(n, kindAsk, "flatten") && r.word(i-1, "can", "could", "will", "would", "does", "is", "with"):
		return true // "can twenty four flatten it"
	case a.form != formFraction && r.is(j, kindAsk, "pump") && in(r.items[j].word, "reach", "how long to pull", "time to pull", "how long to draw", "get to vacuum", "pull down", "pump down", "how long to reach", "time to reach", "time to get", "draw down", "evacuate", "keep up"):
		return true
	}
	if r.topic == Pump && r.word(i-1, "to", "till", "until", "til") && r.word(i+1, "with", "using", "on", "w") && !r.habit.Metric && a.float() >= 10 && a.float() <= 30 && !r.has(unit.Vacuum) {
		return true // "pull a 60 gal volume to 22 with a 3 cfm pump"
	}
	return n < 0 && r.cuedAtTheEnd(i, j)
}

// cuedAtTheEnd reads the last number of "… with the inch and a half bar at 24",
// "how many minutes to 25?", "a leak of 1 inHg a minute, will she hold 24?".
func (r *reader) cuedAtTheEnd(i, j int) bool {
	a := r.items[i].amount
	v := a.float()
	if r.eachPartAt(i) {
		return false
	}
	if from := r.afterStop(i); from > 0 && r.has(unit.Vacuum) && r.within(from, i, kindVacuum) < 0 && r.within(from, i, kindFix) < 0 && r.within(from, i, kindNoun) < 0 {
		return false // "… to 25 inHg. lunch is at 12"
	}
	if r.topic == Pump && v >= 10 && v <= 30 && (r.word(i-1, "to", "at", "hits", "hit", "reaches", "gets", "till", "until", "til") || r.is(i-1, kindVerb, "hold") && !r.habit.Metric) {
		return true
	}
	if v >= 10 && v <= 30 && !r.habit.Metric && r.word(i-1, "will", "would", "does") && r.word(i+1, "do", "cut", "get") && !r.has(unit.Vacuum) {
		return true // "will 24 do it?"
	}
	if r.topic == Pump && v >= 10 && v <= 30 && !r.habit.Metric && r.is(i-1, kindSay) && r.word(i-2, "it", "she", "gauge") && !r.has(unit.Vacuum) {
		return true // "how long till it says twenty four"
	}
	if r.topic == Pump && v >= 10 && v <= 30 && r.is(j, kindRole, "target") {
		return true
	}
	if r.topic == Face && v >= 10 && v <= 30 && !r.habit.Metric && (r.word(i-1, "at") || a.link == linkAt) {
		return true // "whats the load on a 4x8 in pounds at 23"
	}
	if r.topic == Pump && v >= 10 && v <= 30 && !r.habit.Metric && r.is(i-1, kindAsk) && strings.HasSuffix(r.items[i-1].word, " to") {
		return true // "time to 26?"
	}
	if r.topic == Pump && v >= 10 && v <= 30 && !r.habit.Metric && r.word(i+1, "now") && !r.has(unit.Vacuum) {
		return true // "leaks 2 in 15 min, 24 now"
	}
	if r.habit.Metric && a.form == formDecimal && v >= 0.6 && v < 1.02 && (a.link == linkAt || r.saidAt(i)) && !r.otherAt(i) && !r.said(unit.Pressing) && r.mentions(kindNoun) {
		return true // "8 strips 50 x 20 at 0.85, batten 40"
	}
	return r.topic == Pump && r.is(j, kindRole, "start") || !r.habit.Metric && r.saidAt(i) && v >= 15 && v <= 30 && (r.solving == unit.BarHeight || r.mentions(kindNoun, "bar", "cup", "bow")) && !r.said(unit.Pressing) && !r.dayPlan()
}

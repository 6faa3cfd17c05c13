package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// warmAtGlue: of "pva 68, two presses", "white glue, 70, bag", "(uf) at 70" and "type II. 70
// here" the number is how warm it is, where nothing else is told so.
func (r *reader) warmAtGlue(i int) bool {
	am := r.items[i].amount
	v := am.float()
	if r.habit.Metric || !am.bare() || am.form != formInt || v < 50 || v > 95 || am.link != linkNone && am.link != linkAt || r.said(unit.Warmth) || !r.gluesWarm() {
		return false
	}
	if (r.word(i+1, "here", "today", "inside") || r.is(i+1, kindAir, "shop") && r.word(i+1, "here")) && r.isBreak(i+2) && r.isBreak(i-1) {
		return r.mentions(kindGlue)
	}
	if !r.isBreak(i + 1) {
		return false
	}
	j := i - 1
	for j >= 0 && (r.items[j].brk == ')' || r.items[j].brk == ',' || r.items[j].brk == '(' || r.word(j, "at")) {
		j--
	}
	return r.is(j, kindGlue)
}

// gluesWarm reports whether how warm it is matters to what is asked, or nothing else could
// be told by a number behind a glue.
func (r *reader) gluesWarm() bool {
	return r.topic == Glue || r.topic == Schedule || r.topic == Pump || r.topic == "" && !r.mentions(kindNoun, "bar", "strip", "caul", "mat")
}

// loneReading reads the vacuum off a number that stands alone where all else of the
// question is told: "5 strips 2 wide 3/8 thick at 21, far joint", "6 cfm, bag of 35 gal, 22".
func (r *reader) loneReading() {
	if r.habit.Metric || r.has(unit.Vacuum) || r.has(unit.VacuumAbsolute) || r.has(unit.VacuumPercent) || r.pressureSaid() || r.mentions(kindVacuum) {
		return
	}
	side := r.has(unit.StripWidth) && r.has(unit.StripThickness)
	pump := r.has(unit.PumpSpeed) && (r.has(unit.PressVolume) || r.has(unit.BedWidth) || r.has(unit.BagWidth))
	if !side && !pump {
		return
	}
	at := -1
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.hearsay {
			continue
		}
		if am := r.items[i].amount; !am.bare() || at >= 0 {
			return
		}
		at = i
	}
	if at < 0 || !r.readsAlone(at, side) {
		return
	}
	r.bind(at, unit.Vacuum)
}

// readsAlone reports whether the number at item i stands behind "at" or right behind the
// pump's figures, and is what gauges show.
func (r *reader) readsAlone(i int, side bool) bool {
	am := r.items[i].amount
	if v := am.float(); v < 18 || v > 29 || am.form != formInt && am.form != formDecimal && am.form != formMixed || am.link != linkNone && am.link != linkAt || !r.isBreak(i+1) && !r.word(i+1, "on", "in", "how") {
		return false
	}
	if r.timesAt(i+1) || r.clockBehind(i) >= 0 || r.dayPlan() {
		return false
	}
	j := i - 1
	if r.word(j, "at") {
		return true
	}
	if side {
		return false // behind a bar it may as well be a length
	}
	if r.isBreak(j) {
		j--
	}
	return j >= 0 && r.items[j].used && (r.items[j].amount != nil || r.is(j, kindNoun, "bag", "frame", "pump", "press"))
}

// gaugeBehind: "1 in bar, 25.5 gauge, strips 1/4".
func (r *reader) gaugeBehind(i int) bool {
	v := r.items[i].amount.float()
	return !r.habit.Metric && v >= 10 && v <= 30 && r.is(i+1, kindVacuum, "gauge") && r.word(i+1, "gauge") && r.isBreak(i+2) && r.isBreak(i-1)
}

// absoluteField is what the absolute pressure at item i is of.
func (r *reader) absoluteField(i int) unit.Field {
	if r.leastAbsolute(i) {
		return unit.PumpLimit
	}
	return unit.VacuumAbsolute
}

// leastAbsolute reports whether the absolute pressure at item i is what a pump only goes
// down to: "membrane pump 50 l/min goes only to 100 mbar abs".
func (r *reader) leastAbsolute(i int) bool {
	from, _ := r.sentence(i)
	if r.has(unit.PumpLimit) || r.within(from, i, kindNoun, "pump") < 0 {
		return false
	}
	if r.word(i-1, "below", "under", "past") {
		not := r.within(from, i, kindNot)
		return not > 0 && r.is(r.prev(not), kindNoun, "pump") && i-not <= 4 && !r.word(i-2, "be", "run") // "the pump won't go below 80 mbar absolute"
	}
	if r.opensWithin(max(from, i-5), i, "only gets down to", "only gets to", "only goes to", "goes only to") {
		return true
	}
	return (r.word(i-1, "to", "at") || strings.HasSuffix(r.wordAt(i-1), " to")) && r.opensWithin(max(from, i-5), i, "only", "just") && r.opensWithin(max(from, i-6), i, "goes", "gets", "go", "get", "stops", "comes")
}

// plainReading reads "a one inch bar at 25 do for epoxy", "up here I only see 22", "does 22 do
// it and …", "flatten it with 24?", "can the 4 cfm hold 24" where no vacuum is told.
func (r *reader) plainReading(i int) bool {
	a := r.items[i].amount
	if v := a.float(); r.habit.Metric || v < 15 || v > 30 || a.form == formFraction || !a.bare() || a.plural || r.said(unit.Pressing) || r.dayPlan() {
		return false
	}
	flat := r.topic == Flatten || r.mentions(kindFact, "cup_up=hump", "cup_up=hollow")
	alone := r.isBreak(i+1) || r.word(i+1, "do", "enough", "and", "on")
	switch {
	case (r.word(i-1, "at") || a.link == linkAt) && r.is(i-2, kindNoun, "bar"), r.word(i-1, "see", "sees", "seeing") && r.mentions(kindNoun, "bar", "gauge", "pump"):
		return alone
	case r.word(i-1, "does", "will", "would", "is") && r.word(i+1, "do", "enough"):
		return flat || r.mentions(kindNoun, "bar")
	case r.word(i-1, "with") && r.isBreak(i+1):
		return flat
	}
	return r.topic == Pump && r.is(i-1, kindVerb, string(Hold)) && r.word(i-1, "hold") && (r.within(0, i, kindNoun, "pump") >= 0 || r.has(unit.PumpSpeed))
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// twoGauges reads the vacuum at two places, "27 at the pump and 24 at the bag": the
// press has what its own gauge shows; the pump's stays unused.
func (r *reader) twoGauges() {
	if !r.says("at", "on", "by") || !r.means(kindNoun, "pump", "bag", "press", "frame", "bed") {
		return
	}
	pump, press := -1, -1
	for i := range r.items {
		if !r.free(i) || !r.gaugeReading(i) {
			continue
		}
		switch r.placeOf(i) {
		case "":
		case "pump":
			pump = i
		default:
			press = i
		}
	}
	if pump < 0 && press < 0 || !r.vacuumNear(pump) && !r.vacuumNear(press) {
		return
	}
	if press >= 0 {
		if r.absolute(press) {
			r.bind(press, unit.VacuumAbsolute)
		} else {
			r.bind(press, unit.Vacuum)
		}
		if pump >= 0 {
			r.items[pump].amount.dead = true
		}
	}
}

// gaugeReading reports whether the amount at item i can be what a gauge shows.
func (r *reader) gaugeReading(i int) bool {
	am := r.items[i].amount
	if am.link == linkTimes || r.timesAt(i+1) || am.form == formPair || r.is(r.next(i), kindAttr) {
		return false
	}
	if n := r.next(i); n == i+1 && r.is(n, kindNoun) {
		return false
	}
	if am.is(unit.Pressing) {
		return true
	}
	return am.bare() && (am.float() >= 5 || r.habit.Metric) && r.bareVacuumUnit(am).Dimension == unit.Pressing
}

// placeOf is the part that a reading is told to be at: right behind it, else before.
func (r *reader) placeOf(i int) string {
	if j := r.placeAt(i + 1); j >= 0 {
		return r.items[j].id
	}
	if r.word(i-1, "is", "reads", "at", "its") || r.is(i-1, kindSay) || r.is(i-1, kindVacuum) {
		i--
	}
	for j := max(i-4, 0); j < i; j++ {
		if k := r.placeAt(j); k >= 0 && k == i-1 {
			return r.items[k].id
		}
	}
	return ""
}

// placeAt is the part that "at the bag" from item j on names; -1 where it does not.
func (r *reader) placeAt(j int) int {
	if j < 0 || !r.word(j, "at", "on", "by") {
		return -1
	}
	for j++; r.word(j, "the", "my", "our", "far", "end", "other", "near", "side", "of", "back", "front", "opposite"); j++ {
	}
	if r.is(j, kindNoun, "pump", "bag", "press", "frame", "bed") {
		return j
	}
	return -1
}

// vacuumNear reports whether the sentence of item i speaks of a vacuum or a gauge.
func (r *reader) vacuumNear(i int) bool {
	if i < 0 {
		return false
	}
	if r.items[i].amount.is(unit.Pressing) {
		return true
	}
	from, to := r.sentence(i)
	return r.within(from, to, kindVacuum) >= 0
}

// otherGauge: of "press A pulls 25 inHg, press B 22" and "left gauge says 24, right one
// says 22" no one may choose.
func (r *reader) otherGauge() {
	for k := len(r.bound) - 1; k >= 0; k-- {
		b := r.bound[k]
		if b.fact.Field != unit.Vacuum || b.weak {
			continue
		}
		_, to := r.sentence(b.from)
		for j := b.from + 1; j < to && j < b.from+8; j++ {
			if r.items[j].amount == nil {
				continue
			}
			am, first := r.items[j].amount, r.items[b.from].amount
			second := r.opensWithin(b.from, j, "other", "second", "right") || r.word(j-1, "b", "two") && r.is(j-2, kindNoun, "press", "bag", "frame")
			if r.free(j) && am.bare() && am.link == linkNone && second && r.next(j) < 0 && first != nil && am.float() > 0.7*first.float() && am.float() < 1.4*first.float() {
				u := b.fact.Unit
				am.unit = &u
				r.bind(j, unit.Vacuum)
			}
			break
		}
	}
}

// heightSaid reports whether the shop's height is told: more feet or metres than any
// work has, or a word for it.
func (r *reader) heightSaid() bool {
	const least = 60 // m
	for i := range r.items {
		if am := r.items[i].amount; r.is(i, kindAir, "height") || am != nil && am.is(unit.Distance) && am.value != nil && am.unit.SI(am.float()) > least {
			return true
		}
	}
	return false
}

// onClockFace: of "-24.5 on the clock" the clock is a gauge: no time of day is below
// nothing, or past twelve and broken.
func (r *reader) onClockFace(i int) bool {
	am := r.items[i].amount
	if !r.word(i+1, "on") || !r.word(i+2, "the") || !r.word(i+3, "clock") || am.form == formPair || !am.minus && !(am.form == formDecimal && am.float() > 12 && am.float() < 31 && !r.habit.Metric) {
		return false
	}
	r.items[i+3].used = true
	return true
}

// moversOfGauges are words of a gauge that goes up or down.
var moversOfGauges = wordSet(`creep crawls crawled dropped drops fallen fell falls falling risen rose rises climbed climbs crept gone went goes slipped sagged sunk sank come came settled eased recovered has have is had now only just down up back sags sag sagging slips drifts creeps drooping droops`)

// gaugeMovedTo: "the gauge has dropped to 22", "gauge creeps up to about 23".
func (r *reader) gaugeMovedTo(i int) bool {
	k := i - 1
	for r.word(k, "about", "around", "maybe", "nearly") {
		k--
	}
	if i = k + 1; !r.word(k, "to", "down to", "up to") || r.said(unit.Lasting) {
		return false
	}
	for k--; k >= 0 && r.items[k].amount == nil && moversOfGauges[r.items[k].word]; k-- {
	}
	return k < i-2 && r.is(k, kindVacuum, "gauge", "vacuum")
}

// bestPulled: "the pump holds 26", "gauge won't go past 23.5" and "can't get more than 21
// out of this pump" tell all that there is.
func (r *reader) bestPulled(i int) bool {
	am := r.items[i].amount
	if r.mentions(kindNoun, "leak") { // then what it stops at is what is wrong
		return false
	}
	least, most := 10.0, 30.0
	if r.habit.Metric {
		least, most = 0.3, 1.05
	}
	if !am.bare() || am.link != linkNone || am.float() < least || am.float() > most || r.habit.Metric && am.form != formDecimal {
		return false
	}
	switch k := i - 1; {
	case r.word(k, "holds", "manages"):
		return r.is(k-1, kindNoun, "pump") && r.isBreak(i+1)
	case r.word(k, "past", "beyond", "over", "above"):
		from, _ := r.clause(i)
		shows := max(r.within(from, k, kindVacuum, "gauge"), r.within(from, k, kindNoun, "pump"))
		return r.word(k-1, "go", "get", "come", "climb", "move", "pull") && shows >= 0 && r.amountsIn(shows, i) == 0
	}
	k := i + 1
	for r.word(k, "out", "of", "from", "the", "this", "that", "our", "my", "old") {
		k++
	}
	return k > i+2 && r.is(k, kindNoun, "pump") && r.isBreak(k+1)
}

// pressHolds: "the press holds 20", "does 24 hold them down".
func (r *reader) pressHolds(i int) bool {
	am := r.items[i].amount
	if r.habit.Metric || !am.bare() || am.link != linkNone || am.float() < 10 || am.float() > 30 {
		return false
	}
	return r.word(i-1, "holds") && r.is(i-2, kindNoun, "press", "bag", "frame") && r.isBreak(i+1) && !r.mentions(kindNoun, "panel") && !r.dayPlan() ||
		r.word(i-1, "does", "will", "would", "can") && r.word(i+1, "hold", "keep", "press") && r.word(i+2, "them", "it", "everything", "the") && r.opensWithin(i+2, min(i+6, len(r.items)), "down", "flat")
}

// wavers say that a needle does not stand still: "bounces between 23 and 24".
var wavers = wordSet(`bounces bouncing wobbles wobbling hovers hovering swings swinging flickers flickering wanders wandering jumps jumping floats floating flutters settles settled settling wavers dances dancing moves`)

// eachPartAt: of "bar at 30 and strips at 15" each part has its measure, and none is a
// gauge's.
func (r *reader) eachPartAt(i int) bool {
	part := func(k int) bool {
		return r.word(k, "at") && r.is(k-1, kindNoun) && !r.is(k-1, kindNoun, "press", "bag", "frame", "pump", "reservoir", "panel")
	}
	first := i - 4
	for first > 0 && r.items[first].amount == nil && !r.isBreak(first) {
		first--
	}
	return part(i-1) && first > 0 && r.items[first].amount != nil && part(first-1) && r.word(i-3, "and", "the", "but", "with")
}

// gaugeHolds: "we were holding twenty four", "the bag's only holding 22" tell what
// the gauge shows; "holding 14" alone keeps a load from going in.
func (r *reader) gaugeHolds(i int) bool {
	if r.word(i, "held") && r.word(i-1, "it", "she", "gauge", "vac", "seal", "needle", "dial") {
		return true // "it held 24 when i shut the valve"
	}
	if r.word(i, "hold") && r.is(i-1, kindRole, "label") && r.word(i-1, "can") && r.word(i-2, "we", "it", "i", "that") || r.word(i, "hold") && r.word(i-1, "could", "will", "itll", "can") && r.word(i-2, "we", "it", "i", "that", "heater", "stove") {
		return true // "with the heater we can hold 58"
	}
	if r.word(i, "hold", "holds") {
		_, to := r.clause(i)
		down := r.word(i+1, "them", "it", "em", "those", "everything") && r.opensWithin(i+1, to, "down", "flat", "shut", "tight")
		best := r.word(i-1, "we", "it") && r.free(i+1) && r.opensWithin(i+2, min(i+5, to), "best", "most", "max", "tops")
		return best || down && i > 0 && r.items[i-1].amount != nil // "we hold 22 at best", "does 22 hold them down"
	}
	if !r.word(i, "holding") {
		return false
	}
	j := i - 1
	for r.word(j, "only", "still", "just", "barely", "about", "now") {
		j--
	}
	return r.word(j, "were", "was", "are", "is", "its", "been", "bags", "shes") || r.is(j, kindNoun, "bag", "frame", "press", "pump") || r.is(j, kindVacuum)
}

// pullInInches: in "what's the pull on a 30 by 72 at 24 in" the inches are a gauge's.
func (r *reader) pullInInches() {
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.unit == nil || am.unit.Symbol != "in" || am.value == nil || !r.isBreak(i+1) || am.float() < 10 || am.float() > 30 || !r.pulledToInches(i) && (am.unitRaw != "in" || am.link != linkAt && !r.word(i-1, "at") || r.within(0, i, kindAsk, "face") < 0 || r.amountsIn(0, i) != 2) {
			continue
		}
		u := unit.InHg
		am.unit, am.unitRaw = &u, u.Symbol
	}
}

// pumpsTogether: "2 pumps 3 cfm each" draw twice as much as one.
func (r *reader) pumpsTogether() {
	k := r.measureOf(unit.PumpSpeed)
	if k < 0 {
		return
	}
	at := r.bound[k].from
	if r.oneAtATime() {
		return
	}
	if !r.is(at+1, kindRole, "in a row") && !r.word(at+1, "each", "apiece") {
		return
	}
	for i := 1; i < at; i++ {
		n, counted := r.wholeAt(i - 1)
		if !counted || n < 2 || n > 6 || !r.is(i, kindNoun, "pump") || !isPlural(r.items[i].word) || !r.free(i-1) {
			continue
		}
		one, _ := r.bound[k].fact.Value.(unit.Number)
		r.bound[k].fact.Value, r.bound[k].fact.Text = one*unit.Number(n), r.textOf(i-1, at+1)
		r.items[i-1].used = true
		return
	}
}

// asksOfGauge: "is the gauge at the pump the same as in the bag", "which gauge counts".
func (r *reader) asksOfGauge() bool {
	gauge := r.within(0, len(r.items), kindVacuum, "gauge")
	if gauge < 0 {
		return false
	}
	for i := range r.items {
		if r.isStop(i) && i+1 < len(r.items) || r.is(i, kindPeril) {
			return false // more than that is said
		}
	}
	if r.mentions(kindPeril) || r.amountsIn(0, len(r.items)) > 0 || !r.mentions(kindNoun, "pump") || !r.mentions(kindNoun, "bag", "press", "frame", "bed") && !r.wordIn("trust", "believe", "rely") {
		return false
	}
	if !r.wordIn("same", "same as", "different", "differ", "trust", "believe", "rely", "agree", "match", "counts", "count", "right") {
		return false
	}
	for i := range r.items {
		r.items[i].used = true
	}
	r.phrase.Asks = []Ask{{About: Words}}
	r.phrase.Terms = []string{"pump gauge"}
	return true
}

// oneAtATime reports whether of several pumps not all run: "one runs at a time".
func (r *reader) oneAtATime() bool {
	for i := range r.items {
		am := r.items[i].amount
		if r.word(i, "spare", "only", "backup", "either", "instead", "alternate", "single", "one", "standby") || am != nil && am.form == formWords && am.equals(one) {
			return true
		}
	}
	return false
}

// pulledToInches: "how long to pull 22 inches" wants what a gauge shows.
func (r *reader) pulledToInches(i int) bool {
	return r.is(i-1, kindAsk) && (strings.HasSuffix(r.items[i-1].word, " to pull") || strings.HasSuffix(r.items[i-1].word, " to reach")) && (r.saidFlow() || r.mentions(kindNoun, "pump"))
}

// onPumpsPlate: what "the plate on the pump reads 3.8" tells is no vacuum.
func (r *reader) onPumpsPlate(i int) bool {
	if !r.means(kindNoun, "pump") {
		return false
	}
	from, _ := r.clause(i)
	return r.items[i].amount.float() < 10 && r.items[i].amount.bare() && !r.habit.Metric && r.within(from, i, kindNoun, "pump") >= 0 && r.opensWithin(from, i, "plate", "nameplate", "tag", "sticker", "label")
}

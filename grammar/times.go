package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// goalTime takes the time that a pump which is asked for has to make.
func (r *reader) goalTime(i int) bool {
	if r.solving != unit.PumpSpeed && r.solving != unit.PressVolume {
		return false
	}
	for k := range r.phrase.Asks {
		a := &r.phrase.Asks[k]
		if a.Solve != r.solving || a.Goal != nil {
			continue
		}
		v, u, _ := r.valueOf(r.items[i].amount, unit.Pump)
		if impossible(unit.Pump, v) != "" {
			return false
		}
		r.items[i].used = true
		a.Goal = map[unit.Field]Fact{unit.Pump: {Field: unit.Pump, Value: unit.Number(v), Unit: u, Text: r.items[i].text}}
		return true
	}
	return false
}

// labelled reports whether the clause, or the sentence up to item i, speaks of
// what the container says.
func (r *reader) labelled(i int) bool {
	from, to := r.sentence(i)
	if to < len(r.items) && r.items[to].brk == '(' && r.within(to, min(to+6, len(r.items)), kindRole, "label") >= 0 {
		return true // "open 10 min / closed 15 (off the label)"
	}
	return r.within(from, i, kindRole, "label") >= 0 || r.glueSays(from, i) || r.fromContainer(from, i)
}

// glueSays: "glue says open 8 close 12".
func (r *reader) glueSays(from, to int) bool {
	k := r.within(from, to, kindSay, "say")
	return k > from && (r.word(k-1, "glue", "it", "bottle", "jug") || r.is(k-1, kindGlue)) && r.mentions(kindRole, "open", "closed")
}

// durations reads times: of the label, in the press, of the lay-up.
func (r *reader) durations() {
	labelled, timed := r.means(kindRole, "label") && r.means(kindSay), r.means(kindRole, "clamp", "open", "closed", "layup")
	for i := range r.items {
		if labelled && r.labelInstead(i) {
			continue
		}
		if timed && r.bareMinutes(i) {
			u := unit.Minute
			r.items[i].amount.unit = &u
		}
		if !r.free(i) || !r.items[i].amount.is(unit.Lasting) || r.goalTime(i) {
			continue
		}
		if f := r.durationField(i); f != "" {
			r.bind(i, f)
		}
	}
	unloading := r.mentions(kindRole, "unload")
	for i := 0; unloading && i < len(r.items); i++ { // "unloading 5", "25 min to lay up and 20 to unload"
		if r.free(i) && r.items[i].amount.bare() && (r.is(r.prev(i), kindRole, "unload") || r.is(r.next(i), kindRole, "unload")) {
			r.bind(i, unit.Unload)
		}
	}
	layup := r.means(kindRole, "layup")
	for i := 0; layup && i < len(r.items); i++ { // "45 min press 10 to load", "open time 5 min, I need 9 to lay up"
		if r.free(i) && r.items[i].amount.bare() && r.items[i].amount.form != formPair && r.is(i+1, kindRole, "layup") && (r.has(unit.PressTime) || r.has(unit.LabelOpen)) && !r.has(unit.LayupPanel) && !r.has(unit.LayupLoad) {
			u := unit.Minute
			r.items[i].amount.unit = &u
			r.bind(i, unit.LayupLoad)
		}
	}
	labels := r.habit.Follows || r.means(kindRole, "label", "open", "closed")
	for i := 0; labels && i < len(r.items); i++ { // "45 min open, 10 closed"
		if r.free(i) && r.items[i].amount.bare() && r.items[i].amount.form != formPair {
			if f := r.labelRole(i); f != "" && (r.labelled(i) || r.labelAgain(i)) {
				r.bind(i, f)
			}
		}
	}
}

// bareMinutes: "press time 40", "open time is 8", and "layup 10" in a later message.
func (r *reader) bareMinutes(i int) bool {
	if !r.free(i) || !r.items[i].amount.bare() || r.items[i].amount.form == formPair || r.items[i].amount.value == nil || r.next(i) >= 0 && !r.word(i+1, "and", "but", "so") {
		return false
	}
	j := i - 1
	for r.word(j, "is", "was", "of", "at", "about", "now", "to", "its") {
		j--
	}
	timed := strings.HasSuffix(r.items[max(j, 0)].word, "time")
	return r.is(j, kindRole, "clamp", "open", "closed") && timed || (r.habit.Follows || r.mentions(kindRole, "open", "closed")) && r.is(j, kindRole, "layup") && strings.HasPrefix(r.items[j].word, "lay")
}

func (r *reader) labelRole(i int) unit.Field {
	near := []int{r.next(i), r.prev(i)}
	if r.is(i-1, kindRole) && i+2 < len(r.items) && r.items[i+2].amount != nil {
		near = near[1:] // "open 8 closed 12" names each before its number
	}
	for _, j := range near {
		switch {
		case r.is(j, kindRole, "open"):
			return unit.LabelOpen
		case r.is(j, kindRole, "closed"), r.is(j, kindAsk, "glue:closed_time_s"), r.word(j, "close", "closes", "shut") && r.mentions(kindRole, "open"):
			return unit.LabelClosed
		case r.is(j, kindRole, "clamp"), r.is(j, kindNoun, "press") && (j == i-1 || j == i+1 && r.isBreak(j+1) && r.items[j].word == "press" && r.items[i].amount.float() > 4), r.is(j, kindAsk, "glue:press_time_min"):
			return unit.LabelPress
		}
	}
	return ""
}

// inPress: "25 min open and 4 hours in the press".
func (r *reader) inPress(i int) bool {
	if !r.word(i, "in") {
		return false
	}
	for i++; r.word(i, "the", "a", "your"); i++ {
	}
	return r.is(i, kindNoun, "press", "bag", "frame")
}

// unloadsLater: of "takes us 20 min and unloading 5 min" the first is not the unloading.
func (r *reader) unloadsLater(i, to int) bool {
	k := r.within(i, min(i+4, to), kindRole, "unload")
	return k > i+1 && (r.word(k-1, "and", "then") || r.isBreak(k-1)) && r.free(k+1)
}

// longestCure is, in seconds, from where a cure is rather to full strength than in the
// press; our estimate.
const longestCure = 8 * 3600

// curesFor: "cure 3 hr", "3 hr cure".
func (r *reader) curesFor(i int) bool {
	at := i - 1
	for r.word(at, "time", "is", "for", "takes", "in") || r.is(at, kindUnit) && r.word(at, "in") {
		at--
	}
	from, to := r.sentence(i)
	am := r.items[i].amount
	if am.unit == nil || am.unit.SI(am.float()) > longestCure || r.has(unit.PressTime) || r.opensWithin(from, to, "full", "fully", "strength", "before", "final", "complete") {
		return false
	}
	return r.word(at, "cure", "cures", "curing", "cure time") || r.word(i+1, "cure", "cures", "curing")
}

func (r *reader) durationField(i int) unit.Field {
	from, to := r.window(i)
	if r.within(from, to, kindRole, "unload", "layup", "open", "closed", "clamp") < 0 {
		from, to = r.clause(i)
	}
	if r.labelled(i) && (r.inPress(i+1) || r.is(r.prev(i), kindNoun, "press") || r.is(r.next(i), kindNoun, "press") && r.isBreak(r.next(i)+1)) {
		return unit.LabelPress
	}
	label := r.labelled(i) || r.within(i, to, kindRole, "label") >= 0
	role := r.labelRole(i)
	if role == "" {
		for _, f := range []struct {
			id    string
			field unit.Field
		}{{"open", unit.LabelOpen}, {"closed", unit.LabelClosed}, {"clamp", unit.LabelPress}} {
			if r.within(from, to, kindRole, f.id) >= 0 {
				role = f.field
			}
		}
	}
	if r.is(i+1, kindNoun, "press") && i+2 < len(r.items) && r.items[i+2].amount != nil && !r.labelled(i) {
		return unit.PressTime // "45 min press 10 to load"
	}
	if (r.topic == Schedule || r.dayPlan()) && r.word(i+1, "in") && r.isBreak(i+2) && !r.labelled(i) {
		return unit.PressTime // "40 min in, 8 min to lay up"
	}
	if r.underVacuum(i) || r.inFor(i) {
		return unit.PressTime
	}
	switch {
	case r.closingTook(i):
		return unit.LayupLoad
	case r.perStrip(i):
		return "" // the time for a panel is not said
	case r.leftIn(i) || r.pressedFor(i), r.timeEnough(i), r.habit.Follows && r.needsIn(i):
		return unit.PressTime
	case r.within(from, to, kindRole, "unload") >= 0 && !(r.within(from, i, kindRole, "layup") >= 0 && r.within(from, i, kindRole, "unload") < 0 && (r.within(i, min(i+4, to), kindRole, "unload") < 0 || r.unloadsLater(i, to))) || r.word(r.prev(i), "unload"):
		return unit.Unload
	case r.within(from, to, kindRole, "layup") >= 0:
		if r.within(from, to, kindVerb, "show") >= 0 || r.word(r.next(i), "load") || r.perLoad(i) {
			return unit.LayupLoad
		}
		return unit.LayupPanel
	case (role == unit.LabelOpen || role == unit.LabelClosed) && r.eachPanel(i):
		return unit.LayupPanel
	case role == unit.LabelPress && !label, !label && r.curesFor(i) && (r.topic == Schedule || r.dayPlan()):
		return unit.PressTime
	case role != "" && !label && r.word(i+1, "into", "ago", "later", "since") && (r.isBreak(i+2) || r.word(i+2, "it", "the", "i", "we", "when")):
		return "" // "20 minutes into it I noticed one joint isn't closed"
	case role != "" && (label || role != unit.LabelPress):
		return role
	case role == "" && r.labelled(i) && r.asksPressFor() && !r.mentions(kindRole, "open", "closed", "layup"):
		return unit.LabelPress // "how long do i leave it? the can says 8 hours"
	case r.perPanel(i):
		return unit.LayupPanel
	case (r.within(from, to, kindNoun, "press", "bag", "frame") >= 0 || r.within(from, to, kindVerb, "in") >= 0) && (r.topic == Schedule || r.mentions(kindNoun, "panel")):
		return unit.PressTime
	}
	return ""
}

// underVacuum: "55 min under vacuum" of panels, and no time that a pump or a leak takes.
func (r *reader) underVacuum(i int) bool {
	panels := r.mentions(kindNoun, "panel") && !r.mentions(kindNoun, "pump", "leak") && !r.word(i-1, "after", "within", "in")
	return (r.topic == Schedule || r.dayPlan() || panels) && (r.word(i+1, "under vacuum") || r.word(i+1, "under") && (r.word(i+2, "vac", "vacuum") || r.underFilm(i+2))) && !r.labelled(i)
}

// perStrip: "15 sec each to glue" of strips that were counted.
func (r *reader) perStrip(i int) bool {
	each := r.is(i+1, kindRole, "in a row") || r.word(i+1, "apiece", "ea", "each") || r.word(i+1, "a", "per", "every")
	if !each {
		return false
	}
	if r.is(i+2, kindNoun) {
		if r.items[i+2].word == "piece" && r.mentions(kindNoun, "panel") {
			return false // "6 minutes a piece" of doors
		}
		return r.is(i+2, kindNoun, "strip")
	}
	return r.mentions(kindNoun, "strip") && !r.mentions(kindNoun, "panel") && !r.word(i+1, "a", "per", "every")
}

// pressedFor: "is 40 minutes in the press ok", "can I pull it after 30 minutes".
func (r *reader) pressedFor(i int) bool {
	if r.labelled(i) || r.within(0, len(r.items), kindGlue) < 0 && !r.habit.Follows || r.mentions(kindNoun, "leak", "pump") || r.pressureSaid() {
		return false
	}
	from, to := r.clause(i)
	_, end := r.sentence(i)
	if r.within(i, end, kindRole, "label") >= 0 || r.opensWithin(i, to, "last", "usually", "normally", "before") {
		return false
	}
	if n := r.next(i); n == i+2 && r.word(i+1, "in") && r.is(n, kindNoun, "press", "bag", "frame") || r.word(i+1, "in") && r.word(i+2, "the") && r.is(i+3, kindNoun, "press", "bag", "frame") {
		return true
	}
	return r.word(i-1, "after", "at") && r.opensWithin(from, to, "can", "could", "ok", "okay", "safe", "should", "may") && (r.opensWithin(from, i, "take", "open", "unload", "remove") || r.within(from, i, kindVacuum, "pull") >= 0 || r.within(from, i, kindVerb, "out") >= 0)
}

// asksPressTime reports whether a time in the press is asked about.
func (r *reader) asksPressTime() bool {
	if !r.said(unit.Lasting) || !r.asksSomething() && !r.word(r.firstWord(), "is", "can", "will", "would", "should", "could") {
		return false
	}
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.is(unit.Lasting) && !r.asksFor(Schedule) && !r.dayPlan() && r.pressedFor(i) {
			return true
		}
	}
	return false
}

// leftIn: "leave each load in 10 hours", "leave em in 90 min".
func (r *reader) leftIn(i int) bool {
	if r.is(i-1, kindRole, "clamp") && strings.HasPrefix(r.items[i-1].word, "leave") && !r.labelled(i) {
		return true // "25 min to lay up a load and I leave it in 90 min"
	}
	for j := i - 1; j >= 0 && j >= i-6 && !r.isBreak(j); j-- {
		if r.word(j, "leave", "leaving", "left", "keep", "stays", "stay") {
			return !r.labelled(i)
		}
		if r.items[j].amount != nil {
			return false
		}
	}
	return false
}

func (r *reader) perLoad(i int) bool {
	for j := i + 1; j <= i+4 && j < len(r.items); j++ {
		if r.word(j, "load") || r.is(j, kindVerb, "show") && strings.Contains(r.items[j].word, "load") || r.is(j, kindAsk) && strings.Contains(r.items[j].word, "load") {
			return true
		}
	}
	return false
}

// eachPanel: "8 min a panel" with nothing between.
func (r *reader) eachPanel(i int) bool {
	return (r.word(i+1, "a", "per", "each", "every") || r.is(i+1, kindRole, "in a row")) && r.is(i+2, kindNoun, "panel")
}

func (r *reader) perPanel(i int) bool {
	for j := i + 1; j <= i+3 && j < len(r.items); j++ {
		if r.is(j, kindNoun, "panel") && (r.word(j-1, "a", "per", "each", "every") || r.is(j-1, kindRole, "in a row")) {
			return true
		}
	}
	return false
}

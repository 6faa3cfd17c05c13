package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// What is told of when a pump goes off and on: hours of the day, or readings of its gauge.

// killPumpHours: "the pump shuts off at 10 pm, comes back at 6" are no hours of a day's work.
func (r *reader) killPumpHours() {
	if !r.says("at", "from", "around", "until", "till") || !r.means(kindAsk, "pump:hold_s") && !r.means(kindNoun, "pump") && !r.says("power", "mains", "electric") {
		return
	}
	for k := range r.items {
		if r.is(k, kindAsk, "pump:hold_s") && (strings.HasPrefix(r.items[k].word, "power ") || strings.HasPrefix(r.items[k].word, "pump ")) && r.atHour(k+1) {
			r.items[k+2].amount.dead = true
			r.killArrival(k + 3)
			continue
		}
		asked := r.is(k, kindAsk, "pump:hold_s") && strings.HasSuffix(r.items[k].word, " power")
		if !asked && !r.is(k, kindNoun, "pump") && !r.word(k, "power", "mains", "electric") || !r.word(k+1, "dies", "died", "quits", "fails", "trips", "cuts", "shuts", "goes", "turns", "switches", "gets", "comes", "kicks", "is") {
			continue
		}
		j := k + 2
		for r.word(j, "off", "on", "back", "out", "down", "itself", "turned", "switched", "shut") {
			j++
		}
		if j == k+2 && !r.word(k+1, "dies", "died", "quits", "fails", "trips") || !r.atHour(j) {
			continue
		}
		r.items[j+1].amount.dead = true
		for j += 2; j < len(r.items) && j < k+14 && !r.isStop(j); j++ {
			if r.word(j, "back", "on", "there", "in") && r.atHour(j+1) {
				r.items[j+2].amount.dead = true
			}
		}
	}
}

// killArrival: "… and I'm there at 7" tells no start of the day, from item k on.
func (r *reader) killArrival(k int) {
	for ; k+1 < len(r.items) && !r.isStop(k); k++ {
		if r.word(k, "there", "in", "back", "here") && r.atHour(k+1) {
			r.items[k+2].amount.dead = true
		}
	}
}

// killCycle: "the pump shuts off at 24 and comes back at 20" tells between which readings the
// vacuum goes up and down, and not which of them is meant.
func (r *reader) killCycle() {
	if !r.mentions(kindNoun, "pump") || r.opens("how") >= 0 || r.mentions(kindAsk, "pump") {
		return
	}
	off := -1
	for i := range r.items {
		if !r.live(i) || !r.gaugeReading(i) || r.linkedOn(i) {
			continue
		}
		k := i - 1
		for r.word(k, "at", "around", "about", "again") {
			k--
		}
		switch {
		case r.is(k, kindRole, "limit") && k == i-1 || r.word(k, "off", "out", "stops", "quits") && k < i-1:
			off = i
		case off >= 0 && k < i-1 && r.items[i].amount.float() < r.items[off].amount.float() && (r.word(k, "back", "in", "on", "starts", "restarts") || r.is(k, kindRole, "start")):
			r.cycleAsked(off, i)
			return
		}
	}
}

// cycleAsked asks which of the two readings counts, where nothing else is asked of them.
func (r *reader) cycleAsked(off, on int) {
	high, low := &r.items[off], &r.items[on]
	high.amount.dead, low.amount.dead = true, true
	if r.is(off-1, kindRole, "limit") {
		r.items[off-1].meaning = meaning{}
	}
	if !r.mentions(kindNoun, "leak") && !r.saidFlow() && !r.timeSaid() {
		r.phrase.Clashes = append(r.phrase.Clashes, Clash{unit.Vacuum, []string{high.text, low.text}})
		r.phrase.Asks = append(r.phrase.Asks, Ask{About: Face, weak: true})
	}
}

// atHour reports whether "at" and an hour of the day stand at item j.
func (r *reader) atHour(j int) bool {
	if !r.word(j, "at", "from", "around", "until", "till") || !r.live(j+1) {
		return false
	}
	am := r.items[j+1].amount
	return am.form == formPair || am.bare() && am.float() <= 12
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// leakTests reads leaks of which a gauge's two readings were told, before the readings and
// the times can be taken for something else.
func (r *reader) leakTests() {
	if r.has(unit.Leak) || !r.timeSaid() {
		return
	}
	if r.leakWatched() && r.watchedByClock() {
		return
	}
	for i := range r.items {
		if r.free(i) && !r.linkedOn(i) && r.gaugeReading(i) && r.fellFrom(i) {
			return
		}
	}
}

// fellFrom: "shut it off at 25 and it's down to 24 in about 90 seconds", "it dropped from 25
// 1/2 to 25 while I ate, say 20 minutes"; the first reading is at item a.
func (r *reader) fellFrom(a int) bool {
	b := r.nextAmount(a, len(r.items))
	if b < 0 || !r.free(b) {
		return false
	}
	r.inNoInch(b)
	if !r.gaugeReading(b) || r.items[b].amount.float() >= r.items[a].amount.float() || !r.saysLevel(b) || !r.shutBefore(a) && !r.fallsFrom(a) {
		return false
	}
	t := r.nextAmount(b, len(r.items))
	if t < 0 || t > b+10 || !r.free(t) || !r.items[t].amount.is(unit.Lasting) || r.items[t].amount.value == nil || !r.spanOf(b, t) {
		return false
	}
	r.leakBetween(a, b, t)
	return r.items[t].used
}

// linkedOn reports whether the amount at item i goes on from the one before: "24 x 48".
func (r *reader) linkedOn(i int) bool {
	return r.items[i].amount.link != linkNone && i > 0 && r.items[i-1].amount != nil
}

// saysLevel reports whether what stands before item b says that a gauge came to it.
func (r *reader) saysLevel(b int) bool {
	k := b - 1
	for r.word(k, "about", "around", "maybe", "like") {
		k--
	}
	return r.items[b].amount.link == linkTo || r.items[b].amount.link == linkAt || r.word(k, "to", "at", "on", "down") || r.is(k, kindVacuum, "pull") && in(r.items[k].word, "down to", "sitting at", "sits at", "sat at", "reads", "reading", "shows", "showing")
}

// shutBefore: "shut it off at 25", "isolated at 25" opens the sentence of item i.
func (r *reader) shutBefore(i int) bool {
	from, _ := r.sentence(i)
	return r.opensWithin(from, i, "shut", "shut it", "isolate", "isolated", "valved") || r.opensWithin(from, i, "valve") && r.opensWithin(from, i, "closed", "close")
}

// fallsFrom: "it dropped from 25 1/2 to 25", "goes from 25 down to 23".
func (r *reader) fallsFrom(i int) bool {
	if !r.word(i-1, "from") {
		return false
	}
	k := i - 2
	for r.word(k, "down", "it", "slowly", "straight") {
		k--
	}
	return r.is(k, kindNoun, "leak") || r.word(k, "went", "goes", "gone", "going", "dropped", "drops", "fell", "falls", "sank", "sinks", "slid", "slides", "crept", "creeps", "came", "drifted", "drifts", "slipped")
}

// spanOf reports whether the time at item t is that in which a gauge came to item b: "in
// about 90 seconds", "10 minutes later", "say 20 minutes".
func (r *reader) spanOf(b, t int) bool {
	k := t - 1
	for r.word(k, "about", "around", "maybe", "roughly", "like", "some", "only", "just") {
		k--
	}
	switch {
	case k == b: // the "in" was read with the number
		return strings.HasSuffix(r.items[b].text, " in") || r.inBefore(t)
	case r.word(k, "in", "over", "after", "within", "inside", "say", "took", "under") || r.is(k, kindRole, "length") || r.inBefore(t) || r.is(k, kindSay) && r.word(k, "say"):
		return !r.word(k-1, "stays", "stay", "press", "leave")
	case r.word(t+1, "later", "after", "on", "afterwards") || r.is(t+1, kindRole, "ago"):
		return true
	}
	return r.isBreak(k) && r.isBreak(t+1) && !r.opensWithin(b, t, "press", "clamp", "cure", "cures", "for")
}

// halfFull lists "half of it is full with wood" as unread: how much air is left to pump
// depends on it, and nobody knows how well it was guessed.
func (r *reader) halfFull() {
	if !r.mentions(kindNoun, "press", "frame", "bag", "pump") {
		return
	}
	for f := range r.items {
		if !r.word(f, "full", "filled", "taken", "occupied", "used") || r.items[f].used || !r.mentions(kindNoun, "pump") && !r.saidFlow() {
			continue
		}
		for k := f - 1; k >= 0 && k >= f-6 && !r.isBreak(k); k-- {
			if r.spokenHalf(k) || r.word(k, "half", "most", "third") {
				r.unuse(r.textOf(k, f))
				r.phrase.Negated = append(r.phrase.Negated, r.textOf(k, f))
				break
			}
		}
	}
}

// killPumpHours: "the pump shuts off at 10 pm, comes back at 6" are no hours of a day's work.
func (r *reader) killPumpHours() {
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

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// shifts are words behind a time by which a clock time of the thread moves, and
// whether to an earlier one.
var shifts = map[string]bool{"earlier": true, "sooner": true, "later": false}

// clockShift reads "start half an hour earlier", "push the start back an hour".
func (r *reader) clockShift() {
	if r.amountsIn(0, len(r.items)) != 1 {
		return
	}
	for i := range r.items {
		am := r.items[i].amount
		if !r.free(i) || !am.is(unit.Lasting) || am.value == nil {
			continue
		}
		less, behind := shifts[r.wordAt(i+1)]
		start, end := r.clockWord("start"), r.clockWord("deadline") || r.mentions(kindVerb, "out") && r.wordIn("has", "have", "must", "gotta", "needs")
		if !behind && !(start && r.opensWithin(0, i, "push", "pushed", "move", "moved", "put") && r.opensWithin(0, i, "back")) {
			return
		}
		f := unit.StartTime
		switch {
		case end && !start:
			f = unit.Deadline
		case !start && !r.nothingElse(i, i+1):
			return
		}
		for k := range r.items {
			if k == i+1 && behind || r.is(k, kindAsk, "schedule") || r.is(k, kindRole, "start", "deadline") {
				r.items[k].used, r.items[k].meaning = true, meaning{}
			}
		}
		r.items[i].used = true
		r.phrase.Changes = append(r.phrase.Changes, Change{By: r.amendment(i), Less: less, Fields: []unit.Field{f}})
		return
	}
}

// heldUp are words that say that the day begins later than was told.
var heldUp = wordSet(`late overslept delayed delay hold-up holdup behind stuck`)

// lostTime reports whether a thread says that time was lost before the work began: "we lost
// the first hour", "overslept", "running late".
func (r *reader) lostTime() bool {
	if !r.habit.Follows || r.mentions(kindNoun, "strip", "panel", "bar", "load") {
		return false
	}
	lost := false
	for k := range r.items {
		switch it := &r.items[k]; {
		case it.amount != nil:
			if lost && it.amount.is(unit.Lasting) {
				return true // "we lost an hour"
			}
		case heldUp[it.word]:
			return true
		case r.word(k, "lost", "losing", "wasted", "missed"):
			lost = true
		case lost && (r.word(k, "hour", "hours", "morning") || r.is(k, kindUnit) && strings.HasPrefix(it.word, "hour")):
			return true
		}
	}
	return false
}

// laterStart: "and we lost the first hour, so 9", "running late, call it 8:30" tell when the
// day begins now.
func (r *reader) laterStart(i int) bool {
	const earliest, latest = 7, 12 // a day that begins late begins at no 6
	if !r.habit.Follows || !r.hourOfDay(i) || r.word(i+1, "of") || !r.lostTime() {
		return false
	}
	if am := r.items[i].amount; am.form != formPair && (am.float() < earliest || am.float() > latest) {
		return false
	}
	from, to := r.clause(i)
	for k := i - 1; k > from; k-- {
		if r.word(k, "so") {
			from = k
		}
	}
	for k := from; k < to; k++ {
		if k != i && !r.idle(k) && !r.is(k, kindFix) && !r.is(k, kindRole, "am") && !r.word(k, "so", "its", "now", "then", "say", "call", "it", "at", "from", "and", "more", "like") || r.word(k, "only", "left") {
			return false
		}
	}
	return true
}

// clockWord reports whether the message names the start or the deadline.
func (r *reader) clockWord(role string) bool {
	return r.mentions(kindRole, role) || role == "start" && r.wordIn("start")
}

// nothingElse reports whether the message says nothing beside items from to to.
func (r *reader) nothingElse(from, to int) bool {
	for k := range r.items {
		if (k < from || k > to) && !r.idle(k) && !r.isBreak(k) && !r.word(k, "and", "if", "what", "about", "say", "its", "we", "i", "then", "make", "it", "that", "but") && !r.is(k, kindFix) {
			return false
		}
	}
	return true
}

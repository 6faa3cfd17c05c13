package grammar

import "presshand/engine/unit"

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

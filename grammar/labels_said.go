package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// Times of a label that are told without the word for them.

// asksPressFor reports whether a message asks how long the work stays in the press.
func (r *reader) asksPressFor() bool {
	return slices.ContainsFunc(r.phrase.Asks, func(a Ask) bool { return a.About == Glue && slices.Contains(a.For, "press_time_min") })
}

// A bare number beside hours is of hours up to the first, and of minutes from the second on.
const mostHours, leastMinutes = 8, 20

// labelInstead gives the bare number of "my teacher said open time is 10 minutes but the
// label says 6" the part of the time that it takes the place of.
func (r *reader) labelInstead(i int) bool {
	if !r.free(i) || !r.items[i].amount.bare() || !r.isBreak(i+1) || !r.is(i-1, kindSay) {
		return false
	}
	from, _ := r.clause(i)
	if r.within(from, i, kindRole, "label") < 0 || r.within(from, i, kindRole, "label") < i-5 {
		return false
	}
	for k := i - 1; k >= 0; k-- {
		am := r.items[k].amount
		if am == nil {
			continue
		}
		f := r.labelRole(k)
		if !am.is(unit.Lasting) || !am.dead && !am.hearsay || f != unit.LabelOpen && f != unit.LabelClosed && f != unit.LabelPress {
			return false
		}
		u, v := *am.unit, r.items[i].amount.float()
		if u.Symbol == "h" && v > mostHours {
			if u = unit.Minute; v < leastMinutes {
				return false
			}
		}
		r.items[i].amount.unit = &u
		return r.bind(i, f)
	}
	return false
}

// fromContainer: in "Tin of D4 here. Open time 8 mins, press 30 mins at 20 deg" a sentence without
// numbers names the container, and the times of the next are what stands on it. The sentence
// of the number at item i begins at from.
func (r *reader) fromContainer(from, i int) bool {
	if from < 2 || !r.mentions(kindRole, "label") {
		return false
	}
	at := r.within(from, i+1, kindRole, "open", "closed")
	times := at >= 0 && !r.word(at+1, "the", "up", "it", "press", "bag")
	_, to := r.sentence(i)
	if start, _ := r.clause(i); r.asksIn(from, to) || r.opensWithin(start, i, "we", "i", "weve", "ive", "our", "my", "us", "lads", "can", "should") {
		return false
	}
	for from >= 2 {
		start, end := r.sentence(from - 2)
		if r.within(start, end, kindRole, "label") >= 0 {
			return times && r.amountsIn(start, end) == 0 && !r.asksIn(start, end) && !r.opensWithin(start, end, "missing", "gone", "lost", "empty", "unreadable", "illegible", "no")
		}
		if r.within(start, end, kindRole, "open", "closed") < 0 || r.amountsIn(start, end) == 0 {
			return false
		}
		times, from = true, start
	}
	return false
}

// asksIn reports whether [from, to) is a question.
func (r *reader) asksIn(from, to int) bool {
	return to < len(r.items) && r.items[to].word == "?" || r.within(from, to, kindAsk) >= 0
}

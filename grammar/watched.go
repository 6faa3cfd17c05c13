package grammar

import "presshand/engine/unit"

// watched reads a leak told by a gauge that was looked at twice: "shut the valve
// at 24, came back 40 min later and it was on 21".
func (r *reader) watched() {
	if !r.timeSaid() || r.has(unit.Leak) || !r.leakWatched() {
		return
	}
	var readings []int
	span := -1
	for i := range r.items {
		switch {
		case !r.free(i):
		case r.items[i].amount.is(unit.Lasting) && span < 0:
			span = i
		case r.items[i].amount.is(unit.Lasting):
			return
		case r.gaugeReading(i) && r.items[i].amount.link == linkNone && !r.items[i].amount.hearsay:
			readings = append(readings, i)
		}
	}
	if span < 0 || len(readings) != 2 || span < readings[0] || !r.mentions(kindVacuum) && !r.mentions(kindNoun, "leak") && !r.items[readings[0]].amount.is(unit.Pressing) {
		return
	}
	if !r.word(span+1, "later", "after", "on", "afterwards", "since") && !r.word(span-1, "after", "within", "over") && !r.inBefore(span) && !r.is(span+1, kindRole, "ago") {
		return
	}
	r.leakBetween(readings[0], readings[1], span)
}

// leakWatched reports whether a message speaks of a leak, or of a press that was shut off.
func (r *reader) leakWatched() bool {
	return r.mentions(kindNoun, "leak") || r.wordIn("valve", "shut", "closed", "isolated", "isolate", "overnight", "later")
}

// timeSaid reports whether a duration or a time of day was told.
func (r *reader) timeSaid() bool {
	for i := range r.items {
		if am := r.items[i].amount; am != nil && (am.is(unit.Lasting) || am.form == formPair) {
			return true
		}
	}
	return false
}

// leakBetween binds the leak that takes a gauge from one reading to the other in
// the time at item span.
func (r *reader) leakBetween(first, second, span int) {
	t := r.items[span].amount
	minutes := t.unit.SI(t.float()) / 60
	if r.leakInMinutes(first, second, minutes, r.items[span].end) {
		r.items[span].used = true
	}
}

// leakInMinutes is leakBetween for so many minutes, told up to the byte end.
func (r *reader) leakInMinutes(first, second int, minutes float64, end int) bool {
	a, b := r.items[first].amount, r.items[second].amount
	u := a.unit
	if u == nil {
		bare := r.bareVacuumUnit(a)
		u = &bare
	}
	v := u
	if b.unit != nil {
		v = b.unit
	}
	lost := u.SI(a.float()) - v.SI(b.float())
	if lost <= 0 || minutes <= 0 {
		return false
	}
	a.unit = u
	if r.items[first].used = true; !r.pullsElse(first, second) {
		r.bind(first, unit.Vacuum)
	}
	r.items[second].used = true
	text := r.text[r.items[first].start:max(r.items[second].end, end)]
	r.bound = append(r.bound, binding{Fact{Field: unit.Leak, Value: unit.Number(round(lost / 1000 / minutes)), Unit: leakUnit(*u), Text: text}, first, false})
	return true
}

// pullsElse: of "falls from 25 to 24 in 10 min, how long to 22 inHg" the first two tell only
// of the leak.
func (r *reader) pullsElse(first, second int) bool {
	for k := range r.items {
		if k == first || k == second || !r.live(k) || !r.gaugeReading(k) {
			continue
		}
		p := k - 1
		for r.word(p, "it", "about", "a") || r.is(p, kindVacuum) {
			p--
		}
		if r.items[k].amount.is(unit.Pressing) && r.within(max(k-4, 0), k, kindRole, "limit") < 0 || r.word(p, "to", "see", "want", "need", "hits", "reads", "says") || r.is(p, kindSay) {
			return true
		}
	}
	return false
}

// watchedByClock reads "25 at 9:00 and 21.5 at 9:35, valve shut".
func (r *reader) watchedByClock() bool {
	var readings, clocks []int
	for i := range r.items {
		am := r.items[i].amount
		switch {
		case am == nil:
		case !r.free(i) || am.is(unit.Lasting):
			return false
		case am.form == formPair && am.unit == nil:
			clocks = append(clocks, i)
		case r.word(i-1, "above", "over", "below", "under", "past", "til", "till", "until"): // "how long would it hold above 20"
		case (am.link == linkAt || !r.linkedOn(i)) && (r.gaugeReading(i) || am.bare() && am.float() >= 5):
			readings = append(readings, i)
		}
	}
	if len(readings) != 2 || len(clocks) != 2 || max(readings[0], clocks[0]) > min(readings[1], clocks[1]) {
		return false
	}
	minute := func(i int) int { return r.items[i].amount.pair[0]*60 + r.items[i].amount.pair[1] }
	const half = 12 * 60
	minutes := (minute(clocks[1]) - minute(clocks[0]) + 2*half) % half
	if !r.leakInMinutes(readings[0], readings[1], float64(minutes), r.items[clocks[1]].end) {
		return false
	}
	r.items[clocks[0]].used, r.items[clocks[1]].used = true, true
	return true
}

package grammar

import "presshand/engine/unit"

// watched reads a leak told by a gauge that was looked at twice: "shut the valve
// at 24, came back 40 min later and it was on 21".
func (r *reader) watched() {
	if r.has(unit.Leak) || !r.mentions(kindNoun, "leak") && !r.wordIn("valve", "shut", "closed", "isolated", "overnight", "later") {
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
	if span < 0 || len(readings) != 2 || span < readings[0] || !r.mentions(kindVacuum) && !r.items[readings[0]].amount.is(unit.Pressing) {
		return
	}
	if !r.word(span+1, "later", "after", "on", "afterwards", "since") && !r.word(span-1, "after", "in", "within", "over") && !r.is(span+1, kindRole, "ago") {
		return
	}
	r.leakBetween(readings[0], readings[1], span)
}

// leakBetween binds the leak that takes a gauge from one reading to the other in
// the time at item span.
func (r *reader) leakBetween(first, second, span int) {
	a, b, t := r.items[first].amount, r.items[second].amount, r.items[span].amount
	u := a.unit
	if u == nil {
		bare := r.bareVacuumUnit(a)
		u = &bare
	}
	v := u
	if b.unit != nil {
		v = b.unit
	}
	minutes := t.unit.SI(t.float()) / 60
	lost := u.SI(a.float()) - v.SI(b.float())
	if lost <= 0 || minutes <= 0 {
		return
	}
	a.unit = u
	r.bind(first, unit.Vacuum)
	r.items[second].used, r.items[span].used = true, true
	text := r.text[r.items[first].start:max(r.items[second].end, r.items[span].end)]
	r.bound = append(r.bound, binding{Fact{Field: unit.Leak, Value: unit.Number(round(lost / 1000 / minutes)), Unit: leakUnit(*u), Text: text}, first, false})
}

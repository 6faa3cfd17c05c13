package grammar

import "presshand/engine/unit"

// gaugeComesLast: the number that ends "six at 1 3/4 wide, 5/16 thick, 3/4 bar, 26" is
// the gauge's, where strips and a bar were told and no vacuum was.
func (r *reader) gaugeComesLast(i int) bool {
	const low, high, told = 18, 29.5, 4
	a := r.items[i].amount
	if r.habit.Metric || r.habit.Follows || a.form != formInt && a.form != formDecimal || a.float() < low || a.float() > high || a.link != linkNone {
		return false
	}
	if !r.isBreak(i-1) || !r.isBreak(i+1) || r.amountsIn(i+1, len(r.items)) > 0 || r.said(unit.Pressing) || r.mentions(kindVacuum) || r.has(unit.Vacuum) || r.dayPlan() {
		return false
	}
	bar := r.within(0, i, kindNoun, "bar")
	return bar >= 0 && r.amountsIn(max(bar-3, 0), min(bar+4, i)) > 0 && r.amountsIn(0, i) >= told
}

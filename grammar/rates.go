package grammar

import (
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// rates reads a leak: a pressure in a time, "2 inHg in 10 min", "an inch every 3
// min", "0.5 inHg/min".
func (r *reader) rates() {
	r.halfFull()
	lasting := r.said(unit.Lasting)
	timed := lasting || r.means(kindUnit)
	for i := range r.items {
		if !r.free(i) {
			continue
		}
		am := r.items[i].amount
		if am.is(unit.Leaking) {
			if am.unitRaw == "in/min" || am.unitRaw == "in a minute" || am.unitRaw == "in per minute" {
				if !r.mentions(kindNoun, "leak") && !r.mentions(kindVacuum) {
					continue
				}
			}
			r.bind(i, unit.Leak)
			continue
		}
		if r.solving == unit.PumpSpeed {
			continue
		}
		if n := i + 1; am.bare() && r.free(n) && r.items[n].amount.link == linkTo {
			r.unitOfDrop(i)
		}
		if lasting && am.is(unit.Pressing) && r.dropped(i) {
			continue
		}
		if !timed {
			continue
		}
		if am.is(unit.Pressing) || am.is(unit.Distance) && (r.mentions(kindNoun, "leak") || r.mentions(kindVacuum) || r.word(i-1, "dropped", "drops", "fell", "falls") && r.mentions(kindNoun, "press", "bag", "frame", "pump") || r.mentions(kindAsk, "pump:hold_s")) {
			r.leakOver(i)
		}
		if am.bare() && r.leakWordBefore(i) {
			r.leakOver(i)
		}
	}
	r.rateAgain()
}

// rateAgain: of "we lose 1 inHg in 5 min, no wait 1 in 15" the second is a leak too, in
// the units of the first.
func (r *reader) rateAgain() {
	if len(r.bound) == 0 || r.bound[len(r.bound)-1].fact.Field != unit.Leak || r.mentions(kindNoun, "wedge") {
		return
	}
	last := r.bound[len(r.bound)-1]
	if r.items[last.from].amount.unit == nil {
		return
	}
	for i := last.from + 1; i < len(r.items); i++ {
		j := i + 1
		if r.word(j, "in", "every", "over", "per") {
			j++
		}
		if !r.free(i) || !r.free(j) || r.items[i].amount.value == nil || !r.items[j].amount.bare() || r.items[j].amount.float() <= 0 || r.items[j].amount.link != linkNone || !r.fixedBetween(last.from, i) && !r.leakedThen(last.from, i) {
			continue
		}
		if am := r.items[i].amount; j == i+1 && am.unitRaw != "in" || j > i+1 && !am.bare() {
			continue
		}
		if !r.fixedBetween(last.from, i) {
			r.fixedAt = append(r.fixedAt, i)
		}
		v := round(last.perMinute(r.items) * r.items[i].amount.float() / r.items[j].amount.float())
		r.items[i].used, r.items[j].used = true, true
		r.bound = append(r.bound, binding{Fact{Field: unit.Leak, Value: unit.Number(v), Unit: last.fact.Unit, Text: r.textOf(i, j)}, i, false})
		return
	}
}

// leakedThen: of "leaked 3 inches in 10 min last month, with the new gasket it's 1 in 10" the
// first is how it was.
func (r *reader) leakedThen(a, b int) bool {
	_, to := r.clause(a)
	return r.word(b-1, "its", "now", "is") && (r.opensWithin(a, to, "last", "yesterday", "before", "earlier") || r.within(a, to, kindRole, "ago") >= 0)
}

// perMinute is what a leak of one of its units of pressure in one of its units of time
// comes to.
func (b binding) perMinute(items []item) float64 {
	lost := items[b.from].amount
	minute := 1.0
	for k := b.from + 1; k < len(items) && k < b.from+5; k++ {
		if am := items[k].amount; am != nil && am.is(unit.Lasting) {
			minute = am.unit.SI(1) / 60
			break
		}
	}
	u := *lost.unit
	if u.Dimension == unit.Distance {
		u = unit.InHg // "3 inches in 10 min"
	}
	return u.SI(1) / 1000 / minute
}

// dropped reads "from 0.85 bar to 0.80 bar in 10 min": the gauge's first reading
// and the leak.
func (r *reader) dropped(i int) bool {
	j := i + 1
	for r.is(j, kindNoun, "leak") || r.word(j, "to", "down", "down to", "it", "she", "gauge", "needle", "vacuum", "went", "fell", "sank", "came", "slid", "dropped", "then") || r.is(j, kindVacuum, "gauge", "vacuum") {
		j++
	}
	if j >= len(r.items) || !r.free(j) || r.items[j].amount.link != linkTo && !r.word(j-1, "to", "down to") {
		return false
	}
	a, b := r.items[i].amount, r.items[j].amount
	r.inNoInch(j)
	if !b.is(unit.Pressing) && b.unit != nil || a.value == nil || b.value == nil {
		return false
	}
	k := j + 1
	for k < len(r.items) && r.word(k, "in", "over", "within", "about", "around", "roughly", "nearly", "maybe", "only", "just") || r.is(k, kindRole, "length") {
		k++
	}
	if k >= len(r.items) || r.items[k].amount == nil || !r.items[k].amount.is(unit.Lasting) || r.items[k].amount.float() <= 0 {
		return false
	}
	ub := a.unit
	if b.unit != nil {
		ub = b.unit
	}
	minutes := r.items[k].amount.unit.SI(r.items[k].amount.float()) / 60
	lost := a.unit.SI(a.float()) - ub.SI(b.float())
	if lost < 0 {
		return false
	}
	r.bind(i, unit.Vacuum)
	r.items[j].used, r.items[k].used = true, true
	r.bound = append(r.bound, binding{Fact{Field: unit.Leak, Value: unit.Number(round(lost / 1000 / minutes)), Unit: leakUnit(*a.unit), Text: r.textOf(i, k)}, i, false})
	return true
}

func (r *reader) leakWordBefore(i int) bool {
	return r.means(kindNoun, "leak") && r.is(r.prev(i), kindNoun, "leak")
}

// leakOver joins the pressure at item i with the time in which it is lost.
func (r *reader) leakOver(i int) {
	if !r.means(kindUnit) && !r.said(unit.Lasting) {
		return
	}
	if r.is(r.prev(i), kindVacuum, "pull") && r.word(r.prev(i), "pull", "pulls", "pulled", "pulling", "gets to", "get to") && !r.mentions(kindNoun, "leak") {
		return // "it pulls 22 in about four minutes"
	}
	j := i + 1
	for j < len(r.items) && (r.word(j, "in", "every", "per", "over", "each", "a", "an", "about", "around", "roughly", "nearly", "maybe", "the", "within", "of", "vacuum", "space", "gone", "away", "down") || r.items[j].brk == '/' || r.is(j, kindRole, "length", "in a row") || r.is(j, kindVacuum, "vacuum") || r.is(j, kindNoun, "leak") || r.word(j, "gone in")) {
		j++
	}
	if j == i+1 || j >= len(r.items) {
		return
	}
	t := r.items[j].amount
	minutes := 0.0
	switch {
	case t != nil && t.is(unit.Lasting) && t.value != nil && !r.items[j].used:
		minutes = t.unit.SI(t.float()) / 60
	case t == nil && r.is(j, kindUnit) && r.items[j].unit.Dimension == unit.Lasting:
		minutes = r.items[j].unit.SI(1) / 60
	default:
		return
	}
	if minutes <= 0 {
		return
	}
	am := r.items[i].amount
	u := unit.InHg
	switch {
	case am.is(unit.Pressing):
		u = *am.unit
	case am.is(unit.Distance) && am.unit.Symbol != "in":
		return
	case am.bare() && r.habit.Metric && am.form == formDecimal && am.float() < 1:
		u = unit.Bar // "we lost 0.05 over the 20 minutes"
	case am.bare() && r.habit.Metric:
		u = unit.Mbar
	}
	v := round(u.SI(am.float()) / 1000 / minutes)
	r.items[i].used, r.items[j].used = true, true
	text := r.textOf(i, j)
	if want := impossible(unit.Leak, v); want != "" {
		r.refuse(unit.Leak, text, want)
		return
	}
	r.bound = append(r.bound, binding{Fact{Field: unit.Leak, Value: unit.Number(v), Unit: leakUnit(u), Text: text}, i, r.items[i].amount.hearsay})
}

func leakUnit(u unit.Unit) unit.Unit {
	if u.Metric {
		return unit.KPaPerMin
	}
	return unit.InHgPerMin
}

// ratios reads the taper of a wedge: "1:12", "1 in 12", "taper 12 to 1".
func (r *reader) ratios() {
	wedge := r.mentions(kindNoun, "wedge")
	for i := range r.items {
		if !r.free(i) {
			continue
		}
		am := r.items[i].amount
		if am.form == formPair && (wedge || (am.pair[0] == 1 && !r.dayPlan() && !r.word(i-1, "till", "until", "til", "by", "at", "before", "around", "since", "its") || am.pair[1] == 1) && !r.wordIn("mix", "mixes", "mixed", "mixing", "hardener", "resin")) {
			r.taper(i, i, float64(am.pair[0]), float64(am.pair[1]))
			continue
		}
		if !wedge && !r.oneIn(i) {
			continue
		}
		if a, b, ok := splitRatio(r.items[i].text); ok && wedge && am.value == nil {
			r.taper(i, i, a, b)
			continue
		}
		if k := r.perInch(i); wedge && k > 0 {
			r.items[k].used = true
			r.taper(i, k, am.float(), 1)
			continue
		}
		if i+1 >= len(r.items) {
			continue
		}
		j := i + 1
		if am.unitRaw != "in" && !r.word(j, "in") && !(r.items[j].amount != nil && r.items[j].amount.link == linkTo) {
			continue
		}
		if r.word(j, "in") {
			j++
		}
		a, okA := plainRun(am, wedge)
		if j < len(r.items) && r.items[j].amount != nil {
			if b, okB := plainRun(r.items[j].amount, wedge); okA && okB && (a == 1 || b == 1) && !r.items[j].used && (r.items[j].amount.unit == nil) {
				r.items[j].used = true
				r.taper(i, j, a, b)
			}
		}
	}
}

// perInch is the item of the inch in "1/8 per inch", "1/16 to the inch"; 0 where
// there is none.
func (r *reader) perInch(i int) int {
	am := r.items[i].amount
	k := i + 1
	for k < i+3 && r.word(k, "per", "to", "the", "each", "every", "an") {
		k++
	}
	if k == i+1 || am.value == nil || am.float() <= 0 || am.float() >= 1 || !r.is(k, kindUnit) || r.items[k].unit.Symbol != "in" {
		return 0
	}
	return k
}

// notTapers are words before "1 in" of what stays in the press, or goes up or down by
// an inch.
var notTapers = []string{"leave", "leaving", "bows", "bowed", "lifts", "lifted", "sags", "sagged", "dips", "dipped", "opens", "opened"}

// lastsMore reports whether item i counts hours or minutes: "30 more minutes".
func (r *reader) lastsMore(i int) bool {
	return r.word(i+1, "more", "extra", "odd", "further") && r.is(i+2, kindUnit)
}

// oneIn reports whether "1 in 16" stands at item i with nothing that it could
// measure behind it.
func (r *reader) oneIn(i int) bool {
	am := r.items[i].amount
	if am.unitRaw != "in" && !r.word(i+1, "in") || am.float() != 1 || r.mentions(kindNoun, "leak") {
		return false // "after the new gasket it's 1 in 10" of a leak
	}
	j := i + 1
	if r.word(j, "in") {
		j++
	}
	if j >= len(r.items) || r.items[j].amount == nil || r.items[j].amount.link != linkNone || r.is(i-1, kindNoun) && !r.is(i-1, kindNoun, "wedge") || r.word(i-1, notTapers...) || r.lastsMore(j) {
		return false
	}
	n, ok := r.items[j].amount.whole()
	k := r.next(j)
	return ok && n >= 3 && n <= 100 && (r.is(k, kindNoun, "wedge") || !r.is(k, kindNoun)) && !r.is(k, kindAttr)
}

// plainRun returns one side of a taper: a whole number, or beside a wedge any
// decimal.
func plainRun(am *amount, wedge bool) (float64, bool) {
	if am.value == nil || am.minus || !am.value.IsInt() && !(wedge && am.form == formDecimal) {
		return 0, false
	}
	return am.float(), true
}

func plainWhole(am *amount) (int, bool) {
	if am.value == nil || !am.value.IsInt() || am.minus {
		return 0, false
	}
	return int(am.float()), true
}

// splitRatio cuts "1:8.5", which is no time of day.
func splitRatio(text string) (a, b float64, ok bool) {
	x, y, found := strings.Cut(text, ":")
	if !found {
		return 0, 0, false
	}
	a, err := strconv.ParseFloat(x, 64)
	b, err2 := strconv.ParseFloat(y, 64)
	return a, b, err == nil && err2 == nil && a >= 0 && b >= 0
}

func (r *reader) taper(i, j int, a, b float64) {
	if a > b {
		a, b = b, a
	}
	text := r.textOf(i, j)
	r.items[i].used = true
	if a == 0 {
		r.refuse(unit.WedgeRatio, text, fieldLimits[unit.WedgeRatio].want)
		return
	}
	v := b / a
	if want := impossible(unit.WedgeRatio, v); want != "" {
		r.refuse(unit.WedgeRatio, text, want)
		return
	}
	r.bound = append(r.bound, binding{Fact{Field: unit.WedgeRatio, Value: unit.Number(v), Unit: unit.One, Text: text}, i, false})
}

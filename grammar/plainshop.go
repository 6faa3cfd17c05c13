package grammar

import "presshand/engine/unit"

// What a shop says plainly of strips and presses.

// readingAlone: in a metric shop a bare "0.78" with nothing beside it is what the gauge
// shows, where a bar is told and nothing that could be so thin.
func (r *reader) readingAlone(i int) bool {
	from, _ := r.clause(i)
	for k := from; k < i; k++ {
		if !r.idle(k) && !r.word(k, "i", "we", "have", "got", "only", "and", "with", "at") {
			return false
		}
	}
	return r.mentions(kindNoun, "bar") && !r.mentions(kindNoun, "gap", "cup", "bow", "film", "mat", "face", "wedge", "tent") && !r.mentions(kindRole, "friction", "vary", "over", "trim") && !r.has(unit.Vacuum) && !r.pressureSaid()
}

// theyRun: "seven staves, 86 wide, and they run 2.1 m".
func (r *reader) theyRun(p, i int) bool {
	return r.word(p-1, "they", "each", "all") && r.within(0, i, kindNoun, "strip") >= 0 && !r.is(r.next(i), kindRole, "over")
}

// longBehind: the last of "150 wide and 18 thick by 900" is how long the strips are.
func (r *reader) longBehind(i int) bool {
	last := (r.timesAt(i) && r.is(i-1, kindAttr, "thick", "wide") || r.word(i-1, "by") && r.is(i-2, kindAttr, "thick", "wide")) && r.size(i) > widestStrip && !r.has(unit.StripLength) && r.mentions(kindNoun, "strip") && !r.is(r.next(i), kindAttr) && !r.is(r.next(i), kindNoun)
	return last && r.bind(i, unit.StripLength)
}

// finishesAt: "six boards, which finish at 28 after the planer".
func (r *reader) finishesAt(i int) bool {
	if !r.word(i-1, "at", "to") || !r.word(i-2, "finish", "finishes", "finished", "come", "comes", "end") || r.size(i) > thickest || r.has(unit.StripThickness) {
		return false
	}
	_, to := r.clause(i)
	return r.opensWithin(i, to, "planer", "planing", "thicknesser", "sander") && !r.is(r.next(i), kindAttr) && r.bind(i, unit.StripThickness)
}

// nthTurnsUp: "third press turned up after all", "a second bag is free" tell how many there are.
func (r *reader) nthTurnsUp() {
	if r.amountsIn(0, len(r.items)) > 0 {
		return
	}
	for i := range r.items {
		n := ordinalNames[r.wordAt(i-1)]
		if !r.is(i, kindNoun, "press", "bag", "frame") || isPlural(r.items[i].word) || n < 2 || r.has(unit.PressCount) || r.mentions(kindNot) {
			continue
		}
		k := i + 1
		for r.word(k, "is", "has", "just", "came", "now", "finally", "got") {
			k++
		}
		if r.word(k, "turned", "turns", "showed", "shown", "freed", "arrived", "free", "back", "available", "here", "running", "working", "fixed", "going", "in", "up") {
			r.items[i-1].used = true
			r.say(i, unit.PressCount, unit.Number(n))
		}
		return
	}
}

// onesMore: "plus the two 4 inch ones Ray left" adds so many strips of a width to those there are.
func (r *reader) onesMore() {
	if r.amountsIn(0, len(r.items)) != 2 || r.mentions(kindNot) {
		return
	}
	for i := range r.items {
		j := i + 1
		n, ok := r.spokenOrWhole(i)
		if !ok || n < 1 || !r.items[i].amount.bare() || !r.free(j) || !r.length(j) || !small(r.size(j)) || r.items[j].amount.link != linkNone || r.items[j].amount.value == nil {
			continue
		}
		k := j + 1
		for r.is(k, kindUnit) || r.is(k, kindAttr, "wide") {
			k++
		}
		from, _ := r.clause(i)
		if !r.word(k, "ones") || !r.opensWithin(from, i, "plus", "add", "adding", "found", "also", "and") {
			return
		}
		r.phrase.Rows = append(r.phrase.Rows, Row{Count: r.amendment(i), Width: r.amendment(j)})
		r.useRow(i, j)
		return
	}
}

// keptWarm: "he keeps it at 68 in there" is how warm it is where the work lives.
func (r *reader) keptWarm() {
	for i := range r.items {
		if !r.habit.Follows || !r.free(i) || !r.heldAt(i) || !r.items[i].amount.bare() || !(r.is(i+1, kindUnit, "in") || r.word(i+1, "in")) || !r.word(i+2, "there") || r.mentions(kindVacuum) || r.mentions(kindNoun) {
			continue
		}
		low, high := r.bareWarmth()
		if !r.habit.Metric {
			low = max(low, 50) // less may be a gauge
		}
		if v := r.items[i].amount.float(); v >= low && v <= high {
			r.bind(i, unit.ServiceTemp)
			return
		}
	}
}

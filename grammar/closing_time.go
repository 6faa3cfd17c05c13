package grammar

import "presshand/engine/unit"

// shutsPress reports whether the words at item i are of shutting the press on the glue:
// "close it up", "get it closed".
func (r *reader) shutsPress(i int) bool {
	return r.word(i, "close", "close up", "close it", "close it up", "shut", "lay", "spread", "assemble") || r.is(i, kindAsk, "side:closing_kpa") ||
		r.word(i, "get") && r.opensWithin(i, min(i+5, len(r.items)), "closed", "shut")
}

// closingTook: "it took me 14 minutes to close it up" and "is 8 minutes enough to close 12
// strips" tell how long a load takes from the first glue until it is shut.
func (r *reader) closingTook(i int) bool {
	k := i + 1
	from, _ := r.clause(i)
	took := r.opensWithin(max(from, i-4), i, "took", "takes", "take", "taking", "needed", "need")
	for r.word(k, "enough", "sufficient", "about", "or so") {
		k++
		took = took || r.opensWithin(from, i, "is", "are", "will", "would")
	}
	return took && !r.labelled(i) && r.word(k, "to", "till", "until", "before") && r.shutsPress(k+1)
}

// closedAt: of "glue went on at 9:10, closed at 9:25" the glue was open for as long as
// lies between.
func (r *reader) closedAt() {
	if !r.says("spread", "spreading", "rolled", "rolling", "poured", "glue") || r.has(unit.LayupLoad) || r.dayPlan() {
		return
	}
	first := -1
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.form != formPair {
			continue
		}
		from, _ := r.clause(i)
		switch {
		case first < 0 && (r.opensWithin(from, i, "spread", "spreading", "rolled", "rolling", "poured") || r.opensWithin(from, i, "glue") && r.opensWithin(from, i, "on")):
			first = i
		case first >= 0 && (r.opensWithin(from, i, "closed", "shut", "close") || r.within(from, i, kindVacuum) >= 0 || r.within(from, i, kindNoun, "press", "bag") >= 0):
			r.openFor(first, i)
			return
		}
	}
}

// openFor binds the time between two clock times of one hour or two.
func (r *reader) openFor(first, last int) {
	const minute, mostOpen = 60, 120
	a, b := r.items[first].amount.pair, r.items[last].amount.pair
	open := (b[0]-a[0])*60 + b[1] - a[1]
	if open <= 0 || open > mostOpen {
		return
	}
	r.items[first].used, r.items[last].used = true, true
	r.bound = append(r.bound, binding{Fact{Field: unit.LayupLoad, Value: unit.Number(open * minute), Unit: unit.Minute, Text: r.textOf(first, last)}, first, false})
}

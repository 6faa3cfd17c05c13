package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// gaveWay reports whether another of its kind takes the place of the glue or the
// wood at item i: "swap the pva for pu", "from oak to walnut", "red oak in place of
// the maple".
func (r *reader) gaveWay(i int) bool {
	j := i - 1
	for r.word(j, "the", "a", "that", "our") {
		j--
	}
	if r.word(j, "of") && r.word(j-1, "place", "lieu", "stead") {
		return true
	}
	from, to := r.clause(i)
	next := r.within(i+1, to, r.items[i].kind)
	if next < 0 || !r.opensWithin(i+1, next, "for", "to", "with", "by", "into") || r.opensWithin(i+1, next, "or", "and") {
		return false
	}
	for j := from; j < i; j++ {
		if r.word(j, "swap", "swop", "swapped", "swopped", "swapping", "change", "changed", "changing", "trade", "traded", "replace", "replaced", "replacing", "exchange", "switch", "switched", "switching") {
			r.items[j].used = true
			return true
		}
	}
	return r.word(i-1, "from") && r.habit.Follows && r.opensWithin(i+1, next, "to")
}

// otherOfKind reports whether the part at item j gives way to another of its kind in
// its clause, which then has what was said of it.
func (r *reader) otherOfKind(i, j int) bool {
	from, to := r.clause(i)
	k := r.within(from, i, kindNoun, r.items[j].id)
	if k < 0 {
		k = r.within(j+1, to, kindNoun, r.items[j].id)
	}
	if k < 0 && bareFields[r.items[j].id] != "" {
		for k = j + 1; k < to; k++ {
			if r.free(k) && r.length(k) && r.items[k].amount.plural && r.isBreak(k+1) && r.word(k-1, "got", "have", "use", "using", "used", "only", "the", "some", "are", "with", "take") {
				return r.bind(k, bareFields[r.items[j].id]) // "instead of the 40 bars I've got 30s"
			}
		}
		return false
	}
	return k >= 0
}

// droppable are the parts that a load can do without.
var droppable = []string{"bar", "mat", "wedge", "caul"}

// takeAway takes a part away, named at item i.
func (r *reader) takeAway(i int, id string) {
	r.phrase.Drops = append(r.phrase.Drops, partNames[id])
	switch id {
	case "bar":
		r.say(i, unit.BarDenied, unit.Word("none"))
	case "mat":
		r.say(i, unit.MatDenied, unit.Word("none"))
	}
}

// leftOff reads "what if i leave the bar off" and, in a thread, "pull the mat out".
func (r *reader) leftOff() {
	if r.says("off", "out", "away", "aside", "home") || r.means(kindVerb, "out") {
		r.partsLeftOff()
	}
	r.leftItOff()
}

func (r *reader) partsLeftOff() {
	for i := range r.items {
		if !r.is(i, kindNoun, droppable...) {
			continue
		}
		gone := r.word(i+1, "off", "out", "away", "aside") || r.is(i+1, kindVerb, "out") || r.word(i+1, "at") && r.word(i+2, "home")
		if !gone || !r.word(i-1, "the", "my", "that", "our") {
			continue
		}
		if r.word(i-2, "leave", "left", "leaving", "take", "took", "taking", "keep") ||
			r.habit.Follows && !r.asksSomething() && r.word(i-2, "pull", "pulled", "pulling", "lift", "throw", "chuck", "toss", "yank", "get", "whip", "put") {
			r.takeAway(i, r.items[i].id)
		}
	}
}

// leftItOff reads "do we even need the batten? Take it out".
func (r *reader) leftItOff() {
	if !r.habit.Follows || r.amountsIn(0, len(r.items)) > 0 {
		return
	}
	for i := range r.items {
		out := r.word(i, "take it out", "take it off", "leave it out", "leave it off") ||
			r.word(i+1, "it", "that") && (r.word(i, "drop", "skip", "lose", "ditch", "scrap", "remove", "bin") || r.word(i, "take", "leave", "pull", "chuck", "throw") && (r.word(i+2, "out", "off", "away") || r.is(i+2, kindVerb, "out")))
		part := r.within(0, i, kindNoun, droppable...)
		if !out || part < 0 || r.within(part+1, len(r.items), kindNoun) >= 0 {
			continue
		}
		r.phrase.Asks = slices.DeleteFunc(r.phrase.Asks, func(a Ask) bool { return a.About == Glue })
		r.takeAway(part, r.items[part].id)
		return
	}
}

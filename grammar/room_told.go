package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// roomTold reads how high a press is inside where the number beside a told stack says so, but
// no word for the opening stands right by it: "frame clears 130", "the press shuts at 3 1/4",
// "a frame that's just 2 in inside", "am I over 110 mm". "The press is at 22" is its gauge, and
// "closes at 5" may be an hour.
func (r *reader) roomTold(i int) bool {
	const low, high = 0.03, 0.6 // m
	stack := r.has(unit.StackLayers) || r.has(unit.SledThickness) && (r.topic == Stack || r.has(unit.StripThickness) && r.word(i-1, "over"))
	if !stack || r.has(unit.Opening) || r.size(i) < low || r.size(i) > high || r.items[i].amount.link != linkNone || !r.endsRoom(i) || r.tooHigh(i) || r.maybeHour(i) && r.word(i-1, "at") || r.fitsElsewhere(i) {
		return false
	}
	j, inside, says := i-1, r.saidInside(i) || !r.items[i].amount.bare(), false
	for ; r.word(j, "just", "only", "about", "a", "the", "is", "thats", "but", "to", "at", "has", "got", "gives", "clears", "clear", "shuts", "closes", "takes", "me", "us", "barely", "exactly", "of", "opens", "opens to") || r.is(j, kindVerb, "clear"); j-- {
		says = says || r.word(j, "gives", "clears", "clear", "shuts", "closes", "opens", "opens to") || r.is(j, kindVerb, "clear") || inside && r.word(j, "is", "thats", "has", "got", "takes")
	}
	says = says || inside && strings.HasSuffix(r.wordsTyped(j), "'s")
	says = says || r.is(j, kindNoun, "opening") && j < i-1
	inRoom := says && r.is(j, kindNoun, "frame", "press", "opening") && !r.word(j-1, "second", "other", "old", "another")
	if !inRoom && !r.fitsUnder(j) && !r.weHave(i) {
		return false
	}
	for k := j + 1; k < i; k++ {
		r.items[k].used = r.items[k].used || r.items[k].amount == nil
	}
	return r.bind(i, unit.Opening)
}

// saidInside: "2 in inside", "90 clear".
func (r *reader) saidInside(i int) bool {
	return r.word(i+1, "inside", "clear") || r.is(i+1, kindVerb, "clear")
}

// tooHigh: 22 is no height of a press in inches, it is what a gauge shows.
func (r *reader) tooHigh(i int) bool {
	const highest = 12
	am := r.items[i].amount
	inches := am.unit != nil && am.unit.Symbol == "in" || am.bare() && !r.habit.Metric
	return inches && am.float() > highest
}

// maybeHour: "closes at 5".
func (r *reader) maybeHour(i int) bool {
	n, whole := r.wholeAt(i)
	return whole && n <= 24 && r.items[i].amount.bare()
}

// fitsElsewhere reports whether another number than that at item i is what a stack is asked to
// fit in: "the frame has 2, fit in 4?".
func (r *reader) fitsElsewhere(i int) bool {
	for k := range r.items {
		j := k - 1
		for r.word(j, "a", "the", "my", "our") {
			j--
		}
		if k != i && r.free(k) && r.length(k) && r.word(j, "in", "into", "inside") && r.is(j-1, kindAsk, "stack") {
			return true
		}
	}
	return false
}

// wordsTyped is item j as typed, with a plain apostrophe.
func (r *reader) wordsTyped(j int) string {
	if j < 0 {
		return ""
	}
	return strings.ReplaceAll(r.text[r.items[j].start:r.items[j].end], "’", "'")
}

// endsRoom reports whether the number at item i ends its clause: "2 in inside", not "2 in thick".
func (r *reader) endsRoom(i int) bool {
	k := i + 1
	for r.word(k, "inside", "clear", "there", "only", "then", "now", "total", "in") || r.is(k, kindVerb, "clear") {
		if r.items[k].word == "in" && !r.word(k+1, "there", "all", "total") {
			return false
		}
		k++
	}
	return k >= len(r.items) || r.isBreak(k)
}

// fitsUnder: "will that get into 3 1/2", "fit on a 3/4 sled under 3 in", "am I over 110 mm?";
// "into" is at item j.
func (r *reader) fitsUnder(j int) bool {
	from, _ := r.clause(max(j, 0))
	switch {
	case r.word(j, "into", "inside"):
		return r.opensWithin(from, j, "get", "gets", "go", "goes", "squeeze", "stuff", "shoehorn") || r.within(from, j, kindAsk, "stack") >= 0
	case r.word(j, "under"):
		return r.within(from, j, kindAsk, "stack") >= 0 || r.word(j-1, "stay", "keep", "get")
	case r.word(j, "over"):
		return r.word(j-1, "i", "we", "it", "that", "all") && r.word(j-2, "am", "are", "is")
	}
	return false
}

// weHave: "we have 85" behind a question whether a stack fits. A small bare number may count
// presses or sleds.
func (r *reader) weHave(i int) bool {
	if r.maybeHour(i) {
		return false
	}
	j := i - 1
	for r.word(j, "only", "got", "about", "just") {
		j--
	}
	return (r.word(j, "have") && r.word(j-1, "we", "i") || r.word(j, "ive", "weve") && j < i-1) && r.isBreak(j-2) && r.topic == Stack && r.next(i) < 0
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// countsThatAre counts the piles told as "seven that are 3", and those told as "five 2 wide".
func (r *reader) countsThatAre() (told, wide int) {
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.bare() {
			continue
		}
		n, whole := r.wholeAt(i)
		if !whole || n < 1 {
			continue
		}
		that := i + 1
		if r.is(that, kindNoun, "strip") || r.word(that, "ones") {
			that++
		}
		switch {
		case r.word(that, "that", "which") && r.word(that+1, "are", "is", "measure") && r.free(that+2) && r.length(that+2):
			told++
		case that == i+1 && r.free(that) && r.length(that) && r.items[that].amount.link == linkNone && small(r.size(that)) && r.is(that+1, kindAttr, "wide"):
			wide++
		}
	}
	return told, wide
}

// cuesByContext: "9 of 2 1/4 and 7 of 3 for a 28 inch panel, enough?" asks of the strips, "can we
// make it" beside hours of the plan, and "how long must the pump run" of the pump.
func (r *reader) cuesByContext() {
	if !r.means(kindAsk, "strips", "pump", "glue:press_time_min") && !r.says("enough", "most", "max", "maximum", "highest", "best") {
		return
	}
	for i := range r.items {
		if r.asksThePlan(i) {
			r.items[i].id = "schedule"
			r.hear(i)
		}
		if r.mostOnGauge(i) {
			r.items[i].meaning = meaning{kind: kindAsk, id: "face:ambient_kpa"}
			r.hear(i)
		}
		if r.waitsToOpen(i) {
			r.items[i].id = "glue:press_time_min"
			r.hear(i)
		}
		if r.pumpRuns(i) {
			r.items[i].id = "pump"
			r.hear(i)
		}
		if r.word(i, "enough") && r.isBreak(i-1) && r.isBreak(i+1) && r.stockPairs(len(r.items)) > 1 {
			r.items[i].meaning = meaning{kind: kindAsk, id: "strips"}
			r.hear(i)
		}
	}
}

// pumpRuns: "how long must the pump run", "how long in the bag to get to 25 inHg" ask of the
// pump, and "how long must panels stay, 5 cfm pump" of the glue.
func (r *reader) pumpRuns(i int) bool {
	if !r.is(i, kindAsk, "glue:press_time_min") || !strings.HasPrefix(r.items[i].word, "how ") || !r.saidFlow() || r.mentions(kindGlue) {
		return false
	}
	_, to := r.clause(i)
	for k := i + 1; k < to; k++ {
		am := r.items[k].amount
		if r.is(k, kindNoun, "pump") || am != nil && (am.is(unit.Pumping) || am.is(unit.Pressing) && am.link != linkAt && !r.word(k-1, "at")) {
			return true
		}
	}
	return false
}

// mostOnGauge: "what is the most the gauge can show at 1600 m" asks for the air there.
func (r *reader) mostOnGauge(i int) bool {
	if !r.word(i, "most", "max", "maximum", "highest", "best") || !r.said(unit.Distance) || !r.mentions(kindAir, "height") && !r.wordIn("up", "altitude", "elevation") || r.mentions(kindNoun, "pump", "strip", "leak") {
		return false
	}
	from, to := r.sentence(i)
	return r.within(from, to, kindVacuum, "gauge") >= 0 && r.opensWithin(from, to, "show", "shows", "read", "reads", "reading", "get", "possible", "see")
}

// waitsToOpen: "how long til I can pull it out of the bag" waits for the glue, not the pump.
func (r *reader) waitsToOpen(i int) bool {
	if !r.is(i, kindAsk, "pump") || !r.word(i, "how long til", "how long till", "how long until") || !r.word(i+1, "i", "we", "you", "he", "she", "they") {
		return false
	}
	pull := i + 2
	if r.word(pull, "can", "could", "should", "may") {
		pull++
	}
	out := r.within(pull, min(pull+5, len(r.items)), kindVerb, "out")
	return r.word(pull, "pull", "take") && out >= 0 && r.amountsIn(i, out) == 0 && !r.opensWithin(pull, out, "air")
}

// spokenCounts counts "nine 2 3/8": a count in words and a width in digits.
func (r *reader) spokenCounts() int {
	n := 0
	for i := range r.items {
		if _, ok := r.spokenNumber(i); ok && r.free(i+1) && r.length(i+1) && r.items[i+1].amount.form != formWords && r.items[i+1].amount.link == linkNone && !r.is(r.next(i+1), kindNoun, "panel") {
			n++
		}
	}
	return n
}

// loneCountBefore is the count that the one at item i corrects before its width is told: "6,
// no 4 @ 3 3/4"; -1 where none is.
func (r *reader) loneCountBefore(i int) int {
	k, fixed := i-1, false
	for k >= 0 && (r.is(k, kindFix) || r.word(k, "no", "sorry") || r.isBreak(k) && !r.isStop(k)) {
		fixed = fixed || !r.isBreak(k)
		k--
	}
	if fixed && r.free(k) && r.items[k].amount.bare() && r.items[k].amount.link == linkNone {
		return k
	}
	return -1
}

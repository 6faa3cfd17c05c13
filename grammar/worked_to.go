package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// worked are words for making strips thinner, and the machines that do.
var worked = wordSet(`planer planing planed plane thicknesser thicknessing thicknessed sander sanding sanded jointer jointing milled milling surfaced surfacing surfacer resawed resawn resawing resaw dressed dressing skimmed skimming finish finished finishing`)

// workedDownTo: of "they were 3/4 but I sanded them, so 11/16", "after the planer they're .31",
// "5/8 before i resawed em, now 5/16" the last is how thick strips are.
func (r *reader) workedDownTo(i int) bool {
	if r.has(unit.StripThickness) || r.has(unit.StripThickest) || r.size(i) > thickestOff || r.items[i].amount.link != linkNone || r.timesAt(i+1) || r.phrase.Command != nil {
		return false
	}
	if n := r.next(i); r.is(n, kindNoun) && !r.is(n, kindNoun, "panel") || r.is(n, kindAttr) || r.word(i+1, "off", "before", "rough") {
		return false
	}
	if !r.holdsNow(i) {
		return false
	}
	from, to := r.sentence(i)
	done := false
	for k := from; k < to; k++ {
		switch {
		case r.is(k, kindNoun) && !r.is(k, kindNoun, "strip", "panel", "face"), r.is(k, kindNoun, "cup", "bow"), r.word(k, "lid", "jaw", "knife"):
			return false
		case r.items[k].amount == nil && (worked[r.items[k].word] || k > from && r.word(k, "glue up")):
			done = true
		}
	}
	return done && r.bind(i, unit.StripThickness)
}

// holdsNow reports whether words before the number at item i say that it holds in the end:
// "so", "now", "they're", "finish at", "leaving them".
func (r *reader) holdsNow(i int) bool {
	k := i - 1
	for r.word(k, "at", "about", "a", "an", "to", "around", "just", "exactly", "dead", "on", "like") {
		k--
	}
	switch {
	case r.word(k, "them", "em", "it"):
		return r.word(k-1, "leaving", "left", "leave", "got", "made", "make", "making", "took", "brought", "get", "gets")
	case r.word(k, "theyre", "its", "are", "is"):
		return !r.roughBefore(k)
	case r.word(k, "so", "now", "finish", "finished", "finishes", "came", "come", "comes", "down", "end", "ended") || r.is(k, kindVerb, "out") || r.turnedOut(k-1):
		return true
	}
	return k < i-1 && k >= 0 && worked[r.items[k].word] // "planed to 5/16"
}

// roughBefore: "rough they're an inch" is what they were.
func (r *reader) roughBefore(k int) bool {
	from, to := r.clause(k)
	for j := from; j < to; j++ {
		if r.word(j, "rough", "before", "were", "was", "started", "originally") && !strings.HasPrefix(r.items[j].word, "after") {
			return true
		}
	}
	return false
}

// exchangedFor reads "didn't use the 1 1/2 bar, used the 1 1/4", "rather than a 3/4 bar I'm
// going with 1 1/4": the second number stands in the first one's place.
func (r *reader) exchangedFor(i int) {
	if !r.is(i, kindNot) || !r.word(i, "didnt", "rather than", "instead of", "not", "dont", "wont", "wasnt", "not using", "isnt") {
		return
	}
	k := i + 1
	for r.word(k, "use", "using", "the", "a", "an", "run", "go", "with", "have", "put", "my", "our", "that", "our usual", "usual", "on", "of") {
		k++
	}
	if k >= len(r.items) || r.items[k].amount == nil || r.items[k].used || r.items[k].amount.link != linkNone || r.timesAt(k+1) {
		return
	}
	_, to := r.sentence(i)
	uses := false
	for j := k + 1; j < to && j < k+14; j++ {
		if r.word(j, "using", "use", "used", "going", "went", "go", "running", "run", "ran", "put", "doing", "took", "take", "trying") || r.is(j, kindSay) && r.word(j, "used") {
			uses = true
		}
		if r.items[j].amount == nil {
			continue
		}
		if uses && r.free(j) && r.items[j].amount.link == linkNone && !r.timesAt(j+1) && r.asLarge(k, j) && !r.ofElse(k, j) {
			r.items[i].meaning, r.items[i].used = meaning{}, true
			r.standsFor(k, j)
			r.items[k].amount.hearsay, r.items[k].amount.dead = false, false
			if n := r.next(j); r.is(n, kindNoun) {
				r.items[n].used = true
			}
		}
		return
	}
}

// itIs: "I wanted to do these 30 wide but I'm short on stock, so 24 it is".
func (r *reader) itIs(j int) {
	if !r.live(j) || !r.word(j+1, "it") || !r.word(j+2, "is", "was") || !r.isBreak(j+3) && !r.word(j+3, "then") {
		return
	}
	from, _ := r.sentence(j)
	for i := j - 1; i >= from; i-- {
		if r.items[i].amount == nil {
			continue
		}
		if r.live(i) && r.asLarge(i, j) && r.opensWithin(from, i, "wanted", "hoped", "hoping", "planned", "planning", "meant", "going", "thought", "figured", "like", "asked", "supposed", "would", "could", "had") {
			r.standsFor(i, j)
		}
		return
	}
}

// lastTimeThisTime: "had 9 strips last time and it was no good. so 6 this time?".
func (r *reader) lastTimeThisTime(j int) {
	if !r.live(j) || !r.thisTime(j) {
		return
	}
	if n := r.next(j); r.is(n, kindNoun) || r.is(n, kindAttr) {
		return
	}
	for i := j - 1; i >= 0 && i > j-16; i-- {
		if r.items[i].amount == nil {
			continue
		}
		_, to := r.clause(i)
		last := false
		for k := i; k < to; k++ {
			last = last || r.items[k].amount == nil && strings.HasPrefix(r.items[k].word, "last ") || r.word(k, "yesterday") || r.word(k, "last") && r.word(k+1, "time", "week", "load")
		}
		if last && r.live(i) && r.asLarge(i, j) {
			r.standsFor(i, j)
		}
		return
	}
}

// asLarge is comparable for amounts of which the later may have no unit of its own.
func (r *reader) asLarge(i, j int) bool {
	a, b := r.items[i].amount, r.items[j].amount
	const furthest = 3
	return alike(a, b) && (a.unit != nil || b.unit == nil) && a.float() < furthest*b.float() && b.float() < furthest*a.float()
}

// reallyIs: "the 4 inch opening is really 3 15/16", "the 1 in bar is more like 15/16".
func (r *reader) reallyIs(i int) {
	k := i + 1
	if !r.live(i) || r.items[i].amount.value == nil || !r.is(k, kindNoun) || !r.word(k+1, "is", "was", "are") {
		return
	}
	j := k + 2
	for r.word(j, "really", "only", "more", "like", "nearer", "closer", "to", "in", "fact", "about") {
		j++
	}
	if j < k+3 || !r.word(k+2, "really", "more", "nearer", "closer", "in") || !r.live(j) || !r.asLarge(i, j) || r.items[j].amount.link != linkNone {
		return
	}
	if n := r.next(j); !r.is(n, kindNoun) && !r.is(n, kindAttr) {
		r.standsFor(i, j)
	}
}

// workings are the ways of making strips thinner.
var workings = wordSet(`resawn resawed planed dressed surfaced milled thicknessed sanded thinned skimmed`)

// workedFrom: "resawn from 8/4 to 3/8" leaves the second.
func (r *reader) workedFrom(i int) {
	if i+1 >= len(r.items) || !r.live(i+1) || r.items[i+1].amount.link != linkTo || !r.live(i) || !r.length(i) || !r.length(i+1) {
		return
	}
	from := i - 1
	if r.items[max(from, 0)].word == "from" {
		from--
	}
	if r.word(from, "down") {
		from--
	}
	if from < 0 || !workings[r.items[from].word] {
		return
	}
	r.items[i].amount.dead = true
	r.items[i+1].amount.link = linkNone
	if n := r.next(i + 1); !r.is(n, kindAttr) && !r.is(n, kindNoun) {
		r.bind(i+1, unit.StripThickness)
	}
}

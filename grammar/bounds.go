package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Numbers that bound or compare something, and measure none of it.

// killBounds marks what parts one kind of work from another, "a 1 in bar for everything
// under 1/2 thick", how far a top may move, "will it stay within 3/32", a change of
// moisture, "what does 1% do to a top", and a height where the shop was once.
func (r *reader) killBounds() {
	r.killChart()
	r.reallySo()
	r.redoneAndNew()
	moves := r.mentions(kindAir, "rh", "mc", "service") || r.percentSaid()
	every := r.says("everything", "anything", "whatever", "things")
	proud, now := r.says("by") && r.says("proud"), r.says("now", "these days", "nowadays")
	for i := range r.items {
		if !r.live(i) {
			continue
		}
		pair := i+1 < len(r.items) && r.items[i+1].amount != nil
		switch {
		case every && r.partsWork(i):
			r.items[i].amount.dead = true
			r.idleDirections(i+1, i+2)
		case pair && r.fitsInto(i):
			r.items[i].amount.dead, r.items[i+1].amount.dead = true, true
		case pair && r.gaugeWentUp(i):
			if u := unit.InHg; r.items[i+1].amount.bare() {
				r.items[i+1].amount.unit = &u
			}
			r.takesPlace(i, i+1)
		case moves && r.mayMove(i), proud && r.proudBy(i), moves && r.changeAsked(i), now && r.onceUpAt(i):
			r.items[i].amount.dead = true
		}
	}
}

// partsWork: "for everything under 1/2 thick", "for anything over 48 long".
func (r *reader) partsWork(i int) bool {
	if r.solving != "" || r.mentions(kindAsk, "side:solve=bar_height_mm") {
		return false
	}
	j := i - 1
	if !r.word(j, "under", "over", "below", "above", "past", "beyond", "than", "to") && !r.is(j, kindRole, "max", "narrower", "wider") {
		return false
	}
	for j--; r.word(j, "thats", "is", "up", "less", "more", "thinner", "thicker", "shorter", "longer", "of", "a"); j-- {
	}
	return r.word(j, "everything", "anything", "whatever", "things") && (r.word(j-1, "for", "on", "with") || r.is(j-1, kindNoun, "bar", "mat", "caul")) // "bar for" is one word
}

// mayMove: "stay within 3/32", "move less than 1/8" in a question of how wood moves.
func (r *reader) mayMove(i int) bool {
	const most = 0.02 // metres
	if !r.length(i) || r.size(i) > most {
		return false
	}
	j := i - 1
	for r.word(j, "a", "an", "about") {
		j--
	}
	switch {
	case r.word(j, "within", "inside"):
		j--
	case r.word(j, "than") && r.word(j-1, "less", "more"):
		j -= 2
	case r.word(j, "under", "over", "below", "beyond", "by"):
		j--
	default:
		return false
	}
	for r.word(j, "by", "it", "to") {
		j--
	}
	return r.word(j, "stay", "stays", "staying", "remain", "keep", "keeps", "move", "moves", "shrink", "shrinks", "swell", "swells", "grow", "grows", "change", "changes") || r.is(j, kindAsk, "move")
}

// changeAsked: "what does 1% mc do to a 36 in top", "for every 2%", "a 3% swing".
func (r *reader) changeAsked(i int) bool {
	const most = 8
	am := r.items[i].amount
	if !am.is(unit.Proportion) || am.float() > most || am.link != linkNone {
		return false
	}
	n := i + 1
	for r.is(n, kindAir, "mc", "rh") || r.word(n, "of", "in", "more", "less") {
		n++
	}
	if r.is(n, kindPeril) && r.word(n, "swing") {
		r.items[n].meaning = meaning{}
	}
	if r.word(n, "change", "swing", "difference", "drop", "rise", "jump") || r.is(n, kindNoun, "leak") && r.word(n, "drop") {
		return true
	}
	j := i - 1
	for r.word(j, "a", "one", "just", "only") {
		j--
	}
	return r.word(j, "every", "each", "per") || r.word(n, "do", "make", "mean", "cost") && (r.word(j, "does", "would", "will", "can") || j >= 0 && strings.HasSuffix(r.items[j].word, " does"))
}

// onceUpAt: "I was up around 5,000 feet before, now I'm at the coast".
func (r *reader) onceUpAt(i int) bool {
	const least = 300
	am := r.items[i].amount
	if am.unit == nil || am.unit.Symbol != "ft" && am.unit.Symbol != "m" || am.float() < least {
		return false
	}
	from, to := r.sentence(i)
	now := -1
	for k := i + 1; k < to && now < 0; k++ {
		if r.word(k, "now", "these days", "nowadays") {
			now = k
		}
	}
	if now < 0 || r.word(now-1, "were", "im", "is") {
		return false
	}
	for k := i + 1; k < to; k++ {
		if r.live(k) && r.items[k].amount.unit != nil && r.items[k].amount.unit.Dimension == am.unit.Dimension {
			return false // "used to be 5000 ft, now 300 ft" is a correction
		}
	}
	for k := i - 1; k >= max(from, i-6); k-- {
		if r.word(k, "now") {
			return false
		}
		if r.word(k, "was", "were", "used", "lived", "worked") && r.text[r.items[k].start:r.items[k].end] == r.items[k].word {
			return true
		}
	}
	return false
}

// fitsInto: "load's 9 ft long, will it go in the 4x8" asks of a press by its size.
func (r *reader) fitsInto(i int) bool {
	if !r.timesAt(i+1) || r.timesAt(i+2) || !r.isBreak(i+2) || !r.word(i-1, "the", "our", "my") {
		return false
	}
	for k := range r.items {
		if r.timesAt(k) && k != i+1 {
			return false // "how many 24x36 panels fit in the 4x8"
		}
	}
	if !r.word(i-2, "in", "on", "into", "onto", "inside") && !r.is(i-2, kindUnit, "in") {
		return false
	}
	return r.word(i-3, "go", "goes", "fit", "fits", "going", "put", "get") || r.word(i-4, "go", "fit", "fits", "put", "get")
}

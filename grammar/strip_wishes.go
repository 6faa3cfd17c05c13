package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// stripWishes reads what is wished of a choice of strips beside its width. It
// comes before words of correction are found: "48 wide, no two alike" corrects
// nothing.
func (r *reader) stripWishes() {
	r.neighbours()
	r.strayWidest()
	limits := r.means(kindRole, "narrowest", "widest", "mintemp", "narrower", "wider", "min", "max") || r.says("under", "below", "or narrower", "than", "over", "or wider", "min")
	for i := range r.items {
		if r.items[i].amount != nil {
			if i+1 < len(r.items) && r.items[i+1].amount != nil {
				r.betweenWidths(i)
			}
		} else if !limits {
			continue
		} else if f := r.limitAt(i); f != "" {
			r.stripLimit(i, f)
		} else if r.is(i, kindRole, "min") || r.is(i, kindUnit) && r.word(i, "min") {
			r.leastOrMost(i, unit.Narrowest)
		} else if r.is(i, kindRole, "max") {
			r.leastOrMost(i, unit.Widest)
		}
	}
	r.narrowFirst()
}

// limitAt is the end of the widths that a word at item i sets, with the denial
// that makes a limit of it: "no strip narrower than", "nothing under".
func (r *reader) limitAt(i int) unit.Field {
	var end unit.Field
	switch {
	case r.is(i, kindRole, "narrowest"):
		return unit.Narrowest
	case r.is(i, kindRole, "widest"):
		return unit.Widest
	case r.is(i, kindRole, "mintemp") && r.word(i, "nothing under", "not under", "not below"):
		return unit.Narrowest
	case r.is(i, kindRole, "narrower"), r.word(i, "under", "below", "or narrower"), r.word(i, "than") && r.word(i-1, "less", "smaller"):
		end = unit.Narrowest
	case r.is(i, kindRole, "wider"), r.word(i, "over", "or wider"), r.is(i, kindRole, "mintemp") && r.word(i, "above"),
		r.word(i, "than") && r.word(i-1, "more", "bigger", "larger", "greater"):
		end = unit.Widest
	}
	if end != "" && r.limitDenied(i) < 0 && !r.limitGoesOn(i) {
		return ""
	}
	return end
}

// limitGoesOn: "nothing narrower than 2 or wider than 3".
func (r *reader) limitGoesOn(i int) bool {
	k := i - 1
	switch {
	case r.word(i, "or wider", "or narrower") && r.word(i+1, "than"):
	case r.is(i, kindRole, "narrower", "wider") && r.word(k, "or", "nor", "and"):
		k--
	default:
		return false
	}
	for _, b := range r.bound {
		if b.from == k && (b.fact.Field == unit.Narrowest || b.fact.Field == unit.Widest) {
			return true
		}
	}
	return false
}

// limitDenied is the item of the denial that makes a limit of the word at item i,
// of strips or of all there is: "no strip should be …", "strips must not be …";
// -1 where there is none.
func (r *reader) limitDenied(i int) int {
	subject, no := false, -1
	for j := i - 1; j >= 0 && j >= i-6 && r.items[j].amount == nil && !r.isBreak(j); j-- {
		switch {
		case r.word(j, "nothing", "none"):
			return j
		case r.is(j, kindNot):
			no = j
			subject = subject || r.word(j, "except", "excluding")
		case r.is(j, kindNoun, "strip"), r.word(j, "anything", "any", "ones", "those"):
			subject = true
		}
	}
	if !subject {
		return -1
	}
	return no
}

// stripLimit gives the width behind item i to a limit, where it is one of
// strips: by its unit, by "wide", or among strips in stock.
func (r *reader) stripLimit(i int, f unit.Field) {
	j := i + 1
	for j < len(r.items) && j <= i+2 && r.items[j].amount == nil && (r.idle(j) || r.word(j, "than")) {
		j++
	}
	if !r.free(j) || !r.length(j) || r.items[j].amount.link != linkNone {
		return
	}
	wide := r.next(j)
	from, _ := r.clause(i)
	strips := r.within(from, i, kindNoun, "strip") >= 0
	explicit := strips || r.is(i, kindRole, "narrowest", "widest", "narrower", "wider") || r.limitGoesOn(i)
	switch {
	case r.is(wide, kindAttr) && !r.is(wide, kindAttr, "wide"), r.is(wide, kindRole, "trim", "over"), r.is(wide, kindNoun, "panel", "opening", "fence"):
		return
	case r.within(from, i, kindNoun, "panel") >= 0 && !strips:
		return
	case !explicit && !r.items[j].amount.is(unit.Distance) && !r.is(wide, kindAttr, "wide") && !r.stockContext():
		return
	}
	if !r.bind(j, f) {
		return
	}
	r.items[i].used = true
	if r.is(wide, kindAttr, "wide") {
		r.spend(wide)
	}
	if k := r.limitDenied(i); k >= 0 {
		r.spend(k)
	}
}

// leastOrMost reads a limit that is no denial: "strips at least 2 1/2 wide", "only
// strips 2 1/2 or wider", "minimum strip width 40".
func (r *reader) leastOrMost(i int, f unit.Field) {
	from, _ := r.clause(i)
	strips := r.within(from, i, kindNoun, "strip") >= 0
	if r.word(i, "or wider", "and wider", "or narrower", "and narrower") && strips && r.free(i-1) && r.length(i-1) && r.bind(i-1, f) {
		r.items[i].used = true
		return
	}
	j := i + 1
	for j < len(r.items) && (r.is(j, kindNoun, "strip") || nounForm(r.items[j].word) && r.is(j, kindAttr, "wide") || r.word(j, "of", "is")) {
		strips = strips || r.is(j, kindNoun, "strip")
		j++
	}
	named := j > i+1 && r.is(j-1, kindAttr, "wide") || j > i+2 && r.is(j-2, kindAttr, "wide")
	wide := r.next(j)
	if !r.free(j) || !r.length(j) || !named && !r.is(wide, kindAttr, "wide") {
		return
	}
	strips = strips || r.is(r.next(wide), kindNoun, "strip") || r.wantedElsewhere(i)
	if strips && r.bind(j, f) {
		for k := i; k < j; k++ {
			r.spend(k)
		}
		if r.is(wide, kindAttr, "wide") {
			r.spend(wide)
		}
	}
}

// wantedElsewhere reports whether another clause than that of item i says what the
// strips of a stock must fill: "need 48 wide, at least 2 1/2 wide".
func (r *reader) wantedElsewhere(i int) bool {
	from, to := r.clause(i)
	return r.within(from, to, kindRole, "target") < 0 && r.mentions(kindRole, "target") && r.within(from, to, kindNoun, "panel") < 0 && r.stockContext()
}

// betweenWidths reads "strips between 2 and 3 wide": of a stock, those that may be
// used.
func (r *reader) betweenWidths(i int) {
	if !r.free(i+1) || r.items[i+1].amount.link != linkTo || !r.free(i) || !r.length(i) || !r.length(i+1) {
		return
	}
	wide := r.next(i + 1)
	from, _ := r.clause(i)
	if !r.is(wide, kindAttr, "wide") || r.within(from, i, kindNoun, "strip") < 0 && !r.is(r.next(wide), kindNoun, "strip") || !r.wantedElsewhere(i) {
		return
	}
	r.bindRange(i, unit.Narrowest, unit.Widest)
	r.spend(wide)
}

// spend marks an item as read and takes its meaning from later passes.
func (r *reader) spend(i int) {
	r.items[i].used = true
	r.items[i].meaning = meaning{}
	if r.items[i].amount != nil {
		r.items[i].amount.dead = true
	}
}

// neighbours reads "no two alike side by side", "keep neighbours different",
// "alternate the widths", "identical strips must not touch".
func (r *reader) neighbours() {
	same, adjacent := r.says(sameWords...), r.says("adjacent")
	inTurn, mixed := r.says("alternate", "alternating", "alternated"), r.says("mix", "mixed")
	for i := range r.items {
		switch {
		case same && r.isTwo(i):
			r.twoAlike(i)
		case strings.HasPrefix(r.items[i].word, "neighbo") && r.items[i].kind != kindPerson || adjacent && r.word(i, "adjacent"):
			from, to := r.clause(i)
			unlike := r.wordsIn(from, to, "different", "differ", "differing", "unlike", "vary", "varying") ||
				r.within(from, to, kindNot) >= 0 && r.wordsIn(from, to, sameWords...)
			if unlike && !r.word(i-1, "my", "our", "his", "her", "their") {
				r.differ(from, to)
			}
		case inTurn && r.word(i, "alternate", "alternating", "alternated"), mixed && r.word(i, "mix", "mixed"):
			_, to := r.clause(i)
			if r.within(i, min(i+4, to), kindAttr, "wide") >= 0 {
				r.differ(i, to)
			}
		case same && r.word(i, sameWords...) && !r.items[i].used:
			from, to := r.clause(i)
			of := r.is(r.next(i), kindNoun, "strip") || r.is(r.next(i), kindAttr, "wide")
			if of && r.within(from, to, kindNot) >= 0 && r.wordsIn(from, to, besideWords...) {
				r.differ(from, to)
			}
		}
	}
}

// sameWords say that strips are of one width, besideWords that they lie side by
// side.
var (
	sameWords   = []string{"alike", "same", "equal", "identical", "matching"}
	besideWords = []string{"side", "together", "next", "beside", "touch", "touching", "adjacent", "neighbours", "neighbors"}
)

// twoAlike reads "no two alike" at item i, the two. Two that may be alike wish
// nothing, and are no width.
func (r *reader) twoAlike(i int) {
	if !r.alikeBehind(i) {
		return
	}
	no := r.denialRight(i)
	if no < 0 {
		r.items[i].amount.dead = true
		return
	}
	_, to := r.clause(i)
	r.spend(no)
	r.spend(i)
	r.differ(i, to)
}

// alikeBehind reports whether what follows the "two" at item i says that they are
// strips of one width, side by side.
func (r *reader) alikeBehind(i int) bool {
	_, to := r.clause(i)
	if n := r.next(i); r.is(n, kindNoun) && !r.is(n, kindNoun, "strip") || r.is(n, kindGlue) {
		return false
	}
	for k := i; k < to; k++ {
		if r.word(k, "same") && r.word(k+1, "time", "day", "load", "press", "way") {
			return false
		}
	}
	if r.wordsIn(i, to, "alike") {
		return true
	}
	beside := r.wordsIn(i, to, besideWords...) || r.within(i, to, kindNoun, "strip") >= 0 || r.within(i, to, kindAttr, "wide") >= 0
	return beside && r.wordsIn(i, to, sameWords...)
}

func (r *reader) isTwo(i int) bool {
	am := r.items[i].amount
	n, ok := 0, false
	if am != nil && !r.items[i].used {
		n, ok = am.whole()
	}
	return ok && n == 2
}

// denialRight is the denial just before item i: "no two", "never put two"; -1
// where there is none.
func (r *reader) denialRight(i int) int {
	for j := i - 1; j >= 0 && j >= i-4 && r.items[j].amount == nil && !r.isBreak(j); j-- {
		if r.is(j, kindNot) || r.word(j, "avoid") {
			return j
		}
	}
	return -1
}

// wordsIn reports whether one of the words stands in [from, to).
func (r *reader) wordsIn(from, to int, ws ...string) bool {
	for i := from; i < to; i++ {
		if r.word(i, ws...) {
			return true
		}
	}
	return false
}

// differ says the wish, and uses up the words that it is made of.
func (r *reader) differ(from, to int) {
	for k := from; k < to; k++ {
		if r.items[k].amount == nil && (strings.HasPrefix(r.items[k].word, "neighbo") || r.word(k, "keep", "alternate", "alternating", "alternated", "adjacent",
			"alike", "same", "equal", "identical", "matching", "different", "differ", "differing", "unlike", "vary", "varying",
			"side", "together", "next", "beside", "touch", "touching", "width", "widths") || r.is(k, kindNot)) {
			r.spend(k)
		}
	}
	r.say(from, unit.Neighbours, unit.Word("differ"))
	r.bound[len(r.bound)-1].fact.Text = strings.TrimSpace(r.textOf(from, to-1))
}

// narrowFirst reads "use up the narrow ones first", "get rid of the skinny
// stuff".
func (r *reader) narrowFirst() {
	if !r.says("narrow", "narrowest", "skinny", "skinnies", "skinniest") {
		return
	}
	for i := range r.items {
		if !r.word(i, "narrow", "narrowest", "skinny", "skinnies", "skinniest") {
			continue
		}
		from, to := r.clause(i)
		wished := r.wordsIn(from, to, "first", "use up", "prefer", "preferably", "up", "many")
		if !wished || r.within(from, i, kindNot) >= 0 || r.wordsIn(from, to, "last", "only", "wide", "widest") {
			continue
		}
		r.items[i].meaning = meaning{}
		r.say(i, unit.UseFirst, unit.Word("narrow"))
	}
}

// strayWidest names "the widest ones only", which asks for no width: nothing
// chooses so.
func (r *reader) strayWidest() {
	if !r.means(kindRole, "wide ones") {
		return
	}
	for i := range r.items {
		if r.is(i, kindRole, "wide ones") {
			r.items[i].used = true
			r.unuse(r.items[i].text)
		}
	}
}

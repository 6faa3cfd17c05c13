package grammar

import (
	"regexp"
	"strings"

	"presshand/engine/unit"
)

// dayOfMonth is how a day is told from a number.
var dayOfMonth = regexp.MustCompile(`^[1-9]?\d(st|nd|rd|th)$`)

// killNames marks numbers that are names or counts of other things: "chapter 6",
// "shop 2", "3 hp", "2 years ago".
func (r *reader) killNames() {
	ago, gauge := r.means(kindRole, "ago"), r.means(kindVacuum, "gauge")
	names := ago || gauge || r.means(kindRole, "name") || r.means(kindAir, "shop") || r.says("shelf", "rack", "bin", "row", "pallet", "rack no") ||
		r.says("people", "persons", "adults", "guests", "kids", "men", "women")
	minus, book, odd := r.says("±", "minus"), r.says("the book"), r.says("something", "them", "us", "you")
	for i := range r.items {
		am := r.items[i].amount
		if am == nil {
			if book && r.items[i].word == "the book" && r.bookSpeaks(i) {
				r.items[i].meaning = meaning{kind: kindPerson, id: "person"}
				r.hear(i)
			}
			continue
		}
		if (minus || i > 0 && r.items[i-1].brk != 0) && r.tolerance(i) {
			continue
		}
		priced := i > 0 && in(r.items[i-1].text, "$", "£", "€")
		plain := !odd && !priced && am.form != formWords && am.form != formBad && (i+1 >= len(r.items) || r.items[i+1].brk != '-')
		if !plain && r.measuresNothing(i) || !names {
			continue
		}
		left := i - 1
		for left >= 0 && (r.items[left].brk == '#' || r.word(left, "no", "number")) {
			left--
		}
		numbered := r.is(left, kindRole, "name") && !(in(r.items[left].word, "no .", "no.", "nr") && left > 0 && r.items[left-1].amount != nil && (r.timesAt(i+1) || r.items[left-1].amount.form == formInt && r.items[left-1].amount.bare()))
		shelved := r.is(left, kindNoun, "panel") && r.word(left, "shelf") && r.word(left-1, "on", "off", "from", "to", "by") && am.form == formInt && r.isBreak(i+1)
		named := shelved || numbered && am.bare() || r.word(left, "rack", "bin", "row", "pallet", "rack no") && am.bare() && r.isBreak(i+1) ||
			r.is(left, kindAir, "shop") && am.bare() && am.form == formInt && !r.is(r.next(i), kindUnit) && r.items[left].word != "here" && r.items[left].word != "in here" && !r.word(i+1, "degrees", "°") && r.shopIsNumbered(i, left)
		if ago && !named && am.bare() {
			if j := r.next(i); r.is(j, kindRole, "ago") && !(am.form == formPair) {
				named = true
				r.items[j].used = true
			}
		}
		am.dead = am.dead || named || gauge && r.gaugeErrs(i) || am.bare() && r.word(i+1, "people", "persons", "adults", "guests", "kids", "men", "women")
	}
}

// measuresNothing marks the amount at item i where words beside it say so: "$45 a panel",
// "post that one", "a three-layer panel".
func (r *reader) measuresNothing(i int) bool {
	am := r.items[i].amount
	switch {
	case am.form == formWords && am.value != nil && am.value.Cmp(one) < 0 && r.word(i-1, "and") && r.word(i-2, "too", "to", "for", "ate", "won", "tree", "fore"): // "too and a quarter", spoken to a phone
	case i > 0 && r.items[i-1].amount == nil && in(r.items[i-1].text, "$", "£", "€") && am.bare():
	case am.form == formBad && dayOfMonth.MatchString(r.items[i].text): // "by friday the 14th"
	case am.bare() && r.word(i+1, "of") && r.word(i+2, "them", "us", "you") && r.word(i+3, "work", "working", "works", "here", "there"): // "a door shop, 3 of them work there"
	case am.bare() && r.word(i+1, "something"): // "30 something wide"
	case am.form == formWords && am.bare() && am.equals(one) && (r.word(i-1, "that", "this", "which", "last", "other", "same") || r.is(i-1, kindVerb) && (strings.HasSuffix(r.items[i-1].word, " that") || strings.HasSuffix(r.items[i-1].word, " this"))) && (i+1 >= len(r.items) || r.isBreak(i+1) || r.word(i+1, "as", "is", "and", "for", "was", "again", "please", "pls", "too", "now")),
		r.one(i) && am.bare() && am.link == linkNone && r.sortBefore(i) && (i+1 >= len(r.items) || r.isBreak(i+1)), // "found a straight one"
		am.bare() && i+2 < len(r.items) && r.items[i+1].brk == '-' && r.word(i+2, "layer", "layered", "part", "way", "stage", "sided", "man", "wheel", "post", "footed", "head"):
		r.items[i].used = true
	default:
		return false
	}
	am.dead = true
	return true
}

// gaugeErrs: "what if the gauge is lying by 0.05", "it reads 1 high" tell how far a
// gauge is out, and no reading.
func (r *reader) gaugeErrs(i int) bool {
	from, to := r.clause(i)
	if r.within(from, to, kindVacuum, "gauge") < 0 {
		return false
	}
	return r.word(i-1, "by") && r.opensWithin(from, i, "lying", "lies", "off", "out", "wrong", "high", "low", "over", "under", "optimistic", "reading") && r.within(from, i, kindVacuum, "pull") < 0 ||
		r.is(i-1, kindVacuum, "pull") && r.word(i+1, "high", "low", "off", "out") && r.items[i].amount.float() <= 3
}

// tolerance: of "25 +/- 1 inHg" the second says how sure the first is.
func (r *reader) tolerance(i int) bool {
	j := i - 1
	for j >= 0 && (r.items[j].brk == '+' || r.items[j].brk == '-' || r.items[j].brk == '/') && i-j < 4 {
		j--
	}
	either := j == i-4 && r.items[j+1].brk == '+' || j == i-1 && j >= 0 && r.items[j].word == "±" || i > 3 && r.word(i-1, "minus") && (r.word(i-2, "or") || r.is(i-2, kindRole, "compare")) && r.word(i-3, "plus")
	if !either || r.items[i].amount == nil {
		return false
	}
	for j >= 0 && r.items[j].amount == nil {
		j--
	}
	am := r.items[i].amount
	am.dead = true
	if j >= i-4 && j >= 0 && r.items[j].amount.bare() && am.unit != nil {
		u := *am.unit
		r.items[j].amount.unit, r.items[j].amount.unitRaw = &u, am.unitRaw
	}
	return true
}

// shopIsNumbered tells "shop 2" from "shop 62 degrees": nothing but a small
// whole number right behind the word; "shop's 19" and, of a glue, "our shop 16" are degrees.
func (r *reader) shopIsNumbered(i, left int) bool {
	n, ok := r.items[i].amount.whole()
	return ok && n < 20 && left == i-1 && !in(r.items[left].word, "garage", "shops") && !r.is(i+1, kindAir) && !(n > 9 && r.habit.Metric && r.isBreak(i+1) && r.isBreak(i-2) && r.mentions(kindGlue))
}

func (r *reader) opensWithin(from, to int, ws ...string) bool {
	if from >= to || !r.says(ws...) {
		return false
	}
	for i := from; i < to; i++ {
		if r.word(i, ws...) {
			return true
		}
	}
	return false
}

func (r *reader) amountsIn(from, to int) int {
	n := 0
	for i := from; i < to; i++ {
		if r.items[i].amount != nil {
			n++
		}
	}
	return n
}

// killPast marks what was but no longer is: "bar was 3/4 but now its 1 in", "it was 9
// degrees, heater's got it to 16 since".
func (r *reader) killPast() {
	if !r.says("now", "today", "since") {
		return
	}
	for i := range r.items {
		if !r.word(i, "now", "today") && !(r.word(i, "since") && r.isBreak(i+1)) {
			continue
		}
		for j := i - 1; j >= 0 && i-j < 12; j-- {
			if am := r.items[j].amount; am != nil && r.pastBefore(j, r.word(i, "today")) && !r.wetWhenGlued(j) && !r.placedHere(j) {
				am.hearsay = true
			}
		}
	}
}

// placedHere reports whether the number at item j was said elsewhere, and took a place here.
func (r *reader) placedHere(j int) bool {
	return r.items[j].text != r.text[r.items[j].start:r.items[j].end]
}

// wetWhenGlued: "was 12% when I glued it and now lives at 40% rh" tells both moistures
// that matter.
func (r *reader) wetWhenGlued(j int) bool {
	if !r.items[j].amount.is(unit.Proportion) {
		return false
	}
	for k := j + 1; k < len(r.items) && k <= j+6 && r.items[k].amount == nil; k++ {
		if r.word(k, "when", "as", "while") {
			return r.opensWithin(k, min(k+5, len(r.items)), "glued", "pressed", "made", "built", "assembled", "gluing", "pressing", "clamped") || r.within(k, min(k+5, len(r.items)), kindRole, "clamp") >= 0
		}
	}
	return false
}

// pastBefore reports whether "was", or of today's numbers only "yesterday", "used to" or "last time" stands before item j
// with no other number between.
func (r *reader) pastBefore(j int, yesterday bool) bool {
	for k := j - 1; k >= 0 && j-k < 8 && (r.items[k].amount == nil || r.hourOfPast(k)); k-- {
		if strings.ContainsAny(r.items[k].text, "'’") {
			continue // "we're"
		}
		if r.word(k, "so", "its", "theres", "but") {
			return false // "two were duff so it's ten now"
		}
		if r.word(k, "yesterday") || !yesterday && r.word(k, "was", "were", "used", "had", "before") || r.items[k].word == "last" || strings.HasPrefix(r.items[k].word, "last ") {
			return true
		}
	}
	return false
}

// killNeeds takes the meaning of a wanted width from a "need" without a number:
// "need it asap".
func (r *reader) killNeeds() {
	if !r.means(kindRole, "target") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindRole, "target") || !r.word(i, "need", "needs", "want", "make", "making") {
			continue
		}
		from, to := r.clause(i)
		if r.amountsIn(from, to) == 0 && !r.word(i+1, ":") && (to >= len(r.items) || r.items[to].brk != ':') || r.needsFigure(i+1) {
			r.items[i].meaning = meaning{}
		}
	}
}

// needsFigure reports whether item i names what is needed and it is no panel: "need the side
// pressure on …", "need a taller bar".
func (r *reader) needsFigure(i int) bool {
	for r.word(i, "the", "a", "an", "to", "know", "see", "some", "more", "less", "taller", "higher", "wider", "longer", "bigger", "deeper", "stiffer", "another", "my", "your") {
		i++
	}
	return r.is(i, kindAsk) && !strings.HasPrefix(r.items[i].id, string(Strips)) || r.is(i, kindNoun, "bar", "mat", "wedge", "caul", "pump")
}

// killTimes marks how many times as much something is said to give: "the bar
// gives 3x".
func (r *reader) killTimes() {
	r.killPumpHours()
	r.killCycle()
	if !r.says("x", "times", "fold") || !r.says("gives", "give", "gets", "get", "about", "its", "is", "by", "makes", "roughly") {
		return
	}
	for i := range r.items {
		if r.free(i) && r.items[i].amount.bare() && r.word(i+1, "x", "times", "fold") && (r.isBreak(i+2) || r.word(i+2, "the", "as", "that", "what", "more")) && r.word(i-1, "gives", "give", "gets", "get", "about", "its", "is", "by", "makes", "roughly") {
			r.items[i].amount.dead = true
		}
	}
}

// killTotals marks the sum that a count and a width make: "6 strips at 2 wide so 12
// total".
func (r *reader) killTotals() {
	if !r.says("total", "altogether") {
		return
	}
	for i := range r.items {
		if r.free(i) && r.items[i].amount.bare() && r.word(i+1, "total", "altogether") && r.word(i-1, "so", "thats", "makes") && r.is(r.prev(i-1), kindAttr, "wide") {
			r.items[i].amount.dead = true
		}
	}
}

// killEarlier: of "said 0.7 bar earlier, it's 0.78" only the last holds.
func (r *reader) killEarlier() {
	if !r.says("earlier", "before") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if am := r.items[i].amount; am != nil && r.word(i+1, "earlier", "before") && (r.is(i-1, kindSay) || r.word(i-1, "put", "wrote", "typed")) && r.amountsIn(i+1, len(r.items)) > 0 {
			am.dead = true
		}
	}
}

// killRough marks the rough size of stock that was planed since: "4/4 but planed
// to 13/16".
func (r *reader) killRough() {
	if !r.says("to") {
		return
	}
	for i := range r.items {
		if !r.word(i, "planed", "dressed", "surfaced", "milled", "thicknessed", "planing", "planning", "dressing", "surfacing", "milling", "thicknessing", "sanding", "skimming", "resawing") || !r.opensWithin(i+1, min(i+5, len(r.items)), "to") {
			continue
		}
		for j := i - 1; j >= 0 && i-j < 5; j-- {
			if am := r.items[j].amount; am != nil && am.form == formQuarters {
				am.dead = true
			}
		}
		j := r.next(i)
		if r.is(j, kindNoun, "strip") {
			j = r.next(j)
		}
		if r.free(j) && r.length(j) && r.size(j) < thickest && !r.has(unit.StripThickness) && !r.is(r.next(j), kindAttr) && !r.word(j+1, "after", "afterwards", "later", "grit") {
			r.items[i].used = true
			r.bind(j, unit.StripThickness)
		}
	}
}

// killNominal marks what stock is called where its actual size follows: "2 1/4 nominal,
// 2 3/16 actual".
func (r *reader) killNominal() {
	if !r.says("nominal", "nominally", "nom") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if !r.word(i, "nominal", "nominally", "nom") {
			continue
		}
		at := i - 1
		if r.items[at].brk == '(' {
			at--
		}
		if at >= 0 && r.items[at].amount != nil && r.opensWithin(i, min(len(r.items), i+6), "actual", "actually", "really", "true", "measured", "measure", "measures") {
			r.items[at].amount.dead = true
		}
	}
}

// killDenied marks a number behind a "not": "a 3/4 bar, not 1".
func (r *reader) killDenied() {
	if !r.means(kindNot) {
		return
	}
	for i := range r.items {
		if !r.is(i, kindNot) || !in(r.items[i].word, "not", "instead of", "no", "rather than", "isnt", "not the") {
			continue
		}
		j := i + 1
		for j < len(r.items) && (r.word(j, "a", "the", "an", "at", "just", "like", "on", "that")) {
			j++
		}
		if j >= len(r.items) || r.items[j].amount == nil {
			continue
		}
		if r.items[i].word == "no" && !(r.items[j].amount.form == formWords) { // "no, 3/4" corrects
			continue
		}
		if n := r.next(j); r.items[i].word == "no" && r.is(n, kindNoun) {
			continue
		}
		if r.word(j, "more", "less") {
			continue
		}
		if _, to := r.clause(j); r.items[i].word == "isnt" && r.isStop(i-1) && to < len(r.items) && r.items[to].text == "?" && r.opensWithin(j+1, to, "enough", "plenty", "ok", "okay", "fine") {
			continue // "isn't 25 inHg enough?"
		}
		r.items[j].amount.dead = true
		r.items[i].used = true
		if r.word(i, "not") && r.free(i-1) {
			r.killSaidBefore(i-1, j)
		}
	}
}

// killSaidBefore: of "3/8 thick … oh and the thickness is 5/16 not 3/8" what is denied
// was said before.
func (r *reader) killSaidBefore(now, denied int) {
	for k := 0; k < now; k++ {
		if a, b := r.items[k].amount, r.items[denied].amount; r.live(k) && a.link == linkNone && a.equals(b.value) && alike(a, b) {
			a.dead = true
		}
	}
}

// onTop: in "a caul on top, 1 in" the top is no panel.
func (r *reader) onTop() {
	if !r.says("top") {
		return
	}
	for i := 0; i < len(r.items); i++ {
		if r.is(i, kindNoun, "panel") && r.word(i, "top") && r.is(i+1, kindNoun, "sled", "caul") {
			r.items[i].meaning = meaning{} // "top sled's 3/4 again"
		}
		if r.is(i, kindNoun, "panel") && r.word(i, "top") && r.word(i-1, "on") && (i+1 >= len(r.items) || r.isBreak(i+1) || r.items[i+1].amount != nil) {
			r.items[i].meaning = meaning{}
		}
	}
}

// killSomeOf keeps what a later message says of some of several things from being said
// of all of them: "make the last strip 3", "half are 18x36".
func (r *reader) killSomeOf() {
	if !r.habit.Follows {
		return
	}
	for i := range r.items {
		one := r.is(i, kindNoun, "strip", "panel") && !isPlural(r.items[i].word) && r.word(i-1, "last", "first", "second", "third", "outer", "outside", "end", "middle", "other")
		some := r.word(i, "half", "some", "most", "rest", "others") && (r.word(i+1, "are", "is") || r.word(i+1, "of") && r.word(i+2, "them", "those", "the")) || r.spokenHalf(i) && r.word(i+1, "are", "of")
		if !one && !some {
			continue
		}
		_, to := r.clause(i)
		for k := i + 1; k < to; k++ {
			if am := r.items[k].amount; am != nil {
				am.dead = true
			}
		}
	}
}

// spokenHalf reports whether item i is "half".
func (r *reader) spokenHalf(i int) bool {
	am := r.items[i].amount
	return am != nil && am.form == formWords && am.equals(half)
}

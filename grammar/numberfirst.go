package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// What is said at length: the number before its name ("two inches is the bar", "eight
// is how many strips"), or parted from it ("the bar they gave me stands 2").

// toldHow: "three inches is how wide they are" says the number first.
func (r *reader) toldHow(j int) bool {
	return r.word(j-1, "how") && r.word(j-2, "is", "was", "thats") && j > 2 && r.items[j-3].amount != nil
}

// howManyIs reads the count of "eight is how many strips" and "how many: nine".
func (r *reader) howManyIs(i int) unit.Field {
	if r.word(i+1, "is", "was", "thats") && r.word(i+2, "how") && r.word(i+3, "many") {
		if f := countFields[r.idOf(i+4)]; len(f) > 0 {
			return f[0]
		}
		return r.countedHere(i)
	}
	if k := i - 1; k > 1 && (r.labels(k) || r.items[k].brk == ',') && r.word(k-1, "many") && r.word(k-2, "how") && r.isBreak(i+1) {
		return r.countedHere(i)
	}
	return ""
}

// labelCommas takes the comma of "wide, three. thick, three quarters. gauge, twenty
// five" for a colon: each name and its number stand in a sentence of their own.
func (r *reader) labelCommas() {
	var at []int
	for k := 0; k+2 < len(r.items); k++ {
		if r.items[k+1].brk != ',' || r.items[k+2].amount == nil {
			continue
		}
		if !r.is(k, kindAttr) && !r.is(k, kindNoun) && !r.is(k, kindVacuum, "gauge", "vacuum") {
			continue
		}
		starts := r.isStop(k-1) || r.items[max(k-1, 0)].brk == ':' || r.word(k-1, "the") && r.isStop(k-2)
		end := k + 3
		if starts && (r.isStop(end) || r.is(end, kindAttr) && r.isStop(end+1)) {
			at = append(at, k+1)
		}
	}
	for _, k := range at {
		if len(at) > 1 {
			r.items[k].brk = ':'
		}
	}
}

// isThePart: "two inches is the bar", "38 is the bar".
func (r *reader) isThePart(i int) bool {
	if !r.word(i+1, "is", "was", "thats") || !r.word(i+2, "the", "my", "our") || !r.is(i+3, kindNoun, "bar", "mat", "gap", "cup", "bow", "caul", "opening") || i+4 < len(r.items) && !r.isBreak(i+4) || r.is(i-1, kindNoun) {
		return false
	}
	f := bareFields[r.items[i+3].id]
	return !r.has(f) && r.bind(i, f)
}

// onTheBar: "inch and a quarter on the bar".
func (r *reader) onTheBar(i int) bool {
	am := r.items[i].amount
	if !r.word(i+1, "on", "for") || am.link == linkTimes || !r.word(i+2, "the", "my", "our", "that") || !r.is(i+3, kindNoun, "bar") || i+4 < len(r.items) && !r.isBreak(i+4) && !r.replaces(i+4) || !small(r.size(i)) || r.has(unit.BarHeight) {
		return false
	}
	if n, whole := am.whole(); r.is(i-1, kindNoun) || r.is(i-1, kindAttr) || r.is(i-1, kindVacuum) || whole && am.form == formWords && n < 10 {
		return false
	}
	return r.bind(i, unit.BarHeight)
}

// whatGaugeSays: "twenty five is what the needle on the vacuum says".
func (r *reader) whatGaugeSays(i int) bool {
	_, to := r.clause(i)
	return r.word(i+1, "is", "was", "thats") && r.word(i+2, "what") && r.within(i+3, to, kindVacuum, "gauge", "pull") >= 0
}

// middling: "its got a bow in it, three eighths in the middle".
func (r *reader) middling(i int) bool {
	k := i + 1
	if r.is(k, kindUnit) {
		k++
	}
	if !r.word(k, "in", "at") && !r.is(k, kindRole, "length") && !r.is(k, kindUnit) {
		k--
	}
	if !r.word(k+1, "the") || !r.word(k+2, "middle", "center", "centre", "worst", "deepest") || r.size(i) > 0.05 || r.items[i].amount.link != linkNone {
		return false
	}
	from, _ := r.sentence(i)
	for j := i - 1; j >= from; j-- {
		if r.items[j].amount != nil {
			return false
		}
		if r.is(j, kindNoun, "cup", "bow", "gap") {
			f := bareFields[r.items[j].id]
			return !r.has(f) && r.bind(i, f)
		}
	}
	return false
}

// partAsTold is the noun of "the bar they gave me stands an inch and a half" and of
// "batten along the edge stands 1 3/8", seen from the measure at item i; -1 where none is.
func (r *reader) partAsTold(i int) int {
	if !r.word(i-1, "is", "was", "stands", "measures", "at") && !r.is(i-1, kindFix) {
		return -1
	}
	told := false
	for k := i - 2; k >= 0 && k >= i-8 && !r.isBreak(k) && r.items[k].amount == nil; k-- {
		if r.is(k, kindNoun, "bar", "mat", "caul") {
			if told {
				return k
			}
			return -1
		}
		if r.is(k, kindNoun) || r.is(k, kindAttr) || r.is(k, kindVacuum) || r.is(k, kindNot) {
			return -1
		}
		told = told || r.word(k, "i", "we", "you", "that", "which", "along", "down", "against") || r.is(k, kindPerson)
	}
	return -1
}

// turnedOut: "strips came out at eleven sixteenths", "the thickness well that came out
// three eighths".
func (r *reader) turnedOut(k int) bool {
	return r.is(k, kindVerb, "out") && strings.HasPrefix(r.items[k].word, "c") || r.word(k, "worked", "turned", "ended", "works", "turns", "ends") && (r.word(k+1, "out") || r.is(k+1, kindVerb, "out"))
}

// countedPerPanel: "six to the panel", "six of them a top".
func (r *reader) countedPerPanel(i int) bool {
	k := i + 1
	switch {
	case r.word(k, "to", "per", "in", "for") || r.is(k, kindRole, "length"):
		k++
	case r.word(k, "of", "of them"):
		for k++; r.word(k, "them", "em", "those", "these"); k++ {
		}
	}
	if k == i+1 || r.items[i].amount.link != linkNone {
		return false
	}
	if n, ok := r.wholeAt(i); !ok || n < 2 || r.has(unit.StripCount) {
		return false
	}
	if r.word(k, "a", "the", "each", "every", "one") || r.is(k, kindRole, "in a row") {
		k++
	} else if !r.word(k-1, "per") {
		return false
	}
	told := r.is(k, kindNoun, "panel") && !isPlural(r.items[k].word) && r.isBreak(k+1)
	r.byPanel = r.byPanel || told
	return told
}

// surfaceInstead reads "film instead of wax", "wax rather than plastic".
func (r *reader) surfaceInstead() {
	if !r.means(kindNot) {
		return
	}
	kinds := func(k int) string {
		switch {
		case r.is(k, kindNoun, "film"), r.is(k, kindFact, "surface=film"):
			return "film"
		case r.word(k, "wax", "waxing"), r.is(k, kindFact, "surface=waxed"):
			return "waxed"
		case r.word(k, "bare", "nothing"), r.is(k, kindFact, "surface=bare"):
			return "bare"
		}
		return ""
	}
	for i := range r.items {
		if !(r.is(i, kindNot) && in(r.items[i].word, "instead of", "rather than", "not")) {
			continue
		}
		to := i + 1
		for r.word(to, "the", "a", "any", "on", "than") {
			to++
		}
		now, was := kinds(i-1), kinds(to)
		if now == "" || was == "" || now == was || i > 1 && r.isBreak(i-1) {
			continue
		}
		r.say(i-1, unit.SurfaceKind, unit.Word(now))
		r.items[i].used, r.items[to].used = true, true
		r.items[i].meaning, r.items[to].meaning, r.items[i-1].meaning = meaning{}, meaning{}, meaning{}
	}
}

// enumerated gives up the numbers of "1) 2 1/4 wide 2) 3/8 thick 3) seven of them".
func (r *reader) enumerated() {
	var at []int
	inside := false
	for i := range r.items {
		switch r.items[i].brk {
		case '(':
			inside = true
		case ')':
			if n, ok := r.wholeAt(i - 1); !inside && ok && n == len(at)+1 && r.items[i-1].amount.form == formInt {
				at = append(at, i-1)
			}
			inside = false
		}
	}
	for _, i := range at {
		if len(at) > 1 {
			r.items[i].amount.dead = true
			r.items[i+1].brk = ','
			if i > 0 && !r.isBreak(i-1) { // "caul 1/2 2) force on it"
				r.items[i].brk = ','
			}
		}
	}
}

// loseInTime: "we lose about an inch in fifteen minutes" takes nothing away.
func (r *reader) loseInTime() {
	if !r.says("lose") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindNot, "no") || !r.word(i, "lose") || !r.word(i-1, "we", "i", "it", "they", "she", "you", "bag", "press", "frame") {
			continue
		}
		if k := r.next(i); k >= 0 && r.items[k].amount != nil && r.amountsIn(k+1, min(k+5, len(r.items))) > 0 && r.said(unit.Lasting) {
			r.items[i].meaning = meaning{kind: kindNoun, id: "leak"}
			r.hear(i)
		}
	}
}

// onPaper keeps "the drawing says" from pulling a vacuum.
func (r *reader) onPaper() {
	if !r.says("drawing") {
		return
	}
	for i := range r.items {
		if r.word(i, "drawing") && r.word(i-1, "the", "a", "my", "his", "her", "this", "our", "per", "shop") && r.is(i, kindVacuum) {
			r.items[i].meaning, r.items[i].used = meaning{}, true
		}
	}
}

// metricMils gives "forty-five mil" of a metric shop its millimetres.
func (r *reader) metricMils() {
	if !r.habit.Metric {
		return
	}
	for i := range r.items {
		if r.free(i) && r.items[i].amount.bare() && r.word(i+1, "mil", "mill", "mils") {
			u := unit.MM
			r.items[i].amount.unit, r.items[i].amount.unitRaw = &u, "mm"
			r.items[i+1].meaning, r.items[i+1].used = meaning{kind: kindFill}, true
		}
	}
}

// replaces reports whether item i says that what stands before it replaces what
// is behind: "instead of", "rather than".
func (r *reader) replaces(i int) bool {
	return r.is(i, kindNot) && r.word(i, "instead of", "rather than", "not")
}

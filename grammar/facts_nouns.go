package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// firmness are the grades of a mat by the words for them.
var firmness = map[string]string{"soft": "soft", "squishy": "soft", "medium": "medium", "firm": "firm", "hard": "firm", "stiff": "firm", "softest": "soft"}

// coverWord: "film gets down behind it" leaves the strips' own height to cover
// the bar.
func (r *reader) coverWord(i int, val string) {
	r.items[i].used = true
	field := unit.StripThickness
	if val == "top" {
		field = unit.BarHeight
	}
	for _, b := range r.bound {
		if b.fact.Field == field {
			r.bound = append(r.bound, binding{Fact{Field: unit.Cover, Value: b.fact.Value, Unit: b.fact.Unit, Text: r.items[i].text}, i, false})
			return
		}
	}
	r.phrase.Uncovered = val == "down"
	r.phrase.Covered = val == "top"
}

// unsay takes back what was read of a field from a wording that begins so: of "no
// film, just waxed the sled" the wax stands.
func (r *reader) unsay(f unit.Field, prefix string) {
	for k := range r.bound {
		if b := &r.bound[k]; b.fact.Field == f && strings.HasPrefix(strings.ToLower(b.fact.Text), prefix) {
			r.bound = append(r.bound[:k], r.bound[k+1:]...)
			return
		}
	}
}

// faced reports whether faces on a core are spoken of.
func (r *reader) faced() bool {
	return r.mentions(kindNoun, "face", "core") || r.topic == Move || r.topic == Glue
}

func (r *reader) nounFact(i int) {
	if k := r.notIn(i); k >= 0 {
		r.phrase.Negated = append(r.phrase.Negated, r.textOf(k, i))
		return
	}
	it := &r.items[i]
	switch it.id {
	case "opening":
		if strings.Contains(it.word, "frame") && !r.has(unit.PressKind) {
			r.sayOnce(i, unit.PressKind, "frame")
		}
	case "frame":
		if r.word(i-1, "steel", "metal", "iron", "picture", "window", "wooden", "angle", "welded") {
			return // what a top is bolted to
		}
		r.singlePress(i)
		r.bothPresses(i)
		if !r.is(i-1, kindNoun, "bag") && !strings.Contains(it.word, "opening") {
			r.sayOnce(i, unit.PressKind, "frame")
		}
	case "film":
		if r.filmAlone(i) {
			r.sayOnce(i, unit.SurfaceKind, "film")
		}
	case "bag":
		r.bagsSaid(i)
		r.sayOnce(i, unit.PressKind, "bag")
	case "core":
		for _, c := range coreKinds {
			if strings.Contains(it.word, c.word) && !r.underfoot(i) && !r.inPlaceOf(i) {
				r.sayOnce(i, unit.CoreKind, c.core)
				return
			}
		}
	case "mat":
		r.matFirmness(i)
	case "press":
		r.pressFact(i)
	}
}

// pressesLeft reads how many presses are left beside the one at item i, which is out of
// use.
func (r *reader) pressesLeft(i int) {
	if n := r.pressesDown(i); n > 0 && !r.has(unit.PressCount) {
		r.say(i, unit.PressCount, unit.Number(n))
		r.soMany(i, n)
	}
}

// aSuchOne: "swap the mat for a 3/8 soft one".
func (r *reader) aSuchOne(j int) bool {
	return r.items[j-1].amount != nil && j+1 < len(r.items) && r.items[j+1].text == "one" && (j+2 == len(r.items) || r.isBreak(j+2))
}

// pressFact reads how many presses there are: "both presses", "the second press is
// back", "a single press".
func (r *reader) pressFact(i int) {
	it := &r.items[i]
	r.bothPresses(i)
	r.pressesLeft(i)
	r.nthPress(i)
	if r.word(i-1, "second") && !isPlural(it.word) && !r.has(unit.PressCount) && r.wordIn("put", "add", "use", "run", "get", "on", "throw", "throwing", "chuck", "bring", "fire", "wheel", "borrow", "borrowed", "buy", "bought", "free", "available", "fixed", "working", "ready", "back") && r.within(0, len(r.items), kindNot) < 0 && len(r.items) < 16 {
		r.say(i, unit.PressCount, unit.Number(2))
		r.soMany(i, 2)
	}
	if r.justTheOne() && (r.habit.Follows || r.dayPlan()) && !r.mentions(kindNoun, "core", "face") && !r.has(unit.PressCount) {
		r.say(i, unit.PressCount, unit.Number(1))
	}
	r.singlePress(i)
	r.pressesThen(i)
}

// bothPresses: "both presses", "both the frames are running".
func (r *reader) bothPresses(i int) {
	if (r.word(i-1, "both") || r.word(i-1, "the", "our", "my", "of") && r.opensWithin(max(i-3, 0), i, "both")) && isPlural(r.items[i].word) && !r.has(unit.PressCount) {
		r.say(i, unit.PressCount, unit.Number(2))
	}
}

// bagsSaid counts bags as presses are counted.
func (r *reader) bagsSaid(i int) {
	r.bothPresses(i)
	r.nthPress(i)
	r.pressesLeft(i)
	r.singlePress(i)
	r.pressesThen(i)
}

// pressesThen: "what if I borrow a bag so we have two" tells how many there are then.
func (r *reader) pressesThen(i int) {
	if !r.habit.Follows || !r.word(i-1, "a", "another", "one more", "more") || isPlural(r.items[i].word) || r.has(unit.PressCount) {
		return
	}
	_, to := r.sentence(i)
	for k := i + 2; k < to; k++ {
		then := r.word(k-1, "makes") || r.word(k-1, "have", "got", "run", "had") && r.opensWithin(max(i+1, k-4), k, "so", "then")
		if n, whole := r.wholeAt(k); then && whole && n > 1 && r.free(k) && r.items[k].amount.bare() && r.isBreak(k+1) {
			r.bind(k, unit.PressCount)
			return
		}
	}
}

// singlePress: "single bag", "a lone press", "just a single frame".
func (r *reader) singlePress(i int) {
	if r.word(i-1, "single", "lone", "sole", "solitary") && !isPlural(r.items[i].word) && !r.has(unit.PressCount) {
		r.items[i-1].used = true
		r.say(i, unit.PressCount, unit.Number(1))
	}
}

// nthPress reads "and with a third bag?" as three of them.
func (r *reader) nthPress(i int) {
	if n := nth[r.items[max(i-1, 0)].word]; n > 0 && i > 0 && (r.word(i-2, "a", "another") || r.word(i-2, "the") && r.wordIn("gets", "get", "got", "going", "running", "back", "working", "fixed", "free")) && r.habit.Follows && !isPlural(r.items[i].word) && !r.has(unit.PressCount) {
		r.say(i, unit.PressCount, unit.Number(n))
	}
}

// justTheOne: "No. 2 press is down, so just the one".
func (r *reader) justTheOne() bool {
	for i := range r.items {
		if r.word(i, "just", "only") && (r.word(i+1, "the") && (r.word(i+2, "one") || i+2 < len(r.items) && r.items[i+2].amount != nil && r.items[i+2].text == "one")) {
			return true
		}
	}
	return false
}

// inPlaceOf: "in place of the particleboard", "instead of the mdf".
func (r *reader) inPlaceOf(i int) bool {
	j := i - 1
	for r.word(j, "the", "a", "that", "our") {
		j--
	}
	if r.is(j, kindNot) && in(r.items[j].word, "instead of", "rather than", "not") {
		return true
	}
	return r.word(j, "of") && (r.word(j-1, "place", "instead", "lieu") || r.is(j-1, kindFix, "fix") && r.items[j-1].word == "instead")
}

// underfoot reports whether a sheet is the sled: "bare ply sled", "waxed mdf under".
func (r *reader) underfoot(i int) bool {
	if r.word(i, "core", "substrate") && !r.is(i+1, kindNoun, "sled", "bed") {
		return false // "with a 1 in core under"
	}
	if r.word(i+1, "under", "underneath", "beneath", "below") && (i+2 == len(r.items) || r.isBreak(i+2) || r.word(i+2, "them", "it", "the", "everything")) && !r.is(r.next(i+1), kindNoun, "face") {
		return true
	}
	if r.word(i-1, "the", "a", "my", "our") && r.word(i-2, "on") && r.word(i-3, "straight", "right", "directly") && (r.mentions(kindNot) || r.mentions(kindFact, "surface=bare")) {
		return true // "no plastic, just straight on the ply"
	}
	return r.is(i+1, kindNoun, "sled", "bed", "fence", "caul", "bar") || r.is(i-1, kindNoun, "sled")
}

func (r *reader) sayOnce(i int, f unit.Field, w string) {
	for k := range r.bound {
		if b := &r.bound[k]; b.fact.Field == f && b.fact.Value == unit.Word(w) {
			r.items[i].used = true
			return
		}
	}
	r.say(i, f, unit.Word(w))
}

// firmInBrackets: "10 mm mat (soft)".
func (r *reader) firmInBrackets(i int) string {
	if i+3 >= len(r.items) || r.items[i+1].brk != '(' || r.items[i+3].brk != ')' {
		return ""
	}
	return firmness[r.items[i+2].word]
}

// nth are the presses that come as the last of so many: "and with a third bag".
var nth = map[string]int{"second": 2, "third": 3, "fourth": 4, "fifth": 5}

// pressesDown is how many presses are left where a message says so behind one that
// is out of use: "one press is down, so two".
func (r *reader) pressesDown(i int) int {
	down := i + 1
	for r.word(down, "is", "are", "has", "gone", "went") {
		down++
	}
	if !r.word(down, "down", "out", "broken", "dead", "off", "busy", "leaking", "knackered", "bust", "busted", "kaput", "stuffed", "buggered", "ripped", "torn", "punctured", "holed", "gone", "unusable", "toast", "shot") && !r.is(down, kindVerb, "out") && !r.is(down, kindNoun, "leak") {
		return 0
	}
	for k := down + 1; k < len(r.items); k++ {
		n, ok := r.spokenNumber(k)
		if r.word(k, "one") {
			n, ok = 1, true
		}
		if ok && (r.word(k-1, "so", "leaves", "only", "just", "with", "have") || r.word(k-1, "the") && r.word(k-2, "just", "only", "with")) && n < 20 && (r.next(k) < 0 || r.is(k+1, kindNoun, "press", "frame", "bag") && r.next(k+1) < 0) {
			return n
		}
	}
	return 0
}

// soMany uses up a count that only draws the sum: "the second press is back, so
// two".
func (r *reader) soMany(from, n int) {
	for k := from + 1; k < len(r.items); k++ {
		if m, ok := r.spokenNumber(k); ok && m == n && r.free(k) && r.word(k-1, "so", "thats", "makes") {
			r.items[k].used = true
		}
	}
}

// shortened reports whether item i has its "is" with it: "the mat's firm".
func (r *reader) shortened(i int) bool {
	return strings.HasSuffix(strings.ReplaceAll(r.items[i].text, "’", "'"), "'s")
}

// filmAlone: "6 strips 2 wide, 1 in bar, film" says what the strips lie on, where
// no stack is described.
func (r *reader) filmAlone(i int) bool {
	return i > 0 && r.isBreak(i-1) && r.isBreak(i+1) && r.mentions(kindNoun, "strip", "bar") && !r.mentions(kindNoun, "mat", "caul", "fence") && r.layersTold() < 3 && r.topic != Stack
}

// notIn is the "not" of "not in the bag", whose press is item i; -1 where none stands.
func (r *reader) notIn(i int) int {
	if !r.is(i, kindNoun, "bag", "frame") {
		return -1
	}
	k := i - 1
	for r.word(k, "the", "a", "our") {
		k--
	}
	if k == i-1 || !r.word(k, "in", "using", "with") && !r.is(k, kindUnit, "in") || !r.is(k-1, kindNot, "not") {
		return -1
	}
	return k - 1
}

package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// Ordinary ways to say a word to the load book, joined to the one that its rules know.

// bookWords joins and parts the words of checks and holds.
func (r *reader) bookWords() {
	held := r.means(kindVerb, string(Hold)) || r.says("hold on")
	passes := r.says("passes", "passed", "pass")
	onMark := r.says("dead", "bang", "spot", "smack", "right", "exactly")
	checks := r.means(kindVerb, string(Check))
	for i := 0; i < len(r.items); i++ {
		switch {
		case r.items[i].amount != nil:
			if r.items[i].amount.unit != nil {
				r.vacBehind(i)
			}
			if checks || misspeltCheck(r.wordAt(i+1)) {
				r.secondCheck(i)
			}
			if passes {
				r.passed(i)
			}
		case misspeltCheck(r.items[i].word):
			r.becomes(i, i+1, Check, "checked")
		case r.items[i].word == "job" && r.is(i, kindRole, "job") && r.word(i-1, praising...) && (i+1 >= len(r.items) || r.items[i+1].amount == nil):
			r.items[i].meaning, r.items[i].word = meaning{}, "work" // "good job"
			r.hear(i)
		case r.items[i].kind == kindNoun || r.items[i].kind == kindVacuum:
			if onMark && r.word(i+1, "dead", "bang", "spot", "smack", "right", "exactly") && r.word(i+2, "on", "at") && i+3 < len(r.items) && r.items[i+3].amount != nil {
				r.remove(i+1, i+3) // "bar dead on 1"
			}
		case held:
			r.holdLifted(i)
		}
	}
}

// misspeltChecks are taken for "checked".
var misspeltChecks = wordSet(`chk cheked checkd chekced chcked cheched chceked checed checkked chekd checekd chacked chekked cecked hecked checkde checkedd`)

func misspeltCheck(w string) bool {
	return w != "" && (w[0] == 'c' || w[0] == 'h') && misspeltChecks[w]
}

// praising words make "job" and "work" no things of the shop.
var praising = []string{"good", "great", "nice", "fine", "lovely", "excellent", "super", "brilliant", "top", "solid", "awesome", "amazing", "cracking", "grand", "fantastic", "neat", "clean", "tidy"}

// becomes makes one verb of the items [from, to).
func (r *reader) becomes(from, to int, v Verb, word string) {
	it := &r.items[from]
	it.meaning, it.word, it.taken, it.end = meaning{kind: kindVerb, id: string(v)}, word, false, r.items[to-1].end
	r.hear(from)
	it.text = r.text[it.start:it.end]
	r.remove(from+1, to)
}

// vacBehind parts the `" vac` of `strips 1/2" vac 25` from the measure before it: the
// vacuum has a number of its own behind it.
func (r *reader) vacBehind(i int) {
	const most = 8 // inches of a part; a gauge of less would be no vacuum
	am := r.items[i].amount
	if am.unit == nil || am.unit.Symbol != unit.InHg.Symbol || am.value == nil || am.float() > most || i+1 >= len(r.items) || r.items[i+1].amount == nil || r.items[i+1].amount.link != linkNone || r.items[i+1].amount.value == nil || r.items[i+1].amount.float() <= am.float() {
		return
	}
	part := i - 1
	for r.word(part, "is", "are", "measured", "at") || r.is(part, kindAttr) {
		part--
	}
	typed := r.items[i].text
	at := strings.LastIndex(strings.ToLower(typed), "vac")
	if at < 0 || !r.is(part, kindNoun, "bar", "strip", "mat", "sled", "caul") && !r.is(i-1, kindAttr, "thick") {
		return
	}
	u := unit.Inch
	am.unit, am.unitRaw = &u, u.Symbol
	it := r.items[i]
	vac := item{meaning: meaning{kind: kindVacuum, id: "gauge"}, word: "vac", text: typed[at:], start: it.start + at, end: it.end}
	r.items[i].end = it.start + len(strings.TrimRight(typed[:at], " "))
	r.items[i].text = r.text[it.start:r.items[i].end]
	r.items = slices.Insert(r.items, i+1, vac)
	r.hear(i + 1)
}

// secondCheck joins "2nd check", and parts "3 second check", which is no three seconds.
func (r *reader) secondCheck(i int) {
	am := r.items[i].amount
	check := r.is(i+1, kindVerb, string(Check)) && r.word(i+1, "check", "checked") || misspeltCheck(r.wordAt(i+1))
	switch {
	case !check:
	case am.unit != nil && r.items[i].amount.form == formInt && len(r.items[i].text) > len("second") && strings.HasSuffix(strings.ToLower(r.items[i].text), "second"):
		it := &r.items[i]
		am.unit, am.unitRaw = nil, ""
		it.end -= len("second")
		it.end = it.start + len(strings.TrimRight(r.text[it.start:it.end], " "))
		it.text, it.word = r.text[it.start:it.end], ""
		r.becomes(i+1, i+2, Check, "second check")
	case strings.EqualFold(r.items[i].text, "2nd"):
		r.items[i].amount = nil
		r.becomes(i, i+2, Check, "second check")
	}
}

// passed reads "3 passes, bar 1, strips 1/2" as a check of load 3.
func (r *reader) passed(i int) {
	if !r.word(i+1, "passes", "passed", "pass") || i != r.firstWord() && !r.is(i-1, kindVerb, string(Show)) && !(i > 0 && r.items[i-1].brk == '#') || r.amountsIn(i+1, len(r.items)) < 2 || !r.mentions(kindNoun, "bar", "strip") {
		return
	}
	to := i + 2
	for r.word(to, "the", "second") || r.is(to, kindVerb, string(Check)) {
		to++
	}
	if r.isBreak(to) || r.is(to, kindNoun, "bar", "strip", "mat") {
		r.becomes(i+1, to, Check, "checked")
	}
}

// holdLifted joins "hold cleared", "hold is off" and "clear the hold on".
func (r *reader) holdLifted(i int) {
	if r.is(i, kindVerb, string(Hold)) && r.word(i, "hold", "on hold") {
		to := i + 1
		for r.word(to, "is", "was", "has", "been", "now", "s") {
			to++
		}
		if r.is(to, kindVerb, string(Clear)) && r.word(to, "cleared", "released", "is clear", "clear") || r.word(to, "lifted", "removed", "over") && r.isBreak(to+1) {
			r.becomes(i, to+1, Clear, "cleared")
		}
		return
	}
	if r.is(i, kindFix) && r.word(i, "hold on") && i+3 < len(r.items) && r.items[i+1].amount != nil && r.word(i+2, "is", "was", "has", "now") {
		to := i + 3
		for r.word(to, "been", "now") {
			to++
		}
		if r.word(to, "lifted", "removed", "cleared", "released", "off", "over", "gone") && r.isBreak(to+1) {
			r.items[i].meaning, r.items[i].word = meaning{kind: kindVerb, id: string(Clear)}, "lift the hold" // "hold on 1 is lifted"
			r.hear(i)
			r.remove(i+2, to+1)
		}
		return
	}
	lifts := r.is(i, kindVerb, string(Clear)) && r.word(i, "clear", "cleared", "release", "released") || r.word(i, "lift", "lifted", "remove", "removed", "end", "cancel", "drop")
	if !lifts || !r.word(i+1, "the", "that", "this", "my", "your") {
		return
	}
	if r.is(i+2, kindVerb, string(Hold)) && r.word(i+2, "hold") || r.is(i+2, kindFix) && r.word(i+2, "hold on") {
		r.becomes(i, i+3, Clear, "lift the hold")
		if r.word(i+1, "on", "for", "from", "of") {
			r.remove(i+1, i+2)
		}
	}
}

// interjection is the item behind words that mean nothing here, before the first
// comma: "heads up, 27 is in".
func (r *reader) interjection() int {
	if r.word(1, "here") && r.isBreak(2) && len(r.items) > 3 && r.items[0].amount == nil && r.items[0].kind == kindNone {
		return 3 // "bob here, 3 checked"
	}
	if r.word(0, "heads") && r.word(1, "up") {
		return 2
	}
	for i := 0; i < len(r.items) && i < 4; i++ {
		if r.isBreak(i) && i > 0 {
			return i + 1
		}
		if r.items[i].amount != nil || r.items[i].kind != kindNone && !r.word(i, "no") || r.items[i].brk != 0 {
			return 0
		}
	}
	return 0
}

package grammar

import (
	"math"
	"slices"

	"presshand/engine/unit"
)

// A message that corrects itself says a thing, a word such as "sorry" or "no", and the
// thing again. What comes later is put where the earlier stood, so that both are read
// alike: "bar's 3/4, sorry, 1 in", "make it oak, no, ash", "2 wide. 2 1/4 actually".

// stumbles are sounds before a thing that is said again, better.
var stumbles = wordSet(`er err erm um uh ah eh hm hmm`)

// afterthoughts are words of correction that may stand behind what they correct.
var afterthoughts = wordSet(`actually sorry rather correction oops`)

func (r *reader) corrections() {
	r.recounts()
	r.loadCorrected()
	no, not, really := r.says("no", "nope", "nah"), r.means(kindNot), r.says("really", "actually", "are actually", "are really", "is actually", "should", "should be")
	stumbled := r.says("er", "err", "erm", "um", "uh", "ah", "eh", "hm", "hmm")
	quiet := !no && !not && !really && !stumbled && !r.means(kindFix)
	for i := 1; i < len(r.items); i++ {
		if word := r.items[i].word; r.items[i].amount == nil && quiet || r.items[i].amount != nil && (word == "" || !stumbles[word]) { // "um" is a unit too
			continue
		}
		if really && r.word(i, "the", "those", "these") && r.opensWithin(i, min(i+6, len(r.items)), "really", "actually", "are actually", "are really", "is actually", "should", "should be") {
			if end := r.pileAgain(i); end > 0 {
				i = r.forget(i, end) // "the 8 are really 2 1/2"
				continue
			}
		}
		if no && r.word(i, "no", "nope", "nah") && r.isBreak(i-1) && r.word(i+1, "the", "those", "these", "they") {
			if end := r.pileAgain(i + 1); end > 0 {
				i = r.forget(i, end) // "… 3 at 3 1/4. no the last ones are 3 1/8"
				continue
			}
		}
		if not && r.notThisBut(i) || r.habit.Follows && r.word(i, "are actually", "is actually") {
			continue // "the 8 are actually 2 1/8" corrects the thread
		}
		fix, denied := r.is(i, kindFix), not && r.is(i, kindNot) && r.word(i, "no", "nope", "nah") && r.isBreak(i+1)
		if !fix && !denied && !((stumbled || r.items[i].amount != nil) && (r.isBreak(i-1) || r.betweenFigures(i)) && stumbles[r.items[i].word]) {
			continue
		}
		if fix && r.behindCorrected(i) {
			r.items[i].meaning = meaning{kind: kindFill}
			continue
		}
		now := r.afterFix(i + 1)
		switch end := r.pileAgain(now); {
		case end > 0:
			i = r.forget(i, end)
		case fix && r.afterthought(i) && r.placeNumber(i-2, i-1):
			i = r.forget(i-1, i+1)
		case r.wordAgain(i, now):
			i = r.forget(i, now)
		case r.sizeAgain(i, now):
			i = r.forget(i, r.endOfSize(now))
		case r.sameCountAgain(i, now):
			r.corrects(i)
		case r.rateCorrected(i, now):
			i = r.forget(i, now+3)
		case r.pairAgain(i, now):
			i = r.forget(i, r.nextAmount(now, len(r.items))+1)
		case r.baldBefore(i, now):
			i = r.forget(i, now)
		case r.labelledNumber(now):
			if stumbles[r.items[i].word] {
				r.corrects(i) // "need 28 er 24 wide"
			}
		case r.placeNumber(i-1, now):
			i = r.forget(i, now+1)
		}
	}
}

// corrects makes item i a word of correction.
func (r *reader) corrects(i int) {
	r.items[i].meaning = meaning{kind: kindFix}
	r.hear(i)
}

// afterthought reports whether the word of correction at item i stands behind a number that
// has no other word: "1/2 thick, 3/4 actually".
func (r *reader) afterthought(i int) bool {
	return afterthoughts[r.items[i].word] && r.isBreak(i-2) && r.isBreak(i+1)
}

// behindCorrected reports whether the words of correction at item i stand behind the
// load that they correct: "correction to 22: should be 24 inHg".
func (r *reader) behindCorrected(i int) bool {
	k := i - 1
	for k > 0 && r.isBreak(k) {
		k--
	}
	if k < 1 || !r.plainNumber(k) {
		return false
	}
	for k--; k > 0 && (r.word(k, "load", "on", "for", "to") || r.is(k, kindVerb, string(Show))); k-- {
	}
	return r.is(k, kindVerb, string(Correct))
}

// loadCorrected: "drop 33, customer cancelled. sorry, I mean 34" is of one load.
func (r *reader) loadCorrected() {
	last := len(r.items) - 1
	if last < 4 || !r.is(0, kindVerb) && r.verb(0) == "" && !r.word(0, "drop") || r.amountsIn(0, last) != 1 || !r.plainNumber(1) || !r.plainNumber(last) {
		return
	}
	_, was := r.items[1].amount.whole()
	_, now := r.items[last].amount.whole()
	i := last
	for i > 2 && (r.is(i-1, kindFix) || r.isBreak(i-1) && r.is(i-2, kindFix)) {
		i--
	}
	if !was || !now || i == last {
		return
	}
	r.standsFor(1, last)
	r.forget(i, len(r.items))
}

// notThisBut: "cup's not 3 mm but 2", "16 mdf not 18 ply".
func (r *reader) notThisBut(i int) bool {
	if !r.is(i, kindNot) || !r.word(i, "not", "isnt", "instead of", "rather than") {
		return false
	}
	if now := i + 3; r.word(i+2, "but") && r.plainNumber(i+1) && r.plainNumber(now) && alike(r.items[i+1].amount, r.items[now].amount) {
		r.standsFor(i+1, now)
		r.items = slices.Delete(r.items, i+2, now+1)
		r.items = slices.Delete(r.items, i, i+1)
		return true
	}
	if k := i + 2; r.is(i-1, kindNoun, "core") && r.is(k, kindNoun, "core") && r.plainNumber(i+1) && r.items[k].word != r.items[i-1].word {
		r.unuse(r.items[i+1].text)
		r.unuse(r.items[k].word)
		r.items = slices.Delete(r.items, i, k+1)
		return true
	}
	return false
}

// forget takes the items [i, to) out, with the marks before them, and returns the
// item to go on behind.
func (r *reader) forget(i, to int) int {
	for i > 0 && r.isBreak(i-1) && r.items[i-1].brk != '(' && r.items[i-1].brk != ')' {
		i--
	}
	r.items = slices.Delete(r.items, i, min(to, len(r.items)))
	return i
}

// endOfSize is the item behind the numbers of a size that was moved from item i on.
func (r *reader) endOfSize(i int) int {
	end := i + 1
	for end < len(r.items) && r.items[end].used && r.items[end].amount != nil && r.items[end].amount.link == linkTimes {
		end++
	}
	return end
}

// afterFix is the item behind a word of correction, past others of them and marks.
func (r *reader) afterFix(i int) int {
	for i < len(r.items) && (r.isBreak(i) && r.items[i].brk != '(' && r.items[i].brk != '?' || r.is(i, kindFix) || r.items[i].amount == nil && stumbles[r.items[i].word] || r.word(i, "no", "its", "thats", "is", "a", "an", "the", "more", "like")) {
		i++
	}
	return i
}

// wordAgain: a wood, a glue, a surface or a mat's firmness is named again.
func (r *reader) wordAgain(i, now int) bool {
	kind := r.choiceOf(now)
	if kind == "" {
		return false
	}
	for k := i - 1; k >= 0 && k >= i-5; k-- {
		if r.items[k].amount != nil || r.is(k, kindNot) {
			return false
		}
		if r.choiceOf(k) == kind && !r.is(k-1, kindNot) && r.items[k].word != r.items[now].word {
			r.unuse(r.textOf(k, k))
			r.items[k] = item{start: r.items[k].start, end: r.items[k].end, used: true}
			return true
		}
	}
	return false
}

// sizeAgain: "1 x 3/4, sorry, 1 1/4 x 3/4".
func (r *reader) sizeAgain(i, now int) bool {
	end := r.chain(now)
	if end-now < 2 {
		return false
	}
	for from := i - 1; from >= 0 && from >= i-8; from-- {
		if r.chain(from)-from != end-now || from > 0 && r.items[from].amount.link == linkTimes {
			continue
		}
		for k := 0; k < end-now; k++ {
			r.standsFor(from+k, now+k)
		}
		return true
	}
	return false
}

// sameCountAgain drops the count of "10 stuks, sorry, 10 pcs of 62", which is said again
// with another word.
func (r *reader) sameCountAgain(i, now int) bool {
	was := i - 1
	for was >= 0 && r.items[was].brk == ',' {
		was--
	}
	if !r.is(was, kindNoun) || !r.is(now+1, kindNoun) || r.items[was].id != r.items[now+1].id || !r.free(was-1) || !r.free(now) || !alike(r.items[was-1].amount, r.items[now].amount) {
		return false
	}
	r.items[was-1].amount.dead = true
	return true
}

// labelledNumber reports whether the number at item i has a word of its own: what it
// corrects is found by that.
func (r *reader) labelledNumber(i int) bool {
	n := r.next(i)
	return r.is(n, kindNoun) && !r.startsAnew(n) || r.is(n, kindAttr) || r.is(n, kindAir) || r.word(i+1, "is", "was", "are", "off", "ea", "pcs") || r.word(i+1, "of") && !r.word(i+2, "em", "them", "those", "these")
}

// fixedField is what "make that 3 wide" corrects: the one measure in that direction.
func (r *reader) fixedField(i int, attr string) unit.Field {
	if !r.fixedBefore(i - 1) {
		return ""
	}
	var found unit.Field
	for _, noun := range []string{"strip", "bar", "panel", "sled"} {
		if f := attrFields[noun][attr]; f != "" && f != found && r.has(f) {
			if found != "" {
				return ""
			}
			found = f
		}
	}
	return found
}

// baldBefore gives up the first number of "house at 45, I mean 50% rh", which has no
// word of its own.
func (r *reader) baldBefore(i, now int) bool {
	was := i - 1
	for was >= 0 && r.isBreak(was) {
		was--
	}
	if !r.plainNumber(was) || !r.plainNumber(now) || !r.labelledNumber(now) || !r.items[was].amount.bare() || r.items[now].amount.bare() || !alike(r.items[was].amount, r.items[now].amount) {
		return false
	}
	if r.items[was].amount.equals(r.items[now].amount.value) {
		r.items[was].used = true
	} else {
		r.items[was].amount.dead = true
	}
	return true
}

// rateCorrected: "2 inHg in 10 min, er, 1 inHg in 10 min".
func (r *reader) rateCorrected(i, now int) bool {
	if now+2 >= len(r.items) || !r.plainNumber(now) || !r.plainNumber(now+2) || r.items[now+1].amount != nil || r.isBreak(now+1) {
		return false
	}
	was := i - 1
	for was >= 0 && r.isBreak(was) {
		was--
	}
	if was < 2 || !r.plainNumber(was) || !r.plainNumber(was-2) || r.items[was-1].word != r.items[now+1].word || !alike(r.items[was].amount, r.items[now+2].amount) || !alike(r.items[was-2].amount, r.items[now].amount) {
		return false
	}
	r.standsFor(was-2, now)
	r.standsFor(was, now+2)
	return true
}

// pairAgain: "6 that are 3 inches, no wait 5 that are 3" says two numbers again with the
// same words between.
func (r *reader) pairAgain(i, now int) bool {
	was := i - 1
	for was >= 0 && (r.isBreak(was) || r.is(was, kindAttr)) {
		was--
	}
	then := r.nextAmount(now, min(now+6, len(r.items)))
	between := then - now
	first := was - between
	if between < 2 || between > 4 || first < 0 || !r.plainNumber(was) || !r.plainNumber(then) || !r.plainNumber(first) || !r.plainNumber(now) || !alike(r.items[was].amount, r.items[then].amount) || !alike(r.items[first].amount, r.items[now].amount) {
		return false
	}
	for k := 1; k < between; k++ {
		if a, b := &r.items[first+k], &r.items[now+k]; r.isBreak(now+k) || b.amount != nil || a.amount != nil || a.word != b.word {
			return false
		}
	}
	r.standsFor(first, now)
	r.standsFor(was, then)
	return true
}

// placeNumber puts the number at item now where the one stood that it corrects: the
// last before item from, or one that is nearer to it in size.
func (r *reader) placeNumber(from, now int) bool {
	if !r.plainNumber(now) {
		return false
	}
	best, off, beside := -1, 0.0, math.Inf(1)
	for k, seen := from, 0; k >= 0 && k >= from-10 && seen < 3; k-- {
		if r.items[k].amount == nil {
			if best < 0 && !r.betweenNumbers(k) {
				return false
			}
			continue
		}
		if !r.corrigible(k, now) {
			if r.sizedTogether(k) && r.items[now].amount.bare() && alike(r.items[k].amount, r.items[now].amount) {
				beside = min(beside, r.sizeOff(k, now)) // "12 panels 18x36, no wait 13"
				continue
			}
			if best < 0 && seen == 0 && !r.items[k].used && r.sizeOff(k, now) <= farOff {
				return false
			}
			continue // "16 half-inch panels, sorry, 18"
		}
		seen++
		if d := r.sizeOff(k, now); best < 0 || (off > farOff || off > countsOff && r.countMeant(k, best, now)) && d < off {
			best, off = k, d
		}
	}
	if best < 0 || off > math.Log(6) || off >= beside || r.countAndSize(best, now) {
		return false
	}
	if best > 0 && r.halfBefore(best) {
		r.items[best-1] = item{start: r.items[best-1].start, end: r.items[best-1].end, used: true} // "half eight, sorry 9"
	}
	r.standsFor(best, now)
	return true
}

// sizedTogether reports whether the amount at item k is one of "18x36".
func (r *reader) sizedTogether(k int) bool {
	return r.free(k) && (r.items[k].amount.link == linkTimes || k+1 < len(r.items) && r.items[k+1].amount != nil && r.items[k+1].amount.link == linkTimes)
}

// countAndSize reports whether a whole number may be for the count as well as for the
// width of "five at three inches, no six".
func (r *reader) countAndSize(k, now int) bool {
	before := k - 1
	if r.word(before, "at", "of", "by", "x") {
		before--
	}
	_, whole := r.items[now].amount.whole()
	if !whole || before < 0 || r.items[before].amount == nil {
		return false
	}
	nearer := r.word(now+1, "of", "of them") || r.sizeOff(before, now) < r.sizeOff(k, now)+aboutAlike
	return nearer && (before < k-1 || r.items[k].amount.link == linkAt || r.items[k].amount.unit != nil)
}

// farOff is by how much, as a logarithm, a corrected number may differ before another
// one is looked for; our estimate.
const farOff = 1.1

// aboutAlike is by how much, as a logarithm, a number must be nearer to the width than to the
// count of a pile to correct the width; our estimate.
const aboutAlike = 0.1

// countsOff is that for a measure that is no whole number, where a count is near; our estimate.
const countsOff = 0.6

// countMeant reports whether the whole number at item now is rather for the count at item k than
// for the broken measure at item was: "5 strips 2 1/8 wide, no wait, six".
func (r *reader) countMeant(k, was, now int) bool {
	_, count := r.wholeAt(k)
	_, whole := r.wholeAt(now)
	_, kept := r.wholeAt(was)
	return count && whole && !kept && r.word(now+1, "of", "of them") && r.is(r.counted(k), kindNoun, "strip") && isPlural(r.items[r.counted(k)].word)
}

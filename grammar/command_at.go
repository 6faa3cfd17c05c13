package grammar

import "strings"

// hourAlone: "14 out at 3".
func (r *reader) hourAlone(i int) bool {
	if !r.free(i) || !r.isBreak(r.looseBehind(i)+1) && !r.word(r.looseBehind(i)+1, "and") || !r.items[i].amount.bare() {
		return false
	}
	if link := r.items[i].amount.link; link != linkAt && (link != linkNone || !r.word(i-1, "at", "around", "about", "since", "roughly", "approx")) {
		return false
	}
	h, ok := plainWhole(r.items[i].amount)
	return ok && h >= 1 && h < 24
}

// at takes item i for the time of a load's going in or coming out. The first
// time that is said counts, another is left unused.
func (r *reader) at(c *Command, i int) {
	it, hour := &r.items[i], i-1
	suffix := r.halfOfDay(i)
	clock, ok := clockOf(it.amount, suffix)
	from := it.start
	if r.hourBefore(i) { // "2 05 pm"
		am := *it.amount
		am.form, am.pair = formPair, [2]int{int(r.items[hour].amount.float()), int(am.float())}
		clock, ok = clockOf(&am, suffix)
		from = r.items[hour].start
	}
	if it.amount.form == formPair && strings.Contains(it.text, ":") && len(it.text)-strings.IndexByte(it.text, ':') < len(":05") {
		ok = false // "10:4" is no time
	}
	if !ok || c.Time != "" || c.Ago != 0 {
		r.unuse(r.text[from:it.end])
		it.used = true
		return
	}
	c.Time, c.Clock, it.used = clock, r.text[from:it.end], true
	c.Half = suffix == "" && eitherHalf(c.Clock, clock)
	r.items[r.suffixAt(i)].used = true
	if from < it.start {
		r.items[hour].used = true
	}
}

// halfOfDay is "am" or "pm" behind the time at item i, or what stands for them: "7:40 this
// morning", "9 in the evening". Words use their items up.
func (r *reader) halfOfDay(i int) string {
	if suffix := r.daySuffix(i); suffix != "" {
		return suffix
	}
	k := i + 1
	for r.word(k, "this", "in", "the", "today") || r.is(k, kindUnit, "in") {
		k++
	}
	half := map[string]string{"morning": "am", "this morning": "am", "afternoon": "pm", "this afternoon": "pm", "evening": "pm", "this evening": "pm", "tonight": "pm"}[r.wordAt(k)]
	if half == "" {
		return ""
	}
	for j := i + 1; j <= k; j++ {
		r.items[j].used = true
	}
	return half
}

// hourBefore reports whether item i, two digits, follows an hour: "2 05 pm".
func (r *reader) hourBefore(i int) bool {
	if !r.free(i) || !r.free(i-1) || len(r.items[i].text) != 2 || !r.items[i-1].amount.bare() || !r.items[i].amount.bare() {
		return false
	}
	h, okH := plainWhole(r.items[i-1].amount)
	m, okM := plainWhole(r.items[i].amount)
	return okH && okM && h >= 1 && h <= 12 && m < 60
}

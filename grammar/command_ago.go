package grammar

import (
	"fmt"
	"math"
	"strings"
	"time"

	"presshand/engine/unit"
)

// mostAgo is the longest that a load can have gone in or come out before it is told.
const mostAgo = 7 * 24 * time.Hour

// agoAt is how long before the message item i and those behind it lie: "10 minutes ago",
// "an hour back", "a few minutes ago"; last is the last item of them.
func (r *reader) agoAt(i int) (span time.Duration, last int, ok bool) {
	if i >= len(r.items) || r.items[i].used {
		return 0, i, false
	}
	span, last, ok = r.spanAt(i)
	if !ok {
		span, last, ok = r.fewAt(i)
	}
	if !ok || !r.word(last+1, "ago") && !(r.word(last+1, "back", "earlier") && r.isBreak(last+2)) {
		return 0, i, false
	}
	return span, last + 1, true
}

// spanAt reads a length of time from item i: "20 min", "1h20", "1 hr and 20 min", "1 h 20".
func (r *reader) spanAt(i int) (span time.Duration, last int, ok bool) {
	am := r.items[i].amount
	if am == nil {
		return 0, i, false
	}
	if am.form == formPair {
		text := strings.ToLower(r.items[i].text)
		return time.Duration(am.pair[0])*time.Hour + time.Duration(am.pair[1])*time.Minute, i, strings.ContainsAny(text, "h:")
	}
	if span, ok = spanOf(am); !ok {
		return r.joinedSpan(i)
	}
	next := i + 1
	if r.word(next, "and") || next < len(r.items) && r.items[next].brk == ',' {
		next++
	}
	if am.unit.Symbol != "h" || next >= len(r.items) || r.items[next].amount == nil {
		return span, i, true
	}
	if more, ok := spanOf(r.items[next].amount); ok && more < time.Hour {
		return span + more, next, true
	}
	if n, ok := plainWhole(r.items[next].amount); ok && r.items[next].amount.bare() && n < 60 {
		return span + time.Duration(n)*time.Minute, next, true
	}
	return span, i, true
}

// joinedSpan reads "1h20m", which is a number with letters behind it.
func (r *reader) joinedSpan(i int) (span time.Duration, last int, ok bool) {
	if i+1 >= len(r.items) || r.items[i+1].start != r.items[i].end || !strings.HasPrefix(r.items[i+1].word, "h") {
		return 0, i, false
	}
	text := strings.TrimRight(r.items[i].text+r.items[i+1].word, "inutes")
	span, err := time.ParseDuration(text)
	return span, i + 1, err == nil && span > 0 && span <= mostAgo
}

// fewAt reads "few minutes" and "couple of hours" from item i. Few are three, common
// practice, no source.
func (r *reader) fewAt(i int) (span time.Duration, last int, ok bool) {
	n := 0
	switch {
	case r.word(i, "couple"):
		n = 2
	case r.word(i, "few"):
		n = 3
	default:
		return 0, i, false
	}
	last = i + 1
	if r.word(last, "of") {
		last++
	}
	switch {
	case r.is(last, kindUnit, "min"):
		return time.Duration(n) * time.Minute, last, true
	case r.is(last, kindUnit, "h"):
		return time.Duration(n) * time.Hour, last, true
	}
	return 0, i, false
}

// spanOf is a length of time that was told in a single number.
func spanOf(am *amount) (time.Duration, bool) {
	if am == nil || am.value == nil || am.minus || !am.is(unit.Lasting) {
		return 0, false
	}
	seconds := am.unit.SI(am.float())
	if seconds <= 0 || seconds > mostAgo.Seconds() {
		return 0, false
	}
	return time.Duration(math.Round(seconds)) * time.Second, true
}

// longAgo takes "ten minutes ago", which item i begins, for the time of a load's going in or
// coming out. Where a time is told already it is left unused.
func (r *reader) longAgo(c *Command, i int) bool {
	span, last, ok := r.agoAt(i)
	if !ok {
		return false
	}
	text := r.text[r.items[i].start:r.items[last].end]
	for k := i; k <= last; k++ {
		r.items[k].used = true
	}
	if c.Time != "" || c.Ago != 0 {
		r.unuse(text)
		return true
	}
	c.Ago, c.Clock = span, text
	return true
}

// beenIn reads "1's been in for 10 minutes" from item i on, behind the load.
func (r *reader) beenIn(c *Command, i int) bool {
	for r.word(i, "has", "have", "is", "s", "already", "now", "load") {
		i++
	}
	if !r.word(i, "been") || r.asksSomething() {
		return false
	}
	for i++; i < len(r.items) && r.items[i].amount == nil; i++ {
		if !r.word(i, "in", "the", "for", "about", "around", "pressing", "in the press for", "in the bag for", "a", "press", "bag", "frame", "under", "now", "already") && !r.is(i, kindVerb, string(In)) && !r.is(i, kindUnit, "in") {
			return false
		}
	}
	if !r.free(i) || !r.nothingAfter(i) && !r.word(i+1, "now", "already", "so far") {
		return false
	}
	span, ok := spanOf(r.items[i].amount)
	if !ok {
		return false
	}
	c.Verb, c.Ago, c.Clock = In, span, r.items[i].text
	for k := 0; k < len(r.items); k++ {
		r.items[k].used = true
	}
	r.close(c, len(r.items))
	return true
}

// timedBehind reports whether item i begins the time at which a load went in, and the
// message ends with it: "1 in at 9", "1 in 10 min ago".
func (r *reader) timedBehind(i int) bool {
	for r.isBreak(i) && i < len(r.items) || r.word(i, "a", "about") {
		i++
	}
	if _, last, ok := r.agoAt(i); ok {
		return r.nothingAfter(last)
	}
	if r.shortTimeEnds(i) || r.word(i, "at", "around", "since") && r.shortTimeEnds(i+1) {
		return true
	}
	if r.word(i, "at", "around", "since") {
		i++
		for r.word(i, "about", "around", "roughly", "approx") {
			i++
		}
		if r.pastHour(i) {
			return true
		}
	} else if r.pastHour(i) {
		return true
	} else if i >= len(r.items) || r.items[i].amount == nil || r.items[i].amount.link != linkAt {
		return false
	}
	return r.hourAlone(i) && r.nothingAfter(r.looseBehind(i)) || i < len(r.items) && r.items[i].amount != nil && r.daySuffix(i) != "" && r.nothingAfter(r.suffixAt(i))
}

// looseBehind is the last item of the words behind item i that make a time a rough one: "7
// or so", "7ish"; i itself where none stand there.
func (r *reader) looseBehind(i int) int {
	switch {
	case r.word(i+1, "ish", "roughly", "approx", "approximately", "sharp"):
		return i + 1
	case r.word(i+1, "or") && r.word(i+2, "so", "thereabouts"):
		return i + 2
	case r.word(i+1, "or so", "or thereabouts", "give or take"):
		return i + 1
	case r.word(i+1, "this") && r.word(i+2, "morning", "afternoon", "evening"):
		return i + 2
	case r.word(i+1, "give") && r.word(i+2, "or") && r.word(i+3, "take"):
		return i + 3
	}
	return i
}

// pastHour reports whether "quarter past 7" begins at item i and ends the message.
func (r *reader) pastHour(i int) bool {
	for k := i; k < i+4 && k < len(r.items) && !r.isBreak(k); k++ {
		if r.free(k) && r.items[k].amount.bare() && k > i {
			_, from := r.minutesBefore(k)
			return from == i && r.nothingAfter(r.looseBehind(k))
		}
	}
	return false
}

// eitherHalf reports whether a time that was typed with no "am" or "pm" may be of either
// half of the day: "1:50", "9", not "09:00" or "13:50".
func eitherHalf(typed, clock string) bool {
	return clock >= "01:00" && clock < "13:00" && !strings.HasPrefix(typed, "0")
}

// quarterPast takes "quarter to 7" and "half past 9", whose hour is item i, for the time of
// a load's going in or coming out.
func (r *reader) quarterPast(c *Command, i int) bool {
	if c.Time != "" || c.Ago != 0 || !r.free(i) || !r.items[i].amount.bare() {
		return false
	}
	h, ok := plainWhole(r.items[i].amount)
	minutes, from := r.minutesBefore(i)
	if !ok || h < 1 || h > 12 || from < 0 {
		return false
	}
	total := h*60 + minutes
	half := r.halfOfDay(i)
	if half == "pm" && h < 12 {
		total += 12 * 60
	}
	c.Time, c.Half, c.Clock = fmt.Sprintf("%02d:%02d", total/60%24, total%60), half == "", r.textOf(from, i)
	for k := from; k <= i; k++ {
		r.items[k].used = true
	}
	return true
}

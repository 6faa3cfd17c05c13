package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// leakTests reads leaks of which a gauge's two readings were told, before the readings and
// the times can be taken for something else.
func (r *reader) leakTests() {
	if r.has(unit.Leak) || !r.timeSaid() {
		return
	}
	if r.leakWatched() && r.watchedByClock() {
		return
	}
	for i := range r.items {
		if r.free(i) && !r.linkedOn(i) && r.gaugeReading(i) && r.fellFrom(i) {
			return
		}
	}
}

// fellFrom: "shut it off at 25 and it's down to 24 in about 90 seconds", "it dropped from 25
// 1/2 to 25 while I ate, say 20 minutes"; the first reading is at item a.
func (r *reader) fellFrom(a int) bool {
	b := r.nextAmount(a, len(r.items))
	if b < 0 || !r.free(b) {
		return false
	}
	r.inNoInch(b)
	if !r.gaugeReading(b) || r.items[b].amount.float() >= r.items[a].amount.float() || !r.saysLevel(b) || !r.shutBefore(a) && !r.fallsFrom(a) {
		return false
	}
	t := r.nextAmount(b, len(r.items))
	if t < 0 || t > b+10 || !r.free(t) || !r.items[t].amount.is(unit.Lasting) || r.items[t].amount.value == nil || !r.spanOf(b, t) {
		return false
	}
	r.leakBetween(a, b, t)
	return r.items[t].used
}

// linkedOn reports whether the amount at item i goes on from the one before: "24 x 48".
func (r *reader) linkedOn(i int) bool {
	return r.items[i].amount.link != linkNone && i > 0 && r.items[i-1].amount != nil
}

// saysLevel reports whether what stands before item b says that a gauge came to it.
func (r *reader) saysLevel(b int) bool {
	k := b - 1
	for r.word(k, "about", "around", "maybe", "like") {
		k--
	}
	return r.items[b].amount.link == linkTo || r.items[b].amount.link == linkAt || r.word(k, "to", "at", "on", "down") || r.is(k, kindVacuum, "pull") && in(r.items[k].word, "down to", "sitting at", "sits at", "sat at", "reads", "reading", "shows", "showing")
}

// shutBefore: "shut it off at 25", "isolated at 25" opens the sentence of item i.
func (r *reader) shutBefore(i int) bool {
	from, _ := r.sentence(i)
	return r.opensWithin(from, i, "shut", "shut it", "isolate", "isolated", "valved") || r.opensWithin(from, i, "valve") && r.opensWithin(from, i, "closed", "close")
}

// fallsFrom: "it dropped from 25 1/2 to 25", "goes from 25 down to 23".
func (r *reader) fallsFrom(i int) bool {
	if !r.word(i-1, "from") {
		return false
	}
	k := i - 2
	for r.word(k, "down", "it", "slowly", "straight") {
		k--
	}
	return r.is(k, kindNoun, "leak") || r.word(k, "went", "goes", "gone", "going", "dropped", "drops", "fell", "falls", "sank", "sinks", "slid", "slides", "crept", "creeps", "came", "drifted", "drifts", "slipped")
}

// spanOf reports whether the time at item t is that in which a gauge came to item b: "in
// about 90 seconds", "10 minutes later", "say 20 minutes".
func (r *reader) spanOf(b, t int) bool {
	k := t - 1
	for r.word(k, "about", "around", "maybe", "roughly", "like", "some", "only", "just") {
		k--
	}
	switch {
	case k == b: // the "in" was read with the number
		return strings.HasSuffix(r.items[b].text, " in") || r.inBefore(t)
	case r.word(k, "in", "over", "after", "within", "inside", "say", "took", "under") || r.is(k, kindRole, "length") || r.inBefore(t) || r.is(k, kindSay) && r.word(k, "say"):
		return !r.word(k-1, "stays", "stay", "press", "leave")
	case r.word(t+1, "later", "after", "on", "afterwards") || r.is(t+1, kindRole, "ago"):
		return true
	}
	return r.isBreak(k) && r.isBreak(t+1) && !r.opensWithin(b, t, "press", "clamp", "cure", "cures", "for")
}

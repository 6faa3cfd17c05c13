package grammar

import "presshand/engine/unit"

// eitherReading: "pull 23 with the small pump or 27 with the rotary" and "does pulling 28
// instead of 25 buy me anything" compare the push at two readings.
func (r *reader) eitherReading() {
	if r.mentions(kindNoun, "leak", "bar", "strip") || len(r.phrase.Choices) > 0 || r.has(unit.Vacuum) || r.pressureSaid() {
		return
	}
	for b := 3; b < len(r.items); b++ {
		or := b - 1
		if !r.shownByGauge(b) || !r.items[b].amount.bare() || r.timesAt(b+1) || !r.word(or, "or", "over") && !r.is(or, kindRole, "compare") && !r.insteadAt(or) {
			continue
		}
		from, _ := r.sentence(b)
		a := or - 1
		for a > from && r.items[a].amount == nil {
			a--
		}
		if a <= from-1 || !r.shownByGauge(a) || !r.items[a].amount.bare() || r.items[a].amount.link != linkNone || !r.is(a-1, kindVacuum) {
			continue
		}
		r.items[or].used = true
		if r.insteadAt(or) {
			r.items[or].meaning = meaning{}
		}
		r.offerVacuum(a, b)
		if len(r.phrase.Asks) == 0 || r.asksFor(Flatten) && !r.mentions(kindNoun, "cup", "bow") {
			r.phrase.Asks = []Ask{{About: Face, question: true}}
			r.topic = Face
		}
		return
	}
}

// insteadAt reports whether item k is "instead of" or "rather than", or its last word.
func (r *reader) insteadAt(k int) bool {
	return r.word(k, "instead of", "rather than") || r.word(k, "of") && r.word(k-1, "instead") || r.word(k, "than") && r.word(k-1, "rather")
}

// killChart: "the chart on the wall says 25 is 12.3 psi, ours says 22.5" has an example of a
// chart's, and not what the gauge shows.
func (r *reader) killChart() {
	if !r.means(kindSay) {
		return
	}
	for k := range r.items {
		if !r.word(k, "chart", "poster", "table", "website", "conversion", "booklet") || !r.word(k-1, "the", "a", "that", "this", "my", "conversion") {
			continue
		}
		_, to := r.clause(k)
		say := r.within(k, to, kindSay)
		if say < 0 || say+3 >= len(r.items) || !r.live(say+1) || !r.word(say+2, "is", "equals", "makes", "means", "gives") || !r.live(say+3) || !r.items[say+3].amount.is(unit.Pressing) {
			continue
		}
		r.items[say+1].amount.dead, r.items[say+3].amount.dead = true, true
		r.readingAsked(say + 4)
	}
}

// readingAsked: "what's 22.5" behind such a chart asks for the push at that reading.
func (r *reader) readingAsked(from int) {
	for i := from; i < len(r.items); i++ {
		if r.live(i) && r.items[i].amount.bare() && r.shownByGauge(i) && r.isBreak(i+1) && (r.word(i-1, "whats") || r.is(i-1, kindAsk) && (r.word(i-1, "whats", "what is"))) {
			u := unit.InHg
			r.items[i].amount.unit = &u
			r.items[i-1].meaning, r.items[i-1].used = meaning{}, true
			r.phrase.Asks = append(r.phrase.Asks, Ask{About: Face, question: true})
		}
	}
}

// reallySo: "8 strips total but 2 are glued up as one so really 7 pieces" leaves the second.
func (r *reader) reallySo() {
	if !r.says("really", "actually", "effectively") {
		return
	}
	for k := 1; k+2 < len(r.items); k++ {
		if !r.word(k, "really", "actually", "effectively") || !r.word(k-1, "so", "its", "theres", "but", "thats") || !r.live(k+1) || !r.is(k+2, kindNoun, "strip", "panel") {
			continue
		}
		id := r.items[k+2].id
		for i := range k - 1 {
			if r.live(i) && r.items[i].amount.bare() && r.is(i+1, kindNoun, id) {
				r.items[i].amount.dead = true
			}
		}
	}
}

// redoneAndNew: of "we lost 2 panels of the 9, so 2 to redo plus 6 new ones" no number is all
// that there is to do.
func (r *reader) redoneAndNew() {
	if !r.says("redo", "remake", "reglue", "repress", "repair", "rerun") {
		return
	}
	for i := range r.items {
		if !r.live(i) || !r.items[i].amount.bare() || !r.word(i+1, "to") || !r.word(i+2, "redo", "remake", "reglue", "repress", "repair", "rerun") {
			continue
		}
		j := i + 3
		if !r.word(j, "plus", "and") || !r.live(j+1) || !r.word(j+2, "new", "more", "fresh") {
			continue
		}
		r.items[i].amount.dead, r.items[j+1].amount.dead = true, true
		if r.mentions(kindNoun, "press", "frame", "bag") {
			r.phrase.Asks = append(r.phrase.Asks, Ask{About: Schedule, question: true})
		}
		for k := range i {
			if r.live(k) && r.items[k].amount.bare() && r.opensWithin(max(0, k-3), k, "lost", "lose", "scrapped", "binned") {
				r.items[k].amount.dead = true
			}
		}
	}
}

// proudBy: "he wants it proud by 1/16" is of no bar.
func (r *reader) proudBy(i int) bool {
	const most = 0.007 // metres
	j := i - 1
	if r.word(j, "by") {
		j--
	} else {
		return false
	}
	for j >= 0 && r.items[j].brk == '\'' {
		j--
	}
	return r.is(j, kindAttr, "tall") && r.word(j, "proud") && r.length(i) && r.size(i) <= most && !r.mentions(kindNoun, "bar")
}

// limitBehind: "8 m3/h, 0.5 mbar end pressure" tells where the pump stops.
func (r *reader) limitBehind(i int) bool {
	if !r.is(i+1, kindRole, "limit") || r.has(unit.PumpLimit) || !r.mentions(kindNoun, "pump") && !r.saidFlow() {
		return false
	}
	return r.word(i+1, "end pressure", "base pressure", "ultimate", "ultimate pressure", "pump limit", "blank pressure") && r.isBreak(i+2)
}

// waxAlone: of "24 inHg, wax? just needs to touch" the wax is what the strips lie on.
func (r *reader) waxAlone() {
	if !r.says("wax") || !r.mentions(kindNoun, "strip", "bar", "sled") && !r.pressureSaid() {
		return
	}
	for i := range r.items {
		if r.word(i, "wax") && r.items[i].kind == kindNone && r.isBreak(i-1) && r.isBreak(i+1) && i > 0 {
			r.items[i].meaning = meaning{kind: kindFact, id: "surface=waxed"}
			r.hear(i)
		}
	}
}

// halfFull lists "half of it is full with wood" as unread: how much air is left to pump
// depends on it, and nobody knows how well it was guessed.
func (r *reader) halfFull() {
	if !r.says("full", "filled", "taken", "occupied", "used") || !r.mentions(kindNoun, "press", "frame", "bag", "pump") {
		return
	}
	for f := range r.items {
		if !r.word(f, "full", "filled", "taken", "occupied", "used") || r.items[f].used || !r.mentions(kindNoun, "pump") && !r.saidFlow() {
			continue
		}
		for k := f - 1; k >= 0 && k >= f-6 && !r.isBreak(k); k-- {
			if r.spokenHalf(k) || r.word(k, "half", "most", "third") {
				r.unuse(r.textOf(k, f))
				r.phrase.Negated = append(r.phrase.Negated, r.textOf(k, f))
				break
			}
		}
	}
}

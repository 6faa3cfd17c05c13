package grammar

import "presshand/engine/unit"

// Numbers that a message has in passing, and that are of no panel.

// killInPassing gives up the numbers of "he's got one in the van", "nobody touches it
// till 6", "say 5 cubic feet of blocks", "is a gallon enough".
func (r *reader) killInPassing() {
	r.killSums()
	r.someOfTheOnesThere()
	r.otherOnes()
	r.killNeverDone()
	till, between := r.says("till", "til", "until"), r.says("between")
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.dead {
			continue
		}
		switch {
		case am.form == formWords && r.saveOne(i):
			am.dead, r.items[i].used = true, true
			r.items[i-1].meaning, r.items[i-1].used = meaning{}, true
		case am.form == formWords && r.pronoun(i), till && r.leftTill(i), am.is(unit.Content) && r.ofGlueOrFill(i),
			r.habit.Follows && (r.hourLost(i) || r.wantedOf(i) || r.thatIsnt(i)), between && r.gapBetween(i):
			am.dead = true
		case am.form == formWords && r.partOfSheet(i):
			am.dead, r.items[i].used = true, true
		}
	}
}

// neverVerbs are of what somebody says never to have done.
var neverVerbs = wordSet(`trusted trust liked like used use needed need bothered tried try run ran had wanted gone went bought`)

// killNeverDone gives up the first number of "I never trusted a bar under an inch". What comes
// behind it is of the work at hand: "I never used less than 25 inHg with a 1 in bar".
func (r *reader) killNeverDone() {
	if !r.says("never") {
		return
	}
	for i := 1; i+1 < len(r.items); i++ {
		if !r.word(i, "never") || !r.word(i-1, "i", "we", "ive", "weve", "have", "and", "ill") || !neverVerbs[r.items[i+1].word] {
			continue
		}
		_, to := r.clause(i)
		for k := i; k < to; k++ {
			if r.items[k].amount != nil {
				r.items[k].amount.dead = true
				break
			}
		}
	}
}

// pronoun reports whether item i is the "one" of "I've got one in the van" or "one of
// the halves".
func (r *reader) pronoun(i int) bool {
	if !r.one(i) || !r.items[i].amount.bare() && r.items[i].amount.unitRaw != "in" {
		return false
	}
	place := i + 1
	inside := r.items[i].amount.unitRaw == "in" || r.is(place, kindUnit, "in") || r.word(place, "in")
	if inside && r.items[i].amount.unitRaw != "in" {
		place++
	}
	if r.word(i-1, "got", "have", "has", "had", "found", "bought", "borrow", "borrowed", "own", "owns", "keep", "keeps", "brought") {
		if inside {
			return r.word(place, "the", "a", "my", "our", "his", "her", "their", "there", "here", "stock")
		}
		return place >= len(r.items) || r.isBreak(place) || r.word(place, "on", "at", "from", "that", "thats", "which", "somewhere", "already", "here", "there", "lying", "left", "spare", "over", "under", "behind")
	}
	k := i + 3
	return r.word(i+1, "of") && r.word(i+2, "the", "those", "these", "my", "our") && k < len(r.items) && r.unknown(k) && !r.isBreak(k)
}

// saveOne: "all tight bar one", of all but one.
func (r *reader) saveOne(i int) bool {
	return r.one(i) && r.items[i].amount.bare() && r.is(i-1, kindNoun, "bar") && r.word(i-1, "bar") && !r.is(i+1, kindUnit) &&
		r.word(i-2, "fine", "good", "ok", "okay", "tight", "closed", "perfect", "sound", "all", "them", "great", "well", "clean", "everything", "flat", "solid", "lot")
}

// leftTill: "nobody touches it till 6" is an hour at which nothing of the panel changes.
func (r *reader) leftTill(i int) bool {
	am := r.items[i].amount
	if !r.word(i-1, "till", "til", "until") || r.topic == Pump {
		return false
	}
	if n, whole := am.whole(); !whole || n < 1 || n > 12 || !am.bare() {
		return false
	}
	if n := r.next(i); r.is(n, kindNoun) || r.is(n, kindAttr) || r.is(n, kindUnit) {
		return false
	}
	from, _ := r.sentence(i)
	if r.opensWithin(from, i, "i", "we", "they", "he", "she", "ill", "im") {
		return false
	}
	return r.opensWithin(from, i, "nobody", "noone", "touch", "touches", "touching", "leave", "leaving", "stays", "stay", "sits", "sit", "sleep", "alone", "wait", "waits")
}

// ofGlueOrFill: a volume of glue that is there, or of what is laid into a press to fill it,
// is none of the press.
func (r *reader) ofGlueOrFill(i int) bool {
	from, to := r.sentence(i)
	if r.within(from, to, kindNoun, "pump") >= 0 || r.opensWithin(from, to, "reservoir", "tank", "receiver", "volume") {
		return false
	}
	if r.word(i+1, "enough", "plenty", "do", "last", "cover") || r.word(i+1, "be", "going") && r.opensWithin(i, to, "enough", "plenty") || r.word(i+1, "of") && (r.is(i+2, kindGlue) || r.word(i+2, "filler", "blocks", "scrap", "glue")) {
		return true
	}
	for k := range r.items {
		if r.word(k, "blocks", "block", "blocking", "filler", "fillers", "spacer", "spacers", "bricks", "packing", "offcuts") {
			return true
		}
	}
	return false
}

// wantedOf: "the school wants two of them" orders so many of what is made, not of its strips.
func (r *reader) wantedOf(i int) bool {
	_, whole := r.wholeAt(i)
	return whole && r.items[i].amount.bare() && r.word(i-1, "wants", "want", "ordered", "orders") && !r.word(i-2, "we", "i", "you", "ill", "well") &&
		r.word(i+1, "of") && r.word(i+2, "them", "those", "these", "em") && !r.is(i+3, kindNoun)
}

// gapBetween: "a 1/64 gap between two of them" counts no strips.
func (r *reader) gapBetween(i int) bool {
	if !r.word(i-1, "between") || !r.word(i+1, "of") {
		return false
	}
	from, _ := r.clause(i)
	_, whole := r.wholeAt(i)
	return whole && r.items[i].amount.bare() && r.within(from, i, kindNoun, "gap", "joint") >= 0
}

// thatIsnt: in "1 isn't ash, is it" the number is of a load, and a later message has no other
// for it.
func (r *reader) thatIsnt(i int) bool {
	if i > 0 {
		return false
	}
	_, whole := r.wholeAt(0)
	return whole && r.items[0].amount.bare() && r.items[0].amount.form == formInt && r.is(1, kindNot) && r.word(1, "isnt", "wasnt", "is not") && (r.is(2, kindWood) || r.is(2, kindGlue))
}

// partOfSheet: "a half sheet" is no thickness.
func (r *reader) partOfSheet(i int) bool {
	am := r.items[i].amount
	if !am.bare() || am.form != formWords || am.value == nil || am.value.Cmp(one) >= 0 || !r.is(i+1, kindNoun, "panel") || !r.word(i+1, "sheet", "sheets") {
		return false
	}
	return !r.is(r.next(i+1), kindAttr, "thick")
}

// someOfTheOnesThere keeps what is said of some of those counted before from being said of all:
// "two of the eight are only 55 wide", "one of them's a spare and gets one face".
func (r *reader) someOfTheOnesThere() {
	if !r.habit.Follows {
		return
	}
	for i := range r.items {
		n, whole := r.wholeAt(i)
		if !whole || n < 1 || !r.items[i].amount.bare() || !r.word(i+1, "of") {
			continue
		}
		at := r.thoseBehind(i + 2)
		if at < 0 {
			continue
		}
		_, to := r.clause(i)
		told := r.amountsIn(at, to) > 0
		for k := at; k < to; k++ {
			if r.items[k].amount != nil {
				r.items[k].amount.dead = true
			} else if r.is(k, kindFact, "faces=1", "faces=2") {
				r.items[k].meaning, told = meaning{}, true
			}
		}
		if told {
			for k := i; k < at; k++ {
				if r.items[k].amount != nil {
					r.items[k].amount.dead = true
				}
			}
		}
	}
}

// thoseBehind is the item behind "the eight are" or "them's" from item i on; -1 where none is.
func (r *reader) thoseBehind(i int) int {
	if r.word(i, "thems", "thatre", "theyre") {
		return i + 1
	}
	if !r.word(i, "the", "those", "these", "our", "my", "them", "em") {
		return -1
	}
	them := r.word(i, "them", "em")
	i++
	if n, whole := r.wholeAt(i); !them && whole && n > 1 && r.items[i].amount.bare() && !r.items[i].amount.plural {
		i++
		if r.is(i, kindNoun, "strip", "panel") {
			i++
		}
	} else if !them {
		return -1
	}
	if !r.word(i, "are", "is", "was", "were", "only", "came", "has", "have", "get", "gets", "measure", "measures") {
		return -1
	}
	return i + 1
}

// calledOff reads "two of those panels have been cancelled", by so many fewer.
func (r *reader) calledOff() {
	if r.amountsIn(0, len(r.items)) != 1 {
		return
	}
	for i := range r.items {
		n, ok := r.spokenOrWhole(i)
		if !ok || n < 1 || !r.items[i].amount.bare() || r.items[i].amount.plural {
			continue
		}
		k := i + 1
		for r.word(k, "of", "those", "these", "the", "them", "em", "our", "ones") {
			k++
		}
		field := unit.PanelCount
		if r.is(k, kindNoun, "panel", "strip") {
			field = countFields[r.items[k].id][0]
			k++
		}
		if k == i+1 || r.mentions(kindNot) {
			return
		}
		for r.word(k, "are", "is", "were", "was", "have", "has", "got", "been", "just", "now", "all") {
			k++
		}
		if !r.word(k, "cancelled", "canceled", "postponed", "scrubbed") && !(r.word(k, "called", "put") && r.word(k+1, "off")) {
			return
		}
		r.items[i].used, r.items[k].used = true, true
		r.phrase.Changes = append(r.phrase.Changes, Change{By: r.amendment(i), Less: true, Fields: []unit.Field{field}})
		return
	}
}

// rippedTo: "rip them down to 60s", "cut them down to 2s" tell a width.
func (r *reader) rippedTo(i int) bool {
	if !r.items[i].amount.plural || !r.word(i-1, "to", "down to", "into") || !small(r.size(i)) || r.has(unit.StripWidth) {
		return false
	}
	from, _ := r.clause(i)
	return r.opensWithin(from, i, "rip", "ripped", "ripping", "cut", "cutting", "saw", "sawn", "take", "bring")
}

// hourLost: the number of "we lost the first hour, so 9" is an hour of the day.
func (r *reader) hourLost(i int) bool {
	if !r.word(i-1, "so") {
		return false
	}
	n, whole := r.items[i].amount.whole()
	return whole && n <= 12 && r.items[i].amount.bare() && !r.laterStart(i) && r.isBreak(i+1) && r.opensWithin(0, i, "hour", "hours", "late", "oclock") && r.amountsIn(0, i) == 0
}

// killSums gives up the numbers of "whats 12 x 12", which asks for no pressing.
func (r *reader) killSums() {
	if len(r.items) < 3 || r.habit.Follows || !r.word(0, "whats", "what") {
		return
	}
	for i := range r.items {
		if it := r.items[i]; it.amount == nil && !r.word(i, "whats", "what", "is", "times", "plus", "x", "by") && it.brk == 0 || it.amount != nil && it.amount.unit != nil {
			return
		}
	}
	for i := range r.items {
		if am := r.items[i].amount; am != nil {
			am.dead = true
		}
	}
}

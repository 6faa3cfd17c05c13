package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// levelsUnread refuses a stack of one level where a word or a number that was not read may
// say that there are more: "3/4 sled with 1/2 strips, repeat x3", "three of these".
func (r *reader) levelsUnread() {
	if r.habit.Follows || !r.asksFor(Stack) {
		return
	}
	if r.layerLost() {
		return
	}
	one := r.oneLevel()
	from, to := r.stackSentence()
	for i := range r.items {
		stacked := r.stackedCount(i)
		if one && (r.timesOver(i) || (i >= from && i < to || r.ofThese(i)) && r.unreadCount(i)) || stacked && (one || r.panelsInOpening()) {
			r.refuseStack(i)
			return
		}
	}
}

// refuseStack gives up the stack that was read, for what item i may make of it.
func (r *reader) refuseStack(i int) {
	r.phrase.Facts = slices.DeleteFunc(r.phrase.Facts, func(f Fact) bool {
		if f.Field == unit.StackLayers {
			r.unuse(f.Text)
		}
		return f.Field == unit.StackLayers
	})
	r.refuse(unit.StackLayers, r.textOf(i, i), "")
}

// stackSentence are the items of the sentence in which the first layer stands.
func (r *reader) stackSentence() (from, to int) {
	for _, b := range r.bound {
		switch b.fact.Field {
		case unit.StackLayers, unit.SledThickness, unit.StripThickness, unit.PanelThickness:
			return r.sentence(b.from)
		}
	}
	return 0, 0
}

// oneLevel reports whether one sled, or none, is all that was read of a stack.
func (r *reader) oneLevel() bool {
	for _, b := range r.bound {
		layers, isStack := b.fact.Value.(unit.Layers)
		if !isStack {
			continue
		}
		fills := 0
		for _, l := range layers {
			if l.Part == "strips" {
				fills++
			}
		}
		return fills < 2
	}
	return r.has(unit.SledThickness) && (r.has(unit.StripThickness) || r.has(unit.PanelThickness))
}

// timesOver reports whether item i repeats what was told.
func (r *reader) timesOver(i int) bool {
	switch {
	case r.word(i, "twice", "thrice"):
		return !r.word(i-1, "measured", "checked", "it", "you", "asked", "told", "said") || r.word(i-1, "it") && r.word(i-2, "do", "run", "stack", "press")
	case r.word(i, "double", "triple"):
		return r.is(i+1, kindRole, "stackorder") || r.word(i+1, "up", "decker", "deck")
	case r.word(i, "doubled", "tripled", "doubling", "tripling"):
		return !r.is(i-1, kindNoun, "film")
	case r.word(i, "repeat", "repeated"):
		return i > 0 && !r.word(i-1, "please", "pls") && !r.word(i+1, "after", "for")
	}
	return r.word(i, "same") && r.word(i+1, "again") && !r.word(i+2, "tomorrow", "as") && !(r.word(i+2, "for") && r.word(i+3, "tomorrow", "me", "us", "next", "monday", "today"))
}

// ofThese: "three of these", "two sets", "times 3".
func (r *reader) ofThese(i int) bool {
	return r.items[i].amount != nil && (r.word(i+1, "of") && r.word(i+2, "these", "those", "them", "that", "em") || r.word(i+1, "of them", "sets", "lots", "times") || r.word(i-1, "times"))
}

// unreadCount reports whether item i is a small number that nothing was made of.
func (r *reader) unreadCount(i int) bool {
	am := r.items[i].amount
	if am == nil || r.items[i].used || am.dead && !r.ofThese(i) || !am.bare() || am.link != linkNone {
		return false
	}
	if r.is(i-1, kindNoun, "press", "frame", "bag") || r.is(i-1, kindRole, "job", "lot", "deadline", "start") || r.word(i-1, "by", "load", "no", "number") {
		return false // "on press 2", "by 5"
	}
	n, whole := am.whole()
	return whole && n > 1 && n <= 12 && n != r.layersOf(i+1)
}

// layersOf is how many layers of the part at item j were told: "two sleds, base 3/4, …,
// sled 3/4".
func (r *reader) layersOf(j int) int {
	n := 0
	for _, b := range r.bound {
		layers, _ := b.fact.Value.(unit.Layers)
		for _, l := range layers {
			if r.is(j, kindNoun, l.Part) {
				n++
			}
		}
	}
	return n
}

// stackedCount reports whether the number at item i counts what lies on each other: "2 of
// them stacked", "3 stacked", "4 high".
func (r *reader) stackedCount(i int) bool {
	n, whole := r.wholeAt(i)
	if !whole || n < 2 || n > 12 || !r.items[i].amount.bare() || r.items[i].amount.link != linkNone {
		return false
	}
	j := i + 1
	if r.word(j, "of") && r.word(j+1, "them", "these", "those", "em", "that") {
		j += 2
	}
	return (r.is(j, kindRole, "stackorder") || r.word(j, "piled")) && r.word(j, "stacked", "piled", "stacked up", "piled up") || j == i+1 && r.highAlone(j)
}

// killStacked leaves the number of "2 of them stacked" to levelsUnread: it counts levels.
func (r *reader) killStacked() {
	if r.habit.Follows || !r.says("of") || !r.mentions(kindNoun, "sled", "opening") {
		return
	}
	for i := range r.items {
		if r.word(i+1, "of") && r.stackedCount(i) {
			r.items[i].amount.dead = true
		}
	}
}

// highAlone: "panels 1/2 thick, 4 high, foam between" counts panels on each other; "frame
// 4x8, 3 high" does not.
func (r *reader) highAlone(j int) bool {
	if !r.word(j, "high") {
		return false
	}
	n, whole := r.wholeAt(j - 1)
	if !whole || n < 2 || n > 12 || !r.items[j-1].amount.bare() || !r.isBreak(j-2) || !r.isBreak(j+1) && !r.word(j+1, "with", "using") || j < 3 || !r.mentions(kindNoun, "mat", "sled", "caul") || !r.wordIn("between", "each", "stack", "stacked") {
		return false
	}
	for k := j - 3; k >= 0; k-- {
		if r.is(k, kindNoun) {
			return r.is(k, kindNoun, "panel", "strip", "sled", "mat", "face")
		}
	}
	return false
}

// panelsInOpening: panels may lie on each other in the press without a sled.
func (r *reader) panelsInOpening() bool {
	return r.has(unit.Opening) && (r.has(unit.StripThickness) || r.has(unit.PanelThickness))
}

// panelsDeep: "panels 3 deep" lie so many on each other, or are so wide.
func (r *reader) panelsDeep(i, j int) bool {
	if !r.word(j, "deep") {
		return false
	}
	n, whole := r.items[i].amount.whole()
	if !whole || n < 2 || n > 12 || !r.items[i].amount.bare() || !r.is(r.prev(i), kindNoun, "panel") || !isPlural(r.items[r.prev(i)].word) || !r.isBreak(j+1) {
		return false
	}
	r.items[i].amount.dead = true
	return true
}

// openingBefore: of "in a 4 1/4 opening if i've got a 3/4 sled then …" layers are told behind
// the opening at item i, which has its number before it.
func (r *reader) openingBefore(i, to int) bool {
	return r.is(i, kindNoun, "opening") && !r.ownsNumber(i) && r.within(i, to, kindNoun, "sled", "fence", "strip", "mat", "caul") >= 0
}

package grammar

import "presshand/engine/unit"

// levelsUnread refuses a stack of one level where a word or a number that was not read may
// say that there are more: "3/4 sled with 1/2 strips, repeat x3", "three of these".
func (r *reader) levelsUnread() {
	if r.habit.Follows || !r.asksFor(Stack) || !r.oneLevel() {
		return
	}
	for i := range r.items {
		if !r.timesOver(i) && !r.unreadCount(i) {
			continue
		}
		for _, b := range r.bound {
			if b.fact.Field == unit.StackLayers {
				r.unuse(b.fact.Text)
			}
		}
		r.drop(unit.StackLayers)
		r.refuse(unit.StackLayers, r.textOf(i, i), "")
		return
	}
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
	return r.word(i, "twice", "thrice", "repeat", "repeated") || r.word(i, "double", "triple") && r.is(i+1, kindRole, "stackorder") ||
		r.word(i, "same") && r.word(i+1, "again") || r.is(i, kindVerb, string(Copy)) && r.word(i, "repeat")
}

// unreadCount reports whether item i is a small number that nothing was made of.
func (r *reader) unreadCount(i int) bool {
	am := r.items[i].amount
	if am == nil || r.items[i].used || am.dead && !(r.word(i+1, "of") && r.word(i+2, "these", "those", "them", "that")) || !am.bare() || am.link != linkNone {
		return false
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

package grammar

// killAtATime gives up the number of "do them 2 at a time": so many go into a load, of
// which there is no field, and the count of them all is another.
func (r *reader) killAtATime() {
	if !r.says("load", "pressing", "batch", "time") {
		return
	}
	for i := range r.items {
		if r.toALoad(i) {
			r.items[i].amount.dead = true
			continue
		}
		if _, whole := r.wholeAt(i); !whole || !r.items[i].amount.bare() || r.items[i].amount.ordinal {
			continue
		}
		j := i + 1
		for r.is(j, kindNoun, "panel") || r.word(j, "of", "them", "those", "em") {
			j++
		}
		if !r.word(j, "at") || !r.word(j+1, "a", "one", "the", "each") || !r.word(j+2, "time") {
			continue
		}
		if !r.is(i+1, kindNoun) || r.otherPanels(i) {
			r.items[i].amount.dead = true
		}
	}
}

// toALoad: of "8 doors, one door a load" and "12 panels that go 3 to a load" the second
// number is what goes into a load.
func (r *reader) toALoad(i int) bool {
	if _, whole := r.wholeAt(i); !whole || !r.items[i].amount.bare() {
		return false
	}
	j := i + 1
	for r.is(j, kindNoun, "panel") || r.word(j, "to", "per") {
		j++
	}
	for r.word(j, "a", "each", "every", "the") {
		j++
	}
	return j > i+1 && r.word(j, "load", "pressing", "batch") && (r.otherPanels(i) || r.loadsCounted())
}

// loadsCounted: in "3 loads before 2, 2 panels a load" the loads are counted, and not all
// panels.
func (r *reader) loadsCounted() bool {
	for i := 1; i < len(r.items); i++ {
		if r.items[i].amount == nil && r.items[i].word == "loads" && r.items[i-1].amount != nil {
			return true
		}
	}
	return false
}

// otherPanels reports whether panels are counted elsewhere than at item i.
func (r *reader) otherPanels(i int) bool {
	for k := range r.items {
		if _, whole := r.wholeAt(k); whole && k != i && r.is(r.next(k), kindNoun, "panel") {
			return true
		}
	}
	return r.habit.Follows
}

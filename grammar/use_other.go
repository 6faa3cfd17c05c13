package grammar

import "presshand/engine/unit"

// partHeights are the fields of parts that one speaks of by their thickness alone.
var partHeights = map[string]unit.Field{"bar": unit.BarHeight, "mat": unit.MatThickness, "caul": unit.CaulThickness, "sled": unit.SledThickness}

// useOther: of "dont use the 1 in bar on the cherry, use the 1 1/2" and "not the 3/4 mat,
// the 1/2" the second is meant, and is of the same part.
func (r *reader) useOther() {
	if !r.means(kindNot) || !r.means(kindNoun, "bar", "mat", "caul", "sled") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindNot) {
			continue
		}
		j := r.past(i+1, "use", "using", "the", "that", "a", "our", "my")
		part := j + 1
		if !r.live(j) || !r.length(j) || !r.is(part, kindNoun, "bar", "mat", "caul", "sled") {
			continue
		}
		k := r.otherOf(part)
		if k < 0 {
			continue
		}
		r.items[j].amount.dead = true
		r.items[i].used, r.items[i].meaning, r.items[part].used = true, meaning{}, true
		r.bind(k, partHeights[r.items[part].id])
		return
	}
}

// otherOf finds the bare measure that takes the place of the one of the part at item part:
// ", use the 1 1/2", ", the 1/2"; -1 where there is none.
func (r *reader) otherOf(part int) int {
	_, to := r.clause(part)
	k := r.past(to+1, "but", "use", "take", "put", "in", "go", "with", "grab", "its", "the", "a", "our")
	if to >= len(r.items) || k == to+1 || !r.live(k) || !r.length(k) || r.timesAt(k+1) {
		return -1
	}
	if r.isBreak(r.past(k+1, "please")) || r.is(r.next(k), kindNoun, r.items[part].id) || r.word(k+1, "one", "instead") {
		return k
	}
	return -1
}

// past is the first item from i on that is none of the words.
func (r *reader) past(i int, ws ...string) int {
	for r.word(i, ws...) {
		i++
	}
	return i
}

// heldInstead: of "the boss swears by a 2 inch bar but all i found on the rack is 3/4" the number
// at item i is of the bar that is there.
func (r *reader) heldInstead(i int) bool {
	if !r.says("but") {
		return false
	}
	from, _ := r.clause(i)
	but := i - 1
	for ; but > from && !r.word(but, "but"); but-- {
		if r.items[but].amount != nil || r.is(but, kindNoun) {
			return false
		}
	}
	said := r.opensWithin(but, i, "all", "only", "just", "ours", "mine") && r.word(i-1, "is", "are", "have", "got", "found", "find", "was", "has")
	am := r.items[i].amount
	if !r.word(but, "but") || !said || !r.isBreak(i+1) || am.link != linkNone || !small(r.size(i)) || am.bare() && am.equals(one) {
		return false
	}
	if but == from {
		from, _ = r.clause(but - 1)
	}
	for k := but - 1; k > from; k-- {
		if r.items[k-1].amount == nil {
			continue
		}
		f := bareFields[r.items[k].id]
		return r.items[k-1].amount.hearsay && r.is(k, kindNoun, "bar", "mat", "caul", "sled") && r.amountsIn(from, but) == 1 && !r.has(f) && r.bind(i, f)
	}
	return false
}

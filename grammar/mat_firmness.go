package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// isMatFirmness reports whether the pressure at item i is a mat's, at so much squash.
func (r *reader) isMatFirmness(i int) bool {
	from, to := r.sentence(i)
	if r.within(from, to, kindNoun, "mat") < 0 {
		return false
	}
	v, _, ok := r.valueOf(r.items[i].amount, unit.MatFirm)
	for j := i + 1; j < to && j < i+7 && !r.isBreak(j); j++ {
		if am := r.items[j].amount; am != nil && am.is(unit.Proportion) && am.float() == 25 || r.is(j, kindRole, "firm at") {
			r.items[j].used = ok && impossible(unit.MatFirm, v) == ""
			return true
		}
	}
	return !r.is(r.prev(i), kindVacuum) && r.is(r.next(i), kindNoun, "mat")
}

// bindFirmness takes the per cent of the squash along: "6 psi at 25%".
func (r *reader) bindFirmness(i int) {
	r.bind(i, unit.MatFirm)
	f := r.justBound(i)
	if f == nil {
		return
	}
	for j := i + 1; j < len(r.items) && j < i+7; j++ {
		if am := r.items[j].amount; am != nil && am.is(unit.Proportion) && r.items[j].used {
			f.Text = r.textOf(i, j)
			return
		}
	}
}

// killSquashed marks the pressure that squashes a mat by so much: "the mat squashes from
// 1/4 to 3/16 at 10 psi" tells nothing of the vacuum, nor does "if the far joint only
// gets 12 psi".
func (r *reader) killSquashed() {
	for i := range r.items {
		if !r.live(i) || !r.items[i].amount.is(unit.Pressing) {
			continue
		}
		from, _ := r.clause(i)
		mat := r.within(from, i, kindNoun, "mat")
		squashed := mat >= 0 && r.opensWithin(mat, i, "squashes", "squishes", "crushes", "flattens", "squeezes")
		got := strings.HasSuffix(r.wordAt(i-3), "joint") && r.opens("if") >= 0 && r.word(i-1, "gets", "sees", "got", "has") && r.word(i-2, "only", "just")
		if squashed || got {
			r.items[i].amount.dead = true
		}
	}
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// isMatFirmness reports whether the pressure at item i is a mat's, at so much squash.
func (r *reader) isMatFirmness(i int) bool {
	if !r.means(kindNoun, "mat") {
		return false
	}
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
	if !r.means(kindNoun, "mat") && !r.says("if") {
		return
	}
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

// matFirmness reads how firm the mat at item i is: "a soft mat", "mat 3/8 firm", "the mat is a soft one".
func (r *reader) matFirmness(i int) {
	it := &r.items[i]
	if f := r.firmInBrackets(i); f != "" {
		r.sayOnce(i+2, unit.MatFirmness, f)
		return
	}
	for j := i - 1; j >= 0 && j >= i-3 && !r.isBreak(j); j-- {
		if f := firmness[r.items[j].word]; f != "" {
			r.items[j].used = true
			r.sayOnce(j, unit.MatFirmness, f)
			return
		}
	}
	for j := i + 1; j < len(r.items) && j <= i+2 && !r.isBreak(j) && !r.has(unit.MatFirmness); j++ {
		if f := firmness[r.items[j].word]; f != "" && (r.items[j-1].amount != nil || j == i+1 && r.isBreak(j+1)) {
			r.sayOnce(j, unit.MatFirmness, f) // "mat 3/8 firm"
		}
	}
	if strings.HasPrefix(it.word, "soft") {
		r.sayOnce(i, unit.MatFirmness, "soft")
	}
	_, to := r.sentence(i)
	for j := i + 1; j < to && j < i+6 && !r.has(unit.MatFirmness); j++ {
		if f := firmness[r.items[j].word]; f != "" && (r.aSuchOne(j) || r.isBreak(j-1) || r.items[j-1].brk == '(' || j == i+1 && r.shortened(i) || r.word(j-1, "and", "but") && r.items[j-2].amount != nil || r.word(j-1, "is", "its", "a", "the", "quite", "very", "pretty", "really", "rather")) {
			r.sayOnce(j, unit.MatFirmness, f)
			if r.free(j+1) && r.items[j+1].amount.form == formWords {
				r.items[j+1].used = true // "is a soft one"
			}
		}
	}
}

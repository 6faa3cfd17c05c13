package grammar

import "presshand/engine/unit"

// pressureMoves are words before a pressure by which the vacuum changes, and whether it
// gets less.
var pressureMoves = map[string]bool{
	"lost": true, "losing": true, "loses": true, "dropped": true, "drops": true, "dropping": true, "shed": true, "down": true, "off": true, "without": true,
	"gained": false, "gain": false, "gains": false, "up": false,
}

// mostMoved, in pascals: by more than ten inches of mercury no vacuum is changed; it is
// told anew.
const mostMoved = 34000

// pressureMove is the word at item j by which the pressure at item i changes the thread's:
// "lose 3 inches of vacuum", "we're down 2 inHg".
func (r *reader) pressureMove(i, j int) (less, ok bool) {
	am := r.items[i].amount
	if !am.is(unit.Pressing) || am.minus || am.unit.SI(am.float()) > mostMoved || r.mentions(kindNoun, "wedge", "joint") {
		return false, false
	}
	if less, ok = adders[r.items[j].word]; ok {
		return less, true
	}
	less, ok = pressureMoves[r.items[j].word]
	return less, ok
}

// someOfThem reads how many of the parts just counted are no more to be had, "2 of them
// are cracked", and leaves out what only some of them are: "2 of them are thinner".
func (r *reader) someOfThem() {
	if r.amountsIn(0, len(r.items)) != 1 {
		return
	}
	nouns := r.mentions(kindNoun)
	for i := range r.items {
		j := i + 1
		if r.word(j, "more") {
			j++
		}
		if n, ok := r.spokenOrWhole(i); !ok || n < 1 || !r.items[i].amount.bare() || !r.word(j, "of") || !r.word(j+1, "them", "em", "those", "these") {
			continue
		}
		switch {
		case nouns && r.crooked(j+1):
			r.items[i].amount.dead = true
		case nouns:
		case r.spoiled(i):
			r.items[i].used = true
			for k := j; k < len(r.items); k++ {
				if r.items[k].amount == nil && spoilt[r.items[k].word] {
					r.items[k].used = true
				}
			}
			r.phrase.Changes = append(r.phrase.Changes, Change{By: r.amendment(i), Less: true, Fields: []unit.Field{unit.StripCount, unit.PanelCount, unit.BarCount, unit.PressCount}})
		case r.word(j+2, "are", "is", "were", "was", "have", "has", "look", "looks", "feel", "came"):
			r.items[i].amount.dead = true
		}
		return
	}
}

// onlyThat: "double that", "half of it" behind which nothing else is said.
func (r *reader) onlyThat(i int) bool {
	j := i + 1
	if r.word(j, "of") {
		j++
	}
	return r.word(j, "that", "it") && !r.mentions(kindNoun) && r.next(j) < 0
}

// halfOfThat: "half of that?" is of what was told last.
func (r *reader) halfOfThat(i int) bool {
	if !r.habit.Follows || !r.onlyThat(i) || r.word(i-1, "in", "into") || r.amountsIn(0, len(r.items)) != 1 {
		return false
	}
	r.items[i].used = true
	r.phrase.Changes = append(r.phrase.Changes, Change{By: r.amendment(i), Times: true})
	return true
}

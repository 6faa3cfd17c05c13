package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// countAsked reads "how many panels" where no count is said: of strips and of
// days that count is what is asked.
func (r *reader) countAsked() {
	if r.has(unit.PanelCount) || !r.howManyPanels() {
		return
	}
	for i := range r.phrase.Asks {
		a := &r.phrase.Asks[i]
		if (a.About == Strips || a.About == Schedule) && a.Solve == "" && !slices.Contains(a.For, unit.PanelCount) {
			a.For = append(a.For, unit.PanelCount)
		}
	}
}

// howManyReach is how many items may stand between "how many" and what is
// counted: "how many 14 wide panels".
const howManyReach = 4

func (r *reader) howManyPanels() bool {
	for i := range r.items {
		if !r.word(i, "how many") && !(r.word(i, "how") && r.word(i+1, "many")) {
			continue
		}
		for j := i + 1; j < len(r.items) && j <= i+1+howManyReach && !r.isStop(j); j++ {
			if r.is(j, kindNoun, "panel") {
				return true
			}
		}
	}
	return false
}

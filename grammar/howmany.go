package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// countAsked reads "how many panels" where no count is said: of strips and of
// days that count is what is asked.
func (r *reader) countAsked() {
	if len(r.phrase.Asks) == 0 || !r.howManyPanels() || r.has(unit.PanelCount) {
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
	if !r.says("how many", "how") || !r.means(kindNoun, "panel") {
		return false
	}
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

// howManyByTime: "how many can we press by 4 starting at 7" asks how far a day goes.
func (r *reader) howManyByTime() bool {
	if !r.says("how many", "how") || r.has(unit.PanelCount) || !r.mentions(kindRole, "start", "deadline") && !r.spansHours() || r.mentions(kindNoun, "strip") && !r.howManyPanels() {
		return false
	}
	for i := range r.items {
		if !r.word(i, "how many") && !(r.word(i, "how") && r.word(i+1, "many")) {
			continue
		}
		k := i + 1
		for r.word(k, "many", "more", "of", "them", "these", "those", "the", "such") || r.is(k, kindNoun, "panel") || k < len(r.items) && r.items[k].amount != nil && (r.items[k].amount.link == linkTimes || k+1 < len(r.items) && r.items[k+1].amount != nil && r.items[k+1].amount.link == linkTimes) {
			k++ // "how many 24x36 panels"
		}
		able := r.word(k, "can", "could", "will", "would", "do", "should", "might")
		doer := r.word(k+1, "i", "we", "you", "they", "he", "she", "one", "the")
		if able && doer || r.is(k, kindAsk) && (strings.HasPrefix(r.items[k].word, "can i ") || strings.HasPrefix(r.items[k].word, "can we ")) || r.within(i, k, kindNoun, "panel") >= 0 && (r.is(k-1, kindNoun, "panel") || r.items[k-1].amount != nil) {
			return true
		}
	}
	return false
}

// spansHours: "from 7 to 3:30", "between 7 and 3:30".
func (r *reader) spansHours() bool {
	for i := 0; i+2 < len(r.items); i++ {
		if !r.word(i, "between", "from") || !r.hourOfDay(i+1) {
			continue
		}
		k := i + 2
		for r.word(k, "and", "to", "till", "til", "until", "am") || r.is(k, kindRole, "am") {
			k++
		}
		if k < len(r.items) && k > i+1 && r.hourOfDay(k) && (r.items[k].amount.form == formPair || r.items[i+1].amount.form == formPair || r.daySuffix(k) != "") {
			return true
		}
	}
	return false
}

// swellsLater: "bigger does it get when its humid" behind the "how much" at item i is of
// the wood, and of no bar.
func (r *reader) swellsLater(i int) bool {
	return r.word(i+1, "bigger", "larger", "smaller", "fatter", "broader", "tighter") && (r.mentions(kindAir, "rh", "service") || r.wordIn("damp", "wet", "dry", "moist", "muggy", "season", "seasons", "monsoon", "spring", "autumn", "fall", "july", "january")) &&
		!r.mentions(kindGlue) && !r.mentions(kindVacuum) && !r.pressureSaid() && !r.mentions(kindNoun, "bar", "pump", "wedge", "leak")
}

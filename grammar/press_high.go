package grammar

import "presshand/engine/unit"

// pressOf: "in the 6 in press", "what about the 5 in frame" tells the opening in a thread.
func (r *reader) pressOf(i int) bool {
	const lowest, highest = 0.035, 0.4
	if !r.habit.Follows || !r.is(i+1, kindNoun, "press", "frame") || !r.ends(i+2) && !r.word(i+2, "instead", "then", "now") || r.items[i].amount.link != linkNone || r.has(unit.Opening) {
		return false
	}
	if !r.word(i-1, "the", "our", "other", "my", "that", "a") || r.items[i].amount.bare() && !r.habit.Metric {
		return false // the press may be called so
	}
	k := i - 2
	for r.word(k, "the", "our", "my") {
		k--
	}
	said := r.word(k, "in", "into", "with", "for", "about", "what about", "how about", "use", "using", "and")
	return said && r.size(i) > lowest && r.size(i) < highest
}

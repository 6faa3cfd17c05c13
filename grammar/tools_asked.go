package grammar

import "strings"

// cutters are tools that a shop cuts and planes with, none of them a press's.
var cutters = wordSet(`blade blades saw sawblade bandsaw tablesaw tracksaw jigsaw router cutter cutterhead planer jointer thicknesser sander sandpaper chisel`)

// toolAsked: "best blade for cutting melamine", "what saw blade for plywood" ask for a tool, of
// whatever wood, where no number is told.
func (r *reader) toolAsked() bool {
	if r.amountsIn(0, len(r.items)) > 0 || r.mentions(kindVacuum) || r.mentions(kindNoun, "bar", "wedge", "pump", "press", "bag", "frame", "sled", "caul", "mat") {
		return false
	}
	for _, a := range r.phrase.Asks {
		if a.question {
			return false
		}
	}
	for i := range r.items {
		if !cutters[r.wordAt(i)] {
			continue
		}
		for k := i - 1; k >= i-4 && !r.isBreak(k) && !r.word(k, "i", "we", "you", "he", "she", "they"); k-- {
			if it := r.items[k]; it.amount == nil && (strings.HasPrefix(it.word, "what") || strings.HasPrefix(it.word, "which") || strings.HasPrefix(it.word, "best")) {
				return true
			}
		}
	}
	return false
}

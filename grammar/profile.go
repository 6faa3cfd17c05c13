package grammar

import "presshand/engine/unit"

// profileWords reads what only the defaults of a room are told with: that they
// are to be forgotten, and that the shop is at sea level.
func (r *reader) profileWords() {
	if !r.asksFor(Profile) {
		return
	}
	for i := range r.items {
		if r.items[i].word == "sea level" && r.amountsIn(0, len(r.items)) == 0 && r.opens("above", "below") < 0 && !r.asksSomething() {
			r.say(i, unit.Altitude, unit.Number(0))
		}
	}
	r.phrase.Reset = len(r.bound) == 0 && r.amountsIn(0, len(r.items)) == 0 && r.wordIn("setup", "settings", "defaults") && r.resets()
}

// resets reports whether a word of the message takes back all that was set.
func (r *reader) resets() bool {
	for i := range r.items {
		if r.word(i, "reset", "clear", "wipe", "forget", "delete", "erase", "remove", "drop", "scrap") {
			r.items[i].used = true
			return true
		}
	}
	return false
}

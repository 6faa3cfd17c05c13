package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// profileWords reads what only the defaults of a room are told with: that they
// are to be forgotten, and that the shop is at sea level.
func (r *reader) profileWords() {
	r.atSeaLevel()
	if !r.asksFor(Profile) {
		return
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

// alwaysOurs: "our bar is always 1 in tall", "we're always at 5280 ft" tell what
// holds until further notice.
func (r *reader) alwaysOurs() bool {
	if r.introduced() {
		return true
	}
	if !r.wordIn("always", "usually", "normally", "typically") {
		return false
	}
	if r.amountsIn(0, len(r.items)) > 3 {
		return false // a load, of which one part is as always
	}
	first := r.firstWord()
	ours := r.word(first, "we", "were", "weve", "our") || r.is(first, kindAir, "shop") && strings.HasPrefix(r.items[first].word, "our")
	for i := range r.items {
		if ours && r.word(i, "always") && i+1 < len(r.items) && r.items[i+1].amount != nil && !r.asksSomething() {
			return true // "we are at 5200 ft, always 10 minute press"
		}
		if !r.word(i, "always", "usually", "normally", "typically") && !strings.HasSuffix(r.items[i].word, " always") {
			continue
		}
		for j := i - 1; j >= 0 && j >= i-5 && !r.isBreak(j) && r.items[j].amount == nil; j-- {
			if r.word(j, "were", "weve") || r.word(j, "we") && r.word(j+1, "are", "sit", "run", "use", "live") || r.word(j, "our") && (r.is(j+1, kindNoun) || r.is(j+1, kindVacuum) || r.is(j+1, kindGlue) || r.is(j+1, kindAir, "shop")) {
				return true
			}
		}
	}
	return false
}

// introduced: "our shop: 420 m up, 1250 x 2500 frame" tells what there is.
func (r *reader) introduced() bool {
	if !r.says("our", "my") && !r.means(kindAir, "shop") {
		return false
	}
	i := r.firstWord()
	for r.word(i, "ok", "okay", "so", "hi", "hey", "here", "is", "heres") {
		i++
	}
	ours := r.is(i, kindAir, "shop") && strings.HasPrefix(r.items[i].word, "our")
	if r.word(i, "our", "my") && (r.is(i+1, kindAir, "shop") || r.is(i+1, kindNoun, "press", "frame", "bag") || r.word(i+1, "kit", "gear", "place", "rig", "equipment")) {
		ours, i = true, i+1
	}
	return ours && i+1 < len(r.items) && (r.items[i+1].brk == ':' || r.items[i+1].brk == '-') && !r.asksSomething() && r.amountsIn(0, len(r.items)) > 0
}

// shores are where the sea is: "and down at the beach?".
var shores = wordSet(`beach coast seaside seashore shore shoreline harbor harbour quay`)

// atSeaLevel: what a room says of itself, or a thread's "and down at sea level?".
func (r *reader) atSeaLevel() {
	told := r.asksFor(Profile) && r.amountsIn(0, len(r.items)) == 0 && !r.asksSomething()
	if !told && !r.habit.Follows {
		return
	}
	for i := range r.items {
		if r.items[i].word == "sea level" && r.opens("above", "below") < 0 && (told || r.habit.Follows && r.word(i-1, "at", "to")) && !r.has(unit.Altitude) {
			r.say(i, unit.Altitude, unit.Number(0))
		}
		shore, k := strings.TrimPrefix(r.items[i].word, "the "), i-1
		if r.word(k, "the") {
			k--
		}
		if r.habit.Follows && shores[shore] && r.items[i].amount == nil && r.word(k, "at", "on", "by", "near", "to") && r.amountsIn(0, len(r.items)) == 0 && r.isBreak(i+1) && !r.has(unit.Altitude) {
			r.say(i, unit.Altitude, unit.Number(0))
		}
	}
}

// habits are what one always does.
var habits = wordSet(`use run press have keep glue set work go put make pull get do take spread clamp stay live sit buy stock dry leave cut rip mill wear want need with at the a`)

// reminisces: "i remember 25 inHg was fine", "remember last time with 6 strips?", "we
// always mess up 1/4 strips" set nothing for the room.
func (r *reader) reminisces(i int) bool {
	switch r.items[i].word {
	case "remember":
		from, to := r.sentence(i)
		return r.word(i-1, "i", "we", "you", "he", "she", "they", "anyone", "anybody") || r.word(i+1, "last", "when", "how", "back", "those", "if") || r.word(i+2, "time", "day") ||
			r.asksSomething() || r.opensWithin(from, to, "was", "had", "did")
	case "we always":
		return r.unknown(i+1) && !habits[r.items[i+1].word]
	}
	return false
}

// partAlways passes over what stands between a part and its number in "the bar we always
// use is 1 1/4": a default of the room where no whole load is told.
func (r *reader) partAlways(i int) bool {
	if !r.is(i, kindAsk, "profile") || !r.is(i-1, kindNoun) || !r.word(i+1, "is", "was") || !in(r.items[i].word, "we always use", "we only ever use", "we only ever run", "we normally use", "we normally run") {
		return false
	}
	if r.amountsIn(0, len(r.items)) < 4 {
		r.phrase.Asks = append(r.phrase.Asks, r.askAt(i))
	}
	r.items[i].meaning = meaning{kind: kindFill}
	return true
}

// ourParts are the parts of a press that "our … is" tells of.
var ourParts = map[string]string{"our bag": "bag", "our frame": "frame", "my frame": "frame", "our press": "press", "my press": "press", "our pump": "pump", "our bed": "bed"}

// ourPart is the part of "our bag is 50 wide and our pump 3 cfm, how long to 24", where it is
// told for a question, and nothing is kept; else it is empty.
func (r *reader) ourPart(i int) string {
	name, told := strings.CutSuffix(r.items[i].word, " is")
	if !told {
		name, told = strings.CutSuffix(name, " has")
	}
	part := ourParts[name]
	if !told || part == "" {
		return ""
	}
	if part == "bag" && r.mentions(kindAsk, "stack") || r.pullAsked(i) {
		return part
	}
	return ""
}

// pullAsked: "how long to 24" behind item i asks for the time of the pump.
func (r *reader) pullAsked(i int) bool {
	for k := i + 1; k+1 < len(r.items); k++ {
		if r.is(k, kindAsk, "profile") && !strings.HasPrefix(r.items[k].word, "our ") {
			return false // "unless I say"
		}
		if r.items[k].kind == kindAsk && strings.HasPrefix(r.items[k].id, "pump") && strings.HasPrefix(r.items[k].word, "how long") {
			return true
		}
		if r.word(k, "how") && r.is(k+1, kindAttr, "long") {
			return r.word(k+2, "to", "till", "til", "until") || r.is(k+2, kindVacuum, "pull") || k+2 < len(r.items) && r.items[k+2].amount != nil
		}
	}
	return false
}

// settlesPump: "what's it settle at" of a press that leaks asks for its best vacuum.
func (r *reader) settlesPump(i int) bool {
	if !r.is(i, kindAsk, "move:emc_pct") || !r.word(i, "it settle at", "settle at what", "settle at") {
		return false
	}
	return (r.saidFlow() || r.mentions(kindNoun, "leak", "pump")) && !r.mentions(kindWood) && !r.mentions(kindAir, "rh", "mc", "service") && !r.percentSaid() && !r.wordIn("wood", "house")
}

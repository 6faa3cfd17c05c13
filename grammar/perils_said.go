package grammar

import "strings"

// Dangers that are told in a sentence, and not by a word of their own.

// bodyParts are what gets under a film.
var bodyParts = wordSet(`finger fingers fingertip fingertips hand hands palm palms thumb thumbs arm arms knuckles`)

// handsWhile: "shove a strip straight with my fingers while the bag's pulling down", "run
// my finger along the seal with the pump on".
func (r *reader) handsWhile() bool {
	if !r.says("while", "as", "when", "with", "whilst", "under vacuum") {
		return false
	}
	hand := false
	for i := range r.items {
		hand = hand || r.items[i].amount == nil && bodyParts[r.items[i].word] && !r.word(i-1, "other", "by", "on") && !(r.word(i, "hand") && (r.word(i-1, "a") || r.is(i+1, kindVacuum) || r.is(i+1, kindNoun) || r.word(i+1, "tight")))
		if !hand || !r.word(i, "while", "as", "when", "with", "whilst") && !r.word(i, "under vacuum") {
			continue
		}
		_, to := r.clause(i)
		if r.word(i, "with") {
			to = min(to, i+5)
		} else if r.within(i, to, kindVacuum, "pull") >= 0 || r.opensWithin(i, to, "closes", "closing", "pumps", "pumping", "evacuates", "evacuating", "sucks", "sucking", "under vacuum", "pulling") {
			return true
		}
		if pump := r.within(i, to, kindNoun, "pump"); pump >= 0 && r.opensWithin(pump, to, "on", "running", "runs", "going", "working", "still") {
			return true
		}
		if r.word(i, "while", "when", "with", "whilst") && r.within(i, to, kindVacuum, "vacuum") >= 0 && r.opensWithin(i, to, "under", "on") {
			return true
		}
	}
	return false
}

// hotGlue are words of a pot that runs away, pots what it is mixed in.
var (
	hotGlue = wordSet(`hot smoking smokes smoke steaming steams bubbling boiling boils melting melts foaming`)
	pots    = wordSet(`pot pots cup cups tub container bowl mug bucket pail yogurt`)
)

// potHeats: "the epoxy is getting hot in the cup".
func (r *reader) potHeats() bool {
	if !r.mentions(kindGlue, "epoxy", "urea-formaldehyde", "resorcinol") && !r.wordIn("hardener", "resin") {
		return false
	}
	pot, hot := false, false
	for i := range r.items {
		if r.items[i].amount != nil {
			continue
		}
		hot = hot || strings.HasSuffix(r.items[i].word, " hot")
		pot = pot || pots[r.items[i].word] && !(i > 0 && r.items[i-1].amount != nil) && !(r.word(i+1, "of") && (i+2 < len(r.items) && r.items[i+2].amount != nil || r.word(i+2, "coffee", "tea", "joe", "water", "soup"))) && !(r.is(i, kindNoun, "cup") && r.word(i-1, "a")) && ((r.word(i-1, "the", "a", "my", "in", "mixing", "that", "his", "whole", "mixed", "epoxy", "resin") || r.word(i+1, "of")) || r.is(i-1, kindGlue))
		here := r.word(i+1, "in here", "out", "glue", "today", "hide", "melt") || r.word(i+1, "in") && r.word(i+2, "here")
		hot = hot || hotGlue[r.items[i].word] && !here && r.word(i-1, "getting", "gets", "got", "is", "its", "too", "really", "very", "going", "went", "so", "started", "starts", "warm", "starting", "feels", "just")
	}
	return pot && hot
}

// sandsSafely: "is resorcinol safe to sand once it's hard", "is epoxy dust bad for you"; not
// "when is it safe to sand".
func (r *reader) sandsSafely() bool {
	if !r.mentions(kindGlue) || r.mentions(kindPeril) || !r.wordIn("sand", "sanding", "sanded", "safe to sand", "dust") || r.wordIn("when", "soon", "long", "time", "hours", "after") {
		return false
	}
	return r.wordIn("sand", "sanding", "sanded", "safe to sand") && r.wordIn("safe", "unsafe", "harmful", "dangerous", "bad", "toxic") || r.wordIn("dust") && r.wordIn("safe", "bad", "harmful", "dangerous", "toxic", "nasty", "hurt")
}

// glovesAside: "he's at 26 before he's got his gloves off" and "put my gloves on, then"
// ask for no protection.
func (r *reader) glovesAside(i int) bool {
	if !r.word(i, "gloves") {
		return false
	}
	return r.word(i+1, "off") && r.opensWithin(max(i-6, 0), i, "before") || r.word(i+1, "on") && r.opensWithin(max(i-4, 0), i, "put", "got", "puts")
}

// kidElsewhere: a kid who is picked up is not alone with a press, nor is one who wants to
// know: "my kid asked", "my son bets me".
func (r *reader) kidElsewhere(i int) bool {
	if !r.word(i, "my kid", "my son", "my daughter", "child", "children", "toddler") {
		return false
	}
	return r.word(i-1, "up", "off", "fetch", "collect") && !r.mentions(kindVacuum) || r.wondering(i+1) && !r.wordIn(nearby...) || r.busyElsewhere(i+1) && !r.opensWithin(i, len(r.items), nearby...)
}

// busyElsewhere reports whether what stands at item i is that a kid has something of its own
// or is away: "my kid has a match at 4", "my son is at school"; not "has a hand in the bag".
func (r *reader) busyElsewhere(i int) bool {
	_, to := r.clause(i)
	if r.within(i, to, kindNoun, "press", "bag", "frame", "film", "pump") >= 0 {
		return false
	}
	for r.word(i, "also", "just", "still", "only") {
		i++
	}
	if r.word(i, "has", "had", "got", "needs", "wants", "gets") {
		return r.word(i+1, "a", "an", "the", "his", "her", "another", "no")
	}
	return r.word(i, "is", "was") && (r.word(i+1, "sick", "ill", "home", "away", "asleep", "married", "graduating") || r.word(i+1, "at", "in") && r.word(i+2, "school", "college", "home", "practice", "hospital", "bed"))
}

// nearby are words of somebody who comes to the press.
var nearby = []string{"stay", "stays", "stay in", "stays in", "help", "helps", "helping", "touch", "touches", "play", "plays", "playing", "near", "around", "come", "comes", "watch", "watches", "alone", "safe", "sit", "stand", "climb", "lean", "overnight", "run", "running", "inside"}

// wondering reports whether what stands at item i is that somebody asks or thinks something.
func (r *reader) wondering(i int) bool {
	for r.word(i, "just", "keeps", "also", "is", "was", "here", "kept") {
		i++
	}
	return r.word(i, "asked", "asks", "asking", "wonders", "wondered", "wondering", "curious", "thinks", "reckons", "says", "said", "told", "bets", "bet", "guessed", "guesses", "believes", "swears") ||
		r.word(i, "wants", "wanted", "has", "needs") && r.word(i+1, "to") && r.word(i+2, "know")
}

// pumpHot: "pump motor's too hot to touch", "the pump is smoking".
func (r *reader) pumpHot() bool {
	if !r.means(kindNoun, "pump") {
		return false
	}
	for i := range r.items {
		if !r.is(i, kindNoun, "pump") || r.word(i+1, "room", "shed", "heater", "house", "corner", "closet") {
			continue
		}
		_, to := r.clause(i)
		for k := i + 1; k < to && k <= i+6; k++ {
			if r.items[k].amount == nil && strings.HasSuffix(r.items[k].word, " hot") || hotGlue[r.items[k].word] && r.items[k].amount == nil && (r.word(k-1, "too", "very", "really", "getting", "so", "gets", "running", "red", "is", "its", "burning", "awful", "s", "started", "was", "pump", "motor", "motors") || r.is(k-1, kindNoun, "pump")) && !r.word(k+1, "glue", "enough", "shop", "day") || r.word(k, "burnt", "sparks", "sparking") || r.word(k, "smells") && r.opensWithin(k+1, min(k+4, len(r.items)), "burnt", "burning", "hot") {
				return true
			}
		}
	}
	return false
}

// bearing is what somebody does who puts weight on a thing, weighing the parts that he does it
// with, which alone say nothing of where he is.
var (
	bearing  = wordSet(`lean leans leaning leant sit sits sitting sat stand stands standing kneel kneels kneeling climb climbs climbing hop hops hopping jump jumps jumping lie lies lying perch perches perching step steps stepping walk walks walking crawl crawls crawling`)
	weighing = wordSet(`weight knee knees elbow elbows foot feet push pushing get getting`)
)

// bearsDown: "can i lean on the lid while it pulls down", "hop up on the press to get the last
// of the cup out while it's pulling"; not "can i hop on the press tomorrow".
func (r *reader) bearsDown() bool {
	if !r.says("on", "onto", "against", "atop") {
		return false
	}
	for i := 1; i+2 < len(r.items); i++ {
		k := i + 1
		for r.word(k, "up", "down", "right", "straight") {
			k++
		}
		if !r.word(k, "on", "onto", "against", "atop") || r.items[i].amount != nil || !bearing[r.items[i].word] && !weighing[r.items[i].word] {
			continue
		}
		for k++; r.word(k, "top", "of", "the", "a", "my", "our", "that", "vacuum"); k++ {
		}
		lid := r.word(k, "lid", "membrane") || r.is(k, kindNoun, "film")
		if !lid && !r.is(k, kindNoun, "press", "frame", "bag", "panel", "caul") {
			continue
		}
		from, _ := r.clause(i)
		if (bearing[r.items[i].word] && lid || r.whilePulled(k+1)) && r.somebodyWithin(from, i) {
			return true
		}
	}
	return false
}

// somebodyWithin: "i", "the kid", "ok to".
func (r *reader) somebodyWithin(from, to int) bool {
	for k := from; k < to; k++ {
		if r.items[k].amount == nil && somebody[r.items[k].word] || r.is(k, kindPerson) || r.word(k, "ok to") || r.word(k, "ok", "okay", "safe", "fine", "alright") && r.word(k+1, "to") {
			return true
		}
	}
	return false
}

// whilePulled: "while it pulls down", "when the pump runs", "with the pump still on", from
// item k on.
func (r *reader) whilePulled(k int) bool {
	for ; k < len(r.items); k++ {
		if r.word(k, "under vacuum") {
			return true
		}
		if !r.word(k, "while", "as", "when", "with", "whilst", "once") {
			continue
		}
		_, to := r.clause(k)
		pump := r.within(k, to, kindNoun, "pump")
		if r.within(k, to, kindVacuum, "pull", "vacuum") >= 0 || r.opensWithin(k, to, "closes", "closing", "pumps", "pumping", "evacuates", "sucks", "sucking", "pulling") || pump >= 0 && r.opensWithin(pump, to, "on", "running", "runs", "going", "working") {
			return true
		}
	}
	return false
}

// ventsFirst: "do I need to stop the pump before i lift a corner of the bag" asks about what
// the pries at item at do to a press that is pulled down.
func (r *reader) ventsFirst(at int) bool {
	if !r.wordIn("need", "should", "must", "have", "necessary", "ok", "okay") || r.mentions(kindGlue) {
		return false
	}
	before := r.opensWithin(max(at-4, 0), at, "before")
	return before && (r.opensWithin(0, at, "stop", "vent", "bleed", "release", "kill", "shut", "switch", "turn") || r.within(0, at, kindVerb, string(Hold)) >= 0) && (r.within(0, at, kindNoun, "pump") >= 0 || r.opensWithin(0, at, "vent", "bleed", "release", "vacuum", "air"))
}

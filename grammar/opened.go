package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// These take a press apart, with what they take hold of behind them.
var (
	prying = []string{"open", "crack", "pop", "pry", "prise", "prize", "lift", "lever", "peel", "rip", "tear", "yank", "jerk", "force", "jimmy", "pull", "take", "get", "slide", "unclamp", "unlatch", "undo", "opening", "cracking", "popping", "prying", "prising", "lifting", "peeling", "pulling"}
	lids   = []string{"lid", "top", "latch", "latches", "seal", "gasket", "clips", "catches", "hatch"}
	allows = []string{"can", "could", "may", "ok", "okay", "alright", "safe", "fine", "possible", "dangerous", "bad", "happens"}
)

// opensUnderVacuum reports whether a press is to be opened while air still holds
// it shut: "ok to crack the frame open with still 10 on the gauge?"
func (r *reader) opensUnderVacuum() bool {
	if r.mentions(kindGlue) || r.said(unit.Lasting) || !r.asksSomething() && !r.mentions(kindRole, "mintemp") && !r.wordIn(allows...) && !r.wordIn("need", "have", "should", "must") {
		return false
	}
	at := r.priesAt()
	if at < 0 {
		return false
	}
	if r.ventsFirst(at) || r.whilePulled(at+1) {
		return true
	}
	for j := at + 1; j < len(r.items); j++ {
		if r.word(j, "before") && r.held(j+1) || strings.HasPrefix(r.items[j].word, "before the vacuum") || r.word(j, "without") && r.wordIn("venting", "bleeding", "releasing", "letting") {
			return true
		}
	}
	if !r.mentions(kindVacuum) && !r.pressureSaid() && !r.wordIn("vacuum", "vac") {
		return false
	}
	if r.wordIn("still", "while", "whilst", "left") {
		return true
	}
	for i := at + 1; i < len(r.items); i++ {
		if am := r.items[i].amount; am != nil && am.form != formPair && (r.word(i-1, "at", "under", "with") || am.link == linkAt) {
			return true // "pop the bag open at 15 inHg"
		}
	}
	return (r.within(at, len(r.items), kindVacuum, "vacuum") > 0 || r.wordIn("full vacuum")) && r.wordIn("under", "with")
}

// held: of "before the vacuum is gone" what is behind the word says that air is
// still to come in.
func (r *reader) held(from int) bool {
	for j := from; j < len(r.items) && j <= from+5; j++ {
		if r.is(j, kindVacuum) || r.word(j, "vent", "vented", "venting", "bled", "bleeding", "zero", "released", "vents") {
			return true
		}
	}
	return false
}

// priesAt is the item that takes a press apart; -1 where none does.
func (r *reader) priesAt() int {
	for i := range r.items {
		if (!r.word(i, prying...) || r.is(i, kindNoun)) && !(r.is(i, kindRole, "open") && r.items[i].word == "open") {
			continue
		}
		plain := r.word(i, "pull", "take", "get", "slide", "force", "pulling")
		for j := i + 1; j < len(r.items) && j <= i+5 && !r.isBreak(j); j++ {
			if r.word(j, "the", "my", "our", "a", "this", "that", "off", "up", "open", "corner", "edge", "of", "back") {
				continue
			}
			it := r.word(j, "it") && !r.wordIn("valve", "vent", "tap", "cock")
			if !it && !r.word(j, lids...) && !r.is(j, kindNoun, "frame", "press", "bag", "film") {
				break
			}
			if !plain || r.word(j+1, "off", "open", "apart") || r.word(j+1, "up") && !r.word(j+2, "to") || r.is(j+1, kindRole, "open") {
				return i
			}
			break
		}
	}
	return -1
}

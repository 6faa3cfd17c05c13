package grammar

import (
	"strings"
	"unicode"
)

// praise are words in a check that speak for the load or say nothing of it: how good it is,
// who measured and how, thanks. Any other that is not understood speaks against the check.
var praise = wordSet(`tight steady clean nice nicely sound snug perfect perfectly lovely happy bang spot square straight neat neatly
	great excellent super beautiful brilliant correct correctly agreed agree agrees match matches matching matched accurate exactly exact precisely confirmed confirm confirms confirming
	solid firm firmly true plumb level even flush parallel tidy dandy alright acceptable tolerance within grand
	done complete completed completely everything anything nothing seems appears looking looked seen saw
	thanks thank thx cheers ta please pls plz mate guys boss folks sir team yep yes yeah yup aye ok okay roger copy lol cool
	tape ruler rule caliper calipers calliper callipers gage micrometer myself twice thrice personally hand checker second person eyes
	counted count read reads reading readings shows showing shown showed came come comes measured measuring measurement measurements got get gets find found taken took
	by me i we you here there today now just again also too still both all each every every one ones throughout along everywhere
	morning afternoon evening quickly quick carefully properly double triple verified independently against card plan ticket drawing sheet spec
	per page load loads job work lunch tea coffee home everyone everybody all crew lads lass gang well team then go ready good fine well better best nose dot money everythings according drawn planned posted place removed wiped proceed earlier before after coffee this with dinner breakfast button dry fit fits fitted run clamped`)

// deadOn are words that "dead" makes stronger.
var deadOn = []string{"on", "right", "flat", "square", "straight", "level", "even", "nuts", "centre", "center", "plumb", "true", "spot", "good", "fine", "accurate", "perfect", "tight", "parallel", "exact"}

// harmless reports whether item i, a word of a check that is not read for anything, does
// not speak against it.
func (r *reader) harmless(i, to int) bool {
	if r.word(i, "dead") {
		return i+1 < to && (r.word(i+1, deadOn...) || r.items[i+1].amount != nil)
	}
	return praise[r.items[i].word] || len(r.items[i].word) < 3 && r.items[i].kind == kindNone
}

// unreadIn reports whether a clause of a check has a word that was not understood.
func (r *reader) unreadIn(from, to int) bool {
	for i := from; i < to; i++ {
		if r.unknown(i) && !r.harmless(i, to) && !r.signs(i) && !r.partFine(i, from, to) && !r.faultDenied(i) && !r.word(i, faultWords...) {
			return true
		}
	}
	return false
}

// signs reports whether item i is the name of who measured: "checked by mike: bar 1", "…
// checked, Pete".
func (r *reader) signs(i int) bool {
	if r.word(i-1, "by") && r.is(i-2, kindVerb, string(Check)) {
		return true
	}
	if r.word(i-1, "with") && r.isBreak(i+1) && r.is(i-2, kindVerb, string(Check)) {
		return true // "1 checked with Pete, bar 1"
	}
	if r.isBreak(i+1) && r.nothingAfter(i) && r.thanked(i-1) {
		return true
	}
	return i > 1 && r.isBreak(i-1) && i+1 >= len(r.items) && unicode.IsUpper([]rune(r.text[r.items[i].start:])[0])
}

// thanked reports whether whom is thanked or told may stand behind item i: "thanks ana",
// "nice work ana", "good to go ana".
func (r *reader) thanked(i int) bool {
	last := strings.ToLower(r.text[r.items[i+1].start:r.items[i+1].end])
	switch {
	case strings.HasSuffix(last, "ly"), strings.HasSuffix(last, "ish"), in(last, "almost", "otherwise", "though", "pending", "apart", "barring", "anyway", "once", "after", "nothing", "none"):
		return false
	case r.word(i, "thanks", "thank you", "thx", "cheers", "ta"), r.word(i, "you") && r.word(i-1, "thank"), r.word(i, "done") && r.word(i-1, "well"), r.word(i, "well done"):
		return true
	case r.word(i, "work", "job"):
		return r.word(i-1, praising...)
	}
	return r.word(i, "go") && r.word(i-1, "good to", "ready to", "ok to", "fine to") || r.word(i, "go") && r.word(i-1, "to") && r.word(i-2, "good", "ready", "fine", "ok")
}

// partFine reports whether item i is a part of the press that is no figure's, and its
// clause says that it is well: "seal good".
func (r *reader) partFine(i, from, to int) bool {
	if !r.word(i, "breather", "seal", "seals", "valve", "hose", "gasket", "tape", "ports", "port", "connector", "netting", "tacky tape", "zip", "zipper", "flange", "fittings") || r.within(from, to, kindNot) >= 0 {
		return false
	}
	return r.opensWithin(from, to, "good", "fine", "ok", "okay", "tight", "on", "sound", "perfect", "great", "clean", "solid", "seated", "closed", "place", "there")
}

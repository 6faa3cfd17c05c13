package grammar

import (
	"presshand/engine/unit"
)

// firstNames are of people whose word is no measure.
var firstNames = wordSet(`dave david mike michael jim jimmy bob bobby steve john johnny tom tommy bill billy joe joey sam ben dan danny nick paul pete peter gary larry harry rick ricky ron terry tony jeff greg kevin kyle luke matt max mark martin neil phil ray rob robbie ross scott sean simon stan stu ted tim todd vic walt wayne will zack anna amy beth carol cathy chris dana debbie ellen emma gina jane jen jenny jess jill julie karen kate kelly kim laura linda lisa lucy maria mary meg nancy pam pat rachel rosa ruth sally sara sarah sue susan tina wendy jan piet kees henk joost sjaak bruce shane davo gazza macca`)

// plates promise a vacuum that nobody measured: "the tag on the pump says 26 inHg".
var plates = wordSet(`tag nameplate plate brochure catalog catalogue sticker advert listing ad website`)

// killHearsay marks what another person is said to think: "my buddy says 2
// inches is plenty".
func (r *reader) killHearsay() {
	if r.amountsIn(0, len(r.items)) < 2 {
		return
	}
	if r.means(kindSay) {
		r.killOpinions()
	}
	r.loadTold()
	if r.said(unit.Pumping) {
		r.plateFlow()
		r.pumpSwapped()
	}
}

// killOpinions marks what stands behind a person or a plate that says it.
func (r *reader) killOpinions() {
	for i := range r.items {
		if k := i + 2; r.word(i, "you") && r.is(i+1, kindSay) && r.word(i+1, "said", "told") && k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.is(unit.Pressing) && r.opensWithin(max(i-5, 0), i, "time", "asked", "yesterday", "earlier", "before") {
			r.items[k].amount.dead = true // "last time i asked you said 12 psi"
		}
		plate := plates[r.items[i].word]
		if !r.is(i, kindPerson) && !plate && !(firstNames[r.items[i].word] && r.items[i].kind == kindNone) {
			continue
		}
		said := -1
		reach := i + 4
		if r.word(i+1, "who", "whos", "that") {
			reach = i + 9 // "the guy who sold me the pump swore"
		}
		for j := i + 1; j < len(r.items) && j <= reach; j++ {
			if r.isStop(j) {
				break
			}
			if r.is(j, kindSay) && in(r.items[j].word, "says", "saying", "keeps saying", "say", "said", "reckons", "reckon", "thinks", "told", "tells", "swears", "claims", "claimed", "recommend", "suggest", "recommends", "recommended", "suggests", "suggested", "insists", "insisted", "guessed", "guesses", "bets", "swore", "always uses", "uses", "used", "runs", "ran", "did", "does") {
				said = j
				break
			}
		}
		if said < 0 || r.told(said) || r.word(i-1, "which", "those") && r.word(i-2, "of") || r.opensWithin(i+1, said, "sheet", "label", "chart", "card", "leaflet", "spec") {
			continue
		}
		first := -1
		for j := said + 1; j < len(r.items) && !r.isStop(j); j++ {
			if r.items[j].amount != nil && first < 0 {
				first = j
			}
			if r.items[j].brk == ':' || r.word(j, "ask") {
				for k := said + 1; k < j; k++ {
					if r.items[k].amount != nil {
						r.items[k].amount.hearsay = false
					}
				}
				break
			}
			if r.items[j].brk == ',' || r.items[j].brk == '-' || r.word(j, "but", "so") || r.word(j, "and") && r.word(j+1, "my", "our") {
				break
			}
			if am := r.items[j].amount; am != nil && !r.readOff(said, j) && !r.claimsOutcome(first, j) && !r.measuredOf(j) && !r.sawGauge(said, j) && r.within(said, j, kindRole, "vary") < 0 && !r.claimAsked(j) && !(am.is(unit.Warmth) && r.is(r.next(j), kindAir, "shop")) && (!plate || am.is(unit.Pressing) && r.within(said, j, kindRole, "limit") < 0) {
				r.items[j].amount.hearsay = true
			}
		}
	}
}

// pumpSwapped: of "swapped the 60 l/min for a 140" the second is there now.
func (r *reader) pumpSwapped() {
	for i := 2; i < len(r.items); i++ {
		j := i + 1
		if !r.live(i) || !r.items[i].amount.is(unit.Pumping) || !r.word(i-2, "swapped", "changed", "traded", "replaced", "exchanged") {
			continue
		}
		if r.is(j, kindNoun, "pump") || r.word(j, "one") {
			j++
		}
		if !r.word(j, "for", "with", "by") {
			continue
		}
		for j++; r.word(j, "a", "an", "the", "new", "bigger"); j++ {
		}
		if !r.live(j) || !r.items[j].amount.bare() && !r.items[j].amount.is(unit.Pumping) || r.timesAt(j+1) {
			continue
		}
		if r.items[j].amount.bare() {
			r.items[j].amount.unit, r.items[j].amount.unitRaw = r.items[i].amount.unit, r.items[i].amount.unitRaw
		}
		r.items[i].amount.dead = true
	}
}

// plateFlow: of "the seller swore 7 cfm, nameplate says 4.5" the pump's own plate holds,
// in the unit of the hearsay.
func (r *reader) plateFlow() {
	for i := range r.items {
		j := i + 2
		if !r.live(j) || !r.items[j].amount.bare() || r.timesAt(j+1) || !r.is(i+1, kindSay) && !r.word(i+1, "is", "reads", "shows") && !r.is(i+1, kindVacuum, "pull") || !plates[r.items[i].word] {
			continue
		}
		for k := range i {
			if am := r.items[k].amount; am != nil && am.hearsay && am.is(unit.Pumping) {
				r.items[j].amount.unit, r.items[j].amount.unitRaw, r.items[j].amount.hearsay = am.unit, am.unitRaw, false
				return
			}
		}
	}
}

// claimsOutcome: "swears there's 100 tons on a 4x8 at 25 inHg" claims the tons; the rest is
// what they are claimed of. The amount is at item i, what was claimed first at item first.
func (r *reader) claimsOutcome(first, i int) bool {
	if first < 0 || first == i {
		return false
	}
	am := r.items[first].amount
	return (am.is(unit.Pushing) || am.is(unit.Weight) && am.unit != nil) && (r.items[i].amount.link != linkNone || r.word(i-1, "on", "at", "with", "a", "full", "whole", "under", "from"))
}

// measuredOf: "says the wood is at 7%" tells of a meter, and is nothing to have an opinion on.
func (r *reader) measuredOf(i int) bool {
	from, _ := r.clause(i)
	return r.items[i].amount.is(unit.Proportion) && r.items[i].amount.float() < 30 && (r.within(from, i, kindWood) >= 0 || r.within(from, i, kindAir, "mc") >= 0 || r.opensWithin(from, i, "wood", "timber", "lumber", "boards", "stock"))
}

// readOff: "says the barometer is 29.4" tells what stands on an instrument that is no one's.
func (r *reader) readOff(said, i int) bool {
	return r.within(said, min(said+4, i), kindAir, "barometer") >= 0 || r.opensWithin(said, min(said+4, i), "thermometer")
}

// told: "the boss says to set it to 25", "says its really 22 at the bag" are what
// will be done and what is, not an opinion.
func (r *reader) told(said int) bool {
	if r.word(said+1, "to") && !r.is(said+2, kindNot) || r.word(said+1, "leave", "allow") || r.opensWithin(said+1, min(said+5, len(r.items)), "really", "set", "now", "instead") {
		return true
	}
	if r.habit.Follows && (recounters[r.items[said-1].word] || masters[r.items[said-1].word]) && r.amountsIn(said, len(r.items)) == 2 && r.deniesNumber(said) {
		return true // "he says 5 panels not 3" passes on what is
	}
	if !masters[r.items[said-1].word] {
		return false
	}
	order := r.is(said+1, kindVacuum, "pull") || r.word(said+1, "use", "put", "run", "go", "set", "fit", "keep", "pull", "press", "take", "bring") // "teacher said use a 1x2"
	ours := r.word(said+1, "were") || r.word(said+1, "we") && r.word(said+2, "are", "have", "got", "run", "pull")
	work := r.dayPlan() && r.within(said, min(said+5, len(r.items)), kindNoun, "panel") >= 0 // "boss says a dozen panels today"
	return order || ours || work
}

// deniesNumber: "… not 3" behind item i.
func (r *reader) deniesNumber(i int) bool {
	for ; i+1 < len(r.items); i++ {
		if r.is(i, kindNot) && r.items[i+1].amount != nil {
			return true
		}
	}
	return false
}

// masters say what is to be done, where others only have an opinion.
var masters = wordSet(`teacher instructor boss foreman supervisor manager gaffer professor prof tutor lead`)

// sawGauge: "swears he saw 25 inHg on the gauge" is a reading, not an opinion.
func (r *reader) sawGauge(said, i int) bool {
	from, to := r.clause(i)
	return r.opensWithin(max(said, from), i, "saw", "seen", "read") && r.within(i, to, kindVacuum, "gauge") >= 0
}

// claimAsked: "he reckons 27 inHg will do, is that true" and "swears we'll get 27 on
// the dial. possible?" ask whether what somebody claims can be.
func (r *reader) claimAsked(j int) bool {
	am := r.items[j].amount
	onGauge := am.bare() && r.word(j+1, "on") && r.is(r.next(j), kindVacuum, "gauge")
	if !am.is(unit.Pressing) && !onGauge {
		return false
	}
	if r.word(j+1, "will", "would", "should") && r.wordIn("true", "right", "correct", "possible", "really") {
		return true
	}
	for k := j + 1; k < len(r.items); k++ {
		if k > j+5 && !r.isStop(k) || r.items[k].amount != nil {
			return false
		}
		if r.isStop(k) && r.items[k].brk == '.' {
			return r.asksWhetherTrue(k + 1)
		}
	}
	return false
}

// asksWhetherTrue: "possible?", "will it?", "is that true?", "what's that worth" begins at item i.
func (r *reader) asksWhetherTrue(i int) bool {
	_, to := r.sentence(i)
	asks := to < len(r.items) && r.items[to].word == "?" || r.word(i, "what", "whats")
	if !asks || r.amountsIn(i, to) > 0 {
		return false
	}
	if to == i+2 && r.word(i, "will", "would", "does", "is", "can") && r.word(i+1, "it", "that", "he", "she", "they") {
		return true
	}
	ofThat := r.opensWithin(i, to, "what", "whats") && r.opensWithin(i, to, "that")
	return ofThat || r.opensWithin(i, to, "possible", "true", "realistic", "legit", "plausible", "doable", "believable", "likely", "nonsense", "bull", "bs", "rubbish", "lying", "dreaming")
}

// trusted binds a number that is believed more than the one said before it:
// "it says 25 but I trust maybe 23". Which holds is asked.
func (r *reader) trusted() {
	if !r.says("trust", "believe") {
		return
	}
	for i := range r.items {
		if !r.free(i) {
			continue
		}
		j := i - 1
		for r.word(j, "maybe", "more", "like", "about", "around", "its", "only", "perhaps") {
			j--
		}
		if !r.word(j, "trust", "believe") {
			continue
		}
		if n := r.next(i); r.is(n, kindNoun) || r.is(n, kindAttr) {
			continue
		}
		if k := r.lastBefore(i, i); k >= 0 && r.sameSentence(r.bound[k].from, i) {
			r.items[j].used = true
			r.bind(i, r.bound[k].fact.Field)
		}
	}
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// onOneOrOther: "6.5 on one board", "10 on the other".
func (r *reader) onOneOrOther(i int) bool {
	if !r.word(i+1, "on", "for", "in", "at") {
		return false
	}
	n := i + 2
	if n < len(r.items) && r.items[n].amount != nil {
		v := r.items[n].amount
		return v.form == formWords && v.equals(one)
	}
	return r.word(n, "one", "another", "some") || r.word(n, "the", "a") && r.word(n+1, "other", "others", "next", "rest", "first", "second")
}

// humidified: "if they humidify the house to 40".
func (r *reader) humidified(i int) bool {
	v := r.items[i].amount.float()
	if !r.word(i-1, "to", "at") || v < 10 || v > 90 {
		return false
	}
	from, _ := r.clause(i)
	k := r.within(from, i, kindAir, "rh")
	return k >= 0 && humidifies[r.items[k].word] && r.amountsIn(k, i) == 0
}

// humidifies are words for making air moister or drier.
var humidifies = wordSet(`humidify humidifies humidified humidifying humidifier humidifiers humidistat dehumidify dehumidifies dehumidified dehumidifying dehumidifier dehumidifiers dehu`)

// woodReads: "and the wood reads 12", "boards read 9" tell what the moisture meter
// shows.
func (r *reader) woodReads(i, p int) bool {
	if p < 1 || r.items[i].amount.link != linkNone || r.mentions(kindVacuum, "gauge", "vacuum") {
		return false
	}
	reads := r.is(p, kindVacuum, "pull") && r.word(p, "reads", "reading", "shows", "showing") || r.word(i-1, "read", "tested", "metered", "test", "tests")
	if !reads && !r.mentions(kindAir, "service", "rh") {
		return false
	}
	if v, n := r.items[i].amount.float(), r.next(i); v < 4 || v > 30 || r.is(n, kindNoun) || r.is(n, kindAttr) {
		return false
	}
	if r.woodAt(i) {
		return true
	}
	if !reads {
		return false
	}
	k := i - 2
	if r.is(p, kindVacuum) {
		k = p - 1
	}
	for r.word(k, "is", "are", "still", "now", "all", "both", "just") {
		k--
	}
	return r.is(k, kindWood) || r.is(k, kindWoodSort) || r.is(k, kindNoun, "strip") || r.word(k, "wood", "timber", "lumber")
}

// woodSits: "the maple's at 7", "wood sits at 9", "boards are sitting at 11" tell how wet it
// is, where air or a glue is spoken of.
func (r *reader) woodSits(i int) bool {
	const wettest = 20
	am := r.items[i].amount
	if am.form != formInt && am.form != formDecimal || r.mentions(kindNoun, "bar", "pump") {
		return false
	}
	ends := r.isBreak(i+1) || r.items[i+1].amount != nil && r.items[i+1].amount.link == linkOr || r.word(i+1, "now", "instead of", "today", "and", "going", "but", "right", "in", "when", "with")
	air := r.mentions(kindGlue) || r.mentions(kindAir) || r.percentSaid()
	if am.float() > wettest || !ends || !air {
		return false
	}
	k := i - 1
	if !r.word(k, "at", "around", "about") && !r.is(k, kindVacuum, "pull") {
		return false
	}
	said := r.is(k, kindVacuum, "pull") && !strings.HasPrefix(r.items[k].word, "pull")
	for k > 0 && (r.word(k, "at", "around", "about", "still", "now", "all", "just", "already", "only", "stays") || r.is(k, kindVacuum, "pull") || r.word(k, "is", "are", "was", "were", "sits", "sitting", "sat", "stands", "s")) {
		said = said || r.word(k, "is", "are", "was", "were", "sits", "sitting", "sat", "stands", "s")
		k--
	}
	if k < 0 {
		return false
	}
	said = said || r.word(k, "wood", "timber", "lumber", "boards", "planks") && k == i-2 && r.isBreak(i+1) && r.mentions(kindAir, "service") // "wood at 7, house at 45%"
	said = said || strings.HasSuffix(r.items[k].text, "'s") || strings.HasSuffix(r.items[k].text, "’s") || r.word(k, "woods")
	strips := r.is(k, kindNoun, "strip") && !r.is(k-1, kindNoun) && (k == 0 || r.items[k-1].amount == nil)
	return said && (strips || r.is(k, kindWood) || r.word(k, "wood", "woods", "timber", "lumber", "veneer"))
}

// waitedFor: "what if I wait til its 50", "once it warms up to 65" are of the air.
func (r *reader) waitedFor(j int) bool {
	k := j - 1
	for r.word(k, "about", "around", "over", "under", "above", "below", "like", "at", "to") {
		k--
	}
	switch {
	case r.word(k, "warms", "warmed", "heats", "cools", "cooled", "warm up", "warms up", "cools off", "cools down"), r.word(k, "up", "down", "off") && r.word(k-1, "warms", "warmed", "heats", "cools", "cooled", "warm", "cool"):
		return true
	case r.word(k, "its", "is", "hits", "gets", "reaches"):
		return r.opensWithin(max(k-4, 0), k, "til", "till", "until", "when", "once", "before") && r.next(j) < 0
	}
	return false
}

// inHumidity: a floor "in Darwin style humidity" is told where it lives.
func (r *reader) inHumidity() bool {
	if r.mentions(kindAir, "shop") {
		return false
	}
	for i := range r.items {
		if !r.is(i, kindAir, "rh") || r.word(i, "rh", "humid") {
			continue
		}
		for k := i - 1; k >= 0 && k >= i-4 && !r.isBreak(k) && r.items[k].amount == nil; k-- {
			if r.word(k, "in", "into") && k > 0 && !r.isBreak(k-1) || r.is(k, kindUnit, "in") && k > 0 {
				return true
			}
		}
	}
	return false
}

// cooledTo: "left the white glue in the truck overnight, got down to 20" tells of no
// vacuum, where nothing that could make one is named.
func (r *reader) cooledTo(j int) bool {
	return r.word(j, "down to", "get to", "gets to") && (r.within(0, len(r.items), kindGlue) >= 0 || r.mentions(kindAir, "temp", "shop")) && !r.mentions(kindVacuum, "vacuum", "gauge") && !r.mentions(kindNoun, "pump", "bag", "press", "frame", "bar", "leak", "bed") && !r.pressureSaid() && !r.saidFlow()
}

// placedAt is the humidity of the place that stands right before a per cent: "from the
// shop at 40% to a house at 25%".
func (r *reader) placedAt(i int) unit.Field {
	const driest = 20 // less may be the wood's
	p := r.prev(i)
	if r.word(i+1, "in") && r.word(i+2, "the") && r.word(i+3, "air") && !r.service(i) {
		return unit.ShopHumidity // "30% in the air and 25 in the gauge"
	}
	if r.airLater(i) || (r.topic == Move || r.topic == "") && r.is(i+1, kindAir, "rh") && r.goesByArrow(i) {
		return unit.ServiceHumidity
	}
	if r.topic == Move && r.word(i-1, "at") && r.is(i-2, kindWood) && r.items[i].amount.float() <= driest && !r.is(r.next(i), kindAir, "rh", "shop") {
		return unit.WoodMoisture // "white oak at 8 percent goes to a house at 30"
	}
	if r.topic != Move || r.items[i].amount.float() < driest || r.mentions(kindAir, "mc") || !r.is(p, kindAir, "shop", "service") || p < i-3 {
		return ""
	}
	if r.is(p, kindAir, "shop") {
		return unit.ShopHumidity
	}
	return unit.ServiceHumidity
}

// goesByArrow: "7% -> 40% rh" goes from the one to the other.
func (r *reader) goesByArrow(i int) bool {
	for k := i - 1; k >= 0; k-- {
		if r.items[k].amount != nil {
			between := r.text[r.items[k].end:r.items[i].start]
			return strings.Contains(between, ">") || strings.Contains(between, "→")
		}
	}
	return false
}

// airLater: of "will it potato chip at 25%" and "by february at 20%" so much is in the
// air to come, and not in the wood.
func (r *reader) airLater(i int) bool {
	const driest = 20
	from, to := r.clause(i)
	return r.topic == Move && r.items[i].amount.float() >= driest && !r.is(i+1, kindAir, "rh") && !r.mentions(kindAsk, "move:emc_pct") && r.word(i-1, "at", "in", "to") && !r.mentions(kindAir, "mc") && !r.mentions(kindAir, "service") &&
		r.percentCue(from, to) != "mc" && r.opensWithin(from, i, "will", "gonna", "going", "by", "when", "does", "moves", "would")
}

// startedAt: "can Jo start the second frame at 10" tells a time of day.
func (r *reader) startedAt(i int) bool {
	from, _ := r.clause(i)
	return r.within(from, i, kindRole, "start") >= 0 || r.opensWithin(from, i, "start", "starts", "open", "close", "load", "empty", "unload", "begin", "run")
}

// humidities gives the numbers right before "rh" their per cent, before anything else can
// take them: "shop at 45 rh" says nothing of how warm it is.
func (r *reader) humidities() {
	if !r.says("rh") {
		return
	}
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.value != nil && am.bare() && am.form != formPair && r.word(i+1, "rh") {
			u := unit.PercentOf
			am.unit = &u
		}
	}
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// percents reads humidity, moisture of wood and vacuum in per cent of the
// ambient.
func (r *reader) percents() {
	r.driestAndWettest()
	if r.mentions(kindAir, "mc") || r.percentSaid() {
		r.wetInPlaces()
		r.oneAndTheOther()
		r.monthsSwing()
	}
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.bare() {
			continue
		}
		if r.habit.Follows && r.ofSeason(i) {
			r.items[i].amount.dead = true // it may be how warm it is, or how damp
			continue
		}
		if r.percentBare(i) {
			u := unit.PercentOf
			r.items[i].amount.unit = &u
		}
	}
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.is(unit.Proportion) {
			continue
		}
		if r.fromTo(i) {
			continue
		}
		f := r.percentField(i)
		if f == unit.WoodMoisture && r.items[i].amount.float() > 30 && r.opens("what", "whats") >= 0 && r.mentions(kindAir, "mc") && !r.has(unit.ShopHumidity) {
			f = unit.ShopHumidity // "whats 40% at 70 in moisture content"
			r.phrase.Asks = append(r.phrase.Asks, Ask{About: Move, For: []unit.Field{unit.Emc}})
		}
		if f == "" || f == unit.ServiceHumidity && r.moistureLater(i) {
			continue
		}
		if f == unit.WoodMoisture && i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTo && r.free(i+1) && !r.is(i+2, kindAir, "rh") {
			r.moistureRange(i, i+1)
			continue
		}
		if k := i + 2; f == unit.WoodMoisture && (r.word(i+1, "and") || i+1 < len(r.items) && r.items[i+1].brk == '&') && r.free(k) && r.items[k].amount.is(unit.Proportion) && r.percentField(k) == f {
			r.moistureRange(i, k) // "moisture 13.5 % and 9.8 % in the same panel"
			continue
		}
		r.bind(i, f)
		r.loosenLast(f == unit.ShopHumidity && !r.mentions(kindAir, "shop"))
	}
}

// fromTo: "went from 6% to 11%" in a question of movement: the first is what the
// wood has, the second the answer has no use for.
func (r *reader) fromTo(i int) bool {
	j := i + 1
	down := r.word(j, "down to", "up to")
	if down {
		j++
	}
	if r.topic != Move || r.has(unit.WoodMoisture) || r.items[i].amount.float() > 30 || !(r.word(i-1, "from") || r.is(i-1, kindRole, "start") && r.items[i-1].word == "from") || j >= len(r.items) || !r.free(j) || r.items[j].amount.link != linkTo && !down || !r.items[j].amount.is(unit.Proportion) || r.items[j].amount.float() > 30 {
		return false
	}
	r.items[j].amount.dead = true
	return r.bind(i, unit.WoodMoisture)
}

// driestAndWettest: "8% on the driest board and 12% on the wettest".
func (r *reader) driestAndWettest() {
	if !r.says("driest", "lowest") || !r.says("wettest", "dampest", "highest") {
		return
	}
	low, high := -1, -1
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.is(unit.Proportion) {
			continue
		}
		_, to := r.window(i)
		for j := i + 1; j < to; j++ {
			switch {
			case r.word(j, "driest", "lowest"):
				low = i
			case r.word(j, "wettest", "dampest", "highest"):
				high = i
			}
		}
	}
	if low >= 0 && high >= 0 && low != high {
		r.moistureRange(low, high)
	}
}

// oneAndTheOther reads "11% on one board and 7% on the other" and "half read 7%,
// the other half 11".
func (r *reader) oneAndTheOther() {
	if !r.mentions(kindAir, "mc") && !r.percentSaid() {
		return
	}
	if !r.wordIn("other", "others", "rest") && r.halvesSaid() < 2 || !r.mentions(kindAir, "mc") && r.halvesSaid() < 2 && r.within(0, len(r.items), kindNoun, "strip") < 0 && !r.mentions(kindWood) || r.mentions(kindAir, "service") && r.halvesSaid() < 2 {
		return
	}
	var two []int
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.hearsay || r.items[i].amount.float() < 3 || r.items[i].amount.float() > 30 || r.ofARoom(i) {
			continue
		}
		if r.items[i].amount.bare() && r.mentions(kindAir, "mc") && (len(two) == 0 && r.percentBare(i) || len(two) == 1) && r.onOneOrOther(i) {
			two = append(two, i)
			continue
		}
		bare := r.items[i].amount.bare() && (r.word(i-1, "half", "ones", "one", "others", "rest", "at", "is", "are") || i > 0 && r.items[i-1].amount != nil) && r.next(i) < 0
		if r.items[i].amount.is(unit.Proportion) || bare && len(two) == 1 {
			two = append(two, i)
		}
	}
	if len(two) != 2 || !r.items[two[0]].amount.is(unit.Proportion) && !r.onOneOrOther(two[0]) {
		return
	}
	for _, k := range two {
		if n := k + 2; r.onOneOrOther(k) && n < len(r.items) && r.items[n].amount != nil {
			r.items[n].used = true // the "one" board
		}
	}
	for k := range r.items {
		if am := r.items[k].amount; r.free(k) && am.form == formWords && am.equals(half) {
			r.items[k].used = true // "the other half"
		}
	}
	r.moistureRange(two[0], two[1])
}

// halvesSaid counts the halves of "half the boards 6%, half 10".
func (r *reader) halvesSaid() int {
	n := 0
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.form == formWords && am.equals(half) && am.unit == nil || r.word(i, "half") {
			n++
		}
	}
	return n
}

// percentBare: "45 rh", "mc 8", "6 to 8 %".
func (r *reader) percentBare(i int) bool {
	if r.items[i].amount.form == formPair {
		return false
	}
	if r.items[i].amount.link == linkTo && i > 0 && r.items[i-1].amount != nil && r.items[i-1].amount.is(unit.Proportion) && !r.is(r.next(i), kindNoun) {
		return true
	}
	if i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTo && r.items[i+1].amount.is(unit.Proportion) {
		return true
	}
	air := r.means(kindAir)
	if air && (r.is(i+1, kindAir, "rh") || r.is(i+1, kindAir, "mc") && r.items[i+1].word != "meter") {
		return true
	}
	if v := r.items[i].amount.float(); r.word(i-1, "at", "in") && r.word(i+1, "and", "at") && v >= 20 && v <= 95 && r.mentions(kindAsk, "move:emc_pct") && r.said(unit.Warmth) && !r.percentSaid() {
		return true // "what mc does oak settle to at 55 and 72F"
	}
	p := r.prev(i)
	pulls := r.means(kindVacuum, "pull")
	if (air || pulls || r.says("read", "tested", "metered", "test", "tests")) && r.woodReads(i, p) {
		return true
	}
	if (r.word(i-1, "at", "around", "about") || pulls && r.is(i-1, kindVacuum, "pull")) && r.woodSits(i) {
		return true
	}
	if !air {
		return false
	}
	n := r.next(i)
	if r.madeAt(i) {
		return true
	}
	if v := r.items[i].amount.float(); v >= 4 && v <= 30 && r.mentions(kindAir, "mc") && !r.is(n, kindNoun) && !r.is(n, kindAttr) && (r.is(p, kindSay) || r.is(p, kindVacuum, "pull") && in(r.items[p].word, "reads", "reading", "shows") || r.word(i-1, "between")) {
		return true
	}
	if r.humidified(i) {
		return true
	}
	if r.is(p, kindAir, "rh") && p > 0 && r.items[p-1].amount != nil && r.items[p-1].amount.is(unit.Proportion) {
		return false // "35% humidity at 68"
	}
	return r.is(p, kindAir, "rh", "mc") && r.near(p, i) && !r.is(n, kindNoun) && !r.is(n, kindAttr) && r.items[i].amount.float() >= 3
}

func (r *reader) moistureRange(i, j int) {
	a, b := r.items[i].amount.float(), r.items[j].amount.float()
	low, high := unit.WoodMoistureLow, unit.WoodMoistureHigh
	if a > b {
		low, high = high, low
	}
	u := unit.PercentOf
	r.items[i].amount.unit, r.items[j].amount.unit = &u, &u
	r.bind(i, low)
	r.bind(j, high)
}

// besideWarmth: in "21 degrees, 50 percent" both are of the air in the shop.
func (r *reader) besideWarmth(i int) bool {
	k := i - 1
	if r.word(k, "and", "at") || k >= 0 && r.items[k].brk == ',' {
		k--
	}
	return k >= 0 && r.items[k].amount != nil && r.items[k].amount.is(unit.Warmth)
}

func (r *reader) percentField(i int) unit.Field {
	n, p := r.next(i), r.prev(i)
	from, to := r.clause(i)
	left, right := r.window(i)
	if f := r.placedAt(i); f != "" {
		return f
	}
	if r.wetBeforeHouse(i, to) || r.goesTo(i) || r.leftShopAt(i) || r.items[i].amount.float() <= 20 && r.word(i+1, "wood", "lumber", "timber", "stock") {
		return unit.WoodMoisture
	}
	tooWet := r.items[i].amount.float() > 30 && (r.topic == Move || r.mentions(kindAir, "service") || r.within(left, i, kindAir, "shop") >= 0) && !r.mentions(kindAir, "mc")
	if r.has(unit.WoodMoisture) && r.service(i) && r.percentCue(left, i) == "mc" && r.items[i].amount.float() > 25 {
		return unit.ServiceHumidity
	}
	if r.mentions(kindAsk, "move:emc_pct") && r.items[i].amount.float() > 30 && !r.mentions(kindAir, "rh") {
		if r.within(from, to, kindAir, "service") >= 0 {
			return unit.ServiceHumidity // "what mc does wood get to in a 50% room"
		}
		return unit.ShopHumidity
	}
	for _, cue := range []string{r.percentCue(n, n+1), r.percentCue(p, p+1), r.lastPercentCue(left, i), r.percentCue(i+1, right), r.lastPercentCue(from, i), r.percentCue(i+1, to)} {
		switch cue {
		case "rh":
			if r.service(i) || r.goesInto(r.afterStop(i), i) || r.later(i) {
				return unit.ServiceHumidity
			}
			return unit.ShopHumidity
		case "mc":
			if tooWet {
				continue
			}
			return unit.WoodMoisture
		case "vacuum":
			return unit.VacuumPercent
		}
	}
	switch {
	case r.besideWarmth(i) && r.items[i].amount.float() >= 20 && !r.later(i):
		return unit.ShopHumidity
	case r.items[i].amount.float() > 20 && r.later(i):
		return unit.ServiceHumidity
	case r.is(n, kindAsk, "glue") && in(r.items[n].word, "too wet", "too dry", "too damp"):
		return unit.WoodMoisture
	case r.within(from, to, kindAir, "service") >= 0:
		return unit.ServiceHumidity
	case (r.within(from, to, kindAir, "shop") >= 0 || r.airIn(from, to)) && r.items[i].amount.float() >= 20:
		return unit.ShopHumidity
	case r.items[i].amount.float() > 60 && r.mentions(kindNoun, "bar") && !r.mentions(kindAir) && !r.pressureSaid():
		return unit.VacuumPercent
	case !tooWet && r.within(from, to, kindWood) >= 0, !tooWet && r.within(from, to, kindNoun, "strip") >= 0, r.within(from, to, kindNoun, "panel", "core") >= 0 && r.topic == Glue:
		return unit.WoodMoisture
	case (r.topic == Move || r.mentions(kindAir, "service")) && r.items[i].amount.float() <= 30 && !r.has(unit.WoodMoisture) && (r.within(0, i, kindAir, "service") < 0 || r.has(unit.ServiceHumidity) && r.items[i].amount.float() <= 20):
		return unit.WoodMoisture
	case (r.topic == Face || r.topic == Pump || r.topic == Side) && r.items[i].amount.float() >= 50 && !r.mentions(kindAir, "rh", "mc"):
		return unit.VacuumPercent
	case r.mentions(kindAir, "mc") && !r.mentions(kindAir, "rh") && r.items[i].amount.float() <= 30:
		return unit.WoodMoisture
	}
	return r.airByTopic(i)
}

// airByTopic is what a per cent is that no word is near.
func (r *reader) airByTopic(i int) unit.Field {
	switch {
	case r.service(i):
		return unit.ServiceHumidity
	case r.mentions(kindAsk, "move:emc_pct") && r.items[i].amount.float() > 20:
		return unit.ShopHumidity
	case r.topic == Move && r.items[i].amount.float() > 25 && r.inHumidity():
		return unit.ServiceHumidity // "floor in tropical humidity, 80% and 30 degrees"
	case r.topic == Move && r.has(unit.WoodMoisture) && r.items[i].amount.float() <= 20 && !r.mentions(kindAir, "rh"):
		return "" // how wet it gets: "7% now, maybe 12% in august"
	case r.topic == Move && r.has(unit.WoodMoisture):
		return unit.ShopHumidity
	case r.dryAlone(i):
		return unit.WoodMoisture
	}
	return ""
}

// dryAlone: of "beech staves, 70 x 20 x 900; D4; 19 °C; 9 %" the per cent can only be
// the wood's.
func (r *reader) dryAlone(i int) bool {
	v := r.items[i].amount.float()
	from, to := r.clause(i)
	return v >= 4 && v <= 20 && to-from == 1 && !r.has(unit.WoodMoisture) && r.within(0, len(r.items), kindWood) >= 0 && !r.mentions(kindAir, "rh") && r.topic != Face && r.topic != Pump
}

func (r *reader) airIn(from, to int) bool {
	for i := from; i < to; i++ {
		if r.word(i, "air") {
			return true
		}
	}
	return false
}

// goesTo: of "8% going to 25% rh" the first is the wood's.
func (r *reader) goesTo(i int) bool {
	return !r.has(unit.WoodMoisture) && r.passesTo(i)
}

// passesTo reports whether a humidity is where the moisture at item i goes to.
func (r *reader) passesTo(i int) bool {
	if r.items[i].amount.float() > 25 || r.is(i+1, kindAir) {
		return false
	}
	const wettest = 12 // more is a range of the air
	if j := i + 1; j < len(r.items) && r.items[j].amount != nil && r.items[j].amount.link == linkTo && r.items[i].amount.float() <= wettest {
		return r.items[j].amount.is(unit.Proportion) && r.is(j+1, kindAir, "rh") // "8% to 35% rh"
	}
	moves := false
	for j := i + 1; j < len(r.items) && !r.isStop(j); j++ {
		if r.items[j].amount != nil {
			return moves && r.items[j].amount.is(unit.Proportion) && (r.is(j+1, kindAir, "rh") || r.items[j].amount.float() > 25)
		}
		moves = moves || r.word(j, "to", "into", "then") || strings.HasSuffix(r.items[j].word, " to") || strings.HasSuffix(r.items[j].word, " in")
	}
	return false
}

// wetBeforeHouse: of "its at 7% now and the house is like 55%" the first is the
// wood's.
func (r *reader) wetBeforeHouse(i, to int) bool {
	house := r.within(i, to, kindAir, "service")
	if house < 0 || r.items[i].amount.float() > 30 || r.has(unit.WoodMoisture) || r.within(r.afterStop(i), i, kindAir, "service", "rh") >= 0 {
		return false
	}
	for j := i + 1; j < to; j++ {
		if r.free(j) && r.items[j].amount.is(unit.Proportion) {
			return r.opensWithin(i, house, "and", "but", "while")
		}
	}
	return false
}

// lastPercentCue is the cue of [from, to) that stands nearest before to.
func (r *reader) lastPercentCue(from, to int) string {
	for j := to - 1; j >= max(from, 0); j-- {
		if cue := r.percentCue(j, j+1); cue != "" {
			return cue
		}
	}
	return ""
}

// percentCue is what the words of [from, to) make of a per cent: rh, mc, vacuum
// or nothing.
func (r *reader) percentCue(from, to int) string {
	for j := max(from, 0); j < to && j < len(r.items); j++ {
		switch {
		case r.is(j, kindAir, "rh", "mc"):
			return r.items[j].id
		case r.word(j, "from") && r.topic == Move:
			return "mc"
		case r.word(j, "wood", "boards", "timber", "board", "lumber") && j < to, r.word(j, "glued", "dried", "built", "acclimated", "acclimatised", "conditioned", "assembled"), r.word(j, "pressed", "made"), (r.word(j, "glue") || r.is(j, kindNoun, "press")) && r.word(j+1, "it", "them", "up", "this", "these"):
			return "mc"
		case r.is(j, kindVacuum, "vacuum", "gauge"), r.is(j, kindNoun, "pump"), r.is(j, kindVacuum, "pull") && strings.HasPrefix(r.items[j].word, "pull"):
			return "vacuum"
		}
	}
	return ""
}

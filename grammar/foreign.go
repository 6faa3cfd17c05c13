package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// foreignTrades are words of work that is none of the bot's business. Beside none
// of the shop's own words they make the whole message foreign.
var foreignTrades = wordSet(`tyre tyres tire tires truck car bike motorbike boiler radiator cake recipe paint concrete roof roofing nailer shingle shingles breaker permit wallpaper carpet football stocks bitcoin flight hotel chess poem rain plumbing toilet mortgage homework-essay engine gearbox eggs egg protein boil cooking kettle spark generator bacon toast pizza bread steak oven-baked diver diving bearing bearings price prices shelf-life scuba underwater rug rugs nailer brads espresso sourdough dough yeast chainsaw chainsaws coffee latte brick bricks emulsion lounge carpet laminate-floor mortar patio lawn grass pool aquarium shower faucet printer laptop wifi phone-bill rent haircut horse wedding-cake dumbbell marathon rugby cricket baseball bike-tyre bicycle brisket meat beef chicken pork salmon sausage sausages jerky turkey venison cheese`)

// foreign reports whether the message is about another trade.
func (r *reader) foreign() bool {
	if r.mentions(kindNoun, "pump") && r.wordIn("roof", "rain", "coffee") && r.currentAtPump() {
		return false
	}
	if (r.engineVacuum() || r.phones() || r.toolAsked() || r.elsewhere() && !r.handsWhile()) && !r.getsInside() {
		return true
	}
	other, seals := false, false // food, for the freezer
	for i := range r.items {
		it := &r.items[i]
		switch {
		case r.is(i, kindFill) && (strings.HasPrefix(it.word, "vac") || it.word == "sous vide"):
			seals = true
		case r.is(i, kindNoun, "bag") && (seals || r.wordIn("vacuum cleaner")): // or a cleaner's
		case r.word(i, "coffee") && r.mentions(kindRole, "start", "deadline") && r.mentions(kindNoun, "press"):
		case it.amount == nil && (foreignTrades[it.word] || it.taken && foreignTrades[strings.ToLower(it.text)]):
			other = true
		case it.kind == kindVacuum && (r.word(i-1, "robot", "cordless", "handheld") || r.word(i+1, "cleaner", "cleaners")):
			other = true
		case it.kind == kindVacuum && it.id != "pull", it.kind == kindPeril, it.amount != nil && (it.word == "inhg" || strings.Contains(it.amount.unitRaw, "vac") || strings.Contains(it.amount.unitRaw, "hg")):
			return false
		case it.kind == kindNoun && it.id != "panel" && it.id != "bar" && it.id != "pump" && it.id != "bed" && it.id != "press" && it.id != "face" && it.id != "leak":
			return false
		case it.kind == kindWood && it.id != "ash", it.kind == kindGlue:
			return false
		case r.habit.Follows && r.is(i, kindRole, "start", "deadline"):
			return false // "truck comes early, all out by 3:30"
		}
	}
	if r.has(unit.PanelCount) && (r.has(unit.StartTime) || r.has(unit.Deadline) || r.has(unit.PressCount)) {
		return false // "truck is here at 4, 14 panels 24x48, start 7:30"
	}
	if r.has(unit.Species) && r.has(unit.WoodMoisture) && r.has(unit.PanelWidth) {
		return false // "the truck is 20 ft long. ash top, 20 in wide, wood at 7%"
	}
	return other || r.wordIn("vacuum cleaner") || r.strange() && !r.handsWhile() && !r.waterAtPump() || r.habit.Follows && r.besides()
}

// strange reports whether a message that opens a thread speaks of things that the
// trade has no word for: "how many bricks for a garden wall 12 ft wide".
func (r *reader) strange() bool {
	if r.habit.Follows || r.signsOfTrade() {
		return false
	}
	n := 0
	for i := range r.items {
		if r.unknown(i) && len(r.items[i].word) > 3 {
			n++
			if r.word(i-1, "many", "what", "which", "of") && r.word(i-2, "how", "litres", "liters", "kilos", "gallons", "bags", "tons") || r.is(i-1, kindUnit) {
				n++
			}
		}
	}
	return n >= 2
}

// signsOfTrade reports whether anything but sizes and common words can be of a
// shop's work.
func (r *reader) signsOfTrade() bool {
	if r.has(unit.StockPiles) && r.wantsWidth() {
		return true
	}
	for i := range r.items {
		it := &r.items[i]
		switch it.kind {
		case kindVerb, kindAir, kindFact, kindStock, kindPeril:
			return true
		case kindAsk:
			if !weak(it.word) && it.id != "glue:glue_g" || it.id == "words" || it.id == "why" {
				return true
			}
		case kindRole:
			if r.is(i, kindRole, "start", "deadline", "hours", "layup", "unload", "trim", "friction", "clamp", "open", "closed", "spread", "ripped", "vary", "drive", "limit", "job", "lot", "stackorder") {
				return true
			}
		}
		if am := it.amount; am != nil && (am.link == linkAt || am.unit != nil && am.unit.Dimension != unit.Distance && am.unit.Dimension != unit.Lasting) {
			return true
		}
	}
	return false
}

// giveBack makes every number of a foreign message unused.
func (r *reader) giveBack() {
	r.bound = nil
	r.phrase.Asks, r.phrase.Choices, r.phrase.Refused, r.phrase.Amends, r.phrase.Drops = nil, nil, nil, nil, nil
	for i := range r.items {
		if r.items[i].amount != nil {
			r.items[i].used = false
		}
	}
}

// allPlain reports whether the message has no word that is unknown here.
func (r *reader) allPlain() bool {
	for i := range r.items {
		if r.unknown(i) {
			return false
		}
	}
	return true
}

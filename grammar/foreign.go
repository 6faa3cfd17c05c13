package grammar

import "strings"

// foreignTrades are words of work that is none of the bot's business. Beside none
// of the shop's own words they make the whole message foreign.
var foreignTrades = wordSet(`tyre tyres tire tires truck car bike motorbike boiler radiator cake recipe paint concrete roof roofing nailer shingle shingles breaker permit wallpaper carpet football stocks bitcoin flight hotel chess poem rain plumbing toilet mortgage homework-essay engine gearbox eggs egg protein boil cooking kettle spark generator bacon toast pizza bread steak oven-baked diver diving bearing bearings price prices shelf-life scuba underwater`)

// foreign reports whether the message is about another trade.
func (r *reader) foreign() bool {
	other := false
	for i := range r.items {
		it := &r.items[i]
		switch {
		case it.amount == nil && foreignTrades[it.word]:
			other = true
		case it.kind == kindVacuum && it.id != "pull", it.kind == kindPeril, it.amount != nil && (it.word == "inhg" || strings.Contains(it.amount.unitRaw, "vac") || strings.Contains(it.amount.unitRaw, "hg")):
			return false
		case it.kind == kindNoun && it.id != "panel" && it.id != "bar" && it.id != "pump" && it.id != "bed" && it.id != "press" && it.id != "face" && it.id != "leak":
			return false
		case it.kind == kindWood && it.id != "ash", it.kind == kindGlue:
			return false
		}
	}
	return other
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

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// strangers are what a shop stands in, leads to its pump, or builds its panels for:
// how big they are is of no part of a load.
var strangers = wordSet(`
hose pipe tubing tube ductwork duct cord cable ladder ceiling ceilings wall kitchen building warehouse hallway corridor doorway basement loft stairwell staircase driveway
boat yacht sloop ketch cutter dinghy trawler launch catamaran schooner canoe kayak skiff hull ship ferry truck van trailer lorry container
legs leg cabinet cupboard bookcase dresser wardrobe sideboard crate pallet bathtub mast boom keel`)

// furniture stands on the floor, and so high as no bar, no strip and no press is.
var furniture = wordSet(`table bench workbench desk counter worktop countertop island stool cabinet tabletop sawhorses`)

// standing, in metres, is lower than furniture stands and higher than a load is.
const standing = 0.45

// stranger reports whether item i names one of them: "the ceiling's", "hoses".
func (r *reader) stranger(i int) bool {
	if i < 0 || i >= len(r.items) || r.items[i].amount != nil || r.items[i].brk != 0 {
		return false
	}
	w := r.items[i].word
	if w == "building" && (r.word(i+1, "a", "an", "the", "some", "this", "my") || i+1 < len(r.items) && r.items[i+1].amount != nil) {
		return false // "building a 36 wide top"
	}
	if one, ok := strings.CutSuffix(w, "s"); ok && strangers[one] {
		return true
	}
	return strangers[w]
}

// strangerBefore: "1 in bar, for a cabinet 30 wide".
func (r *reader) strangerBefore(i int) bool {
	from, _ := r.clause(i)
	return r.strangerIn(from, i)
}

// killStrangers marks the sizes of things that are no part of a load or a press: "10
// ft of hose", "for a 36 ft sloop", "the ceiling is 9 ft high", "the bench is 34 high".
func (r *reader) killStrangers() {
	r.killNoSizes()
	compressor, footer := r.says("compressor", "compressors", "airline"), r.says("footer", "footers")
	tall, named := r.means(kindAttr, "tall"), footer || r.strangerIn(0, len(r.items))
	for i := range r.items {
		am := r.items[i].amount
		if compressor && am != nil && !am.dead && (am.is(unit.Pressing) || am.is(unit.Content) || am.bare()) && r.ofCompressor(i) {
			am.dead = true
			continue
		}
		if am == nil || am.dead || am.value == nil || !am.bare() && !am.is(unit.Distance) {
			continue
		}
		if named && (r.beforeStranger(i) || r.behindStranger(i)) || tall && r.standsHigh(i) || footer && r.boatLong(i) {
			am.dead = true
		}
	}
}

// ofCompressor: "6 bar on the compressor", "compressor 50 l".
func (r *reader) ofCompressor(i int) bool {
	k := i + 1
	for r.word(k, "bar", "on", "at", "from", "the", "in", "air") || r.is(k, kindNoun, "bar") {
		k++
	}
	j := i - 1
	for r.word(j, "is", "at", "a", "of", "has", "says") {
		j--
	}
	return r.word(k, "compressor", "compressors", "airline") || r.word(j, "compressor", "compressors", "airline")
}

// beforeStranger: "3/8 hose", "10 ft of 1/2 hose", "a 36 ft sloop"; "2 boat panels"
// are panels.
func (r *reader) beforeStranger(i int) bool {
	k := i + 1
	if r.word(k, "of") {
		for k++; k < len(r.items) && (r.items[k].amount != nil || r.word(k, "the", "my", "that", "clear", "vacuum", "air")); k++ {
		}
	}
	for r.word(k, "foot", "long", "id", "od", "diameter", "vacuum", "air") {
		k++
	}
	return !r.is(k+1, kindNoun) && !r.is(k+1, kindWood) && r.stranger(k)
}

// behindStranger: "hose 25 ft long", "the kitchen is 12 ft wide"; of a "top for the
// kitchen 36 wide" the top is.
func (r *reader) behindStranger(i int) bool {
	if !r.items[i].amount.is(unit.Distance) && !r.is(i+1, kindAttr) && !r.is(i-1, kindAttr) {
		return false
	}
	from, _ := r.clause(i)
	for k := i - 1; k >= from; k-- {
		switch {
		case r.word(k, "side", "sides", "end", "ends", "front", "back", "shelf", "frame", "at"):
			return false // "wardrobe side 560 wide"
		case r.stranger(k) && r.is(k+1, kindNoun):
			return false // "18 cabinet doors 20 x 30"
		case r.stranger(k):
			return k == from || r.within(from, k, kindNoun) < 0 || r.word(k+1, "is", "was", "will")
		case r.is(k, kindAttr), r.items[k].amount != nil, r.idle(k), r.word(k, "and"):
		default:
			return false
		}
	}
	return false
}

// standsHigh: "table is 30 tall", "the bench it sits on is 34 high".
func (r *reader) standsHigh(i int) bool {
	if !r.is(i+1, kindAttr, "tall") || !r.length(i) || r.size(i) < standing {
		return false
	}
	from, _ := r.clause(i)
	for k := i - 1; k >= from; k-- {
		if w := r.items[k].word; r.items[k].amount == nil && (furniture[w] || furniture[strings.TrimSuffix(w, "s")]) {
			return true
		}
	}
	return false
}

// boatLong: "for the 42 footer" is as long as a boat; "six-footers" are boards.
func (r *reader) boatLong(i int) bool {
	k := i + 1
	if r.isBreak(k) && k < len(r.items) && r.items[k].brk == '-' {
		k++
	}
	if !r.word(k, "footer", "footers") {
		return false
	}
	possessive := strings.ContainsAny(r.items[k].text, "'’")
	if possessive || r.items[i].amount.float() > 17 && r.word(k, "footer") {
		r.items[k].word = "boat"
		r.hear(k)
		return true
	}
	return false
}

// ofDoor: a "door opening" is none of a press's.
func (r *reader) ofDoor(k int) bool {
	return r.is(k-1, kindNoun, "panel") || r.stranger(k-1) || r.word(k-1, "window")
}

// madeTable: the table that "will be 44 wide eventually" is what the strips are for,
// and no press's bed.
func (r *reader) madeTable(i int) bool {
	from, to := r.clause(i)
	k := r.within(from, i, kindNoun, "bed")
	if k < 0 || !r.word(k, "table", "tables", "bed") || !r.mentions(kindNoun, "bar", "strip") || r.pumping() {
		return false
	}
	return r.opensWithin(from, to, "finished", "eventually", "dining", "coffee", "kitchen", "conference", "customers", "clients", "wants", "complete", "completed", "built", "made", "someday", "later") ||
		r.word(k+1, "will", "ll", "gets", "ends", "comes", "itself", "wants", "is") && r.opensWithin(k+1, i, "will", "be", "end", "come", "going", "gonna", "itself", "up") || strings.Contains(r.items[k].text, "'ll")
}

// laidOnBed: of "strips go on the bed, 3 high" the bed has no height.
func (r *reader) laidOnBed(i int) bool {
	for k := i - 1; k > 1; k-- {
		if r.is(k, kindNoun, "bed") {
			return r.word(k-1, "the", "our", "my") && r.word(k-2, "on", "onto")
		}
	}
	return false
}

// orders are the letters before the number of an order.
var orders = wordSet(`so po wo jo`)

// killPapers marks the numbers of orders and what is on the shelf: "SO 5512", "qty on
// hand 3".
func (r *reader) killPapers() {
	shelf := r.says("inv", "inventory", "onhand", "in stock", "on hand", "hand", "stock")
	if !shelf && !r.says("so", "po", "wo", "jo") {
		return
	}
	for i := 1; i < len(r.items); i++ {
		if r.items[i].amount == nil || !r.items[i].amount.bare() {
			continue
		}
		n, whole := r.items[i].amount.whole()
		if !whole {
			continue
		}
		const leastOrder = 100
		it := &r.items[i-1]
		typed := r.text[it.start:it.end]
		switch {
		case it.amount == nil && n >= leastOrder && orders[it.word] && (typed == strings.ToUpper(typed) || it.word != "so"):
			r.items[i].amount.dead = true
			it.meaning, it.used = meaning{}, true
		case shelf && r.isBreak(i+1) && r.onShelf(i):
			r.items[i].amount.dead = true
			for k := max(i-5, 0); k < i; k++ {
				if r.word(k, "qty", "quantity", "stock", "in stock", "on hand") {
					r.items[k].meaning, r.items[k].word, r.items[k].used = meaning{}, "", true
				}
			}
		}
	}
}

// onShelf: "qty on hand 3", "inv 3".
func (r *reader) onShelf(i int) bool {
	if r.word(i-1, "inv", "inventory", "onhand") {
		return true
	}
	shelf := r.word(i-1, "in stock", "on hand") || r.word(i-1, "hand", "stock") && (r.word(i-2, "on", "in") || r.is(i-2, kindUnit, "in"))
	return shelf && r.opensWithin(max(i-5, 0), i, "qty", "quantity", "count")
}

// barsToDrinkIn takes the meaning from a bar that people go to: "then off to the bar at
// 6".
func (r *reader) barsToDrinkIn() {
	if !r.says("bar") || !r.says("to", "at") || !r.says("the", "a") {
		return
	}
	for i := range r.items {
		if !r.is(i, kindNoun, "bar") || !r.word(i, "bar") || !r.word(i-1, "the", "a") || !r.word(i-2, "to", "at") || !r.word(i-3, "off", "going", "headed", "heading", "go", "drinks", "beers", "drink", "meet", "us", "me", "over", "later") {
			continue
		}
		r.items[i].meaning, r.items[i].used = meaning{}, true
		if r.word(i+1, "at") && i+2 < len(r.items) && r.items[i+2].amount != nil {
			r.items[i+2].amount.dead = true
		}
	}
}

// killPumpPressure marks the pressure that somebody tells of a pump for its speed: "pump
// is 5 psi, how long to 24 inHg".
func (r *reader) killPumpPressure() {
	if !r.means(kindNoun, "pump") {
		return
	}
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.dead || !am.is(unit.Pressing) || !in(am.unit.Symbol, "psi", "bar", "MPa") || !r.word(i-1, "is", "a", "of", "s", "pumps") && !r.is(i-1, kindNoun, "pump") {
			continue
		}
		k := i - 1
		for r.word(k, "is", "a", "of", "rated", "at") {
			k--
		}
		if r.is(k, kindNoun, "pump") && r.pressuresBut(i) > 0 && r.opensWithin(0, len(r.items), "to", "reach", "till", "until") {
			am.dead = true
		}
	}
}

// pressuresBut counts the pressures other than item i.
func (r *reader) pressuresBut(i int) int {
	n := 0
	for k := range r.items {
		if am := r.items[k].amount; k != i && am != nil && am.is(unit.Pressing) {
			n++
		}
	}
	return n
}

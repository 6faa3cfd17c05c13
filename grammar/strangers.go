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
legs leg cabinet cupboard bookcase dresser wardrobe sideboard crate pallet island bathtub mast boom keel`)

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
	return strangers[w] || strangers[strings.TrimSuffix(w, "s")]
}

// killStrangers marks the sizes of things that are no part of a load or a press: "10
// ft of hose", "for a 36 ft sloop", "the ceiling is 9 ft high", "the bench is 34 high".
func (r *reader) killStrangers() {
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || am.dead || am.value == nil || !am.bare() && !am.is(unit.Distance) {
			continue
		}
		if r.beforeStranger(i) || r.behindStranger(i) || r.standsHigh(i) || r.boatLong(i) {
			am.dead = true
		}
	}
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
	return r.stranger(k) && !r.is(k+1, kindNoun) && !r.is(k+1, kindWood)
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
		return true
	}
	return false
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

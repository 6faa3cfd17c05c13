package grammar

import "presshand/engine/unit"

// blemishes are what is wrong with the work at some spot: how large the spot is, is no
// measure of the work.
var blemishes = wordSet(`bubble bubbles blister blisters void voids knot knots dent dents ding dings stain stains scratch scratches hole holes pinhole pinholes burn burns patch patches spot spots ripple ripples wrinkle wrinkles crease creases delam delamination delaminated snipe tearout chip chips splinter worm wormhole gouge gouges flaw defect`)

const shortestBlemish = len("knot")

// killBlemishes gives up the size of a flaw: "bubble in the middle of the veneer like 2
// in across", "theres a 3 inch blister".
func (r *reader) killBlemishes() {
	for i := range r.items {
		if r.items[i].amount != nil || len(r.items[i].word) < shortestBlemish || !blemishes[r.items[i].word] || r.is(i, kindNoun) {
			continue
		}
		if k := i - 1; r.free(k) && r.items[k].amount.is(unit.Distance) {
			r.items[k].amount.dead = true
		}
		_, to := r.clause(i)
		for k := i + 1; k < to; k++ {
			if r.items[k].amount == nil {
				continue
			}
			end := k + 1
			for r.is(end, kindAttr) || r.is(end, kindRole, "length") || r.word(end, "or", "so", "round", "diameter") {
				end++
			}
			if r.free(k) && r.length(k) && !r.items[k].amount.plural && (end > k+1 || r.isBreak(end) && r.items[k].amount.is(unit.Distance)) && !r.is(end, kindNoun) && !r.is(end, kindWood) {
				r.items[k].amount.dead = true
			}
			break
		}
	}
}

// roomToMove: "is an 1/8 gap on each side enough for a 16 wide panel? 7% now, 12% in
// august" asks of the gap that is left for the wood to move in, and not of a joint's.
func (r *reader) roomToMove() bool {
	gap := r.within(0, len(r.items), kindNoun, "gap")
	if gap < 0 {
		gap = r.leftEachSide()
	}
	if gap < 0 || !r.percentSaid() || r.mentions(kindNoun, "bar", "joint", "strip", "pump") || r.mentions(kindVacuum) || r.pressureSaid() || r.opens("enough", "leave", "allow", "leaving", "left", "plenty", "room") < 0 {
		return false
	}
	for i := range r.items {
		switch {
		case r.is(i, kindNoun, "gap"):
			r.items[i].meaning = meaning{}
			if k := r.prev(i); r.free(k) && r.length(k) {
				r.items[k].amount.dead = true
			}
		case r.is(i, kindFact, "faces=2"): // on each side
			r.items[i].meaning = meaning{}
		case r.is(i, kindNoun, "frame") && r.word(i-1, "a", "the", "its") && r.word(i-2, "in"):
			r.items[i].meaning = meaning{} // a door's
		}
	}
	return true
}

// seasonsSwing: "what will my bar top do between 25% and 55% rh" asks how it moves.
func (r *reader) seasonsSwing() bool {
	if !r.mentions(kindAir, "rh") || !r.says("between", "from") || !r.mentions(kindNoun, "panel", "strip") && !r.mentions(kindWood) {
		return false
	}
	for i := range r.items {
		if !r.word(i, "between", "from") || i+1 >= len(r.items) || r.items[i+1].amount == nil || i+2 >= len(r.items) {
			continue
		}
		if to := r.items[i+2].amount; to != nil && to.link == linkTo && to.is(unit.Proportion) && to.float() > 20 {
			return r.opens("do", "doing", "does", "happen", "happens") >= 0
		}
	}
	return false
}

// leftEachSide: "I leave 1/8 each side of a 16 inch panel in the frame" tells the room that
// a door's frame has; -1 where none is told.
func (r *reader) leftEachSide() int {
	if !r.means(kindFact, "faces=2") {
		return -1
	}
	for i := 1; i < len(r.items); i++ {
		if r.is(i, kindFact, "faces=2") && r.free(i-1) && r.length(i-1) && r.size(i-1) < mostRoom && r.opensWithin(max(0, i-4), i, "leave", "left", "allow", "have", "got", "allowed", "leaving") {
			r.items[i-1].amount.dead = true
			return i
		}
	}
	return -1
}

// mostRoom, in metres, is the widest groove that a panel moves in; our estimate.
const mostRoom = 0.015

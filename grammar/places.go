package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Places that are not where the work goes, and the air outdoors.

// glueRoom makes a room where something is pressed the shop, unless how damp it is
// there, or how the wood moves, is spoken of: "25 inHg, wood 8%, pva, room 40F".
func (r *reader) glueRoom() {
	if !r.means(kindAir, "service") || r.mentions(kindAir, "rh") || r.mentions(kindAsk, "move", "move:emc_pct", "move:cup_mm") || !r.pressesHere() {
		return
	}
	for i := range r.items {
		if r.is(i, kindAir, "service") && (!r.word(i, "room") || r.word(i-1, "his", "her", "their", "a", "some", "for") || r.dampRoom(i)) {
			return
		}
	}
	for i := range r.items {
		if r.is(i, kindAir, "service") {
			r.items[i].id = "shop"
			r.hear(i)
		}
	}
}

// pressesHere reports whether a glue or what presses is told.
func (r *reader) pressesHere() bool {
	return r.within(0, len(r.items), kindGlue) >= 0 || r.mentions(kindVacuum) || r.pressureSaid() || r.mentions(kindNoun, "bar", "wedge")
}

// dampRoom: "room at 40%", "40% room" tell how damp the room at item k is.
func (r *reader) dampRoom(k int) bool {
	from, to := r.clause(k)
	for i := from; i < to; i++ {
		am := r.items[i].amount
		if am == nil || !am.is(unit.Proportion) || r.is(r.next(i), kindVacuum) || r.is(r.prev(i), kindVacuum) || r.is(r.next(i), kindAir, "mc") || r.is(r.prev(i), kindAir, "mc") || r.word(i-1, "wood") {
			continue
		}
		if i > k || i == k-1 {
			return true
		}
	}
	return false
}

// weatherTold marks what the weather is like, which is not the shop's air: "weather
// says 40F outside, 70% humidity".
func (r *reader) weatherTold() {
	if !r.says("weather", "weatherman", "forecast", "forecasts") {
		return
	}
	for k := range r.items {
		if !r.word(k, "weather", "weatherman", "forecast", "forecasts") {
			continue
		}
		from, to := r.sentence(k)
		if r.within(from, to, kindAir, "shop", "service") >= 0 {
			_, to = r.clause(k)
		}
		for i := k + 1; i < to; i++ {
			am := r.items[i].amount
			if am == nil || am.dead {
				continue
			}
			damp := (am.is(unit.Proportion) || am.bare()) && (r.is(r.next(i), kindAir, "rh") || r.is(r.prev(i), kindAir, "rh"))
			if am.is(unit.Warmth) || damp || am.bare() && i < k+4 && r.opensWithin(k, i, "says", "is", "said", "shows", "calls", "for", "at") {
				am.dead = true
				if r.is(i+1, kindVerb, string(Out)) && r.word(i+1, "out") {
					r.items[i+1].meaning = meaning{} // "forecast is 35 out"
				}
			}
		}
	}
}

// rooms are places that have a floor to measure.
var rooms = wordSet(`room kitchen house basement office bathroom hallway cottage cabin porch patio bedroom attic apartment condo sunroom mudroom veranda showroom church gallery shop garage`)

// joinery has doors that are panels: "18 cabinet doors 20 x 30".
var joinery = wordSet(`cabinet cupboard bookcase dresser wardrobe sideboard locker`)

// floorSize: "our room is 24x30", "kitchen 10 x 12": the size before item i+1, told of
// the place at item k; of "a top for the kitchen 24x60" it is the top's.
func (r *reader) floorSize(k, i int) bool {
	if r.word(k, "door", "doors") && k > 0 && r.items[k-1].amount == nil {
		from, _ := r.sentence(k)
		return !joinery[r.items[k-1].word] && r.strangerIn(from, k) // "truck is 8 ft wide, doors 36 x 80"
	}
	if w := lastWord(r.items[max(k, 0)].word); !r.is(k, kindAir, "service", "shop") || !rooms[w] {
		return false
	}
	from, _ := r.clause(k)
	return i-2 > k || r.within(from, k, kindNoun) < 0 && !r.opensWithin(max(from, k-3), k, "for", "to", "into")
}

func (r *reader) strangerIn(from, to int) bool {
	for k := from; k < to; k++ {
		if r.stranger(k) {
			return true
		}
	}
	return false
}

func lastWord(s string) string { return s[strings.LastIndexByte(s, ' ')+1:] }

package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// Warmth and height of places that are not the shop.

// airOutside: of "12F outside but 66F in the shop" the first is nobody's question.
func (r *reader) airOutside() {
	if !r.says("outside", "outdoors", "outdoor") && !r.means(kindAir, "service") {
		return
	}
	var out, others []int
	for i := range r.items {
		if !r.live(i) || !r.items[i].amount.is(unit.Warmth) && !r.items[i].amount.is(unit.Proportion) && !r.items[i].amount.bare() {
			continue
		}
		from, to := r.window(i)
		switch {
		case r.opensWithin(i+1, min(i+3, to), "outside", "outdoors", "outdoor"),
			r.items[i].amount.is(unit.Warmth) && r.housed(from, i),
			r.opensWithin(max(from, i-3), i, "outside", "outdoors", "outdoor") && r.word(i-1, "is", "its", "at", "outside", "outdoors") && !r.items[i].amount.bare():
			out = append(out, i)
		case !r.items[i].amount.bare():
			others = append(others, i)
		}
	}
	for _, i := range out {
		am := r.items[i].amount
		if am.bare() && !slices.ContainsFunc(others, func(k int) bool { return r.items[k].amount.is(unit.Warmth) }) {
			continue
		}
		if am.bare() || slices.ContainsFunc(others, func(k int) bool { return r.items[k].amount.unit.Dimension == am.unit.Dimension }) {
			am.dead = true
		}
	}
}

// housed: where glue and the shop's air are spoken of, how warm the house is does not
// matter: "house is at 68F but the shop is 55F".
func (r *reader) housed(from, i int) bool {
	k := r.within(from, i, kindAir, "service")
	return k >= 0 && in(r.items[k].word, "house", "home", "basement", "kitchen", "living room", "office", "indoors") && r.mentions(kindAir, "shop") && r.mentions(kindGlue) && !r.mentions(kindAir, "rh", "mc") && !r.percentSaid() && r.within(from, i, kindAir, "shop") < 0
}

// heightOfElse: of "the town sign says 4,500 ft but the shop is up the hill at 5,100 ft"
// the second is the shop's height.
func (r *reader) heightOfElse() {
	if !r.means(kindAir, "shop") && !r.says("but") {
		return
	}
	const least = 300 // ft: nothing in a shop is so long
	tall := func(i int) bool {
		am := r.items[i].amount
		return r.live(i) && am.unit != nil && (am.unit.Symbol == "ft" && am.float() > least || am.unit.Symbol == "m" && am.float() > least/4)
	}
	for i := range r.items {
		if !tall(i) {
			continue
		}
		from, to := r.sentence(i)
		for j := i + 1; j < to && j < i+16; j++ {
			if !tall(j) {
				continue
			}
			if k := r.within(i, j, kindAir, "shop"); k >= 0 && r.within(from, i, kindAir, "shop") < 0 || r.opensWithin(i, j, "we", "were", "us") && r.opensWithin(i, j, "but") {
				r.items[i].amount.dead = true
			}
			break
		}
	}
}

// airs binds barometers and heights, and what a unit or the shop's words say plainly.
func (r *reader) airs() {
	r.keptAir()
	r.barometers()
	r.sameByUnit()
	r.footers()
	r.mileUp()
	r.asSaid()
}

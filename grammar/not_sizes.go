package grammar

import (
	"math"

	"presshand/engine/unit"
)

// Numbers that stand where a size could and are none.

// killNoSizes marks them.
func (r *reader) killNoSizes() {
	gap := r.means(kindNoun, "gap") && r.says("between")
	panel, sled := r.means(kindNoun, "panel"), r.means(kindNoun, "sled", "caul")
	off, out, at := r.says("off"), r.says("out", "outside"), r.says("at")
	since := r.says("since", "until", "till", "til")
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.value == nil && r.items[i].amount.form != formPair {
			continue
		}
		again := r.timesAt(i) || i > 0 && r.items[i-1].brk == '('
		if off && r.offTime(i) || since && r.sinceHour(i) || again && r.sizeAgainInches(i) || gap && r.gapOnBed(i) || panel && r.perLoadOfMany(i) || sled && r.tooThick(i) {
			r.items[i].amount.dead = true
		}
		if out && r.outdoors(i+1) {
			r.items[i].amount.dead, r.items[i+1].meaning = true, meaning{}
		}
		if at {
			r.warmBag(i)
		}
	}
}

// offTime: "pump runs 4 min on and 11 off".
func (r *reader) offTime(i int) bool {
	if !r.word(i+1, "off") || !r.items[i].amount.bare() {
		return false
	}
	for k := i - 1; k > 0 && k >= i-4; k-- {
		if am := r.items[k].amount; am != nil {
			return am.is(unit.Lasting) && r.word(k+1, "on")
		}
	}
	return false
}

// sinceHour: "d4 in the bag since 5 last night".
func (r *reader) sinceHour(i int) bool {
	return r.items[i].amount.bare() && r.word(i-1, "since", "until", "till", "til") && r.is(i-2, kindNoun, "bag", "press", "frame")
}

// warmBag: in "3 hours in the bag at 55" the number tells how warm it is there, as no
// gauge shows so much.
func (r *reader) warmBag(i int) {
	const cold, hot = 32, 110
	am := r.items[i].amount
	if !r.word(i-1, "at") || r.habit.Metric || !am.bare() || am.form != formInt || am.float() <= cold || am.float() > hot || !r.is(i-2, kindNoun, "bag", "press", "frame") || r.within(0, len(r.items), kindGlue) < 0 || r.is(r.next(i), kindAttr) || i+1 < len(r.items) && r.items[i+1].amount != nil {
		return
	}
	u := unit.DegF
	am.unit, am.unitRaw = &u, "f"
}

// sizeAgainInches: in "610 x 1220 mm (24x48)" the brackets say the size again.
func (r *reader) sizeAgainInches(i int) bool {
	const near = 0.02
	if i < 4 || r.items[i-1].brk != '(' {
		if i < 1 || r.items[i].amount.link != linkTimes || r.items[i-1].amount == nil || !r.items[i-1].amount.dead {
			return false
		}
		return i > 1 && r.items[i-2].brk == '('
	}
	if i+2 >= len(r.items) || r.items[i+1].amount == nil || r.items[i+1].amount.link != linkTimes || r.items[i+2].brk != ')' || !r.items[i].amount.bare() || !r.items[i+1].amount.bare() {
		return false
	}
	a, b := r.items[i-3].amount, r.items[i-2].amount
	if a == nil || b == nil || b.link != linkTimes || b.unit == nil || b.unit.Dimension != unit.Distance || a.value == nil || b.value == nil || r.items[i+1].amount.value == nil {
		return false
	}
	other := unit.Inch
	if b.unit.Symbol == "in" {
		other = unit.MM
	}
	same := func(was, now *amount) bool {
		w, n := b.unit.SI(was.float()), other.SI(now.float())
		return math.Abs(w-n) <= near*w
	}
	return same(a, r.items[i].amount) && same(b, r.items[i+1].amount)
}

// gapOnBed: "22 panels on a 49x97 bed, gap of an inch between" opens no joint.
func (r *reader) gapOnBed(i int) bool {
	from, to := r.clause(i)
	gap := r.within(from, to, kindNoun, "gap")
	return gap >= 0 && r.opensWithin(from, to, "between") && r.mentions(kindNoun, "panel") && r.mentions(kindNoun, "bed", "bag", "frame", "press") && !r.mentions(kindNoun, "strip", "joint", "bar", "fence")
}

// perLoadOfMany: "3 loads, 2 panels each" counts the panels of a load.
func (r *reader) perLoadOfMany(i int) bool {
	if !r.is(i+1, kindNoun, "panel") || !r.is(i+2, kindRole, "in a row") && !r.word(i+2, "each", "apiece") || i < 3 || !r.isBreak(i-1) {
		return false
	}
	return r.items[i-3].amount != nil && (r.word(i-2, "loads", "batches") || r.is(i-2, kindAsk) && r.items[i-2].word == "loads")
}

// tooThick: in "bare melamine sled, 26" the number that stands alone is of something else.
func (r *reader) tooThick(i int) bool {
	const thickest = 8
	am := r.items[i].amount
	return r.is(i-2, kindNoun, "sled", "caul") && !r.habit.Metric && am.bare() && am.form == formInt && am.float() >= thickest && r.isBreak(i-1) && r.isBreak(i+1)
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Degrees that are not those of the shop: of a blanket, of the wood or the glue, of the
// label's own figures.

// killWarmElsewhere leaves such degrees unread.
func (r *reader) killWarmElsewhere() {
	r.warmByHour()
	if r.within(0, len(r.items), kindGlue) < 0 && !r.mentions(kindRole, "label", "open", "closed") && !r.mentions(kindAir, "temp") {
		return
	}
	for i := range r.items {
		if !r.live(i) || !r.couldBeWarm(i) {
			continue
		}
		switch {
		case r.heatedTo(i), r.partsIndoors(i), r.gelsAtWarmth(i), r.labelsOwn(i) && r.shopWarmBesides(i), (r.warmOfPart(i) || r.timeAtWarmth(i)) && r.shopWarmBesides(i) && !r.toldTwice(i):
			r.items[i].amount.dead = true
		}
	}
}

// toldTwice: "uf at 20 °C … 20 °C in the shop" are one figure.
func (r *reader) toldTwice(i int) bool {
	am := r.items[i].amount
	for k := range r.items {
		if k != i && r.live(k) && am.is(unit.Warmth) && r.items[k].amount.unit != nil && *r.items[k].amount.unit == *am.unit && r.items[k].amount.equals(am.value) {
			return !r.timeAtWarmth(i) && !r.timeAtWarmth(k)
		}
	}
	return false
}

// warmByHour: in "the shop's 48 but it should hit 56 by ten" an hour follows, and no size.
func (r *reader) warmByHour() {
	const last = 12
	for i := 2; i < len(r.items); i++ {
		am := r.items[i].amount
		if am == nil || am.link != linkTimes || !am.bare() || !r.free(i-1) || !r.isBreak(i+1) && !r.is(i+1, kindRole, "am", "pm") || !r.word(i-2, "hit", "hits", "reach", "reaches", "be", "to", "at") {
			continue
		}
		n, whole := am.whole()
		if from, _ := r.clause(i); r.within(from, i, kindNoun) >= 0 || r.opensWithin(from, i, "planed", "cut", "ripped", "milled") {
			continue // "the shop is 60. panels to be 48 by 12"
		}
		if !whole || n > last || !r.items[i-1].amount.bare() || r.items[i-1].amount.link != linkNone || !r.mentions(kindAir, "shop", "temp") && !r.wordIn("heater", "heat", "stove") {
			continue
		}
		low, high := r.bareWarmth()
		if v := r.items[i-1].amount.float(); v >= low && v <= high && v > float64(n) {
			am.link = linkNone
			am.dead, r.items[i-1].amount.dead = true, true
		}
	}
}

// couldBeWarm reports whether the number at item i may be degrees.
func (r *reader) couldBeWarm(i int) bool {
	am := r.items[i].amount
	if am.is(unit.Warmth) {
		return true
	}
	if !am.bare() || am.form != formInt {
		return false
	}
	if low, high := r.bareWarmth(); am.float() < low || am.float() > high {
		return false
	}
	n := r.next(i)
	return !r.is(n, kindAttr) && !r.is(n, kindUnit) && !(n == i+1 && r.is(n, kindNoun)) && !(i+1 < len(r.items) && r.items[i+1].amount != nil)
}

// heatedTo: "heat the panel to 110 with the blanket", "warm the boards to 80".
func (r *reader) heatedTo(i int) bool {
	if !r.word(i-1, "to", "at") {
		return false
	}
	from, _ := r.clause(i)
	heat := -1
	for k := from; k < i; k++ {
		if r.word(k, "heat", "heats", "heated", "heating", "warm", "warms", "warmed", "warming", "bake", "baked", "toast", "cook") {
			heat = k
		}
	}
	return heat >= 0 && r.within(heat, i, kindNoun) >= 0 && r.within(from, i, kindAir, "shop") < 0
}

// partsIndoors: "I've had the boards inside at 20".
func (r *reader) partsIndoors(i int) bool {
	if !r.behindAt(i) {
		return false
	}
	from, to := r.clause(i)
	return r.namesPart(from, i) && r.opensWithin(from, to, "inside", "indoors", "house", "kitchen", "home", "van", "truck", "car", "fridge", "cupboard") && r.mentions(kindGlue) && !r.mentions(kindAir, "rh", "mc")
}

// warmOfPart: "the glue is at 58 degrees", "the wood is at 70".
func (r *reader) warmOfPart(i int) bool {
	if !r.behindAt(i) && !r.word(i-1, "is", "are", "its", "theyre") {
		return false
	}
	from, _ := r.clause(i)
	if k := r.startBehindAnd(from, i); k > from {
		from = k
	}
	return r.namesPart(from, i) && r.within(from, i, kindAir, "shop") < 0 && r.amountsIn(from, i) == 0
}

// startBehindAnd is where the last "and" or "but" of [from, to) ends.
func (r *reader) startBehindAnd(from, to int) int {
	for k := to - 1; k > from; k-- {
		if r.word(k, "and", "but") {
			return k + 1
		}
	}
	return from
}

// behindAt reports whether an "at" stands right before the number at item i.
func (r *reader) behindAt(i int) bool { return r.word(i-1, "at") || r.items[i].amount.link == linkAt }

// namesPart reports whether glue or wood is named in [from, to).
func (r *reader) namesPart(from, to int) bool {
	return r.within(from, to, kindNoun, "strip", "panel", "glue") >= 0 || r.within(from, to, kindGlue) >= 0 || r.opensWithin(from, to, "wood", "timber", "glue", "stock", "lumber", "resin")
}

// timeAtWarmth: "20 min at 25C", "8 hours at 70", "12 min open at 70" tell at which warmth
// a time holds.
func (r *reader) timeAtWarmth(i int) bool { return r.timeAt(i) >= 0 }

// gelsAtWarmth: "gel time 20 min at 25 C", "pot life of 30 min at 20 C" are of a glue in its
// pot, and no warmth of the shop.
func (r *reader) gelsAtWarmth(i int) bool {
	k := r.timeAt(i) - 1
	for r.word(k, "time", "is", "of", "in", "about", "life") {
		k--
	}
	return k >= 0 && (r.word(k, "gel", "gels", "geltime", "pot", "potlife") || r.is(k, kindRole, "closed") && r.word(k, "pot life"))
}

// timeAt is the item of the time that holds at the warmth at item i; -1 where none does.
func (r *reader) timeAt(i int) int {
	if !r.behindAt(i) {
		return -1
	}
	k := i - 1
	for r.word(k, "at", "time", "in", "the") || r.is(k, kindRole, "open", "closed", "clamp") || r.is(k, kindNoun, "press") {
		k--
	}
	if k >= 0 && r.items[k].amount != nil && r.items[k].amount.is(unit.Lasting) {
		return k
	}
	return -1
}

// labelsOwn: "24 h at 20 degrees according to the can", "20 °C on the tin" tell for which
// warmth a figure of the label holds.
func (r *reader) labelsOwn(i int) bool {
	if !r.items[i].amount.is(unit.Warmth) {
		return false
	}
	k := i + 1
	for r.word(k, "according", "to", "on", "per", "by", "says", "the", "say", "from") || r.is(k, kindSay) {
		k++
	}
	return k > i+1 && r.is(k, kindRole, "label")
}

// shopAlone: "24 h at 20 °C on the can, our shop 16".
func (r *reader) shopAlone(i int) bool {
	if !r.habit.Metric {
		return false
	}
	k := i - 1
	if r.word(k, "is", "at", "its", "only", "about") {
		k--
	}
	return r.is(k, kindAir, "shop") && !r.word(k, "here", "in here") && r.isBreak(i+1) && r.couldBeWarm(i) && r.items[i].amount.float() >= 5 && r.within(0, len(r.items), kindGlue) >= 0 && r.items[i].amount.link == linkNone && !r.liveOf(unit.Warmth)
}

// liveOf reports whether the message has an amount of the dimension that nothing set aside.
func (r *reader) liveOf(d unit.Dimension) bool {
	for k := range r.items {
		if r.live(k) && r.items[k].amount.is(d) {
			return true
		}
	}
	return false
}

// shopWarmBesides reports whether how warm the shop is stands elsewhere than at item i.
func (r *reader) shopWarmBesides(i int) bool {
	for k := range r.items {
		if k == i || !r.live(k) || !r.couldBeWarm(k) || r.timeAtWarmth(k) {
			continue
		}
		from, to := r.clause(k)
		from = r.startBehindAnd(from, k)
		if (r.within(from, to, kindAir, "shop") >= 0 || r.weAreAt(k)) && !r.namesPart(from, k) {
			return true
		}
	}
	return false
}

// weAreAt: "we're at 17", "were at 62 so".
func (r *reader) weAreAt(i int) bool {
	k := i - 1
	for r.word(k, "at", "about", "around", "only", "down", "to", "like") {
		k--
	}
	return k < i-1 && (r.word(k, "were", "wed") || r.word(k, "are", "be") && r.word(k-1, "we", "wed")) && (r.isBreak(i+1) || r.word(i+1, "so", "in", "now", "today", "by", "and", "but"))
}

// weAreWarm: "yellow glue, we'd be at 50 by the time the stove is lit".
func (r *reader) weAreWarm(i int) bool {
	const leastF = 40 // a gauge shows less
	return r.weAreAt(i) && (r.habit.Metric || r.items[i].amount.float() >= leastF) && (r.topic == Glue || r.mentions(kindRole, "label", "open", "closed") || r.mentions(kindGlue) || r.weAreOnly(i)) && !r.mentions(kindVacuum) && !r.mentions(kindNoun, "bar", "pump", "leak")
}

// warmOfDay: "temperature in the hall is 12 in the morning and 18 in the afternoon" tells
// no hours.
func (r *reader) warmOfDay(i int) bool {
	k := r.suffixAt(i)
	if k == i || !strings.HasPrefix(r.items[k].word, "in the ") || !r.couldBeWarm(i) {
		return false
	}
	from, _ := r.clause(i)
	return r.word(i-1, "is", "was", "its", "about", "around", "only", "and", "but") && r.within(from, i, kindAir, "temp", "shop") >= 0 && r.within(from, i, kindRole, "start", "deadline", "hours") < 0
}

// lowestTold: "the tub says 55 is the lowest you can go", "minimum 10 on the bottle".
func (r *reader) lowestTold(i int) bool {
	if !r.mentions(kindRole, "label") || !r.couldBeWarm(i) {
		return false
	}
	_, to := r.clause(i)
	if r.word(i+1, "is", "was") && r.word(i+2, "the") && r.word(i+3, "lowest", "coldest", "least", "bottom", "limit") {
		return r.within(0, i, kindRole, "label") >= 0
	}
	return r.is(i-1, kindRole, "min") && r.word(i+1, "on") && r.within(i, to, kindRole, "label") >= 0 && !r.mentions(kindRole, "open", "closed", "clamp")
}

// asksHowLong: beside "how long in the press" a label's least may be of minutes.
func (r *reader) asksHowLong() bool {
	return r.asksPressFor() || r.mentions(kindAsk, "glue:press_time_min") || r.opens("how") >= 0 && r.mentions(kindAttr, "long")
}

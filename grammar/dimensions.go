package grammar

import (
	"presshand/engine/unit"
)

// forces reads what a wedge is driven with.
func (r *reader) forces() {
	for i := range r.items {
		if !r.free(i) {
			continue
		}
		am := r.items[i].amount
		if am.is(unit.Weight) && (am.unit.Symbol == "lb" || am.unit.Symbol == "kg") && r.drives() {
			u := unit.PoundF
			if am.unit.Symbol == "kg" {
				u = unit.KGF
			}
			am.unit = &u
		}
		if am.is(unit.Pushing) && r.drives() {
			r.bind(i, unit.WedgeForce)
		}
	}
}

// drives reports whether the message speaks of driving a wedge.
func (r *reader) drives() bool {
	return r.mentions(kindNoun, "wedge") || r.mentions(kindRole, "drive") || r.has(unit.WedgeRatio) || r.habit.Follows && r.wordIn("lean", "harder", "shove", "thump", "leaning")
}

// service reports whether the air or the humidity at item i is where the panel
// will live, not the shop's.
func (r *reader) service(i int) bool {
	from, to := r.clause(i)
	if j := r.nearestAir(i, from, to); j >= 0 {
		return r.items[j].id == "service"
	}
	from, to = r.sentence(i)
	if j := r.nearestAir(i, from, to); j >= 0 {
		return r.items[j].id == "service"
	}
	return r.thenAir(i)
}

// thenAir: "8% when pressed, then 45% rh and 20°C" goes on to where the work lives.
func (r *reader) thenAir(i int) bool {
	from, to := r.clause(i)
	for k := from; k < i; k++ {
		if am := r.items[k].amount; am != nil && am.is(unit.Proportion) && r.passesTo(k) {
			return true // "7% going to 55% rh 72F"
		}
	}
	return r.word(from, "then", "later", "afterwards", "after") && r.within(from, to, kindAir, "rh") >= 0
}

// livesIn: "it will live in a shed" makes the shed a place to live in, and "going to
// arizona, 20%" whatever place it goes to.
func (r *reader) livesIn() {
	if !r.says("to") && !r.means(kindAir, "service") {
		return
	}
	for i := range r.items {
		if r.goesFarOff(i) {
			r.items[i+1].meaning = meaning{kind: kindAir, id: "service"}
			r.hear(i + 1)
		}
		if !r.is(i, kindAir, "service") || !in(r.items[i].word, "live", "lives", "lives in", "live in", "living in", "live at", "lives at", "goes to", "ends up", "it goes in") {
			continue
		}
		j := i + 1
		for j < len(r.items) && r.word(j, "a", "an", "the", "my", "his", "her", "their", "in", "out", "old") {
			j++
		}
		if r.is(j, kindAir, "shop") {
			r.items[j].id = "service"
			r.hear(j)
		}
	}
}

// goesFarOff: "to arizona, 20%" of a place that has no other meaning, with the humidity there.
func (r *reader) goesFarOff(i int) bool {
	if !r.word(i, "to") || !r.word(i-1, "going", "goes", "shipping", "ships", "moving", "moves", "off", "sent") || !r.unknown(i+1) {
		return false
	}
	k := i + 2
	for r.word(k, "at", "its", "around", "about", "where", "is", "there", "with") || r.items[min(k, len(r.items)-1)].brk == ',' && k < len(r.items) {
		k++
	}
	return r.free(k) && r.items[k].amount.is(unit.Proportion) && (r.isBreak(k+1) || r.is(k+1, kindAir, "rh") || r.word(k+1, "there"))
}

// nearestAir is the nearest word of place within bounds, the left one first.
func (r *reader) nearestAir(i, from, to int) int {
	for d := 1; i-d >= from || i+d < to; d++ {
		if i-d >= from && r.is(i-d, kindAir, "service", "shop") {
			return i - d
		}
		if i+d < to && r.is(i+d, kindAir, "service", "shop") {
			return i + d
		}
	}
	return -1
}

// window is the stretch around item i that no other amount or break cuts off.
func (r *reader) window(i int) (from, to int) {
	for from = i; from > 0 && !r.isBreak(from-1) && r.items[from-1].amount == nil; from-- {
	}
	for to = i + 1; to < len(r.items) && !r.isBreak(to) && r.items[to].amount == nil; to++ {
	}
	return from, to
}

// plainUnits reads the amounts whose unit says what they are.
func (r *reader) plainUnits() {
	for i := range r.items {
		if !r.free(i) || r.items[i].amount.unit == nil {
			continue
		}
		switch r.items[i].amount.unit.Dimension {
		case unit.Pumping:
			switch {
			case r.leaks(i):
				r.items[i].amount.dead = true
			case r.items[i].amount.link == linkOr && r.free(i-1):
				r.choice(i-1, i, unit.PumpSpeed) // "10 or 16 m³/h?"
			default:
				r.bind(i, unit.PumpSpeed)
			}
		case unit.Content:
			if r.pumping() || r.mentions(kindNoun, "bag", "frame", "reservoir") || len(r.items) < 8 && r.within(0, len(r.items), kindGlue) < 0 || r.within(0, len(r.items), kindGlue) < 0 && r.mentions(kindNoun, "press", "leak") || r.word(r.next(i), "air", "volume") || r.word(i+1, "of") && r.word(i+2, "air", "free") {
				r.bind(i, unit.PressVolume)
			}
		case unit.Spreading:
			r.bind(i, unit.LabelSpread)
		case unit.Distance:
			r.height(i)
		}
	}
	r.bareHeights()
	r.frictions()
	r.pumpsTogether()
}

// leaks reports whether the flow at item i is that of a leak, which is told as a loss
// of vacuum: "with a 1 cfm leak".
func (r *reader) leaks(i int) bool {
	n := r.next(i)
	if r.word(n, "of", "in", "worth") {
		n = r.next(n)
	}
	leaks := func(k int) bool {
		return r.is(k, kindNoun, "leak") || r.word(k, "leakage", "leaking", "leaks", "leaky", "losses", "loss")
	}
	return leaks(r.prev(i)) || leaks(n) && !r.word(i+1, "and", "with")
}

// pumping reports whether a pump is spoken of.
func (r *reader) pumping() bool {
	if r.mentions(kindNoun, "pump") || r.mentions(kindAsk, "pump", "pump:hold_s", "pump:ultimate_vacuum_kpa", "pump:solve=pump_lps", "pump:solve=press_volume_l", "pump:solve=leak_kpa_per_min") {
		return true
	}
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.is(unit.Pumping) {
			return true
		}
	}
	return false
}

// height reads the shop's height above the sea: more metres or feet than any
// work has, or a word for it.
func (r *reader) height(i int) {
	if r.means(kindAir, "height") && r.is(r.next(i), kindAir, "height") && r.word(i+1, "below", "under") {
		r.items[i].amount.minus = true
	}
	am := r.items[i].amount
	sym := am.unit.Symbol
	if sym != "m" && sym != "ft" {
		return
	}
	from, to := r.clause(i)
	const longest = 60 // m: nothing on a bed is so long
	if n := r.next(i); n >= 0 && n < r.endOf(i) && (r.is(n, kindAttr) && r.items[n].id != "tall" || r.is(n, kindNoun) && (r.size(i) < longest || n == i+1 && !r.is(n, kindNoun, "face", "leak"))) {
		return
	}
	said := r.within(from, to, kindAir, "height") >= 0 || i > 1 && r.items[i-1].brk == '-' && r.is(i-2, kindAir, "height")
	said = said || r.word(i+1, "above", "over") && (r.word(i+2, "sea") || r.word(i+2, "the") && r.word(i+3, "sea"))
	if said || sym == "m" && am.float() > 60 || sym == "ft" && am.float() > 300 {
		r.bind(i, unit.Altitude)
	}
}

// leastHeight is what "opened up at one end" is below and "we're up at 3000" above.
const leastHeight = 50

// bareHeights reads "elevation 5280" in the shop's habit.
func (r *reader) bareHeights() {
	if !r.means(kindAir, "height") {
		return
	}
	for i := range r.items {
		if !r.free(i) || !r.items[i].amount.bare() {
			continue
		}
		if j := r.prev(i); r.is(j, kindAir, "height") && !(r.word(j, "up at") && r.items[i].amount.float() < leastHeight) {
			u := unit.Foot
			if r.habit.Metric {
				u = unit.Metre
			}
			r.items[i].amount.unit = &u
			r.bind(i, unit.Altitude)
		}
	}
}

// frictions reads a friction that was measured: by the word beside it, or behind that in
// its sentence ("friction we pulled with a scale came to .22"), or anywhere.
func (r *reader) frictions() {
	at := r.within(0, len(r.items), kindRole, "friction")
	if at < 0 {
		return
	}
	from, to := r.sentence(at)
	for i := range r.items {
		if p, n := r.prev(i), r.next(i); r.free(i) && r.items[i].amount.bare() && (r.is(p, kindRole, "friction") || r.is(n, kindRole, "friction")) {
			r.bind(i, unit.FrictionStated)
		}
	}
	for _, span := range [...][2]int{{at, to}, {from, at}, {0, len(r.items)}} {
		for i := span[0]; i < span[1] && !r.has(unit.FrictionStated); i++ {
			if r.free(i) && r.items[i].amount.bare() && r.items[i].amount.form == formDecimal && r.items[i].amount.float() < 1 && !r.inRange(i) && !r.is(i+1, kindNoun) && !r.is(r.next(i), kindAttr) {
				r.bind(i, unit.FrictionStated)
			}
		}
	}
}

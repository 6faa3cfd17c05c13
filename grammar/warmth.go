package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// temperatures reads degrees: of the shop, of where the panel goes, or the
// lowest that a label allows.
func (r *reader) temperatures() {
	for i := range r.items {
		if !r.free(i) {
			continue
		}
		am := r.items[i].amount
		if am.bare() && !r.warmBare(i) {
			continue
		}
		if am.unit != nil && am.unit.Dimension != unit.Warmth {
			continue
		}
		if r.isAngle(i) {
			am.dead = true
			continue
		}
		r.bind(i, r.temperatureField(i))
	}
}

// isAngle: "wedge 5 degrees", "the bar leans in about 3 degrees", "2° out of square".
func (r *reader) isAngle(i int) bool {
	raw := r.items[i].amount.unitRaw
	if !strings.HasPrefix(raw, "deg") && raw != "°" {
		return false
	}
	if r.word(i+1, "angle", "angles", "spring", "bevel", "bevels", "chamfer", "mitre", "miter", "mitres", "miters", "mitred", "mitered", "cut", "cuts", "turn", "bend", "bends", "corner", "corners", "slope", "pitch", "scarf", "scarfs", "lean", "tilt", "twist", "skew") || r.word(i+1, "off", "out", "from") && r.word(i+2, "square", "plumb", "true", "level", "vertical", "upright", "parallel", "of") {
		return true
	}
	from, to := r.clause(i)
	if r.within(from, to, kindAir) >= 0 {
		return false
	}
	return r.within(from, to, kindNoun, "wedge") >= 0 || r.opensWithin(from, to, "angle", "angled", "lean", "leans", "leaning", "leant", "tilt", "tilts", "tilted", "tilting", "tips", "tipped", "tipping", "bevel", "beveled", "bevelled", "slope", "slopes", "sloped", "sloping", "splay", "splayed", "skew", "skewed", "skews", "twist", "twisted", "rotated", "canted", "kicks", "kicked", "rolls", "rolled", "racked")
}

func (r *reader) temperatureField(i int) unit.Field {
	from, to := r.window(i)
	if r.lowestTold(i) || r.labelLeast(i) {
		return unit.LabelMinTemp
	}
	if (r.within(from, i, kindRole, "min") >= 0 || r.word(i-1, "min") || r.is(i+1, kindRole, "min") || r.word(i+1, "min")) && r.mentions(kindRole, "label") {
		return unit.LabelMinTemp
	}
	if k := r.within(from, to, kindRole, "mintemp"); k >= 0 && (strings.Contains(r.items[k].word, "use") || strings.Contains(r.items[k].word, "temp") || r.mentions(kindRole, "label") || r.mentions(kindRole, "open", "closed", "clamp", "spread")) {
		return unit.LabelMinTemp
	}
	if (r.service(i) || r.besideServiceAir(i) || r.topic == Move && r.inHumidity()) && !r.gluedAt() && !r.otherIsTheirs(i) {
		return unit.ServiceTemp
	}
	return unit.ShopTemp
}

// otherIsTheirs: of "21 C, house at 40% rh 20 C" the temperature that stands in a
// clause with the place where the panel goes is that place's, and not the other.
func (r *reader) otherIsTheirs(i int) bool {
	placed := func(k int) bool {
		from, to := r.clause(k)
		return r.within(from, to, kindAir, "service") >= 0
	}
	if placed(i) {
		return false
	}
	for k := range r.items {
		if am := r.items[k].amount; k != i && am != nil && am.is(unit.Warmth) && placed(k) {
			return true
		}
	}
	return false
}

// gluedAt: where a glue is named and nothing is said of how the wood moves, it is
// warm or cold in the shop, whomever the panels are for.
func (r *reader) gluedAt() bool {
	return (r.topic == Glue || r.topic == Schedule || r.within(0, len(r.items), kindGlue) >= 0) && r.topic != Move && !r.mentions(kindAir, "rh", "mc") && !r.percentSaid() && !r.mentions(kindNoun, "face")
}

// besideServiceAir: of "house 40% rh. 70F" and "goes into 30% rh, 21C" both are of
// where the panel goes.
func (r *reader) besideServiceAir(i int) bool {
	from, to := r.sentence(i)
	if r.within(from, to, kindAir, "shop") >= 0 || r.mentions(kindAir, "shop") && from == 0 {
		return false
	}
	if r.goesInto(from, i) || r.later(i) {
		return true
	}
	alone := to-from == 1 || to-from == 2
	f, t := r.sentence(from - 2)
	return alone && from > 1 && r.within(f, t, kindAir, "service") >= 0 && r.within(f, t, kindAir, "rh") >= 0
}

// later: "glued at 9 %, later 35 % and 22 degrees".
func (r *reader) later(i int) bool {
	from, to := r.clause(i)
	return r.opensWithin(from, to, "later", "afterwards", "after") && (r.topic == Move || r.mentions(kindNoun, "core", "panel", "face")) && !r.mentions(kindAir, "shop") && !r.mentions(kindNoun, "bar")
}

// goesInto reports whether the panel is said to go into the air of [from, to).
func (r *reader) goesInto(from, to int) bool {
	for k := max(from, 1); k < to; k++ {
		if r.word(k, "into", "to") && r.word(k-1, "goes", "going", "moves", "moving", "headed", "off") && k+1 < len(r.items) && r.items[k+1].amount != nil && r.items[k+1].amount.is(unit.Proportion) {
			return true
		}
	}
	return false
}

// onThermometer: "the thermometer on the wall is at 63", "they turned the heat up,
// its up to 73 now".
func (r *reader) onThermometer(i int) bool {
	from, to := r.sentence(i)
	if r.is(r.next(i), kindNoun) || r.is(r.next(i), kindAttr) || r.items[i].amount.float() < 40 && !r.habit.Metric && r.is(r.prev(i), kindNoun) || r.word(i+1, "outside", "outdoors") || !r.word(i-1, "at", "to", "is", "its", "says", "on") && !r.is(i-1, kindSay) {
		return false
	}
	for j := from; j < to; j++ {
		if r.word(j, "thermometer", "thermostat", "the heat", "heating") {
			return true
		}
	}
	return false
}

// besideHumidity: of "shop air is 41% and 68" and "the house runs 60% at 75" the
// second number is how warm it is.
func (r *reader) besideHumidity(i int) bool {
	am := r.items[i].amount
	if low, high := 40.0, 110.0; !r.habit.Metric && (am.float() < low || am.float() > high) {
		return false
	}
	j := i - 1
	if j >= 0 && r.items[j].brk == ',' && r.is(j-1, kindAir, "rh") && r.isBreak(i+1) && (r.habit.Metric && am.float() >= 5 && am.float() <= 40 || !r.habit.Metric && am.float() >= 50 && am.float() <= 95) && am.form == formInt && am.link == linkNone && !r.said(unit.Warmth) {
		from, _ := r.sentence(i)
		return am.bare() && r.within(from, i, kindAir, "shop", "service") >= 0 // "lake house 70% rh, 72"
	}
	for r.word(j, "and", "at", "&", "rh") || r.is(j, kindAir, "rh") || j >= 0 && r.items[j].brk == '/' {
		j--
	}
	if j < 0 || j == i-1 && am.link != linkAt || r.items[j].amount == nil || !r.items[j].amount.is(unit.Proportion) || !am.bare() || r.size(i) == 0 && am.value == nil {
		return false
	}
	from, to := r.clause(i)
	if am.link == linkAt {
		from, to = r.sentence(i) // "a dry house, thirty percent at seventy two"
	}
	return r.within(from, to, kindAir, "shop", "service") >= 0
}

// minTempTold: "jug says good down to 50", "min temp 50 and the shop is 47", "min temp on
// the label 10".
func (r *reader) minTempTold(i int) bool {
	if !r.is(i-1, kindRole, "label", "mintemp") || !r.items[i].amount.bare() || r.next(i) >= 0 && !r.word(i+1, "and", "but", "on", "so") {
		return false
	}
	from, _ := r.clause(i)
	if r.is(i-1, kindRole, "label") {
		return r.within(from, i, kindRole, "mintemp") >= 0
	}
	return r.is(i-1, kindRole, "mintemp") && (r.mentions(kindRole, "label") || strings.Contains(r.items[i-1].word, "temp"))
}

// warmOfLabel reports whether the number at item i is told beside what a label says of how
// warm it has to be.
func (r *reader) warmOfLabel(i int) bool {
	n := r.next(i)
	return r.word(i-1, "have", "got") && r.mentions(kindRole, "label") && r.has(unit.LabelMinTemp) && r.isBreak(i+1) || // "label says min 8 degrees. I have 9"
		r.minTempTold(i) || r.labelLeast(i) ||
		r.is(i+1, kindRole, "min") && in(r.items[i+1].word, "minimum", "min") && r.mentions(kindRole, "label") && n == i+1 && r.next(n) < 0 || // "tub says 15 minimum"
		r.leastTold(i) || r.lowestTold(i)
}

// warmBare: "72 in here", "shop's 62", "house at 35% rh 70".
func (r *reader) warmBare(i int) bool {
	am := r.items[i].amount
	v := am.float()
	low, high := r.bareWarmth()
	if v < low || v > high || am.form == formFraction || am.form == formMixed || am.form == formPair || am.form == formQuarters || am.link == linkTimes {
		return false
	}
	n, p := r.next(i), r.prev(i)
	if r.is(p, kindVacuum, "pull") && strings.HasSuffix(r.items[p].word, " at") && r.is(r.prev(p), kindAir, "shop", "temp") {
		p = r.prev(p) // "shop sits at 68"
	}
	if r.means(kindRole, "label", "mintemp") && r.warmOfLabel(i) {
		return true
	}
	if r.means(kindAir, "temp", "shop") && (r.afterHeat(i) || r.shopSits(i) || r.warmOfDay(i) || r.shopAlone(i)) {
		return true
	}
	if v >= 50 && r.warmAtGlue(i) || r.word(i-1, "its", "is") && r.whenIts(i) || r.says("were", "wed", "are", "be") && r.weAreWarm(i) {
		return true
	}
	if r.is(n, kindNoun) || r.is(n, kindAttr) || r.is(p, kindVacuum) || i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link != linkNone {
		return false
	}
	if r.besideHumidity(i) || r.onThermometer(i) {
		return true
	}
	if r.is(i+1, kindAir, "shop") && (r.items[i+1].word == "in here" || r.items[i+1].word == "out here" || strings.HasPrefix(r.items[i+1].word, "in the")) || r.word(i+1, "in") && r.is(r.next(i+1), kindAir, "shop") {
		return true
	}
	if !r.habit.Metric && v >= 40 && v <= 110 && am.bare() && r.word(i-1, "its", "is", "about", "only", "around", "just") && r.itsAlone(i) && (r.mentions(kindRole, "label") || r.mentions(kindGlue)) && !r.said(unit.Warmth) {
		return true
	}
	if r.topic == Glue && r.word(i+1, "too") && r.is(i+2, kindAsk) || r.is(i+1, kindAsk, "glue") && in(r.items[i+1].word, "too cold", "warm enough", "too warm", "too hot") {
		return true
	}
	if r.word(i-1, "at") && r.is(i-2, kindGlue) && (v >= 40 && v <= 110 && !r.habit.Metric || r.habit.Metric && v <= 40 && n < 0) && !r.said(unit.Warmth) {
		return true // "pva at 65"
	}
	if r.topic == Glue && r.word(i-1, "at") && (n < 0 || r.is(n, kindRole, "start") || r.word(n, "by", "ok", "okay", "fine", "good", "alright") || r.is(n, kindAsk)) && v >= 40 && v <= 110 && !r.habit.Metric && !r.said(unit.Warmth) {
		return true
	}
	if r.is(p, kindAir, "rh") && p > 0 && r.items[p-1].amount != nil && r.near(p, i) {
		return true
	}
	if r.is(p, kindAir, "temp", "shop") && (r.items[p].id == "temp" || r.near(p, i)) {
		return true
	}
	return r.is(i+1, kindAir, "temp")
}

// bareWarmth are the degrees that a bare number can be.
func (r *reader) bareWarmth() (low, high float64) {
	if r.habit.Metric {
		return -10, 45
	}
	return 20, 120
}

// whenIts: "tomorrow when it's 19" tells how warm it is, no hour of a day.
func (r *reader) whenIts(i int) bool {
	if !r.word(i-1, "its", "is") {
		return false
	}
	am := r.items[i].amount
	low, high := r.bareWarmth()
	if !am.bare() || am.form == formPair || am.float() < low || am.float() > high || r.is(i+1, kindRole, "am", "pm") || !r.isBreak(i+1) && !r.word(i+1, "out", "in", "degrees") {
		return false
	}
	when := r.word(i-2, "when", "while", "once") || r.word(i-2, "it") && r.word(i-3, "when", "while", "once")
	return when && (r.habit.Follows || r.mentions(kindAir, "shop", "temp"))
}

// shopSits: "shed's sitting on 11 this arvo", "shop is always 68".
func (r *reader) shopSits(i int) bool {
	if !r.means(kindAir, "shop") {
		return false
	}
	j := i - 1
	if r.word(j, "always", "usually", "normally", "typically") && r.word(j-1, "is", "stays", "runs") && r.is(j-2, kindAir, "shop") {
		return r.isBreak(i+1) || r.word(i+1, "and", "so", "but", "all")
	}
	for r.word(j, "on", "at", "about", "around", "only", "just", "down", "up", "to", "steady", "barely") {
		j--
	}
	return r.word(j, "sitting", "sits", "sat", "hovering", "hovers", "stuck") && r.is(j-1, kindAir, "shop") && !r.is(r.next(i), kindNoun) && !r.is(r.next(i), kindAttr)
}

// leastTold: "tin says minimum 5" is of degrees where a number so low, or so high, is
// no time in the press.
func (r *reader) leastTold(i int) bool {
	low, high := 35.0, 60.0
	if r.habit.Metric {
		low, high = 2, 15
	}
	v := r.items[i].amount.float()
	return r.is(i-1, kindRole, "min") && r.word(i-1, "minimum", "min") && v >= low && v <= high && r.mentions(kindRole, "label") && !r.asksHowLong() && (r.amountsIn(0, len(r.items)) == 1 || r.labelled(i) && !r.said(unit.Lasting)) && r.next(i) < 0 && !r.mentions(kindRole, "open", "closed", "clamp")
}

// afterHeat: "heater's on, 17 now" and "it's hot in here, like 90" have the degrees in
// a clause of their own behind one of warmth.
func (r *reader) afterHeat(i int) bool {
	if !r.means(kindAir, "temp") {
		return false
	}
	from, to := r.clause(i)
	if from < 2 || r.items[from-1].brk == '?' {
		return false
	}
	for k := from; k < to; k++ {
		if k != i && !r.idle(k) && !r.word(k, "now", "today", "already", "like", "about", "up", "down", "to", "only", "still") && !r.is(k, kindVacuum, "pull") && !r.is(k, kindRole, "max") {
			return false
		}
	}
	f, t := r.clause(from - 2)
	return r.within(f, t, kindAir, "temp") >= 0 && r.amountsIn(f, t) == 0 && r.within(f, t, kindNoun) < 0
}

// itsAlone: "label says 20 min closed. its 62" has the number in a clause of its own.
func (r *reader) itsAlone(i int) bool {
	from, to := r.clause(i)
	for k := from; k < to; k++ {
		if k != i && !r.idle(k) {
			return false
		}
	}
	return r.opensWithin(from, i, "its", "is")
}

// near reports whether only "is", "at" and the like stand between two items.
func (r *reader) near(p, i int) bool {
	for j := p + 1; j < i; j++ {
		if !r.word(j, "is", "at", "about", "around", "runs", "sits", "sitting", "was", "its", "now", "only", "like", "maybe", "just", "barely", "hardly", "nearly", "almost", "already", "still", "down", "up", "to", "says", "said", "reads", "shows") && !r.is(j, kindSay) && !r.is(j, kindVacuum, "pull") && r.items[j].brk != '~' {
			return false
		}
	}
	return i-p <= 4
}

package grammar

import (
	"slices"
	"strings"
)

// flatSawnThings: "a flat sawn panel" is sawn and no place to live in; "sawn: quarter"
// says how.
func (r *reader) flatSawnThings() {
	if !r.says("sawn", "sawed", "cut", "grain", "grained") {
		return
	}
	for i := 0; i+1 < len(r.items); i++ {
		if r.is(i, kindAir, "service") && strings.HasSuffix(r.items[i].word, "a flat") && r.word(i+1, "sawn", "sawed", "grain", "grained") {
			r.items[i].meaning, r.items[i].end = meaning{kind: kindFact, id: "sawn=flat"}, r.items[i+1].end
			r.hear(i)
			r.items = slices.Delete(r.items, i+1, i+2)
		}
		if am := r.items[i].amount; am != nil && am.bare() && am.value != nil && am.float() == 0.25 && r.word(i+1, "sawn", "sawed") {
			r.items[i].amount, r.items[i].meaning, r.items[i].end = nil, meaning{kind: kindFact, id: "sawn=quarter"}, r.items[i+1].end
			r.hear(i)
			r.items = slices.Delete(r.items, i+1, i+2)
		}
		if !r.word(i, "sawn", "cut", "grain") || !r.labels(i+1) || i+2 >= len(r.items) {
			continue
		}
		k := i + 2
		switch am := r.items[k].amount; {
		case am != nil && am.form == formWords && am.value != nil && am.float() == 0.25:
			r.items[k].amount, r.items[k].meaning, r.items[i].used = nil, meaning{kind: kindFact, id: "sawn=quarter"}, true
			r.hear(k)
		case r.word(k, "flat", "plain"):
			r.items[k].meaning, r.items[i].used = meaning{kind: kindFact, id: "sawn=flat"}, true
			r.hear(k)
		}
	}
}

// otherMeanings takes the meaning of the trade from words that are of something else.
func (r *reader) otherMeanings() {
	r.lightOfDay()
	r.woodenFrames()
	r.mixedGlue()
	r.bigOnes()
	r.waxAlone()
	r.barSticksUp()
	r.gaugeToday()
	r.clockIsGauge()
}

// clockIsGauge: "clock 0.82", "the clock on the bag says 0.78" show no time.
func (r *reader) clockIsGauge() {
	if !r.habit.Metric || !r.says("clock", "clock on") {
		return
	}
	for i := range r.items {
		if !r.word(i, "clock", "clock on") || r.word(i+1, "in", "out") {
			continue
		}
		k := i + 1
		for k < i+7 && !r.isBreak(k) && r.items[k].amount == nil {
			k++
		}
		const least, most = 0.3, 1.05 // bar
		if r.free(k) && r.items[k].amount.bare() && r.items[k].amount.form == formDecimal && r.items[k].amount.float() >= least && r.items[k].amount.float() < most {
			r.items[i].meaning = meaning{kind: kindVacuum, id: "gauge"}
			r.hear(i)
		}
	}
}

// gaugeToday: in "yesterday the gauge was 26, today 23" no day's work is planned, and the
// number behind "today" is what the gauge shows.
func (r *reader) gaugeToday() {
	if !r.says("today") || !r.wordIn("yesterday") || !r.mentions(kindVacuum, "gauge") {
		return
	}
	for i := range r.items {
		if r.is(i, kindAsk, "schedule") && r.word(i, "today") {
			r.items[i].meaning = meaning{kind: kindVacuum, id: "gauge"}
			r.hear(i)
		}
	}
}

// barSticksUp: in "the bar sticks up 1 1/4" nothing is a strip.
func (r *reader) barSticksUp() {
	if !r.says("stick", "sticks") {
		return
	}
	for i := range r.items {
		if r.is(i, kindNoun, "strip") && r.word(i, "stick", "sticks") && r.is(r.prev(i), kindNoun, "bar") && r.word(i+1, "up", "out", "above", "over", "proud", "higher") {
			r.items[i].meaning = meaning{kind: kindFill}
		}
	}
}

// bigOnes: "I've got two left and they're the big ones, 42x96" are panels.
func (r *reader) bigOnes() {
	if !r.says("ones") || r.mentions(kindNoun, "strip", "panel", "bed") {
		return
	}
	for i := 1; i+3 < len(r.items); i++ {
		if r.word(i, "ones") && r.word(i-1, "big", "large", "small", "little", "tall", "same", "new", "other") && r.isBreak(i+1) && r.items[i+2].amount != nil && r.items[i+3].amount != nil && r.items[i+3].amount.link == linkTimes {
			r.items[i].meaning, r.items[i+1].brk = meaning{kind: kindNoun, id: "panel"}, '"'
			r.hear(i)
		}
	}
}

// lightOfDay: "start when it's light" tells of no gap.
func (r *reader) lightOfDay() {
	if !r.says("light", "daylight") {
		return
	}
	for i := range r.items {
		if r.is(i, kindNoun, "gap") && r.word(i, "light", "daylight") && r.word(i-1, "its", "is", "gets", "first", "still") && !r.mentions(kindNoun, "joint") && !r.word(i+1, "through", "between", "in", "at") {
			r.items[i].meaning, r.items[i].used = meaning{}, true
		}
	}
}

// humpOfOverfill: "strips run 1/16 over. how high's the hump" asks how far they rise.
func (r *reader) humpOfOverfill() {
	if !r.says("hump", "crown") || !r.mentions(kindNoun, "opening", "fence") || !r.wordIn("over", "overfill", "overfilled") {
		return
	}
	for i := range r.items {
		if r.is(i, kindNoun, "cup") && r.word(i, "hump", "crown") && !(i > 0 && r.items[i-1].amount != nil) {
			r.items[i].meaning = meaning{kind: kindAsk, id: "side:rise_mm"}
			r.hear(i)
		}
	}
}

// timesOfPoly: in "closed time on poly" the poly is a glue, in "on poly" else the film.
func (r *reader) timesOfPoly() {
	if !r.says("on poly") || !r.mentions(kindRole, "open", "closed") || r.mentions(kindNoun, "strip", "bar", "sled") || r.mentions(kindGlue) {
		return
	}
	for i := range r.items {
		if r.is(i, kindFact, "surface=film") && r.word(i, "on poly") {
			r.items[i].meaning = meaning{kind: kindGlue, id: "polyurethane"}
			r.hear(i)
		}
	}
}

// woodenFrames: "a walnut frame under it" and "an oak picture frame" are furniture.
func (r *reader) woodenFrames() {
	if !r.says("frame", "frames") {
		return
	}
	pressing := r.mentions(kindVacuum) || r.pressureSaid() || r.mentions(kindNoun, "pump", "bar", "bag", "opening") || r.saidFlow()
	for i := range r.items {
		if !r.is(i, kindNoun, "frame") || !r.word(i, "frame", "frames") {
			continue
		}
		switch framed := r.is(i-1, kindWood) || r.word(i-1, framedThings...); {
		case r.word(i, "frames") && (framed || r.madeOfWood(i+1)):
			if k := r.framesCounted(i); k >= 0 {
				r.items[k].amount.dead = true
			}
		case pressing || !framed:
			continue
		}
		r.items[i].meaning, r.items[i].used = meaning{}, true
	}
}

// mixedGlue: in "mix ratio for epoxy" no strips are combined.
func (r *reader) mixedGlue() {
	if !r.says("mix") || !r.mentions(kindGlue) {
		return
	}
	for i := range r.items {
		if r.is(i, kindAsk, "strips") && r.word(i, "mix") && (r.word(i+1, "ratio", "ratios", "rate", "proportion", "proportions") || r.is(i+1, kindGlue) || r.word(i+1, "for", "of", "the") && r.is(i+2, kindGlue)) {
			r.items[i].meaning = meaning{kind: kindAsk, id: "words"}
			r.hear(i)
			r.killMixed(i)
		}
	}
}

// killMixed: "mix ratio for epoxy 2:1" is no wedge's; it is told of the "mix" at item i.
func (r *reader) killMixed(i int) {
	_, to := r.clause(i)
	for ; i < to; i++ {
		if am := r.items[i].amount; am != nil && am.form == formPair {
			am.dead = true
		}
	}
}

// framedThings are what has a frame, and is no press.
var framedThings = []string{"picture", "door", "window", "bed", "mirror", "cabinet", "face", "photo", "web", "screen", "chair", "sofa", "sash"}

// madeOfWood: "of oak", "in 3/4 walnut", "out of quartersawn cherry" from item i on.
func (r *reader) madeOfWood(i int) bool {
	if !r.word(i, "of", "in", "from", "out of", "made of", "made from") {
		return false
	}
	for i++; r.is(i, kindWoodSort) || r.free(i) || r.word(i, "of", "solid"); i++ {
	}
	return r.is(i, kindWood) && !r.is(i+1, kindNoun, "panel", "strip", "core")
}

// framesCounted is the count of the things at item i, past what they are of: "5 oak frames"; -1
// where none stands there.
func (r *reader) framesCounted(i int) int {
	for i--; i > 0 && r.items[i].amount == nil && !r.isBreak(i) && (r.is(i, kindWood) || r.is(i, kindWoodSort) || r.word(i, framedThings...)); i-- {
	}
	if r.free(i) && r.items[i].amount.bare() && r.items[i].amount.value != nil && r.items[i].amount.value.IsInt() {
		return i
	}
	return -1
}

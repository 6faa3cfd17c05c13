package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Numbers of things that are no part of a load: boats and rooms, tools, tins, dates.

// otherThings have measures, weights and ages of their own.
var otherThings = wordSet(`
ketch sloop yacht schooner dinghy boat boats ship hull keel canoe kayak skiff trawler barge catamaran trimaran yawl cruiser runabout launch tug rowboat rib footer motorhome rv camper bike motorcycle
ceiling ceilings deck doorway doorways corridor stairwell lift elevator driveway floor headroom roof wall walls window windows
hammer mallet sledgehammer maul ladder forklift trailer pickup lorry truck crane hoist trolley cart pallet pallets
kerf blade blades saw bandsaw tablesaw jointer planer thicknesser sander router moulder shaper cutter cutterhead extractor compressor
bottle jug tin bucket pail tub drum barrel roll rolls cartridge
bench benches vise vice
tube pipe hose joist joists beam beams rafter rafters stud studs purlin purlins post posts
dado dadoes groove grooves rabbet rabbets rebate rebates roundover roundovers chamfer chamfers bevel bevels mortise mortises mortice mortices tenon tenons dowel dowels biscuit biscuits domino dominoes
screw screws nail nails brad brads staple staples bolt bolts leg legs handle handles hinge hinges slot slots hole holes notch notches spline splines tongue tongues cutout rail rails stretcher stretchers`)

// killOthers marks the numbers of other things: "for a 38 ft ketch", "a 3 lb hammer",
// "the bench itself is 60 wide", "hull 32 thick".
func (r *reader) killOthers() {
	r.numbersBeside()
	offcut := r.says("offcut", "off cut", "cutoff", "leftover", "scrap", "remnant")
	twist := r.says("twist", "twisted", "winding", "racked", "racking", "out")
	aged := r.says("shes", "hes", "turned", "turns", "turning", "aged", "he", "she")
	for k := range r.items {
		it := &r.items[k]
		if am := it.amount; am != nil {
			if am.link == linkTimes {
				r.roomSize(k)
			}
			if am.form == formFraction {
				r.dates(k)
			} else if am.form == formInt && len(it.text) > 2 {
				r.numberToRing(k)
				r.years(k)
			}
			if aged {
				r.ages(k)
			}
			if am.form == formPair || am.link == linkTo {
				r.mixes(k)
			}
			if twist {
				r.twists(k)
			}
			if am.link == linkTimes {
				r.lumber(k)
			}
			r.someStrips(k)
			continue
		}
		if offcut {
			r.oneOffcut(k)
		}
		if !r.is(k, kindFill, "tool") {
			if it.brk != 0 || it.kind != kindNone && !r.is(k, kindRole, "name", "drive", "label", "ago") || !otherThings[it.word] && !(strings.HasSuffix(it.word, "s") && otherThings[owner(it)]) {
				continue
			}
		}
		r.sizeBefore(k)
		r.sizeBehind(k)
	}
}

// owner is the thing in "hull's".
func owner(it *item) string {
	if w, ok := strings.CutSuffix(it.word, "s"); ok && strings.ContainsAny(it.text, "'’") {
		return w
	}
	return ""
}

// sizeBefore marks "38 ft" before the ketch at item k, "12 x 16" before the boat.
func (r *reader) sizeBefore(k int) {
	i := k - 1
	for i >= 0 && (r.is(i, kindWoodSort) || r.is(i, kindAttr) && !nounForm(r.items[i].word) || r.word(i, "long", "foot", "tooth", "tpi", "speed", "old") || r.items[i].brk == '-') && r.items[i].amount == nil {
		i--
	}
	if !r.live(i) || !r.ofSize(i) || r.items[i].amount.bare() && r.items[i].amount.form == formInt && isPlural(r.items[k].word) && i == k-1 {
		return // so many of them
	}
	if i < k-1 {
		r.idleDirections(i+1, k)
	}
	for ; i >= 0 && r.live(i); i-- {
		r.items[i].amount.dead = true
		if r.items[i].amount.link == linkNone {
			return
		}
	}
}

// sizeBehind marks what is told of the thing at item k: "is 60 wide", "32 thick".
func (r *reader) sizeBehind(k int) {
	if (thicknessers[r.items[k].word] || ripSaws[r.items[k].word]) && r.leftMachine(k) > 0 {
		return // "strips off the planer are 7/16"
	}
	i, told := k+1, owner(&r.items[k]) != ""
	for i < len(r.items) && i <= k+5 && r.items[i].amount == nil && !r.isBreak(i) {
		switch {
		case r.word(i, "is", "are", "was", "were", "measures", "its", "runs", "of"):
			told = told || !r.word(i, "of")
		case !r.word(i, "itself", "there", "about", "only", "just", "alone", "each", "a", "like"):
			return
		}
		i++
	}
	if !r.live(i) || !r.ofSize(i) || r.is(k, kindRole, "label") && r.items[i].amount.bare() {
		return
	}
	from := i
	for i+1 < len(r.items) && r.live(i+1) && r.items[i+1].amount.link != linkNone {
		i++
	}
	n := r.next(i)
	if n := i + 1; n < len(r.items) && r.word(n, "t", "tooth", "teeth", "tpi") {
		r.items[i].amount.dead, r.items[n].word, r.items[n].used = true, "teeth", true
		r.hear(n)
		return // "blade 40T"
	}
	direct := n == i+1 && r.is(n, kindAttr)
	if r.is(n, kindNoun) || direct && r.is(r.next(n), kindNoun) || !told && (!direct && !r.timesAt(from+1) || from > k+1) {
		return
	}
	for j := from; j <= i; j++ {
		r.items[j].amount.dead = true
	}
	r.idleDirections(i+1, i+2)
	for j := i + 2; ; j += 2 { // "is 60 wide and 30 deep", "dado 3/8 deep 3/4 wide"
		if r.word(j, "by", "and") || j < len(r.items) && r.items[j].brk == ',' {
			j++
		}
		if !r.live(j) || !r.is(j+1, kindAttr) && !r.word(j+1, "square", "diameter", "dia") || r.is(r.next(j+1), kindNoun) || r.word(j+2, "strips") {
			return
		}
		r.items[j].amount.dead = true
		r.idleDirections(j+1, j+2)
	}
}

// ofSize reports whether the amount at item i can tell how big or heavy a thing is.
func (r *reader) ofSize(i int) bool {
	am := r.items[i].amount
	listed := am.link == linkAt || i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkAt
	return am.form != formPair && !listed && (r.length(i) || am.is(unit.Weight) || am.is(unit.Content))
}

// idleDirections keeps the directions of [from, to) from looking for another number.
func (r *reader) idleDirections(from, to int) {
	for i := from; i < to && i < len(r.items); i++ {
		if r.is(i, kindAttr) {
			r.items[i].meaning, r.items[i].used = meaning{}, true
		}
	}
}

// roomSize: "shop is 40x60", "the garage is 20 by 22".
func (r *reader) roomSize(i int) {
	if !r.timesAt(i) || !r.live(i) || !r.live(i-1) || r.is(r.next(i), kindNoun) {
		return
	}
	k := i - 2
	for r.word(k, "is", "its", "a", "about", "only", "just", "measures", "roughly", "tiny", "little") || r.word(k, "s") {
		k--
	}
	const room = 3.0 // m: no press is so wide
	if r.is(k, kindAsk, "profile") && strings.Contains(r.items[k].word, "shop") && (r.size(i) > room && r.size(i-1) > room || !r.habit.Metric && r.items[i].amount.bare() && r.items[i].amount.float() > 16 && r.items[i-1].amount.float() > 16) {
		r.items[i].amount.dead, r.items[i-1].amount.dead = true, true
		r.items[k].meaning, r.items[k].used = meaning{}, true
	}
	if r.is(k, kindAir, "shop") && !in(r.items[k].word, "here", "in here") {
		r.items[i].amount.dead, r.items[i-1].amount.dead = true, true
	}
	if r.floorSize(k, i) {
		r.items[i].amount.dead, r.items[i-1].amount.dead = true, true
	}
	if n := i + 1; r.is(n, kindAir, "shop") && !in(r.items[n].word, "here", "in here", "in the shop") {
		r.items[i].amount.dead, r.items[i-1].amount.dead = true, true // "a 24x30 shop"
	}
}

// calls come before a number to ring.
var calls = wordSet(`call ring phone text tel telephone cell mobile number extension ext whatsapp`)

// numberToRing marks a number to ring: "call me back 555-0142".
func (r *reader) numberToRing(i int) {
	if r.items[i].amount == nil || r.items[i].amount.form != formInt || digits(r.items[i].text) < 3 || !r.items[i].amount.bare() {
		return
	}
	j := i - 1
	for j >= 0 && j > i-5 && r.items[j].amount == nil && !r.isStop(j) && !calls[r.items[j].word] {
		j--
	}
	if j < 0 || r.items[j].amount != nil || !calls[r.items[j].word] {
		return
	}
	const least = 6 // digits that a number to ring has
	end, n := i, 0
	for ; end < len(r.items) && (r.items[end].amount != nil || r.items[end].brk == '-' || r.items[end].brk == '/' || r.items[end].brk == '(' || r.items[end].brk == ')'); end++ {
		am := r.items[end].amount
		if am == nil {
			continue
		}
		if !am.bare() || am.form != formInt || am.link != linkNone && am.link != linkTo {
			break
		}
		n += digits(r.items[end].text)
	}
	for k := i; k < end && n >= least; k++ {
		if r.items[k].amount != nil {
			r.items[k].amount.dead = true
		}
	}
}

// dates marks a day that is written as no fraction of anything is: "by 12/3".
func (r *reader) dates(i int) {
	am := r.items[i].amount
	if am == nil || am.form != formFraction || !am.bare() || am.value == nil || am.value.Num().Cmp(am.value.Denom()) < 0 || !strings.HasPrefix(r.items[i].text[digits(r.items[i].text):], "/") {
		return
	}
	on := r.word(i-1, "by", "on", "before", "after", "due", "dated", "since", "until", "till", "til", "for") || am.link == linkTimes && r.live(i-1) && r.items[i-1].amount.form == formInt && !r.length(i-1)
	if on || am.link == linkTimes && i > 0 && r.items[i-1].amount != nil && r.items[i-1].amount.dead {
		am.dead = true
	}
}

// ages marks "shes 81", "my boy turned 16", "hes 64 now": how old somebody is.
func (r *reader) ages(i int) {
	const youngest, oldest = 12, 110
	am := r.items[i].amount
	if am == nil || !am.bare() || am.link != linkNone || am.form != formInt && am.form != formWords || am.float() < youngest || am.float() > oldest {
		return
	}
	if k := i + 1; k < len(r.items) && !r.isBreak(k) && !r.word(k, "now", "today", "already", "and", "but", "lol", "haha", "so", "next", "this") {
		return
	}
	k := i - 1
	for r.word(k, "just", "almost", "nearly", "about", "only", "like") {
		k--
	}
	if r.word(k, "shes", "hes", "turned", "turns", "turning", "aged") || r.word(k, "is", "was") && r.word(k-1, "he", "she") {
		am.dead = true
	}
}

// years marks "from 2019", "built in 1974": a year where nothing goes by the clock.
func (r *reader) years(i int) {
	const first, last = 1900, 2059
	am := r.items[i].amount
	if am == nil || !am.bare() || am.form != formInt || am.link != linkNone || digits(r.items[i].text) != 4 || am.float() < first || am.float() > last {
		return
	}
	p := i - 1
	switch {
	case r.word(p, "since", "circa", "vintage", "in") || r.is(p, kindUnit, "in"):
		am.dead = !r.dayPlan() && !(p > 0 && r.items[p-1].amount != nil)
	case r.word(p, "from") || r.is(p, kindRole, "start") && r.items[p].word == "from":
		if otherThings[r.items[max(p-1, 0)].word] || r.word(p-1, "dates", "dating", "one", "batch", "stock", "is", "was", "model", "left", "over", "leftover") || r.is(p-1, kindNoun) || r.is(p-1, kindGlue) {
			am.dead = true
			r.items[p].meaning, r.items[p].used = meaning{}, true
		}
	}
}

// mixes marks how a glue is mixed: "mixed 2:1", "5 to 1 by weight".
func (r *reader) mixes(i int) {
	am := r.items[i].amount
	if am == nil {
		return
	}
	pair := am.form == formPair
	to := am.link == linkTo && am.bare() && r.live(i-1)
	if !pair && !to {
		return
	}
	j := i - 1
	if to {
		j--
	}
	for r.word(j, "at", "is", "to", "about", "its", "ratio", "by") || j >= 0 && r.items[j].brk == ':' {
		j--
	}
	if r.word(j, "mixed", "mix", "mixes", "mixing", "ratio", "resin", "hardener") || r.word(i+1, "by") && r.word(i+2, "weight", "volume") || r.word(i+1, "mix", "ratio") && !r.is(r.next(i+1), kindNoun, "wedge") && !r.mentions(kindNoun, "wedge") || r.word(i+1, "epoxy", "hardener", "resin") {
		am.dead = true
		if to {
			r.items[i-1].amount.dead = true
		}
	}
}

// otherPressures are what is pumped up, and its pressure is no vacuum.
var otherPressures = wordSet(`tire tires tyre tyres compressor compressors airline nailer nailers hose boiler kettle washer espresso football tank cylinder sprayer gun hydraulics hydraulic ram mains`)

// calculations tell a figure that somebody worked out.
var calculations = wordSet(`calc calcs calculation calculations calculator model fe fea fem simulation sums maths math arithmetic formula estimate excel chatgpt ai program programme software handbook textbook`)

// killFigures marks pressures that are told of other things, or that somebody worked
// out: "my truck tires run 35 psi", "by my own calc I get 0.31 N/mm²".
func (r *reader) killFigures() {
	r.pumpedUp()
	for i := range r.items {
		am := r.items[i].amount
		if am == nil || !am.is(unit.Pressing) || am.dead || r.solving != "" && r.solving != unit.Vacuum {
			continue
		}
		from, to := r.sentence(i)
		if r.within(from, i, kindVacuum) >= 0 || r.within(from, to, kindNoun, "mat") >= 0 {
			continue
		}
		next, other := true, r.otherPressure(i)
		for k := i - 1; k >= from && (next || other || r.solving == unit.Vacuum); k-- {
			w := r.items[k].word
			next = next && r.items[k].amount == nil && r.items[k].kind != kindNoun
			if r.items[k].amount != nil {
				continue
			}
			if next && otherPressures[w] ||
				(other || r.solving == unit.Vacuum) && calculations[w] && r.amountsOf(unit.Pressing, k, i) == 0 ||
				other && r.is(k, kindRole, "label") && r.within(k, i, kindSay) >= 0 && r.within(k, i, kindRole, "min") < 0 {
				am.dead = true
				if am.link == linkTo && r.live(i-1) {
					r.items[i-1].amount.dead = true
				}
				break
			}
		}
	}
}

// pumpedUp: of "compressor sits at 8 bar" the last is no side bar.
func (r *reader) pumpedUp() {
	if !r.says("bar", "bars") {
		return
	}
	for i := range r.items {
		n := i + 1
		if !r.live(i) || !r.items[i].amount.bare() || !r.is(n, kindNoun, "bar") || !in(r.items[n].word, "bar", "bars") {
			continue
		}
		for k := i - 1; k >= 0 && k >= i-5 && r.items[k].amount == nil; k-- {
			if otherPressures[r.items[k].word] || otherPressures[owner(&r.items[k])] {
				r.items[i].amount.dead = true
				r.items[n].meaning, r.items[n].used = meaning{}, true
				break
			}
			if r.isBreak(k) {
				break
			}
		}
	}
}

func (r *reader) amountsOf(d unit.Dimension, from, to int) int {
	n := 0
	for i := from; i < to; i++ {
		if r.items[i].amount != nil && r.items[i].amount.is(d) {
			n++
		}
	}
	return n
}

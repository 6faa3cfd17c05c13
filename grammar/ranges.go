package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// Two measures for one: the room that a wedge takes, and strips of different
// thickness, told by what they are called or as a range.

// thinWords and thickWords are what the thinnest and the thickest strips are called.
var (
	thinWords  = wordSet(`thin thinner skinny skinnier low lower slim shallow`)
	thickWords = wordSet(`thick thicker fat fatter chunky heavy heavier high higher tall taller beefy`)
)

// closeBy are how many times as thick the thickest strips of a panel are as its
// thinnest, and thinStock how thick strips are that need no other word to be told
// from their width.
const (
	closeBy   = 1.35
	thinStock = 0.03
	thickest  = 0.06
)

// thinOnes reads "thin ones 5/16, fat ones 11/32", "7.8 on the low strips and 8.2
// on the high ones".
func (r *reader) thinOnes() {
	if r.has(unit.StripThickest) || r.has(unit.StockPiles) || r.topic == Strips {
		return
	}
	if !r.says("thin", "thinner", "skinny", "skinnier", "low", "lower", "slim", "shallow") && !r.saysLater("ones", "strips") {
		return // the thickest alone are no range
	}
	thin, thick := -1, -1
	var names []int
	for i := range r.items {
		name, last := r.calledOnes(i)
		if name == "" {
			continue
		}
		k := r.measureOfOnes(i, last)
		switch {
		case k < 0:
		case name == "thin" && thin < 0:
			thin, names = k, append(names, i)
		case name == "thick" && thick < 0:
			thick, names = k, append(names, i)
		}
	}
	if thin < 0 || thick < 0 || thin == thick || !r.closeThicknesses(thin, thick) {
		return
	}
	for _, i := range names {
		r.items[i].used = true
		if !r.is(i, kindAsk) {
			r.items[i].meaning = meaning{}
		}
	}
	r.bind(thin, unit.StripThinnest)
	r.bind(thick, unit.StripThickest)
}

// calledOnes returns whether item i calls strips thin or thick, and the last item
// of the name.
func (r *reader) calledOnes(i int) (name string, last int) {
	if r.items[i].amount != nil {
		return "", 0
	}
	said := r.items[i].word
	ahead := r.word(i+1, "ones", "one", "spots", "bits") || r.is(i+1, kindNoun, "strip")
	if !ahead && !strings.HasSuffix(said, " ones") && !strings.HasSuffix(said, " strips") {
		return "", 0
	}
	first, rest, _ := strings.Cut(said, " ")
	switch {
	case rest == "ones" || rest == "strips":
		last = i
	case rest == "" && ahead:
		last = i + 1
	default:
		return "", 0
	}
	switch {
	case thinWords[first]:
		name = "thin"
	case thickWords[first]:
		name = "thick"
	}
	return name, last
}

// measureOfOnes is the measure of the strips that items [first, last] call; -1
// where there is none.
func (r *reader) measureOfOnes(first, last int) int {
	for j := last + 1; j < len(r.items) && j <= last+5; j++ {
		if r.free(j) && r.length(j) {
			if n := r.next(j); r.is(n, kindAttr, "wide", "long") || r.is(n, kindNoun) {
				break
			}
			return j
		}
		if !r.idle(j) && !r.is(j, kindSay) && !r.is(j, kindVacuum, "pull") && !r.word(j, "are", "is", "at", "mike", "measure", "run", "runs", "come", "and") && r.items[j].brk != ':' && r.items[j].brk != '=' {
			break
		}
	}
	j := first - 1
	for r.word(j, "the", "my", "our") {
		j--
	}
	if r.word(j, "on", "for", "at", "in") && r.free(j-1) && r.length(j-1) {
		return j - 1
	}
	return -1
}

// closeThicknesses reports whether the measures at two items can be the thinnest
// and the thickest strips of one panel.
func (r *reader) closeThicknesses(thin, thick int) bool {
	a, b := r.items[thin].amount, r.items[thick].amount
	if a.unit == nil && b.unit != nil {
		u := *b.unit
		a.unit = &u
	}
	if b.unit == nil && a.unit != nil {
		u := *a.unit
		b.unit = &u
	}
	low, high := r.size(thin), r.size(thick)
	return low > 0 && low < high && high <= closeBy*low && (high < thinStock || high < thickest && r.mentions(kindNoun, "mat"))
}

// nearRanges reads "strips are all over the place, .240 to .262" and "planer left
// em between 0.495 and 0.510": near together and thin, they are how thick.
func (r *reader) nearRanges() {
	if r.has(unit.StripThickest) || r.has(unit.StripThickness) || r.has(unit.StockPiles) || r.topic == Strips {
		return
	}
	for i := 0; i+1 < len(r.items); i++ {
		if !r.free(i) || !r.free(i+1) || r.items[i+1].amount.link != linkTo || !r.length(i) || !r.length(i+1) {
			continue
		}
		from, to := r.clause(i)
		if n := r.next(i + 1); r.is(n, kindNoun) && r.items[n].id != "strip" || r.is(n, kindAttr) || r.roleBut(from, to, "run over", "vary") || r.otherNoun(from, to) {
			continue
		}
		low, high := i, i+1
		if r.size(low) > r.size(high) {
			low, high = high, low
		}
		start, _ := r.sentence(i)
		if (r.mentions(kindNoun, "mat") || (r.within(start, i, kindNoun, "strip") >= 0 || r.habit.Follows && r.word(i-1, "theyre", "are", "all", "now", "between", "run")) && r.size(high) < thinStock) && r.closeThicknesses(low, high) {
			r.bindRange(i, unit.StripThinnest, unit.StripThickest)
			return
		}
	}
}

// otherNoun reports whether a clause speaks of a part other than strips.
func (r *reader) otherNoun(from, to int) bool {
	for k := from; k < to; k++ {
		if r.is(k, kindNoun) && r.items[k].id != "strip" && r.items[k].id != "panel" {
			return true
		}
	}
	return false
}

// overWhat: "1.5 mm over the 640 between the fences" names what the strips fill.
func (r *reader) overWhat(i int) bool {
	if !r.word(i-1, "the", "a") {
		return false
	}
	_, to := r.clause(i)
	return (r.word(i-2, "over") || r.is(i-2, kindRole, "length", "over")) && r.size(i) > 0.1 && r.within(i, to, kindNoun, "fence", "opening") >= 0 && !r.has(unit.PanelWidth)
}

// wedgeWindowAt: "the wedge takes 3/8 to 3/4", "a 12 to 20 gap for the wedge".
func (r *reader) wedgeWindowAt(i int) bool {
	if i+1 >= len(r.items) || !r.free(i+1) || r.items[i+1].amount.link != linkTo {
		return false
	}
	gap := r.is(r.next(i+1), kindNoun, "gap") || r.word(r.next(i+1), "space", "room", "clear")
	from, to := r.clause(i)
	return r.within(from, i, kindNoun, "wedge") >= 0 || r.wedgeTakes(i, from) || (gap || r.word(i+2, "for")) && r.within(i, to, kindNoun, "wedge") >= 0
}

// wedgeTakes: of "wedge mode, it takes 3/8 to 3/4" the clause that begins at item from tells of
// the wedge before it.
func (r *reader) wedgeTakes(i, from int) bool {
	if !r.word(i-1, "takes", "take", "fills", "wants", "needs", "covers") || i-1 > from && !(i-2 == from && r.word(from, "it", "which", "that")) || from < 2 {
		return false
	}
	start, _ := r.clause(from - 2)
	wedge := r.within(start, from, kindNoun, "wedge")
	if wedge < 0 || r.amountsIn(start, from) > 0 || r.within(wedge+1, from, kindNoun) >= 0 {
		return false
	}
	if r.word(wedge+1, "mode") {
		r.items[wedge+1].used = true
	}
	return true
}

// bindRange gives the smaller of two linked amounts to low, the other to high.
func (r *reader) bindRange(i int, low, high unit.Field) {
	a, b := r.items[i].amount, r.items[i+1].amount
	if a.unit == nil && b.unit != nil {
		u := *b.unit
		a.unit = &u
	}
	if r.size(i) > r.size(i+1) {
		low, high = high, low
	}
	r.bind(i, low)
	r.bind(i+1, high)
}

// roleBut reports whether a clause has a role other than those.
func (r *reader) roleBut(from, to int, ids ...string) bool {
	for k := from; k < to; k++ {
		if r.is(k, kindRole) && !r.is(k, kindRole, ids...) {
			return true
		}
	}
	return false
}

// varyAcross leaves "vary from 2 to 2 1/2 wide" to be asked about: no one width was
// said, nor how thick anything is.
func (r *reader) varyAcross(i, p int) bool {
	n := i + 1
	if r.word(p, "from") || r.word(p, "between") {
		p = r.prev(p)
	}
	if !r.is(p, kindRole, "vary", "run over") || n >= len(r.items) || !r.free(n) || r.items[n].amount.link != linkTo || !r.is(r.next(n), kindAttr, "wide", "long") {
		return false
	}
	r.items[i].amount.dead, r.items[n].amount.dead = true, true
	return true
}

package grammar

import (
	"strings"

	"presshand/engine/unit"
)

// A Row is one by which a message changes the strips that its thread has: "found 4
// more of the 2s", "20 of 70, miscounted".
type Row struct {
	Count, Width Amendment
	Less         bool // so many fewer
	Left         bool // so many are left, and no more than there were
}

// rowAgain reads so many strips of a width, of which a thread tells whether it has
// any to choose from.
func (r *reader) rowAgain() {
	rows := r.rowsTold()
	for n, p := range rows {
		count, less, some := p.count, r.spoiled(p.width) || r.takenBefore(p.count), false
		if left := r.leftOfThose(p.width); left >= 0 && len(rows) == 1 {
			r.unuse(r.items[count].text)
			r.items[count].used = true
			count, less, some = left, false, true // "two of the 95s are split, so 5 of those"
		} else if n == 0 && r.amountsIn(0, len(r.items)) != 2*len(rows) || !less && !r.toldAnew(p.count, p.width) {
			return
		}
		r.phrase.Rows = append(r.phrase.Rows, Row{Count: r.amendment(count), Width: r.amendment(p.width), Less: less, Left: some})
		r.useRow(count, p.width)
	}
}

// rowsTold finds what may be rows, one behind the other.
func (r *reader) rowsTold() []pile {
	var rows []pile
	last := -1
	for i := range r.items {
		if w := r.rowWidth(i); w >= 0 && r.rowOpens(i, last) {
			rows = append(rows, pile{i, w})
			last = w
		}
	}
	return rows
}

// useRow uses up a row and the words that tell it.
func (r *reader) useRow(count, width int) {
	_, to := r.clause(width)
	for k := range r.items {
		gone := k > width && k < to && r.items[k].amount == nil && spoilt[r.items[k].word]
		r.items[k].used = r.items[k].used || k == count || k == width || gone || k < count && rowWords[r.items[k].word]
	}
}

// rowWidth is the width of the strips that item i counts; -1 where it counts none.
func (r *reader) rowWidth(i int) int {
	if !r.free(i) || r.items[i].amount.plural || !r.items[i].amount.bare() {
		return -1
	}
	if n, whole := r.items[i].amount.whole(); !whole || n < 1 {
		return -1
	}
	j := i + 1
	for r.word(j, "more", "extra", "additional") || r.is(j, kindNoun, "strip") {
		j++
	}
	more, of := j > i+1, r.word(j, "of", "at")
	if of {
		j++
	} else if j == i+1 && j < len(r.items) && r.items[j].amount != nil && r.items[j].amount.link == linkAt && (r.spoiled(j) || r.takenBefore(i)) {
		of = true // "lose the 8 at 1 7/8"
	}
	for r.word(j, "the", "those", "these", "my", "our") {
		j++
	}
	if j >= len(r.items) || !of && !(more && r.items[j].amount != nil && r.items[j].amount.plural) && !r.foundWide(i, j) || !r.free(j) || !r.length(j) || !small(r.size(j)) || r.items[j].amount.value == nil {
		return -1
	}
	if of && r.items[j].amount.form == formWords && !r.items[j].amount.plural && r.next(j) >= 0 {
		return -1 // "two of the three panels"
	}
	if k := r.next(j); r.is(k, kindNoun) && !r.is(k, kindNoun, "strip") || r.is(k, kindAttr) && !r.is(k, kindAttr, "wide") {
		return -1
	}
	return j
}

// foundWide: "found 3 more 82 wide", "there are also 4 45 wide" name strips by their width.
func (r *reader) foundWide(i, j int) bool {
	if j >= len(r.items) || r.items[j].amount == nil || r.items[j].amount.link != linkNone || !r.free(j) || !r.is(j+1, kindAttr, "wide") || !r.isBreak(j+2) || r.phrase.Command != nil {
		return false
	}
	from, _ := r.clause(i)
	return j == i+1 && r.opensWithin(from, i, "found", "also", "add", "plus", "forgot", "another", "bought") || r.word(j-1, "more", "extra", "additional") && r.opensWithin(from, i, "found", "also", "add", "plus", "forgot", "have", "got", "are", "theres", "bought")
}

// rowOpens reports whether nothing between item last and item i makes its number one of something
// else: "joint 2 of 5".
func (r *reader) rowOpens(i, last int) bool {
	for j := i - 1; j > last && !r.isBreak(j); j-- {
		if !r.idle(j) && !r.is(j, kindFix) && !r.is(j, kindNot) && !r.is(j, kindVacuum, "pull") && !rowWords[r.items[j].word] && !(last >= 0 && spoilt[r.items[j].word]) {
			return false
		}
	}
	return true
}

// toldAnew reports whether the count at item i is what there is of the width at w,
// and not what else is the matter with so many: "one of the 3s has a knot".
func (r *reader) toldAnew(i, w int) bool {
	from, _ := r.clause(i)
	for j := from; j < i; j++ {
		if rowWords[r.items[j].word] && r.items[j].word != "and" && r.items[j].word != "so" || r.is(j, kindFix) {
			return true
		}
	}
	k := w + 1
	for r.word(k, "ones", "now", "left", "actually", "then", "instead", "wide", "too", "after", "all") || r.is(k, kindAttr, "wide") || r.is(k, kindFix) || r.is(k, kindNoun, "strip") {
		k++
	}
	return k >= len(r.items) || r.isBreak(k)
}

// wasted are words that stand before strips that are gone, rowWords all that stand before strips
// that come and go.
const wasted = `lost used broke ruined spoiled cracked dropped binned chucked wrecked smashed tossed damaged scrapped`

var (
	wastes   = wordSet(wasted)
	rowWords = wordSet(`found also forgot add adding plus got get have only another lose drop scrap minus skip ditch toss scratch and counted theres there are bought ripped cut so turned up ` + wasted)
)

// takenBefore: "lost 2 of the 3s".
func (r *reader) takenBefore(i int) bool {
	from, _ := r.clause(i)
	for j := from; j < i; j++ {
		if adders[r.items[j].word] || r.items[j].amount == nil && wastes[r.items[j].word] || r.is(j, kindNot) && leavesOut(r.items[j].word) {
			return true
		}
	}
	return false
}

// leavesOut reports whether a word of denial takes strips out of a pile: "scratch the eight at
// 1 7/8".
func leavesOut(word string) bool {
	word = strings.TrimSuffix(word, " the")
	return in(word, "scratch", "scrap", "skip", "drop", "lose", "ditch", "toss", "bin", "forget", "leave out", "take out", "never mind", "ignore")
}

// spoilt are words for strips that cannot be used any more.
var spoilt = wordSet(`gone split cracked broken bad rotten junk ruined spoiled spoilt warped twisted taken used sold scrap rejects rejected toast busted missing duff dud duds knackered wonky faulty rubbish wrecked stuffed dodgy snapped chipped`)

// spoiled reports whether what is said behind item i rules those strips out.
func (r *reader) spoiled(i int) bool {
	_, to := r.clause(i)
	for j := i + 1; j < to; j++ {
		if r.items[j].amount == nil && spoilt[r.items[j].word] || r.is(j, kindNot, "no") && r.word(j+1, "good", "use") {
			return true
		}
	}
	return false
}

// leftOfThose is the count behind item i of what is left of its strips: "so 5 of
// those", "leaves 5"; -1 where none is.
func (r *reader) leftOfThose(i int) int {
	for k := i + 1; k < len(r.items); k++ {
		if !r.free(k) {
			continue
		}
		ofThose := r.word(k+1, "of") && r.word(k+2, "those", "them", "these") && r.isBreak(k+3)
		led := r.word(k-1, "leaves", "leaving", "its", "so", "now") || r.is(k-1, kindFix) && r.word(k-1, "make that", "make it", "call it", "so make it")
		ends := r.isBreak(k+1) || r.word(k+1, "now") && r.isBreak(k+2)
		left := ofThose || led && ends || r.word(k+1, "left") && r.isBreak(k+2)
		if _, whole := r.items[k].amount.whole(); whole && left && r.items[k].amount.bare() {
			return k
		}
		return -1
	}
	return -1
}

// firmnessAlone: "medium?" is of the mat that the thread has.
func (r *reader) firmnessAlone() {
	if !r.habit.Follows && !r.mentions(kindNoun, "mat") {
		return
	}
	if r.firmnessIn(0, len(r.items)) || !r.habit.Follows || r.firmOne() {
		return
	}
	for from := 0; from < len(r.items); {
		_, to := r.clause(from)
		if r.firmnessIn(from, to) {
			return // "12 thou i mean, and go with the medium"
		}
		from = max(to, from) + 1
	}
}

// firmnessIn is firmnessAlone where nothing else is said in [from, to).
func (r *reader) firmnessIn(from, to int) bool {
	at, thick := -1, -1
	for i := from; i < to; i++ {
		if firmness[r.items[i].word] != "" && r.items[i].kind == kindNone && r.isBreak(i-1) && r.isBreak(i+1) && r.mentions(kindNoun, "mat") && !r.has(unit.MatFirmness) {
			r.sayOnce(i, unit.MatFirmness, firmness[r.items[i].word]) // "1/4 or 3/8 mat? medium, …"
			return true
		}
		soft := i > 0 && firmness[r.items[i-1].word] != ""
		switch {
		case r.free(i) && r.length(i) && small(r.size(i)) && thick < 0 && (at >= 0 && r.items[i].amount.form != formWords || i+1 < len(r.items) && firmness[r.items[i+1].word] != ""):
			thick = i // "and with a 10 mm soft one"
		case (soft || thick >= 0 && thick == i-1) && r.free(i) && r.items[i].amount.form == formWords:
		case firmness[r.items[i].word] != "" && r.items[i].kind == kindNone && at < 0:
			at = i
		case r.idle(i) || r.isBreak(i) || r.is(i, kindPerson) || r.word(i, "gave", "give", "me", "us", "got", "have", "found", "try", "to", "use", "using", "only", "now", "theres", "and", "or", "a", "the", "one", "of", "with", "instead", "then", "make", "it", "how", "what", "about", "if", "what if", "its", "is", "was", "say", "rather") || r.is(i, kindFix) || r.is(i, kindRole, "target") && r.word(i, "make"):
		case r.word(i, "go", "going", "lets", "well", "ill", "take", "taking", "switch", "swap", "grab", "run", "running", "put", "stick", "i", "we", "on", "in", "over", "just", "this", "that", "but", "so", "ok", "okay", "though", "please"):
		default:
			return false
		}
	}
	if at >= 0 && r.habit.Follows {
		r.sayOnce(at, unit.MatFirmness, firmness[r.items[at].word])
		r.loosenLast(true)
		for _, k := range []int{at + 1, thick + 1} {
			if n, one := r.spokenNumber(k); one && n == 1 {
				r.items[k].used = true
			}
		}
		if thick >= 0 {
			r.bind(thick, unit.MatThickness)
		}
	}
	return at >= 0
}

// layerBeside is the part of a stack that the length at item j is of, where nothing
// else states it: "make the fence 5", "a 1/2 fence".
func (r *reader) layerBeside(j int) string {
	if !r.habit.Follows || !r.length(j) {
		return ""
	}
	k := r.prev(j)
	if !r.is(k, kindNoun, "fence", "film") {
		k = r.next(j)
	}
	if r.betweenFences(j) {
		return ""
	}
	if r.is(k, kindNoun, "fence", "film") && r.next(max(k, j)) < 0 {
		return layerParts[r.items[k].id]
	}
	return ""
}

// betweenFences: the number of "640 between the fences", "640 fence to fence" is the
// width that is to be filled.
func (r *reader) betweenFences(j int) bool {
	k := j + 1
	for r.is(k, kindUnit) {
		k++
	}
	return r.word(k, "between", "from", "inside") && r.is(r.next(k), kindNoun, "fence") || r.is(k, kindNoun, "fence") && r.word(k+1, "to") && r.is(k+2, kindNoun, "fence")
}

// spoiledCount: "2 of the strips are split" does not say how many there are.
func (r *reader) spoiledCount(i, j int) bool {
	if !r.word(i+1, "of") || !r.spoiled(j) {
		return false
	}
	r.items[i].amount.dead = true
	return true
}

// otherUnits are what people count or measure that no question here has a use for.
var otherUnits = wordSet(`mil mils micron microns grit coat coats hp watt watts volt volts amp amps rpm bucks dollars euro euros quid people guys`)

// widthThenCount: "nope the 4 1/8 ones are only two" says how many there are of a
// width.
func (r *reader) widthThenCount() {
	if len(r.phrase.Rows) > 0 || !r.habit.Follows || r.amountsIn(0, len(r.items)) != 2 {
		return
	}
	for i := range r.items {
		if !r.free(i) || !r.length(i) || !small(r.size(i)) || r.items[i].amount.value == nil {
			continue
		}
		j := i + 1
		if !r.word(j, "ones") && !r.is(j, kindNoun, "strip") && !r.items[i].amount.plural {
			return
		}
		for r.word(j, "ones") || r.is(j, kindNoun, "strip") || r.is(j, kindAttr, "wide") {
			j++
		}
		from := j
		for r.word(j, "are", "is", "theres", "were", "was", "only", "just", "its", "really", "actually", "i", "we", "have", "got", "should", "be") {
			j++
		}
		if j == from || !r.free(j) || !r.items[j].amount.bare() || r.next(j) >= 0 {
			return
		}
		if n, whole := r.items[j].amount.whole(); !whole || n < 1 {
			return
		}
		r.phrase.Rows = append(r.phrase.Rows, Row{Count: r.amendment(j), Width: r.amendment(i)})
		r.items[i].used, r.items[j].used = true, true
		return
	}
}

// withinThou: "they're all within 5 thou", "strips within 1/32" says by how much
// thicknesses differ.
func (r *reader) withinThou() {
	if !r.says("within") {
		return
	}
	const most = 0.004 // metres
	for i := range r.items {
		if !r.word(i, "within") || i+1 >= len(r.items) || !r.free(i+1) || !r.length(i+1) || r.size(i+1) > most || r.items[i+1].amount.form == formWords {
			continue
		}
		from, to := r.clause(i)
		told := r.within(from, i, kindNoun, "strip") >= 0 || r.opensWithin(from, i, "they", "theyre", "all", "everything", "thicknesses") || r.is(i-1, kindAttr, "thick")
		if told && r.within(from, to, kindNoun, "cup", "bow", "gap", "panel", "bar", "joint", "wedge") < 0 && !r.opensWithin(i, to, "flat", "straight", "square") {
			r.items[i].meaning = meaning{kind: kindRole, id: "vary"}
			r.hear(i)
		}
	}
}

package grammar

import (
	"slices"
	"strings"

	"presshand/engine/unit"
)

// Words of parts that run together with what stands beside them.

// swapVerbs give one part up for another of its kind.
var swapVerbs = wordSet(`swap swop swapped swopped swapping change changed changing trade traded trading replace replaced replacing exchange exchanged switch switched switching ditch`)

// swappedBar: in "swap the bar for a 2 inch one" no bar is sought.
func (r *reader) swappedBar() {
	if !r.says("bar for") {
		return
	}
	for i := 2; i < len(r.items); i++ {
		it := &r.items[i]
		if !r.is(i, kindAsk) || it.word != "bar for" || !r.word(i-1, "the", "my", "our", "that", "this") || !swapVerbs[r.items[i-2].word] && !r.is(i-2, kindFix) {
			continue
		}
		at := it.end - len("for")
		behind := item{word: "for", text: r.text[at:it.end], start: at, end: it.end}
		it.meaning, it.word, it.text, it.end = meaning{kind: kindNoun, id: "bar"}, "bar", r.text[it.start:it.start+len("bar")], it.start+len("bar")
		r.hear(i)
		r.items = slices.Insert(r.items, i+1, behind)
		r.hear(i + 1)
	}
}

// inchStock: "1/2 in stock" is half-inch stock; half a strip is on no rack.
func (r *reader) inchStock() {
	if !r.says("in stock") {
		return
	}
	for i := 0; i+1 < len(r.items); i++ {
		am := r.items[i].amount
		if am == nil || !am.bare() || !r.isFraction(i) || !r.is(i+1, kindAsk) || r.items[i+1].word != "in stock" {
			continue
		}
		u, next := unit.Inch, &r.items[i+1]
		at := next.end - len("stock")
		am.unit, am.unitRaw = &u, "in"
		r.items[i].end = next.start + len("in")
		r.items[i].text = r.text[r.items[i].start:r.items[i].end]
		next.meaning, next.word, next.text, next.start = meaning{kind: kindNoun, id: "strip"}, "stock", r.text[at:next.end], at
		r.hear(i + 1)
	}
}

// sizedOne: the last word of "a half inch one" stands for the part.
func (r *reader) sizedOne() {
	for i := 1; i < len(r.items); i++ {
		it, before := &r.items[i], r.items[i-1].amount
		if it.amount == nil || before == nil || it.text != "one" || it.amount.link != linkNone || before.unit == nil || before.unit.Dimension != unit.Distance || r.is(i+1, kindUnit) || r.is(i+1, kindNoun) || i+1 < len(r.items) && r.items[i+1].amount != nil {
			continue
		}
		it.amount, it.word = nil, "one"
		r.hear(i)
	}
}

// laidAs: in "18 mm ply on top as a caul" the sheet is the caul.
func (r *reader) laidAs() {
	if !r.says("as", "for") || !r.means(kindNoun, "core") {
		return
	}
	for i := 2; i < len(r.items); i++ {
		if !r.is(i, kindNoun, "caul", "bar", "sled") {
			continue
		}
		j := i - 1
		for r.word(j, "a", "an", "the", "my", "our", "top", "side") {
			j--
		}
		if !r.word(j, "as", "for") {
			continue
		}
		from, _ := r.clause(i)
		k := r.within(from, j, kindNoun, "core")
		if k < 0 || !r.onlyLaid(k+1, j) || r.items[k].word == "core" || r.items[k].word == "substrate" {
			continue
		}
		sheet := r.items[k].word
		r.items[k].meaning = r.items[i].meaning
		r.items[k].word = r.items[i].word
		r.hear(k)
		for ; j <= i; j++ {
			r.items[j].meaning, r.items[j].word, r.items[j].used = meaning{kind: kindFill}, sheet, true
			r.hear(j)
		}
	}
}

// machines give strips a measure: the first its thickness, the second its width.
var (
	thicknessers = wordSet(`planer thicknesser sander planner thicknessing buzzer`)
	ripSaws      = wordSet(`saw tablesaw bandsaw ripsaw`)
)

// offMachine reads "strips come off the planer at 22", "the staves out of the
// thicknesser are 5/16".
func (r *reader) offMachine(i, p int) bool {
	if p < 0 || !r.word(i-1, "at", "are", "is", "measure", "were", "about", "around", "just", "now") || r.items[i].amount.link != linkNone || r.is(r.next(i), kindAttr) || r.is(r.next(i), kindNoun) {
		return false
	}
	k := p
	for r.word(k, "are", "is", "measure", "were", "at", "about", "just", "now") {
		k--
	}
	f := unit.StripThickness
	if ripSaws[r.items[max(k, 0)].word] {
		f = unit.StripWidth
	} else if k < 0 || !thicknessers[r.items[k].word] {
		return false
	}
	machine := k
	from, _ := r.clause(i)
	if k = r.leftMachine(k); k < 0 || r.within(from, k, kindNoun, "strip") < 0 || r.has(f) || r.size(i) > thickestOff && f == unit.StripThickness {
		return false
	}
	r.items[machine].used = true
	return r.bind(i, f)
}

// thickestOff, in metres, is more than one planes staves to.
const thickestOff = 0.1

// leftMachine is the word by which something left the machine at item k: "off the
// drum sander"; -1 where none is.
func (r *reader) leftMachine(k int) int {
	for k--; r.word(k, "the", "my", "our", "a", "drum", "belt", "table", "band", "of", "surface"); k-- {
	}
	if r.word(k, "off", "out", "from", "through", "thru") || r.is(k, kindVerb, "out") && strings.HasPrefix(r.items[k].word, "c") {
		return k
	}
	return -1
}

// onlyLaid reports whether [from, to) tells no more than where a sheet lies, or how
// thick it is.
func (r *reader) onlyLaid(from, to int) bool {
	for k := from; k < to; k++ {
		ok := r.idle(k) || r.items[k].amount != nil || r.word(k, "on", "over", "above", "laid", "sitting", "lying", "used", "working", "them", "it") || r.is(k, kindNoun, "strip") || r.is(k, kindAttr, "thick") || r.is(k, kindNoun, "panel") && r.items[k].word == "top"
		if !ok {
			return false
		}
	}
	return true
}

// comparedParts gives the number behind a part to the direction in which it is to differ:
// "a wider bar, 1", "the shorter bag is 6 ft".
func (r *reader) comparedParts() {
	for k := 1; k+1 < len(r.items); k++ {
		if r.items[k].kind != kindNoun || r.items[k-1].amount != nil {
			continue
		}
		c, ok := comparatives[r.items[k-1].word]
		if !ok || c.attr == "" {
			continue
		}
		i := k + 1
		if r.items[i].brk == ',' {
			i++
		}
		for r.word(i, "is", "its", "say", "like", "of", "at", "about", "maybe", "only", "just") {
			i++
		}
		if !r.free(i) || !r.length(i) || r.inRange(i) || r.is(r.next(i), kindNoun) || r.timesAt(i+1) {
			continue
		}
		f := attrFields[r.items[k].id][c.attr]
		if long := attrFields[r.items[k].id]["long"]; r.items[k-1].word == "shorter" && long != "" && !r.is(k, kindNoun, "bar") {
			f = long
		}
		if r.is(r.next(i), kindAttr) {
			f = "" // which says it
		}
		if r.is(k, kindNoun, "bar", "mat", "caul", "sled", "bag", "bed", "frame", "opening", "core") && f != "" && !r.has(f) && r.bind(i, f) || f == "" && r.is(r.next(i), kindAttr) || r.is(k, kindNoun, "strip") && c.attr == "wide" {
			r.items[k-1].used = true
		}
	}
}

// fatterThan: "one strip's 1/32 fatter than its neighbour" is by how much they differ.
func (r *reader) fatterThan(i int) bool {
	if !r.word(i+1, "fatter", "thicker", "thinner", "skinnier", "heavier", "fatter than", "thicker than", "thinner than") && !r.is(i+1, kindAttr, "thickest", "thinnest") || r.size(i) > mostApart || !r.mentions(kindNoun, "strip") {
		return false
	}
	k := i + 2
	for r.word(k, "than", "its", "the", "their", "next", "all", "other") {
		k++
	}
	if !r.is(k, kindPerson) && !r.word(k, "neighbor", "neighbour", "neighbors", "neighbours", "others", "rest", "one", "other") && !r.word(k-1, "other", "next") && !r.is(k, kindNoun, "strip") {
		return false
	}
	r.items[i+1].used = true
	return true
}

package grammar

import "strings"

// stockRows finds a width and a count in each of the rows that a stock is told in
// where their words, not their order, say which is which: "2 1/4 (x8), 3 (x6)",
// "2in: 9 ea. / 3in: 3 ea.", "qty 12 - 2.125", "twelve 70s and ten 55s". One row
// alone is none.
func (r *reader) stockRows() []pile {
	if r.mentions(kindNoun, "bar") || r.mentions(kindVacuum) || r.pressureSaid() || r.mentions(kindNoun, "core", "mat") {
		return nil
	}
	var rows []pile
	for i := range r.items {
		if p, ok := r.stockRow(i); ok {
			rows = append(rows, p)
		}
	}
	if len(rows) == 1 && !r.stockContext() {
		return nil
	}
	return rows
}

// stockRow reads a row whose count stands at item i.
func (r *reader) stockRow(i int) (pile, bool) {
	if !r.free(i) || r.items[i].amount.plural {
		return pile{}, false
	}
	n, ok := r.items[i].amount.whole()
	if !ok || n < 1 || n > mostOfAPile {
		return pile{}, false
	}
	if r.timesAt(i) {
		return pile{i, i - 1}, r.widthTimes(i)
	}
	if r.habit.Follows && (r.takenBefore(i) || r.spoiled(i)) {
		return pile{}, false // so many fewer of those that the thread has
	}
	for _, w := range [...]int{r.rowBefore(i), r.rowBehind(i)} {
		if w >= 0 && r.free(w) && r.length(w) && r.size(w) > 0.005 && r.size(w) < widestStrip && !r.timesAt(w) {
			return pile{i, w}, true
		}
	}
	return pile{}, false
}

// widthTimes: "2 1/4 x 7, 3 1/4 x 5", a width and how many.
func (r *reader) widthTimes(i int) bool {
	w := i - 1
	if !r.free(w) || !r.items[i].amount.bare() || r.timesAt(w) || r.timesAt(i+1) || r.is(r.next(i), kindAttr) || !r.mentions(kindRole, "target") && !r.mentions(kindAsk, "strips") || r.mentions(kindAttr, "thick") {
		return false
	}
	form := r.items[w].amount.form
	return (form == formMixed || form == formDecimal || r.items[w].amount.unit != nil || r.widthsLead()) && r.length(w) && r.size(w) < widestStrip
}

// rowBefore is the width that stands before the count at item i; -1 where none
// does: "2 1/4 (x8)", "3 inch ones (I have 6)", "2in: 9 ea.", "3 qty 5", "the 3 inch
// ones, there's 8".
func (r *reader) rowBefore(i int) int {
	if k := i - 2; k >= 0 && (r.items[i-1].brk == ',' || r.items[i-1].brk == ':') && r.items[k].amount != nil && r.items[k].amount.plural && (r.isBreak(i+1) || r.word(i+1, "off", "each", "ea", "and") || r.word(i+1, "of") && r.word(i+2, "them", "those", "these", "em")) {
		return k // "two and a halfs, twenty of them. fours, five."
	}
	if r.rowOfLine(i) {
		return i - 2
	}
	k := i - 1
	bracket := false
	for k >= 0 && (r.word(k, "x", "i", "have", "got", "we", "theres", "about", "of", "only", "just") || r.items[k].brk == '(') && r.items[k].amount == nil {
		bracket = bracket || r.items[k].brk == '('
		k--
	}
	ones := false
	for k >= 0 && r.items[k].amount == nil && (r.is(k, kindNoun, "strip") || r.word(k, "ones", "wide", "inch") || r.is(k, kindAttr, "wide")) {
		ones = ones || r.word(k, "ones")
		k--
	}
	switch {
	case k < 0:
		return -1
	case bracket && r.closesBracket(i):
		return k
	case (r.word(k, "qty", "quantity", "count") || r.items[k].brk == ':') && k > 0 && r.items[k-1].amount != nil && (r.items[k].brk != ':' || r.eachBehind(i) || r.word(i+1, "off", "pcs")):
		return k - 1
	case r.items[k].brk == ',' && k > 0 && (r.word(k-1, "ones") && r.wholeBehind(i) < 0 || r.is(k-1, kindNoun, "strip") && r.word(i-1, "theres", "have", "got") && r.isBreak(i+1)):
		return r.widthOfOnes(k - 1)
	case ones && k < i-1 && r.word(i-1, "have", "got", "theres"):
		return k
	}
	return -1
}

// closesBracket reports whether the bracket around item i ends behind it.
func (r *reader) closesBracket(i int) bool {
	end := i + 1
	for r.word(end, "pcs", "pieces", "of", "them", "off", "ea", "each", "left", "only") || r.is(end, kindNoun, "strip") {
		end++
	}
	return end < len(r.items) && r.items[end].brk == ')'
}

// widthOfOnes is the width in "the 3 inch ones" that ends at item k.
func (r *reader) widthOfOnes(k int) int {
	for k--; k >= 0 && r.items[k].amount == nil && (r.word(k, "wide") || r.is(k, kindAttr, "wide") || r.is(k, kindNoun, "strip")); k-- {
	}
	return k
}

// toldElsewhere reports whether the number at item i stands in the message again.
func (r *reader) toldElsewhere(i int) bool {
	v := r.items[i].amount.value
	for k := range r.items {
		if am := r.items[k].amount; k != i && am != nil && am.equals(v) {
			return true
		}
	}
	return false
}

// pluralWidths counts widths that name strips: "the 64s".
func (r *reader) pluralWidths() int {
	n := 0
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.plural {
			n++
		}
	}
	return n
}

// rowBehind is the width behind the count at item i: "qty 12 - 2.125", "twelve 70s",
// "(4) at 1 1/2", "22 pcs 70 mm".
func (r *reader) rowBehind(i int) int {
	k := i + 1
	if k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.plural {
		return k
	}
	if r.word(k, "of") && r.word(k+1, "the") && k+2 < len(r.items) && r.items[k+2].amount != nil && r.items[k+2].amount.plural && !r.toldElsewhere(k+2) {
		return k + 2 // "5 of the 64s"
	}
	if r.items[i].amount.link == linkNone && k < len(r.items) && r.items[k].amount != nil && r.items[k].amount.link == linkAt && r.pluralWidths() > 0 {
		return k
	}
	if r.word(i-1, "qty", "quantity") && k+1 < len(r.items) && (r.labels(k) || r.word(k, "of", "at")) {
		return k + 1
	}
	if r.word(k, "pcs") || r.is(k, kindNoun, "strip") {
		k++
		of := r.word(k, "of", "at", "á", "à", "a") || r.labels(k) && in(r.items[k-1].word, "pcs", "pieces", "pc")
		if of {
			k++
		}
		if of || in(r.items[k-1].word, "pcs", "pieces", "pc") {
			return k
		}
		return -1
	}
	if i > 0 && r.items[i-1].brk == '(' && r.closesBracket(i) && r.word(i+2, "at", "of") {
		return i + 3
	}
	return -1
}

// wholeBehind is the number that stands right behind item i, so that item i counts it: "7 38 mm
// ones, 4 82 mm ones"; -1 where none does.
func (r *reader) wholeBehind(i int) int {
	if i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkNone {
		return i + 1
	}
	return -1
}

// rowOfLine: a line that is nothing but "2 1/4: 14" tells a width and the
// count at item i.
func (r *reader) rowOfLine(i int) bool {
	w := i - 2
	if w < 0 || r.items[w].amount == nil || r.items[w].amount.link != linkNone || r.items[i].amount.link != linkNone || !r.items[i].amount.bare() || w > 0 && !strings.Contains(r.text[r.items[w-1].start:r.items[w].start], "\n") {
		return false
	}
	end := i + 1
	for r.word(end, "pcs", "pieces", "pc", "off", "ea") || r.is(end, kindNoun, "strip") {
		end++
	}
	ends := end >= len(r.items) || strings.Contains(r.text[r.items[end-1].end:r.items[end].end], "\n")
	return ends && r.items[i-1].brk == ':'
}

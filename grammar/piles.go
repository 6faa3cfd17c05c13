package grammar

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// A pile is a count and a width, by the items that say them.
type pile struct{ count, width int }

// piles reads strips in stock: "12 at 2 1/8, 9 @ 3", "22 pcs of 70 mm", "six 3
// 1/4, ten 2 1/8".
func (r *reader) piles() {
	r.notSeconds()
	r.reckoned()
	r.panelsTold()
	piles, lists := r.stockLists()
	var found []pile
	rows := r.stockRows()
	if each := r.ofEach(); len(each) > 0 {
		rows = each
	}
	chosen := len(rows) > 0 || r.stockContext()
	if chosen || len(lists) > 0 {
		r.panelTargets()
	}
	if chosen {
		for _, p := range rows {
			r.items[p.count].used, r.items[p.width].used = true, true
		}
		found = inOrder(append(rows, r.foundPiles(len(rows))...))
		piles = r.recountPiles(piles, lists, found)
	}
	if len(piles) == 0 {
		return
	}
	r.widthOfAll()
	r.killFew()
	from, to := len(r.items), 0
	for _, i := range lists {
		from, to = min(from, i), max(to, i)
	}
	for _, p := range found {
		from, to = min(from, p.count, p.width), max(to, p.count, p.width)
	}
	text := r.textOf(from, to)
	r.bound = append(r.bound, binding{Fact{Field: unit.StockPiles, Value: piles, Unit: r.bareUnit(nil, unit.Distance), Text: text, Again: r.rewidth}, from, false})
}

// inOrder sorts piles by where they stand.
func inOrder(ps []pile) []pile {
	slices.SortFunc(ps, func(a, b pile) int { return min(a.count, a.width) - min(b.count, b.width) })
	return ps
}

// foundPiles finds a count and a width for each pile that is said one by one, beside so
// many rows; one alone may be none.
func (r *reader) foundPiles(rows int) []pile {
	var found []pile
	reversed := r.widthsFirst() >= 2
	for i := range r.items {
		p, ok := r.pileAt(i)
		if reversed && r.widthFirst(i) {
			p, ok = pile{i + 1, i}, true
		}
		if ok {
			found = append(found, p)
			r.items[p.count].used, r.items[p.width].used = true, true
		}
	}
	found = r.outlier(found)
	pressed := (r.mentions(kindNoun, "bar") || r.mentions(kindVacuum) || r.pressureSaid()) && !r.mentions(kindRole, "target", "trim")
	if rows == 0 && len(found) == 1 && (!r.wantsWidth() || pressed) {
		r.items[found[0].count].used, r.items[found[0].width].used = false, false
		return nil
	}
	return found
}

// pilesOf returns the piles found, those that cannot be given back.
func (r *reader) pilesOf(found []pile) unit.Piles {
	var piles unit.Piles
	last := -1 // the item of the width before
	for at, p := range found {
		n, _ := r.items[p.count].amount.whole()
		w, _, ok := r.valueOf(r.items[p.width].amount, unit.StripWidth)
		if n > mostOfAPile {
			r.refuse(unit.StockPiles, r.items[p.count].text, fmt.Sprintf("a count of up to %d", mostOfAPile))
			r.unuse(r.items[p.width].text)
			continue
		}
		if !ok || impossible(unit.StripWidth, w) != "" || n < 1 {
			r.items[p.count].used, r.items[p.width].used = false, false
			continue
		}
		if len(found) > 1 && r.pileKept(found, at) {
			r.unuse(r.textOf(min(p.count, p.width), max(p.count, p.width)))
			continue
		}
		if k := r.loneCountBefore(p.count); last >= 0 && k > last {
			r.items[k].used = true
			r.unuse(r.items[k].text)
			piles = append(piles, unit.Pile{Width: w, Count: n}) // "6, no 4 @ 3 3/4"
		} else if last >= 0 && r.within(last, p.count, kindFix) >= 0 {
			piles = r.instead(piles, unit.Pile{Width: w, Count: n})
		} else {
			piles = append(piles, unit.Pile{Width: w, Count: n})
		}
		last = p.width
		if m := r.countFixed(found, at); m > 0 && len(piles) > 0 {
			piles[len(piles)-1].Count = m
			last = -1
		} else if m := r.goneOf(found, at); m > 0 && len(piles) > 0 {
			piles[len(piles)-1].Count -= m
		}
	}
	return r.correctPiles(piles)
}

// recountPiles adds the piles found behind lists; one that says a width of a list
// again, behind a word of correction, takes the place of that pile.
func (r *reader) recountPiles(listed unit.Piles, lists []int, found []pile) unit.Piles {
	for k, p := range r.pilesOf(found) {
		if k < len(found) && len(lists) > 0 && r.within(lists[0], found[k].count, kindFix) >= 0 {
			listed = r.instead(listed, p)
		} else {
			listed = append(listed, p)
		}
	}
	return listed
}

// instead puts a pile that corrects another in its place: in that of its width,
// else in the last one's.
func (r *reader) instead(ps unit.Piles, p unit.Pile) unit.Piles {
	old := slices.IndexFunc(ps, func(l unit.Pile) bool { return math.Abs(l.Width-p.Width) < 1e-6 })
	if old < 0 {
		old = len(ps) - 1
	}
	if old < 0 {
		return append(ps, p)
	}
	r.unuse(strconv.Itoa(ps[old].Count))
	ps[old] = p
	return ps
}

// stockContext reports whether the message chooses among strips.
func (r *reader) stockContext() bool {
	times := 0
	if r.linked(linkTimes) {
		if r.widthsFirst() >= 2 {
			return true
		}
		times = r.bareTimes()
	}
	if (r.mentions(kindRole, "target", "trim") || r.mentions(kindNoun, "fence") && r.wedgeWindow()) && r.solving == "" && (r.countsOfWidths() || r.spokenCounts() >= 2) {
		return true
	}
	if r.mentions(kindAsk, "strips") || r.countsAtWidths() || times >= 2 && (r.mentions(kindNoun, "opening", "fence", "wedge") || r.mentions(kindRole, "target", "trim")) {
		return true
	}
	if r.says("that", "which") || r.means(kindRole, "target") {
		if n, wide := r.countsThatAre(); n >= 2 || n+wide >= 2 && r.mentions(kindRole, "target") {
			return true
		}
	}
	if times >= 2 && r.mentions(kindNoun, "panel") && r.mentions(kindAttr, "wide") && !r.mentions(kindNoun, "bar") && !r.mentions(kindVacuum) && !r.pressureSaid() {
		return true // "12x 80mm, 9x 65mm, panel 600mm wide"
	}
	if r.numberedWidths() >= 2 || times >= 2 && r.mentions(kindNoun, "panel") && r.madeFrom() {
		return true
	}
	if r.ofPairs() >= 2 && (r.mentions(kindNoun, "panel", "fence") || r.mentions(kindNoun, "wedge") && r.wedgeWindow() || r.mentions(kindAttr, "wide") || r.solving == unit.PanelWidth) || r.countsOfPlurals() >= 2 {
		return true
	}
	have := r.hasStock()
	if have && r.mentions(kindNoun, "panel") && r.mentions(kindAttr, "wide") && !r.mentions(kindAttr, "thick") && !r.mentions(kindNoun, "bar", "press", "bag", "frame") && !r.mentions(kindVacuum) && !r.pressureSaid() && !r.dayPlan() {
		return true
	}
	if r.mentions(kindNoun, "panel") && (have || r.madeFrom()) && r.spokenCounts() >= 2 && !r.mentions(kindNoun, "bar") && !r.mentions(kindVacuum) && !r.pressureSaid() {
		return true // "two tops at 30, stock is twelve 2 1/2, ten 3 1/4"
	}
	return have && (r.mentions(kindRole, "target", "trim") || r.wedgeWindow() || r.getsOut())
}

// hasStock reports whether strips are said to be there: "got", "leftovers", "have".
func (r *reader) hasStock() bool {
	if !r.says("have", "got", "theres", "pile", "leftover", "leftovers", "left", "offcuts", "heap", "stash", "found", "stock") {
		return false
	}
	for i := range r.items {
		if r.items[i].amount != nil {
			continue
		}
		switch r.items[i].word {
		case "have":
			if !r.word(i-1, "would", "could", "should", "might", "must", "may") {
				return true // not "Harlan would have known"
			}
		case "got", "theres", "pile", "leftover", "leftovers", "left", "offcuts", "heap", "stash", "found", "stock":
			return true
		}
	}
	return false
}

// getsOut: "can i get 24 out of it", "can I get to 50?".
func (r *reader) getsOut() bool {
	for i := range r.items {
		from, to := i-1, i+1
		for r.word(from, "a", "an", "one", "to") {
			from--
		}
		for r.is(to, kindAttr, "wide") {
			to++
		}
		out := r.word(to, "out", "out of", "outta", "from") || r.is(to, kindVerb, "out") || r.is(to, kindNoun, "panel") && strings.HasSuffix(r.items[to].word, " out of")
		if r.free(i) && (r.word(from, "get", "get to", "make") && out || r.getTo(i)) {
			return true
		}
	}
	return false
}

// countsAtWidths: two or more "12 @ 2 1/8" are a stock list by themselves.
func (r *reader) countsAtWidths() bool {
	if !r.says("at") && !r.linked(linkAt) {
		return false
	}
	n := 0
	for i := 1; i < len(r.items); i++ {
		am, before := r.items[i].amount, r.items[i-1].amount
		if am == nil {
			continue
		}
		linked := am.link == linkAt
		if i > 1 && am.form == formWords && r.word(i-1, "at") {
			before, linked = r.items[i-2].amount, true // "nine at an inch and a half"
		}
		if before == nil || !linked || am.unit != nil && am.unit.Dimension != unit.Distance {
			continue
		}
		if _, ok := before.whole(); ok && before.link == linkNone && !(i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTimes) {
			n++
		}
	}
	return n >= 2
}

// countsOfWidths: "24 lengths of 60", "7 off at 50".
func (r *reader) countsOfWidths() bool {
	for i := range r.items {
		if !r.free(i) {
			continue
		}
		if r.countGlued(i) && r.mentions(kindRole, "target") {
			return true
		}
		if _, ok := r.items[i].amount.whole(); !ok || i+3 >= len(r.items) {
			continue
		}
		if r.is(i+1, kindRole, "name") && in(r.items[i+1].word, "no .", "no.", "no", "nr") && r.free(i+2) && r.length(i+2) {
			return true
		}
		if (r.is(i+1, kindNoun, "strip") || r.word(i+1, "off", "ea", "each") || r.is(i+1, kindRole, "in a row")) && r.free(i+2) && r.length(i+2) && r.mentions(kindRole, "target") && r.anotherSuch(i) {
			return true
		}
		w := i + 2
		if r.word(w, "the", "these", "those") {
			w++
		}
		if r.word(i+1, "of") && r.free(w) && r.length(w) && r.items[i].amount.form != formWords && r.items[w].amount.form != formWords && (w == i+2 || r.ofPairs() >= 2) {
			return true
		}
		if (r.word(i+1, "off") || r.is(i+1, kindAttr, "long") && isPlural(r.items[i+1].word) || r.is(i+1, kindNoun, "strip")) && (r.word(i+2, "at", "of") || r.items[i+2].brk == '@') && r.free(i+3) && r.length(i+3) && !(i+4 < len(r.items) && r.items[i+4].amount != nil && r.items[i+4].amount.link == linkTimes) {
			return true
		}
	}
	return false
}

// countGlued: the x of "200x 12mm" goes with the count.
func (r *reader) countGlued(i int) bool {
	n, whole := r.items[i].amount.whole()
	return whole && n > 1 && r.items[i].amount.bare() && r.timesAt(i+1) && !r.timesAt(i) && !r.timesAt(i+2) && r.text[r.items[i].end:r.items[i+1].start] == "x "
}

func (r *reader) wedgeWindow() bool { return r.mentions(kindNoun, "wedge") }

func (r *reader) wantsWidth() bool {
	return r.mentions(kindRole, "target", "trim") || r.mentions(kindNoun, "panel", "fence") || r.mentions(kindAsk, "strips") || r.wedgeWindow() && r.ofPairs() > 1
}

// timesPairs counts the sizes of two numbers: one alone is a panel's, several
// beside a width that is needed are stock.
func (r *reader) timesPairs() int {
	n := 0
	for i := range r.items {
		if am := r.items[i].amount; am != nil && am.link == linkTimes {
			n++
		}
	}
	if !r.mentions(kindRole, "target") && !r.mentions(kindAsk, "strips") && r.bareTimes() < 2 {
		return 0
	}
	return n
}

// anotherSuch: "10 pieces 60 and 8 pieces 45": a second count with a width behind
// the same word makes a list of the first.
func (r *reader) anotherSuch(i int) bool {
	for j := i + 3; j+2 < len(r.items); j++ {
		if _, ok := 0, false; r.free(j) && r.free(j+2) && r.length(j+2) && r.items[j+1].word == r.items[i+1].word {
			_, ok = r.items[j].amount.whole()
			if ok {
				return true
			}
		}
	}
	return false
}

// bareTimes counts "9x 65": a whole number, x and a width that is no fraction of it.
func (r *reader) bareTimes() int {
	n := 0
	for i := 1; i < len(r.items); i++ {
		am := r.items[i].amount
		if am == nil || am.link != linkTimes || r.items[i-1].amount == nil || i+1 < len(r.items) && r.items[i+1].amount != nil && r.items[i+1].amount.link == linkTimes {
			continue
		}
		if _, ok := r.items[i-1].amount.whole(); ok && r.items[i-1].amount.link == linkNone && r.size(i) < 0.4 {
			n++
		}
	}
	return n
}

// outlier gives back a pile that stands behind "need": "need 4 at 24".
func (r *reader) outlier(ps []pile) []pile {
	out := ps[:0]
	for _, p := range ps {
		k := r.prev(p.count)
		if r.is(k, kindRole, "target") {
			r.items[p.count].used, r.items[p.width].used = false, false
			continue
		}
		out = append(out, p)
	}
	return out
}

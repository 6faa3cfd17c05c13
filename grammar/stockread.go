package grammar

import "presshand/engine/unit"

// stockLists reads the lists of a stock, each of them whole, and returns the
// items that they stand at. Where the message presses strips and chooses none,
// widths without counts are those of the strips.
func (r *reader) stockLists() (piles unit.Piles, at []int) {
	for i := range r.items {
		l := r.items[i].list
		if l == nil || !r.ofStrips(l) {
			continue
		}
		r.items[i].used = true
		if !l.counted && r.pressed() {
			r.widthsOf(i, l)
			continue
		}
		total, each := 0, r.eachOfList(i)
		for k := range l.entries {
			p, ok := r.pileOfEntry(l, &l.entries[k])
			if !ok {
				r.unuse(l.entries[k].text)
				continue
			}
			p.Count *= each
			if len(at) > 0 && r.within(at[len(at)-1], i, kindFix) >= 0 {
				piles = r.instead(piles, p)
			} else {
				piles = withPile(piles, p, !l.counted)
			}
			total += p.Count
		}
		if p, ok := r.lastOfList(i, l); ok {
			piles = withPile(piles, p, true)
			total++
		}
		r.countOfList(i, total)
		at = append(at, i)
	}
	return piles, at
}

// eachOfList is how many there are of each width of the list at item i: "3 each of 1 1/2, 2
// and 3", "2, 2 1/2 and 3, four of each"; one where nothing is said.
func (r *reader) eachOfList(i int) int {
	if r.items[i].list.counted {
		return 1
	}
	count := -1
	switch {
	case r.word(i-1, "of") && r.is(i-2, kindRole, "in a row"):
		count = i - 3
	case r.is(i+3, kindRole, "in a row") && r.word(i+2, "of"):
		count = i + 1
	case r.is(i+4, kindRole, "in a row") && r.word(i+3, "of") && r.isBreak(i+1):
		count = i + 2
	}
	if n, ok := r.spokenOrWhole(count); ok && n > 0 && n <= mostOfAPile && r.free(count) {
		r.items[count].used = true
		return n
	}
	return 1
}

// lastOfList is the last width of "5 1/4, 4 7/8, 6 and 4 1/4 wide", where the word that
// says what they are stands behind it.
func (r *reader) lastOfList(i int, l *stockList) (unit.Pile, bool) {
	w := i + 2
	if l.counted || !r.word(i+1, "and") || !r.free(w) || !r.length(w) || !r.is(w+1, kindAttr, "wide") || r.size(w) > widestStrip {
		return unit.Pile{}, false
	}
	v, _, ok := r.valueOf(r.items[w].amount, unit.StripWidth)
	if !ok || impossible(unit.StripWidth, v) != "" {
		return unit.Pile{}, false
	}
	r.items[w].used, r.items[w+1].used = true, true
	return unit.Pile{Width: v, Count: 1}, true
}

// ofStrips reports whether a list can be of strips: the message chooses some,
// names one of their words, or is nothing but the list.
func (r *reader) ofStrips(l *stockList) bool {
	if l.unit != nil || r.mentions(kindNoun, "strip") || r.mentions(kindAttr, "wide") || r.mentions(kindRole, "target", "trim") || r.stockContext() {
		return true
	}
	for i := range r.items {
		if r.items[i].list == nil && !r.idle(i) && !r.isBreak(i) {
			return false
		}
	}
	return true
}

// pressed reports whether the message is about pressing strips rather than
// choosing them.
func (r *reader) pressed() bool {
	return !r.stockContext() && (r.mentions(kindNoun, "bar") || r.mentions(kindVacuum) || r.pressureSaid())
}

// widthsOf gives the strips the widths of a list.
func (r *reader) widthsOf(i int, l *stockList) {
	var ws unit.Numbers
	for k := range l.entries {
		p, ok := r.pileOfEntry(l, &l.entries[k])
		if !ok {
			r.unuse(l.entries[k].text)
			continue
		}
		ws = append(ws, p.Width)
	}
	if len(ws) > 0 {
		r.countOfList(i, len(ws))
		r.say(i, unit.StripWidths, ws)
	}
}

// pileOfEntry is one entry as a pile; false where it cannot be strips.
func (r *reader) pileOfEntry(l *stockList, e *stockEntry) (unit.Pile, bool) {
	am := e.width
	if am.unit == nil {
		am.unit = l.unit
	}
	w, _, ok := r.valueOf(&am, unit.StripWidth)
	n := max(e.count, 1)
	if !ok || impossible(unit.StripWidth, w) != "" || n > mostOfAPile {
		return unit.Pile{}, false
	}
	return unit.Pile{Width: w, Count: n}, true
}

// mostOfAPile is more than any rack has of one width.
const mostOfAPile = 100_000

// withPile adds a pile, or with merge counts one more strip of a width that is
// there already.
func withPile(piles unit.Piles, p unit.Pile, merge bool) unit.Piles {
	if merge {
		for k := range piles {
			if piles[k].Width == p.Width {
				piles[k].Count += p.Count
				return piles
			}
		}
	}
	return append(piles, p)
}

// countOfList uses up the count of a list's strips where it stands before it:
// "300 strips: 42 45 48 …".
func (r *reader) countOfList(i, total int) {
	for j := i - 1; j >= 0 && j >= i-8; j-- {
		if am := r.items[j].amount; am != nil {
			if n, ok := am.whole(); ok && n == total && !r.items[j].used && r.is(r.next(j), kindNoun, "strip") {
				r.items[j].used = true
			}
			return
		}
	}
}

// widthFirst: "60mm x 14", a width with its unit and how many there are.
func (r *reader) widthFirst(i int) bool {
	if !r.timesAt(i+1) || !r.free(i) || !r.free(i+1) || r.timesAt(i) || r.timesAt(i+2) {
		return false
	}
	w, n := r.items[i].amount, r.items[i+1].amount
	_, whole := n.whole()
	return w.is(unit.Distance) && w.unit != nil && n.bare() && whole && !r.is(r.next(i+1), kindAttr) && (r.isBreak(i-1) || r.items[i-1].amount == nil && r.idle(i-1))
}

func (r *reader) widthsFirst() int {
	n := 0
	for i := range r.items {
		if r.timesAt(i+1) && r.widthFirst(i) {
			n++
		}
	}
	return n
}

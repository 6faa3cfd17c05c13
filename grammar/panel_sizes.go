package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// A sizedPanel is so many panels of one size, by the items that say so; n is how
// many numbers the size has.
type sizedPanel struct{ count, size, n int }

// panelSizes reads panels of several sizes in one message: "3 panels 24x48 and 5
// panels 18x36".
func (r *reader) panelSizes() {
	switch r.topic {
	case "", Schedule, Strips, Load:
	default:
		return
	}
	var found []sizedPanel
	for i := 1; i < len(r.items); i++ {
		if p, ok := r.sizedPanelAt(i); ok {
			found = append(found, p)
			i += p.n - 1
		}
	}
	if len(found) < 2 || r.corrected(found) {
		return
	}
	piles := r.pilesOfPanels(found)
	if piles == nil {
		return
	}
	for _, p := range found {
		r.items[p.count].used = true
		for k := p.size; k < p.size+2; k++ {
			r.items[k].used = true
		}
		if p.n > 2 {
			r.bind(p.size+2, unit.PanelThickness)
		}
	}
	first, last := found[0].count, found[len(found)-1]
	text := r.textOf(first, last.size+last.n-1)
	r.bound = append(r.bound, binding{Fact{Field: unit.Targets, Value: piles, Unit: r.bareUnit(r.items[last.size].amount, unit.Distance), Text: text}, first, false})
}

// sizedPanelAt reads a size at item i with its count before it.
func (r *reader) sizedPanelAt(i int) (sizedPanel, bool) {
	if !r.free(i) || !r.length(i) || i+1 >= len(r.items) || r.items[i].amount.link == linkTimes {
		return sizedPanel{}, false
	}
	end := i + 1
	for end < len(r.items) && r.free(end) && r.length(end) && r.items[end].amount.link == linkTimes {
		end++
	}
	n := end - i
	if n < 2 || n > 3 || r.is(r.next(end-1), kindNoun) && !r.is(r.next(end-1), kindNoun, "panel") {
		return sizedPanel{}, false
	}
	for j := i - 1; j >= 0 && j >= i-4; j-- {
		switch {
		case r.free(j):
			c, ok := r.items[j].amount.whole()
			return sizedPanel{j, i, n}, ok && c > 0 && r.items[j].amount.link == linkNone && (j < i-1 || r.items[i].amount.link == linkAt || r.is(r.next(end-1), kindNoun, "panel"))
		case r.is(j, kindNoun, "panel"), r.word(j, "at", "of", "more", "are", "in", "that", "off", "each"), r.items[j].brk == '@', r.is(j, kindWood), r.items[j].brk == 'x':
		default:
			return sizedPanel{}, false
		}
	}
	return sizedPanel{}, false
}

// corrected reports whether one size is said in place of another, or offered
// beside it.
func (r *reader) corrected(found []sizedPanel) bool {
	first, last := found[0].count, found[len(found)-1].size
	for k := first; k < last; k++ {
		if r.is(k, kindFix) || r.word(k, "or", "vs", "versus") || r.is(k, kindRole, "compare") || r.items[k].amount != nil && r.items[k].amount.link == linkOr {
			return true
		}
	}
	return false
}

// pilesOfPanels returns panels by size, their lengths too; nil where they are all
// alike or one cannot be.
func (r *reader) pilesOfPanels(found []sizedPanel) unit.Piles {
	var piles unit.Piles
	several := false
	for _, p := range found {
		r.spreadUnit(p.size, p.size+p.n)
		if r.sheet(p.size, p.size+p.n) {
			u := unit.Foot
			r.items[p.size].amount.unit, r.items[p.size+1].amount.unit = &u, &u
		}
		w, _, okW := r.valueOf(r.items[p.size].amount, unit.PanelWidth)
		l, _, okL := r.valueOf(r.items[p.size+1].amount, unit.PanelLength)
		if !okW || !okL || impossible(unit.PanelWidth, w) != "" || impossible(unit.PanelLength, l) != "" || min(w, l) < narrowestPanel {
			return nil
		}
		n, _ := r.items[p.count].amount.whole()
		piles = append(piles, unit.Pile{Width: w, Length: l, Count: n})
		several = several || w != piles[0].Width || l != piles[0].Length
	}
	if !several {
		return nil
	}
	return piles
}

// narrowestPanel tells a panel's size from the section of a strip, in mm.
const narrowestPanel = 100

// pressesNamed counts the presses that are told by a number.
func (r *reader) pressesNamed() int {
	n := 0
	for i := range r.items {
		if r.is(i, kindNoun, "press", "bag", "frame") && !isPlural(r.items[i].word) {
			if k, whole := r.wholeAt(i + 1); whole && k < 10 && r.items[i+1].amount.bare() && !r.is(i+2, kindUnit) {
				n++
			}
		}
	}
	return n
}

// sizedTargets reports whether panels of several sizes were read, lengths and all.
func (r *reader) sizedTargets() bool {
	for _, b := range r.bound {
		if piles, ok := b.fact.Value.(unit.Piles); ok && b.fact.Field == unit.Targets && piles[0].Length > 0 {
			return true
		}
	}
	return false
}

// tooNarrow refuses a panel without a unit that is narrower than one of its strips, "8 panels
// 2x6 of 2 1/4 strips": it may be in feet.
func (r *reader) tooNarrow() {
	strip, panel := -1, -1
	for k := range r.bound {
		switch r.bound[k].fact.Field {
		case unit.StripWidth:
			strip = k
		case unit.PanelWidth:
			if panel >= 0 {
				return // rivals are asked about
			}
			panel = k
		}
	}
	if strip < 0 || panel < 0 {
		return
	}
	s, _ := r.bound[strip].fact.Value.(unit.Number)
	p, _ := r.bound[panel].fact.Value.(unit.Number)
	if am := r.items[r.bound[panel].from].amount; p >= s || am == nil || !am.bare() || am.hearsay || r.items[r.bound[strip].from].amount == nil {
		return
	}
	r.refuse(unit.PanelWidth, r.bound[panel].fact.Text, "at least as wide as a strip, or say its unit, like 2x6 ft")
	r.bound = slices.DeleteFunc(r.bound, func(b binding) bool {
		if b.fact.Field == unit.PanelLength {
			r.unuse(b.fact.Text)
		}
		return b.fact.Field == unit.PanelWidth || b.fact.Field == unit.PanelLength
	})
}

// onlySize reports whether the size that ends at item i is the only one, and no other panel
// is spoken of: not "one door 30x80 and two 32x80".
func (r *reader) onlySize(i int) bool {
	for k := i + 1; k < len(r.items); k++ {
		if r.timesAt(k) || r.is(k, kindNoun, "panel") || r.word(k, "another", "other", "rest", "others") {
			return false
		}
	}
	return true
}

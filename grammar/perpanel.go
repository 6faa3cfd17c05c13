package grammar

import (
	"fmt"

	"presshand/engine/unit"
)

// fewest strips that a panel is glued of, where a count is shared out.
const fewestShared = 3

// sharedOut reads "24 strips for 4 panels" and "40 strips total, 5 panels" as the
// strips of one panel, which is what the count of strips is.
func (r *reader) sharedOut() {
	p := r.measureOf(unit.PanelCount)
	if p < 0 {
		return
	}
	s := r.measureOf(unit.StripCount)
	if s < 0 {
		return
	}
	all, panels := int(number(r.bound[s])), int(number(r.bound[p]))
	from, to := r.bound[s].from, r.bound[p].from
	if from >= to && !r.saidInAll(from) {
		return
	}
	total := r.saidInAll(from)
	if panels < 2 || !total && !(r.word(to-1, "for") && from < to) {
		return
	}
	if all%panels != 0 || all/panels < fewestShared {
		if total || all/panels >= fewestShared {
			r.refuse(unit.StripCount, r.bound[s].fact.Text, "the strips of one panel")
			r.drop(unit.StripCount)
		}
		return
	}
	r.bound[s].fact.Value = unit.Number(all / panels)
	r.bound[s].fact.Note = fmt.Sprintf("%d in all, shared out", all)
}

// ofEachPanel: "8 strips a panel" speaks of the strips.
func (r *reader) ofEachPanel(k int) bool {
	return r.is(k, kindNoun, "panel") && (r.word(k-1, "a", "per", "each", "every", "the") || r.is(k-1, kindRole, "in a row")) && r.is(k-2, kindNoun, "strip")
}

func number(b binding) unit.Number {
	v, _ := b.fact.Value.(unit.Number)
	return v
}

// saidInAll reports whether the strips counted at item i are all of them.
func (r *reader) saidInAll(i int) bool {
	for k := i + 1; k < len(r.items) && k <= i+4; k++ {
		if r.word(k, "total", "altogether", "overall") || r.word(k, "all") && r.word(k-1, "in") {
			return true
		}
		if r.items[k].amount != nil || r.isBreak(k) {
			return false
		}
	}
	return false
}

// bySpan corrects the part that a bare width was taken for: none is as wide as a
// panel and one strip, and no panel as narrow as its strips.
func (r *reader) bySpan(i int, noun, attr string) string {
	const widestOfAll = 0.45
	switch {
	case attr != "wide" || r.has(unit.StockPiles):
	case noun == "strip" && r.topic != Flatten && r.size(i) > widestOfAll && !r.has(unit.PanelWidth):
		return "panel"
	case noun == "panel" && small(r.size(i)) && (r.mentions(kindNoun, "strip") || r.mentions(kindNoun, "joint", "gap") && !r.mentions(kindNoun, "panel")) && !r.has(unit.StripWidth):
		return "strip"
	}
	return noun
}

// panelsOfSoMany reads how many strips each panel has in "14 boards, two panels of 7" and, of a
// thread's strips, in "split it in two panels of nine".
func (r *reader) panelsOfSoMany() {
	if !r.says("of") || !r.means(kindNoun, "panel") {
		return
	}
	for k := 1; k+2 < len(r.items); k++ {
		if !r.is(k, kindNoun, "panel") || !isPlural(r.items[k].word) || !r.word(k+1, "of") || r.items[k-1].amount == nil || !r.free(k+2) || !r.items[k+2].amount.bare() || !r.isBreak(k+3) && !r.word(k+3, "then", "each", "now", "instead", "please") {
			continue
		}
		n, whole := r.wholeAt(k + 2)
		panels, counted := r.wholeAt(k - 1)
		if !whole || !counted || n < fewestShared || panels < 2 || r.has(unit.StripCount) {
			return
		}
		all := r.stripsInAll(n * panels)
		if all < 0 && !(r.items[k+2].amount.form == formWords && (r.habit.Follows || r.mentions(kindNoun, "strip"))) {
			r.items[k+2].amount.dead = r.mentions(kindNoun, "strip") && n < 20 // so thick, so wide, or of so many
			return
		}
		if r.bind(k+2, unit.StripCount) && all >= 0 {
			r.items[all].used = true
			if fact := r.justBound(k + 2); fact != nil {
				fact.Again = append(fact.Again, r.items[all].text)
			}
		}
		return
	}
}

// stripsInAll is the item that counts n strips; -1 where none does.
func (r *reader) stripsInAll(n int) int {
	for i := range r.items {
		if m, ok := r.wholeAt(i); ok && m == n && r.free(i) && r.is(r.counted(i), kindNoun, "strip") {
			return i
		}
	}
	return -1
}

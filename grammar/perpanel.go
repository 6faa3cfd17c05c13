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
	s, p := r.measureOf(unit.StripCount), r.measureOf(unit.PanelCount)
	if s < 0 || p < 0 {
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

package grammar

import (
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// lumberBar reads "bar is a 2x4 on edge": the larger side stands up, or lies where it is
// said to lie flat, and boards named by a nominal size measure what they dress to.
func (r *reader) lumberBar(i, end int) bool {
	at := r.layingAt(end)
	edge := at < len(r.items) && in(r.items[at].word, "on edge", "on the edge", "edge", "upright")
	flat := at < len(r.items) && in(r.items[at].word, "flat", "flat side", "the flat")
	if end-i != 2 || r.has(unit.BarHeight) || r.has(unit.BarWidth) {
		return false
	}
	small, large := i, i+1
	if r.size(i) > r.size(i+1) {
		small, large = large, small
	}
	noun := r.productNoun(i, end, false)
	if _, _, nominal := r.dressedSize(small, large); edge && nominal && noun == "bed" {
		noun = "bar" // "on the bed I've a 1x2 on edge"
	}
	if noun != "bar" && !r.barBehind(at) {
		if !r.boardInstead(small, large, noun) {
			return false
		}
		if !edge && !flat {
			r.unuse(r.textOf(i, i+1)) // "what about a 2x4" may be a panel in feet
			r.items[i].used, r.items[i+1].used = true, true
			return true
		}
	}
	if !edge && !flat {
		return r.lyingUnsaid(small, large)
	}
	tall, wide := large, small
	if flat {
		tall, wide = small, large
	}
	if edge {
		r.items[at].used, r.items[at].meaning = true, meaning{}
	}
	if !r.bind(tall, unit.BarHeight) {
		return false
	}
	r.dressed(tall, small, large)
	r.bind(wide, unit.BarWidth)
	r.dressed(wide, small, large)
	return true
}

// barBehind reports whether "for a bar" stands at item at, perhaps behind how the board lies.
func (r *reader) barBehind(at int) bool {
	if at < len(r.items) && in(r.items[at].word, "on edge", "on the edge", "edge", "upright", "flat", "flat side", "the flat") {
		at++
	}
	return r.word(at, "for", "as") && (r.is(at+1, kindNoun, "bar") || r.word(at+1, "a", "the", "my", "our") && r.is(at+2, kindNoun, "bar"))
}

// boardInstead reports whether a follow-up names a board with no word of what it is for:
// "use a 2x4 on edge instead".
func (r *reader) boardInstead(small, large int, noun string) bool {
	_, _, nominal := r.dressedSize(small, large)
	return nominal && r.habit.Follows && (noun == "" || noun == "panel") && !r.mentions(kindNoun, "panel", "bag", "press", "sled", "core", "face", "frame") && r.amountsIn(0, len(r.items)) == 2
}

// lyingUnsaid refuses "bar is a 2x4", which may stand or lie and measures neither 2 nor 4.
func (r *reader) lyingUnsaid(small, large int) bool {
	flat, edge, ok := r.dressedSize(small, large)
	if !ok {
		return false
	}
	r.items[small].used, r.items[large].used = true, true
	r.refuse(unit.BarHeight, r.textOf(min(small, large), max(small, large)), "how high it stands, such as "+quarters(flat)+" in flat or "+quarters(edge)+" in on edge")
	return true
}

// layingAt is the item behind a size that may say how its board lies: "bar on its edge".
func (r *reader) layingAt(end int) int {
	if r.is(end, kindNoun, "bar") {
		end++
	}
	for r.word(end, "on", "the", "its", "standing", "stood", "set", "laid", "lying", "put") {
		end++
	}
	return end
}

// dressed makes the measure bound last at item i that of a dressed board, where items
// small and large are "a 2x4".
func (r *reader) dressed(i, small, large int) {
	t, w, ok := r.dressedSize(small, large)
	f := r.justBound(i)
	if f == nil || !ok {
		return
	}
	f.Value, f.Unit, f.Note, f.Text = unit.Number(round(t*25.4)), unit.Inch, "nominal size, dressed", r.textOf(small, large)
	if i == large {
		f.Value = unit.Number(round(w * 25.4))
	}
}

// dressedSize is what "a 2x4" of items small and large measures, in inches.
func (r *reader) dressedSize(small, large int) (thickness, width float64, ok bool) {
	a, okA := r.items[small].amount.whole()
	b, okB := r.items[large].amount.whole()
	thickness, width = nominalThickness[a], nominalWidth[b]
	ok = okA && okB && thickness > 0 && width > 0 && !r.habit.Metric && r.items[small].amount.bare() && r.items[large].amount.bare() &&
		(r.word(min(small, large)-1, "a", "an", "one") || r.is(max(small, large)+1, kindNoun, "bar") || r.barBehind(r.layingAt(max(small, large)+1)))
	return thickness, width, ok
}

// quarters writes inches in quarters: "3 1/2".
func quarters(inches float64) string {
	whole := int(inches)
	part := [...]string{"", "1/4", "1/2", "3/4"}[int((inches-float64(whole))*4)]
	if whole == 0 {
		return part
	}
	return strings.TrimSpace(strconv.Itoa(whole) + " " + part)
}

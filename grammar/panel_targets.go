package grammar

import (
	"slices"

	"presshand/engine/unit"
)

// A panelTarget is where a count of panels and their width stand.
type panelTarget struct{ count, width, n int }

// panelTargets reads panels of several widths that strips must fill: "2 panels 18
// wide, 3 panels 24 wide".
func (r *reader) panelTargets() {
	if r.has(unit.Targets) {
		return
	}
	var ts []panelTarget
	for i := range r.items {
		if len(ts) > 0 && r.endsTargets(i) {
			break
		}
		if !r.free(i) || r.timesAt(i+1) {
			continue
		}
		n, whole := r.items[i].amount.whole()
		if !whole {
			continue
		}
		if len(ts) > 1 && r.word(i-1, "from") {
			break // "one at 24 and one at 18, from nine 2 1/2s"
		}
		width := r.widthBeside(i, len(ts) > 0)
		if width < 0 {
			wide := r.countAtWide(i) && (len(ts) > 0 || r.wantedOpens(i))
			if wide && r.is(i-1, kindRole, "target") {
				ts = slices.DeleteFunc(ts, func(t panelTarget) bool { return !r.is(t.count+1, kindNoun, "panel") }) // strips before what is needed
			}
			if wide && len(ts) > 0 && r.takenFrom(ts[0].count, i) {
				break
			}
			width = r.widthJoined(i, len(ts) > 0, wide)
		}
		if width >= 0 {
			ts = append(ts, panelTarget{i, width, n})
		}
	}
	r.bindTargets(ts)
}

// endsTargets reports whether what is told of panels ends at item i: "out of nine 2 1/2s".
func (r *reader) endsTargets(i int) bool {
	outOf := r.word(i+1, "of") && (r.word(i, "out") || r.is(i, kindVerb, "out")) || r.word(i, "out of")
	return outOf || r.isStop(i) || r.items[i].brk == ':' || r.word(i, "got", "have", "stock", "theres")
}

// widthBeside is how wide each of the panels counted at item i is, where the words around the
// count say so: "two 18 inch panels", "two of them 24 wide"; -1 where they do not. Where more
// panels are told before it, or one is needed, "one 48 wide" is enough.
func (r *reader) widthBeside(i int, more bool) int {
	switch {
	case r.countOfWides(i) && (more || r.is(i-1, kindRole, "target")), r.countOfPanels(i):
		return i + 1
	case r.someOfPanels(i):
		return i + 3
	}
	return -1
}

// wantedOpens: "can we get 1 at 30", "need 1 at 30", "need panels, 1 at 30".
func (r *reader) wantedOpens(i int) bool {
	return r.is(i-1, kindRole, "target") || r.word(i-1, "get") && r.word(i-2, "we", "i", "you") ||
		r.isBreak(i-1) && r.is(i-2, kindNoun, "panel") && r.within(0, i, kindRole, "target") >= 0
}

// widthJoined is how wide each of the panels counted at item i is, where words join the two:
// "two tops of 720 wide and one of 500"; -1 where they do not. It matters whether more panels
// are told before it, and whether what stands behind it is too wide for a strip.
func (r *reader) widthJoined(i int, more, wide bool) int {
	spelt := r.items[i].amount.form == formWords
	if more && !wide && !spelt && !r.is(i+1, kindNoun, "panel") {
		return -1
	}
	j, named := i+1, more && spelt && r.word(i+1, "of")
	for ; j < len(r.items); j++ {
		at := r.is(j, kindNoun, "panel") || r.word(j, "at") || r.items[j].brk == '@'
		if !at && !r.word(j, "of", "that", "are", "is", "must be", "must", "be", "ones", "the", "in") {
			break
		}
		named = named || at
	}
	if !r.free(j) || !r.length(j) {
		return -1
	}
	plural := r.items[j].amount.plural
	named = named || plural && spelt && r.within(0, i, kindRole, "target") >= 0
	joined := named && (j > i+1 || plural) || r.items[j].amount.link == linkAt || j == i+1 && more && spelt
	if joined && (more || wide || plural || r.is(i+1, kindNoun, "panel")) {
		return j
	}
	return -1
}

// bindTargets states how wide the panels are, and how many there are of each width.
func (r *reader) bindTargets(ts []panelTarget) {
	if len(ts) == 1 && r.countOfPanels(ts[0].count) && !r.has(unit.TargetWidth) {
		r.bind(ts[0].count, unit.PanelCount)
		r.bind(ts[0].width, unit.TargetWidth)
		r.useWide(ts[0].width)
	}
	if len(ts) < 2 {
		return
	}
	var piles unit.Piles
	for _, t := range ts {
		v, _, _ := r.valueOf(r.items[t.width].amount, unit.TargetWidth)
		if impossible(unit.TargetWidth, v) != "" || t.n < 1 {
			return
		}
		piles = append(piles, unit.Pile{Width: v, Count: t.n})
	}
	for _, t := range ts {
		r.items[t.count].used, r.items[t.width].used = true, true
		r.useWide(t.width)
	}
	first, last := ts[0].count, ts[len(ts)-1].width
	r.bound = append(r.bound, binding{Fact{Field: unit.Targets, Value: piles, Unit: r.bareUnit(nil, unit.Distance), Text: r.textOf(first, last)}, first, false})
}

// mostPanels is how many panels of a width are cut from a pile; our estimate.
const mostPanels = 40

// countAtWide: "1 at 30", where no strip is so wide.
func (r *reader) countAtWide(i int) bool {
	n, whole := r.items[i].amount.whole()
	return whole && n > 0 && n <= mostPanels && r.items[i].amount.bare() && r.free(i+1) && r.items[i+1].amount.link == linkAt && r.length(i+1) && r.size(i+1) > widestStrip
}

// countOfPanels: "two 18 inch panels", "two 18 in wide panels".
func (r *reader) countOfPanels(i int) bool {
	k := i + 1
	if !r.items[i].amount.bare() || !r.free(k) || r.items[k].amount.link != linkNone || !r.length(k) || r.size(k) <= 0.1 || r.timesAt(k+1) {
		return false
	}
	n := r.next(k)
	if r.is(n, kindAttr, "wide") {
		n = r.next(n)
	}
	return r.is(n, kindNoun, "panel")
}

// countOfWides: "one 48 wide", of the panels that are needed.
func (r *reader) countOfWides(i int) bool {
	return r.items[i].amount.bare() && r.free(i+1) && r.items[i+1].amount.link == linkNone && r.length(i+1) && r.size(i+1) > 0.1 && r.is(r.next(i+1), kindAttr, "wide")
}

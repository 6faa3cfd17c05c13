package grammar

import "presshand/engine/unit"

// A panelTarget is where a count of panels and their width stand.
type panelTarget struct{ count, width, n int }

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

package grammar

import "presshand/engine/unit"

// crossed reads "3/16 across a 7 in wide board" and "1/4 bow in 6 ft": how much
// out of flat, and over what.
func (r *reader) crossed(i int) bool {
	if r.topic != Flatten && !r.mentions(kindNoun, "cup", "bow", "gap") && !r.has(unit.Bow) {
		return false
	}
	n, p, am := r.next(i), r.prev(i), r.items[i].amount
	feet := am.is(unit.Distance) && am.unit.Symbol == "ft"
	if !feet && !r.is(n, kindRole, "length") && !r.is(p, kindRole, "length") && !r.word(i-1, "in") {
		return false
	}
	f, over := unit.Cup, unit.StripWidth
	if _, to := r.clause(i); r.word(i+1, "over") && r.within(i, to, kindNoun, "fence", "opening") >= 0 {
		return false // what the strips are over, whatever humps then
	}
	switch {
	case r.mentions(kindNoun, "bow") || r.has(unit.Bow):
		f, over = unit.Bow, unit.StripLength
	case r.mentions(kindNoun, "gap") && !r.mentions(kindNoun, "cup"):
		f, over = unit.Gap, unit.StripLength
	case r.mentions(kindNoun, "cup") && r.topic != Move, r.topic == Flatten && r.mentions(kindAsk, "flatten"):
	default:
		return false
	}
	if r.is(n, kindRole, "length") && r.word(n, "across") && !r.amountSoon(n) {
		return !r.has(unit.StripWidth) && r.bind(i, unit.StripWidth) // "4 1/2 across"
	}
	if f == unit.Gap && !r.mentions(kindRole, "length") && !(i > 0 && r.word(i-1, "in")) {
		return false
	}
	if r.is(n, kindRole, "length") && !r.has(f) && !(f == unit.Gap && r.size(i) > 0.02) {
		return r.bind(i, f)
	}
	if r.is(p, kindRole, "length") && !r.has(over) && !r.otherWay(n) || f == unit.Bow && feet && !r.has(over) {
		return r.bind(i, over)
	}
	if k := i - 1; r.word(k, "in") && k > 0 && r.is(r.prev(k), kindNoun, "bow", "gap") && !r.has(over) && r.size(i) > 0.2 {
		return r.bind(i, over)
	}
	return false
}

// acrossOf: "the top is 28 across" says a panel's width, "4 1/2 across" a strip's; what
// moves is a panel.
func (r *reader) acrossOf(i, before int) unit.Field {
	if r.is(before, kindRole, "target") && r.forStrips(i) {
		return unit.TargetWidth
	}
	if r.is(before, kindNoun, "panel") || r.size(i) > widestStrip || r.topic == Move && !r.mentions(kindNoun, "strip") {
		if r.forStrips(i) || r.is(before, kindRole, "target") {
			return unit.TargetWidth
		}
		return unit.PanelWidth
	}
	return unit.StripWidth
}

// otherWay reports whether item n has the number before it measured other than
// across: "6 across 1/2 thick".
func (r *reader) otherWay(n int) bool {
	return r.is(n, kindAttr) && r.items[n].id != "wide" && r.items[n].id != "long"
}

// amountSoon reports whether an amount stands within four items behind item i.
func (r *reader) amountSoon(i int) bool {
	for j := i + 1; j < len(r.items) && j <= i+4 && !r.isBreak(j); j++ {
		if r.items[j].amount != nil {
			return !r.otherWay(r.next(j))
		}
		if r.is(j, kindNoun, "cup", "bow", "gap") {
			return false // "4 1/2 across cupped 1/16"
		}
	}
	return false
}

// lowPanel, in metres: the grain of what is no taller lies level.
const lowPanel = 0.5

func (r *reader) woodMeasure(attr string) string {
	if r.topic == Move && attr != "thick" {
		return "panel"
	}
	return "strip"
}

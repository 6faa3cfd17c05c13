package grammar

import "presshand/engine/unit"

// crossed reads "3/16 across a 7 in wide board" and "1/4 bow in 6 ft": how much
// out of flat, and over what.
func (r *reader) crossed(i int) bool {
	f, over := unit.Cup, unit.StripWidth
	switch {
	case r.mentions(kindNoun, "bow") || r.has(unit.Bow):
		f, over = unit.Bow, unit.StripLength
	case r.mentions(kindNoun, "gap") && !r.mentions(kindNoun, "cup"):
		f, over = unit.Gap, unit.StripLength
	case r.mentions(kindNoun, "cup") && r.topic != Move:
	default:
		return false
	}
	n, p := r.next(i), r.prev(i)
	if r.is(n, kindRole, "length") && r.word(n, "across") && !r.amountSoon(n) {
		return !r.has(unit.StripWidth) && r.bind(i, unit.StripWidth) // "4 1/2 across"
	}
	if f == unit.Gap && !r.mentions(kindRole, "length") && !(i > 0 && r.word(i-1, "in")) {
		return false
	}
	if r.is(n, kindRole, "length") && !r.has(f) && !(f == unit.Gap && r.size(i) > 0.02) {
		return r.bind(i, f)
	}
	if r.is(p, kindRole, "length") && !r.has(over) || f == unit.Bow && r.items[i].amount.is(unit.Distance) && r.items[i].amount.unit.Symbol == "ft" && !r.has(over) {
		return r.bind(i, over)
	}
	if k := i - 1; r.word(k, "in") && k > 0 && r.is(r.prev(k), kindNoun, "bow", "gap") && !r.has(over) && r.size(i) > 0.2 {
		return r.bind(i, over)
	}
	return false
}

// acrossOf: "the top is 28 across" says a panel's width, "4 1/2 across" a strip's.
func (r *reader) acrossOf(i, before int) unit.Field {
	if r.is(before, kindNoun, "panel") {
		if r.forStrips(i) {
			return unit.TargetWidth
		}
		return unit.PanelWidth
	}
	return unit.StripWidth
}

// amountSoon reports whether an amount stands within four items behind item i.
func (r *reader) amountSoon(i int) bool {
	for j := i + 1; j < len(r.items) && j <= i+4 && !r.isBreak(j); j++ {
		if r.items[j].amount != nil {
			return true
		}
	}
	return false
}

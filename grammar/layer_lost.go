package grammar

import "presshand/engine/unit"

// layerLost refuses a stack that leaves out a layer whose thickness was told beside it, or has
// it otherwise: "swap the 3/4 top caul for a 1/2, do two layers of sled 1/2 + strips 13/16 fit".
func (r *reader) layerLost() bool {
	var layers unit.Layers
	for _, f := range r.phrase.Facts {
		if ls, ok := f.Value.(unit.Layers); ok && f.Field == unit.StackLayers {
			layers = ls
		}
	}
	if layers == nil {
		return false
	}
	for _, f := range r.phrase.Facts {
		part := layerFields[f.Field]
		v, ok := f.Value.(unit.Number)
		if part == "" || !ok {
			continue
		}
		found := false
		for _, l := range layers {
			found = found || l.Part == part && same(unit.Number(l.Thickness), v)
		}
		if !found {
			r.refuseStack(r.readAt(f.Field))
			return true
		}
	}
	return false
}

// layerFields are the parts of a stack that a thickness is of.
var layerFields = map[unit.Field]string{
	unit.SledThickness: "sled", unit.StripThickness: "strips", unit.CaulThickness: "caul", unit.MatThickness: "mat",
}

// readAt is the item at which field was read first.
func (r *reader) readAt(f unit.Field) int {
	for _, b := range r.bound {
		if b.fact.Field == f {
			return b.from
		}
	}
	return 0
}

// oneCaul: "4 sleds with strips on each and a 3/4 caul on top", "a 9 mm caul to close it off"
// lay one on all.
func (r *reader) oneCaul(i int) bool {
	n := r.next(i)
	if !r.is(n, kindNoun, "caul") {
		n = r.prev(i)
	}
	if !r.is(n, kindNoun, "caul") || isPlural(r.items[n].word) {
		return false
	}
	first := min(i, n) - 1
	from, to := r.clause(i)
	return (r.word(first, "a", "one", "the", "top") || r.opensWithin(n, to, "top", "over", "close", "close it off", "finish")) && !r.opensWithin(n, to, "each", "every", "both", "between") && r.within(from, to, kindRole, "in a row") < 0
}

package grammar

import "presshand/engine/unit"

// layerLost refuses a stack that leaves out a layer whose thickness was told beside it, or has
// it otherwise; a layer told without its thickness gets it: "caul is a sheet of 1/2 ply. stack:
// sled 3/4, strips 5/8, caul". "swap the 3/4 top caul for a 1/2, do two layers of sled 1/2 + strips 13/16 fit".
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
	if i := r.sledsMissing(layers); i >= 0 {
		r.refuseStack(i)
		return true
	}
	for _, f := range r.phrase.Facts {
		part := layerFields[f.Field]
		v, ok := f.Value.(unit.Number)
		if part == "" || !ok {
			continue
		}
		found := false
		for k, l := range layers {
			if l.Part == part && l.Thickness == 0 {
				layers[k].Thickness, l.Thickness = float64(v), float64(v)
			}
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

// sledsToldLast: of "each of the two sleds carries 3/8 strips and a 1/8 mat, the sleds being
// 1/2" the sleds lie below what was told before them.
func (r *reader) sledsToldLast(spans []layerSpan) bool {
	last := len(spans) - 1
	if last < 1 || spans[last].part != "sled" || !r.word(spans[last].first()-1, "the", "both") || !isPlural(r.items[spans[last].noun].word) {
		return false
	}
	for _, s := range spans[:last] {
		if s.part == "sled" {
			return false
		}
	}
	n, _ := r.levelCount()
	return n > 1
}

// sledsMissing is the item of "both sleds" or of "strips" where the stack has fewer sleds, or
// no strips at all, and of a mat that is told twice and has a thickness once; -1 where nothing is missing.
func (r *reader) sledsMissing(ls unit.Layers) int {
	sleds, work, bare, thick := 0, false, false, false
	for _, l := range ls {
		if l.Part == "mat" {
			bare, thick = bare || l.Thickness == 0, thick || l.Thickness > 0
		}
		if l.Part == "sled" {
			sleds++
		}
		work = work || l.Part == "strips" || l.Part == "core"
	}
	for i := range r.items {
		switch {
		case bare && thick && r.is(i, kindNoun, "mat"):
			return i // "panel, mat, panel on one 18 sled, panels 22 thick and mats 5"
		case r.is(i, kindNoun, "sled") && r.word(i-1, "both") && sleds == 1:
			return i
		case r.is(i, kindNoun, "strip") && !work && i > 0 && r.items[i-1].amount != nil && r.length(i-1):
			return i
		}
	}
	return -1
}

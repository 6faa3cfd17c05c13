package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// judgeClearance judges the height against the opening.
func (b *builder) judgeClearance(p pile) {
	opening, ok := b.number(unit.Opening)
	if !ok {
		return
	}
	give(b, unit.Opening, unit.Exactly(opening))
	left := opening - p.height
	if math.Abs(left) < 1e-9 { // the noise of a sum
		left = 0
	}
	give(b, unit.Clearance, unit.Exactly(left))
	b.work(unit.Clearance, unit.Exactly(left), "opening − height", "geometry", Computed, func() string {
		return sayFinely(unit.Opening, opening) + " − " + sayFinely(unit.StackHeight, p.height)
	})
	v, r := Good, ReasonFits
	switch {
	case !reaches(opening, p.height):
		v, r = Stop, ReasonTooHigh
	case !reaches(opening, p.height+leastClearance):
		v, r = Care, ReasonFitsBarely
	}
	b.judge("height", v, r, unit.Facts{
		unit.StackHeight: unit.StackHeight.Number(p.height),
		unit.Opening:     unit.Opening.Number(opening),
		unit.Clearance:   unit.Clearance.Number(left),
	})
}

// judgeBag judges whether a bag goes around the stack.
func (b *builder) judgeBag(p pile) {
	W, okW := b.number(unit.SledWidth)
	L, okL := b.number(unit.SledLength)
	if !okW {
		W, okW = b.number(unit.PanelWidth)
	}
	if !okL {
		L, okL = b.length()
	}
	w, l, err := press.BagNeed(unit.Length(W), unit.Length(L), unit.Length(p.height))
	bagW, haveW := b.number(unit.BagWidth)
	bagL, haveL := b.number(unit.BagLength)
	if err != nil || !(okW && haveW) && !(okL && haveL) {
		return
	}
	figures := unit.Facts{}
	v, r := Good, ReasonBagFits
	if okW && haveW {
		figures[unit.BagWidth] = unit.BagWidth.Number(float64(w))
		if !reaches(bagW, float64(w)) {
			v, r = Stop, ReasonBagSmall
		}
	}
	if okL && haveL {
		figures[unit.BagLength] = unit.BagLength.Number(float64(l))
		if !reaches(bagL, float64(l)) {
			v, r = Stop, ReasonBagSmall
		}
	}
	b.judge("bag", v, r, figures)
}

package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// giveHeight gives how high a pile stands and judges it, once.
func (b *builder) giveHeight(p pile) {
	if b.a.Values.Has(unit.StackHeight) {
		return
	}
	give(b, unit.StackHeight, unit.Exactly(p.height))
	b.work(unit.StackHeight, unit.Exactly(p.height), "sum of sleds, cores, thickest strips, films, mats and cauls; a fence, and a side bar on its foot, where it stands higher than the work",
		"geometry", Computed, func() string { return p.sum() })
	b.judgeClearance(p)
}

// judgeUnderLid judges whether strips and the bar beside them go into a press of
// which the opening is known; a sled that nobody measured has the usual thickness.
func (b *builder) judgeUnderLid() error {
	if !b.known(unit.Opening) {
		return nil
	}
	layers := b.layers()
	if len(layers) == 0 {
		layers = b.layersOnSled()
	}
	needs := b.a.Needs
	p, err := b.pileOf(layers)
	b.a.Needs = needs // a layer without a thickness holds the joints up in no way
	if err == nil && p.known {
		b.giveHeight(p)
	}
	return err
}

// underLid reports whether a bar of some height would go into the press, as far as
// its opening is known.
func (b *builder) underLid(height float64) bool {
	opening, ok := b.number(unit.Opening)
	if !ok {
		return true
	}
	if b.word(unit.BarFoot) != "bed" {
		height += b.sledUnder()
	}
	return reaches(opening, height)
}

// judgeClearance judges the height against the opening.
func (b *builder) judgeClearance(p pile) {
	opening, ok := b.number(unit.Opening)
	if !ok {
		return
	}
	give(b, unit.Opening, unit.Exactly(opening))
	left := opening - p.height
	if math.Abs(left) < alike { // the noise of a sum
		left = 0
	}
	give(b, unit.Clearance, unit.Exactly(left))
	b.work(unit.Clearance, unit.Exactly(left), "opening − height", "geometry", Computed, func() string {
		return sayFinely(unit.Opening, opening) + " − " + sayFinely(unit.StackHeight, p.height)
	})
	v, r := Good, ReasonFits
	switch {
	case !reaches(opening, p.height) && p.bar > 0:
		v, r = Stop, ReasonBarTooHigh
	case !reaches(opening, p.height):
		v, r = Stop, ReasonTooHigh
	case !reaches(opening, p.height+leastClearance) && p.bar > 0:
		v, r = Care, ReasonBarFitsBarely
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

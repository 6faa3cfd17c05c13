package engine

import (
	"fmt"
	"math"

	"presshand/engine/unit"
)

// The bed that nobody named: a sheet of 4 by 8 ft, as shops go.
const (
	usualBedWidth  = 1.220 // m
	usualBedLength = 2.440 // m
)

// Air between the two sides of a bag laid over the work when the pump starts,
// our estimate.
const (
	thinBag  = 0.010 // m
	midBag   = 0.025
	thickBag = 0.050
)

// fullestPress is the share of a press that work may fill before its measures
// are doubted and the air is not reckoned less.
const fullestPress = 0.9

// freeVolume returns the air to be pumped, in m³: as said; or bed by depth less
// the work that is known to lie there; or guessed for a bag. What is said comes
// before the room's own. False where nothing tells it.
func (b *builder) freeVolume() (unit.Range[float64], bool, error) {
	bedSaid := b.said(unit.Opening, unit.BedWidth, unit.BedLength) && b.known(unit.Opening)
	w, wKnown := b.number(unit.BagWidth)
	l, lKnown := b.number(unit.BagLength)
	var v unit.Range[float64]
	switch {
	case b.said(unit.PressVolume), b.known(unit.PressVolume) && !bedSaid:
		said, _ := b.number(unit.PressVolume)
		v = unit.Exactly(said)
	case b.known(unit.Opening):
		v = unit.Exactly(b.bedVolume())
		give(b, unit.PressVolume, v)
		b.work(unit.PressVolume, v, "bed · depth, less the work in it", "geometry", Computed, func() string {
			depth, _ := b.number(unit.Opening)
			all := b.bedArea() * depth
			return fmt.Sprintf("%.4g m² · %.4g mm − %.4g l", b.bedArea(), depth*1000, (all-v.Mid)*1000)
		})
	case wKnown && lKnown:
		v = b.spread(w*l*thinBag, w*l*midBag, w*l*thickBag)
		give(b, unit.PressVolume, v)
		b.work(unit.PressVolume, v, "width · length of the bag laid flat · 10 to 50 mm", "our estimate", Estimate, func() string {
			return fmt.Sprintf("%.4g mm · %.4g mm · %.4g mm", w*1000, l*1000, midBag*1000)
		})
		b.advise(ReasonBagVolume, unit.Facts{unit.PressVolume: figure(unit.PressVolume, v)})
	default:
		return v, false, nil
	}
	return v, true, unit.MoreThan("free volume", v.Low*1000, 0, " l")
}

// bedVolume returns bed by depth, less the work in it.
func (b *builder) bedVolume() float64 {
	depth, _ := b.number(unit.Opening)
	v := depth * b.bedArea()
	if work := b.workVolume(); work < fullestPress*v {
		v -= work
	}
	return v
}

// bedArea returns the area of the bed, in m².
func (b *builder) bedArea() float64 {
	return b.numberOr(unit.BedWidth, usualBedWidth) * b.numberOr(unit.BedLength, usualBedLength)
}

// workVolume returns the volume of what is known to lie in the press, in m³: the
// panels or their stack, and the sled; 0 for what is not known whole.
func (b *builder) workVolume() float64 {
	sled := b.sledArea()
	p, err := b.row()
	l, ok := b.length()
	panel := 0.0
	if err == nil && ok {
		panel = p.width * l
	}
	if layers := b.layers(); len(layers) > 0 {
		v := 0.0
		for _, layer := range layers {
			switch area := math.Max(panel, sled); {
			case layer.Part == partFence || layer.Part == partBar:
			case layer.Part == partSled:
				v += area * layer.Thickness / 1000
			default:
				v += panel * layer.Thickness / 1000
			}
		}
		return v
	}
	height, _ := b.thickness()
	core, _ := b.number(unit.CoreThickness)
	n := 1.0
	if c, ok := b.number(unit.PanelCount); ok {
		n = math.Max(1, c)
	}
	board, _ := b.number(unit.SledThickness)
	return n*panel*(height+core) + sled*board
}

// sledArea returns the area of the sled, in m²; 0 where it is not known.
func (b *builder) sledArea() float64 {
	w, ok1 := b.number(unit.SledWidth)
	l, ok2 := b.number(unit.SledLength)
	if !ok1 || !ok2 {
		return 0
	}
	return w * l
}

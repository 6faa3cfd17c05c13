package engine

import (
	"math"
	"slices"

	"presshand/engine/unit"
)

// saidLayers returns the layers of a stack that was told part by part: a sled and
// what lies on it; none without a sled and its work.
func (b *builder) saidLayers() unit.Layers {
	work := b.known(unit.StripThickness, unit.StripThickest, unit.PanelThickness)
	if !b.known(unit.SledThickness) || !work {
		return nil
	}
	layers := b.layersOnSled()
	var caul unit.Layers
	if last := len(layers) - 1; layers[last].Part == partCaul {
		layers, caul = layers[:last], layers[last:]
	}
	return append(slices.Repeat(layers, b.panelsAbove()), caul...)
}

// panelsAbove is how many panels lie on each other, each on a sled of its own, where a
// stack is asked about and nothing says that some lie side by side.
func (b *builder) panelsAbove() int {
	const mostLevels = 20 // in one press; more panels are an order
	n, ok := b.number(unit.PanelCount)
	if b.q.About != Stack || !ok || n < 1 || n > mostLevels || n != math.Trunc(n) || b.known(unit.PanelWidth) {
		return 1
	}
	return int(n)
}

// layersOnSled returns a sled and what was said to lie on it.
func (b *builder) layersOnSled() unit.Layers {
	layers := unit.Layers{{Part: partSled}}
	if b.known(unit.CoreThickness) {
		if b.bothFaces() {
			layers = append(layers, unit.Layer{Part: partStrips})
		}
		layers = append(layers, unit.Layer{Part: partCore})
	}
	layers = append(layers, unit.Layer{Part: partStrips})
	if _, ok := b.saidMat(); ok {
		layers = append(layers, unit.Layer{Part: partMat})
	}
	if b.known(unit.CaulThickness) {
		layers = append(layers, unit.Layer{Part: partCaul})
	}
	return layers
}

// layerThickness returns how thick a layer of some is, in m: as said with it, as
// said elsewhere, or the usual; 0 where it is missing.
func (b *builder) layerThickness(l unit.Layer, layers unit.Layers) (float64, error) {
	if l.Part == partStrips && (l.Thickness == 0 || b.ranged(l, layers)) {
		if t, ok := b.number(unit.StripThickest); ok {
			return t, unit.MoreThan("thickness of the strips", t*1000, 0, " mm")
		}
	}
	if l.Thickness != 0 {
		return l.Thickness / 1000, unit.MoreThan("thickness of the "+l.Part, l.Thickness, 0, " mm")
	}
	switch l.Part {
	case partSled:
		return b.numberOr(unit.SledThickness, defaultSled), nil
	case partFilm:
		return b.numberOr(unit.FilmThickness, defaultFilm), nil
	case partStrips:
		if t, ok := b.thickness(); ok {
			return t, nil
		}
	}
	f, ok := thicknessOf[l.Part]
	if !ok {
		b.need(unit.StackLayers)
		return 0, nil
	}
	if t, ok := b.number(f); ok {
		return t, nil
	}
	b.need(f)
	return 0, nil
}

// thicknessOf are the fields that give a layer's thickness outside the stack.
var thicknessOf = map[string]unit.Field{
	partStrips: unit.StripThickness, partMat: unit.MatThickness, partCaul: unit.CaulThickness,
	partCore: unit.CoreThickness, partBar: unit.BarHeight,
}

// ranged reports whether the strips of a layer are those of which a thickest and
// a thinnest are said. Where levels differ it is those that are as thick as the
// thickest, else those in between; where none is, the range was said of them all.
func (b *builder) ranged(l unit.Layer, layers unit.Layers) bool {
	low, high, ok := b.thicknessRange()
	if !ok {
		return false
	}
	for _, from := range [...]float64{high, low} {
		inside := func(l unit.Layer) bool {
			mm := l.Thickness / 1000
			return mm == 0 || reaches(mm, from) && reaches(high, mm)
		}
		for _, other := range layers {
			if other.Part == partStrips && inside(other) {
				return inside(l)
			}
		}
	}
	return true
}

// thicknessRange returns the thinnest and the thickest strips, where one of them
// is said; the other is then the same.
func (b *builder) thicknessRange() (low, high float64, ok bool) {
	high, okHigh := b.number(unit.StripThickest)
	low, okLow := b.number(unit.StripThinnest)
	switch {
	case !okLow:
		low = high
	case !okHigh:
		high = low
	}
	return math.Min(low, high), math.Max(low, high), okLow || okHigh
}

// unevenStrips notes on a level by how much the strips of one of its layers
// differ, where that is said.
func (b *builder) unevenStrips(at *level, l unit.Layer, layers unit.Layers) {
	if d, ok := b.spreadSaid(); ok {
		at.spread, at.uneven = math.Max(at.spread, d), true
	}
	low, high, _ := b.thicknessRange()
	if b.known(unit.StripThickest) && b.known(unit.StripThinnest) && b.ranged(l, layers) {
		at.spread, at.uneven = math.Max(at.spread, high-low), true
	}
}

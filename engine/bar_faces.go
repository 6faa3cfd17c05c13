package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// around is what lies about the strips that a bar presses, beside its foot on the
// sled. Lengths in m.
type around struct {
	under float64 // core under the strips
	core  float64 // between the two faces, where strips lie on both of its sides
	over  float64 // rigid on top
	twin  bool    // strips lie on both sides of a core
	told  bool
}

// aroundStrips returns what a described stack has about the lowest strips on its
// sled.
func (b *builder) aroundStrips() around {
	var a around
	seen, between := false, 0.0
	for _, l := range b.layers() {
		mm := l.Thickness / 1000
		switch {
		case l.Part == partStrips && !seen:
			seen, a.told = true, true
		case l.Part == partStrips && between > 0 && a.over == 0:
			a.twin, a.core, between = true, between, 0
		case l.Part == partStrips:
			return a
		case l.Part == partSled && !seen:
			a.under = 0
		case l.Part == partCore && !seen:
			a.under += mm
		case l.Part == partCore:
			between += mm
		case l.Part == partSled && mm == 0:
			a.over += b.numberOr(unit.SledThickness, defaultSled)
		case (l.Part == partSled || l.Part == partCaul) && seen:
			a.over += mm
		}
	}
	return a
}

// surroundings returns what lies about the strips, described as a stack or not.
func (b *builder) surroundings() around {
	a := b.aroundStrips()
	a.twin = a.twin || len(b.layers()) == 0 && b.bothFaces()
	if core, ok := b.number(unit.CoreThickness); ok {
		a.told = true
		if a.twin {
			a.core = core
		} else {
			a.under = core
		}
	}
	if caul, ok := b.number(unit.CaulThickness); ok {
		a.over, a.told = caul, true
	}
	return a
}

// sharers returns how many edges share what is pushed from the side: those of both
// faces of a core, or one.
func (b *builder) sharers() float64 {
	if b.surroundings().twin {
		return 2
	}
	return 1
}

// even is the part of the push that each of two faces gets from a bar that does not
// lean; all of it where the bar touches but one.
func (s bar) even() float64 {
	if s.shared {
		return 0.5
	}
	return 1
}

// share returns the part of the push that a face gets: at lean 0 the worse-off one
// beside a bar that leans, at 1 the other, and half of it between.
func (s bar) share(push press.Push, lean float64) float64 {
	if !s.shared || lean == 0.5 {
		return s.even()
	}
	push.Covered -= unit.Length(s.edge())
	least, err := press.LeastShare(push, press.Pair{
		Lower: unit.Length(s.lowest + (s.top-s.under)/2),
		Upper: unit.Length((s.under + math.Min(s.height, s.top)) / 2),
		Edge:  unit.Length(s.edge()),
	})
	if err != nil {
		return nan
	}
	return least + lean*(1-2*least)
}

// adviseOnFaces tells how the figures share a push between the faces of a core.
func (s *sideLoad) adviseOnFaces(b *builder) {
	if s.bar.shared || s.pre.known && b.sharers() > 1 {
		b.advise(ReasonBothFaces, nil)
	}
}

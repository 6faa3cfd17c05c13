package engine

import (
	"presshand/engine/glue"
	"presshand/engine/unit"
	"presshand/engine/wood"
)

// Defaults where nothing is said, in SI.
const (
	defaultTemperature = 21.0    // °C, 70 °F
	defaultBarWidth    = 0.01905 // m, 3/4 in
	defaultSled        = 0.019   // m
	defaultFilm        = 0.00015 // m
	longestWork        = 30.0    // m; nobody presses more at once
)

// species returns the wood, or the default hardwood, noted as assumed.
func (b *builder) species() wood.Species {
	if b.wood.Name != "" {
		return b.wood
	}
	s, ok := wood.Find(b.word(unit.Species))
	if !ok {
		s = wood.Default()
		b.assume(unit.Species, unit.Word(s.Name))
	}
	b.wood = s
	return s
}

// glue returns the glue's class, or the default one, noted as assumed.
func (b *builder) glue() glue.Class {
	if b.class.Name != "" {
		return b.class
	}
	c, ok := glue.Find(b.word(unit.GlueClass))
	if !ok {
		c, _ = glue.Find(glue.Default)
		b.assume(unit.GlueClass, unit.Word(glue.Default))
	}
	b.class = c
	return c
}

// shopTemperature returns the temperature of the shop in °C.
func (b *builder) shopTemperature() float64 {
	return b.numberOr(unit.ShopTemp, defaultTemperature)
}

// across returns E⊥ of a wood as this question's strips were sawn.
func (b *builder) across(s wood.Species) unit.Range[float64] {
	return b.collapse(unit.SI(s.Across(wood.Cut(b.word(unit.Sawn)))))
}

// along returns E_L of a wood.
func (b *builder) along(s wood.Species) unit.Range[float64] {
	return b.collapse(unit.SI(s.AlongRange()))
}

// collapse takes the uncertainty away where the question is solved at the mids.
func (b *builder) collapse(r unit.Range[float64]) unit.Range[float64] {
	return b.spread(r.Low, r.Mid, r.High)
}

// thickness returns how thick the strips are: as said, else the thickest of
// them, else the strips of the stack, else the finished panel.
func (b *builder) thickness() (float64, bool) {
	for _, f := range [...]unit.Field{unit.StripThickness, unit.StripThickest} {
		if t, ok := b.number(f); ok {
			return t, true
		}
	}
	for _, l := range b.layers() {
		if l.Part == partStrips && l.Thickness > 0 {
			return l.Thickness / 1000, true
		}
	}
	return b.number(unit.PanelThickness)
}

// length returns the length along the joints.
func (b *builder) length() (float64, bool) {
	if l, ok := b.number(unit.StripLength); ok {
		return l, true
	}
	return b.number(unit.PanelLength)
}

// layers returns the stack as said, bottom first; thicknesses in mm.
func (b *builder) layers() unit.Layers {
	v, _ := b.value(unit.StackLayers)
	ls, _ := v.(unit.Layers)
	return ls
}

// The parts of a stack.
const (
	partSled   = "sled"
	partFence  = "fence"
	partStrips = "strips"
	partFilm   = "film"
	partMat    = "mat"
	partCaul   = "caul"
	partBar    = "bar"
	partCore   = "core"
)

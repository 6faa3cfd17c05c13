package engine

import (
	"fmt"
	"math"
	"strings"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// Margins of a stack, in m.
const (
	leastProud     = 0.0008  // common practice, no source
	leastClearance = 0.006   // common practice, no source
	mostUnevenSled = 0.00015 // between strips under a rigid sled without a mat
	alike          = 1e-9    // two heights that differ by arithmetic alone
)

// A level is what lies between two rigid layers of a stack. Heights in m.
type level struct {
	core, strips, mat, film, caul, sled float64
	fence, bar                          float64
	capped                              bool // something rigid lies above
}

// A pile is a whole stack, the lowest level first.
type pile struct {
	levels []level
	height float64
	known  bool
}

// answerStack answers how high a stack is, whether the work stands proud of its
// fences, and what a mat does for uneven strips.
func answerStack(b *builder) error {
	p, err := b.pile()
	if err != nil {
		return err
	}
	mat, err := b.mat()
	if err != nil {
		return err
	}
	if !p.known && len(b.layers()) == 0 && !(mat.uneven && (mat.known || b.underRigid())) {
		b.need(unit.StackLayers)
	}
	if p.known {
		give(b, unit.StackHeight, unit.Exactly(p.height))
		b.work(unit.StackHeight, unit.Exactly(p.height), "sum of sleds, cores, thickest strips, films, mats and cauls; a fence where it stands higher than the work",
			"geometry", Computed, func() string { return p.sum() })
		b.judgeClearance(p)
		b.judgeProud(p, mat)
		b.judgeBag(p)
	}
	if mat.low {
		give(b, unit.MatLow, mat.pressure)
		mat.work(b)
		mat.adviseMatFit(b)
		b.judgeFace("thinnest strips", mat.pressure, b.glue())
	}
	if mat.concentrated {
		give(b, unit.LevelPressure, mat.above)
		b.work(unit.LevelPressure, mat.above, "p A_sled / A_strips", "force balance", Computed, func() string {
			return fmt.Sprintf("%.4g kPa · %.4g m² / %.4g m²", mat.face.Mid/1e3, mat.sled, mat.strips)
		})
	}
	b.judgeUneven(mat)
	if mat.known {
		b.advise(ReasonFoamGas, nil)
	}
	if b.evacuated() {
		b.judgeVacuum()
		b.warnOfVacuum()
	}
	return nil
}

// pile reads the stack; not known where a layer's thickness is missing.
func (b *builder) pile() (pile, error) {
	layers := b.layers()
	if len(layers) == 0 {
		layers = b.saidLayers()
	}
	p := pile{known: len(layers) > 0}
	var at level
	loaded := false // the level holds work
	for _, l := range layers {
		h, err := b.layerThickness(l)
		if err != nil {
			return p, err
		}
		if h == 0 {
			p.known = false
			continue
		}
		rigid := l.Part == partSled || l.Part == partCaul
		if rigid && (loaded || at.fence > 0) {
			at.capped = true
			p.levels = append(p.levels, at)
			at, loaded = level{}, false
		}
		loaded = at.add(l.Part, h) || loaded
	}
	p.levels = append(p.levels, at)
	p.stand()
	return p, nil
}

// saidLayers returns the layers of a stack that was told part by part: a sled and
// what lies on it; none without a sled and its work.
func (b *builder) saidLayers() unit.Layers {
	work := b.known(unit.StripThickness, unit.StripThickest, unit.PanelThickness)
	if !b.known(unit.SledThickness) || !work {
		return nil
	}
	layers := unit.Layers{{Part: partSled}}
	if b.known(unit.CoreThickness) {
		layers = append(layers, unit.Layer{Part: partCore})
	}
	layers = append(layers, unit.Layer{Part: partStrips})
	if _, ok := b.matThickness(); ok {
		layers = append(layers, unit.Layer{Part: partMat})
	}
	if b.known(unit.CaulThickness) {
		layers = append(layers, unit.Layer{Part: partCaul})
	}
	return layers
}

// stand works out the height. A side bar stands on the level's sled and counts
// where it is higher than all that lies on it.
func (p *pile) stand() {
	top := 0.0
	for _, l := range p.levels {
		top = math.Max(top, p.height+l.sled+l.caul+l.bar)
		p.height += l.height()
	}
	p.height = math.Max(p.height, top)
}

// add puts a layer into the level and reports whether it is work.
func (l *level) add(part string, h float64) bool {
	switch part {
	case partSled:
		l.sled += h
	case partCaul:
		l.caul += h
	case partFence:
		l.fence = math.Max(l.fence, h)
	case partBar:
		l.bar = math.Max(l.bar, h)
	case partFilm:
		l.film += h
	case partMat:
		l.mat += h
	case partCore:
		l.core += h
		return true
	case partStrips:
		l.strips += h
		return true
	}
	return false
}

// height is that of the level, the mat as bought; a fence stands beside the
// work and counts where it stands higher.
func (l level) height() float64 {
	return l.sled + l.caul + math.Max(l.core+l.strips+l.mat+l.film, l.fence)
}

// sum writes the heights of the levels as a sum.
func (p pile) sum() string {
	terms := make([]string, 0, len(p.levels))
	for _, l := range p.levels {
		terms = append(terms, say(unit.StackHeight, l.height()))
	}
	return strings.Join(terms, " + ")
}

// layerThickness returns how thick a layer is, in m: as said with it, as said
// elsewhere, or the usual; 0 where it is missing.
func (b *builder) layerThickness(l unit.Layer) (float64, error) {
	if l.Part == partStrips {
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
		return say(unit.Opening, opening) + " − " + say(unit.StackHeight, p.height)
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

// judgeProud gives how far the work of each fenced level stands above its fence
// and judges the least.
func (b *builder) judgeProud(p pile, mat matting) {
	var all unit.Triples
	for _, l := range p.levels {
		if l.fence == 0 || !l.capped || l.core+l.strips == 0 {
			continue
		}
		if l.mat > 0 && !mat.pressed {
			b.need(unit.Vacuum)
			return
		}
		r := mat.proud(l)
		all = append(all, figure(unit.Proud, r))
		v, why := Good, ReasonProud
		switch {
		case r.Mid < alike:
			v, why = Stop, ReasonFenceCarries
		case !reaches(r.Low, leastProud):
			v, why = Care, ReasonProudLittle
		}
		b.judge("proud of the fence", v, why, unit.Facts{unit.Proud: figure(unit.Proud, r)})
		b.work(unit.Proud, r, "proud = core + t + (m − s) − fence", "geometry", Computed, func() string {
			squash := l.core + l.strips + l.mat - l.fence - r.Mid
			return fmt.Sprintf("%.4g + %.4g + (%.4g − %.4g) − %.4g mm", l.core*1e3, l.strips*1e3, l.mat*1e3, math.Max(0, squash)*1e3, l.fence*1e3)
		})
	}
	if len(all) > 0 {
		b.giveValue(unit.Proud, all)
	}
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

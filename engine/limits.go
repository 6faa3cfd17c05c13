package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// What the formulas were made for; beyond it they still give a figure, and the
// answer says so.
const (
	slender           = 10 // a strip's length over its width, for bending as a beam
	leastFit, mostFit = 0.25, 0.60
	steadyRise        = 0.1  // a rise over the panel's width, for a shallow arch
	leastFriction     = 1e-6 // no surface is as slippery; a bar's reach has no end there
)

// adviseDeep tells that a cup or a bow is too deep for its formula.
func (c curl) adviseDeep(b *builder) {
	if reaches(shallow*c.span, c.depth) {
		return
	}
	f := unit.Bow
	if c.across {
		f = unit.Cup
	}
	b.advise(ReasonDeepCurl, unit.Facts{f: f.Number(c.depth)})
}

// adviseLimits tells where a side load goes beyond what its formulas are made for.
func (s *sideLoad) adviseLimits(b *builder) {
	if L, ok := b.length(); ok && s.gap.bends && s.gap.open > 0 && !reaches(L, slender*s.row.strip) {
		b.advise(ReasonStubbyStrip, unit.Facts{unit.StripLength: unit.StripLength.Number(L), unit.StripWidth: unit.StripWidth.Number(s.row.strip)})
	}
	if s.pre.sprung && s.row.width > 0 && !reaches(steadyRise*s.row.width, s.pre.rise.Mid) {
		b.advise(ReasonSteepRise, unit.Facts{unit.Rise: unit.Rise.Number(s.pre.rise.Mid)})
	}
}

// mostHandedOn returns a mat with the firmness of a range at which it hands on
// most to the thin strips.
func mostHandedOn(p unit.Pressure, mat press.Mat, firm unit.Range[float64]) press.Mat {
	mat.Firmness = unit.Pressure(firm.High)
	if mat.Spread < mat.Thickness {
		most := float64(press.MostHandedOn(p, mat))
		mat.Firmness = unit.Pressure(math.Max(firm.Low, math.Min(firm.High, most)))
	}
	return mat
}

// adviseMatFit tells where the mat of a level is squashed further, or less, than its law was
// fitted to.
func (m matting) adviseMatFit(b *builder, l level) {
	s, err := press.MatSquash(unit.Pressure(m.above.Mid), press.Mat{
		Thickness: unit.Length(l.mat), Firmness: unit.Pressure(m.firm.Mid), Spread: unit.Length(l.spread), Thin: m.thin.Mid,
	})
	share := s.Metres() / l.mat
	if err == nil && reaches(share, leastFit) && reaches(mostFit, share) {
		return
	}
	b.advise(ReasonMatOutsideFit, nil)
}

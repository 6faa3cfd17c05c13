package engine

import (
	"fmt"
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// firmness of mats at a quarter squash: grades 1, 2 and 3 of ASTM D1056.
var firmness = map[string]unit.Range[float64]{
	"soft":   {Low: 14e3, Mid: 24e3, High: 34e3},
	"medium": {Low: 34e3, Mid: 48e3, High: 62e3},
	"firm":   {Low: 62e3, Mid: 76e3, High: 90e3},
}

// usualStrips is how many strips share a mat where no count is said.
const usualStrips = 5

// A matting is what the mats of a stack are like and what presses on them.
// Figures in SI.
type matting struct {
	pressed, concentrated bool
	firm                  unit.Range[float64] // at a quarter squash
	thin                  unit.Range[float64] // share of thin strips
	face, above           unit.Range[float64] // the vacuum, and what it comes to on the strips
	sled, strips          float64             // their areas, where the sled concentrates
}

// matting reads what the mats of a pile are like.
func (b *builder) matting(p pile) (m matting, err error) {
	if b.evacuated() {
		if m.above, m.pressed, err = b.vacuum(); err != nil {
			return m, err
		}
	}
	if err := b.concentrate(&m); err != nil || !p.squashes() {
		return m, err
	}
	m.firm = b.matFirmness()
	m.thin = unit.Exactly(0.5)
	if share := 1 / float64(b.stripsOr(usualStrips)); !b.exact && share < 0.5 {
		m.thin.Low = share
	}
	return m, nil
}

// over sweeps a figure of a mat on strips that differ by spread over the vacuum,
// the share of thin strips and the firmness, with the one in between that hands on
// most.
func (m matting) over(thick, spread float64, f func(unit.Pressure, press.Mat) (float64, error)) (unit.Range[float64], error) {
	var err error
	at := func(firm unit.Range[float64]) unit.Range[float64] {
		return unit.Sweep(func(c unit.Corner) float64 {
			v, e := f(unit.Pressure(c[0]), press.Mat{
				Thickness: unit.Length(thick), Firmness: unit.Pressure(c[2]), Spread: unit.Length(spread), Thin: c[1],
			})
			err = firstError(err, e)
			return v
		}, m.above, m.thin, firm)
	}
	return unit.Hull(at(m.firm), unit.Sweep(func(c unit.Corner) float64 {
		mat := press.Mat{Thickness: unit.Length(thick), Spread: unit.Length(spread), Thin: c[1]}
		v, e := f(unit.Pressure(c[0]), mostHandedOn(unit.Pressure(c[0]), mat, m.firm))
		err = firstError(err, e)
		return v
	}, m.above, m.thin)), err
}

// low returns what the mat of a level hands on to its thinnest strips.
func (m matting) low(l level) (unit.Range[float64], error) {
	return m.over(l.mat, l.spread, func(p unit.Pressure, mat press.Mat) (float64, error) {
		q, err := press.MatLow(p, mat)
		return float64(q), err
	})
}

// squashed returns how far the tallest strips of a level squash its mats.
func (m matting) squashed(l level) (unit.Range[float64], error) {
	squash := func(p unit.Pressure, mat press.Mat) (float64, error) {
		s, err := press.MatSquash(p, mat)
		return float64(s), err
	}
	var s unit.Range[float64]
	for _, part := range [...]struct{ thick, spread float64 }{{l.mat, l.spread}, {l.pad, 0}} {
		if part.thick == 0 {
			continue
		}
		r, err := m.over(part.thick, part.spread, squash)
		if err != nil {
			return s, err
		}
		s = unit.Around(s.Low+r.Low, s.Mid+r.Mid, s.High+r.High)
	}
	return s, nil
}

// proud returns how far the work of a level stands above its fence.
func (m matting) proud(l level) (unit.Range[float64], error) {
	squash, err := m.squashed(l)
	if err != nil {
		return squash, err
	}
	r := unit.Sweep(func(c unit.Corner) float64 {
		v, e := press.Proud(unit.Length(l.core), unit.Length(l.strips), unit.Length(l.mats()), unit.Length(c[0]), unit.Length(l.fence))
		err = firstError(err, e)
		return float64(v)
	}, squash)
	return r, err
}

// concentrate raises the pressure under a sled that is larger than the strips.
func (b *builder) concentrate(m *matting) error {
	if !m.pressed {
		return nil
	}
	w, okW := b.number(unit.SledWidth)
	l, okL := b.number(unit.SledLength)
	r, err := b.row()
	L, okS := b.length()
	if err != nil || !okW || !okL || !okS || r.width == 0 || w*l <= r.width*L {
		return err
	}
	m.face, m.sled, m.strips = m.above, w*l, r.width*L
	m.above = unit.Sweep(func(c unit.Corner) float64 {
		p, e := press.LevelPressure(unit.Pressure(c[0]), unit.Area(m.sled), unit.Area(m.strips))
		err = firstError(err, e)
		return float64(p)
	}, m.face)
	m.concentrated = true
	b.advise(ReasonSledConcentrates, unit.Facts{
		unit.FacePressure:  figure(unit.FacePressure, m.face),
		unit.LevelPressure: figure(unit.LevelPressure, m.above),
	})
	return err
}

// matFirmness returns σ25: as measured, or that of the kind of mat.
func (b *builder) matFirmness() unit.Range[float64] {
	if σ, ok := b.number(unit.MatFirm); ok {
		return unit.Exactly(σ)
	}
	if r, ok := firmness[b.wordOr(unit.MatFirmness, "medium")]; ok {
		return b.collapse(r)
	}
	b.assume(unit.MatFirmness, unit.Word("medium"))
	return b.collapse(firmness["medium"])
}

// stripsOr returns the count of strips of a panel.
func (b *builder) stripsOr(n int) int {
	if r, err := b.row(); err == nil && r.strips > 0 {
		return r.strips
	}
	return n
}

// workLow keeps the working of what a level's thinnest strips get.
func (m matting) workLow(b *builder, p pile, l level, r unit.Range[float64]) {
	b.work(unit.MatLow, r, p.named(l)+"p_low = σ((s − d)/m), (1 − φ) σ(s/m) + φ σ((s − d)/m) = p, σ(ε) = 3 σ25 ε / (1 − ε)",
		"fitted to a published closed-cell data sheet within 7 %; grades of ASTM D1056; the share of thin strips has no source", Estimate, func() string {
			s, _ := press.MatSquash(unit.Pressure(m.above.Mid), press.Mat{
				Thickness: unit.Length(l.mat), Firmness: unit.Pressure(m.firm.Mid), Spread: unit.Length(l.spread), Thin: m.thin.Mid,
			})
			return fmt.Sprintf("p = %.4g kPa, σ25 = %.4g kPa, m = %.4g mm, d = %.4g mm, φ = %.3g give s = %.4g mm",
				m.above.Mid/1e3, m.firm.Mid/1e3, l.mat*1e3, l.spread*1e3, m.thin.Mid, s.Millimetres())
		})
}

// saidMat returns the thickness of a mat that was told outside the stack.
func (b *builder) saidMat() (float64, bool) {
	if b.matDenied() {
		return 0, false
	}
	m, ok := b.number(unit.MatThickness)
	return m, ok && m > 0
}

func (b *builder) matDenied() bool { return b.q.Said.Word(unit.MatDenied) == "none" }

// spreadSaid returns by how much strips are said to differ, with no word about
// which.
func (b *builder) spreadSaid() (float64, bool) {
	d, ok := b.number(unit.ThicknessSpread)
	return math.Max(0, d), ok
}

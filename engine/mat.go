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

// A matting is a mat with what lies under it. Figures in SI.
type matting struct {
	known, pressed, low, concentrated bool
	thick                             float64
	firm                              unit.Range[float64]
	thin                              unit.Range[float64] // share of thin strips
	spread                            float64
	uneven                            bool                // the spread of thickness is known
	face, above                       unit.Range[float64] // the vacuum, and what it comes to on the strips
	sled, strips                      float64             // their areas, where the sled concentrates
	pressure                          unit.Range[float64]
}

// mat reads a mat and works out what it hands on.
func (b *builder) mat() (matting, error) {
	var m matting
	m.spread, m.uneven = b.spreadOfThickness()
	if b.evacuated() {
		var err error
		if m.above, m.pressed, err = b.vacuum(); err != nil {
			return m, err
		}
	}
	if err := b.concentrate(&m); err != nil {
		return m, err
	}
	if m.thick, m.known = b.matThickness(); !m.known {
		return m, nil
	}
	m.firm = b.matFirmness()
	m.thin = b.spread(0.5, 0.5, 0.5)
	if share := 1 / float64(b.stripsOr(usualStrips)); !b.exact {
		m.thin = unit.Around(math.Min(share, 0.5), 0.5, math.Max(share, 0.5))
	}
	m.low = m.pressed && m.uneven
	if m.uneven && !m.pressed {
		b.need(unit.Vacuum)
	}
	var err error
	if m.low {
		m.pressure = m.over(func(p unit.Pressure, mat press.Mat) (float64, error) {
			q, err := press.MatLow(p, mat)
			return float64(q), err
		}, &err)
	}
	return m, err
}

// over sweeps a figure of the mat over the vacuum, the share of thin strips and
// the firmness, with the one in between that hands on most.
func (m matting) over(f func(unit.Pressure, press.Mat) (float64, error), err *error) unit.Range[float64] {
	share := m.thin
	if share.High >= 1 { // a single strip has none that is thinner
		share.High = 0.5
	}
	at := func(firm unit.Range[float64]) unit.Range[float64] {
		return unit.Sweep(func(c unit.Corner) float64 {
			v, e := f(unit.Pressure(c[0]), press.Mat{
				Thickness: unit.Length(m.thick), Firmness: unit.Pressure(c[2]), Spread: unit.Length(m.spread), Thin: c[1],
			})
			*err = firstError(*err, e)
			return v
		}, m.above, share, firm)
	}
	return unit.Hull(at(m.firm), unit.Sweep(func(c unit.Corner) float64 {
		mat := press.Mat{Thickness: unit.Length(m.thick), Spread: unit.Length(m.spread), Thin: c[1]}
		v, e := f(unit.Pressure(c[0]), mostHandedOn(unit.Pressure(c[0]), mat, m.firm))
		*err = firstError(*err, e)
		return v
	}, m.above, share))
}

// proud returns how far the work of a level stands above its fence.
func (m matting) proud(l level) unit.Range[float64] {
	squash := unit.Exactly(0.0)
	if l.mat > 0 {
		m.thick = l.mat
		var err error
		squash = m.over(func(p unit.Pressure, mat press.Mat) (float64, error) {
			s, err := press.MatSquash(p, mat)
			return float64(s), err
		}, &err)
	}
	return unit.Sweep(func(c unit.Corner) float64 {
		v, err := press.Proud(unit.Length(l.core), unit.Length(l.strips), unit.Length(l.mat), unit.Length(c[0]), unit.Length(l.fence))
		if err != nil {
			return nan
		}
		return float64(v)
	}, squash)
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

// spreadOfThickness returns how much the strips differ.
func (b *builder) spreadOfThickness() (float64, bool) {
	if d, ok := b.number(unit.ThicknessSpread); ok {
		return d, true
	}
	most, ok1 := b.number(unit.StripThickest)
	least, ok2 := b.number(unit.StripThinnest)
	return math.Max(0, most-least), ok1 && ok2
}

// matThickness returns the mat's, unless there is none.
func (b *builder) matThickness() (float64, bool) {
	if b.q.Said.Word(unit.MatDenied) == "none" {
		return 0, false
	}
	if m, ok := b.number(unit.MatThickness); ok {
		return m, true
	}
	for _, l := range b.layers() {
		if l.Part == partMat && l.Thickness > 0 {
			return l.Thickness / 1000, true
		}
	}
	return 0, false
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

// judgeUneven judges strips of several thicknesses where no mat evens them out.
func (b *builder) judgeUneven(m matting) {
	if !m.uneven || m.known {
		return
	}
	figures := unit.Facts{unit.ThicknessSpread: unit.ThicknessSpread.Number(m.spread)}
	switch rigid := b.underRigid(); {
	case !rigid:
		b.judge("uneven strips", Good, ReasonFilmForgives, figures)
	case !reaches(mostUnevenSled, m.spread):
		b.judge("uneven strips", Stop, ReasonUneven, figures)
	default:
		b.judge("uneven strips", Good, ReasonEven, figures)
	}
}

// underRigid reports whether something rigid lies on the strips. Nobody denies a
// mat under film alone.
func (b *builder) underRigid() bool {
	_, over, _ := b.aroundStrips()
	denied := b.q.Said.Word(unit.MatDenied) == "none" && len(b.layers()) == 0
	return over > 0 || denied || b.known(unit.CaulThickness)
}

func (m matting) work(b *builder) {
	b.work(unit.MatLow, m.pressure, "p_low = σ((s − d)/m), (1 − φ) σ(s/m) + φ σ((s − d)/m) = p, σ(ε) = 3 σ25 ε / (1 − ε)",
		"fitted to a published closed-cell data sheet within 7 %; grades of ASTM D1056", Seen, func() string {
			s, _ := press.MatSquash(unit.Pressure(m.above.Mid), press.Mat{
				Thickness: unit.Length(m.thick), Firmness: unit.Pressure(m.firm.Mid), Spread: unit.Length(m.spread), Thin: m.thin.Mid,
			})
			return fmt.Sprintf("p = %.4g kPa, σ25 = %.4g kPa, m = %.4g mm, d = %.4g mm, φ = %.3g give s = %.4g mm",
				m.above.Mid/1e3, m.firm.Mid/1e3, m.thick*1e3, m.spread*1e3, m.thin.Mid, s.Millimetres())
		})
}

package engine

import (
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// Uncertainty of the air and of the gauge.
const (
	dialError    = 2540.0 // Pa; class 2.5 dial of 0–30 inHg, EN 837-1 (from memory)
	weatherError = 2000.0 // Pa (our estimate)
)

// ambient returns the pressure of the shop's air: the barometer, exact, or the
// standard atmosphere at the shop's height give or take the weather.
func (b *builder) ambient() (unit.Range[float64], error) {
	if p, ok := b.number(unit.Ambient); ok {
		return unit.Exactly(p), nil
	}
	p, err := press.StandardAmbient(unit.Length(b.numberOr(unit.Altitude, 0)))
	if err != nil {
		return unit.Range[float64]{}, err
	}
	return b.spread(float64(p)-weatherError, float64(p), float64(p)+weatherError), nil
}

// vacuum returns the difference to the ambient as the press sees it: a dial's
// reading with its error, an absolute reading or a per cent as exact as the
// ambient. It is never above the ambient. False where nothing is said of it.
func (b *builder) vacuum() (unit.Range[float64], bool, error) {
	pa, err := b.ambient()
	if err != nil {
		return unit.Range[float64]{}, false, err
	}
	v, ok := b.vacuumSaid(pa)
	if !ok {
		return v, false, nil
	}
	if err := unit.AtLeast("vacuum", v.Mid/1000, 0, " kPa"); err != nil {
		return v, false, err
	}
	return unit.Around(math.Min(math.Max(0, v.Low), pa.Low), math.Min(v.Mid, pa.Mid), math.Min(v.High, pa.High)), true, nil
}

// vacuumSaid is the vacuum as asked for, which may be more than the air has.
func (b *builder) vacuumSaid(pa unit.Range[float64]) (unit.Range[float64], bool) {
	f, n, ok := b.gauge()
	if !ok {
		return unit.Range[float64]{}, false
	}
	switch f {
	case unit.VacuumAbsolute:
		return unit.Around(pa.Low-n, pa.Mid-n, pa.High-n), true
	case unit.VacuumPercent:
		return pa.Times(n / 100), true
	}
	return b.spread(n-dialError, n, n+dialError), true
}

// evacuated reports whether anything is known of the vacuum.
func (b *builder) evacuated() bool {
	return b.known(unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent)
}

// gauge returns how the vacuum is known, what was said before the room's own.
func (b *builder) gauge() (unit.Field, float64, bool) {
	ways := [...]unit.Field{unit.Vacuum, unit.VacuumAbsolute, unit.VacuumPercent}
	for _, f := range ways {
		if b.said(f) {
			n, ok := b.number(f)
			return f, n, ok
		}
	}
	for _, f := range ways {
		if n, ok := b.number(f); ok {
			return f, n, true
		}
	}
	return "", 0, false
}

// StatedVacuum returns the vacuum that some facts state, as a difference to the
// ambient that they, or else the room's defaults, give. It is not cut off at
// the ambient.
func StatedVacuum(said unit.Facts, room ...unit.Facts) (unit.Pressure, bool) {
	q := Question{Said: said}
	if len(room) > 0 {
		q.Room = room[0]
	}
	b, err := newBuilder(q)
	if err != nil {
		return 0, false
	}
	b.exact = true
	pa, err := b.ambient()
	if err != nil {
		return 0, false
	}
	v, ok := b.vacuumSaid(pa)
	return unit.Pressure(v.Mid), ok
}

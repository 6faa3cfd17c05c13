package bot

import (
	"math"

	"presshand/engine/unit"
	"presshand/grammar"
)

// asForce takes pounds and kilograms for what presses with their weight where a
// force is meant.
func asForce(u unit.Unit, f unit.Field) unit.Unit {
	switch {
	case f.Dimension() != unit.Pushing:
	case u.Symbol == unit.Pound.Symbol:
		return unit.PoundF
	case u.Symbol == unit.Kilogram.Symbol:
		return unit.KGF
	}
	return u
}

// held returns a bare number as what f holds, where it can be that.
func (t *turn) held(f unit.Field, a grammar.Amendment) (grammar.Fact, bool) {
	u := asForce(a.Unit, f)
	switch {
	case f == unit.Vacuum && u.Symbol == "%":
		return amendment(unit.VacuumPercent, u, a), a.Value > 0 && a.Value < 100
	case f == unit.Vacuum && u.Symbol == "in":
		u = unit.InHg
	case u.Symbol == "" && f == unit.Vacuum:
		u = gaugeUnit(a.Value, t.settings.Metric)
	case u.Symbol == "" && f == unit.PumpSpeed && t.settings.Metric:
		return grammar.Fact{}, false // m³/h, l/min or l/s
	case u.Symbol == "":
		u = t.unitOf(Said{Field: f})
	}
	if f.Dimension() != unit.Count && (u.Symbol == "" || u.Dimension != f.Dimension()) {
		return grammar.Fact{}, false
	}
	fact := amendment(f, u, a)
	n, _ := fact.Value.(unit.Number)
	if _, known := likely[f]; !known { // nothing tells whether it can be; then its unit has to
		return fact, a.Unit.Symbol != ""
	}
	whole := f.Dimension() != unit.Count || a.Unit.Symbol == "" && a.Value == math.Trunc(a.Value)
	return fact, whole && isLikely(f, n)
}

// isLikely reports whether a shop has a field at n, as far as that is known.
func isLikely(f unit.Field, n unit.Number) bool {
	span, known := likely[f]
	return !known || float64(n) >= span[0] && float64(n) <= span[1]
}

// gaugeUnit is what a gauge with a bare number on it shows.
func gaugeUnit(v float64, metric bool) unit.Unit {
	switch {
	case !metric:
		return unit.InHg
	case v < 1.1:
		return unit.Bar
	case v > 110:
		return unit.Mbar
	}
	return unit.KPa
}

// unitOf is the unit that a field was last written in.
func (t *turn) unitOf(x Said) unit.Unit {
	if u, ok := named[x.Unit]; ok {
		return u
	}
	if x.Field == unit.Altitude {
		return other(unit.Unit{Metric: !t.settings.Metric}, [2]unit.Unit{unit.Foot, unit.Metre})
	}
	u, _ := styleOf(t.settings.Metric, Thread{}).units(x.Field)
	return u
}

func amendment(f unit.Field, u unit.Unit, a grammar.Amendment) grammar.Fact {
	value := unit.Number(a.Value)
	if u.Dimension == f.Dimension() && u.Symbol != "" && f.Dimension() != unit.Count {
		value = f.Number(u.SI(a.Value))
	}
	return grammar.Fact{Field: f, Value: value, Unit: u, Text: a.Text}
}

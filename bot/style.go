package bot

import (
	"presshand/engine/unit"
)

// A style is how one person's figures are shown: the unit that they wrote
// first, the other system's in brackets.
type style struct {
	metric bool
	asked  []unit.Unit                  // units that the answer is wanted in
	wrote  map[unit.Dimension]unit.Unit // by what they wrote
	vacuum unit.Unit                    // as they wrote the vacuum
	fields map[unit.Field]unit.Unit     // as they wrote each field
}

// shown are the units of each kind of quantity, of the inch shop and of the
// metric one.
var shown = map[unit.Dimension][2]unit.Unit{
	unit.Distance:  {unit.Inch, unit.MM},
	unit.Pressing:  {unit.PSI, unit.KPa},
	unit.Pushing:   {unit.PoundF, unit.Newton},
	unit.Warmth:    {unit.DegF, unit.DegC},
	unit.Weight:    {unit.Ounce, unit.Gram},
	unit.Content:   {unit.Gallon, unit.Litre},
	unit.Surface:   {unit.SquareFoot, unit.SquareMetre},
	unit.Pumping:   {unit.CubicFootPerMinute, unit.LitrePerSecond},
	unit.Leaking:   {unit.InHgPerMin, unit.KPaPerMin},
	unit.Spreading: {unit.LbPer1000Ft2, unit.GPerM2},
}

// gauges are the pressures that a vacuum gauge or a barometer shows.
var gauges = map[unit.Field]bool{
	unit.Vacuum: true, unit.Ambient: true, unit.UltimateVacuum: true, unit.VacuumAbsolute: true, unit.PumpLimit: true,
}

// plainPressures are the units of a written vacuum in which other pressures are
// shown too; mercury and water are only for gauges.
var plainPressures = map[string]bool{
	"bar": true, "mbar": true, "hPa": true, "kPa": true, "MPa": true, "N/mm²": true, "psi": true, "kgf/cm²": true,
}

// named are all units by their symbols.
var named = func() map[string]unit.Unit {
	by := map[string]unit.Unit{}
	for _, u := range []unit.Unit{
		unit.MM, unit.CM, unit.Metre, unit.Inch, unit.Foot, unit.Yard, unit.Thou, unit.Micrometre,
		unit.Pa, unit.HPa, unit.KPa, unit.MPa, unit.Mbar, unit.Bar, unit.Atm, unit.Torr, unit.MMHg, unit.CMHg,
		unit.NPerMM2, unit.KgfPerCM2, unit.InHg, unit.PSI, unit.InH2O, unit.TonPerFt2, unit.PSF,
		unit.Newton, unit.KN, unit.KGF, unit.PoundF, unit.ShortTonF, unit.DegC, unit.DegF,
		unit.Second, unit.Minute, unit.Hour, unit.Day, unit.Gram, unit.Kilogram, unit.Ounce, unit.Pound,
		unit.Litre, unit.Millilitre, unit.CubicMetre, unit.Gallon, unit.CubicFoot, unit.FluidOunce, unit.Quart,
		unit.SquareMetre, unit.SquareFoot, unit.SquareInch,
		unit.LitrePerSecond, unit.LitrePerMinute, unit.CubicMetrePerMin, unit.CubicMetrePerHour, unit.CubicFootPerMinute,
		unit.KPaPerMin, unit.MbarPerMin, unit.InHgPerMin, unit.GPerM2, unit.LbPer1000Ft2, unit.PercentOf,
	} {
		by[u.Symbol] = u
	}
	return by
}()

// styleOf returns how to show figures to who wrote a thread.
func styleOf(metricShop bool, thread Thread) style {
	s := style{fields: make(map[unit.Field]unit.Unit, len(thread.Said)), wrote: map[unit.Dimension]unit.Unit{}}
	metric, inch := 0, 0
	for _, x := range thread.Said {
		u, ok := named[x.Unit]
		if !ok {
			continue
		}
		s.fields[x.Field] = u
		if gauges[x.Field] {
			s.vacuum = u
		}
		if u.Dimension == unit.Pressing && plainPressures[u.Symbol] {
			s.wrote[unit.Pressing] = u
		}
		if _, both := shown[u.Dimension]; both && u.Dimension != unit.Distance && u.Dimension != unit.Pressing {
			s.wrote[u.Dimension] = u
		}
		if u.Dimension == unit.Distance || len(thread.Said) == 1 {
			if u.Metric {
				metric++
			} else {
				inch++
			}
		}
	}
	s.metric = metric > inch || metric == inch && metricShop
	for _, symbol := range thread.In {
		s.asked = append(s.asked, named[symbol])
	}
	return s
}

// units returns the unit to show f in, and the one in brackets.
func (s style) units(f unit.Field) (first, second unit.Unit) {
	d := f.Dimension()
	pair, ok := shown[d]
	if !ok {
		return f.Unit(), unit.Unit{}
	}
	first, second = pair[0], pair[1]
	if f == unit.FaceTonsPerSquareFoot {
		return unit.TonPerFt2, unit.Unit{}
	}
	if gauges[f] {
		first = unit.InHg
	}
	if f == unit.Altitude {
		first, second = unit.Foot, unit.Metre
	}
	if s.metric {
		first, second = second, first
	}
	if w := s.written(f, d); w.Symbol != "" && w.Metric != first.Metric {
		first, second = w, first
	} else if w.Symbol != "" {
		first = w
	}
	for _, u := range s.asked {
		if d == unit.Pushing {
			u = asForceAsked(u)
		}
		if u.Dimension == d && gauges[f] && s.vacuum.Symbol != "" {
			return first, u
		}
		if u.Dimension == d {
			return u, other(u, pair)
		}
	}
	return first, second
}

// asForceAsked is the force that "total pounds?" and "in kg?" ask for; pounds that are asked
// for are shown as such, and as no tons.
func asForceAsked(u unit.Unit) unit.Unit {
	switch u.Symbol {
	case unit.Pound.Symbol, unit.PoundF.Symbol:
		u = unit.PoundF
		u.Symbol = pounds
	case unit.Kilogram.Symbol:
		u = unit.KGF
	}
	return u
}

// pounds are those of a force.
const pounds = "pounds"

// written is the unit in which figures like f were written, if any.
func (s style) written(f unit.Field, d unit.Dimension) unit.Unit {
	if gauges[f] && s.vacuum.Dimension == unit.Pressing {
		return s.vacuum
	}
	return s.wrote[d]
}

// other is the unit of a pair that belongs to the other system than u.
func other(u unit.Unit, pair [2]unit.Unit) unit.Unit {
	if u.Metric {
		return pair[0]
	}
	return pair[1]
}

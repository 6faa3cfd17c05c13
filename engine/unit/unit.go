package unit

// Dimension is the kind of quantity that a number with a unit measures.
type Dimension string

const (
	Count      Dimension = "count"
	Distance   Dimension = "length"
	Pressing   Dimension = "pressure"
	Pushing    Dimension = "force"
	Warmth     Dimension = "temperature"
	Lasting    Dimension = "time"
	Weight     Dimension = "mass"
	Content    Dimension = "volume"
	Surface    Dimension = "area"
	Pumping    Dimension = "flow"
	Leaking    Dimension = "leak rate"
	Spreading  Dimension = "spread"
	Proportion Dimension = "percent"
	Loading    Dimension = "line load"
	Plain      Dimension = "number"
	Text       Dimension = "text"
)

// A Unit turns a written number into SI: value·Factor + Offset.
type Unit struct {
	Symbol    string
	Dimension Dimension
	Factor    float64
	Offset    float64
	Metric    bool
}

// SI returns v of this unit in SI (temperatures in °C).
func (u Unit) SI(v float64) float64 { return v*u.Factor + u.Offset }

// Of returns an SI value in this unit.
func (u Unit) Of(si float64) float64 { return (si - u.Offset) / u.Factor }

// Units by their usual symbols. Factors: NIST SP 811 Appendix B.8 and B.9,
// those of the inch, foot, pound, bar and degree by definition.
var (
	MM         = Unit{"mm", Distance, 0.001, 0, true}
	CM         = Unit{"cm", Distance, 0.01, 0, true}
	Metre      = Unit{"m", Distance, 1, 0, true}
	Inch       = Unit{"in", Distance, inch, 0, false}
	Foot       = Unit{"ft", Distance, foot, 0, false}
	Yard       = Unit{"yd", Distance, 0.9144, 0, false}
	Thou       = Unit{"thou", Distance, inch / 1000, 0, false}
	Micrometre = Unit{"µm", Distance, 1e-6, 0, true}

	Pa        = Unit{"Pa", Pressing, 1, 0, true}
	HPa       = Unit{"hPa", Pressing, 100, 0, true}
	KPa       = Unit{"kPa", Pressing, 1000, 0, true}
	MPa       = Unit{"MPa", Pressing, 1e6, 0, true}
	Mbar      = Unit{"mbar", Pressing, 100, 0, true}
	Bar       = Unit{"bar", Pressing, 1e5, 0, true}
	Atm       = Unit{"atm", Pressing, 101325, 0, true}
	Torr      = Unit{"torr", Pressing, 101325.0 / 760, 0, true}
	MMHg      = Unit{"mmHg", Pressing, 133.3224, 0, true}
	CMHg      = Unit{"cmHg", Pressing, 1333.224, 0, true}
	NPerMM2   = Unit{"N/mm²", Pressing, 1e6, 0, true}
	KgfPerCM2 = Unit{"kgf/cm²", Pressing, 98066.5, 0, true}
	InHg      = Unit{"inHg", Pressing, inHg, 0, false}
	PSI       = Unit{"psi", Pressing, psi, 0, false}
	InH2O     = Unit{"inH2O", Pressing, 249.0889, 0, false}
	TonPerFt2 = Unit{"ton/ft²", Pressing, shortTonPerFt2, 0, false}
	PSF       = Unit{"lb/ft²", Pressing, poundForce / (foot * foot), 0, false}

	Newton    = Unit{"N", Pushing, 1, 0, true}
	KN        = Unit{"kN", Pushing, 1000, 0, true}
	KGF       = Unit{"kgf", Pushing, 9.80665, 0, true}
	PoundF    = Unit{"lbf", Pushing, poundForce, 0, false}
	ShortTonF = Unit{"tons", Pushing, 2000 * poundForce, 0, false}

	DegC = Unit{"°C", Warmth, 1, 0, true}
	DegF = Unit{"°F", Warmth, 1 / 1.8, -32 / 1.8, false}

	Second = Unit{"s", Lasting, 1, 0, true}
	Minute = Unit{"min", Lasting, 60, 0, true}
	Hour   = Unit{"h", Lasting, 3600, 0, true}
	Day    = Unit{"d", Lasting, 86400, 0, true}

	Gram     = Unit{"g", Weight, 0.001, 0, true}
	Kilogram = Unit{"kg", Weight, 1, 0, true}
	Ounce    = Unit{"oz", Weight, 0.028349523125, 0, false}
	Pound    = Unit{"lb", Weight, 0.45359237, 0, false}

	Litre      = Unit{"l", Content, 0.001, 0, true}
	Millilitre = Unit{"ml", Content, 1e-6, 0, true}
	CubicMetre = Unit{"m³", Content, 1, 0, true}
	Gallon     = Unit{"gal", Content, 0.003785411784, 0, false}
	CubicFoot  = Unit{"ft³", Content, foot * foot * foot, 0, false}
	FluidOunce = Unit{"fl oz", Content, 2.95735295625e-5, 0, false}
	Quart      = Unit{"qt", Content, 0.000946352946, 0, false}

	SquareMetre = Unit{"m²", Surface, 1, 0, true}
	SquareFoot  = Unit{"ft²", Surface, foot * foot, 0, false}
	SquareInch  = Unit{"in²", Surface, inch * inch, 0, false}

	LitrePerSecond     = Unit{"l/s", Pumping, 0.001, 0, true}
	LitrePerMinute     = Unit{"l/min", Pumping, 0.001 / 60, 0, true}
	CubicMetrePerMin   = Unit{"m³/min", Pumping, 1.0 / 60, 0, true}
	CubicMetrePerHour  = Unit{"m³/h", Pumping, 1.0 / 3600, 0, true}
	CubicFootPerMinute = Unit{"cfm", Pumping, foot * foot * foot / 60, 0, false}

	KPaPerMin  = Unit{"kPa/min", Leaking, 1000.0 / 60, 0, true}
	MbarPerMin = Unit{"mbar/min", Leaking, 100.0 / 60, 0, true}
	MbarPerSec = Unit{"mbar/s", Leaking, 100, 0, true}
	InHgPerMin = Unit{"inHg/min", Leaking, inHg / 60, 0, false}

	GPerM2       = Unit{"g/m²", Spreading, 0.001, 0, true}
	LbPer1000Ft2 = Unit{"lb/1000 ft²", Spreading, 0.45359237 / (1000 * foot * foot), 0, false}
	GPerFt2      = Unit{"g/ft²", Spreading, 0.001 / (foot * foot), 0, false}
	OzPerFt2     = Unit{"oz/ft²", Spreading, 0.45359237 / 16 / (foot * foot), 0, false}
	OzPerYd2     = Unit{"oz/yd²", Spreading, 0.45359237 / 16 / (9 * foot * foot), 0, false}

	NewtonPerMetre    = Unit{"N/m", Loading, 1, 0, true}
	PoundForcePerFoot = Unit{"lbf/ft", Loading, poundForce / foot, 0, false}

	PercentOf = Unit{"%", Proportion, 1, 0, true}
	One       = Unit{"", Plain, 1, 0, true}
)

package unit

import "math"

// The quantities of the shop. Each stores the SI unit named beside it; the
// constructors and the readers say their unit.
type (
	Length      float64 // metres
	Area        float64 // square metres
	Volume      float64 // cubic metres
	Mass        float64 // kilograms
	Force       float64 // newtons
	Pressure    float64 // pascals
	Stiffness   float64 // pascals: an elastic modulus, or N/m for each metre of length
	Angle       float64 // radians
	Time        float64 // seconds
	Temperature float64 // degrees Celsius
	Flow        float64 // cubic metres a second
	LeakRate    float64 // pascals a second, the pump off
	Spread      float64 // kilograms a square metre
	Curvature   float64 // one over metres
	Percent     float64 // per cent
)

// Conversion factors, each exact unless it says otherwise.
const (
	inch           = 0.0254
	foot           = 0.3048
	poundForce     = 4.4482216152605
	psi            = 6894.757293168 // NIST SP 811 B.8, derived exactly
	inHg           = 3386.389       // conventional, NIST SP 811 B.8
	shortTonPerFt2 = 95760.518      // 2000 lbf / 0.09290304 m²
)

func Metres(v float64) Length         { return Length(v) }
func Millimetres(v float64) Length    { return Length(v / 1000) }
func Inches(v float64) Length         { return Length(v * inch) }
func Feet(v float64) Length           { return Length(v * foot) }
func (l Length) Metres() float64      { return float64(l) }
func (l Length) Millimetres() float64 { return float64(l) * 1000 }
func (l Length) Inches() float64      { return float64(l) / inch }

func Pascals(v float64) Pressure                { return Pressure(v) }
func Kilopascals(v float64) Pressure            { return Pressure(v * 1000) }
func InchesOfMercury(v float64) Pressure        { return Pressure(v * inHg) }
func PoundsPerSquareInch(v float64) Pressure    { return Pressure(v * psi) }
func (p Pressure) Pascals() float64             { return float64(p) }
func (p Pressure) Kilopascals() float64         { return float64(p) / 1000 }
func (p Pressure) InchesOfMercury() float64     { return float64(p) / inHg }
func (p Pressure) PoundsPerSquareInch() float64 { return float64(p) / psi }
func (p Pressure) ShortTonsPerSquareFoot() float64 {
	return float64(p) / shortTonPerFt2
}

func Newtons(v float64) Force        { return Force(v) }
func PoundsForce(v float64) Force    { return Force(v * poundForce) }
func (f Force) Newtons() float64     { return float64(f) }
func (f Force) PoundsForce() float64 { return float64(f) / poundForce }

func Gigapascals(v float64) Stiffness         { return Stiffness(v * 1e9) }
func (e Stiffness) Gigapascals() float64      { return float64(e) / 1e9 }
func SquareMetres(v float64) Area             { return Area(v) }
func (a Area) SquareMetres() float64          { return float64(a) }
func Litres(v float64) Volume                 { return Volume(v / 1000) }
func (v Volume) Litres() float64              { return float64(v) * 1000 }
func Grams(v float64) Mass                    { return Mass(v / 1000) }
func (m Mass) Grams() float64                 { return float64(m) * 1000 }
func GramsPerSquareMetre(v float64) Spread    { return Spread(v / 1000) }
func Seconds(v float64) Time                  { return Time(v) }
func Minutes(v float64) Time                  { return Time(v * 60) }
func (t Time) Seconds() float64               { return float64(t) }
func (t Time) Minutes() float64               { return float64(t) / 60 }
func Celsius(v float64) Temperature           { return Temperature(v) }
func Fahrenheit(v float64) Temperature        { return Temperature((v - 32) / 1.8) }
func (t Temperature) Celsius() float64        { return float64(t) }
func (t Temperature) Fahrenheit() float64     { return float64(t)*1.8 + 32 }
func LitresPerSecond(v float64) Flow          { return Flow(v / 1000) }
func (f Flow) LitresPerSecond() float64       { return float64(f) * 1000 }
func KilopascalsPerMinute(v float64) LeakRate { return LeakRate(v * 1000 / 60) }

func Degrees(v float64) Angle       { return Angle(v * math.Pi / 180) }
func Friction(μ float64) Angle      { return Angle(math.Atan(μ)) }
func Slope(rise, run float64) Angle { return Angle(math.Atan2(rise, run)) }
func (a Angle) Deg() float64        { return float64(a) * 180 / math.Pi }
func (a Angle) Tan() float64        { return math.Tan(float64(a)) }

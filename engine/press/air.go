// Package press holds the formulas of a vacuum press: air and face pressure,
// side pressure at edge joints, wedges, flattening, stacks, pump-down, and the
// movement of what was pressed. SI inside; every formula names its source.
package press

import (
	"math"

	"presshand/engine/unit"
)

// StandardAmbient returns the air pressure p at a height h of the US standard
// atmosphere.
//
//	p = p0 (1 − Γ h / T0)^5.255876
//
//	p0  pressure at sea level, 101325      Pa
//	Γ   lapse rate, 0.0065                 K/m
//	T0  temperature at sea level, 288.15   K
//	h   geopotential height                m
//	p   ambient pressure                   Pa
//
// Model: dry air at rest, temperature falling evenly with height. Weather moves
// the true figure by a few per cent.
//
// Valid for −1000 m ≤ h ≤ 11000 m; outside it the error is a [*unit.RangeError].
//
// Source: US Standard Atmosphere 1976, troposphere; ISO 2533.
func StandardAmbient(h unit.Length) (unit.Pressure, error) {
	if !(h >= -1000 && h <= 11000) {
		return 0, &unit.RangeError{What: "height above the sea", Got: h.Metres(), Unit: " m", Want: "from -1000 to 11000 m"}
	}
	return unit.Pressure(101325 * math.Pow(1-0.0065*float64(h)/288.15, 5.255876)), nil
}

// FaceForce returns the force F with which a vacuum presses a face.
//
//	F = p A
//
//	p  vacuum, the difference to the ambient   Pa
//	A  area of the face                        m²
//	F  force                                   N
//
// Model: even pressure on a face that the film or a stiff sled covers whole.
//
// Valid for p ≥ 0 and A ≥ 0; outside it the error is a [*unit.RangeError].
//
// Source: definition of pressure.
func FaceForce(p unit.Pressure, A unit.Area) (unit.Force, error) {
	if err := unit.AtLeast("vacuum", p.Kilopascals(), 0, " kPa"); err != nil {
		return 0, err
	}
	if err := unit.AtLeast("area", A.SquareMetres(), 0, " m²"); err != nil {
		return 0, err
	}
	return finite("force", unit.Force(float64(p)*float64(A)))
}

// VapourPressure returns the pressure p_ws at which water of temperature T
// boils.
//
//	p_ws = 610.94 exp(17.625 T / (T + 243.04))
//
//	T     temperature of the water          °C
//	p_ws  saturation pressure over water    Pa
//
// Model: Magnus form over plain water; water in glue boils a little later.
//
// Valid for −40 °C ≤ T ≤ 50 °C; outside it the error is a [*unit.RangeError].
//
// Source: Alduchov & Eskridge 1996, Improved Magnus form approximation of
// saturation vapor pressure (from memory).
func VapourPressure(T unit.Temperature) (unit.Pressure, error) {
	if !(T >= -40 && T <= 50) {
		return 0, &unit.RangeError{What: "temperature", Got: T.Celsius(), Unit: " °C", Want: "from -40 to 50 °C"}
	}
	return unit.Pressure(610.94 * math.Exp(17.625*float64(T)/(float64(T)+243.04))), nil
}

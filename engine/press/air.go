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

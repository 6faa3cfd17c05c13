package wood

import "presshand/engine/unit"

// EquilibriumMoisture returns the moisture M that wood comes to in air of
// temperature T and relative humidity h.
//
//	M = (1800/W) [K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²)]
//	W  = 349 + 1.29 T + 0.0135 T²
//	K  = 0.805 + 0.000736 T − 0.00000273 T²
//	K1 = 6.27 − 0.00938 T − 0.000303 T²
//	K2 = 1.91 + 0.0407 T − 0.000293 T²
//
//	T  temperature of the air                    °C
//	h  relative humidity, as a fraction of one   1
//	M  equilibrium moisture content, dry basis   %
//
// Model: sorption of two hydrates, fitted to one set of data for all woods.
// Drying wood stays a little moister than wetting wood, and one species differs
// from another by a per cent or so.
//
// Valid for −1.2 °C ≤ T ≤ 55 °C and 0 ≤ h ≤ 100 %, the part of the table that is
// checked, which holds 5 to 95 %; outside it the error is a [*unit.RangeError].
//
// Source: Wood Handbook FPL-GTR-282, Equation 4-5, Celsius constants.
func EquilibriumMoisture(T unit.Temperature, humidity unit.Percent) (unit.Percent, error) {
	switch {
	case !(T >= ColdestAir && T <= WarmestAir):
		return 0, &unit.RangeError{What: "air temperature", Got: T.Celsius(), Unit: " °C", Want: "from -1.2 to 55 °C"}
	case !(humidity >= 0 && humidity <= 100):
		return 0, &unit.RangeError{What: "relative humidity", Got: float64(humidity), Unit: " %", Want: "from 0 to 100 %"}
	}
	t, h := T.Celsius(), float64(humidity)/100
	W := 349 + 1.29*t + 0.0135*t*t
	K := 0.805 + 0.000736*t - 0.00000273*t*t
	K1 := 6.27 - 0.00938*t - 0.000303*t*t
	K2 := 1.91 + 0.0407*t - 0.000293*t*t
	Kh := K * h
	bound := K1*Kh + K1*K2*Kh*Kh
	M := 1800 / W * (Kh/(1-Kh) + (bound+K1*K2*Kh*Kh)/(1+bound))
	return unit.Percent(M), nil
}

// MoistureSource is where [EquilibriumMoisture] comes from, for the working.
const MoistureSource = "Wood Handbook FPL-GTR-282 Eq. 4-5, Celsius constants"

// Air that [EquilibriumMoisture] is valid for.
const (
	ColdestAir = unit.Temperature(-1.2)
	WarmestAir = unit.Temperature(55)
)

// Moisture between which the movement of [Species] is straight enough, Wood
// Handbook Table 13-5.
const (
	DriestMoving  = unit.Percent(6)
	WettestMoving = unit.Percent(14)
)

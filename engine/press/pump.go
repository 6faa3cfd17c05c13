package press

import (
	"math"

	"presshand/engine/unit"
)

// PumpFloor returns the pressure p_u below which a pump cannot pull a leaking press.
//
//	p_u = p_ult + V r / S
//
//	p_ult  pressure at which the pump itself stops  Pa
//	V      free volume                              m³
//	r      rate of rise, the pump valved off        Pa/s
//	S      pump speed                               m³/s
//	p_u    floor                                    Pa
//
// Model: a leak that lets in the gas V r at any pressure, a pump of constant
// speed down to its limit.
//
// Valid for p_ult ≥ 0, V ≥ 0, r ≥ 0, S > 0, all finite; outside it the error is
// a [*unit.RangeError].
//
// Source: V dp/dt = V r − S p at rest, Arizona State University notes on vacuum,
// section 2.2; the pump's limit added.
func PumpFloor(limit unit.Pressure, V unit.Volume, r unit.LeakRate, S unit.Flow) (unit.Pressure, error) {
	switch {
	case !(limit >= 0 && limit <= 1e9):
		return 0, &unit.RangeError{What: "pump limit", Got: limit.Kilopascals(), Unit: " kPa", Want: "0 kPa or more"}
	case !(V >= 0 && V <= 1e6):
		return 0, &unit.RangeError{What: "free volume", Got: V.Litres(), Unit: " l", Want: "0 l or more"}
	case !(r >= 0 && r <= 1e9):
		return 0, &unit.RangeError{What: "leak", Got: float64(r) * 60 / 1000, Unit: " kPa/min", Want: "0 kPa/min or more"}
	case !(S > 1e-12 && S <= 1e6):
		return 0, &unit.RangeError{What: "pump speed", Got: S.LitresPerSecond(), Unit: " l/s", Want: "more than 0 l/s"}
	}
	return finite("floor", limit+unit.Pressure(float64(V)*float64(r)/float64(S)))
}

// PumpDown returns the time t in which a pump pulls a volume from the pressure
// p0 to p1.
//
//	t = (V/S) ln((p0 − p_u)/(p1 − p_u))
//
//	V    free volume                     m³
//	S    pump speed                      m³/s
//	p0   pressure at the start           Pa
//	p1   pressure wanted                 Pa
//	p_u  floor, see [PumpFloor]              Pa
//	t    time                            s
//
// Model: constant speed, constant leak, no throttling in hose or breather.
//
// Valid for V > 0, S > 0, 0 ≤ p_u < p1 ≤ p0, all finite; outside it the error is
// a [*unit.RangeError]. At or below the floor no time is long enough.
//
// Source: t = (V/S) ln(p0/p1), an engineering reference page on evacuation time;
// with the floor the solution of V dp/dt = S (p_u − p).
func PumpDown(V unit.Volume, S unit.Flow, p0, p1, floor unit.Pressure) (unit.Time, error) {
	switch {
	case !(V > 0 && V <= 1e6):
		return 0, &unit.RangeError{What: "free volume", Got: V.Litres(), Unit: " l", Want: "more than 0 l"}
	case !(S > 1e-12 && S <= 1e6):
		return 0, &unit.RangeError{What: "pump speed", Got: S.LitresPerSecond(), Unit: " l/s", Want: "more than 0 l/s"}
	case !(floor >= 0):
		return 0, &unit.RangeError{What: "floor", Got: floor.Kilopascals(), Unit: " kPa", Want: "0 kPa or more"}
	case !(p0 <= 1e9 && p1 <= p0):
		return 0, &unit.RangeError{What: "pressure wanted", Got: p1.Kilopascals(), Unit: " kPa", Want: "at most the pressure at the start"}
	case !(p1 > floor):
		return 0, &unit.RangeError{What: "pressure wanted", Got: p1.Kilopascals(), Unit: " kPa", Want: "above what pump and leak allow"}
	}
	return finite("time of pumping", unit.Time(float64(V)/float64(S)*math.Log(float64(p0-floor)/float64(p1-floor))))
}

// HoldTime returns the time t that a press without its pump keeps more than a
// least pressure on the work.
//
//	t = (p − p_c) / r, nothing where p is below p_c
//
//	p    vacuum, as a difference to the air  Pa
//	p_c  least pressure wanted on the work   Pa
//	r    rate of rise                        Pa/s
//	t    time                                s
//
// Model: the pressure rises evenly; a true leak slows as the vacuum goes, so
// this errs on the short side.
//
// Valid for p ≥ 0, p_c ≥ 0, r > 0, all finite; outside it the error is a
// [*unit.RangeError].
//
// Source: definition of the rate of rise.
func HoldTime(p, least unit.Pressure, r unit.LeakRate) (unit.Time, error) {
	switch {
	case !(p >= 0 && p <= 1e9):
		return 0, &unit.RangeError{What: "vacuum", Got: p.Kilopascals(), Unit: " kPa", Want: "0 kPa or more"}
	case !(least >= 0 && least <= 1e9):
		return 0, &unit.RangeError{What: "least pressure", Got: least.Kilopascals(), Unit: " kPa", Want: "0 kPa or more"}
	case !(r > 1e-9 && r <= 1e9):
		return 0, &unit.RangeError{What: "leak", Got: float64(r) * 60 / 1000, Unit: " kPa/min", Want: "more than 0 kPa/min"}
	}
	return finite("time of holding", unit.Time(max(0, float64(p-least))/float64(r)))
}

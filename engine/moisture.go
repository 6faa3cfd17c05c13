package engine

import (
	"fmt"

	"presshand/engine/unit"
	"presshand/engine/wood"
)

// air is what wood settles in: °C and % relative humidity.
type air struct{ temperature, humidity float64 }

// airToSettleIn returns the air that the piece goes to: the room it will stand
// in, or the air that a message gives without a word about where.
func (b *builder) airToSettleIn() (air, bool) {
	if h, ok := b.number(unit.ServiceHumidity); ok {
		return air{b.numberOr(unit.ServiceTemp, defaultTemperature), h}, true
	}
	if !b.said(unit.ShopHumidity) {
		return air{}, false
	}
	return b.shopAir()
}

// shopAir returns the shop's air, where its humidity is known.
func (b *builder) shopAir() (air, bool) {
	h, ok := b.number(unit.ShopHumidity)
	if !ok {
		return air{}, false
	}
	return air{b.shopTemperature(), h}, true
}

// shopBalance returns the moisture that wood comes to in the shop, in %.
func shopBalance(b *builder) (emc float64, known bool, err error) {
	a, known := b.shopAir()
	if !known {
		return 0, false, nil
	}
	emc, err = balance(b, a, unit.Emc)
	return emc, true, err
}

// balance returns the moisture that wood comes to in air, in %, with its working
// under the name of the figure that it is. Air beyond the ends of the published
// table is taken at the end, with care.
func balance(b *builder, a air, as unit.Field) (float64, error) {
	T := max(wood.ColdestAir, min(wood.WarmestAir, unit.Temperature(a.temperature)))
	if T.Celsius() != a.temperature && !b.judged("air") {
		b.judge("air", Care, ReasonAirHeld, unit.Facts{unit.ServiceTemp: unit.Number(T.Celsius())})
	}
	emc, err := wood.EquilibriumMoisture(T, unit.Percent(a.humidity))
	if err != nil {
		return 0, err
	}
	b.work(as, unit.Exactly(float64(emc)),
		"M = (1800/W)·[Kh/(1−Kh) + (K1Kh + 2K1K2K²h²)/(1 + K1Kh + K1K2K²h²)]", wood.MoistureSource, Seen, func() string {
			return fmt.Sprintf("T = %.4g °C, h = %.4g", T.Celsius(), a.humidity/100)
		})
	return float64(emc), nil
}

// woodMoisture returns how moist the wood is as said, in %: one figure, or the
// ends where pieces differ.
func woodMoisture(b *builder) (m unit.Range[float64], known bool, err error) {
	mid, one := b.number(unit.WoodMoisture)
	low, hasLow := b.number(unit.WoodMoistureLow)
	high, hasHigh := b.number(unit.WoodMoistureHigh)
	switch {
	case hasLow && hasHigh:
		low, high = min(low, high), max(low, high)
		if !one || mid < low || mid > high {
			mid = (low + high) / 2
		}
		m = b.spread(low, mid, high)
	case one:
		m = unit.Exactly(mid)
	case hasLow:
		m = unit.Exactly(low)
	case hasHigh:
		m = unit.Exactly(high)
	default:
		return m, false, nil
	}
	for _, end := range []float64{m.Low, m.High} {
		if !(end >= 0 && end <= 100) {
			return m, false, &unit.RangeError{What: "wood moisture", Got: end, Unit: " %", Want: "from 0 to 100 %"}
		}
	}
	return m, true, nil
}

// moistureBefore returns the wood's moisture when it is pressed, in %: as said,
// or what the shop's air brings it to when the room it goes to is another.
func moistureBefore(b *builder) (unit.Range[float64], bool, error) {
	if m, ok, err := woodMoisture(b); ok || err != nil {
		return m, ok, err
	}
	if !b.said(unit.ServiceHumidity) {
		return unit.Range[float64]{}, false, nil
	}
	a, ok := b.shopAir()
	if !ok {
		return unit.Range[float64]{}, false, nil
	}
	emc, err := balance(b, a, unit.WoodMoisture)
	if err != nil {
		return unit.Range[float64]{}, false, err
	}
	b.assume(unit.WoodMoisture, unit.Number(emc))
	return unit.Exactly(emc), true, nil
}

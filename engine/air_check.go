package engine

import (
	"presshand/engine/glue"
	"presshand/engine/press"
	"presshand/engine/unit"
)

// judgeVacuum judges the vacuum asked for against what the air has.
func (b *builder) judgeVacuum() {
	pa, err := b.ambient()
	asked, ok := b.vacuumSaid(pa)
	if err != nil || !ok {
		return
	}
	figures := unit.Facts{
		unit.Vacuum:  unit.Vacuum.Number(asked.Mid),
		unit.Ambient: figure(unit.Ambient, pa),
	}
	switch {
	case reaches(asked.Mid, pa.Mid):
		b.judge("vacuum", Stop, ReasonVacuumAboveAmbient, figures)
	case !reaches(nearAmbient*pa.Mid, asked.Mid):
		b.judge("vacuum", Care, ReasonVacuumNearAmbient, figures)
	case b.q.About == Face:
		b.advise(ReasonVacuumWithin, figures)
	}
}

// judgeBoiling judges whether the water in a glue boils under the film.
func (b *builder) judgeBoiling(c glue.Class) {
	if !c.WaterBased {
		return
	}
	T := b.shopTemperature()
	pws, err := press.VapourPressure(unit.Temperature(T))
	pa, err2 := b.ambient()
	asked, ok := b.vacuumSaid(pa)
	if err != nil || err2 != nil || !ok {
		return
	}
	figures := unit.Facts{
		unit.BoilingPoint: unit.BoilingPoint.Number(float64(pws)),
		unit.Vacuum:       unit.Vacuum.Number(asked.Mid),
		unit.ShopTemp:     unit.Number(T),
	}
	switch left := pa.Mid - asked.Mid; {
	case left <= float64(pws):
		b.judge("water", Stop, ReasonBoils, figures)
	case left <= float64(pws)/boilingMargin:
		b.judge("water", Care, ReasonBoilsNear, figures)
	}
}

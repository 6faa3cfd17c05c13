package engine

import (
	"slices"

	"presshand/engine/glue"
	"presshand/engine/press"
	"presshand/engine/unit"
)

// judgeGlueLine judges what spoils a glue line whichever way it is pressed: a shop
// too cold for the glue, water that boils under the film, and wood too wet or too
// dry. Every topic that presses one asks here.
func (b *builder) judgeGlueLine() error {
	c := b.glue()
	b.judgeCold(c, false)
	b.judgeBoiling(c)
	_, _, err := judgeWood(b, false)
	return err
}

// judgeGlueAside is [builder.judgeGlueLine] for a question that need not be about
// glue: without a word about glue or warmth it says nothing unless the usual glue
// boils.
func (b *builder) judgeGlueAside() error {
	if b.said(unit.GlueClass) || b.known(unit.ShopTemp) || b.boilsAsUsual() {
		return b.judgeGlueLine()
	}
	return nil
}

// judgeCold judges the shop's warmth for a glue where it is known, once; that it
// is warm enough is said only where that is asked.
func (b *builder) judgeCold(c glue.Class, sayGood bool) {
	const name = "temperature"
	if !b.known(unit.ShopTemp) || b.judged(name) {
		return
	}
	T, lowest := b.shopTemperature(), lowestTemperature(b, c)
	v, r := Good, ReasonWarmEnough
	switch {
	case !reaches(T, lowest) && c.GelsCold() && !b.known(unit.LabelMinTemp):
		v, r = Care, ReasonGelsFast
	case !reaches(T, lowest):
		v, r = Stop, ReasonTooCold
	case c.GelsCold() && !reaches(T, c.Lowest.Celsius()):
		v, r = Care, ReasonGelsFast
	case c.Chalks() && !reaches(T, glue.ChalkFree.Celsius()):
		v, r = Care, ReasonMayChalk
	}
	if v == Good && !sayGood {
		return
	}
	b.judge(name, v, r, unit.Facts{
		unit.ShopTemp: unit.Number(T), unit.MinTemp: unit.Number(lowest), unit.GlueClass: unit.Word(c.Name),
	})
}

// judgeBoiling judges whether the water in a glue boils under the film, once.
func (b *builder) judgeBoiling(c glue.Class) {
	const name = "water"
	if !c.WaterBased || b.judged(name) {
		return
	}
	left, asked, ok := b.airLeft()
	if !ok {
		return
	}
	T := b.shopTemperature()
	pws, err := press.VapourPressure(unit.Temperature(T))
	if err != nil {
		return
	}
	figures := unit.Facts{
		unit.BoilingPoint: unit.BoilingPoint.Number(float64(pws)),
		unit.Vacuum:       unit.Vacuum.Number(asked),
		unit.ShopTemp:     unit.Number(T),
	}
	switch {
	case left <= float64(pws):
		b.judge(name, Stop, ReasonBoils, figures)
	case left <= float64(pws)/boilingMargin:
		b.judge(name, Care, ReasonBoilsNear, figures)
	}
}

// boilsAsUsual reports whether water nearly boils at the usual temperature. More
// vacuum than there is air is told of without it.
func (b *builder) boilsAsUsual() bool {
	left, _, ok := b.airLeft()
	pws, err := press.VapourPressure(defaultTemperature)
	return ok && err == nil && left > 0 && left <= float64(pws)/boilingMargin
}

// airLeft returns the pressure left in the press and the vacuum asked for.
func (b *builder) airLeft() (left, asked float64, ok bool) {
	pa, err := b.ambient()
	v, ok := b.vacuumSaid(pa)
	return pa.Mid - v.Mid, v.Mid, ok && err == nil
}

// judged reports whether a check of that name was made already: a load asks some
// more than once.
func (b *builder) judged(name string) bool {
	return slices.ContainsFunc(b.a.Checks, func(c Check) bool { return c.Name == name })
}

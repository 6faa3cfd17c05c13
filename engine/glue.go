package engine

import (
	"fmt"

	"presshand/engine/glue"
	"presshand/engine/unit"
)

// answerGlue answers how much glue, how long, how warm, how dry.
func answerGlue(b *builder) error {
	c := b.glue()
	lowest := lowestTemperature(b, c)
	give(b, unit.MinTemp, unit.Exactly(lowest))
	b.work(unit.MinTemp, unit.Exactly(lowest), "the lowest of the class, or the label's", sourceOf(b, unit.LabelMinTemp, c.LowestStanding),
		standingOf(b, unit.LabelMinTemp, c.LowestStanding), func() string { return c.Name })
	times, err := glueTimes(b, c)
	if err != nil {
		return err
	}
	times.give(b)
	if err := glueAmount(b, c); err != nil {
		return err
	}
	if err := judgeLayup(b, times.closed); err != nil {
		return err
	}
	judgeTemperature(b, c, lowest)
	judgePressTime(b, times.press)
	judgeGap(b, c)
	if err := judgeMoisture(b); err != nil {
		return err
	}
	warnOfGlue(b, c)
	return judgePull(b, c)
}

// judgePull judges the vacuum for a glue where one was said: whether its water boils,
// and whether faces on a core get enough.
func judgePull(b *builder, c glue.Class) error {
	if !b.known(unit.Vacuum, unit.VacuumPercent, unit.VacuumAbsolute) {
		return nil
	}
	p, ok, err := b.vacuum()
	if err != nil || !ok {
		return err
	}
	b.judgeVacuum()
	b.judgeBoiling(c)
	if facesOnCore(b) {
		b.judgeFace("face", p, c)
	}
	return nil
}

// lowestTemperature returns the label's lowest temperature, or else the table's.
func lowestTemperature(b *builder, c glue.Class) float64 {
	if t, ok := b.number(unit.LabelMinTemp); ok {
		return t
	}
	return c.Lowest.Celsius()
}

// gluingTimes are the times of a glue, in seconds, at the shop's temperature.
type gluingTimes struct{ open, closed, press unit.Range[float64] }

// glueTimes returns the times of a glue at the shop's temperature, the label's
// before the table's, the press time as it is under film.
func glueTimes(b *builder, c glue.Class) (gluingTimes, error) {
	T := b.shopTemperature()
	k, err := glue.TemperatureFactor(c, unit.Temperature(T))
	if err != nil {
		return gluingTimes{}, err
	}
	open, err := labelOr(b, unit.LabelOpen, c.Open)
	if err != nil {
		return gluingTimes{}, err
	}
	closed, err := labelOr(b, unit.LabelClosed, c.Closed)
	if err != nil {
		return gluingTimes{}, err
	}
	base, err := labelOr(b, unit.LabelPress, c.Press)
	if err != nil {
		return gluingTimes{}, err
	}
	film := b.collapse(glue.FilmFactor(c, facesOnCore(b)))
	pressing := unit.Sweep(func(v unit.Corner) float64 { return v[0] * v[1] * k }, base, film)
	if b.q.Why {
		at20 := gluingTimes{open, closed, base}
		at20.work(b, c, k)
	}
	return gluingTimes{open: open.Times(k), closed: closed.Times(k), press: pressing}, nil
}

// labelOr returns what the container says of a figure, or the table's range.
func labelOr[T ~float64](b *builder, label unit.Field, r unit.Range[T]) (unit.Range[float64], error) {
	v, ok := b.number(label)
	if !ok {
		return b.collapse(unit.SI(r)), nil
	}
	u := label.Unit()
	return unit.Exactly(v), unit.MoreThan(string(label), u.Of(v), 0, " "+u.Symbol)
}

// standingOf returns how good a figure's source is: what is said counts as seen.
func standingOf(b *builder, label unit.Field, tabled unit.Standing) unit.Standing {
	if b.known(label) {
		return Seen
	}
	return tabled
}

// sourceOf names where a figure of the glue comes from, as well as it stands.
func sourceOf(b *builder, label unit.Field, tabled unit.Standing) string {
	switch {
	case b.known(label):
		return "the container's label, as said"
	case tabled == FromMemory:
		return glue.RecalledSource
	case tabled == Estimate:
		return glue.PlacedSource
	}
	return glue.Source
}

func (t gluingTimes) give(b *builder) {
	give(b, unit.OpenTime, t.open)
	give(b, unit.ClosedTime, t.closed)
	give(b, unit.PressTime, t.press)
}

// work keeps the working of times t at 20 °C that a temperature changes by the
// factor k.
func (t gluingTimes) work(b *builder, c glue.Class, k float64) {
	scaled := "2^((20 − T)/10), T held between 10 and 35 °C"
	if c.GelsCold() {
		scaled = "1, hot hide glue is not scaled"
	}
	T, film := b.shopTemperature(), b.collapse(glue.FilmFactor(c, facesOnCore(b)))
	pressing := unit.Sweep(func(v unit.Corner) float64 { return v[0] * v[1] * k }, t.press, film)
	b.work(unit.PressTime, pressing, "t = t20 · film · "+scaled,
		"t20: "+sourceOf(b, unit.LabelPress, c.PressStanding)+"; film: our estimate, published factors for one sealed face run from 1 to 8; temperature: common practice, published factors for 10 °C run from 2.0 to 3.4, so 2 is mild",
		Estimate, func() string {
			return fmt.Sprintf("%.4g min · %.3g · %.4g (T = %.3g °C)", t.press.Mid/60, film.Mid, k, T)
		})
	for _, w := range []struct {
		time, label unit.Field
		at20        unit.Range[float64]
		standing    Standing
	}{
		{unit.OpenTime, unit.LabelOpen, t.open, c.OpenStanding},
		{unit.ClosedTime, unit.LabelClosed, t.closed, c.ClosedStanding},
	} {
		b.work(w.time, w.at20.Times(k), "t = t20 · "+scaled, "t20: "+sourceOf(b, w.label, w.standing)+"; temperature: common practice, no source",
			unit.Weakest(standingOf(b, w.label, w.standing), CommonPractice), func() string {
				return fmt.Sprintf("%.4g min · %.4g (T = %.3g °C)", w.at20.Mid/60, k, T)
			})
	}
}

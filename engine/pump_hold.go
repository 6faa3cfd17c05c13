package engine

import (
	"fmt"
	"math"

	"presshand/engine/glue"
	"presshand/engine/press"
	"presshand/engine/unit"
)

// hold gives how long the vacuum keeps the glue's contact pressure on the work
// with the pump off.
func hold(b *builder, p pumping) error {
	var lacking []unit.Field
	if !p.leakKnown {
		lacking = append(lacking, unit.Leak)
	}
	if p.targetField == "" {
		lacking = append(lacking, unit.Vacuum)
	}
	if len(lacking) > 0 {
		b.lack(unit.Hold, lacking...)
		return nil
	}
	if p.leak == 0 {
		b.advise(ReasonNoLeak, nil)
		return nil
	}
	vacuum, err := p.vacuumAtCut(b)
	if err != nil {
		return err
	}
	c := b.glue()
	contact := glue.Contact(c)
	t := unit.Sweep(func(v unit.Corner) float64 {
		s, err := press.HoldTime(unit.Pressure(v[0]), contact, unit.LeakRate(p.leak))
		if err != nil {
			return math.NaN()
		}
		return s.Seconds()
	}, vacuum)
	give(b, unit.Hold, t)
	b.warn(CautionPowerCut)
	if vacuum.Mid < contact.Pascals() {
		b.advise(ReasonBelowContact, unit.Facts{
			unit.Vacuum: unit.Vacuum.Number(vacuum.Mid), unit.GlueContact: unit.GlueContact.Number(contact.Pascals()),
			unit.GlueClass: unit.Word(c.Name),
		})
	}
	b.work(unit.Hold, t, "t = (p − p_contact)/r", "definition of the rate of rise; contact pressure: common practice, no source",
		CommonPractice, func() string {
			return fmt.Sprintf("(%.4g − %.4g) kPa / %.4g kPa/min", vacuum.Mid/1000, contact.Kilopascals(), p.leak*60/1000)
		})
	if p.rated > 0 {
		return nil
	}
	times, err := glueTimes(b, c) // the power is out: will it do?
	if err != nil {
		return err
	}
	b.advise(ReasonHoldAgainstPress, unit.Facts{
		unit.Hold: figure(unit.Hold, t), unit.PressTime: figure(unit.PressTime, times.press),
		unit.GlueContact: unit.GlueContact.Number(contact.Pascals()), unit.GlueClass: unit.Word(c.Name),
	})
	return nil
}

// vacuumAtCut returns the vacuum when the pump stops: what it is set to, or the
// most that it gets to; with no pump told of, what the dial shows.
func (p pumping) vacuumAtCut(b *builder) (unit.Range[float64], error) {
	if p.rated == 0 {
		v, _, err := b.vacuum()
		return v, err
	}
	return unit.Sweep(func(c unit.Corner) float64 {
		pa := c[3]
		v := pa - p.end(pa)
		if p.volumeKnown || p.leak == 0 {
			floor, err := p.floor(c[0], c[1], c[2])
			if err != nil {
				return math.NaN()
			}
			v = math.Min(v, pa-floor)
		}
		return math.Max(0, math.Min(v, pa))
	}, p.speed, p.limit, p.volume, p.air), nil
}

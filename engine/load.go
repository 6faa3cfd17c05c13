package engine

import (
	"presshand/engine/unit"
)

// answerLoad answers for a whole load: every topic that its description has the
// inputs of, under one verdict.
func answerLoad(b *builder) error {
	main, parts := b.loadParts()
	if len(parts) == 0 {
		b.need(unit.StripCount, unit.StripWidth, unit.StripThickness, unit.Vacuum)
		return nil
	}
	for _, t := range parts {
		needs := b.a.Needs
		if err := answererOf(t)(b); err != nil {
			return err
		}
		if t != main { // what a lesser part lacks does not hold the load up
			b.a.Needs = needs
		}
	}
	if b.evacuated() {
		b.warn(CautionHands, CautionPowerCut)
	}
	if b.known(unit.PumpSpeed) {
		b.warn(CautionNoise)
	}
	return nil
}

// loadParts returns the topics that a load touches and the one that it is
// mainly about.
func (b *builder) loadParts() (main Topic, parts []Topic) {
	vacuum := b.evacuated()
	edges := b.said(unit.StripCount, unit.StripWidth, unit.StripWidths, unit.BarHeight, unit.WedgeRatio, unit.WedgeForce, unit.Overfill)
	for _, p := range [...]struct {
		topic Topic
		there bool
	}{
		{Side, edges && !(b.scheduled() && !vacuum)},
		{Schedule, b.scheduled()},
		{Stack, b.said(unit.StackLayers, unit.MatThickness, unit.ThicknessSpread, unit.StripThinnest, unit.BagWidth)},
		{Flatten, b.said(unit.Cup, unit.Bow)},
		{Face, vacuum},
		{Glue, edges || b.scheduled() || b.said(unit.GlueClass, unit.PanelWidth)},
		{Pump, b.known(unit.PumpSpeed) && vacuum},
		{Move, b.said(unit.ServiceHumidity)},
	} {
		if !p.there {
			continue
		}
		if main == "" {
			main = p.topic
		}
		parts = append(parts, p.topic)
	}
	return main, parts
}

// scheduled reports whether a load is one of several that have to be set on the
// clock; the day's plan then judges the lay-ups.
func (b *builder) scheduled() bool {
	several := b.said(unit.PressCount) && b.said(unit.PanelCount)
	return b.q.About == Load && !b.exact && (several || b.said(unit.StartTime, unit.Deadline))
}

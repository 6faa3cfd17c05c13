package engine

import "presshand/engine/unit"

// pumpNeeds notes what is missing where no figure asked for by name says it.
// What is told decides what is asked: a pump and a vacuum ask how long; a pump
// and a leak, or a pump alone, how far; a leak alone how long it holds.
func pumpNeeds(b *builder, p pumping) {
	if b.q.About != Pump || len(b.q.For) > 0 {
		return
	}
	pump := p.rated > 0 || b.known(unit.PumpLimit)
	switch {
	case pump && p.targetField == "":
		if p.leakKnown && !p.volumeKnown {
			b.need(unit.PressVolume)
		}
		if !p.leakKnown && p.volumeKnown { // a volume counts for nothing but a time
			b.need(unit.Vacuum)
		}
	case p.rated > 0:
		if !p.volumeKnown {
			b.need(unit.PressVolume)
		}
	case p.leakKnown:
		if p.targetField == "" {
			b.need(unit.Vacuum)
		}
	case !pump || p.volumeKnown:
		b.need(unit.PumpSpeed)
		if !p.volumeKnown {
			b.need(unit.PressVolume)
		}
		if p.targetField == "" {
			b.need(unit.Vacuum)
		}
	}
}

// pumpDownOrUsual returns the time to pull down, in s, or the usual time where
// too little is known of pump and press.
func pumpDownOrUsual(b *builder) (unit.Range[float64], error) {
	p, err := pumpingOf(b)
	if err != nil {
		return unit.Range[float64]{}, err
	}
	if p.rated > 0 && p.volumeKnown && p.targetField != "" {
		t := unit.Sweep(p.time, p.speed, p.limit, p.volume, p.air)
		if t.High-t.High == 0 {
			return t, nil
		}
	}
	return unit.Exactly(usualPumpDown), nil
}

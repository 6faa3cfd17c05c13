package bot

import (
	"presshand/bot/picture"
	"presshand/engine"
	"presshand/engine/unit"
)

// Draw draws the first answer of a reply that a picture says more of than its
// words. False where there is none.
func (r Reply) Draw() (*picture.Drawing, bool) {
	for _, d := range r.Drawn {
		if drawing, ok := d.Draw(); ok {
			return drawing, true
		}
	}
	return nil, false
}

// Draw draws an answer: strips as they lie, a day on the clock or loads on the bed, a load cut across
// its joints or, where it was asked how far a bar reaches, its push against the
// distance.
func (d Drawn) Draw() (*picture.Drawing, bool) {
	if d.Answer.Verdict == engine.Ask && !d.piled() {
		return nil, false
	}
	var drawing *picture.Drawing
	var err error
	switch d.Answer.About {
	case engine.Strips:
		drawing, err = d.strips().Draw()
	case engine.Schedule:
		drawing, err = d.day()
	case engine.Side, engine.Load, engine.Stack:
		if d.asksReach() {
			if drawing, err = d.chart().Draw(); err == nil {
				return drawing, true
			}
		}
		drawing, err = d.withDay(d.section().Draw())
	default:
		return nil, false
	}
	return drawing, err == nil // a load that has nothing to show is no failure
}

func (d Drawn) units() picture.Units {
	first, _ := d.style.units(unit.StripWidth)
	pressure, _ := d.style.units(unit.SideFarJoint)
	stated := d.statedLengths()
	return picture.Units{
		Length: func(l unit.Length) string {
			if text, ok := stated[nanometres(l)]; ok {
				return text
			}
			return amount(l.Metres(), first)
		},
		Pressure:   func(p unit.Pressure) string { return amount(p.Pascals(), pressure) },
		LengthAxis: first, PressureAxis: pressure,
	}
}

// value looks a field up as said, then as assumed, then as computed.
func (d Drawn) value(f unit.Field) unit.Value {
	for _, fs := range []unit.Facts{d.Question.Said, d.Answer.Assumed, d.Answer.Values, d.Question.Room} {
		if v, ok := fs[f]; ok {
			return v
		}
	}
	return nil
}

func (d Drawn) length(f unit.Field) unit.Length {
	switch v := d.value(f).(type) {
	case unit.Number:
		return unit.Length(f.SI(v))
	case unit.Triple:
		if v.Mid != nil {
			return unit.Length(f.SI(unit.Number(*v.Mid)))
		}
	}
	return 0
}

func (d Drawn) count(f unit.Field) int {
	n, _ := d.value(f).(unit.Number)
	return int(n)
}

func rangeOf[T ~float64](f unit.Field, v unit.Value) unit.Range[T] {
	t, ok := v.(unit.Triple)
	if !ok || t.Mid == nil {
		return unit.Range[T]{}
	}
	si := func(end *float64) T {
		if end == nil {
			end = t.Mid
		}
		return T(f.SI(unit.Number(*end)))
	}
	return unit.Around(si(t.Low), si(t.Mid), si(t.High))
}

func (d Drawn) pressure(f unit.Field) unit.Range[unit.Pressure] {
	return rangeOf[unit.Pressure](f, d.Answer.Values[f])
}

package engine

import (
	"fmt"
	"math"

	"presshand/engine/press"
	"presshand/engine/unit"
)

// pumping is what is known of a pump and the press it pulls on, in SI.
type pumping struct {
	rated        float64 // pump speed as rated; 0 where unknown
	speed, limit unit.Range[float64]
	volume, air  unit.Range[float64]
	leak         float64
	leakKnown    bool
	volumeKnown  bool
	limitSaid    bool
	target       float64    // wanted, as targetField has it
	targetField  unit.Field // "" where no vacuum is wanted
	wantedVacuum float64    // as a difference to the middle of the ambient
}

const (
	mostAir  = 200e3 // Pa; nobody works under more
	tightest = 1e-6  // Pa/s, a kilopascal in thirty years; less is no leak
)

// answerPump answers how long a pump takes, how far it gets, how long it holds.
func answerPump(b *builder) error {
	p, err := pumpingOf(b)
	if err != nil {
		return err
	}
	for _, part := range []func(*builder, pumping) error{ultimateVacuum, pumpDown, hold} {
		if err := part(b, p); err != nil {
			return err
		}
	}
	if b.known(unit.GlueClass) {
		if err := b.judgeGlueAside(); err != nil {
			return err
		}
	}
	pumpNeeds(b, p)
	if b.said(unit.PressVolume) { // a vessel told of by what it holds
		b.warn(CautionImplosion)
	}
	b.warn(CautionGauge)
	if b.known(unit.CoreKind) || b.word(unit.PressKind) == "frame" {
		b.warn(CautionPorous)
	}
	return nil
}

func pumpingOf(b *builder) (pumping, error) {
	pa, err := b.ambient()
	if err != nil {
		return pumping{}, err
	}
	if !(pa.Low > 0 && pa.High < mostAir) {
		return pumping{}, &unit.RangeError{What: "ambient", Got: pa.Mid / 1000, Unit: " kPa", Want: "more than 0 and less than 200 kPa"}
	}
	p := pumping{air: pa}
	p.rated, _ = b.number(unit.PumpSpeed)
	p.speed = b.spread(0.7*p.rated, 0.85*p.rated, p.rated) // common practice
	p.leak, p.leakKnown = b.number(unit.Leak)
	if p.leak > 0 && p.leak < tightest {
		p.leak = 0
	}
	if p.volume, p.volumeKnown, err = b.freeVolume(); err != nil {
		return p, err
	}
	if limit, ok := b.number(unit.PumpLimit); ok {
		p.limit, p.limitSaid = unit.Exactly(limit), true
	} else {
		p.limit = b.spread(1e3, 4e3, 10e3) // our estimate
	}
	if f, v, ok := b.gauge(); ok {
		p.targetField, p.target = f, v
		p.wantedVacuum = pa.Mid - p.end(pa.Mid)
	}
	if b.known(unit.PumpSpeed) {
		if err := unit.MoreThan("pump speed", p.rated*1000, 0, " l/s"); err != nil {
			return p, err
		}
	}
	return p, unit.AtLeast("leak", p.leak*60/1000, 0, " kPa/min")
}

// end returns the pressure wanted in the press where the air's is pa. A target
// is what the gauge is to show, so it carries no dial error.
func (p pumping) end(pa float64) float64 {
	switch p.targetField {
	case unit.VacuumAbsolute:
		return math.Min(p.target, pa)
	case unit.VacuumPercent:
		return pa * (1 - p.target/100)
	}
	return pa - p.target
}

// floorLacks returns what the least pressure that can be pulled still takes.
func (p pumping) floorLacks(limitKnown bool) []unit.Field {
	leaks := p.leakKnown && p.leak > 0
	var fs []unit.Field
	if p.rated == 0 && (leaks || !limitKnown) {
		fs = append(fs, unit.PumpSpeed)
	}
	if leaks && !p.volumeKnown {
		fs = append(fs, unit.PressVolume)
	}
	return fs
}

// floor returns the least pressure that pump and leak allow at one choice of
// speed, limit and volume.
func (p pumping) floor(speed, limit, volume float64) (float64, error) {
	if p.leak == 0 {
		return limit, nil
	}
	f, err := press.PumpFloor(unit.Pressure(limit), unit.Volume(volume), unit.LeakRate(p.leak), unit.Flow(speed))
	return float64(f), err
}

// ultimateVacuum gives the most that pump and leak allow and judges it against
// the vacuum wanted.
func ultimateVacuum(b *builder, p pumping) error {
	if lacking := p.floorLacks(b.known(unit.PumpLimit)); len(lacking) > 0 {
		b.lack(unit.UltimateVacuum, lacking...)
		return nil
	}
	if !b.known(unit.PumpLimit) {
		b.assume(unit.PumpLimit, unit.PumpLimit.Number(p.limit.Mid))
	}
	floor, err := p.floor(p.speed.Mid, p.limit.Mid, p.volume.Mid)
	if err != nil {
		return err
	}
	most := unit.Sweep(func(v unit.Corner) float64 {
		f, err := p.floor(v[0], v[1], v[2])
		if err != nil {
			return math.NaN()
		}
		return math.Max(0, v[3]-f)
	}, p.speed, p.limit, p.volume, p.air)
	give(b, unit.UltimateVacuum, most)
	if p.leak > 0 && floor-p.limit.Mid > p.limit.Mid {
		b.advise(ReasonLeakDominates, unit.Facts{
			unit.Leak: unit.Leak.Number(p.leak), unit.UltimateVacuum: b.a.Values[unit.UltimateVacuum],
		})
	}
	b.work(unit.UltimateVacuum, most, "p_a − p_u, p_u = p_ult + V·r/S",
		"V dp/dt = V r − S p at rest, Arizona State University vacuum notes; "+p.sources(), p.standing(), func() string {
			return fmt.Sprintf("p_a = %.4g kPa, %s", p.air.Mid/1000, p.numbers())
		})
	judgePump(b, p, floor)
	return nil
}

// judgePump judges whether pump and leak get to the vacuum wanted.
func judgePump(b *builder, p pumping, floor float64) {
	if p.targetField == "" {
		return
	}
	reachable := unit.Sweep(func(v unit.Corner) float64 {
		f, err := p.floor(v[0], v[1], v[2])
		if err != nil {
			return math.NaN()
		}
		return p.end(v[3]) - f
	}, p.speed, p.limit, p.volume, p.air)
	figures := unit.Facts{
		unit.Vacuum: unit.Vacuum.Number(p.wantedVacuum), unit.UltimateVacuum: b.a.Values[unit.UltimateVacuum],
	}
	const name = "pump"
	switch {
	case p.end(p.air.Mid) <= floor:
		b.judge(name, Stop, ReasonPumpCannotReach, figures)
	case !(reachable.Low > 0):
		b.judge(name, Care, ReasonPumpMayNotReach, figures)
	default:
		b.judge(name, Good, ReasonPumpReaches, figures)
	}
}

// pumpDown gives the time to the vacuum wanted, where all that it takes is known.
func pumpDown(b *builder, p pumping) error {
	var lacking []unit.Field
	if p.rated == 0 {
		lacking = append(lacking, unit.PumpSpeed)
	}
	if !p.volumeKnown {
		lacking = append(lacking, unit.PressVolume)
	}
	if p.targetField == "" {
		lacking = append(lacking, unit.Vacuum)
	}
	if len(lacking) > 0 {
		b.lack(unit.Pump, lacking...)
		return nil
	}
	t := unit.Sweep(p.time, p.speed, p.limit, p.volume, p.air)
	if isFinite(t.Low) { // at least a new pump gets there
		give(b, unit.Pump, t)
	}
	b.work(unit.Pump, t, "t = (V/S)·ln((p_a − p_u)/(p_end − p_u)), p_end = p_a − vacuum, p_u = p_ult + V·r/S",
		"t = (V/S)·ln(p0/p1), an engineering reference page on evacuation time, with the floor from V dp/dt = V r − S p; "+p.sources(),
		p.standing(), func() string {
			return fmt.Sprintf("p_a = %.4g kPa, p_end = %.4g kPa, %s", p.air.Mid/1000, p.end(p.air.Mid)/1000, p.numbers())
		})
	return nil
}

// sources says where the figures of a pump come from.
func (p pumping) sources() string {
	from := "S is 0.7 to 1 of the rating: common practice"
	if !p.limitSaid {
		from += "; p_ult: our estimate"
	}
	if p.volume.Low != p.volume.High {
		from += "; V: our estimate"
	}
	return from
}

// standing is that of the weakest of the pump's figures.
func (p pumping) standing() Standing {
	if p.limitSaid && p.volume.Low == p.volume.High {
		return CommonPractice
	}
	return Estimate
}

// numbers puts the middles of the pump and the press in words.
func (p pumping) numbers() string {
	return fmt.Sprintf("V = %.4g l, S = %.4g l/s, p_ult = %.4g kPa, r = %.4g kPa/min",
		p.volume.Mid*1000, p.speed.Mid*1000, p.limit.Mid/1000, p.leak*60/1000)
}

// time returns the time to the vacuum wanted at one choice of speed, limit,
// volume and air; no end of time where it cannot be reached.
func (p pumping) time(v unit.Corner) float64 {
	floor, err := p.floor(v[0], v[1], v[2])
	if err != nil {
		return math.Inf(1)
	}
	t, err := press.PumpDown(unit.Volume(v[2]), unit.Flow(v[0]), unit.Pressure(v[3]), unit.Pressure(p.end(v[3])), unit.Pressure(floor))
	if err != nil {
		return math.Inf(1)
	}
	return t.Seconds()
}

package engine

import (
	"fmt"
	"math"

	"presshand/engine/glue"
	"presshand/engine/unit"
)

// Limits of the checks on gluing.
const (
	layupMargin   = 0.7   // of the shortest closed time
	layupPerJoint = 20.0  // s (common practice)
	layupPerPanel = 60.0  // s (common practice)
	usualPumpDown = 300.0 // s, where nothing is known of the pump (common practice)
	mostUneven    = 2.0   // % moisture between strips
)

// judgeTemperature judges the shop's warmth, where it is known.
func judgeTemperature(b *builder, c glue.Class, lowest float64) {
	T := b.shopTemperature()
	if !b.known(unit.ShopTemp) {
		b.advise(ReasonTemperatureUnsaid, unit.Facts{unit.ShopTemp: unit.Number(T), unit.MinTemp: unit.Number(lowest)})
		return
	}
	if !c.GelsCold() && (T < 10 || T > 35) {
		b.advise(ReasonTimesHeld, unit.Facts{unit.ShopTemp: unit.Number(T)})
	}
	b.judgeCold(c, true)
}

// judgeLayup gives the time that one panel's lay-up takes and judges it, or that
// of the whole load where one is described, against the closed time.
func judgeLayup(b *builder, closed unit.Range[float64]) error {
	p, err := b.row()
	if err != nil {
		return err
	}
	panel, known := b.number(unit.LayupPanel)
	if !known && p.strips > 0 {
		panel, known = layupPerPanel+layupPerJoint*float64(p.strips-1), true
	}
	if known {
		give(b, unit.LayupPanel, unit.Exactly(panel))
		workLayup(b, p.strips, panel)
	} else {
		b.lack(unit.LayupPanel, unit.StripCount)
	}
	load, ofLoad := b.number(unit.LayupLoad)
	demand := unit.Exactly(load)
	switch {
	case ofLoad:
	case !known, b.a.Day != nil:
		return nil
	case b.q.About == Load:
		pump, err := pumpDownOrUsual(b)
		if err != nil {
			return err
		}
		panels, err := b.count(unit.PanelCount, 1)
		if err != nil {
			return err
		}
		n := float64(panels)
		demand = unit.Around(n*panel+pump.Low, n*panel+pump.Mid, n*panel+pump.High)
	default:
		demand = unit.Exactly(panel)
		b.advise(ReasonPumpDownCounts, unit.Facts{unit.LayupPanel: unit.LayupPanel.Number(panel)})
		if err := adviseOneLoad(b, panel, closed); err != nil {
			return err
		}
	}
	judgeAgainstClosed(b, demand, closed)
	return nil
}

// adviseOneLoad warns where one panel is laid up in time and all that are told would not be
// in one load: the first waits until the last is laid up.
func adviseOneLoad(b *builder, panel float64, closed unit.Range[float64]) error {
	panels, err := b.count(unit.PanelCount, 1)
	if err != nil {
		return err
	}
	load := float64(panels) * panel
	if panels > 1 && panel <= closed.Mid && load > closed.Mid {
		b.advise(ReasonNotInOneLoad, unit.Facts{
			unit.PanelCount: unit.Number(panels), unit.LayupLoad: unit.Number(load), unit.ClosedTime: unit.TripleOf(closed),
		})
	}
	return nil
}

// judgeAgainstClosed judges a lay-up against the glue's closed time.
func judgeAgainstClosed(b *builder, demand, closed unit.Range[float64]) {
	figures := unit.Facts{
		unit.LayupLoad: unit.TripleOf(demand), unit.ClosedTime: unit.TripleOf(closed),
		unit.GlueClass: unit.Word(b.glue().Name),
	}
	const name = "lay-up"
	switch {
	case reaches(layupMargin*closed.Low, demand.High):
		b.judge(name, Good, ReasonLayupWithin, figures)
	case reaches(closed.Mid, demand.Mid):
		b.judge(name, Care, ReasonLayupTight, figures)
	default:
		b.judge(name, Stop, ReasonLayupTooLong, figures)
	}
}

func workLayup(b *builder, strips int, panel float64) {
	if b.known(unit.LayupPanel) {
		b.work(unit.LayupPanel, unit.Exactly(panel), "as said", "as said", Seen, func() string { return say(unit.LayupPanel, panel) })
		return
	}
	b.work(unit.LayupPanel, unit.Exactly(panel), "t = 60 s + 20 s · (n − 1)", "common practice, no source", CommonPractice,
		func() string { return fmt.Sprintf("n = %d", strips) })
}

// judgePressTime judges a press time that was planned against what the glue
// takes under film.
func judgePressTime(b *builder, needed unit.Range[float64]) {
	if b.glue().WaterBased {
		b.advise(ReasonFilmHoldsWater, unit.Facts{unit.PressTime: figure(unit.PressTime, needed)})
	}
	planned, ok := b.number(unit.PressTime)
	if !ok {
		return
	}
	v := capacityAgainst(unit.Exactly(planned), needed)
	reason := map[Verdict]Reason{Good: ReasonPressedLongEnough, Care: ReasonPressedBarely, Stop: ReasonPressedTooShort}[v]
	b.judge("press time", v, reason, unit.Facts{
		unit.PressTime: unit.PressTime.Number(planned), unit.PressNeeded: figure(unit.PressNeeded, needed),
	})
}

// judgeGap judges a gap said against what the glue bridges.
func judgeGap(b *builder, c glue.Class) {
	gap, ok := b.number(unit.Gap)
	if !ok {
		return
	}
	figures := unit.Facts{
		unit.Gap: unit.Gap.Number(gap), unit.GapLimit: unit.GapLimit.Number(c.Gap.Metres()), unit.GlueClass: unit.Word(c.Name),
	}
	if reaches(c.Gap.Metres(), gap) {
		b.judge("gap", Good, ReasonGapBridged, figures)
		return
	}
	b.judge("gap", Care, ReasonGapTooWide, figures)
}

// judgeMoisture judges how moist the wood is, and how evenly, where it is known.
func judgeMoisture(b *builder) error {
	m, known, err := judgeWood(b, true)
	if err != nil {
		return err
	}
	emc, ok, err := shopBalance(b)
	if err != nil || !ok {
		return err
	}
	give(b, unit.Emc, unit.Exactly(emc))
	if known && math.Abs(m.Mid-emc) > mostUneven {
		b.advise(ReasonWoodOffBalance, unit.Facts{unit.WoodMoisture: unit.Number(m.Mid), unit.Emc: unit.Number(emc)})
	}
	return nil
}

// judgeWood judges the moisture of the wood, once; that it is right is said only where
// that is asked. It returns the moisture, where it is known.
func judgeWood(b *builder, sayGood bool) (m unit.Range[float64], known bool, err error) {
	const name = "wood moisture"
	if m, known, err = woodMoisture(b); err != nil || !known || b.judged(name) {
		return m, known, err
	}
	worst, reason, at := Good, ReasonWoodDryEnough, m.Mid
	for _, end := range []float64{m.Low, m.High} {
		if v, r := moistureVerdict(end); severity[v] > severity[worst] {
			worst, reason, at = v, r, end
		}
	}
	if worst != Good || sayGood {
		b.judge(name, worst, reason, unit.Facts{unit.WoodMoisture: unit.Number(at)})
	}
	judgeEvenness(b, m.High-m.Low, sayGood)
	return m, known, nil
}

// judgeEvenness judges how far pieces differ in moisture, where that is known.
func judgeEvenness(b *builder, spread float64, sayGood bool) {
	const name = "even moisture"
	low, ok := b.number(unit.WoodMoistureLow)
	high, ok2 := b.number(unit.WoodMoistureHigh)
	even := reaches(mostUneven, spread)
	if !ok || !ok2 || even && !sayGood || b.judged(name) {
		return
	}
	v, reason := Good, ReasonWoodEven
	if !even {
		v, reason = Care, ReasonWoodUneven
	}
	b.judge(name, v, reason, unit.Facts{
		unit.WoodMoistureLow: unit.Number(min(low, high)), unit.WoodMoistureHigh: unit.Number(max(low, high)),
		unit.MoistureSpread: unit.Number(spread),
	})
}

// moistureVerdict judges wood of m per cent moisture: good from 6 to 14, care
// from 4 to 6 and from 14 to 16 (published ranges by class run from 4 to 16).
func moistureVerdict(m float64) (Verdict, Reason) {
	switch {
	case m < 4:
		return Stop, ReasonWoodTooDry
	case m > 16:
		return Stop, ReasonWoodTooWet
	case m < 6 || m > 14:
		return Care, ReasonWoodEdge
	}
	return Good, ReasonWoodDryEnough
}

package engine_test

import (
	"math"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// wanted returns the middle of a figure, the least of several levels.
func wanted(v unit.Value) (float64, bool) {
	switch v := v.(type) {
	case unit.Triple:
		if v.Mid != nil {
			return *v.Mid, true
		}
	case unit.Triples:
		least, ok := math.Inf(1), false
		for _, x := range v {
			if mid, known := wanted(x); known {
				least, ok = math.Min(least, mid), true
			}
		}
		return least, ok
	}
	return 0, false
}

// Every figure of every topic, a little less and a little more of it than there is,
// solved for every number that was said: whatever counts as solved gives the figure
// back within 0.1 % when it is put in.
func TestSolveFor_everyPair(t *testing.T) {
	solvedOnes, tried := 0, 0
	for _, c := range []struct {
		about engine.Topic
		said  unit.Facts
	}{
		{engine.Side, exactBar(unit.Facts{unit.StripLength: unit.Number(1000), unit.Gap: unit.Number(1), unit.CaulThickness: unit.Number(12)})},
		{engine.Side, unit.Facts{unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(40), unit.StripThickness: unit.Number(12), unit.StripLength: unit.Number(900),
			unit.WedgeRatio: unit.Number(9), unit.WedgeForce: unit.Number(1200), unit.Overfill: unit.Number(0.8)}},
		{engine.Side, with(with(onCore(), unit.BarHeight, unit.Number(60)), unit.SledThickness, unit.Number(19))},
		{engine.Face, unit.Facts{unit.Vacuum: unit.Number(80), unit.PanelWidth: unit.Number(600), unit.PanelLength: unit.Number(900), unit.Altitude: unit.Number(300)}},
		{engine.Flatten, cuppedCherry("hump")},
		{engine.Flatten, cuppedCherry("hollow")},
		{engine.Stack, unit.Facts{unit.MatThickness: unit.Number(8), unit.ThicknessSpread: unit.Number(0.8), unit.MatFirm: unit.Number(40), unit.Vacuum: unit.Number(80)}},
		{engine.Glue, unit.Facts{unit.StripCount: unit.Number(6), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(20), unit.StripLength: unit.Number(900),
			unit.ShopTemp: unit.Number(22), unit.LabelSpread: unit.Number(160), unit.LabelClosed: unit.Number(12), unit.LabelPress: unit.Number(50)}},
		{engine.Pump, unit.Facts{unit.PumpSpeed: unit.Number(3), unit.PumpLimit: unit.Number(2), unit.PressVolume: unit.Number(250), unit.Leak: unit.Number(1), unit.Vacuum: unit.Number(75), unit.Altitude: unit.Number(200)}},
		{engine.Move, with(cherryOnPly(), unit.ShopTemp, unit.Number(20))},
	} {
		for figure, v := range mustAnswer(t, c.about, c.said).Values {
			is, ok := wanted(v)
			if !ok || is == 0 {
				continue
			}
			for f, n := range c.said {
				if _, number := n.(unit.Number); !number || f == figure || f.Dimension() == unit.Count {
					continue
				}
				for _, share := range []float64{0.6, 0.97, 1.03, 1.5} {
					tried++
					want := is * share
					a, err := engine.SolveFor(engine.Question{About: c.about, Said: c.said}, f, unit.Facts{figure: unit.Number(want)})
					if err != nil || !hasAdvice(a, engine.ReasonSolved) {
						continue
					}
					solvedOnes++
					if got, ok := wanted(a.Values[figure]); !ok || math.Abs(math.Abs(got)-math.Abs(want)) > 1e-3*math.Abs(want) {
						t.Errorf("%s: %s of %v is solved for %s %g and gives %g", c.about, f, solved(t, a, f), figure, want, got)
					}
				}
			}
		}
	}
	if tried < 1400 || solvedOnes < 400 {
		t.Errorf("%d of %d solved, want 400 of 1400", solvedOnes, tried)
	}
}

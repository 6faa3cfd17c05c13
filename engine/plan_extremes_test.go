package engine_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// Whatever number stands in whatever field of a plan, what comes out is an error
// or numbers.
func TestCompute_plansNeverNotANumber(t *testing.T) {
	day := epoxyDay()
	for f, v := range map[unit.Field]float64{
		unit.StripThickness: 20, unit.Opening: 120, unit.SledThickness: 19, unit.CoreThickness: 3, unit.PressCount: 2,
		unit.Unload: 10, unit.BedWidth: 1220, unit.BedLength: 2440, unit.StripWidth: 60, unit.LabelClosed: 30, unit.PumpSpeed: 2,
	} {
		day[f] = unit.Number(v)
	}
	day[unit.Deadline] = unit.Word("15:00")
	pick := unit.Facts{
		unit.StockPiles: pilesOf(12, 54, 9, 76), unit.TargetWidth: unit.Number(400), unit.PanelCount: unit.Number(2),
		unit.WedgeLow: unit.Number(10), unit.WedgeHigh: unit.Number(20), unit.StripCount: unit.Number(9),
	}
	trim := unit.Facts{unit.StockPiles: pilesOf(12, 54, 9, 76), unit.TargetWidth: unit.Number(400), unit.Trim: unit.Number(5)}
	answered := 0
	for _, q := range []engine.Question{{About: engine.Schedule, Said: day}, {About: engine.Strips, Said: pick}, {About: engine.Strips, Said: trim}} {
		for f, was := range q.Said {
			if _, ok := was.(unit.Number); !ok {
				continue
			}
			for _, v := range []float64{0, -1, 1e-300, 0.5, 1e5, 3e9, 1e300, math.NaN(), math.Inf(1)} {
				q := q
				q.Why = true
				q.Said = q.Said.Clone()
				q.Said[f] = unit.Number(v)
				a, err := engine.Compute(q)
				if err != nil {
					continue
				}
				answered++
				text, err := json.Marshal(a.Values)
				if err != nil {
					t.Errorf("%s with %s %g: %v", q.About, f, v, err)
				}
				for _, w := range a.Working {
					if s := w.Numbers + w.Result; strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
						t.Errorf("%s with %s %g works out as %q (%s)", q.About, f, v, s, text)
					}
				}
			}
		}
	}
	if answered == 0 {
		t.Error("no question had an answer, want some")
	}
}

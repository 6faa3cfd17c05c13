package engine_test

import (
	"fmt"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand: 80 % of 100 kPa on a 60 mm bar against 10 mm strips is quoted as 480
// kPa; with μ 0.2 and no corner the joint at 200 mm keeps 60 − 12 − 40 = 8 mm of
// it, 64 kPa.
func ExampleCompute_side() {
	a, err := engine.Compute(engine.Question{About: engine.Side, Said: unit.Facts{
		unit.Ambient: unit.Number(100), unit.VacuumPercent: unit.Number(80),
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(10),
		unit.BarHeight: unit.Number(60), unit.BarWidth: unit.Number(60), unit.Cover: unit.Number(60),
		unit.Tent: unit.Number(0), unit.FrictionStated: unit.Number(0.2),
	}})
	ideal := a.Values[unit.SideIdeal].(unit.Triple)
	far := a.Values[unit.SideFarJoint].(unit.Triple)
	fmt.Printf("%.0f kPa, far joint %.0f kPa: %s %v\n", *ideal.Mid, *far.Mid, a.Verdict, err)
	// Output: 480 kPa, far joint 64 kPa: care <nil>
}

// By hand: as above, and 70 kPa at the far joint take 70·10/80 + 12 + 40 = 60.75 mm.
func ExampleSolveFor_bar() {
	a, err := engine.SolveFor(engine.Question{About: engine.Side, Said: unit.Facts{
		unit.Ambient: unit.Number(100), unit.VacuumPercent: unit.Number(80),
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(50), unit.StripThickness: unit.Number(10),
		unit.BarWidth: unit.Number(60), unit.Tent: unit.Number(0), unit.FrictionStated: unit.Number(0.2),
	}}, unit.BarHeight, unit.Facts{unit.SideFarJoint: unit.Number(70)})
	bar := a.Values[unit.BarHeight].(unit.Triple)
	fmt.Printf("%.2f mm %v\n", *bar.Mid, err)
	// Output: 60.75 mm <nil>
}

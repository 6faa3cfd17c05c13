package engine_test

import (
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// Strips of 12.7 mm and a caul of 25.4 on them back a bar of 38.1 to its top: there
// is nothing left to cover.
func TestSide_coveredToItsTop(t *testing.T) {
	a := mustAnswer(t, engine.Side, unit.Facts{
		unit.StripCount: unit.Number(6), unit.StripWidth: unit.Number(63.5), unit.StripThickness: unit.Number(12.7),
		unit.BarHeight: unit.Number(38.1), unit.CaulThickness: unit.Number(25.4), unit.Vacuum: unit.Number(84.66),
	})
	if hasAdvice(a, engine.ReasonCoverBar) {
		t.Error("a bar that is covered to its top is to be covered")
	}
}

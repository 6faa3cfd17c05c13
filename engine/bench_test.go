package engine_test

import (
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// wholeLoad is a boatyard's panel with most of what a load can say.
func wholeLoad() unit.Facts {
	return unit.Facts{
		unit.StripCount: unit.Number(6), unit.StripWidth: unit.Number(70), unit.StripThickness: unit.Number(20),
		unit.StripLength: unit.Number(900), unit.Species: unit.Word("beech"), unit.BarHeight: unit.Number(38),
		unit.Vacuum: unit.Number(85), unit.GlueClass: unit.Word("crosslinked-pva"), unit.Gap: unit.Number(0.3),
		unit.ShopTemp: unit.Number(18), unit.WedgeRatio: unit.Number(12), unit.WedgeForce: unit.Number(800),
	}
}

func BenchmarkCompute_load(b *testing.B) {
	q := engine.Question{About: engine.Load, Said: wholeLoad()}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := engine.Compute(q); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSolveFor_bar(b *testing.B) {
	said := wholeLoad()
	delete(said, unit.BarHeight)
	q := engine.Question{About: engine.Side, Said: said}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := engine.SolveFor(q, unit.BarHeight, nil); err != nil {
			b.Fatal(err)
		}
	}
}

package engine_test

import (
	"math"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand: a bar of 24 mm beside a core of 18 ends half-way up strips of 12; it
// pushes with 24 and the film on the edge above it with 6. μ 0.05 on a bar 60 wide
// leaves 30 − 3 = 27 mm; the joints at 50 and 200 mm lose 2.5 and 10: 80 · 24.5 / 12
// and 80 · 17 / 12 kPa.
func TestSide_barPartWayUpTheStrips(t *testing.T) {
	said := exactBar(unit.Facts{
		unit.StripThickness: unit.Number(12), unit.CoreThickness: unit.Number(18), unit.BarHeight: unit.Number(24),
		unit.FrictionStated: unit.Number(0.05), unit.SurfaceKind: unit.Word("film"),
	})
	delete(said, unit.Cover)
	a := mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.BarCovered, 30, 30, 30, 1e-9)
	wantTriple(t, a, unit.SideFirstJoint, 80*24.5/12, 80*24.5/12, 80*24.5/12, 1e-9)
	wantTriple(t, a, unit.SideFarJoint, 80*17./12, 80*17./12, 80*17./12, 1e-9)
	if s := stepOf(t, a, unit.BarCovered); !strings.Contains(s.Formula, "+ e), e = u + t − H") {
		t.Errorf("worked as %q, want the edge above the bar in it", s.Formula)
	}
	// 10 mm wide it tips at (24² + 10²)/(2 · 24) = 14.083 mm; the edge above it still
	// pushes, and 24 mm wide, √(2 · 24 · 24 − 24²), it does not tip
	said[unit.BarWidth] = unit.Number(10)
	a = mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.BarCovered, 676./48+6, 30, 30, 1e-9)
	figures, ok := advised(a, engine.ReasonWiderBar)
	tip, _ := figures.Number(unit.BarTipping)
	wide, _ := figures.Number(unit.BarWidthLeast)
	if !ok || math.Abs(tip-676./48) > 1e-9 || math.Abs(wide-24) > 1e-9 {
		t.Errorf("advises %v, want a bar that counts for 14.083 mm made 24 wide", figures)
	}
}

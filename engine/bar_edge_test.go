package engine_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// By hand: a bar of 24 mm beside a core of 18 ends half-way up strips of 12 and counts
// for its 24. μ 0.05 on a bar 60 wide leaves 24 − 3 = 21 mm; the joints at 50 and
// 200 mm lose 2.5 and 10: 80 · 18.5 / 12 and 80 · 11 / 12 kPa. Without friction the truth
// is 80 · 24 / 12, as the shop's rule has it.
func TestSide_barPartWayUpTheStrips(t *testing.T) {
	said := exactBar(unit.Facts{
		unit.StripThickness: unit.Number(12), unit.CoreThickness: unit.Number(18), unit.BarHeight: unit.Number(24),
		unit.FrictionStated: unit.Number(0.05), unit.SurfaceKind: unit.Word("film"),
	})
	delete(said, unit.Cover)
	a := mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.BarCovered, 24, 24, 24, 1e-9)
	wantTriple(t, a, unit.SideFirstJoint, 80*18.5/12, 80*18.5/12, 80*18.5/12, 1e-9)
	wantTriple(t, a, unit.SideFarJoint, 80*11./12, 80*11./12, 80*11./12, 1e-9)
	wantTriple(t, a, unit.SideIdeal, 160, 160, 160, 1e-9)
	bound, _ := advised(a, engine.ReasonFrictionBound)
	if p, _ := bound.Number(unit.SideIdeal); math.Abs(p-160) > 1e-9 {
		t.Errorf("the truth is said to lie under %v, want 160 kPa", bound)
	}
	if hasAdvice(a, engine.ReasonBarBarely) || hasAdvice(a, engine.ReasonCoverBar) {
		t.Errorf("advice %v, want none to cover or raise the bar", a.Advice)
	}
	// 10 mm wide it tips at (24² + 10²)/(2 · 24) = 14.083 mm; the film on the 6 mm of
	// edge above it still pushes. √(2 · 18 · 24 − 24²) = 16.97 mm wide it does not tip
	said[unit.BarWidth] = unit.Number(10)
	a = mustAnswer(t, engine.Side, said)
	wantTriple(t, a, unit.BarCovered, 676./48+6, 24, 24, 1e-9)
	if s := stepOf(t, a, unit.BarCovered); !strings.Contains(s.Formula, "+ e, and t at least, e = u + t − H") {
		t.Errorf("worked as %q, want the edge above the bar in it", s.Formula)
	}
	figures, ok := advised(a, engine.ReasonWiderBar)
	tip, _ := figures.Number(unit.BarTipping)
	wide, _ := figures.Number(unit.BarWidthLeast)
	if !ok || math.Abs(tip-676./48) > 1e-9 || math.Abs(wide-math.Sqrt(288)) > 1e-9 {
		t.Errorf("advises %v, want a bar that counts for 14.083 mm made 16.97 wide", figures)
	}
}

// By hand: strips of 18 on a core of 18, wet glue (μ 0.15), corner 3. Film on the bare edge
// leaves 18 − 3 − 0.15 · 3 − 0.15 · 60 = 5.55 mm at the first joint, 80 · 5.55 / 18 kPa. A
// bar of 19 counts for 19, and what it adds its own friction eats: 0.15 · 19.05 is more
// than that 1 mm, and the joint gets no less than before. One of 25.4 adds 7.4 − 2.8575.
func TestSide_barThatHardlyOverlaps(t *testing.T) {
	for _, c := range []struct{ H, covered, mm float64 }{
		{18, 18, 5.55}, {18.01, 18.01, 5.55}, {19, 19, 5.55}, {25.4, 25.4, 5.55 + 7.4 - 2.8575}, {36, 36, 5.55 + 18 - 2.8575},
	} {
		a := mustAnswer(t, engine.Side, unit.Facts{
			unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(60), unit.StripThickness: unit.Number(18), unit.CoreThickness: unit.Number(18),
			unit.BarHeight: unit.Number(c.H), unit.Vacuum: unit.Number(80),
		})
		first, covered := *a.Values[unit.SideFirstJoint].(unit.Triple).Mid, *a.Values[unit.BarCovered].(unit.Triple).Mid
		if math.Abs(covered-c.covered) > 1e-9 || math.Abs(first-80*c.mm/18) > 1e-9 {
			t.Errorf("%g mm of bar: %g mm push, %g kPa; want %g, %g", c.H, covered, first, c.covered, 80*c.mm/18)
		}
		if barely := c.H > 18 && c.H < 21; barely != hasAdvice(a, engine.ReasonBarBarely) || hasAdvice(a, engine.ReasonCoverBar) {
			t.Errorf("%g mm of bar: advice %v", c.H, a.Advice)
		}
		if c.H != 19 {
			continue
		}
		if s := stepOf(t, a, unit.SideFirstJoint); !strings.Contains(s.Formula, "μ (b' + r)") || !strings.Contains(s.Numbers, "(19 − 3) − 0.15 (6.66667 + 3)") {
			t.Errorf("worked as %q, %q; want the width that holds back", s.Formula, s.Numbers)
		}
	}
}

// A bar a hundredth of a mm higher never gives the first joint less at the middle, and
// never a jump: no more than twice what the steepest rise of the covered height, u in
// min(t, 3 mm), makes of it.
func TestSide_noJumpInBarHeight(t *testing.T) {
	const step = 0.01
	for name, c := range map[string]struct{ t, u, b float64 }{
		"as thick as its core": {18, 18, 19.05}, "thin on a high core": {6.35, 38.1, 19.05}, "thick on a thin core": {18, 6, 19.05},
		"wide bar": {12, 18, 60}, "narrow bar": {19.05, 19.05, 5},
	} {
		last := -1.0
		for H := c.u - 1; H < c.u+c.t+5; H += step {
			a := mustAnswer(t, engine.Side, unit.Facts{
				unit.Ambient: unit.Number(100), unit.VacuumPercent: unit.Number(80),
				unit.StripCount: unit.Number(2), unit.StripWidth: unit.Number(10), unit.StripThickness: unit.Number(c.t), unit.CoreThickness: unit.Number(c.u),
				unit.BarHeight: unit.Number(H), unit.BarWidth: unit.Number(c.b), unit.SurfaceKind: unit.Word("film"),
			})
			now := *a.Values[unit.SideFirstJoint].(unit.Triple).Mid
			steepest := 2 * math.Max(1, c.u/math.Min(c.t, 3)) * step * 80 / c.t
			if last >= 0 && (now < last-1e-9 || now > last+steepest) {
				t.Fatalf("%s: %g mm of bar give %g kPa after %g", name, H, now, last)
			}
			last = now
		}
	}
}

// The ends beside a bar part-way up the strips against a dense grid over dial, corner
// and friction, the formula written out here in kPa and mm: the bar moves against its
// friction, or its joints get what film on the bare edge gives them, less what it hides
// where friction holds it. At worst it tips, and the edge above it pushes still.
func TestSide_partWayAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 19))
	for range 60 {
		th, u, b, w := 4+20*r.Float64(), 4+30*r.Float64(), 5+40*r.Float64(), 10+30*r.Float64()
		H := u + th*r.Float64()
		a := mustAnswer(t, engine.Side, unit.Facts{
			unit.StripCount: unit.Number(2), unit.StripWidth: unit.Number(w), unit.StripThickness: unit.Number(th), unit.CoreThickness: unit.Number(u),
			unit.BarHeight: unit.Number(H), unit.BarWidth: unit.Number(b), unit.Vacuum: unit.Number(80), unit.SurfaceKind: unit.Word("film"),
		})
		hides, above := H-u, u+th-H
		counts := math.Max(th, math.Min(H, th+u*math.Min(1, hides/math.Min(th, 3))))
		if hides >= math.Min(th, 3) {
			counts = math.Max(th, H)
		}
		tips := math.Max(th, (H*H+b*b)/(2*math.Max(u+th/2, H-u-th/2))+above)
		joint := func(p, h, all, tent, μ float64) float64 {
			moving, bare, held := h-μ*b, th, math.Max(all-μ*b, th-hides)
			return math.Max(0, p*(math.Max(moving, math.Min(bare, held))-tent-μ*tent-μ*w)) / th
		}
		e := newEnds()
		for _, end := range [...][2]float64{{math.Min(counts, tips), math.Min(u+th, tips)}, {counts, u + th}} {
			for _, p := range grid(80-2.54, 80+2.54, 3) {
				for _, tent := range grid(0, 6, 5) {
					for _, μ := range grid(0.15, 0.30, 5) {
						e.take(joint(p, end[0], end[1], tent, μ))
					}
				}
			}
		}
		wantEnds(t, a, unit.SideFirstJoint, e, joint(80, counts, u+th, 3, 0.2))
	}
}

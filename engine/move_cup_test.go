package engine_test

import (
	"math"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

func cherryOnPly() unit.Facts {
	return unit.Facts{
		unit.StripThickness: unit.Number(3.175), unit.Species: unit.Word("cherry"), unit.CoreKind: unit.Word("plywood"),
		unit.CoreThickness: unit.Number(12.7), unit.PanelWidth: unit.Number(457.2), unit.WoodMoisture: unit.Number(8),
		unit.ServiceHumidity: unit.Number(30), unit.ServiceTemp: unit.Number(22.2222),
	}
}

// By hand at the middles: E⊥ = 11.3 · (0.086 + 0.197)/2 = 1.599 GPa on 8, n =
// 0.1999; m = 0.25; h = 15.875 mm; Δε = (0.00187 − 0.0002) · (6.15 − 8) = −0.0030896;
// κ = 6 Δε · 1.5625/(15.875 · (4.6875 + 1.04997 · 20.074)) = −7.081e-5 /mm; cup =
// κ · 457.2²/8 = −1.850 mm, more than 457.2/300 = 1.524.
func TestCup_cherryOnPly(t *testing.T) {
	a := mustAnswer(t, engine.Move, cherryOnPly())
	if mid := *a.Values[unit.Cup].(unit.Triple).Mid; !(math.Abs(mid-(-1.850)) <= 0.01) {
		t.Errorf("cup is %g mm, want -1.850", mid)
	}
	wantCheck(t, a, "cup", engine.Care, engine.ReasonCups)
	if !hasAdvice(a, engine.ReasonFaceTheBack) || a.Verdict != engine.Care {
		t.Errorf("%s, advice %v; want care and a face on the back", a.Verdict, a.Advice)
	}
}

// A like face on the back, or a core of the same wood, leaves nothing to bend.
func TestCup_symmetric(t *testing.T) {
	said := cherryOnPly()
	said[unit.Faces] = unit.Number(2)
	a := mustAnswer(t, engine.Move, said)
	wantTriple(t, a, unit.Cup, 0, 0, 0, 0)
	wantCheck(t, a, "cup", engine.Good, engine.ReasonStaysFlat)
	said = cherryOnPly()
	said[unit.CoreKind] = unit.Word("solid")
	wantTriple(t, mustAnswer(t, engine.Move, said), unit.Cup, 0, 0, 0, 0)
}

// Wood that is where the air keeps it does not cup.
func TestCup_noChange(t *testing.T) {
	said := cherryOnPly()
	said[unit.WoodMoisture] = unit.Number(*mustAnswer(t, engine.Move, said).Values[unit.Emc].(unit.Triple).Mid)
	wantTriple(t, mustAnswer(t, engine.Move, said), unit.Cup, 0, 0, 0, 1e-12)
}

// The ends are the least and the most that a dense grid over stiffnesses,
// movement and moisture finds with Timoshenko's formula written out here. The
// second case has its greatest bend, n = 1/m², between the ends.
func TestCup_rangeAgainstGrid(t *testing.T) {
	type span struct{ low, high float64 }
	for name, c := range map[string]struct {
		said              unit.Facts
		t1, t2            float64
		face, board, C, M span
		C2                float64
	}{
		"cherry on plywood": {cherryOnPly(), 3.175, 12.7,
			span{0.78 * 0.6 * 11.3 * 0.086, 1.22 * 11.3 * 0.197}, span{0.78 * 8, 1.22 * 8}, span{0.00126, 0.00248}, span{8, 8}, 0.0002},
		"hickory on particleboard": {unit.Facts{
			unit.StripThickness: unit.Number(6), unit.Species: unit.Word("hickory"), unit.Sawn: unit.Word("quarter"), unit.CoreKind: unit.Word("particleboard"),
			unit.CoreThickness: unit.Number(6), unit.PanelWidth: unit.Number(457.2), unit.WoodMoistureLow: unit.Number(8), unit.WoodMoistureHigh: unit.Number(9),
			unit.ServiceHumidity: unit.Number(30), unit.ServiceTemp: unit.Number(22.2222),
		}, 6, 6, span{0.78 * 16.84 * 0.123, 1.22 * 16.84 * 0.123}, span{0.78 * 2.5, 1.22 * 2.5}, span{0.00259, 0.00259}, span{8, 9}, 0.0004},
	} {
		a := mustAnswer(t, engine.Move, c.said)
		after := *a.Values[unit.Emc].(unit.Triple).Mid
		least, most := math.Inf(1), math.Inf(-1)
		const n = 160
		at := func(s span, i, n int) float64 { return s.low + (s.high-s.low)*float64(i)/float64(n) }
		m, h := c.t1/c.t2, c.t1+c.t2
		for i := 0; i <= n; i++ {
			for j := 0; j <= n; j++ {
				r := at(c.face, i, n) / at(c.board, j, n)
				bend := 6 * (1 + m) * (1 + m) / (h * (3*(1+m)*(1+m) + (1+m*r)*(m*m+1/(m*r)))) * 457.2 * 457.2 / 8
				for k := 0; k <= 2; k++ {
					for l := 0; l <= 2; l++ {
						cup := bend * (at(c.C, k, 2) - c.C2) * (after - at(c.M, l, 2))
						least, most = math.Min(least, cup), math.Max(most, cup)
					}
				}
			}
		}
		got := a.Values[unit.Cup].(unit.Triple)
		// The grid may just miss a greatest value inside, so it may be a hair short.
		if !(math.Abs(*got.Low-least) <= 1e-4*math.Abs(least)) || !(*got.Low <= least+1e-9) || !(math.Abs(*got.High-most) <= 1e-9) {
			t.Errorf("%s: cup from %.9g to %.9g mm, grid finds %.9g to %.9g", name, *got.Low, *got.High, least, most)
		}
	}
}

func TestCup_inStack(t *testing.T) {
	said := cherryOnPly()
	delete(said, unit.CoreThickness)
	said[unit.StackLayers] = unit.Layers{{Part: "core", Thickness: 12.7}, {Part: "strips", Thickness: 3.175}}
	whole, apart := mustAnswer(t, engine.Move, cherryOnPly()), mustAnswer(t, engine.Move, said)
	if w, p := *whole.Values[unit.Cup].(unit.Triple).Mid, *apart.Values[unit.Cup].(unit.Triple).Mid; w != p {
		t.Errorf("cup %g mm from the stack, %g from the fields; want the same", p, w)
	}
}

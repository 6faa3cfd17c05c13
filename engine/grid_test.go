package engine_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// ends are the least and the most of a figure over a dense grid of what its
// inputs can be.
type ends struct{ low, high float64 }

func (e *ends) take(v float64) { e.low, e.high = math.Min(e.low, v), math.Max(e.high, v) }

func newEnds() ends { return ends{math.Inf(1), math.Inf(-1)} }

// grid returns n values from low to high.
func grid(low, high float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = low + (high-low)*float64(i)/float64(n-1)
	}
	return out
}

// wantEnds fails unless a figure's ends are those of the grid and its middle
// lies between.
func wantEnds(t *testing.T, a engine.Answer, f unit.Field, e ends, mid float64) {
	t.Helper()
	got := a.Values[f].(unit.Triple)
	near := func(x, y float64) bool { return math.Abs(x-y) <= 1e-9*(1+math.Abs(y)) }
	if !near(*got.Low, e.low) || !near(*got.High, e.high) || !near(*got.Mid, mid) {
		t.Errorf("%s is %g %g %g, the grid has %g %g %g", f, *got.Low, *got.Mid, *got.High, e.low, mid, e.high)
	}
	if !(*got.Low <= *got.Mid && *got.Mid <= *got.High) {
		t.Errorf("%s is out of order: %g %g %g", f, *got.Low, *got.Mid, *got.High)
	}
}

// The ends of a joint's pressure against a dense grid over dial, corner,
// friction and cover, the formula written out here in kPa and mm.
func TestSide_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 7))
	for range 40 {
		th, w, H, b := 4+20*r.Float64(), 20+80*r.Float64(), 10+80*r.Float64(), 10+40*r.Float64()
		n, v := 2+r.IntN(5), 50+40*r.Float64()
		a := mustAnswer(t, engine.Side, unit.Facts{
			unit.StripCount: unit.Number(n), unit.StripWidth: unit.Number(w), unit.StripThickness: unit.Number(th),
			unit.BarHeight: unit.Number(H), unit.BarWidth: unit.Number(b), unit.Vacuum: unit.Number(v),
			unit.PressKind: unit.Word("frame"), unit.SurfaceKind: unit.Word("bare"),
		})
		joint := func(p, h, tent, μ, x float64) float64 {
			return math.Max(0, p*((h-tent)-μ*(b+tent)-μ*x)) / th
		}
		tip := (H*H + b*b) / (2 * math.Max(th/2, H-th/2))
		first, far, reach := newEnds(), newEnds(), newEnds()
		for _, h := range grid(math.Min(th, tip), math.Max(th, H), 7) {
			for _, p := range grid(v-2.54, v+2.54, 5) {
				for _, tent := range grid(0, 20, 7) {
					for _, μ := range grid(0.30, 0.65, 7) {
						first.take(joint(p, h, tent, μ, w))
						far.take(joint(p, h, tent, μ, w*float64(n-1)))
						reach.take(math.Max(0, ((h-tent)-μ*(b+tent))/μ))
					}
				}
			}
		}
		wantEnds(t, a, unit.SideFirstJoint, first, joint(v, th, 6, 0.4, w))
		wantEnds(t, a, unit.SideFarJoint, far, joint(v, th, 6, 0.4, w*float64(n-1)))
		wantEnds(t, a, unit.BarReach, reach, math.Max(0, ((th-6)-0.4*(b+6))/0.4))
	}
}

// The ends of an overfill's figures against a dense grid over overfill, stiffness,
// fence and creep.
func TestPreload_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for range 20 {
		W, th, δ := 200+800*r.Float64(), 5+20*r.Float64(), 0.1+2*r.Float64()
		a := mustAnswer(t, engine.Side, unit.Facts{
			unit.PanelWidth: unit.Number(W), unit.StripThickness: unit.Number(th), unit.Overfill: unit.Number(δ),
			unit.Species: unit.Word("hard maple"), unit.Sawn: unit.Word("flat"),
		})
		E := 13880 * 0.065 // N/mm²
		load := func(δ, E, K, κ float64) float64 { return 1e3 * κ * δ / W / (1/E + th/(W*K)) }
		snap := func(δ, E float64) float64 {
			return 1e3 * 8.2112 * E * th * math.Pow(3*W*δ/8, 1.5) / math.Pow(W, 4)
		}
		pre, lie := newEnds(), newEnds()
		for _, d := range grid(math.Max(0, δ-0.25), δ+0.25, 9) {
			for _, e := range grid(0.78*E, 1.22*E, 5) {
				lie.take(snap(d, e))
				for _, K := range grid(5, 50, 5) {
					for _, κ := range grid(0.6, 1, 3) {
						pre.take(load(d, e, K, κ))
					}
				}
			}
		}
		wantEnds(t, a, unit.Preload, pre, load(δ, E, 15, 0.8))
		got := a.Values[unit.Snap].(unit.Triple)
		for _, c := range [][2]float64{{*got.Low, lie.low}, {*got.Mid, snap(δ, E)}, {*got.High, lie.high}} {
			if math.Abs(c[0]-c[1]) > 1e-5*c[1] {
				t.Errorf("snap %g kPa, the grid has %g", c[0], c[1])
			}
		}
	}
}

// The ends of a mat's low pressure against a dense grid over vacuum, share of
// thin strips and firmness, the squash found by halving.
func TestMat_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 9))
	stress := func(σ25, ε float64) float64 { ε = math.Max(0, ε); return 3 * σ25 * ε / (1 - ε) }
	low := func(p, φ, σ25, m, d float64) float64 {
		lo, hi := 0.0, m*(1-1e-12)
		for range 200 {
			s := (lo + hi) / 2
			if (1-φ)*stress(σ25, s/m)+φ*stress(σ25, (s-d)/m) < p {
				lo = s
			} else {
				hi = s
			}
		}
		return stress(σ25, (lo-d)/m)
	}
	kinds := []struct {
		word           string
		low, mid, high float64
	}{{"soft", 14, 24, 34}, {"medium", 34, 48, 62}, {"firm", 62, 76, 90}}
	for i := range 30 {
		kind := kinds[i%3]
		m, d, v, n := 3+10*r.Float64(), 2*r.Float64(), 50+40*r.Float64(), 3+r.IntN(8)
		a := mustAnswer(t, engine.Stack, unit.Facts{
			unit.MatThickness: unit.Number(m), unit.ThicknessSpread: unit.Number(d), unit.Vacuum: unit.Number(v), unit.StripCount: unit.Number(n),
			unit.StripWidth: unit.Number(40), unit.MatFirmness: unit.Word(kind.word),
		})
		e := newEnds()
		for _, p := range grid(v-2.54, v+2.54, 5) {
			for _, φ := range grid(1/float64(n), 0.5, 7) {
				for _, σ25 := range grid(kind.low, kind.high, 201) {
					e.take(low(p, φ, σ25, m, d))
				}
			}
		}
		got, mid := a.Values[unit.MatLow].(unit.Triple), low(v, 0.5, kind.mid, m, d)
		for _, c := range [][2]float64{{*got.Low, e.low}, {*got.Mid, mid}, {*got.High, e.high}} {
			if math.Abs(c[0]-c[1]) > 1e-4*(1+c[1]) {
				t.Errorf("m %g d %g v %g n %d: mat low %g, the grid has %g", m, d, v, n, c[0], c[1])
			}
		}
	}
}

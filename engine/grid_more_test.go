package engine_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// over takes a figure over a dense grid of up to four inputs.
func over(f func(x [4]float64) float64, inputs ...[2]float64) ends {
	e := newEnds()
	var at [4]float64
	var walk func(k int)
	walk = func(k int) {
		if k == len(inputs) {
			e.take(f(at))
			return
		}
		n := 9
		if inputs[k][0] == inputs[k][1] {
			n = 2
		}
		for _, v := range grid(inputs[k][0], inputs[k][1], n) {
			at[k] = v
			walk(k + 1)
		}
	}
	walk(0)
	return e
}

// mid is a figure where each input has its middle.
func atMid(f func(x [4]float64) float64, mids ...float64) float64 {
	var at [4]float64
	copy(at[:], mids)
	return f(at)
}

// around is a value with a share of it to both sides.
func shareOf(v, low, high float64) [2]float64 { return [2]float64{v * low, v * high} }

// Hard maple, flat sawn: E_L 13.88 GPa, across 0.065 of it, ± 22 %.
const (
	mapleAlong  = 13880.0 // N/mm²
	mapleAcross = mapleAlong * 0.065
)

func maple(more unit.Facts) unit.Facts {
	said := unit.Facts{unit.Species: unit.Word("hard maple"), unit.Sawn: unit.Word("flat")}
	for f, v := range more {
		said[f] = v
	}
	return said
}

// The ends of a driven wedge's preload against a dense grid over both faces'
// friction, less what 0.05 mm at each joint relieves of the low end.
func TestWedge_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 4))
	for range 40 {
		n, D, th, L := 4+20*r.Float64(), 300+3000*r.Float64(), 6+30*r.Float64(), 300+1500*r.Float64()
		strips, w := 2+r.IntN(6), 20+80*r.Float64()
		a := mustAnswer(t, engine.Side, maple(unit.Facts{
			unit.WedgeRatio: unit.Number(n), unit.WedgeForce: unit.Number(D), unit.StripThickness: unit.Number(th), unit.StripLength: unit.Number(L),
			unit.StripCount: unit.Number(strips), unit.StripWidth: unit.Number(w),
		}))
		load := func(x [4]float64) float64 {
			α, φ := math.Atan(1/n), math.Atan(x[0])
			return 1e3 * D / (math.Tan(α+φ) + math.Tan(φ)) / (th * L)
		}
		e := over(load, [2]float64{0.30, 0.50})
		e.low = math.Max(0, e.low-1e3*mapleAcross*float64(strips-1)*0.05/(float64(strips)*w))
		wantEnds(t, a, unit.Preload, e, atMid(load, 0.40))
	}
}

// The ends of what closes a gap, and of what is left of a joint, against a dense grid.
func TestClosing_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	for range 40 {
		g, L, w, v := 0.2+2*r.Float64(), 500+1500*r.Float64(), 20+60*r.Float64(), 60+30*r.Float64()
		a := mustAnswer(t, engine.Side, maple(onDial(v, unit.Facts{
			unit.Gap: unit.Number(g), unit.StripLength: unit.Number(L), unit.StripWidth: unit.Number(w),
		})))
		close := func(x [4]float64) float64 { return 1e3 * x[1] * x[0] * math.Pow(w, 3) * g / math.Pow(L, 4) }
		e := over(close, shareOf(mapleAlong, 0.78, 1.22), [2]float64{3.2, 6.4})
		wantEnds(t, a, unit.Closing, e, atMid(close, mapleAlong, 6.4))
		net := func(x [4]float64) float64 {
			return x[2]*math.Max(0, 60-0.1*60-0.1*w)/10 - close(x)
		}
		e = over(net, shareOf(mapleAlong, 0.78, 1.22), [2]float64{3.2, 6.4}, [2]float64{v - 2.54, math.Min(101.325, v+2.54)})
		wantEnds(t, a, unit.SideNet, e, atMid(net, mapleAlong, 6.4, v))
	}
}

// The ends of what flattens a cup, hump and hollow up, and of a bow.
func TestFlatten_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 2))
	for range 40 {
		th, c, s := 3+15*r.Float64(), 0.05+3*r.Float64(), 60+200*r.Float64()
		hump := func(x [4]float64) float64 { return 1e3 * 6.4 * x[0] * th * th * th * c / math.Pow(s, 4) }
		hollow := func(x [4]float64) float64 {
			k := 1e3 * x[0] * th * th * th * c / math.Pow(s, 4)
			return math.Max(32.0/3*k, 8.0/3*k*c/0.15)
		}
		said := maple(unit.Facts{unit.StripThickness: unit.Number(th), unit.Cup: unit.Number(c), unit.StripWidth: unit.Number(s), unit.Vacuum: unit.Number(80)})
		across := shareOf(mapleAcross, 0.78, 1.22)
		for up, f := range map[string]func([4]float64) float64{"hump": hump, "hollow": hollow} {
			said[unit.CupUp] = unit.Word(up)
			wantEnds(t, mustAnswer(t, engine.Flatten, said), unit.FlattenNeed, over(f, across), atMid(f, mapleAcross))
		}
		delete(said, unit.CupUp)
		both := ends{over(hump, across).low, over(hollow, across).high}
		wantEnds(t, mustAnswer(t, engine.Flatten, said), unit.FlattenNeed, both, atMid(hump, mapleAcross))
		delete(said, unit.Cup)
		said[unit.Bow], said[unit.StripLength], said[unit.CupUp] = unit.Number(c), unit.Number(s), unit.Word("hump")
		wantEnds(t, mustAnswer(t, engine.Flatten, said), unit.FlattenNeed, over(hump, shareOf(mapleAlong, 0.78, 1.22)), atMid(hump, mapleAlong))
	}
}

// The ends of the covered height, the quoted pressure and of what lifts loose strips.
func TestSide_otherRangesAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	for range 40 {
		th, w, H, b, v := 4+20*r.Float64(), 20+60*r.Float64(), 10+80*r.Float64(), 10+40*r.Float64(), 50+40*r.Float64()
		a := mustAnswer(t, engine.Side, maple(unit.Facts{
			unit.StripCount: unit.Number(4), unit.StripWidth: unit.Number(w), unit.StripThickness: unit.Number(th),
			unit.BarHeight: unit.Number(H), unit.BarWidth: unit.Number(b), unit.Vacuum: unit.Number(v),
		}))
		cover := func(x [4]float64) float64 { return math.Max(th, math.Min(H, x[0])) }
		e := over(cover, [2]float64{th, math.Max(th, H)})
		e.low = math.Min(e.low, (H*H+b*b)/(2*math.Max(th/2, H-th/2)))
		wantEnds(t, a, unit.BarCovered, e, th)
		ideal := func(x [4]float64) float64 { return x[0] * H / th }
		wantEnds(t, a, unit.SideIdeal, over(ideal, [2]float64{v - 2.54, v + 2.54}), atMid(ideal, v))
		buckle := func(x [4]float64) float64 { return 1e3 * math.Pi * math.Pi * x[0] * th * th / (12 * 16 * w * w) }
		wantEnds(t, a, unit.Buckle, over(buckle, shareOf(mapleAcross, 0.78, 1.22)), atMid(buckle, mapleAcross))
	}
}

// The ends of the rise of an overfilled panel.
func TestRise_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 40 {
		W, δ := 150+900*r.Float64(), 0.05+3*r.Float64()
		a := mustAnswer(t, engine.Side, maple(unit.Facts{unit.PanelWidth: unit.Number(W), unit.StripThickness: unit.Number(15), unit.Overfill: unit.Number(δ)}))
		rise := func(x [4]float64) float64 { return math.Sqrt(3 * W * x[0] / 8) }
		wantEnds(t, a, unit.Rise, over(rise, [2]float64{math.Max(0, δ-0.25), δ + 0.25}), atMid(rise, δ))
	}
}

// The ends of the figures of a face: a dial near the ambient is held by it, whose
// own weather is ± 2 kPa.
func TestFace_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 40 {
		W, L, v, pa := 300+900*r.Float64(), 500+1900*r.Float64(), 40+50*r.Float64(), 95+8*r.Float64()
		a := mustAnswer(t, engine.Face, unit.Facts{unit.Vacuum: unit.Number(v), unit.Ambient: unit.Number(pa), unit.PanelWidth: unit.Number(W), unit.PanelLength: unit.Number(L)})
		dial := [2]float64{v - 2.54, v + 2.54}
		p := func(x [4]float64) float64 { return math.Min(pa, x[0]) }
		wantEnds(t, a, unit.FacePressure, over(p, dial), atMid(p, v))
		F := func(x [4]float64) float64 { return p(x) * W * L / 1e3 }
		wantEnds(t, a, unit.FaceForce, over(F, dial), atMid(F, v))
		tons := func(x [4]float64) float64 { return p(x) / 95.760518 }
		wantEnds(t, a, unit.FaceTonsPerSquareFoot, over(tons, dial), atMid(tons, v))
	}
}

// The ends of a change of width: of hard maple, cut unsaid, C between 0.00165
// quarter sawn and 0.00353 flat sawn, from Table 13-5.
func TestMove_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range 40 {
		W, low, high, rh := 200+800*r.Float64(), 7+2*r.Float64(), 9+3*r.Float64(), 30+40*r.Float64()
		a := mustAnswer(t, engine.Move, unit.Facts{
			unit.Species: unit.Word("hard maple"), unit.PanelWidth: unit.Number(W), unit.WoodMoistureLow: unit.Number(low), unit.WoodMoistureHigh: unit.Number(high),
			unit.ServiceHumidity: unit.Number(rh), unit.ServiceTemp: unit.Number(21),
		})
		emc := *a.Values[unit.Emc].(unit.Triple).Mid
		change := func(x [4]float64) float64 { return W * x[0] * (emc - x[1]) }
		e := over(change, [2]float64{0.00165, 0.00353}, [2]float64{low, high})
		wantEnds(t, a, unit.WidthChange, e, atMid(change, (0.00165+0.00353)/2, (low+high)/2))
	}
}

// The ends of glue, times and holding: PVA's spread 80 to 250 g/m², its closed time
// 5, 15, 20 min and its press time 30, 60, 90, an edge joint's film 1, 1.5, 2, all
// halved by each 10 °C above 20; a dial of ± 2.54 kPa above 70.
func TestGlue_rangeAgainstGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for range 40 {
		T, th, L, n, leak, v := 12+20*r.Float64(), 5+30*r.Float64(), 300+1500*r.Float64(), 2+r.IntN(8), 0.1+3*r.Float64(), 74+20*r.Float64()
		a := mustAnswer(t, engine.Glue, unit.Facts{
			unit.GlueClass: unit.Word("pva"), unit.ShopTemp: unit.Number(T), unit.StripCount: unit.Number(n), unit.StripWidth: unit.Number(50),
			unit.StripThickness: unit.Number(th), unit.StripLength: unit.Number(L),
		})
		k := math.Pow(2, (20-T)/10)
		mass := func(x [4]float64) float64 { return x[0] * float64(n-1) * th * L * 1e-6 * 1.10 }
		wantEnds(t, a, unit.GlueMass, over(mass, [2]float64{80, 250}), atMid(mass, 175))
		closed := func(x [4]float64) float64 { return 60 * x[0] * k }
		wantEnds(t, a, unit.ClosedTime, over(closed, [2]float64{5, 20}), atMid(closed, 15))
		pressing := func(x [4]float64) float64 { return x[0] * x[1] * k }
		wantEnds(t, a, unit.PressTime, over(pressing, [2]float64{30, 90}, [2]float64{1, 2}), atMid(pressing, 60, 1.5))
		a = mustAnswer(t, engine.Pump, unit.Facts{unit.GlueClass: unit.Word("pva"), unit.Vacuum: unit.Number(v), unit.Leak: unit.Number(leak)})
		hold := func(x [4]float64) float64 { return 60 * math.Max(0, x[0]-70) / leak }
		wantEnds(t, a, unit.Hold, over(hold, [2]float64{v - 2.54, v + 2.54}), atMid(hold, v))
	}
}

package plan_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

func tenths(t int) unit.Length { return unit.Millimetres(float64(t) / 10) }

func inTenths(l unit.Length) float64 { return l.Millimetres() * 10 }

// small returns an instance that brute force can judge.
func small(d *dice, pieces, panels int) brute {
	b := brute{mostStrips: 0}
	kinds := d.from(1, pieces)
	for range pieces {
		b.widths = append(b.widths, 300+17*d.roll(kinds)+d.roll(2)*d.roll(300))
	}
	total := 0
	for _, w := range b.widths {
		total += w
	}
	for range panels {
		b.targets = append(b.targets, d.from(300, 1+total*5/4/panels+300))
	}
	if d.roll(2) == 0 {
		b.wedged, b.low = true, d.roll(100)
		b.high = b.low + d.roll(300)
	}
	if d.roll(3) == 0 {
		b.mostStrips = d.from(1, pieces)
	}
	b.differ = d.roll(4) == 0
	return b
}

func checkAgainstBrute(t *testing.T, b brute, narrow bool) plan.StripPlan {
	t.Helper()
	want := b.best()
	got, err := plan.Strips(b.job(narrow), nil)
	if err != nil {
		t.Fatalf("%+v: %v", b, err)
	}
	c := got.Certificate
	waste := int(math.Round(2 * inTenths(c.Waste)))
	bound := 2 * inTenths(c.WasteBound)
	if b.differ && c.Panels > want.panels {
		return got // none alternates; the plan says so by its neighbours
	}
	if want.panels > c.PanelsBound || c.Panels > want.panels {
		t.Fatalf("%+v: %d panels, bound %d; brute force makes %d", b, c.Panels, c.PanelsBound, want.panels)
	}
	if c.Panels == want.panels && (waste < want.waste || bound > float64(want.waste)+1e-6) {
		t.Fatalf("%+v: waste %d, bound %g; brute force wastes %d", b, waste, bound, want.waste)
	}
	if c.Best && (c.Panels != want.panels || waste != want.waste) {
		t.Fatalf("%+v: said to be best with %d panels and waste %d; brute force has %d and %d", b, c.Panels, waste, want.panels, want.waste)
	}
	if len(b.targets) == 1 && !c.Best {
		t.Fatalf("%+v: one panel is not proven best", b)
	}
	strips := want.fewest
	if narrow {
		strips = want.most
	}
	if c.Fewest && c.Panels > 0 && c.Strips != strips {
		t.Fatalf("%+v narrow=%v: said to have the best number of strips, %d; brute force has %d", b, narrow, c.Strips, strips)
	}
	if len(b.targets) == 1 && !c.Fewest {
		t.Fatalf("%+v: number of strips is not proven best", b)
	}
	return got
}

func TestStrips_onePanelAgainstBruteForce(t *testing.T) {
	d := dice(7)
	made := 0
	for range 600 {
		got := checkAgainstBrute(t, small(&d, d.from(1, 11), 1), d.roll(3) == 0)
		made += len(got.Picks)
	}
	if made < 200 {
		t.Errorf("%d panels made in 600 instances, want 200 for the test to mean anything", made)
	}
}

func TestStrips_severalPanelsAgainstBruteForce(t *testing.T) {
	d := dice(11)
	best, made := 0, 0
	for range 300 {
		got := checkAgainstBrute(t, small(&d, d.from(2, 7), d.from(2, 3)), d.roll(3) == 0)
		made += len(got.Picks)
		if got.Certificate.Best {
			best++
		}
	}
	if best < 270 || made < 150 {
		t.Errorf("%d of 300 proven best, %d panels made; want 270 and 150", best, made)
	}
}

// By hand: 12.7 mm to trim makes 622.7 mm of 610 mm... 7 strips of 88.9 mm are
// 622.3 mm, 0.4 mm short; 5 of 88.9 and 3 of 59.4 mm are 622.7 mm.
func ExampleStrips_trim() {
	job := plan.StripJob{
		Stock:  []plan.Pile{{Width: unit.Millimetres(88.9), Count: 7}, {Width: unit.Millimetres(59.4), Count: 4}},
		Panels: []plan.Panel{{Width: unit.Millimetres(610), Count: 1}},
		Trim:   plan.DefaultTrim,
	}
	p, err := plan.Strips(job, nil)
	fmt.Printf("%d strips, %.1f mm, %.1f mm over, best %v, %v\n", p.Certificate.Strips,
		p.Picks[0].Sum.Millimetres(), p.Picks[0].Over.Millimetres(), p.Certificate.Best, err)
	// Output: 8 strips, 622.7 mm, 0.0 mm over, best true, <nil>
}

// By hand: the wedge takes 10 to 20 mm, so 585 mm of 600 mm is the middle: 5 of
// 85 and 2 of 80 mm, which leaves 15 mm. Nothing has fewer strips: 6 of the
// widest are 510 mm.
func ExampleStrips_wedge() {
	p, err := plan.Strips(plan.StripJob{
		Stock:  []plan.Pile{{Width: unit.Millimetres(85), Count: 6}, {Width: unit.Millimetres(80), Count: 6}},
		Panels: []plan.Panel{{Width: unit.Millimetres(600), Count: 1}},
		Wedged: true, WedgeLow: plan.DefaultWedge[0], WedgeHigh: plan.DefaultWedge[1],
	}, nil)
	fmt.Printf("gap %.1f mm, %d strips, best %v, fewest %v, %v\n", p.Picks[0].Gap.Millimetres(), len(p.Picks[0].Widths),
		p.Certificate.Best, p.Certificate.Fewest, err)
	// Output: gap 15.0 mm, 7 strips, best true, fewest true, <nil>
}

// By hand: 1/64 in is 127 and 0.1 mm 32 of the grid's units, and 3 in and
// 23.8 mm are exactly 100 mm. A grid of tenths would miss it.
func TestStrips_bothGridsExact(t *testing.T) {
	p, err := plan.Strips(plan.StripJob{
		Stock: []plan.Pile{{Width: unit.Inches(3), Count: 1}, {Width: unit.Millimetres(23.8), Count: 1},
			{Width: unit.Inches(61.0 / 64), Count: 1}},
		Panels: []plan.Panel{{Width: unit.Inches(3 + 61.0/64), Count: 1}},
	}, nil)
	if err != nil || len(p.Picks) != 1 || p.Picks[0].Over != 0 || p.Picks[0].Sum != unit.Inches(3+61.0/64) {
		t.Errorf("%+v, %v; want 3 in and 61/64 in, nothing over", p.Picks, err)
	}
}

// By hand: 3.4, 3.3, 3.1, 2.1 and 2.1 in are 14 in; in thousandths, 2.125 and 3.062
// and 1.813 are 7 in. Neither lies on 1/320 mm.
func TestStrips_tenthsOfAnInchExact(t *testing.T) {
	for _, c := range []struct {
		stock []float64
		want  float64
	}{{[]float64{2.1, 2.2, 2.6, 3.1, 3.4, 2.9, 3.3, 2.1}, 14}, {[]float64{2.125, 3.062, 1.813, 4.99}, 7}} {
		var job plan.StripJob
		for _, w := range c.stock {
			job.Stock = append(job.Stock, plan.Pile{Width: unit.Inches(w), Count: 1})
		}
		job.Panels = []plan.Panel{{Width: unit.Inches(c.want), Count: 1}}
		p, err := plan.Strips(job, nil)
		if err != nil || len(p.Picks) != 1 || p.Picks[0].Over != 0 || !p.Certificate.Best {
			t.Errorf("%v for %g in: %+v, %v; want nothing over, proven", c.stock, c.want, p, err)
		}
	}
}

// Widths that lie on no grid are planned too: the checker lets pass what rounding
// to a grid may have cost.
func TestStrips_widthsOffAnyGrid(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 11))
	for n := range 300 {
		var job plan.StripJob
		for range 4 + rnd.IntN(12) {
			job.Stock = append(job.Stock, plan.Pile{Width: unit.Millimetres(30 + 60*rnd.Float64()), Count: 1 + rnd.IntN(3)})
		}
		job.Panels = []plan.Panel{{Width: unit.Millimetres(150 + 400*rnd.Float64()), Count: 1}}
		if n%2 > 0 {
			job.Wedged, job.WedgeLow, job.WedgeHigh = true, unit.Millimetres(6), unit.Millimetres(14)
		}
		if _, err := plan.Strips(job, nil); err != nil {
			t.Fatalf("%+v: %v", job, err)
		}
	}
}

func TestStrips_limitsOnStrips(t *testing.T) {
	// By hand: 12 of 50 mm, 6 of 100 mm, 3 of 200 mm; 600 mm wanted.
	job := plan.StripJob{
		Stock: []plan.Pile{{Width: unit.Millimetres(50), Count: 12}, {Width: unit.Millimetres(100), Count: 6},
			{Width: unit.Millimetres(200), Count: 3}},
		Panels: []plan.Panel{{Width: unit.Millimetres(600), Count: 1}},
	}
	for _, c := range []struct {
		name   string
		change func(*plan.StripJob)
		strips int // 0: it cannot be made
	}{
		{"fewest: 3 of 200", func(*plan.StripJob) {}, 3},
		{"narrow ones: 12 of 50", func(j *plan.StripJob) { j.UseNarrow = true }, 12},
		{"none over 100: 6 of 100", func(j *plan.StripJob) { j.Widest = unit.Millimetres(100) }, 6},
		{"none over 100, narrow ones: 12 of 50", func(j *plan.StripJob) { j.Widest, j.UseNarrow = unit.Millimetres(100), true }, 12},
		{"none under 100, many: 6 of 100", func(j *plan.StripJob) { j.Narrowest, j.UseNarrow = unit.Millimetres(100), true }, 6},
		{"neighbours differ: 2 of 200, 2 of 100 or 4 others", func(j *plan.StripJob) { j.Differ = true }, 4},
		{"none under 250", func(j *plan.StripJob) { j.Narrowest, j.Panels[0].Count = unit.Millimetres(250), 2 }, 0},
		{"at most 5, none over 100", func(j *plan.StripJob) { j.Widest, j.MostStrips = unit.Millimetres(100), 5 }, 0},
	} {
		j := job
		j.Panels = slices.Clone(job.Panels)
		c.change(&j)
		p, err := plan.Strips(j, nil)
		if err != nil || p.Certificate.Strips != c.strips || !p.Certificate.Best {
			t.Errorf("%s: got %d strips, best %v, %v; want %d", c.name, p.Certificate.Strips, p.Certificate.Best, err, c.strips)
		}
		if j.Differ && !p.Picks[0].Differ {
			t.Errorf("%s: two neighbours are alike in %v", c.name, p.Picks[0].Widths)
		}
	}
}

// By hand: 5 of 100 mm are 500 mm, 112.7 mm short of 600 mm and the trim, and
// would make a panel of 487.3 mm.
func TestStrips_notEnough(t *testing.T) {
	p, err := plan.Strips(plan.StripJob{
		Stock:  []plan.Pile{{Width: unit.Millimetres(100), Count: 5}},
		Panels: []plan.Panel{{Width: unit.Millimetres(600), Count: 1}}, Trim: plan.DefaultTrim,
	}, nil)
	if err != nil || len(p.Picks) != 0 || p.Left != 5 || !p.Certificate.Best ||
		math.Abs(p.Short.Millimetres()-112.7) > 1e-9 || math.Abs(p.Reach.Millimetres()-487.3) > 1e-9 {
		t.Errorf("got %+v, %v", p, err)
	}
}

// By hand: 9 of 100, 9 of 80 and 9 of 60 mm are 9 panels of 240 mm if one of
// each goes into every panel; the stock has not a millimetre more.
func TestStrips_allOfTheStock(t *testing.T) {
	p, err := plan.Strips(plan.StripJob{
		Stock: []plan.Pile{{Width: unit.Millimetres(100), Count: 9}, {Width: unit.Millimetres(80), Count: 9},
			{Width: unit.Millimetres(60), Count: 9}},
		Panels: []plan.Panel{{Width: unit.Millimetres(240), Count: 10}},
	}, nil)
	if c := p.Certificate; err != nil || c.Panels != 9 || c.Waste != 0 || !c.Best || p.Left != 0 {
		t.Errorf("got %+v, %d left, %v; want 9 panels without waste", c, p.Left, err)
	}
}

func TestStrips_stopped(t *testing.T) {
	job := benchJob(1, 10, true)
	calls := 0
	p, err := plan.Strips(job, func(best, bound unit.Length) bool { calls++; return calls < 4 })
	if err != nil || calls != 4 || p.Certificate.Panels < 1 || p.Certificate.Panels >= 10 || p.Certificate.Best {
		t.Errorf("after %d calls: %+v, %v; want some panels, not best", calls, p.Certificate, err)
	}
}

func TestStrips_refuses(t *testing.T) {
	good := plan.StripJob{
		Stock:  []plan.Pile{{Width: unit.Millimetres(100), Count: 5}},
		Panels: []plan.Panel{{Width: unit.Millimetres(300), Count: 1}},
	}
	for name, change := range map[string]func(*plan.StripJob){
		"no stock":      func(j *plan.StripJob) { j.Stock = nil },
		"no panels":     func(j *plan.StripJob) { j.Panels = nil },
		"NaN":           func(j *plan.StripJob) { j.Stock = []plan.Pile{{Width: unit.Length(math.NaN()), Count: 1}} },
		"too wide":      func(j *plan.StripJob) { j.Panels = []plan.Panel{{Width: unit.Metres(31), Count: 1}} },
		"negative trim": func(j *plan.StripJob) { j.Trim = -1 },
		"wedge upside down": func(j *plan.StripJob) {
			j.Wedged, j.WedgeLow, j.WedgeHigh = true, unit.Millimetres(20), unit.Millimetres(10)
		},
		"too many": func(j *plan.StripJob) { j.Stock = []plan.Pile{{Width: 1, Count: math.MaxInt}} },
	} {
		j := good
		change(&j)
		var re *unit.RangeError
		if _, err := plan.Strips(j, nil); !errors.As(err, &re) {
			t.Errorf("%s: got %v, want a RangeError", name, err)
		}
	}
}

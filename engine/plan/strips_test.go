package plan_test

import (
	"fmt"
	"math"
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

package plan_test

import (
	"errors"
	"fmt"
	"math/bits"
	"testing"

	"presshand/engine/plan"
	"presshand/engine/unit"
)

// cells is a bed of whole cells, so small that every layout can be tried: at
// the first empty cell goes a panel, either way round, or nothing ever.
type cells struct {
	w, h   int
	panels [][2]int
}

func (c cells) fit(set int, taken uint64) bool {
	if set == 0 {
		return true
	}
	area := 0
	for s := set; s != 0; s &= s - 1 {
		p := c.panels[bits.TrailingZeros(uint(s))]
		area += p[0] * p[1]
	}
	if area > c.w*c.h-bits.OnesCount64(taken) {
		return false
	}
	at := bits.TrailingZeros64(^taken)
	for s := set; s != 0; s &= s - 1 {
		i := bits.TrailingZeros(uint(s))
		p := c.panels[i]
		for _, q := range [][2]int{p, {p[1], p[0]}} {
			if m, ok := c.mask(at, q); ok && m&taken == 0 && c.fit(set&^(1<<i), taken|m) {
				return true
			}
		}
	}
	return c.fit(set, taken|1<<at)
}

func (c cells) mask(at int, p [2]int) (m uint64, ok bool) {
	x, y := at%c.w, at/c.w
	if x+p[0] > c.w || y+p[1] > c.h {
		return 0, false
	}
	for dy := range p[1] {
		for dx := range p[0] {
			m |= 1 << ((y+dy)*c.w + x + dx)
		}
	}
	return m, true
}

// fewestLoads tries to put each panel into each layer of each load so far, or
// the first layer of a new one.
func (c cells) fewestLoads(layers, most int) int {
	best := len(c.panels)
	var loads [][]int
	var try func(i int)
	try = func(i int) {
		if len(loads) >= best {
			return
		}
		if i == len(c.panels) {
			best = len(loads)
			return
		}
		for l := range loads {
			n := 0
			for _, set := range loads[l] {
				n += bits.OnesCount(uint(set))
			}
			for b := range layers {
				if set := loads[l][b] | 1<<i; n < most && c.fit(set, 0) {
					loads[l][b] |= 1 << i
					try(i + 1)
					loads[l][b] &^= 1 << i
				}
			}
		}
		loads = append(loads, make([]int, layers))
		loads[len(loads)-1][0] = 1 << i
		try(i + 1)
		loads = loads[:len(loads)-1]
	}
	try(0)
	return best
}

// A cell is 100 mm with the gap of 25 mm in it.
func cellJob(c cells, layers, most int) plan.LoadJob {
	side := func(n int) unit.Length { return unit.Millimetres(float64(n)*100 - 25) }
	job := plan.LoadJob{Bed: plan.Rect{Width: side(c.w), Length: side(c.h)}, Gap: plan.DefaultGap,
		LayerHeight: unit.Millimetres(30), Opening: unit.Millimetres(float64(30*layers) + 5), PanelsPerLoad: most}
	for _, p := range c.panels {
		job.Panels = append(job.Panels, plan.Rect{Width: side(p[0]), Length: side(p[1]), Count: 1})
	}
	return job
}

func TestLoads_againstBruteForce(t *testing.T) {
	d := dice(5)
	stronger := 0
	for range 150 {
		c := cells{w: d.from(4, 6), h: d.from(5, 8)}
		for range d.from(1, 6) {
			c.panels = append(c.panels, [2]int{d.from(1, c.w), d.from(1, c.h)})
		}
		layers, most := d.from(1, 2), d.from(1, 6)
		p, err := plan.Loads(cellJob(c, layers, most), nil)
		if err != nil {
			t.Fatalf("%+v: %v", c, err)
		}
		want := c.fewestLoads(layers, most)
		if got := p.Certificate; got.Loads != want || got.Bound != want || !got.Best {
			t.Fatalf("%+v layers %d most %d: %+v, brute force needs %d", c, layers, most, got, want)
		}
		if p.Certificate.Bound > p.Certificate.AreaBound {
			stronger++
		}
	}
	if stronger < 25 {
		t.Errorf("bound stronger than area in %d of 150, want 25", stronger)
	}
}

// By hand: each panel is more than half the bed both ways, so no two lie
// together, though three would fit the area of two beds.
func TestLoads_boundStrongerThanArea(t *testing.T) {
	job := plan.LoadJob{Bed: plan.DefaultBed, Gap: plan.DefaultGap,
		Panels: []plan.Rect{{Width: unit.Millimetres(1000), Length: unit.Millimetres(1300), Count: 12}}}
	p, err := plan.Loads(job, nil)
	if err != nil {
		t.Fatal(err)
	}
	if c := p.Certificate; c.Loads != 12 || c.Bound != 12 || c.AreaBound != 6 {
		t.Errorf("got %+v, want 12 loads, bound 12, area 6", c)
	}
}

func TestLoads_panelTooBig(t *testing.T) {
	job := plan.LoadJob{Bed: plan.DefaultBed, Panels: []plan.Rect{{Width: unit.Millimetres(1300), Length: unit.Millimetres(1300), Count: 1}}}
	_, err := plan.Loads(job, nil)
	if re := (*unit.RangeError)(nil); !errors.As(err, &re) {
		t.Errorf("got %v, want a RangeError", err)
	}
}

func TestLoads_stopped(t *testing.T) {
	p, err := plan.Loads(mixedLoads(3), func(best, bound int) bool { return false })
	if err != nil || p.Certificate.Loads == 0 {
		t.Errorf("stopped at once: %+v, %v; want a whole plan", p.Certificate, err)
	}
}

// By hand: 2440 mm take three of 610 mm and their gaps of 25 mm along
// (1880 mm), 1220 mm take one of 1200 mm across: 3 to a layer. Two layers of
// 40 mm go under 100 mm, so 6 to a load, and 14 panels need 3.
func ExampleLoads_layers() {
	p, err := plan.Loads(plan.LoadJob{
		Panels: []plan.Rect{{Width: unit.Millimetres(610), Length: unit.Millimetres(1200), Count: 14}},
		Bed:    plan.DefaultBed, Gap: plan.DefaultGap,
		LayerHeight: unit.Millimetres(40), Opening: unit.Millimetres(100),
	}, nil)
	fmt.Println(p.Certificate.Loads, p.Layers, p.Certificate.Best, err)
	// Output: 3 2 true <nil>
}

// mixedLoads is 60 panels of mixed sizes.
func mixedLoads(seed dice) plan.LoadJob {
	job := plan.LoadJob{Bed: plan.DefaultBed, Gap: plan.DefaultGap}
	for range 60 {
		job.Panels = append(job.Panels, plan.Rect{
			Width:  unit.Millimetres(float64(5 * seed.from(50, 180))),
			Length: unit.Millimetres(float64(5 * seed.from(80, 320))), Count: 1})
	}
	return job
}

func BenchmarkLoads_sixty(b *testing.B) {
	n, off, over := 0, 0, 0
	for b.Loop() {
		p, err := plan.Loads(mixedLoads(dice(n%8+1)), nil)
		if err != nil {
			b.Fatal(err)
		}
		n++
		c := p.Certificate
		b.Logf("%+v", c)
		off += c.Loads - c.Bound
		over += c.Bound - c.AreaBound
	}
	b.ReportMetric(float64(off)/float64(n), "loads-off")
	b.ReportMetric(float64(over)/float64(n), "over-area")
}

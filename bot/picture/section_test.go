package picture

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"presshand/engine/unit"
)

// shown are the shapes of a drawing that show a thing.
func shown(d *Drawing, what string) []shape {
	return slices.DeleteFunc(slices.Clone(d.shapes), func(s shape) bool { return s.shows != what })
}

func around(s shape) box {
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range s.points {
		b = box{min(b.x0, p.x), min(b.y0, p.y), max(b.x1, p.x), max(b.y1, p.y)}
	}
	return b
}

// drawn lays a section out and keeps where its parts lie.
func drawn(c CrossSection) (*section, *Drawing) {
	s := &section{CrossSection: c, d: &Drawing{}}
	return s, s.draw()
}

// barOn is a 3/4 in sled with strips of a thickness and a bar beside them.
func barOn(strips float64, bar Bar) CrossSection {
	return CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Strips, in(strips)}}, Widths: equal(5, in(2)), Bar: &bar,
		Face: kpa(80, 85, 90), Side: true, First: kpa(0, 10, 20), Far: kpa(0, 0, 10), Units: inch}
}

// By hand, in inches above the bed, the sled's top at 3/4: where the film's
// push counts, and how much of the bar is idle.
func TestCrossSection_whatPushes(t *testing.T) {
	for name, c := range map[string]struct {
		of            CrossSection
		onBar, onEdge [2]float64
		idle          float64
	}{
		"covered to its top":   {barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(1))}), [2]float64{0.75, 1.75}, [2]float64{}, 0},
		"covered in part":      {barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(0.25))}), [2]float64{0.75, 1}, [2]float64{}, 0.75},
		"lower than strips":    {barOn(0.75, Bar{Height: in(0.5), Covered: unit.Exactly(in(0.75))}), [2]float64{0.75, 1.25}, [2]float64{1.25, 1.5}, 0},
		"on the bed":           {barOn(0.25, Bar{Height: in(2), OnBed: true, Covered: unit.Exactly(in(1))}), [2]float64{0, 1}, [2]float64{}, 1},
		"under the strips":     {barOn(0.25, Bar{Height: in(0.5), OnBed: true, Covered: unit.Exactly(in(0.25))}), [2]float64{}, [2]float64{0.75, 1}, 0.5},
		"level with underside": {barOn(0.25, Bar{Height: in(0.75), OnBed: true, Covered: unit.Exactly(in(0.25))}), [2]float64{}, [2]float64{0.75, 1}, 0.75},
		"nothing known":        {barOn(0.25, Bar{Height: in(1)}), [2]float64{}, [2]float64{}, 0},
		"no bar":               {CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.5)}}, Face: kpa(80, 85, 90), Side: true}, [2]float64{}, [2]float64{0.75, 1.25}, 0},
	} {
		s, d := drawn(c.of)
		onBar, onEdge := s.pushing()
		for what, pair := range map[string][2][2]float64{
			"bar": {c.onBar, {onBar.from.Inches(), onBar.to.Inches()}}, "edge": {c.onEdge, {onEdge.from.Inches(), onEdge.to.Inches()}},
		} {
			if math.Abs(pair[0][0]-pair[1][0]) > 1e-9 || math.Abs(pair[0][1]-pair[1][1]) > 1e-9 {
				t.Errorf("%s: film pushes on the %s from %v in, want %v", name, what, pair[1], pair[0])
			}
		}
		if got := s.idle().Inches(); math.Abs(got-c.idle) > 1e-6 {
			t.Errorf("%s: %g in of the bar is idle, want %g", name, got, c.idle)
		}
		hatched := shown(d, "bar idle")
		if len(hatched) != boolCount(c.idle > 0) || c.idle > 0 && math.Abs(around(hatched[0]).height()-in(c.idle).Metres()*s.scale) > 0.01 {
			t.Errorf("%s: hatched %v, want %g in", name, hatched, c.idle)
		}
		if pushes := c.onBar[1]+c.onEdge[1] > 0; pushes != (len(shown(d, "side arrow")) > 0) {
			t.Errorf("%s: %d side arrows, want some: %v", name, len(shown(d, "side arrow")), pushes)
		}
	}
}

func boolCount(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// Each arrow of the film points at what it pushes, from outside, and none at
// what has film on both faces.
func TestCrossSection_arrowsWhereItPushes(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 3))
	seen := 0
	for i := range 400 {
		c := randomSection(r, Units{}, "")
		s, d := drawn(c)
		onBar, onEdge := s.pushing()
		if onBar.length() > 0 { // the lower of two faces is pushed too
			onBar.from = s.foot
		}
		for _, a := range shown(d, "side arrow") {
			seen++
			b := around(a)
			y := b.centre().y
			in := func(on stretch) bool { return y <= s.y(on.from)+0.1 && y >= s.y(on.to)-0.1 }
			atBar := s.Bar != nil && in(onBar) && (b.x1 < s.x.bar[0] || s.bothBars() && b.x0 > s.x.fence[1])
			atEdge := in(onEdge) && (b.x1 < s.x.strips[0] || s.bothBars() && b.x0 > s.x.strips[1])
			if !atBar && !atEdge {
				t.Errorf("load %d: side arrow at %.1f, want it on %v of the bar or %v of the edge", i, b, onBar, onEdge)
			}
		}
		if c.Face.Mid == 0 && len(shown(d, "side arrow"))+len(shown(d, "face arrow")) > 0 {
			t.Errorf("load %d: arrows of a film that presses with nothing", i)
		}
		if t.Failed() {
			return
		}
	}
	if seen < 100 {
		t.Errorf("%d arrows in all, want some hundred", seen)
	}
}

// hatches are the lines drawn after a part, up to the next that shows something.
func hatches(d *Drawing, part string) []shape {
	at := slices.IndexFunc(d.shapes, func(s shape) bool { return s.shows == part })
	n := slices.IndexFunc(d.shapes[at+1:], func(s shape) bool { return len(s.points) != 2 || s.shows != "" || s.stroke != softInk })
	return d.shapes[at+1:][:n]
}

// By hand, in inches over the bed: the bar from 3/4 to 1 3/4 pushes up to 1. The
// part above is hatched: lines at 45 degrees, evenly apart, from corner to corner,
// each from edge to edge; nothing of what pushes is.
func TestCrossSection_hatch(t *testing.T) {
	for _, both := range []bool{false, true} {
		s, d := drawn(barOn(0.25, Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(0.25)), Both: both}))
		parts := shown(d, "bar idle")
		if len(parts) != 1+boolCount(both) || len(parts) != len(shown(d, "bar")) || parts[0].facts[0] != (fact{"mm", "19.05"}) {
			t.Fatalf("%d idle parts of %d bars, want one each of 19.05 mm", len(parts), len(shown(d, "bar")))
		}
		idle := around(parts[0])
		if top, end := s.y(in(1.75)), s.y(in(1)); !near(idle.y0, top, 0.01) || !near(idle.y1, end, 0.01) {
			t.Errorf("idle part from %g to %g, want %g to %g", idle.y0, idle.y1, top, end)
		}
		lines := hatches(d, "bar idle")
		at := make([]float64, len(lines)) // each line is x + y = c
		for i, l := range lines {
			p, q := l.points[0], l.points[1]
			at[i] = p.x + p.y
			if !near(q.x+q.y, at[i], 0.01) {
				t.Errorf("line from %v to %v, want it at 45 degrees", p, q)
			}
			for _, e := range []point{p, q} {
				edge := min(math.Abs(e.x-idle.x0), math.Abs(e.x-idle.x1), math.Abs(e.y-idle.y0), math.Abs(e.y-idle.y1))
				if e.x < idle.x0 || e.x > idle.x1 || e.y < idle.y0 || e.y > idle.y1 || edge > 0.6 {
					t.Errorf("line ends at %v, want it on the edge of %v", e, idle)
				}
			}
		}
		if len(at) < 5 || at[0] > idle.x0+idle.y0+8 || at[len(at)-1] < idle.x1+idle.y1-8 {
			t.Fatalf("lines at %v, want them from corner to corner of %v", at, idle)
		}
		for i := 2; i < len(at); i++ {
			if !near(at[i]-at[i-1], at[1]-at[0], 0.01) || at[1]-at[0] > 8 {
				t.Errorf("lines at %v, want them close and even", at)
			}
		}
	}
}

// By hand: with bars on both sides of six alike strips the middle joint, 3, is
// farthest from either; of five, joints 2 and 3 are alike; of 2, 3, 1.5, 4 and
// 2.25 in, 12.75 in all: joints at 2, 5, 6.5 and 10.5 are 2, 5, 6.25 and 2.25
// from the nearer bar.
func TestCrossSection_namedJoints(t *testing.T) {
	for _, c := range []struct {
		widths    []unit.Length
		both      bool
		near, far []int
	}{
		{equal(6, in(2)), true, []int{1, 5}, []int{3}},
		{equal(5, in(2)), true, []int{1, 4}, []int{2, 3}},
		{equal(3, in(2)), true, []int{1, 2}, nil},
		{equal(6, in(2)), false, []int{1}, []int{5}},
		{equal(2, in(2)), false, []int{1}, nil},
		{equal(1, in(2)), false, nil, nil},
		{[]unit.Length{in(2), in(3), in(1.5), in(4), in(2.25)}, true, []int{1}, []int{3}},
		{equal(300, in(1)), true, []int{1, 299}, []int{150}},
	} {
		of := barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(0.25)), Both: c.both})
		of.Widths = c.widths
		s, d := drawn(of)
		near, far := s.namedJoints()
		if !slices.Equal(near, c.near) || !slices.Equal(far, c.far) {
			t.Errorf("%d strips, both sides %v: joints %v and %v, want %v and %v", len(c.widths), c.both, near, far, c.near, c.far)
		}
		for _, joints := range [][]int{c.near, c.far} {
			if len(joints) > 0 && !slices.ContainsFunc(s.seams(), func(j seam) bool { return j.number == joints[0] && j.named }) {
				t.Errorf("%d strips: joint %d has a figure and is not drawn", len(c.widths), joints[0])
			}
			if text := "Side, " + jointWords(joints) + ": "; len(joints) > 0 && !strings.Contains(d.Alt, text) {
				t.Errorf("alt %q lacks %q", d.Alt, text)
			}
		}
	}
}

// A joint that gets nothing is shown as such, not left out.
func TestCrossSection_zeroShown(t *testing.T) {
	c := barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(0.25))})
	c.First, c.Far = kpa(0, 0, 0), kpa(0, 0, 0)
	_, d := drawn(c)
	if got := len(shown(d, "crossed out")); got != 4 { // at each joint and in the key
		t.Errorf("%d signs crossed out, want 4", got)
	}
	for _, want := range []string{"1: 0.0 psi", "4: 0.0 psi", "Side, joint 1: 0.0 psi"} {
		if !slices.ContainsFunc(d.labels, func(l label) bool { return l.text == want }) {
			t.Errorf("labels lack %q", want)
		}
	}
}

// By hand: strips 5/16, mat 3/8 and a fence of 1/4 with 5/16 proud: what is left
// of the mat is 5/16 + 1/4 − 5/16 = 1/4 in.
func TestCrossSection_matSquashed(t *testing.T) {
	s, d := drawn(CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Fence, in(0.25)}, {Strips, in(5.0 / 16)}, {Mat, in(0.375)}, {Caul, in(0.75)}},
		Proud: []Proud{{By: unit.Exactly(in(5.0 / 16)), Verdict: Good}}})
	line, mark := shown(d, "mat squashed"), shown(d, "proud mark")
	if len(line) != 1 || len(mark) != 1 {
		t.Fatalf("%d lines in the mat and %d marks at the fence, want one each", len(line), len(mark))
	}
	if got, want := line[0].points[0].y, s.y(in(0.75+5.0/16+0.25)); math.Abs(got-want) > 0.01 {
		t.Errorf("mat ends at %g, want %g", got, want)
	}
	if got := mark[0].points[0].y; math.Abs(got-line[0].points[0].y) > 0.01 {
		t.Errorf("the work's mark ends at %g, want at the squashed mat's %g", got, line[0].points[0].y)
	}
}

// A spring's strips lie between two fences, which push; the film reaches no
// edge of theirs.
func TestCrossSection_spring(t *testing.T) {
	c := CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.75)}}, Widths: equal(6, in(2)), Side: true, Face: kpa(80, 85, 90),
		First: kpa(170, 830, 3400), Far: kpa(170, 830, 3400), Preload: kpa(170, 830, 3400), Units: inch,
		Spring: &Spring{Over: in(1.0 / 16), Rise: unit.Exactly(in(0.5)), Snap: kpa(10, 50, 100)}}
	s, d := drawn(c)
	if got := len(shown(d, "fence assumed")); got != 2 {
		t.Errorf("%d fences, want one on each side", got)
	}
	arrows := shown(d, "preload arrow")
	if len(arrows) != 2 || around(arrows[0]).x0 < s.x.fence[1] || around(arrows[1]).x1 > s.x.bar[0] || len(shown(d, "side arrow")) > 0 {
		t.Errorf("%d arrows of the fences and %d of the film, want 2 from outside and none", len(arrows), len(shown(d, "side arrow")))
	}
	if b := around(shown(d, "rise")[0]); math.Abs(b.height()-in(0.5).Metres()*s.scale) > 0.01 {
		t.Errorf("the middle rises %g points, want 1/2 in", b.height())
	}
}

// Whatever stands in the key stands in the alt text.
func TestCrossSection_altSaysTheKey(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 200 {
		s, d := drawn(randomSection(r, inch, ""))
		for _, k := range s.keyLines() {
			if !strings.Contains(d.Alt, strings.TrimSuffix(k.text, ".")) {
				t.Fatalf("alt %q lacks %q", d.Alt, k.text)
			}
		}
		if w := s.verdict().word(); w != "" && (!strings.Contains(d.Alt, w) || !strings.HasSuffix(d.Title, ": "+w) && !strings.HasSuffix(d.Title, "…")) {
			t.Fatalf("title %q and alt lack the verdict %q", d.Title, w)
		}
	}
}

// By hand: sled 3/4 and bar 1 in under a lid of 1 1/2: too high by 1/4, which
// nothing better may stand over; with a sled that nobody named it is a doubt.
func TestCrossSection_barAtTheLid(t *testing.T) {
	for _, c := range []struct {
		opening float64
		assumed bool
		want    Verdict
		says    string
	}{{1.5, false, Stop, "too high by 1/4 in"}, {1.5, true, Care, "too high by 1/4 in"}, {1.75, false, Care, "only 0 in to spare"}, {2.5, false, Good, "3/4 in to spare"}} {
		of := barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(0.25))})
		of.Opening, of.Verdict, of.SledAssumed = in(c.opening), Good, c.assumed
		s, d := drawn(of)
		if got := s.verdict(); got != c.want || !strings.Contains(d.Alt, c.says) || !strings.HasSuffix(d.Title, c.want.word()) {
			t.Errorf("lid at %g in: verdict %q, title %q, alt %q; want %q and %q", c.opening, got.word(), d.Title, d.Alt, c.want.word(), c.says)
		}
		if hit := len(shown(d, "stop")) > 1; hit != (c.opening < 1.75) { // one at the lid beside that of the key
			t.Errorf("lid at %g in: the bar is marked there: %v", c.opening, hit)
		}
	}
}

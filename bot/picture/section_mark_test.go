package picture

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"presshand/engine/unit"
)

// fenced is a sled with strips of 5/16 in beside a fence, and a caul on them.
func fenced(fence float64, v Verdict) CrossSection {
	by := in(5.0/16 - fence)
	return CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Fence, in(fence)}, {Strips, in(5.0 / 16)}, {Caul, in(0.75)}},
		Proud: []Proud{{By: unit.Exactly(by), Verdict: v}}, Units: inch}
}

// A warning stands where something is too little and nowhere else: beside its
// label and in its line of the key; the title has one for the whole. By hand, the
// work is 1/16 in proud, level with the fence, or 1/16 in lower.
func TestCrossSection_warnings(t *testing.T) {
	for name, c := range map[string]struct {
		of                 CrossSection
		good, warned, stop int
		says               string
	}{
		"proud enough":   {fenced(0.25, Good), 0, 0, 0, "1/16 in proud of the fence"},
		"proud too few":  {fenced(0.25, Care), 0, 2, 0, "Only 1/16 in proud of the fence, too little"},
		"level":          {fenced(5.0/16, Good), 0, 0, 2, "Not proud of the fence, which carries the load"},
		"lower":          {fenced(0.375, Unjudged), 0, 0, 2, "The fence stands 1/16 in higher than the work and carries the load"},
		"good in all":    {with(fenced(0.25, Good), func(c *CrossSection) { c.Verdict = Good }), 1, 0, 0, "Verdict: good"},
		"care in all":    {with(fenced(0.25, Good), func(c *CrossSection) { c.Verdict = Care }), 0, 1, 0, "Verdict: take care"},
		"stop in all":    {with(fenced(0.25, Good), func(c *CrossSection) { c.Verdict = Stop }), 0, 0, 1, "Verdict: stop"},
		"barely too low": {with(fenced(0.25, Good), func(c *CrossSection) { c.Opening = in(1.8125 - 1.0/32) }), 0, 0, 3, "too high by 1/32 in"}, // and the title
		"little left":    {with(fenced(0.25, Good), func(c *CrossSection) { c.Opening = in(1.8125 + 1.0/8) }), 0, 3, 0, "only 1/8 in to spare"},
		"room to spare":  {with(fenced(0.25, Good), func(c *CrossSection) { c.Opening = in(2.8125) }), 0, 0, 0, "1 in to spare"},
		"a bar that tips": {barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(1)), Tips: in(0.875), Wider: in(1.25)}), 0, 1, 0,
			"The bar may tip: 7/8 in of it counts then; 1 1/4 in wide it would not"},
	} {
		_, d := drawn(c.of)
		if got := [3]int{len(shown(d, "good")), len(shown(d, "warning")), len(shown(d, "stop"))}; got != [3]int{c.good, c.warned, c.stop} {
			t.Errorf("%s: %v signs of good, care and stop, want %d, %d and %d", name, got, c.good, c.warned, c.stop)
		}
		if !strings.Contains(d.Alt, c.says) {
			t.Errorf("%s: alt %q lacks %q", name, d.Alt, c.says)
		}
	}
}

func with(c CrossSection, change func(*CrossSection)) CrossSection {
	change(&c)
	return c
}

// How far the work stands over its fence is drawn to scale, up or down from the
// fence's top.
func TestCrossSection_proudToScale(t *testing.T) {
	for _, fence := range []float64{0.125, 0.25, 0.375, 0.5} {
		c := fenced(fence, Good)
		c.Proud[0].By.Low, c.Proud[0].By.High = c.Proud[0].By.Mid-in(1.0/16), c.Proud[0].By.Mid+in(1.0/16)
		s, d := drawn(c)
		m := shown(d, "proud mark")
		if want := "proud " + tape(in(5.0/16-fence)); !slices.ContainsFunc(d.labels, func(l label) bool { return l.text == want }) {
			t.Errorf("fence of %g in: no label says %q", fence, want)
		}
		if len(m) != 1 {
			t.Fatalf("%d marks, want one", len(m))
		}
		top, end := m[0].points[0].y, m[0].points[1].y
		if !near(end, s.y(in(0.75+fence)), 0.01) || !near(top, s.y(in(0.75+5.0/16)), 0.01) {
			t.Errorf("fence of %g in: marked from %.2f to %.2f, want from the work's top to the fence's", fence, top, end)
		}
	}
}

// The lid is at its height, to scale where that is near, and what is left under
// it is measured from the highest part.
func TestCrossSection_lidToScale(t *testing.T) {
	for _, opening := range []float64{1.75, 2.25, 2.5, 6} { // the stack has 1 13/16 in
		s, d := drawn(with(fenced(0.25, Good), func(c *CrossSection) { c.Opening = in(opening) }))
		lid, left := shown(d, "lid"), shown(d, "clearance")
		if len(lid) != 1 || len(left) != 1 {
			t.Fatalf("opening %g in: %d lids and %d clearances, want one each", opening, len(lid), len(left))
		}
		at, far := lid[0].points[0].y, opening > 1.8125*1.5
		if far == near(at, s.y(in(opening)), 0.01) {
			t.Errorf("opening %g in: lid at %.2f, to scale %.2f; want that unless it is far up", opening, at, s.y(in(opening)))
		}
		if note := d.labels[1].text; strings.Contains(note, "but for the lid's") != far {
			t.Errorf("opening %g in: the note is %q", opening, note)
		}
		b, top := around(left[0]), s.y(in(1.8125))
		if !near(b.y0, min(at, top), 0.01) || !near(b.y1, max(at, top), 0.01) {
			t.Errorf("opening %g in: clearance from %.2f to %.2f, want lid %.2f and stack %.2f", opening, b.y0, b.y1, at, top)
		}
	}
}

// The block that is to be laid beside a bar reaches from the work to the covered
// height.
func TestCrossSection_coverToScale(t *testing.T) {
	s, d := drawn(barOn(0.25, Bar{Height: in(2), Width: in(0.75), Covered: unit.Exactly(in(1.5))}))
	c := shown(d, "cover")
	if len(c) != 1 || c[0].dash == nil {
		t.Fatalf("%d blocks, want one, dashed", len(c))
	}
	if b := around(c[0]); !near(b.y0, s.y(in(2.25)), 0.01) || !near(b.y1, s.y(in(1)), 0.01) || b.x0 < s.x.bar[1] || b.x1 > s.x.strips[1] {
		t.Errorf("block %v, want it over the strips from %.2f to %.2f", b, s.y(in(2.25)), s.y(in(1)))
	}
}

// The dimension lines beside a bar are as long as what they measure.
func TestCrossSection_barMeasured(t *testing.T) {
	s, d := drawn(barOn(0.25, Bar{Height: in(1.5), Width: in(0.75), Covered: unit.Exactly(in(0.5))}))
	for name, want := range map[string][2]float64{"bar": {s.y(in(2.25)), s.y(in(0.75))}, "pushes": {s.y(in(1.25)), s.y(in(0.75))}} {
		ink := map[string]any{"bar": inkColour, "pushes": greenInk}[name]
		if !slices.ContainsFunc(d.shapes, func(l shape) bool {
			return len(l.points) == 2 && any(l.stroke) == ink && l.width == 1.3 && l.points[0].x == l.points[1].x && l.points[0].x < s.x.bar[0] &&
				near(around(l).y0, want[0], 0.01) && near(around(l).y1, want[1], 0.01)
		}) {
			t.Errorf("no line from %.2f to %.2f for what the %s measures", want[0], want[1], name)
		}
	}
}

// Strips that are not cut short are as wide as their share by the scale of the
// heights, and none is drawn wider.
func TestCrossSection_stripsToScale(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	whole := 0
	for i := range 300 {
		s, d := drawn(randomSection(r, Units{}, ""))
		for _, p := range shown(d, string(Strips)) {
			facts := map[string]string{}
			for _, f := range p.facts {
				facts[f.key] = f.value
			}
			if facts["width-mm"] == "" {
				continue
			}
			want := max(number(t, facts["width-mm"])*s.scale/1000, 2)
			got := around(p).width()
			if _, cut := facts["cut"]; cut && got > want || !cut && math.Abs(got-want) > 0.01 {
				t.Errorf("load %d: strip of %s mm is %.2f wide, cut %v; want %.2f", i, facts["width-mm"], got, cut, want)
			}
			whole += boolCount(facts["cut"] == "")
		}
	}
	if whole < 100 {
		t.Errorf("%d strips to scale, want some", whole)
	}
}

// Nothing in a section is set smaller than can be read beside a press, and the
// labels of narrow strips at the edge stay on the page.
func TestCrossSection_readable(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	for i := range 300 {
		c := randomSection(r, inch, "")
		if i%3 == 0 {
			c.Widths = equal(1+r.IntN(3), mm(r, 1, 12))
		}
		_, d := drawn(c)
		for _, l := range d.labels {
			if l.size < smallSize {
				t.Errorf("load %d: %q is set in %g points, want %d at least", i, l.text, l.size, smallSize)
			}
		}
		if d.labels[0].shows != "title" || d.labels[0].size <= textSize {
			t.Errorf("load %d: the title is set in %g points", i, d.labels[0].size)
		}
		tidy(t, fmt.Sprint("load ", i), d)
		if t.Failed() {
			return
		}
	}
}

// Strips of several thicknesses are marked at the thinnest, and a number under
// the bed is led to its joint.
func TestCrossSection_linesInTheStrips(t *testing.T) {
	c := barOn(0.5, Bar{Height: in(1), Covered: unit.Exactly(in(0.5))})
	c.Thinnest = in(0.4375)
	s, d := drawn(c)
	thin := shown(d, "thinnest")
	if len(thin) != 1 || thin[0].dash == nil || !near(thin[0].points[0].y, s.y(in(1.1875)), 0.01) || !near(thin[0].points[1].y, s.y(in(1.1875)), 0.01) {
		t.Errorf("thinnest marked %v, want dashes at %.2f", thin, s.y(in(1.1875)))
	}
	for _, j := range s.seams() {
		if !slices.ContainsFunc(d.shapes, func(l shape) bool {
			return len(l.points) == 2 && l.dash != nil && near(l.points[0].x, j.x, 0.01) && near(l.points[1].x, j.x, 0.01) &&
				near(l.points[0].y, s.y(in(0.75)), 0.01) && l.points[1].y > s.bedY
		}) {
			t.Errorf("joint %d at %.1f has no line down to its number", j.number, j.x)
		}
	}
	numbers := slices.DeleteFunc(slices.Clone(d.labels), func(l label) bool { return l.shows != "joint" })
	for _, l := range numbers {
		if x := s.seamAt(int(number(t, l.text))); !near(l.at.x, x, 0.01) {
			t.Errorf("number %s is set at %.1f, want it under its joint at %.1f", l.text, l.at.x, x)
		}
	}
	if len(numbers) != 4 {
		t.Errorf("%d numbers under five strips, want 4", len(numbers))
	}
}

// A fence is drawn where one is told, or where something pushes the strips to
// one side; how far the work stands over it goes to the level that has work.
func TestCrossSection_fences(t *testing.T) {
	idle := CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.25)}, {Caul, in(0.75)}, {SideBar, in(1)}}}
	if _, d := drawn(idle); len(shown(d, "fence assumed"))+len(shown(d, "fence")) > 0 || len(shown(d, "bar idle")) != 1 {
		t.Error("a bar on the caul pushes nothing, want it hatched and no fence made up for it")
	}
	if _, d := drawn(barOn(0.25, Bar{Height: in(1), Covered: unit.Exactly(in(0.25))})); len(shown(d, "fence assumed")) != 1 {
		t.Error("strips that a bar pushes have no fence to lie against")
	}
	empty := CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Fence, in(0.25)}, {Sled, in(0.75)}, {Fence, in(0.25)}, {Strips, in(0.5)}, {Caul, in(0.75)}},
		Proud: []Proud{{By: unit.Exactly(in(0.25)), Verdict: Good}}}
	s, d := drawn(empty)
	if m := shown(d, "proud mark"); len(m) != 1 || !near(around(m[0]).y0, s.y(in(2.25)), 0.01) || !near(around(m[0]).y1, s.y(in(2)), 0.01) {
		t.Errorf("marked %v, want the upper level's strips from 2 to 2 1/4 in", m)
	}
}

// A joint that a figure is about has a ring round its whole number: by hand, with
// bars on both sides of 300 strips the ends, 1 and 299, and the middle, 150; of five
// the ends and both joints of the middle strip.
func TestCrossSection_rings(t *testing.T) {
	for n, want := range map[int][]string{300: {"1", "150", "299"}, 5: {"1", "2", "3", "4"}} {
		c := barOn(0.25, Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(0.25)), Both: true})
		c.Widths = equal(n, in(1.75))
		_, d := drawn(c)
		var ringed []string
		for _, l := range d.labels {
			if b := l.box(); l.shows == "joint" && slices.ContainsFunc(shown(d, "joint ring"), func(r shape) bool {
				a := around(r)
				return a.x0 < b.x0-1 && a.x1 > b.x1+1 && a.y0 < b.y0 && a.y1 > b.y1-descent*l.size
			}) {
				ringed = append(ringed, l.text)
			}
		}
		slices.Sort(ringed)
		slices.Sort(want)
		if !slices.Equal(ringed, want) || len(shown(d, "joint ring")) != len(want) {
			t.Errorf("%d strips: joints %q have a ring of %d, want %q", n, ringed, len(shown(d, "joint ring")), want)
		}
	}
}

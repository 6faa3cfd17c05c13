package picture

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"presshand/engine/unit"
)

// ends are where an arrow begins and points to.
func (s shape) ends() (tail, tip point) {
	p := s.points
	return point{(p[0].x + p[6].x) / 2, (p[0].y + p[6].y) / 2}, p[3]
}

func rightward(a shape) bool {
	tail, tip := a.ends()
	return tip.x > tail.x && near(tip.y, tail.y, 0.01)
}

// As drawn, an arrow's head is at its tip and is wider than its shaft.
func TestArrow_shape(t *testing.T) {
	d := &Drawing{}
	a := *d.arrow(point{10, 50}, point{40, 50}, 2, 8, inkColour)
	tail, tip := a.ends()
	if tail != (point{10, 50}) || tip != (point{40, 50}) {
		t.Errorf("arrow from %v to %v, want 10 to 40", tail, tip)
	}
	for _, p := range a.points {
		if p.x < 32-0.01 && math.Abs(p.y-50) > 1.01 {
			t.Errorf("the shaft is %g wide at %g, want 2", 2*math.Abs(p.y-50), p.x)
		}
	}
	if b := around(a); !near(b.height(), 8, 0.01) {
		t.Errorf("the head is %g wide, want 8", b.height())
	}
}

// The film's arrows: down on the face, each ending on the film; inward on bar
// and edge.
func TestCrossSection_arrowsPointInward(t *testing.T) {
	both := barOn(0.5, Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(0.5)), Both: true})
	none := barOn(0.5, Bar{})
	none.Bar = nil
	for name, c := range map[string]struct {
		of          CrossSection
		left, right bool // where it pushes
	}{
		"one bar":        {barOn(0.5, Bar{Height: in(1), Width: in(0.75), Covered: unit.Exactly(in(0.5))}), true, false},
		"two bars":       {both, true, true},
		"no bar":         {none, true, false},
		"nothing pushed": {CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.5)}}, Face: kpa(80, 85, 90)}, false, false},
	} {
		s, d := drawn(c.of)
		face := shown(d, "face arrow")
		if len(face) < 2 {
			t.Errorf("%s: %d arrows on the face, want some", name, len(face))
		}
		for _, a := range face {
			tail, tip := a.ends()
			if film := filmAt(t, d, tip.x); !near(tail.x, tip.x, 0.01) || tip.y < tail.y+8 || tip.y > film || tip.y < film-6 || tip.x < s.x.strips[0] || tip.x > s.x.strips[1] {
				t.Errorf("%s: arrow on the face from %v to %v, want it down to the film at %.1f", name, tail, tip, film)
			}
		}
		got := [2]bool{}
		for _, a := range shown(d, "side arrow") {
			_, tip := a.ends()
			switch first := s.x.bar[0]; {
			case rightward(a) && s.Bar != nil && near(tip.x, first, 6) && tip.x < first, rightward(a) && s.Bar == nil && near(tip.x, s.x.strips[0], 6):
				got[0] = true
			case !rightward(a) && near(tip.x, s.x.fence[1], 6) && tip.x > s.x.fence[1]:
				got[1] = true
			default:
				t.Errorf("%s: arrow to %v, rightward %v, want it to a bar or the strips", name, tip, rightward(a))
			}
		}
		if got != [2]bool{c.left, c.right} {
			t.Errorf("%s: side arrows left and right %v, want %v and %v", name, got, c.left, c.right)
		}
	}
}

// A wedge pushes the strips away from itself and its fence pushes back; across
// them the other fence does.
func TestCrossSection_wedgeArrows(t *testing.T) {
	of := CrossSection{Layers: []Layer{{Sled, in(0.75)}, {Strips, in(0.75)}}, Widths: equal(4, in(2)), Face: kpa(80, 85, 90),
		Wedge: &Wedge{Gap: in(0.5)}, Preload: kpa(30, 40, 50), Side: true, First: kpa(30, 40, 50), Far: kpa(30, 40, 50)}
	s, d := drawn(of)
	wedge := around(shown(d, "wedge")[0])
	if !near(wedge.x0, s.x.strips[1], 0.01) || !near(wedge.x1, s.x.fence[0], 0.01) || !near(wedge.y0, s.y(in(1.5)), 0.01) || !near(wedge.y1, s.y(in(0.75)), 0.01) {
		t.Errorf("wedge %v, want it between strips and fence, as high as the strips", wedge)
	}
	var at []string
	for _, a := range shown(d, "preload arrow") {
		_, tip := a.ends()
		where := map[bool]string{true: "right", false: "left"}[rightward(a)]
		switch {
		case tip.x < s.x.bar[0]:
			where += " from the near fence"
		case tip.x >= wedge.x0 && tip.x < wedge.x1:
			where += " in the wedge"
		case tip.x > s.x.fence[1]:
			where += " from the far fence"
		}
		at = append(at, where)
	}
	slices.Sort(at)
	if want := []string{"left from the far fence", "left in the wedge", "right from the near fence"}; !slices.Equal(at, want) {
		t.Errorf("arrows %q, want %q", at, want)
	}
	of.Preload = unit.Range[unit.Pressure]{}
	if _, d := drawn(of); len(shown(d, "preload arrow")) > 0 {
		t.Error("arrows of a wedge that nobody knows to press")
	}
}

// The sign of a joint is two arrows that meet in it.
func TestSqueeze_arrowsMeet(t *testing.T) {
	d := &Drawing{}
	d.squeeze(box{10, 10, 32, 24}, false)
	arrows := shown(d, "joint arrow")
	if len(arrows) != 2 || !rightward(arrows[0]) || rightward(arrows[1]) {
		t.Fatalf("%d arrows, want two that face each other", len(arrows))
	}
	_, a := arrows[0].ends()
	_, b := arrows[1].ends()
	if a.x > b.x || b.x-a.x > 4 || !near((a.x+b.x)/2, 21, 0.01) {
		t.Errorf("arrows end at %g and %g, want them to meet at 21", a.x, b.x)
	}
	if len(shown(d, "crossed out")) > 0 {
		t.Error("a joint that gets something is crossed out")
	}
}

// An answer's figure of the face stands over its arrows, and there are none
// without it.
func TestCrossSection_faceFigure(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 9))
	seen := 0
	for i := range 300 {
		c := randomSection(r, inch, "")
		_, d := drawn(c)
		figures := slices.DeleteFunc(slices.Clone(d.labels), func(l label) bool { return l.shows != "face pressure" })
		arrows := shown(d, "face arrow")
		if (len(figures) > 0) != (len(arrows) > 0) || c.Face.Mid == 0 && len(arrows) > 0 {
			t.Fatalf("load %d: %d figures over %d arrows of a film of %v", i, len(figures), len(arrows), c.Face)
		}
		for _, l := range figures {
			seen++
			if !strings.HasPrefix(l.text, psi(c.Face.Mid)) || l.at.y > around(arrows[0]).y0 {
				t.Errorf("load %d: figure %q at %.1f, want %s over the arrows", i, l.text, l.at.y, psi(c.Face.Mid))
			}
		}
	}
	if seen < 50 {
		t.Errorf("%d figures, want some", seen)
	}
}

package bot_test

import (
	"math"
	"testing"

	"presshand/engine/unit"
)

// The chart's joints have the figures of the answer, low, middle and high: the
// first from the bar, and the one farthest from any.
func TestDraw_jointsOfTheChart(t *testing.T) {
	const ask = ", 25 inHg, yellow glue, how far does the bar reach"
	for _, c := range []struct {
		text       string
		first, far string
		reaches    int
	}{
		{"6 strips 2 wide, 1/2 thick, 1 in bar", "1", "5", 1},
		{"41 strips 1 wide, 1/4 thick, 1 in bar", "1", "40", 1},
		{"2 strips 3 wide, 1/32 thick, 1 in bar", "1", "1", 1},
		{"24 wide panel of 2 1/4 strips, 1/2 thick, 1 in bar", "1", "10", 1},
		{"10 strips 2 wide, 1/4 thick, 1 in bar on both sides, 3/4 caul", "1", "5", 2},
		{"strips 2, 3, 1 1/2, 4, 2 1/4 wide, 1/2 thick, 1 in bar with 3/4 caul both sides", "1", "3", 2},
		{"6 strips 2 wide, 3/4 thick, 1 in bar, 1:12 wedge driven with 200 lb, 48 long", "1", "5", 1},
		{"6 strips 2 wide, 3/4 thick, no bar", "1", "5", 1},
	} {
		a, all := drawnSVG(t, c.text+ask)
		joints := map[string]shown{}
		for _, s := range showing(all, "joint") {
			joints[s["joint"]] = s
		}
		for field, n := range map[unit.Field]string{unit.SideFirstJoint: c.first, unit.SideFarJoint: c.far} {
			v, _ := a.Values[field].(unit.Triple)
			for key, want := range map[string]*float64{"low-kpa": v.Low, "kpa": v.Mid, "high-kpa": v.High} {
				if got := joints[n].number(t, key); want == nil || math.Abs(got-*want) > 0.002 {
					t.Errorf("%q: joint %s has %s of %g in the drawing, want %s of the answer, %v", c.text, n, key, got, field, a.Values[field])
				}
			}
		}
		reach, _ := a.Values[unit.BarReach].(unit.Triple)
		marks := showing(all, "reach")
		if len(marks) != c.reaches || math.Abs(marks[0].number(t, "mm")-*reach.Mid) > 0.001 {
			t.Errorf("%q: the reach is marked %v, want %d times %g mm", c.text, marks, c.reaches, *reach.Mid)
		}
		beyond := showing(all, "out of reach")
		if len(beyond) != 1 || math.Abs(beyond[0].number(t, "from-mm")-*reach.Mid) > 0.001 {
			t.Errorf("%q: %v is hatched, want all from %g mm on", c.text, beyond, *reach.Mid)
		}
	}
}

// A bar that is worked out is the bar of the chart.
func TestDraw_chartOfASolvedBar(t *testing.T) {
	a, all := drawnSVG(t, "what bar for 50 psi at the far joint, 6 strips 2 wide, 1/2 thick, 25 inHg, yellow glue, plot it")
	far, _ := a.Values[unit.SideFarJoint].(unit.Triple)
	joints := showing(all, "joint")
	if len(joints) != 5 || far.Mid == nil || math.Abs(joints[4].number(t, "kpa")-*far.Mid) > 0.002 {
		t.Errorf("joints are drawn %v, want the last of five with %v", joints, a.Values[unit.SideFarJoint])
	}
	_, all = drawnSVG(t, "what bar for 50 psi at the far joint, 6 strips 2 wide, 1/2 thick, 25 inHg, yellow glue")
	if len(showing(all, "middle")) != 0 {
		t.Error("a chart is drawn, want the section with the bar")
	}
}

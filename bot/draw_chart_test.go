package bot

import (
	"math"
	"strings"
	"testing"

	"presshand/engine"
	"presshand/engine/unit"
)

// 85 kPa, a bar 40 × 40 mm covered to its top, strips 10 mm thick, friction 0.15,
// a bridged corner of 3 mm: at 20 mm 85·[(40 − 3) − 0.15·(40 + 3) − 0.15·20]/10
// = 234.175 kPa, at 80 mm 157.675 kPa.
func TestDrawn_chart(t *testing.T) {
	q := engine.Question{About: engine.Side, For: []unit.Field{unit.BarReach}, Said: unit.Facts{
		unit.StripCount: unit.Number(5), unit.StripWidth: unit.Number(20), unit.StripThickness: unit.Number(10),
		unit.BarHeight: unit.Number(40), unit.BarWidth: unit.Number(40), unit.Cover: unit.Number(40), unit.Vacuum: unit.Number(85), unit.SurfaceKind: unit.Word("waxed"),
	}}
	a, err := engine.Compute(q)
	if err != nil {
		t.Fatal(err)
	}
	d := Drawn{Question: q, Answer: a, style: styleOf(true, Thread{})}
	c := d.chart()
	if len(c.Joints) != 4 || len(c.Curve) <= curvePoints {
		t.Fatalf("chart has %d joints and %d points, want 4 and some", len(c.Joints), len(c.Curve))
	}
	for i, want := range map[int]float64{0: 234.175, 3: 157.675} {
		if got := c.Joints[i].Pressure.Mid.Kilopascals(); math.Abs(got-want) > 1e-6 {
			t.Errorf("joint %d is drawn at %g kPa, want %g", i+1, got, want)
		}
	}
	for i := 1; i < len(c.Curve); i++ {
		if c.Curve[i].Pressure.Mid > c.Curve[i-1].Pressure.Mid {
			t.Errorf("push rises from %v to %v, want it to fall", c.Curve[i-1], c.Curve[i])
		}
	}
	drawing, ok := d.Draw()
	if !ok || !strings.HasPrefix(drawing.Alt, "Chart of side pressure against distance") {
		t.Error("no chart is drawn where the reach is asked for, want one with its alt text")
	}
}

// A message without a word on the reach that asks to see the push along the panel
// gets the chart.
func TestDrawn_alongAskedFor(t *testing.T) {
	for text, want := range map[string]bool{
		"draw the pressure over the distance": true, "show the side pressure along the panel": true, "plot it against distance": true,
		"how does it fall off from the bar": true, "pressure chart": true, "5 strips 2 in wide, 1 in bar, 24 in long": false,
		"side pressure of 5 strips, a bar along the panel": false, "a caul over the panel": false,
	} {
		if got := along.MatchString(text); got != want {
			t.Errorf("%q asks for the push along the panel: %v, want %v", text, got, want)
		}
	}
}

package picture

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"presshand/engine/unit"
)

// tidy fails where a label touches another or leaves the page, or a shape does.
func tidy(t *testing.T, what string, d *Drawing) {
	t.Helper()
	page := box{0, 0, Width, d.height}
	inside := func(b box) bool { return b.x0 >= page.x0 && b.y0 >= page.y0 && b.x1 <= page.x1 && b.y1 <= page.y1 }
	boxes := make([]box, len(d.labels))
	for i, l := range d.labels {
		boxes[i] = l.box()
		if !inside(boxes[i]) {
			t.Errorf("%s: label %q at %.1f leaves the page of %.0f by %.0f", what, l.text, boxes[i], page.x1, page.y1)
		}
		for j := range i {
			if boxes[i].overlaps(boxes[j]) {
				t.Errorf("%s: label %q %.1f overlaps %q %.1f", what, l.text, boxes[i], d.labels[j].text, boxes[j])
			}
		}
	}
	for _, s := range d.shapes {
		for _, p := range s.points {
			if !inside(box{p.x, p.y, p.x, p.y}) {
				t.Errorf("%s: %q reaches %.1f, outside the page of %.0f by %.0f", what, s.shows, p, page.x1, page.y1)
				break
			}
		}
	}
}

// Widths as printed by the typeface are those of the label boxes: the sum of
// the advances of "5/8" in Liberation Sans, 1139, 569 and 1139 of 2048 units
// (as in Arial, whose widths it shares), at 16 points is 22.24.
func TestLabelBox_measured(t *testing.T) {
	d := &Drawing{}
	b := d.text("5/8", point{100, 50}, right, 16).box()
	if got, want := b.width(), 16*(1139+569+1139)/2048.0; got < want-0.01 || got > want+0.01 || b.x1 != 100 {
		t.Errorf("label is %g wide and ends at %g, want %g and 100", got, b.x1, want)
	}
}

func TestLabels_randomLoads(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 2))
	for i := range 500 {
		for kind, of := range randomLoad(r) {
			d, err := of.Draw()
			if err != nil {
				t.Fatalf("load %d, %s: %v\n%+v", i, kind, err, of)
			}
			tidy(t, fmt.Sprintf("load %d, %s", i, kind), d)
		}
		if t.Failed() {
			return
		}
	}
}

func TestLabels_samples(t *testing.T) {
	for name, of := range samples() {
		d, err := of.Draw()
		if err != nil {
			t.Fatal(err)
		}
		tidy(t, name, d)
	}
}

// randomLoad describes one load of any size that a shop might have, and some
// that none has.
func randomLoad(r *rand.Rand) map[string]description {
	u := Units{}
	if r.IntN(2) == 0 {
		u = inch
	}
	title := strings.Repeat("Walnut top ", r.IntN(9))
	return map[string]description{
		"section": randomSection(r, u, title),
		"chart":   randomChart(r, u, title),
		"strips":  randomStrips(r, u, title),
		"bed":     randomBed(r, u, title),
		"clock":   randomClock(r, title),
		"day":     below{randomClock(r, title), randomBed(r, u, title)},
	}
}

// below is two drawings on one page.
type below struct{ upper, lower description }

func (b below) Draw() (*Drawing, error) {
	upper, err := b.upper.Draw()
	if err != nil {
		return nil, err
	}
	lower, err := b.lower.Draw()
	if err != nil {
		return nil, err
	}
	return upper.Below(lower), nil
}

func mm(r *rand.Rand, low, high float64) unit.Length {
	return unit.Millimetres(low + (high-low)*r.Float64()*r.Float64())
}

func pressure(r *rand.Rand, high float64) unit.Range[unit.Pressure] {
	a := high * r.Float64()
	return kpa(a*r.Float64(), a, a*(1+r.Float64()))
}

func randomWidths(r *rand.Rand) []unit.Length {
	ws := equal(1+r.IntN(30), mm(r, 5, 300))
	if r.IntN(2) == 0 {
		for i := range ws {
			ws[i] = mm(r, 5, 300)
		}
	}
	return ws
}

func randomChart(r *rand.Rand, u Units, title string) PressureChart {
	three := func(high float64) unit.Range[float64] {
		a := 0.01 + high*r.Float64()
		return unit.Around(a*0.5, a, a*1.5)
	}
	curve, joints := falling(2+r.IntN(60), mm(r, 5, 300), three(1500), three(4))
	reach := mm(r, 0, 4000)
	if r.IntN(4) == 0 {
		reach = 0
	}
	return PressureChart{Title: title, Pusher: Pusher(r.IntN(3)), Closing: pressure(r, 60), Curve: curve, Joints: joints, Units: u, Contact: unit.Kilopascals(100 * r.Float64()),
		Full: unit.Kilopascals(1500 * r.Float64()), Reach: unit.Around(reach/2, reach, reach*2), Preload: pressure(r, 200)}
}

func randomStrips(r *rand.Rand, u Units, title string) StripLayout {
	s := StripLayout{Title: title, Units: u, More: r.IntN(3)}
	if r.IntN(2) == 0 {
		s.First, s.Last = "bar or fence", "fence"
	}
	for i := range 1 + r.IntN(4) {
		p := StripPanel{Name: fmt.Sprintf("Panel %d %s", i+1, title), Widths: randomWidths(r)}
		if r.IntN(2) == 0 {
			p.Target = mm(r, 100, 3000)
		}
		if r.IntN(2) == 0 {
			p.Wedge = mm(r, 1, 30)
		}
		if p.Target > 0 && r.IntN(2) == 0 {
			p.Trim, p.Over = mm(r, 0, 30), mm(r, 0, 90)
		}
		if r.IntN(6) == 0 {
			p.Widths, p.Reach, p.Short = nil, mm(r, 0, 900), mm(r, 1, 900)
		}
		s.Panels = append(s.Panels, p)
	}
	return s
}

func randomBed(r *rand.Rand, u Units, title string) BedPlan {
	p := BedPlan{Title: title, Units: u, Width: mm(r, 300, 1800), Gap: []string{"", "1 in"}[r.IntN(2)], More: r.IntN(3), Notes: []string{title}}
	for i := range r.IntN(9) {
		p.Sizes = append(p.Sizes, PanelSize{fmt.Sprint("P", i+1), mm(r, 10, 900), mm(r, 10, 2000), r.IntN(90)})
	}
	p.Length = p.Width * unit.Length(1+r.Float64()*2)
	for i := range 1 + r.IntN(6) {
		b := Bed{Name: fmt.Sprintf("Load %d %s", i+1, title)}
		cols, rows := 1+r.IntN(8), 1+r.IntN(8)
		for k := range cols * rows {
			w, h := p.Length/unit.Length(cols), p.Width/unit.Length(rows)
			b.Panels = append(b.Panels, Placed{fmt.Sprint("P", k+1), w * unit.Length(k%cols), h * unit.Length(k/cols), w * 9 / 10, h * 9 / 10})
		}
		p.Beds = append(p.Beds, b)
	}
	return p
}

func randomClock(r *rand.Rand, title string) DayClock {
	c := DayClock{Title: title}
	u := []float64{1, 1, 8}[r.IntN(3)] // hours to days
	for i := range 1 + r.IntN(6) {
		c.Presses = append(c.Presses, fmt.Sprintf("Press %d", i+1))
	}
	free := make([]float64, len(c.Presses))
	crew := 60 * (6 + 4*r.Float64())
	press := (20 + 300*r.Float64()) * u
	for i := range 1 + r.IntN(30) {
		k := i % len(free)
		lay := max(crew, free[k]-20)
		in := lay + 5 + 40*r.Float64()
		late := in + 60*r.Float64()*float64(r.IntN(2))
		m := unit.Minutes
		l := ClockLoad{Number: i + 1, Panels: r.IntN(9), Press: k,
			Usual: ClockTimes{m(lay), m(in), m(in), m(in + press), m(in + press + 1), m(in + press + 11)},
			Late:  ClockTimes{m(lay), m(late), m(late), m(late + press*1.3), m(late + press*1.3), m(late + press*1.3 + 11)}}
		crew, free[k] = in, in+press+10
		c.Loads = append(c.Loads, l)
	}
	if r.IntN(2) == 0 {
		c.Deadline = unit.Minutes(60 * 16)
	}
	return c
}

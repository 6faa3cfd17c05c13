package picture

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"presshand/engine/unit"
)

// A BedPlan shows where the panels of each load lie on the bed, seen from
// above.
type BedPlan struct {
	Title  string
	Width  unit.Length // the shorter side of the bed
	Length unit.Length
	Beds   []Bed
	Units  Units
}

// A Bed is one layer of one load.
type Bed struct {
	Name   string
	Panels []Placed
}

// A Placed panel takes a rectangle of the bed: X along its length and Y along
// its width from one corner.
type Placed struct {
	Name          string
	X, Y          unit.Length
	Along, Across unit.Length // its size along and across the bed's length
}

// Draw lays the beds out. It fails without a bed, and on sizes that cannot be.
func (p BedPlan) Draw() (*Drawing, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	d := &Drawing{Alt: p.alt()}
	y := d.heading(or(p.Title, "Bed plan"), fmt.Sprintf("To scale, seen from above. Bed %s by %s.", p.Units.length(p.Width), p.Units.length(p.Length)))
	columns := 1
	if len(p.Beds) > 3 {
		columns = 2
	}
	const gap = 14
	w := (Width - 2*margin - gap*float64(columns-1)) / float64(columns)
	scale := min(w/p.Length.Metres(), 420/p.Width.Metres())
	for i := 0; i < len(p.Beds); i += columns {
		bottom := y
		for j := i; j < min(i+columns, len(p.Beds)); j++ {
			x := margin + float64(j-i)*(w+gap)
			bottom = max(bottom, p.drawBed(d, p.Beds[j], point{x, y}, w, scale))
		}
		y = bottom + 18
	}
	return d.finish(y - 2), nil
}

func (p BedPlan) check() error {
	if len(p.Beds) == 0 {
		return errors.New("bed plan has no load, want one at least")
	}
	if !(p.Width > 0 && p.Length > 0) {
		return fmt.Errorf("bed is %g by %g mm, want more than 0", p.Width.Millimetres(), p.Length.Millimetres())
	}
	if err := usable("bed", p.Width, p.Length); err != nil {
		return err
	}
	for _, b := range p.Beds {
		for _, q := range b.Panels {
			if err := usable("panel", q.X, q.Y, q.Along, q.Across); err != nil {
				return err
			}
			if q.X+q.Along > p.Length+1e-6 || q.Y+q.Across > p.Width+1e-6 {
				return fmt.Errorf("panel %q ends at %g by %g mm, want it on the bed", q.Name, (q.X + q.Along).Millimetres(), (q.Y + q.Across).Millimetres())
			}
		}
	}
	return nil
}

func (p BedPlan) drawBed(d *Drawing, b Bed, at point, width, scale float64) float64 {
	y := at.y
	l := d.text(fit(b.Name, textSize, true, width), point{at.x, y + 10}, left, textSize)
	l.bold, l.shows = true, "load"
	y += 18
	r := box{at.x, y, at.x + p.Length.Metres()*scale, y + p.Width.Metres()*scale}
	s := d.rect(r, sledTint, inkColour)
	s.width, s.shows, s.facts = 1.6, "bed", []fact{measure("along-mm", p.Length), measure("across-mm", p.Width)}
	for _, q := range b.Panels {
		x0, y0 := r.x0+q.X.Metres()*scale, r.y0+q.Y.Metres()*scale
		p.drawPanel(d, q, box{x0, y0, x0 + q.Along.Metres()*scale, y0 + q.Across.Metres()*scale})
	}
	return r.y1
}

// drawPanel draws a panel with its name, and its size where there is room.
func (p BedPlan) drawPanel(d *Drawing, q Placed, b box) {
	s := d.rect(b, woodTint, inkColour)
	s.shows = "panel"
	s.facts = []fact{{"name", q.Name}, measure("x-mm", q.X), measure("y-mm", q.Y), measure("along-mm", q.Along), measure("across-mm", q.Across)}
	for i := 1.0; i < 4; i++ { // grain, along the longer side
		if b.width() >= b.height() {
			y := b.y0 + b.height()*i/4
			d.line(rgb(0xE4C68D), 0.8, point{b.x0 + 3, y}, point{b.x1 - 3, y})
		} else {
			x := b.x0 + b.width()*i/4
			d.line(rgb(0xE4C68D), 0.8, point{x, b.y0 + 3}, point{x, b.y1 - 3})
		}
	}
	c := b.centre()
	name, letters := p.fitIn(q.Name, b)
	if name == "" {
		return
	}
	size := p.sizeText(q, b)
	if b.height() < 20+14*float64(len(size)) {
		size = nil
	}
	y := c.y + 0.36*letters - 7*float64(len(size))
	t := d.text(name, point{c.x, y}, centre, letters)
	t.bold, t.shows = true, "panel name"
	for _, line := range size {
		y += 14
		d.text(line, point{c.x, y}, centre, smallSize).shows = "panel size"
	}
}

// fitIn returns the text and the largest type in which the box holds it whole.
func (p BedPlan) fitIn(text string, b box) (string, float64) {
	text = clean(text)
	for _, size := range []float64{textSize, 11, 9} {
		if b.height() >= size+1 && textWidth(text, size, true)+4 <= b.width() {
			return text, size
		}
	}
	return "", 0
}

// sizeText writes a panel's size on one line, or on two where it is narrow, or
// not at all.
func (p BedPlan) sizeText(q Placed, b box) []string {
	short, long := q.Along, q.Across
	if short > long {
		short, long = long, short
	}
	a, z := p.Units.length(short), p.Units.length(long)
	one := []string{a + " × " + z}
	two := []string{a, "× " + z}
	for _, lines := range [][]string{one, two} {
		w := 0.0
		for _, l := range lines {
			w = math.Max(w, textWidth(l, smallSize, false))
		}
		if w+6 <= b.width() {
			return lines
		}
	}
	return nil
}

func (p BedPlan) alt() string {
	var b strings.Builder
	u := p.Units
	fmt.Fprintf(&b, "Bed plan, bed %s by %s.", u.length(p.Width), u.length(p.Length))
	for i, bed := range p.Beds {
		fmt.Fprintf(&b, " %s: ", or(clean(bed.Name), fmt.Sprintf("Load %d", i+1)))
		for j, q := range bed.Panels {
			if j > 0 {
				b.WriteString("; ")
			}
			fmt.Fprintf(&b, "%s, %s by %s, %s along and %s across from the corner", or(clean(q.Name), "panel"),
				u.length(q.Along), u.length(q.Across), u.length(q.X), u.length(q.Y))
		}
		if len(bed.Panels) == 0 {
			b.WriteString("empty")
		}
		b.WriteByte('.')
	}
	return b.String()
}

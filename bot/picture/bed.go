package picture

import (
	"errors"
	"fmt"
	"image/color"
	"slices"
	"strings"

	"presshand/engine/unit"
)

// A BedPlan shows where the panels of each load lie on the bed, seen from
// above.
type BedPlan struct {
	Title  string
	Width  unit.Length // the shorter side of the bed
	Length unit.Length
	Bed    string      // the bed as it was said; as measured where left out
	Gap    string      // what is kept between panels
	Sizes  []PanelSize // what there is of each size, for the key
	Beds   []Bed
	More   int      // beds that are not drawn
	Notes  []string // what else is to be said of the plan
	Units  Units
}

// A PanelSize is what the panels of one name measure.
type PanelSize struct {
	Name          string // a letter; none where all are alike
	Width, Length unit.Length
	Count         int
}

// A Bed is one layer of one load, or of several alike.
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
	y := d.heading(or(p.Title, "Bed plan"), "To scale, seen from above. "+p.bed()+".")
	columns := 1
	if len(p.Beds) > 2 {
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
	return d.finish(d.key(y-10, p.keyLines()) + margin), nil
}

func (p BedPlan) bed() string {
	return "Bed " + or(p.Bed, p.size(p.Width, p.Length))
}

// size writes a width and a length, the unit once where it is one.
func (p BedPlan) size(width, length unit.Length) string {
	a, z := p.Units.stated(width), p.Units.stated(length)
	if i := strings.LastIndexByte(a, ' '); i >= 0 && strings.HasSuffix(z, a[i:]) {
		a = a[:i]
	}
	return a + " × " + z
}

func (p BedPlan) keyLines() []keyLine {
	var ks []keyLine
	for i, s := range p.Sizes {
		text := fmt.Sprintf("%s, %s in all", p.size(s.Width, s.Length), plural(s.Count, "panel"))
		if s.Name != "" {
			text = s.Name + ": " + text
		}
		ks = append(ks, keyLine{text: text, shows: "size", facts: []fact{{"name", s.Name}, measure("width-mm", s.Width), measure("length-mm", s.Length)},
			sign: func(d *Drawing, b box) { d.rect(b.inset(1), sizeTint(i), inkColour) }})
	}
	if p.Gap != "" {
		ks = append(ks, keyLine{text: p.Gap + " kept between panels at least", shows: "gap", sign: gapSign})
	}
	if p.More > 0 {
		ks = append(ks, keyLine{text: fmt.Sprintf("%s more not drawn", plural(p.More, "load")), strong: true})
	}
	for _, n := range p.Notes {
		ks = append(ks, keyLine{text: n})
	}
	return ks
}

func gapSign(d *Drawing, b box) {
	y := b.centre().y
	d.rect(box{b.x0, b.y0, b.x0 + 5, b.y1}, woodTint, inkColour)
	d.rect(box{b.x1 - 5, b.y0, b.x1, b.y1}, woodTint, inkColour)
	d.line(inkColour, 1.2, point{b.x0 + 5, y}, point{b.x1 - 5, y})
}

// sizeTint tells panels of different sizes apart, beside their letters.
func sizeTint(i int) color.NRGBA {
	return []color.NRGBA{woodTint, skyTint, greenTint, purpleTint, sledTint, barTint}[i%6]
}

func (p BedPlan) tintOf(name string) color.NRGBA {
	for i, s := range p.Sizes {
		if s.Name == name {
			return sizeTint(i)
		}
	}
	return woodTint
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
	y += 15
	d.text(fit(b.contents(), smallSize, false, width), point{at.x, y + 9}, left, smallSize).shows = "contents"
	y += 17
	r := box{at.x, y, at.x + p.Length.Metres()*scale, y + p.Width.Metres()*scale}
	s := d.rect(r, white, inkColour)
	s.width, s.shows, s.facts = 1.6, "bed", []fact{measure("along-mm", p.Length), measure("across-mm", p.Width)}
	for _, q := range b.Panels {
		x0, y0 := r.x0+q.X.Metres()*scale, r.y0+q.Y.Metres()*scale
		p.drawPanel(d, q, box{x0, y0, x0 + q.Along.Metres()*scale, y0 + q.Across.Metres()*scale})
	}
	return r.y1
}

// contents counts a bed's panels, by name where they have one.
func (b Bed) contents() string {
	counts := map[string]int{}
	var names []string
	for _, q := range b.Panels {
		if counts[q.Name] == 0 {
			names = append(names, q.Name)
		}
		counts[q.Name]++
	}
	if len(names) == 0 || len(names) == 1 && names[0] == "" {
		return plural(len(b.Panels), "panel")
	}
	slices.Sort(names)
	var each []string
	for _, n := range names {
		each = append(each, fmt.Sprintf("%d %s", counts[n], n))
	}
	return plural(len(b.Panels), "panel") + ": " + strings.Join(each, ", ")
}

// drawPanel draws a panel with its name, and its size where there is room.
func (p BedPlan) drawPanel(d *Drawing, q Placed, b box) {
	s := d.rect(b, p.tintOf(q.Name), inkColour)
	s.shows = "panel"
	s.facts = []fact{{"name", q.Name}, measure("x-mm", q.X), measure("y-mm", q.Y), measure("along-mm", q.Along), measure("across-mm", q.Across)}
	p.drawGrain(d, b)
	c := b.centre()
	name, letters := p.fitIn(q.Name, b)
	size, rows := p.sizeText(q, b), 0.0
	if name != "" {
		rows = 1
	}
	if b.height() < 6+14*(rows+float64(len(size))) {
		size = nil
	}
	y := c.y + 4.3 - 7*(rows+float64(len(size))-1)
	if name != "" {
		t := d.text(name, point{c.x, y}, centre, letters)
		t.bold, t.shows = true, "panel name"
		y += 14
	}
	for _, line := range size {
		d.text(line, point{c.x, y}, centre, smallSize).shows = "panel size"
		y += 14
	}
}

// drawGrain rules a panel along its longer side.
func (p BedPlan) drawGrain(d *Drawing, b box) {
	if min(b.width(), b.height()) < 12 {
		return
	}
	for _, i := range []float64{0.12, 0.88} {
		if b.width() >= b.height() {
			y := b.y0 + b.height()*i
			d.line(grain, 0.8, point{b.x0 + 3, y}, point{b.x1 - 3, y})
		} else {
			x := b.x0 + b.width()*i
			d.line(grain, 0.8, point{x, b.y0 + 3}, point{x, b.y1 - 3})
		}
	}
}

var grain = rgb(0xD9B577)

// fitIn returns the text and the largest type in which the box holds it whole.
func (p BedPlan) fitIn(text string, b box) (string, float64) {
	text = clean(text)
	for _, size := range []float64{textSize, 11} {
		if b.height() >= size+1 && textWidth(text, size, true)+3 <= b.width() {
			return text, size
		}
	}
	return "", 0
}

// sizeText writes a panel's size on one line, or on two where it is narrow, or
// not at all.
func (p BedPlan) sizeText(q Placed, b box) []string {
	short, long := min(q.Along, q.Across), max(q.Along, q.Across)
	for _, s := range p.Sizes {
		if s.Name == q.Name {
			short, long = s.Width, s.Length
		}
	}
	one := p.size(short, long)
	a, z, _ := strings.Cut(one, " × ")
	for _, lines := range [][]string{{one}, {a, "× " + z}} {
		w := 0.0
		for _, l := range lines {
			w = max(w, textWidth(l, smallSize, false))
		}
		if w+6 <= b.width() {
			return lines
		}
	}
	return nil
}

func (p BedPlan) alt() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Bed plan. %s.", p.bed())
	for _, k := range p.keyLines() {
		b.WriteString(" " + strings.TrimSuffix(k.text, ".") + ".")
	}
	for i, bed := range p.Beds {
		fmt.Fprintf(&b, " %s, %s", or(clean(bed.Name), fmt.Sprintf("Load %d", i+1)), bed.contents())
		if len(bed.Panels) <= toldPanels {
			for j, q := range bed.Panels {
				sep := "; "
				if j == 0 {
					sep = ": "
				}
				b.WriteString(sep + p.place(q))
			}
		}
		b.WriteByte('.')
	}
	return b.String()
}

// toldPanels is how many panels of a bed are told one by one in words.
const toldPanels = 12

func (p BedPlan) place(q Placed) string {
	u := p.Units
	text := p.size(q.Along, q.Across)
	if q.Name != "" {
		text = clean(q.Name) + " " + text
	}
	return fmt.Sprintf("%s, %s along and %s across from the corner", text, u.length(q.X), u.length(q.Y))
}

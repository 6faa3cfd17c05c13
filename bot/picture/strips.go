package picture

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"presshand/engine/unit"
)

// A StripLayout shows the strips of each panel as they will lie, seen from
// above, the first at the top.
type StripLayout struct {
	Title  string
	Note   string
	Panels []StripPanel
	Units  Units
}

// A StripPanel is one panel's strips in their order.
type StripPanel struct {
	Name   string
	Widths []unit.Length
	Target unit.Length // what they must fill; zero: not said
	Wedge  unit.Length // the gap that a wedge fills after the last; zero: none
}

// Draw lays the strips out. It fails without a strip, and on widths that
// cannot be.
func (s StripLayout) Draw() (*Drawing, error) {
	if len(s.Panels) == 0 {
		return nil, errors.New("strip layout has no panel, want one at least")
	}
	for _, p := range s.Panels {
		if len(p.Widths) == 0 {
			return nil, errors.New("panel has no strip, want one at least")
		}
		if err := usable("strip", append([]unit.Length{p.Target, p.Wedge}, p.Widths...)...); err != nil {
			return nil, err
		}
	}
	d := &Drawing{Alt: s.alt()}
	y := d.heading(or(s.Title, "Strips as they will lie"), or(s.Note, "Widths to scale, joints numbered."))
	columns := 1
	if len(s.Panels) > 1 {
		columns = 2
	}
	scale := s.scale()
	const gap = 14
	w := (Width - 2*margin - gap*float64(columns-1)) / float64(columns)
	for i := 0; i < len(s.Panels); i += columns {
		bottom := y
		for j := i; j < min(i+columns, len(s.Panels)); j++ {
			x := margin + float64(j-i)*(w+gap)
			bottom = max(bottom, s.drawPanel(d, s.Panels[j], box{x, y, x + w, 0}, scale))
		}
		y = bottom + 14
	}
	return d.finish(y), nil
}

const (
	widthRoom    = 80  // points for the label of a width
	leastStrip   = 18  // points that a strip should have for its label
	tallestPanel = 900 // points; above it narrow strips shrink
)

// scale returns points to the metre: room for the label of the narrowest
// strip, within a page that is not endless.
func (s StripLayout) scale() float64 {
	narrow, most := largest, unit.Length(0)
	for _, p := range s.Panels {
		sum := p.Wedge
		for _, w := range p.Widths {
			sum += w
			if w > 0 {
				narrow = min(narrow, w)
			}
		}
		most = max(most, sum)
	}
	if most <= 0 {
		return 1000
	}
	return min(max(leastStrip/narrow.Metres(), 260/most.Metres()), tallestPanel/most.Metres(), 1200)
}

// drawPanel draws one panel from b's upper edge on, and returns its lower end.
// Strips too thin for their label borrow room from it along the right.
func (s StripLayout) drawPanel(d *Drawing, p StripPanel, b box, scale float64) float64 {
	y := b.y0
	if p.Name != "" || len(s.Panels) > 1 {
		l := d.text(fit(p.Name, textSize, true, b.width()), point{b.x0, y + 10}, left, textSize)
		l.bold = true
		y += 20
	}
	const numbers, labels = 24, 92
	board := box{b.x0 + numbers, y, b.x1 - labels, 0}
	first := y - 4
	rows := p.rows()
	wish, size := make([]float64, len(rows)), make([]float64, len(rows))
	for i, w := range rows {
		h := w.Metres() * scale
		wish[i], size[i] = y+h/2, leastStrip-1
		s.drawStrip(d, p, i, box{board.x0, y, board.x1, y + h})
		y += h
	}
	bottom := s.drawWidths(d, p, board, spread(wish, size, first), wish)
	bottom = max(bottom, s.drawJointNumbers(d, p, board.x0, scale))
	return s.drawSum(d, p, b, max(y, bottom))
}

// rows are the strips' widths, with the wedge's gap at the end.
func (p StripPanel) rows() []unit.Length {
	rows := p.Widths[:len(p.Widths):len(p.Widths)]
	if p.Wedge > 0 {
		rows = append(rows, p.Wedge)
	}
	return rows
}

func (s StripLayout) drawStrip(d *Drawing, p StripPanel, i int, b box) {
	if i == len(p.Widths) {
		d.rect(b, white, softInk).dash = []float64{4, 3}
		w := d.polygon(purpleTint, point{b.x0 + 3, b.y0 + 1}, point{b.x1 - 3, b.y0 + 1}, point{b.x1 - 3, b.y1 - 1}, point{b.x0 + 3, b.y0 + b.height()*0.4})
		w.stroke, w.width, w.shows, w.facts = inkColour, 1, "wedge", []fact{measure("width-mm", p.Wedge)}
		return
	}
	tint := woodTint
	if i%2 == 1 {
		tint = woodShade
	}
	r := d.rect(b, tint, inkColour)
	r.shows, r.facts = "strip", []fact{{"strip", strconv.Itoa(i + 1)}, measure("width-mm", p.Widths[i])}
	if b.height() < 10 {
		return
	}
	for k := 1.0; k <= 2; k++ { // grain along the strip
		y := b.y0 + b.height()*k/3
		bow := min(b.height()*0.06, 2)
		d.line(rgb(0xD9B577), 0.8, point{b.x0 + 8, y}, point{b.x0 + b.width()*0.35, y - bow}, point{b.x0 + b.width()*0.7, y + bow}, point{b.x1 - 8, y})
	}
}

func (s StripLayout) drawWidths(d *Drawing, p StripPanel, board box, at, wish []float64) float64 {
	bottom := 0.0
	for i, y := range at {
		text, shows, w := "", "strip width", unit.Length(0)
		if i < len(p.Widths) {
			w = p.Widths[i]
			text = s.Units.length(w)
		} else {
			w, shows = p.Wedge, "wedge gap"
			text = "wedge " + s.Units.length(w)
			if textWidth(text, smallSize, false) > widthRoom {
				text = s.Units.length(w)
			}
		}
		x := board.x1 + 12
		d.line(softInk, 0.8, point{board.x1 - 3, wish[i]}, point{board.x1 + 3, wish[i]}, point{x - 3, y})
		l := d.text(fit(text, smallSize, false, widthRoom), point{x, y + 4.2}, left, smallSize)
		l.shows, l.facts = shows, []fact{measure("mm", w)}
		bottom = max(bottom, y+8)
	}
	return bottom
}

// drawJointNumbers numbers the joints on the left, as many as have room.
func (s StripLayout) drawJointNumbers(d *Drawing, p StripPanel, x, scale float64) float64 {
	y := d.panelTop(x)
	free := y - 20
	for i := range len(p.Widths) - 1 {
		y += p.Widths[i].Metres() * scale
		d.line(inkColour, 1.2, point{x - 5, y}, point{x, y})
		if y-free < 17.5 {
			continue
		}
		free = y
		d.disc(point{x - 14, y}, 7.5, white, inkColour)
		l := d.text(strconv.Itoa(i+1), point{x - 14, y + 3.6}, centre, 10)
		l.bold, l.shows = true, "joint"
	}
	return free + 9
}

// panelTop is the upper edge of the panel last begun at x.
func (d *Drawing) panelTop(x float64) float64 {
	for i := len(d.shapes) - 1; i >= 0; i-- {
		s := d.shapes[i]
		if s.shows == "strip" && s.points[0].x == x && s.facts[0].value == "1" {
			return s.points[0].y
		}
	}
	return 0
}

func (s StripLayout) drawSum(d *Drawing, p StripPanel, b box, y float64) float64 {
	u := s.Units
	lines := []string{fmt.Sprintf("%s, %s", plural(len(p.Widths), "strip"), u.length(p.sum()))}
	if over := p.sum() + p.Wedge - p.Target; p.Target > 0 && u.length(over) == u.length(0) {
		lines = append(lines, "fills the "+u.length(p.Target)+" wanted")
	} else if p.Target > 0 && over >= 0 {
		lines = append(lines, fmt.Sprintf("wanted %s, %s over", u.length(p.Target), u.length(over)))
	} else if p.Target > 0 {
		lines = append(lines, fmt.Sprintf("wanted %s, %s short", u.length(p.Target), u.length(-over)))
	}
	y += 6
	for i, text := range lines {
		for _, line := range wrap(text, smallSize, b.width()) {
			y += 15
			l := d.text(line, point{b.x0, y}, left, smallSize)
			l.bold = i == 0 && textWidth(line, smallSize, true) <= b.width()
			if i == 0 {
				l.shows, l.facts = "width sum", []fact{measure("mm", p.sum())}
			}
		}
	}
	return y + 4
}

func (p StripPanel) sum() unit.Length {
	sum := unit.Length(0)
	for _, w := range p.Widths {
		sum += w
	}
	return sum
}

func plural(n int, of string) string {
	if n == 1 {
		return "1 " + of
	}
	return strconv.Itoa(n) + " " + of + "s"
}

func (s StripLayout) alt() string {
	var b strings.Builder
	b.WriteString("Strips as they will lie, joints numbered from the first.")
	for i, p := range s.Panels {
		fmt.Fprintf(&b, " %s: ", or(clean(p.Name), fmt.Sprintf("Panel %d", i+1)))
		for j, w := range p.Widths {
			if j > 0 {
				b.WriteString(", ")
			}
			b.WriteString(s.Units.length(w))
		}
		fmt.Fprintf(&b, "; together %s", s.Units.length(p.sum()))
		if p.Wedge > 0 {
			fmt.Fprintf(&b, ", wedge in a gap of %s", s.Units.length(p.Wedge))
		}
		if p.Target > 0 {
			fmt.Fprintf(&b, ", wanted %s", s.Units.length(p.Target))
		}
		b.WriteByte('.')
	}
	return b.String()
}

package picture

import (
	"fmt"
	"strconv"

	"presshand/engine/unit"
)

// labelRoom is what the labels of a panel's widths take on its right.
func (s StripLayout) labelRoom(p StripPanel) float64 {
	w := 0.0
	for _, r := range p.runs() {
		w = max(w, textWidth(s.runText(r), smallSize, false))
	}
	if p.Wedge > 0 {
		w = max(w, textWidth("wedge "+s.Units.length(p.Wedge), smallSize, false))
	}
	if len(p.Widths) == 0 {
		w = max(textWidth("short "+s.Units.length(p.Short), smallSize, false), textWidth("up to "+s.Units.length(p.Reach), smallSize, false))
	}
	return min(w, 130) + 14
}

// gutter is what the joints' numbers take on the left of a panel.
func (p StripPanel) gutter() float64 {
	w := 0.0
	for _, j := range p.jointNumbers() {
		w = max(w, textWidth(j.text, smallSize, true))
	}
	return max(w+8, numberSize) + 10
}

const numberSize = 18 // points across a joint's number in its ring

// A jointNumber numbers the joint after a strip, or those within a run.
type jointNumber struct {
	text     string
	from, to int // strips before the first and the last of the joints
}

func (p StripPanel) jointNumbers() []jointNumber {
	var out []jointNumber
	for _, r := range p.runs() {
		last := r.first + r.n // the joint after the run
		if r.n > 1 {
			if last == len(p.Widths) {
				last--
			}
			out = append(out, jointNumber{fmt.Sprintf("%d–%d", r.first+1, last), r.first + 1, last})
		} else if last < len(p.Widths) {
			out = append(out, jointNumber{strconv.Itoa(last), last, last})
		}
	}
	return out
}

// drawPanel draws one panel from b's upper edge on, and returns its lower end.
// Labels too close for their strips borrow room along the edge.
func (s StripLayout) drawPanel(d *Drawing, p StripPanel, b box, scale float64) float64 {
	y := b.y0
	if p.Name != "" || len(s.Panels) > 1 {
		l := d.text(fit(p.Name, textSize, true, b.width()), point{b.x0, y + 10}, left, textSize)
		l.bold, l.shows = true, "panel name"
		y += 20
	}
	board := box{b.x0 + p.gutter(), y, b.x1 - s.labelRoom(p), 0}
	if len(p.Widths) == 0 {
		return s.drawOutcome(d, p, b, s.drawShort(d, p, board, scale))
	}
	if s.First != "" {
		d.text(fit(s.First, smallSize, false, board.x1-b.x0), point{b.x0, y + 11}, left, smallSize).colour = softInk
		board.y0 = y + 16
		s.edge(d, board, board.y0)
	}
	top := make([]float64, len(p.Widths)+1)
	y = board.y0
	for i, w := range p.Widths {
		top[i] = y
		y += w.Metres() * scale
		s.drawStrip(d, p, i, box{board.x0, top[i], board.x1, y})
	}
	top[len(p.Widths)] = y
	board.y1 = y
	if p.Wedge > 0 {
		board.y1 += p.wedgeHeight(scale)
		s.drawWedge(d, p, box{board.x0, y, board.x1, board.y1})
	}
	bottom := max(board.y1, s.drawJointNumbers(d, p, board, top))
	if s.Last != "" {
		s.edge(d, board, board.y1)
		bottom += 14
		d.text(fit(s.Last, smallSize, false, board.x1-b.x0), point{b.x0, bottom}, left, smallSize).colour = softInk
		bottom += 4
	}
	return s.drawOutcome(d, p, b, max(bottom, s.drawWidths(d, p, board, top)))
}

// edge draws what a panel lies against.
func (s StripLayout) edge(d *Drawing, board box, y float64) {
	d.line(softInk, 4, point{board.x0 - 3, y}, point{board.x1 + 3, y}).shows = "edge"
}

func (s StripLayout) drawStrip(d *Drawing, p StripPanel, i int, b box) {
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

// drawWedge draws the gap with the wedge driven into it from the right.
func (s StripLayout) drawWedge(d *Drawing, p StripPanel, b box) {
	d.rect(b, white, softInk).dash = []float64{4, 3}
	w := d.polygon(purpleTint, point{b.x0 + 4, b.y0 + 2}, point{b.x1 - 2, b.y0 + 2}, point{b.x1 - 2, b.y1 - 3}, point{b.x0 + 4, b.y0 + b.height()*0.55})
	w.stroke, w.width, w.shows, w.facts = inkColour, 1, "wedge", []fact{measure("width-mm", p.Wedge)}
}

// drawShort draws how far the stock goes of a panel that it does not make.
func (s StripLayout) drawShort(d *Drawing, p StripPanel, b box, scale float64) float64 {
	mid := b.y0 + p.Reach.Metres()*scale
	end := mid + p.Short.Metres()*scale
	r := d.rect(box{b.x0, b.y0, b.x1, mid}, woodTint, inkColour)
	r.shows, r.facts = "reach", []fact{measure("width-mm", p.Reach)}
	gap := box{b.x0, mid, b.x1, end}
	r = d.rect(gap, white, softInk)
	r.dash, r.shows, r.facts = []float64{4, 3}, "short", []fact{measure("width-mm", p.Short)}
	d.hatch(gap.inset(0.5), 12, 1, faint)
	d.warning(point{b.x0 - 14, (mid + end) / 2}, 15)
	at := spread([]float64{(b.y0 + mid) / 2, (mid + end) / 2}, []float64{rowHeight, rowHeight}, b.y0-4)
	for i, text := range []string{"up to " + s.Units.length(p.Reach), "short " + s.Units.length(p.Short)} {
		l := d.text(text, point{b.x1 + 12, at[i] + 4.2}, left, smallSize)
		l.bold = i == 1 && textWidth(text, smallSize, true) <= s.labelRoom(p)-12
	}
	return max(end, at[1]+8)
}

// drawWidths labels the strips on the right, those alike in a row once.
func (s StripLayout) drawWidths(d *Drawing, p StripPanel, board box, top []float64) float64 {
	runs := p.runs()
	wish, size := make([]float64, len(runs)), make([]float64, len(runs))
	for i, r := range runs {
		wish[i], size[i] = (top[r.first]+top[r.first+r.n])/2, rowHeight-1
	}
	if p.Wedge > 0 {
		wish, size = append(wish, (top[len(top)-1]+board.y1)/2), append(size, rowHeight-1)
	}
	x, bottom := board.x1+12, 0.0
	for i, y := range spread(wish, size, board.y0-1) {
		text, shows, w := "", "strip width", unit.Length(0)
		if i < len(runs) {
			r := runs[i]
			text, w = s.runText(r), r.width
			if r.n > 1 {
				d.line(softInk, 1, point{board.x1 + 2, top[r.first] + 2}, point{board.x1 + 5, top[r.first] + 2},
					point{board.x1 + 5, top[r.first+r.n] - 2}, point{board.x1 + 2, top[r.first+r.n] - 2})
			}
		} else {
			text, shows, w = "wedge "+s.Units.length(p.Wedge), "wedge gap", p.Wedge
		}
		d.line(softInk, 0.8, point{board.x1 - 3, wish[i]}, point{board.x1 + 5, wish[i]}, point{x - 3, y})
		l := d.text(fit(text, smallSize, false, s.labelRoom(p)-12), point{x, y + 4.2}, left, smallSize)
		l.shows, l.facts = shows, []fact{measure("mm", w)}
		if i < len(runs) {
			l.facts = append(l.facts, fact{"count", strconv.Itoa(runs[i].n)})
		}
		bottom = max(bottom, y+8)
	}
	return bottom
}

// drawJointNumbers numbers every joint on the left.
func (s StripLayout) drawJointNumbers(d *Drawing, p StripPanel, board box, top []float64) float64 {
	for i := 1; i < len(p.Widths); i++ {
		d.line(inkColour, 1.2, point{board.x0 - 4, top[i]}, point{board.x0, top[i]})
	}
	joints := p.jointNumbers()
	wish, size := make([]float64, len(joints)), make([]float64, len(joints))
	for i, j := range joints {
		wish[i], size[i] = (top[j.from]+top[j.to])/2, numberSize+1.5
	}
	bottom := 0.0
	for i, y := range spread(wish, size, board.y0-2) {
		j := joints[i]
		h := max(textWidth(j.text, smallSize, true)+8, numberSize) / 2
		c := point{board.x0 - 9 - h, y}
		d.line(softInk, 0.8, point{board.x0 - 4, wish[i]}, point{c.x + h, y})
		if j.to > j.from {
			d.line(softInk, 1, point{board.x0 - 4, top[j.from]}, point{board.x0 - 4, top[j.to]})
		}
		r := box{c.x - h, y - numberSize/2, c.x + h, y + numberSize/2}
		d.add(shape{points: r.rounded(numberSize / 2), closed: true, fill: white, stroke: inkColour, width: 1.2})
		l := d.text(j.text, point{c.x, y + 4.3}, centre, smallSize)
		l.bold, l.shows = true, "joint"
		bottom = max(bottom, y+numberSize/2+1)
	}
	return bottom
}

// drawOutcome says under a panel what its strips come to.
func (s StripLayout) drawOutcome(d *Drawing, p StripPanel, b box, y float64) float64 {
	var lines []string
	if len(p.Widths) > 0 {
		lines = append(lines, fmt.Sprintf("%s, %s", plural(len(p.Widths), "strip"), s.Units.stated(p.sum())))
	}
	if told := s.outcome(p); told != "" {
		lines = append(lines, told)
	}
	y += 6
	for i, text := range lines {
		for k, line := range wrap(text, smallSize, b.width()) {
			y += 15
			l := d.text(line, point{b.x0, y}, left, smallSize)
			l.bold = i == 0 && len(p.Widths) > 0 && textWidth(line, smallSize, true) <= b.width()
			switch {
			case k > 0:
			case i == 0 && len(p.Widths) > 0:
				l.shows, l.facts = "width sum", []fact{measure("mm", p.sum())}
			case len(p.Widths) == 0:
				l.shows, l.facts = "shortfall", []fact{measure("mm", p.Short)}
			default:
				l.shows, l.facts = "outcome", []fact{measure("over-mm", p.Over)}
			}
		}
	}
	return y + 4
}

func plural(n int, of string) string {
	if n == 1 {
		return "1 " + of
	}
	return strconv.Itoa(n) + " " + of + "s"
}

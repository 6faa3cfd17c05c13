package picture

import (
	"cmp"
	"fmt"
	"image/color"
	"slices"
	"strings"

	"presshand/engine/unit"
)

// A rung is a label beside the section, led to its part.
type rung struct {
	at     point
	text   string
	warn   bool
	colour color.NRGBA
	shows  string
	facts  []fact
}

// warnWidth is what the sign before a warning takes.
const warnWidth = 17

func (r rung) width() float64 {
	w := textWidth(r.text, smallSize, r.warn) + 1
	if r.warn {
		w += warnWidth
	}
	return w
}

// drawLadder names the layers with their heights, each on a line of its own.
// It returns where the last ends.
func (s *section) drawLadder() float64 {
	rungs := s.rungs()
	slices.SortStableFunc(rungs, func(a, b rung) int { return cmp.Compare(a.at.y, b.at.y) })
	wish, size := make([]float64, len(rungs)), make([]float64, len(rungs))
	for i, r := range rungs {
		wish[i], size[i] = r.at.y, 17
	}
	bottom, low, high := s.bedY, s.ladderTop(), s.bedY+14
	at := spread(wish, size, low)
	if 17*float64(len(rungs)) <= high-low {
		at = upTo(at, size, high)
	}
	for i, y := range at {
		r := rungs[i]
		x := s.x.ladder
		knee := max(x-14, r.at.x)
		s.d.disc(r.at, 1.9, r.colour, none)
		s.d.line(r.colour, 0.8, r.at, point{knee, r.at.y}, point{x - 3, y})
		room := Width - margin - x
		if r.warn {
			s.d.warning(point{x + 7, y}, 12)
			x, room = x+warnWidth, room-warnWidth
		}
		l := s.d.text(fit(r.text, smallSize, r.warn, room), point{x, y + 4.2}, left, smallSize)
		l.colour, l.bold, l.shows, l.facts = r.colour, r.warn, r.shows, r.facts
		bottom = max(bottom, y+9)
	}
	return bottom
}

// ladderTop keeps the ladder clear of the heading.
func (s *section) ladderTop() float64 {
	low := 0.0
	for _, l := range s.d.labels {
		if l.shows == "title" || l.colour == softInk && l.at.x == margin {
			low = max(low, l.box().y1)
		}
	}
	return low + 6
}

func (s *section) rungs() []rung {
	var rs []rung
	for i, b := range s.slabs {
		if b.part == Film && i == len(s.slabs)-1 {
			continue // the film over all, told in the key
		}
		_, x1 := s.reach(b)
		r := rung{at: point{x1 - 7, s.y((b.from + b.to) / 2)}, colour: inkColour, shows: string(b.part) + " height"}
		r.text = string(b.part) + " " + s.Units.length(b.to-b.from)
		r.facts = []fact{measure("mm", b.to-b.from)}
		if b.part == Film {
			r.text = string(Film)
		}
		rs = append(rs, r)
	}
	next := 0
	for _, l := range s.levels {
		if l.fence > 0 && (s.Bar == nil || !s.Bar.Both) {
			rs = append(rs, s.fenceRung(l))
			if !l.guessed && next < len(s.Proud) {
				rs = append(rs, s.proudRung(l, s.Proud[next]))
				next++
			}
		}
	}
	if s.openingShown() {
		_, x1 := s.bedEnds()
		rs = append(rs, rung{at: point{x1, s.y(s.Opening)}, text: "lid " + s.Units.length(s.Opening), colour: softInk,
			shows: "opening", facts: []fact{measure("mm", s.Opening)}})
	}
	if s.Wedge != nil {
		if at, ok := s.wedgeAt(); ok {
			text := "wedge"
			if s.Wedge.Gap > 0 {
				text += " " + s.Units.length(s.Wedge.Gap)
			}
			rs = append(rs, rung{at: at, text: text, colour: inkColour, shows: "wedge width", facts: []fact{measure("mm", s.Wedge.Gap)}})
		}
	}
	return rs
}

func (s *section) wedgeAt() (point, bool) {
	for _, l := range s.levels {
		if l.strips > 0 {
			return point{(s.x.wedge[0] + s.x.wedge[1]) / 2, s.y(l.under + l.strips*3/4)}, true
		}
	}
	return point{}, false
}

func (s *section) fenceRung(l level) rung {
	r := rung{at: point{s.x.fence[0] + 7, s.y(l.base + l.fence/3)}, text: "fence", colour: inkColour, shows: "fence height"}
	if !l.guessed {
		r.text += " " + s.Units.length(l.fence)
		r.facts = []fact{measure("mm", l.fence)}
	}
	return r
}

// proudRung marks how far the work stands above the fence.
func (s *section) proudRung(l level, p Proud) rung {
	top, fence := s.proudEnds(l, p)
	c := greenInk
	if p.TooLittle {
		c = redInk
	}
	r := rung{at: point{s.x.fence[1] + 6, (top + fence) / 2}, text: "proud " + s.Units.length(p.By.Mid), warn: p.TooLittle, colour: c,
		shows: "proud", facts: []fact{measure("mm", p.By.Mid)}}
	if p.By.Mid <= 0 {
		r.text = "not proud"
	}
	return r
}

func (s *section) proudEnds(l level, p Proud) (top, fence float64) {
	fence = s.y(l.base + l.fence)
	return fence - p.By.Mid.Metres()*s.scale, fence
}

// drawLid draws the press's lid, and drawProud how far each level stands above
// its fence.
func (s *section) drawLid() {
	if s.openingShown() {
		y := s.y(s.Opening)
		x0, x1 := s.bedEnds()
		s.d.line(softInk, 1.4, point{x0, y}, point{x1, y}).dash = []float64{8, 4}
	}
}

func (s *section) drawProud() {
	next := 0
	for _, l := range s.levels {
		if l.fence == 0 || l.guessed || next >= len(s.Proud) {
			continue
		}
		p := s.Proud[next]
		next++
		c := greenInk
		if p.TooLittle {
			c = redInk
		}
		top, fence := s.proudEnds(l, p)
		x := s.x.fence[1] + 6
		s.d.line(c, 3, point{x, top}, point{x, fence})
		for _, y := range []float64{top, fence} {
			s.d.line(c, 1.2, point{s.x.fence[1] - 8, y}, point{x + 5, y})
		}
	}
}

func (s *section) note() string {
	if _, cut := s.mainCut(); cut {
		return "Heights to scale; widths cut short at the wavy gaps."
	}
	return "To scale."
}

func (s *section) keyLines() []keyLine {
	var ks []keyLine
	if s.Face.Mid > 0 {
		ks = append(ks, keyLine{sign: faceSign, text: "Face " + span(s.Face, s.Units.pressure), strong: true})
	}
	ks = append(ks, s.sideLines()...)
	if s.idle() > 0 {
		ks = append(ks, keyLine{sign: hatchSign, text: s.idleText()})
	}
	film := "Film, pressed on all that it reaches"
	if s.Bag {
		film = "Bag, pressed on all that it reaches"
	}
	ks = append(ks, keyLine{sign: filmSign, text: film})
	next := 0
	for i, l := range s.levels {
		if l.fence > 0 && !l.guessed && next < len(s.Proud) {
			if p := s.Proud[next]; p.TooLittle {
				ks = append(ks, keyLine{sign: warnSign, text: s.proudText(i, p), strong: true, colour: redInk, shows: "proud warning"})
			}
			next++
		}
	}
	return append(ks, s.heightLine())
}

func (s *section) sideLines() []keyLine {
	var ks []keyLine
	far := s.FarJoint
	if far == 0 {
		far = len(s.Widths) - 1
	}
	if s.First.Mid > 0 || s.First.High > 0 {
		ks = append(ks, keyLine{sign: sideSign, strong: true, text: "Side, joint 1: " + span(s.First, s.Units.pressure),
			shows: "side first", facts: []fact{kilopascals("kpa", s.First.Mid)}})
		if far > 1 {
			ks = append(ks, keyLine{sign: sideSign, strong: true, text: fmt.Sprintf("Side, joint %d: %s", far, span(s.Far, s.Units.pressure)),
				shows: "side far", facts: []fact{kilopascals("kpa", s.Far.Mid)}})
		}
	}
	if s.Wedge != nil && s.Preload.Mid > 0 {
		ks = append(ks, keyLine{sign: sideSign, strong: true, text: "Wedge, every joint: " + span(s.Preload, s.Units.pressure)})
	}
	return ks
}

func (s *CrossSection) idleText() string {
	u := s.Units
	text := "Hatched: " + u.length(s.Bar.Height-s.Bar.Covered.Mid) + " of the bar does nothing, with film on both its faces"
	c := s.Bar.Covered
	if u.length(c.Low) != u.length(c.High) && finite(float64(c.Low)) && finite(float64(c.High)) {
		text += "; covered " + ends(u.length(c.Low), u.length(c.High))
	}
	return text + "."
}

func (s *section) proudText(i int, p Proud) string {
	where := ""
	if len(s.levels) > 1 {
		where = fmt.Sprintf("Level %d: ", i+1)
	}
	if p.By.Mid <= 0 {
		return sentence(where + "not proud of the fence, which carries the load")
	}
	return sentence(where + "only " + s.Units.length(p.By.Mid) + " proud of the fence, too little")
}

func (s *section) heightLine() keyLine {
	k := keyLine{sign: heightSign, shows: "stack height", facts: []fact{measure("mm", s.height)}}
	k.text = "Stack " + s.Units.length(s.height) + " high"
	if s.Opening > 0 {
		k.text += ", opening " + s.Units.length(s.Opening)
	}
	if s.Opening > 0 && s.height > s.Opening {
		k.sign, k.colour, k.strong = warnSign, redInk, true
		k.text += ": too high"
	}
	return k
}

// sentence begins s with a capital.
func sentence(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func faceSign(d *Drawing, b box) {
	c := b.centre()
	d.arrow(point{c.x, b.y0}, point{c.x, b.y1}, 2.6, 8, inkColour)
}

func sideSign(d *Drawing, b box) {
	y := b.centre().y
	d.arrow(point{b.x0, y}, point{b.x1, y}, 3.2, 9, vermillion)
}

func hatchSign(d *Drawing, b box) {
	d.rect(b, white, inkColour)
	d.hatch(b.inset(0.5), 5, 1, softInk)
}

func filmSign(d *Drawing, b box) {
	d.line(blue, 2.4, point{b.x0, b.y1 - 2}, point{b.x0 + 5, b.y1 - 2}, point{b.x0 + 5, b.y0 + 3}, point{b.x1 - 5, b.y0 + 3}, point{b.x1 - 5, b.y1 - 2}, point{b.x1, b.y1 - 2})
}

func warnSign(d *Drawing, b box) { d.warning(b.centre(), 14) }

func heightSign(d *Drawing, b box) {
	c := b.centre()
	d.line(inkColour, 1.3, point{c.x, b.y0}, point{c.x, b.y1})
	for _, y := range []float64{b.y0, b.y1} {
		d.line(inkColour, 1.3, point{c.x - 5, y}, point{c.x + 5, y})
	}
}

// stackWords lists the layers for the alt text.
func stackWords(layers []Layer, write func(unit.Length) string) string {
	var ws []string
	for _, l := range layers {
		w := string(l.Part)
		if l.Part != Film {
			w += " " + write(l.Thickness)
		}
		ws = append(ws, w)
	}
	return strings.Join(ws, ", ")
}

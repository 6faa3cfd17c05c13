package picture

import (
	"cmp"
	"image/color"
	"slices"

	"presshand/engine/unit"
)

// A rung is a label beside the section, led to its part.
type rung struct {
	at     point
	text   string
	sign   Verdict
	colour color.NRGBA
	shows  string
	facts  []fact
}

// signWidth is what the sign before a label takes.
const signWidth = 18

func (r rung) bold() bool { return r.sign == Care || r.sign == Stop }

func (r rung) width() float64 {
	w := textWidth(r.text, labelSize, r.bold()) + 1
	if r.bold() {
		w += signWidth
	}
	return w
}

// drawLadder names the layers with their heights, each on a line of its own.
func (s *section) drawLadder() {
	rungs := s.rungs()
	slices.SortStableFunc(rungs, func(a, b rung) int { return cmp.Compare(a.at.y, b.at.y) })
	wish, size := make([]float64, len(rungs)), make([]float64, len(rungs))
	for i, r := range rungs {
		wish[i], size[i] = r.at.y, rungHeight
	}
	low, high := s.top, s.bedY+14
	at := spread(wish, size, low)
	if rungHeight*float64(len(rungs)) <= high-low {
		at = upTo(at, size, high)
	}
	for i, y := range at {
		s.drawRung(rungs, i, y)
		s.ladderEnd = max(s.ladderEnd, y+10)
	}
}

// drawRung sets one label. Its leader runs level as far as it can, straight to
// the label where another one runs there.
func (s *section) drawRung(rungs []rung, i int, y float64) {
	r := rungs[i]
	x := s.x.ladder
	knee := max(x-13, r.at.x)
	for k, other := range rungs {
		if k != i && near(other.at.y, r.at.y, 4) {
			knee = r.at.x
		}
	}
	s.d.disc(r.at, 1.9, r.colour, none)
	s.d.line(r.colour, 0.8, r.at, point{knee, r.at.y}, point{x - 3, y})
	s.leaderLines = append(s.leaderLines, heightAt(s.x.fence[1]+12, point{knee, r.at.y}, point{x - 3, y}))
	room := Width - margin - x
	if r.bold() {
		s.d.verdict(point{x + 7, y}, 13, r.sign)
		x, room = x+signWidth, room-signWidth
	}
	l := s.d.text(fit(r.text, labelSize, r.bold(), room), point{x, y + 4.6}, left, labelSize)
	l.colour, l.bold, l.shows, l.facts = r.colour, r.bold(), r.shows, r.facts
}

// heightAt is the height of a leader at x: level up to its knee, then straight
// to its end.
func heightAt(x float64, knee, end point) float64 {
	if x <= knee.x || end.x <= knee.x {
		return knee.y
	}
	return knee.y + (end.y-knee.y)*(x-knee.x)/(end.x-knee.x)
}

func (s *section) rungs() []rung {
	var rs []rung
	for _, b := range s.slabs {
		if b.part != Film { // told in the key
			rs = append(rs, s.slabRung(b))
		}
	}
	for _, l := range s.levels {
		if l.fence == 0 || s.bothBars() {
			continue
		}
		rs = append(rs, s.fenceRung(l))
		if l.proud != nil {
			rs = append(rs, s.proudRung(l))
		}
	}
	if s.Opening > 0 {
		rs = append(rs, s.lidRungs()...)
	}
	if c, ok := s.cover(); ok {
		rs = append(rs, rung{at: point{s.x.strips[1] - 12, s.y((c.from + c.to) / 2)}, colour: inkColour, shows: "cover height",
			text: "cover to " + s.Units.length(c.to-s.foot), facts: []fact{measure("mm", c.to-s.foot)}})
	}
	if l := s.levels[s.work]; s.Wedge != nil && l.strips > 0 {
		text := "wedge"
		if s.Wedge.Gap > 0 {
			text += " " + s.Units.length(s.Wedge.Gap)
		}
		rs = append(rs, rung{at: point{(s.x.wedge[0] + s.x.wedge[1]) / 2, s.y(l.under + l.strips*7/8)}, text: text, colour: inkColour,
			shows: "wedge width", facts: []fact{measure("mm", s.Wedge.Gap)}})
	}
	if l := s.levels[s.work]; s.Spring != nil && s.Spring.Rise.Mid > 0 && l.strips > 0 {
		rise := s.Spring.Rise.Mid
		x := s.x.strips[0] + (s.x.strips[1]-s.x.strips[0])*0.75
		rs = append(rs, rung{at: point{x, s.y(l.under + l.strips + rise*3/4)}, text: "rises " + s.Units.length(rise), colour: purpleInk,
			shows: "rise height", facts: []fact{measure("mm", rise)}})
	}
	return rs
}

func (s *section) slabRung(b slab) rung {
	_, x1 := s.reach(b)
	r := rung{at: point{x1 - 7, s.y((b.from + b.to) / 2)}, colour: inkColour, shows: string(b.part) + " height"}
	text := s.Units.length(b.to - b.from)
	switch {
	case b.part == Strips && s.Thinnest > 0 && s.Thinnest < b.to-b.from-hair:
		text = ends(s.Units.length(s.Thinnest), text)
	case b.part == Sled && s.SledAssumed:
		text += "*"
	}
	r.text = string(b.part) + " " + text
	r.facts = []fact{measure("mm", b.to-b.from)}
	return r
}

func (s *section) fenceRung(l level) rung {
	r := rung{at: point{s.x.fence[0] + 7, s.y(l.base + l.fence/3)}, text: "fence*", colour: inkColour, shows: "fence height"}
	if !l.guessed {
		r.text = "fence " + s.Units.length(l.fence)
		r.facts = []fact{measure("mm", l.fence)}
	}
	return r
}

// proudRung marks how far the work stands above the fence.
func (s *section) proudRung(l level) rung {
	v := l.proud.verdict()
	top, fence := s.proudEnds(l)
	return rung{at: point{s.x.fence[1] + 6, (top + fence) / 2}, text: "proud " + s.Units.length(l.proud.By.Mid), sign: v, colour: verdictInk(v),
		shows: "proud", facts: []fact{measure("mm", l.proud.By.Mid)}}
}

// lidRungs name the lid and what is left under it.
func (s *section) lidRungs() []rung {
	_, x1 := s.bedEnds()
	left := s.Opening - s.stackHeight()
	v := s.clearance()
	text := s.Units.length(left) + " left"
	if left < -hair {
		text = s.Units.length(-left) + " over"
	}
	return []rung{
		{at: point{x1 - 3, s.lidY()}, text: "lid " + s.Units.length(s.Opening), colour: softInk, shows: "opening", facts: []fact{measure("mm", s.Opening)}},
		{at: point{s.clearanceX(), (s.lidY() + s.y(s.drawnHeight())) / 2}, text: text, sign: v, colour: verdictInk(v),
			shows: "clearance height", facts: []fact{measure("mm", left)}},
	}
}

// stackWords lists the layers for the alt text.
func stackWords(layers []Layer, write func(unit.Length) string) string {
	text := ""
	for i, l := range layers {
		if i > 0 {
			text += ", "
		}
		text += string(l.Part)
		if l.Part != Film {
			text += " " + write(l.Thickness)
		}
	}
	return text
}
